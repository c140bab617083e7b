package shape_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// rated is a plan as the other hand judges it: fewer is better in every place, the first place counting most.
type rated [6]float64

func (a rated) less(b rated) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-6 {
			return a[i] < b[i]
		}
	}
	return false
}

// byHand tries every way to cut a stretch on the grid and returns how good the best is. It knows nothing of how the best plan is looked for.
func byHand(w shape.Wanted, crowded bool) (best rated, ok bool) {
	groups := grouped(w)
	low, high := edges(w)
	touches := func(x float64) bool {
		for _, g := range groups {
			if x+w.Kerf/2 > g.From-w.Clear+1e-7 && x-w.Kerf/2 < g.To+w.Clear-1e-7 {
				return true
			}
		}
		return false
	}
	var bars [][2]float64
	done := func() {
		if r, can := rate(w, groups, bars, low, high, crowded); can && (!ok || r.less(best)) {
			best, ok = r, true
		}
	}
	var on func(from float64)
	on = func(from float64) {
		for i := 0; float64(i)*w.Step <= w.Length; i++ {
			x := float64(i) * w.Step
			t := x - w.Kerf/2 - from
			if t < w.Thin-1e-7 || t > w.Thick+1e-7 || x-w.Kerf/2 > high+1e-7 || touches(x) {
				continue
			}
			bars = append(bars, [2]float64{from, x - w.Kerf/2})
			if w.CutB && !(w.Slice > 0 && w.SliceAtB && touches(x+w.Kerf+w.Slice)) {
				done()
			}
			on(x + w.Kerf/2)
			bars = bars[:len(bars)-1]
		}
		if t := high - from; !w.CutB && t >= w.Thin-1e-7 && t <= w.Thick+1e-7 {
			bars = append(bars, [2]float64{from, high})
			done()
			bars = bars[:len(bars)-1]
		}
	}
	if !w.CutB && w.Slice > 0 && w.SliceAtB && touches(high+w.Kerf/2) || !w.CutA && w.Slice > 0 && !w.SliceAtB && touches(low-w.Kerf/2) {
		return best, false
	}
	if !w.CutA {
		on(low)
		return best, ok
	}
	for i := 0; float64(i)*w.Step <= w.Length; i++ {
		x := float64(i) * w.Step
		if x+w.Kerf/2 < low-1e-7 || touches(x) || w.Slice > 0 && !w.SliceAtB && touches(x-w.Kerf-w.Slice) {
			continue
		}
		on(x + w.Kerf/2)
	}
	return best, ok
}

// grouped joins features that no cut has room between.
func grouped(w shape.Wanted) []shape.Feature {
	f := slices.Clone(w.Features)
	slices.SortFunc(f, func(a, b shape.Feature) int { return int(math.Copysign(1, a.From-b.From)) })
	for i := 1; i < len(f); i++ {
		if f[i].From-f[i-1].To < 2*w.Clear+w.Kerf-1e-9 {
			f[i-1] = shape.Feature{From: f[i-1].From, To: max(f[i-1].To, f[i].To), Mass: f[i-1].Mass + f[i].Mass}
			f = slices.Delete(f, i, i+1)
			i--
		}
	}
	return f
}

// rateOf rates a plan that was found.
func rateOf(w shape.Wanted, p shape.Planned) rated {
	low, high := edges(w)
	var bars [][2]float64
	for _, b := range p.Bars {
		bars = append(bars, [2]float64{b.From, b.To})
	}
	r, _ := rate(w, grouped(w), bars, low, high, true)
	return r
}

// edges are where the first bar may begin and the last may end.
func edges(w shape.Wanted) (low, high float64) {
	high = w.Length
	if w.CutA {
		low = w.TrimA + w.Kerf
	}
	if w.CutB {
		high -= w.TrimB + w.Kerf
	}
	if w.Slice > 0 && !w.SliceAtB {
		low += w.Slice + w.Kerf
	}
	if w.Slice > 0 && w.SliceAtB {
		high -= w.Slice + w.Kerf
	}
	return low, high
}

// rate says how good bars are by the stated order of goals.
func rate(w shape.Wanted, groups []shape.Feature, bars [][2]float64, low, high float64, crowded bool) (rated, bool) {
	n := float64(len(bars))
	lost, spread, off, all := len(groups), 0.0, 0.0, 0.0
	for _, g := range groups {
		all += g.Mass
	}
	target := w.Target
	if target == 0 {
		target = (high - low - (n-1)*w.Kerf) / n
	}
	mean := target
	if w.Mass != nil {
		mean = target*(w.Mass(high)-w.Mass(low))/(high-low) + all/n
	}
	for _, b := range bars {
		var in []shape.Feature
		for _, g := range groups {
			if c := (g.From + g.To) / 2; c > b[0] && c < b[1] {
				in = append(in, g)
			}
		}
		if len(in) > 1 && !crowded {
			return rated{}, false
		}
		if len(in) > 0 {
			lost--
			off += math.Pow(math.Round(math.Abs((in[0].From+in[len(in)-1].To)/2-(b[0]+b[1])/2)*10), 2)
		}
		v := b[1] - b[0]
		if w.Mass != nil {
			v = w.Mass(b[1]) - w.Mass(b[0])
			for _, g := range in {
				v += g.Mass
			}
		}
		spread += math.Pow(math.Round(math.Abs(v-mean)*10), 2)
	}
	return rated{-n, float64(lost), spread, off, bars[0][0] - low + high - bars[len(bars)-1][1], bars[0][0]}, true
}

