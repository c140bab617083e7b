package label_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/label"
)

// Worked examples W1 and W2 of the weights (derived by another hand from Directive 76/211/EEC, annex I).
func w1() []float64 {
	return []float64{101.2, 99.4, 103.0, 98.7, 100.8, 102.1, 97.9, 101.6, 100.3, 99.1, 102.7, 98.4}
}

func w2() []float64 {
	return []float64{104.1, 103.2, 105.0, 94.9, 104.4, 103.8, 102.9, 104.7, 103.5, 104.0, 103.1, 104.2}
}

func eu() label.Market { return label.Market{Average: label.AverageTNE} }
func aus() label.Market {
	return label.Market{Average: label.AverageFive, AfterPacking: true, Figures: 3}
}

func TestTheAverageSystemStandsAsInTheWorkedTables(t *testing.T) {
	for _, c := range []struct {
		bars                 []float64
		nominal, tne, t1, t2 float64
		meanOK               bool
		under1, under2       int
		average, minimum     bool
	}{
		{w1(), 100, 4.5, 95.5, 91.0, true, 0, 0, true, false},
		{w1(), 101, 4.6, 96.4, 91.8, false, 0, 0, false, false},
		{w1(), 98, 4.5, 93.5, 89.0, true, 0, 0, true, false},
		{w1(), 97, 4.5, 92.5, 88.0, true, 0, 0, true, true},
		{w2(), 100, 4.5, 95.5, 91.0, true, 1, 0, false, false},
		{w2(), 99, 4.5, 94.5, 90.0, true, 0, 0, true, false},
		{w2(), 103, 4.7, 98.3, 93.6, true, 1, 0, false, false},
	} {
		h := label.Average(c.bars, c.nominal)
		near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
		if !near(h.TNE, c.tne) || !near(h.T1, c.t1) || !near(h.T2, c.t2) || h.MeanOK != c.meanOK || h.Under1 != c.under1 || h.Under2 != c.under2 || h.Holds != c.average {
			t.Errorf("at %g g: %+v, want %+v", c.nominal, h, c)
		}
		n := label.Declare(label.Weighing{Bars: c.bars, StatedG: c.nominal, Market: eu()})
		if holds := n.Why == ""; holds != c.minimum {
			t.Errorf("at %g g by the minimum: %q", c.nominal, n.Why)
		}
	}
}

func TestTheLargestWholeGrams(t *testing.T) {
	without := slices.DeleteFunc(w2(), func(g float64) bool { return g == 94.9 })
	for _, c := range []struct {
		bars    []float64
		system  string
		market  label.Market
		loss, e float64
		want    float64
	}{
		{w1(), label.ByAverage, eu(), 0, 0, 100},
		{w1(), label.ByMinimum, eu(), 0, 0, 97},
		{w2(), label.ByAverage, eu(), 0, 0, 99},
		{w2(), label.ByMinimum, eu(), 0, 0, 94},
		{without, label.ByAverage, eu(), 0, 0, 103},
		{w1(), label.ByMinimum, label.Market{AfterPacking: true}, 0.03, 0, 94}, // floor(97.9 × 0.97) = floor(94.963)
		{w1(), label.ByMinimum, eu(), 0.03, 0, 97},                             // judged at packing
		{w1(), label.ByMinimum, eu(), 0, 1, 96},                                // the scale may be a gram out
		{w1(), label.ByAverage, eu(), 0, 1, 99},
		{w1(), label.ByAverage, label.Market{}, 0, 0, 97},       // no rule for single packs is known: all must hold
		{w2(), label.ByAverage, aus(), 0, 0, 99},                // 94.9 ÷ 0.95 = 99.89
		{[]float64{1234.5}, label.ByMinimum, aus(), 0, 0, 1230}, // three figures
		{[]float64{0.7}, label.ByMinimum, eu(), 0, 0, 0},
		{[]float64{97}, label.ByMinimum, eu(), 0, 0, 97},
	} {
		n := label.Declare(label.Weighing{System: c.system, Bars: c.bars, FurtherLoss: c.loss, ScaleErrorG: c.e, Market: c.market})
		if n.Most != c.want || n.G != c.want || (n.Why == "") != (c.want > 0) {
			t.Errorf("%v by the %s: %+v, want %g", c.bars, c.system, n, c.want)
		}
	}
}

// floor(0.025 N): none may be short under 40 bars, one from there to 79.
func TestHowManyMayBeShort(t *testing.T) {
	for bars, want := range map[int]int{0: 0, 39: 0, 40: 1, 79: 1, 80: 2, 1000: 25} {
		if got := label.AllowedShort(bars); got != want {
			t.Errorf("of %d bars %d, want %d", bars, got, want)
		}
	}
	bars := slices.Repeat([]float64{101}, 40)
	bars[7] = 95
	if h := label.Average(bars, 100); !h.Holds || h.Under1 != 1 {
		t.Errorf("one short of forty: %+v", h)
	}
	if h := label.Average(bars[:39], 100); h.Holds {
		t.Errorf("one short of 39: %+v", h)
	}
	bars[7] = 90.9
	if h := label.Average(bars, 100); h.Holds || h.Under2 != 1 {
		t.Errorf("one short by over two errors: %+v", h)
	}
}

