package dialog

import (
	"errors"
	"slices"

	"pourbench/pour/strict"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// kind is the sort of thing that is said.
type kind int

const (
	done kind = iota
	refused
	warned
	both // what was said and what wants an eye, each with its own sign
)

// message is something that was said.
type message struct {
	text string
	kind kind
}

// Status is the line that says what was done last or why it was not, and remembers what was said before.
type Status struct {
	said     []message // the newest last
	standing bool      // the newest stands in the line
}

// remembered is how many messages are remembered.
const remembered = 100

// Say says what was done.
func (s *Status) Say(text string) { s.add(message{text, done}) }

// Refuse says why something cannot be done.
func (s *Status) Refuse(why string) { s.add(message{why, refused}) }

// Warn says what wants an eye.
func (s *Status) Warn(text string) { s.add(message{text, warned}) }

// WarnBeside says what wants an eye behind what stands in the line, which stays first; with nothing there it is [Status.Warn].
func (s *Status) WarnBeside(text string) {
	if !s.standing {
		s.Warn(text)
		return
	}
	s.add(message{s.Text() + "; " + message{kind: warned}.sign() + " " + text, both})
}

// WarnOfKeys says every fault of a maker's file of keys, and in the line that the keys the program was built with stay; reads is the key
// that reads all that was said. Without a fault it says nothing.
func (s *Status) WarnOfKeys(err error, reads string) {
	var faults *strict.Error
	switch {
	case err == nil:
		return
	case errors.As(err, &faults):
		for _, f := range slices.Backward(faults.Faults) { // the newest is read first
			s.Warn(f.Error())
		}
	default:
		s.Warn(err.Error())
	}
	s.Warn("your file of keys has faults, the built-in keys stay; " + reads + " reads them")
}

// Answered takes a refusal out of the line once something else is done about it; what else stands there stays.
func (s *Status) Answered() {
	if s.standing && s.said[len(s.said)-1].kind == refused {
		s.Clear()
	}
}

func (s *Status) add(m message) {
	s.standing = m.text != ""
	if n := len(s.said); !s.standing || n > 0 && s.said[n-1] == m {
		return
	}
	s.said = append(s.said, m)
	if over := len(s.said) - remembered; over > 0 {
		s.said = append(s.said[:0], s.said[over:]...)
	}
}

// Clear empties the line. What was said is still remembered.
func (s *Status) Clear() { s.standing = false }

// Text is what stands in the line, with a sign in front of what is not well; empty: nothing does.
func (s *Status) Text() string {
	if !s.standing {
		return ""
	}
	m := s.said[len(s.said)-1]
	if m.sign() == "" {
		return m.text
	}
	return m.sign() + " " + m.text
}

func (m message) sign() string {
	return [...]string{done: "", refused: "×", warned: "!", both: ""}[m.kind]
}

func (m message) style(l look.Look) screen.Style {
	return [...]screen.Style{done: l.Good, refused: l.Wrong, warned: l.Caution, both: l.Caution}[m.kind]
}

// Silent says whether nothing was said yet.
func (s *Status) Silent() bool { return len(s.said) == 0 }

// Draw draws the line. What does not fit is cut, and the key that reads it whole is named.
func (s *Status) Draw(a screen.Area, reads string, l look.Look) {
	if !s.standing {
		return
	}
	whole := reads + " reads all"
	text, w := s.Text(), a.W()-2
	st := s.said[len(s.said)-1].style(l)
	if screen.Width(text) > w && w > 2*screen.Width(whole) {
		w -= screen.Width(whole) + 2
		x := a.Text(w+3, 0, reads, l.Accent)
		a.Text(x, 0, whole[len(reads):], l.Quiet)
	}
	a.Text(1, 0, screen.Clip(text, w), st)
}

// Page lists what was said in full, the newest first.
func (s *Status) Page(l look.Look) *Page {
	p := &Page{Title: "What was said, the newest first", LeadW: 2}
	for i := len(s.said) - 1; i >= 0; i-- {
		m := s.said[i]
		p.Lines = append(p.Lines, Line{Lead: m.sign(), Style: m.style(l), Text: m.text})
	}
	return p
}
