package slice

import (
	"context"
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// top is the surface of the whole loaf: heights above the base on a grid, and the stuffs that show.
type top struct {
	step       float64
	wide, high int // points along and across
	z          []float32
	even       []float32 // the heights, each the mean of those about it
	hollow     []float32 // how much of the sky what stands about a point hides, 0 to 1
	stuff      []uint8
	on         *relief.Field // of which more is asked where stuffs meet; nil: nothing is
	base       swirl.Picture // the surface of the batter from above
	long, deep float64
	shift      int
}

// top works the surface out, its points so far apart, mm.
func (s *Scene) top(ctx context.Context, step, perMM float64, fine bool) (*top, error) {
	box := s.recipe.Box
	t := &top{step: step, wide: int(box.L/step) + 2, high: int(box.W/step) + 2, long: box.L, deep: box.W, shift: s.portions}
	t.z, t.stuff = make([]float32, t.wide*t.high), make([]uint8, t.wide*t.high)
	for i := range t.stuff {
		t.stuff[i] = relief.Bare
	}
	if s.on != nil {
		swirl.Share(t.high, func(j int) bool {
			for i := range t.wide {
				z, stuff := s.on.Surface(min(float64(i)*step, box.L-1e-6), min(float64(j)*step, box.W-1e-6))
				t.z[j*t.wide+i], t.stuff[j*t.wide+i] = float32(max(0, z)), stuff
			}
			return ctx.Err() == nil
		})
		t.hide()
		t.even = evened(evened(t.z, t.wide, 1), t.wide, t.wide)
		if fine {
			t.on = s.on
		}
	}
	w, h := max(2, int(box.L*perMM+0.5)), max(2, int(box.W*perMM+0.5))
	if !fine {
		s.poured.Above().Draft(&t.base, w, h)
		return t, ctx.Err()
	}
	return t, s.poured.Above().Refine(ctx, &t.base, w, h)
}

// hide works out how much of the sky is hidden from each point.
func (t *top) hide() {
	const ways = 8
	t.hollow = make([]float32, len(t.z))
	swirl.Share(t.high, func(j int) bool {
		for i := range t.wide {
			z, sum := t.z[j*t.wide+i], 0.0
			for k := range ways {
				sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / ways)
				most := 0.0
				for _, far := range [...]float64{0.9, 2.2, 4.6} {
					a, b := min(max(i+int(math.Round(far*cos/t.step)), 0), t.wide-1), min(max(j+int(math.Round(far*sin/t.step)), 0), t.high-1)
					most = max(most, float64(t.z[b*t.wide+a]-z)/far)
				}
				sum += most / math.Sqrt(1+most*most)
			}
			t.hollow[j*t.wide+i] = float32(sum / ways)
		}
		return true
	})
}

// hides is how much of the sky is hidden from a place, 0 to 1.
func (t *top) hides(x, y float64) float64 {
	if t.hollow == nil {
		return 0
	}
	return float64(bilinear(t.hollow, t.wide, t.high, x/t.step, y/t.step))
}

// height is how high the surface stands at a place, mm above the base.
func (t *top) height(x, y float64) float64 {
	return float64(bilinear(t.z, t.wide, t.high, x/t.step, y/t.step))
}

// at is the stuff that shows at a place.
func (t *top) at(x, y float64) uint8 {
	i, j := min(max(int(x/t.step+0.5), 0), t.wide-1), min(max(int(y/t.step+0.5), 0), t.high-1)
	if t.on != nil && t.border(i, j) {
		if _, stuff := t.on.Surface(min(max(x, 0), t.long-1e-6), min(max(y, 0), t.deep-1e-6)); stuff != relief.Bare {
			return uint8(t.shift) + stuff
		}
	}
	if s := t.stuff[t.highest(i, j)]; s != relief.Bare {
		return uint8(t.shift) + s
	}
	if l := t.base.Label(place(x/t.long, t.base.W), place(y/t.deep, t.base.H)); l != swirl.Empty {
		return uint8(l)
	}
	return ground
}

// border says whether stuffs meet about a point.
func (t *top) border(i, j int) bool {
	own := t.stuff[j*t.wide+i]
	for b := max(0, j-1); b <= min(t.high-1, j+1); b++ {
		for a := max(0, i-1); a <= min(t.wide-1, i+1); a++ {
			if t.stuff[b*t.wide+a] != own {
				return true
			}
		}
	}
	return false
}

// wallMM is how much the surface rises from point to point where it is a wall, whose side is of what stands on it.
const wallMM = 0.5

// highest is the point whose stuff shows about one: its own, or at the foot of a wall the one up there.
func (t *top) highest(i, j int) int {
	own := j*t.wide + i
	best := own
	for b := max(0, j-1); b <= min(t.high-1, j+1); b++ {
		for a := max(0, i-1); a <= min(t.wide-1, i+1); a++ {
			if k := b*t.wide + a; t.z[k] > t.z[best]+wallMM && t.stuff[k] != relief.Bare {
				best = k
			}
		}
	}
	return best
}

// normal is which way the surface faces.
func (t *top) normal(x, y float64) vec {
	soft := func(v float64) float64 { return v / math.Sqrt(1+v*v/9) } // a wall is no mirror
	dx, dy := slopeOf(t.height, x, y, t.step)
	if wx, wy := slopeOf(t.mean, x, y, wideSteps*t.step); wx*wx+wy*wy > steepFrom*steepFrom {
		steep := min((math.Hypot(wx, wy)-steepFrom)/steepMore, 1)
		dx, dy = dx+steep*(wx-dx), dy+steep*(wy-dy)
	}
	return vec{-soft(dx), -soft(dy), 1}.unit()
}

// A wall that runs aslant over the points of the surface climbs in stairs: how steep it is is taken from further apart there, and from the mean of many
// points. By eye, no source.
const (
	steepFrom  = 1.2 // mm to the mm, where that begins
	steepMore  = 0.4 // and so much steeper nothing else counts
	wideSteps  = 3   // points to either side
	evenPoints = 4   // points to either side, of a mean
)

// evened is a grid whose rows are so wide, each of its points the mean of those to both sides of it that lie so far apart.
func evened(grid []float32, wide, apart int) []float32 {
	out := make([]float32, len(grid))
	swirl.Share(len(grid)/wide, func(j int) bool {
		for i := range wide {
			at, sum, n := j*wide+i, float32(0), float32(0)
			for k := -evenPoints; k <= evenPoints; k++ {
				p := at + k*apart
				if p < 0 || p >= len(grid) || apart == 1 && p/wide != j {
					continue
				}
				sum, n = sum+grid[p], n+1
			}
			out[at] = sum / n
		}
		return true
	})
	return out
}

// mean is how high the surface stands about a place in the mean, mm above the base.
func (t *top) mean(x, y float64) float64 {
	if t.even == nil {
		return 0
	}
	return float64(bilinear(t.even, t.wide, t.high, x/t.step, y/t.step))
}

// slopeOf is how steep a surface is along and across, mm to the mm, from places d mm to either side.
func slopeOf(height func(x, y float64) float64, x, y, d float64) (along, across float64) {
	return (height(x+d, y) - height(x-d, y)) / (2 * d), (height(x, y+d) - height(x, y-d)) / (2 * d)
}
