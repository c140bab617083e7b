package swirl

import (
	"math"

	"pourbench/pour/script"
)

// shape is a filling told by a rule: where each portion must show is then plain geometry.
type shape func(x, y, z float64) int

func (s shape) label(x, y, z float64) int { return s(x, y, z) }

// cast is a mould full of a shape in which nothing moves.
func cast(box Box, portions int, s shape) *Swirl { return castTo(box, box.H, portions, s) }

// castTo is a mould filled to a level.
func castTo(box Box, level float64, portions int, s shape) *Swirl {
	return &Swirl{
		recipe: Recipe{
			Script: script.Script{
				Brief: script.Brief{Shares: make([]float64, portions)},
				Acts:  []script.Act{{Kind: script.Pour, Share: 1}},
			},
			Box: box,
		},
		acts: 1, ops: []op{{slab: &slab{top: level, fill: s}}}, level: level,
	}
}

// ball is portion 1 within r mm of a place and portion 0 around it.
func ball(at vec3, r float64) shape {
	return func(x, y, z float64) int {
		e, f, g := x-at.x, y-at.y, z-at.z
		if e*e+f*f+g*g < r*r {
			return 1
		}
		return 0
	}
}

// below is portion 0 where a rule is negative and portion 1 elsewhere.
func below(rule func(x, y, z float64) float64) shape {
	return func(x, y, z float64) int {
		if rule(x, y, z) < 0 {
			return 0
		}
		return 1
	}
}

// spot is the part of a picture that shows a portion, and the middle of it as parts of the width and of the height from the upper left.
func spot(p *Picture, portion uint8) (part, x, y float64) {
	for i, px := range p.Pixels {
		for k, v := range px.Part {
			if px.Portion[k] == portion && v > 0 {
				weight := float64(v) / 255
				part += weight
				x += weight * (float64(i%p.W) + 0.5) / float64(p.W)
				y += weight * (float64(i/p.W) + 0.5) / float64(p.H)
			}
		}
	}
	return part / float64(len(p.Pixels)), x / part, y / part
}

// srgb is the curve of IEC 61966-2-1 from linear light to a byte, unrounded.
func srgb(light float64) float64 {
	if light <= 0.0031308 {
		return 255 * 12.92 * light
	}
	return 255 * (1.055*math.Pow(light, 1/2.4) - 0.055)
}

// determinant is what becomes of an area under a map at (y, z), by differences over 2h: 1 where it is kept.
func determinant(move func(y, z float64) (float64, float64), y, z, h float64) float64 {
	a, b := move(y+h, z)
	c, d := move(y-h, z)
	e, f := move(y, z+h)
	g, k := move(y, z-h)
	return ((a-c)*(f-k) - (b-d)*(e-g)) / (4 * h * h)
}

// near says whether two numbers are at most so far apart; no number is near NaN.
func near(a, b, most float64) bool { return math.Abs(a-b) <= most }
