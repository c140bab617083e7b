package pour

import "math"

// usualPiping are measures to begin with where a shape needs one that the plan does not state: sizes of tips and of what is made with them
// that suit bars of about an inch (common practice, no source).
func usualPiping(shape string) Piping {
	star := Piping{Tip: TipStar, Points: 6, TipMM: 7, ValleyMM: 4.8, Along: PipeBars}
	switch shape {
	case PipeDollop:
		star.WidthMM, star.HeightMM, star.Profile, star.PerBar = 20, 25, 1, 3
		return star
	case PipeRosette:
		star.CoilMM, star.OverlapPercent, star.PerBar = 7, 20, 3
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

// ShapePiping chooses the shape of the icing. What the plan states stays; what the shape needs and the plan does not state gets a measure to
// begin with, and of units side by side on a bar as many as have room.
func ShapePiping(shape string) Edit {
	return func(p Plan) (Plan, error) {
		own, usual := &p.Piping, usualPiping(shape)
		own.Shape = shape
		if own.Tip == "" && own.TipMM == 0 {
			own.Tip, own.Points = usual.Tip, usual.Points
		}
		if own.Along == "" && own.PerBar == 0 && own.Rows == 0 {
			own.Along, own.PerBar, own.Rows = usual.Along, usual.PerBar, usual.Rows
			if wide := max(usual.WidthMM, usual.TipMM+2*usual.CoilMM); own.PerBar > 1 && p.Mould.WidthMM > 0 {
				own.PerBar = max(min(own.PerBar, int(math.Floor(p.Mould.WidthMM/wide))), 1)
			}
		}
		for at, v := range map[*float64]float64{
			&own.TipMM: usual.TipMM, &own.ValleyMM: usual.ValleyMM, &own.WideMM: usual.WideMM, &own.NarrowMM: usual.NarrowMM,
			&own.WidthMM: usual.WidthMM, &own.HeightMM: usual.HeightMM, &own.Profile: usual.Profile, &own.CoilMM: usual.CoilMM, &own.OverlapPercent: usual.OverlapPercent,
			&own.HeadMM: usual.HeadMM, &own.TailMM: usual.TailMM, &own.WindMM: usual.WindMM, &own.PitchMM: usual.PitchMM,
			&own.SwingMM: usual.SwingMM, &own.WaveMM: usual.WaveMM, &own.LayerMM: usual.LayerMM, &own.ReliefMM: usual.ReliefMM,
		} {
			if *at == 0 {
				*at = v
			}
		}
		return p, nil
	}
}
