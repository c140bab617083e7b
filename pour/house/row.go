package house

import (
	"strconv"
	"strings"

	"pourbench/pour/cost"
	"pourbench/pour/money"
	"pourbench/pour/strict"
)

// Row is one key of the file: what it is called, what it means, and where it stands in the costs.
type Row struct {
	Key   string // in the file
	Label string // on screens
	Takes string // what can stand there
	Means string
	At    any // *string, *money.Amount, *money.Percent, *int or *bool
}

const (
	takesMoney   = `amount, "7.50"`
	takesPercent = `percent, "1.75"`
)

// Rows lists what holds for every batch, each pointing into the costs.
func Rows(h *cost.House) []Row {
	return []Row{
		{"currency", "currency", "text, 8 letters", "how it is written behind every amount; all prices are in it, nothing is converted", &h.Currency},
		{"wage_per_hour", "an hour of hands", takesMoney, "what an hour of hands costs; left out: labour is not counted", &h.WagePerHour},
		{"energy_per_batch", "energy, a batch", takesMoney, "what warms, melts and blends one batch", &h.EnergyPerBatch},
		{"overhead_per_batch", "overhead, a batch", takesMoney, "a batch's share of what the workplace costs", &h.OverheadPerBatch},
		{"fixed_per_month", "fixed cost, a month", takesMoney, "what a month costs however many bars are sold: what breaking even has to cover", &h.FixedPerMonth},
		{"profit_per_month", "profit wanted, a month", takesMoney, "wanted on top of the fixed cost when bars are counted to break even", &h.ProfitPerMonth},
		{"tax_percent", "sales tax", takesPercent, "rate of the sales tax on a bar; which rules hold for you, ask locally", &h.TaxPercent},
	}
}

// ChannelRows lists what is stated of a way of selling, each pointing into it.
func ChannelRows(c *cost.Channel) []Row {
	return []Row{
		{"name", "name", "text, 40 letters", "what you call it: market, shop, post", &c.Name},
		{"wholesale", "to a shop", "true or false", "sold at the plan's wholesale price", &c.Wholesale},
		{"fee_percent", "fee", takesPercent, "kept of what is paid, its tax too", &c.FeePercent},
		{"fee_per_sale", "fee on a sale", takesMoney, "kept of every sale, however many bars are in it", &c.FeePerSale},
		{"bars_per_sale", "bars in a sale", "1 to 1000, whole", "bars that usually go in one sale and share its fee; left out: 1", &c.BarsPerSale},
		{"tax_included", "price holds the tax", "true or false", "the price asked holds the sales tax", &c.TaxIncluded},
	}
}

// Text is what stands there, as it is typed; empty: nothing is stated.
func (r Row) Text() string {
	switch at := r.At.(type) {
	case *string:
		return *at
	case *money.Amount:
		if at.Sign() != 0 {
			return at.Exact()
		}
	case *money.Percent:
		if at.Sign() != 0 {
			return at.String()
		}
	case *int:
		if *at != 0 {
			return strconv.Itoa(*at)
		}
	case *bool:
		if *at {
			return "true"
		}
	}
	return ""
}

// value is a text as the file has it, a number with a decimal point however it was typed.
func (r Row) value(text string) string {
	switch r.At.(type) {
	case *int, *bool:
		return text
	case *money.Amount, *money.Percent:
		text = strict.WithPoint(text)
	}
	return strict.Quote(text)
}

// What a file may say, so that no figure overflows.
const (
	mostCurrency = 8
	mostName     = 40
	mostBars     = 1000
)

// read reads what stands at the row's key; a key that is not there leaves nothing stated.
func (r Row) read(t *strict.Table) {
	switch at := r.At.(type) {
	case *string:
		most := mostName
		if r.Key == "currency" {
			most = mostCurrency
		}
		if t.Line(r.Key, at, most) && strings.TrimSpace(*at) == "" {
			t.Say(r.Key, strict.Quote(*at), "is empty", "write it, or take the line out")
		}
	case *money.Amount:
		readAs(t, r.Key, at, money.Parse)
	case *money.Percent:
		readAs(t, r.Key, at, money.ParsePercent)
	case *int:
		n := int64(0)
		if t.Whole(r.Key, &n) && (n < 1 || n > mostBars) {
			t.Say(r.Key, strconv.FormatInt(n, 10), "is no number of bars", "write 1 to 1000, or take the line out")
			return
		}
		*at = int(n)
	case *bool:
		t.Flag(r.Key, at)
	}
}

// readAs reads a line of text as something exact. Money is text in files, because a number there would not be.
func readAs[T any](t *strict.Table, key string, at *T, parse func(string) (T, error)) {
	text := ""
	if !t.Read(key, &text) {
		return
	}
	v, err := parse(text)
	if err != nil {
		t.Say(key, strict.Quote(text), "cannot be used", err.Error())
		return
	}
	*at = v
}
