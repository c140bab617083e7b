package relief

import (
	"math"
	"testing"
)

func full(striped bool, shares ...float64) Recipe {
	return Recipe{L: 250, W: 80, H: 62, Seed: 7, Icing: Icing{
		Shape: Piped, Volume: 12 * 250 * 80, Spots: []Spot{{125, 40}}, Shares: shares, Striped: striped, Sinks: 2.5,
	}}
}

// A top piped full holds the volume it is given, sunk in or not, and is as thick at every place as on a hard top.
func TestPipedIcingHoldsItsVolumeSunkIn(t *testing.T) {
	r := full(true, 0.6, 0.4)
	hard := r
	hard.Icing.Sinks = 0
	f, h := New(r), New(hard)
	const step = 0.5
	sum, deepest, lip, covered := 0.0, 0.0, 0.0, 0.0
	for x := step / 2; x < r.L; x += step {
		for y := step / 2; y < r.W; y += step {
			s, on := f.firm(x, y), h.firm(x, y)
			sum += (s.z - s.floor) * step * step
			if math.Abs(s.z-s.floor-on.z) > 1e-9 {
				t.Fatalf("at %g, %g it is %.3f mm thick, on a table %.3f", x, y, s.z-s.floor, on.z)
			}
			deepest, lip = min(deepest, s.floor), max(lip, s.floor)
			if s.stuff != Bare {
				covered += step * step
			}
		}
	}
	about(t, "the icing's volume", sum, r.Icing.Volume, 0.005)
	if deepest > -2 || deepest < -3.4 {
		t.Errorf("it sinks in %.2f mm at its deepest, want 2 to 3", -deepest)
	}
	if lip < 0.2 || lip > 1 {
		t.Errorf("its edge hangs %.2f mm over the base, want a few tenths", lip)
	}
	if part := covered / (r.L * r.W); part < 0.94 || part > 0.995 {
		t.Errorf("it covers %.3f of the top, want all but its edge", part)
	}
}

// From above the colours show as much as there is of them: side by side in a strand, or a bag for every swirl.
func TestPipedIcingShowsItsShares(t *testing.T) {
	for _, striped := range []bool{true, false} {
		f := New(full(striped, 0.7, 0.3))
		var seen [2]float64
		all := 0.0
		for x := 1.0; x < 250; x++ {
			for y := 1.0; y < 80; y++ {
				if s := f.firm(x, y); s.stuff != Bare {
					seen[s.stuff]++
					all++
				}
			}
		}
		if got := seen[1] / all; math.Abs(got-0.3) > 0.07 {
			t.Errorf("striped %v: the second colour shows on %.3f of the icing, want about 0.3", striped, got)
		}
	}
}

// The face of a bar shows what the knife cuts of the icing down into the base, and nothing below that.
func TestIcingIsSeenSunkIntoTheFace(t *testing.T) {
	f := New(full(true, 1))
	v := f.Face(100, 125)
	p := looked(t, v, 4)
	_, deep := v.SizeMM()
	base := int(math.Round((deep - 62) * 4)) // rows above the base
	below := 0.0
	for j := base; j < p.H; j++ {
		for i := range p.W {
			if p.Label(i, j) == 0 {
				below += 1. / 16
				if up := float64(j-base) / 4; up > 3.6 {
					t.Fatalf("icing shows %.1f mm below the top of the base", up)
				}
			}
		}
	}
	if mean := below / 80; mean < 1 || mean > 3 {
		t.Errorf("the icing is sunk in %.2f mm over the face, want 1 to 3", mean)
	}
	if hard := looked(t, New(Recipe{L: 250, W: 80, H: 62, Seed: 7, Icing: func() Icing { c := full(true, 1).Icing; c.Sinks = 0; return c }()}).Face(100, 125), 4); hard.Label(hard.W/2, hard.H-240) == 0 {
		t.Error("icing that does not sink in shows below the top of the base")
	}
}

// Other seeds pipe other swirls; the same seed the same.
func TestPipedIcingGoesByItsSeed(t *testing.T) {
	a, b, other := New(full(true, 1)), New(full(true, 1)), full(true, 1)
	other.Seed = 8
	c, differ := New(other), 0
	for x := 2.0; x < 250; x += 3 {
		for y := 2.0; y < 80; y += 3 {
			if a.firm(x, y).z != b.firm(x, y).z {
				t.Fatal("the same recipe is piped in another way")
			}
			if math.Abs(a.firm(x, y).z-c.firm(x, y).z) > 1 {
				differ++
			}
		}
	}
	if differ < 300 {
		t.Errorf("another seed differs by more than a millimetre at %d of 2158 places", differ)
	}
}
