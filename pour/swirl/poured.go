package swirl

import (
	"math"

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

// done is how far the filling of the mould has come, 0 to 1.
func (b *builder) done() float64 { return float64(b.act) / float64(max(1, b.last)) }

// streamed pours thin streams along the lines of an act: some stays on the line, more runs to its sides, less so as the batter thickens
// while it is poured, and what has speed dives.
func (b *builder) streamed(a script.Act) {
	n := float64(len(a.Lines))
	var rows []row
	var lines []wobble
	for _, at := range a.Lines {
		line := b.d.wobble(b.Box.W*at, min(9, 0.12*b.Box.W))
		lines = append(lines, line)
		broad := row{part: 1 / n, line: b.d.wobble(line.mean, min(14, 0.18*b.Box.W))}
		broad.half = b.d.Between(0.4, 0.6) * b.Box.W * b.thick(1.15, 0.75) * (1 - 0.55*b.done())
		if narrow := b.d.Between(0.1, 0.15) * b.Box.W; b.every == 1 { // of very many pours the line would be too thin to see
			rows = append(rows, row{part: 0.3 / n, line: line, half: narrow})
			broad.part = 0.7 / n
		}
		rows = append(rows, broad)
	}
	b.lay(a, rows)
	depth := b.level * b.d.Between(0.4, 0.95) * b.fall()
	for i, way := range lines {
		if !b.streams() {
			break
		}
		radius, grip := b.d.Between(10, 15), b.d.Between(0.8, 1)
		if i > 0 { // the jug is led over to the other side, where less is left in it
			radius, grip, depth = b.d.Between(9, 13), b.d.Between(0.7, 1), 0.6*depth
		}
		way.mean = 0
		b.plunge(b.Box.W*a.Lines[i], depth, radius*b.thick(0.95, 1.25), grip, way)
	}
}

// column pours every colour in turn down the same line.
func (b *builder) column() func(script.Act) {
	line := b.d.wobble(0, 3)
	return func(a script.Act) {
		switch {
		case a.Kind == script.Level:
			b.settle(b.thick(2.4, 1.2))
		case len(a.Lines) == 0:
			b.raise(a.Share, plain(a.Jug))
		default:
			way := line
			way.mean = b.Box.W*a.Lines[0] + b.d.Between(-1.5, 1.5)
			b.lay(a, []row{{part: 1, line: way, half: b.Box.W * b.d.Between(0.25, 0.32) * b.thick(1.1, 0.8)}})
		}
	}
}

// pot pours all colours together out of one pot.
func (b *builder) pot() func(script.Act) {
	s := &stream{
		layout: b.potLayout(), box: b.Box, chord: chordTable(),
		folds: 1, drift: b.d.Between(-0.5, 0.5), sway: b.d.wobble(b.d.Float(), 0.12),
		surge: b.d.wobble(b.d.Between(0, 2*math.Pi), 0.5), stir: b.d.Between(1.6, 2.4) * b.Turns * b.d.Sign(),
	}
	if b.Thickness < 0.5 && b.Technique != script.PotSpots {
		s.folds = 2
	}
	if b.Technique == script.PotEnd {
		s.tilt = 0.8
		s.surge.amp = [2]float64{} // what has been poured depends on x here, so the pot's turn must not: the shares would drift
	}
	b.stream = s
	return func(a script.Act) {
		switch a.Kind {
		case script.PourOut:
			b.raise(a.Share, s)
			for _, line := range a.Lines {
				b.plunge(b.Box.W*line, b.d.Between(14, 40)*b.fall(), b.d.Between(10, 18)*b.thick(0.95, 1.3), b.d.Between(0.7, 1), b.d.wobble(0, 7)).still = true
			}
		case script.Level:
			b.settle(b.thick(4, 1.5))
		}
	}
}
