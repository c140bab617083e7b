// Package ruler draws what is laid along a mould: every cut and every embed's middle at its distance from end A, at true scale. One layout is
// written as PDF for sheets of paper, as SVG in one piece, and as a list of distances. It knows the sheet and works no figure out.
//
// Everything here is in mm, but for the distances that are written, which are in the plan's unit; x from the left and y from the top.
package ruler

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/vector"
)

// Ruler is everything that is printed.
type Ruler struct {
	Plan   string    // the plan's name
	Day    string    // when it is poured, which names the lot; "" where the plan does not say
	Show   pour.Show // in what units distances are written
	KerfMM float64   // what one cut takes; 0: nothing was taken off for it
	Edges  []Edge    // one for each direction in which the mould is cut
}

// Edge is one side of the mould that a ruler is laid along.
type Edge struct {
	Along    string // what it is laid along: "along the loaf"
	EndA     string // what its beginning is called: "end A"
	LengthMM float64
	Cuts     []float64 // where the middles of wire or blade pass, from end A
	Marks    []float64 // the same as they are marked by hand, each rounded once to half a millimetre
	Centres  []Centre
	Spans    []Span
}

// Centre is where the middle of something stands that is set or piped.
type Centre struct {
	Name string
	MM   float64
	Mark float64 // as it is marked by hand, rounded once
}

// kinds lists the names of what is set, in the order it stands in the plan.
func (e Edge) kinds() []string {
	var out []string
	for _, c := range e.Centres {
		if !slices.Contains(out, c.Name) {
			out = append(out, c.Name)
		}
	}
	return out
}

// letter stands for a kind where there are several.
func letter(i int) string { return string(rune('a' + i%26)) }

// Kind is what becomes of a part of the length.
type Kind int

// The kinds of spans.
const (
	Bar Kind = iota
	Trim
	Slice
)

// Span is the part of the length between two cuts.
type Span struct {
	Kind     Kind
	Number   int  // of a bar, from 1; of a row of bars along a slab, from its left wall
	Last     int  // of a slab that is cut both ways: the last of the bars side by side that begin with Number; 0: it is one bar
	Row      bool // it is a row of bars along a slab, from its end A to its end B
	From, To float64
}

// Paper is the sheets a ruler is printed on.
type Paper = vector.Paper

// Papers lists what a ruler can be printed on.
func Papers() []Paper { return vector.Papers() }

// PaperOf is the paper of a name; where none is named, that of the plan's units.
func (r Ruler) PaperOf(name string) (Paper, error) {
	if name == "" {
		name = r.Show.Paper()
	}
	p, err := vector.PaperOf(name)
	if err != nil {
		return p, fmt.Errorf("draw the ruler %w", err)
	}
	return p, nil
}

// CheckMM is the length of the bar that is measured to see whether the print is true.
const CheckMM = 100

// What stays free at the edges of a sheet (printers leave 4 to 6 mm; common practice, no source), and what two strips share.
const (
	marginMM  = 10
	overlapMM = 20
)

// For is what writes the ruler into a file of a name: its ending says as what.
func (r Ruler) For(file string, p Paper) (func(io.Writer) error, error) {
	switch strings.ToLower(filepath.Ext(file)) {
	case ".pdf":
		return func(w io.Writer) error { return r.PDF(w, p) }, nil
	case ".svg":
		return r.SVG, nil
	}
	return nil, fmt.Errorf("draw the ruler to %s: give the file a name that ends in .pdf, for sheets of paper, or .svg, in one piece", file)
}
