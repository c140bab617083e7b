package swirl

// What falls from a pot also sets what lies under the surface going round: by eye, no source.
const (
	foldLeastMM = 10   // of a level: a shallower one does not go round
	foldSmall   = 0.24 // of the mould's width: half of the smallest place that goes round
	foldLarge   = 0.5  // and of the largest
	foldShallow = 0.22 // of the mould's height: half of the shallowest
	foldDeep    = 0.36 // and of the deepest
	foldLeast   = 0.7  // radians, by how much it goes round at least
	foldMost    = 1.5  // and at most
)

// fold lets a place of a size from 0 to 1 under the surface go round, the more the higher the stream falls from: ribbons that lie there fold over,
// roundly, as there is no rim at which it ends. It comes and goes slowly along the loaf, so that a cut along it flows.
func (b *builder) fold(size float64) {
	if b.level < foldLeastMM {
		return
	}
	wide := b.Box.W * (foldSmall + (foldLarge-foldSmall)*size)
	high := min(0.48*b.level, b.Box.H*b.d.Between(foldShallow, foldDeep))
	b.add(op{gyre: &gyre{
		at: vec2{b.d.Between(0.2, 0.8) * b.Box.W, b.level - high*b.d.Between(0.9, 1.4)}, half: vec2{wide, high}, width: b.Box.W, height: b.level,
		angle: b.d.Sign() * b.d.Between(foldLeast, foldMost) * b.fall(), gain: b.d.slow(b.d.Between(0.6, 0.9), 0.25),
		shift: b.d.slow(0, 0.06*b.Box.W), sink: b.d.slow(0, 0.03*b.level), swell: b.d.slow(1, 0.06),
	}})
}

// slow draws a drift of up to amp either side of mean, with waves of 90 to 160 mm and 200 to 400 mm, as of a heavy pot that is led along the loaf.
func (d *dice) slow(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{90, 160}, [2]float64{200, 400})
}