// The grid and the measures are quarters, so that no sum of theirs stands on the edge of a rounding.
func drawWanted(t *rapid.T) shape.Wanted {
	quarter := func(low, high int, what string) float64 {
		return float64(rapid.IntRange(4*low, 4*high).Draw(t, what)) / 4
	}
	w := shape.Wanted{Step: 1, Clear: quarter(0, 3, "clear")}
	w.Length, w.Kerf = quarter(40, 90, "length"), rapid.SampledFrom([]float64{0, 0.5}).Draw(t, "kerf")
	w.CutA, w.CutB = rapid.Bool().Draw(t, "cut a"), rapid.Bool().Draw(t, "cut b")
	w.TrimA, w.TrimB = quarter(0, 4, "trim a"), quarter(0, 4, "trim b")
	if rapid.Bool().Draw(t, "slice") {
		w.Slice, w.SliceAtB = 5, rapid.Bool().Draw(t, "at b")
	}
	w.Thin = quarter(14, 20, "thin")
	w.Thick = w.Thin + quarter(0, 5, "thicker")
	if rapid.Bool().Draw(t, "aimed") {
		w.Target = w.Thin + 1
	}
	if rapid.Bool().Draw(t, "by mass") {
		slope := rapid.SampledFrom([]float64{0, 0.01}).Draw(t, "slope")
		w.Mass = func(x float64) float64 { return 5*x + slope*x*x }
	}
	for range rapid.IntRange(0, 4).Draw(t, "features") {
		from := quarter(0, 80, "from")
		w.Features = append(w.Features, shape.Feature{From: from, To: from + quarter(1, 10, "long"), Mass: quarter(-2, 2, "heavier")})
	}
	return w
}

func TestTheBestPlanIsTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWanted(t)
		p, ok := w.Best()
		want, can := byHand(w, false)
		if !can {
			want, can = byHand(w, true)
			if can && !p.Crowded {
				t.Fatal("the plan does not say that bars have to share")
			}
		}
		if ok != can {
			t.Fatalf("a plan was found: %v, there is one: %v", ok, can)
		}
		if !ok {
			return
		}
		checkCutting(t, p.Cutting, w.Length, w.Kerf)
		told := rated{-float64(len(p.Bars)), float64(p.Lost), float64(p.Spread), float64(p.Off), p.Over, p.Bars[0].From}
		got := rateOf(w, p)
		for i := range told {
			if math.Abs(told[i]-got[i]) > 1e-6+got[2]*0.02 { // a deviation on the edge of a rounding is a grain more or less
				t.Fatalf("the plan says %v of itself, it is %v", told, got)
			}
		}
		if got.less(want) || want.less(got) {
			t.Fatalf("bars, lost, spread, off, over, first: %v, the best of all is %v", got, want)
		}
		for _, b := range p.Bars {
			if b.Length() < w.Thin-1e-6 || b.Length() > w.Thick+1e-6 {
				t.Fatalf("a bar of %g, not %g to %g", b.Length(), w.Thin, w.Thick)
			}
		}
		for _, x := range p.Cuts {
			for _, f := range w.Features {
				if x+w.Kerf/2 > f.From-w.Clear+1e-6 && x-w.Kerf/2 < f.To+w.Clear-1e-6 {
					t.Fatalf("the cut at %g touches the feature from %g to %g", x, f.From, f.To)
				}
			}
		}
	})
}

// Seen from its other end a stretch has the mirrored plan: as good, and the same cuts where they stand on the same grid and nothing but the tie decides.
func TestAMirroredStretchHasTheMirroredPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWanted(t)
		w.Length = math.Round(w.Length)
		flat := w.Mass != nil
		if flat {
			w.Mass = shape.Uniform(5, nil)
		}
		m := w
		m.Stretch, m.Features = w.Mirror(), nil
		for _, f := range w.Features {
			m.Features = append(m.Features, shape.Feature{From: w.Length - f.To, To: w.Length - f.From, Mass: f.Mass})
		}
		a, okA := w.Best()
		b, okB := m.Best()
		if okA != okB || len(a.Bars) != len(b.Bars) || a.Lost != b.Lost || a.Spread != b.Spread {
			t.Fatalf("%v %+v\nmirrored: %v %+v", okA, a, okB, b)
		}
		if a.Off != b.Off || math.Abs(a.Over-b.Over) > 1e-6 {
			t.Fatalf("off %d and %d, over %g and %g", a.Off, b.Off, a.Over, b.Over)
		}
	})
	s := shape.Wanted{
		Stretch: shape.Stretch{Length: 100, CutA: true, CutB: true}, Thin: 20, Thick: 30, Step: 0.5, Clear: 3,
		Features: []shape.Feature{{From: 8, To: 20}, {From: 36, To: 47}, {From: 61, To: 70}, {From: 84, To: 92}},
	}
	m := s
	m.Features = nil
	for _, f := range s.Features {
		m.Features = append(m.Features, shape.Feature{From: 100 - f.To, To: 100 - f.From})
	}
	a, _ := s.Best()
	b, _ := m.Best()
	alike(t, "mirrored cuts", b.Mirror(100).Cuts, a.Cuts)
}

