package live

import (
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Thing is something that can be measured in a run: a temperature, or a weight of one batch or of one of its jugs.
type Thing struct {
	Event    logbook.Event // all of its mark but the value
	Unit     pour.Unit
	Planned  pour.Figure   // unknown: there is none, or it is withheld
	Measured pour.Figure   // what was marked last; unknown: nothing yet
	Weigh    pour.Weighing // of a weight: what the plan has of it
}

// Things lists what can be measured at a step: first what the step itself wants, then the rest of its batch, then the other batch, each
// in the order of the pour. Where something of a batch as a whole was weighed since the last step was done, that batch comes first and as its paper has it,
// since it is the paper that she weighs by. Every step has its own batch's figures; nothing is added up over both.
func (s State) Things(sheet *pour.Sheet, at Step) []Thing {
	if s.cut {
		return s.pieces(sheet)
	}
	first := at.Batch
	if first == "" {
		first = pour.Base
	}
	rankOf := func(t Thing) int { return rank(sheet, at, t) }
	if last, ok := s.lastWeighed(); ok && last.Jug == "" && sheet.Batch(last.Batch) != nil {
		first = last.Batch
		rankOf = func(t Thing) int { return t.onPaper(sheet.Batch(first)) }
	}
	all := s.thingsOf(sheet, first)
	slices.SortStableFunc(all, func(a, b Thing) int { return rankOf(a) - rankOf(b) })
	for _, b := range sheet.Batches() {
		if b.Name != first {
			all = append(all, s.thingsOf(sheet, b.Name)...)
		}
	}
	return all
}

// The ranks of what is measured at a step.
const (
	foremost = iota // what the step begins with
	wanted          // what else it wants
	another         // what is not its own
)

// rank is how soon a thing is asked for at a step.
func rank(sheet *pour.Sheet, at Step, t Thing) int {
	e := t.Event
	wants := false
	switch at.Kind {
	case StepMakeLye:
		if t.Weigh.Kind == pour.WeighWater {
			return foremost
		}
		wants = t.Weigh.Kind == pour.WeighAlkali || t.joinsLye(sheet.Batch(at.Batch))
	case pour.TaskCoolLye, StepLyeIn:
		wants = e.Kind == logbook.Read && e.What != logbook.ReadBatter
	case pour.TaskMix:
		wants = e.Kind == logbook.Read && e.What == logbook.ReadBatter || t.joins(sheet.Batch(at.Batch), pour.JoinsEmulsion)
	case pour.TaskSplit:
		wants = e.Jug != "" && e.What == pour.WeighBatter
	case pour.TaskColour, pour.TaskScent:
		wants = e.Jug == at.Jug && t.goesIn(at.Kind)
	default:
		wants = e.Kind == logbook.Read && e.What == logbook.ReadBatter
	}
	if wants {
		return wanted
	}
	return another
}

// lastWeighed is what was weighed last into a batch since the last step was done.
func (s State) lastWeighed() (logbook.Event, bool) {
	for _, e := range slices.Backward(s.Marks) {
		switch {
		case e.Kind == logbook.Done:
			return e, false
		case e.Kind == logbook.Weighed && e.Step == "":
			return e, true
		}
	}
	return logbook.Event{}, false
}

// Offered is the place of the thing that is likely to be measured next, of those that [State.Things] lists: after what was weighed last, the next of its
// kin that was not yet; else the first that was not measured.
func (s State) Offered(things []Thing) int {
	if last, ok := s.lastWeighed(); ok {
		if at := slices.IndexFunc(things, func(t Thing) bool { return logbook.OfOneThing(t.Event, last) && t.Event.Kind == last.Kind }); at >= 0 {
			for k := 1; k < len(things); k++ {
				i := (at + k) % len(things)
				if !things[i].Measured.Known && things[i].kin(things[at]) {
					return i
				}
			}
		}
	}
	return max(slices.IndexFunc(things, func(t Thing) bool { return !t.Measured.Known }), 0)
}

// kin reports whether two things are weighed one after the other: those of a batch as a whole, the jugs' batter, what goes into one jug.
func (t Thing) kin(other Thing) bool {
	a, b := t.Event, other.Event
	if a.Kind != b.Kind || a.Batch != b.Batch {
		return false
	}
	if t.Weigh.Kind == pour.WeighBatter || other.Weigh.Kind == pour.WeighBatter {
		return t.Weigh.Kind == other.Weigh.Kind
	}
	return a.Jug == b.Jug
}

// onPaper is the place of a thing on the bench paper: oils, what joins them, water, alkali, what goes into the lye, other extras, and then what is on no
// list of the whole batch.
func (t Thing) onPaper(b *pour.BatchSheet) int {
	joins := func(list []pour.ExtraLine) bool {
		return slices.ContainsFunc(list, func(x pour.ExtraLine) bool { return x.Name == t.Weigh.Name })
	}
	const oils, withOils, water, alkali, inLye, extras, others = 0, 1, 2, 3, 4, 5, 6
	switch kind := t.Weigh.Kind; {
	case t.Event.Kind != logbook.Weighed || t.Event.Jug != "":
		return others
	case kind == pour.WeighOil:
		return oils
	case kind == pour.WeighWater:
		return water
	case kind == pour.WeighAlkali:
		return alkali
	case joins(b.ExtrasJoining(pour.JoinsOils)):
		return withOils
	case t.joinsLye(b):
		return inLye
	}
	return extras
}

// joinsLye says whether a thing is an extra that goes into the lye.
func (t Thing) joinsLye(b *pour.BatchSheet) bool {
	return t.Weigh.Kind == pour.WeighExtra && slices.ContainsFunc(b.Extras, func(x pour.ExtraLine) bool { return x.Name == t.Weigh.Name && x.InTheLye() })
}

// joins says whether a thing is an extra that joins the batch at a moment.
func (t Thing) joins(b *pour.BatchSheet, at pour.Joining) bool {
	return t.Weigh.Kind == pour.WeighExtra && slices.ContainsFunc(b.ExtrasJoining(at), func(x pour.ExtraLine) bool { return x.Name == t.Weigh.Name })
}

// goesIn says whether a thing is weighed into a jug at a step of colouring or scenting.
func (t Thing) goesIn(step pour.TaskKind) bool {
	if step == pour.TaskScent {
		return t.Weigh.Kind == pour.WeighScent
	}
	return t.Weigh.Kind == pour.WeighColour || t.Weigh.Kind == pour.WeighCarrier
}

// thingsOf lists what can be measured of a batch: temperatures, of which only the batter's is left once its lye is in, then weights.
// With a stop on the lye no planned weight is told.
func (s State) thingsOf(sheet *pour.Sheet, n pour.BatchName) []Thing {
	b, plan := sheet.Batch(n), sheet.Plan.Batch(n)
	if b == nil || plan == nil {
		return nil
	}
	var out []Thing
	add := func(e logbook.Event, unit pour.Unit, planned pour.Figure, w pour.Weighing) {
		e.Batch = n
		out = append(out, Thing{Event: e, Unit: unit, Planned: planned, Measured: s.measured(e), Weigh: w})
	}
	read := func(what string, planned float64) {
		add(logbook.Event{Kind: logbook.Read, What: what}, pour.UnitCelsius, pour.AsFigure(planned), pour.Weighing{})
	}
	if _, in := s.lyeIn[n]; !in {
		read(logbook.ReadLye, plan.LyeC)
		read(logbook.ReadOils, plan.OilsC)
	}
	read(logbook.ReadBatter, b.Heat.MixC)
	doses := b.Weighings()
	if list := s.Portions(sheet); len(list) > 0 {
		really := sheet.Portioned(list)
		doses = really.Batch(n).Weighings()
	}
	for i, w := range b.Weighings() {
		if w.Jug != "" && w.Kind != pour.WeighBatter {
			w.G = doses[i].G
		}
		planned := pour.AsFigure(w.G)
		if sheet.LyeStopped() {
			planned = pour.Figure{}
		}
		add(logbook.Event{Kind: logbook.Weighed, Jug: w.Jug, What: w.Name}, pour.UnitGram, planned, w)
	}
	return out
}

// measured is what was marked last of a thing.
func (s State) measured(thing logbook.Event) (v pour.Figure) {
	for _, e := range s.Marks {
		if e.Kind == thing.Kind && e.Batch == thing.Batch && e.Jug == thing.Jug && e.What == thing.What {
			v = pour.Know(e.Value)
		}
	}
	return v
}
