package tables

import (
	"fmt"
	"io"
	"maps"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
)

// moneyAt is a place for an amount.
type moneyAt struct{ at *money.Amount }

// read reads an amount; an empty cell is none.
func (m moneyAt) read(cell string) error {
	if cell == "" {
		return nil
	}
	a, err := money.Parse(cell)
	*m.at = a
	return err
}

func movementColumns() []string {
	return []string{
		"entry", "kind", "day", "pack", "material", "name", "lot", "supplier", "expires", "quantity", "unit", "tare_g", "usual_loss", "price", "postage", "for", "jug", "planned", "formula", "currency",
		"text", "corrects", "cost",
	}
}

// WriteMovements writes the entries of the ledger that count, in the order of their days, with what each took out at its cost.
func WriteMovements(w io.Writer, s stock.State) error {
	packs := packsOf(s)
	return written(w, "movements", movementColumns(), func(row func(...string)) {
		for _, e := range s.Entries {
			m := e.Material
			if in, ok := packs[e.Pack]; ok && m.ID == "" {
				m = in
			}
			material, unit, cost, price, post := "", "", "", "", ""
			if m.ID != "" {
				material, unit = m.String(), m.Kind.Unit()
			}
			if c, ok := s.Costs[e.ID]; ok {
				cost = c.String()
			}
			if e.Kind == stock.Received || e.Kind == stock.Offered {
				price, post = e.Price.String(), e.Postage.String()
			}
			row(e.ID, string(e.Kind), date(e.Day), e.Pack, material, e.Name, e.Lot, e.Supplier, date(e.Expires), e.Q.String(), unit, e.Tare.String(), e.Loss.String(), price, post,
				e.For, e.Jug, yes(e.Planned), string(e.Formula), e.Currency, e.Text, e.Corrects, cost)
		}
	})
}

// ReadMovements makes entries of those of a table that the ledger does not have, by their names. Ever are the names of all entries the ledger has,
// also of those that count no more. Nothing is taken in where a row cannot be.
func ReadMovements(r io.Reader, s stock.State, ever []string) (desk.Deed, error) {
	table, err := rows(r, movementColumns(), []string{"kind", "day"})
	if err != nil {
		return desk.Deed{}, fmt.Errorf("take in movements: %w", err)
	}
	var d desk.Deed
	known, there, packs := 0, map[string]bool{}, packsOf(s)
	for _, id := range ever {
		there[id] = true
	}
	names := maps.Clone(there)
	for _, row := range table {
		names[row.at("entry")] = true
	}
	for _, row := range table {
		if !names[row.at("corrects")] {
			row.cells["corrects"] = "" // what it stands in the place of counts no more, and was not handed on
		}
		id := row.at("entry")
		if id != "" && there[id] {
			known++
			continue
		}
		there[id] = true
		e, err := row.movement(s, packs)
		if err != nil {
			return desk.Deed{}, fmt.Errorf("take in movements: %w", err)
		}
		if came(e.Kind) {
			packs[e.Pack] = e.Material
		}
		d.Entries = append(d.Entries, e)
	}
	d.Said = append(d.Said, fmt.Sprintf("%d entries taken in, %d known already", len(d.Entries), known))
	return d, nil
}

// packsOf is what is in every pack, by the names of the packs.
func packsOf(s stock.State) map[string]lot.Material {
	out := map[string]lot.Material{}
	for m, h := range s.Held {
		for _, p := range h.Packs {
			out[p.ID] = m
		}
	}
	return out
}

func came(k stock.Kind) bool { return k == stock.Received || k == stock.Made }

// movement makes one entry; packs are those that came before.
func (r row) movement(s stock.State, packs map[string]lot.Material) (stock.Entry, error) {
	e := stock.Entry{
		ID: r.at("entry"), Kind: stock.Kind(r.at("kind")), Pack: r.at("pack"), Name: r.at("name"), Lot: r.at("lot"), Supplier: r.at("supplier"), For: r.at("for"), Jug: r.at("jug"),
		Planned: r.at("planned") != "", Formula: lot.Formula(r.at("formula")), Currency: r.at("currency"), Text: r.at("text"), Corrects: r.at("corrects"),
	}
	in, there := packs[e.Pack]
	switch e.Kind {
	case stock.Received, stock.Made, stock.Offered:
		var err error
		if in, err = lot.ParseMaterial(r.at("material")); err != nil {
			return e, r.refuse("%w", err)
		}
		e.Material = in
		switch {
		case came(e.Kind) && e.Pack == "":
			return e, r.refuse("which pack? Write a name for it, as olive-1")
		case came(e.Kind) && e.Corrects == "" && there:
			return e, r.refuse("another pack is called %s", e.Pack)
		}
	case stock.Opened, stock.Taken, stock.Counted, stock.Lost:
		if !there {
			return e, r.refuse("the pack %q never came: the row in which it came stands before", e.Pack)
		}
	case stock.Rule:
		if e.Formula != lot.FIFO && e.Formula != lot.Average {
			return e, r.refuse("%q is no rule of costs: write %s or %s", e.Formula, lot.FIFO, lot.Average)
		}
	default:
		return e, r.refuse("%q is no kind of entry that can be taken in: write received, opened, taken, counted, lost, made, rule or offered", e.Kind)
	}
	if err := r.common(&e, in.Kind); err != nil {
		return e, err
	}
	switch {
	case e.Day == 0 || e.Day > s.Today:
		return e, r.refuse("day %q: write the day it was, as 2026-11-20, no day to come", r.at("day"))
	case e.Q <= 0 && e.Kind != stock.Rule && e.Kind != stock.Opened && e.Kind != stock.Counted:
		return e, r.refuse("a quantity of nothing cannot be")
	case came(e.Kind) && e.Loss >= e.Q:
		return e, r.refuse("a usual loss of %s of %s cannot be", e.Loss, e.Q)
	}
	return e, nil
}

// WriteCosts writes what every batch, or whatever was made beforehand, took of which lot and what that cost.
func WriteCosts(w io.Writer, s stock.State) error {
	columns := []string{"for", "jug", "day", "kind", "id", "name", "pack", "lot", "quantity", "unit", "planned", "cost", "currency", "formula"}
	packs := map[string]lot.Pack{}
	for _, h := range s.Held {
		for _, p := range h.Packs {
			packs[p.ID] = p
		}
	}
	return written(w, "costs", columns, func(row func(...string)) {
		for _, e := range s.Entries {
			if e.Kind != stock.Taken {
				continue
			}
			p := packs[e.Pack]
			cost := "" // none is known
			if c, ok := s.Costs[e.ID]; ok {
				cost = c.String()
			}
			row(e.For, e.Jug, date(e.Day), string(p.Material.Kind), p.Material.ID, p.Name, e.Pack, p.Lot, e.Q.String(), p.Material.Kind.Unit(), yes(e.Planned), cost, s.Currency, string(s.Formula))
		}
	})
}
