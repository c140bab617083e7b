package swirl

import "math"

// Where the lamp stands over a face and a fresh top: to the left and above, as a drawing is lit that the eye reads as raised (by eye, no source).
const (
	lampRight = -0.56
	lampDown  = -0.83
)

// lamp is how much light falls on a place of a face, of what falls on its middle: less the further it is from the lamp, more on a rim turned to it.
func (p *painter) lamp(x, y float64) float32 {
	lit := 1.0
	if p.Falloff > 0 {
		lit += p.Falloff * (lampRight*(x/p.mmW-0.5) + lampDown*(y/p.mmH-0.5)) / -(lampRight + lampDown)
	}
	if p.Bevel > 0 && p.EdgeMM > 0 {
		right, down := p.turned(x, y)
		lit += p.Bevel * (lampRight*right + lampDown*down)
	}
	return float32(lit)
}

// turned is which way the rounded rim faces at a place, to the right and down: 0 where the face begins, 1 at its very edge.
func (p *painter) turned(x, y float64) (right, down float64) {
	e, f := min(x, p.mmW-x), min(y, p.mmH-y)
	top := p.FlatTop && y < p.mmH/2
	if r := min(p.CornerMM, p.mmW/2, p.mmH/2); e < r && f < r && !top {
		far := max(math.Hypot(r-e, r-f), leastFar)
		out := clamp(1-(r-far)/p.EdgeMM, 0, 1)
		right, down = out*(r-e)/far, out*(r-f)/far
	} else {
		right = max(0, 1-e/p.EdgeMM)
		if !top {
			down = max(0, 1-f/p.EdgeMM)
		}
	}
	if x < p.mmW/2 {
		right = -right
	}
	if y < p.mmH/2 {
		down = -down
	}
	return right, down
}

// leastFar keeps the middle of a corner's arc from being divided by: mm.
const leastFar = 1e-6
