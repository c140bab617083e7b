package shape_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// alike fails when a list of lengths differs from the printed one by more than a thousandth of a millimetre.
func alike(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %d of them, want %d: %v", what, len(got), len(want), got)
	}
	for i := range got {
		if math.IsNaN(got[i]) || math.Abs(got[i]-want[i]) > 1e-3 {
			t.Errorf("%s: number %d is %.6f, want %.6f", what, i, got[i], want[i])
		}
	}
}

func middles(c shape.Cutting) []float64 {
	var out []float64
	for _, b := range c.Bars {
		out = append(out, b.Middle())
	}
	return out
}

// E1 of the worked examples: L 250, t 25, k 0.6, trimmed at both ends.
func TestBothEndsTrimmedToThePrintedDigits(t *testing.T) {
	s := shape.Stretch{Length: 250, Kerf: 0.6}
	both := s.For(shape.RestToTrims)
	if n := both.Most(25); n != 9 {
		t.Fatalf("there is room for %d bars, want 9", n)
	}
	near(t, "what is left over", both.Left(9, 25), 19, 1e-12)
	c := s.Alike(9, 25, shape.RestToTrims)
	alike(t, "cuts", c.Cuts, []float64{9.8, 35.4, 61.0, 86.6, 112.2, 137.8, 163.4, 189.0, 214.6, 240.2})
	alike(t, "centres", middles(c), []float64{22.6, 48.2, 73.8, 99.4, 125.0, 150.6, 176.2, 201.8, 227.4})
	alike(t, "trims", []float64{c.TrimA.Length(), c.TrimB.Length()}, []float64{9.5, 9.5})
	bars, _, _, kerfs := c.Lengths(0.6)
	near(t, "what is used", bars+kerfs, 231, 1e-12)

	fixed := shape.Stretch{Length: 250, Kerf: 0.6, CutA: true, CutB: true, TrimA: 5, TrimB: 5}
	near(t, "thickness between trims of 5", fixed.Thickness(9), 26, 1e-12)
	if n := s.Most(25); n != 9 {
		t.Errorf("with its ends kept there is room for %d bars, want 9", n)
	}
	near(t, "left over with the ends kept", s.Left(9, 25), 20.2, 1e-12)
}

// E2: the same with a sample slice of 5 at A, trims of 3, what is left over to the bars.
func TestASampleSliceToThePrintedDigits(t *testing.T) {
	s := shape.Stretch{Length: 250, Kerf: 0.6, CutA: true, CutB: true, TrimA: 3, TrimB: 3, Slice: 5}
	if n := s.Most(25); n != 9 {
		t.Fatalf("there is room for %d bars, want 9", n)
	}
	near(t, "what is left over", s.Left(9, 25), 7.4, 1e-12)
	near(t, "thickness", s.Thickness(9), 25.8222, 2e-6)
	c := s.Alike(9, 25, shape.RestToBars)
	alike(t, "cuts", c.Cuts, []float64{3.3, 8.9, 35.3222, 61.7444, 88.1667, 114.5889, 141.0111, 167.4333, 193.8556, 220.2778, 246.7})
	alike(t, "centres", middles(c), []float64{22.1111, 48.5333, 74.9556, 101.3778, 127.8, 154.2222, 180.6444, 207.0667, 233.4889})
	alike(t, "last trim", []float64{c.TrimB.From, c.TrimB.To}, []float64{247, 250})
	alike(t, "slice", []float64{c.Slice.From, c.Slice.To}, []float64{3.6, 8.6})
}

// The row of the table whose ends are kept, x_j = j(t + k) − k/2, and the one whose one end is trimmed, e + N·t + N·k = L.
func TestEndsThatAreKept(t *testing.T) {
	kept := shape.Stretch{Length: 250, Kerf: 0.5}
	c := kept.Alike(10, 24.55, shape.RestAtB) // 10·24.55 + 9·0.5 = 250
	if len(c.Cuts) != 9 || len(c.Bars) != 10 {
		t.Fatalf("%d cuts and %d bars, want 9 and 10", len(c.Cuts), len(c.Bars))
	}
	for j := range 9 {
		near(t, "cut", c.Cuts[j], float64(j+1)*25.05-0.25, 1e-12)
	}
	one := shape.Stretch{Length: 250, Kerf: 0.6, CutA: true, TrimA: 4}
	near(t, "one end trimmed", one.Thickness(9), (250-4-9*0.6)/9, 1e-12)
	if c := one.Alike(9, 0, shape.RestToBars); len(c.Cuts) != 9 || c.TrimB.Length() != 0 {
		t.Errorf("%d cuts and a trim of %g at B, want 9 and none", len(c.Cuts), c.TrimB.Length())
	}
}

