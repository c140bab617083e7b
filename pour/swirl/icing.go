package swirl

import (
	"context"
	"errors"
	"fmt"
	"image/color"
	"math"

	"pourbench/pour/script"
)

// ErrIcing is wrapped by every error of [NewIcing].
var ErrIcing = errors.New("the icing cannot be drawn")

// Piping is how the icing is put on.
type Piping string

// The ways of piping.
const (
	Rosettes Piping = "rosettes" // piped in coils from a star nozzle
	Peaks    Piping = "peaks"    // spooned on and pulled up
)

// IcingRecipe is everything the picture of an icing depends on.
type IcingRecipe struct {
	Piping  Piping
	Striped bool      // the jugs side by side in one bag; else a bag each, so that every mound is one colour
	Shares  []float64 // of the icing, in bag order; they sum to 1 within 0.001
	WidthMM float64   // of the bar below, 10 to 2000
	MeanMM  float64   // mean height over that width, 1 to 200: what the volume of the icing gives
	Seed    int64
}

// Icing is the outline of a piped topping seen from the cut side, with its colours. The area of the outline is the
// mean height times the width. The areas of the colours follow their shares roughly where they are striped, as a picture from outside
// must; with a bag each as nearly as whole mounds allow, so that on a bar with few mounds a small share may not show.
type Icing struct {
	recipe  IcingRecipe
	mounds  []mound // front ones first
	until   []float64
	portion []int
	peak    float64
	from    float64 // mm, the stretch of the width that is painted
	wide    float64
}

// mound is one rosette or peak.
type mound struct {
	at, half, high float64 // mm: middle, half width, height
	coils          float64
	tilt, phase    float64
	bend           float64 // mm the tip leans
	dim            float64 // brightness; back rows are darker
	power          float64 // of the profile: small is full, large is pointed
	scallop        float64 // how far the creases between coils cut in, of the half width
	portion        int     // of a mound of one colour
}

// NewIcing works out the outline. It refuses a recipe it cannot draw with an error that wraps [ErrIcing].
func NewIcing(r IcingRecipe) (*Icing, error) {
	if r.Piping != Rosettes && r.Piping != Peaks {
		return nil, fmt.Errorf("%w: piping %q is not known; use %q or %q", ErrIcing, r.Piping, Rosettes, Peaks)
	}
	sum := 0.0
	for i, v := range r.Shares {
		if !(v >= 0 && v <= 1.001) {
			return nil, fmt.Errorf("%w: portion %d has a share of %g; use a fraction from 0 to 1", ErrIcing, i, v)
		}
		sum += v
	}
	if math.Abs(sum-1) > 0.001 || len(r.Shares) > MaxPortions {
		return nil, fmt.Errorf("%w: the shares of %d portions sum to %g; use at most %d that sum to 1", ErrIcing, len(r.Shares), sum, MaxPortions)
	}
	if !(r.WidthMM >= 10 && r.WidthMM <= 2000) || !(r.MeanMM >= 1 && r.MeanMM <= 200) {
		return nil, fmt.Errorf("%w: it is %g mm wide and %g mm high on average; use 10 to 2000 mm and 1 to 200 mm", ErrIcing, r.WidthMM, r.MeanMM)
	}
	c := &Icing{recipe: r, wide: r.WidthMM}
	c.until, c.portion = cumulate(r.Shares)
	d := dice{script.NewDice(r.Seed, 0x1c1)}
	c.pipe(&d)
	c.fit()
	if !r.Striped {
		c.bagged()
	}
	return c, nil
}

// Along is the same icing as it is seen from the side of a loaf of a length in mm, 10 to 2000.
func (c *Icing) Along(lengthMM float64) (*Icing, error) {
	r := c.recipe
	r.WidthMM = lengthMM
	return NewIcing(r)
}

// Part is the stretch of the icing between two places across, mm; it is painted in place of the whole.
func (c *Icing) Part(from, to float64) *Icing {
	part := *c
	part.from = clamp(from, 0, c.recipe.WidthMM)
	part.wide = clamp(to, part.from, c.recipe.WidthMM) - part.from
	return &part
}

// pipe sets a front row of mounds and a back row in its gaps.
func (c *Icing) pipe(d *dice) {
	w := c.recipe.WidthMM
	n := max(1, int(math.Round(w/clamp(c.recipe.MeanMM*1.9, 18, 34))))
	gap := w / float64(n)
	for row := range 2 {
		for k := range n + 1 - row {
			at := gap * (float64(k) + 0.5*float64(row))
			if row == 0 {
				at = clamp(at, 0.42*gap, w-0.42*gap)
			}
			m := mound{
				at: at + gap*d.Between(-0.04, 0.04), half: gap * d.Between(0.56, 0.64), high: d.Between(0.9, 1.1),
				coils: 3.2, tilt: d.Between(0.26, 0.34), phase: d.Float(), bend: gap * d.Between(-0.08, 0.08),
				dim: 1 - 0.2*float64(row), power: 0.5, scallop: 0.09,
			}
			if c.recipe.Piping == Peaks {
				m.coils, m.tilt, m.power = 1.4, d.Between(0.5, 0.9)*d.Sign(), 1.05
				m.scallop = 0.03
				m.high, m.bend, m.half = d.Between(0.7, 1.25), gap*d.Between(-0.3, 0.3), gap*d.Between(0.62, 0.8)
			}
			c.mounds = append(c.mounds, m)
		}
	}
}

