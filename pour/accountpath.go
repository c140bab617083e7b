package pour

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Explained lists the paths of every figure of the sheet that can be accounted for, in the order of the table.
func (s Sheet) Explained() []string {
	if len(s.Base.Jugs) == 0 {
		return nil
	}
	t := teller{sheet: &s, rows: accountRows()}
	var out []string
	for _, row := range t.rows {
		rest, ofBatch := strings.CutPrefix(row.pattern, "batch.")
		if !ofBatch {
			if row.stands(t) {
				out = append(out, t.spread(row.pattern)...)
			}
			continue
		}
		for _, b := range s.Batches() {
			at := t
			if at.b = b; row.stands(at) {
				out = append(out, at.spread(string(b.Name)+"."+rest)...)
			}
		}
	}
	return out
}

// spread writes a pattern out for every item there is.
func (t teller) spread(pattern string) []string {
	before, after, more := strings.Cut(pattern, "[]")
	if !more {
		return []string{pattern}
	}
	var out []string
	for i := range t.count(before) {
		out = append(out, t.spread(fmt.Sprintf("%s[%d]%s", before, i, after))...)
	}
	return out
}

// count is how many items stand at a path whose earlier indices are written.
func (t teller) count(path string) int {
	pattern, ix := split(path)
	switch {
	case pattern == "run":
		return len(t.sheet.Run)
	case pattern == "cut_run":
		return len(t.sheet.CutRun)
	case pattern == "neighbours":
		return len(t.sheet.Mingling.Pairs)
	case pattern == "orders":
		return len(t.sheet.Mingling.Orders)
	case pattern == "totals":
		return len(t.sheet.Totals)
	case pattern == "cut.cuts_mm", pattern == "cut.marks_mm":
		return len(t.sheet.Cut.CutsMM)
	case pattern == "cut.across_mm", pattern == "cut.across_marks_mm":
		return len(t.sheet.Cut.AcrossMM)
	case pattern == "cut.bars":
		return len(t.sheet.Cut.Bars)
	case pattern == "cut.trims":
		return len(t.sheet.Cut.Trims())
	case pattern == "embed_kinds":
		return len(t.sheet.Embeds)
	case pattern == "embeds":
		return t.sheet.pieces()
	case pattern == "label.lines":
		return len(t.sheet.Label.Lines)
	case pattern == "label.allergens":
		return len(t.sheet.Label.Allergens)
	case pattern == "label.allergens[].from":
		return len(t.sheet.Label.Allergens[ix[0]].From)
	case pattern == "toppings":
		return len(t.sheet.Toppings)
	case pattern == "toppings[].parts":
		return len(t.sheet.Toppings[ix[0]].Parts)
	case t.b == nil:
		return 0
	case strings.HasSuffix(pattern, ".oils"):
		return len(t.b.Oils)
	case strings.HasSuffix(pattern, ".extras"):
		return len(t.b.Extras)
	case strings.HasSuffix(pattern, "jugs[].colourants"):
		return len(t.b.Jugs[ix[0]].Colourants)
	case strings.HasSuffix(pattern, "jugs[].scents"):
		return len(t.b.Jugs[ix[0]].Scents)
	case strings.HasSuffix(pattern, ".scents"):
		return len(t.b.Scents)
	case strings.Contains(pattern, ".stage_min."):
		return 3
	case strings.HasSuffix(pattern, ".jugs"):
		return len(t.b.Jugs)
	}
	return 0
}

// split takes the indices out of a path: "base.jugs[2].total_g" gives "base.jugs[].total_g" and 2.
func split(path string) (pattern string, ix []int) {
	index := regexp.MustCompile(`\[(\d{1,4})\]`)
	pattern = index.ReplaceAllStringFunc(path, func(at string) string {
		i, err := strconv.Atoi(at[1 : len(at)-1])
		if err != nil {
			return at // four digits are always a number
		}
		ix = append(ix, i)
		return "[]"
	})
	return pattern, ix
}

// find is the row of a path and a teller that stands at its batch and its items.
func (t teller) find(path string) (accountRow, teller, bool) {
	pattern, ix := split(path)
	for _, n := range [...]BatchName{Base, Icing} {
		if rest, ok := strings.CutPrefix(pattern, string(n)+"."); ok {
			t.b, t.plan = t.sheet.Batch(n), t.sheet.Plan.Batch(n)
			pattern = "batch." + rest
			if t.b == nil {
				return accountRow{}, t, false
			}
		}
	}
	t.ix = ix
	for _, row := range t.rows {
		if row.pattern == pattern {
			return row, t, row.stands(t) && t.inside(path)
		}
	}
	return accountRow{}, t, false
}

// inside says whether every index of a path leads to something.
func (t teller) inside(path string) bool {
	for at := 0; ; {
		open := strings.IndexByte(path[at:], '[')
		if open < 0 {
			return true
		}
		at += open
		_, ix := split(path[at : at+strings.IndexByte(path[at:], ']')+1])
		if len(ix) == 0 || ix[0] >= t.count(path[:at]) {
			return false
		}
		at++
	}
}