// Ten bars of 25 fill 250 whatever the last bit of the division says; without a kerf nine and a bit are nine and a trim at end B.
func TestWhatIsLeftOverGoesWhereItIsSent(t *testing.T) {
	if n := (shape.Stretch{Length: 250}).Most(25); n != 10 {
		t.Errorf("250 holds %d bars of 25", n)
	}
	if n := (shape.Stretch{Length: 0.3}).Most(0.1); n != 3 {
		t.Errorf("0.3 holds %d of 0.1", n)
	}
	s := shape.Stretch{Length: 250, Kerf: 1}
	atB, atA := s.Alike(9, 25, shape.RestAtB), s.Alike(9, 25, shape.RestAtA)
	near(t, "at B", atB.TrimB.Length(), 250-9*25-9, 1e-12)
	near(t, "at A", atA.TrimA.Length(), 250-9*25-9, 1e-12)
	near(t, "first bar after the rest", atA.Bars[0].From, 17, 1e-12)
	small := shape.Stretch{Length: 250.4, Kerf: 0.5}.Alike(10, 24.55, shape.RestAtB)
	near(t, "a rest thinner than a cut stays with the last bar", small.Bars[9].Length(), 24.95, 1e-9)
	if len(small.Cuts) != 9 {
		t.Errorf("%d cuts, want 9", len(small.Cuts))
	}
}

// A mark is rounded once: nine marks of E2 are within a quarter of a millimetre, pitches rounded and added up are not.
func TestAMarkIsRoundedOnce(t *testing.T) {
	s := shape.Stretch{Length: 250, Kerf: 0.6, CutA: true, CutB: true, TrimA: 3, TrimB: 3, Slice: 5}
	cuts := s.Alike(9, 25, shape.RestToBars).Cuts
	for _, x := range cuts {
		if d := math.Abs(shape.Mark(x, shape.MarkStep) - x); d > 0.25+1e-12 {
			t.Errorf("the mark of %g is off by %g", x, d)
		}
	}
	near(t, "35.3222", shape.Mark(35.3222, 0.5), 35.5, 0)
	near(t, "114.5889", shape.Mark(114.5889, 0.5), 114.5, 0)
}

func TestOwnMarks(t *testing.T) {
	s := shape.Stretch{Length: 100, Kerf: 1, CutA: true, CutB: true, Slice: 5}
	c, out := s.At([]float64{90, 10, 16, 50, 0.5, 99.7, 50.4})
	alike(t, "cuts", c.Cuts, []float64{10, 16, 50, 90})
	alike(t, "left out", out, []float64{0.5, 50.4, 99.7})
	alike(t, "pieces", []float64{c.TrimA.To, c.Slice.From, c.Slice.To, c.Bars[0].From, c.Bars[0].To, c.Bars[1].From, c.Bars[1].To, c.TrimB.From, c.TrimB.To},
		[]float64{9.5, 10.5, 15.5, 16.5, 49.5, 50.5, 89.5, 90.5, 100})
	whole, _ := s.At(nil)
	if len(whole.Bars) != 1 || whole.Bars[0].Length() != 100 {
		t.Errorf("an uncut length is %v", whole)
	}
}

func drawStretch(t *rapid.T) shape.Stretch {
	s := shape.Stretch{
		Length: rapid.Float64Range(60, 1200).Draw(t, "length"), Kerf: rapid.SampledFrom([]float64{0, 0.5, 0.6, 1.5}).Draw(t, "kerf"),
		CutA: rapid.Bool().Draw(t, "cut a"), CutB: rapid.Bool().Draw(t, "cut b"),
		Slice: rapid.SampledFrom([]float64{0, 5}).Draw(t, "slice"), SliceAtB: rapid.Bool().Draw(t, "slice at b"),
	}
	if s.CutA {
		s.TrimA = rapid.Float64Range(0, 10).Draw(t, "trim a")
	}
	if s.CutB {
		s.TrimB = rapid.Float64Range(0, 10).Draw(t, "trim b")
	}
	return s
}

