package relief

import (
	"math"
	"slices"
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
	if deepest > -2.5 || deepest < -4.4 {
		t.Errorf("it sinks in %.2f mm at its deepest, want 3 to 4", -deepest)
	}
	if lip < 0.2 || lip > 1 {
		t.Errorf("its edge hangs %.2f mm over the base, want a few tenths", lip)
	}
	if part := covered / (r.L * r.W); part < 0.94 || part > 0.997 {
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
				if up := float64(j-base) / 4; up > 4.6 {
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

// Between two swirls the icing hardly weighs, and under one it presses the base in: its underside is no ruled line in any cut.
func TestTheUndersideOfIcingWavers(t *testing.T) {
	f := New(full(true, 1))
	for _, x := range []float64{30, 77, 125, 171, 220} {
		low, high := 0.0, math.Inf(-1)
		for y := 6.0; y < 75; y += 0.5 {
			s := f.firm(x, y)
			low, high = min(low, s.floor), max(high, s.floor)
		}
		if high-low < 1.2 || high-low > 4.1 {
			t.Errorf("the underside %g mm along goes from %.2f to %.2f mm, want one to four between them", x, low, high)
		}
	}
}

// At the loaf's own end the icing was pressed against the wall in places, and in others not.
func TestIcingTouchesTheWallInPlaces(t *testing.T) {
	f := New(full(true, 1))
	for _, x := range []float64{0.01, 249.99} {
		on := 0
		for y := 0.5; y < 80; y++ {
			if f.firm(x, y).z > 0.5 {
				on++
			}
		}
		if on < 20 || on > 76 {
			t.Errorf("%g mm along %d of 80 mm touch", x, on)
		}
	}
}

// A fat swirl lies over a lean neighbour: it shows further than to the middle between their feet. By hand: swirls of equal fatness and height would
// meet there.
func TestAFatSwirlLiesOverItsNeighbour(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	sum, n := 0.0, 0
	for k := range len(p.swirls) - 1 {
		a, b := &p.swirls[k], &p.swirls[k+1]
		if (k+1)%p.columns == 0 {
			continue
		}
		if a.lap < b.lap {
			a, b = b, a
		}
		for part := 0.0; part < 1; part += 0.01 {
			if _, of, _ := p.over(a.x+part*(b.x-a.x), a.y+part*(b.y-a.y)); of == b {
				sum, n = sum+part-a.radius/(a.radius+b.radius), n+1
				break
			}
		}
	}
	if n < 15 || sum/float64(n) < 0.02 {
		t.Errorf("over %d pairs the fat one reaches %.3f of the way beyond the middle", n, sum/float64(n))
	}
}

// Most peaks end in a tip: hardly anything of such a swirl is as high as its last millimetre and a half. Of others the tip broke off.
func TestAPeakEndsInATip(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	const step = 0.4
	var wide []float64
	for k := range p.swirls {
		s := &p.swirls[k]
		var heights []float64
		top := 0.0
		for x := max(0, s.x-8); x < min(p.long, s.x+8); x += step {
			for y := max(0, s.y-8); y < min(p.wide, s.y+8); y += step {
				if z, of, _ := p.over(x, y); of == s {
					heights = append(heights, z*p.scale)
					top = max(top, z*p.scale)
				}
			}
		}
		all := 0.0
		for _, z := range heights {
			if z > top-1.5 {
				all += step * step
			}
		}
		wide = append(wide, all)
	}
	slices.Sort(wide)
	if half, most := wide[len(wide)/2], wide[len(wide)-1]; half > 20 || most < 2*half {
		t.Errorf("the last 1.5 mm of a peak are %.1f mm² wide in the middle of them, of the bluntest %.1f", half, most)
	}
}
