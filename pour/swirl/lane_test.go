package swirl

import (
	"context"
	"slices"
	"testing"

	"pourbench/pour/script"
)

// A stretch of a cut in coarse pixels against 6 by 6 points of each, every one traced by itself through the plain moves: the parts of a
// pixel are about those of its points, on average over the pixels of some pours with more than one portion. Out of a pot comes more than one
// strand to a pixel.
func TestACutAlongTheLoafShowsWhatLiesInItsPixels(t *testing.T) {
	for tech, most := range map[script.Technique]float64{script.Hanger: 0.075, script.Pot: 0.07} {
		sum, mixed := 0.0, 0
		for seed := int64(4); seed < 6; seed++ {
			off, n := wrong(t, loaf(tech, seed))
			sum, mixed = sum+off, mixed+n
		}
		if mean := sum / float64(mixed); mixed < 60 || mean > most {
			t.Errorf("%s: %.3f of a pixel is wrong on average over %d of them, want at most %.3f", tech, mean, mixed, most)
		}
	}
}

// wrong is by what parts of them pixels with more than one portion are wrong in all, and how many there are.
func wrong(t *testing.T, r Recipe) (sum float64, mixed int) {
	t.Helper()
	const w, h, fine = 4, 124, 6
	s := mustPour(t, r)
	box := s.recipe.Box
	var p Picture
	if err := s.Lengthwise(box.W/2).Part(60, 62).Refine(context.Background(), &p, w, h); err != nil {
		t.Fatal(err)
	}
	for k := range p.Pixels {
		var truth, got [MaxPortions]float64
		for n := range fine * fine {
			x := 60 + 2*(float64(k%w)+(float64(n%fine)+0.5)/fine)/w
			z := box.H * (1 - (float64(k/w)+(float64(n/fine)+0.5)/fine)/h)
			if label := s.Label(x, box.W/2, z); label != Empty {
				truth[label] += 1.0 / (fine * fine)
			}
		}
		for i, part := range p.Pixels[k].Part {
			if part > 0 {
				got[p.Pixels[k].Portion[i]] += float64(part) / 255
			}
		}
		off, alone := 0.0, false
		for i := range truth {
			off += max(0, truth[i]-got[i])
			alone = alone || truth[i] > 0.999
		}
		if !alone {
			sum, mixed = sum+off, mixed+1
		}
	}
	return sum, mixed
}

// Where a wire folds the batter, a filament thinner than a pixel lies between two samples that come from one side of it; what is drawn out of a pot can be
// as thin where it left the lip. No pixel may leave out what lies in a fifth of it or more: a filament would show as a line of dashes. Against 16 traces
// down each pixel.
func TestAFilamentIsNoLineOfDashes(t *testing.T) {
	wire, pot := loaf(script.Hanger, 5), loaf(script.Pot, 5)
	for name, c := range map[string]struct {
		cut      *Long
		deep     float64
		from, to int // rows of pixels where they lie
		least    int
	}{
		"a wire's": {mustPour(t, wire).Lengthwise(wire.Box.W / 2), wire.Box.H, 30, 80, 100},
		"a pot's":  {mustPour(t, pot).Skim(), pot.Box.W, 220, 250, 100},
	} {
		missed, filaments := dashed(t, c.cut.Part(0, 10), int(c.deep*4), c.from, c.to)
		if missed > 0 || filaments < c.least {
			t.Errorf("%s: %d of %d thin parts of pixels are left out", name, missed, filaments)
		}
	}
}

// dashed is how many parts of pixels are left out of rows of 40 of a cut, of those that are a fifth to a half of one in which no more lies than a pixel holds.
func dashed(t *testing.T, l *Long, h, from, to int) (missed, filaments int) {
	t.Helper()
	const w, sub = 40, 16
	p := &Picture{}
	if err := l.Refine(context.Background(), p, w, h); err != nil {
		t.Fatal(err)
	}
	tr := &tracer{}
	for i := range w {
		tr.prepare(l.s, l.from+l.long*(float64(i)+0.5)/w, false)
		for j := from; j < to; j++ {
			var lies [MaxPortions]int
			several := 0
			for k := range sub {
				if s := l.sample(tr, (float64(j)+(float64(k)+0.5)/sub)/float64(h)); !s.empty {
					if lies[s.label]++; lies[s.label] == 1 {
						several++
					}
				}
			}
			px := &p.Pixels[j*w+i]
			for portion, n := range lies {
				if n < sub/5 || n > sub/2 || several > len(px.Portion) {
					continue
				}
				filaments++
				if k := slices.Index(px.Portion[:], uint8(portion)); k < 0 || px.Part[k] == 0 {
					missed++
				}
			}
		}
	}
	return missed, filaments
}
