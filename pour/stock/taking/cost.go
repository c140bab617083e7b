package taking

import (
	"cmp"
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// Goods are the lines of what really went into a batch and on its bars: each material at what was taken of its packs cost, and what went in without
// being taken of any at what it would cost now, with where that is from. Notes say what to mind of them.
func Goods(s stock.State, shelf pour.Shelf, id string, wants []Want) (out []cost.Line, notes []string) {
	type sum struct {
		line cost.Line
		q    lot.Quantity
	}
	at := map[lot.Material]int{}
	var sums []sum
	find := func(m lot.Material, name string) *sum {
		i, there := at[m]
		if !there {
			i = len(sums)
			kind := cost.Materials
			if m.Kind == lot.Packaging {
				kind = cost.Packaging
			}
			at[m], sums = i, append(sums, sum{line: cost.Line{Kind: kind, Name: name}})
		}
		return &sums[i]
	}
	packed := false
	for _, e := range TakenFor(s, id) {
		p, _ := s.Pack(e.Pack)
		x := find(p.Material, cmp.Or(p.Name, p.Material.ID))
		x.q += e.Q
		x.line.Amount = x.line.Amount.Plus(s.Costs[e.ID])
		x.line.From = fmt.Sprintf("%s %s taken of your packs", x.q, p.Material.Kind.Unit())
		packed = packed || p.Material.Kind == lot.Packaging
	}
	left, _ := Rest(wants, s, id)
	rest := ofMaterial(left)
	for _, w := range rest {
		v := shelf.Valued(w.Material, w.Q)
		x := find(w.Material, w.Name)
		x.line.Amount = x.line.Amount.Plus(v.Amount)
		x.line.Lacks = cmp.Or(x.line.Lacks, v.Lacks)
		if x.line.From != "" {
			x.line.From += "; "
		}
		x.line.From += fmt.Sprintf("%s %s not taken, %s", w.Q, w.Material.Kind.Unit(), v.From)
	}
	if slices.ContainsFunc(rest, func(w Want) bool { return w.Material.ID != lot.Water }) {
		notes = append(notes, "what was not taken of a pack stands at what it would cost today; pourbench stock take "+id+" takes it")
	}
	if !packed {
		notes = append(notes, "no packaging was taken for its bars: pourbench stock pack "+id+" takes it")
	}
	for _, x := range sums {
		out = append(out, x.line)
	}
	return out, notes
}

// ofMaterial is what is wanted of each material in all: what lies there of it is counted once for all jugs.
func ofMaterial(wants []Want) []Want {
	var out []Want
	for _, w := range wants {
		i := slices.IndexFunc(out, func(x Want) bool { return x.Material == w.Material })
		if i < 0 {
			out = append(out, w)
			continue
		}
		out[i].Q += w.Q
	}
	return out
}

// Bars is how many bars a batch gave and how many of them can be sold: its sample and its seconds carry no cost, and those that were given away bring
// no money. False: nobody wrote how many there are.
func Bars(b life.Batch) (cost.Bars, bool) {
	a := b.Bars
	good := a.Bars - a.Seconds
	for _, e := range b.Of(logbook.Kept) {
		if e.What == logbook.KeptSample {
			good -= e.Life.Count
		}
	}
	good = max(good, 0)
	return cost.Bars{Cut: a.Bars, Good: good, Testers: min(a.Given, good)}, a.Known
}

// True is what a batch cost that was poured: what really went into it, its own bars, hands' time by its plan.
func True(s stock.State, shelf pour.Shelf, sheet *pour.Sheet, b life.Batch, wants []Want) (pour.CostSheet, []string) {
	goods, notes := Goods(s, shelf, b.ID, wants)
	bars, known := Bars(b)
	if !known {
		bars = sheet.SaleableBars()
		notes = append(notes, "nobody wrote how many bars it gave: those of the plan are counted")
	}
	return sheet.Costed(shelf, goods, sheet.HandsMin(), bars, ""), notes
}

// Costs is what was taken for every batch, and for everything made beforehand, cost by the ledger, by its id.
func Costs(s stock.State) map[string]money.Amount {
	out := map[string]money.Amount{}
	for _, e := range s.Entries {
		if e.Kind == stock.Taken {
			out[e.For] = out[e.For].Plus(s.Costs[e.ID])
		}
	}
	return out
}
