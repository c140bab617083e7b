package trace

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
)

// Tell is a thing in words.
func (g Graph) Tell(t Thing) string {
	switch t.Kind {
	case Lot:
		return g.tellLot(t)
	case Pack:
		return g.tellPack(t)
	case Batch:
		return g.tellBatch(t)
	case Bars:
		return fmt.Sprintf("%s of %s labelled %s", tellBars(g.places[t].bars), t.Of, g.label(t))
	}
	return g.tellPlace(t)
}

// tellLot tells a lot by what it is called and who sent it.
func (g Graph) tellLot(t Thing) string {
	name, from := t.Material.ID, []string{}
	if s, ok := g.spelt[t]; ok {
		name = s.name
	}
	made := false
	for _, l := range g.Links(t, Forward) {
		p, ok := g.packs[l.To.ID]
		if l.To.Kind != Pack || !ok {
			continue
		}
		made = p.Made
		if p.Name != "" {
			name = p.Name
		}
		if p.Supplier != "" && !slices.Contains(from, p.Supplier) {
			from = append(from, p.Supplier)
		}
	}
	text := fmt.Sprintf("lot %s of %s", g.number(t), name)
	if made {
		text += ", made here"
	}
	if len(from) > 0 {
		text += ", from " + strings.Join(from, " and ")
	}
	return text
}

// tellPack tells a pack by what is on it and what is in it.
func (g Graph) tellPack(t Thing) string {
	p, ok := g.packs[t.ID]
	if !ok {
		return "pack " + t.ID
	}
	words := []string{fmt.Sprintf("pack %s %s", p.ID, called(p))}
	if p.Lot != "" {
		words = append(words, "lot "+p.Lot)
	}
	came := map[bool]string{true: "made", false: "received"}[p.Made]
	words = append(words, fmt.Sprintf("%s %s %s", amount(p.Size, p.Material.Kind), came, p.Bought), amount(p.Left, p.Material.Kind)+" left")
	if p.Lost != 0 {
		words = append(words, amount(p.Lost, p.Material.Kind)+" lost")
	}
	if p.Blocked(g.today) {
		words = append(words, "past its date "+p.Expires.String())
	}
	return strings.Join(words, ", ")
}

// called is what a pack's material is called.
func called(p lot.Pack) string {
	if p.Name != "" {
		return p.Name
	}
	return p.Material.ID
}

// amount is a quantity with its unit.
func amount(q lot.Quantity, k lot.Kind) string { return q.String() + " " + k.Unit() }

// tellBatch tells a batch by its name and where it stands.
func (g Graph) tellBatch(t Thing) string {
	b, ok := g.batches[t.ID]
	switch {
	case t.ID == "":
		return "nothing that is named"
	case !ok:
		return "batch " + t.ID
	case b.Fault != nil:
		return fmt.Sprintf("batch %s: its file cannot be read", b.ID)
	}
	text := fmt.Sprintf("batch %s %s, poured %s, %s", b.ID, b.Name, b.Poured, b.State)
	if b.Bars.Known {
		text += ", " + tellBars(b.Bars.Bars)
	}
	return text
}

// label is a label's lot as it was typed.
func (g Graph) label(t Thing) string {
	if b, ok := g.batches[t.Of]; ok {
		for _, l := range b.Lots {
			if folded(l.Lot) == t.ID {
				return l.Lot
			}
		}
	}
	return t.ID
}

// tellPlace tells where bars are.
func (g Graph) tellPlace(t Thing) string {
	p := g.places[t]
	switch {
	case p.event.Kind != "" && strings.HasPrefix(t.ID, Cut+" "):
		return p.event.Day() + ": " + tellBars(p.bars) + " not good enough to sell, at the cut"
	case p.event.Kind != "":
		return p.event.Day() + ": " + life.Tell(p.event, pour.Show{})
	case t.ID == Missing && p.bars < 0:
		return tellBars(-p.bars) + " more than there should be"
	case t.ID == Missing:
		return tellBars(p.bars) + " missing by a count"
	case t.ID == Left:
		return tellBars(p.bars) + " left here"
	}
	return "how many bars there are is not logged"
}

// tellBars is a number of bars in words.
func tellBars(n int) string {
	if n == 1 {
		return "1 bar"
	}
	return fmt.Sprintf("%d bars", n)
}

// tellLink tells the thing at the other end of a link, and how much went along it: of a lot into its packs all of them, which needs no words.
func (g Graph) tellLink(l Link, way Way) string {
	far := l.far(way)
	if l.Q == 0 || l.To.Kind == Pack && l.From.Kind == Lot {
		return g.Tell(far)
	}
	unit := lot.Kind("")
	if p, ok := g.packs[l.From.ID]; ok {
		unit = p.Material.Kind
	}
	text := amount(l.Q, unit)
	switch {
	case l.Planned == 0:
	case l.Planned < l.Q: // oil that was weighed and wets colours, of which nobody weighed a pinch
		text += " (" + amount(l.Planned, unit) + " of it as planned)"
	default:
		text += " (as planned)"
	}
	switch {
	case len(l.Jugs) == 0:
	case l.Whole:
		text += " in all of it and in " + strings.Join(l.Jugs, ", ")
	default:
		text += " in " + strings.Join(l.Jugs, ", ")
	}
	return text + direction(way) + g.Tell(far)
}

// direction is the word between how much went and the other end.
func direction(way Way) string {
	if way == Backward {
		return " of "
	}
	return " into "
}

// mark is what is odd about a thing.
func (g Graph) mark(t Thing) string {
	switch t.Kind {
	case Pack:
		p, ok := g.packs[t.ID]
		switch {
		case ok && p.Left < 0:
			return "more was taken than the book has there"
		case ok && p.Lot == "" && !p.Made:
			return "no lot was written down"
		case ok && p.Made && len(g.Links(t, Backward)) == 0:
			return "made of nothing that the ledger names"
		}
	case Bars:
		if labels := g.Links(BatchOf(t.Of), Forward); len(slices.DeleteFunc(labels, func(l Link) bool { return l.To.Kind != Bars })) > 1 {
			return "its batch has several labels: which bars of it are where nobody wrote"
		}
	case Batch:
		if b, ok := g.batches[t.ID]; ok && b.Bars.Over > 0 {
			return fmt.Sprintf("%s more went than there were", tellBars(b.Bars.Over))
		}
	}
	return ""
}
