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

// streamed pours thin streams along the lines of an act. Most of it stays on the line it lands on, what of it has speed dives.
func (b *builder) streamed(a script.Act) {
	n := len(a.Lines)
	rows := make([]row, 2*n)
	for i, at := range a.Lines {
		line := b.d.wobble(b.Box.W*at, 9)
		rows[i] = row{part: 0.3 / float64(n), line: line, half: b.d.Between(0.1, 0.15) * b.Box.W}
		wide := b.d.Between(0.4, 0.6) * b.Box.W * b.thick(1.15, 0.75) * (1 - 0.55*b.done())
		rows[n+i] = row{part: 0.7 / float64(n), line: b.d.wobble(line.mean, 14), half: wide}
	}
	b.lay(a, rows)
	depth := b.level * b.d.Between(0.4, 0.95) * b.fall()
	for i := range n {
		if !b.streams() {
			break
		}
		radius, grip := b.d.Between(10, 15), b.d.Between(0.8, 1)
		if i > 0 { // the jug is led over to the other side, where less is left in it
			radius, grip, depth = b.d.Between(9, 13), b.d.Between(0.7, 1), 0.6*depth
		}
		way := rows[i].line
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

// piece is a portion's place in the pot, and what part of the pot's batter it is.
type piece struct {
	portion int
	share   float64
}

// pieces is what lies in the pot side by side, round by round, in the order it was poured in. The pot's own batter lies before every
// round or, with the pot between, before every colour.
func (b *builder) pieces() (rounds [][]piece) {
	for _, a := range b.acts {
		if a.Kind != script.IntoPot {
			continue
		}
		if len(rounds) == 0 || a.Round > len(rounds) {
			rounds = append(rounds, []piece{{portion: 0}})
		}
		list := &rounds[len(rounds)-1]
		if b.PotBetween && (*list)[len(*list)-1].portion != 0 {
			*list = append(*list, piece{portion: 0})
		}
		*list = append(*list, piece{a.Jug, a.Share})
	}
	if len(rounds) == 0 {
		return [][]piece{{{0, 1}}}
	}
	b.fillPot(rounds)
	return rounds
}

// fillPot gives the pieces of the pot's own batter their shares: every round is as large as the others, and in a round they are alike.
func (b *builder) fillPot(rounds [][]piece) {
	for _, list := range rounds {
		colours, own := 0.0, 0.0
		for _, p := range list {
			colours += p.share
			if p.portion == 0 {
				own++
			}
		}
		for i := range list {
			if list[i].portion == 0 {
				list[i].share = max(0, 1/float64(len(rounds))-colours) / own
			}
		}
	}
}

func (b *builder) potLayout() layout {
	rounds := b.pieces()
	if b.Technique == script.PotSpots {
		return b.nests(rounds)
	}
	var until []float64
	var portion []int
	sum := 0.0
	for _, list := range rounds {
		for _, p := range list {
			sum += p.share
			until, portion = append(until, sum), append(portion, p.portion)
		}
	}
	if b.Technique == script.PotStripes {
		return &bands{until, portion}
	}
	return &sectors{until, portion}
}

// nests has the colours of every round one in the other in a place of its own, the last poured in the middle and the pot outermost.
func (b *builder) nests(rounds [][]piece) layout {
	n := &nests{rows: []potRing{{outer: 1, wedges: 1}}}
	if k := float64(len(rounds)); k > 1 {
		n.rows = []potRing{{outer: 1 / k, wedges: 1}, {outer: 1, wedges: k - 1}}
	}
	for i := range n.rows {
		n.rows[i].offset = b.d.Float()
	}
	for _, list := range rounds {
		var order []int
		var until []float64
		sum := 0.0
		for i := len(list) - 1; i >= 0; i-- {
			sum += list[i].share * float64(len(rounds))
			order, until = append(order, list[i].portion), append(until, sum)
		}
		n.portion, n.until = append(n.portion, order), append(n.until, until)
	}
	return n
}
