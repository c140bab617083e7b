package paper

import (
	"strings"

	"pourbench/chem"
	"pourbench/pour"
)

func stageName(i int) string { return chem.Stage(i).String() }

func (d *desk) colour(b batch) {
	if !anyJug(b, coloured) {
		d.nothing(b, stepColour)
		return
	}
	d.begin(b, stepColour, coloured)
	for _, turn := range d.turns(b, pour.TaskColour, coloured) {
		var parts []string
		for _, dose := range turn.jug.Colourants {
			parts = append(parts, dose.Name+" "+d.show.Dose(dose.PigmentG))
			if dose.CarrierG > 0 {
				parts = append(parts, dose.CarrierName+" "+d.show.Dose(dose.CarrierG))
			}
		}
		d.tick(row{text: "Stir into " + turn.jug.Name + ": " + strings.Join(parts, ", "), figure: d.turnAt(turn), write: true})
		d.jugAlerts(b, stepColour, turn.jug.Name)
	}
}

func (d *desk) scent(b batch) {
	if len(b.Scents) == 0 {
		d.nothing(b, stepScent)
		return
	}
	d.begin(b, stepScent, scented)
	for _, turn := range d.turns(b, pour.TaskScent, scented) {
		var parts []string
		for _, x := range turn.jug.Scents {
			parts = append(parts, x.Name+" "+d.show.Dose(x.G))
		}
		d.tick(row{text: "Stir into " + turn.jug.Name + " by hand: " + strings.Join(parts, ", "), figure: d.turnAt(turn), write: true})
		d.jugAlerts(b, stepScent, turn.jug.Name)
	}
}

// pour is every act in which a batch is used, as its script tells them.
func (d *desk) pour(b batch) {
	d.begin(b, stepPour, everyJug)
	if b.Name == pour.Icing {
		d.info("The bag holds fresh batter: gloves stay on. Pipe when it holds a peak; what is left goes into a spare mould, never into a drain.")
	} else if !d.sheet.Plan.Trial {
		d.technique()
	}
	for _, st := range d.sheet.Stints() {
		if st.Batch == b.Name && st.Tasks[0].Act != pour.NoAct {
			d.tick(row{text: sentence(d.sheet.Tell(st)), figure: d.moment(st.StartMin), write: true})
		}
	}
	for _, j := range b.Jugs {
		d.info(d.window(j))
		d.jugAlerts(b, stepPour, j.Name)
	}
	if b.Name == pour.Base {
		d.order()
	}
}

// technique says how the jugs meet.
func (d *desk) technique() {
	t, ok := d.shelf.Technique(d.sheet.Plan.Swirl.Technique)
	if !ok {
		return
	}
	d.info("Technique: " + sentence(t.Name) + " " + sentence(t.Do))
	d.info("It suits batter at " + t.Suits() + " trace. Left and right are as seen from the marked end of the mould.")
	if t.Drawn().InPot() {
		d.info("The batter of " + d.jugName(0) + " stays where it is, in the pot: the others go into it.")
	}
}

// window is how much a jug holds, when it is used and when it suits the technique, and the chance that it does not.
func (d *desk) window(j pour.JugSheet) string {
	text := j.Name + ", " + d.show.Weight(j.TotalG)
	if j.Clock.PourAtMin.Known {
		text += ", used at " + d.moment(j.Clock.PourAtMin.V)
		if j.Clock.LastAtMin.V > j.Clock.PourAtMin.V {
			text += " to " + d.moment(j.Clock.LastAtMin.V)
		}
	}
	if !j.Clock.Window.From.Known && !j.Clock.Window.To.Known {
		text += ", window not known"
	} else {
		text += ", window " + d.span(j.Clock.Window.From, j.Clock.Window.To)
	}
	if j.Clock.LateChancePercent.Known {
		text += ", chance of being too thick at the end " + d.show.Percent(j.Clock.LateChancePercent.V, 0)
		if j.Clock.LateJug != j.Name {
			text += " (" + j.Clock.LateJug + " in it)"
		}
	}
	if j.Clock.EarlyChancePercent.Known {
		text += ", of being too thin at first " + d.show.Percent(j.Clock.EarlyChancePercent.V, 0)
	}
	return text + "."
}

// turn is a jug's turn in a step.
type turn struct {
	jug       pour.JugSheet
	planned   pour.Figure // on the run clock, min
	lengthMin float64
}

func (d *desk) turnAt(t turn) string { return d.show.Figure(t.planned, d.moment) }

// turns lists the jugs of a step in the order of the run, and after them those the run has no task for.
func (d *desk) turns(b batch, kind pour.TaskKind, is func(pour.JugSheet) bool) []turn {
	var out []turn
	seen := map[string]bool{}
	for _, t := range d.sheet.Run {
		if t.Kind != kind || t.Batch != b.Name {
			continue
		}
		for _, j := range b.Jugs {
			if j.Name == t.Jug && is(j) && !seen[j.Name] {
				seen[j.Name] = true
				out = append(out, turn{j, pour.Know(t.StartMin), t.LengthMin})
			}
		}
	}
	for _, j := range b.Jugs {
		if is(j) && !seen[j.Name] {
			out = append(out, turn{jug: j, planned: j.Clock.PourAtMin})
		}
	}
	return out
}
