package paper

import (
	"fmt"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
)

// actTable is what the hands do, in order, each with its minute and the window in which it suits every jug it moves.
func (d *desk) actTable() {
	columns := []column{{head: "act"}, {head: "planned", figure: true}, {head: "window", figure: true}, {head: "actual", write: true}}
	var rows [][]string
	act := func(n pour.BatchName, text, planned, window string) {
		rows = append(rows, []string{box + d.of(n, text), planned, window, d.blank})
	}
	stints := d.sheet.Stints()
	for i := 0; i < len(stints); i++ {
		st := stints[i]
		b := d.batch(st.Batch)
		at := d.clock(st.StartMin)
		switch st.Kind {
		case pour.TaskCoolLye:
			if st.StartMin >= 0 { // else it is made before, where it is weighed
				act(b.Name, "make the lye", at, "")
			}
		case pour.TaskMix:
			warm := d.temperatures(b)
			if text := b.IntoOils(); text != "" {
				warm = text + "; " + warm
			}
			rows = append(rows, []string{box + d.of(b.Name, warm), "", "", ""})
			act(b.Name, "lye into the oils, strained", at, "")
			rows = append(rows, []string{box + d.blending(b), "", "", ""})
			if text := b.AtEmulsion(); text != "" {
				act(b.Name, text, "", "")
			}
		case pour.TaskSplit:
			act(b.Name, "split, no oil streaks left", at, "")
		case pour.TaskColour, pour.TaskScent:
			var jugs []string
			for ; i < len(stints) && stints[i].Kind == st.Kind && stints[i].Batch == st.Batch; i++ {
				jugs = append(jugs, stints[i].Jug)
			}
			i--
			act(b.Name, map[pour.TaskKind]string{pour.TaskColour: "stir the colours in: ", pour.TaskScent: "scents in, by hand: "}[st.Kind]+strings.Join(jugs, ", "), at, "")
		case pour.TaskBed:
			act("", "wipe the rim; "+d.sheet.Plan.Bed.Do(), at, "")
		default:
			act(st.Batch, d.done(st), at, d.within(st))
		}
	}
	d.table("acts, in order", columns, rows)
}

// temperatures is how warm oils, lye and batter are planned, with room to write each.
func (d *desk) temperatures(b batch) string {
	return fmt.Sprintf("oils %s ____, lye %s ____, batter then %s ____", d.show.Temp(b.plan.OilsC), d.show.Temp(b.plan.LyeC), d.show.Temp(b.Heat.MixC))
}

// blending is the stick blender's bursts and what is expected to be seen, from the batch's own lye-in.
func (d *desk) blending(b batch) string {
	text := "from this lye-in: "
	for i, burst := range b.plan.Blend {
		if i == 0 {
			text += "stick-blend "
		}
		text += d.show.Plain(burst.S, pour.UnitSecond) + " s at " + d.clock(burst.AtMin) + ", "
	}
	if len(b.plan.Blend) == 0 {
		text += "stir by hand until no oil streaks are left, "
	}
	if len(b.Jugs) == 0 || !d.sheet.Timed || b.Refused.Times != "" {
		return text + "go by what you see"
	}
	var parts []string
	for i, t := range b.Jugs[0].Clock.Stages {
		if t.Mid.Known {
			parts = append(parts, chem.Stage(i).String()+" "+strings.TrimPrefix(d.show.Predicted(t.Mid.V), "+"))
		}
	}
	return text + "expect in " + b.Jugs[0].Name + " " + strings.Join(parts, ", ")
}

// within is the window of a stint; "" where it moves no jug.
func (d *desk) within(st pour.Stint) string {
	w := d.sheet.Suits(st)
	switch {
	case len(d.sheet.Moves(st)) == 0:
		return ""
	case !w.From.Known && !w.To.Known:
		return "not known"
	case w.From.Known && w.To.Known && w.To.V < w.From.V:
		return "none suits all"
	}
	return strings.ReplaceAll(d.span(w.From, w.To), "+", "")
}

// after is the bed, cleaning up, cut and cure.
func (d *desk) after() {
	bed, bars := d.sheet.Plan.Bed, d.sheet.Bars
	d.heading("bed, cut and cure", "planned", "actual")
	d.tick(row{text: "Marked CAUSTIC, NOT FOOD, out of reach; unwrapped if it swells", write: true})
	d.tick(row{text: "Washed up, gloves on; no batter and no oil into the drain", write: true})
	d.tick(row{text: "Cut from " + d.cutFrom() + ", firm, its middle cool, gloves on", figure: figureOf(bed.CutAfterH) + " h", write: true})
	d.cutsBench()
	one := "one of them"
	if c := d.sheet.Cut; c.HeavyG.Known && c.HeavyG.V-c.LightG.V > d.show.ScaleStepG {
		one = "on average"
	}
	d.tick(row{text: fmt.Sprintf("%d bars of %s, %s as cut", bars.Count, d.thick(), one), figure: d.show.Weight(bars.CutG), write: true})
	d.tick(row{text: "Cured until " + d.cureUntil() + ", on a rack, turned", figure: figureOf(bed.CureDays) + " d", write: true})
	d.drying()
	d.tick(row{text: "One bar cured, an estimate; pH by strip, never by tongue", figure: d.show.Weight(bars.CuredG), write: true})
}
