package dialog

import (
	"image"
	"math"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Line is one line of a page: words in front that stand out, then text that is wrapped under itself.
type Line struct {
	Lead  string
	Style screen.Style // of the words in front
	Text  string
	Quiet bool           // the text is drawn as an aside
	Under string         // said under the text, as an aside
	Do    func() tea.Cmd // what the line says can be done; nil: nothing
	Why   string         // why a line that can be highlighted does nothing
	Group int            // lines of one group are found together; 0: the line stands by itself

	of int // of a broken line: which of those that can be done it belongs to, from 1; 0: none
}

// able says whether a line can be highlighted.
func (l Line) able() bool { return l.Do != nil || l.Why != "" }

// Page is text to read: it scrolls, and typing searches it.
type Page struct {
	Title string
	LeadW int // the room for the words in front, cells
	Lines []Line
	Picks bool // its lines can be done before anything is searched for

	search entry.Entry
	top    int
	at     int // the highlighted line, of those found that can be done
}

// NewPage returns a page of plain text, a line of the text to each.
func NewPage(title, text string) *Page {
	p := &Page{Title: title}
	for l := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		p.Lines = append(p.Lines, Line{Text: l})
	}
	return p
}

// wheelRows is how far one notch of the wheel goes.
const wheelRows = 3

// pageW is the width a page likes.
const pageW = 120

// Keys lists the keys of the footer.
func (p *Page) Keys(f Frame) []keys.Binding { return f.Keys.Footer(keys.Page, p.has()) }

// Paste puts text into the search.
func (p *Page) Paste(text string) { p.search.Insert(text); p.top, p.at = 0, 0 }

// Wheel scrolls.
func (p *Page) Wheel(by int, f Frame) { p.scroll(by*wheelRows, f) }

// Box is as high as all lines take, whatever is searched for.
func (p *Page) Box(f Frame) image.Rectangle {
	w := min(pageW, f.W-2)
	return f.box(w, len(p.broken(w-4, ""))+3)
}

// rows is how many lines of text are in sight.
func (p *Page) rows(f Frame) int { return inside(p.Box(f)).Dy() - 1 }

func (p *Page) scroll(by int, f Frame) {
	p.top = max(min(p.top+by, len(p.wrapped(inside(p.Box(f)).Dx()))-p.rows(f)), 0)
}

// Refill puts other lines on the page and keeps the highlighted one, as far as it is still there.
func (p *Page) Refill(lines []Line) {
	was := p.ables()
	p.Lines = lines
	if p.at >= len(was) {
		return
	}
	for i, l := range p.ables() {
		if l.Lead == was[p.at].Lead && l.Text == was[p.at].Text {
			p.at = i
			return
		}
	}
}

// ables lists the lines that are found and can be highlighted.
func (p *Page) ables() []Line {
	var out []Line
	for _, l := range p.wrapped(math.MaxInt) {
		if l.able() {
			out = append(out, l)
		}
	}
	return out
}

// has is what the page has for its keys.
func (p *Page) has() keys.Need {
	if (p.Picks || p.search.Text() != "") && slices.ContainsFunc(p.Lines, Line.able) {
		return keys.Found
	}
	return keys.Reading
}

// Press scrolls, searches or closes. A key that is a letter too scrolls only while nothing is searched for.
func (p *Page) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.Page, p.has(), k.String()); ok && (k.Text == "" || p.search.Text() == "") {
		return p.Act(b.ID, f)
	}
	if typed(&p.search, k) {
		p.top, p.at = 0, 0
	}
	return Result{}
}

// Act does what a key of the page comes to.
func (p *Page) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close, keys.Done:
		return Result{Close: true}
	case keys.Choose:
		return p.take(f)
	case keys.Up:
		p.step(-1, f)
	case keys.Down:
		p.step(1, f)
	case keys.PageUp:
		p.scroll(-p.rows(f), f)
	case keys.PageDown:
		p.scroll(p.rows(f), f)
	case keys.Find:
		return Result{Refused: typeToSearch}
	}
	return Result{}
}

// Away closes the page.
func (p *Page) Away(Frame) Result { return Result{Close: true} }

// typed types a key into a line and says whether it was one that can be typed or that edits.
func typed(e *entry.Entry, k tea.KeyPressMsg) bool {
	if k.Text != "" {
		e.Insert(k.Text)
		return true
	}
	return e.Press(k)
}

// wrapped is the lines that hold what is searched for, broken to a width.
func (p *Page) wrapped(w int) []Line {
	return p.broken(w, strings.ToLower(strings.TrimSpace(p.search.Text())))
}

