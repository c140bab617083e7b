package tables

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
)

// packColumns are the columns of packs. What was taken and lost is told only; it is never read.
func packColumns() []string {
	return []string{
		"pack", "kind", "id", "name", "unit", "lot", "supplier", "bought", "opened", "expires", "size", "tare_g", "usual_loss", "price", "postage", "currency", "made", "taken", "lost", "left",
	}
}

// WritePacks writes all packs, by material and in the order in which they are picked.
func WritePacks(w io.Writer, s stock.State) error {
	return written(w, "packs", packColumns(), func(row func(...string)) {
		for _, m := range s.Materials() {
			for _, p := range s.Held[m].Packs {
				row(p.ID, string(m.Kind), m.ID, p.Name, m.Kind.Unit(), p.Lot, p.Supplier, date(p.Bought), date(p.Opened), date(p.Expires), p.Size.String(), p.Tare.String(), p.Loss.String(),
					p.Price.String(), p.Postage.String(), s.Currency, yes(p.Made), p.Taken.String(), p.Lost.String(), p.Left.String())
			}
		}
	})
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return ""
}

// ReadPacks makes entries of packs that are in a table and not yet in the ledger: each is received, opened, and counted where less is left of it than
// came. Packs that the ledger has are passed over. Nothing is taken in where a row cannot be.
func ReadPacks(r io.Reader, s stock.State) (desk.Deed, error) {
	table, err := rows(r, packColumns(), []string{"kind", "id", "size", "price", "bought"})
	if err != nil {
		return desk.Deed{}, fmt.Errorf("take in packs: %w", err)
	}
	var d desk.Deed
	known, came := 0, 0
	for _, row := range table {
		if c := row.at("currency"); c != "" && s.Currency == "" { // the first price that names one
			rule, err := desk.Rule(s, "", c, "the currency of the packs taken in")
			if err != nil {
				return desk.Deed{}, fmt.Errorf("take in packs: %w", row.refuse("%w", err))
			}
			d, s.Currency = rule, c
		}
		if p, ok := s.Pack(row.at("pack")); ok && p.Material.ID == row.at("id") {
			known++
			continue
		}
		entries, err := row.pack(s, d.Entries)
		if err != nil {
			return desk.Deed{}, fmt.Errorf("take in packs: %w", err)
		}
		d.Entries = append(d.Entries, entries...)
		came++
	}
	d.Said = append(d.Said, fmt.Sprintf("%d packs taken in, %d known already", came, known))
	return d, nil
}

// pack makes the entries of one pack.
func (r row) pack(s stock.State, before []stock.Entry) ([]stock.Entry, error) {
	e := stock.Entry{Kind: stock.Received, Pack: r.at("pack"), Name: r.at("name"), Lot: r.at("lot"), Supplier: r.at("supplier")}
	var err error
	if e.Material, err = lot.ParseMaterial(r.at("kind") + " " + r.at("id")); err != nil {
		return nil, r.refuse("%w", err)
	}
	if r.at("made") != "" {
		return nil, r.refuse("%s was made, not bought: take in the movements it came of", e.Pack)
	}
	if c := r.at("currency"); c != "" && s.Currency != "" && c != s.Currency {
		return nil, r.refuse("its price is in %s and the ledger is in %s; nothing is converted", c, s.Currency)
	}
	if err := r.common(&e, e.Material.Kind); err != nil {
		return nil, err
	}
	if e.Day == 0 || e.Day > s.Today {
		return nil, r.refuse("bought %q: write the day it came, as 2026-11-20, no day to come", r.at("bought"))
	}
	if e.Q <= 0 || e.Loss >= e.Q {
		return nil, r.refuse("a pack of %s with a usual loss of %s cannot be", e.Q, e.Loss)
	}
	if e.Name == "" {
		e.Name = e.Material.ID
	}
	switch _, taken := s.Pack(e.Pack); {
	case e.Pack == "":
		e.Pack = desk.NextPack(s, e.Material, before...)
	case taken || slices.ContainsFunc(before, func(o stock.Entry) bool { return o.Kind == stock.Received && o.Pack == e.Pack }):
		return nil, r.refuse("another pack is called %s: leave its name out, and it gets one", e.Pack)
	}
	out := []stock.Entry{e}
	opened, err := readDay(r.at("opened"))
	if err != nil {
		return nil, r.refuse("%w", err)
	}
	if opened != 0 {
		out = append(out, stock.Entry{Kind: stock.Opened, Pack: e.Pack, Day: max(opened, e.Day)})
	}
	if left := r.at("left"); left != "" {
		q, err := quantity(left, e.Material.Kind)
		if err != nil || q > e.Q {
			return nil, r.refuse("%q cannot be left of %s", left, e.Q)
		}
		if q != e.Q {
			out = append(out, stock.Entry{Kind: stock.Counted, Pack: e.Pack, Day: s.Today, Q: q, Text: "left when it was taken in"})
		}
	}
	return out, nil
}

// common reads the cells that packs and movements share, of what is of a kind.
func (r row) common(e *stock.Entry, kind lot.Kind) error {
	for _, c := range []struct {
		column string
		at     *lot.Quantity
		kind   lot.Kind
	}{{"size", &e.Q, kind}, {"quantity", &e.Q, kind}, {"tare_g", &e.Tare, lot.Other}, {"usual_loss", &e.Loss, kind}} {
		cell := r.at(c.column)
		if cell == "" {
			continue
		}
		q, err := quantity(cell, c.kind)
		if err != nil {
			return r.refuse("%s: %w", c.column, err)
		}
		*c.at = q
	}
	var err error
	if e.Expires, err = readDay(r.at("expires")); err != nil {
		return r.refuse("expires: %w", err)
	}
	cell := r.at("bought") + r.at("day")
	if e.Day, err = readDay(cell); err != nil {
		return r.refuse("day: %w", err)
	}
	for column, at := range map[string]*moneyAt{"price": {&e.Price}, "postage": {&e.Postage}} {
		if err := at.read(strings.Replace(r.at(column), ",", ".", 1)); err != nil {
			return r.refuse("%s: %w", column, err)
		}
	}
	return nil
}

// quantity reads a quantity as it is handed on or, where it is not written so, as makers type it.
func quantity(cell string, kind lot.Kind) (lot.Quantity, error) {
	if q, ok := lot.Parse(cell); ok {
		return q, nil
	}
	return invoice.Quantity(cell, kind)
}
