package paper

import "pourbench/pour"

func icingReport(s pour.Sheet) *IcingReport {
	return &IcingReport{BatchReport: batchReport(*s.Icing), ShapeG: known(s.Piping.UnitG), MadeG: known(s.Piping.MadeG)}
}

// pipingReport is nil where the plan states no shape.
func pipingReport(p pour.PipingSheet) *PipingReport {
	if !p.Stated() {
		return nil
	}
	r := &PipingReport{
		UnitML: known(p.UnitML), DensityGML: known(p.DensityGML), NetG: known(p.NetG), NeedG: known(p.NeedG), LeftG: known(p.LeftG), RestG: known(p.RestG),
		WidthMM: known(p.WidthMM), HighMM: known(p.HighMM), MeanMM: known(p.MeanMM), GapMM: known(p.GapMM), LaneMM: known(p.LaneMM), PeakMM: known(p.PeakMM),
		PipeMin: known(p.PipeMin), WindowFromMin: known(p.Window.From), WindowToMin: known(p.Window.To),
	}
	if p.Units > 0 {
		r.Units = &p.Units
	}
	if p.PipeMin.Known {
		r.Bags, r.Fills = &p.Bags, &p.Fills
	}
	return r
}
