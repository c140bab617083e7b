package swirl

import (
	"math"

	"pourbench/pour/script"
)

// How a pot is stirred and held: what gives a pleasing picture, no source.
const (
	leastStir      = 0.8  // radians, by how much the spoon turns the middle of the pot at least
	mostStir       = 1.3  // and at most
	leastSpots     = 0.3  // the same of a pot with spots: many small ones are drawn into streaks soon
	mostSpots      = 0.6  //
	sectorsStir    = 0.7  // of the usual stirring, where slices lie round the pot
	stripesStir    = 0.6  // of the usual stirring: the lip crosses stripes as they lie
	leastFirst     = 0.3  // of the pot at least lies beyond the chord that is at the lip first and last: chords by the wall are of one colour
	mostFirst      = 0.45 // and at most
	leastMiddle    = 0.42 // of the pot at least lies on either side of the chord that is at the lip last where it is turned between two ways
	partsAbreast   = 1    // ways take what lies along the lip part by part
	spotsParts     = 3    // of the ways, one part of which takes what lies along the lip side by side where spots lie in the pot: each tongue is then whole
	spotsFirst     = 0.35 // of it lies beyond the chord first at the lip, so that what its middle holds is seen from above
	spotsAhead     = 0.35 // of the pot, by how much its middle runs ahead of its sides where spots are drawn to tongues
	spotsRun       = 0.42 // of the pot, by which more of it has left at one end of the loaf than half way, and less at the other
	spotsTurn      = 1.6  // radians, by which it is turned there
	spotsWound     = 1.1  // radians, by which its middle has turned besides
	turnedOn       = 0.4  // of the pot: how far it is turned in the hand between two ways
	lipTurn        = 0.35 // radians, by how much the pot is turned to either side along the loaf
	lipTries       = 16   // ways in which the pot may be held, of which one is chosen
	bowlTries      = 48   // the same where the last ribbons lie as bowls
	lipPlaces      = 40   // along the lip, at which it is looked at
	lipBorders     = 4    // about how often the colour is to change along it
	stripeBorders  = 3.5  // the same of a pot with stripes, all the time
	stripesAbreast = 2    // ways take what lies along the lip part by part where stripes lie across it
	lipLongest     = 0.35 // of the lip: one colour takes no more of it
	bowlMostOf     = 0.4  // of what is seen of the last bowl: all of one colour in it takes no more
	threadPlaces   = 1    // along what is seen of it: a narrower band is a thread
	threadsWorse   = 0.7  // by how many colours too many one thread counts
	bowlLongest    = 0.24 // the same from the rim to the eye of a bowl
	bowlFew        = 20   // the same where the last ribbons lie as bowls
	lipFew         = 10   // by how many colours too few the whole lip more counts
	endFirst       = 0.62 // of the pot lies beyond the chord first at the lip there, so that what ends at the surface is of its middle from end to end
	streamAhead    = 0.35 // of the pot, by how much the middle of what is poured from one end runs ahead of what the lip holds at its edges
	fingersAhead   = 0.22 // of the pot, by how much one tongue runs ahead of another, in waves of about all of the lip and of twice that
	leadKnots      = 200  // along the lip, at which that is reckoned
	endAbreast     = 2    // parts
	endRun         = 0.35
	endWound       = 0.9
	endTurn        = 0.8
)

