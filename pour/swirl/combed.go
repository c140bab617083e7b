package swirl

import (
	"cmp"
	"math"
	"slices"

	"pourbench/pour/script"
)

// combed pours stripes side by side and draws a comb across and along them in turn.
func (b *builder) combed() func(script.Act) {
	s := b.stripes()
	return func(a script.Act) {
		switch a.Kind {
		case script.Pour:
			b.grow(s)
		case script.Comb:
			if a.Round <= 1 {
				b.stray()
				b.settle(b.thick(1.5, 0.8)) // the stripes have run together before the comb comes
			}
			b.rake(a.Along)
			if a.Round == a.Rounds {
				b.curl(broadly())
				b.curl(finely())
			}
		case script.Level:
			b.add(op{wave: newSlump(&b.d, b.Box, b.level, min(b.thick(slumpThin, slumpThick), mostSlump*b.level))}) // tapped, each bulges by itself
		}
	}
}

// stripes is every pour of the script side by side, each in as many as the script says.
func (b *builder) stripes() *stripes {
	s := &stripes{box: b.Box, slant: b.d.Between(slantLeast, slantMost) * b.d.Sign(), bow: b.d.wobble(0.4, 1)}
	type stripe struct {
		at, share float64
		act       int
	}
	var list []stripe
	sum := 0.0
	for i, a := range b.acts {
		if a.Kind != script.Pour {
			continue
		}
		if len(a.Lines) == 0 { // beside the last
			list = append(list, stripe{sum + a.Share/2, a.Share, i})
		}
		for _, at := range a.Lines {
			list = append(list, stripe{at, a.Share / float64(len(a.Lines)), i})
		}
		sum += a.Share
	}
	slices.SortStableFunc(list, func(a, b stripe) int { return cmp.Compare(a.at, b.at) })
	sum = 0
	for _, l := range list {
		sum += l.share
		s.until, s.portion, s.act = append(s.until, sum), append(s.portion, b.acts[l.act].Jug), append(s.act, l.act)
	}
	return s
}

// Combs as they are led by hand: by eye, no source.
const (
	slantLeast  = 0.05 // of the width: how far stripes have run out under the next at the bottom
	slantMost   = 0.14
	pullAcross  = 0.21 // of the width: how far the surface goes along with a tine from wall to wall: further would draw lines out too fine to see
	pullAlong   = 20.  // mm, and with one along the loaf
	tinesAcross = 0.94 // of the gap of the turns: about how far apart the tines stand that go from wall to wall, so that they fall in step with no bar
	leastPulled = 0.75 // of that way: how far one of them goes at least
	mostPulled  = 1.25
	tineJitter  = 0.26  // of the gap: how far off its place a tine goes
	tineReach   = 0.24  // of the gap: its pull halves this far to the side
	reachAlong  = 0.285 // and that of those that go along the loaf: the lines they draw out would else be too fine to see
	tineBrisk   = 0.5   // by what part faster than another's its hold grows at most
	tineTaper   = 0.75  // by what part its reach is less at its end
	tineAskew   = 0.25  // of the gap: how far from their places all of them are at the floor, otherwise here than there, as the comb is held askew
	tineLean    = 0.2   // and each by itself, as the batter pushes it aside
	tineBend    = 0.1   // and how far it bends half way down
	tineStiff   = 0.4   // what part of all that is left where they go along the loaf, in step with the stripes
	leastTine   = 0.75  // of the level: how deep the hold of tines along the loaf reaches, which no hand keeps even: of most it reaches the floor, and less the deeper
	mostTine    = 1.5
	leastAcross = 1.0 // of the level: the same of those that go across the loaf
	mostAcross  = 1.4
	strayLeast  = 34. // mm of loaf, from where the hand that pours the stripes goes to one side to where it goes to the other
	strayMost   = 62.
	strayReach  = 18. // mm: it halves this far on
	strayDeep   = -3. // of the level: far below the floor, so that nothing stays behind
	straySteps  = 2   // Runge-Kutta steps where they turn round at the walls: so short a way needs no more
	strayMM     = 8.  // how far it goes
	slumpThin   = 6   // mm, how far stripes of batter slump against each other as they are poured
	slumpThick  = 5
	mostSlump   = 0.15 // of the level
	wakeLeast   = 0.5  // of the level: how deep a spike goes
	wakeMost    = 0.92
	wakeWave    = 0.3 // of a spike's depth: how far it gets deeper and less deep along the loaf
	wakeRadius  = 5.2 // mm, how wide a tine drags the batter behind it down
	hookMM      = 2   // how wide what it drags down curls
	wakeEase    = 0.6 // of a spike's depth: over so much of its way a tine's hold on what it drags down comes, and goes
	wakeSkin    = 0.2 // of the level: so far under the surface, which closes again, the batter is drawn down less
)

