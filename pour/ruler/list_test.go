package ruler_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/ruler"
)

// The second worked example of the cuts: a sample slice of 5 at end A, trims of 3, the rest to nine bars of 25.8222. Its marks are rounded once
// to half a millimetre by hand.
func TestTheListTellsWhatEveryMarkParts(t *testing.T) {
	e := ruler.Edge{
		Along: "along the loaf", EndA: "end A", LengthMM: 250, Cuts: []float64{3.3, 8.9, 35.3222, 61.7444}, Marks: []float64{3.5, 9, 35.5, 61.5},
		Centres: []ruler.Centre{{Name: "moon", MM: 22.1111, Mark: 22}, {Name: "moon", MM: 48.5333, Mark: 48.5}},
		Spans: []ruler.Span{
			{Kind: ruler.Trim, To: 3},
			{Kind: ruler.Bar, Number: 1, From: 9.2, To: 35.0222},
			{Kind: ruler.Slice, From: 3.6, To: 8.6},
			{Kind: ruler.Bar, Number: 2, From: 35.6222, To: 61.4444},
			{Kind: ruler.Bar, Number: 3, From: 62.0444, To: 87.8667},
		},
	}
	got := ruler.Ruler{Plan: "Meadow", Day: "2026-12-01", KerfMM: 0.6, Edges: []ruler.Edge{e}}.List()
	want := `Meadow: ruler, poured 2026-12-01
mm, each rounded once to half a millimetre. Assumed: one cut takes 0.6 mm.

along the loaf from end A, 250 mm
     3.5  cut 1, trim | sample slice
     9.0  cut 2, sample slice | bar 1
    22.0  middle of moon
    35.5  cut 3, bar 1 | bar 2
    48.5  middle of moon
    61.5  cut 4, bar 2 | bar 3
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// A ruler without marks still says its length and that nothing was taken off.
func TestALoafThatIsNotCutHasALength(t *testing.T) {
	got := ruler.Ruler{Plan: "Meadow", Edges: []ruler.Edge{{Along: "along the loaf", EndA: "end A", LengthMM: 90}}}.List()
	want := "Meadow: ruler\nmm, each rounded once to half a millimetre. Assumed: a cut takes nothing.\n\nalong the loaf from end A, 90 mm\n"
	if got != want {
		t.Errorf("%q", got)
	}
}
