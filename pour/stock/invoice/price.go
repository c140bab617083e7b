package invoice

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/strict"
)

// basis is what a price is of.
type basis int

const (
	ofUnknown basis = iota
	ofEach          // of one pack
	ofAll           // of all packs
	ofUnit          // of a unit of it
)

// price is an amount of money as it stands in a line.
type price struct {
	amount   money.Amount
	text     string
	currency string // a code or a sign; empty: none
	of       basis
	unit     lot.Unit // of ofUnit
}

// whole reports whether it may as well be a number of packs.
func (x price) whole() bool {
	return x.currency == "" && x.of == ofUnknown && strings.Trim(x.text, "0123456789") == ""
}

// price reads a price and what it is of.
func (p *reader) price(cur string) {
	x, ok := p.amount(cur)
	if !ok {
		return
	}
	x.of, p.pending = p.pending, ofUnknown
	slash := p.sortAt(0) == per
	if slash || p.sortAt(0) == word && strings.EqualFold(p.tokens[p.i].text, "per") {
		p.i++
		p.unitOf(&x, slash)
	}
	p.r.prices = append(p.r.prices, x)
}

// unitOf reads what a price is of behind a slash or "per".
func (p *reader) unitOf(x *price, slash bool) {
	switch {
	case p.sortAt(0) == unit:
		x.unit, _ = lot.UnitOf(p.tokens[p.i].text)
		x.of = ofUnit
		p.i++
	case p.sortAt(0) == number && p.sortAt(1) == unit:
		p.refuse("write the price of one kg, l or piece, as in 7.70/kg")
	case p.sortAt(0) == word && holds(p.tokens[p.i].text):
		x.of = ofEach
		p.i++
	case slash:
		p.refuse("of what is that the price? Write each, together, or a unit behind the slash, as in 7.70/kg")
	}
}

// amount reads a number as money, with a currency before or behind it.
func (p *reader) amount(cur string) (price, bool) {
	text := p.tokens[p.i].text
	p.i++
	if p.sortAt(0) == currency && cur == "" && (p.sortAt(1) != number || p.tokens[p.i].chunk == p.tokens[p.i-1].chunk) {
		cur = p.tokens[p.i].text
		p.i++
	}
	negative := strings.HasPrefix(text, "-")
	plain, why := decimal(strings.TrimPrefix(text, "-"))
	if why == "" {
		why = strict.PointThousands(plain)
	}
	a, err := money.Parse(plain)
	switch {
	case why != "":
		p.refuse(why)
	case err != nil:
		p.refuse(err.Error())
	case negative && p.r.discounts():
	case negative:
		p.refuse("an amount cannot be below 0")
	}
	return price{amount: a, text: plain, currency: cur}, why == "" && err == nil
}

// discounts reports whether a line is about a discount, where a minus says nothing more.
func (r reading) discounts() bool {
	for _, w := range r.words {
		if strings.Contains(discountWords, " "+strings.ToLower(w)+" ") {
			return true
		}
	}
	return false
}

// settled is what all packs of a line cost and how many they are, or why nobody can tell. size is of one pack in the dimension it was written in.
func (r reading) settled(size sized) (total money.Amount, packs int, why string) {
	packs = max(r.count, 1)
	list := r.prices
	switch {
	case r.free && len(list) > 0:
		return total, 0, "it has a price and is free: leave one"
	case r.free:
		return total, packs, ""
	case len(list) == 0:
		return total, 0, "what did it cost? Write its price behind its size, as in " + example + ", or write free"
	}
	if r.count == 0 && len(list) > 1 {
		if n, rest := packsOf(list); n > 0 {
			packs, list = n, rest
		}
	}
	if list[0].of == ofEach && size.unit.Of == lot.Pieces && !(size.amount.IsInt() && size.amount.Num().Int64() == 1) {
		if packs > 1 {
			return total, 0, fmt.Sprintf("is %s the price of each pack or of each piece? Write %s/piece, or what all of it cost with together behind it", list[0].text, list[0].text)
		}
		list = append([]price{}, list...)
		list[0].of, list[0].unit = ofUnit, size.unit
	}
	totals := make([]money.Amount, len(list))
	for i, x := range list {
		if totals[i], why = x.total(packs, size); why != "" {
			return total, 0, why
		}
	}
	if len(list) == 1 && (list[0].of != ofUnknown || packs == 1) {
		return totals[0], packs, ""
	}
	if len(list) == 2 {
		if t, ok := agree(list, totals, packs); ok {
			return t, packs, ""
		}
	}
	return total, 0, unsettled(list, totals, packs)
}

// unsettled says why nobody can tell what all packs cost.
func unsettled(list []price, totals []money.Amount, packs int) string {
	switch {
	case len(list) == 1:
		return fmt.Sprintf("is %s the price of each of the %d, or of all? Write %s each, or %s together", list[0].text, packs, list[0].text, list[0].text)
	case len(list) == 2 && list[0].of == ofUnit:
		return fmt.Sprintf("at %s a unit all of it would cost %s, and it says %s: leave the right one", list[0].text, totals[0], list[1].text)
	case len(list) == 2 && packs > 1:
		return fmt.Sprintf("%s and %s do not agree as the prices of one and of all %d: leave the one of all, and write together behind it", list[0].text, list[1].text, packs)
	}
	return "which of its numbers is the price? Leave one"
}

// packsOf takes a number of packs from among prices: a whole number that makes one of the others out of another, or stands beside prices that say
// more than it does. 0: there is none.
func packsOf(list []price) (n int, rest []price) {
	for i, x := range list {
		count, err := strconv.Atoi(x.text)
		if !x.whole() || err != nil || count < 1 || count > 200 {
			continue
		}
		rest = append(append([]price{}, list[:i]...), list[i+1:]...)
		marked := rest[0].of != ofUnknown || rest[0].currency != ""
		product := len(rest) == 2 && rest[0].amount.Times(count).Compare(rest[1].amount) == 0
		if len(rest) == 1 && marked || product {
			return count, rest
		}
	}
	return 0, nil
}

// agree tells what all packs cost where two prices say so: that of one and that of all, in this order.
func agree(list []price, totals []money.Amount, packs int) (money.Amount, bool) {
	a, b := totals[0], totals[1]
	if list[0].of == ofUnknown {
		a = list[0].amount.Times(packs)
	}
	return b, a.Compare(b) == 0
}

// total is what all packs cost by a price.
func (x price) total(packs int, size sized) (money.Amount, string) {
	switch {
	case x.of == ofEach || x.of == ofUnit && x.unit.Of == lot.Pieces && size.unit.Of != lot.Pieces:
		return x.amount.Times(packs), ""
	case x.of != ofUnit:
		return x.amount, ""
	case x.unit.Of != size.unit.Of:
		return x.amount, fmt.Sprintf("%s is the price of another unit than its size has: write what all of it cost, with together behind it", x.text)
	}
	r, ok := new(big.Rat).SetString(x.text)
	if !ok {
		return x.amount, "its price cannot be read"
	}
	r.Mul(r, size.amount)
	r.Mul(r, big.NewRat(int64(packs), 1))
	r.Quo(r, x.unit.Written("1"))
	a, err := money.Parse(r.FloatString(2)) // to the cent, half up
	if err != nil {
		return x.amount, err.Error()
	}
	return a, ""
}
