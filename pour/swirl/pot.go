package swirl

import "math"

// stream is what leaves a pot that holds several colours. A chain of maps that keep measure leads from a place in what is poured to a place
// of the pot: when it left and where along the lip, then the chord of the pot that was at the lip then, then what the spoon did in the pot
// undone. So every portion keeps its share exactly.
type stream struct {
	layout layout
	box    Box
	surge  wobble    // radians by which the pot has turned, slow change along the loaf
	stir   float64   // radians at the middle of the pot
	eddies []eddy    // in the order they were made
	first  float64   // the share of the pot on one side of the chord that is at the lip first, and last
	ways   int       // in which all is poured, one after the other
	apart  int       // so many parts of the pot lie between what two ways after each other take, as it is turned in the hand between them; 0: none
	wide   int       // so many ways one after the other take what lies along the chord part by part
	whole  bool      // the last way takes all of what lies along it, so that all of it is seen from above
	lead   []float64 // table along the lip of how much more of the pot a place of it has let go than its ends; none: nothing
	run    wobble    // of the pot, by how much more of it has left here along the loaf than there
	wound  wobble    // radians, by how much further than the spoon left it its middle has turned here along the loaf
	chord  []float64 // table of the chord at which a share of the pot has been poured
}

// eddy is a round place of the pot, of radius 1, in which the batter turns about its middle, most there and not at all at its rim.
type eddy struct {
	u, v  float64
	reach float64
	turn  float64 // radians
}

// ribbon is a slab poured from a pot in one go: across it lie the colours as they stood along the lip, sheet upon sheet, each sheet from
// end to end as it left.
type ribbon struct {
	stream      *stream
	bottom, top float64 // mm
	tall        float64 // mm from the bottom: how high what it is made of is told to reach
	lean        float64 // how far its sheets lean over where they stand, as where it runs over the bottom: 0 upright, 1 as far across as up
	over, back  bool    // it has turned over; it was led the other way
	laps        *laps   // of its sheets where they lie lap beside lap
	curls       *curls  // of its batter after; with neither they stand
}

func (r *ribbon) label(x, y, z float64) int {
	side, when := r.leaves(x, y, z)
	return r.stream.label(x, side, (r.bottom+when*(r.top-r.bottom))/r.stream.box.H)
}

// grain is along the sheets: what leaves the lip in one place is one vein.
func (r *ribbon) grain(x, y, z float64) (along, across float64) {
	side, when := r.leaves(x, y, z)
	return when*r.stream.box.W + veinDrift*x, side * ribbonMM
}

// leaves is where a place of the ribbon left the lip, 0 to 1 along it, and when, 0 to 1 of the time the ribbon took.
func (r *ribbon) leaves(x, y, z float64) (side, when float64) {
	u, v := clamp(y/r.stream.box.W, 0, 1), clamp((z-r.bottom)/r.tall, 0, 1)
	if r.back {
		u = 1 - u
	}
	switch {
	case r.laps != nil:
		side, when = r.laps.lifted(x, u, v)
	case r.curls != nil:
		up, across := r.curls.curled(x, u, v)
		side, when = sheets(up, across, r.lean)
	default:
		side, when = sheets(v, u, r.lean)
	}
	if r.over {
		side = 1 - side
	}
	return side, when
}

// sheets carries the unit square onto itself: side is the rank of the leaning sheet v + k·u a place lies in, and when its part of that sheet.
// As u is even along each sheet, area is kept (the transform of a joint distribution onto the square after Rosenblatt, 1952).
func sheets(u, v, k float64) (side, when float64) {
	if k < 1e-6 {
		return v, u
	}
	c := v + k*u
	low, high := max(0, (c-1)/k), min(1, c/k)
	if high-low < 1e-9 {
		return rank(c, k), 0.5
	}
	return rank(c, k), clamp((u-low)/(high-low), 0, 1)
}

// laps is how the sheets of a ribbon stand side by side across it where it lies lap beside lap on top.
type laps struct {
	turns []float64 // where all of them turn, 0 to 1 of the way around them, so that some are broader than others
	on    bool      // the lip lies there again and again, as its ends hold one colour, and never back
	lean  float64   // of all laps, by how much the sheets lean over from foot to top
	roll  float64   // of all laps, how far they go to and fro on their way up
	at    float64   // radians, where on their way
	along wobble    // of all laps, where they are along the loaf
	drift float64   // of all laps to a mm of the loaf, as the hand goes aslant
	curls *curls    // of the batter after
}

// lifted carries the unit square onto itself: what stands at a height only moves across. The lip lies there and back, as one lap turns over into the
// next, or again and again where its ends are alike, so that nothing is broken off where what goes out on one side comes in on the other.
func (l *laps) lifted(x, across, up float64) (side, when float64) {
	when, across = l.curls.curled(x, across, up)
	return l.there(across + l.lean*when + l.roll*math.Sin(2*math.Pi*when+l.at) + l.drift*x + l.along.at(x)), when
}

// there is how far along the lip a place lies that far around all laps. However broad each way there and back is, all of them show each part of the lip alike.
func (l *laps) there(s float64) float64 {
	s -= math.Floor(s)
	from := 0.0
	for i, to := range l.turns {
		if s >= to && i < len(l.turns)-1 {
			from = to
			continue
		}
		if s = clamp((s-from)/(to-from), 0, 1); i&1 != 0 && !l.on {
			s = 1 - s
		}
		break
	}
	return s
}

// curls is how a ribbon curls over as it was laid to and fro: side by side its batter turns by turns one way and the other, and its skin stays in place.
type curls struct {
	many  float64 // from edge to edge
	at    wobble  // where the first is, in curls
	angle wobble  // radians, at their eyes
}

