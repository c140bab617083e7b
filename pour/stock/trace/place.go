package trace

import (
	"slices"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// Words for the places of bars that no event names.
const (
	Left    = "left"    // not gone, by the book
	Missing = "missing" // counts found too few
	Cut     = "cut"     // seconds found at the cut
	Uncut   = "uncut"   // the loaf as a whole
)

// place is where some bars of a batch are.
type place struct {
	bars  int
	event logbook.Event // the zero event where none says it
}

// bars links a batch to its labels and to the places its bars are at. Where all its labels bear one lot they went by it, and the places stand behind
// that; where there are several nobody said which was sold, so every one may be at every place.
func (g *Graph) bars(b *life.Batch) {
	var labels []Thing
	counts := map[Thing]int{}
	for _, l := range b.Lots {
		t := BarsOf(b.ID, l.Lot)
		if counts[t] += l.Count; !slices.Contains(labels, t) {
			labels = append(labels, t)
		}
	}
	where := g.whereBars(b)
	if len(labels) != 1 {
		for _, t := range where {
			g.link(Link{From: BatchOf(b.ID), To: t})
		}
	}
	for _, label := range labels {
		g.link(Link{From: BatchOf(b.ID), To: label})
		g.places[label] = place{bars: counts[label]}
		for _, t := range where {
			g.link(Link{From: label, To: t})
		}
	}
}

// whereBars lists the places of a batch's bars, in the order of their days.
func (g *Graph) whereBars(b *life.Batch) []Thing {
	var out []Thing
	add := func(id string, bars int, e logbook.Event) {
		t := Thing{Kind: Place, ID: id, Of: b.ID}
		g.places[t] = place{bars, e}
		out = append(out, t)
	}
	for _, e := range b.Events {
		switch e.Kind {
		case logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds:
			add(e.ID, e.Life.Count, e)
		case logbook.Sliced:
			if e.Life.Seconds > 0 {
				add(Cut+" "+e.ID, e.Life.Seconds, e)
			}
		}
	}
	a := b.Bars
	if a.Missing != 0 {
		add(Missing, a.Missing, logbook.Event{})
	}
	switch {
	case a.Known && a.Left > 0:
		add(Left, a.Left, logbook.Event{})
	case !a.Known:
		add(Uncut, 0, logbook.Event{})
	}
	return out
}
