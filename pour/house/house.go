// Package house reads what a maker's costs are beside materials from a file of hers, costs.toml, and changes it at one place without touching the rest.
package house

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/strict"
)

// FileName is the file of costs in the maker's folder of data.
const FileName = "costs.toml"

// Path is the file of costs in a folder.
func Path(dir string) string { return filepath.Join(dir, FileName) }

func form() strict.Form {
	return strict.Form{Noun: "file of costs", Bytes: 1 << 20, Items: 1000, Letters: 100, Again: "look at what was changed last"}
}

// Load reads the costs in a folder; where there is no file, nothing is stated. What is wrong with it is a [*strict.Error].
func Load(dir string) (cost.House, error) {
	src, err := os.ReadFile(Path(dir))
	if errors.Is(err, fs.ErrNotExist) {
		return cost.House{}, nil
	}
	if err != nil {
		return cost.House{}, fmt.Errorf("read your costs: %w", err)
	}
	return Read(Path(dir), string(src))
}

// Read reads the text of a file of costs; name is what errors call it.
func Read(name, src string) (cost.House, error) {
	text, err := form().Slurp(name, strings.NewReader(src))
	if err != nil {
		return cost.House{}, err
	}
	file, err := form().Open(name, text)
	if err != nil {
		return cost.House{}, err
	}
	var h cost.House
	r := reader{in: file.Top()}
	r.house(&h)
	for _, t := range file.Top().List("channel") {
		h.Channels = append(h.Channels, channel(t))
	}
	for _, t := range file.Top().List("price") {
		h.Prices = append(h.Prices, price(t))
	}
	r.only("channel", "price")
	twice(file, h)
	return h, file.Err()
}

// house reads what stands above the first header.
func (r *reader) house(h *cost.House) {
	const most = 10
	r.line("currency", &h.Currency, most, "how it is written behind an amount; all prices are in it, nothing is converted")
	r.amount("wage_per_hour", &h.WagePerHour, "what an hour of hands costs")
	r.amount("energy_per_batch", &h.EnergyPerBatch, "energy and water for a batch")
	r.amount("overhead_per_batch", &h.OverheadPerBatch, "a batch's share of what the workplace costs")
	r.amount("fixed_per_month", &h.FixedPerMonth, "what a month costs however many bars are sold: breaking even has to cover it")
	r.amount("profit_per_month", &h.ProfitPerMonth, "wanted of a month on top of it")
	r.percent("tax_percent", &h.TaxPercent, "rate of the sales tax, as your local rules have it")
}

func channel(t *strict.Table) (c cost.Channel) {
	r := reader{in: t}
	r.channel(&c)
	r.only()
	t.Missing("name")
	return c
}

func (r *reader) channel(c *cost.Channel) {
	const most = 40
	sale := int64(0)
	r.line("name", &c.Name, most, "a way bars are sold: market, shop, parcel")
	r.flag("wholesale", &c.Wholesale, "sold at the plan's price to a shop")
	r.percent("fee_percent", &c.FeePercent, "of what is paid, its tax too, that the channel keeps")
	r.amount("fee_per_sale", &c.FeePerSale, "what a sale costs beside that")
	r.whole("bars_per_sale", &sale, "bars that usually go in one sale and share its fee; left out: 1")
	r.flag("tax_included", &c.TaxIncluded, "the price asked holds the sales tax")
	c.BarsPerSale = int(sale)
}

func price(t *strict.Table) (p cost.Price) {
	r := reader{in: t}
	r.price(&p)
	r.only()
	t.Missing("of")
	t.Missing("per")
	if t.Has("of") && p.Of != "" {
		if _, err := lot.ParseMaterial(p.Of); err != nil {
			t.Say("of", strict.Quote(p.Of), "is no material", `write its kind and its id, such as "packaging kraft-box" or "alkali naoh"`)
		}
	}
	return p
}

func (r *reader) price(p *cost.Price) {
	const most = 60
	r.line("of", &p.Of, most, `kind and id of what no pack of yours has brought yet: "packaging kraft-box", "alkali naoh"`)
	r.amount("per", &p.Per, "what a kilogram of it costs, or a piece of packaging and embeds")
}

// twice refuses two channels or two prices of one name.
func twice(file *strict.File, h cost.House) {
	seen := map[string]bool{}
	say := func(path, name, what string) {
		if name != "" && seen[what+name] {
			file.Add(strict.Fault{Path: path, Value: strict.Quote(name), Problem: "stands there twice", Mend: "make one " + what + " of the two"})
		}
		seen[what+name] = true
	}
	for i, c := range h.Channels {
		say(fmt.Sprintf("channel[%d].name", i), c.Name, "channel")
	}
	for i, p := range h.Prices {
		say(fmt.Sprintf("price[%d].of", i), p.Of, "price")
	}
}

// reader reads the keys of one table, or tells what they are.
type reader struct {
	in    *strict.Table // nil: nothing is read
	known []string
	told  []strict.Told
}

func (r *reader) ask(key, takes, means string) bool {
	r.known = append(r.known, key)
	r.told = append(r.told, strict.Told{Key: key, Takes: takes, Means: means})
	return r.in != nil && r.in.Has(key)
}

func (r *reader) only(more ...string) { r.in.Only(append(r.known, more...)...) }

func (r *reader) line(key string, at *string, most int, means string) {
	if r.ask(key, "text", means) {
		r.in.Line(key, at, most)
	}
}

func (r *reader) flag(key string, at *bool, means string) {
	if r.ask(key, "true or false", means) {
		r.in.Flag(key, at)
	}
}

func (r *reader) whole(key string, at *int64, means string) {
	const most = 1000
	if r.ask(key, "1 to 1000", means) && r.in.Whole(key, at) && (*at < 1 || *at > most) {
		r.in.Say(key, fmt.Sprint(*at), "is out of range", "write 1 to 1000")
		*at = 0
	}
}

func (r *reader) amount(key string, at *money.Amount, means string) {
	text := ""
	if !r.ask(key, `amount, as "16.00"`, means) || !r.in.Read(key, &text) {
		return
	}
	a, err := money.Parse(text)
	if err != nil {
		r.in.Say(key, strict.Quote(text), "is no amount of money", `write it between quotation marks with a point, without a currency: "16.00"`)
		return
	}
	*at = a
}

func (r *reader) percent(key string, at *money.Percent, means string) {
	text := ""
	if !r.ask(key, `percent, as "1.75"`, means) || !r.in.Read(key, &text) {
		return
	}
	p, err := money.ParsePercent(text)
	if err != nil || p.Compare(money.WholePercent(100)) >= 0 {
		r.in.Say(key, strict.Quote(text), "is no percentage", `write it between quotation marks, 0 to below 100: "1.75"`)
		return
	}
	*at = p
}

// Reference tells what can stand in the file.
func Reference() string {
	var top, ch, pr reader
	top.house(new(cost.House))
	ch.channel(new(cost.Channel))
	pr.price(new(cost.Price))
	return strict.Reference("above the first header", "what holds for every batch", top.told) + "\n" +
		strict.Reference("[[channel]]", "each way bars are sold", ch.told) + "\n" +
		strict.Reference("[[price]]", "what something costs that no pack has brought yet", pr.told)
}
