package dialog

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Pad is lines to type or to paste, with what is made of each beside it.
type Pad struct {
	Title string
	Hint  string                             // stands on the first line while nothing does
	Read  func(text string) Reading          // what is made of the text, a line of it to each of what stands beside
	Take  func(text string) (tea.Cmd, error) // takes the text; an error keeps the pad open

	lines   []entry.Entry
	at      int // the line typed in
	read    Reading
	refused string
}

// Reading is what is made of a text.
type Reading struct {
	Beside  []Line         // of each line, in their order; its words in front are a sign
	Instead map[int]string // what could stand in the place of a line
	Sum     []Line         // of all of it, each text in its line's style
}

// mostPadLines is how many lines a pad holds: what is more stands there as left out.
const mostPadLines = 200

// NewPad opens a pad on a text, with the cursor on a line of its own below it.
func NewPad(p Pad, text string) *Pad {
	p.lines = []entry.Entry{{}}
	p.Paste(text)
	return &p
}

// Keys lists the keys of the footer.
func (p *Pad) Keys(f Frame) []keys.Binding { return f.Keys.Footer(keys.Pad, 0) }

// text is all that stands on the pad.
func (p *Pad) text() string {
	all := make([]string, len(p.lines))
	for i, l := range p.lines {
		all[i] = l.Text()
	}
	return strings.Join(all, "\n")
}

// changed reads what stands there again.
func (p *Pad) changed() {
	p.refused = ""
	p.read = p.Read(p.text())
}

// Paste puts text in at the cursor, line by line. Where it has several, the cursor goes to a line of its own below them.
func (p *Pad) Paste(text string) {
	parts := strings.Split(strings.Trim(plain.Text(text), "\n"), "\n")
	for i, part := range parts {
		if i > 0 {
			p.open()
		}
		p.lines[p.at].Insert(part)
	}
	if len(parts) > 1 && p.lines[p.at].Text() != "" {
		p.open()
	}
	p.changed()
}

// open opens an empty line below the cursor's and goes there; a pad that is full stays as it is.
func (p *Pad) open() {
	if len(p.lines) >= mostPadLines {
		return
	}
	p.at++
	p.lines = append(p.lines, entry.Entry{})
	copy(p.lines[p.at+1:], p.lines[p.at:])
	p.lines[p.at] = entry.Entry{}
}

// Press types, goes about, or takes what stands there.
func (p *Pad) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.Pad, 0, k.String()); ok {
		return p.Act(b.ID, f)
	}
	if k.String() == "backspace" && p.lines[p.at].Text() == "" && p.at > 0 {
		p.lines = append(p.lines[:p.at], p.lines[p.at+1:]...)
		p.at--
	} else {
		typed(&p.lines[p.at], k)
	}
	p.changed()
	return Result{}
}

// Act does what a key of the pad comes to.
func (p *Pad) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close:
		return Result{Close: true}
	case keys.Commit:
		return p.enter()
	case keys.TakeMeant:
		return p.instead()
	case keys.Up:
		p.move(-1)
	case keys.Down:
		p.move(1)
	case keys.PageUp:
		p.move(-p.Box(f).Dy())
	case keys.PageDown:
		p.move(p.Box(f).Dy())
	}
	return Result{}
}

// Away leaves the pad as long as nothing stands on it.
func (p *Pad) Away(f Frame) Result {
	if strings.TrimSpace(p.text()) != "" {
		return Result{Refused: f.Keys.Fill(keys.Pad, keptTyped)}
	}
	return Result{Close: true}
}

// enter goes on to the next line; on an empty one it takes the text.
func (p *Pad) enter() Result {
	if p.lines[p.at].Text() != "" {
		if p.at == len(p.lines)-1 {
			p.open()
			p.changed()
		} else {
			p.at++
		}
		return Result{}
	}
	cmd, err := p.Take(p.text())
	if err != nil {
		p.refused = err.Error()
		return Result{}
	}
	return Result{Close: true, Do: func() tea.Cmd { return cmd }}
}

// instead puts what may be meant in the place of the cursor's line, or of the first line that has such.
func (p *Pad) instead() Result {
	for _, i := range append([]int{p.at}, p.places()...) {
		if meant, ok := p.read.Instead[i]; ok {
			p.lines[i] = entry.New(meant)
			p.changed()
			return Result{}
		}
	}
	return Result{Refused: "no line has a name that may be meant"}
}

func (p *Pad) places() []int {
	out := make([]int, len(p.lines))
	for i := range out {
		out[i] = i
	}
	return out
}