// rake draws one comb: every other tine the other way, as there and back.
func (b *builder) rake(alongX bool) {
	wide, long, pull := b.Box.L, b.Box.W, pullAcross*b.Box.W*b.thick(1.1, 0.8)
	gap, reach, free := b.Box.W/b.Turns, tineReach, 1.0
	if alongX {
		wide, long, pull = b.Box.W, b.Box.L, pullAlong
		gap, reach, free = max(gap, wide/mostTines), reachAlong, tineStiff
	} else { // there and back, over and over, from one end of the loaf to the other
		gap = max(tinesAcross*gap, wide/mostTines)
		gap = wide / (2 * max(1, math.Round(wide/(2*gap))))
	}
	var tines []tine
	sign := b.d.Sign()
	askew := b.d.wobble(0, tineAskew)
	for at := gap * b.d.Between(0.4, 0.6); at < wide-0.2*gap; at += gap {
		tines = append(tines, tine{
			at: at + b.d.Between(-tineJitter, tineJitter)*gap, pull: sign * pull * b.d.Between(leastPulled, mostPulled),
			deep: 1 - b.tineDeep(alongX), brisk: free * b.d.Between(0, tineBrisk), taper: free * tineTaper,
			lean: free * gap * (askew.at(at) + b.d.Between(-tineLean, tineLean)),
			bend: free * gap * b.d.Between(-tineBend, tineBend),
		})
		sign = -sign
	}
	c := newComb(tines, clamp(reach*gap, 2, 10), wide, long, b.level)
	c.alongX = alongX
	if alongX { // the spikes are drawn along with the rest: else what curls at their ends would be torn into jags
		for _, t := range tines {
			b.wake(t)
		}
	}
	b.add(op{comb: c})
}

// stray is how the hand strayed that poured the stripes: all of them together, to one side here and to the other there, from the surface to the floor.
func (b *builder) stray() {
	var tines []tine
	sign := b.d.Sign()
	apart := b.d.Between(strayLeast, strayMost)
	for at := apart * b.d.Float(); at < b.Box.L; at += b.d.Between(strayLeast, strayMost) {
		tines = append(tines, tine{at: at, pull: sign * strayMM * b.d.Between(0.6, 1.3), deep: strayDeep})
		sign = -sign
	}
	if len(tines) > 0 {
		c := newComb(tines, strayReach, b.Box.L, b.Box.W, b.level)
		c.steps = straySteps
		b.add(op{comb: c})
	}
}

// tineDeep is how deep a tine goes, of the level.
// Across the loaf it takes what lies on the floor along too, so that no bar shows where the comb ended.
func (b *builder) tineDeep(alongX bool) float64 {
	if !alongX {
		return b.d.Between(leastAcross, mostAcross) * b.thick(1, 0.9)
	}
	return clamp(b.d.Between(leastTine, mostTine)*b.thick(1.1, 0.85), leastTine, mostTine)
}

// mostTines is how many tines a comb has at most.
const mostTines = 120

// wake is what a tine that goes along the loaf does to the cross-section behind it: it draws the batter down into a spike, which bends aside
// at its end.
func (b *builder) wake(t tine) {
	const knots = 16
	foot := b.level * (1 - b.d.Between(wakeLeast, wakeMost))
	radius := min(wakeRadius*b.d.Between(0.6, 1.7), b.level/5)
	hook, side, bend := min(hookMM*b.d.Between(0.6, 1.8), foot/3), b.d.Sign(), b.d.Between(0.45, 1.2)*math.Pi
	path := make([]vec2, 0, 2*knots+1)
	for i := range knots {
		f := float64(i) / knots
		path = append(path, vec2{t.at, b.level + f*(foot-b.level)})
	}
	for i := range knots + 1 {
		sin, cos := math.Sincos(bend * float64(i) / knots)
		path = append(path, vec2{t.at + side*hook*(1-cos), foot - hook*sin})
	}
	b.draw(&stroke{
		radius: radius, grip: b.thick(0.3, 0.4), skin: wakeSkin * b.level, pivot: vec2{t.at, b.level},
		ease: wakeEase * (b.level - foot), shift: b.d.wobble(0, 2), sway: wobble{mean: 1}, depth: b.d.wobble(1, wakeWave), lean: b.d.wobble(0, 0.1),
	}, path)
}
