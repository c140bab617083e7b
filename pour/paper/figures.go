package paper

import (
	"encoding/json"
	"fmt"
	"io"
	"math"

	"pourbench/chem"
	"pourbench/pour"
)

// Figures maps a sheet to the report. It works nothing out; of a plan that could not be worked out it reports the warnings and nulls.
func Figures(s pour.Sheet) Report {
	show := s.Plan.Show
	r := Report{
		Plan: s.Plan.Name, ScaleStepG: finite(show.ScaleStepG), LyeStepG: finite(show.LyeStepG), LossPercent: finite(s.Plan.Mould.LossPercent),
		Base: noBatch(), Toppings: toppingReports(s.Toppings), Run: []TaskReport{}, CutRun: []TaskReport{}, Neighbours: []NeighbourReport{}, Warnings: make([]WarningReport, len(s.Warnings)),
		Embeds: embeds(s), EmbedKinds: embedKinds(s),
	}
	for i, w := range s.Warnings {
		r.Warnings[i] = WarningReport{w.Code, string(w.Severity), w.Where, w.Text}
	}
	if !worked(s) {
		return r
	}
	r.Base, r.Bars, r.Cut, r.Cure, r.Cost = batchReport(s.Base), barsReport(s), cutReport(s), cureReport(s), costReport(s)
	r.Label = labelReport(s)
	if s.Icing != nil {
		r.Icing, r.Piping = icingReport(s), pipingReport(s.Piping)
	}
	for _, t := range s.Run {
		r.Run = append(r.Run, taskReport(t))
	}
	for _, t := range s.CutRun {
		r.CutRun = append(r.CutRun, taskReport(t))
	}
	for _, p := range s.Mingling.Pairs {
		r.Neighbours = append(r.Neighbours, NeighbourReport{s.Base.Jugs[p.A].Name, s.Base.Jugs[p.B].Name, finite(p.ContactPercent), finite(p.Score)})
	}
	return r
}

// WriteFigures writes the report as one indented JSON object and a newline. Its error is the writer's.
func WriteFigures(w io.Writer, s pour.Sheet) error {
	if err := encode(w, Figures(s)); err != nil {
		return fmt.Errorf("write the figures of %q: %w", s.Plan.Name, err)
	}
	return nil
}

// encode writes figures as JSON that a person reads too.
func encode(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false)
	return out.Encode(v)
}

// worked says whether the sheet holds figures: a plan with faults gives a sheet that holds only its warnings.
func worked(s pour.Sheet) bool { return len(s.Base.Jugs) > 0 }

func noBatch() BatchReport {
	return BatchReport{Oils: []OilReport{}, Extras: []ExtraReport{}, Jugs: []JugReport{}}
}

func batchReport(b pour.BatchSheet) BatchReport {
	r := BatchReport{
		OilsG: finite(b.Size.OilsG), NaOHPureG: finite(b.Lye.NaOH.PureG), KOHPureG: finite(b.Lye.KOH.PureG),
		NaOHPurityPercent: finite(b.Lye.NaOH.PurityPercent), KOHPurityPercent: finite(b.Lye.KOH.PurityPercent),
		NaOHWeighedG: finite(b.Lye.NaOH.WeighedG), KOHWeighedG: finite(b.Lye.KOH.WeighedG),
		StockLyeG: finite(b.Lye.Stock.WeighedG), StockLyePercent: finite(b.Lye.Stock.StrengthPercent), WaterToAddG: known(b.Lye.WaterToAddG),
		ExtrasG: finite(b.Size.ExtrasG), WaterInExtrasG: finite(b.Lye.WaterInExtrasG),
		LyeConcentrationPercent: finite(b.Lye.ConcentrationPercent), LyeAsMixedPercent: finite(b.Lye.AsMixedPercent),
		BatterG: finite(b.Size.BatterG), BatterML: finite(b.Size.BatterML),
		SuperfatPercent: finite(b.Superfat.PlannedPercent), SuperfatAsWeighedPercent: finite(b.Superfat.AsWeighedPercent),
		SuperfatLowPercent: finite(b.Superfat.LowPercent), SuperfatHighPercent: finite(b.Superfat.HighPercent),
		LyeRiseK: known(b.Heat.LyeRiseK), LyeInAtMin: finite(b.LyeInAtMin),
		Oils: make([]OilReport, len(b.Oils)), Extras: make([]ExtraReport, len(b.Extras)), Jugs: make([]JugReport, len(b.Jugs)),
	}
	for i, o := range b.Oils {
		r.Oils[i] = OilReport{o.Name, finite(o.G), finite(o.SapKOHMgG), finite(o.SapLow), finite(o.SapHigh)}
	}
	for i, x := range b.Extras {
		r.Extras[i] = ExtraReport{x.Name, finite(x.G), finite(x.WaterPercent)}
	}
	for i, j := range b.Jugs {
		r.Jugs[i] = jugReport(j)
	}
	return r
}

func jugReport(j pour.JugSheet) JugReport {
	r := JugReport{
		Name: j.Name, SharePercent: finite(j.SharePercent), BatterG: finite(j.BatterG), BatterWeighG: finite(j.BatterWeighG), TotalG: finite(j.TotalG),
		SuperfatPercent: finite(j.Superfat.HeldPercent), SuperfatLowPercent: finite(j.Superfat.LowPercent),
		Colourants: make([]ColourantReport, len(j.Colourants)), Scents: make([]ScentReport, len(j.Scents)),
		ScentLoadPercent: finite(j.ScentLoadPercent), StageMin: stagesReport(j.Clock.Stages),
		PourAtMin: known(j.Clock.PourAtMin), LateChancePercent: known(j.Clock.LateChancePercent),
	}
	for i, d := range j.Colourants {
		r.Colourants[i] = ColourantReport{d.Name, finite(d.PigmentG), finite(d.CarrierG)}
	}
	for i, x := range j.Scents {
		r.Scents[i] = ScentReport{x.Name, finite(x.G)}
	}
	return r
}

func stagesReport(stages [chem.Stages]pour.StageTime) StagesReport {
	band := func(stage chem.Stage) [3]Number {
		t := stages[stage]
		return [3]Number{known(t.Low), known(t.Mid), known(t.High)}
	}
	return StagesReport{band(chem.Emulsion), band(chem.Light), band(chem.Medium), band(chem.Thick), band(chem.Stiff)}
}

func barsReport(s pour.Sheet) BarsReport {
	b := s.Bars
	r := BarsReport{
		BarCount: &b.Count, ThicknessMM: finite(b.ThicknessMM), CutG: finite(b.CutG), CuredG: finite(b.CuredG),
		FinalMoisturePercent: finite(b.FinalMoisturePercent), StandsMM: finite(b.StandsMM), OverRimMM: finite(b.OverRimMM),
	}
	if s.Icing != nil {
		r.IcingPerBarG = finite(b.IcingPerBarG)
	}
	return r
}

// taskReport is a task as it is handed on.
func taskReport(t pour.Task) TaskReport {
	word := func(s string) *string {
		if s == "" {
			return nil
		}
		return &s
	}
	return TaskReport{
		Task: string(t.Kind), Batch: word(string(t.Batch)), Jug: word(t.Jug), Item: word(t.Item), Part: known(t.Part), Round: known(t.Round),
		StartMin: finite(t.StartMin), LengthMin: finite(t.LengthMin),
	}
}

func known(f pour.Figure) Number {
	if !f.Known {
		return nil
	}
	return finite(f.V)
}

// finite keeps out what JSON cannot write: a figure that is no number is not known.
func finite(v float64) Number {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
