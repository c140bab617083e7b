package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

// spooned is the heap of a recipe, and the shares of its acts in order.
func spooned(s *Swirl) (h *heap, shares []float64) {
	for _, o := range s.ops {
		if o.slab != nil {
			h = o.slab.fill.(*heap)
		}
	}
	for _, a := range s.recipe.Script.Acts {
		if a.Kind == script.Spoon {
			shares = append(shares, a.Share)
		}
	}
	return h, shares
}

// Plain arithmetic: the area between how high the heap stood before an act and after it, by the trapezium rule, is the act's share of
// the cross-section.
func TestEveryActOfSpoonfulsLaysItsShareInEveryCrossSection(t *testing.T) {
	for seed := range int64(3) {
		r := scripted(script.Spooned, seed, 0.5, 0.02, 0.3, 0.18)
		h, shares := spooned(mustPour(t, r))
		if len(h.high) != len(shares) {
			t.Fatalf("%d acts are heaped, want %d", len(h.high), len(shares))
		}
		for i := range h.nx {
			for k, want := range shares {
				area := 0.0
				for j := range h.ny {
					at, low := i*h.ny+j, float32(0)
					if k > 0 {
						low = h.high[k-1][at]
					}
					if h.high[k][at] < low {
						t.Fatalf("act %d takes the heap down from %g to %g mm", k, low, h.high[k][at])
					}
					width := 80. / 64
					if j == 0 || j == h.ny-1 {
						width /= 2
					}
					area += width * float64(h.high[k][at]-low)
				}
				if got := area / (80 * 62); math.Abs(got-want) > 0.0002 {
					t.Errorf("seed %d: act %d lays %.4f of cross-section %d, want %.4f", seed, k, got, i, want)
				}
			}
		}
	}
}

// Tapped level, the mould is full to its rim, and from above no act covers the others: the last lies in spoonfuls, and several show beside it.
func TestTappedSpoonfulsShowBesideEachOther(t *testing.T) {
	h, shares := spooned(mustPour(t, scripted(script.Spooned, 2, 0.3, 0.2, 0.2, 0.2, 0.1)))
	last, near := len(shares)-1, make([]float64, len(shares))
	for at := range h.high[last] {
		if h.high[last][at] != 62 {
			t.Fatalf("the heap is tapped to %g mm", h.high[last][at])
		}
		for k := range near {
			if float64(h.high[k][at]) > 62-SkimMM {
				near[k] += 1 / float64(h.nx*h.ny)
				break
			}
		}
	}
	if near[last] < 0.15 || near[last] > 0.6 || near[last-1] < 0.05 || near[last-2] < 0.01 {
		t.Errorf("just under the surface the acts cover %.2f of it", near)
	}
}

// Plain arithmetic: a pile of 40 mm on the left half and 80 mm on the right has a third of itself on the left, so what lay there is a third of the
// width when it is level; what lay at half its height lies at half the height.
func TestAPileTappedLevelKeepsItsColumns(t *testing.T) {
	h := newHeap(Box{L: 250, W: 80, H: 60})
	half, top := make([]float64, h.nx*h.ny), make([]float64, h.nx*h.ny)
	for at := range top {
		if top[at] = 40; at%h.ny > h.ny/2 {
			top[at] = 80
		}
		half[at] = top[at] / 2
	}
	from := make([]float64, h.ny)
	h.came(top[:h.ny], from)
	if got, want := from[h.ny/3], 0.5*float64(h.ny-1); !near(got, want, 1) {
		t.Errorf("what lies a third of the width from the left came from mesh %.2f, want %.2f", got, want)
	}
	h.level([][]float64{half, top})
	for _, j := range []int{3, 12, 40, 60} {
		if got := float64(h.high[0][j]); !near(got, 30, 0.5) {
			t.Errorf("half the pile is %.2f mm high at mesh %d, want 30", got, j)
		}
	}
}

// stretches are the widths, mm, over which an act lies at least a millimetre thick in a cross-section of the heap, and how thick it lies at most.
func stretches(h *heap, act, i int) (wide []float64, thick float64) {
	on := false
	for j := range h.ny {
		at, low := i*h.ny+j, float32(0)
		if act > 0 {
			low = h.high[act-1][at]
		}
		t := float64(h.high[act][at] - low)
		thick = max(thick, t)
		switch {
		case t < 1:
			on = false
		case !on:
			on = true
			wide = append(wide, 0)
			fallthrough
		default:
			wide[len(wide)-1] += 1 / h.perY
		}
	}
	return wide, thick
}

