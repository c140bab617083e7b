package paper

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
)

// pour is the whole pour on one clock, in the order of the hands; what stands in a section of its own is pointed to.
func (d *desk) pour() {
	d.begin("", stepPour)
	if d.stopped {
		d.withheld()
		return
	}
	begun := map[pour.BatchName]bool{}
	for _, st := range d.sheet.Stints() {
		if st.Tasks[0].Act != pour.NoAct && st.Batch != "" && !begun[st.Batch] {
			begun[st.Batch] = true
			d.before(d.batch(st.Batch))
		}
		d.stint(d.batch(st.Batch), st)
	}
}

// stint is one step of the pour.
func (d *desk) stint(b batch, st pour.Stint) {
	text, at := "", stepMix
	switch st.Kind {
	case pour.TaskCoolLye:
		text = fmt.Sprintf("make the lye (section %d); it cools for %s", d.number(b.Name, stepLye), d.show.Span(st.LengthMin))
	case pour.TaskMix:
		d.keep(func() { d.mix(b) })
		return
	case pour.TaskSplit:
		d.keep(func() { d.split(b, st) })
		return
	case pour.TaskColour:
		text, at = "stir in the colour of "+st.Jug, stepColour
	case pour.TaskScent:
		text, at = "scent "+st.Jug+", by hand", stepScent
	case pour.TaskBed:
		d.tick(row{text: fmt.Sprintf("put it to bed (section %d)", d.number("", placeBed)), figure: d.moment(st.StartMin), write: true})
		return
	default:
		text = d.done(st)
	}
	if at != stepMix {
		d.alerts(at, besideJugs(b, everyJug))
	}
	d.tick(row{text: d.of(st.Batch, text), figure: d.moment(st.StartMin), write: true})
	if st.Jug != "" && (at == stepColour || at == stepScent) {
		d.alerts(at, ofJug(b, st.Jug))
	}
}

// done is what a stint does and, at the step itself, which jugs are likely too thick for it by then: at the bench nobody leafs back.
func (d *desk) done(st pour.Stint) string {
	text := d.sheet.Tell(st)
	if text == "" {
		text = st.Name()
	}
	const late = "; likely too thick by then"
	switch thick := d.sheet.TooThick(st); {
	case len(thick) == 0:
		return text
	case len(thick) > 2 && len(thick) == len(d.sheet.Moves(st)):
		return text + late + ": all of them"
	default:
		return text + late + ": " + strings.Join(thick, ", ")
	}
}

// mix is bringing lye and oils together.
func (d *desk) mix(b batch) {
	d.alerts(stepMix, ofBatch(b.Name))
	if !d.cools(b.Name) {
		d.tick(row{text: d.of(b.Name, fmt.Sprintf("the lye is made (section %d)", d.number(b.Name, stepLye))), write: true})
	}
	if text := b.IntoOils(); text != "" {
		d.tick(row{text: d.of(b.Name, text), write: true})
	}
	d.tick(row{text: d.of(b.Name, "oils at"), figure: d.show.Temp(b.plan.OilsC), write: true})
	d.more(row{text: "lye at", figure: d.show.Temp(b.plan.LyeC), write: true})
	d.tick(row{text: d.of(b.Name, "lye into the oils, through the strainer; write the time down"), figure: d.moment(b.LyeInAtMin), write: true})
	met := "batter right after, expected"
	if b.plan.BatterMeasured {
		met = "batter right after, as measured before"
	}
	d.more(row{text: met, figure: d.show.Temp(b.Heat.MixC), write: true})
	if len(b.plan.Blend) == 0 {
		d.more(row{text: "stir by hand until no oil streaks are left", write: true})
	}
	for _, burst := range b.plan.Blend {
		d.more(row{text: "stick-blend " + d.show.Plain(burst.S, pour.UnitSecond) + " s, from this lye-in at", figure: d.show.RunTime(burst.AtMin), write: true})
	}
	if text := b.AtEmulsion(); text != "" {
		d.tick(row{text: d.of(b.Name, text), figure: d.emulsion(b), write: true})
	}
	d.stages(b)
}

