package invoice

import (
	"fmt"
	"strings"

	"pourbench/pour/money"
	"pourbench/pour/naming"
)

// Words that make a line one about all that came.
const (
	taxWords      = " vat tax gst pst hst mwst "
	sumWords      = " total subtotal sum amount due balance grand to pay payable invoice net gross "
	discountWords = " discount rebate voucher reduction "
	paperWords    = " invoice order customer receipt page phone tel account iban no number nr quotation note delivery "
)

// read understands a line by itself, as far as it goes without the others.
func (b *book) read(text string) Line {
	l := Line{Text: strings.TrimSpace(text)}
	if letters := []rune(l.Text); len(letters) > mostLetters {
		l.Text = string(letters[:mostLetters])
		return l.odd("it is too long to be a line of an invoice")
	}
	l.reading = b.readLine(naming.Unmarked(l.Text))
	r := &l.reading
	name := naming.Words(strings.Join(r.words, " "))
	one := len(r.prices) == 1 && len(r.sizes) == 0
	switch {
	case all(name, taxWords, sumWords, paperWords) && some(name, taxWords):
		l.Kind, l.Why = Aside, "tax is not taken: where you do not get it back, write prices with it"
	case r.empty() && r.why == "" && r.post != nil, r.post != nil && len(r.sizes) == 0 && len(r.prices) == 0 && r.why == "" && !b.known(r.words):
		l.Kind, l.Amount = Postage, r.post.amount
	case r.empty() && r.why == "" && (r.lot != "" || r.expires != 0 || r.tare != nil || r.loss != nil):
		l.Kind = Detail
	case r.empty() && r.why == "" && (r.supplier != "" || r.bought != 0):
		l.Kind = Heading
	case r.empty() && r.why == "":
		return l
	case r.why != "" && !some(name, paperWords):
		return l.odd(r.why)
	case one && r.why == "" && some(name, discountWords):
		l.Kind, l.Amount = Discount, r.prices[0].amount
	case one && r.why == "" && (len(name) == 0 && r.prices[0].of == ofAll || len(name) > 0 && all(name, sumWords)) && !all(name, paperWords):
		l.Kind, l.Amount = Sum, r.prices[0].amount
	case len(r.sizes) == 0 && (some(name, paperWords) || len(r.prices) == 0 && !r.free) && !b.known(r.words):
		if l.Kind = Blank; r.supplier != "" || r.bought != 0 {
			l.Kind = Heading
		}
	case r.why != "":
		return l.odd(r.why)
	default:
		l.Kind = Taken
	}
	return l
}

// some and all report whether a name has a word of a list, and whether all of it, at least one, are in some of them.
func some(name []string, list string) bool {
	for _, w := range name {
		if strings.Contains(list, " "+w+" ") {
			return true
		}
	}
	return false
}

func all(name []string, lists ...string) bool {
	joined := strings.Join(lists, "")
	for _, w := range name {
		if !strings.Contains(joined, " "+w+" ") {
			return false
		}
	}
	return len(name) > 0
}

func (b *book) known(words []string) bool {
	_, ok := b.things.Find(naming.Words(strings.Join(unheld(words), " ")))
	return ok
}

// item makes of a line that was read what came, or says why it cannot be.
func (b *book) item(l Line, k Known) Line {
	r := &l.reading
	var x Item
	var why string
	x.Material, x.Name, x.New, why, l.Near = b.material(*r)
	if why != "" {
		return l.odd(why)
	}
	size, each, why := r.size(x.Material, k.Shelf)
	if why != "" {
		return l.odd(why)
	}
	x.Each = each
	if x.Price, x.Packs, why = r.settled(size); why != "" {
		return l.odd(why)
	}
	if x.Tare, why = r.tare.smaller(size, each, "tare"); why == "" {
		x.Loss, why = r.loss.smaller(size, each, "loss")
	}
	if why == "" {
		why = r.paid(&x, k)
	}
	if why == "" {
		why = r.days(&x, k)
	}
	if why != "" {
		return l.odd(why)
	}
	x.Lot, x.Supplier = r.lot, r.supplier
	if x.New {
		r.notes = append(r.notes, fmt.Sprintf("new: %s, kept as %s", x.Name, x.Material))
	}
	l.Item, l.Notes = x, r.notes
	return l
}

// most an invoice's line may cost.
const mostMoney = 1_000_000

// paid fills in postage and currency, and says what of the money cannot be.
func (r reading) paid(x *Item, k Known) string {
	prices := r.prices
	if r.post != nil {
		x.Postage = r.post.amount
		prices = append(prices[:len(prices):len(prices)], *r.post)
	}
	for _, p := range prices {
		if p.currency == "" {
			continue
		}
		if x.Currency != "" && x.Currency != p.currency {
			return "it has two currencies, and nothing is converted: write all prices in one"
		}
		x.Currency = p.currency
	}
	switch {
	case x.Currency != "" && k.Currency != "" && !means(x.Currency, k.Currency):
		return fmt.Sprintf("its price is in %s and the ledger is in %s, and nothing is converted: write what it cost you in %s", x.Currency, k.Currency, k.Currency)
	case tooMuch(x.Price), tooMuch(x.Postage):
		return fmt.Sprintf("that is more than %d: write what it cost", mostMoney)
	}
	return ""
}

func tooMuch(a money.Amount) bool {
	limit, err := money.Parse(fmt.Sprint(mostMoney))
	return err == nil && a.Compare(limit) > 0
}

// means reports whether a sign or a code can stand for a currency. A sign nobody has listed may be anybody's own.
func means(written, code string) bool {
	signs := map[string]string{
		"€": " EUR ", "£": " GBP EGP ", "$": " USD CAD AUD NZD SGD HKD TWD MXN ARS CLP COP BRL ", "¥": " JPY CNY ", "₹": " INR ", "₺": " TRY ",
		"₴": " UAH ", "₩": " KRW ", "₪": " ILS ", "₫": " VND ", "₱": " PHP ", "₦": " NGN ", "฿": " THB ",
	}
	list, sign := signs[written]
	if !sign {
		return len(written) != 3 || written == code
	}
	return strings.Contains(list, " "+code+" ")
}

// days fills in the days, and says what of them cannot be.
func (r *reading) days(x *Item, k Known) string {
	x.Bought, x.Expires = firstOf(r.bought, k.Today), r.expires
	switch {
	case x.Bought > k.Today:
		return fmt.Sprintf("it was bought on %s, which is still to come: write the day it came", x.Bought)
	case x.Expires != 0 && x.Expires < x.Bought:
		return fmt.Sprintf("it expires on %s, before it was bought on %s: write the right day", x.Expires, x.Bought)
	case x.Expires != 0 && x.Expires < k.Today:
		r.notes = append(r.notes, "it is past its date already: it will not be picked")
	}
	return ""
}
