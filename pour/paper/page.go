package paper

import (
	"fmt"
	"strings"
)

// Columns of a page. The right-hand ones hold the planned figure and the room to write the actual one.
const (
	pageWidth   = 80
	numberWidth = 6  // "28.12 "
	figureWidth = 15 // "10:01 +0.75 min"
	gap         = 2
	leastText   = 20 // narrower than this and a figure goes on a line of its own
	blank       = "________"
	box         = "[ ] "
)

// page writes plain text that no line of leaves the paper, with numbered items.
type page struct {
	out     strings.Builder
	section int
	item    int
}

// row is one item to tick: what to do, the planned figure, and whether there is room to write the actual one.
type row struct {
	text   string
	figure string
	write  bool
}

// heading starts a section and names the two columns on the right; its items are numbered from 1.
func (p *page) heading(section int, title, figure, actual string) {
	p.section, p.item = section, 0
	right := fmt.Sprintf("%*s%*s%-*s", figureWidth, figure, gap, "", len(blank), actual)
	p.raw("")
	p.raw(padded(fmt.Sprintf("%-*s%s", numberWidth, fmt.Sprint(section), strings.ToUpper(title)), pageWidth-width(right)) + right)
	p.rule("-")
}

// absent keeps the number of a section that this plan does not need.
func (p *page) absent(number, title, reason string) {
	p.raw("")
	lead := fmt.Sprintf("%-*s", numberWidth, number)
	p.wrapped(lead, strings.ToUpper(title)+": "+reason)
}

// tick writes the next item with its box.
func (p *page) tick(r row) {
	p.item++
	p.boxed(fmt.Sprintf("%-*s", numberWidth-1, fmt.Sprintf("%d.%d", p.section, p.item))+" "+box, r)
}

// more writes a further row of the item before it, with a box of its own.
func (p *page) more(r row) { p.boxed(strings.Repeat(" ", numberWidth)+box, r) }

// boxed writes a row behind its lead.
func (p *page) boxed(lead string, r row) {
	if r.figure == "" && !r.write {
		p.wrapped(lead, r.text)
		return
	}
	right := p.right(r)
	room := pageWidth - width(lead) - width(right)
	if room < leastText {
		p.wrapped(lead, r.text)
		p.wrapped(strings.Repeat(" ", width(lead)), plain(r.figure)+" "+blank)
		return
	}
	lines := wrap(plain(r.text), room-gap)
	for i, l := range lines {
		if i == len(lines)-1 {
			l = leader(l, room) + right
		}
		p.raw(lead + l)
		lead = strings.Repeat(" ", width(lead))
	}
}

// right draws the two right-hand columns of a row.
func (p *page) right(r row) string {
	figure := plain(r.figure)
	figure = strings.Repeat(" ", max(0, figureWidth-width(figure))) + figure
	if !r.write {
		return figure + strings.Repeat(" ", gap+len(blank))
	}
	return figure + strings.Repeat(" ", gap) + blank
}

// skip passes over the number of an item that this plan does not need, so that those after it keep theirs.
func (p *page) skip() { p.item++ }

// info writes words under the item before them.
func (p *page) info(text string) { p.wrapped(strings.Repeat(" ", numberWidth+len(box)), text) }

// alert writes a warning under the item it belongs to.
func (p *page) alert(text string) {
	p.wrapped(strings.Repeat(" ", numberWidth)+"!   ", text)
}

// wrapped writes text behind a lead, the lines after the first indented to match.
func (p *page) wrapped(lead, text string) {
	for _, l := range wrap(plain(text), pageWidth-width(lead)) {
		p.raw(lead + l)
		lead = strings.Repeat(" ", width(lead))
	}
}

func (p *page) rule(mark string) { p.raw(strings.Repeat(mark, pageWidth)) }

func (p *page) raw(line string) {
	p.out.WriteString(strings.TrimRight(line, " "))
	p.out.WriteByte('\n')
}
