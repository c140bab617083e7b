package paper

import (
	"fmt"
	"slices"
	"strings"
)

// formFeed takes a printer to its next sheet.
const formFeed = "\f"

// text is everything written, without sheets.
func (p *page) text() string {
	var out strings.Builder
	for _, l := range p.lines {
		out.WriteString(l.text)
		out.WriteByte('\n')
	}
	return out.String()
}

// printed is everything written, broken into sheets. Each begins with the title and which of how many it is; a form feed stands between two.
// No sheet parts what belongs together unless that alone is longer than a sheet; a section that goes on says its heading again. What had
// better begin a sheet does, where that takes no more of them.
func (p *page) printed(title string) string {
	sheets := p.sheets()
	var out strings.Builder
	for i, sheet := range sheets {
		if i > 0 {
			out.WriteString(formFeed)
		}
		of := fmt.Sprintf("page %d of %d", i+1, len(sheets))
		room := p.wide - len(of) - len(formFeed) // so that a line is not too long for one who counts the form feed
		out.WriteString(padded(clip(plain(title), room-gap), room) + of + "\n")
		out.WriteString(strings.Repeat("=", p.wide) + "\n")
		for _, l := range sheet {
			out.WriteString(l + "\n")
		}
	}
	return out.String()
}

// sheets is everything written, sheet by sheet, and without empty lines where it takes more sheets than it should with them and not without.
func (p *page) sheets() [][]string {
	loose := p.best()
	if p.most > 0 && len(loose) > p.most {
		p.tight = true
		defer func() { p.tight = false }()
		if tight := p.best(); len(tight) <= p.most {
			return tight
		}
	}
	return loose
}

// best breaks where it had better, as long as that takes no more sheets.
func (p *page) best() [][]string {
	sheets := p.broken(0)
	for _, at := range p.fresh {
		if own := p.broken(at); len(own) <= len(sheets) && len(sheets) > 1 {
			return own
		}
	}
	return sheets
}

// insert writes a line at an earlier place.
func (p *page) insert(at int, text string) {
	p.lines = slices.Insert(p.lines, at, line{text: text})
	for i := range p.fresh {
		p.fresh[i]++
	}
}

// titleLines is what the title takes of every sheet.
const titleLines = 2

// broken parts the lines into sheets as full as can be; the line at own, where that is above 0, begins one.
func (p *page) broken(own int) [][]string {
	sheets, head := [][]string{nil}, 0
	room := p.high - titleLines
	sheet := func() *[]string { return &sheets[len(sheets)-1] }
	turn := func(next line) {
		if len(*sheet()) == 0 {
			return
		}
		*sheet() = trimmed(*sheet())
		sheets = append(sheets, nil)
		if next.head == head && head > 0 {
			*sheet() = p.continued(p.heads[head-1])
		}
	}
	for at, end := 0, 0; at < len(p.lines); at = end {
		for end = at + 1; end < len(p.lines) && p.lines[end].joined; end++ {
		}
		run := p.lines[at:end]
		if own > 0 && at == own {
			*sheet() = trimmed(*sheet())
			sheets, head = append(sheets, nil), 0
		}
		if p.tight && run[0].text == "" {
			run = run[1:]
		}
		if len(run) > 0 && len(*sheet())+len(run) > room {
			if run[0].text == "" { // a sheet ends and begins with no empty line
				run = run[1:]
			}
			if len(run) == 0 {
				continue
			}
			turn(run[0])
		}
		for _, l := range run {
			if len(*sheet()) >= room { // together they are longer than a sheet
				turn(l)
			}
			if len(*sheet()) > 0 || l.text != "" {
				*sheet() = append(*sheet(), l.text)
			}
			head = l.head
		}
	}
	*sheet() = trimmed(*sheet())
	return sheets
}

// trimmed is a sheet without empty lines at its end.
func trimmed(sheet []string) []string {
	for len(sheet) > 0 && sheet[len(sheet)-1] == "" {
		sheet = sheet[:len(sheet)-1]
	}
	return sheet
}

// continued is a heading as it is said again on the next sheet.
func (p *page) continued(head []string) []string {
	const mark = " (goes on)"
	out := append([]string(nil), head...)
	lead := ""
	if p.numbers {
		lead = out[0][:numberWidth]
	}
	title, columns, _ := strings.Cut(out[0][len(lead):], "  ")
	columns = strings.TrimLeft(columns, " ")
	if title = lead + title + mark; width(title)+gap+width(columns) <= p.wide {
		out[0] = strings.TrimRight(padded(title, p.wide-width(columns))+columns, " ")
	}
	return out
}
