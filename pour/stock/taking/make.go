package taking

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/strict"
)

// Making is something made beforehand: a blend of oils, a stock lye, a sprinkle blend, embeds. It is a batch of its own, with lots in and a lot out.
type Making struct {
	Material lot.Material
	Name     string
	Pack     string // what the new pack is called
	Q        lot.Quantity
	Lot      string  // the maker's own; empty: as the pack
	Expires  day.Day // 0: with the first of what went in
	On       day.Day
	Of       []Want
}

// Entries are what a making writes into the ledger: what was taken for the pack, and the pack. Where the packs do not hold what goes in nothing is
// made, because nobody would know what it cost; water needs no pack.
func (m Making) Entries(s lot.Stock) ([]stock.Entry, Taking, error) {
	if len(m.Of) == 0 || m.Q <= 0 {
		return nil, Taking{}, errors.New("make a pack: name how much came out and what went in")
	}
	var wants []Want
	in := lot.Quantity(0)
	for _, w := range m.Of {
		if !w.Material.Kind.Counted() {
			in += w.Q
		}
		if (w.Material != lot.Material{Kind: lot.Other, ID: lot.Water}) || len(s.Held[w.Material].Packs) > 0 {
			wants = append(wants, w)
		}
	}
	if !m.Material.Kind.Counted() && m.Q > in {
		return nil, Taking{}, fmt.Errorf("make %s g of %s: only %s g went in; name everything that did, water too", m.Q, m.Name, in)
	}
	t := Of(wants, s, m.On)
	if len(t.Lacks) > 0 {
		l := t.Lacks[0]
		return nil, t, fmt.Errorf("make %s: %s %s of %s lacks: %s", m.Name, l.Q, l.Material.Kind.Unit(), l.Name, l.Why)
	}
	out := t.Entries(m.Pack, m.On)
	return append(out, stock.Entry{
		Kind: stock.Made, Day: m.On, Pack: m.Pack, Material: m.Material, Name: m.Name, Lot: cmp.Or(m.Lot, m.Pack), Q: m.Q, Expires: m.expires(t, s),
	}), t, nil
}

// expires is the day a making names, or the first on which something that went in expires.
func (m Making) expires(t Taking, s lot.Stock) day.Day {
	first := m.Expires
	if first != 0 {
		return first
	}
	for _, d := range t.Draws {
		for _, p := range s.Held[d.Material].Packs {
			if p.ID == d.Part.Pack && p.Expires != 0 && (first == 0 || p.Expires < first) {
				first = p.Expires
			}
		}
	}
	return first
}

// Find finds a material that packs came of, by its kind and id, its id, or the name on its packs.
func Find(s lot.Stock, typed string) (lot.Material, string, error) {
	typed = strings.TrimSpace(typed)
	water := lot.Material{Kind: lot.Other, ID: lot.Water}
	var found []lot.Material
	names := map[lot.Material]string{}
	var known []string
	for m, h := range s.Held {
		fits := strings.EqualFold(typed, m.ID) || strings.EqualFold(typed, m.String())
		for _, p := range h.Packs {
			names[m] = cmp.Or(p.Name, m.ID)
			fits = fits || strings.EqualFold(typed, p.Name)
		}
		known = append(known, m.ID)
		if fits && len(h.Packs) > 0 {
			found = append(found, m)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], names[found[0]], nil
	case len(found) > 1:
		return lot.Material{}, "", fmt.Errorf("find %q: it is %s and %s; write the kind before it", typed, found[0], found[1])
	case strings.EqualFold(typed, lot.Water):
		return water, pour.NameWater, nil
	}
	const list = "pourbench stock lists what there is"
	return lot.Material{}, "", fmt.Errorf("find %q: no pack of it ever came; %s", typed, strict.Meant(typed, known, list, list))
}
