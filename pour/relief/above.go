package relief

import (
	"image"
	"math"
)

// terrain is the surface about a part of a view from above, as heights on a grid that lies at the same places whatever part is drawn. Light is
// reckoned on it: between its points it is smooth, so that neither does a wall's edge show steps nor a ridge glitter.
type terrain struct {
	step       float64 // mm
	left, top  int     // steps, of its first point
	wide, high int
	z          []float32
	flat       bool // nothing stands there
}

// How a loaf from above is lit, by eye, no source.
const (
	leastGridMM = 0.22
	mostGridMM  = 1.2
	gazeMM      = 9    // so far about a place what stands there takes its light
	skyPart     = 0.45 // of the light comes from everywhere
	wrapPower   = 1.5  // how soon the sun fades round a form
	flatBright  = 0.97 // of level icing: grooves and shadows take about as much in the mean
	steepest    = 2.2  // a wall is no mirror
	slopeMM     = 0.4  // over which a slope is taken
	grooveDark  = 0.6  // how much of the sky's light is taken at most
	sunDark     = 0.33 // and of the sun's
)

// terrain works the heights out about a part of the view from above.
func (v *View) terrain(px, py float64, part image.Rectangle) *terrain {
	x := [2]float64{v.from + float64(part.Min.X)*px, v.from + float64(part.Max.X)*px}
	y := [2]float64{float64(part.Min.Y) * py, float64(part.Max.Y) * py}
	return v.f.terrain(max(px, py), gazeMM, x, y, [2]float64{0, v.f.recipe.L}, [2]float64{0, v.f.recipe.W})
}

// terrain is the surface over a stretch along the loaf and one across it, with a margin, for pixels so large. Beyond two limits each it goes on as it is
// there.
func (f *Field) terrain(px, margin float64, x, y, alongLimit, acrossLimit [2]float64) *terrain {
	t := &terrain{step: min(max(px, leastGridMM), mostGridMM)}
	cell := func(mm float64) int { return int(math.Floor(mm / t.step)) }
	t.left, t.top = cell(x[0]-margin), cell(y[0]-margin)
	t.wide, t.high = cell(x[1]+margin)+2-t.left, cell(y[1]+margin)+2-t.top
	t.z, t.flat = make([]float32, t.wide*t.high), true
	inside := func(k int, limit [2]float64) float64 {
		return min(max(float64(k)*t.step, limit[0]+1e-6), limit[1]-1e-6)
	}
	for j := range t.high {
		y := inside(t.top+j, acrossLimit)
		for i := range t.wide {
			z := float32(f.firm(inside(t.left+i, alongLimit), y).z)
			t.z[j*t.wide+i], t.flat = z, t.flat && z == 0
		}
	}
	return t
}

// at is the height at a place.
func (t *terrain) at(x, y float64) float64 {
	u, v := x/t.step-float64(t.left), y/t.step-float64(t.top)
	u, v = min(max(u, 0), float64(t.wide)-1.001), min(max(v, 0), float64(t.high)-1.001)
	i, j := int(u), int(v)
	fu, fv := u-float64(i), v-float64(j)
	k := j*t.wide + i
	up := float64(t.z[k])*(1-fu) + float64(t.z[k+1])*fu
	down := float64(t.z[k+t.wide])*(1-fu) + float64(t.z[k+t.wide+1])*fu
	return up*(1-fv) + down*fv
}

// slope is how the surface slopes at a place, mm to the mm.
func (t *terrain) slope(x, y float64) (along, across float64) {
	return t.slopeOver(x, y, max(t.step, slopeMM))
}

// slopeOver is the same from places d mm to each side.
func (t *terrain) slopeOver(x, y, d float64) (along, across float64) {
	return (t.at(x+d, y) - t.at(x-d, y)) / (2 * d), (t.at(x, y+d) - t.at(x, y-d)) / (2 * d)
}