func TestALongerLoafGivesNoFewerBars(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWanted(t)
		w.Features, w.CutB = nil, true
		a, okA := w.Best()
		w.Length += rapid.Float64Range(0, 60).Draw(t, "longer by")
		b, okB := w.Best()
		if okA && (!okB || len(b.Bars) < len(a.Bars)) {
			t.Fatalf("%d bars, longer %d", len(a.Bars), len(b.Bars))
		}
	})
}

// Two pieces 5 mm apart leave no window for a cut that keeps 3 mm off both: the two are named and share a bar. A third 40 mm on has its own.
func TestAnEmptyWindowIsNamed(t *testing.T) {
	w := shape.Wanted{
		Stretch: shape.Stretch{Length: 100, Kerf: 0.6}, Thin: 20, Thick: 30, Step: 0.5, Clear: 3,
		Features: []shape.Feature{{From: 60, To: 70}, {From: 5, To: 15}, {From: 20, To: 22}},
	}
	p, ok := w.Best()
	if !ok || len(p.Tight) != 1 || p.Tight[0] != [2]int{1, 2} {
		t.Fatalf("%v %+v, want the pair 1 and 2", ok, p)
	}
	if len(p.Bars) != 4 || p.Bars[0].To < 25-1e-9 {
		t.Errorf("bars %v: the first must hold both", p.Bars)
	}
}

// Three small pieces 11 mm apart have windows between them, but bars as thin as that are not wanted: one bar holds two, and that is said.
func TestBarsShareWhereNoPlanPartsThePieces(t *testing.T) {
	w := shape.Wanted{
		Stretch: shape.Stretch{Length: 80}, Thin: 20, Thick: 30, Step: 0.5, Clear: 2,
		Features: []shape.Feature{{From: 28, To: 32}, {From: 40, To: 44}, {From: 52, To: 56}},
	}
	p, ok := w.Best()
	if !ok || !p.Crowded || p.Lost != 1 || len(p.Tight) != 0 || len(p.Bars) != 3 {
		t.Fatalf("%v %+v, want three bars, one of them with two pieces", ok, p)
	}
}

// Without features and with nothing to give way the best plan is bars all alike, E1's nine with trims that are fixed: t' = 26.0 exactly.
func TestTheBestPlanOfNothingInTheWayIsBarsAllAlike(t *testing.T) {
	w := shape.Wanted{Stretch: shape.Stretch{Length: 250, Kerf: 0.6, CutA: true, CutB: true, TrimA: 5, TrimB: 5}, Thin: 25, Thick: 27, Step: 0.1, Clear: 3}
	p, ok := w.Best()
	if !ok || len(p.Bars) != 9 || p.Over > 1e-6 {
		t.Fatalf("%v %+v", ok, p)
	}
	for _, b := range p.Bars {
		near(t, "a bar", b.Length(), 26, 1e-9)
	}
	for _, bad := range []shape.Wanted{{}, {Thin: 5, Thick: 4, Step: 1}, {Thin: 20, Thick: 30, Step: 0.5, Stretch: shape.Stretch{Length: 10}}} {
		if p, ok := bad.Best(); ok {
			t.Errorf("%+v has the plan %+v", bad, p)
		}
	}
}

func benchmarkLoaf(length float64, features int, mass bool) shape.Wanted {
	w := shape.Wanted{Stretch: shape.Stretch{Length: length, Kerf: 0.6, CutA: true, CutB: true, TrimA: 3, TrimB: 3}, Thin: 22, Thick: 28, Step: 0.5, Clear: 3}
	if mass {
		w.Mass = shape.Uniform(5, nil)
	}
	for i := range features {
		c := length * (float64(i) + 0.5) / float64(features)
		c += []float64{0, 0.7, -0.4, 1.1, -0.9}[i%5]
		w.Features = append(w.Features, shape.Feature{From: c - 8, To: c + 8, Mass: 1})
	}
	return w
}

// The best cut plan of a loaf of 1 m with 38 features, by mass.
func BenchmarkBestPlan(b *testing.B) {
	for _, c := range []struct{ length, features int }{{250, 9}, {1000, 38}} {
		w := benchmarkLoaf(float64(c.length), c.features, true)
		b.Run(fmt.Sprintf("%dmm%d", c.length, c.features), func(b *testing.B) {
			for b.Loop() {
				if _, ok := w.Best(); !ok {
					b.Fatal("no plan")
				}
			}
		})
	}
}
