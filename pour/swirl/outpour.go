package swirl

import (
	"cmp"
	"math"
	"slices"

	"pourbench/pour/script"
)

// What a stream out of the pot lays into the mould: what gives a pleasing picture, no source.
const (
	thinRibbons  = 9    // about how many ribbons the whole pot makes of thin batter
	thickRibbons = 5    // of thick
	spotRibbons  = 3    // where spots in it make each of them many-coloured
	stripedLess  = 4    // so many less where stripes do
	leastStriped = 4    // but so many
	mostRibbons  = 5    // of them in one way over the mould
	ribbonHalfMM = 34   // half the width of a ribbon where it lies on the surface
	stripesLeast = 0.7  // how much narrower it is where stripes are in it, as they would be threads, at most
	stripesMost  = 0.85 // and at least
	leastHalfMM  = 18.  // of one that holds at least: a narrower one folds what it falls into too small
	lastHalfPart = 0.44 // of the mould's width: half of a lap of the last at least, as it runs out over all before
	lastLaps     = 2    // how often the last lies beside itself
	bottomLean   = 1    // how far sheets that stand on the bottom lean over at most
	bottomLeast  = 0.3  // and at least
	nearWall     = 0.1  // of the mould's width: the middle of a ribbon that comes down in one place keeps so far from the wall
	holdsPart    = 0.4  // by what part of its width it is narrower near the surface
	sinkPart     = 0.36 // of the level: about how deep a ribbon sinks in at most
	turnPart     = 0.3  // of the ribbons are led the other way than the one before
	leastSwing   = 0.25 // of the room on that side: how far the ribbon swings to the side of the hand at least; at most to the wall
	backSwing    = 0.3  // of the mould's width: how far a hand that is led to and fro goes back over its line at most
	onSwing      = 0.36 // and on
	thickest     = 1.6  // of its mean depth: about how deep a ribbon is in its middle
	drawnOut     = 0.2  // of the mould's width: what the depth of a ribbon is drawn out to, so that pictures find its strands; more makes its foot jagged
	lumpWide     = 1.1  // of its half width: how wide the most of a ribbon is
	tongueHalf   = 0.46 // of the mould's width: half of a tongue that runs in from one end at most, before it swells
	tongueLeast  = 0.28 // and at least
	tongueNear   = 0.06 // of the mould's width: how far from the middle it lies at least
	tongueFar    = 0.34 // and at most
	tongueBlunt  = 0.4
	endLeast     = 0.35 // how far the sheets of a tongue lean over at least
	endMost      = 1.   // and at most
	tongueSwell  = 0.25 // by what part broader it is half way from where it comes down
	tongueRuns   = 0.5  // by what part of it more far off, and less where it comes down
	spotsCover   = 0.62 // of the mould's width: half of the last ribbon at least where spots lie in it: its rim would leave them cut off
	spotsStray   = 0.16 // of the mould's width: how far the hand strays along the loaf where spots lie in a ribbon
	spotsSwell   = 0.35 // and by what part it is broader here than there
)

// outpour pours all colours together out of one pot: in every cross-section as ribbons that lie where the hand and their own coiling bring
// them, each with the colours side by side as they leave the lip, and each sinking into those before.
func (b *builder) outpour() func(script.Act) {
	b.stream = b.lip()
	h := &hand{over: b.d.Float() < 0.5, back: b.d.Float() < 0.5, side: b.d.Sign(), toBack: turnPart, toOver: turnPart}
	if h.holds = 1; b.Technique == script.PotStripes {
		h.holds = b.d.Between(stripesLeast, stripesMost)
	}
	inAll := b.thick(thinRibbons, thickRibbons)
	switch b.Technique {
	case script.PotSpots:
		inAll = spotRibbons
		h.toBack, h.toOver = 0, 0 // all one way, so that of a spot two of them share the parts lie on each other
	case script.PotStripes:
		inAll = max(leastStriped, inAll-stripedLess)
	}
	each := inAll / math.Max(1, float64(b.Passes))
	return func(a script.Act) {
		switch a.Kind {
		case script.PourOut:
			n := int(clamp(each+b.d.Float(), 1, mostRibbons))
			if b.level == 0 && n > 1 {
				n-- // on the bare bottom they run together
			}
			for k := range n {
				b.ribbon(a, h, k, n)
			}
			b.fold(b.d.Float(), b.thick(foldOften, foldOftenThick))
			if b.Technique != script.PotSpots {
				b.fold(0.5*b.d.Float(), b.thick(foldAgain, 0))
			}
		case script.Level:
			b.settle(b.thick(3, 1.2))
		}
	}
}