// broken is the lines that hold some words, all of them for none, broken to a width.
func (p *Page) broken(w int, find string) []Line {
	var out []Line
	able, groups := 0, map[int]bool{}
	holds := func(l Line) bool { return strings.Contains(strings.ToLower(l.Lead+" "+l.Text+" "+l.Under), find) }
	for _, l := range p.Lines {
		groups[l.Group] = groups[l.Group] || l.Group != 0 && holds(l)
	}
	for _, l := range p.Lines {
		if find != "" && !holds(l) && !groups[l.Group] {
			continue
		}
		of := 0
		if l.able() {
			able++
			of = able
		}
		for i, part := range p.parts(l, w) {
			next := Line{Text: part, Quiet: l.Quiet, of: of}
			if i == 0 {
				next.Lead, next.Style, next.Do, next.Why = l.Lead, l.Style, l.Do, l.Why
			}
			out = append(out, next)
		}
		for _, part := range screen.Wrap(l.Under, max(w-p.LeadW, 10)) {
			out = append(out, Line{Text: part, Quiet: true, of: of})
		}
	}
	return out
}

// parts is the text of a line broken to a width. What fits keeps its columns; behind words in front that leave too little room it begins below them.
func (p *Page) parts(l Line, w int) []string {
	parts, room := []string{l.Text}, max(w-p.LeadW, 10)
	if screen.Width(l.Text) > room {
		parts = screen.Wrap(l.Text, room)
	}
	if len(parts) == 0 {
		return []string{""}
	}
	if lead := screen.Width(l.Lead); lead >= p.LeadW && lead+1+screen.Width(parts[0]) > w {
		parts = append([]string{""}, parts...)
	}
	return parts
}

// found is where the lines that can be done stand among those broken to the page's width, once something is searched for.
func (p *Page) found(f Frame) (lines []Line, at []int) {
	lines = p.wrapped(inside(p.Box(f)).Dx())
	for i, l := range lines {
		if l.able() && p.has() == keys.Found {
			at = append(at, i)
		}
	}
	return lines, at
}

// step goes to another line that can be done, where such are found; else it scrolls.
func (p *Page) step(by int, f Frame) {
	_, at := p.found(f)
	if p.at+by < 0 || p.at+by >= len(at) { // to what stands above the first and below the last
		p.scroll(by, f)
		return
	}
	p.at += by
	rows := p.rows(f)
	p.top = max(min(p.top, at[p.at]), at[p.at]-rows+2)
	p.scroll(0, f)
}

// take does what the highlighted line says.
func (p *Page) take(f Frame) Result {
	lines, at := p.found(f)
	if len(at) == 0 {
		return Result{Refused: f.Keys.Fill(keys.Page, "nothing that was found can be done from here; {close} closes the page")}
	}
	l := lines[at[min(p.at, len(at)-1)]]
	if l.Do == nil {
		return Result{Refused: l.Why}
	}
	return Result{Close: true, Do: l.Do}
}

// Click highlights a line that can be done, or does the highlighted one.
func (p *Page) Click(at image.Point, f Frame) Result {
	in := inside(p.Box(f))
	in.Min.Y++ // the search
	lines, able := p.found(f)
	i := max(min(p.top, len(lines)-in.Dy()), 0) + at.Y - in.Min.Y
	switch {
	case !at.In(in) || i >= len(lines) || len(able) == 0 || lines[i].of == 0:
	case lines[i].of-1 == p.at:
		return p.take(f)
	default:
		p.at = lines[i].of - 1
	}
	return Result{}
}

// Draw draws what is in sight.
func (p *Page) Draw(a screen.Area, f Frame, l look.Look) {
	in := boxed(a, p.Box(f), p.Title, l)
	drawSearch(in, p.search, l)
	body := in.Cut(0, 1, in.W(), in.H()-1)
	lines := p.wrapped(in.W())
	if len(lines) == 0 {
		body.Text(0, 0, "nothing matches", l.Quiet)
	}
	top := max(min(p.top, len(lines)-body.H()), 0)
	for y := range min(body.H(), len(lines)-top) {
		line := body.Cut(0, y, body.W(), 1)
		p.drawLine(line, lines[top+y], l)
		if p.has() == keys.Found && lines[top+y].of == p.at+1 {
			highlight(line, lines[top+y].able(), l)
		}
	}
	if top+body.H() < len(lines) {
		body.Right(body.W(), body.H()-1, "↓ more", l.Accent)
	}
}

// highlight marks a line that Enter does, the first of it by a sign.
func highlight(a screen.Area, first bool, l look.Look) {
	if first {
		a.Text(0, 0, "►", l.Focus)
		a.Focus(0, 0)
	}
	a.Restyle(2, 0, a.W()-2, func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
}

func (p *Page) drawLine(a screen.Area, line Line, l look.Look) {
	st := l.Text
	if line.Quiet {
		st = l.Quiet
	}
	x := p.LeadW
	if w := screen.Width(line.Lead); line.Text == "" || w >= p.LeadW && w > 0 {
		x = w + 1
	}
	a.Text(0, 0, line.Lead, line.Style)
	a.Text(x, 0, line.Text, st)
}

// drawSearch draws the line that typing searches by.
func drawSearch(a screen.Area, search entry.Entry, l look.Look) {
	a.Text(0, 0, "search", l.Quiet)
	search.Draw(a, 7, 0, a.W()-7, l.Typing)
}
