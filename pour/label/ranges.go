package label

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// What a range is of.
const (
	RangeOil       = "oil"
	RangeScent     = "scent"
	RangeColourant = "colourant"
	RangeExtra     = "extra"
	RangeTopping   = "topping"
	RangeEmbed     = "embed"    // by the short form of its name
	RangeWhite     = "white"    // all white pigments together
	RangeSuperfat  = "superfat" // of a batch, percent of what its fats could take up
)

// Range is the least and the most of something, percent of the bar as it was made unless it is superfat. An oil's goes by what was weighed, before alkali
// made soap of it.
type Range struct {
	Kind  string // one of the Range… words
	ID    string // on the shelf; empty for white and superfat
	Least float64
	Most  float64
}

// RangeKinds lists what a range can be of.
func RangeKinds() []string {
	return []string{RangeOil, RangeScent, RangeColourant, RangeExtra, RangeTopping, RangeEmbed, RangeWhite, RangeSuperfat}
}

// Whole says that a range of a kind is of no single material.
func Whole(kind string) bool { return kind == RangeWhite || kind == RangeSuperfat }

// Of is what a range is of, as files and commands name it: "oil olive", "white".
func (x Range) Of() string { return strings.TrimSpace(x.Kind + " " + x.ID) }

// RangeOf reads what a range is of, as [Range.Of] writes it.
func RangeOf(text string) (Range, error) {
	words := strings.Fields(text)
	switch {
	case len(words) == 0 || !slices.Contains(RangeKinds(), words[0]):
		return Range{}, fmt.Errorf("%q is nothing a report has a range for: write one of %s, and for a material its id, such as %q", text, strings.Join(RangeKinds(), ", "), "oil olive")
	case Whole(words[0]) && len(words) > 1:
		return Range{}, fmt.Errorf("%q names a material, and a range of %s is of all together: write %q alone", text, words[0], words[0])
	case !Whole(words[0]) && len(words) != 2:
		return Range{}, fmt.Errorf("%q does not say which %s: write its id behind it, such as %q", text, words[0], words[0]+" olive")
	case Whole(words[0]):
		return Range{Kind: words[0]}, nil
	}
	return Range{Kind: words[0], ID: words[1]}, nil
}

// Around makes a report's ranges out of a design: so many percent less and more of each amount it has, rounded outwards to three figures, so that the
// design is inside unless it is lye-heavy. White pigments get a range of their own beside. They are a draft to be compared with what the assessor wrote, and assess nothing.
func Around(has []Amount, percent float64) []Range {
	sums, white := summed(has)
	var out []Range
	for _, a := range sums {
		if a.Percent > 0 {
			out = append(out, around(Range{Kind: a.Kind, ID: a.ID}, a.Percent, a.Percent, percent))
		}
	}
	if white > 0 {
		out = append(out, around(Range{Kind: RangeWhite}, white, white, percent))
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, a := range has {
		if a.Kind == RangeSuperfat {
			least, most = min(least, a.Percent), max(most, a.Percent)
		}
	}
	if least <= most {
		out = append(out, around(Range{Kind: RangeSuperfat}, least, most, percent))
	}
	place := func(x Range) int { return slices.Index(RangeKinds(), x.Kind) }
	slices.SortStableFunc(out, func(a, b Range) int { return cmp.Compare(place(a), place(b)) })
	return out
}

func around(x Range, least, most, percent float64) Range {
	x.Least = max(0, outwards(least-least*percent/100, math.Floor))
	x.Most = min(100, outwards(most+most*percent/100, math.Ceil))
	return x
}

// outwards rounds to three figures with what is handed in.
func outwards(v float64, round func(float64) float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	step := math.Pow10(2 - int(math.Floor(math.Log10(math.Abs(v)))))
	return round(v*step) / step
}
