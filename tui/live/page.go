package live

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// line is one line of a page: words in front that stand out, then text that is wrapped under itself.
type line struct {
	lead  string
	style screen.Style
	text  string
	quiet bool
}

// page is text to read; it scrolls.
type page struct {
	title string
	lines []line
	top   int
}

// pageLeadW is the room for what stands in front of a line.
const pageLeadW = 16

func (m *Model) pressPage(k tea.KeyPressMsg) {
	p := m.page
	rows := m.h - 4
	switch b, _ := lookup(keys.Page, k.String()); b.ID {
	case keys.Close:
		m.page = nil
		return
	case keys.Up:
		p.top--
	case keys.Down:
		p.top++
	case keys.PageUp:
		p.top -= rows
	case keys.PageDown:
		p.top += rows
	}
	p.top = max(min(p.top, len(p.wrapped(m.w-4))-rows), 0)
}

// wrapped is the page's lines broken to a width.
func (p *page) wrapped(w int) []line {
	var out []line
	for _, l := range p.lines {
		parts := screen.Wrap(l.text, max(w-pageLeadW, 10))
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

func (m *Model) drawPage(a screen.Area) {
	p := m.page
	a.Clear()
	in := a.Box(m.look.Focus)
	a.Text(2, 0, screen.Clip(" "+p.title+" ", a.W()-4), m.look.Focus)
	in = in.Cut(1, 0, in.W()-2, in.H())
	lines := p.wrapped(in.W())
	top := max(min(p.top, len(lines)-in.H()), 0)
	for y := range min(in.H(), len(lines)-top) {
		l := lines[top+y]
		st := m.look.Text
		if l.quiet {
			st = m.look.Quiet
		}
		in.Text(0, y, l.lead, l.style)
		x := pageLeadW
		if screen.Width(l.lead) >= pageLeadW {
			x = screen.Width(l.lead) + 1
		}
		in.Text(x, y, l.text, st)
	}
	foot := " Esc closes "
	if top+in.H() < len(lines) {
		foot = " ↓ more · Space turns the page · Esc closes "
	}
	a.Right(a.W()-2, a.H()-1, screen.Clip(foot, a.W()-4), m.look.Accent)
}

// helpPage lists every key; a key that cannot act now says why.
func (m *Model) helpPage() *page {
	p := &page{title: "Every key"}
	for i, mode := range modes() {
		if i > 0 {
			p.lines = append(p.lines, line{})
		}
		p.lines = append(p.lines, line{lead: heading(mode), style: m.look.Focus})
		for _, b := range table() {
			if b.Mode != mode {
				continue
			}
			p.lines = append(p.lines, line{lead: shown(b), style: m.look.Accent, text: b.Help})
			if why := m.cannot(b.ID); mode == keys.Bench && why != "" {
				p.lines = append(p.lines, line{text: "not now: " + why, quiet: true})
			}
		}
	}
	return p
}
