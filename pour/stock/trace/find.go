package trace

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// Find returns everything that bears a number, in the order in which material runs: lots of suppliers, packs, batches, and bars by the lot on their
// label. Capitals and blanks are of no account. An error says what there is that is written alike.
func (g Graph) Find(what string) ([]Thing, error) {
	number := folded(plain.Line(what))
	var out []Thing
	for _, t := range g.things() {
		if folded(t.ID) == number {
			out = append(out, t)
		}
	}
	slices.SortStableFunc(out, func(a, b Thing) int {
		if a.Kind != b.Kind {
			return slices.Index(Kinds(), a.Kind) - slices.Index(Kinds(), b.Kind)
		}
		return strings.Compare(a.ID+" "+a.Of, b.ID+" "+b.Of)
	})
	if len(out) == 0 {
		return nil, fmt.Errorf("trace %q: no lot, pack, batch or label bears that number; %s", strings.TrimSpace(plain.Line(what)),
			strict.Meant(number, g.numbers(), "pourbench stock lists packs and lots, pourbench batches the batches", "pourbench stock lists packs and lots, pourbench batches the batches"))
	}
	return out, nil
}

// things lists everything that has a number a maker knows, in any order.
func (g Graph) things() []Thing {
	seen := map[Thing]bool{}
	var out []Thing
	add := func(t Thing) {
		if t.Kind != Place && t.ID != "" && !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	for _, e := range g.state.Entries { // packs without a lot, which nothing was taken of yet
		if _, ok := g.packs[e.Pack]; ok {
			add(PackOf(e.Pack))
		}
	}
	for id := range g.batches {
		add(BatchOf(id))
	}
	for _, l := range g.links {
		add(l.From)
		add(l.To)
	}
	return out
}

// numbers lists what can be typed.
func (g Graph) numbers() []string {
	var out []string
	for _, t := range g.things() {
		out = append(out, t.ID)
	}
	return out
}
