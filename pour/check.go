package pour

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// sumTolerance is how far percentages that should sum to 100 may be off: a file written by hand with two decimals per part stays well inside.
const sumTolerance = 0.01

// isHundred says whether parts sum to 100 within what rounding leaves: three of 33.33 % do.
func isHundred(sum float64) bool { return math.Abs(sum-100) <= sumTolerance+noise }

// What the lists of a plan may hold. No mould holds so many jugs; a file that has more is a mistake.
const (
	maxParts   = 64
	mostBursts = 256
	mostMarks  = 256
)

// Check returns everything in the plan that cannot be: first every field by its row, in the order of the file, then what
// hangs together. A plan without faults can always be worked out.
func (p Plan) Check(s Shelf) []strict.Fault {
	c := checker{plan: &p, shelf: &s}
	for _, t := range p.Tables() {
		c.fields(spot{table: t.Key}, t.Fields)
	}
	c.mould(p.Mould)
	if p.Swirl.First != "" && p.Swirl.First == p.Swirl.Last && len(p.Base.Jugs) > 1 {
		c.add("swirl.last", strict.Quote(p.Swirl.Last), "is pinned first and last", "let one of the two go")
	}
	for i := range p.Top.Embeds {
		c.embed(spot{table: tableTop}.item("embed", i), &p.Top.Embeds[i])
	}
	c.batch(Base, &p.Base)
	if p.Icing != nil {
		c.batch(Icing, p.Icing)
	}
	c.toppings(p.Top.Toppings)
	c.packaging(p.Cost.Packaging)
	return c.faults
}

type checker struct {
	plan   *Plan
	shelf  *Shelf
	faults []strict.Fault
}

// spot is a table of the plan or an item of a list, or of a list in it. Its path is spelt out only where a fault needs it:
// a plan holds a hundred fields and is checked on every key.
type spot struct {
	table, list, inner string
	i, k               int
}

func (s spot) item(list string, i int) spot {
	if s.list == "" {
		s.list, s.i = list, i
	} else {
		s.inner, s.k = list, i
	}
	return s
}

func (s spot) path(key string) string {
	path := s.table
	if s.list != "" {
		path += fmt.Sprintf(".%s[%d]", s.list, s.i)
	}
	if s.inner != "" {
		path += fmt.Sprintf(".%s[%d]", s.inner, s.k)
	}
	return strings.TrimPrefix(path+"."+key, ".")
}

func (c *checker) add(path, value, problem, mend string) {
	c.faults = append(c.faults, strict.Fault{Path: path, Value: value, Problem: problem, Mend: mend})
}

// fields checks every row by itself.
func (c *checker) fields(at spot, rows []Field) {
	for i := range rows {
		f := &rows[i]
		switch v := f.At.(type) {
		case *float64:
			c.number(at, f, *v)
		case *int:
			c.number(at, f, float64(*v))
		case *string:
			c.text(at, f, *v)
		case *[]float64:
			for _, number := range *v {
				c.number(at, f, number)
			}
			if len(*v) > mostMarks {
				c.add(at.path(f.Key), fmt.Sprint(len(*v)), "is more than a loaf has room for", fmt.Sprintf("keep to %d", mostMarks))
			}
		case *[]string:
			for _, text := range *v {
				c.text(at, f, text)
			}
		default:
			c.items(at, f)
		}
	}
}

func (c *checker) items(at spot, f *Field) {
	n := 0
	f.each(0, true, func(i int, rows []Field) {
		c.fields(at.item(f.Key, i), rows)
		n++
	})
	if float64(n) > f.High && f.High > 0 {
		c.add(at.path(f.Key), fmt.Sprint(n), "is more than a bench holds", fmt.Sprintf("keep to %g", f.High))
	}
}

func (c *checker) number(at spot, f *Field, v float64) {
	if !(v >= f.Low && v <= f.High) {
		c.faults = append(c.faults, strict.Outside(at.path(f.Key), v, f.Low, f.High))
	}
}

