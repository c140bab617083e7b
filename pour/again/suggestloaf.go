package again

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// grounds is what stands behind every suggestion for a loaf that overheated, cracked or came out with ash, where no pour of her own speaks for it.
const grounds = "common practice, no source"

// heatStep and mostHeatSteps are by how many °C a batch is worked cooler at a time, and how often, before something else has to help; lyeStep is by how many
// percent points a lye is mixed stronger or weaker: common practice, no source.
const (
	heatStep      = 2.0
	mostHeatSteps = 4
	lyeStep       = 2.0
)

// marked is what was marked of a loaf: looked at on the bars, or said in words; empty: nobody told of it.
func (p Past) marked(aspect string, stems ...string) string {
	for _, e := range p.standing {
		switch e.Kind {
		case logbook.Looked:
			if (e.What == aspect || tells(e.What, stems)) && e.Value >= muchAsh {
				return p.looked(e).Said
			}
		case logbook.Result, logbook.Noted, logbook.Failed:
			if tells(e.Text, stems) {
				return fmt.Sprintf("%q", strings.TrimSpace(e.Text))
			}
		}
	}
	return ""
}

// tells says whether words tell of something, by how its word begins; what they deny they do not tell.
func tells(text string, stems []string) bool {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !(r >= 'a' && r <= 'z') })
	for i, w := range words {
		if slices.ContainsFunc(stems, func(stem string) bool { return w == stem || len(stem) > len("ash") && strings.HasPrefix(w, stem) }) {
			return i == 0 || !slices.Contains([]string{"no", "not", "never", "without", "nor", "any"}, words[i-1])
		}
	}
	return false
}

// tooWarm is what was marked of a loaf that was too warm: that it overheated, or cracked where the plan as it was poured has it gel.
func (a *asker) tooWarm() string {
	if said := a.past.marked("overheated", "overheat", "overheated"); said != "" {
		return said
	}
	if a.past.Sheet.Gel.Word == pour.GelUnlikely {
		return "" // a cold loaf cracks for other reasons
	}
	return a.past.marked(logbook.LookCracks, "crack", "cracked")
}

// overheated suggests for a loaf that was too warm what the model of heat says leaves its middle cooler: another bed, a cooler batch, a weaker lye.
func (a *asker) overheated() {
	said := a.tooWarm()
	if said == "" {
		return
	}
	switch a.plan.Bed.Keep {
	case pour.BedInsulate:
		a.cooler("bed.keep", "do not wrap the loaf: cover it lightly, and look at it after an hour or two", said, pour.SetWord("bed.keep", pour.BedBare))
	case pour.BedBare:
		a.cooler("bed.keep", "chill the loaf, apart from food", said, pour.SetWord("bed.keep", pour.BedChill))
	}
	b := a.plan.Base
	for k := 1.0; k <= mostHeatSteps && !b.BatterMeasured; k++ {
		oils, lye := b.OilsC-k*heatStep, b.LyeC-k*heatStep
		says := fmt.Sprintf("work%s %s cooler: oils at %s, lye at %s", strings.TrimPrefix(a.of(pour.Base), " of"), a.show.TempDiff(k*heatStep), a.show.Temp(oils), a.show.Temp(lye))
		if a.cooler("base.oils_c", says, said, pour.Both(pour.SetNumber("base.oils_c", oils), pour.SetNumber("base.lye_c", lye))) {
			break
		}
	}
	weaker := b.LyeConcentrationPercent - lyeStep
	a.cooler("base.lye_concentration_percent", "mix the lye"+a.of(pour.Base)+" weaker, at "+a.show.Percent(weaker, 1), said, pour.SetNumber("base.lye_concentration_percent", weaker))
}

// cooler suggests what leaves the middle of the loaf cooler, by the model of heat, and brings no caution. It says whether it did.
func (a *asker) cooler(path, says, said string, edit pour.Edit) bool {
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err != nil {
		return false
	}
	sheet := pour.Work(next, a.shelf, a.hand)
	was, then := a.before.Gel.MiddleC.Mid, sheet.Gel.MiddleC.Mid
	if !was.Known || !then.Known || was.V-then.V < leastWarmerC || cautions(sheet) > cautions(a.before) {
		return false
	}
	found := len(a.found)
	a.suggest(path, says, fmt.Sprintf("marked: %s; the middle of the loaf then warms to near %s, not %s, by the weakest of the models; %s", said, a.show.Temp(then.V), a.show.Temp(was.V), grounds), edit)
	return len(a.found) > found
}

// ashen suggests against ash what is done against it: cover and warmth, less water, a later cut. Of a bed that her own pours tell of
// they decide, and what would leave a loaf warmer that was too warm is not suggested.
func (a *asker) ashen() {
	said := a.past.marked(logbook.LookAsh, "ash", "sodaash")
	if said == "" {
		return
	}
	why := "marked: " + said + "; " + grounds
	if a.plan.Bed.Keep != pour.BedInsulate && a.tooWarm() == "" && !a.decided(pour.BedInsulate) {
		a.mild("bed.keep", "cover the loaf closely and keep it warm", why, pour.SetWord("bed.keep", pour.BedInsulate))
	}
	if a.tooWarm() == "" {
		stronger := a.plan.Base.LyeConcentrationPercent + lyeStep
		a.mild("base.lye_concentration_percent", "mix the lye"+a.of(pour.Base)+" with less water, at "+a.show.Percent(stronger, 1), why, pour.SetNumber("base.lye_concentration_percent", stronger))
	}
	later := a.plan.Bed.CutAfterH + laterH
	a.mild("bed.cut_after_h", fmt.Sprintf("cut after %s h, if it is not too firm by then", a.show.Number(later, 0)), why, pour.SetNumber("bed.cut_after_h", later))
}

// mild suggests what brings no caution.
func (a *asker) mild(path, says, why string, edit pour.Edit) {
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err == nil && cautions(pour.Work(next, a.shelf, a.hand)) <= cautions(a.before) {
		a.suggest(path, says, why, edit)
	}
}
