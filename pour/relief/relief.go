// Package relief is what stands on a loaf and sticks in it, ready to be seen: icing as it is piped, unit by unit, pieces set into the top, and
// what is strewn over all of it. It is one surface of heights over the top of the base, which can be looked at from above, from the cut side of a
// bar and from the side of a loaf that is cut along its middle; pieces that are cut or undercut are solids of their own.
//
// Units: mm. x runs along the loaf from its end A, y across it from the wall that is on the left seen from there, and z up from the top of the
// base. What shows is told by stuffs: first the icing's portions, by their place in the batch, then the pieces' and the toppings'. A view knows no
// colours.
//
// The volumes of icing are those of [pour/shape], which a test integrates; how strands bulge, ridges run and grains fall is by eye, no source.
package relief

import (
	"math"
	"slices"

	"pourbench/pour/script"
	"pourbench/pour/shape"
)

// Bare is the stuff of the base where nothing stands on it.
const Bare = 255

// MostStuffs is how many stuffs a recipe may tell apart.
const MostStuffs = 64

// Recipe is everything that stands on a loaf; equal recipes give equal pictures.
type Recipe struct {
	L, W, H float64 // of the base
	Seed    int64   // of how units are turned and grains fall
	Icing   Icing
	Pieces  []Piece
	Strewn  []Strewn
}

// Equal says whether two recipes give the same picture; nil is nothing at all.
func (r *Recipe) Equal(o *Recipe) bool {
	if r == nil || o == nil {
		return r == o
	}
	return r.L == o.L && r.W == o.W && r.H == o.H && r.Seed == o.Seed && r.Icing.equal(&o.Icing) &&
		slices.EqualFunc(r.Pieces, o.Pieces, func(a, b Piece) bool { return a.equal(b) }) && slices.Equal(r.Strewn, o.Strewn)
}

// Field is a recipe worked out. It never changes, so it may be looked at from several goroutines at once.
type Field struct {
	recipe  Recipe
	form    form // of every unit of the icing; nil: there is none
	units   []unit
	pieces  []solid
	strewn  []scatter
	buckets [][]int16 // units by the squares they reach into
	across  int       // squares in a row along the loaf
	peak    float64
}

// unit is one piece of icing where it stands.
type unit struct {
	form     form
	x, y     float64
	sin, cos float64 // of its turn
	stuff    uint8   // of a unit of one colour
	striped  bool
}

// bucketMM is the side of the squares in which units are looked up.
const bucketMM = 12

// New works a recipe out. What has no size is left out.
func New(r Recipe) *Field { return newField(r, r.Icing.form(r)) }

// newField works a recipe out whose icing has that form; nil: none stands on it.
func newField(r Recipe, made form) *Field {
	f := &Field{recipe: r, form: made, across: int(r.L/bucketMM) + 1}
	f.pipe()
	for _, p := range r.Pieces {
		if s, ok := p.solid(); ok {
			f.pieces = append(f.pieces, s)
			f.peak = max(f.peak, s.top)
		}
	}
	over := 0.0
	for i, s := range r.Strewn {
		if c, ok := s.scatter(r.Seed, i); ok {
			f.strewn = append(f.strewn, c)
			over = max(over, c.high)
		}
	}
	f.peak += over
	return f
}

// PeakMM is how high it all stands at its highest, mm above the base; icing that sinks in may stand a little lower.
func (f *Field) PeakMM() float64 { return f.peak }

// pipe sets the units of the icing and finds the squares they reach into.
func (f *Field) pipe() {
	made := f.form
	if made == nil {
		return
	}
	f.buckets = make([][]int16, f.across*(int(f.recipe.W/bucketMM)+1))
	d := script.NewDice(f.recipe.Seed, 0x70b)
	turns := f.recipe.Icing.turned()
	take := newTurns(f.recipe.Icing.Shares)
	for _, at := range f.recipe.Icing.Spots {
		if len(f.units) == mostUnits {
			break
		}
		u := unit{form: made, x: at.X, y: at.Y, striped: f.recipe.Icing.Striped || f.recipe.Icing.Shape == Piped, cos: 1}
		if f.recipe.Icing.Across {
			u.sin, u.cos = 1, 0
		}
		if turns {
			u.sin, u.cos = math.Sincos(d.Between(0, 2*math.Pi))
		}
		u.stuff = take.next()
		f.place(u)
	}
	f.peak = made.high() - f.recipe.Icing.least(made.high())
}

