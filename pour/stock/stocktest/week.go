package stocktest

import (
	"fmt"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// week is what happens around one batch.
func (h *house) week() {
	if h.one(4) {
		h.blend()
	}
	h.batch()
	if h.one(3) {
		h.count()
	}
	if h.one(12) {
		h.spill()
	}
}

// material is the nth of what is bought: every fifth is packaging.
func material(n int) lot.Material {
	kinds := []lot.Kind{lot.Oil, lot.Scent, lot.Colourant, lot.Extra, lot.Packaging}
	return lot.Material{Kind: kinds[n%len(kinds)], ID: fmt.Sprintf("thing-%d", n)}
}

// size is the pack it comes in: the smallest that holds so much, of those that are sold, or as much as is wanted.
func size(least lot.Quantity) lot.Quantity {
	for _, g := range []lot.Quantity{10, 50, 100, 250, 500, 1000, 2500, 5000, 10_000, 25_000} {
		if g*lot.One >= least {
			return g * lot.One
		}
	}
	return (least/lot.One + 1) * lot.One
}

// receive buys a pack of at least so much.
func (h *house) receive(m lot.Material, least lot.Quantity) {
	q := size(least * lot.Quantity(2+h.dice(12)))
	p := &pack{id: fmt.Sprintf("%s-%d", m.ID, len(h.packs[m])+1), m: m, bought: h.day, left: q}
	if !h.one(10) || h.size.Clean {
		p.lot = fmt.Sprintf("L%d", h.dice(2_000))
	}
	if h.one(6) && len(h.packs[m]) > 0 { // another tub of the lot that came before
		p.lot = h.packs[m][len(h.packs[m])-1].lot
	}
	e := stock.Entry{
		Kind: stock.Received, Pack: p.id, Material: m, Name: "Thing " + m.ID, Lot: p.lot, Supplier: fmt.Sprintf("supplier %d", h.dice(5)), Q: q,
		Loss: q / 100 * lot.Quantity(h.dice(4)), Price: h.price(4000), Postage: h.price(500),
	}
	if m.Kind.Counted() {
		e.Loss = 0 // a carton stays whole
	}
	if !h.one(4) {
		p.expires = h.day + 120 + dayOf(h.dice(600))
		e.Expires = p.expires
	}
	e = h.add(e)
	if h.one(25) { // the invoice said another price
		e.Corrects, e.Price = e.ID, h.price(4000)
		h.add(e)
	}
	h.packs[m] = append(h.packs[m], p)
	h.all = append(h.all, p)
}

// price is an amount of up to so many cents.
func (h *house) price(cents int) money.Amount {
	n := 1 + h.dice(cents)
	a, _ := money.Parse(fmt.Sprintf("%d.%02d", n/100, n%100)) // of digits and a point
	return a
}

// take takes so much of a material for something, buying what there is too little of.
func (h *house) take(m lot.Material, want lot.Quantity, what, jug string) {
	for _, part := range h.pick(m, want) {
		p, q := part.p, part.q
		if !p.opened {
			p.opened = true
			h.add(stock.Entry{Kind: stock.Opened, Pack: p.id})
		}
		e := stock.Entry{Kind: stock.Taken, Pack: p.id, For: what, Jug: jug, Q: q, Planned: h.one(5)}
		switch {
		case h.one(60): // wrongly weighed
			wrong := e
			wrong.Q += lot.One
			e.Corrects = h.add(wrong).ID
		case h.one(60): // twice, and taken back
			h.add(stock.Entry{Kind: stock.TakenBack, Of: h.add(e).ID})
		}
		h.add(e)
		p.left -= q
		if h.told.Into[p.id] == nil {
			h.told.Into[p.id] = map[string]bool{}
		}
		h.told.Into[p.id][what] = true
	}
}

type part struct {
	p *pack
	q lot.Quantity
}

// pick picks packs, first expired first, by a plain search for the best one each time.
func (h *house) pick(m lot.Material, want lot.Quantity) []part {
	var out []part
	taken := map[*pack]bool{}
	for want > 0 {
		var best *pack
		for _, p := range h.packs[m] {
			if p.left <= 0 || taken[p] || p.expires != 0 && p.expires < h.day {
				continue
			}
			if best == nil || p.expires != 0 && (best.expires == 0 || p.expires < best.expires) {
				best = p
			}
		}
		if best == nil {
			h.receive(m, want)
			continue
		}
		q := min(want, best.left)
		taken[best] = true
		out, want = append(out, part{best, q}), want-q
	}
	return out
}

// quantity draws how much of a material goes into something.
func (h *house) quantity(m lot.Material) lot.Quantity {
	if m.Kind.Counted() {
		return lot.Quantity(1+h.dice(60)) * lot.One
	}
	return lot.Quantity(1 + h.dice(8_000_000))
}

// blend makes a blend of two to five things that are weighed, or of a blend there is and something else.
func (h *house) blend() {
	m := lot.Material{Kind: lot.Blend, ID: fmt.Sprintf("blend-%d", h.dice(3))}
	p := &pack{id: fmt.Sprintf("%s-%d", m.ID, len(h.packs[m])+1), m: m, bought: h.day, opened: true}
	for range 2 + h.dice(4) {
		n := h.dice(h.size.Materials)
		from := material(n)
		if from.Kind.Counted() {
			continue
		}
		q := h.quantity(from)
		h.take(from, q, p.id, "")
		p.left += q
	}
	if old := h.packs[lot.Material{Kind: lot.Blend, ID: "blend-0"}]; m.ID != "blend-0" && len(old) > 0 && old[len(old)-1].left > lot.One {
		h.take(old[0].m, lot.One, p.id, "")
		p.left += lot.One
	}
	if p.left == 0 {
		return
	}
	p.lot = strings.ToUpper(p.id)
	h.add(stock.Entry{Kind: stock.Made, Pack: p.id, Material: m, Name: "Blend", Lot: p.lot, Q: p.left})
	h.packs[m] = append(h.packs[m], p)
	h.all = append(h.all, p)
}

// count weighs a pack: a little is gone, seldom something is found.
func (h *house) count() {
	if len(h.all) == 0 {
		return
	}
	p := h.all[max(0, len(h.all)-1-h.dice(60))]
	gone := p.left * lot.Quantity(h.dice(5)) / 200
	if h.one(10) {
		gone = -lot.One
	}
	if p.m.Kind.Counted() {
		gone = gone / lot.One * lot.One
	}
	p.left -= gone
	h.add(stock.Entry{Kind: stock.Counted, Pack: p.id, Q: p.left, Text: "weighed the tub"})
}

// spill loses part of a pack.
func (h *house) spill() {
	if len(h.all) == 0 {
		return
	}
	p := h.all[max(0, len(h.all)-1-h.dice(60))]
	q := p.left * lot.Quantity(1+h.dice(10)) / 10
	if p.m.Kind.Counted() {
		q = q / lot.One * lot.One
	}
	if q <= 0 {
		return
	}
	p.left -= q
	h.add(stock.Entry{Kind: stock.Lost, Pack: p.id, Q: q, Text: "fell over"})
}
