package paper

import (
	"fmt"

	"pourbench/pour"
)

// drying is when bars are forecast to be dry and what they weigh when they are packed; nothing where the plan says nothing of it.
func (d *desk) drying() {
	c := &d.sheet.Cure
	if d.sheet.Plan.Cure == (pour.Cure{}) || !c.TauDays.Known || d.stopped {
		return
	}
	day := func(f pour.Figure) string { return d.show.Number(f.V, 0) }
	d.tick(row{
		text:   fmt.Sprintf("Dry, losing less than %s a week, from about day %s after the cut, %s to %s", d.show.Percent(c.CriterionPercent.V, 2), day(c.ReadyDay.Mid), day(c.ReadyDay.Low), day(c.ReadyDay.High)),
		figure: day(c.ReadyDay.Mid) + " d", write: true,
	})
	d.tick(row{
		text:   fmt.Sprintf("One bar packed on day %s, %s to %s", day(c.PackDay), d.show.Weight(c.PackG.Low.V), d.show.Weight(c.PackG.High.V)),
		figure: d.show.Weight(c.PackG.Mid.V), write: true,
	})
	if c.CutForLabelG.Known {
		d.tick(row{text: fmt.Sprintf("For %s on the label a bar is cut to weigh", d.show.Weight(d.sheet.Plan.Cure.LabelG)), figure: d.show.Weight(c.CutForLabelG.V), write: true})
	}
}
