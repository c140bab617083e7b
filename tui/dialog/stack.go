// Package dialog is what takes the keys first while it is open: a page to read, a question, a line to type, a list to pick from; and
// the two lines at the foot of a screen, what was said last and which keys act.
//
// It serves the workbench and the live run and knows neither. A dialog is a value that takes keys, pastes and clicks and returns a
// [Result]: whether it is done, and what is to be done then.
package dialog

import (
	"image"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Dialog takes keys while it is open. Places are in the coordinates of the screen.
type Dialog interface {
	Keys(f Frame) []keys.Binding // for the footer, the most useful first
	Press(k tea.KeyPressMsg, f Frame) Result
	Act(id keys.ID, f Frame) Result // what a key of the table comes to, by its action
	Paste(text string)
	Box(f Frame) image.Rectangle // where it stands
	Click(at image.Point, f Frame) Result
	Away(f Frame) Result   // a click beside it
	Wheel(by int, f Frame) // a notch up, -1, or down, 1
	Draw(a screen.Area, f Frame, l look.Look)
	Tell() Told              // in plain lines
	Hear(text string) Result // a line typed in answer to them
}

// still is what a dialog has that pastes, clicks or the wheel do nothing to.
type still struct{}

func (still) Paste(string) {}

func (still) Click(image.Point, Frame) Result { return Result{} }

func (still) Wheel(int, Frame) {}

// Result is what came of a key or a click.
type Result struct {
	Close   bool           // the dialog is done
	Do      func() tea.Cmd // what is to be done then; nil: nothing
	Refused string         // why nothing came of it; empty: something did
	Told    *Told          // what is told in plain lines before the dialog is told again; nil: nothing
}

// Stack is the open dialogs, each over the one before. The zero value has none.
type Stack struct {
	Frame Frame
	open  []Dialog
}

// Open opens a dialog over the others.
func (s *Stack) Open(d Dialog) { s.open = append(s.open, d) }

// Clear closes every dialog.
func (s *Stack) Clear() { s.open = nil }

// Top is the topmost dialog, or nil.
func (s *Stack) Top() Dialog {
	if len(s.open) == 0 {
		return nil
	}
	return s.open[len(s.open)-1]
}

// Press gives a key to the topmost dialog. Where nothing came of it, refuse is told why.
func (s *Stack) Press(k tea.KeyPressMsg, refuse func(why string)) tea.Cmd {
	top := len(s.open) - 1
	return s.take(top, s.open[top].Press(k, s.Frame), refuse)
}

// Replace puts a dialog in the place of the topmost one.
func (s *Stack) Replace(d Dialog) { s.open[len(s.open)-1] = d }

// Paste gives pasted text to the topmost dialog and says whether there is one.
func (s *Stack) Paste(text string) bool {
	top := s.Top()
	if top != nil {
		top.Paste(text)
	}
	return top != nil
}

// Click gives a click to the topmost dialog, if there is one. Where nothing came of it, refuse is told why.
func (s *Stack) Click(msg tea.MouseClickMsg, refuse func(why string)) tea.Cmd {
	top := len(s.open) - 1
	if top < 0 || msg.Button != tea.MouseLeft {
		return nil
	}
	at, d := image.Pt(msg.X, msg.Y), s.open[top]
	if !at.In(d.Box(s.Frame)) {
		return s.take(top, d.Away(s.Frame), refuse)
	}
	return s.take(top, d.Click(at, s.Frame), refuse)
}

// Act does what a key of the topmost dialog would, by its action. Where nothing came of it, refuse is told why.
func (s *Stack) Act(id keys.ID, refuse func(why string)) tea.Cmd {
	top := len(s.open) - 1
	return s.take(top, s.open[top].Act(id, s.Frame), refuse)
}

// Wheel takes the topmost dialog, if there is one, a notch up or down.
func (s *Stack) Wheel(msg tea.MouseWheelMsg) {
	by := map[tea.MouseButton]int{tea.MouseWheelUp: -1, tea.MouseWheelDown: 1}[msg.Button]
	if top := s.Top(); top != nil && by != 0 {
		top.Wheel(by, s.Frame)
	}
}

// typeToSearch is why the key of a footer that stands for letters does nothing by itself.
const typeToSearch = "type what to search for"

// Draw draws the topmost dialog over a screen.
func (s *Stack) Draw(a screen.Area, l look.Look) {
	if top := s.Top(); top != nil {
		top.Draw(a, s.Frame, l)
	}
}

// take closes the dialog when it is done and does what it asks for: in this order, since that may open another.
func (s *Stack) take(i int, r Result, refuse func(why string)) tea.Cmd {
	if r.Close {
		s.open = slices.Delete(s.open, i, i+1)
	}
	if r.Refused != "" {
		refuse(r.Refused)
	}
	if r.Do == nil {
		return nil
	}
	return r.Do()
}
