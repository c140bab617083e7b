package swirl

import (
	"math"

	"pourbench/pour/script"
)

// What falls from a pot also sets what lies under the surface going round: by eye, no source.
const (
	foldLeastMM    = 10   // of a level: a shallower one does not go round
	foldSmall      = 0.24 // of the mould's width: half of the smallest place that goes round
	foldLarge      = 0.5  // and of the largest
	foldShallow    = 0.22 // of the mould's height: half of the shallowest
	foldDeep       = 0.36 // and of the deepest
	foldLeast      = 0.8  // radians, by how much it goes round at least
	foldMost       = 1.5  // and at most
	foldOften      = 0.6  // of the ways over the mould set thin batter going round
	foldOftenThick = 0.35 // and so many thick
	foldAgain      = 0.3  // of them set a smaller place of thin batter going round as well
)

// Crests of the sheets of a ribbon: by eye, no source.
const (
	leastWaveMM  = 30.  // from crest to crest at least
	mostWaveMM   = 60.  // and at most
	leastLastMM  = 26.  // the same of the ribbon poured last
	mostLastMM   = 40.  //
	leastSteep   = 0.15 // of a wave: how far the sheets go up and down at least, so that they fold roundly
	mostSteep    = 0.26 // and at most, as the last does
	lowHigh      = 0.1  // of the lip: how far they go up and down at the bottom at most, where the batter runs out
	topHigh      = 0.4  // and at the surface
	lastHigh     = 0.5  // and those of the last, so that most of the lip is seen from above
	spotsWide    = 1.4  // how much longer the last waves are where the pot holds spots
	spotsSteep   = 0.6  // and how much less steep: many colours folded tightly turn grey
	leastTurnMM  = 250. // of the loaf along which another part of the lip comes to lie uppermost, as the hand turns over, at least
	mostTurnMM   = 500. // and at most
	leastAslant  = 0.1  // of the lip: how much higher sheets lie at one edge at least
	mostAslant   = 0.4  // and at most
	leastCrooked = 0.5  // radians, how uneven laps are at least
	mostCrooked  = 1.1  // and at most
	lapDrift     = 1.3  // radians, by how much a lap drifts along the loaf
)

// crests draws how the sheets of a ribbon go up and down where it is so many mm wide and deep.
func (b *builder) crests(wide, deep float64, last bool) *crests {
	high := b.level / b.Box.H
	wave, steep, most := b.d.Between(leastWaveMM, mostWaveMM), b.d.Between(leastSteep, mostSteep), lowHigh+(topHigh-lowHigh)*high*high
	if last {
		wave, steep, most = b.d.Between(leastLastMM, mostLastMM), mostSteep, lastHigh
	}
	if b.Technique == script.PotSpots {
		steep, most = spotsSteep*steep, spotsSteep*most
		if last {
			wave *= spotsWide
		}
	}
	many := wide / wave
	return &crests{
		high: min(most, steep*wave/deep), many: many, bend: b.d.Between(leastCrooked, mostCrooked), at: b.d.Between(0, 2*math.Pi),
		aslant: b.d.Between(leastAslant, mostAslant) * b.d.Sign(), turned: b.d.Sign() / b.d.Between(leastTurnMM, mostTurnMM),
		along: b.d.wobble(b.d.Between(0, 2*math.Pi), lapDrift*max(1, many)),
	}
}

// fold lets, so often, a place of a size from 0 to 1 under the surface go round, the more the higher the stream falls from: ribbons that lie there fold over,
// roundly, as there is no rim at which it ends. It comes and goes slowly along the loaf, so that a cut along it flows.
func (b *builder) fold(size, often float64) {
	if skip := b.d.Float() >= often; skip || b.level < foldLeastMM {
		return
	}
	wide := b.Box.W * (foldSmall + (foldLarge-foldSmall)*size)
	high := min(0.48*b.level, b.Box.H*b.d.Between(foldShallow, foldDeep))
	b.add(op{gyre: &gyre{
		at: vec2{b.d.Between(0.2, 0.8) * b.Box.W, b.level - high*b.d.Between(0.9, 1.4)}, half: vec2{wide, high}, width: b.Box.W, height: b.level,
		angle: b.d.Sign() * b.d.Between(foldLeast, foldMost) * b.fall(), gain: b.d.heavy(b.d.Between(0.6, 0.9), 0.25),
		shift: b.d.heavy(0, 0.06*b.Box.W), sink: b.d.heavy(0, 0.03*b.level), swell: b.d.heavy(1, 0.06),
	}})
}

// heavy draws a drift of up to amp either side of mean, with waves of 90 to 160 mm and 200 to 400 mm, as of a heavy pot that is led along the loaf.
func (d *dice) heavy(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{90, 160}, [2]float64{200, 400})
}
