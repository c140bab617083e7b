package paper

import (
	"time"

	"pourbench/pour"
)

// moment draws a planned time on the run clock: "+9:00", and the wall clock before it when the plan says when it is poured.
func (d *desk) moment(min float64) string {
	text := d.show.RunTime(min)
	if d.sheet.Plan.PourAt.IsZero() {
		return text
	}
	return d.wall(min).Format("15:04") + " " + text
}

// wall is the moment of a minute on the run clock, to the minute.
func (d *desk) wall(min float64) time.Time {
	return d.sheet.Plan.PourAt.Add(time.Duration(min * float64(time.Minute))).Round(time.Minute)
}

// span draws two predicted times on the run clock; either may be unknown.
func (d *desk) span(from, to pour.Figure) string {
	switch {
	case from.Known && to.Known:
		return d.show.Predicted(from.V) + " to " + d.show.Predicted(to.V)
	case from.Known:
		return "from " + d.show.Predicted(from.V)
	case to.Known:
		return "until " + d.show.Predicted(to.V)
	}
	return d.show.Figure(from, d.show.Predicted)
}
