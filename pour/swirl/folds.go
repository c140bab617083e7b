package swirl

import (
	"cmp"
	"math"
	"slices"

	"pourbench/pour/script"
)

// What falls from a pot also sets what lies under the surface going round: by eye, no source.
const (
	endFolds = 1.9
	foldLeastMM    = 10   // of a level: a shallower one does not go round
	foldSmall      = 0.24 // of the mould's width: half of the smallest place that goes round
	foldLarge      = 0.5  // and of the largest
	foldShallow    = 0.22 // of the mould's height: half of the shallowest
	foldDeep       = 0.36 // and of the deepest
	foldLeast      = 0.8  // radians, by how much it goes round at least
	foldMost       = 1.35 // and at most
	foldOften      = 0.6  // of the ways over the mould set thin batter going round
	foldOftenThick = 0.35 // and so many thick
	tongueGain     = 0.3  // by what part of that more at one end of the loaf than half way where it draws tongues, and less at the other
	foldFar        = 3    // times as far a fold drifts and swells along the loaf
	foldGoes       = 1.5  // so much less of it stays all along the loaf
	foldAgain      = 0.3  // of them set a smaller place of thin batter going round as well
)

// How the sheets of a ribbon lie: by eye, no source.
const (
	bowlFrom     = 0.1  // of the mould's height, from which on ribbons lie as bowls, ever more of them
	bowlAll      = 0.7  // and all
	bowlLeast    = 0.4  // of the mould's width: half of a bowl's at least
	bowlMost     = 0.62 // and at most
	bowlWall     = 0.2  // how far from the wall its middle is at least
	bowlSwell    = 0.45 // by what part more or less of its width a bowl has here than there
	leastEye     = 0.15 // of a ribbon's width: so far from its rims what left last lies at least
	leastBowl    = 1e-6 // of its depth: thinner bowls are none
	topLaps      = 2    // in which the lip lies there and back on the surface; 1 where what it holds is broad
	topCurl      = 0.6  // so much less of it curls: more would lie there in eyes
	leastLean    = 0.25 // of a lap: how far what stands side by side leans over at least
	mostLean     = 0.6  // and at most
	flatLean     = 2    // so many times as far where tongues run out over the top: steeper, they would end a face in a row of scraps
	flatRoll     = 0.5  // and so much less they go to and fro there
	spotsRoll    = 0.15 // the same where spots lie in them: they would be a row of scraps
	spotsBroad   = 0.55 // of the mould at least takes the broader of the two laps in which spots lie on top
	spotsBroader = 0.7  // and at most
	spotsWall    = 0.15 // of all at least is the pot's own batter where what lies along its wall ends every chord
	reachKnots   = 480  // around all laps, at which it is reckoned how far along the lip they are
	leastOnce    = 0.4  // of the three times it goes there and back: how far once around all laps the lip goes there and back besides at least
	mostOnce     = 0.8  // and at most
	leastTwice   = 0.5  // and twice at least
	flatCurl     = 0.4  // and so much less they curl
	mostRoll     = 0.15 // of a lap: how far it goes to and fro on its way up at most
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

// bowl draws how the sheets of the ribbon poured last lie in each other, so many mm wide and deep.
func (b *builder) bowl(wide, deep float64) *bowl {
	eye := b.d.heavy(b.d.Between(0.35, 0.65), 0.3)
	l := &bowl{eye: clamp(eye.at(0.5*b.Box.L), leastEye, 1-leastEye), curls: b.curls(wide, deep)}
	l.curls.angle = l.curls.angle.times(topCurl)
	l.curls.angle.mean *= topCurl
	return l
}

// laps draws how the sheets of the ribbon poured last lie, so many mm wide and deep.
func (b *builder) laps(wide, deep float64) *laps {
	l := &laps{
		many: topLaps, lean: b.d.Between(leastLean, mostLean) * b.d.Sign(), roll: b.d.Between(0, mostRoll), at: b.d.Between(0, 2*math.Pi),
		along: b.d.heavy(0, lapDrift), drift: b.d.Sign() / b.d.Between(leastDriftMM, mostDriftMM), curls: b.curls(wide, deep),
	}
	turn := topCurl
	switch b.Technique {
	case script.PotSpots:
		l.many, l.roll = 1, spotsRoll*l.roll
		l.turns, l.on = []float64{b.d.Between(spotsBroad, spotsBroader), 1}, b.Shares[0] >= spotsWall
		turn *= flatCurl
	case script.PotStripes:
		l.reach = b.reach()
		l.lean, l.roll, turn = flatLean*l.lean, flatRoll*l.roll, flatCurl*turn
	}
	l.curls.angle = l.curls.angle.times(turn)
	l.curls.angle.mean *= turn
	return l
}

// reach draws how far along the lip a place lies around all laps. It goes there and back in three waves, of which none reaches as far as another, so that
// no tongue is the next one's image; as it is told in ranks, each part of the lip is shown alike.
func (b *builder) reach() []float64 {
	high := [3]float64{b.d.Between(leastOnce, mostOnce), b.d.Between(leastTwice, 1), 1}
	at := [3]float64{b.d.Between(0, 2*math.Pi), b.d.Between(0, 2*math.Pi), b.d.Between(0, 2*math.Pi)}
	far, places := make([]float64, reachKnots), make([]int, reachKnots)
	for i := range far {
		places[i] = i
		for k := range high {
			far[i] += high[k] * math.Sin(float64(k+1)*2*math.Pi*float64(i)/reachKnots+at[k])
		}
	}
	slices.SortFunc(places, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
	table := make([]float64, reachKnots+1)
	for rank, i := range places {
		table[i] = (float64(rank) + 0.5) / reachKnots
	}
	table[reachKnots] = table[0]
	return table
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
// roundly, as there is no rim at which it ends. It comes and goes slowly along the loaf, so that a cut along it flows.
func (b *builder) fold(size, often float64) {
	if skip := b.d.Float() >= often; skip || b.level < foldLeastMM {
		return
	}
	wide := b.Box.W * (foldSmall + (foldLarge-foldSmall)*size)
	high := min(0.48*b.level, b.Box.H*b.d.Between(foldShallow, foldDeep))
	far, gain := 1., 1.
	if b.Technique == script.Pot || b.Technique == script.PotStripes {
		far, gain = foldFar, foldGoes
	}
	g := &gyre{
		at: vec2{b.d.Between(0.2, 0.8) * b.Box.W, b.level - high*b.d.Between(0.9, 1.4)}, half: vec2{wide, high}, width: b.Box.W, height: b.level,
		angle: b.d.Sign() * b.d.Between(foldLeast, foldMost) * b.fall(), gain: b.d.heavy(b.d.Between(0.6, 0.9)/gain, 0.18*far*gain),
		shift: b.d.heavy(0, 0.06*far*b.Box.W), sink: b.d.heavy(0, 0.03*far*b.level), swell: b.d.heavy(1, 0.06*far),
	}
	if b.Technique == script.PotSpots || b.Technique == script.PotEnd {
		g.gain = b.d.askew(g.gain.mean, tongueGain, b.Box.L) // ever more: where it had turned most a cut along it would show an eye
	}
	if b.Technique == script.PotEnd {
		g.angle *= endFolds
	}
	b.add(op{gyre: g})
}

// heavy draws a drift of up to amp either side of mean, with waves of 120 to 210 mm and 260 to 500 mm, as of a heavy pot that is led along the loaf.
func (d *dice) heavy(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{120, 210}, [2]float64{260, 500})
}
