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
	foldLeast      = 1.3  // radians, by how much it goes round at least
	foldMost       = 2.2  // and at most
	foldOften      = 0.6  // of the ways over the mould set thin batter going round
	foldOftenThick = 0.35 // and so many thick
	tongueGain     = 0.3  // by what part of that more at one end of the loaf than half way where it draws tongues, and less at the other
	foldAgain      = 0.3  // of them set a smaller place of thin batter going round as well
)

// How the sheets of a ribbon lie: by eye, no source.
const (
	topCurl      = 0.24 // so much less what lies on top curls
	leastLean    = 0.25 // of a lap: how far what stands side by side leans over at least
	mostLean     = 0.6  // and at most
	spotsBroad   = 0.55 // of the mould at least takes the broader of the two laps in which spots lie on top
	spotsBroader = 0.7  // and at most
	spotsWall    = 0.15 // of all at least is the pot's own batter where what lies along its wall ends every chord
	mostRoll     = 0.02 // of a lap, as spots would be a row of scraps: how far it goes to and fro on its way up at most
	lapDrift     = 0.12 // of a lap, by how much it goes aside along the loaf
	leastDriftMM = 300. // of the loaf along which the hand goes a lap aside at least
	mostDriftMM  = 700. // and at most
	leastCurlMM  = 18.  // how wide a curl is at least
	mostCurlMM   = 36.  // and at most
	leastCurl    = 0.25 // of its width to its depth, radians: how far a curl has turned at its eye at least
	steepCurl    = 0.6  // and at most
	mostCurl     = 1.3  // radians, and at most however flat
	thickCurl    = 0.5  // so much less curls of thick batter turn
	spotsCurl    = 0.5  // and where spots lie in it: they are drawn out to streaks
	curlDrift    = 0.3  // of a curl, by how much they drift along the loaf
)

// laps draws how the sheets of the ribbon poured last lie, so many mm wide and deep.
func (b *builder) laps(wide, deep float64) *laps {
	l := &laps{
		turns: []float64{b.d.Between(spotsBroad, spotsBroader), 1}, on: b.Shares[0] >= spotsWall,
		lean: b.d.Between(leastLean, mostLean) * b.d.Sign(), roll: b.d.Between(0, mostRoll), at: b.d.Between(0, 2*math.Pi),
		along: b.d.heavy(0, lapDrift), drift: b.d.Sign() / b.d.Between(leastDriftMM, mostDriftMM), curls: b.curls(wide, deep),
	}
	if l.on {
		l.turns = l.turns[1:]
	}
	l.curls.calm()
	return l
}

// calm lets what lies on top curl less: it would lie there in eyes.
func (c *curls) calm() {
	c.angle = c.angle.times(topCurl)
	c.angle.mean *= topCurl
}

// curls draws how the sheets of a ribbon curl where it is so many mm wide and deep.
func (b *builder) curls(wide, deep float64) *curls {
	each, turn := b.d.Between(leastCurlMM, mostCurlMM), b.thick(1, thickCurl)
	if b.Technique == script.PotSpots {
		turn *= spotsCurl
	}
	return &curls{
		many: wide / each, at: b.d.heavy(b.d.Between(0, 2), curlDrift),
		angle: b.d.heavy(turn*min(mostCurl, b.d.Between(leastCurl, steepCurl)*each/deep), 0.2),
	}
}

// fold lets, so often, a place of a size from 0 to 1 under the surface go round, the more the higher the stream falls from: ribbons that lie there fold over,
// roundly, as there is no rim at which it ends. From one end of the loaf to the other it turns ever more: where it had turned most a cut along the loaf would
// show an eye.
func (b *builder) fold(size, often float64) {
	if skip := b.d.Float() >= often; skip || b.level < foldLeastMM {
		return
	}
	wide := b.Box.W * (foldSmall + (foldLarge-foldSmall)*size)
	high := min(0.48*b.level, b.Box.H*b.d.Between(foldShallow, foldDeep))
	g := &gyre{
		at: vec2{b.d.Between(0.2, 0.8) * b.Box.W, b.level - high*b.d.Between(0.9, 1.4)}, half: vec2{wide, high}, width: b.Box.W, height: b.level,
		angle: b.d.Sign() * b.d.Between(foldLeast, foldMost) * b.fall(), gain: b.d.askew(b.d.Between(0.6, 0.9), tongueGain, b.Box.L),
		shift: b.d.heavy(0, 0.06*b.Box.W), sink: b.d.heavy(0, 0.03*b.level), swell: b.d.heavy(1, 0.06),
	}
	b.add(op{gyre: g})
}

// heavy draws a drift of up to amp either side of mean, with waves of 120 to 210 mm and 260 to 500 mm, as of a heavy pot that is led along the loaf.
func (d *dice) heavy(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{120, 210}, [2]float64{260, 500})
}
