package life

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// ofPour refuses to take back or correct any mark of the pour but a weight, and to correct the number of a weight that does not count: of which thing
// it was can still be said.
func (c *check) ofPour(id, do string) error {
	e, _ := event(c.pour.Events, id)
	switch {
	case e.Kind != logbook.Weighed:
		return fmt.Errorf("%s %q: it is a mark of the pour itself; that is taken back in the live run alone", do, id)
	case do == "take back":
		return nil
	case c.e.Kind != logbook.Weighed:
		return fmt.Errorf("%s %q: it is a weight, and what stands in its place has to be one", do, id)
	case !logbook.OfOneThing(c.e, e):
		return nil
	}
	_, again := logbook.Counting(logbook.Standing(c.pour.Events), sheetOf(c.pour, c.shelf))
	for counts, before := range again {
		if _, slip := event(before, id); slip {
			return fmt.Errorf("%s %q: it does not count, because %s was weighed again after it; correct %s in its place, or say of what this one was with what=NAME", do, id, e.What, counts)
		}
	}
	return nil
}

// event finds an event by its id.
func event(list []logbook.Event, id string) (logbook.Event, bool) {
	i := slices.IndexFunc(list, func(e logbook.Event) bool { return e.ID == id })
	if i < 0 {
		return logbook.Event{}, false
	}
	return list[i], true
}

// sheetOf is what a pour's plan comes to; nil where today's shelf lacks something of it.
func sheetOf(p logbook.Pour, shelf pour.Shelf) *pour.Sheet {
	if p.PlanErr != nil {
		return nil
	}
	sheet := pour.Weigh(p.Plan, shelf)
	return &sheet
}

// ofThing is a corrected weight with the thing it is said to be of, as the plan spells it. Of what the plan has in one place alone batch and jug need not
// be said. What the plan has nowhere is refused: it would count for nothing.
func ofThing(p logbook.Pour, shelf pour.Shelf, e logbook.Event) (logbook.Event, error) {
	was, _ := event(p.Events, e.Corrects)
	sheet := sheetOf(p, shelf)
	if e.Kind != logbook.Weighed || was.Kind != logbook.Weighed || e.Step != "" || sheet == nil || logbook.OfOneThing(e, was) {
		return e, nil
	}
	var names []string
	var places []logbook.Event
	for _, b := range sheet.Batches() {
		for _, w := range b.Weighings() {
			x := logbook.Event{Batch: b.Name, Jug: w.Jug, What: w.Name}
			if !slices.Contains(names, w.Name) {
				names = append(names, w.Name)
			}
			same := func(y logbook.Event) bool { return logbook.OfOneThing(x, y) }
			if strings.EqualFold(w.Name, e.What) && !slices.ContainsFunc(places, same) {
				places = append(places, x)
			}
		}
	}
	at := slices.IndexFunc(places, func(x logbook.Event) bool { return logbook.OfOneThing(x, e) })
	if at < 0 && len(places) == 1 && e.Batch == was.Batch && e.Jug == was.Jug {
		at = 0
	}
	switch {
	case at >= 0:
		e.Batch, e.Jug, e.What = places[at].Batch, places[at].Jug, places[at].What
		return e, nil
	case len(places) == 0:
		return e, strict.NoWord("what", e.What, names)
	}
	list := make([]string, len(places))
	for i, x := range places {
		list[i] = strings.TrimSuffix(fmt.Sprintf("batch=%s jug=%s", x.Batch, x.Jug), " jug=")
	}
	return e, fmt.Errorf("%s is not weighed into %s by the plan; write where: %s", e.What, where(e), strings.Join(list, ", or "))
}

// where names the batch and the jug of a weight.
func where(e logbook.Event) string {
	text := "the " + string(e.Batch)
	if e.Batch == "" {
		text = "base and icing together"
	}
	if e.Jug != "" {
		text += " jug " + e.Jug
	}
	return text
}

// nowCounts says what of the weights counts since one was taken back or said to be of another thing, and that what was drawn of packs for it stays.
func nowCounts(p, after logbook.Pour, shelf pour.Shelf, e logbook.Event) string {
	id := e.Corrects
	if e.Kind == logbook.TakenBack {
		id = e.What
	}
	was, _ := event(p.Events, id)
	if was.Kind != logbook.Weighed || was.Step != "" {
		return ""
	}
	sheet := sheetOf(p, shelf)
	before, _ := logbook.Counting(logbook.Standing(p.Events), sheet)
	now, _ := logbook.Counting(logbook.Standing(after.Events), sheet)
	var parts []string
	for _, x := range now {
		if _, counted := event(before, x.ID); !counted && x.ID != e.ID && x.Kind == logbook.Weighed {
			parts = append(parts, fmt.Sprintf("%s counts again (%s)", Tell(x, p.Plan.Show), x.ID))
		}
	}
	is := func(x logbook.Event) bool { return x.Kind == logbook.Weighed && logbook.OfOneThing(x, was) }
	if !slices.ContainsFunc(now, is) && slices.ContainsFunc(before, is) {
		parts = append(parts, was.What+" counts as planned")
	}
	drew := func(x logbook.Event) bool {
		return x.Kind == logbook.Drew && x.Jug == was.Jug && x.What == was.What && (x.Batch == was.Batch || x.Batch == "")
	}
	if slices.ContainsFunc(now, drew) {
		parts = append(parts, "what was taken of your packs for it stays taken: pourbench stock take "+p.ID+" says what to put right")
	}
	return strings.Join(parts, "; ")
}