// lip is the stream as it leaves the pot.
func (b *builder) lip() *stream {
	s := &stream{layout: b.potLayout(), box: b.Box, chord: chordTable(), surge: b.d.heavy(0, lipTurn)}
	s.first = b.d.Between(leastFirst, mostFirst)
	if b.d.Sign() < 0 {
		s.first = 1 - s.first
	}
	stir := b.d.Between(leastStir, mostStir) * b.thick(1.2, 0.4)
	switch b.Technique {
	case script.Pot:
		s.byParts(b.Passes, partsAbreast)
		stir *= sectorsStir
		s.inTurns(b.d.Between(leastMiddle, 1-leastMiddle))
	case script.PotSpots:
		s.first, s.whole = spotsFirst, true
		s.byParts(b.Passes, b.Passes/spotsParts)
		s.drawSpots(b)
		stir = b.d.Between(leastSpots, mostSpots)
	case script.PotEnd:
		s.first, s.whole = b.d.Between(0, 1), true
		s.byParts(b.Passes, endAbreast)
		s.lead = leadTable(streamAhead, b.d.drift(0, fingersAhead, [2]float64{0.3, 0.45}, [2]float64{0.6, 1}))
		s.run = b.d.askew(0, endRun, b.Box.L)
		s.wound = b.d.askew(0, endWound, b.Box.L)
		s.surge = b.d.askew(0, endTurn, b.Box.L)
	case script.PotStripes:
		s.byParts(b.Passes, stripesAbreast)
		s.inTurns(b.d.Between(leastMiddle, 1-leastMiddle))
		stir *= stripesStir
	}
	s.stir = stir * b.Turns * b.d.Sign()
	s.eddies = []eddy{b.eddy()}
	s.surge.mean = b.held(s)
	return s
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

// inTurns has the pot turned in the hand between two ways over the mould, and begun so that about so much of it lies on one side of the chord that is
// at the lip last: across its middle lie more colours than by its wall.
func (s *stream) inTurns(last float64) {
	s.bowls, s.apart, s.first = true, strides(s.ways), 0
	_, at := s.course(0.5, 1-0.5/float64(s.ways))
	each := float64(s.wide) / float64(s.ways)
	s.first = each * math.Round((last-at)/each)
	s.first -= math.Floor(s.first)
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
	tries := lipTries
	if s.bowls {
		tries = bowlTries
	}
	for range tries {
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
	n := s.borders(1, by-lipTurn/2) + s.borders(1, by) + s.borders(1, by+lipTurn/2)
	return math.Abs(float64(n)/3-lipBorders) + s.few(by)
}

// threads is how far what leaves a pot turned by an angle is, all the time, from many colours side by side.
func (s *stream) threads(by float64) (sum float64) {
	for k := range 5 {
		sum += math.Abs(float64(s.borders(0.1+0.2*float64(k), by)) - stripeBorders)
	}
	return sum + s.few(by)
}

// few is how much too far one colour reaches along what is seen last of a pot turned by an angle.
func (s *stream) few(by float64) float64 {
	if s.bowls {
		return s.dull(by)
	}
	return lipFew * max(0, s.longest(by)-lipLongest)
}

// dull is how far what is seen from above of the last bowl of a pot turned by an angle, from rim to eye, is from bands of all colours, none of them broad
// and none a thread.
func (s *stream) dull(by float64) float64 {
	var places [math.MaxUint8 + 1]int
	was, n, longest, most, threads := -1, 0, 0, 0, 0
	flip := s.turnsOver(1, by)
	for k := range lipPlaces {
		side := there(shown((float64(k) + 0.5) / lipPlaces))
		if flip {
			side = 1 - side
		}
		l := s.leaves(side, 1, by)
		if l != was && k > 0 {
			if n <= threadPlaces {
				threads++
			}
			n = 0
		}
		was = l
		n++
		places[uint8(l)]++
		longest, most = max(longest, n), max(most, places[uint8(l)])
	}
	return bowlFew*(max(0, float64(longest)/lipPlaces-bowlLongest)+max(0, float64(most)/lipPlaces-bowlMostOf)) + threadsWorse*float64(threads)
}

// longest is the greatest part of the lip along which one colour leaves last, of a pot turned by an angle; at its ends, where the lip turns back, twice
// as much.
func (s *stream) longest(by float64) float64 {
	was, n, most := -1, 0, 0
	for k := range lipPlaces {
		l := s.leaves((float64(k)+0.5)/lipPlaces, 1, by)
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

// turnsOver says whether a bowl poured when a share has been poured of a pot turned by an angle lies turned over: the end of the lip along which one
// colour leaves furthest lies outermost, so that its rims are no threads.
func (s *stream) turnsOver(poured, by float64) bool {
	return s.alike(poured, 1, by) > s.alike(poured, 0, by)
}

// alike is along how many places from an end of the lip, 0 or 1, one colour leaves when a share has been poured.
func (s *stream) alike(poured, end, by float64) (n int) {
	was := s.leaves(end, poured, by)
	for n < lipPlaces && s.leaves(math.Abs(end-float64(n)/lipPlaces), poured, by) == was {
		n++
	}
	return n
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
