package swirl

import (
	"testing"

	"pgregory.net/rapid"
)

func TestDollopsAreDealtToWithinATenthOfAPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRecipe(t)
		d := newDice(r.Script.Brief.Seed)
		count := rapid.IntRange(60, 600).Draw(t, "dollops")
		f := newDollops(&d, r.Box, r.Script.Brief.Shares, count)
		if f.off > 0.001 {
			t.Fatalf("%d dollops in %v for %v: a share is %.2f points off", count, r.Box, r.Script.Brief.Shares, 100*f.off)
		}
	})
}

// counted counts the portions at random points: the standard error of a share is at most 0.15 points.
func (f *dollops) counted(box Box, portions int) []float64 {
	const n = 120000
	got := make([]float64, portions)
	d := newDice(int64(1))
	for range n {
		got[f.label(d.Between(0, box.L), d.Between(0, box.W), d.Between(0, box.H))] += 1. / n
	}
	return got
}

func TestASpoonedHeapHasTheSharesItWasDealt(t *testing.T) {
	for seed := range uint64(4) {
		d := newDice(int64(seed))
		box, want := Box{250, 80, 62}, []float64{0.5, 0.02, 0.3, 0.18}
		f := newDollops(&d, box, want, 300)
		got := f.counted(box, len(want))
		if e := worst(got, want); e > 0.005 {
			t.Errorf("seed %d: a share is %.2f points off", seed, 100*e)
		}
	}
}

func TestTheMeshOfDollopsFindsTheFirstDomeAboveAPoint(t *testing.T) {
	d := newDice(int64(5))
	box := Box{140, 80, 50}
	f := newDollops(&d, box, []float64{0.4, 0.3, 0.3}, 120)
	for range 20000 {
		x, y, z := d.Between(0, box.L), d.Between(0, box.W), d.Between(0, box.H)
		want := f.rest
		for i := range f.domes {
			if z < f.domes[i].height(x, y) {
				want = f.domes[i].portion
				break
			}
		}
		if got := f.label(x, y, z); got != want {
			t.Fatalf("at (%.1f, %.1f, %.1f) lies portion %d, want %d", x, y, z, got, want)
		}
	}
}

func TestADollopIsWiderThanHighAndFallsAwayFromItsMiddle(t *testing.T) {
	d := newDice(int64(2))
	f := newDollops(&d, Box{250, 80, 62}, []float64{1}, 300)
	for i := range f.domes {
		h := &f.domes[i]
		if 2*h.short < h.high {
			t.Errorf("dollop %d is %.1f mm wide and %.1f mm high", i, 2*h.short, h.high)
		}
		if h.height(h.x, h.y) != h.top || h.height(h.x+2*h.long, h.y) > h.top {
			t.Errorf("dollop %d does not fall away from its middle", i)
		}
	}
}

func TestMouldsOfEveryShapeCanBeHeapedFull(t *testing.T) {
	want := []float64{0.38, 0.16, 0.16, 0.15, 0.15}
	for _, box := range []Box{{10, 10, 10}, {2000, 2000, 10}, {10, 10, 2000}, {2000, 10, 10}, {2000, 2000, 2000}} {
		for _, count := range []int{60, spoonDollops, 600} {
			d := newDice(int64(9))
			f := newDollops(&d, box, want, count)
			if e := worst(f.counted(box, len(want)), want); f.off > 0.004 || e > 0.005 {
				t.Errorf("%v in %d dollops: a share is %.2f points off by dealing, %.2f by counting", box, count, 100*f.off, 100*e)
			}
			if len(f.domes) >= mostDomes {
				t.Errorf("%v in %d dollops: the heap does not close", box, count)
			}
		}
	}
}
