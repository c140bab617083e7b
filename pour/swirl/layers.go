package swirl

import (
	"math"

	"pourbench/pour/script"
)

// layers pours every jug on the one before, which gives way under it.
func (b *builder) layers() func(script.Act) {
	from := 0.0
	return func(a script.Act) {
		if a.Kind == script.Level {
			b.settle(min(b.thick(3, 1.8)*b.d.Between(0.5, 1.5), mostSettled*(b.level-from)))
			return
		}
		from = b.level
		b.raise(a.Share, &layer{plain(a.Jug), float64(b.act)})
		b.dent(from, b.level)
	}
}

// layer is batter poured over the whole width, a little at a time over a spatula: it runs together and lies calm, and what is left of how it was
// poured are broad clouds.
type layer struct {
	*stack
	pour float64
}

// Clouds of a layer, by eye, no source.
const (
	cloudHigh = 0.4 // of the veins of other pours: how many there are over each other
	cloudLong = 0.6 // the same across the mould
)

// grain is along the layer, which lies in long low swells the way the jug went. Across the mould it goes on and on, so that from above clouds are
// strokes and never rings.
func (l *layer) grain(x, y, z float64) (along, across float64) {
	swell := 2*math.Sin(x/61+y/37+2.3*l.pour) + 1.5*math.Sin(x/97-y/29+1.1*l.pour)
	sway := 14*math.Sin(x/83+y/60+1.9*l.pour) + 5*math.Sin(x/37-y/19+0.7*l.pour)
	return cloudLong * (y + sway + veinDrift*x), cloudHigh * (z + swell + x/18)
}

// trace is how batter gives way to batter poured on it: thin batter is pushed down in soft scallops by what falls and runs level again
// slowly; thick batter keeps lumps and the marks of the spoon. By eye, no source.
func (b *builder) trace() uneven {
	return uneven{
		swell: b.thick(1.5, 0.8), furrow: b.thick(3, 0.8),
		dent: b.thick(3, 5), lump: b.thick(0.2, 3.5),
		half: b.thick(12, 9) * clamp(b.Box.W/75, 0.5, 1.6), cover: b.thick(1.8, 2.2),
	}
}

// marks is what one pour leaves: no two are alike, for the hand was higher or lower, the jug fuller or emptier, the batter a little thicker than before.
func (b *builder) marks() uneven {
	u := b.trace()
	u.swell *= b.d.Between(0.3, 1.8)
	u.bow = b.thick(6, 4) * b.d.Between(0, 1)
	u.furrow *= b.d.Between(0, 1.8)
	u.dent *= b.d.Between(0.3, 1.2)
	u.lump *= b.d.Between(0.2, 1)
	u.half *= b.d.Between(1.2, 2.4)
	return u
}

const (
	mostSettled = 0.4  // of the last layer: by so much batter settles at most, or a thin one would not cover
	giveMM      = 15.  // so far under a border batter gives way at most
	deepGive    = 28.  // mm: the same of what no wire comes through: the deeper it gives way the rounder are the scallops it is pushed into
	calmLump    = 0.5  // of the lumps, and
	calmHalf    = 1.25 // of the width of dents there: no drawn out hooks
	leastGive   = 0.05 // mm: a layer thinner than this is not worth denting
	mostUneven  = 0.55 // of the layer above, or of what lies below: borders do not go further up and down
	dripThin    = 2    // mm, how far a thread of thin batter comes through at most where it falls
	dripThick   = 1.5  // and of thick
	dripEvery   = 40   // mm of loaf to each
	alongHand   = 2    // how much longer dents and waves are along the loaf, as the jug goes
	mostBow     = 0.4  // of the same: a whole layer that bows further would be pushed to and fro too far between its neighbours
)

// dent dents the level mm from up to another, which stays even.
func (b *builder) dent(from, to float64) {
	up := to - from
	if from < leastGive || up < leastGive {
		return
	}
	u, give := b.marks(), giveMM
	u.long = alongHand
	if b.Technique == script.Layers {
		u.drip, u.drips = b.thick(dripThin, dripThick), int(b.Box.L/dripEvery+b.d.Float())
		u.lump, u.half = calmLump*u.lump, calmHalf*u.half
		give = deepGive
	} else { // poured down a spatula, for the wire: what stands up or lies deep would tear in it
		u.half, u.dent, u.lump, u.furrow = 1.6*u.half, 0.8*u.dent, 0.4*u.lump, 0.6*u.furrow
	}
	u.bow = min(u.bow, mostBow*min(up, from, giveMM))
	room, most := up, u.bow+max(u.dent, u.lump, u.furrow, u.drip)
	if to >= b.Box.H { // what is poured last covers: planed, it shows no hole
		room, most = max(0, up-SkimMM), most+u.swell
	}
	scale := min(1, mostUneven*min(room, from)/most)
	u.swell, u.bow, u.furrow, u.dent, u.lump, u.drip = scale*u.swell, scale*u.bow, scale*u.furrow, scale*u.dent, scale*u.lump, scale*u.drip
	b.add(op{border: &border{width: b.Box.W, at: from, down: min(give, from), up: min(give, up), ground: newGround(&b.d, b.Box, u)}})
}
