package lines

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/tui/grid"
	"pourbench/tui/look"
)

// brief is how many signs the line of a row in a list holds.
const brief = 100

// unit is how many signs the unit of a number has at most.
const unit = 6

// Row is a row of a grid as it is told.
type Row struct {
	N     int // what it is chosen by, from 1; 0: a heading
	At    int // its place in the grid
	Name  string
	Parts []Part // what is told behind the name, in the order of its cells, without those that are empty
	All   []Part // with those that make its name
}

// Part is a cell as it is told.
type Part struct {
	Col   int
	Name  string // the head of its column; empty: the row's name is enough
	Value string
}

// String is the part in words.
func (p Part) String() string {
	if p.Name == "" {
		return p.Value
	}
	return p.Name + " " + p.Value
}

// Rows tells a grid: the rows that have something to say, in their order. Headings are rows without parts.
func Rows(g grid.Grid) []Row {
	var out []Row
	n := 0
	for i, r := range g.Rows {
		row, looks := Row{At: i, Name: r.Heading}, Part{}
		for col, c := range r.Cells {
			if v := Value(c); v != "" && col < len(g.Columns) {
				row.Parts = append(row.Parts, Part{col, strings.TrimSpace(g.Columns[col].Head), v})
			}
			if c.Swatch != 0 {
				looks = Part{col, "looks", look.ColourWord(c.Swatch)}
			}
		}
		row.All = row.Parts
		if r.Heading == "" {
			row.Name, row.Parts = named(row.Parts, r)
		}
		if looks.Value != "" && row.Name != "" {
			row.Parts = slices.Insert(row.Parts, 0, looks)
		}
		if len(row.All) > 0 {
			n++
			row.N = n
		}
		if row.Name != "" || row.N > 0 {
			out = append(out, row)
		}
	}
	return out
}

// named takes the name of a row from its first cells, as far as the first that has a word in it.
func named(parts []Part, r grid.Row) (string, []Part) {
	for i, p := range parts {
		if p.Name != "" && i > 0 && parts[0].Name != "" {
			break // figures come first: it has no name of its own
		}
		if letters(p.Value) < 2 {
			continue
		}
		var words []string
		for _, q := range parts[:i+1] {
			words = append(words, q.Value)
		}
		if c := r.Cells[p.Col]; i == 0 && len(r.Cells) > p.Col && c.Edits() && c.Kind != grid.Words { // a choice that has no label
			return words[0], parts[1:]
		}
		return strings.Join(words, " "), parts[i+1:]
	}
	return "", parts
}

func letters(text string) int {
	n := 0
	for _, r := range text {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

// Value is what a cell shows, in words: of a switch how it stands, of colours their names.
func Value(c grid.Cell) string {
	switch {
	case len(c.Round) == 2 && slices.Contains(c.Round, "yes"):
		return c.Round[0]
	case len(c.Swatches) > 0:
		var words []string
		for _, s := range c.Swatches {
			words = append(words, look.ColourWord(s))
		}
		return strings.Join(slices.Compact(words), ", ")
	case c.Text == "" && (c.Kind == grid.Words || c.Kind == grid.Numbers):
		return "none"
	}
	text := ASCII(c.Text)
	switch text {
	case "-":
		if strings.ContainsRune(c.Text, '·') {
			return "no"
		}
		return "none"
	case "":
		return ""
	}
	if len(c.Round) > 0 && letters(text) == 0 {
		return ASCII(c.Round[0])
	}
	if (c.Kind == grid.Blank || c.Kind == grid.Shown) && letters(text) == 2 && letters(c.Plain) > 2 { // two jugs by their letters
		return ASCII(c.Plain)
	}
	return text
}

// Line is the row in one line.
func (r Row) Line() string {
	text := r.Name
	for i, p := range r.Parts {
		switch {
		case i == 0 && text != "":
			text += ": " + p.String()
		case i == 0:
			text = p.String()
		case p.Name == "" && len(p.Value) <= unit:
			text += " " + p.Value
		default:
			text += ", " + p.String()
		}
	}
	return text
}

// Brief is the row with as much of it as a list has room for, without what is not there.
func (r Row) Brief() Row {
	out := r
	out.Parts = nil
	for _, p := range r.Parts {
		if p.Name != "" && (p.Value == "no" || p.Value == "none") {
			continue
		}
		out.Parts = append(out.Parts, p)
		if len(out.Line()) > brief && len(out.Parts) > 1 {
			out.Parts = out.Parts[:len(out.Parts)-1]
			break
		}
	}
	return out
}

// Column finds the cell that a line begins with by the head of its column, as many words as go, and says what follows.
func (r Row) Column(line string) (col int, rest string, ok bool) {
	words := strings.Fields(strings.ToLower(line))
	for n := len(words); n > 0; n-- {
		for _, p := range r.All {
			if name := strings.ToLower(p.Name); name != "" && (name == strings.Join(words[:n], " ") || strings.Fields(name)[0] == words[0] && n == 1) {
				return p.Col, behind(line, n), true
			}
		}
	}
	for n := len(words); n > 0; n-- {
		for _, p := range r.All {
			if p.Name != "" && holds(strings.Fields(strings.ToLower(p.Name)), words[:n]) {
				return p.Col, behind(line, n), true
			}
		}
	}
	return 0, line, false
}

// Changed are the parts that another telling of the row has not; where they have no names, all of them if any.
func (r Row) Changed(before Row) []Part {
	var out []Part
	for _, p := range r.Parts {
		switch {
		case slices.Contains(before.Parts, p):
		case p.Name == "":
			return r.Parts
		default:
			out = append(out, p)
		}
	}
	return out
}

// Find finds the one row whose name begins with the words that a line begins with, as many of them as go; others are the names between
// which the line does not tell.
func Find(rows []Row, line string) (at int, rest string, others []string) {
	words := strings.Fields(strings.ToLower(line))
	for n := len(words); n > 0; n-- {
		var hits, whole []int
		for i, r := range rows {
			if len(r.Parts) == 0 {
				continue
			}
			name := strings.Fields(strings.ToLower(r.Name))
			if !holds(name, words[:n]) {
				continue
			}
			hits = append(hits, i)
			if len(name) == n || slices.Contains(name, words[0]) && n == 1 {
				whole = append(whole, i)
			}
		}
		if len(whole) == 1 {
			hits = whole
		}
		switch {
		case len(hits) == 1:
			return hits[0], behind(line, n), nil
		case len(hits) > 1:
			for _, i := range hits {
				others = append(others, rows[i].Name)
			}
			return -1, "", others
		}
	}
	return -1, "", nil
}

// holds says whether words stand in a name one after the other, each as the beginning of one of its words.
func holds(name, words []string) bool {
	for from := range name {
		if from+len(words) > len(name) {
			return false
		}
		all := true
		for i, w := range words {
			all = all && strings.HasPrefix(strings.Trim(name[from+i], ",:;()"), w)
		}
		if all {
			return true
		}
	}
	return false
}

// behind is what follows the first n words of a line.
func behind(line string, n int) string {
	for range n {
		_, line, _ = strings.Cut(strings.TrimSpace(line), " ")
	}
	return strings.TrimSpace(line)
}
