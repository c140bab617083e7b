package listing

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Search is the words that entries of a list have to hold.
type Search struct {
	Typed entry.Entry
	On    bool // keys type into it
}

// Text is what is searched for.
func (s *Search) Text() string { return s.Typed.Text() }

// Press takes a key while the search is typed. A key of lists is answered with its action, one that changed the text with true, and one that does
// nothing here with why.
func (s *Search) Press(k tea.KeyPressMsg, bound *keys.Map) (does keys.ID, changed bool, why string) {
	if b, ok := bound.Lookup(keys.List, 0, k.String()); ok {
		return b.ID, false, ""
	}
	switch {
	case k.Text != "" && !k.Mod.Contains(tea.ModAlt):
		s.Typed.Insert(k.Text)
	case s.Typed.Press(k):
	default:
		return "", false, bound.Fill(keys.List, keys.Shown(k.String())+": a search is being typed; {choose} keeps it, {close} lets it go")
	}
	return "", true, ""
}

// Draw draws what is searched for, with the hint where nothing is, and at the right what the list holds.
func (s *Search) Draw(a screen.Area, right, hint string, l look.Look) {
	a.Right(a.W()-1, 0, right, l.Quiet)
	room := a.W() - 1 - screen.Width(right) - 3
	x := a.Text(1, 0, "search", l.Quiet) + 1
	switch {
	case s.On:
		s.Typed.Draw(a, x, 0, room-x, l.Typing)
	case s.Text() != "":
		a.Text(x, 0, screen.Clip(s.Text(), room-x), l.Strong)
	default:
		a.Text(x, 0, screen.Clip(hint, room-x), l.Quiet)
	}
}
