package learn

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook/live"
)

// stepPath is the path of when a step is planned to begin: of its own task, or of the first of its batch for what comes before any.
func stepPath(sheet *pour.Sheet, step live.Step) string {
	if step.Kind == live.StepLyeIn {
		return string(step.Batch) + ".lye_in_at_min"
	}
	return taskPath("run", sheet.Run, sheet.Stints(), step)
}

func cutStepPath(sheet *pour.Sheet, step live.Step) string {
	return taskPath("cut_run", sheet.CutRun, sheet.CutStints(), step)
}

func taskPath(list string, run []pour.Task, stints []pour.Stint, step live.Step) string {
	key := ""
	for _, st := range stints {
		if st.Key == step.Key || step.Kind == live.StepMakeLye && st.Batch == step.Batch {
			key = st.Tasks[0].Key
			break
		}
	}
	i := slices.IndexFunc(run, func(t pour.Task) bool { return t.Key == key })
	if i < 0 {
		return ""
	}
	return fmt.Sprintf("%s[%d].start_min", list, i)
}

// piecePath is the path of what a piece of the cut loaf weighs.
func piecePath(p pour.Piece) string {
	switch {
	case p.Bar > 0:
		return fmt.Sprintf("cut.bars[%d].cut_g", p.Bar-1)
	case p.Name == pour.NameTrims:
		return "cut.trims_g"
	}
	return "cut.sample_g"
}

// weighingPath is the path of what is weighed: of a batch or, in older logs, of base and icing together.
func weighingPath(sheet *pour.Sheet, n pour.BatchName, w pour.Weighing) string {
	b := sheet.Batch(n)
	if b == nil {
		i := slices.IndexFunc(sheet.Totals, func(x pour.Weighing) bool { return x.Name == w.Name && x.Kind == w.Kind })
		return fmt.Sprintf("totals[%d].g", i)
	}
	at := string(n) + "."
	switch w.Kind {
	case pour.WeighAlkali:
		return at + map[string]string{pour.NameNaOH: "naoh_to_weigh_g", pour.NameKOH: "koh_to_weigh_g", pour.NameStock: "stock_to_weigh_g"}[w.Name]
	case pour.WeighWater:
		return at + "water_to_add_g"
	case pour.WeighOil:
		if i := slices.IndexFunc(b.Oils, func(x pour.OilLine) bool { return x.Name == w.Name }); i >= 0 {
			return fmt.Sprintf("%soils[%d].weigh_g", at, i)
		}
		return at + "oils_weigh_g" // ready-mixed
	case pour.WeighExtra:
		if i := slices.IndexFunc(b.Extras, func(x pour.ExtraLine) bool { return x.Name == w.Name }); i >= 0 {
			return fmt.Sprintf("%sextras[%d].g", at, i)
		}
	}
	return jugWeighingPath(b, w)
}

// jugWeighingPath is the path of what is weighed into a jug.
func jugWeighingPath(b *pour.BatchSheet, w pour.Weighing) string {
	i := slices.IndexFunc(b.Jugs, func(j pour.JugSheet) bool { return j.Name == w.Jug })
	if i < 0 {
		return ""
	}
	at, j := fmt.Sprintf("%s.jugs[%d].", b.Name, i), &b.Jugs[i]
	switch w.Kind {
	case pour.WeighBatter:
		return at + "batter_weigh_g"
	case pour.WeighScent:
		if k := slices.IndexFunc(j.Scents, func(x pour.ScentGrams) bool { return x.Name == w.Name }); k >= 0 {
			return fmt.Sprintf("%sscents[%d].g", at, k)
		}
	case pour.WeighColour:
		if k := slices.IndexFunc(j.Colourants, func(x pour.DoseLine) bool { return x.Name == w.Name }); k >= 0 {
			return fmt.Sprintf("%scolourants[%d].pigment_g", at, k)
		}
	case pour.WeighCarrier:
		if k := slices.IndexFunc(j.Colourants, func(x pour.DoseLine) bool { return x.CarrierName == w.Name }); k >= 0 {
			return fmt.Sprintf("%scolourants[%d].carrier_g", at, k)
		}
	}
	return ""
}
