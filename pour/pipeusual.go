package pour

import "math"

// chosen gives a shape that was just chosen the usual measures it lacks, and a size its usual amount, so that choosing one shows it at once and none
// stands in the way of the next; a plan that is sized by its shape and has none gets rosettes. What is stated stays. Common practice, no source.
func (p *Plan) chosen(path, was string) {
	switch {
	case path == "icing.size" && p.Icing != nil:
		if p.Icing.usualSize(); p.Icing.Size != SizeShape || p.Piping.Shaped() {
			return
		}
		p.Piping.Shape = PipeRosette
	case path != "piping.shape" && path != "piping.tip" || !p.Piping.Shaped():
		return
	}
	if path != "piping.tip" && was != p.Piping.Shape {
		p.Piping.begins(p.Mould.barAcrossMM())
	}
	p.Piping = p.Piping.completed()
}

// usualSize is an icing with a usual amount where its size states none.
func (b *Batch) usualSize() {
	switch {
	case b.Size == SizeBar && b.PerBarG <= 0:
		b.PerBarG = 30
	case b.Size == SizeLayer && b.LayerMM <= 0:
		b.LayerMM = 10
	case b.Size == SizeOils && b.OilsG <= 0:
		b.OilsG = 200
	}
}

// usualPiping are measures to begin with: sizes of tips and of what is made with them that suit bars of about an inch (common practice, no source).
func usualPiping(shape string) Piping {
	star := Piping{Tip: TipStar, Points: 6, TipMM: 7, ValleyMM: 4.8, Along: PipeBars, PerBar: 3}
	switch shape {
	case PipeDollop:
		star.WidthMM, star.HeightMM, star.Profile = 20, 25, 1
		return star
	case PipeRosette:
		star.CoilMM, star.OverlapPercent = 7, 20
		return star
	case PipeShells:
		return Piping{Tip: TipStar, Points: 8, TipMM: 12, ValleyMM: 9.6, WidthMM: 16, HeightMM: 11, HeadMM: 9, TailMM: 12, OverlapPercent: 25, Along: PipeLoaf, Rows: 2}
	case PipeRope:
		return Piping{Tip: TipRound, TipMM: 8, WindMM: 5, PitchMM: 14, Along: PipeLoaf, Rows: 2}
	case PipeRuffle:
		return Piping{Tip: TipSlot, TipMM: 16, WideMM: 4, NarrowMM: 2, SwingMM: 6, WaveMM: 20, Along: PipeLoaf, Rows: 1}
	case PipeSpooned:
		return Piping{LayerMM: 8, ReliefMM: 12, Relief: ReliefWaves}
	}
	return Piping{}
}

// begins gives a shape that is new to the plan what it need not have and mostly has: a tip of its own, a place to stand, an overlap or a swing; of
// units side by side on a bar as many as have room in a width, mm.
func (p *Piping) begins(width float64) {
	usual := usualPiping(p.Shape)
	if p.Tip == "" && p.TipMM == 0 {
		p.Tip, p.Points = usual.Tip, usual.Points
	}
	if p.Along == "" && p.PerBar == 0 && p.Rows == 0 {
		p.Along, p.PerBar, p.Rows = usual.Along, usual.PerBar, usual.Rows
		if wide := max(usual.WidthMM, usual.TipMM+2*usual.CoilMM); p.PerBar > 1 {
			p.PerBar = max(min(p.PerBar, int(math.Floor(width/wide))), 1)
		}
	}
	for _, x := range []struct {
		at *float64
		mm float64
	}{{&p.Profile, usual.Profile}, {&p.OverlapPercent, usual.OverlapPercent}, {&p.NarrowMM, usual.NarrowMM}, {&p.WindMM, usual.WindMM}, {&p.SwingMM, usual.SwingMM}} {
		if *x.at == 0 {
			*x.at = x.mm
		}
	}
}

// completed is the piping with usual measures in the place of those its shape lacks.
func (p Piping) completed() Piping {
	usual := usualPiping(p.Shape)
	switch p.Tip {
	case TipStar:
		usual.TipMM = 7
	case TipSlot:
		usual.TipMM, usual.WideMM = 16, 4
	default:
		usual.TipMM = 8
	}
	for _, x := range []struct {
		at *float64
		mm float64
	}{
		{&p.TipMM, usual.TipMM},
		{&p.WideMM, usual.WideMM},
		{&p.WidthMM, usual.WidthMM},
		{&p.HeightMM, usual.HeightMM},
		{&p.CoilMM, usual.CoilMM},
		{&p.HeadMM, usual.HeadMM},
		{&p.TailMM, usual.TailMM},
		{&p.PitchMM, usual.PitchMM},
		{&p.WaveMM, usual.WaveMM},
	} {
		if *x.at < leastMM && x.mm > 0 {
			*x.at = x.mm
		}
	}
	if p.Spoons() && p.LayerMM+p.ReliefMM < leastMM {
		p.LayerMM, p.ReliefMM = usual.LayerMM, usual.ReliefMM
	}
	if p.Tip == TipStar && p.Points < 2 {
		p.Points = 6
	}
	if p.Tip == TipStar && (p.ValleyMM < leastMM || p.ValleyMM > p.TipMM) {
		p.ValleyMM = 0.7 * p.TipMM
	}
	if p.Shape == PipeRosette && p.CoilFromMM >= p.CoilMM {
		p.CoilFromMM = 0
	}
	if p.BagG <= p.ResidueBagG {
		p.BagG = p.ResidueBagG + 250
	}
	return p
}