// fit scales the heights so that the outline's area is the wanted one.
func (c *Icing) fit() {
	const columns = 600
	sum := 0.0
	for i := range columns {
		sum += c.outline((float64(i) + 0.5) / columns * c.recipe.WidthMM)
	}
	scale := c.recipe.MeanMM * columns / sum
	for i := range c.mounds {
		c.mounds[i].high *= scale
		c.peak = max(c.peak, c.mounds[i].high)
	}
}

// outline is the height of the icing at y, found from above.
func (c *Icing) outline(y float64) float64 {
	best := 0.0
	for i := range c.mounds {
		m := &c.mounds[i]
		low, high := 0.0, m.high
		if _, ok := m.across(y, 0); !ok {
			continue
		}
		for range 30 {
			mid := 0.5 * (low + high)
			if _, ok := m.across(y, mid); ok {
				low = mid
			} else {
				high = mid
			}
		}
		best = max(best, low)
	}
	return best
}

// HighMM is how high the icing stands at a place across it, mm.
func (c *Icing) HighMM(at float64) float64 { return c.outline(at) }

// PeakMM is how high the icing stands at its highest, mm above the bar.
func (c *Icing) PeakMM() float64 { return c.peak }

// across is where a point lies across a mound, -1 to 1, and whether it lies in it.
func (m *mound) across(y, z float64) (float64, bool) {
	t := z / m.high
	e := y - m.at - m.bend*t*t
	if t < 0 || t >= 1 || e < -m.half || e > m.half {
		return 0, false
	}
	half := m.half * math.Pow(1-t, m.power)
	side := math.Copysign(1, e)
	p := 2*m.turn(t, side) + 1
	p = p - 2*math.Floor(p/2) - 1 // -1 to 1 over a coil
	half *= 1 - m.scallop*p*p
	u := e / half
	return u, u > -1 && u < 1
}

// turn is how many coils lie below a place on the front of a mound.
func (m *mound) turn(t, u float64) float64 { return m.coils*t*(1.25-0.25*t) + m.tilt*u + m.phase }

// mound finds the front mound at y mm across and z mm above the bar, and where across it the point lies; nil where there is none.
func (c *Icing) mound(y, z float64) (m *mound, u float64) {
	for i := range c.mounds {
		if u, in := c.mounds[i].across(y, z); in {
			return &c.mounds[i], u
		}
	}
	return nil, 0
}

// at gives the portion and brightness at y mm across and z mm above the bar.
func (c *Icing) at(y, z float64) (portion int, bright float64, ok bool) {
	if m, u := c.mound(y, z); m != nil {
		turn := m.turn(z/m.high, u)
		p := turn - math.Floor(turn)
		round := math.Sqrt(max(0, 1-u*u))
		cord := math.Sqrt(max(0, 1-(2*p-1)*(2*p-1)))
		bright = m.dim * (0.66 + 0.34*round) * (0.6 + 0.4*math.Sqrt(cord)) * (1 + 0.06*math.Cos(8*math.Pi*p))
		portion = m.portion
		if c.recipe.Striped {
			stripe := 1.5*turn + 0.3*u
			portion = pick(c.until, c.portion, stripe-math.Floor(stripe))
		}
		return portion, min(1, bright*(1+0.12*(z/m.high))), true
	}
	return 0, 0, false
}

// Paint draws the icing w by h pixels, its width by its peak in mm, over ground; 16 samples to a pixel averaged in
// linear light. The palette holds the sRGB colour of each portion of the icing. It reuses dst where that is large enough.
func (c *Icing) Paint(palette []color.NRGBA, ground color.NRGBA, w, h int, dst []color.NRGBA) []color.NRGBA {
	n := max(0, w) * max(0, h)
	if cap(dst) < n {
		dst = make([]color.NRGBA, n)
	}
	dst = dst[:n]
	_ = c.paint(context.Background(), palette, ground, w, h, func(j int, row []color.NRGBA) { copy(dst[j*w:], row) }) // nothing stops it
	return dst
}

// paint gives the rows of the picture as they are drawn, from several goroutines at once and in no order. It stops early with ctx's error.
func (c *Icing) paint(ctx context.Context, palette []color.NRGBA, ground color.NRGBA, w, h int, give func(j int, row []color.NRGBA)) error {
	ink := newInks(palette, ground)
	share(workers, func(worker int) bool {
		row := make([]color.NRGBA, max(0, w))
		for j := worker; j < h && ctx.Err() == nil; j += workers {
			for i := range row {
				row[i] = c.pixel(ink, ground, i, j, w, h)
			}
			give(j, row)
		}
		return true
	})
	return ctx.Err()
}

func (c *Icing) pixel(ink *inks, ground color.NRGBA, i, j, w, h int) color.NRGBA {
	var sum light
	hits := 0
	for k := range patchSamples {
		y := c.from + (float64(i)+(float64(k)+0.5)/patchSamples)/float64(w)*c.wide
		z := c.peak * (1 - (float64(j)+(float64(reverse4(k))+0.5)/patchSamples)/float64(h))
		if portion, bright, ok := c.at(y, z); ok {
			v := ink.light[portion].scaled(float32(bright))
			sum.r, sum.g, sum.b = sum.r+v.r, sum.g+v.g, sum.b+v.b
			hits++
		}
	}
	switch {
	case hits == 0:
		return ground
	case hits == patchSamples || ground.A == 0:
		out := sum.scaled(1 / float32(hits)).encode()
		out.A = uint8(255 * hits / patchSamples)
		return out
	}
	g := decode(ground).scaled(float32(patchSamples - hits))
	return light{(sum.r + g.r) / patchSamples, (sum.g + g.g) / patchSamples, (sum.b + g.b) / patchSamples}.encode()
}
