package dialog

import (
	"image"
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
	Quiet bool // the text is drawn as an aside

	Rests bool           // the cursor rests on it
	Do    func() tea.Cmd // what Enter does there once the page is closed; nil: nothing, and Why says why
	Why   string
	of    int // broken: the line it is a part of
}

// Page is text to read: it scrolls, and typing searches it.
type Page struct {
	Title string
	LeadW int // the room for the words in front, cells
	Lines []Line

	still
	search entry.Entry
	top    int
	at     int // the line the cursor rests on, on a page that has such lines
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
func (p *Page) Keys() []keys.Binding { return keys.Footer(keys.Page, p.has()) }

// Paste puts text into the search.
func (p *Page) Paste(text string) { p.search.Insert(text); p.top = 0 }

// Wheel scrolls.
func (p *Page) Wheel(by int, f Frame) { p.scroll(by*wheelRows, f) }

// rect is as high as all lines take, whatever is searched for.
func (p *Page) rect(f Frame) image.Rectangle {
	w := min(pageW, f.W-2)
	return f.box(w, len(p.broken(w-4-p.margin(), ""))+3)
}

// rows is how many lines of text are in sight.
func (p *Page) rows(f Frame) int { return inside(p.rect(f)).Dy() - 1 }

func (p *Page) scroll(by int, f Frame) {
	p.top = max(min(p.top+by, len(p.wrapped(p.textW(f)))-p.rows(f)), 0)
}

// Press scrolls, searches or closes. A key that is a letter too scrolls only while nothing is searched for.
func (p *Page) Press(k tea.KeyPressMsg, f Frame) Result {
	b, _ := keys.Lookup(keys.Page, p.has(), k.String())
	if k.Text != "" && p.search.Text() != "" {
		b = keys.Binding{}
	}
	switch b.ID {
	case keys.Close:
		return Result{Close: true}
	case keys.Choose:
		return p.choose()
	case keys.Up:
		p.step(-1, f)
	case keys.Down:
		p.step(1, f)
	case keys.PageUp:
		p.scroll(-p.rows(f), f)
	case keys.PageDown:
		p.scroll(p.rows(f), f)
	default:
		if typed(&p.search, k) {
			p.top = 0
		}
	}
	return Result{}
}

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
	for n, l := range p.Lines {
		if find != "" && !strings.Contains(strings.ToLower(l.Lead+" "+l.Text), find) {
			continue
		}
		parts := screen.Wrap(l.Text, max(w-p.LeadW, 10))
		if len(parts) == 0 {
			parts = []string{""}
		}
		for i, part := range parts {
			next := Line{Text: part, Quiet: l.Quiet, of: n}
			if i == 0 {
				next.Lead, next.Style = l.Lead, l.Style
			}
			out = append(out, next)
		}
	}
	return out
}

// Draw draws what is in sight.
func (p *Page) Draw(a screen.Area, f Frame, l look.Look) {
	in := boxed(a, p.rect(f), p.Title, l)
	drawSearch(in, p.search, l)
	body := in.Cut(0, 1, in.W(), in.H()-1)
	lines := p.wrapped(p.textW(f))
	if len(lines) == 0 {
		body.Text(0, 0, "nothing matches", l.Quiet)
	}
	top := max(min(p.top, len(lines)-body.H()), 0)
	at := p.cursor()
	for y := range min(body.H(), len(lines)-top) {
		p.drawLine(body.Cut(0, y, body.W(), 1), lines[top+y], at >= 0 && lines[top+y].of == at, l)
	}
	if top+body.H() < len(lines) {
		body.Right(body.W(), body.H()-1, "↓ more", l.Accent)
	}
}

func (p *Page) drawLine(a screen.Area, line Line, at bool, l look.Look) {
	st := l.Text
	if line.Quiet {
		st = l.Quiet
	}
	if at {
		a.Text(0, 0, "►", l.Focus)
		st = st.With(screen.Reverse)
	}
	a = a.Cut(p.margin(), 0, a.W()-p.margin(), 1)
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