// hand is how the pot is led: it goes on as before, and now and then turns over or back.
type hand struct {
	over, back     bool
	toOver, toBack float64 // how often it turns
	side           float64 // of the mould it is over: -1 or 1
	holds          float64 // how wide its ribbons are, against usual ones
}

// next is the hand over the other side.
func (h *hand) next(b *builder) {
	h.side = -h.side
	if b.d.Float() < h.toBack {
		h.back = !h.back
	}
	if b.d.Float() < h.toOver {
		h.over = !h.over
	}
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
	fill.top, fill.tall = b.level, drawnOut*b.Box.W
	bowl := b.bowls()
	last := b.act >= b.last && k == n-1 && !bowl
	end := b.Technique == script.PotEnd
	lies := b.train(a, h, k, n, last)
	if bowl {
		b.hollow(&lies[0])
	}
	up := b.level - from
	if up < 1e-9 || up > mostSunk*mostSunk*b.level {
		fill.tall, fill.lean = max(up, 1e-9), b.d.Between(bottomLeast, bottomLean)
		return
	}
	wide := widthOf(lies, b.Box.W)
	deep := thickest * up * b.Box.W / wide
	if bowl {
		fill.bowl, fill.over = b.bowl(wide, deep), b.stream.turnsOver(0.5*(from+b.level)/b.Box.H, b.stream.surge.mean)
		fill.bowl.twice = b.act >= b.last
	} else if last && !end {
		fill.laps = b.laps(wide, deep)
	} else {
		fill.curls = b.curls(wide, deep)
		if end {
			fill.lean = b.d.Between(endLeast, endMost)
		}
	}
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: lies, lift: fill.tall}})
}

// hollow makes a lap one that a bowl lies in: neither narrow and steep nor flat, and not half in the wall.
func (b *builder) hollow(r *row) {
	r.half = clamp(r.half, bowlLeast*b.Box.W, bowlMost*b.Box.W)
	r.line.mean = clamp(r.line.mean, bowlWall*b.Box.W, (1-bowlWall)*b.Box.W)
	r.swell = b.d.heavy(0, bowlSwell)
}

// bowls draws whether the sheets of the ribbon poured last lie one in the other, as most do in a mould that is half full; what is poured last of all out of a
// pot of stripes runs out over the top, where all of them are seen.
func (b *builder) bowls() bool {
	if b.Technique != script.Pot && b.Technique != script.PotStripes {
		return false
	}
	lies := b.d.Float() < (b.level/b.Box.H-bowlFrom)/(bowlAll-bowlFrom)
	return lies && (b.Technique != script.PotStripes || b.act < b.last)
}

// widthOf is how much of the mould's width, mm, the most of the laps of a ribbon covers.
func widthOf(laps []row, width float64) (sum float64) {
	ends := make([]vec2, 0, len(laps)) // from y to z
	for i := range laps {
		half := 0.5 * lumpWide * laps[i].half
		ends = append(ends, vec2{max(0, laps[i].line.mean-half), min(width, laps[i].line.mean+half)})
	}
	slices.SortFunc(ends, func(a, b vec2) int { return cmp.Compare(a.y, b.y) })
	upto := 0.0
	for _, e := range ends {
		sum += max(0, e.z-max(e.y, upto))
		upto = max(upto, e.z)
	}
	return sum
}

