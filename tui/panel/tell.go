package panel

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/look"
)

// Told is the panel in words, one paragraph each, where its grid does not say all that is drawn; a panel with a grid has one for each of
// its rows. Nil: its grid says all.
func (p *Panel) Told(f *Facts) []string {
	if p.tell == nil {
		return nil
	}
	return p.tell(f)
}

// tellClock says of every jug when it is poured, what suits it, and when it comes to each stage.
func (f *Facts) tellClock(n pour.BatchName) []string {
	batch := batchOf(f.Timed, n)
	if batch == nil {
		return nil
	}
	var out []string
	for i, j := range batch.Jugs {
		text := look.Letter(i) + " " + j.Name + ": "
		if batch.Refused.Times != "" {
			out = append(out, text+"no times: "+batch.Refused.Times)
			continue
		}
		if turn := f.turnWords(j); turn != "" {
			text += turn
			if late, _ := f.lateWords(j); late != "" {
				text += "," + late
			}
			text += "; "
		}
		out = append(out, text+f.windowWords(j)+f.stagesText(j))
	}
	return out
}

// windowWords says which minutes suit the technique.
func (f *Facts) windowWords(j pour.JugSheet) string {
	w := j.Clock.Window
	switch {
	case !w.From.Known:
		return ""
	case !w.To.Known:
		return "suits from " + f.Show.RunTime(w.From.V) + " on; "
	}
	return "suits from " + f.Show.RunTime(w.From.V) + " to " + f.Show.RunTime(w.To.V) + "; "
}

// tellFilling says how high the batter stands, and what lies on what.
func (f *Facts) tellFilling() []string {
	stands := f.Sheet.Base.Size.HeightMM
	if !pour.AsFigure(stands).Known {
		return []string{heightsUnknown}
	}
	out := []string{f.mouldTold(), "the base stands at " + f.Show.LenTold(stands)}
	if f.Sheet.Icing != nil && pour.AsFigure(f.Sheet.Icing.Size.HeightMM).Known {
		out[1] += ", with the icing at " + f.Show.Len(stands+f.Sheet.Icing.Size.HeightMM)
	}
	return out
}

// mouldTold is the mould in words.
func (f *Facts) mouldTold() string {
	m := f.Plan.Mould
	if m.Shape == pour.ShapeLoaf || m.Shape == pour.ShapeSlab {
		return fmt.Sprintf("the mould is %s wide and %s long, its rim at %s", f.Show.Len(m.WidthMM), f.Show.Len(m.LengthMM), f.Show.Len(m.HeightMM))
	}
	return "the mould: " + f.mouldSize() + ", its rim at " + f.Show.Len(m.HeightMM)
}

// tellBehaviour says of every scent of the plan what the shelf says of it.
func (f *Facts) tellBehaviour() []string {
	var out []string
	for _, sc := range f.usedScents() {
		for _, par := range f.scentItem(sc).Detail {
			if par != "" {
				out = append(out, par)
			}
		}
	}
	if len(out) == 0 {
		return []string{noScent}
	}
	return out
}
