package swirl

import (
	"math"

	"pourbench/pour/script"
)

// What a stream out of the pot lays into the mould: what gives a pleasing picture, no source.
const (
	thinRibbons  = 10    // about how many ribbons the whole pot makes of thin batter
	thickRibbons = 6     // of thick
	spotRibbons  = 4     // where spots in it make each of them many-coloured
	spotsSteep   = 0.6   // of what crests of others are steep: many colours folded tightly turn grey
	stripedLess  = 5     // so many less where stripes in it make each of them many-coloured
	leastStriped = 5     // but so many
	mostRibbons  = 5     // of them in one way over the mould
	ribbonHalfMM = 34    // half the width of a ribbon where it lies on the surface
	mostLean     = 1     // how far its sheets stand up at most
	leastLean    = 0.3   // and how far those that stand lean over at least
	lyingPart    = 0.2   // of the ribbons run out flat, their sheets lying
	leastFirst   = 0.3   // of the pot at least lies beyond the chord that is at the lip first and last: chords by the wall are of one colour
	mostFirst    = 0.45  // and at most
	foldsFrom    = 0.45  // of the mould's height: from here up a ribbon lies lap beside lap
	mostHigh     = 0.5   // of the lip: how far its sheets go up and down then
	leastMany    = 0.45  // laps at least
	mostMany     = 1.05  // and at most
	lapDrift     = 1.3   // radians, by how much a lap drifts along the loaf
	mostLaps     = 1.7   // how often it lies beside itself near the surface at most
	endHalf      = 0.34  // of the mould's width: half of a lap of the last at least, as it runs out over all before
	leastHalfMM  = 18.   // half of a ribbon that holds at least: a narrower one folds what it falls into too small
	lipTries     = 8     // ways in which the pot may be held, of which the most colourful is chosen
	lipPlaces    = 40    // along the lip, at which it is looked at
	nearWall     = 0.1   // of the mould's width: the middle of a ribbon keeps so far from the wall
	holdsPart    = 0.4   // by what part of its width it is narrower there
	sinkPart     = 0.36  // of the level: about how deep a ribbon sinks in at most
	turnPart     = 0.3   // of the ribbons are led the other way than the one before
	leastSwing   = -0.16 // of the mould's width: how far the ribbon swings to the side of the hand at least
	mostSwing    = 0.56  // and at most
	endFirst     = 0.62  // of the pot lies beyond the chord first at the lip there, so that what ends at the surface is of its middle from end to end
	endTilt      = 0.8   // what is poured from one end runs so much deeper in the pot at the other
	spotHalf     = 1.05  // of the usual width: a ribbon out of a pot with spots
	mostDrops    = 3     // in a ribbon
	lumpWide     = 1.1   // of its half width: how wide the most of a ribbon is
)

// outpour pours all colours together out of one pot: in every cross-section as ribbons that lie where the hand and their own coiling bring
// them, each with the colours side by side as they leave the lip, and each sinking into those before.
func (b *builder) outpour() func(script.Act) {
	b.stream = b.lip()
	h := &hand{over: b.d.Float() < 0.5, back: b.d.Float() < 0.5, side: b.d.Sign()}
	inAll := b.thick(thinRibbons, thickRibbons)
	switch b.Technique {
	case script.PotSpots:
		inAll = spotRibbons
	case script.PotStripes:
		inAll = max(leastStriped, inAll-stripedLess)
	}
	each := inAll / math.Max(1, float64(b.Passes))
	return func(a script.Act) {
		switch a.Kind {
		case script.PourOut:
			n := int(clamp(each+b.d.Float(), 1, mostRibbons))
			for k := range n {
				b.ribbon(a, h, k, n)
			}
			b.fold(b.d.Float())
		case script.Level:
			b.settle(b.thick(3, 1.2))
		}
	}
}

// hand is how the pot is led: it goes on as before, and now and then turns over or back.
type hand struct {
	over, back bool
	side       float64 // of the mould it is over: -1 or 1
}

