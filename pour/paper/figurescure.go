package paper

import "pourbench/pour"

// CureReport is how a usual bar is forecast to dry, before one was weighed; days are from the cut. Null: it could not be worked out.
type CureReport struct {
	ThickMM            Number `json:"thick_mm"`
	WideMM             Number `json:"wide_mm"`
	HighMM             Number `json:"high_mm"`
	CutMoisturePercent Number `json:"cut_moisture_percent"`
	LossPercent        Number `json:"loss_percent"`
	LossSDPercent      Number `json:"loss_sd_percent"`
	TauDays            Number `json:"tau_days"`
	LnTauSD            Number `json:"ln_tau_sd"`
	CriterionPercent   Number `json:"criterion_percent"`
	ReadyDay           Number `json:"ready_day"`
	ReadyEarlyDay      Number `json:"ready_early_day"`
	ReadyLateDay       Number `json:"ready_late_day"`
	FinalG             Number `json:"final_g"`
	PackDay            Number `json:"pack_day"`
	PackG              Number `json:"pack_g"`
	PackLightG         Number `json:"pack_light_g"`
	PackHeavyG         Number `json:"pack_heavy_g"`
	PackLossPercent    Number `json:"pack_loss_percent"`
	CutForLabelG       Number `json:"cut_for_label_g"` // null: no label is stated
	OwnBatches         Number `json:"own_batches"`
}

func cureReport(s pour.Sheet) *CureReport {
	c := &s.Cure
	if !c.TauDays.Known {
		return nil
	}
	return &CureReport{
		ThickMM: known(c.ThickMM), WideMM: known(c.WideMM), HighMM: known(c.HighMM), CutMoisturePercent: known(c.CutMoisturePercent),
		LossPercent: known(c.LossPercent), LossSDPercent: known(c.LossSDPercent), TauDays: known(c.TauDays), LnTauSD: known(c.LnTauSD), CriterionPercent: known(c.CriterionPercent),
		ReadyDay: known(c.ReadyDay.Mid), ReadyEarlyDay: known(c.ReadyDay.Low), ReadyLateDay: known(c.ReadyDay.High), FinalG: known(c.FinalG),
		PackDay: known(c.PackDay), PackG: known(c.PackG.Mid), PackLightG: known(c.PackG.Low), PackHeavyG: known(c.PackG.High),
		PackLossPercent: known(c.PackLossPercent), CutForLabelG: known(c.CutForLabelG), OwnBatches: known(c.OwnBatches),
	}
}
