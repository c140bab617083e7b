package pour

import (
	"fmt"

	"pourbench/pour/shape"
)

// piece is one unit of icing as it is piped: a dollop, a rosette, a shell, a strand of border, or all of a spooned top.
type piece struct {
	volume    float64 // mm³
	wide      float64 // mm across
	along     float64 // mm along the row it stands in
	high      float64 // mm
	footprint float64 // mm², what it stands on
	under     float64 // how many times its yield stress the base carries below it
}

// measure is a number of the plan that a shape cannot be worked out without.
type measure struct {
	key string
	v   float64
}

// leastMM is the smallest measure that is taken for one, mm: less is a slip of the pen and gives counts without end.
const leastMM = 0.1

// strandMM is how wide a strand out of the tip lies, mm.
func (p *Piping) strandMM() float64 { return p.TipMM * orOne(p.Swell) }

// orOne is a ratio of the plan, 1 where it states none.
func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}

// opening is the tip's opening: its area, mm², and what part of the circle about it that is.
func (p *Piping) opening() (area, fullness float64) {
	switch p.Tip {
	case TipStar:
		s := shape.Star{Points: p.Points, Tip: p.TipMM / 2, Valley: p.ValleyMM / 2}
		return s.Area(), s.Fullness()
	case TipSlot:
		area = shape.Slot(p.TipMM, p.NarrowMM, p.WideMM)
		return area, area / shape.Disc(p.TipMM/2)
	}
	return shape.Disc(p.TipMM / 2), 1
}

// strand is the cross-section of what the tip lays down, mm².
func (p *Piping) strand() float64 {
	area, _ := p.opening()
	return shape.Strand(area, orOne(p.Swell), orOne(p.Pull))
}

// tip lists the measures of the tip; where its strand is laid down, its opening counts, and otherwise only how its edge runs.
func (p *Piping) tip(laid bool) []measure {
	var out []measure
	if laid || p.Tip == TipStar || p.Tip == TipSlot {
		out = append(out, measure{"tip_mm", p.TipMM})
	}
	switch p.Tip {
	case TipStar:
		out = append(out, measure{"points", float64(p.Points)}, measure{"valley_mm", p.ValleyMM})
	case TipSlot:
		out = append(out, measure{"wide_mm", p.WideMM})
	}
	return out
}

// measures lists what the plan's shape cannot be worked out without.
func (p *Piping) measures() []measure {
	switch p.Shape {
	case PipeDollop:
		return append(p.tip(false), measure{"width_mm", p.WidthMM}, measure{"height_mm", p.HeightMM})
	case PipeRosette:
		return append(p.tip(true), measure{"coil_mm", p.CoilMM})
	case PipeShells:
		return append(p.tip(false), measure{"width_mm", p.WidthMM}, measure{"height_mm", p.HeightMM}, measure{"head_mm", p.HeadMM}, measure{"tail_mm", p.TailMM})
	case PipeRope:
		if p.WindMM > 0 {
			return append(p.tip(true), measure{"pitch_mm", p.PitchMM})
		}
		return p.tip(true)
	case PipeRuffle:
		return append(p.tip(true), measure{"wave_mm", p.WaveMM})
	case PipeSpooned:
		return []measure{{"layer_mm", p.LayerMM + p.ReliefMM}}
	}
	return nil
}