// next is the hand over the other side.
func (h *hand) next(b *builder) {
	h.side = -h.side
	if b.d.Float() < turnPart {
		h.back = !h.back
	}
	if b.d.Float() < turnPart {
		h.over = !h.over
	}
}

// lip is the stream as it leaves the pot.
func (b *builder) lip() *stream {
	s := &stream{layout: b.potLayout(), box: b.Box, chord: chordTable(), surge: b.d.slow(0, 0.5)}
	s.first = b.d.Between(leastFirst, mostFirst)
	if b.d.Sign() < 0 {
		s.first = 1 - s.first
	}
	stir, eddies := b.d.Between(0.8, 1.3)*b.thick(1.2, 0.4), 1
	if b.Technique == script.PotSpots { // many small ones are drawn into streaks soon
		stir, eddies = b.d.Between(0.3, 0.6), 1
	}
	s.stir = stir * b.Turns * b.d.Sign()
	for range eddies {
		s.eddies = append(s.eddies, b.eddy())
	}
	b.toTheLip(s)
	if b.Technique == script.PotEnd {
		s.tilt, s.first = endTilt, endFirst
		s.surge.amp = [2]float64{} // what has been poured depends on x here, so the pot's turn must not: the shares would drift
	}
	return s
}

// toTheLip turns the pot so that many colours lie at the lip last, as these are seen from above.
func (b *builder) toTheLip(s *stream) {
	most, best := -1, 0.0
	for range lipTries {
		by, n := b.d.Between(0, 2*math.Pi), 0
		for _, off := range [...]float64{-0.3, 0, 0.3} {
			u := s.chordAt(s.first)
			before := -1
			for k := range lipPlaces {
				v := math.Sqrt(1-u*u) * (2*(float64(k)+0.5)/lipPlaces - 1)
				if l := s.layout.at(s.untwist(u, v, by+off)); l != before {
					before = l
					n++
				}
			}
		}
		if n > most {
			most, best = n, by
		}
	}
	s.surge.mean = best
}

// eddy is batter that turns about itself somewhere in the pot where the spoon passed.
func (b *builder) eddy() eddy {
	r, a := 0.65*math.Sqrt(b.d.Float()), b.d.Between(0, 2*math.Pi)
	e := eddy{u: r * math.Cos(a), v: r * math.Sin(a)}
	e.reach = min(b.d.Between(0.35, 0.6), 0.98-r)
	e.turn = b.d.Between(0.8, 1.6) * b.thick(1.1, 0.6) * b.d.Sign() * min(1, b.Turns)
	return e
}

// ribbon lays the k-th ribbon of n of a way over the mould.
func (b *builder) ribbon(a script.Act, h *hand, k, n int) {
	from := b.level
	h.next(b)
	fill := &ribbon{stream: b.stream, bottom: from, over: h.over, back: h.back}
	if k < n-1 {
		b.rise(a.Share/float64(n), fill)
	} else {
		b.raise(a.Share/float64(n), fill)
	}
	fill.top, fill.tall = b.level, b.Box.W
	lies := b.train(a, h, k, n)
	wide := 0.0
	for i := range lies {
		wide += lies[i].half * lumpWide
	}
	fill.stand(b, wide, b.act >= b.last && k == n-1)
	up := b.level - from
	if up < 1e-9 || up > mostSunk*mostSunk*b.level {
		fill.tall, fill.upright, fill.crests = max(up, 1e-9), true, nil
		return
	}
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: lies, lift: b.Box.W}})
}

