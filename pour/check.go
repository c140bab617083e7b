package pour

import (
	"fmt"
	"math"
	"strings"
)

// sumTolerance is how far percentages that should sum to 100 may be off: a file written by hand with two decimals per part stays well inside.
const sumTolerance = 0.01

// maxParts bounds every list of a plan. No mould holds so many jugs; a file that has more is a mistake.
const maxParts = 64

// Check returns everything in the plan that cannot be, numbers and words first, then what hangs together. A plan without faults can always be worked out.
func (p Plan) Check(s Shelf) []Fault {
	c := checker{shelf: s}
	c.text("name", p.Name, 80)
	eachNumber(p, c.number)
	for _, w := range wordsOf(p) {
		c.word(w)
	}
	c.mould(p.Mould)
	c.technique(p.Swirl.Technique)
	c.pin("swirl.first", p.Swirl.First, p.Base.Jugs)
	c.pin("swirl.last", p.Swirl.Last, p.Base.Jugs)
	if p.Swirl.First != "" && p.Swirl.First == p.Swirl.Last && len(p.Base.Jugs) > 1 {
		c.add("swirl.last", fmt.Sprintf("%q", p.Swirl.Last), "is pinned first and last", "let one of the two go")
	}
	c.batch(Base, p.Base)
	if p.Icing != nil {
		c.batch(Icing, *p.Icing)
	}
	return c.faults
}

type checker struct {
	shelf  Shelf
	faults []Fault
}

func (c *checker) add(path, value, problem, mend string) {
	c.faults = append(c.faults, Fault{Path: path, Value: value, Problem: problem, Mend: mend})
}

func (c *checker) text(path, text string, most int) {
	if strings.TrimSpace(text) == "" {
		c.add(path, "", "is empty", "give it a name")
	}
	if len([]rune(text)) > most {
		c.add(path, `"`+string([]rune(text)[:20])+`…"`, "is too long to print", fmt.Sprintf("keep it under %d letters", most))
	}
}

func (c *checker) number(n numberAt) {
	mend := func() string { return fmt.Sprintf("write a number from %s to %s", number(n.low), number(n.high)) }
	switch {
	case math.IsNaN(n.v) || math.IsInf(n.v, 0):
		c.add(n.path(), number(n.v), "is not a number", mend())
	case n.v < n.low || n.v > n.high:
		c.add(n.path(), number(n.v), "is outside what can be", mend())
	}
}

func (c *checker) word(w wordAt) {
	for _, allowed := range w.Field.Words {
		if w.V == allowed {
			return
		}
	}
	mend := "write one of " + strings.Join(w.Field.Words, ", ")
	if near := nearest(w.V, w.Field.Words); near != "" {
		mend = fmt.Sprintf("did you mean %q? It can be %s", near, strings.Join(w.Field.Words, ", "))
	}
	c.add(w.Path, fmt.Sprintf("%q", w.V), "is not a word this key knows", mend)
}

func (c *checker) mould(m Mould) {
	if m.Shape == ShapeSlab && m.BarWidthMM > m.WidthMM {
		c.add("mould.bar_width_mm", number(m.BarWidthMM), "is wider than the mould", "write at most mould.width_mm")
	}
	if m.BarMM > m.LengthMM {
		c.add("mould.bar_mm", number(m.BarMM), "is thicker than the mould is long", "write at most mould.length_mm")
	}
}

func (c *checker) technique(id string) {
	if _, ok := c.shelf.Technique(id); !ok {
		c.unknown("swirl.technique", id, "technique", ids(c.shelf.Techniques, func(t Technique) string { return t.ID }))
	}
}

// pin checks that a pinned jug is there.
func (c *checker) pin(path, jug string, jugs []Jug) {
	names := ids(jugs, func(j Jug) string { return j.Name })
	if jug == "" || contains(names, jug) {
		return
	}
	mend := "name a jug of the base, or leave it out"
	if near := nearest(jug, names); near != "" {
		mend = fmt.Sprintf("did you mean %q?", near)
	}
	c.add(path, fmt.Sprintf("%q", jug), "is no jug of the base", mend)
}