// text checks a text by what its row says it can be. One that need not be there, and is not, means its default.
func (c *checker) text(at spot, f *Field, v string) {
	if v == "" && f.Need == Quiet {
		return
	}
	switch f.Takes {
	case TakesLine, TakesProse, TakesTask:
	case TakesName:
		c.name(at, f, v)
	case TakesWord:
		for word := range strings.FieldsSeq(f.Words) {
			if v == word {
				return
			}
		}
		c.faults = append(c.faults, strict.NoWord(at.path(f.Key), v, f.Choices()))
	case TakesColour:
		c.colour(at, f, v)
	case TakesJug:
		c.jug(at, f, v)
	case TakesMoney:
		c.money(at, f, v)
	case TakesID:
		c.id(at, f, v)
	default:
		c.onShelf(at, f, v)
	}
}

func (c *checker) name(at spot, f *Field, v string) {
	if strings.TrimSpace(v) == "" {
		c.add(at.path(f.Key), "", "is empty", "give it a name")
	}
	if letters := []rune(v); float64(len(letters)) > f.High {
		c.add(at.path(f.Key), strict.Quote(string(letters[:20]))+"…", "is too long to print", fmt.Sprintf("keep it to %g letters", f.High))
	}
}

func (c *checker) colour(at spot, f *Field, hex string) {
	if len(hex) == 7 && hex[0] == '#' && strings.Trim(strings.ToLower(hex[1:]), "0123456789abcdef") == "" {
		return
	}
	c.add(at.path(f.Key), strict.Quote(hex), "is no colour", `write six hex digits after a hash, as in "#5566b0"`)
}

// jug checks that a jug that is named is there.
func (c *checker) jug(at spot, f *Field, name string) {
	n, batch := BatchName(at.table), c.plan.Batch(BatchName(at.table))
	if n != Base && n != Icing {
		n, batch = Base, &c.plan.Base
	}
	for i := range batch.Jugs {
		if batch.Jugs[i].Name == name {
			return
		}
	}
	names := ids(batch.Jugs, func(j Jug) string { return j.Name })
	c.add(at.path(f.Key), strict.Quote(name), fmt.Sprintf("is no jug of the %s", n), strict.Meant(name, names, fmt.Sprintf("name a jug of the %s, or leave it out", n), ""))
}

// onShelf checks that what is named by its id is on the shelf.
func (c *checker) onShelf(at spot, f *Field, id string) {
	ok := false
	switch f.Takes {
	case TakesOil:
		_, ok = c.shelf.Oil(id)
	case TakesColourant:
		_, ok = c.shelf.Colourant(id)
	case TakesExtra:
		_, ok = c.shelf.Extra(id)
	case TakesScent:
		_, ok = c.shelf.Scent(id)
	case TakesTopping:
		_, ok = c.shelf.Topping(id)
	case TakesMarket:
		_, ok = c.shelf.Market(id)
	default:
		_, ok = c.shelf.Technique(id)
	}
	if ok {
		return
	}
	kind, known := c.shelf.known(f.Takes)
	mend := strict.Meant(id, known, "take one that is on the shelf, or add it to your own shelf file", "Or add it to your own shelf file")
	c.add(at.path(f.Key), strict.Quote(id), fmt.Sprintf("is no %s on the shelf", kind), mend)
}

// known lists the ids of what a text can name, and says what that is.
func (s *Shelf) known(takes Takes) (kind string, known []string) {
	colourants := func() []string { return ids(s.Colourants, func(x Colourant) string { return x.ID }) }
	switch takes {
	case TakesOil:
		return "oil", ids(s.Oils, func(x Oil) string { return x.ID })
	case TakesColourant:
		return "colourant", colourants()
	case TakesExtra:
		return "extra", append(ids(s.Extras, func(x Extra) string { return x.ID }), colourants()...)
	case TakesScent:
		return "scent", ids(s.Scents, func(x Scent) string { return x.ID })
	case TakesTopping:
		return "topping", ids(s.Toppings, func(x ToppingMaterial) string { return x.ID })
	case TakesMarket:
		return "market", ids(s.Markets, func(x label.Market) string { return x.ID })
	}
	return "technique", ids(s.Techniques, func(x Technique) string { return x.ID })
}