// A tenth of the batter in three rounds is one spoonful in a cross-section, about three times as wide as thick, and thick batter stands higher.
func TestSpoonfulsLieFlat(t *testing.T) {
	var high [2]float64
	for k, thickness := range []float64{0, 1} {
		wide, thick, n := 0.0, 0.0, 0.0
		for seed := range int64(3) {
			r := scripted(script.Spooned, seed, 0.6, 0.1, 0.1, 0.1, 0.1)
			r.Thickness = thickness
			h, _ := spooned(mustPour(t, r))
			for act := 1; act < 11; act++ {
				for i := 5; i < h.nx; i += 9 {
					w, most := stretches(h, act, i)
					if h.portion[act] == 0 || len(w) != 1 {
						continue
					}
					wide, thick, n = wide+w[0], thick+most, n+1
				}
			}
		}
		wide, thick = wide/n, thick/n
		if wide < 20 || wide > 42 || thick < 6 || thick > 15 || wide/thick < 2.2 || wide/thick > 5.5 || n < 60 {
			t.Errorf("thickness %g: %g spoonfuls are %.1f mm wide and %.1f mm thick", thickness, n, wide, thick)
		}
		high[k] = thick / wide
	}
	if high[1] < 1.1*high[0] {
		t.Errorf("a spoonful is %.2f of its width high in thin batter, %.2f in thick", high[0], high[1])
	}
}

// One spoonful lies beside the one before it, not behind it.
func TestSpoonfulsLieAside(t *testing.T) {
	d := newDice(6)
	h := newHeap(Box{L: 250, W: 80, H: 62})
	s := spooning{heap: h, d: &d, usual: 18, plump: 0.5, z: make([]float64, h.nx*h.ny), skin: make([]int8, h.nx*h.ny)}
	near, all := 0, 0
	for range 20 {
		row := s.row(18, 1)
		for k := 1; k < len(row); k++ {
			if all++; math.Abs(row[k].y-row[k-1].y) < 18 {
				near++
			}
			if row[k].y < 0 || row[k].y > 80 || row[k].x <= row[k-1].x {
				t.Fatalf("a spoonful lies at %v after one at %v", row[k], row[k-1])
			}
		}
		if row[0].x > 0 || row[len(row)-1].x < 250 {
			t.Errorf("spoonfuls lie from %.1f to %.1f mm along the loaf", row[0].x, row[len(row)-1].x)
		}
	}
	if near > all/4 {
		t.Errorf("%d of %d lie within a half width of the one before", near, all)
	}
}

// From above a spoonful is round or a tongue: nearly all the way from one to the next the one narrows and the next widens, so that none has straight
// sides; its head is blunt and its tail drawn out.
func TestASpoonfulHasNoStraightSides(t *testing.T) {
	for _, toEnd := range []bool{false, true} {
		for way := 0.1; way < 0.85; way += 0.05 {
			if a, b := spoonEnd(way, toEnd), spoonEnd(way+0.05, toEnd); b < a+0.002 {
				t.Errorf("from %.2f to %.2f of the way the next spoonful goes from %.3f to %.3f of the batter", way, way+0.05, a, b)
			}
		}
	}
	if head, tail := spoonEnd(0.25, true), spoonEnd(0.25, false); head < 4*tail {
		t.Errorf("a head has %.3f of the batter a quarter of the way on, a tail %.3f", head, tail)
	}
}

// Tapped, spoonfuls sink and roll over within the mould, more in thin batter than in thick.
func TestTappedSpoonfulsSinkAndRoll(t *testing.T) {
	moved := func(thickness float64) (sag, roll float64) {
		r := scripted(script.Spooned, 4, 0.4, 0.35, 0.25)
		r.Thickness = thickness
		for _, o := range mustPour(t, r).ops {
			if b := o.border; b != nil {
				if b.at-b.down < -1e-9 || b.at+b.up > 62+1e-9 {
					t.Errorf("what sinks at %g mm moves batter from %g to %g mm", b.at, b.at-b.down, b.at+b.up)
				}
				for _, l := range b.ground.lobes {
					sag = max(sag, math.Abs(l.deep))
				}
			}
			if w := o.whirl; w != nil {
				roll = max(roll, math.Abs(w.angle))
				if min(w.room.y, w.room.z) < -1e-9 || w.centre.y-w.half.y-w.room.y < -1e-9 || w.centre.z+w.half.z+w.room.z > 62+1e-9 {
					t.Errorf("what rolls about %v is %v wide with room for %v", w.centre, w.half, w.room)
				}
			}
		}
		return sag, roll
	}
	sagThin, rollThin := moved(0)
	sagThick, rollThick := moved(1)
	if sagThin < 2*sagThick || rollThin < 2*rollThick || sagThick < 0.5 || rollThick == 0 {
		t.Errorf("thin batter sinks %.1f mm and rolls by %.2f, thick %.1f mm and %.2f", sagThin, rollThin, sagThick, rollThick)
	}
}

