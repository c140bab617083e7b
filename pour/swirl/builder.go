package swirl

import (
	"math"

	"pourbench/pour/script"
)

// builder pours a recipe act by act.
type builder struct {
	script.Brief
	Thickness float64
	Box       Box
	acts      []script.Act
	act       int // the one under way
	last      int // the last that fills the mould
	d         dice
	ops       []op
	level     float64
	stream    *stream // what leaves the pot; nil where there is none
	every     int     // every so many pours the stream is drawn
}

func newBuilder(r Recipe) *builder {
	b := &builder{Brief: r.Script.Brief, Thickness: r.Thickness, Box: r.Box, acts: r.Script.Acts, d: newDice(r.Script.Brief.Seed)}
	pours := 0
	for i, a := range b.acts {
		switch a.Kind {
		case script.Pour, script.PourOut, script.Spoon:
			b.last, pours = i, pours+1
		}
	}
	b.every = 1 + pours/mostStreams
	return b
}

// mostStreams is about how many falling streams are drawn: thinner ones, of which there are more, hardly move what lies there, and each
// costs time in every picture.
const mostStreams = 48

// pour turns the acts into moves.
func (b *builder) pour() {
	do := b.poured()
	for b.act = range b.acts {
		do(b.acts[b.act])
	}
}

// poured is how the acts of the technique are drawn.
func (b *builder) poured() func(script.Act) {
	switch b.Technique {
	case script.Drop:
		return b.drop()
	case script.Column:
		return b.column()
	case script.Pot, script.PotStripes, script.PotSpots, script.PotEnd:
		return b.outpour()
	case script.Hanger, script.HangerLoops, script.HangerSpiral:
		return b.hanger()
	case script.Combed:
		return b.combed()
	case script.Spooned:
		return b.spoon()
	}
	return b.layers()
}

// thick gives the value between that of thin and that of thick batter.
func (b *builder) thick(thin, thick float64) float64 { return thin + (thick-thin)*b.Thickness }

// add appends a move to the act under way.
func (b *builder) add(o op) {
	o.act = b.act
	b.ops = append(b.ops, o)
}

// raise pours a share of the mould's height; the last pour ends at the fill height exactly.
func (b *builder) raise(share float64, fill filling) {
	if b.act >= b.last {
		share = 1
	}
	b.rise(share, fill)
}

// rise pours a share of the mould's height, to the rim at most.
func (b *builder) rise(share float64, fill filling) {
	s := &slab{bottom: b.level, top: min(b.level+share*b.Box.H, b.Box.H), fill: fill}
	b.level = s.top
	b.add(op{slab: s})
}

// lay pours what an act pours onto the places of rows, where it sinks in; onto almost nothing it runs over the whole width.
func (b *builder) lay(a script.Act, rows []row) {
	from := b.level
	b.raise(a.Share, plain(a.Jug))
	rise := b.level - from
	if rise < 1e-9 || rise > mostSunk*mostSunk*b.level {
		return
	}
	b.add(op{spread: &spread{bottom: from, top: b.level, width: b.Box.W, rows: rows}})
}

// grow starts a filling that several acts pour; the acts after the first find it there.
func (b *builder) grow(fill growing) {
	if b.level == 0 {
		b.level = b.Box.H
		b.add(op{slab: &slab{top: b.level, fill: fill}})
	}
}

// settle lets the batter slump by about amp mm.
func (b *builder) settle(amp float64) {
	b.add(op{wave: newWave(&b.d, b.Box, b.level, min(amp, 0.12*b.level))})
}

// slump is settle, but alike along the loaf: to and fro within it, a fold cut along the loaf would be a closed eye.
func (b *builder) slump(amp float64) {
	b.add(op{wave: newWave(&b.d, b.Box, b.level, min(amp, 0.12*b.level)).slow(slumpLong)})
}

// slumpLong is how much longer along the loaf a slumping is than a settling: by eye, no source.
const slumpLong = 4.5

// draw adds a stroke along a dense path.
func (b *builder) draw(s *stroke, path []vec2) {
	s.width, s.level = b.Box.W, b.level
	s.path = resample(path, s.stride())
	b.add(op{stroke: s})
}

// streams says whether the stream of the act under way is drawn.
func (b *builder) streams() bool { return b.level > 4 && b.act%b.every == 0 }

// fall is how deep a stream goes, against one from 150 mm in thin batter: with the root of the height, as its speed.
func (b *builder) fall() float64 {
	return clamp(math.Sqrt(b.HeightMM/150), 0.2, 1.6) * b.thick(1.1, 0.6)
}