func ids[T any](list []T, id func(T) string) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = id(v)
	}
	return out
}

// batch checks what hangs together in a batch.
func (c *checker) batch(n BatchName, b *Batch) {
	c.size(n, b)
	c.oils(n, b)
	c.jugs(n, b)
	switch at := string(n) + ".stock_lye_percent"; {
	case b.StockLyePercent > 0 && b.KOHSharePercent > 0:
		c.add(at, strict.Short(b.StockLyePercent), "a stock lye is taken to be NaOH alone", "set koh_share_percent to 0, or weigh dry alkali")
	case b.StockLyePercent > 0 && b.StockLyePercent < 10:
		c.add(at, strict.Short(b.StockLyePercent), "no stock lye keeps at that strength", "write 10 to 52, or 0 for dry alkali")
	}
}

// size checks that the size a batch goes by is given.
func (c *checker) size(n BatchName, b *Batch) {
	switch at := string(n); {
	case b.Size == SizeOils && b.OilsG <= 0:
		c.add(at+".oils_g", strict.Short(b.OilsG), "there is nothing to mix", "write the grams of oils, more than 0")
	case b.Size == SizeBar && b.PerBarG <= 0:
		c.add(at+".per_bar_g", strict.Short(b.PerBarG), "there is nothing to pipe", "write the grams on each bar, more than 0")
	case b.Size == SizeLayer && b.LayerMM <= 0:
		c.add(at+".layer_mm", strict.Short(b.LayerMM), "there is nothing to pipe", "write the mean height in mm, more than 0")
	}
}

func (c *checker) oils(n BatchName, b *Batch) {
	at := string(n) + ".oil"
	if len(b.Oils) == 0 {
		c.add(at, "", "the blend is empty", fmt.Sprintf("add at least one [[%s]] with oil and percent", at))
		return
	}
	for i, o := range b.Oils {
		if slices.ContainsFunc(b.Oils[:i], func(before OilPart) bool { return before.Oil == o.Oil }) {
			c.add(fmt.Sprintf("%s[%d].oil", at, i), strict.Quote(o.Oil), "stands in the blend twice", "add the two percentages up")
		}
	}
	if !b.holdsAnOil() { // with one held it may be a blend that is not finished
		c.hundred(at, "the oils sum", b.oilSum(), "make the percentages sum to 100")
	}
	c.carrierOil(n, b)
}

func (c *checker) hundred(path, what string, sum float64, mend string) {
	if !isHundred(sum) {
		c.add(path, "", fmt.Sprintf("%s to %s %%", what, strict.Short(math.Round(sum*1000)/1000)), mend)
	}
}

func (c *checker) carrierOil(n BatchName, b *Batch) {
	_, known := c.shelf.Oil(b.CarrierOil)
	if !known || b.Carrier != CarrierBatch || b.hasOil(b.CarrierOil) {
		return
	}
	c.add(string(n)+".carrier_oil", strict.Quote(b.CarrierOil), "is taken from the batch but is not in its blend", "name an oil of the blend, or write carrier = \"extra\"")
}

func (c *checker) jugs(n BatchName, b *Batch) {
	at := string(n) + ".jug"
	if len(b.Jugs) == 0 {
		c.add(at, "", "there is no jug", fmt.Sprintf("add a [[%s]] with name and share_percent; the first is the pot", at))
		return
	}
	sum := 0.0
	for i, j := range b.Jugs {
		if slices.ContainsFunc(b.Jugs[:i], func(before Jug) bool { return before.Name == j.Name }) {
			c.add(fmt.Sprintf("%s[%d].name", at, i), strict.Quote(j.Name), "is the name of two jugs", "give each jug its own name")
		}
		sum += j.SharePercent
	}
	c.hundred(at, "the shares sum", sum, "make the shares sum to 100")
}
