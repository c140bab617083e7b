package paper

import (
	"fmt"

	"pourbench/pour"
)

// run is the whole pour on one clock, in the order of the hands, each task with the section that describes it.
func (d *desk) run() {
	if d.stopped {
		d.withheld(sectionRun, "the run, in order")
		return
	}
	d.heading(sectionRun, "the run, in order", "starts", "actual")
	d.info(d.ready())
	for _, st := range d.sheet.Stints() {
		section := sectionBed
		if s := stepOfTask(st.Tasks[0]); s != placeBed {
			section = sectionOf(st.Batch, s)
		}
		text := string(st.Batch) + ": " + st.Name()
		if section == sectionBed {
			text = st.Name()
		}
		d.tick(row{text: fmt.Sprintf("%s (%d), takes %s", text, section, d.show.Span(st.LengthMin)), figure: d.moment(st.StartMin), write: true})
	}
}

// ready says what has to stand on the bench before the clock starts.
func (d *desk) ready() string {
	text := fmt.Sprintf("Before the first task sections %d to %d are done", sectionGather, sectionRun-1)
	if d.sheet.Icing != nil {
		text += fmt.Sprintf(", and %d to %d for the icing", sectionIcing, sectionOf(pour.Icing, stepScents))
	}
	return text + ". In brackets the section that describes a task."
}

// make is the five sections in which a batch is mixed and used.
func (d *desk) make(b batch) {
	if d.stopped {
		for s := stepMix; s <= stepPour; s++ {
			d.withheld(sectionOf(b.Name, s), titleOf(b.Name, s))
		}
		return
	}
	d.mix(b)
	d.split(b)
	d.colour(b)
	d.scent(b)
	d.pour(b)
}

func (d *desk) mix(b batch) {
	d.begin(b, stepMix, noRow)
	d.oilExtras(b)
	d.tick(row{text: "Oils at", figure: d.show.Temp(b.plan.OilsC), write: true})
	d.tick(row{text: "Lye at", figure: d.show.Temp(b.plan.LyeC), write: true})
	d.tick(row{text: "Lye into the oils, through the strainer; write the time down", figure: d.moment(b.LyeInAtMin), write: true})
	met := "Batter right after, expected"
	if b.plan.BatterMeasured {
		met = "Batter right after, as measured before"
	}
	d.tick(row{text: met, figure: d.show.Temp(b.Heat.MixC), write: true})
	if len(b.plan.Blend) == 0 {
		d.tick(row{text: "Stir by hand until no oil streaks are left", write: true})
	}
	for _, burst := range b.plan.Blend {
		d.tick(row{text: "Stick-blend " + d.show.Plain(burst.S, pour.UnitSecond) + " s, from this lye-in at", figure: d.minute(burst.AtMin), write: true})
	}
	d.stages(b)
}

// oilExtras points to the extras that are stirred into the oils, or keeps the number where none are.
func (d *desk) oilExtras(b batch) {
	if len(b.ExtrasJoining(pour.JoinsOils)) == 0 {
		d.skip()
		return
	}
	d.tick(row{text: fmt.Sprintf("Extras stirred into the oils or, where their caution says so, in at emulsion (section %d)", sectionOf(b.Name, stepExtras)), write: true})
}

// stages says when the pot is expected at each stage, counted from this batch's own lye-in.
func (d *desk) stages(b batch) {
	if len(b.Jugs) == 0 || !d.sheet.Timed || b.Refused.Times != "" {
		d.info("No stage times: go by what you see. " + sentence(b.Refused.Times))
		return
	}
	pot := b.Jugs[0]
	d.info("Stages expected in " + pot.Name + ", from this lye-in, with the band that holds about 4 of 5 pours; write down when you see them:")
	for i, t := range pot.Clock.Stages {
		text := stageName(i)
		if t.Low.Known || t.High.Known {
			text += ", " + d.span(t.Low, t.High)
		}
		d.tick(row{text: text, figure: d.show.Figure(t.Mid, d.minute), write: true})
	}
}

func (d *desk) split(b batch) {
	d.begin(b, stepSplit, everyJug)
	planned := ""
	for _, t := range d.sheet.Run {
		if t.Kind == pour.TaskSplit && t.Batch == b.Name {
			planned = "Planned at " + d.moment(t.StartMin) + ". "
		}
	}
	d.info(planned + "Weigh the jugs off; what is left is " + potOf(b) + ".")
	for i, j := range b.Jugs {
		text := "Into " + j.Name
		if i == 0 {
			text = "Stays in " + j.Name
		}
		d.tick(row{text: text + ", " + d.show.Percent(j.SharePercent, 1), figure: d.show.Weight(j.BatterWeighG), write: true})
		d.jugAlerts(b, stepSplit, j.Name)
	}
	d.tick(row{text: "All batter together", figure: d.show.Weight(b.Size.BatterWeighG), write: true})
}

func potOf(b batch) string {
	if len(b.Jugs) == 0 {
		return "the pot"
	}
	return b.Jugs[0].Name
}
