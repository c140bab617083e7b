package pour

import "pourbench/chem/cure"

// Cure is what a maker wants of her bars as they dry.
type Cure struct {
	WeeklyLossPercent float64 // she calls a bar dry once it loses less a week; 0: as usual
	PackDays          float64 // days after the cut on which bars are packed and labelled; 0: after the days of cure
	LabelG            float64 // what the label says a bar weighs; 0: not stated
}

func cureFields(c *Cure) []Field {
	return []Field{
		{Key: "weekly_loss_percent", Label: "dry: loses a week", Need: Quiet, Unit: UnitPercent, High: 10, Step: 0.1, At: &c.WeeklyLossPercent, Means: "a bar is called dry once it loses less of its mass in a week; 0: 0.5, common practice; it says nothing of lye"},
		{Key: "pack_days", Label: "packed after", Need: Quiet, Unit: UnitDay, High: 730, Step: 1, At: &c.PackDays, Means: "days after the cut on which bars are packed and labelled; 0: after bed.cure_days"},
		{Key: "label_g", Label: "label says", Need: Quiet, Unit: UnitGram, High: 5000, Step: 1, At: &c.LabelG, Means: "what the label says that a bar weighs; 0: not stated"},
	}
}

// Criterion is the weekly loss, percent, under which a bar is called dry.
func (c Cure) Criterion() float64 {
	if c.WeeklyLossPercent > 0 {
		return max(c.WeeklyLossPercent, leastCriterion)
	}
	return cure.CriterionLoss
}

// leastCriterion is the least that a loss of a week could still be weighed at, percent.
const leastCriterion = 0.01

// PackDay is how many days after the cut bars are packed.
func (p Plan) PackDay() float64 {
	if p.Cure.PackDays > 0 {
		return p.Cure.PackDays
	}
	return p.Bed.CureDays
}
