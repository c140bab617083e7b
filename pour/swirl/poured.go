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

// streamed pours thin streams along the lines of an act: each lands as a narrow lump, sinks in where it lands and, as what has speed dives,
// is drawn out into a plume with a neck and a head. Now and then all of it gives way to the sides.
func (b *builder) streamed(a script.Act) {
	n := float64(len(a.Lines))
	rise := a.Share * b.Box.H
	var rows []row
	for _, at := range a.Lines {
		half := b.d.Between(6.5, 9.5) * b.thick(dropThin, dropThick) / b.fall()
		deepest := b.d.Between(0.56, 0.74)
		if deepest > dropThroughFrom && b.level < dropBack*b.Box.H {
			deepest *= dropThrough
			half /= dropThrough * dropThrough
		}
		deepest *= b.thick(1.05, 0.8) * (b.level + rise)
		if a.Jug == b.acts[0].Jug { // of the bed
			deepest *= dropOwn
			half /= dropOwn
		}
		rows = append(rows, row{
			part: 1 / n, line: b.toAndFro(b.Box.W * at), half: 1.1 * max(half, rise*b.Box.W/n/(roundLump*deepest)), round: true,
			swell: b.d.sway(0, 0.2), hang: b.d.bulbs(dropHang), flush: b.d.spurts(dropSpurts),
		})
	}
	from := b.level
	b.layIn(a, b.strands(rows, rise*b.Box.W))
	for i := range rows {
		if from >= dropBack*b.Box.H || !b.streams() { // strands of it, one beside the other, end softly as they are
			break
		}
		b.bulb(&rows[i], (b.level-from)*b.Box.W/n/(roundLump*rows[i].half))
	}
	if b.act%max(dropFolds, b.last/3) == 0 && b.level > 10 {
		b.add(op{wave: newFolds(&b.d, b.Box, b.level, b.thick(0.9, 0.5)).slow(4)})
	}
}

// layIn pours the strands of an act: into a mould hardly filled all at once, later one after the other and at last one half after the other, so that what comes back lies over or parts what went there.
func (b *builder) layIn(a script.Act, rows []row) {
	if b.level < dropOver*b.Box.H || len(rows) < 2 {
		b.lay(a, rows)
		return
	}
	share, sum := a.Share, 0.0
	for _, r := range rows {
		sum += r.part
	}
	if b.act >= b.last {
		share = 1 - b.level/b.Box.H
	}
	many := 1
	if b.act >= b.last {
		many = (len(rows) + 1) / 2 // of the last of all, which lie in the open, that is enough
	}
	for from := 0; from < len(rows); from += many {
		some := rows[from:min(from+many, len(rows))]
		part, of := a, 0.0
		for k := range some {
			some[k].flush = wobble{}
			of += some[k].part
		}
		for k := range some {
			some[k].part /= of
		}
		part.Share = share * of / sum
		b.layOne(part, some, from+many >= len(rows))
	}
}

// layOne is lay of some of what an act pours, or of the last of it.
func (b *builder) layOne(a script.Act, rows []row, last bool) {
	if last {
		b.lay(a, rows)
		return
	}
	from := b.level
	b.rise(a.Share, plain(a.Jug))
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: rows}})
}

// Streams as they fall into batter: by eye, no source.
const (
	dropSwing       = 18.5 // mm, how far the hand goes to either side of its line
	dropCalm        = 0.45 // of that at first, into a mould hardly filled, where there is time
	dropPart        = 0.38 // of the mould's width: but no further
	dropSpurts      = 0.5  // by what part more or less runs here than there
	dropWall        = 0.07 // of the mould's width: the hand turns back so far from the wall
	dropThin        = 1.06 // how wide lumps of thin batter are, against those of 6.5 to 9.5 mm from 150 mm
	dropThick       = 1.7  // and of thick
	dropHang        = 0.28 // how much deeper a stream hangs in bulbs
	dropEven        = 0.43 // how unevenly it runs and hangs then: surges of so little batter would leave closed islands on the surface
	dropNear        = 6.   // mm from one strand of a stream to the next at the least
	dropFar         = 18.  // and at most
	dropAgain       = 0.65 // radians, by which the hand swings sooner or later the next time
	dropLens        = 1.6  // times as deep as wide is what falls near the rim
	dropThread      = 0.8  // how wide it is then, against one that goes there once: thinner it would leave hairlines where it dives
	dropOwn         = 0.7  // how deep the bed's own batter falls, and how much broader: deeper it would hang in its own kind in a skin of what lies there
	dropBack        = 0.6  // of the mould's height, from which on the hand leads a stream there and back
	dropThroughFrom = 0.69 // of the level: a stream that would fall so deep breaks through what lies there
	dropThrough     = 1.2  // and falls so many times as deep, drawn out
	dropOver        = 0.91 // of the mould's height, from which on strands fall one after the other
	dropFolds       = 4    // after so many pours what hangs there folds, at the soonest
)

