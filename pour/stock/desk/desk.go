// Package desk is what is done at the desk of a stock room: what came is written in, a tub is opened, weighed, lost or corrected. Each makes the
// entries for the ledger out of what it holds, checked, with what is to be said of them; it writes nothing, and is called under the ledger's lock.
package desk

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/invoice"
	"pourbench/pour/strict"
)

// Deed is what a thing done comes to.
type Deed struct {
	Entries []stock.Entry
	Said    []string
}

func (d *Deed) say(format string, args ...any) { d.Said = append(d.Said, fmt.Sprintf(format, args...)) }

// ErrReceived says that the very same was received before: it may have come again, which is to be asked.
var ErrReceived = errors.New("it is written in already; if it came again, say so")

// NextPack is the name of the next pack of a material, short enough to write on its tub: the material's id and a number no pack has, nor one of more.
func NextPack(s stock.State, m lot.Material, more ...stock.Entry) string {
	most := 0
	look := func(id string) {
		if n, err := strconv.Atoi(strings.TrimPrefix(id, m.ID+"-")); err == nil && strings.HasPrefix(id, m.ID+"-") {
			most = max(most, n)
		}
	}
	for _, h := range s.Held {
		for _, p := range h.Packs {
			look(p.ID)
		}
	}
	for _, e := range more {
		look(e.Pack)
	}
	return m.ID + "-" + strconv.Itoa(most+1)
}

// Receive writes in what came, each pack by a name of its own. What was written in before is refused unless it came again.
func Receive(s stock.State, items []invoice.Item, again bool) (Deed, error) {
	var d Deed
	for _, x := range items {
		if p, is := received(s, x); is && !again {
			return Deed{}, fmt.Errorf("receive %s, which is %s of %s: %w", x.Name, p.ID, p.Bought, ErrReceived)
		}
		if err := d.currency(s, x); err != nil {
			return Deed{}, err
		}
		for _, e := range x.Entries() {
			e.Pack = NextPack(s, e.Material, d.Entries...)
			d.Entries = append(d.Entries, e)
			d.say("%s: %s", e.Pack, told(e))
		}
	}
	return d, nil
}

// told is a pack that came, in words.
func told(e stock.Entry) string {
	words := []string{fmt.Sprintf("%s %s of %s", e.Q, e.Material.Kind.Unit(), e.Name), "price " + e.Price.String()}
	if e.Postage.Sign() > 0 {
		words = append(words, "postage "+e.Postage.String())
	}
	if e.Lot != "" {
		words = append(words, "lot "+e.Lot)
	}
	if e.Expires != 0 {
		words = append(words, "expires "+e.Expires.String())
	}
	return strings.Join(words, ", ")
}

// received finds a pack that is the same in all that an invoice says of it.
func received(s stock.State, x invoice.Item) (lot.Pack, bool) {
	for _, p := range s.Held[x.Material].Packs {
		one := x.Entries()[0]
		if p.Lot == x.Lot && p.Bought == x.Bought && p.Size == x.Each && p.Supplier == x.Supplier && p.Price.Compare(one.Price) == 0 && !p.Made {
			return p, true
		}
	}
	return lot.Pack{}, false
}

// currency makes the currency of the first price that names one the ledger's: nothing is ever converted.
func (d *Deed) currency(s stock.State, x invoice.Item) error {
	code, has := invoice.CodeOf(x.Currency), s.Currency
	for _, e := range d.Entries {
		if e.Kind == stock.Rule {
			has = e.Currency
		}
	}
	switch {
	case x.Currency == "" || code == "" || code == has:
	case has != "":
		return fmt.Errorf("receive %s: its price is in %s, and all others in %s; nothing is converted", x.Name, code, has)
	default:
		d.Entries = append(d.Entries, stock.Entry{Kind: stock.Rule, Formula: s.Formula, Currency: code, Text: "the currency of the first price that names one"})
		d.say("all prices are in %s from now on; nothing is converted", code)
	}
	return nil
}

