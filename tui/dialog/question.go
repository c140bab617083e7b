package dialog

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Answer is one way to answer a question.
type Answer struct {
	Keys string // the letters that give it, the first stands before it; empty: the first letter of the label
	Text string
	Do   func() tea.Cmd // nil: nothing, as cancelling
}

// Question waits for an answer: by a letter, by the arrows and Enter, or by the mouse.
type Question struct {
	Title   string
	Text    string
	Answers []Answer
	At      int // the highlighted answer; below 0: none yet

	still
}

// Keys lists the keys of the footer.
func (q *Question) Keys(f Frame) []keys.Binding { return f.Keys.Footer(keys.Asking, 0) }

// Wheel goes to another answer.
func (q *Question) Wheel(by int, _ Frame) { q.move(by) }

// move goes round the answers; where none is highlighted it comes in from the end it comes from.
func (q *Question) move(by int) {
	n := len(q.Answers)
	if q.At < 0 && by < 0 {
		q.At = n
	}
	q.At = ((q.At+by)%n + n) % n
}

// Press goes to an answer or gives one.
func (q *Question) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.Asking, 0, k.String()); ok {
		return q.Act(b.ID, f)
	}
	letter := strings.ToLower(k.Text)
	for i, a := range q.Answers {
		if letter != "" && (strings.Contains(a.Keys, letter) || a.Keys == "" && strings.HasPrefix(a.Text, letter)) {
			return q.give(i)
		}
	}
	return q.Away(f)
}

// Act does what a key of the question comes to.
func (q *Question) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close:
		return Result{Close: true}
	case keys.Left:
		q.move(-1)
	case keys.Right:
		q.move(1)
	case keys.Answer:
		if q.At < 0 {
			return q.Away(f)
		}
		return q.give(q.At)
	}
	return Result{}
}

// Away leaves the question standing: what it asks about is not to be waved away by a slip of the hand.
func (q *Question) Away(f Frame) Result {
	return Result{Refused: f.Keys.Fill(keys.Asking, "answer with the letter of an answer, or with arrows and {answer}; {close} answers nothing")}
}

// Box is where the question stands.
func (q *Question) Box(f Frame) image.Rectangle {
	_, _, high := q.spots(f)
	return q.rect(f, high)
}

func (q *Question) give(i int) Result { return Result{Close: true, Do: q.Answers[i].Do} }

// spot is where an answer stands inside the box, and its lines.
type spot struct {
	image.Rectangle
	lines []string
}

// keyW is the room for the letter that gives an answer and the mark of the highlighted one.
const keyW = 4

// spots lays the answers out under the text, in a row where they have room and no letters of their own, else one under the other. It
// returns how many lines text and answers take.
func (q *Question) spots(f Frame) (text []string, spots []spot, high int) {
	w := f.room()
	text = screen.Wrap(q.Text, w)
	y := len(text)
	if y > 0 {
		y++
	}
	if spots, ok := q.row(w, y); ok {
		return text, spots, y + 1
	}
	for _, a := range q.Answers {
		s := spot{lines: screen.Wrap(a.Text, w-keyW)}
		s.Rectangle = image.Rect(0, y, w, y+len(s.lines))
		spots = append(spots, s)
		y = s.Max.Y
	}
	return text, spots, y
}

// row lays the answers out in a row that ends at the right.
func (q *Question) row(w, y int) ([]spot, bool) {
	out := make([]spot, len(q.Answers))
	for i := len(q.Answers) - 1; i >= 0; i-- {
		a := q.Answers[i]
		from := w - screen.Width(a.Text) - 2
		if a.Keys != "" || from < 0 {
			return nil, false
		}
		out[i] = spot{image.Rect(from, y, w, y+1), nil}
		w = from - 1
	}
	return out, true
}

func (q *Question) rect(f Frame, high int) image.Rectangle { return f.box(f.room()+4, high+2) }

// Click gives the answer under the pointer.
func (q *Question) Click(at image.Point, f Frame) Result {
	_, spots, high := q.spots(f)
	in := inside(q.rect(f, high))
	for i, s := range spots {
		if at.In(s.Add(in.Min)) && at.In(in) {
			return q.give(i)
		}
	}
	return Result{}
}

// Draw draws the question and its answers.
func (q *Question) Draw(a screen.Area, f Frame, l look.Look) {
	text, spots, high := q.spots(f)
	in := boxed(a, q.rect(f, high), q.Title, l)
	in.Focus(0, 0) // until an answer is highlighted
	for y, line := range text {
		in.Text(0, y, line, l.Text)
	}
	for i, s := range spots {
		answer := q.Answers[i]
		if s.lines == nil {
			label, st := " "+answer.Text+" ", l.Accent
			if i == q.At {
				label, st = "►"+answer.Text+" ", l.Focus.With(screen.Reverse)
				in.Focus(s.Min.X, s.Min.Y)
			}
			in.Text(s.Min.X, s.Min.Y, label, st)
			continue
		}
		in.Text(0, s.Min.Y, (answer.Keys + answer.Text)[:1], l.Accent.With(screen.Bold))
		st := l.Text
		if i == q.At {
			in.Text(2, s.Min.Y, "►", l.Focus)
			in.Focus(2, s.Min.Y)
			st = l.Strong
		}
		for y, line := range s.lines {
			in.Text(keyW, s.Min.Y+y, line, st)
		}
	}
}
