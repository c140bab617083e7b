// Package house is the file of what a maker's costs are beside her materials: what an hour, a month and a sale cost, and prices of what no pack has
// brought yet. It lies in her folder of data, is written by hand as well as by the program, and whatever is changed in it leaves the rest as it stands.
package house

import (
	"fmt"
	"slices"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/ownfile"
	"pourbench/pour/strict"
)

// FileName is the file in the maker's folder of data.
const FileName = "costs.toml"

// FileFormat is the version of the file this program writes and reads.
const FileFormat = 1

func form() strict.Form {
	return strict.Form{Noun: "file of costs", Bytes: 1 << 20, Items: 2000, Letters: 100, Again: "take a look at what was changed last"}
}

// Load reads the costs in a folder of data. A file that is not there states nothing.
func Load(dir string) (cost.House, error) {
	file := NewStore(dir)
	text, err := file.Text()
	if err != nil {
		return cost.House{}, err
	}
	return Read(file.Path(), text)
}

// Read reads the text of a file of costs; no text states nothing. Any failure is a [*strict.Error].
func Read(name, text string) (cost.House, error) {
	file, err := ownfile.Open(form(), name, text, FileFormat, "these are your costs")
	if err != nil || file == nil {
		return cost.House{}, err
	}
	var h cost.House
	top, known := file.Top(), []string{"format", "channel", "price"}
	readRows(top, Rows(&h), known...)
	for _, t := range top.List("channel") {
		h.Channels = append(h.Channels, readChannel(t, h.Channels))
	}
	for _, t := range top.List("price") {
		h.Prices = append(h.Prices, readPrice(t, h))
	}
	if err := file.Err(); err != nil {
		return cost.House{}, err
	}
	return h, nil
}

func readRows(t *strict.Table, rows []Row, known ...string) {
	for _, r := range rows {
		known = append(known, r.Key)
		r.read(t)
	}
	t.Only(known...)
}

func readChannel(t *strict.Table, before []cost.Channel) cost.Channel {
	var c cost.Channel
	t.Missing("name")
	readRows(t, ChannelRows(&c))
	if slices.ContainsFunc(before, func(o cost.Channel) bool { return c.Name != "" && o.Name == c.Name }) {
		t.Say("name", strict.Quote(c.Name), "stands there twice", "give every way of selling a name of its own")
	}
	if c.FeePercent.Compare(money.WholePercent(100)) >= 0 {
		t.Say("fee_percent", strict.Quote(c.FeePercent.String()), "is all that is paid, or more", "write what is kept of 100 that are paid")
	}
	return c
}

// The keys of a price, by what its material is measured in.
const (
	perKG = "per_kg"
	each  = "each"
)

func readPrice(t *strict.Table, h cost.House) cost.Price {
	var p cost.Price
	t.Only("of", perKG, each)
	t.Missing("of")
	t.Read("of", &p.Of)
	m, err := lot.ParseMaterial(p.Of)
	if err != nil {
		if p.Of != "" {
			t.Say("of", strict.Quote(p.Of), "is no material", err.Error())
		}
		return p
	}
	p.Of = m.String()
	key, other := keyOf(m)
	if t.Has(other) {
		t.Say(other, "", fmt.Sprintf("is not how %s is priced", m), fmt.Sprintf("it is measured in %s: write %s", m.Kind.Unit(), key))
		return p
	}
	t.Missing(key)
	readAs(t, key, &p.Per, money.Parse)
	if _, twice := h.Price(p.Of); twice {
		t.Say("of", strict.Quote(p.Of), "has two prices", "leave one of them")
	}
	return p
}

// keyOf is the key of a material's price, and the one it has not.
func keyOf(m lot.Material) (key, other string) {
	if m.Kind.Counted() {
		return each, perKG
	}
	return perKG, each
}

// Reference tells every key of the file.
func Reference() string {
	told := func(rows []Row) []strict.Told {
		out := make([]strict.Told, 0, len(rows))
		for _, r := range rows {
			out = append(out, strict.Told{Key: r.Key, Takes: r.Takes, Means: r.Means})
		}
		return out
	}
	var h cost.House
	var c cost.Channel
	return fmt.Sprintf("A file of costs is TOML, begins with format = %d and lies in your folder of data. Money is written in quotation marks, so\n"+
		"that it stays exact. What is left out is not counted; a key that is not named here is refused.\n\n", FileFormat) +
		strict.Reference("above the first [[header]]", "", told(Rows(&h))) + "\n" +
		strict.Reference("[[channel]]", "a way of selling; without any: retail and wholesale without a fee", told(ChannelRows(&c))) + "\n" +
		strict.Reference("[[price]]", "what a material costs that no pack has brought yet and no shelf file prices", []strict.Told{
			{Key: "of", Takes: "kind and id", Default: "required", Means: `what it is: "packaging kraft-box", "alkali naoh"`},
			{Key: perKG, Takes: takesMoney, Means: "a kilogram of what is weighed"},
			{Key: each, Takes: takesMoney, Means: "a piece of packaging or of an embed"},
		})
}
