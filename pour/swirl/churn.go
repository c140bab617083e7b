package swirl

// What a stream does to the batter it falls on beside sinking in: it sets it turning, as whatever is pushed down on one side comes up on the
// other. By eye, no source.
const (
	churnLeastMM = 10   // of a level: a shallower one does not turn
	churnSmall   = 0.19 // of the mould's width: half of the smallest turning place
	churnRim     = 0.8  // how softly the turning ends at its rim
	churnLarge   = 0.36 // and of the largest
)

// churn turns what lies somewhere under where the stream falls, a place of a size from 0 to 1, the more the higher it falls from; it comes and
// goes along the loaf.
func (b *builder) churn(size float64) {
	if b.level < churnLeastMM {
		return
	}
	wide := b.Box.W * (churnSmall + (churnLarge-churnSmall)*size*size)
	high := min(wide*b.d.Between(0.7, 1.1), 0.48*b.level-0.5)
	at := vec2{b.d.Between(wide+0.5, b.Box.W-wide-0.5), b.level - high - 0.5 - (b.level-2*high-1)*b.d.Float()*b.d.Float()}
	b.add(op{whirl: &whirl{
		centre: at, half: vec2{wide, high}, room: vec2{min(at.y, b.Box.W-at.y) - wide, min(at.z, b.level-at.z) - high},
		rim: churnRim, angle: b.d.Sign() * b.d.Between(0.6, 1.2) * b.fall(), gain: b.d.wobble(b.d.Between(0, 0.5), 0.9),
		shift: b.d.wobble(0, 0.2*b.Box.W), sink: b.d.wobble(0, 0.1*b.level),
	}})
}