// stand draws how the sheets of a ribbon stand: most lean over, as each runs out under the next; where the pot holds spots they close to
// drops, as many as are round where most of it is so many mm wide.
func (r *ribbon) stand(b *builder, wide float64, last bool) {
	r.upright = b.d.Float() >= lyingPart
	r.lean = b.d.Between(leastLean, mostLean)
	wave := b.d.Between(30, 60)
	high := b.level / b.Box.H
	most := 0.1 + 0.3*high*high
	wide = min(wide, b.Box.W)
	deep := (r.top - r.bottom) * b.Box.W / wide
	steep := b.d.Between(0.15, 0.26)
	if last {
		wave, steep, most = b.d.Between(26, 40), 0.26, 0.5
		if b.Technique == script.PotSpots {
			wave = b.d.Between(36, 55)
		}
	}
	if b.Technique == script.PotSpots {
		steep, most = spotsSteep*steep, spotsSteep*most
	}
	many := wide / wave
	r.crests = &crests{
		high: min(most, steep*wave/deep), many: many,
		turned: b.d.Between(0.5, 1) * b.d.Sign() / 250, aslant: b.d.Between(0.1, 0.4) * b.d.Sign(), along: b.d.wobble(b.d.Between(0, 2*math.Pi), lapDrift*max(1, many)),
		bend: b.d.Between(0.5, 1.1), at: b.d.Between(0, 6.28),
	}
}

// train is where the k-th ribbon of a way over the mould lies. What is poured low runs out; what comes to lie near the surface, on batter
// that has thickened, holds as it falls, narrower and lap beside lap.
func (b *builder) train(a script.Act, h *hand, k, n int) (rows []row) {
	high := b.level / b.Box.H
	laps, up := 1, a.Share*b.Box.H/float64(n)
	if k == n-1 && b.act >= b.last && b.Technique != script.PotSpots {
		laps = 2
	}
	for i := range laps {
		if i > 0 {
			h.side = -h.side
		}
		r := b.lap(a, h, k)
		r.part = 1 / float64(laps)
		r.half *= (1 - holdsPart*high*high) * math.Pow(r.part, 0.6)
		least := leastHalfMM
		if laps > 1 {
			least = endHalf * b.Box.W
		}
		r.half = max(r.half, least, r.part*up*b.Box.W/(sinkPart*b.level))
		rows = append(rows, r)
	}
	return rows
}

// lap is one lap of a ribbon.
func (b *builder) lap(a script.Act, h *hand, k int) row {
	line := 0.5
	if len(a.Lines) > 0 {
		line = a.Lines[k%len(a.Lines)]
	}
	at := clamp(line+h.side*b.d.Between(leastSwing, mostSwing), 0, 1) * b.Box.W
	half := ribbonHalfMM * b.d.Between(0.6, 1.7) * b.thick(1.2, 0.7) * clamp(b.Box.W/75, 0.5, 1.6)
	r := row{part: 1, line: b.d.slow(at, 0.12*b.Box.W), half: half, blunt: b.thick(softRim, 0.4), swell: b.d.slow(0, 0.3)}
	switch b.Technique {
	case script.PotEnd:
		b.tongue(&r)
	case script.PotSpots:
		r.half *= spotHalf
	}
	return r
}

// tongue makes a ribbon one that comes down in one place of the loaf, the further from the lip the later it is poured, and runs out flat from
// there aslant over the mould.
func (b *builder) tongue(r *row) {
	long := math.Pi / b.Box.L
	falls := b.Box.L * clamp(b.level/b.Box.H+b.d.Between(-0.3, 0.3), 0, 1)
	r.swell = wobble{mean: 0.6, amp: [2]float64{0.65, 0.12}, k: [2]float64{long, 4 * long}, offset: [2]float64{-math.Pi/2 - long*falls, b.d.Between(0, 2*math.Pi)}}
	r.line.mean = clamp(r.line.mean, nearWall*b.Box.W, (1-nearWall)*b.Box.W) // one that runs down the wall would be a sliver
	aslant := b.d.Between(0.15, 0.3) * b.d.Sign() * b.Box.W
	r.line.amp[1], r.line.k[1], r.line.offset[1] = aslant, long, -long*b.Box.L/2
}
