package batches

import (
	"slices"

	"pourbench/pour/logbook/life"
)

// orderWords is what the batches are in order of, in words.
func orderWords(by life.Sort) string {
	switch by {
	case life.ByDue:
		return "what is due"
	case life.ByLeft:
		return "bars left"
	}
	return string(by)
}

// nextOrder is the order after one, going round.
func nextOrder(by life.Sort) life.Sort {
	all := life.Sorts()
	return all[(slices.Index(all, by)+1)%len(all)]
}

// put takes in what was read. The chosen batch stays the chosen one.
func (m *Model) put(list []life.Batch) {
	m.all = life.Sorted(list, m.order)
	m.resift()
}

// reorder puts the batches into another order.
func (m *Model) reorder() {
	m.order = nextOrder(m.order)
	m.put(m.all)
}

// resift searches again. The chosen batch stays the chosen one as long as it is shown; else the first is.
func (m *Model) resift() {
	id := ""
	if b, ok := m.chosen(); ok {
		id = b.ID
	}
	m.shown = life.Search(m.all, m.search.Text())
	m.at = 0
	m.choose(id)
	m.settle()
}
