package dialog

import (
	"errors"
	"fmt"
	"image"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Field is one line of a form.
type Field struct {
	Key   string   // what it is called where it goes
	Label string   // stands before it
	Hint  string   // said of it while it has the cursor
	Words []string // what is usual there, or all that there can be
	Need  bool     // the form cannot be kept without it
	Start string   // what stands there at first
}

// Form is lines to fill, each with its label. What stands in a line at first is typed over as soon as something is typed there.
type Form struct {
	Title  string
	Text   string // stands over the lines
	Fields []Field
	About  func(key, text string) string                  // said behind a line of what stands in it; nil: nothing
	Done   func(texts map[string]string) (tea.Cmd, error) // takes the lines without blanks at their ends; an error keeps the form open

	typed   []entry.Entry
	at      int
	old     bool // what stands in the line was not typed
	touched bool
	refused string
}

// WrongFieldError is what is wrong with one line of a form.
type WrongFieldError struct {
	Key string
	Err error
}

func (e WrongFieldError) Error() string { return e.Err.Error() }

// Unwrap is what is wrong.
func (e WrongFieldError) Unwrap() error { return e.Err }

// NewForm opens a form with the cursor on the first line in which nothing stands.
func NewForm(f Form) *Form {
	f.typed = make([]entry.Entry, len(f.Fields))
	for i := range f.Fields {
		f.typed[i] = entry.New(f.Fields[i].Start)
	}
	f.goTo(max(slices.IndexFunc(f.typed, func(e entry.Entry) bool { return e.Text() == "" }), 0))
	return &f
}

func (d *Form) goTo(i int) { d.at, d.old = i, d.text(i) != "" }

// text is what stands in a line.
func (d *Form) text(i int) string { return strings.TrimSpace(d.typed[i].Text()) }

// texts is what stands in every line, by its key.
func (d *Form) texts() map[string]string {
	out := make(map[string]string, len(d.Fields))
	for i, f := range d.Fields {
		out[f.Key] = d.text(i)
	}
	return out
}

// has is what the line with the cursor has for its keys.
func (d *Form) has() keys.Need {
	if len(d.Fields[d.at].Words) > 0 {
		return keys.Words
	}
	return 0
}

// Keys lists the keys of the footer.
func (d *Form) Keys(f Frame) []keys.Binding { return f.Keys.Footer(keys.Form, d.has()) }

// Paste puts text into the line.
func (d *Form) Paste(text string) { d.insert(strings.TrimSpace(text)) }

func (d *Form) insert(text string) {
	if d.old {
		d.typed[d.at] = entry.Entry{}
	}
	d.typed[d.at].Insert(text)
	d.old, d.touched, d.refused = false, true, ""
}

// set puts a text in the place of a line's.
func (d *Form) set(i int, text string) {
	d.typed[i] = entry.New(text)
	d.touched, d.refused = true, ""
}

// Press types, goes to another line, keeps or leaves the form.
func (d *Form) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.Form, d.has(), k.String()); ok {
		return d.Act(b.ID, f)
	}
	word := slices.Contains(d.Fields[d.at].Words, d.text(d.at)) || d.text(d.at) == ""
	switch {
	case k.Text == " " && d.has() == keys.Words && word:
		d.flip(1)
	case k.Text != "" && !k.Mod.Contains(tea.ModAlt):
		d.insert(k.Text)
	case d.typed[d.at].Press(k):
		d.old, d.touched, d.refused = false, true, ""
	default:
		return Result{Refused: f.Keys.Fill(keys.Form, keys.Shown(k.String())+": a form is being filled; {commit} goes on and keeps it, {close} leaves it")}
	}
	return Result{}
}

// Act does what a key of the form comes to.
func (d *Form) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close:
		return Result{Close: true}
	case keys.Commit:
		return d.next(f)
	case keys.KeepAll:
		return d.keep(f)
	case keys.NextThing:
		d.goTo((d.at + 1) % len(d.Fields))
	case keys.PrevThing:
		d.goTo((d.at + len(d.Fields) - 1) % len(d.Fields))
	case keys.Flip, keys.FlipBack:
		if d.has() == 0 {
			return Result{Refused: "no words are usual in this line; type into it"}
		}
		d.flip(map[keys.ID]int{keys.Flip: 1, keys.FlipBack: -1}[id])
	}
	return Result{}
}

// flip puts another of the words that are usual into the line.
func (d *Form) flip(by int) {
	words := d.Fields[d.at].Words
	i := slices.Index(words, d.text(d.at))
	if i < 0 && by < 0 {
		i = 0
	}
	d.set(d.at, words[(i+by+len(words))%len(words)])
	d.old = true
}

// next goes to the next line in which nothing stands; where none does, it keeps the form.
func (d *Form) next(f Frame) Result {
	for i := d.at + 1; i < len(d.Fields); i++ {
		if d.text(i) == "" {
			d.goTo(i)
			return Result{}
		}
	}
	return d.keep(f)
}