func (p *Pad) move(by int) { p.at = min(max(p.at+by, 0), len(p.lines)-1) }

// Wheel goes to another line.
func (p *Pad) Wheel(by int, _ Frame) { p.move(by) }

// leastPad is the height a pad has at least, so that it does not grow with every line.
const leastPad = 16

// Box has the room for all lines and what is said below them, as far as there is so much.
func (p *Pad) Box(f Frame) image.Rectangle {
	w := min(pageW, f.W-2)
	const edges, air, endless = 2, 1, 1 << 20
	rows := p.rows(0, w-4, endless)
	last := rows[len(rows)-1]
	return f.box(w, max(last.y+last.h+air+len(p.foot(w-4, look.Look{}))+edges, leastPad))
}

// padRow is a line of the pad as it stands on the screen.
type padRow struct {
	line   int
	y, h   int
	beside []string
}

// padTyped is the room for what is typed, in cells of a pad of that width.
func padTyped(w int) int { return (w - 4) * 45 / 100 }

// rows lays the lines out from one on, each as high as what stands beside it.
func (p *Pad) rows(from, w, h int) []padRow {
	var out []padRow
	y := 0
	for i := from; i < len(p.lines) && y < h; i++ {
		r := padRow{line: i, y: y, h: 1}
		if i < len(p.read.Beside) {
			r.beside = screen.Wrap(p.read.Beside[i].Text, w-padTyped(w)-6)
			r.h = max(len(r.beside), 1)
		}
		out = append(out, r)
		y += r.h
	}
	return out
}

// first is the first line in sight, so that all of the cursor's is.
func (p *Pad) first(w, h int) int {
	for from := 0; from < p.at; from++ {
		for _, r := range p.rows(from, w, h) {
			if r.line == p.at && r.y+r.h <= h {
				return from
			}
		}
	}
	return p.at
}

// foot is what is said below the lines.
func (p *Pad) foot(w int, l look.Look) []Line {
	var out []Line
	say := func(line Line) {
		for _, part := range screen.Wrap(line.Text, w) {
			out = append(out, Line{Text: part, Style: line.Style})
		}
	}
	for _, line := range p.read.Sum {
		say(line)
	}
	if p.refused != "" {
		say(Line{Text: "× " + p.refused, Style: l.Wrong})
	}
	return out
}

// Click goes to the line under the pointer.
func (p *Pad) Click(at image.Point, f Frame) Result {
	in := inside(p.Box(f))
	w, h := in.Dx(), p.body(in, look.Look{})
	for _, r := range p.rows(p.first(w, h), w, h) {
		if at.In(in) && at.Y-in.Min.Y >= r.y && at.Y-in.Min.Y < min(r.y+r.h, h) {
			p.at = r.line
		}
	}
	return Result{}
}

// body is how many lines of the inside are left for what is typed.
func (p *Pad) body(in image.Rectangle, l look.Look) int {
	return max(in.Dy()-len(p.foot(in.Dx(), l))-1, 1)
}

// Draw draws what was typed, what is made of it, and what all of it comes to.
func (p *Pad) Draw(a screen.Area, f Frame, l look.Look) {
	in := boxed(a, p.Box(f), p.Title, l)
	w, h := in.W(), p.body(inside(p.Box(f)), l)
	for _, r := range p.rows(p.first(w, h), w, h) {
		p.drawRow(in.Cut(0, r.y, w, min(r.h, h-r.y)), r, l)
	}
	if len(p.lines) == 1 && p.lines[0].Text() == "" {
		for y, text := range screen.Wrap(p.Hint, w-2) {
			in.Text(2, y+2, text, l.Quiet)
		}
	}
	for i, line := range p.foot(w, l) {
		in.Text(0, h+1+i, line.Text, line.Style)
	}
}

func (p *Pad) drawRow(a screen.Area, r padRow, l look.Look) {
	room := padTyped(a.W())
	if r.line == p.at {
		a.Text(0, 0, "►", l.Focus)
		p.lines[r.line].Draw(a, 2, 0, room, l.Typing)
	} else {
		a.Text(2, 0, screen.Clip(p.lines[r.line].Text(), room), l.Text)
	}
	if r.line >= len(p.read.Beside) {
		return
	}
	line := p.read.Beside[r.line]
	a.Text(room+3, 0, line.Lead, line.Style)
	st := l.Text
	if line.Quiet {
		st = l.Quiet
	}
	for y, part := range r.beside {
		a.Text(room+5, y, part, st)
	}
}