// groove is how much of the sky what stands about a place hides, 0 to 1.
func (t *terrain) groove(x, y, z float64) float64 {
	const ways = 8
	sum := 0.0
	for k := range ways {
		sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / ways)
		most := 0.0
		for _, far := range [...]float64{0.8, 2, 4.4} {
			most = max(most, (t.at(x+far*cos, y+far*sin)-z)/far)
		}
		sum += most / math.Sqrt(1+most*most)
	}
	return sum / ways
}

// shadow is how much of the sun, which stands in a direction on the loaf, something nearer to it takes from a place, 0 to 1: the softer the farther off.
func (t *terrain) shadow(x, y, z, peak float64, l vector) float64 {
	across := math.Hypot(l.x, l.y)
	rise, hidden := l.z/across, 0.0
	for far := 0.8; far < 9; far *= 1.22 {
		if z+far*(rise-0.5) >= peak {
			break
		}
		over := (t.at(x+far*l.x/across, y+far*l.y/across) - z) / far
		hidden = max(hidden, smooth((over-rise)/0.9+0.5))
	}
	return hidden
}

// smooth goes from 0 at 0 to 1 at 1 without a bend at either end.
func smooth(v float64) float64 {
	v = min(max(v, 0), 1)
	return v * v * (3 - 2*v)
}

// sunlit is how bright a skin is that faces a way, against a level one, where the light goes round a form as from a wide window.
func sunlit(along, across float64) float64 {
	soft := min(1, steepest/max(1e-9, math.Hypot(along, across)))
	n := vector{-along * soft, across * soft, 1}.unit()
	l := sun()
	shine := func(facing float64) float64 { return skyPart + (1-skyPart)*math.Pow((1+facing)/2, wrapPower) }
	return flatBright * shine(n.dot(l)) / shine(l.z)
}

// gaze is a row from above being drawn.
type gaze struct {
	v      *View
	t      *terrain
	px, py float64
}

// pixel looks down at a pixel about a place: in quarters, and more closely where something ends in it.
func (g *gaze) pixel(x, y float64) Dot {
	var s [16]spot
	looks := s[:4]
	for k := range looks {
		looks[k] = g.v.f.at(x+g.px*(float64(k%2)-0.5)/2, y+g.py*(float64(k/2)-0.5)/2)
	}
	along, across := bumps(looks, g.px, g.py)
	if own := looks[0].firm(); own != looks[1].firm() || own != looks[2].firm() || own != looks[3].firm() {
		looks = s[:]
		for k := range looks { // one in each of sixteen rows and columns
			i, j := float64(k%4), float64(k/4)
			looks[k] = g.v.f.at(x+g.px*((i+(j+0.5)/4)/4-0.5), y+g.py*((j+(i+0.5)/4)/4-0.5))
		}
	}
	return g.dot(looks, x, y, along, across)
}

// firm is the stuff at a place without what is strewn over it.
func (s *spot) firm() uint8 {
	if s.grain != nil {
		return s.below
	}
	return s.stuff
}

// bumps is how what is strewn slopes in a pixel looked at in quarters.
func bumps(s []spot, px, py float64) (along, across float64) {
	var up [4]float64
	for k := range up {
		if s[k].grain != nil {
			up[k] = s[k].z - s[k].under
		}
	}
	return (up[1] + up[3] - up[0] - up[2]) / px, (up[2] + up[3] - up[0] - up[1]) / py
}

// dot lights what was looked at.
func (g *gaze) dot(s []spot, x, y, along, across float64) Dot {
	var l looks
	open, from := 1.0, sun()
	if !g.t.flat {
		z := g.t.at(x, y)
		a, b := g.t.slope(x, y)
		along, across = along+a, across+b
		open = (1 - grooveDark*g.t.groove(x, y, z)) * (1 - sunDark*g.t.shadow(x, y, z, g.v.f.peak, vector{from.x, -from.y, from.z}))
	}
	bright := sunlit(along, across)*open + gloss(vector{-along, across, 1}.unit())*open
	for k := range s {
		if s[k].stuff == Bare {
			l.miss(1 - open)
		} else {
			l.see(s[k].stuff, bright)
		}
	}
	return l.dot()
}
