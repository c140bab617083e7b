package swirl

import (
	"math"

	"pourbench/pour/script"
)

// What a stream out of the pot lays into the mould: what gives a pleasing picture, no source.
const (
	ribbonsInAll  = 18  // about how many ribbons the whole pot makes
	spotRibbons   = 8   // and where spots in it make each of them many-coloured
	stripeRibbons = 13  // or stripes
	mostRibbons   = 5   // of them in one way over the mould
	ribbonHalfMM  = 11  // half the width of a ribbon where it lies on the surface
	mostLean      = 1   // how far its sheets stand up at most
	leastLean     = 0.4 // and how far those that stand lean over at least
	foldPart      = 0.7 // of the ways over the mould draw what lies there down
	coilSwing     = 0.2 // of the mould's width: how far the ribbon swings to either side of the hand
	endTilt       = 0.8 // what is poured from one end runs so much deeper in the pot at the other
)

// outpour pours all colours together out of one pot: in every cross-section as ribbons that lie where the hand and their own coiling bring
// them, each with the colours side by side as they leave the lip, and each sinking into those before.
func (b *builder) outpour() func(script.Act) {
	b.stream = b.lip()
	inAll := float64(ribbonsInAll)
	switch b.Technique {
	case script.PotSpots:
		inAll = spotRibbons
	case script.PotStripes:
		inAll = stripeRibbons
	}
	each := inAll / math.Max(1, float64(b.Passes))
	return func(a script.Act) {
		switch a.Kind {
		case script.PourOut:
			n := int(clamp(each+b.d.Float(), 1, mostRibbons))
			for k := range n {
				b.ribbon(a, k, n)
			}
			for _, line := range a.Lines {
				if b.d.Float() < foldPart {
					b.fold(line + b.d.Between(-0.15, 0.15))
				}
			}
		case script.Level:
			b.settle(b.thick(3, 1.2))
		}
	}
}

// lip is the stream as it leaves the pot.
func (b *builder) lip() *stream {
	s := &stream{layout: b.potLayout(), box: b.Box, chord: chordTable(), surge: b.d.wobble(b.d.Between(0, 2*math.Pi), 0.5)}
	stir, eddies := b.d.Between(1.3, 2), 2
	if b.Technique == script.PotSpots { // many small ones are drawn into streaks soon
		stir, eddies = b.d.Between(0.6, 0.9), 1
	}
	s.stir = stir * b.Turns * b.d.Sign()
	for range eddies {
		s.eddies = append(s.eddies, b.eddy())
	}
	if b.Technique == script.PotEnd {
		s.tilt = endTilt
		s.surge.amp = [2]float64{} // what has been poured depends on x here, so the pot's turn must not: the shares would drift
	}
	return s
}

// eddy is batter that turns about itself somewhere in the pot where the spoon passed.
func (b *builder) eddy() eddy {
	r, a := 0.65*math.Sqrt(b.d.Float()), b.d.Between(0, 2*math.Pi)
	e := eddy{u: r * math.Cos(a), v: r * math.Sin(a)}
	e.reach = min(b.d.Between(0.35, 0.6), 0.98-r)
	e.turn = b.d.Between(1.2, 2.2) * b.d.Sign() * min(1, b.Turns)
	return e
}

// ribbon lays the k-th ribbon of n of a way over the mould.
func (b *builder) ribbon(a script.Act, k, n int) {
	from := b.level
	fill := &ribbon{stream: b.stream, bottom: from, over: b.d.Float() < 0.5, back: b.d.Float() < 0.5}
	if k < n-1 {
		b.rise(a.Share/float64(n), fill)
	} else {
		b.raise(a.Share/float64(n), fill)
	}
	fill.top, fill.tall = b.level, b.Box.W
	fill.stand(b)
	up := b.level - from
	if up < 1e-9 || up > mostSunk*mostSunk*b.level {
		fill.tall, fill.upright = max(up, 1e-9), true
		return
	}
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: []row{b.train(a, k)}, lift: b.Box.W}})
}

// stand draws how the sheets of a ribbon stand and how often it lies on itself. What is poured low runs out flat; what comes to lie near the
// surface, on batter that has thickened, holds as it falls: side by side, and lap on lap.
func (r *ribbon) stand(b *builder) {
	high := b.level / b.Box.H
	r.lean = b.d.Between(0, mostLean)
	if b.d.Float() < high {
		r.upright, r.lean = true, b.d.Between(leastLean, mostLean)
	}
	if b.Technique != script.PotSpots && b.d.Float() < high {
		r.laps = 2
	}
}

// train is where the k-th ribbon of a way over the mould lies.
func (b *builder) train(a script.Act, k int) row {
	line := 0.5
	if len(a.Lines) > 0 {
		line = a.Lines[k%len(a.Lines)]
	}
	at := clamp(line+b.d.Between(-coilSwing, coilSwing), 0.03, 0.97) * b.Box.W
	half := ribbonHalfMM * b.d.Between(0.6, 1.5) * b.thick(0.9, 1.3) * clamp(b.Box.W/75, 0.5, 1.6)
	r := row{part: 1, line: b.d.wobble(at, 0.1*b.Box.W), half: half, swell: b.d.wobble(0, 0.6)}
	switch b.Technique {
	case script.PotEnd:
		b.tongue(&r)
	case script.PotSpots: // wide and seldom, so that what is many-coloured is not fine as hair
		r.half *= 1.5
	}
	return r
}

// tongue makes a ribbon one that comes down in one place of the loaf, the further from the lip the later it is poured, and runs out flat from
// there aslant over the mould.
func (b *builder) tongue(r *row) {
	long := math.Pi / b.Box.L
	falls := b.Box.L * clamp(b.level/b.Box.H+b.d.Between(-0.3, 0.3), 0, 1)
	r.swell = wobble{mean: 0.9, amp: [2]float64{1.35, 0.15}, k: [2]float64{long, 5 * long}, offset: [2]float64{-math.Pi/2 - long*falls, b.d.Between(0, 2*math.Pi)}}
	aslant := b.d.Between(0.15, 0.3) * b.d.Sign() * b.Box.W
	r.line.amp[1], r.line.k[1], r.line.offset[1] = aslant, long, -long*b.Box.L/2
}

// fold draws what lies there down where the stream falls.
func (b *builder) fold(line float64) {
	if b.level < 4 {
		return
	}
	if b.d.Float() < 0.5 {
		b.dive(b.d.wobble(clamp(b.Box.W*line, 9, b.Box.W-9), 7), b.level*b.d.Between(0.35, 0.8)*b.fall())
		return
	}
	b.plunge(b.Box.W*line, b.d.Between(14, 36)*b.fall(), b.d.Between(9, 15)*b.thick(0.95, 1.3), b.d.Between(0.5, 0.9), b.d.wobble(0, 7)).still = true
}
