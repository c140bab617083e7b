package season

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/strict"
)

// draft is the text of a season's file while it is edited, line by line. What is not edited stays as it was written.
type draft struct {
	name  string
	lines []string // without their ends
	end   string   // of a line
	bom   string
	doc   *strict.File
	hunks []hunk
	added []string // after all else
	heads []int    // lines on which a table begins, from 0, in order; tables within a date are not among them
}

// head is the beginning of a file that was not there.
const head = "# The season of pourbench: comments and what is written by hand stay when the program changes an entry.\nformat = 1\n"

// newDraft takes apart a file that was read without a fault.
func newDraft(name, src string, f File) (*draft, error) {
	if strings.TrimSpace(src) == "" {
		src = head
	}
	d := &draft{name: name, end: "\n"}
	if strings.HasPrefix(src, "\ufeff") {
		d.bom, src = "\ufeff", strings.TrimPrefix(src, "\ufeff")
	}
	if strings.Contains(src, "\r\n") {
		d.end, src = "\r\n", strings.ReplaceAll(src, "\r\n", "\n")
	}
	doc, err := form().Open(name, src)
	if err != nil {
		return nil, err
	}
	d.doc, d.lines = doc, strings.Split(strings.TrimSuffix(src, "\n"), "\n")
	paths := []string{"house"}
	for path, n := range map[string]int{"mould": len(f.House.Moulds), "date": len(f.Dates), "pour": len(f.Pours)} {
		for i := range n {
			paths = append(paths, entry(path, i))
		}
	}
	for _, path := range paths {
		if at, ok := d.header(path); ok {
			d.heads = append(d.heads, at)
		}
	}
	slices.Sort(d.heads)
	return d, nil
}

// entry is the path of an entry in a list.
func entry(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }

// header is the line of a table's own header, from 0; false: the table is written in another way, or not at all.
func (d *draft) header(path string) (int, bool) {
	line, _ := d.doc.Place(path)
	if line == 0 || !strings.HasPrefix(strings.TrimSpace(d.lines[line-1]), "[") {
		return 0, false
	}
	return line - 1, true
}

// hunk is some lines that others take the place of.
type hunk struct {
	from, to int // of the lines as they were read, from 0; to is not among them
	fresh    []string
}

// String is the text with all that was changed.
func (d *draft) String() string {
	lines := slices.Clone(d.lines)
	hunks := slices.Clone(d.hunks)
	slices.SortStableFunc(hunks, func(a, b hunk) int { return cmp.Compare(a.from, b.from) })
	for _, h := range slices.Backward(hunks) { // from below, so that those above stay where they were read
		lines = slices.Replace(lines, h.from, h.to, h.fresh...)
	}
	for len(d.added) > 0 && len(lines) > 0 && strings.TrimSpace(lines[len(lines)-1]) == "" {
		lines = lines[:len(lines)-1]
	}
	return d.bom + strings.Join(append(lines, d.added...), d.end) + d.end
}

// add writes an entry at the end.
func (d *draft) add(header string, pairs []pair) {
	d.added = append(d.added, "", header)
	for _, p := range pairs {
		if p.value != "" {
			d.added = append(d.added, strings.Split(p.line(), "\n")...)
		}
	}
}

// block is the lines of an entry, from its header to its last value: comments and blank lines after that belong to what follows.
func (d *draft) block(path string) (from, to int, err error) {
	from, ok := d.header(path)
	if !ok {
		line, _ := d.doc.Place(path)
		list := strict.Header(path)
		return 0, 0, &strict.Error{Faults: []strict.Fault{{
			File: d.name, Line: line, Column: 1, Path: path, Problem: "is not written under a header of its own, so it cannot be changed without touching what stands around it",
			Mend: fmt.Sprintf("change it by hand, or start each with a line [[%s]]", list),
		}}}
	}
	to = len(d.lines)
	if i := slices.IndexFunc(d.heads, func(h int) bool { return h > from }); i >= 0 {
		to = d.heads[i]
	}
	for to > from+1 && isRemark(d.lines[to-1]) {
		to--
	}
	return from, to, nil
}

// isRemark reports whether a line says nothing to a program.
func isRemark(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || strings.HasPrefix(line, "#")
}

// drop takes an entry out.
func (d *draft) drop(path string) error {
	from, to, err := d.block(path)
	if err != nil {
		return err
	}
	blank := func(i int) bool { return i < 0 || i >= len(d.lines) || strings.TrimSpace(d.lines[i]) == "" }
	if blank(from-1) && blank(to) && to < len(d.lines) {
		to++
	}
	for to == len(d.lines) && from > 0 && blank(from-1) { // nothing is left for the blank line to part
		from--
	}
	d.hunks = append(d.hunks, hunk{from, to, nil})
	return nil
}

// alter writes those values of an entry anew that differ, each where it stands; comments beside them stay.
func (d *draft) alter(path string, was, now []pair) error {
	from, to, err := d.block(path)
	if err != nil {
		return err
	}
	for i, p := range now {
		if p != was[i] {
			d.hunks = append(d.hunks, d.set(from, to, p))
		}
	}
	return nil
}

// set writes one value within an entry.
func (d *draft) set(from, to int, p pair) hunk {
	at, end := d.find(from, to, p.key)
	var fresh, above []string
	if p.value != "" {
		fresh = strings.Split(p.line(), "\n")
	}
	said := strict.Comments(strings.Join(d.lines[at:end], "\n"))
	if len(said) == 1 && len(fresh) > 0 {
		fresh[len(fresh)-1] += "  # " + said[0]
		said = nil
	}
	for _, s := range said {
		above = append(above, "# "+s)
	}
	return hunk{at, end, append(above, fresh...)}
}

// find is the lines of a key's value within an entry; where there is none, the place where it goes and no line.
func (d *draft) find(from, to int, key string) (at, end int) {
	last := from + 1 // after the last value of the entry's own table
	for at = from + 1; at < to; at = end {
		end = at + 1
		line := strings.TrimSpace(d.lines[at])
		if strings.HasPrefix(line, "[") {
			break // a table within it
		}
		if isRemark(line) {
			continue
		}
		for end < to && !d.whole(at, end) {
			end++
		}
		name, _, _ := strings.Cut(line, "=")
		if strings.TrimSpace(name) == key {
			return at, end
		}
		last = end
	}
	return last, last
}

// whole reports whether some lines are TOML by themselves: the value that begins there ends there.
func (d *draft) whole(at, end int) bool {
	_, err := form().Open(d.name, strings.Join(d.lines[at:end], "\n"))
	return err == nil
}