// keep hands the lines on. What is missing or wrong is gone to and said.
func (d *Form) keep(Frame) Result {
	for i, f := range d.Fields {
		if f.Need && d.text(i) == "" {
			d.goTo(i)
			d.refused = f.Label + ": this is missing"
			return Result{}
		}
	}
	cmd, err := d.Done(d.texts())
	if err != nil {
		d.refused = err.Error()
		if wrong := (WrongFieldError{}); errors.As(err, &wrong) {
			d.goTo(max(slices.IndexFunc(d.Fields, func(f Field) bool { return f.Key == wrong.Key }), 0))
		}
		return Result{}
	}
	return Result{Close: true, Do: func() tea.Cmd { return cmd }}
}

// Refuse says at the form why it was not taken; it is to be opened again.
func (d *Form) Refuse(why string) { d.refused = why }

// Away leaves the form as long as nothing was typed into it.
func (d *Form) Away(f Frame) Result {
	if d.touched {
		return Result{Refused: f.Keys.Fill(keys.Form, keptTyped)}
	}
	return Result{Close: true}
}

// Wheel goes to another line.
func (d *Form) Wheel(by int, _ Frame) { d.goTo(min(max(d.at+by, 0), len(d.Fields)-1)) }

// parts is how a form is laid out in a frame: the text over it, what is said under it, and how many of its lines are in sight from which.
type formParts struct {
	above, below []string
	wrong        int // the lines of below from this one on are why it is refused
	rows, first  int
}

func (d *Form) parts(f Frame) formParts {
	p := formParts{above: screen.Wrap(d.Text, f.room())}
	hint := d.Fields[d.at].Hint
	if words := d.Fields[d.at].Words; len(words) > 0 {
		hint = strings.TrimPrefix(hint+"; usual: "+strings.Join(words, ", "), "; ")
	}
	const mostHint = 3
	p.below = screen.Wrap(hint, f.room())
	p.below = p.below[:min(len(p.below), mostHint)]
	p.wrong = len(p.below)
	if d.refused != "" {
		p.below = append(p.below, screen.Wrap("× "+d.refused, f.room())...)
	}
	const edges, rule = 2, 1
	p.rows = max(min(len(d.Fields), f.H-feet-edges-rule-len(p.above)-len(p.below)), 1)
	p.first = min(max(d.at-p.rows/2, 0), len(d.Fields)-p.rows)
	return p
}

// Box is where the form stands.
func (d *Form) Box(f Frame) image.Rectangle {
	p := d.parts(f)
	const edges, rule = 2, 1
	return f.box(f.room()+4, len(p.above)+p.rows+rule+len(p.below)+edges)
}

// Click goes to the line under the pointer.
func (d *Form) Click(at image.Point, f Frame) Result {
	in, p := inside(d.Box(f)), d.parts(f)
	if i := at.Y - in.Min.Y - len(p.above); at.In(in) && i >= 0 && i < p.rows {
		d.goTo(p.first + i)
	}
	return Result{}
}

// labelW is the room that the labels take.
func (d *Form) labelW(w int) int {
	most := 0
	for _, f := range d.Fields {
		most = max(most, screen.Width(f.Label))
	}
	return min(most, w/2)
}

// Draw draws the lines, what is said of the one with the cursor, and why the form was refused.
func (d *Form) Draw(a screen.Area, f Frame, l look.Look) {
	title := d.Title
	p := d.parts(f)
	if p.rows < len(d.Fields) {
		title = fmt.Sprintf("%s, line %d of %d", title, d.at+1, len(d.Fields))
	}
	in := boxed(a, d.Box(f), title, l)
	y := 0
	for _, line := range p.above {
		in.Text(0, y, line, l.Quiet)
		y++
	}
	for i := range p.rows {
		d.drawField(in.Cut(0, y, in.W(), 1), p.first+i, l)
		y++
	}
	for x := range in.W() {
		in.Text(x, y, "─", l.Rule)
	}
	for i, line := range p.below {
		st := l.Quiet
		if i >= p.wrong {
			st = l.Wrong
		}
		in.Text(0, y+1+i, line, st)
	}
}

// drawField draws a line. One that the form cannot be kept without is marked as long as it is empty.
func (d *Form) drawField(a screen.Area, i int, l look.Look) {
	const mark = 2
	w := d.labelW(a.W())
	f, text := d.Fields[i], d.text(i)
	if i == d.at {
		a.Text(0, 0, "►", l.Focus)
	}
	st := l.Text
	if f.Need && text == "" {
		a.Right(mark+w+2, 0, "*", l.Caution)
	}
	a.Text(mark, 0, screen.Clip(f.Label, w), l.Quiet)
	x := mark + w + 3
	end := a.Text(x, 0, screen.Clip(text, a.W()-x), st)
	if i == d.at {
		end = max(end+1, x+1)
		d.typed[i].Draw(a, x, 0, a.W()-x, l.Typing)
		if d.old {
			a.Restyle(x, 0, screen.Width(text), func(s screen.Style) screen.Style { return s.With(screen.Reverse) })
		}
	}
	if d.About == nil {
		return
	}
	if said := d.About(f.Key, text); said != "" && end+2+screen.Width(said) <= a.W() {
		a.Right(a.W(), 0, said, l.Quiet)
	}
}