// curled carries the unit square onto itself.
func (c *curls) curled(x, across, up float64) (side, when float64) {
	first := c.at.at(x)
	n := math.Floor(c.many*across - first)
	low, high := max(0, (n+first)/c.many), min(1, (n+1+first)/c.many)
	wide := high - low
	if wide < 1e-6 {
		return up, across
	}
	g := gyred{y0: low, wide: wide, high: 1, py: math.Pi / wide, pz: math.Pi, angle: c.angle.at(x) * wide * c.many}
	if int(n)&1 != 0 {
		g.angle = -g.angle
	}
	when, side = g.turn(across, up, 1)
	return side, when
}

// label is the portion in what lies at x mm along the loaf, that left the lip at side, 0 to 1 along it, when a share poured of the
// cross-section had been filled.
func (s *stream) label(x, side, poured float64) int {
	side, poured = s.course(side, poured)
	return s.lies(side, around(poured+s.run.at(x)), s.surge.at(x), s.wound.at(x))
}

// leaves is the portion that leaves the lip at side, 0 to 1 along it, when a share has been poured of a pot turned by an angle in radians.
func (s *stream) leaves(side, poured, by float64) int {
	side, poured = s.course(side, poured)
	return s.lies(side, poured, by, 0)
}

// lies is the portion at side, 0 to 1 along the chord at which a share of the pot has been passed, of a pot turned and wound by angles in radians.
func (s *stream) lies(side, passed, by, wound float64) int {
	u := s.chordAt(passed)
	v := math.Sqrt(max(0, 1-u*u)) * (2*side - 1)
	return s.layout.at(s.untwist(u, v, by, wound))
}

// around leads what has passed the whole pot back to where it began: at its wall both times, of which the pot's own batter takes most.
func around(passed float64) float64 {
	if passed < 0 || passed > 1 {
		passed -= math.Floor(passed)
	}
	return passed
}

// course is where along the whole chord, 0 to 1, and how far through the pot what left then lay: what reaches the lip comes from near it. It
// carries the unit square onto itself and keeps area.
func (s *stream) course(side, poured float64) (float64, float64) {
	if s.apart > 1 {
		poured = s.turned(poured)
	}
	if s.wide > 1 {
		side, poured = s.part(side, poured)
	}
	return side, around(poured + s.first + s.leads(side)) // beyond 1 the other side of the pot is left
}

// leads is how much more of the pot a place along the lip has let go than its ends.
func (s *stream) leads(side float64) float64 {
	if s.lead == nil {
		return 0
	}
	t := side * float64(len(s.lead)-1)
	i := min(int(t), len(s.lead)-2)
	return s.lead[i] + (t-float64(i))*(s.lead[i+1]-s.lead[i])
}

// part is the course of what is taken part by part: a way takes not all along the chord but a part of it, and the next few the parts beside it; the last
// takes the whole where it is to.
func (s *stream) part(side, poured float64) (float64, float64) {
	all := float64(s.ways)
	way := min(int(poured*all), s.ways-1)
	begin, end := way-way%s.wide, s.ways
	if s.whole {
		if end--; way == end {
			return side, poured
		}
	}
	abreast := float64(min(s.wide, end-begin))
	return (float64(way-begin) + side) / abreast, (float64(begin) + abreast*(poured*all-float64(way))) / all
}

// turned is how far through the pot what left then lay where the pot is turned in the hand between two ways. The last stays the last.
func (s *stream) turned(poured float64) float64 {
	all := float64(s.ways)
	way := min(int(poured*all), s.ways-1)
	return poured + float64(((way+1)*s.apart+s.ways-1)%s.ways-way)/all
}

// untwist carries a place of the pot that is turned by an angle in radians, and its middle by one more, back to before the tool stirred it. The wall
// holds what touches it.
func (s *stream) untwist(u, v, by, wound float64) (float64, float64) {
	sin, cos := math.Sincos(by)
	u, v = u*cos-v*sin, u*sin+v*cos
	for i := len(s.eddies) - 1; i >= 0; i-- {
		u, v = s.eddies[i].undo(u, v)
	}
	q := max(0, 1-u*u-v*v)
	sin, cos = math.Sincos(-(s.stir + wound) * q * math.Sqrt(q))
	return u*cos - v*sin, u*sin + v*cos
}

// undo turns a place of the pot back.
func (e *eddy) undo(u, v float64) (float64, float64) {
	a, b := u-e.u, v-e.v
	q := 1 - (a*a+b*b)/(e.reach*e.reach)
	if q <= 0 {
		return u, v
	}
	sin, cos := math.Sincos(-e.turn * q * q)
	return e.u + a*cos - b*sin, e.v + a*sin + b*cos
}

const chordKnots = 1024

// chordTable inverts A(u) = (u√(1-u²) + asin u)/π + ½, the share of the disk on one side of a chord.
func chordTable() []float64 {
	table := make([]float64, chordKnots+1)
	for i := range table {
		want := float64(i) / chordKnots
		low, high := -1.0, 1.0
		for range 50 {
			mid := 0.5 * (low + high)
			if (mid*math.Sqrt(1-mid*mid)+math.Asin(mid))/math.Pi+0.5 < want {
				low = mid
			} else {
				high = mid
			}
		}
		table[i] = 0.5 * (low + high)
	}
	return table
}

func (s *stream) chordAt(tau float64) float64 {
	t := clamp(tau, 0, 1) * chordKnots
	i := min(int(t), chordKnots-1)
	f := t - float64(i)
	return s.chord[i] + f*(s.chord[i+1]-s.chord[i])
}
