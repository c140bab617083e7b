package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// drying is when bars are forecast to be dry and what they weigh when they are packed.
func drying() Panel {
	return Panel{ID: "drying", Title: "Drying", cells: keys.Numbers, Grid: (*Facts).dryingGrid}
}

func (f *Facts) dryingGrid() grid.Grid {
	c := &f.Timed.Cure
	days := func(v float64) string { return f.Show.Number(v, 0) }
	day := func(v pour.Figure) pour.Amount {
		return pour.Amount{Number: f.Show.Figure(v, days), Unit: string(pour.UnitDay)}
	}
	weight := func(v pour.Figure) pour.Amount { return f.timedAmount(f.Show.FigureApart(v, f.Show.WeightApart)) }
	forecast := "forecast, no bar weighed"
	if c.OwnBatches.V > 0 {
		forecast = "by " + days(c.OwnBatches.V) + " of your batches"
	}
	if c.Refused != "" {
		forecast = c.Refused
	}
	rows := []grid.Row{
		f.stated("cure.weekly_loss_percent"),
		f.figure("dry after the cut", f.timedAmount(day(c.ReadyDay.Mid)), "cure.ready_day", forecast),
		f.figure("at the earliest", f.timedAmount(day(c.ReadyDay.Low)), "cure.ready_early_day", "8 of 10 lie between"),
		f.figure("at the latest", f.timedAmount(day(c.ReadyDay.High)), "cure.ready_late_day", "it leans early"),
		f.field("bed.cure_days", "after the cut"), f.stated("cure.pack_days"),
		f.figure("a bar then weighs", weight(c.PackG.Mid), "cure.pack_g", ""),
		f.figure("a light one", weight(c.PackG.Low), "cure.pack_light_g", "1 in 10 is under it"),
		f.figure("it loses a week then", f.timedAmount(f.Show.FigureApart(c.PackLossPercent, func(v float64) pour.Amount { return f.Show.PercentApart(v, 2) })), "cure.pack_loss_percent", ""),
		f.figure("and in the end", weight(c.FinalG), "cure.final_g", ""),
		f.stated("cure.label_g"),
	}
	if f.Plan.Cure.WeeklyLossPercent == 0 {
		f.instead(&rows[0].Cells[formValue], pour.Know(f.Plan.Cure.Criterion()), "cure.criterion_percent", func(v float64) string { return f.Show.Number(v, 1) })
	}
	if f.Plan.Cure.PackDays == 0 {
		f.instead(&rows[5].Cells[formValue], pour.Know(f.Plan.PackDay()), "cure.pack_day", days)
	}
	if f.Plan.Cure.LabelG > 0 {
		rows = append(rows, f.figure("cut for it", weight(c.CutForLabelG), "cure.cut_for_label_g", "to weigh that when packed"))
	}
	return grid.Grid{Columns: formColumns(labelW, valueW), Rows: rows}
}
