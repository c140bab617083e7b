package paper

import (
	"time"

	"pourbench/pour"
)

// moment draws a time on the run clock: "+9 min", and the wall clock before it when the plan says when it is poured.
func (d *desk) moment(min float64) string {
	text := d.minute(min)
	if d.sheet.Plan.PourAt.IsZero() {
		return text
	}
	return d.wall(min).Format("15:04") + " " + text
}

// minute draws a time on the run clock with its sign.
func (d *desk) minute(min float64) string {
	text := d.show.Minutes(min)
	if pour.RoundMinutes(min) > 0 {
		return "+" + text
	}
	return text
}

// wall is the moment of a minute on the run clock, rounded as it is drawn.
func (d *desk) wall(min float64) time.Time {
	rounded := time.Duration(pour.RoundMinutes(min) * float64(time.Minute))
	return d.sheet.Plan.PourAt.Add(rounded).Round(time.Minute)
}

// span draws two times on the run clock; either may be unknown.
func (d *desk) span(from, to pour.Figure) string {
	switch {
	case from.Known && to.Known:
		return d.minute(from.V) + " to " + d.minute(to.V)
	case from.Known:
		return "from " + d.minute(from.V) + ", no end in sight of the clock"
	case to.Known:
		return "until " + d.minute(to.V)
	}
	return d.show.Figure(from, d.minute)
}
