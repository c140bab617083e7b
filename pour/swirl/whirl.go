package swirl

import "math"

// whirl is the batter turning after a tool that is led round and round: in every cross-section it goes round in ellipses, in the middle
// most and at the rim not at all. Turning a stretched disk keeps area whatever the angle at each radius.
type whirl struct {
	centre      vec2    // mm
	half        vec2    // mm, the ellipse's half width and half height
	angle       float64 // radians, at the middle
	gain        wobble  // of the angle
	oval        wobble  // of the half width, and by its inverse of the half height, as far as there is room; 0: neither changes
	shift, sink wobble  // mm, of the centre across and up
	room        vec2    // mm, how far the centre may go before the ellipse touches a wall
	rim         float64 // how soft the turning ends at the rim, of the radius
}

// turned is a whirl in one cross-section.
type turned struct {
	cy, cz     float64
	invY, invZ float64 // 1/mm
	angle      float64
	rim        float64
}

func (w *whirl) at(x float64) turned {
	dy, dz := clamp(w.shift.at(x), -w.room.y, w.room.y), clamp(w.sink.at(x), -w.room.z, w.room.z)
	half := w.half
	if o := w.oval.at(x); o > 0 {
		half.y, half.z = min(o*half.y, half.y+w.room.y-math.Abs(dy)), min(half.z/o, half.z+w.room.z-math.Abs(dz))
	}
	return turned{cy: w.centre.y + dy, cz: w.centre.z + dz, invY: 1 / half.y, invZ: 1 / half.z, angle: w.angle * w.gain.at(x), rim: w.rim}
}

// turn carries a point along (dir 1) or back (dir -1).
func (t *turned) turn(y, z, dir float64) (float64, float64) {
	e, f := (y-t.cy)*t.invY, (z-t.cz)*t.invZ
	q := e*e + f*f
	if q >= 1 {
		return y, z
	}
	sin, cos := math.Sincos(dir * t.angle * winding(q, t.rim))
	return t.cy + (e*cos-f*sin)/t.invY, t.cz + (e*sin+f*cos)/t.invZ
}

// whirlEye is how round the winding is at the middle, of the radius squared.
const whirlEye = 0.02

// winding is what part of the angle at the middle a place turns that is the root of q of the radius out: it falls evenly, so that the arms
// of a spiral are evenly wide, but for the eye and the rim, where it falls less and less.
func winding(q, rim float64) float64 {
	const all = 0.8685291 // √(1+whirlEye) - √whirlEye
	g := max(0, (math.Sqrt(1+whirlEye)-math.Sqrt(q+whirlEye))/all)
	return g * g / (g + rim) * (1 + rim)
}

func (w *whirl) move(x, y, z, dir float64) (float64, float64) {
	t := w.at(x)
	return t.turn(y, z, dir)
}