// train is where the k-th ribbon of a way over the mould lies. What is poured low runs out; what comes to lie near the surface, on batter
// that has thickened, holds as it falls, narrower, and the last lies lap beside lap.
func (b *builder) train(a script.Act, h *hand, k, n int, last bool) (rows []row) {
	high := b.level / b.Box.H
	laps, up, least := 1, a.Share*b.Box.H/float64(n), leastHalfMM
	switch {
	case last && b.Technique == script.PotSpots:
		least = spotsCover * b.Box.W
	case last && b.Technique != script.PotEnd:
		laps, least = lastLaps, lastHalfPart*b.Box.W
	}
	for i := range laps {
		if i > 0 {
			h.side = -h.side
		}
		r := b.lap(a, h, k)
		r.part = 1 / float64(laps)
		r.half *= (1 - holdsPart*high*high) * math.Pow(r.part, 0.6)
		r.half = max(r.half, least, r.part*up*b.Box.W/(sinkPart*b.level))
		r.half /= 0.4 + 0.6*clamp(min(r.line.mean, b.Box.W-r.line.mean)/r.half, 0, 1) // along the wall it runs out: it would stand there like a post
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
	at := (line + h.side*b.d.Between(leastSwing, 1)*clamp(min(line, 1-line), 0, 1)) * b.Box.W
	if b.Technique != script.PotSpots {
		at = b.aside(line)
	}
	half := ribbonHalfMM * b.d.Between(0.6, 1.7) * b.thick(1.2, 0.7) * clamp(b.Box.W/75, 0.5, 1.6)
	if b.Technique == script.PotStripes {
		half *= h.holds
	}
	r := row{part: 1, line: b.d.heavy(at, 0.12*b.Box.W), half: half, blunt: b.thick(softRim, 0), swell: b.d.heavy(0, 0.3)}
	switch {
	case b.Technique == script.PotEnd:
		b.tongue(&r, h.side)
	case b.Technique == script.PotSpots && b.act < b.last:
		b.strays(&r, at)
	}
	return r
}

// strays leads a ribbon in shorter waves about a place across, mm, so that what spots are drawn out to does not lie in bands from end to end.
func (b *builder) strays(r *row, at float64) {
	short, long := [2]float64{70, 120}, [2]float64{160, 300} // mm
	r.line = b.d.drift(at, spotsStray*b.Box.W, short, long)
	r.swell = b.d.drift(0, spotsSwell, short, long)
}

// aside is where across the mould, mm, the hand is that is led to and fro about a line: mostly on over the side the line lies on, now and then back.
func (b *builder) aside(line float64) float64 {
	by := b.d.Between(-backSwing, onSwing)
	if line < 0.5 {
		by = -by
	}
	return clamp(line+by, nearWall, 1-nearWall) * b.Box.W
}

// tongue makes a ribbon one that comes down in one place of the loaf, the further from the lip the later it is poured, and runs out flat from
// there aslant over the mould, by the one wall and by the other in turns.
func (b *builder) tongue(r *row, side float64) {
	long := math.Pi / b.Box.L
	falls := b.Box.L * clamp(b.level/b.Box.H+b.d.Between(-0.3, 0.3), 0, 1)
	r.half = b.d.Between(tongueLeast, tongueHalf) * b.Box.W
	r.swell = wobble{mean: tongueSwell, amp: [2]float64{tongueRuns, 0.12}, k: [2]float64{long, 4 * long}, offset: [2]float64{-math.Pi/2 - long*falls, b.d.Between(0, 2*math.Pi)}}
	r.line.mean = (0.5 + side*b.d.Between(tongueNear, tongueFar)) * b.Box.W
	aslant := b.d.Between(0.1, 0.26) * b.d.Sign() * b.Box.W
	r.line.amp[1], r.line.k[1], r.line.offset[1] = aslant, long, -long*b.Box.L/2
	r.blunt = tongueBlunt
}