func (c *checker) unknown(path, id, kind string, known []string) {
	mend := fmt.Sprintf("take a %s that is on the shelf, or add it to your own shelf file", kind)
	if near := nearest(id, known); near != "" {
		mend = fmt.Sprintf("did you mean %q? Or add it to your own shelf file", near)
	}
	c.add(path, fmt.Sprintf("%q", id), fmt.Sprintf("is no %s on the shelf", kind), mend)
}

func ids[T any](list []T, id func(T) string) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = id(v)
	}
	return out
}

func (c *checker) batch(n BatchName, b Batch) {
	at := string(n)
	c.count(at+".jug", len(b.Jugs))
	c.count(at+".oil", len(b.Oils))
	c.size(at, n, b)
	c.oils(at, b)
	c.extras(at, b)
	c.jugs(at, b)
	c.scents(at, b)
	if b.StockLyePercent > 0 && b.KOHSharePercent > 0 {
		c.add(at+".stock_lye_percent", number(b.StockLyePercent), "a stock lye is taken to be NaOH alone", "set koh_share_percent to 0, or weigh dry alkali")
	}
	if b.StockLyePercent > 0 && (b.StockLyePercent < 10 || b.StockLyePercent > 52) {
		c.add(at+".stock_lye_percent", number(b.StockLyePercent), "no stock lye keeps at that strength", "write 10 to 52, or 0 for dry alkali")
	}
}

func (c *checker) count(path string, n int) {
	if n > maxParts {
		c.add(path, fmt.Sprint(n), "is more than a bench holds", fmt.Sprintf("keep to %d", maxParts))
	}
}

func (c *checker) size(at string, n BatchName, b Batch) {
	path := at + ".size"
	value := fmt.Sprintf("%q", b.Size)
	switch {
	case n == Base && b.Size != SizeMould && b.Size != SizeOils:
		c.add(path, value, "the base is sized by its mould or by its oils", `write "mould" or "oils"`)
	case n == Icing && b.Size == SizeMould:
		c.add(path, value, "the icing stands on the bars, not in the mould", `write "bar", "layer" or "oils"`)
	case b.Size == SizeOils && b.OilsG <= 0:
		c.add(at+".oils_g", number(b.OilsG), "there is nothing to mix", "write the grams of oils, more than 0")
	case b.Size == SizeBar && b.PerBarG <= 0:
		c.add(at+".per_bar_g", number(b.PerBarG), "there is nothing to pipe", "write the grams on each bar, more than 0")
	case b.Size == SizeLayer && b.LayerMM <= 0:
		c.add(at+".layer_mm", number(b.LayerMM), "there is nothing to pipe", "write the mean height in mm, more than 0")
	}
}

func (c *checker) oils(at string, b Batch) {
	if len(b.Oils) == 0 {
		c.add(at+".oil", "", "the blend is empty", fmt.Sprintf("add at least one [[%s.oil]] with oil and percent", at))
		return
	}
	sum, seen := 0.0, map[string]bool{}
	for i, o := range b.Oils {
		path := fmt.Sprintf("%s.oil[%d].oil", at, i)
		if _, ok := c.shelf.Oil(o.Oil); !ok {
			c.unknown(path, o.Oil, "oil", ids(c.shelf.Oils, func(x Oil) string { return x.ID }))
		}
		if seen[o.Oil] {
			c.add(path, fmt.Sprintf("%q", o.Oil), "stands in the blend twice", "add the two percentages up")
		}
		seen[o.Oil] = true
		sum += o.Percent
	}
	if math.Abs(sum-100) > sumTolerance {
		c.add(at+".oil", "", fmt.Sprintf("the oils sum to %s %%", number(math.Round(sum*1000)/1000)), "make the percentages sum to 100")
	}
	c.carrierOil(at, b)
}