// mostUnits is how many units are drawn: more than a hand pipes.
const mostUnits = 4000

// place adds a unit.
func (f *Field) place(u unit) {
	reachX, reachY := u.form.reach()
	if u.sin != 0 {
		reachX, reachY = math.Abs(u.cos)*reachX+math.Abs(u.sin)*reachY, math.Abs(u.sin)*reachX+math.Abs(u.cos)*reachY
	}
	k := int16(len(f.units))
	f.units = append(f.units, u)
	square := func(v, most float64) int { return int(min(max(v, 0), most) / bucketMM) }
	for j := square(u.y-reachY, f.recipe.W); j <= square(u.y+reachY, f.recipe.W); j++ {
		for i := square(u.x-reachX, f.recipe.L); i <= square(u.x+reachX, f.recipe.L); i++ {
			f.buckets[j*f.across+i] = append(f.buckets[j*f.across+i], k)
		}
	}
}

// spot is the surface over one place.
type spot struct {
	z     float64
	stuff uint8
	grain *scatter // what lies there uppermost of what is strewn; nil: nothing
	under float64  // height of what it lies on
	below uint8    // and its stuff
	floor float64  // underside of the icing: below 0 where it has sunk in, above where its edge hangs over
	form  *unit    // the icing's unit that shows; nil: none
	gx    float64  // the middle of the grain
	gy    float64
}

// at is the surface over a place inside the loaf.
func (f *Field) at(x, y float64) spot {
	s := f.firm(x, y)
	f.strew(x, y, &s)
	return s
}

// firm is the surface over a place without what is strewn.
func (f *Field) firm(x, y float64) spot {
	s := spot{stuff: Bare}
	f.iced(x, y, &s)
	for i := range f.pieces {
		if top, ok := f.pieces[i].over(x, y); ok && top > s.z {
			s.z, s.stuff = top, f.pieces[i].Stuff
		}
	}
	return s
}

// iced adds the icing over a place.
func (f *Field) iced(x, y float64, s *spot) {
	if len(f.units) == 0 || x < 0 || y < 0 || x > f.recipe.L || y > f.recipe.W {
		return
	}
	for _, k := range f.buckets[int(y/bucketMM)*f.across+int(x/bucketMM)] {
		u := &f.units[k]
		dx, dy := x-u.x, y-u.y
		z, across := u.form.at(dx*u.cos+dy*u.sin, dy*u.cos-dx*u.sin)
		if z <= s.z {
			continue
		}
		s.z, s.stuff, s.form = z, u.stuff, u
		if u.striped {
			s.stuff = f.recipe.Icing.stripe(across + f.uneven(x, y))
		}
	}
	if s.form != nil {
		down := f.recipe.Icing.pressed(s.z, s.form.load(s.z, x, y), x, y)
		s.z, s.floor = s.z-down, -down
	}
}

// load is how much icing bears on the base at a place where the unit is so thick, mm.
func (u *unit) load(thick, x, y float64) float64 {
	if p, ok := u.form.(interface{ load(x, y float64) float64 }); ok {
		return p.load(x-u.x, y-u.y)
	}
	return thick
}

// evened is how thick the unit is at a place where it is so thick and a wire cuts it.
func (u *unit) evened(thick, x, y float64) float64 {
	if p, ok := u.form.(interface{ evened(x, y float64) float64 }); ok {
		return p.evened(x-u.x, y-u.y)
	}
	return thick
}

// uneven is how far stripes are shifted at a place. Those of a form that shifts its own, and the ridges of a spooned top, stay.
func (f *Field) uneven(x, y float64) float64 {
	if c := &f.recipe.Icing; c.Sinks == 0 || c.Shape == Piped || c.Shape == Spooned {
		return 0
	}
	return wobble(x, y)
}

