package again

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// leastWarmerC is how far a temperature was from its plan before it is worth planning it as it was, °C.
const leastWarmerC = 2

// thermometer is what a thermometer is held into, with its field of a batch and its word.
type thermometer struct{ what, key, word string }

func thermometers() []thermometer {
	return []thermometer{{logbook.ReadOils, "oils_c", "oils"}, {logbook.ReadLye, "lye_c", "lye"}}
}

// read is what a thermometer said last.
func (p Past) read(n pour.BatchName, what string) (c float64, ok bool) {
	for _, e := range p.standing {
		if e.Kind == logbook.Read && e.Batch == n && e.What == what {
			c, ok = e.Value, true
		}
	}
	return c, ok
}

// temperatures suggests to plan oils and lye as warm as they really were.
func (a *asker) temperatures() {
	for _, n := range a.batches() {
		for _, t := range thermometers() {
			path := string(n) + "." + t.key
			was, ok := a.past.read(n, t.what)
			planned, _, has := pour.Number(a.past.Sheet.Plan, path)
			if !ok || !has || math.Abs(was-planned) < leastWarmerC {
				continue
			}
			side := map[bool]string{true: "warmer", false: "cooler"}[was > planned]
			a.number(path, math.Round(was), fmt.Sprintf("plan the %s%s at %s, as they really were", t.word, a.of(n), a.show.Temp(was)),
				fmt.Sprintf("planned %s, was %s%s", a.show.Temp(planned), a.show.Temp(was), a.alsoOff(n, t, was > planned, side)))
		}
	}
}

// alsoOff says in how many of the other pours in which it was read it was off to the same side.
func (a *asker) alsoOff(n pour.BatchName, t thermometer, warmer bool, side string) string {
	read, same := 0, 0
	for _, o := range a.others {
		was, ok := o.read(n, t.what)
		planned, _, has := pour.Number(o.Sheet.Plan, string(n)+"."+t.key)
		if !ok || !has {
			continue
		}
		read++
		if math.Abs(was-planned) >= leastWarmerC && (was > planned) == warmer {
			same++
		}
	}
	if read == 0 {
		return ""
	}
	return fmt.Sprintf("; %s than planned in %d of %s besides", side, same, strings.Replace(pours(read), "pour", "other pour", 1))
}

// waitStep is what a wait for the lye is rounded up to, min.
const waitStep = 5

// lyeWait suggests to keep the planned temperature of the lye and to wait longer for it, where it really was warmer.
func (a *asker) lyeWait() {
	s := a.past.state
	var made, in live.StepState
	for _, step := range s.Steps {
		if step.Batch == pour.Base && step.Done {
			switch step.Kind {
			case live.StepMakeLye:
				made = step
			case live.StepLyeIn:
				in = step
			}
		}
	}
	was, ok := a.past.read(pour.Base, logbook.ReadLye)
	b, room := &a.past.Sheet.Base, a.past.Sheet.Plan.Room.TemperatureC
	wanted := a.past.Sheet.Plan.Base.LyeC
	waited := (in.DoneAt - made.DoneAt).Minutes()
	if !ok || !made.Done || !in.Done || waited <= 0 || was-wanted < leastWarmerC {
		return
	}
	lyeG := b.Lye.AllWaterG + b.Lye.NaOH.WeighedG + b.Lye.KOH.WeighedG
	more, ok := chem.CoolMinutes(lyeG, b.Lye.PureConcentrationPercent/100, was, wanted, room)
	if !ok || more <= 0 {
		return
	}
	wait := math.Ceil((waited+more)/waitStep) * waitStep
	a.number("run.cool_lye_min", wait, fmt.Sprintf("keep the lye at %s and let it cool for %s", a.show.Temp(wanted), a.show.Minutes(wait)),
		fmt.Sprintf("after %s it was at %s; from there to %s in a room of %s takes about %s more, an estimate", a.show.Minutes(waited), a.show.Temp(was), a.show.Temp(wanted), a.show.Temp(room), a.show.Minutes(more)))
}

// blender suggests the bursts that were noted.
func (a *asker) blender() {
	for _, n := range a.batches() {
		noted, planned := a.past.noted(n), a.past.Sheet.Plan.Batch(n).Blend
		if len(noted) == 0 || alike(noted, planned) || alike(noted, a.plan.Batch(n).Blend) {
			continue
		}
		a.suggest(string(n)+".blend", fmt.Sprintf("plan the stick blender%s as it ran: %s", a.of(n), burstsTold(a.show, noted)),
			"planned "+burstsTold(a.show, planned)+", noted "+burstsTold(a.show, noted), pour.SetBursts(n, noted))
	}
}

// Steps that planned moments are rounded to, min.
const (
	splitStep = 0.5
	startStep = 1
)

// moments suggests the minutes at which batches were really split and the icing really begun.
func (a *asker) moments() {
	for _, n := range a.batches() {
		for _, step := range a.past.state.Steps {
			since, ok := a.past.state.SinceLyeIn(n, step.DoneAt)
			planned := a.past.Sheet.Plan.Batch(n).SplitAtMin
			if step.Batch != n || step.Kind != pour.TaskMix || !step.Done || !ok || math.Abs(since.Minutes()-planned) < leastMin {
				continue
			}
			at := toStep(since.Minutes(), splitStep)
			if a.separates(n, at) {
				continue
			}
			a.number(string(n)+".split_at_min", at, fmt.Sprintf("split%s at %s, as it was", strings.Replace(a.of(n), " of", "", 1), a.show.Minutes(at)),
				fmt.Sprintf("planned at %s, the mixing was done at %s", a.show.Minutes(planned), a.show.Minutes(since.Minutes())))
		}
	}
	base, met := a.past.state.SinceLyeIn(pour.Base, 0)
	icing, iced := a.past.state.SinceLyeIn(pour.Icing, 0)
	if !met || !iced || a.plan.Icing == nil || a.past.Sheet.Icing == nil {
		return
	}
	began, planned := (base - icing).Minutes(), a.past.Sheet.Plan.Icing.StartAtMin
	if math.Abs(began-planned) >= leastMin {
		at := toStep(began, startStep)
		a.number("icing.start_at_min", at, "start the icing at "+a.show.Minutes(at)+", as it was",
			fmt.Sprintf("planned at %s, its lye met its oils at %s", a.show.Minutes(planned), a.show.Minutes(began)))
	}
}

// separates says whether a batch that is split at that minute is likely no emulsion yet: it was marked or done too early, which
// is advised to nobody.
func (a *asker) separates(n pour.BatchName, at float64) bool {
	next, err := pour.Apply(a.plan, a.shelf, pour.SetSplitAt(n, at))
	if err != nil {
		return false // nor will it be suggested
	}
	early := func(w pour.Warning) bool { return w.Code == "split-early" && w.Where == string(n) }
	return slices.ContainsFunc(pour.Work(next, a.shelf, a.hand).Warnings, early)
}
