package taking

import (
	"cmp"
	"fmt"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// Draw is what is taken of one pack.
type Draw struct {
	Want
	Part lot.Part
	Past bool // the pack was past its date: its lot was typed, so it was used
}

// Lack is what no pack covers.
type Lack struct {
	Want   // its quantity is what lacks
	Why    string
	Unkept bool // no pack of it ever came
}

// Taking is what is taken for something, and what cannot be.
type Taking struct {
	Draws []Draw
	Lacks []Lack
}

// Of picks packs for what is wanted: of the lot that was typed where one was, else first expired first out, packs past their date on the day left
// alone. A pack that does not reach is used up and the next follows; what none covers lacks, and nothing is ever taken that is not there.
func Of(wants []Want, s lot.Stock, on day.Day) Taking {
	var t Taking
	left := map[lot.Material][]lot.Pack{}
	for _, w := range wants {
		packs, ok := left[w.Material]
		if !ok {
			packs = append(packs, s.Held[w.Material].Packs...)
			left[w.Material] = packs
		}
		t.take(w, packs, on)
	}
	return t
}

// take takes what is wanted of packs and lessens what is left in them.
func (t *Taking) take(w Want, packs []lot.Pack, on day.Day) {
	from := packs
	if w.Lot != "" {
		from = ofLot(packs, w.Lot)
	}
	want, blocked := w.Q, lot.Quantity(0)
	for _, p := range lot.InOrder(from) {
		past := p.Blocked(on)
		if past && w.Lot == "" {
			blocked += max(p.Left, 0)
			continue
		}
		q := min(max(p.Left, 0), want)
		if q == 0 {
			continue
		}
		d := Draw{Want: w, Part: lot.Part{Pack: p.ID, Lot: p.Lot, Q: q}, Past: past}
		d.Q = q
		t.Draws = append(t.Draws, d)
		want -= q
		lessen(packs, p.ID, q)
	}
	if want > 0 {
		lack := Lack{Want: w, Why: why(w, len(packs), len(from), blocked), Unkept: len(packs) == 0}
		lack.Q = want
		t.Lacks = append(t.Lacks, lack)
	}
}

// why says why something lacks and how to put it right.
func why(w Want, packs, ofLot int, blocked lot.Quantity) string {
	switch {
	case packs == 0:
		return "no pack of it ever came: receive one if you keep it in your ledger"
	case ofLot == 0:
		return fmt.Sprintf("no pack bears the lot %s that was typed at the scale: receive it, or correct the mark: pourbench logbook correct POUR %s lot=NUMBER", w.Lot, cmp.Or(w.Mark, "MARK"))
	case blocked > 0:
		return fmt.Sprintf("%s %s more lie there past their date and are left alone: type their lot at the scale if they went in", blocked, w.Material.Kind.Unit())
	}
	return "the packs hold no more by the book: receive what came, or count the tub"
}

func ofLot(packs []lot.Pack, typed string) []lot.Pack {
	var out []lot.Pack
	for _, p := range packs {
		if strings.EqualFold(p.Lot, typed) || strings.EqualFold(p.ID, typed) {
			out = append(out, p)
		}
	}
	return out
}

func lessen(packs []lot.Pack, id string, q lot.Quantity) {
	for i := range packs {
		if packs[i].ID == id {
			packs[i].Left -= q
		}
	}
}

// Entries are what the taking writes into the ledger, for a pour or a pack that is made.
func (t Taking) Entries(into string, on day.Day) []stock.Entry {
	var out []stock.Entry
	for _, d := range t.Draws {
		out = append(out, stock.Entry{Kind: stock.Taken, Day: on, Pack: d.Part.Pack, Q: d.Part.Q, For: into, Jug: d.Jug, Planned: d.Planned})
	}
	return out
}

// Rest is what is still to be taken of what is wanted, with what was taken for it already; more is by how much that goes beyond it, by material.
func Rest(wants []Want, s stock.State, into string) (rest []Want, more []Lack) {
	type place struct {
		m   lot.Material
		jug string
	}
	had := map[place]lot.Quantity{}
	for _, e := range TakenFor(s, into) {
		if p, ok := s.Pack(e.Pack); ok {
			had[place{p.Material, e.Jug}] += e.Q
		}
	}
	at := map[place]Want{}
	for _, w := range wants {
		k := place{w.Material, w.Jug}
		q := min(had[k], w.Q)
		had[k] -= q
		at[k] = w
		if w.Q -= q; w.Q > 0 {
			rest = append(rest, w)
		}
	}
	for _, w := range wants {
		k := place{w.Material, w.Jug}
		if had[k] > 0 {
			x := at[k]
			x.Q = had[k]
			more = append(more, Lack{Want: x, Why: "more was taken than went in: give it back and take anew"})
			had[k] = 0
		}
	}
	return rest, more
}

// TakenFor lists the entries that took something for a pour or a pack that was made, those that count.
func TakenFor(s stock.State, into string) []stock.Entry {
	var out []stock.Entry
	for _, e := range s.Entries {
		if e.Kind == stock.Taken && e.For == into {
			out = append(out, e)
		}
	}
	return out
}

// Back are the entries that give back all that was taken for a pour.
func Back(s stock.State, into string, on day.Day, why string) []stock.Entry {
	var out []stock.Entry
	for _, e := range TakenFor(s, into) {
		out = append(out, stock.Entry{Kind: stock.TakenBack, Day: on, Of: e.ID, Text: why})
	}
	return out
}
