package swirl

import (
	"math"

	"pourbench/pour/script"
)

// Where and how wide what runs down one line comes to lie: by eye, no source.
const (
	postLeastMM = 64.   // between two places where the jug is held along the loaf
	postMostMM  = 96.   //
	firstHalf   = 0.8   // of the mould's width: half of the first pours, which run out over the floor
	lastHalf    = 0.13  // and of the last, which hold
	unevenPosts = 0.62  // of the posts' own wave number: a second wave, by which no post is as far from the next as another
	heldFirst   = 0.2   // by what part pours are wider at a post, and narrower between posts: the first
	heldLast    = 0.66  // and the last
	leastHeld   = -0.31 // but no more than so much narrower: what is poured in a thread there would hang far deeper than beside it
	mostHeld    = 1.2   // and wider
	floorBlunt  = 1.    // how steep the flanks of the first pours are, which run out over the floor into its corners; less from pour to pour
	secondHeld  = 0.3   // of that: the second wave
	swayPart    = 0.13  // of its width: the jug sways so far to either side of the post from pour to pour
	pinchRoll   = 0.08  // of its depth: how far a pinch draws the middle down where rings close
)

// posts is the line along the loaf down which a column is poured: it leans to either side of the middle, and the jug is held longer in some
// places, the posts, than between them.
type posts struct {
	line wobble  // mm across
	held wobble  // by what part pours are wider here
	sway wobble  // of the mould's width, along the pours
	n    int     // so far
	at   float64 // mm across, the last
}

// column pours every colour in turn down the same line, a little each: what is poured sinks in as deep as there is room and pushes what
// was poured before aside, ring round ring. Where the jug is held longest the rings are wide; between such places the last are drawn in
// and down, so that from above they close.
func (b *builder) column() func(script.Act) {
	p := b.posts()
	return func(a script.Act) {
		switch {
		case a.Kind == script.Level:
			b.pinch(p)
			b.settle(b.thick(2.4, 1.2))
		case len(a.Lines) == 0:
			b.raise(a.Share, plain(a.Jug))
		default:
			b.post(a, p)
		}
	}
}

// posts draws where they stand.
func (b *builder) posts() *posts {
	apart := 2 * math.Pi / b.d.Between(postLeastMM, postMostMM)
	p := &posts{line: b.d.wobble(0, 0.06*b.Box.W), held: b.d.wobble(0, 1), sway: wobble{amp: [2]float64{0.6 * swayPart, 0.4 * swayPart}}}
	p.held.k = [2]float64{apart, unevenPosts * apart}
	for i, period := range [2]float64{b.d.Between(5, 8), b.d.Between(12, 22)} {
		p.sway.k[i], p.sway.offset[i] = 2*math.Pi/period, b.d.Between(0, 2*math.Pi)
	}
	return p
}

// post pours once down the posts, to one side of them, and what lies there turns a little.
func (b *builder) post(a script.Act, p *posts) {
	high := b.level / b.Box.H
	way, swell := p.line, p.held
	p.n++
	p.at = b.Box.W * (a.Lines[0] + p.sway.at(float64(p.n)) + b.d.Between(-0.03, 0.03))
	way.mean = p.at
	swell.mean = b.d.Between(-0.1, 0.15)
	swell.amp[0] = heldFirst + (heldLast-heldFirst)*high*high
	swell.amp[1] = secondHeld * swell.amp[0]
	swell = swell.between(leastHeld, mostHeld)
	half := b.Box.W * (firstHalf + (lastHalf-firstHalf)*math.Cbrt(high)) * b.d.Between(0.75, 1.3) * b.thick(1, 0.9)
	b.lay(a, []row{{part: 1, line: way, half: half, blunt: max(b.thick(0, 0.9), floorBlunt-2*high), swell: swell, round: true}})
	if p.n%postTurns == 0 {
		b.churn(b.d.Between(0, 0.6))
	}
}

// postTurns is how many pours there are to one place that turns under them.
const postTurns = 8

// pinch draws what lies between the posts in at the surface and down.
func (b *builder) pinch(p *posts) {
	line, roll := p.line, p.held
	line.mean = p.at
	roll.mean, roll.amp = 0, [2]float64{-pinchRoll * b.thick(1.1, 0.7), -0.5 * pinchRoll}
	b.add(op{plume: &plume{
		level: b.level, width: b.Box.W, line: line, lean: b.d.wobble(b.d.Between(-0.25, 0.25), 0.15),
		reach: b.d.wobble(0.4*b.Box.W, 3), depth: b.d.wobble(b.d.Between(0.35, 0.55)*b.level, 4), roll: roll,
	}})
}