// Lacks says why the shape cannot be worked out, or "" when it can, or when none is stated.
func (p *Piping) Lacks() string {
	if !p.Shaped() {
		return ""
	}
	for _, m := range p.measures() {
		switch {
		case m.v <= 0:
			return fmt.Sprintf("piping.%s is not stated, which a %s is worked out from", m.key, p.called())
		case m.v < leastMM:
			return fmt.Sprintf("piping.%s is less than %g mm, which no hand pipes", m.key, leastMM)
		}
	}
	switch {
	case p.Tip == TipStar && !p.Spoons() && p.Points < 2:
		return "piping.points is less than 2, which is no star"
	case p.Tip == TipStar && !p.Spoons() && p.ValleyMM > p.TipMM:
		return "piping.valley_mm is more than piping.tip_mm: a star is narrower at its valleys"
	case p.Shape == PipeRosette && p.CoilFromMM >= p.CoilMM:
		return "piping.coil_from_mm is not less than piping.coil_mm: a coil ends further out than it begins"
	case !p.Spoons() && p.BagG <= p.ResidueBagG:
		return "piping.bag_g is not more than piping.residue_bag_g: nothing would come out of a bag"
	}
	return ""
}

// called is what one unit of the shape is called.
func (p *Piping) called() string {
	switch p.Shape {
	case PipeShells:
		return "shell"
	case PipeSpooned:
		return "spooned top"
	}
	return p.Shape
}

// tiers are the radii at which the coils of a rosette end, from below: each half a strand further in than the one below it, as makers build
// them up (common practice, no source), and never within the radius at which it begins.
func (p *Piping) tiers() []float64 {
	out := make([]float64, max(1, p.Tiers))
	for i := range out {
		out[i] = max(p.CoilFromMM, p.CoilMM-float64(i)*p.strandMM()/2)
	}
	return out
}

// piece works out one unit of a shape that lacks nothing, a border as long as length and a spooned top over a length and a width, mm.
func (p *Piping) piece(length, width float64) piece {
	_, fullness := p.opening()
	overlap := p.OverlapPercent / 100
	switch p.Shape {
	case PipeDollop:
		profile := p.Profile
		if profile == 0 {
			profile = shape.Cone
		}
		r := p.WidthMM / 2
		return piece{shape.Mound(fullness, r, p.HeightMM, profile), p.WidthMM, p.WidthMM, p.HeightMM, shape.Disc(r), shape.UnderRound}
	case PipeRosette:
		r := shape.Rosette{Strand: p.strand(), Width: p.strandMM(), Overlap: overlap, Inner: p.CoilFromMM, Tiers: p.tiers()}
		d := r.Diameter()
		return piece{r.Volume(), d, d, p.strandMM() * float64(len(r.Tiers)), shape.Disc(d / 2), shape.UnderRound}
	case PipeShells:
		s := shape.Shell{Head: p.HeadMM, HalfWidth: p.WidthMM / 2, Height: p.HeightMM, Tail: p.TailMM}
		return piece{s.Volume(fullness), p.WidthMM, s.Length(), p.HeightMM, s.Footprint(), shape.UnderRound}
	case PipeRope:
		wide := p.strandMM() + 2*p.WindMM
		return piece{p.strand() * length * p.ratio(), wide, length, wide, wide * length, shape.UnderStrip}
	case PipeRuffle:
		wide := p.WideMM + 2*p.SwingMM
		if p.Tip != TipSlot {
			wide = p.strandMM() + 2*p.SwingMM
		}
		return piece{p.strand() * length * p.ratio(), wide, length, p.strandMM(), wide * length, shape.UnderStrip}
	}
	area := length * width
	return piece{shape.Spooned(area, p.LayerMM, p.ReliefMM, p.relief()), width, length, p.LayerMM + p.ReliefMM, area, shape.UnderStrip}
}

// ratio is how much longer a border's strand is than the border.
func (p *Piping) ratio() float64 {
	switch {
	case p.Shape == PipeRope && p.WindMM > 0:
		return shape.RopeRatio(p.WindMM, p.PitchMM)
	case p.Shape == PipeRuffle:
		return shape.RuffleRatio(p.SwingMM, p.WaveMM)
	}
	return 1
}

// relief is what part of its height a spooned relief has on average.
func (p *Piping) relief() float64 {
	switch p.Relief {
	case ReliefSwoops:
		return shape.Valleys
	case ReliefPoints:
		return shape.Peaks
	}
	return shape.Ridges
}
