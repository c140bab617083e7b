package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// late is how wide a cross-section shows, 3 mm under the surface, the last fifth of what was poured, mm.
func late(s *Swirl, x float64) (wide float64) {
	f := s.Face(x)
	for y := 0.25; y < f.box.W; y += 0.5 {
		if int(f.tracer.trace(y, f.box.H-2*SkimMM).slab) > len(f.tracer.slabs)*4/5 {
			wide += 0.5
		}
	}
	return wide
}

// From above the rings of a column close round its posts: what is poured last is a quarter of the mould wide at each and nowhere between them.
func TestTheRingsOfAColumnCloseRoundItsPosts(t *testing.T) {
	for seed := range int64(3) {
		s := mustPour(t, loaf(script.Column, seed))
		h := s.ops[0].slab.pile.of
		if n := len(h.cells); n < 3 || n > 4 {
			t.Errorf("seed %d: %d posts stand along 250 mm", seed, n)
		}
		for i, c := range h.cells {
			if wide, between := late(s, c.post), late(s, c.to); wide < 0.25*80 || between != 0 {
				t.Errorf("seed %d: at post %d the last rings are %.1f mm wide, and beyond it %.1f mm", seed, i+1, wide, between)
			}
		}
	}
}

// In every cross-section every jug has its share, whatever closes round the posts and however unevenly is poured; of what lies everywhere no pour is as
// large as another of its jug, in the mean.
func TestWhatClosesRoundPostsTakesNoShare(t *testing.T) {
	s := mustPour(t, loaf(script.Column, 1))
	h := s.ops[0].slab.pile.of
	mean, closed, ends := make([]float64, len(h.pours)), 0, 0
	for x := 0.5; x < 250; x++ {
		got := make([]float64, len(h.total))
		e := h.edges(x, len(h.pours), nil)
		for i := range h.pours {
			rise := e[i+1] - e[i]
			if rise < -1e-9 {
				t.Fatalf("at %g mm pour %d rises by %g mm", x, i, rise)
			}
			if rise == 0 {
				ends++
			}
			if !h.pours[i].bed {
				got[h.pours[i].jug] += rise
			}
			mean[i] += rise / 250
		}
		for j, want := range h.total {
			if !near(got[j], want, 1e-6) {
				t.Fatalf("at %g mm jug %d stands %.3f mm high, want %.3f mm", x, j, got[j], want)
			}
		}
	}
	least, most := math.Inf(1), 0.0
	for i, p := range h.pours {
		if p.rings != nil {
			closed++
		} else if p.jug == 1 {
			least, most = min(least, mean[i]), max(most, mean[i])
		}
	}
	if closed < 5 || ends < 300 {
		t.Errorf("%d pours close, at %d places", closed, ends)
	}
	if most < 2*least {
		t.Errorf("the pours of a jug rise by %.2f to %.2f mm in the mean, want one twice another", least, most)
	}
}

// While it is poured a column is level, and what is poured so far is what was poured.
func TestAColumnIsLevelAllTheWayUp(t *testing.T) {
	whole := mustPour(t, loaf(script.Column, 1))
	for _, acts := range []int{30, whole.acts - 4} { // all pours lie everywhere; some closed round posts
		s := whole.Upto(acts)
		for x := 5.0; x < 250; x += 40 {
			f, empty := s.Face(x), 0
			for y := 1.0; y < 80; y += 2 {
				if f.Label(y, s.level-0.1) == Empty || s.Label(x, y, s.level+0.1) != Empty {
					empty++
				}
			}
			last, top := s.ops[len(s.ops)-1].spread.at(x), 0.0
			for _, o := range s.ops {
				if o.slab != nil && o.slab.pile != nil {
					_, top = o.slab.pile.between(x)
				}
			}
			if empty > 0 || !near(last.top, s.level, 1e-9) || !near(top, s.level, 1e-9) {
				t.Errorf("of %d acts: at %g mm it stands %.3f mm high and lies %.3f, want %.3f mm; %d places are empty", acts, x, last.top, top, s.level, empty)
			}
		}
	}
}

// Under every so many pours a place turns, and it keeps inside the mould without being held by a wall.
func TestPlacesTurnUnderAColumn(t *testing.T) {
	s := mustPour(t, loaf(script.Column, 2))
	pours, turns := 0, 0
	for _, a := range s.recipe.Script.Acts {
		if len(a.Lines) > 0 {
			pours++
		}
	}
	for _, o := range s.ops {
		if o.whirl != nil {
			turns++
		}
	}
	if least, most := pours/postTurns-2, pours/postTurns; turns < least || turns > most || least < 1 { // the first pours are too shallow
		t.Errorf("under %d pours %d places turn, want %d to %d", pours, turns, least, most)
	}
}

// What is poured first runs out over the floor with steep flanks, what is poured last holds together with soft ones: in thin batter, in the mean of
// all seeds, to more than twice the width.
func TestTheFirstPoursOfAColumnRunOutOverTheFloor(t *testing.T) {
	first, last := 0.0, 0.0
	for seed := range int64(8) {
		var rows []row
		r := loaf(script.Column, seed)
		r.Thickness = 0
		for _, o := range mustPour(t, r).ops {
			if o.spread != nil {
				rows = append(rows, o.spread.rows[0])
			}
		}
		a, z := rows[0], rows[len(rows)-1]
		first, last = first+a.half, last+z.half
		if a.blunt < 0.4 || z.blunt != 0 {
			t.Errorf("seed %d: the first pour's flanks are %.2f steep, the last's %.2f", seed, a.blunt, z.blunt)
		}
	}
	if first < 2*last || first < 8*0.35*80 {
		t.Errorf("half of the first pours is %.1f mm, of the last %.1f mm", first/8, last/8)
	}
}

// What lies lowest at a post is pressed by all that closes there, but is no hairline: of what it is in the mean of the loaf half is left, in the mean of
// all posts.
func TestTheLowestPoursOfAColumnAreNoHairlinesAtThePosts(t *testing.T) {
	part, posts := 0.0, 0.0
	for seed := range int64(4) {
		h := newBuilder(loaf(script.Column, seed)).holds()
		for _, c := range h.cells {
			e := h.edges(c.post, len(h.pours), nil)
			of, rise := e[4]-e[1], 0.0
			for _, p := range h.pours[1:4] {
				rise += p.rise
			}
			part, posts = part+of/rise, posts+1
		}
	}
	if part < 0.5*posts {
		t.Errorf("at the posts the lowest three pours are %.2f of what they are in the mean", part/posts)
	}
}

// By hand: a bowl 6 mm deep that ends with a power of 1 is 6·(1-1/4) mm deep half way to its end, and two thirds as deep in the mean as in its middle.
func TestARingIsABowl(t *testing.T) {
	r := ring{deep: 6, far: 0.8, end: 1}
	for u, want := range map[float64]float64{0: 6, 0.4: 4.5, 0.8: 0, 0.9: 0} {
		if got := r.at(u); !near(got, want, 1e-12) {
			t.Errorf("at %g it is %g mm deep, want %g", u, got, want)
		}
	}
	if got := bowlMean(1); !near(got, 2./3, 1e-12) {
		t.Errorf("in the mean it is %g as deep, want 2/3", got)
	}
	if got := (ring{}).at(0); got != 0 {
		t.Errorf("what is no ring is %g mm deep", got)
	}
}