// 97 ÷ 28.349523125 = 3.4216: 3.4 oz, and neither figure overstates.
func TestTheWeightInOuncesOverstatesNothing(t *testing.T) {
	n := label.Declare(label.Weighing{Bars: []float64{97.4}, Market: label.Market{Pounds: true}})
	if n.Text != "Net Wt 3.4 oz (97 g)" {
		t.Errorf("it says %q", n.Text)
	}
	for g, want := range map[float64]string{100: "3.5 oz", 98: "3.4 oz", 113.398092500: "4 oz", 500: "17.6 oz / 1 lb 1.6 oz", 453.59237: "16 oz / 1 lb 0 oz", 20: "0.7 oz", 25: "0.88 oz", 28.349523125: "1 oz", 1: "0.03 oz"} {
		if got := label.Ounces(g); got != want {
			t.Errorf("%g g: %q, want %q", g, got, want)
		}
	}
}

func TestAWeightByForecastSaysSo(t *testing.T) {
	n := label.Declare(label.Weighing{Forecast: 103.2, ForecastLow: 98.6, Market: eu()})
	if n.G != 98 || n.From != label.FromForecast || !strings.Contains(strings.Join(n.Notes, " "), "forecast") {
		t.Errorf("%+v", n)
	}
	// By the average each bar counts at the low end of its forecast: the mean of w1 is 100.43.
	for system, want := range map[string]float64{label.ByMinimum: 97, label.ByAverage: 100} {
		n := label.Declare(label.Weighing{System: system, Forecast: 103.2, ForecastLow: 80, Expected: w1(), Market: eu()})
		if n.G != want || n.Average != 103.2 || n.Least != 97.9 || n.From != label.FromForecast {
			t.Errorf("by the %s %+v", system, n)
		}
	}
	if n := label.Declare(label.Weighing{Market: eu()}); n.G != 0 || n.Why == "" || n.Text != "" {
		t.Errorf("of nothing %+v", n)
	}
	if n := label.Declare(label.Weighing{Bars: w1(), ScaleErrorG: 1, Market: eu()}); !strings.Contains(strings.Join(n.Notes, " "), "0.9 g") {
		t.Errorf("a coarse scale: %q", n.Notes)
	}
}

// Whatever is weighed: the minimum always satisfies the average rules, no more holds, and a coarser scale never declares more.
func TestTheMinimumSatisfiesTheAverage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bars := rapid.SliceOfN(rapid.Float64Range(20, 300), 1, 60).Draw(t, "bars")
		n := label.Declare(label.Weighing{Bars: bars, Market: eu()})
		a := label.Declare(label.Weighing{System: label.ByAverage, Bars: bars, Market: eu()})
		if !label.Average(bars, n.G).Holds || a.G < n.G || label.Average(bars, a.G+1).Holds && a.G+1 <= a.Average {
			t.Fatalf("minimum %g, average %g", n.G, a.G)
		}
		coarse := label.Declare(label.Weighing{Bars: bars, ScaleErrorG: rapid.Float64Range(0, 5).Draw(t, "error"), Market: eu()})
		if coarse.Most > n.Most {
			t.Fatalf("%g with a coarser scale, %g without", coarse.Most, n.Most)
		}
	})
}

// What is no mass is declared by nobody, and what is no scale error or loss takes nothing off.
func TestAWeightOfWhatIsNoMassIsNotKnown(t *testing.T) {
	for _, bars := range [][]float64{{math.NaN()}, {97, math.NaN()}, {math.Inf(1)}, {97, 0}, {97, -3}} {
		for _, system := range []string{label.ByMinimum, label.ByAverage} {
			if n := label.Declare(label.Weighing{System: system, Bars: bars, Market: eu()}); n.G != 0 || n.Most != 0 || n.Text != "" || n.Why == "" || n.Average != 0 {
				t.Errorf("%v: %+v", bars, n)
			}
		}
	}
	for _, m := range []label.Market{eu(), aus()} { // more than anything weighs; no error is laid down beyond 25 kg
		if n := label.Declare(label.Weighing{System: label.ByAverage, Bars: []float64{1e300, 1e300}, Market: m}); (n.Most == 25000) != (m.Average == label.AverageTNE) || !(n.Most > 0) {
			t.Errorf("%+v", n)
		}
	}
	for _, odd := range []float64{math.NaN(), -2} {
		n := label.Declare(label.Weighing{Bars: []float64{97.5}, ScaleErrorG: odd, FurtherLoss: odd, StatedG: odd, Market: aus()})
		if n.G != 97 || n.Why != "" {
			t.Errorf("%v taken off: %+v", odd, n)
		}
		if got := strings.Contains(strings.Join(n.Notes, " "), "still loses"); got != math.IsNaN(odd) {
			t.Errorf("a loss of %v: %q", odd, n.Notes)
		}
	}
	if n := label.Declare(label.Weighing{System: label.ByAverage, Bars: []float64{4.2}, Market: eu()}); n.G != 0 || !strings.Contains(n.Why, "no whole gram") {
		t.Errorf("under 5 g no error is laid down: %+v", n)
	}
	if n := label.Declare(label.Weighing{Bars: []float64{100}, FurtherLoss: 3, Market: aus()}); n.G != 0 {
		t.Errorf("all of it goes: %+v", n)
	}
}

