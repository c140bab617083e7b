package swirl

import (
	"math"

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
	leastHalf    = 0.28 // of the mould's width: half of a ribbon at least
	mostHalf     = 0.46 // and at most
	slicesHalf   = 0.09 // so much more where slices lie round the pot, whose colours are broad: narrow, they would be notches
	spotsHalf    = 0.03 // and where spots lie in it
	thinRuns     = 1.1  // times as broad are ribbons of thin batter
	thickHolds   = 0.8  // and of thick
	blunt        = 0.4  // how blunt a ribbon is: at soft rims all that lies in it runs out to threads
	leastHalfMM  = 18.  // of one that holds at least: a narrower one folds what it falls into too small
	bottomLean   = 1    // how far sheets that stand on the bottom lean over at most
	bottomLeast  = 0.3  // and at least
	leanLeast    = 0.35 // the same of those of a ribbon that sinks in: at its rims lies then only what leaves by one end of the lip, and no threads of all
	leanMost     = 1.   // at most
	nearWall     = 0.1  // of the mould's width: the middle of a ribbon that comes down in one place keeps so far from the wall
	holdsPart    = 0.2  // by what part of its width it is narrower near the surface
	sinkPart     = 0.36 // of the level: about how deep a ribbon sinks in at most
	turnPart     = 0.3  // of the ribbons are led the other way than the one before
	backSwing    = 0.04 // of the mould's width: how far a hand goes back over its line at most
	onSwing      = 0.18 // and on, to the side it lies on
	strays       = 0.14 // and how far it strays along the loaf
	broadens     = 0.3  // by what part of its width a ribbon is broader here than there
	thickest     = 1.6  // of its mean depth: about how deep a ribbon is in its middle
	drawnOut     = 0.2  // of the mould's width: what the depth of a ribbon is drawn out to, so that pictures find its strands; more makes its foot jagged
	lumpWide     = 1.1  // of its half width: how wide the most of a ribbon is
	asideLeast   = 0.06 // of the mould's width: how far from its middle ribbons lie at least that come by the one wall and by the other in turns
	asideMost    = 0.34 // and at most
	aslantLeast  = 0.1  // of the mould's width: how far across it a tongue from one end is led to either side at least
	aslantMost   = 0.26 // and at most
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
	last := b.act >= b.last && k == n-1
	lies := b.train(a, h, k, n)
	up := b.level - from
	if up < 1e-9 || up > mostSunk*mostSunk*b.level {
		fill.tall, fill.lean = max(up, 1e-9), b.d.Between(bottomLeast, bottomLean)
		return
	}
	wide := widthOf(lies, b.Box.W)
	deep := thickest * up * b.Box.W / wide
	if last && b.Technique == script.PotSpots {
		fill.laps = b.laps(wide, deep)
	} else {
		fill.curls, fill.lean = b.curls(wide, deep), b.d.Between(leanLeast, leanMost)
		if last {
			fill.curls.calm()
		}
	}
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: []row{lies}, lift: fill.tall}})
}

// widthOf is how much of the mould's width, mm, the most of a ribbon covers.
func widthOf(r row, width float64) float64 {
	half := 0.5 * lumpWide * r.half
	return min(width, r.line.mean+half) - max(0, r.line.mean-half)
}

// train is where the k-th ribbon of n of a way over the mould lies. What is poured low runs out; what comes to lie near the surface, on batter
// that has thickened, holds as it falls, narrower.
func (b *builder) train(a script.Act, h *hand, k, n int) row {
	high, up, least := b.level/b.Box.H, a.Share*b.Box.H/float64(n), leastHalfMM
	if b.Technique == script.PotSpots && b.act >= b.last && k == n-1 {
		least = spotsCover * b.Box.W
	}
	r := b.lap(a, h, k, n)
	r.half *= 1 - holdsPart*high*high
	r.half = max(r.half, least, up*b.Box.W/(sinkPart*b.level))
	r.half /= 0.4 + 0.6*clamp(min(r.line.mean, b.Box.W-r.line.mean)/r.half, 0, 1) // along the wall it runs out: it would stand there like a post
	return r
}

// lap is the k-th ribbon of n of a way over the mould where nothing hinders it.
func (b *builder) lap(a script.Act, h *hand, k, n int) row {
	line := 0.5
	if len(a.Lines) > 0 {
		line = a.Lines[k%len(a.Lines)]
	}
	half := b.d.Between(leastHalf, mostHalf)
	switch b.Technique {
	case script.Pot:
		half += slicesHalf
	case script.PotSpots:
		half += spotsHalf
	}
	r := row{part: 1, half: half * b.thick(thinRuns, thickHolds) * b.Box.W, blunt: blunt, swell: b.d.heavy(0, broadens)}
	switch {
	case b.Technique == script.PotEnd:
		r.line.mean = b.turns(h, 0.5)
		b.tongue(&r)
	case n > 1:
		r.line = b.d.heavy(b.turns(h, line), strays*b.Box.W)
	case b.Technique == script.PotSpots && b.act < b.last:
		b.strays(&r, b.aside(line))
	default:
		r.line = b.d.heavy(b.aside(line), strays*b.Box.W)
	}
	return r
}

// turns is where across the mould, mm, a ribbon lies that comes by the one side of a line and by the other in turns.
func (b *builder) turns(h *hand, line float64) float64 {
	return clamp(line+h.side*b.d.Between(asideLeast, asideMost), nearWall, 1-nearWall) * b.Box.W
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
// there aslant over the mould.
func (b *builder) tongue(r *row) {
	long := math.Pi / b.Box.L
	falls := b.Box.L * clamp(b.level/b.Box.H+b.d.Between(-0.3, 0.3), 0, 1)
	r.swell = wobble{mean: tongueSwell, amp: [2]float64{tongueRuns, 0.12}, k: [2]float64{long, 4 * long}, offset: [2]float64{-math.Pi/2 - long*falls, b.d.Between(0, 2*math.Pi)}}
	r.line = b.d.heavy(r.line.mean, strays*b.Box.W)
	r.line.amp[1], r.line.k[1], r.line.offset[1] = b.d.Between(aslantLeast, aslantMost)*b.d.Sign()*b.Box.W, long, -long*b.Box.L/2
}
