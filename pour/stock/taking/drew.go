package taking

import (
	"cmp"
	"slices"

	"pourbench/pour/logbook"
	"pourbench/pour/stock"
)

// Drew are the events a pour lacks or has too many of beside the ledger: one of what was drawn for every entry that took something for it, and every
// one of an entry that does not count taken back. The events are those that stand.
func Drew(wants []Want, s stock.State, into string, standing []logbook.Event) []logbook.Event {
	entries := TakenFor(s, into)
	var out []logbook.Event
	for _, e := range entries {
		if !slices.ContainsFunc(standing, func(x logbook.Event) bool { return x.Kind == logbook.Drew && x.Entry == e.ID }) {
			out = append(out, drawn(wants, s, e))
		}
	}
	for _, x := range standing {
		if x.Kind == logbook.Drew && !slices.ContainsFunc(entries, func(e stock.Entry) bool { return e.ID == x.Entry }) {
			out = append(out, logbook.Event{Kind: logbook.TakenBack, What: x.ID})
		}
	}
	return out
}

// drawn is the event of an entry: under the name the plan has for it, of the one batch that wants it.
func drawn(wants []Want, s stock.State, e stock.Entry) logbook.Event {
	p, _ := s.Pack(e.Pack)
	x := logbook.Event{Kind: logbook.Drew, Jug: e.Jug, What: cmp.Or(p.Name, p.Material.ID), Value: e.Q.V(), Lot: p.Lot, Pack: e.Pack, Entry: e.ID}
	if e.Planned {
		x.Text = Planned
	}
	found := false
	for _, w := range wants {
		if w.Material != p.Material || w.Jug != e.Jug {
			continue
		}
		if x.What = w.Name; found && w.Batch != x.Batch {
			x.Batch = "" // either
			break
		}
		x.Batch, found = w.Batch, true
	}
	return x
}

// Planned marks what was drawn without anybody having weighed it.
const Planned = "as planned, not weighed"
