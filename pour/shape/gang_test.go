package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

func pitched(n int, pitch, kerf, clear float64) shape.Gang {
	g := shape.Gang{Kerf: kerf, Clear: clear}
	for i := range n {
		g.Wires = append(g.Wires, float64(i)*pitch)
	}
	return g
}

// E5: a gang of pitch 25.0 on E1's centres, which are 25.6 apart. Embeds of 18.
func TestAGangOfAnotherPitchToThePrintedDigits(t *testing.T) {
	g := pitched(10, 25, 0.6, 3)
	s := shape.Stretch{Length: 250, Kerf: 0.6}
	var features []shape.Feature
	for i := range 9 {
		c := 22.6 + 25.6*float64(i)
		features = append(features, shape.Feature{From: c - 9, To: c + 9})
	}
	p, ok := g.Best(s, features)
	if !ok {
		t.Fatal("no place was found")
	}
	near(t, "first wire", p.At, 12.5, 1e-9)
	alike(t, "errors", p.Errors, []float64{-2.4, -1.8, -1.2, -0.6, 0, 0.6, 1.2, 1.8, 2.4})
	near(t, "worst error, (N − 1)·|q − p|/2", p.Worst, 8*0.6/2, 1e-9)
	if p.Bars != 9 || len(p.Missed) != 8 {
		t.Errorf("%d bars and %v too near to a wire, want 9 bars and all but the middle one", p.Bars, p.Missed)
	}
	near(t, "what an embed has on each side if it stood in the middle", (g.Gap(0)-18)/2, 3.2, 1e-9)
	near(t, "what the first has on its nearer side", features[0].From-(p.At+0.3), 0.8, 1e-9)
	near(t, "pitch", g.Pitch(), 25, 0)
	g.Clear = 0.75
	if p, _ = g.Best(s, features); len(p.Missed) != 0 {
		t.Errorf("with 0.75 wanted, %v are missed", p.Missed)
	}
	for i := range features {
		c := 25 + 25*float64(i)
		features[i] = shape.Feature{From: c - 9, To: c + 9}
	}
	g.Clear = 3
	if p, _ = g.Best(s, features); len(p.Missed) != 0 || p.Worst > 1e-9 {
		t.Errorf("embeds set at the pitch: %v missed, worst %g", p.Missed, p.Worst)
	}
}

// N wires leave N − 1 whole bars, and the two ends.
func TestWiresLeaveOneBarFewer(t *testing.T) {
	g := shape.Gang{Wires: []float64{0, 25.2, 50.1, 75.4}, Kerf: 0.6}
	s := shape.Stretch{Length: 100, Kerf: 0.6, Slice: 5}
	c := g.On(s, 12)
	alike(t, "cuts", c.Cuts, []float64{12 - 0.3 - 5 - 0.3, 12, 37.2, 62.1, 87.4})
	alike(t, "bars", []float64{c.Bars[0].Length(), c.Bars[1].Length(), c.Bars[2].Length()}, []float64{24.6, 24.3, 24.7})
	alike(t, "ends", []float64{c.TrimA.Length(), c.Slice.Length(), c.TrimB.Length()}, []float64{6.1, 5, 12.3})
	p, _ := g.Best(shape.Stretch{Length: 100, Kerf: 0.6}, nil)
	near(t, "without features it stands in the middle", p.At, (100-75.4)/2, 1e-12)
	if _, ok := (shape.Gang{Wires: []float64{0}}).Best(s, nil); ok {
		t.Error("one wire gives bars")
	}
	short, ok := g.Best(shape.Stretch{Length: 60, Kerf: 0.6}, nil)
	if !ok || short.Bars != 2 {
		t.Errorf("on 60 mm it leaves %d whole bars, want 2", short.Bars)
	}
	if _, ok := g.Best(shape.Stretch{Length: 20, Kerf: 0.6}, nil); ok {
		t.Error("a loaf shorter than a gap gives a whole bar")
	}
}

// The best place is no worse than any on a grid of a tenth of a millimetre.
func TestNoPlaceOfAGangIsBetterThanTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := shape.Gang{Wires: []float64{0}, Kerf: rapid.SampledFrom([]float64{0, 0.6}).Draw(t, "kerf"), Clear: rapid.Float64Range(0, 4).Draw(t, "clear")}
		for range rapid.IntRange(1, 5).Draw(t, "gaps") {
			g.Wires = append(g.Wires, g.Wires[len(g.Wires)-1]+rapid.Float64Range(18, 30).Draw(t, "gap"))
		}
		s := shape.Stretch{Length: rapid.Float64Range(40, 140).Draw(t, "length"), Kerf: g.Kerf}
		var features []shape.Feature
		at := 0.0
		for range rapid.IntRange(1, 5).Draw(t, "features") {
			at += rapid.Float64Range(8, 35).Draw(t, "apart")
			w := rapid.Float64Range(2, 12).Draw(t, "half")
			features = append(features, shape.Feature{From: at - w, To: at + w})
		}
		best, ok := g.Best(s, features)
		for i := -1200; i <= 1400; i++ {
			p := judged(g, s, features, float64(i)/10)
			if p.bars > 0 && !ok {
				t.Fatalf("no place was found, at %g it leaves %d bars", float64(i)/10, p.bars)
			}
			if !ok || p.bars < best.Bars || p.bars == best.Bars && (p.missed > len(best.Missed) || p.missed == len(best.Missed) && p.worst >= best.Worst-1e-6) {
				continue
			}
			t.Fatalf("at %g: %d bars, %d missed, worst %g; the best is at %g: %d, %d, %g", float64(i)/10, p.bars, p.missed, p.worst, best.At, best.Bars, len(best.Missed), best.Worst)
		}
	})
}

type judgement struct {
	bars, missed int
	worst        float64
}

// judged reckons a place of a gang on its own, bar by bar.
func judged(g shape.Gang, s shape.Stretch, features []shape.Feature, at float64) judgement {
	var j judgement
	in := func(x float64) bool { return x >= g.Kerf/2 && x <= s.Length-g.Kerf/2 }
	var bars []shape.Part
	for i := 1; i < len(g.Wires); i++ {
		if a, b := at+g.Wires[i-1], at+g.Wires[i]; in(a) && in(b) {
			bars = append(bars, shape.Part{From: a + g.Kerf/2, To: b - g.Kerf/2})
		}
	}
	j.bars = len(bars)
	for _, f := range features {
		held := false
		for _, b := range bars {
			held = held || f.From-b.From >= g.Clear && b.To-f.To >= g.Clear
		}
		if !held {
			j.missed++
		}
		c := (f.From + f.To) / 2
		nearest := math.Inf(1)
		for i := 1; i < len(g.Wires); i++ {
			if a, b := at+g.Wires[i-1], at+g.Wires[i]; (c >= a-1e-9 || i == 1) && (c <= b+1e-9 || i == len(g.Wires)-1) {
				nearest = min(nearest, math.Abs(c-(a+b)/2))
			}
		}
		j.worst = max(j.worst, nearest)
	}
	return j
}
