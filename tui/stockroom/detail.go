package stockroom

import (
	"fmt"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// marks are the entries of a line that can be chosen: those of its pack.
func (m *Model) marks(r row) []moved {
	if !r.isPack {
		return nil
	}
	return m.shelves.entries[r.pack.ID]
}

// chosenMark is the entry that is chosen; false: none is.
func (m *Model) chosenMark() (moved, bool) {
	r, ok := m.chosen()
	if marks := m.marks(r); ok && m.story.Mark < len(marks) {
		return marks[m.story.Mark], true
	}
	return moved{}, false
}

// told is all that is told of a line, broken to a width.
func (m *Model) told(r row, w int) []listing.Line {
	var out []listing.Line
	say := func(lead, text string, st screen.Style) {
		if text != "" {
			out = append(out, listing.Line{Lead: lead, Text: text, Style: st}.Broken(w)...)
		}
	}
	if !r.isPack {
		m.tellMaterial(r, say)
		return out
	}
	m.tellPack(r.pack, say)
	for i, d := range m.doubts(r.pack.ID) {
		say(map[bool]string{true: "!", false: ""}[i == 0], d.Entry+" "+d.Text, m.look.Caution)
	}
	out = append(out, listing.Line{Lead: "everything that was written of it", Head: true})
	for i, e := range m.marks(r) {
		line := listing.Line{Lead: e.Day.String(), Text: m.movement(e, r.material.Kind), Style: m.look.Text}
		for _, part := range line.Broken(w) {
			part.Mark = i + 1
			out = append(out, part)
		}
	}
	return out
}

type sayer func(lead, text string, st screen.Style)

// tellMaterial tells what lies there of a material.
func (m *Model) tellMaterial(r row, say sayer) {
	kind := r.material.Kind
	usable, blocked := r.holding.Left(m.shelves.state.Today)
	q, cost := r.holding.Layers.Total()
	say("kind", string(kind), m.look.Text)
	say("left", amount(usable, kind), m.look.Strong)
	if blocked > 0 {
		say("× blocked", amount(blocked, kind)+" past its date, which nothing is taken of", m.look.Wrong)
	}
	if r.holding.Reserved > 0 {
		say("reserved", amount(r.holding.Reserved, kind)+" by pours that are planned", m.look.Text)
		if short := r.holding.Reserved - usable; short > 0 {
			say("! short", amount(short, kind)+" of that", m.look.Caution)
		} else {
			say("free", amount(-short, kind), m.look.Text)
		}
	}
	say("cost", m.money(cost)+m.perUnit(q, kind, cost)+" ("+formula(m.shelves.state.Formula)+")", m.look.Text)
	n, empty := 0, 0
	for _, p := range r.holding.Packs {
		if p.Left > 0 {
			n++
		} else {
			empty++
		}
	}
	text := fmt.Sprintf("%d %s in which something is left, %d used up", n, noun(n, "pack"), empty)
	say("packs", text, m.look.Text)
	say("", "They stand in the order in which they are picked: first expired, first out.", m.look.Quiet)
}

// perUnit is what a usable kilogram, or a piece, of what lies there cost.
func (m *Model) perUnit(q lot.Quantity, kind lot.Kind, cost money.Amount) string {
	const gPerKg = 1000
	switch {
	case q <= 0:
		return ""
	case kind.Counted():
		return ", " + m.money(cost.Part(int64(lot.One), int64(q))) + " each"
	}
	return ", " + m.money(cost.Part(int64(gPerKg*lot.One), int64(q))) + " per kg"
}

// formula is how costs are found, in words.
func formula(f lot.Formula) string {
	if f == lot.Average {
		return "moving average"
	}
	return "first in, first out"
}

// tellPack tells a pack.
func (m *Model) tellPack(p lot.Pack, say sayer) {
	kind := p.Material.Kind
	left, st := amount(p.Left, kind)+" of "+amount(p.Size, kind), m.look.Strong
	if p.Left < 0 {
		left, st = left+": more was taken than there was", m.look.Caution
	}
	say("left", left, st)
	if p.Name != "" {
		say("name", p.Name, m.look.Text)
	}
	switch expiryOf(p, m.shelves.state.Today) {
	case past:
		say("× expired", p.Expires.String()+": blocked, nothing is taken of it", m.look.Wrong)
	case soon:
		say("! expires", fmt.Sprintf("%s, in %d days", p.Expires, p.Expires-m.shelves.state.Today), m.look.Caution)
	case good:
		say("expires", p.Expires.String(), m.look.Text)
	}
	say("lot", p.Lot, m.look.Text)
	say("from", p.Supplier, m.look.Text)
	say(map[bool]string{true: "made", false: "bought"}[p.Made], p.Bought.String(), m.look.Text)
	if p.Opened != 0 {
		say("opened", p.Opened.String(), m.look.Text)
	}
	price := m.money(p.Price)
	if p.Postage.Sign() > 0 {
		price += " and " + m.money(p.Postage) + " postage"
	}
	say(map[bool]string{true: "went in", false: "price"}[p.Made], price, m.look.Text)
	if p.Tare > 0 {
		say("empty tub", amount(p.Tare, lot.Other), m.look.Text)
	}
	if p.Loss > 0 {
		say("usual loss", amount(p.Loss, kind)+", whose cost is spread over the rest", m.look.Text)
	}
	if p.Lost != 0 {
		say("lost", amount(p.Lost, kind), m.look.Text)
	}
}

// movement is an entry in words, what was left after it and what it cost.
func (m *Model) movement(e moved, k lot.Kind) string {
	var words []string
	switch e.Kind {
	case stock.Received, stock.Made:
		words = []string{string(e.Kind) + " " + amount(e.Q, k), "price " + m.money(e.Price)}
		if e.Kind == stock.Made {
			words = words[:1]
		}
	case stock.Opened:
		words = []string{"opened"}
	case stock.Taken:
		words = []string{"taken " + amount(e.Q, k) + " for " + e.For}
		if e.Planned {
			words = append(words, "as planned, not weighed")
		}
	case stock.Lost:
		words = []string{"lost " + amount(e.Q, k)}
	case stock.Counted:
		words = []string{"counted, " + amount(e.Q, k) + " there"}
		switch {
		case e.out > 0:
			words = append(words, amount(e.out, k)+" less than the book")
		case e.out < 0:
			words = append(words, amount(-e.out, k)+" more than the book")
		default:
			words = append(words, "as the book has it")
		}
	default:
		words = []string{string(e.Kind)}
	}
	if e.Text != "" {
		words = append(words, e.Text)
	}
	if c, ok := m.shelves.state.Costs[e.ID]; ok && c.Sign() != 0 {
		words = append(words, "cost "+m.money(c))
	}
	text := strings.Join(words, ", ")
	if e.moves && e.Kind != stock.Counted && e.Kind != stock.Received && e.Kind != stock.Made {
		text += "; " + amount(e.left, k) + " left"
	}
	if e.Corrects != "" {
		text += " (corrected)"
	}
	return text
}
