package swirl

import (
	"math"

	"pourbench/pour/script"
)

// Where and how wide what runs down one line comes to lie: by eye, no source.
const (
	firstHalf  = 0.8  // of the mould's width: half of the first pours, which run out over the floor
	lastHalf   = 0.12 // and of the last, which hold
	unevenWide = 0.26 // by what part pours are wider here and narrower there
	floorBlunt = 1.   // how steep the flanks of the first pours are, which run out over the floor into its corners; less from pour to pour
	spillOften = 0.25 // of the pours spill to one side here and to the other there
	spillPart  = 0.17 // of its width, by so much
	swayPart   = 0.13 // of its width: the jug sways so far to either side of the post from pour to pour
	flankOften = 0.4  // of the pours run down one flank
	leastFlank = 0.1  // of its width, so far aside at least
	mostFlank  = 0.34 // and at most
	lobeOften  = 0.55 // of the pours run out further in a second place
	lobeTo     = 0.7  // of the mould's height: higher, what is poured holds together
	leastLobe  = 0.15 // of what is poured runs there at least
	mostLobe   = 0.45 // and at most
	scallopMM  = 18.  // along the loaf, from one scallop of a front to the next at the least
	scallopsMM = 40.  // and at most
)

// posts is the line along the loaf down which a column is poured: it leans to either side of the middle, and the jug is held longer in some
// places, the posts, than between them.
type posts struct {
	line  wobble // mm across
	sway  wobble // of the mould's width, along the pours
	n     int    // so far
	holds *holds
}

// column pours every colour in turn down the same line, a little each: what is poured sinks in as deep as there is room and pushes what
// was poured before aside, ring round ring. At first it runs out all along the loaf; later the jug is held to the posts, and round each the rings close.
func (b *builder) column() func(script.Act) {
	p := b.posts()
	return func(a script.Act) {
		switch {
		case a.Kind == script.Level:
			b.settle(b.thick(2.4, 1.2))
		case len(a.Lines) == 0:
			b.raise(a.Share, plain(a.Jug))
			b.heap(p)
		default:
			b.post(a, p)
			b.heap(p)
		}
	}
}

// heap has what was just poured lie along the loaf as it is held.
func (b *builder) heap(p *posts) {
	at := &pile{of: p.holds, pour: p.n, done: len(p.holds.pours)}
	for i := range b.ops {
		if o := &b.ops[i]; o.act == b.act && o.slab != nil {
			o.slab.pile = at
		} else if o.act == b.act && o.spread != nil {
			o.spread.pile = at
		}
	}
	p.n++
}

// posts draws where they stand.
func (b *builder) posts() *posts {
	p := &posts{line: b.d.wobble(0, 0.08*b.Box.W), sway: wobble{amp: [2]float64{0.6 * swayPart, 0.4 * swayPart}}}
	for i, period := range [2]float64{b.d.Between(5, 8), b.d.Between(12, 22)} {
		p.sway.k[i], p.sway.offset[i] = 2*math.Pi/period, b.d.Between(0, 2*math.Pi)
	}
	p.holds = b.holds()
	return p
}

// post pours once down the posts, to one side of them, and what lies there turns a little.
func (b *builder) post(a script.Act, p *posts) {
	high := b.level / b.Box.H
	way := p.line
	aside := (1-0.6*high)*p.sway.at(float64(p.n)) + b.d.Between(-0.03, 0.03)
	if b.d.Float() < flankOften {
		aside += b.d.Sign() * b.d.Between(leastFlank, mostFlank) * (1 - min(1, 1.1*high))
	}
	way.mean = b.Box.W * (a.Lines[0] + aside)
	way.amp[0], way.offset[0] = b.Box.W*b.d.Between(0, 0.06), b.d.Between(0, 2*math.Pi)
	if b.d.Float() < spillOften {
		aside := b.d.wobble(0, (1-0.8*high)*spillPart*b.Box.W)
		way.amp[1], way.k[1], way.offset[1] = aside.amp[1], aside.k[1], aside.offset[1]
	}
	half := b.Box.W * (firstHalf + (lastHalf-firstHalf)*math.Cbrt(high)) * b.d.Between(0.65, 1.4) * b.thick(1, 0.9)
	main := row{part: 1, line: way, half: half, blunt: max(b.thick(0, 0.9), floorBlunt-2*high), swell: b.scallops(), round: true}
	rows := []row{main}
	if b.d.Float() < lobeOften*(1-high*high*high) && high < lobeTo {
		rows = append(rows, b.lobe(&rows[0]))
	}
	b.lay(a, rows)
	if p.n%postTurns == 0 {
		from := b.level
		b.level = p.holds.low[p.n+1]
		b.churn(b.d.Between(0, 0.6))
		b.level = from
	}
}

// scallops draws how a front runs: further here and less far there.
func (b *builder) scallops() wobble {
	return b.d.drift(0, unevenWide, [2]float64{scallopMM, scallopsMM}, [2]float64{70, 160})
}

// lobe lets a part of a pour run out further on one side, here more and there less.
func (b *builder) lobe(main *row) row {
	part, side := b.d.Between(leastLobe, mostLobe), b.d.Sign()
	lobe := *main
	lobe.part = part
	main.part -= part
	lobe.half *= b.d.Between(0.35, 0.7)
	lobe.line.mean += side * main.half * b.d.Between(0.4, 0.9)
	lobe.swell, lobe.flush = b.scallops(), b.d.wobble(0, 0.8)
	return lobe
}

// postTurns is how many pours there are to one place that turns under them.
const postTurns = 8