// inside is the stuff of the icing at a height inside it, over a place whose surface is known, and how bright it is where it is cut, along the loaf or
// across it.
func (s *spot) inside(f *Field, x, y, z float64, side bool) (stuff uint8, bright float32) {
	cut, ok := s.form.form.(interface {
		within(x, y, thick, below float64, side bool) (across, tone float64)
	})
	if !ok || !s.form.striped {
		return s.stuff, cutBright
	}
	across, tone := cut.within(x-s.form.x, y-s.form.y, s.z-s.floor, s.z-z, side)
	return f.recipe.Icing.stripe(across), float32(cutBright * tone)
}

// strew adds what is strewn over a place: what was strewn last shows.
func (f *Field) strew(x, y float64, s *spot) {
	for i := len(f.strewn) - 1; i >= 0; i-- {
		c := &f.strewn[i]
		if g, ok := c.at(x, y); ok {
			z := s.z + g.bump
			if c.look == Grains { // as round on a wall's edge as on level ground
				if z = f.firm(min(max(g.x, 0), f.recipe.L), min(max(g.y, 0), f.recipe.W)).z + g.bump; z <= s.z {
					continue
				}
			}
			s.under, s.below, s.grain, s.gx, s.gy = s.z, s.stuff, c, g.x, g.y
			s.z, s.stuff = z, c.stuff
			return
		}
	}
}

// newTurns gives units colours in turn, each as often as its share asks for.
func newTurns(shares []float64) *turns {
	return &turns{shares: shares, owed: make([]float64, len(shares))}
}

// turns is whose turn it is.
type turns struct{ shares, owed []float64 }

func (t *turns) next() uint8 {
	best := 0
	for i, s := range t.shares {
		t.owed[i] += s
		if t.owed[i] > t.owed[best]+1e-12 {
			best = i
		}
	}
	if len(t.owed) > 0 {
		t.owed[best]--
	}
	return uint8(best)
}

// drawnVolume is the volume under a form, mm³, by looks so far apart.
func drawnVolume(f form, step float64) float64 {
	reachX, reachY := f.reach()
	nx, ny := int(math.Ceil(2*reachX/step)), int(math.Ceil(2*reachY/step))
	dx, dy := 2*reachX/float64(nx), 2*reachY/float64(ny)
	sum := 0.0
	for i := range nx {
		for j := range ny {
			z, _ := f.at(-reachX+(float64(i)+0.5)*dx, -reachY+(float64(j)+0.5)*dy)
			sum += z
		}
	}
	return sum * dx * dy
}

// opening is a tip's opening as far as it shows: a star of points whose valleys reach so far in, or round.
type opening struct {
	points int
	valley float64 // part of the tip's radius
}

// ridged says whether what comes out has ridges.
func (o opening) ridged() bool { return o.points >= 2 && o.valley > 0 && o.valley < 1 }

// fullness is the opening's part of the circle about it.
func (o opening) fullness() float64 {
	if !o.ridged() {
		return 1
	}
	return shape.Star{Points: o.points, Tip: 1, Valley: o.valley}.Fullness()
}

// radius is how far the opening reaches at an angle, as a part of its tips: straight edges from tip to valley.
func (o opening) radius(angle float64) float64 {
	if !o.ridged() {
		return 1
	}
	beta := math.Pi / float64(o.points)
	a := math.Mod(math.Abs(angle), 2*beta)
	if a > beta {
		a = 2*beta - a
	}
	sinB, cosB := math.Sincos(beta)
	sin, cos := math.Sincos(a)
	return o.valley * sinB / (o.valley*sinB*cos + (1-o.valley*cosB)*sin)
}

// Surface is how high what stands on the loaf reaches over a place, mm above the base, and its stuff; [Bare] and 0 where nothing does.
func (f *Field) Surface(x, y float64) (z float64, stuff uint8) {
	s := f.at(x, y)
	return s.z, s.stuff
}
