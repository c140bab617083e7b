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
	case script.Spooned:
		high, shape = 0.15+1.1*t, lumps
	case script.Layers:
		high, shape = 0.5+2.2*t, undulation
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
	u, v := x+7*math.Sin(y/13+x/47+phase), y+5*math.Sin(x/17-y/39+2*phase)
	return math.Sin(u/5.3+1.4*math.Sin(v/7.1+phase)) * math.Cos(v/4.7+1.1*math.Sin(u/8.3-phase)) * (0.65 + 0.35*math.Sin(u/31+v/19-phase))
}

// undulation is what a layer that ran out over a spatula comes to rest in: long and low, across the loaf, no two alike.
func undulation(x, y, phase float64) float64 {
	u := x + 9*math.Sin(y/19+phase) + 6*math.Sin(x/53-y/31+2*phase)
	v := y + 6*math.Sin(x/29-phase)
	return 0.55*math.Sin(u/11.3+1.3*math.Sin(u/41+v/27)) + 0.45*math.Sin(u/5.9-v/9.7+1.7*math.Sin(u/23-v/13+phase))*math.Sin(u/37+v/17+2*phase)
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
	const shade, soft = 0.46, 0.85 // how much a slope of 1 to 1 darkens; a height of the light
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
			x, y := l.from+px*(float64(i)+0.5), box.W*(float64(j)+0.5)/float64(b.Dy())
			along, across := l.s.Slope(x, y)
			e, f := grooves.slope(i, j)
			e, f = deep*e, deep*f
			wet := m.Relief * l.s.wet(x, y) * gloss(m.Relief*along-wetEdge*e, m.Relief*across-wetEdge*f)
			lit := clamp(1-shade*(lampRight*(m.Relief*along-e)+lampDown*(m.Relief*across-f))/soft, 0.7, 1.15)
			for k := range 3 {
				v := &row[4*i+k]
				c := float64(linear(*v)) * lit
				*v = ink[min(int((c+wet*(1-c))*curveKnots+0.5), curveKnots)]
			}
		}
		return true
	})
}

// wet is how wet the top is at a place, 0 to 1: it dries in patches, and one that shone at every edge would be of plastic. By eye, no source.
func (s *Swirl) wet(x, y float64) float64 {
	phase := float64(s.recipe.Script.Brief.Seed % 89)
	v := math.Sin(x/23+1.5*math.Sin(y/17+phase)+phase) + math.Sin(y/13-x/41+1.2*math.Sin(x/19-phase))
	return clamp(0.35+0.6*v, 0, 1)
}

// gloss is how much of the lamp a wet top that slopes so throws back to the eye straight above it: the highlight of Blinn (1977), broad, for batter is
// no glass.
func gloss(along, across float64) float64 {
	const most, rough, half = 0.45, 26, 1.7 // by eye; half: how high half way between lamp and eye stands beside how far to the side, the lamp at 60 degrees
	d := (-lampRight*along - lampDown*across + half) / math.Sqrt((lampRight*lampRight+lampDown*lampDown+half*half)*(1+along*along+across*across))
	return most * math.Pow(max(d, 0), rough)
}

// What stands in ropes, by eye, no source.
const (
	grooveThin  = 0.15 // mm, how deep a groove is in the thinnest batter
	grooveThick = 1.15 // and how much more in the thickest
	grooveMM    = 1.1  // half of how wide it is
	wetEdge     = 0.4  // of its slopes, by which what is wet fills it
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