// find finds a pack by its name.
func find(s stock.State, does, id string) (lot.Pack, error) {
	if p, ok := s.Pack(id); ok {
		return p, nil
	}
	var near []string
	for _, h := range s.Held {
		for _, p := range h.Packs {
			if p.Lot == id || strings.EqualFold(p.Name, id) || p.Material.ID == id {
				near = append(near, p.ID)
			}
		}
	}
	mend := "the list of stock has them"
	if len(near) > 0 {
		mend = "did you mean " + strings.Join(near, ", ") + "?"
	}
	return lot.Pack{}, fmt.Errorf("%s %q: no pack has this name; %s", does, id, mend)
}

// onDay refuses a day of a pack that cannot be.
func onDay(s stock.State, p lot.Pack, on day.Day) error {
	switch {
	case on > s.Today:
		return fmt.Errorf("%s is still to come; write the day it was", on)
	case on < p.Bought:
		return fmt.Errorf("%s came on %s, after %s; write the day it was", p.ID, p.Bought, on)
	}
	return nil
}

// Open writes in that a pack was opened.
func Open(s stock.State, pack string, on day.Day) (Deed, error) {
	p, err := find(s, "open", pack)
	switch {
	case err != nil:
		return Deed{}, err
	case p.Opened != 0:
		return Deed{}, fmt.Errorf("open %s: it was opened on %s; correct that entry where the day is wrong", p.ID, p.Opened)
	}
	if err := onDay(s, p, on); err != nil {
		return Deed{}, fmt.Errorf("open %s: %w", p.ID, err)
	}
	d := Deed{Entries: []stock.Entry{{Kind: stock.Opened, Day: on, Pack: p.ID}}}
	d.say("%s is opened, on %s", p.ID, on)
	if p.Blocked(on) {
		d.say("it is past its date: %s", p.Expires)
	}
	return d, nil
}

// Weighing is a stock count of one pack.
type Weighing struct {
	Pack  string
	Found lot.Quantity  // with the tub, or pieces
	Tare  *lot.Quantity // of the empty tub; nil: what the pack says
	Why   string        // it differs from the book; empty: usual shrink
	On    day.Day
}

// Count writes in what is left in a pack by weighing its tub, gross less tare, or by counting. What is missing beyond the usual loss, and what is
// found beyond the book, wants a reason.
func Count(s stock.State, w Weighing) (Deed, error) {
	p, err := find(s, "count", w.Pack)
	if err != nil {
		return Deed{}, err
	}
	refuse := func(format string, args ...any) (Deed, error) {
		return Deed{}, fmt.Errorf("count "+p.ID+": "+format, args...)
	}
	if err := onDay(s, p, w.On); err != nil {
		return refuse("%w", err)
	}
	left, unit := w.Found, p.Material.Kind.Unit()
	if !p.Material.Kind.Counted() {
		tare := p.Tare
		if w.Tare != nil {
			tare = *w.Tare
		}
		switch {
		case w.Tare == nil && p.Tare == 0:
			return refuse("what does its empty tub weigh? Give its tare, or 0 where the %s g are without the tub", w.Found)
		case tare > w.Found:
			return refuse("the tub with what is in it weighs %s g, and the empty tub %s g: weigh again", w.Found, tare)
		}
		left -= tare
	}
	if left > p.Size {
		return refuse("%s %s are left, and it never held more than %s: was the tub taken off?", left, unit, p.Size)
	}
	short := p.Left - left
	usual := short >= 0 && p.Lost+short <= p.Loss
	if short != 0 && !usual && w.Why == "" {
		return refuse("%s by the book are %s %s, and %s are there, %s: that is no usual loss; say why, as in: spilled", p.ID, p.Left, unit, left, lessMore(short, unit))
	}
	why := w.Why
	if why == "" && short != 0 {
		why = "usual loss"
	}
	d := Deed{Entries: []stock.Entry{{Kind: stock.Counted, Day: w.On, Pack: p.ID, Q: left, Text: why}}}
	if short == 0 {
		d.say("%s: %s %s are left, as the book has it", p.ID, left, unit)
	} else {
		d.say("%s: %s %s are left, %s than the book's %s: %s", p.ID, left, unit, lessMore(short, unit), p.Left, why)
	}
	return d, nil
}

