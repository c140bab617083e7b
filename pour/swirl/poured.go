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
	b.layIn(a, b.strands(rows))
	for i := range rows {
		if !b.streams() {
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
	dropThread      = 0.8  // how wide it is then, against one that goes there once: thinner it would leave hairlines where it dives
	dropLast        = 0.62 // and at the rim, where what was poured before is to show beside it
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

// strands splits the streams of which there is but one: the hand leads it there and back, every time another way, and more runs now in the one and now in the
// other. Into a mould more than half full it leads all of them there and back, thinner, and one alone there again: so each lies over itself here and
// beside itself there.
func (b *builder) strands(rows []row) []row {
	ways := 3
	if len(rows) > 1 {
		ways = 2
	}
	even := dropEven
	if b.level < dropBack*b.Box.H {
		ways, even = ways-1, 1
	}
	if ways == 1 {
		return rows
	}
	thread := dropThread + (dropLast-dropThread)*clamp((b.level/b.Box.H-dropBack)/(1-dropBack), 0, 1)
	var out []row
	for _, r := range rows {
		side := b.d.Sign()
		for i := range ways {
			s := r
			s.half *= thread * b.d.Between(0.9, 1.1)
			s.part *= b.d.Between(0.8, 1.2) / float64(ways)
			s.flush, s.hang = s.flush.times(even), s.hang.times(even)
			if i > 0 {
				s.line = b.toAndFro(r.line.mean + side*r.half*b.d.Between(0.6, 2.1))
				s.hang = b.d.bulbs(dropHang).times(even)
				s.flush = b.d.spurts(dropSpurts).times(even)
				side = -side
			}
			out = append(out, s)
		}
	}
	return out
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
