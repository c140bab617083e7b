package label_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/label"
)

// r12 is a report over a small family of bars.
func r12() label.Report {
	return label.Report{ID: "R-12", Ranges: []label.Range{
		{Kind: label.RangeOil, ID: "olive", Least: 25, Most: 40},
		{Kind: label.RangeOil, ID: "coconut", Most: 20},
		{Kind: label.RangeScent, ID: "lavender", Most: 2.5},
		{Kind: label.RangeColourant, ID: "titanium-white", Most: 0.5},
		{Kind: label.RangeWhite, Most: 0.8},
		{Kind: label.RangeSuperfat, Least: 3, Most: 8},
	}}
}

func inside() []label.Amount {
	return []label.Amount{
		{Kind: label.RangeOil, ID: "olive", Name: "olive oil", Percent: 22},
		{Kind: label.RangeOil, ID: "olive", Name: "olive oil", Percent: 9}, // of the icing: 31 together
		{Kind: label.RangeOil, ID: "coconut", Name: "coconut oil", Percent: 20},
		{Kind: label.RangeScent, ID: "lavender", Name: "lavender", Percent: 2},
		{Kind: label.RangeColourant, ID: "titanium-white", Name: "titanium white", White: true, Percent: 0.4},
		{Kind: label.RangeColourant, ID: "zinc-white", Name: "zinc white", White: true, Percent: 0.3}, // named by no range but that of white
		{Kind: label.RangeSuperfat, Batch: "base", Percent: 5},
		{Kind: label.RangeSuperfat, Batch: "icing", Percent: 8},
	}
}

func TestADesignIsInsideWhileEveryFigureStaysInItsRange(t *testing.T) {
	v := label.Judge(r12(), inside())
	if len(v.Missed) != 0 || v.Why != "" || v.Tell() != "inside report R-12" {
		t.Errorf("%+v, %q", v, v.Tell())
	}
	if (label.Verdict{}).Tell() != "" {
		t.Error("a design that is held against no report has a verdict")
	}
}

// Each figure that leaves its range is told with how far: plain sums over what the report allows.
func TestWhatLeavesARangeIsToldWithHowFar(t *testing.T) {
	for name, c := range map[string]struct {
		bend func(has []label.Amount) []label.Amount
		want []string
	}{
		"two batches together":       {func(h []label.Amount) []label.Amount { h[1].Percent = 20.1; return h }, []string{"olive oil 42.1 %, 2.1 over its most"}},
		"too little":                 {func(h []label.Amount) []label.Amount { h[0].Percent = 14; return h }, []string{"olive oil 23.0 %, 2.0 under its least"}},
		"none of what there must be": {func(h []label.Amount) []label.Amount { return h[2:] }, []string{"no olive, 25.0 % under its least"}},
		"a hair":                     {func(h []label.Amount) []label.Amount { h[2].Percent = 20.004; return h }, []string{"coconut oil 20.0040 %, 0.0040 over its most"}},
		"under a hair":               {func(h []label.Amount) []label.Amount { h[2].Percent = 20.00001; return h }, []string{"coconut oil 20.0000 %, less than 0.0001 over its most"}},
		"white by all of it":         {func(h []label.Amount) []label.Amount { h[5].Percent = 0.65; return h }, []string{"white pigments 1.05 %, 0.25 over its most"}},
		"one white by itself":        {func(h []label.Amount) []label.Amount { h[4].Percent, h[5].Percent = 0.6, 0; return h }, []string{"titanium white 0.60 %, 0.10 over its most"}},
		"the icing's superfat":       {func(h []label.Amount) []label.Amount { h[7].Percent = 9.5; return h }, []string{"superfat of the icing 9.5 %, 1.5 over its most"}},
		"both superfats": {
			func(h []label.Amount) []label.Amount { h[6].Percent, h[7].Percent = 2, 0; return h },
			[]string{"superfat of the base 2.0 %, 1.0 under its least", "superfat of the icing 0.0 %, 3.0 under its least"},
		},
		"what nobody assessed": {
			func(h []label.Amount) []label.Amount {
				return append(h, label.Amount{Kind: label.RangeExtra, ID: "sugar", Name: "sugar", Percent: 0.5}, label.Amount{Kind: label.RangeTopping, ID: "petals", Name: "petals"})
			},
			[]string{"sugar 0.50 %, not named in it"},
		},
		"a scent of an oil's id": {
			func(h []label.Amount) []label.Amount {
				return append(h, label.Amount{Kind: label.RangeScent, ID: "olive", Percent: 1})
			},
			[]string{"olive 1.0 %, not named in it"},
		},
	} {
		v := label.Judge(r12(), c.bend(inside()))
		var got []string
		for _, m := range v.Missed {
			got = append(got, m.Tell())
			if !(m.By > 0) {
				t.Errorf("%s: %+v", name, m)
			}
		}
		if d := cmp.Diff(c.want, got); d != "" || v.Why != "" {
			t.Errorf("%s: %s%s", name, v.Why, d)
		}
	}
	v := label.Judge(r12(), append(inside()[2:], label.Amount{Kind: label.RangeOil, ID: "palm", Name: "palm oil", Percent: 3}))
	if want := "outside report R-12: no olive, 25.0 % under its least; and 1 more"; v.Tell() != want {
		t.Errorf("%q, want %q", v.Tell(), want)
	}
}

