package invoice

import (
	"fmt"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
)

// lot reads a lot: whatever stands behind the word, up to the next blank or in quotes.
func (p *reader) lot() {
	p.skip()
	rest := p.rest()
	if len(rest) == 0 || p.r.lot != "" {
		p.refuse(map[bool]string{true: "it has two lots: leave one, or write two lines", false: "which lot? Write it behind the word, as in lot A12"}[p.r.lot != ""])
		return
	}
	p.r.lot = rest[0]
	p.past(p.tokens[p.i].chunk)
}

// lead is the word that brought what is read now.
func (p *reader) lead() string { return p.chunks[p.tokens[p.i-1].chunk] }

// wordless reports whether no number stands in what follows and no month: the word that brings a day is then one of a name.
func (p *reader) wordless() bool {
	rest := p.rest()
	if len(rest) == 0 || strings.ContainsAny(rest[0], "0123456789") || day.MonthOf(strings.ToLower(strings.Trim(rest[0], ".,"))) > 0 {
		return false
	}
	p.r.words = append(p.r.words, p.lead())
	return true
}

// expires reads the last day it may be used.
func (p *reader) expires() {
	if p.wordless() {
		return
	}
	if p.r.expires != 0 {
		p.refuse("it expires on two days: leave one")
		return
	}
	if w, ok := p.day(); ok {
		if w.month {
			p.r.notes = append(p.r.notes, fmt.Sprintf("expires with its month, on %s", w.day))
		}
		p.r.expires = w.day
	}
}

// bought reads the day it came.
func (p *reader) bought() {
	if p.wordless() {
		return
	}
	if p.r.bought != 0 {
		p.refuse("it was bought on two days: leave one")
		return
	}
	w, ok := p.day()
	if ok && w.month {
		p.refuse("on which day was it bought? Write it as 2026-11-20")
	}
	p.r.bought = w.day
}

// day reads a day behind a word.
func (p *reader) day() (written, bool) {
	p.skip()
	w, err := dated(p.rest())
	if err != nil {
		p.refuse(err.Error())
		return w, false
	}
	p.past(p.tokens[p.i].chunk + w.used - 1)
	return w, true
}

// post reads its postage. Without a price behind it the word is one of a name.
func (p *reader) post() {
	lead := p.lead()
	p.skip()
	cur := ""
	if p.sortAt(0) == currency {
		cur = p.tokens[p.i].text
		p.i++
	}
	switch {
	case p.sortAt(0) != number:
		p.r.words = append(p.r.words, lead)
	case p.r.post != nil:
		p.refuse("it has postage twice: leave one")
	default:
		if x, ok := p.amount(cur); ok {
			p.r.post = &x
		}
	}
}

// supplier reads the words of the supplier, up to a number that is a size or a price, or a word that brings something else.
func (p *reader) supplier() {
	p.skip()
	var name []string
	for p.i < len(p.tokens) {
		t := p.tokens[p.i]
		chunk := p.chunks[t.chunk]
		ends := t.sort == apart || t.sort == currency || t.sort == number && (p.sortAt(1) == unit || p.sortAt(1) == currency || strings.ContainsAny(chunk, ".,"))
		if ends || len(name) > 0 && p.detailAt(p.chunks[t.chunk:]) != nil {
			break
		}
		name = append(name, chunk)
		p.past(t.chunk)
	}
	if len(name) == 0 {
		p.refuse("from whom? Write it behind the word, as in from the mill")
		return
	}
	p.r.supplier = strings.Join(name, " ")
}

// tare reads what the empty tub weighs.
func (p *reader) tare() {
	p.skip()
	if m, ok := p.measure(); ok {
		if m.unit.Of != lot.Mass {
			p.refuse("write the weight of the empty tub, as in tare 350 g")
		}
		p.r.tare = &m
	}
}

// loss reads the usual loss, in percent or as an amount.
func (p *reader) loss() {
	p.skip()
	if p.sortAt(0) == number && p.sortAt(1) == percent {
		text, why := decimal(p.tokens[p.i].text)
		p.i += 2
		p.r.loss = &measure{text: text, percent: true}
		if why != "" {
			p.refuse(why)
		}
		return
	}
	if m, ok := p.measure(); ok {
		p.r.loss = &m
	}
}

// free says that it cost nothing. Before another word of a name it is one of it.
func (p *reader) free() {
	if p.sortAt(0) == word && p.detailAt(p.chunks[p.tokens[p.i].chunk:]) == nil {
		p.r.words = append(p.r.words, p.lead())
		return
	}
	p.r.free = true
}

// article passes over the supplier's number of it.
func (p *reader) article() {
	p.skip()
	if rest := p.rest(); len(rest) > 0 && strings.ContainsAny(rest[0], "0123456789") {
		p.past(p.tokens[p.i].chunk)
	}
}

// each and all say what a price is of: the one before them or, where none stands there, the next.
func (p *reader) each() { p.basis(ofEach) }
func (p *reader) all()  { p.basis(ofAll) }

func (p *reader) basis(of basis) {
	if n := len(p.r.prices); n > 0 && p.r.prices[n-1].of == ofUnknown && p.sortAt(0) != number && p.sortAt(0) != currency {
		p.r.prices[n-1].of = of
		return
	}
	p.pending = of
}
