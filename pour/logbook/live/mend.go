package live

import (
	"fmt"
	"slices"

	"pourbench/pour/logbook"
)

// Scaled lists the weighings of a run that stand, the last one of the file first: those too that do not count, because the thing was weighed again.
// A cut lists the pieces it weighed.
func (l Live) Scaled() []logbook.Event {
	standing := map[string]bool{}
	for _, e := range logbook.Standing(l.Events) {
		standing[e.ID] = true
	}
	var out []logbook.Event
	for _, e := range slices.Backward(l.Events) {
		pours := e.Kind == logbook.Weighed && e.Step == ""
		cuts := (e.Kind == logbook.Weighed || e.Kind == logbook.Cut) && e.Step != ""
		if standing[e.ID] && (l.cut && cuts || !l.cut && pours) {
			out = append(out, e)
		}
	}
	return out
}

// Unweigh takes back a weighing, however long ago it was marked, with what it stands in the place of: there was no such weighing. The thing's weighing
// before it counts again.
func (l Live) Unweigh(id string, m Moment) (Live, []logbook.Event, error) {
	if !has(l.Scaled(), id) {
		return l, nil, fmt.Errorf("take back the weighing %q: no weighing of that name stands in this run", id)
	}
	var all []logbook.Event
	for seen := map[string]bool{}; id != "" && !seen[id]; {
		seen[id] = true
		next, marked, err := l.Mark(logbook.Event{Kind: logbook.TakenBack, What: id}, m)
		if err != nil {
			return l, nil, err
		}
		l, all = next, append(all, marked...)
		id = corrected(l.Events, id)
	}
	return l, all, nil
}

// corrected is the id of what an event stands in the place of; empty: of nothing.
func corrected(events []logbook.Event, id string) string {
	i := slices.IndexFunc(events, func(e logbook.Event) bool { return e.ID == id })
	if i < 0 || !has(events, events[i].Corrects) {
		return ""
	}
	return events[i].Corrects
}

func has(events []logbook.Event, id string) bool {
	return slices.ContainsFunc(events, func(e logbook.Event) bool { return e.ID == id })
}

// Reweigh says of which thing a weighing was, by the mark of that thing (see [Thing]): its mass and lot count for that from here on, at the time it was
// weighed, and the thing it was entered for is as if it had not been.
func (l Live) Reweigh(id string, of logbook.Event, m Moment) (Live, []logbook.Event, error) {
	list := l.Scaled()
	i := slices.IndexFunc(list, func(e logbook.Event) bool { return e.ID == id })
	switch {
	case i < 0:
		return l, nil, fmt.Errorf("say of what the weighing %q was: no weighing of that name stands in this run", id)
	case l.cut || of.Kind != logbook.Weighed:
		return l, nil, fmt.Errorf("say of what the weighing %q was: %s is nothing that is weighed into a batch", id, of.What)
	case logbook.OfOneThing(list[i], of):
		return l, nil, fmt.Errorf("say of what the weighing %q was: it stands as %s already", id, of.What)
	}
	e := list[i]
	return l.Mark(logbook.Event{Kind: logbook.Weighed, Batch: of.Batch, Jug: of.Jug, What: of.What, Value: e.Value, Lot: e.Lot, Corrects: e.ID}, m)
}

// Unweigh takes back a weighing, however long ago it was marked.
func (r *Run) Unweigh(id string) error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { return l.Unweigh(id, m) })
}

// Reweigh says of which thing a weighing was; see [Live.Reweigh].
func (r *Run) Reweigh(id string, of logbook.Event) error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { return l.Reweigh(id, of, m) })
}
