package live

import (
	"fmt"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
)

// quiet is how long after a step was finished Space does not finish the next one: a wet glove presses twice, a held key repeats.
const quiet = 800 * time.Millisecond

// press gives a key to what is open, or to the run.
func (m *Model) press(k tea.KeyPressMsg) tea.Cmd {
	switch {
	case k.String() == "ctrl+c":
		return m.leave()
	case m.page != nil:
		m.pressPage(k)
		return nil
	case m.question != nil:
		return m.pressQuestion(k)
	case m.typing != nil:
		return m.pressTyping(k)
	}
	b, ok := lookup(keys.Bench, k.String())
	if !ok {
		m.refuse(fmt.Sprintf("the key %s does nothing here; ? lists the keys", keys.Shown(k.String())))
		return nil
	}
	if why := m.cannot(b.ID); why != "" {
		m.refuse(why)
		return nil
	}
	return m.do(b.ID, k.String())
}

// do does what a key of the run asks, which is known to be possible.
func (m *Model) do(id keys.ID, key string) tea.Cmd {
	switch id {
	case finish:
		return m.finish()
	case takeBack:
		m.takeBack()
	case nextStep:
		m.choose(1)
	case prevStep:
		m.choose(-1)
	case pickJug:
		m.pick(int(key[0] - '1'))
	case nextJug:
		m.jug = (m.jug + 1) % len(m.board.Jugs)
	case prevJug:
		m.jug = (m.jug + len(m.board.Jugs) - 1) % len(m.board.Jugs)
	case seeStage:
		m.see(key, logbook.Seen)
	case notYet:
		m.see(key, logbook.NotYet)
	case blend:
		m.blend()
	case unused:
		m.leaveInJug()
	default:
		return m.openFor(id)
	}
	return nil
}

// openFor opens what takes the keys from here: a question, a line to type, a page.
func (m *Model) openFor(id keys.ID) tea.Cmd {
	m.status = status{}
	switch id {
	case trouble:
		m.askTrouble()
	case rescue:
		m.askRescue()
	case note:
		m.typeNote()
	case outcome:
		m.typeResult()
	case measure:
		m.typeMeasure()
	case discount:
		m.askDiscount()
	case guide:
		m.page = guidePage()
	case keys.Help:
		m.page = m.helpPage()
	case keys.Suspend:
		return tea.Suspend
	case keys.Quit:
		if m.state.Ended {
			return m.leave()
		}
		m.askLeave()
	}
	return nil
}

// leave leaves the screen. There is nothing to save: all is in the journal.
func (m *Model) leave() tea.Cmd {
	return tea.Quit
}

// cannot says why a key cannot act now; empty: it can.
func (m *Model) cannot(id keys.ID) string {
	_, left := m.now()
	switch id {
	case finish:
		if m.state.Ended {
			return "the pour is over; q leaves"
		}
	case nextStep, prevStep:
		if !left {
			return "every step is done; b steps back"
		}
	case rescue:
		if m.lost() < 0 {
			return "every jug makes its window as things stand"
		}
	case unused, trouble, seeStage, notYet:
		if m.state.Ended && id != trouble {
			return "the pour is over"
		}
		return m.cannotJug(id)
	case blend:
		if now, ok := m.now(); !ok || m.blender < 0 && !m.running(now.Batch) {
			return "no lye has met oil in this batch; finish that step first"
		}
	case discount:
		if _, ok := m.lastJump(); !ok {
			return "the clock has not jumped"
		}
	case outcome:
		if left {
			return "steps are left; how it came out is for the end, n is a note now"
		}
	case guide:
		if !m.trialling() {
			return "this is no scent trial"
		}
	}
	return ""
}

// cannotJug says why a key cannot act on the chosen jug.
func (m *Model) cannotJug(id keys.ID) string {
	j := m.board.Jugs[m.jug]
	used := j.Verdict == underway.Used
	switch {
	case m.leftInJug(j.Batch, j.Jug) && id == unused:
		return j.Jug + " stays in its jug already; b steps back"
	case used && (id == unused || id == seeStage):
		return fmt.Sprintf("%s is %s already; b steps back", j.Jug, m.usedWord(j))
	case id != unused && id != trouble && !m.running(j.Batch):
		return fmt.Sprintf("the %s's lye has not met its oils; finish that step first", j.Batch)
	case id == notYet && !used:
		return j.Jug + " has not been used; small letters mark what is seen now"
	}
	return ""
}

// running says whether a batch's lye has met its oils.
func (m *Model) running(n pour.BatchName) bool {
	_, ok := m.state.SinceLyeIn(n, m.live.Run())
	return ok
}
