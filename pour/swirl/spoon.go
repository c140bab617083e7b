package swirl

import "pourbench/pour/script"

// Spoonfuls as they lie in the mould, about three times as wide as thick: what gives a pleasing picture, no source.
const (
	spoonMM     = 17    // half the width of a usual spoonful: heaped it is 10 to 18 mm thick
	spoonPart   = 0.3   // and no more than this of the mould's width
	spoonLong   = 2.6   // a spoonful is so much longer than half wide
	mostAbreast = 8     // spoonfuls of one act side by side
	filmMM      = 1.6   // a spoonful has no edges thinner than this
	spoonEnds   = 1.15  // in so much less than the way from one to the next one ends and the next begins: nearly all of it, as a spoonful is round from above
	smallPart   = 0.3   // of the largest: how small a spoonful is among those of one act
	mostAskew   = 0.45  // mm to the mm along the loaf: how far askew the spoon is drawn off
	stirredTo   = 0.955 // of the height: the back of the spoon that levels the top takes along what lies above this, so little that every bar keeps its colours
	smearApart  = 30.   // mm, from one draw of the spoon to the next
	smearReach  = 13.   // mm: to the side its pull halves this far on
	smearThin   = 6     // mm, how far it pulls at most
	smearThick  = 4
	pileRim     = 3    // of the mould's height: so high spoonfuls may be piled before they are tapped level
	tapsMoving  = 3    // of all taps about so many move what lies there much: more would stir it
	scrapedPart = 0.9  // of the spoonfuls leave the spoon with a drag
	skinnedPart = 0.12 // and of so many a skin is drawn
	ownMM       = 9    // so much higher may a place be where another colour lies than where its own does
	skinnedMM   = 1    // what lies so thick covers what it lies on
	tapRounds   = 26   // passes by which the tap on the table rounds the edges of what lies there
	spoonAside  = 2.8  // a spoonful goes about so many half widths to the side of the one before
)

// spoon heaps every act's spoonfuls on what lies there and taps the mould after each round.
func (b *builder) spoon() func(script.Act) {
	h, drags := b.heaped()
	return func(a script.Act) {
		switch a.Kind {
		case script.Spoon:
			b.grow(h)
			if d := drags[b.act]; len(d) > 0 {
				b.add(op{scrape: &scrape{width: b.Box.W, high: b.Box.H, drags: d}})
			}
		case script.Level:
			if a.Round > 0 {
				if each := (a.Rounds + tapsMoving - 1) / tapsMoving; a.Round%each != 0 {
					return
				}
				z := b.Box.H * float64(a.Round) / float64(a.Rounds)
				b.sag(z)
				b.roll(z)
				return
			}
			b.smear()
			b.curl(curling{half: 24, angle: 0.9, tries: 0.6, foot: stirredTo})
			b.sag(b.Box.H * b.d.Between(0.2, 0.8))
			b.settle(b.thick(2.4, 1.4))
		}
	}
}

// smear draws the back of the spoon across the loaf here and there to level the top: what lies there is drawn out to one side.
func (b *builder) smear() {
	var tines []tine
	for x := b.d.Between(0.2, 1) * smearApart; x < b.Box.L; x += b.d.Between(0.5, 1.5) * smearApart {
		tines = append(tines, tine{at: x, pull: b.d.Sign() * b.d.Between(0.4, 1) * b.thick(smearThin, smearThick), deep: stirredTo})
	}
	if len(tines) > 0 {
		b.add(op{comb: newComb(tines, smearReach, b.Box.L, b.Box.W, b.level)})
	}
}

// sag lets spoonfuls about a height sink into those below them as the mould is tapped: each rounds off what it lies on.
func (b *builder) sag(z float64) {
	half := b.spoonful()
	z = clamp(z+b.d.Between(-0.4, 0.4)*half, 0.1*b.Box.H, 0.92*b.Box.H)
	reach := min(half, z, b.Box.H-z)
	deep := min(b.thick(0.42, 0.16)*half, 0.7*reach)
	b.add(op{border: &border{width: b.Box.W, at: z, down: min(1.2*half, z), up: min(1.2*half, b.Box.H-z), ground: newGround(&b.d, b.Box, uneven{
		swell: 0.2 * deep, lump: deep, half: half * b.d.Between(0.7, 1), cover: 2,
	})}})
}

// roll turns over what came off the spoon with some swing, somewhere across the mould and about a height.
func (b *builder) roll(z float64) {
	half := vec2{b.spoonful() * b.d.Between(0.5, 0.8), b.spoonful() * b.d.Between(0.35, 0.6)}
	half.z = min(half.z, 0.4*b.Box.H)
	at := vec2{b.d.Between(half.y, b.Box.W-half.y), clamp(z, half.z, b.Box.H-half.z)}
	b.add(op{whirl: &whirl{
		centre: at, half: half, room: vec2{min(at.y, b.Box.W-at.y) - half.y, min(at.z, b.Box.H-at.z) - half.z},
		angle: b.d.Sign() * b.thick(1.25, 0.45), gain: b.d.wobble(0, 1), shift: b.d.wobble(0, 0.3*b.Box.W), sink: b.d.wobble(0, half.z),
	}})
}

// spoonful is half the width of a usual spoonful, mm.
func (b *builder) spoonful() float64 { return min(spoonMM, spoonPart*b.Box.W) }

// heaped is the spoonfuls of every act, one act on the other and tapped level, and how each act's were scraped off the spoon.
func (b *builder) heaped() (*heap, [][]scraped) {
	h := newHeap(b.Box)
	s := spooning{
		heap: h, d: &b.d, usual: b.spoonful(), plump: b.thick(0.5, 0.66), rim: pileRim * b.Box.H, z: make([]float64, h.nx*h.ny),
		skin: make([]int8, h.nx*h.ny), drag: b.thick(0.95, 0.65),
	}
	drags := make([][]scraped, len(b.acts))
	var piled [][]float64
	for i, a := range b.acts {
		if a.Kind != script.Spoon {
			continue
		}
		drags[i] = s.lay(a.Share*b.Box.W*b.Box.H, a.Jug)
		piled = append(piled, append([]float64(nil), s.tapped()...))
		h.portion, h.act = append(h.portion, a.Jug), append(h.act, i)
	}
	h.level(piled)
	return h, drags
}
