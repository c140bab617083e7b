package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
)

// handMsg brings what the maker's pours teach by now, and how what has changed is said.
type handMsg struct {
	hand pour.Hand
	err  error
	say  func(string)
}

// readHand reads beside the keyboard what the maker's pours teach: a pour from this bench, or a mark made elsewhere, may have taught more.
func (m *model) readHand(say func(string)) tea.Cmd {
	read := m.opt.ReadHand
	if read == nil {
		return nil
	}
	return func() tea.Msg {
		hand, err := read()
		return handMsg{hand, err, say}
	}
}

// relearn works the plan out with what the pours teach by now, so that screen, paper and run agree.
func (m *model) relearn(msg handMsg) {
	if msg.err != nil {
		m.refuse("times are as before: " + reason(msg.err))
		return
	}
	before := m.session.Hand().Clock.Pours
	if m.session.Learn(msg.hand) {
		msg.say(knows(msg.hand.Clock.Pours - before))
	}
}

// knows says how many pours the clock has learnt from since.
func knows(more int) string {
	n := max(more, -more)
	switch {
	case more > 0:
		return fmt.Sprintf("the clock knows %d %s more", n, plural("pour", n))
	case more < 0:
		return fmt.Sprintf("the clock knows %d %s fewer", n, plural("pour", n))
	}
	return "the clock has learnt from a pour that was changed"
}