func (c *checker) carrierOil(at string, b Batch) {
	if b.CarrierOil == "" {
		return
	}
	if _, ok := c.shelf.Oil(b.CarrierOil); !ok {
		c.unknown(at+".carrier_oil", b.CarrierOil, "oil", ids(c.shelf.Oils, func(x Oil) string { return x.ID }))
		return
	}
	if b.Carrier != CarrierBatch {
		return
	}
	for _, o := range b.Oils {
		if o.Oil == b.CarrierOil {
			return
		}
	}
	c.add(at+".carrier_oil", fmt.Sprintf("%q", b.CarrierOil), "is taken from the batch but is not in its blend", "name an oil of the blend, or write carrier = \"extra\"")
}

func (c *checker) extras(at string, b Batch) {
	c.count(at+".extra", len(b.Extras))
	for i, x := range b.Extras {
		if _, ok := c.shelf.Extra(x.Extra); !ok {
			known := append(ids(c.shelf.Extras, func(x Extra) string { return x.ID }), ids(c.shelf.Colourants, func(x Colourant) string { return x.ID })...)
			c.unknown(fmt.Sprintf("%s.extra[%d].extra", at, i), x.Extra, "extra", known)
		}
	}
}

func (c *checker) jugs(at string, b Batch) {
	if len(b.Jugs) == 0 {
		c.add(at+".jug", "", "there is no jug", fmt.Sprintf("add a [[%s.jug]] with name and share_percent; the first is the pot", at))
		return
	}
	sum, seen := 0.0, map[string]bool{}
	for i, j := range b.Jugs {
		path := fmt.Sprintf("%s.jug[%d]", at, i)
		c.text(path+".name", j.Name, 24)
		if seen[j.Name] {
			c.add(path+".name", fmt.Sprintf("%q", j.Name), "is the name of two jugs", "give each jug its own name")
		}
		seen[j.Name] = true
		sum += j.SharePercent
		c.colour(path+".batter_colour", j.BatterColour)
		c.count(path+".colourant", len(j.Colourants))
		for k, d := range j.Colourants {
			if _, ok := c.shelf.Colourant(d.Colourant); !ok {
				c.unknown(fmt.Sprintf("%s.colourant[%d].colourant", path, k), d.Colourant, "colourant",
					ids(c.shelf.Colourants, func(x Colourant) string { return x.ID }))
			}
		}
	}
	if math.Abs(sum-100) > sumTolerance {
		c.add(at+".jug", "", fmt.Sprintf("the shares sum to %s %%", number(math.Round(sum*1000)/1000)), "make the shares sum to 100")
	}
}

func (c *checker) colour(path, hex string) {
	if hex == "" {
		return
	}
	if len(hex) == 7 && hex[0] == '#' && strings.Trim(strings.ToLower(hex[1:]), "0123456789abcdef") == "" {
		return
	}
	c.add(path, fmt.Sprintf("%q", hex), "is no colour", `write six hex digits after a hash, as in "#5566b0"`)
}

func (c *checker) scents(at string, b Batch) {
	c.count(at+".scent", len(b.Scents))
	names := ids(b.Jugs, func(j Jug) string { return j.Name })
	for i, sc := range b.Scents {
		path := fmt.Sprintf("%s.scent[%d]", at, i)
		if _, ok := c.shelf.Scent(sc.Scent); !ok {
			c.unknown(path+".scent", sc.Scent, "scent", ids(c.shelf.Scents, func(x Scent) string { return x.ID }))
		}
		for _, name := range sc.Into {
			if !contains(names, name) {
				mend := "name a jug of this batch"
				if near := nearest(name, names); near != "" {
					mend = fmt.Sprintf("did you mean %q?", near)
				}
				c.add(path+".into", fmt.Sprintf("%q", name), "is no jug of this batch", mend)
			}
		}
	}
}

func contains(list []string, want string) bool {
	for _, v := range list {
		if v == want {
			return true
		}
	}
	return false
}
