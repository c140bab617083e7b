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
			part: 1 / n, line: b.d.wobble(b.Box.W*at, min(7, 0.09*b.Box.W)), half: b.d.Between(4, 7) * b.thick(0.9, 1.4),
			swell: b.d.wobble(0, 0.4), flush: b.d.wobble(0, 0.5),
		})
	}
	b.lay(a, rows)
	for i := range rows {
		if !b.streams() {
			break
		}
		b.dive(rows[i].line, b.level*b.d.Between(0.4, 1)*b.fall())
	}
}

// dive lets a stream dive along a line, to about depth mm.
func (b *builder) dive(line wobble, depth float64) {
	b.add(op{plume: &plume{
		level: b.level, width: b.Box.W, line: line, lean: b.d.wobble(b.d.Between(-0.2, 0.2), 0.2),
		reach: b.d.wobble(b.d.Between(8, 13)*b.thick(0.95, 1.25), 2), depth: b.d.wobble(depth, 0.3*depth),
		roll: b.d.wobble(b.d.Between(0.15, 0.5)*b.thick(1.1, 0.6), 0.1),
	}})
}
