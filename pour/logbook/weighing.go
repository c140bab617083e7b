package logbook

import (
	"strings"

	"pourbench/pour"
)

// thing is what a weighing is of. Two things of a jug that bear one name, such as the oil that two of its colours are wetted with, are one here.
type thing struct {
	batch           pour.BatchName
	jug, what, step string
}

func (e Event) thing() thing { return thing{e.Batch, e.Jug, strings.ToLower(e.What), e.Step} }

// OfOneThing reports whether two weighings are of the same thing of the same batch and jug, so that the later of them counts.
func OfOneThing(a, b Event) bool { return a.thing() == b.thing() }

// Counting leaves of the events that stand those that count: of the weighings of a thing the last one, in whose place earlier ones were a
// slip. This is the one place that decides it, for the live run, papers, stock and traces alike. Again are, by the id of each that counts, those
// weighed before it, in their order. Things of one name in one jug, by the sheet's plan, count as often as there are of them; without a sheet a
// thing counts once.
func Counting(standing []Event, sheet *pour.Sheet) (counting []Event, again map[string][]Event) {
	times := map[thing]int{}
	twice := false
	for _, e := range standing {
		if e.Kind == Weighed {
			times[e.thing()]++
			twice = twice || times[e.thing()] > 1
		}
	}
	if !twice {
		return standing, nil
	}
	seen, before := map[thing]int{}, map[thing][]Event{}
	again = map[string][]Event{}
	for _, e := range standing {
		if k := e.thing(); e.Kind == Weighed {
			if seen[k]++; seen[k] <= times[k]-alike(sheet, e) {
				before[k] = append(before[k], e)
				continue
			}
			if len(before[k]) > 0 {
				again[e.ID] = before[k]
				before[k] = nil
			}
		}
		counting = append(counting, e)
	}
	return counting, again
}

// alike is how many things of a jug, or of a batch as a whole, bear the name of what was weighed: 1 where the plan has none of it.
func alike(sheet *pour.Sheet, e Event) int {
	n := 0
	if sheet != nil && e.Step == "" {
		if b := sheet.Batch(e.Batch); b != nil {
			for _, w := range b.Weighings() {
				if w.Jug == e.Jug && strings.EqualFold(w.Name, e.What) {
					n++
				}
			}
		}
	}
	return max(n, 1)
}
