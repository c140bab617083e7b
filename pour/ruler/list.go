package ruler

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Distance is one line of the list that takes the ruler's place where there is no printer: what is marked, how far from end A.
type Distance struct {
	MM   float64 // as it is marked, rounded once to half a millimetre
	What string
	Cut  bool // else the middle of something set
}

// Distances lists the marks of an edge from end A on.
func (e Edge) Distances() []Distance {
	var out []Distance
	for i := range e.Cuts {
		out = append(out, Distance{e.Marks[i], fmt.Sprintf("cut %d%s", i+1, e.between(i)), true})
	}
	for _, c := range e.Centres {
		out = append(out, Distance{c.Mark, "middle of " + c.Name, false})
	}
	slices.SortStableFunc(out, func(a, b Distance) int { return cmp.Compare(a.MM, b.MM) })
	return out
}

// between says what a cut parts: the span that ends before it and the one that begins after it.
func (e Edge) between(cut int) string {
	at := e.Cuts[cut]
	var left, right *Span
	for i := range e.Spans {
		s := &e.Spans[i]
		if s.To <= at+slack && (left == nil || s.To > left.To) {
			left = s
		}
		if s.From >= at-slack && (right == nil || s.From < right.From) {
			right = s
		}
	}
	if left == nil || right == nil {
		return ""
	}
	return ", " + left.name() + " | " + right.name()
}

// name is what a span is called in the list.
func (s Span) name() string {
	switch s.Kind {
	case Trim:
		return "trim"
	case Slice:
		return "sample slice"
	case Bar:
		switch {
		case s.Row:
			return fmt.Sprintf("row %d", s.Number)
		case s.Last > 0:
			return fmt.Sprintf("bars %d to %d", s.Number, s.Last)
		}
		return fmt.Sprintf("bar %d", s.Number)
	}
	return ""
}

// List is the ruler as text: distances, never a drawn scale, because no letter has a known width.
func (r Ruler) List() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s, each rounded once to half a millimetre. %s\n", r.title(), r.Show.LenUnit(), r.assumed())
	for _, e := range r.Edges {
		fmt.Fprintf(&b, "\n%s from %s, %s\n", e.Along, strings.TrimSuffix(e.EndA, ","), r.Show.LenTold(e.LengthMM))
		for _, d := range e.Distances() {
			fmt.Fprintf(&b, "%8s  %s\n", r.Show.MarkApart(d.MM).Number, d.What)
		}
	}
	return b.String()
}
