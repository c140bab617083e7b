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

// weighedLater reports whether an event is a weight of the pour that is written in after it.
func weighedLater(e logbook.Event) bool {
	return e.Kind == logbook.Weighed && e.Corrects == "" && e.Step == ""
}

// ofThing is a weight that is corrected, or written in later, with the thing it is said to be of, as the plan spells it. Of what the plan has in one
// place alone batch and jug need not be said. What the plan has nowhere is refused: it would count for nothing.
func ofThing(p logbook.Pour, shelf pour.Shelf, e logbook.Event) (logbook.Event, error) {
	was, _ := event(p.Events, e.Corrects)
	sheet := sheetOf(p, shelf)
	switch {
	case weighedLater(e) && sheet == nil:
		return e, fmt.Errorf("its plan cannot be used with today's shelf, so nothing says what was weighed: %w", p.PlanErr)
	case weighedLater(e) && strings.TrimSpace(e.What) == "":
		return e, nil // its form says that it is missing
	case weighedLater(e):
		return laterThing(e, sheet)
	case e.Kind != logbook.Weighed || was.Kind != logbook.Weighed || e.Step != "" || sheet == nil || logbook.OfOneThing(e, was):
		return e, nil
	}
	names, places := thingsNamed(sheet, func(name string) bool { return strings.EqualFold(name, e.What) })
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
	return e, fmt.Errorf("%s is not weighed into %s by the plan; write where: %s", e.What, where(e), whereElse(places))
}

// thingsNamed lists the names of all that the plan has weighed, and the places at which it has one of the names that fit.
func thingsNamed(sheet *pour.Sheet, fits func(name string) bool) (names []string, places []logbook.Event) {
	for _, b := range sheet.Batches() {
		for _, w := range b.Weighings() {
			x := logbook.Event{Batch: b.Name, Jug: w.Jug, What: w.Name}
			if !slices.Contains(names, w.Name) {
				names = append(names, w.Name)
			}
			same := func(y logbook.Event) bool { return logbook.OfOneThing(x, y) }
			if fits(w.Name) && !slices.ContainsFunc(places, same) {
				places = append(places, x)
			}
		}
	}
	return names, places
}

// whereTyped lists places by the keys of a form, which are the flags of its command too.
func whereTyped(places []logbook.Event) string {
	return strings.NewReplacer("batch=", "batch ", "jug=", "jug ").Replace(whereElse(places))
}

// whereElse lists places as a correction is typed.
func whereElse(places []logbook.Event) string {
	list := make([]string, len(places))
	for i, x := range places {
		list[i] = strings.TrimSuffix(fmt.Sprintf("batch=%s jug=%s", x.Batch, x.Jug), " jug=")
	}
	return strings.Join(list, ", or ")
}

// laterThing finds what a weight is of that is written in later: by its name or else by a part of it, where the batch and the jug that were said
// have it, and nowhere else.
func laterThing(e logbook.Event, sheet *pour.Sheet) (logbook.Event, error) {
	names, places := thingsNamed(sheet, func(name string) bool { return strings.EqualFold(name, e.What) })
	if len(places) == 0 {
		part := strings.ToLower(e.What)
		_, places = thingsNamed(sheet, func(name string) bool { return strings.Contains(strings.ToLower(name), part) })
	}
	if len(places) == 0 {
		return e, strict.NoWord("what", e.What, names)
	}
	fits := slices.DeleteFunc(slices.Clone(places), func(x logbook.Event) bool {
		return e.Batch != "" && e.Batch != x.Batch || e.Jug != "" && !strings.EqualFold(e.Jug, x.Jug)
	})
	if len(fits) == 1 {
		e.Batch, e.Jug, e.What = fits[0].Batch, fits[0].Jug, fits[0].What
		return e, nil
	}
	for _, x := range places {
		if x.What != places[0].What {
			var same []string
			for _, x := range places {
				if !slices.Contains(same, x.What) {
					same = append(same, x.What)
				}
			}
			return e, fmt.Errorf("%s can be %s; write more of the name", e.What, strings.Join(same, ", or "))
		}
	}
	if len(fits) == 0 {
		return e, fmt.Errorf("the plan weighs %s elsewhere; write where: %s", places[0].What, whereTyped(places))
	}
	return e, fmt.Errorf("the plan weighs %s in several places; write where: %s", places[0].What, whereTyped(fits))
}

// plannedG is what the plan has of what was weighed, g; unknown: it cannot be said.
func plannedG(sheet *pour.Sheet, e logbook.Event) pour.Figure {
	if sheet == nil || sheet.LyeStopped() {
		return pour.Figure{}
	}
	for _, b := range sheet.Batches() {
		for _, w := range b.Weighings() {
			if logbook.OfOneThing(e, logbook.Event{Batch: b.Name, Jug: w.Jug, What: w.Name}) {
				return pour.AsFigure(w.G)
			}
		}
	}
	return pour.Figure{}
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
	if weighedLater(e) {
		was = e
	}
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