func TestSpoonfulsShowAsTheyAreLaid(t *testing.T) {
	r := scripted(script.Spooned, 3, 0.4, 0.35, 0.25)
	s := mustPour(t, r)
	want := make([]float64, 3)
	for n, a := range r.Script.Acts {
		if a.Kind == script.Spoon {
			want[a.Jug] += a.Share
		}
		var pic Picture
		got := make([]float64, 3)
		s.Upto(n+1).Face(120).Draft(&pic, 160, 124)
		for i := range pic.Pixels {
			if pic.Pixels[i].Part[0] > 0 {
				got[pic.Pixels[i].Portion[0]] += 1 / float64(len(pic.Pixels))
			}
		}
		if e := worst(got, want); e > 0.005 {
			t.Fatalf("after act %d the face shows %.3f, want %.3f", n+1, got, want)
		}
	}
}

func TestMouldsOfEveryShapeCanBeSpoonedFull(t *testing.T) {
	if testing.Short() {
		t.Skip("draws many faces")
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom([]int{1, 2, 5, 12}).Draw(t, "jugs")
		shares, sum := make([]float64, n), 0.0
		for i := range shares {
			shares[i] = rapid.SampledFrom([]float64{0.002, 0.1, 1, 1, 1}).Draw(t, "share")
			sum += shares[i]
		}
		for i := range shares {
			shares[i] /= sum
		}
		r := scripted(script.Spooned, rapid.Int64().Draw(t, "seed"), shares...)
		r.Thickness = rapid.Float64Range(0, 1).Draw(t, "thickness")
		side := func(name string) float64 { return rapid.SampledFrom([]float64{10, 40, 80, 400, 2000}).Draw(t, name) }
		r.Box = Box{L: side("long"), W: side("wide"), H: side("high")}
		s, err := New(r)
		if err != nil {
			t.Fatal(err)
		}
		h, acts := spooned(s)
		for k := range acts {
			for at, v := range h.high[k] {
				if !(v >= 0 && float64(v) <= r.Box.H+0.001) || k > 0 && v < h.high[k-1][at] || k == len(acts)-1 && float64(v) != r.Box.H {
					t.Fatalf("%v: after act %d of %d the heap stands at %g mm", r.Box, k+1, len(acts), v)
				}
			}
		}
	})
}

// Tapped, spoonfuls have no upright sides: across the mould no surface of the heap rises more steeply than about four to one.
func TestTheTapRoundsSpoonfuls(t *testing.T) {
	for seed := range int64(2) {
		h, _ := spooned(mustPour(t, scripted(script.Spooned, seed, 0.4, 0.2, 0.2, 0.2)))
		steepest := 0.0
		for _, z := range h.high {
			for i := range h.nx {
				for j := 1; j < h.ny; j++ {
					steepest = max(steepest, math.Abs(float64(z[i*h.ny+j]-z[i*h.ny+j-1]))*h.perY)
				}
			}
		}
		if steepest > 4 || steepest < 0.5 {
			t.Errorf("seed %d: a surface of the heap rises %.1f to 1", seed, steepest)
		}
	}
}

// A spoonful is as thick as it can be carried: of a colour of a seventh of the batter in three rounds one lies in a cross-section, over half of the mould
// and no stripe across it.
func TestSpoonfulsLieOneOnTheOtherAndNotAcrossTheMould(t *testing.T) {
	h, shares := spooned(mustPour(t, loaf(script.Spooned, 2)))
	lies, of := 0.0, 0.0
	for k := 1; k < len(shares)-1; k++ {
		if shares[k] > 0.08 {
			continue
		}
		for at, z := range h.high[k] {
			if of++; z-h.high[k-1][at] > 1 {
				lies++
			}
		}
	}
	if part := lies / of; !(part > 0.35 && part < 0.62) {
		t.Errorf("spoonfuls lie over %.2f of the mould in the mean", part)
	}
}
