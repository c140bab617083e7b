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
// in the order of the pour. Every step has its own batch's figures; nothing is added up over both.
func (s State) Things(sheet *pour.Sheet, at Step) []Thing {
	if s.cut {
		return s.pieces(sheet)
	}
	first := at.Batch
	if first == "" {
		first = pour.Base
	}
	all := s.thingsOf(sheet, first)
	slices.SortStableFunc(all, func(a, b Thing) int { return rank(sheet, at, a) - rank(sheet, at, b) })
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
	for _, w := range b.Weighings() {
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
