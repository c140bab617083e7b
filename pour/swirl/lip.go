package swirl

import (
	"math"

	"pourbench/pour/script"
)

// How a pot is stirred and held: what gives a pleasing picture, no source.
const (
	leastStir     = 0.8  // radians, by how much the spoon turns the middle of the pot at least
	mostStir      = 1.3  // and at most
	leastSpots    = 0.3  // the same of a pot with spots: many small ones are drawn into streaks soon
	mostSpots     = 0.6  //
	stripesStir   = 0.6  // of the usual stirring: the lip crosses stripes as they lie
	partsAbreast  = 2    // ways take what lies along the lip part by part: a ribbon is then of a few broad colours
	spotsParts    = 3    // of the ways, one part of which takes what lies along the lip side by side where spots lie in the pot: each tongue is then whole
	spotsFirst    = 0.35 // of it lies beyond the chord first at the lip, so that what its middle holds is seen from above
	spotsAhead    = 0.35 // of the pot, by how much its middle runs ahead of its sides where spots are drawn to tongues
	spotsRun      = 0.42 // of the pot, by which more of it has left at one end of the loaf than half way, and less at the other
	spotsTurn     = 1.6  // radians, by which it is turned there
	spotsWound    = 1.1  // radians, by which its middle has turned besides
	turnedOn      = 0.4  // of the pot: how far it is turned in the hand between two ways
	lipTries      = 48   // ways in which the pot may be held, of which one is chosen
	lipPlaces     = 40   // along the lip, at which it is looked at
	lipCuts       = 3    // along the loaf, at which it is looked at
	lipBorders    = 4    // about how often the colour is to change along it
	stripeBorders = 3.5  // the same of a pot with stripes, all the time
	lipLongest    = 0.35 // of the lip: one colour takes no more of it
	lipMost       = 0.45 // of it all of one colour takes no more
	lipFew        = 10   // by how many colours too few the whole lip more counts
	leadKnots     = 200  // along the lip, at which it is reckoned how far ahead it is
)

// How what leaves a pot changes along the loaf: by eye, no source.
const (
	potAhead   = 0.3  // of the pot, by how much the middle of what is poured runs ahead of what the lip holds at its edges
	potFingers = 0.2  // of the pot, by how much one part of the lip runs ahead of another, in waves of a third of the lip to all of it
	potRun     = 0.25 // of the pot, by which more of it has left at one end of the loaf than half way, and less at the other
	potWound   = 0.5  // radians, by which its middle has turned there
	potTurn    = 0.4  // radians, by which all of it has
	endMore    = 1.6  // so many times as much all of that is where it is poured from one end, as what ran furthest left first
)

// lip is the stream as it leaves the pot.
func (b *builder) lip() *stream {
	s := &stream{layout: b.potLayout(), box: b.Box, chord: chordTable(), whole: true}
	stir := b.d.Between(leastStir, mostStir) * b.thick(1.2, 0.4)
	switch b.Technique {
	case script.Pot:
		s.drawOut(b, 1)
		s.apart = strides(s.ways)
	case script.PotStripes:
		s.drawOut(b, 1)
		stir *= stripesStir
	case script.PotEnd:
		s.drawOut(b, endMore)
	case script.PotSpots:
		s.first = spotsFirst
		s.byParts(b.Passes, b.Passes/spotsParts)
		s.drawSpots(b)
		stir = b.d.Between(leastSpots, mostSpots)
	}
	s.stir = stir * b.Turns * b.d.Sign()
	s.eddies = []eddy{b.eddy()}
	s.surge.mean = b.held(s)
	return s
}

// drawOut has a pot begun anywhere and what lies along its lip taken part by part; along the loaf all of it runs and turns on, so many times as much as
// usual, and never back.
func (s *stream) drawOut(b *builder, by float64) {
	s.first = b.d.Float()
	s.byParts(b.Passes, partsAbreast)
	s.lead = leadTable(potAhead, b.d.drift(0, potFingers, [2]float64{0.3, 0.45}, [2]float64{0.6, 1}))
	s.run = b.d.askew(0, by*potRun, b.Box.L)
	s.wound = b.d.askew(0, by*potWound, b.Box.L)
	s.surge = b.d.askew(0, by*potTurn, b.Box.L)
}

// drawSpots lets the spots of a pot be drawn to tongues as it is poured: what runs down the middle of the pot is ahead of what holds to its walls, and from
// one end of the loaf to the other all of it runs and turns on, never back, as a spot that comes and goes would leave the lip as an eye.
func (s *stream) drawSpots(b *builder) {
	s.lead = leadTable(spotsAhead, wobble{})
	s.run = b.d.askew(0, spotsRun, b.Box.L)
	s.wound = b.d.askew(0, spotsWound, b.Box.L)
	s.surge = b.d.askew(0, spotsTurn, b.Box.L)
}