// Three figures at most (NMI guide; C.R.C. c. 417 s. 25 to 27), and from 1000 g on kilograms in Canada.
func TestFiguresThatCount(t *testing.T) {
	ca := label.Market{Figures: 3, KiloFrom: 1000}
	for _, c := range []struct {
		stated, bar float64
		market      label.Market
		holds       bool
		text        string
	}{
		{97.5, 98, aus(), true, "97.5 g"},
		{97.55, 98, aus(), false, "97.55 g"},
		{1225, 1234, aus(), false, "1225 g"},
		{1220, 1234, aus(), true, "1220 g"},
		{97.55, 98, eu(), true, "97.55 g"},
		{0, 1234.5, ca, true, "1.23 kg"},
		{0, 1209, ca, true, "1.20 kg"},
		{0, 999.9, ca, true, "999 g"},
		{1000, 1000, ca, true, "1.00 kg"},
		{0, 12345, ca, true, "12.3 kg"},
		{0, 1234, label.Market{KiloFrom: 1000}, true, "1.234 kg"},
		{0, 1234, eu(), true, "1234 g"},
	} {
		n := label.Declare(label.Weighing{Bars: []float64{c.bar}, StatedG: c.stated, Market: c.market})
		if n.Text != c.text || (n.Why == "") != c.holds {
			t.Errorf("%g stated of %g: %q, %q; want %q", c.stated, c.bar, n.Text, n.Why, c.text)
		}
	}
}

// Where a weight counts after packing, what is taken off for it is said: the same bar says less there than elsewhere.
func TestWhatIsTakenOffForLaterIsSaid(t *testing.T) {
	later := label.Declare(label.Weighing{Bars: []float64{133.31}, FurtherLoss: 0.00436, Market: label.Market{AfterPacking: true}})
	now := label.Declare(label.Weighing{Bars: []float64{133.31}, FurtherLoss: 0.00436, Market: eu()})
	if later.G != 132 || now.G != 133 || !strings.Contains(strings.Join(later.Notes, " "), "0.44 %") || strings.Contains(strings.Join(now.Notes, " "), "taken off") {
		t.Errorf("later %+v, at packing %+v", later, now)
	}
}

// Bars that nobody weighed are in the batch all the same: by the minimum they count with what they weigh at least, and it is said how many they are.
func TestBarsThatWereNotWeighedCountByTheMinimum(t *testing.T) {
	for _, c := range []struct {
		system   string
		more     int
		least    []float64
		scaleG   float64
		g        float64
		says     string // empty: nothing is said of them
		averageG float64
	}{
		{"", 0, nil, 0, 97, "", 100.433},
		{"", 2, []float64{98.4, 99}, 0, 97, "caution: 2 of 14 bars were not weighed: by what they weighed as they were cut none of them is lighter", 100.433},
		{"", 2, []float64{99, 91.27}, 0, 91, "caution: 2 of 14 bars were not weighed: by what they weighed as they were cut the lightest of them has 91.2 g, and that counts", 100.433},
		{"", 1, []float64{91.27}, 0.5, 90, "caution: 1 of 13 bars", 100.433},
		{"", 3, nil, 0, 97, "caution: 3 of 15 bars were not weighed, and nothing says what they weigh", 100.433},
		{label.ByAverage, 2, []float64{60, 99}, 0, 100, "caution: 2 of 14 bars were not weighed and count as the others do", 100.433},
	} {
		n := label.Declare(label.Weighing{System: c.system, Bars: w1(), Unweighed: c.more, AtLeast: c.least, ScaleErrorG: c.scaleG, Market: eu()})
		said := strings.Join(n.Notes, "; ")
		if n.G != c.g || n.Least != 97.9 || n.Bars != 12 || math.Abs(n.Average-c.averageG) > 0.001 || !strings.Contains(said, c.says) || (c.says == "") == strings.Contains(said, "not weighed") {
			t.Errorf("%d more, %v: %g g of %d bars, said %q", c.more, c.least, n.G, n.Bars, said)
		}
	}
}
