package slice

import (
	"context"
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// stage is a scene with its skins, ready for one size of picture.
type stage struct {
	*Scene
	blocks [2]*block
	dark   *dark
	v      vec
	right  vec
	up     vec
	px     float64 // mm
	w, h   int
}

// draw draws the scene.
func (s *Scene) draw(ctx context.Context, dst *relief.Picture, w, h int, fine bool, tell func(n int)) error {
	dst.Reset(w, h)
	if dst.W == 0 || dst.H == 0 {
		return ctx.Err()
	}
	st, err := s.stage(ctx, w, h, fine)
	if err != nil {
		return err
	}
	swirl.Share(dst.H, func(j int) bool {
		for i := range dst.W {
			dst.Dots[j*dst.W+i] = st.pixel(i, j, fine)
		}
		tell(dst.W)
		return ctx.Err() == nil
	})
	return ctx.Err()
}

// stage draws the skins and the shadow.
func (s *Scene) stage(ctx context.Context, w, h int, fine bool) (*stage, error) {
	mmW, mmH := s.SizeMM()
	st := &stage{Scene: s, w: w, h: h, px: max(mmW/float64(w), mmH/float64(h))}
	st.v, st.right, st.up = towards()
	perMM, lights, shadows, step := 1/st.px, 4, 8, max(5, st.px)
	if fine {
		perMM, lights, shadows, step = min(1.6/st.px, mostPerMM), 12, 80, max(2.5, st.px)
	}
	var t *top
	var err error
	if !s.recipe.Round {
		if t, err = s.top(ctx, max(0.7*st.px, leastStep), perMM, fine); err != nil {
			return nil, err
		}
	}
	wall, err := s.wall(ctx, perMM, fine)
	if err != nil {
		return nil, err
	}
	if fine {
		wall.grain, wall.stuff = s.pressed().Grain(st.px), s.planed
	}
	loafAt, barAt := s.bar.To, s.bar.From
	from := s.bar.To
	if s.turned {
		loafAt, from = s.bar.From, s.bar.From
	}
	for k, b := range [2]*block{{pose: &s.loaf, from: from, flip: s.turned}, {pose: &s.piece, from: s.bar.From}} {
		b.s, b.t, b.wall, b.lights = s, t, wall, suns(lights)
		if b.face, err = s.face(ctx, [2]float64{loafAt, barAt}[k], b.flip, perMM, fine); err != nil {
			return nil, err
		}
		if fine {
			b.face.grain, b.face.stuff = s.cutAt([2]float64{loafAt, barAt}[k]).Grain(st.px), s.planed
		}
		st.blocks[k] = b
	}
	st.dark = s.darkness(step, shadows)
	return st, nil
}

const (
	mostPerMM   = 14
	leastStep   = 0.2 // mm, between points of the surface
	aroundPerMM = 6   // every line of it is another cross-section
)

// wall is the long side on the right, or what is seen all round a tube.
func (s *Scene) wall(ctx context.Context, perMM float64, fine bool) (*skin, error) {
	box := s.recipe.Box
	if s.recipe.Round {
		return s.skin(ctx, around{s}, nil, box.H, math.Pi*box.W, min(perMM, aroundPerMM), fine)
	}
	y := box.W - skinDeep
	if s.turned {
		y = skinDeep
	}
	return s.skin(ctx, s.poured.Lengthwise(y), nil, box.L, box.H, perMM, fine)
}

// cutAt is the material of a cut at a place along the loaf.
func (s *Scene) cutAt(at float64) swirl.Material {
	m := s.planed
	m.CutMM = at
	return m
}

// pressed is the material of a side that lay against the mould: no blade went over it, and what air there is was pressed flat. By eye, no source.
func (s *Scene) pressed() swirl.Material {
	const streaks, pores = 0.35, 0.6
	m := s.planed
	m.CutMM, m.Streaks, m.Pores = -1, m.Streaks*streaks, m.Pores*pores
	return m
}

// skinDeep is how far in the wall is looked at, mm.
const skinDeep = 0.05

// face is a cut face; one that is seen from the other end is turned round.
func (s *Scene) face(ctx context.Context, at float64, flip bool, perMM float64, fine bool) (*skin, error) {
	wide, high := s.recipe.FaceMM()
	if s.recipe.Round {
		return s.skin(ctx, s.poured.Top(at), nil, wide, high, perMM, fine)
	}
	var v *relief.View
	if s.on != nil {
		v = s.on.Face(at, at+1e-3)
	}
	k, err := s.skin(ctx, s.poured.Face(at), v, wide, high, perMM, fine)
	if err != nil || !flip {
		return k, err
	}
	k.base.Mirror()
	mirror(k.over.Dots, k.over.W)
	return k, nil
}

// mirror turns rows round.
func mirror[T any](all []T, w int) {
	for at := 0; w > 0 && at < len(all); at += w {
		for i, j := at, at+w-1; i < j; i, j = i+1, j-1 {
			all[i], all[j] = all[j], all[i]
		}
	}
}

// look follows one look through a place of the picture, pixels from its upper left corner.
func (st *stage) look(x, y float64) seen {
	mmW, mmH := st.SizeMM()
	right, up := st.low.x+x*mmW/float64(st.w), st.high.y-y*mmH/float64(st.h)
	const away = 2000
	o := st.right.times(right).plus(st.up.times(up)).plus(st.v.times(away))
	d := st.v.times(-1)
	best := seen{stuff: ground, far: math.Inf(1)}
	for _, b := range st.blocks {
		if s, ok := b.look(o, d); ok && s.far < best.far {
			best = s
		}
	}
	if best.stuff == ground {
		g := o.at(d, o.z/st.v.z)
		best.bright = (1 - mostDark*st.dark.at(g.x, g.y)) * (1 - st.contact(g)*(0.55+0.45*st.dark.at(g.x, g.y)))
	}
	return best
}

// pixel looks through the middle of a pixel, or in quarters of it, and more closely where they differ.
func (st *stage) pixel(i, j int, fine bool) relief.Dot {
	x, y := float64(i), float64(j)
	var c count
	if !fine {
		c.add(st.look(x+0.5, y+0.5))
		return c.dot()
	}
	for _, q := range [4]point2{{0.375, 0.125}, {0.875, 0.375}, {0.125, 0.625}, {0.625, 0.875}} {
		c.add(st.look(x+q.x, y+q.y))
	}
	if c.n > 1 {
		for _, q := range [5]point2{{0.125, 0.125}, {0.5, 0.5}, {0.875, 0.875}, {0.875, 0.125}, {0.125, 0.875}} {
			c.add(st.look(x+q.x, y+q.y))
		}
	}
	return c.dot()
}

// count counts the looks in a pixel.
type count struct {
	stuff  [6]uint8
	looks  [6]int
	n      int
	all    int
	met    int
	bright float64
	shadow float64
	behind int
}

func (c *count) add(s seen) {
	c.all++
	if s.stuff == ground {
		c.behind++
		c.shadow += 1 - s.bright
	} else {
		c.met++
		c.bright += s.bright
	}
	for k := range c.n {
		if c.stuff[k] == s.stuff {
			c.looks[k]++
			return
		}
	}
	if c.n < len(c.stuff) {
		c.stuff[c.n], c.looks[c.n] = s.stuff, 1
		c.n++
	}
}

// dot keeps the two stuffs that show most, which share what all of them cover.
func (c *count) dot() (d relief.Dot) {
	if c.behind > 0 {
		d.Shade = uint8(255*min(max(c.shadow/float64(c.behind), 0), 1) + 0.5)
	}
	if c.met == 0 {
		return d
	}
	var most, next int
	for k := range c.n {
		if c.stuff[k] == ground {
			continue
		}
		switch {
		case c.looks[k] > most:
			d.Stuff[1], next = d.Stuff[0], most
			d.Stuff[0], most = c.stuff[k], c.looks[k]
		case c.looks[k] > next:
			d.Stuff[1], next = c.stuff[k], c.looks[k]
		}
	}
	cover := 255 * c.met / c.all
	d.Part[1] = uint8(cover * next / (most + next))
	d.Part[0] = uint8(cover) - d.Part[1]
	d.Bright = uint8(min(255, relief.Lit*c.bright/float64(c.met)+0.5))
	return d
}
