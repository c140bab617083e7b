// Package closing closes the books over a stretch of days: of every material what there was and what came is what was used, shrank and is left, in its
// own unit and in money; and what the batches cost is in bars that are on hand, in those that went, or in loaves not cut yet.
package closing

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// Sum is so much of a material and its cost.
type Sum struct {
	Q    lot.Quantity
	Cost money.Amount
}

// plus is both of two sums.
func (s Sum) plus(o Sum) Sum { return Sum{s.Q + o.Q, s.Cost.Plus(o.Cost)} }

// minus is one sum less another.
func (s Sum) minus(o Sum) Sum { return Sum{s.Q - o.Q, s.Cost.Minus(o.Cost)} }

// Row is one material over the days. Opening + Bought + Made = Batches + Blends + Lost + Counted + Left + Off, in quantities and in money; Off is
// nothing unless ledger and shelves disagree.
type Row struct {
	Material lot.Material
	Name     string
	Opening  Sum
	Bought   Sum
	Made     Sum // by the maker: its cost is what went into it
	Batches  Sum // used for batches
	Blends   Sum // used for blends and embeds: it comes back as what was made
	Lost     Sum // spilled and thrown away
	Counted  Sum // what counts found too little; below 0: too much
	Left     Sum
	Off      Sum
	Back     lot.Quantity // that was taken and given back: it is in no other column
}

// close works out what none of the columns explains.
func (r *Row) close() {
	r.Off = r.Opening.plus(r.Bought).plus(r.Made).minus(r.used()).minus(r.Lost).minus(r.Counted).minus(r.Left)
}

func (r *Row) used() Sum { return r.Batches.plus(r.Blends) }

// Materials are all materials over the days.
type Materials struct {
	From, To day.Day // both are in it
	Currency string
	Formula  lot.Formula
	Rows     []Row             // by kind and name
	Total    Row               // of all, in money; its quantities are none, because grams and pieces have no sum
	Weighed  Row               // of what is weighed, in g
	Pieces   Row               // of what is counted
	Costs    map[string][]Cost // of every batch: what was taken for it until the last day
	Odd      []stock.Doubt     // what can hardly be
}

// Cost is what was taken for a batch on one day.
type Cost struct {
	Day  day.Day
	Cost money.Amount
}

// Of closes the books of a ledger over the days from one to another, both of them in it. What there was at first is what an own look at the ledger of
// the day before says, and what is left that of the last day; what moved is added up from the entries between. The rule of cost holds for all days.
func Of(entries []stock.Entry, from, to day.Day) Materials {
	standing := stock.Standing(entries)
	before, after := stock.Of(until(standing, from-1), from-1), stock.Of(until(standing, to), to)
	m := Materials{From: from, To: to, Currency: after.Currency, Formula: after.Formula, Odd: after.Odd, Costs: map[string][]Cost{}}
	rows := map[lot.Material]*Row{}
	for mat, h := range after.Held {
		rows[mat] = &Row{Material: mat, Name: called(h), Left: held(h), Opening: held(before.Held[mat])}
	}
	m.move(rows, after, entries)
	for _, r := range rows {
		r.close()
		m.Rows = append(m.Rows, *r)
	}
	slices.SortFunc(m.Rows, func(a, b Row) int {
		return cmp.Or(slices.Index(lot.Kinds(), a.Material.Kind)-slices.Index(lot.Kinds(), b.Material.Kind), cmp.Compare(a.Name, b.Name), cmp.Compare(a.Material.ID, b.Material.ID))
	})
	for _, r := range m.Rows {
		m.Total.add(r)
		if r.Material.Kind.Counted() {
			m.Pieces.add(r)
		} else {
			m.Weighed.add(r)
		}
	}
	return m
}

// until are the entries up to a day, and the rules of all days.
func until(standing []stock.Entry, last day.Day) []stock.Entry {
	var out []stock.Entry
	for _, e := range standing {
		if e.Day <= last || e.Kind == stock.Rule {
			out = append(out, e)
		}
	}
	return out
}

// held is all that lies there of a material, what is past its date too.
func held(h lot.Holding) Sum {
	var s Sum
	for _, p := range h.Packs {
		s.Q += p.Left
	}
	_, s.Cost = h.Layers.Total()
	return s
}

// called is what a material is called: as its newest pack is.
func called(h lot.Holding) string {
	name, at := "", day.Day(0)
	for _, p := range h.Packs {
		if name == "" {
			name = p.Material.ID
		}
		if p.Name != "" && p.Bought >= at {
			name, at = p.Name, p.Bought
		}
	}
	return name
}

// move adds up what moved on the days.
func (m *Materials) move(rows map[lot.Material]*Row, s stock.State, all []stock.Entry) {
	packs := map[string]lot.Pack{}
	for _, h := range s.Held {
		for _, p := range h.Packs {
			packs[p.ID] = p
		}
	}
	stock.Moved(s.Entries, map[string]lot.Quantity{}, func(e stock.Entry, out lot.Quantity) {
		p, ok := packs[e.Pack]
		if !ok {
			return
		}
		made, isPack := packs[e.For]
		blend := isPack && made.Made
		if e.Kind == stock.Taken && !blend {
			m.Costs[e.For] = append(m.Costs[e.For], Cost{e.Day, s.Costs[e.ID]})
		}
		if e.Day >= m.From {
			rows[p.Material].move(e, p, out, s.Costs[e.ID], blend)
		}
	})
	for _, e := range takenBack(all) {
		if p, ok := packs[e.Pack]; ok && e.Day >= m.From && e.Day <= m.To {
			rows[p.Material].Back += e.Q
		}
	}
}

// move adds what an entry moved.
func (r *Row) move(e stock.Entry, p lot.Pack, out lot.Quantity, cost money.Amount, blend bool) {
	moved := Sum{out, cost}
	switch e.Kind {
	case stock.Received:
		r.Bought = r.Bought.plus(Sum{-out, p.Landed()})
	case stock.Made:
		r.Made = r.Made.plus(Sum{-out, p.Landed()})
	case stock.Lost:
		r.Lost = r.Lost.plus(moved)
	case stock.Counted:
		r.Counted = r.Counted.plus(moved)
	default:
		if blend {
			r.Blends = r.Blends.plus(moved)
		} else {
			r.Batches = r.Batches.plus(moved)
		}
	}
}

// takenBack are the takes that were taken back.
func takenBack(all []stock.Entry) []stock.Entry {
	back := map[string]bool{}
	for _, e := range all {
		if e.Kind == stock.TakenBack {
			back[e.Of] = true
		}
	}
	var out []stock.Entry
	for _, e := range all {
		if e.Kind == stock.Taken && back[e.ID] {
			out = append(out, e)
		}
	}
	return out
}

// add adds another row, column by column.
func (r *Row) add(o Row) {
	for _, c := range []struct {
		to   *Sum
		from Sum
	}{
		{&r.Opening, o.Opening},
		{&r.Bought, o.Bought},
		{&r.Made, o.Made},
		{&r.Batches, o.Batches},
		{&r.Blends, o.Blends},
		{&r.Lost, o.Lost},
		{&r.Counted, o.Counted},
		{&r.Left, o.Left},
		{&r.Off, o.Off},
	} {
		*c.to = c.to.plus(c.from)
	}
	r.Back += o.Back
}

// Cost is what was taken for a batch until the end of a day.
func (m Materials) Cost(batch string, until day.Day) money.Amount {
	var sum money.Amount
	for _, c := range m.Costs[batch] {
		if c.Day <= until {
			sum = sum.Plus(c.Cost)
		}
	}
	return sum
}
