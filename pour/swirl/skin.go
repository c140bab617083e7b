package swirl

import (
	"image"
	"math"

	"pourbench/pour/script"
)

// Slope is how a fresh top slopes at a place, mm to the mm along the loaf and across it: what was drawn through it leaves ridges, spoonfuls leave
// lumps, and what is poured leaves dimples, all the higher the thicker the batter. By eye, no source. Cut pictures and volumes know nothing of it.
func (s *Swirl) Slope(x, y float64) (along, across float64) {
	const d = 0.25
	t := s.recipe.Thickness
	high, shape := 0.15+0.55*t, dimples
	switch s.recipe.Script.Brief.Technique {
	case script.Hanger, script.HangerLoops, script.HangerSpiral, script.Combed:
		high, shape = 0.2+0.5*t, ridges
	case script.Spooned, script.Layers:
		high, shape = 0.15+1.1*t, lumps
	}
	phase := float64(s.recipe.Script.Brief.Seed%97) * 0.7
	return high * (shape(x+d, y, phase) - shape(x-d, y, phase)) / (2 * d), high * (shape(x, y+d, phase) - shape(x, y-d, phase)) / (2 * d)
}

// ridges lie along the loaf, the way a wire or a comb was drawn, and wander: round valleys, narrow crests, here and there none.
func ridges(x, y, phase float64) float64 {
	t := y/9.5 + 0.6*math.Sin(x/43+phase) + 0.25*math.Sin(x/17+y/31+2*phase)
	high := 0.55 + 0.45*math.Sin(x/29+y/11+3*phase)
	return high * (1 - math.Sqrt(0.02+math.Pow(math.Sin(math.Pi*t), 2)))
}

// lumps are spoonfuls pushed against each other.
func lumps(x, y, phase float64) float64 {
	return math.Sin(x/5.3+1.4*math.Sin(y/7.1+phase)) * math.Cos(y/4.7+1.1*math.Sin(x/8.3-phase))
}

// dimples are where something was poured in.
func dimples(x, y, phase float64) float64 {
	return math.Sin(x/7.3+1.2*math.Sin(y/9.4+phase)) * math.Cos(y/6.6+0.9*math.Sin(x/11.5-phase))
}

// emboss shades a picture of the fresh top by how it slopes, the light from the upper left: it is no cut, and what was poured side by side stands in
// ropes with a groove between, all the deeper the thicker the batter. A bare picture stays as it is.
func (l *Long) emboss(img *image.NRGBA, pic *Picture, m Material) {
	if m.Relief == 0 {
		return
	}
	const shade, soft = 0.4, 0.85 // how much a slope of 1 to 1 darkens; a height of the light
	b, box := img.Bounds(), l.s.recipe.Box
	px := l.long / float64(max(b.Dx(), 1))
	grooves := pic.grooves(px)
	deep := m.Relief * (grooveThin + grooveThick*l.s.recipe.Thickness)
	ink := curve()
	Share(b.Dy(), func(j int) bool {
		row := img.Pix[img.PixOffset(b.Min.X, b.Min.Y+j):]
		for i := range b.Dx() {
			if row[4*i+3] == 0 {
				continue
			}
			along, across := l.s.Slope(l.from+px*(float64(i)+0.5), box.W*(float64(j)+0.5)/float64(b.Dy()))
			e, f := grooves.slope(i, j)
			along, across = m.Relief*along-deep*e, m.Relief*across-deep*f
			lit := clamp(1+shade*(0.56*along+0.83*across)/soft, 0.7, 1.2)
			for k := range 3 {
				v := &row[4*i+k]
				*v = ink[min(int(float64(linear(*v))*lit*curveKnots+0.5), curveKnots)]
			}
		}
		return true
	})
}

// What stands in ropes, by eye, no source.
const (
	grooveThin  = 0.15 // mm, how deep a groove is in the thinnest batter
	grooveThick = 1.3  // and how much more in the thickest
	grooveMM    = 1.1  // half of how wide it is
)

// grooves is how deep what is between two portions lies at every pixel, of the depth of one groove, 0 to 1.
type grooves struct {
	w, h int
	px   float64
	deep []float32
}

// grooves works them out for pixels of px mm: the borders, smeared out three times over, which is near to a bell (the central limit theorem).
func (p *Picture) grooves(px float64) *grooves {
	g := &grooves{w: p.W, h: p.H, px: px, deep: make([]float32, len(p.Pixels))}
	for i := range g.deep {
		if p.bordered(i%p.W, i/p.W) {
			g.deep[i] = 1
		}
	}
	reach := max(1, int(math.Round(grooveMM/px)))
	other := make([]float32, len(g.deep))
	for range 3 {
		smear(other, g.deep, p.H, p.W, 1, p.W, reach)
		smear(g.deep, other, p.W, p.H, p.W, 1, reach)
	}
	single := float32(px / (2 * grooveMM)) // what one border comes to, about
	for i, v := range g.deep {
		v /= single
		g.deep[i] = v / (1 + v) * 1.5 // many close together are no deeper than one
	}
	return g
}

// smear sets every place to the mean of those within reach, over lines of n places, step apart, next line next apart.
func smear(to, from []float32, lines, n, step, next, reach int) {
	Share(lines, func(line int) bool {
		at := line * next
		sum := float32(0)
		for k := range min(reach, n) {
			sum += from[at+k*step]
		}
		for i := range n {
			if k := i + reach; k < n {
				sum += from[at+k*step]
			}
			if k := i - reach - 1; k >= 0 {
				sum -= from[at+k*step]
			}
			to[at+i*step] = sum / float32(2*reach+1)
		}
		return true
	})
}

// slope is how it rises at a pixel, to the right and down, of its depth to the mm.
func (g *grooves) slope(i, j int) (right, down float64) {
	at := func(i, j int) float64 {
		return float64(g.deep[max(0, min(j, g.h-1))*g.w+max(0, min(i, g.w-1))])
	}
	return (at(i+1, j) - at(i-1, j)) / (2 * g.px), (at(i, j+1) - at(i, j-1)) / (2 * g.px)
}
