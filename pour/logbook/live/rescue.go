package live

import (
	"cmp"
	"math"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// RescueKind is a way to save a jug that will not make its window or that is in trouble.
type RescueKind string

// The ways for a window that is missed, best first, then those for a trouble alone.
const (
	GoOn        RescueKind = "go on at once"
	PourNow     RescueKind = "pour it now"
	LeaveScent  RescueKind = logbook.ScentLeftOut
	StirByHand  RescueKind = "stir it by hand"
	UseInBottom RescueKind = "use it in the bottom"
	SpoonIt     RescueKind = "spoon it in"
	BlendIt     RescueKind = "blend it together"
	WarmIt      RescueKind = "let it soften warm"
	KeepOut     RescueKind = "keep it out of the mould"
	TakeColour  RescueKind = "take the colour as it comes"
)

// Rescue is one thing that can still be done.
type Rescue struct {
	Kind RescueKind
	Step string // key of the step to do for it; empty: none
	Do   string // one sentence
	All  bool   // it is of the whole batch, which still is one pot
}

// Mark is what is kept of a way that was taken for a jug.
func (r Rescue) Mark(j JugBoard) logbook.Event {
	e := logbook.Event{Kind: logbook.Rescued, Batch: j.Batch, Jug: j.Jug, What: string(r.Kind)}
	if r.All && r.Kind == LeaveScent {
		e.Jug = "" // with a jug it is that jug's own scent
	}
	return e
}

// scented reports whether a jug, or without one any of its batch, still is to have a scent.
func (s State) scented(n pour.BatchName, jug string) bool {
	return slices.ContainsFunc(s.Steps, func(x StepState) bool {
		return x.Kind == pour.TaskScent && x.Batch == n && (jug == "" || x.Jug == jug) && !x.Done && !s.PassedOver(x.Step)
	})
}

// troubles lists what went wrong in a jug, or in the pot that it was still part of, each once, in the order it was marked.
func (s State) troubles(n pour.BatchName, jug string) []string {
	var out []string
	for _, e := range s.Marks {
		if s.wentWrong(e, n, jug) && !slices.Contains(out, e.What) {
			out = append(out, e.What)
		}
	}
	return out
}

// wentWrong reports whether a mark is a trouble of a jug, or of the pot that it was still part of.
func (s State) wentWrong(e logbook.Event, n pour.BatchName, jug string) bool {
	return e.Kind == logbook.Troubled && e.Batch == n && (e.Jug == jug || s.Whole(e))
}

// AllOf is "all of the base" where something went wrong in a batch that still is one pot; empty: nothing did, or it is each jug's own by now.
func (s State) AllOf(n pour.BatchName) string {
	for _, e := range s.Marks {
		if e.Kind == logbook.Troubled && e.Batch == n && s.OnePot(n, time.Duration(math.MaxInt64)) {
			return "all of the " + string(n)
		}
	}
	return ""
}

// seizedAt is when a jug was marked to seize, on the run's clock. The second result is false where it was not.
func (s State) seizedAt(n pour.BatchName, jug string) (time.Duration, bool) {
	for _, e := range s.Marks {
		if s.wentWrong(e, n, jug) && e.What == logbook.Seizes {
			return e.Run, true
		}
	}
	return 0, false
}

// rescues lists what still can be done for a jug. Common practice, no source.
func (s State) rescues(j JugBoard, nowMin float64, running bool) []Rescue {
	missed := (j.Verdict == TooLate || j.Verdict == Over) && !j.Seized // against that there is help of its own
	if !missed && len(j.Troubles) == 0 {
		return nil
	}
	step, ok := s.nextMove(j.Batch, j.Jug)
	if ok && !slices.Contains(step.Own, j.Jug) { // it lies in the pot, the bag or the mould already
		return []Rescue{{Kind: GoOn, Step: step.Key, Do: j.Jug + " lies with the others now: go on with the next step, " + step.Name + ", without waiting."}}
	}
	var out []Rescue
	for _, t := range j.Troubles {
		out = append(out, s.helps(j, t, step.Key)...)
	}
	if missed {
		out = append(out, s.late(j, step, ok && running && (!j.Window.From.Known || nowMin >= j.Window.From.V))...)
	}
	first := s.beforeSplit(j.Batch)
	var once []Rescue
	for _, r := range out {
		if r.Step != "" && first != "" {
			r.Step = first
		}
		if !slices.ContainsFunc(once, func(o Rescue) bool { return o.Kind == r.Kind }) {
			once = append(once, r)
		}
	}
	return once
}

// beforeSplit is the key of what is to be done first in a batch that still is one pot, whatever is done for a jug of it then: its mixing, or its split.
// Empty: it is split.
func (s State) beforeSplit(n pour.BatchName) string {
	if !s.OnePot(n, time.Duration(math.MaxInt64)) {
		return ""
	}
	for _, kind := range []pour.TaskKind{pour.TaskMix, pour.TaskSplit} {
		if step, _, ok := s.stepOf(n, kind, ""); ok && !step.Done && !s.PassedOver(step.Step) {
			return step.Key
		}
	}
	return ""
}

// late lists what can be done for a jug that will not make its window or has not; in: it can be poured in its window now.
func (s State) late(j JugBoard, step StepState, in bool) []Rescue {
	var out []Rescue
	before := "pour it before the others."
	if len(step.Own) > 1 {
		before = "take it first in its round."
	}
	if s.beforeSplit(j.Batch) != "" {
		before = "split at once and " + before
	}
	if in && j.Verdict == TooLate {
		out = append(out, Rescue{Kind: PourNow, Step: step.Key, Do: j.Jug + " is still inside its window: " + before})
	}
	if s.scented(j.Batch, j.Jug) {
		out = append(out, Rescue{Kind: LeaveScent, Step: step.Key, Do: "Its scent has not gone in: without it " + j.Jug + " keeps longer."})
	}
	switch {
	case j.Verdict == TooLate && len(j.Troubles) > 0: // what helps against those comes first, and it may be the blender
		return out
	case j.Verdict == TooLate:
		return append(out, Rescue{Kind: StirByHand, Step: "", Do: "Stir " + j.Jug + " by hand now and then; keep the stick blender out of it."})
	}
	return append(out, stiffened(j, step.Key)...)
}

// stiffened is what a jug that no longer flows is still good for.
func stiffened(j JugBoard, step string) []Rescue {
	return []Rescue{
		{Kind: UseInBottom, Step: step, Do: "Use " + j.Jug + " in the bottom, under the thinner ones, where it holds them up."},
		{Kind: SpoonIt, Step: step, Do: "Spoon " + j.Jug + " in and tap the mould; press out the air."},
	}
}

// helps lists what can be done for a trouble. Common practice, no source.
func (s State) helps(j JugBoard, trouble, step string) []Rescue {
	all := s.AllOf(j.Batch)
	if all != "" {
		step = "" // the next of one jug is none of all of it
	}
	solid := stiffened(j, step)
	switch {
	case j.Batch == pour.Icing: // it goes on top
		solid = []Rescue{{Kind: SpoonIt, Step: step, Do: "Spoon " + cmp.Or(all, j.Jug) + " on top instead of piping it."}}
	case all != "": // there are no thinner ones
		solid = []Rescue{{Kind: SpoonIt, Step: step, Do: "Split it no further than it lets you: spoon " + all + " in and tap the mould; press out the air."}}
	}
	of := cmp.Or(all, j.Jug)
	var out []Rescue
	switch trouble {
	case logbook.Rices:
		out = append(out, Rescue{Kind: BlendIt, Step: "", Do: "Short bursts of the stick blender in " + of + " can smooth the grains; it is thicker afterwards, so use it at once."})
		out = append(out, solid...)
	case logbook.Seizes:
		out = append(out, solid...)
		out = append(out, Rescue{Kind: WarmIt, Step: "", Do: "Too stiff to spoon: cover " + of + " and let it warm up by itself, it may soften; it is raw, gloves and goggles stay on."})
	case logbook.Separates:
		out = append(out, Rescue{Kind: BlendIt, Step: "", Do: "Blend " + of + " in short bursts until nothing stands apart; pour none of it off: there is lye in what stands apart."})
		out = append(out, Rescue{Kind: KeepOut, Step: "", Do: "It stays apart: keep " + of + " out of the mould, in its jug; it is raw and can hold free lye."})
	case logbook.Browns:
		out = append(out, Rescue{Kind: TakeColour, Step: step, Do: "Nothing turns it back: go on, with " + of + " where a darker colour does no harm."})
	}
	switch {
	case all != "" && s.scented(j.Batch, ""):
		out = append(out, Rescue{Kind: LeaveScent, Step: step, Do: "No scent has gone in: leave it out of " + all + ", it can make this worse.", All: true})
	case all == "" && s.scented(j.Batch, j.Jug):
		out = append(out, Rescue{Kind: LeaveScent, Step: step, Do: "Its scent has not gone in: leave it out, it can make this worse."})
	}
	return out
}