// checkCutting holds what is true of every cutting: its pieces and cuts lie end to end, sorted and inside, and sum to the length.
func checkCutting(t *rapid.T, c shape.Cutting, length, kerf float64) {
	bars, trims, slice, kerfs := c.Lengths(kerf)
	if math.Abs(bars+trims+slice+kerfs-length) > 1e-9*length {
		t.Fatalf("bars %g, trims %g, slice %g and cuts %g do not sum to %g", bars, trims, slice, kerfs, length)
	}
	if !slices.IsSorted(c.Cuts) {
		t.Fatalf("cuts out of order: %v", c.Cuts)
	}
	edges := []float64{0}
	for _, x := range c.Cuts {
		edges = append(edges, x-kerf/2, x+kerf/2)
	}
	edges = append(edges, length)
	pieces := append([]shape.Part{c.TrimA, c.TrimB, c.Slice}, c.Bars...)
	for _, p := range pieces {
		if p == (shape.Part{}) {
			continue
		}
		if p.Length() < -1e-9 || p.From < -1e-9 || p.To > length+1e-9 {
			t.Fatalf("a piece from %g to %g of %g", p.From, p.To, length)
		}
		found := false
		for i := 0; i < len(edges); i += 2 {
			found = found || math.Abs(edges[i]-p.From) < 1e-6 && math.Abs(edges[i+1]-p.To) < 1e-6
		}
		if !found {
			t.Fatalf("the piece from %g to %g does not lie between two cuts %v", p.From, p.To, c.Cuts)
		}
	}
}

func TestBarsTrimsSliceAndCutsSumToTheLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStretch(t)
		thick := rapid.Float64Range(5, 60).Draw(t, "thickness")
		rest := shape.Rest(rapid.IntRange(0, 3).Draw(t, "rest"))
		n := s.For(rest).Most(thick)
		if n == 0 {
			return
		}
		if s.For(rest).Left(n+1, thick) >= 1e-6 {
			t.Fatalf("%d bars, and there is room for another", n)
		}
		c := s.Alike(n, thick, rest)
		checkCutting(t, c, s.Length, s.Kerf)
		if len(c.Bars) != n {
			t.Fatalf("%d bars, want %d", len(c.Bars), n)
		}
		longer := s
		longer.Length += rapid.Float64Range(0, 100).Draw(t, "longer by")
		if longer.For(rest).Most(thick) < n {
			t.Fatal("a longer loaf gives fewer bars")
		}
		other := map[shape.Rest]shape.Rest{shape.RestAtA: shape.RestAtB, shape.RestAtB: shape.RestAtA, shape.RestToBars: shape.RestToBars, shape.RestToTrims: shape.RestToTrims}[rest]
		m := s.Mirror().Alike(n, thick, other).Mirror(s.Length)
		for i := range c.Cuts {
			if len(m.Cuts) != len(c.Cuts) || math.Abs(m.Cuts[i]-c.Cuts[i]) > 1e-6 {
				t.Fatalf("seen from the other end it is cut at %v, not %v", m.Cuts, c.Cuts)
			}
		}
		again, out := s.At(c.Cuts)
		thin := s.CutA && s.TrimA < 1e-3 || s.CutB && s.TrimB < 1e-3
		if rest == shape.RestToBars && !thin && (len(out) > 0 || len(again.Bars) != n) {
			t.Fatalf("cut where it is cut, it gives %d bars, not %d", len(again.Bars), n)
		}
	})
}

func TestOwnMarksSumToTheLengthWhateverTheyAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStretch(t)
		cuts := rapid.SliceOfN(rapid.Float64Range(-20, 1300), 0, 30).Draw(t, "cuts")
		c, out := s.At(cuts)
		if len(c.Cuts)+len(out) != len(cuts) {
			t.Fatalf("of %d cuts %d are made and %d left out", len(cuts), len(c.Cuts), len(out))
		}
		checkCutting(t, c, s.Length, s.Kerf)
		if len(c.Bars) == 0 {
			t.Fatal("no bar is left")
		}
	})
}
