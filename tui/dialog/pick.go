package dialog

import (
	"slices"

	"pourbench/tui/keys"
)

// A page may have lines that its cursor rests on, some of which do something.

// has is what the page has for keys to act on.
func (p *Page) has() keys.Need {
	if p.cursor() >= 0 {
		return keys.Resting
	}
	return 0
}

// margin is the room for the mark of the line under the cursor.
func (p *Page) margin() int {
	if slices.ContainsFunc(p.Lines, func(l Line) bool { return l.Rests }) {
		return 2
	}
	return 0
}

// textW is the width of the page's text.
func (p *Page) textW(f Frame) int { return inside(p.rect(f)).Dx() - p.margin() }

// rests are the lines in sight of the search on which the cursor may rest.
func (p *Page) rests() []int {
	var out []int
	for _, l := range p.wrapped(pageW) {
		if p.Lines[l.of].Rests && !slices.Contains(out, l.of) {
			out = append(out, l.of)
		}
	}
	return out
}

// cursor is the line under the cursor: the first it can rest on from where it stood; below 0: the page has none.
func (p *Page) cursor() int {
	all := p.rests()
	if len(all) == 0 {
		return -1
	}
	i, _ := slices.BinarySearch(all, p.at)
	return all[min(i, len(all)-1)]
}

// step takes the cursor to another line and keeps it in sight; a page without one scrolls.
func (p *Page) step(by int, f Frame) {
	all := p.rests()
	i := slices.Index(all, p.cursor())
	if i < 0 || i+by < 0 || i+by >= len(all) {
		p.scroll(by, f) // to what stands above the first and below the last
		return
	}
	p.at = all[i+by]
	lines, rows := p.wrapped(p.textW(f)), p.rows(f)
	first := slices.IndexFunc(lines, func(l Line) bool { return l.of == p.at })
	last := first
	for last+1 < len(lines) && lines[last+1].of <= p.at+1 { // what follows it belongs to it
		last++
	}
	p.top = min(max(p.top, last-rows+1), first)
}

// choose does what the line under the cursor does.
func (p *Page) choose() Result {
	l := p.Lines[p.cursor()]
	if l.Do == nil {
		return Result{Refused: l.Why}
	}
	return Result{Close: true, Do: l.Do}
}
