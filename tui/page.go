package tui

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// line is one line of a page: words in front that stand out, then text that is wrapped under itself.
type line struct {
	lead  string
	style screen.Style
	text  string
	quiet bool
}

// page is text to read: it scrolls, and typing searches it.
type page struct {
	title string
	leadW int
	lines []line
	typed entry.Entry
	top   int
}

func (p *page) mode() keys.Mode { return keys.Page }

func (p *page) paste(text string) { p.typed.Insert(text); p.top = 0 }

func (p *page) wheel(by int) { p.top = max(p.top+by, 0) }

func (p *page) click(*Model, image.Point) tea.Cmd { return nil }

func (p *page) rect(a screen.Area) image.Rectangle {
	return middle(a, min(100, a.W()-2), a.H()-2)
}

func (p *page) press(m *Model, k tea.KeyPressMsg) tea.Cmd {
	b, _ := keys.Lookup(keys.Page, 0, k.String())
	a := screen.New(m.w, m.h).Area()
	rows := p.rect(a).Dy() - 3
	switch b.ID {
	case keys.Close:
		m.pop()
		return nil
	case keys.Up:
		p.top--
	case keys.Down:
		p.top++
	case keys.PageUp:
		p.top -= rows
	case keys.PageDown:
		p.top += rows
	default:
		if k.Text != "" {
			p.typed.Insert(k.Text)
			p.top = 0
		} else if p.typed.Press(k) {
			p.top = 0
		}
	}
	p.top = max(min(p.top, len(p.wrapped(p.rect(a).Dx()-4))-rows), 0)
	return nil
}

// wrapped is the lines that match what is typed, broken to a width.
func (p *page) wrapped(w int) []line {
	find := strings.ToLower(strings.TrimSpace(p.typed.Text()))
	var out []line
	for _, l := range p.lines {
		if find != "" && !strings.Contains(strings.ToLower(l.lead+" "+l.text), find) {
			continue
		}
		parts := screen.Wrap(l.text, max(w-p.leadW, 10))
		if len(parts) == 0 {
			parts = []string{""}
		}
		for i, part := range parts {
			next := line{text: part, quiet: l.quiet}
			if i == 0 {
				next.lead, next.style = l.lead, l.style
			}
			out = append(out, next)
		}
	}
	return out
}

func (p *page) draw(m *Model, a screen.Area) {
	in := m.boxed(a, p.rect(a), p.title)
	in.Text(0, 0, "search", m.look.Quiet)
	p.typed.Draw(in, 7, 0, in.W()-7, m.look.Typing)
	body := in.Cut(0, 1, in.W(), in.H()-1)
	lines := p.wrapped(in.W())
	if len(lines) == 0 {
		body.Text(0, 0, "nothing matches", m.look.Quiet)
	}
	top := max(min(p.top, len(lines)-body.H()), 0)
	for y := range min(body.H(), len(lines)-top) {
		l := lines[top+y]
		st := screen.Style{}
		if l.quiet {
			st = m.look.Quiet
		}
		x := p.leadW
		if l.text == "" || screen.Width(l.lead) >= p.leadW {
			x = screen.Width(l.lead) + 1
		}
		body.Text(0, y, l.lead, l.style)
		body.Text(x, y, l.text, st)
	}
	if top+body.H() < len(lines) {
		body.Right(body.W(), body.H()-1, "↓ more", m.look.Accent)
	}
}

// helpPage lists every key from the one table; a key that cannot act now says why.
func (m *Model) helpPage() *page {
	p := &page{title: "Every key", leadW: 22}
	for mode := range keys.Modes {
		if mode > 0 {
			p.lines = append(p.lines, line{})
		}
		p.lines = append(p.lines, line{lead: keys.Mode(mode).String(), style: m.look.Focus})
		for _, b := range keys.Table() {
			if int(b.Mode) != mode {
				continue
			}
			p.lines = append(p.lines, line{lead: "  " + b.Shown(), style: m.look.Accent, text: b.Help})
			if why := m.whyNot(b); why != "" {
				p.lines = append(p.lines, line{text: "not now: " + why, quiet: true})
			}
		}
	}
	return p
}

// whyNot says why a key of the bench cannot act here and now.
func (m *Model) whyNot(b keys.Binding) string {
	if b.Mode != keys.Bench || len(b.Keys) == 0 {
		return ""
	}
	if !b.Acts(has(m.at().Kind)) {
		return "not in the panel " + m.bench.title(m.at())
	}
	return m.cannot(b.ID)
}

// warningsPage lists every warning with what stands behind it and what to do.
func (m *Model) warningsPage() *page {
	p := &page{title: "To know before lye meets oil", leadW: 12}
	for _, w := range m.bench.warnings {
		p.lines = append(p.lines,
			line{lead: look.Mark(w.Severity) + " " + string(w.Severity), style: m.look.Severity(w.Severity), text: w.Text},
			line{lead: "  do", style: m.look.Quiet, text: w.Do},
			line{text: w.Where + ", " + w.Code + ": " + meaning(w.Code), quiet: true}, line{})
	}
	if len(p.lines) == 0 {
		p.lines = []line{{text: "nothing stands against this plan"}}
	}
	return p
}

func meaning(code string) string {
	for _, c := range pour.Codes() {
		if c.Code == code {
			return c.Meaning
		}
	}
	return ""
}
