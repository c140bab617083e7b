package swirl

import (
	"pourbench/pour/script"
)

// drop pours a bed, then the others from a height along changing lines.
func (b *builder) drop() func(script.Act) {
	return func(a script.Act) {
		switch {
		case a.Kind == script.Level:
			b.settle(b.thick(3.2, 1.4))
		case len(a.Lines) == 0:
			b.raise(a.Share, plain(a.Jug))
		default:
			b.streamed(a)
		}
	}
}

// streamed pours thin streams along the lines of an act: each lands as a narrow lump, sinks in where it lands and, as what has speed dives,
// is drawn out into a plume with a neck and a head.
func (b *builder) streamed(a script.Act) {
	n := float64(len(a.Lines))
	var rows []row
	for _, at := range a.Lines {
		rows = append(rows, row{
			part: 1 / n, line: b.d.sway(b.Box.W*at, min(dropSwing, 0.2*b.Box.W)), half: b.d.Between(6.5, 9.5) * b.thick(dropThin, dropThick) / b.fall(), blunt: softRim,
			swell: b.d.surge(0.05, 0.45), flush: b.d.surge(0, 1.1),
		})
	}
	from := b.level
	b.lay(a, rows)
	for i := range rows {
		if !b.streams() {
			break
		}
		b.bulb(&rows[i], (b.level-from)*b.Box.W/n/(fullLump*rows[i].half))
	}
}

// Streams as they fall into batter: by eye, no source.
const (
	dropSwing = 16.0 // mm, how far the hand swings to either side of its line
	dropThin  = 1.0  // how wide lumps of thin batter are, against those of 6.5 to 9.5 mm from 150 mm
	dropThick = 1.8  // and of thick

	softRim  = -1. / 3                   // how blunt a stream's lump is: (1-u²)³·(1+u²/3), which ends without a kink, as one would leave teeth in what lies below
	fullLump = 16./15 + softRim*(16./45) // its area at height and half width 1
)

// bulb lets a stream that lies about deep mm deep be drawn out as it dives: its neck narrows, and its end, at which the batter gives way to the sides,
// rounds to a bulb.
func (b *builder) bulb(r *row, deep float64) {
	depth := min(deep*b.d.Between(1.15, 1.5), 0.95*b.level)
	b.add(op{plume: &plume{
		level: b.level, width: b.Box.W, line: r.line, lean: b.d.wobble(b.d.Between(-0.2, 0.2), 0.2),
		reach: b.d.wobble(1.05*r.half+b.d.Between(5, 10), 3), depth: b.d.surge(depth, 0.2*depth),
		roll: b.d.wobble(b.d.Between(0.06, 0.28)*b.thick(1.1, 0.3), 0.1),
	}})
}
