package batches

import (
	"cmp"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// row is a batch in the list, with all that a search looks through.
type row struct {
	life.Batch
	words string
}

// order is by what the batches stand in the list.
type order int

// The orders.
const (
	byDue order = iota
	byDay
	byState
	byName
	orders int = iota
)

// String is the order in words.
func (o order) String() string {
	return [orders]string{"what is due", "day", "state", "name"}[o]
}

// never is later than every day that something is due on.
const never day.Day = 1 << 40

// dueDay is the day on which something is due first; never where nothing is.
func dueDay(b life.Batch) day.Day {
	first := never
	for _, d := range b.Due {
		first = min(first, d.Day)
	}
	return first
}

// compare is which of two batches stands first. Of equals the later pour does.
func (o order) compare(a, b row) int {
	c := 0
	switch o {
	case byDue:
		c = cmp.Compare(dueDay(a.Batch), dueDay(b.Batch))
	case byState:
		c = cmp.Compare(slices.Index(life.States(), a.State), slices.Index(life.States(), b.State))
	case byName:
		c = strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	}
	return cmp.Or(c, cmp.Compare(b.Poured, a.Poured), strings.Compare(b.ID, a.ID))
}

// words is all that a search looks through, in small letters.
func words(b life.Batch) string {
	var out strings.Builder
	add := func(texts ...string) {
		for _, t := range texts {
			if t != "" {
				out.WriteString(" " + t)
			}
		}
	}
	add(b.Name, b.ID, string(b.State), b.Poured.String(), b.Poured.Short())
	for _, d := range b.Due {
		add(d.Text, string(d.Kind))
	}
	for _, e := range b.Events {
		add(string(e.Kind), e.What, e.Text, e.Lot, e.Jug, e.Life.Audience, e.Life.Scent, e.Life.Path)
	}
	if b.Fault != nil {
		add("fault", b.Fault.Error())
	}
	return strings.ToLower(out.String())
}

// put takes in what was read. The chosen batch stays the chosen one.
func (m *Model) put(list []life.Batch) {
	id := m.chosenID()
	m.all = make([]row, len(list))
	for i, b := range list {
		m.all[i] = row{b, words(b)}
	}
	m.arrangeFor(id)
}

// chosenID is the id of the chosen batch; empty: none is.
func (m *Model) chosenID() string {
	if b, ok := m.chosen(); ok {
		return b.ID
	}
	return ""
}

// arrange orders the list anew and searches it. The chosen batch stays the chosen one as long as it is shown.
func (m *Model) arrange() { m.arrangeFor(m.chosenID()) }

func (m *Model) arrangeFor(id string) {
	slices.SortFunc(m.all, m.order.compare)
	m.siftFor(id)
}

// sift finds the batches that hold every word that is searched for.
func (m *Model) sift() {
	wanted := strings.Fields(strings.ToLower(m.search.Text()))
	m.shown = m.shown[:0]
	for i := range m.all {
		if holds(m.all[i].words, wanted) {
			m.shown = append(m.shown, i)
		}
	}
}

func holds(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// resift searches again after a letter. The chosen batch stays the chosen one as long as it is shown; else the first is.
func (m *Model) resift() { m.siftFor(m.chosenID()) }

func (m *Model) siftFor(id string) {
	m.sift()
	m.at = 0
	m.choose(id)
	m.settle()
}
