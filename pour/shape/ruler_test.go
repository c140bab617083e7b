package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

func TestALengthThatFitsIsOneStripWithoutCrosses(t *testing.T) {
	for _, l := range []float64{1, 250, 276.999, 277} {
		s := shape.Strips(l, 277, 20)
		if len(s) != 1 || s[0].From != 0 || s[0].To != l || len(s[0].Crosses) != 0 {
			t.Errorf("%g mm come to %+v", l, s)
		}
	}
}

// Figures by hand: 1000 mm on 277 with 20 shared need (1000−20)/257 = 3.81, four strips, of 980/4 = 245 new mm each.
func TestALoafOfAMetreOnFourStrips(t *testing.T) {
	got := shape.Strips(1000, 277, 20)
	want := []shape.Strip{
		{From: 0, To: 265, Crosses: []float64{255}},
		{From: 245, To: 510, Crosses: []float64{255, 500}},
		{From: 490, To: 755, Crosses: []float64{500, 745}},
		{From: 735, To: 1000, Crosses: []float64{745}},
	}
	if len(got) != len(want) {
		t.Fatalf("%d strips, not %d: %+v", len(got), len(want), got)
	}
	for i := range want {
		if got[i].From != want[i].From || got[i].To != want[i].To || !sameCrosses(got[i].Crosses, want[i].Crosses) {
			t.Errorf("strip %d is %+v, not %+v", i+1, got[i], want[i])
		}
	}
}

// 277 + 257 = 534 is the most for two strips; a hundredth more needs a third.
func TestTheMostThatStripsHold(t *testing.T) {
	if n := len(shape.Strips(534, 277, 20)); n != 2 {
		t.Errorf("534 mm need %d strips", n)
	}
	if n := len(shape.Strips(534.01, 277, 20)); n != 3 {
		t.Errorf("534.01 mm need %d strips", n)
	}
}

func sameCrosses(a, b []float64) bool {
	for i := range a {
		if len(a) != len(b) || math.Abs(a[i]-b[i]) > 1e-9 {
			return false
		}
	}
	return len(a) == len(b)
}

func TestStripsCoverTheLengthAndShareTheirOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := float64(rapid.IntRange(60, 400).Draw(t, "most"))
		overlap := float64(rapid.IntRange(0, 40).Draw(t, "overlap"))
		length := rapid.Float64Range(0.5, 3000).Draw(t, "length")
		s := shape.Strips(length, most, overlap)
		if s[0].From != 0 || math.Abs(s[len(s)-1].To-length) > 1e-9 {
			t.Fatalf("%g mm run from %g to %g", length, s[0].From, s[len(s)-1].To)
		}
		for i, one := range s {
			if one.To-one.From > most+1e-5 || one.To <= one.From {
				t.Fatalf("strip %d is %g mm of %g", i+1, one.To-one.From, most)
			}
			if one.From != math.Trunc(one.From) {
				t.Fatalf("strip %d begins at %g", i+1, one.From)
			}
			if i == 0 {
				continue
			}
			before := s[i-1]
			if shared := before.To - one.From; math.Abs(shared-overlap) > 1e-9 {
				t.Fatalf("strips %d and %d share %g mm, not %g", i, i+1, shared, overlap)
			}
			if a, b := before.Crosses[len(before.Crosses)-1], one.Crosses[0]; a != b || math.Abs(a-one.From-overlap/2) > 1e-9 {
				t.Fatalf("the crosses of strips %d and %d are at %g and %g", i, i+1, a, b)
			}
		}
		if fewer := float64(len(s)-1)*(most-overlap) + overlap; len(s) > 1 && fewer >= length {
			t.Fatalf("%d strips for %g mm of which %d hold %g", len(s), length, len(s)-1, fewer)
		}
	})
}

func TestNoLengthHasNoStrips(t *testing.T) {
	for _, l := range []float64{0, -3, math.NaN(), math.Inf(1)} {
		if s := shape.Strips(l, 277, 20); s != nil {
			t.Errorf("%g mm come to %v", l, s)
		}
	}
	if s := shape.Strips(500, 20, 20); s != nil {
		t.Errorf("paper that holds its overlap alone comes to %v", s)
	}
}

func TestHatchesStayInsideAndSlantAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Float64Range(-50, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y")
		w, h := rapid.Float64Range(0.5, 60).Draw(t, "w"), rapid.Float64Range(0.5, 60).Draw(t, "h")
		apart := rapid.Float64Range(0.3, 5).Draw(t, "apart")
		for _, l := range shape.Hatch(x, y, w, h, apart) {
			if l[0] < x-1e-9 || l[2] > x+w+1e-9 || l[1] > y+h+1e-9 || l[3] < y-1e-9 {
				t.Fatalf("%v leaves the rectangle at %g, %g of %g by %g", l, x, y, w, h)
			}
			if right, up := l[2]-l[0], l[1]-l[3]; math.Abs(right-up) > 1e-9 || right < 0 {
				t.Fatalf("%v goes %g right and %g up", l, right, up)
			}
		}
	})
	if n := len(shape.Hatch(0, 0, 10, 12, 2)); n != 10 {
		t.Errorf("10 by 12 hatched every 2 has %d lines, not one at 2, 4 to 20", n)
	}
	if len(shape.Hatch(0, 0, 0, 12, 2)) != 0 {
		t.Error("nothing is hatched")
	}
}

// The page on rulers: 0.5 mm on the bar is 1.25 mm at 250.
func TestWhatTheCheckBarSaysOfTheMarks(t *testing.T) {
	if off := 250 * shape.ScaledBy(99.5, 100); math.Abs(off+1.25) > 1e-9 {
		t.Errorf("99.5 mm for 100 leaves %g mm at 250", off)
	}
}
