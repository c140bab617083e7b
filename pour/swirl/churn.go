package swirl

// What a stream does to the batter it falls on beside sinking in: it sets it turning, as whatever is pushed down on one side comes up on the
// other. By eye, no source.
const (
	churnLeastMM = 10   // of a level: a shallower one does not turn
	churnSmall   = 0.24 // of the mould's width: half of the smallest turning place
	churnLarge   = 0.5  // and of the largest
)

// churn turns what lies somewhere under where the stream falls, a place of a size from 0 to 1, the more the higher it falls from; it comes and
// goes along the loaf.
func (b *builder) churn(size float64) {
	if b.level < churnLeastMM {
		return
	}
	wide := b.Box.W * (churnSmall + (churnLarge-churnSmall)*size)
	high := min(0.48*b.level, b.Box.H*b.d.Between(0.22, 0.36))
	at := vec2{b.d.Between(0.2, 0.8) * b.Box.W, b.level - high*b.d.Between(0.9, 1.4)}
	b.add(op{gyre: &gyre{
		at: at, half: vec2{wide, high}, width: b.Box.W, height: b.level,
		angle: b.d.Sign() * b.d.Between(0.7, 1.5) * b.fall(), gain: b.d.drift(b.d.Between(0.6, 0.9), 0.25, [2]float64{100, 180}, [2]float64{220, 400}),
		shift: b.d.wobble(0, 0.06*b.Box.W), sink: b.d.wobble(0, 0.03*b.level), swell: b.d.wobble(1, 0.06),
	}})
}