// emulsion is when a batch is expected to be one, from its own lye-in; "" where that is not known.
func (d *desk) emulsion(b batch) string {
	if len(b.Jugs) == 0 || !d.sheet.Timed || b.Refused.Times != "" || !b.Jugs[0].Clock.Stages[chem.Emulsion].Mid.Known {
		return ""
	}
	return d.show.Predicted(b.Jugs[0].Clock.Stages[chem.Emulsion].Mid.V)
}

// cools says whether the run says when a lye is made.
func (d *desk) cools(n pour.BatchName) bool {
	return slices.ContainsFunc(d.sheet.Run, func(t pour.Task) bool { return t.Kind == pour.TaskCoolLye && t.Batch == n })
}

// stages says when the pot is expected at each stage, counted from this batch's own lye-in.
func (d *desk) stages(b batch) {
	if len(b.Jugs) == 0 || !d.sheet.Timed || b.Refused.Times != "" {
		d.info("No stage times: go by what you see. " + sentence(b.Refused.Times))
		return
	}
	pot := b.Jugs[0]
	d.info("Stages expected in " + pot.Name + " from this lye-in, with the band that holds about 4 of 5 pours; write down when you see them:")
	for i, t := range pot.Clock.Stages {
		text := chem.Stage(i).String()
		if t.Low.Known || t.High.Known {
			text += ", " + d.span(t.Low, t.High)
		}
		d.more(row{text: text, figure: d.show.Figure(t.Mid, d.show.Predicted), write: true})
	}
}

// split is weighing the jugs off.
func (d *desk) split(b batch, st pour.Stint) {
	d.tick(row{text: d.of(b.Name, "split; no oil streaks left; what stays is "+potOf(b)), figure: d.moment(st.StartMin), write: true})
	d.alerts(stepSplit, besideJugs(b, everyJug))
	for i, j := range b.Jugs {
		text := "into " + j.Name
		if i == 0 {
			text = "stays in " + j.Name
		}
		d.more(row{text: text + ", " + d.show.Percent(j.SharePercent, 1), figure: d.show.Weight(j.BatterWeighG), write: true})
		d.alerts(stepSplit, ofJug(b, j.Name))
	}
	d.more(row{text: "all batter together", figure: d.show.Weight(b.Size.BatterWeighG), write: true})
}

func potOf(b batch) string {
	if len(b.Jugs) == 0 {
		return "the pot"
	}
	return b.Jugs[0].Name
}

// before is what is to be known before the first act of a batch: how it is done, and when each jug suits.
func (d *desk) before(b batch) {
	for _, at := range []step{stepColour, stepScent, stepPour} {
		d.alerts(at, ofBatch(b.Name))
	}
	if b.Name == pour.Icing {
		d.info("Pipe when it holds a peak.")
	} else if !d.sheet.Plan.Trial {
		d.technique()
	}
	d.windows(b)
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
	text := sentence(t.Name) + " " + sentence(t.Do) + " It suits batter at " + t.Suits() + " trace. Left and right are as seen from the marked end of the mould."
	if t.Drawn().InPot() {
		text += " The batter of " + d.jugName(0) + " stays where it is, in the pot: the others go into it."
	}
	d.info(text)
}

// windows is a line for each jug: how much it holds, when it suits the technique, and the chance that it does not when its turn comes.
func (d *desk) windows(b batch) {
	columns := []column{{}, {head: "in all", figure: true}, {head: "turn", figure: true}, {head: "window", figure: true}, {head: "too thin", figure: true}, {head: "too thick", figure: true}}
	percent := func(v float64) string { return d.show.Percent(v, 0) }
	var rows [][]string
	for _, j := range b.Jugs {
		if j.SharePercent == 0 {
			continue
		}
		c := j.Clock
		late := d.show.Figure(c.LateChancePercent, percent)
		if c.LateChancePercent.Known && c.LateJug != j.Name {
			late += " (" + c.LateJug + ")"
		}
		rows = append(rows, []string{j.Name, d.show.Weight(j.TotalG), d.show.Figure(c.PourAtMin, d.show.RunTime), d.span(c.Window.From, c.Window.To), d.show.Figure(c.EarlyChancePercent, percent), late})
	}
	d.listed("Jugs, and the chance of each when its turn comes:", columns, rows)
}