// The ends of a range are inside: a sum that meets one in decimal digits does not leave it by binary rounding.
func TestTheEndsOfARangeAreInside(t *testing.T) {
	r := label.Report{ID: "x", Ranges: []label.Range{{Kind: label.RangeOil, ID: "a", Least: 0.3, Most: 0.3}}}
	has := []label.Amount{{Kind: label.RangeOil, ID: "a", Percent: 0.1}, {Kind: label.RangeOil, ID: "a", Percent: 0.2}}
	if v := label.Judge(r, has); len(v.Missed) != 0 {
		t.Errorf("%+v", v.Missed)
	}
	has[1].Percent = 0.2001
	if v := label.Judge(r, has); len(v.Missed) != 1 || math.Abs(v.Missed[0].By-0.0001) > 1e-12 {
		t.Errorf("%+v", v.Missed)
	}
}

func TestWhatCannotBeJudgedSaysWhy(t *testing.T) {
	has := inside()
	has[2].Percent = math.NaN()
	if v := label.Judge(r12(), has); v.Tell() != "report R-12: coconut oil cannot be worked out yet" || len(v.Missed) != 0 {
		t.Errorf("%+v", v)
	}
	if v := label.Judge(label.Report{ID: "R-1"}, inside()); v.Why == "" || v.Missed != nil {
		t.Errorf("a report without ranges judges: %+v", v)
	}
}

// Ranges drawn around a design hold it, and not with so much more of any of its amounts than was allowed and three figures can hide.
func TestRangesAroundADesignHoldIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		has := []label.Amount{{Kind: label.RangeSuperfat, Batch: "base", Percent: rapid.Float64Range(0, 15).Draw(t, "base")}, {Kind: label.RangeSuperfat, Batch: "icing", Percent: rapid.Float64Range(0, 15).Draw(t, "icing")}}
		for i := range rapid.IntRange(1, 12).Draw(t, "materials") {
			has = append(has, label.Amount{
				Kind: rapid.SampledFrom(label.RangeKinds()[:6]).Draw(t, "kind"), ID: string(rune('a' + i%5)), White: rapid.Bool().Draw(t, "white"),
				Percent: math.Pow(10, rapid.Float64Range(-5, 0.9).Draw(t, "log")),
			})
		}
		by := rapid.Float64Range(0, 40).Draw(t, "by")
		r := label.Report{ID: "r", Ranges: label.Around(has, by)}
		if v := label.Judge(r, has); len(v.Missed) != 0 || v.Why != "" {
			t.Fatalf("%+v does not hold %+v: %s", r.Ranges, has, v.Tell())
		}
		for i := 2; i < len(has); i++ {
			more := append([]label.Amount(nil), has...)
			sum := 0.0
			for _, a := range has {
				if a.Kind == has[i].Kind && a.ID == has[i].ID {
					sum += a.Percent
				}
			}
			more[i].Percent += sum * (by/100 + 0.02)
			if v := label.Judge(r, more); sum < 90/(1+by/100) && len(v.Missed) == 0 {
				t.Fatalf("%+v holds %+v as well", r.Ranges, more)
			}
		}
	})
	got := label.Around(inside(), 10)
	want := []label.Range{
		{Kind: label.RangeOil, ID: "olive", Least: 27.9, Most: 34.1},
		{Kind: label.RangeOil, ID: "coconut", Least: 18, Most: 22},
		{Kind: label.RangeScent, ID: "lavender", Least: 1.8, Most: 2.2},
		{Kind: label.RangeColourant, ID: "titanium-white", Least: 0.36, Most: 0.44},
		{Kind: label.RangeColourant, ID: "zinc-white", Least: 0.27, Most: 0.33},
		{Kind: label.RangeWhite, Least: 0.63, Most: 0.77},
		{Kind: label.RangeSuperfat, Least: 4.5, Most: 8.8},
	}
	for i := range want {
		if math.Abs(got[i].Least-want[i].Least) > 0.0051*want[i].Most || math.Abs(got[i].Most-want[i].Most) > 0.0051*want[i].Most || got[i].Kind != want[i].Kind || got[i].ID != want[i].ID {
			t.Errorf("%+v, want %+v", got[i], want[i])
		}
	}
}
