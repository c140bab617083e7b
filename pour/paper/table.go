package paper

import (
	"slices"
	"strings"
)

// column is one column of a table. What is a figure stands at the right of it, what is none is wrapped; a table takes as much room for its
// words as its figures leave.
type column struct {
	head   string
	figure bool
	write  bool // room to write, where a cell has its blank
}

// leastWords is how narrow a column of words may get.
const leastWords = 14

// table writes a heading and rows of cells under it. Where the words would get too narrow each row is written as lines, one below the other.
func (p *page) table(title string, columns []column, rows [][]string) {
	widths, ok := p.widths(columns, rows)
	if !ok {
		p.heading(title, "", "")
		for _, r := range rows {
			p.joined = p.joined || r[0] == ""
			p.stacked(columns, r)
			p.joined = leads(r)
		}
		return
	}
	heads := make([]string, len(columns))
	for i, c := range columns {
		heads[i] = c.head
	}
	heads[0] = ""
	head := p.cells(columns, widths, heads)
	p.headed(title, strings.TrimLeft(head[0], " ")+strings.Repeat(" ", max(0, p.wide-width(head[0]))))
	for _, r := range rows {
		p.joined = p.joined || r[0] == "" // a jug stays whole
		p.keep(func() {
			for _, l := range p.cells(columns, widths, r) {
				p.raw(l)
			}
		})
		p.joined = leads(r)
	}
}

// leads says whether a row is a title of those after it.
func leads(row []string) bool { return alone(row) && !strings.HasPrefix(row[0], box) }

// listed writes a small table under an item, behind words of its own.
func (p *page) listed(lead string, columns []column, rows [][]string) {
	inner := &page{format: format{wide: p.wide - len(p.under()) - len(box), blank: p.blank}}
	inner.rows(columns, rows)
	p.info(lead)
	p.joined = true
	p.keep(func() {
		for _, l := range inner.lines {
			p.raw(p.under() + strings.Repeat(" ", len(box)) + l.text)
		}
	})
}

// rows writes the heads of the columns and rows of cells under them, or below each other where they are too many.
func (p *page) rows(columns []column, rows [][]string) {
	widths, ok := p.widths(columns, rows)
	if !ok {
		for _, r := range rows {
			p.stacked(columns, r)
		}
		return
	}
	heads := make([]string, len(columns))
	for i, c := range columns {
		heads[i] = c.head
	}
	for _, r := range append([][]string{heads}, rows...) {
		for _, l := range p.cells(columns, widths, r) {
			p.raw(l)
		}
	}
}

// widths is how wide each column is, and whether its words have enough room.
func (p *page) widths(columns []column, rows [][]string) ([]int, bool) {
	out, free := make([]int, len(columns)), p.wide-gap*(len(columns)-1)
	for i, c := range columns {
		if i > 0 {
			out[i] = width(c.head)
		}
		for _, r := range rows {
			if i > 0 || !alone(r) {
				out[i] = max(out[i], width(plain(r[i])))
			}
		}
		if c.write {
			out[i] = len(p.blank)
		}
		free -= out[i]
	}
	natural := slices.Clone(out)
	p.fit(columns, out, free)
	for i, c := range columns {
		if !c.figure && !c.write && out[i] < min(natural[i], leastWords) {
			return nil, false
		}
	}
	return out, true
}

// fit makes the columns of words as wide as there is room, the widest giving way first.
func (p *page) fit(columns []column, widths []int, free int) {
	for ; free != 0; free -= max(-1, min(1, free)) { // letter by letter
		widest := -1
		for i, c := range columns {
			if !c.figure && !c.write && (widest < 0 || widths[i] >= widths[widest]) {
				widest = i
			}
		}
		widths[widest] += max(-1, min(1, free))
	}
}

// cells draws one row in columns, as many lines as its longest cell takes.
func (p *page) cells(columns []column, widths []int, row []string) []string {
	switch {
	case alone(row):
		return cellLines(columns[0], plain(row[0]), p.wide)
	case onlyFirst(columns) && row[0] != "":
		return p.trailed(columns, widths, row)
	}
	var lines []string
	left := 0
	for i, cell := range row {
		for y, part := range cellLines(columns[i], plain(cell), widths[i]) {
			for len(lines) <= y {
				lines = append(lines, "")
			}
			lines[y] = padded(lines[y], left) + part
		}
		left += widths[i] + gap
	}
	return lines
}

// onlyFirst says whether only the first column holds words.
func onlyFirst(columns []column) bool {
	for _, c := range columns[1:] {
		if !c.figure && !c.write {
			return false
		}
	}
	return true
}

// trailed draws a row of which only the first cell holds words: they have the whole width but for their last line, which the others follow.
func (p *page) trailed(columns []column, widths []int, row []string) []string {
	text, boxed := strings.CutPrefix(plain(row[0]), box)
	lead := ""
	if boxed {
		lead = box
	}
	lines := trail(text, p.wide-len(lead), widths[0]-len(lead))
	last := leader(lines[len(lines)-1], widths[0]-len(lead))
	for i := 1; i < len(row); i++ {
		last += strings.Repeat(" ", gap) + cellLines(columns[i], plain(row[i]), widths[i])[0]
	}
	lines[len(lines)-1] = last
	return led(lead, lines)
}

// alone says whether a row has nothing but its first cell, which then has the whole width.
func alone(row []string) bool {
	for _, cell := range row[1:] {
		if cell != "" {
			return false
		}
	}
	return true
}

// cellLines is a cell in lines of a width; what follows a box stays behind it.
func cellLines(c column, cell string, to int) []string {
	switch {
	case cell == "":
		return []string{strings.Repeat(" ", to)}
	case c.figure:
		return []string{strings.Repeat(" ", max(0, to-width(cell))) + cell}
	}
	text, boxed := strings.CutPrefix(cell, box)
	if !boxed {
		return wrap(cell, to)
	}
	return led(box, wrap(text, to-len(box)))
}

// led puts a lead before the first of some lines, and as much room before the others.
func led(lead string, lines []string) []string {
	for i, l := range lines {
		lines[i] = lead + l
		lead = strings.Repeat(" ", width(lead))
	}
	return lines
}

// stacked writes one row as lines: a figure behind the words before it or, where there are none, behind the name of its column.
func (p *page) stacked(columns []column, cells []string) {
	write, lead, words := false, "", ""
	for i, c := range columns {
		write = write || c.write && cells[i] != ""
	}
	flush := func() {
		if words != "" {
			p.wrapped(lead, words)
		}
		words = ""
	}
	p.keep(func() {
		for i, c := range columns {
			switch cell := plain(cells[i]); {
			case cell == "", c.write:
			case !c.figure:
				flush()
				var boxed bool
				words, boxed = strings.CutPrefix(cell, box)
				lead = map[bool]string{true: box, false: strings.Repeat(" ", len(box))}[boxed]
			case words != "":
				p.boxed(lead, row{text: words, figure: cell, write: write})
				words, write = "", false
			default:
				p.boxed(strings.Repeat(" ", len(box)), row{text: c.head, figure: cell, write: write})
				write = false
			}
		}
		flush()
	})
}
