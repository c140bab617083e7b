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

// ridges lie across the loaf and wander, with round valleys and narrow crests.
func ridges(x, y, phase float64) float64 {
	t := x/10.5 + 0.5*math.Sin(y/13+phase) + 0.2*math.Sin(y/5.3+x/31+2*phase)
	return 1 - math.Abs(math.Sin(math.Pi*t))
}

// lumps are spoonfuls pushed against each other.
func lumps(x, y, phase float64) float64 {
	return math.Sin(x/5.3+1.4*math.Sin(y/7.1+phase)) * math.Cos(y/4.7+1.1*math.Sin(x/8.3-phase))
}

// dimples are where something was poured in.
func dimples(x, y, phase float64) float64 {
	return math.Sin(x/7.3+1.2*math.Sin(y/9.4+phase)) * math.Cos(y/6.6+0.9*math.Sin(x/11.5-phase))
}

// emboss shades the surface of the batter in a picture of it from above by how it slopes, the light from the upper left.
func (s *Swirl) emboss(img *image.NRGBA) {
	const shade, soft = 0.4, 0.85 // how much a slope of 1 to 1 darkens; a height of the light
	b, box := img.Bounds(), s.recipe.Box
	ink := curve()
	Share(b.Dy(), func(j int) bool {
		row := img.Pix[img.PixOffset(b.Min.X, b.Min.Y+j):]
		for i := range b.Dx() {
			along, across := s.Slope(box.L*(float64(i)+0.5)/float64(b.Dx()), box.W*(float64(j)+0.5)/float64(b.Dy()))
			f := clamp(1+shade*(0.56*along+0.83*across)/soft, 0.75, 1.12)
			for k := range 3 {
				v := &row[4*i+k]
				*v = ink[min(int(float64(linear(*v))*f*curveKnots+0.5), curveKnots)]
			}
		}
		return true
	})
}
