package label

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// threshold is by how much percent must pass a bound to be beyond it, so that binary rounding decides nothing.
const threshold = 1e-9

// List puts what a bar is made of in the market's order: entries of one text added up; by mass from the largest, what is at or under the threshold too,
// though any order would be right there; then colourants by their number; the scents' word in its place by mass, or last where the market wants it so;
// what is in the balance and never on a label at the very end. Equal masses stand by the alphabet. The lines sum to the entries.
func List(entries []Entry, m Market) []Line {
	lines, sum := added(entries)
	for i := range lines {
		l := &lines[i]
		if sum > 0 {
			l.Percent = 100 * l.G / sum
		}
		ordered := l.Class == Plain || l.Class == Perfume && !m.ScentLast
		l.Free = ordered && m.free(l.Percent)
	}
	slices.SortFunc(lines, func(a, b Line) int {
		return cmp.Or(cmp.Compare(m.place(a.Class), m.place(b.Class)), before(&a, &b))
	})
	return lines
}

// free says whether any order is right at that percent.
func (m Market) free(percent float64) bool {
	if m.FreeAt {
		return percent <= m.FreePercent+threshold
	}
	return percent < m.FreePercent-threshold
}

// place is which part of the list a class stands in.
func (m Market) place(c Class) int {
	switch {
	case c == Perfume && m.ScentLast:
		return 2
	case c == Colourant:
		return 1
	case c == Unlisted:
		return 3
	}
	return 0
}

// before orders two lines of one part of the list.
func before(a, b *Line) int {
	if a.Class == Colourant {
		if c := cmp.Compare(number(a.Name), number(b.Name)); c != 0 {
			return c
		}
	}
	// The least difference that counts is one part in 10⁸ of the bar: sums in another order are not another order.
	return cmp.Or(cmp.Compare(math.Round(b.Percent/1e-6), math.Round(a.Percent/1e-6)), strings.Compare(a.Text, b.Text))
}

// number is a colourant's number in the Colour Index; beyond all of them where it has none.
func number(n Name) int {
	for _, text := range []string{n.Plain, n.INCI} {
		if digits, ok := strings.CutPrefix(text, "CI "); ok {
			if end := strings.IndexFunc(digits, func(r rune) bool { return r < '0' || r > '9' }); end >= 0 {
				digits = digits[:end]
			}
			if ci, err := strconv.Atoi(digits); err == nil {
				return ci
			}
		}
	}
	return math.MaxInt
}

// added are the entries with those of one text added up, and the sum of all.
func added(entries []Entry) ([]Line, float64) {
	var lines []Line
	var from [][]share
	at := map[string]int{}
	sum := 0.0
	for i := range entries {
		e := &entries[i]
		key := strings.ToLower(e.Text)
		k, known := at[key]
		if !known {
			k = len(lines)
			at[key] = k
			lines = append(lines, Line{Entry: Entry{Name: e.Name, Text: e.Text, Class: e.Class}})
			from = append(from, nil)
		}
		lines[k].take(e)
		from[k] = shared(from[k], e)
		sum += e.G
	}
	for k := range lines {
		slices.SortStableFunc(from[k], func(a, b share) int { return cmp.Compare(b.g, a.g) })
		for _, s := range from[k] {
			lines[k].From = append(lines[k].From, s.from)
		}
	}
	return lines, sum
}

// take adds an entry of the same text. The less sure of two names is the one that is told.
func (l *Line) take(e *Entry) {
	l.G += e.G
	if l.Unverified == "" {
		l.Unverified = e.Unverified
	}
	if l.Class == Colourant && e.Class == Plain {
		l.Class = Plain
	}
	if sureness(e.Name.Confidence) < sureness(l.Name.Confidence) {
		l.Name.Confidence = e.Name.Confidence
	}
}

// sureness orders how far names were checked.
func sureness(confidence string) int {
	switch {
	case confidence == "":
		return 0
	case strings.HasPrefix(confidence, "read"):
		return 2
	}
	return 1
}

// share is how much of a line came with something.
type share struct {
	from string
	g    float64
}

func shared(of []share, e *Entry) []share {
	g := e.G
	for _, from := range e.From {
		at := slices.IndexFunc(of, func(s share) bool { return s.from == from })
		if at < 0 {
			at = len(of)
			of = append(of, share{from: from})
		}
		of[at].g += g
		g = 0 // What several brought together is counted with the one that brought most.
	}
	return of
}
