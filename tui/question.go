package tui

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// answer is one way to answer a question. Its first letter gives it.
type answer struct {
	label string
	do    func(m *Model) tea.Cmd // nil: nothing, as cancelling
}

// question waits for an answer. It opens on its last answer, which does nothing.
type question struct {
	title   string
	text    string
	answers []answer
	at      int
}

// ask opens a question. Where no answer does nothing, "cancel" is added.
func (m *Model) ask(title, text string, answers ...answer) {
	if answers[len(answers)-1].do != nil {
		answers = append(answers, answer{label: "cancel"})
	}
	m.push(&question{title: title, text: text, answers: answers, at: len(answers) - 1})
}

func (q *question) mode() keys.Mode { return keys.Asking }

func (q *question) paste(string) {}

func (q *question) wheel(by int) { q.move(by) }

func (q *question) move(by int) { q.at = (q.at + by + len(q.answers)) % len(q.answers) }

func (q *question) press(m *Model, k tea.KeyPressMsg) tea.Cmd {
	b, _ := keys.Lookup(keys.Asking, 0, k.String())
	switch b.ID {
	case keys.Close:
		m.pop()
	case keys.Left:
		q.move(-1)
	case keys.Right:
		q.move(1)
	case keys.Answer:
		return q.give(m, q.at)
	default:
		for i, a := range q.answers {
			if k.Text != "" && strings.HasPrefix(a.label, strings.ToLower(k.Text)) {
				return q.give(m, i)
			}
		}
	}
	return nil
}

func (q *question) give(m *Model, i int) tea.Cmd {
	m.pop()
	if do := q.answers[i].do; do != nil {
		return do(m)
	}
	return nil
}

// questionW is the width a question likes.
const questionW = 62

func (q *question) rect(a screen.Area) image.Rectangle {
	w := min(questionW, a.W()-4)
	return middle(a, w, len(screen.Wrap(q.text, w-4))+5)
}

func (q *question) draw(m *Model, a screen.Area) {
	in := m.boxed(a, q.rect(a), q.title)
	y := 0
	for _, l := range screen.Wrap(q.text, in.W()) {
		in.Text(0, y, l, screen.Style{})
		y++
	}
	for i, x := range q.places(in.W()) {
		label := " " + q.answers[i].label + " "
		st := m.look.Accent
		if i == q.at {
			label, st = "►"+q.answers[i].label+" ", m.look.Focus.With(screen.Reverse)
		}
		in.Text(x, in.H()-2, label, st)
	}
}

// places is the column of every answer.
func (q *question) places(w int) []int {
	out := make([]int, len(q.answers))
	x := w
	for i := len(q.answers) - 1; i >= 0; i-- {
		x -= screen.Width(q.answers[i].label) + 3
		out[i] = x
	}
	return out
}

func (q *question) click(m *Model, at image.Point) tea.Cmd {
	r := q.rect(screen.New(m.w, m.h).Area())
	if at.Y != r.Max.Y-3 {
		return nil
	}
	for i, x := range q.places(r.Dx() - 4) {
		if from := r.Min.X + 2 + x; at.X >= from && at.X < from+screen.Width(q.answers[i].label)+2 {
			return q.give(m, i)
		}
	}
	return nil
}

// prompt is one line to type, a file name.
type prompt struct {
	title, text string
	typed       entry.Entry
	refused     string
	done        func(m *Model, typed string) (tea.Cmd, error)
}

func (p *prompt) mode() keys.Mode { return keys.Typing }

func (p *prompt) paste(text string) { p.typed.Insert(strings.TrimSpace(text)) }

func (p *prompt) wheel(int) {}

func (p *prompt) click(*Model, image.Point) tea.Cmd { return nil }

func (p *prompt) press(m *Model, k tea.KeyPressMsg) tea.Cmd {
	switch b, _ := keys.Lookup(keys.Typing, 0, k.String()); b.ID {
	case keys.Restore:
		m.pop()
	case keys.Commit, keys.CommitRight:
		cmd, err := p.done(m, strings.TrimSpace(p.typed.Text()))
		if err != nil {
			p.refused = reason(err)
			return nil
		}
		return cmd
	default:
		p.refused = ""
		if k.Text != "" {
			p.typed.Insert(k.Text)
			return nil
		}
		p.typed.Press(k)
	}
	return nil
}

func (p *prompt) draw(m *Model, a screen.Area) {
	w := min(76, a.W()-4)
	lines := screen.Wrap(p.text, w-4)
	refused := screen.Wrap(p.refused, w-6)
	in := m.boxed(a, middle(a, w, len(lines)+len(refused)+5), p.title)
	for y, l := range lines {
		in.Text(0, y, l, m.look.Quiet)
	}
	p.typed.Draw(in, 0, len(lines)+1, in.W(), m.look.Typing)
	for y, l := range refused {
		in.Text(0, len(lines)+2+y, "× "+l, m.look.Wrong)
	}
}