func lessMore(short lot.Quantity, unit string) string {
	if short < 0 {
		return fmt.Sprintf("%s %s more", -short, unit)
	}
	return fmt.Sprintf("%s %s less", short, unit)
}

// Lose writes in what of a pack was spilled or thrown away, and why. All 0 means all that is left.
func Lose(s stock.State, pack string, q lot.Quantity, why string, on day.Day) (Deed, error) {
	p, err := find(s, "lose of", pack)
	if err != nil {
		return Deed{}, err
	}
	if q == 0 {
		q = p.Left
	}
	unit := p.Material.Kind.Unit()
	err = onDay(s, p, on)
	switch {
	case strings.TrimSpace(why) == "":
		err = errors.New("say why, as in: spilled")
	case err != nil:
	case q <= 0:
		err = errors.New("nothing is left in it")
	case q > p.Left:
		err = fmt.Errorf("%s %s are more than the %s left in it by the book; count it first", q, unit, p.Left)
	}
	if err != nil {
		return Deed{}, fmt.Errorf("lose of %s: %w", p.ID, err)
	}
	d := Deed{Entries: []stock.Entry{{Kind: stock.Lost, Day: on, Pack: p.ID, Q: q, Text: why}}}
	d.say("%s: %s %s lost, %s left: %s", p.ID, q, unit, p.Left-q, why)
	return d, nil
}

// Rule sets how costs are found, and in which currency all prices are; empty: as it is. Once something came a reason is wanted, because all that
// went out is costed anew by it.
func Rule(s stock.State, formula lot.Formula, currency, why string) (Deed, error) {
	e := stock.Entry{Kind: stock.Rule, Formula: formula, Currency: currency, Text: why}
	if e.Formula == "" {
		e.Formula = s.Formula
	}
	if e.Currency == "" {
		e.Currency = s.Currency
	}
	switch {
	case e.Formula != lot.FIFO && e.Formula != lot.Average:
		return Deed{}, fmt.Errorf("set the rule of costs %q: write %s (first in, first out) or %s (moving)", e.Formula, lot.FIFO, lot.Average)
	case e.Currency != "" && (len(e.Currency) != 3 || strings.Trim(e.Currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != ""):
		return Deed{}, fmt.Errorf("set the currency %q: write its three letters, as in EUR", e.Currency)
	case e.Formula == s.Formula && e.Currency == s.Currency:
		return Deed{}, fmt.Errorf("set the rule of costs: it is %s already, in %s", s.Formula, orNone(s.Currency))
	case len(s.Held) > 0 && (e.Formula != s.Formula || s.Currency != "") && strings.TrimSpace(why) == "":
		return Deed{}, errors.New(`set the rule of costs: one rule is kept for all; it costs anew all that went out, so say why, as in: my accountant asks for it`)
	}
	d := Deed{Entries: []stock.Entry{e}}
	d.say("costs are found by %s, in %s", e.Formula, orNone(e.Currency))
	if len(s.Held) > 0 && e.Formula != s.Formula {
		d.say("all that went out is costed anew, from the first entry on")
	}
	if s.Currency != "" && e.Currency != s.Currency {
		d.say("no price was converted: each stays the number it is")
	}
	return d, nil
}

func orNone(currency string) string {
	if currency == "" {
		return "no currency"
	}
	return currency
}

// paid is the price of a pack as it is typed.
func paid(text string) (money.Amount, error) { return money.Parse(strict.WithPoint(text)) }
