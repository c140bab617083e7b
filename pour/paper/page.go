package paper

import (
	"fmt"
	"strings"
)

// Columns of a page. The right-hand ones hold the planned figure and the room to write the actual one.
const (
	numberWidth = 6 // "28.12 "
	gap         = 2
	leastText   = 16 // narrower than this and a figure goes on a line of its own
	box         = "[ ] "
)

// format is how large the sheets are that a page is printed on, in letters, and how much room there is to write on them.
type format struct {
	wide, high int // columns and lines; no lines: a text without pages
	blank      string
	numbers    bool // its sections and items are numbered
	most       int  // how many sheets it should take at most; 0: as many as it wants
}

// fullFormat is plain paper with room for the number of every item.
func fullFormat() format { return format{wide: 80, high: 66, blank: "________", numbers: true} }

// benchFormat is plain paper without numbers.
func benchFormat() format { return format{wide: 80, high: 66, blank: "______", most: benchSheets} }

// largeFormat is half as many columns and lines, to be printed at twice the size.
func largeFormat() format { return format{wide: 40, high: 33, blank: "______"} }

// page writes plain text that no line of leaves the paper, with items to tick; [page.text] breaks it into sheets.
type page struct {
	format

	lines   []line
	heads   [][]string // of every section, said again where a sheet begins within it
	fresh   []int      // lines that had better begin a sheet, the best first
	tight   bool       // without empty lines
	joined  bool       // the next line belongs to the one before
	kept    int        // above 0: everything written belongs together
	section int
	item    int
}

// line is one line of a page.
type line struct {
	text   string
	joined bool // no sheet begins with it
	head   int  // its section: how many heads there were when it was written
}

// textPage is a page of 80 columns that is never broken into sheets.
func textPage() *page { return &page{format: format{wide: 80}} }

// row is one item to tick: what to do, the planned figure, and whether there is room to write the actual one.
type row struct {
	text   string
	figure string
	write  bool
}

// heading starts a section and names the two columns on the right; its items are numbered from 1.
func (p *page) heading(title, figure, actual string) {
	columns := ""
	if figure+actual != "" {
		columns = figure + strings.Repeat(" ", gap) + padded(actual, len(p.blank))
	}
	p.headed(title, columns)
}

// headed starts a section with the names of its columns, which end at the right.
func (p *page) headed(title, columns string) {
	p.section, p.item = p.section+1, 0
	lead := ""
	if p.numbers {
		lead = fmt.Sprintf("%-*d", numberWidth, p.section)
	}
	lines := wrap(strings.ToUpper(plain(title)), p.wide-len(lead))
	lines[0] = lead + lines[0]
	last := len(lines) - 1
	if width(lines[last])+gap+width(columns) > p.wide {
		lines, last = append(lines, ""), last+1
	}
	lines[last] = padded(lines[last], p.wide-width(columns)) + columns
	bare := p.bare()
	p.raw("")
	p.joined = bare
	p.heads = append(p.heads, append(lines, strings.Repeat("-", p.wide)))
	p.keep(func() {
		for _, l := range p.heads[len(p.heads)-1] {
			p.raw(l)
		}
	})
	p.joined = true
}

// bare says whether the last that was written is a heading: with nothing under it, it stays with what comes next, and no sheet ends with it.
func (p *page) bare() bool {
	last := len(p.lines) - 1
	return last >= 0 && p.joined && p.lines[last].text == strings.Repeat("-", p.wide)
}

// keep writes lines that no sheet may part.
func (p *page) keep(write func()) {
	p.kept++
	write()
	if p.kept--; p.kept == 0 {
		p.joined = false
	}
}

// tick writes the next item with its box.
func (p *page) tick(r row) {
	lead := box
	if p.numbers {
		p.item++
		lead = fmt.Sprintf("%-*s", numberWidth-1, fmt.Sprintf("%d.%d", p.section, p.item)) + " " + box
	}
	p.boxed(lead, r)
}

// more writes a further row of the item before it, with a box of its own, on the same sheet.
func (p *page) more(r row) {
	p.joined = true
	p.boxed(p.under()+box, r)
}

// under is the room in which the number of an item stands.
func (p *page) under() string {
	if p.numbers {
		return strings.Repeat(" ", numberWidth)
	}
	return ""
}

// boxed writes a row behind its lead. No sheet parts it.
func (p *page) boxed(lead string, r row) {
	p.keep(func() {
		if r.figure == "" && !r.write {
			p.wrapped(lead, r.text)
			return
		}
		right := p.right(r)
		room := p.wide - width(lead) - width(right)
		if room < leastText && width(plain(r.text)) > room-gap {
			p.wrapped(lead, r.text)
			p.wrapped(strings.Repeat(" ", width(lead)), strings.TrimSpace(right))
			return
		}
		lines := trail(plain(r.text), p.wide-width(lead), room-gap)
		last := len(lines) - 1
		lines[last] = leader(lines[last], room) + right
		for _, l := range led(lead, lines) {
			p.raw(l)
		}
	})
}

// right draws the two right-hand columns of a row; the words of a row without a figure have its room.
func (p *page) right(r row) string {
	actual := strings.Repeat(" ", len(p.blank))
	if r.write {
		actual = p.blank
	}
	return plain(r.figure) + strings.Repeat(" ", gap) + actual
}

// info writes words under the item before them.
func (p *page) info(text string) {
	p.joined = true
	p.keep(func() { p.wrapped(p.under()+strings.Repeat(" ", len(box)), text) })
}

// alert writes a warning under the item it belongs to.
func (p *page) alert(text string) {
	p.joined = true
	p.keep(func() { p.wrapped(p.under()+"!   ", text) })
}

// wrapped writes text behind a lead, the lines after the first indented to match.
func (p *page) wrapped(lead, text string) {
	for _, l := range led(lead, wrap(plain(text), p.wide-width(lead))) {
		p.raw(l)
	}
}

func (p *page) rule(mark string) { p.raw(strings.Repeat(mark, p.wide)) }

// raw writes one line as it is. Of lines kept together all but the first belong to the one before.
func (p *page) raw(text string) {
	p.lines = append(p.lines, line{strings.TrimRight(text, " "), p.joined, len(p.heads)})
	p.joined = p.kept > 0
}
