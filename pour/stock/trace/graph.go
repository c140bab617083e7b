package trace

import (
	"fmt"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// Graph is everything that can be traced in a house, and what goes into what.
type Graph struct {
	today   day.Day
	state   stock.State
	packs   map[string]lot.Pack
	batches map[string]*life.Batch
	links   []Link
	out, in map[Thing][]int // places in links
	places  map[Thing]place
	spelt   map[Thing]spelling // of lots that no pack bears
}

// Of gathers what can be traced: the packs and takes of a ledger, and the batches of a logbook with where their bars are.
func Of(s stock.State, batches []life.Batch) Graph {
	g := Graph{
		today: s.Today, state: s, packs: map[string]lot.Pack{}, batches: make(map[string]*life.Batch, len(batches)),
		out: map[Thing][]int{}, in: map[Thing][]int{}, places: map[Thing]place{}, spelt: map[Thing]spelling{},
	}
	for i := range batches {
		g.batches[batches[i].ID] = &batches[i]
	}
	for _, h := range s.Held {
		for _, p := range h.Packs {
			g.packs[p.ID] = p
		}
	}
	g.lots()
	g.takes()
	named := g.byNumber()
	for i := range batches {
		g.typed(&batches[i], named)
		g.bars(&batches[i])
	}
	return g
}

// link notes what goes into what.
func (g *Graph) link(l Link) {
	g.out[l.From] = append(g.out[l.From], len(g.links))
	g.in[l.To] = append(g.in[l.To], len(g.links))
	g.links = append(g.links, l)
}

// lots links every pack to the lot it is of, in the order in which they came.
func (g *Graph) lots() {
	for _, e := range g.state.Entries {
		p, ok := g.packs[e.Pack]
		if !ok || e.Kind != stock.Received && e.Kind != stock.Made || p.Lot == "" {
			continue
		}
		g.link(Link{From: LotOf(p.Material, p.Lot), To: PackOf(p.ID), Q: p.Size, Entries: []string{e.ID}})
	}
}

// takes links every pack to what was made of it.
func (g *Graph) takes() {
	at := map[[2]Thing]int{}
	for _, e := range g.state.Entries {
		if e.Kind == stock.Taken {
			l := Link{From: PackOf(e.Pack), To: g.target(e.For), Q: e.Q, Entries: []string{e.ID}, Jugs: jugs(e.Jug), Doubt: g.doubt(e)}
			if e.Planned {
				l.Planned = e.Q
			}
			g.flow(at, l)
		}
	}
}

// jugs is a list of the jug where one is named.
func jugs(name string) []string {
	if name == "" {
		return nil
	}
	return []string{name}
}

// flow links one thing to another; what goes from the one into the other another time adds to the link there is.
func (g *Graph) flow(at map[[2]Thing]int, l Link) {
	key := [2]Thing{l.From, l.To}
	i, there := at[key]
	if !there {
		at[key] = len(g.links)
		g.link(l)
		return
	}
	have := &g.links[i]
	have.Q += l.Q
	have.Entries = append(have.Entries, l.Entries...)
	have.Planned += l.Planned
	have.Whole = have.Whole || (len(have.Jugs) == 0) != (len(l.Jugs) == 0)
	for _, j := range l.Jugs {
		if !slices.Contains(have.Jugs, j) {
			have.Jugs = append(have.Jugs, j)
		}
	}
}

// target is what something was taken for: a pack that was made of it, else a batch.
func (g *Graph) target(id string) Thing {
	if p, ok := g.packs[id]; ok && p.Made {
		return PackOf(id)
	}
	return BatchOf(id)
}

// doubt says what is odd about a take.
func (g *Graph) doubt(e stock.Entry) string {
	_, pack := g.packs[e.Pack]
	made, isPack := g.packs[e.For]
	_, batch := g.batches[e.For]
	switch {
	case !pack:
		return "of a pack that never came"
	case e.For == "":
		return "the ledger does not say for what"
	case isPack && !made.Made:
		return fmt.Sprintf("%s is a pack that was bought and takes nothing in", e.For)
	case !isPack && !batch:
		return fmt.Sprintf("no batch %s is in the logbook", e.For)
	}
	return ""
}

// Links lists what a thing goes into, or what goes into it.
func (g Graph) Links(t Thing, way Way) []Link {
	at := g.out[t]
	if way == Backward {
		at = g.in[t]
	}
	out := make([]Link, len(at))
	for i, k := range at {
		out[i] = g.links[k]
	}
	return out
}

// far is the thing at the other end of a link.
func (l Link) far(way Way) Thing {
	if way == Backward {
		return l.From
	}
	return l.To
}

// Reach lists all a thing goes into, or all that goes into it, however far, each once, in the order it is met.
func (g Graph) Reach(t Thing, way Way) []Thing {
	seen := map[Thing]bool{t: true}
	list := []Thing{t}
	for i := 0; i < len(list); i++ {
		for _, l := range g.Links(list[i], way) {
			if far := l.far(way); !seen[far] {
				seen[far] = true
				list = append(list, far)
			}
		}
	}
	return list[1:]
}
