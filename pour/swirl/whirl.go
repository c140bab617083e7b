package swirl

import "math"

// whirl is the batter turning after a tool that is led round and round: in every cross-section it goes round in ellipses, in the middle
// most and at the rim not at all. Turning a stretched disk keeps area whatever the angle at each radius.
type whirl struct {
	centre      vec2    // mm
	half        vec2    // mm, the ellipse's half width and half height
	angle       float64 // radians, at the middle
	gain        wobble  // of the angle
	shift, sink wobble  // mm, of the centre across and up
	room        vec2    // mm, how far the centre may go before the ellipse touches a wall
}

// turned is a whirl in one cross-section.
type turned struct {
	cy, cz     float64
	invY, invZ float64 // 1/mm
	angle      float64
}

func (w *whirl) at(x float64) turned {
	dy, dz := clamp(w.shift.at(x), -w.room.y, w.room.y), clamp(w.sink.at(x), -w.room.z, w.room.z)
	return turned{cy: w.centre.y + dy, cz: w.centre.z + dz, invY: 1 / w.half.y, invZ: 1 / w.half.z, angle: w.angle * w.gain.at(x)}
}

// turn carries a point along (dir 1) or back (dir -1).
func (t *turned) turn(y, z, dir float64) (float64, float64) {
	e, f := (y-t.cy)*t.invY, (z-t.cz)*t.invZ
	q := 1 - (e*e + f*f)
	if q <= 0 {
		return y, z
	}
	sin, cos := math.Sincos(dir * t.angle * q * math.Sqrt(q))
	return t.cy + (e*cos-f*sin)/t.invY, t.cz + (e*sin+f*cos)/t.invZ
}

func (w *whirl) move(x, y, z, dir float64) (float64, float64) {
	t := w.at(x)
	return t.turn(y, z, dir)
}
