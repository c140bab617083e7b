package slice

import (
	"context"
	"math"

	"pourbench/pour/swirl"
)

// round follows a look into a tube's log or disc, which lies on its side in its block.
func (b *block) round(o, d vec) (seen, bool) {
	near, far, ok := b.pipe(o, d)
	if !ok {
		return seen{}, false
	}
	in, out := math.Inf(-1), math.Inf(1)
	if math.Abs(d.x) > 1e-9 {
		u, v := (b.low.x-o.x)/d.x, (b.high.x-o.x)/d.x
		in, out = min(u, v), max(u, v)
	}
	t := max(near, in)
	if t >= min(far, out) {
		return seen{}, false
	}
	p := o.at(d, t)
	r := b.high.y / 2
	if in > near {
		stuff, bright, ok := b.face.at(p.y, p.z)
		n := vec{x: -1}
		if p.x > b.high.x/2 {
			n.x = 1
		}
		out := math.Hypot(p.y-r, p.z-r)
		e := turned(r - out)
		n.y, n.z = e*(p.y-r)/max(out, 1e-9), e*(p.z-r)/max(out, 1e-9)
		return seen{stuff, bright * (1 + edgeLight*e) * lit(b.way(n.unit()), b.cast(p)), t}, ok
	}
	n := vec{y: p.y - r, z: p.z - r}.unit()
	near, back := turned(p.x-b.low.x), turned(b.high.x-p.x)
	n.x = back - near
	along, _ := b.real(p.x, 0)
	angle := math.Atan2(p.z-r, p.y-r) / (2 * math.Pi)
	if b.flip {
		angle = 0.5 - angle
	}
	angle -= math.Floor(angle)
	stuff, bright, ok := b.wall.at(along, angle*b.wall.high)
	return seen{stuff, bright * (1 + edgeLight*max(near, back)) * lit(b.way(n.unit()), b.cast(p)), t}, ok
}

// around is what a tube shows all round it: along the tube, and up by the turn from the right over the top.
type around struct {
	s *Scene
}

func (a around) Draft(dst *swirl.Picture, w, h int) {
	_ = a.Refine(context.Background(), dst, w, h) // nothing stops it
}

func (a around) Refine(ctx context.Context, dst *swirl.Picture, w, h int) error {
	dst.Reset(w, h)
	box := a.s.recipe.Box
	const inside = 0.995 // of its radius: the wall itself
	swirl.Share(h, func(j int) bool {
		sin, cos := math.Sincos(2 * math.Pi * (1 - (float64(j)+0.5)/float64(h)))
		x, y := box.L/2*(1+inside*cos), box.W/2*(1+inside*sin)
		labels := make([]int, w)
		a.s.poured.Upright(x, y, labels)
		for i, l := range labels {
			if l != swirl.Empty {
				dst.Pixels[j*w+i] = swirl.Pixel{Portion: [3]uint8{uint8(l)}, Part: [3]uint8{255}}
			}
		}
		return ctx.Err() == nil
	})
	return ctx.Err()
}