// toAndFro is the way of a hand that goes to and fro across the mould about a place, mm, and back before the walls.
func (b *builder) toAndFro(at float64) wobble {
	swing := min(dropSwing, dropPart*b.Box.W) * (dropCalm + (1-dropCalm)*min(1, b.level/(dropBack*b.Box.H)))
	return b.d.wander(at, swing).between(dropWall*b.Box.W, (1-dropWall)*b.Box.W)
}

// strands splits the streams of which there is but one: the hand leads it there and back, and more runs now in the one and now in the other. Into a mould
// more than half full it leads all of them there and back, and one alone there again, and the nearer the rim the more each lies as a lens on its edge. As
// the hand swings about alike each time, the strands of a stream lie side by side and seldom cross: what was poured before shows between them.
func (b *builder) strands(rows []row, area float64) []row {
	ways, even, high := 3, dropEven, (b.level/b.Box.H-dropBack)/(1-dropBack)
	if len(rows) > 1 {
		ways = 2
	}
	if high < 0 {
		ways, even = ways-1, 1
	}
	if ways == 1 {
		return rows
	}
	var out []row
	for _, r := range rows {
		for i := range ways {
			step := b.d.Between(dropNear, dropFar)
			s := r
			s.part *= b.d.Between(0.35, 1.6) / float64(ways)
			s.line = b.beside(r.line, float64(i), float64(ways-1-i), step)
			lens := math.Sqrt(s.part * area / (2 * roundLump * dropLens * b.d.Between(0.7, 1.4) * b.fall()))
			s.half *= dropThread * b.d.Between(0.7, 1.2)
			s.half += (min(lens, s.half) - s.half) * clamp(2.5*high-1.3, 0, 1)
			s.hang, s.flush = s.hang.times(even), s.flush.times(even)
			if i > 0 {
				s.hang, s.flush = b.d.bulbs(dropHang).times(even), b.d.spurts(dropSpurts).times(even)
			}
			out = append(out, s)
		}
	}
	return out
}

// beside is the way of the hand when it goes again, so many strands to the left of it and so many to the right, step mm apart: it swings along the loaf as
// before, but never quite.
func (b *builder) beside(line wobble, left, right, step float64) wobble {
	line.mean += step * (0.5*(left-right) + b.d.Between(-0.45, 0.45))
	for i := range line.amp {
		line.offset[i] += b.d.Between(-dropAgain, dropAgain)
		line.amp[i] *= b.d.Between(0.98, 1.15)
	}
	wall, apart := dropWall*b.Box.W, 0.9*step
	return line.between(wall+left*apart, b.Box.W-wall-right*apart)
}

// bulb lets a stream that lies about deep mm deep be drawn out as it dives: its neck narrows, and its end, at which the batter gives way to the sides,
// rounds to a bulb.
func (b *builder) bulb(r *row, deep float64) {
	depth := min(deep*b.d.Between(1.15, 1.5), 0.95*b.level)
	b.add(op{plume: &plume{
		level: b.level, width: b.Box.W, line: r.line, lean: b.d.sway(b.d.Between(-0.25, 0.25), 0.12),
		reach: b.d.sway(1.05*r.half+b.d.Between(5, 10), 2), depth: b.d.sway(depth, 0.12*depth),
		roll: b.d.sway(b.d.Between(0, 0.045)*b.thick(1.1, 0.3), 0.02),
	}})
}
