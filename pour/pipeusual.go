package pour

// chosen gives a shape that was just chosen the usual measures it lacks, so that choosing one shows it at once; a plan that is sized by its shape
// and has none gets rosettes. What is stated stays. Common practice, no source.
func (p *Plan) chosen(path string) {
	switch {
	case path == "icing.size" && p.Icing != nil && p.Icing.Size == SizeShape && !p.Piping.Shaped():
		p.Piping.Shape = PipeRosette
	case path != "piping.shape" && path != "piping.tip":
		return
	}
	p.Piping = p.Piping.Usual()
}

// Usual is the piping with usual measures in the place of those its shape lacks, for bars of about 25 mm; common practice, no source.
func (p Piping) Usual() Piping {
	if !p.Shaped() {
		return p
	}
	if p.Tip == "" {
		p.Tip = p.usualTip()
	}
	for _, u := range p.usualMeasures() {
		if *u.at <= 0 {
			*u.at = u.mm
		}
	}
	if p.Tip == TipStar && p.Points < 2 {
		p.Points = 6
	}
	if p.Tip == TipStar && (p.ValleyMM <= 0 || p.ValleyMM > p.TipMM) {
		p.ValleyMM = 0.65 * p.TipMM
	}
	if p.Shape == PipeRosette && p.CoilFromMM >= p.CoilMM {
		p.CoilFromMM = 0
	}
	if p.BagG <= p.ResidueBagG {
		p.BagG = p.ResidueBagG + 250
	}
	return p
}

// usualTip is the tip a shape is mostly piped from.
func (p *Piping) usualTip() string {
	switch p.Shape {
	case PipeRuffle:
		return TipSlot
	case PipeRope, PipeSpooned:
		return TipRound
	}
	return TipStar
}

// usualMeasure is a measure of the piping and what it usually is, mm.
type usualMeasure struct {
	at *float64
	mm float64
}

func (p *Piping) usualMeasures() []usualMeasure {
	out := []usualMeasure{{&p.TipMM, 7}}
	if p.Tip == TipSlot {
		out = []usualMeasure{{&p.TipMM, 14}, {&p.WideMM, 3}}
	}
	switch p.Shape {
	case PipeDollop:
		return append(out, usualMeasure{&p.WidthMM, 20}, usualMeasure{&p.HeightMM, 18})
	case PipeRosette:
		return append(out, usualMeasure{&p.CoilMM, 7})
	case PipeShells:
		return append(out, usualMeasure{&p.WidthMM, 14}, usualMeasure{&p.HeightMM, 10}, usualMeasure{&p.HeadMM, 9}, usualMeasure{&p.TailMM, 10})
	case PipeRope:
		return append(out, usualMeasure{&p.PitchMM, 14})
	case PipeRuffle:
		return append(out, usualMeasure{&p.WaveMM, 14})
	}
	if p.LayerMM+p.ReliefMM > 0 {
		return nil
	}
	return []usualMeasure{{&p.LayerMM, 6}, {&p.ReliefMM, 10}}
}