// leadTable is how much of the pot what runs down its middle is ahead of what holds to its walls, and one finger of it of another.
func leadTable(ahead float64, fingers wobble) []float64 {
	table := make([]float64, leadKnots+1)
	for i := range table {
		side := float64(i) / leadKnots
		table[i] = 4*ahead*side*(1-side) + fingers.at(side)
	}
	return table
}

// byParts has what lies along the lip taken in so many parts, one way over the mould after the other. Where the other side of the pot is left, a way
// ends, so that no ribbon is broken off.
func (s *stream) byParts(ways, wide int) {
	if s.ways, s.wide = ways, wide; wide < 1 || ways < wide {
		s.wide = 1
		return
	}
	each := float64(wide) / float64(ways)
	if first := 1 - each*math.Round((1-s.first)/each); first > 0 && first < 1 {
		s.first = first
	}
}

// strides is by how many parts of so many a pot is turned between two ways over the mould: about two fifths of it, and so that every part has its turn.
func strides(ways int) int {
	for by := int(turnedOn*float64(ways) + 0.5); by > 1; by-- {
		if coprime(by, ways) {
			return by
		}
	}
	return 0
}

// coprime says whether two numbers have no divisor in common (Euclid, Elements VII, 1).
func coprime(a, b int) bool {
	for b != 0 {
		a, b = b, a%b
	}
	return a == 1
}

// held is by how many radians the pot is turned so that several colours leave the lip last, as these are seen from above, but not so many that
// each is a thread; and a pot of stripes so that all of them lie across the lip: the best of a few ways.
func (b *builder) held(s *stream) (best float64) {
	least := math.Inf(1)
	for range lipTries {
		by := b.d.Between(0, 2*math.Pi)
		off := s.off(by)
		if b.Technique == script.PotStripes {
			off = s.threads(by)
		}
		if off < least {
			least, best = off, by
		}
	}
	return best
}

// off is how far what leaves last of a pot turned by an angle is from a few broad colours.
func (s *stream) off(by float64) float64 {
	return math.Abs(float64(s.borders(1, by))-lipBorders) + s.few(by)
}

// threads is how far what leaves a pot turned by an angle is, all the time, from many colours side by side.
func (s *stream) threads(by float64) (sum float64) {
	for k := range 5 {
		sum += math.Abs(float64(s.borders(0.1+0.2*float64(k), by)) - stripeBorders)
	}
	return sum + s.few(by)
}

// few is how much too far one colour reaches along what is seen last of a pot turned by an angle.
func (s *stream) few(by float64) (sum float64) {
	for k := range lipCuts {
		x := s.box.L * float64(k) / (lipCuts - 1)
		sum += max(0, s.longest(by, x)-lipLongest) + max(0, s.mostOf(by, x)-lipMost)
	}
	return lipFew / lipCuts * sum
}

// seen is the portion that leaves the lip last, at side, 0 to 1 along it, and lies x mm along the loaf, of a pot turned by an angle.
func (s *stream) seen(side, x, by float64) int {
	side, poured := s.course(side, 1)
	return s.lies(side, around(poured+s.run.at(x)), by+s.surge.at(x)-s.surge.mean, s.wound.at(x))
}

// longest is the greatest part of the lip along which one colour leaves last, x mm along the loaf, of a pot turned by an angle; at its ends, by the walls, it
// counts twice.
func (s *stream) longest(by, x float64) float64 {
	was, n, most := -1, 0, 0
	for k := range lipPlaces {
		l := s.seen((float64(k)+0.5)/lipPlaces, x, by)
		if k > 0 && l != was {
			n = 0
		} else if k == n {
			n++
		}
		was = l
		if n++; k == lipPlaces-1 {
			n *= 2
		}
		most = max(most, n)
	}
	return float64(most) / lipPlaces
}

// mostOf is what part of the lip all of one colour takes that leaves last, x mm along the loaf, of a pot turned by an angle.
func (s *stream) mostOf(by, x float64) float64 {
	var places [math.MaxUint8 + 1]int
	most := 0
	for k := range lipPlaces {
		l := uint8(s.seen((float64(k)+0.5)/lipPlaces, x, by))
		places[l]++
		most = max(most, places[l])
	}
	return float64(most) / lipPlaces
}

// borders is how often the colour changes along the lip when a share has been poured of a pot turned by an angle.
func (s *stream) borders(poured, by float64) (n int) {
	was := s.leaves(0, poured, by)
	for k := 1; k <= lipPlaces; k++ {
		if l := s.leaves(float64(k)/lipPlaces, poured, by); l != was {
			was = l
			n++
		}
	}
	return n
}

// eddy is batter that turns about itself somewhere in the pot where the spoon passed.
func (b *builder) eddy() eddy {
	r, a := 0.65*math.Sqrt(b.d.Float()), b.d.Between(0, 2*math.Pi)
	e := eddy{u: r * math.Cos(a), v: r * math.Sin(a)}
	e.reach = min(b.d.Between(0.35, 0.6), 0.98-r)
	e.turn = b.d.Between(0.8, 1.6) * b.thick(1.1, 0.6) * b.d.Sign() * min(1, b.Turns)
	return e
}
