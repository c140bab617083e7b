package invoice_test

import (
	"math/big"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock/invoice"
	"pourbench/presets"
)

func known(t testing.TB) invoice.Known {
	t.Helper()
	s, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	return invoice.Known{Shelf: s, Today: on(t, "2026-11-28"), Currency: "EUR"}
}

func on(t testing.TB, s string) day.Day {
	t.Helper()
	d, err := day.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// What one line comes to, in the words of Item.Tell without the day. Units by hand: 1 oz is 28.349523125 g, 1 lb is 453.59237 g; densities are the
// shelf's, 0.9114 g/mL for olive oil and 0.885 for lavender oil.
func TestALineIsUnderstood(t *testing.T) {
	k := known(t)
	for line, want := range map[string]string{
		"olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 from the mill": `oil: olive oil, 5000 g, 38.50, postage 4.50, lot "A12", from "the mill", expires 2027-05-31`,
		"5kg olive oil 38,50":                             `oil: olive oil, 5000 g, 38.50`,
		"Olive oil, 5 kg: 38.50 EUR":                      `oil: olive oil, 5000 g, 38.50 EUR`,
		"€38.50 for olive, 5 kg":                          "",
		"from the mill: olive 5 kg €38.50":                `oil: olive oil, 5000 g, 38.50 €, from "the mill"`,
		"olive oil 5 l 38,50":                             `oil: olive oil, 4557 g, 38.50`,
		"lavender oil 100 ml 12.80":                       `scent: lavender oil, 88.5 g, 12.80`,
		"shea butter 1 lb 4 oz 9.90":                      `oil: shea butter, 566.9905 g, 9.90`,
		"shea butter 500 g (17.6 oz) 9.90":                `oil: shea butter, 500 g, 9.90`,
		"shea 8 oz 4.20":                                  `oil: shea butter, 226.7962 g, 4.20`,
		"2 x 500 g shea 12.40 together":                   `oil: shea butter, 2 x 500 g, 12.40 together`,
		"2x500g shea 6.20 each":                           `oil: shea butter, 2 x 500 g, 12.40 together`,
		"shea 500 g × 2 @ 6.20":                           `oil: shea butter, 2 x 500 g, 12.40 together`,
		"shea 500 g\t2\t6.20\t12.40":                      `oil: shea butter, 2 x 500 g, 12.40 together`,
		"shea 500 g;2;€6.20;€12.40":                       `oil: shea butter, 2 x 500 g, 12.40 € together`,
		"3 bottles of olive oil 1 l 30 together":          `oil: olive oil, 3 x 911.4 g, 30.00 together`,
		"olive oil 5 kg 7.70/kg":                          `oil: olive oil, 5000 g, 38.50`,
		"olive oil 5 kg 7.70 per kg 38.50":                `oil: olive oil, 5000 g, 38.50`,
		"olive oil 5 l 7.10/l":                            `oil: olive oil, 4557 g, 35.50`,
		"olive 5 kg free":                                 `oil: olive oil, 5000 g, 0.00`,
		"olive 5 kg 38.50 tare 350 g loss 2 %":            `oil: olive oil, 5000 g, 38.50, tare 350 g, loss 100 g`,
		"NaOH 1 kg €4.20 lot 4711/B":                      `alkali: sodium hydroxide, 1000 g, 4.20 €, lot "4711/B"`,
		"caustic soda 1 kg 4.20":                          `alkali: sodium hydroxide, 1000 g, 4.20`,
		"palm 5 kg 38.- lot \"A 12\"":                     `oil: palm oil, 5000 g, 38.00, lot "A 12"`,
		"gold mica 25 g 3.90 lot:GM-7":                    `colourant: gold mica, 25 g, 3.90, lot "GM-7"`,
		"colourant: kaolin 500 g 4":                       `colourant: kaolin, 500 g, 4.00`,
		"kraft boxes 100 pieces 36":                       `packaging: kraft boxes, 100 pieces, 36.00`,
		"packaging: kraft box 100 pcs 0.36 each":          `packaging: kraft box, 100 pieces, 36.00`,
		"packaging: kraft box 2 x 50 pcs 0.36/pc":         `packaging: kraft box, 2 x 50 pieces, 36.00 together`,
		"gift box 40 pieces 22":                           `packaging: gift box, 40 pieces, 22.00`,
		"other: silicone spatula oil 1 kg 3":              `other: silicone spatula oil, 1000 g, 3.00`,
		"Art. 10234 olive oil 5 kg 38.50":                 `oil: olive oil, 5000 g, 38.50`,
		"1. olive oil 5 kg 38.50":                         `oil: olive oil, 5000 g, 38.50`,
		"olive 5 kg 38.50 exp 31.05.2027":                 `oil: olive oil, 5000 g, 38.50, expires 2027-05-31`,
		"olive 5 kg 38.50 exp 31/05/2027":                 `oil: olive oil, 5000 g, 38.50, expires 2027-05-31`,
		"olive 5 kg 38.50 exp 05/31/2027":                 `oil: olive oil, 5000 g, 38.50, expires 2027-05-31`,
		"olive 5 kg 38.50 best before end: 02/2028":       `oil: olive oil, 5000 g, 38.50, expires 2028-02-29`,
		"olive 5 kg 38.50 use by 31 May 2027 from a fair": `oil: olive oil, 5000 g, 38.50, from "a fair", expires 2027-05-31`,
		"olive 5 kg 38.50 expires May 31, 2027":           `oil: olive oil, 5000 g, 38.50, expires 2027-05-31`,
		"sorbitol solution, 70 % 500 g 3.20":              `extra: sorbitol solution, 70 %, 500 g, 3.20`,
	} {
		if want == "" {
			continue
		}
		l, err := invoice.One(line, k)
		if err != nil {
			t.Errorf("%q: %v", line, err)
			continue
		}
		if got := strings.Replace(l.Item.Tell(), ", bought 2026-11-28", "", 1); got != want {
			t.Errorf("%q is understood as\n%s, want\n%s", line, got, want)
		}
	}
}

// What cannot be, or could be read in two ways, is refused and says how it is written.
func TestALineThatIsNotUnderstoodSaysHow(t *testing.T) {
	k := known(t)
	for line, says := range map[string]string{
		"":                                               "there is nothing in it",
		"olive 5 kg":                                     "what did it cost",
		"olive 38.50":                                    "how much of it",
		"5 kg 38.50":                                     "of what",
		"wibble 5 kg 38":                                 "nothing on the shelf",
		"oliv oil 5 kg 38":                               "did you mean olive oil",
		"kaolin 500 g 4":                                 "colourant: kaolin, or extra: kaolin",
		"olive A12 5 kg 38.50":                           "write lot A12",
		"olive 5 kg 38.50 2027-05-31":                    "Write exp before it",
		"olive 5 kg 38.50 exp 3/4/2027":                  "2027-03-04 or 2027-04-03",
		"olive 5 kg 38.50 exp 31.5.27":                   "write it as 2027-05-31",
		"olive 5 kg 38.50 exp 30 Feb 27":                 "write it as 2027-05-31",
		"olive 5 kg 38 exp 2027-02-30":                   "no calendar has it",
		"olive 5 kg 38 exp 2020-01-01":                   "before it was bought",
		"olive 5 kg 38 bought 2027-01-01":                "still to come",
		"olive 5 kg 38 lot":                              "which lot",
		"olive 5 kg 38 lot A lot B":                      "two lots",
		"olive 5 kg 38 from":                             "from whom",
		"olive 1.250 g 5":                                "could be 1250 or 1.25",
		"olive 1,250 kg 5":                               "could be 1250 or 1.25",
		"olive 1 250 g 5":                                "write 1250 g, or 1 x 250 g",
		"½ kg olive 5":                                   "as in 0.5",
		"olive 5 kg 1.234":                               "could be 1234 or 1.234",
		"olive 5 kg 1.234,50":                            "comma and a point",
		"olive 5 kg -5":                                  "below 0",
		"olive -5 kg 5":                                  "below 0",
		"olive 0 g 5":                                    "pack of nothing",
		"olive 5000 kg 5":                                "more than 1000 kg",
		"olive 5 kg 9999999":                             "more than 1000000",
		"olive 5 kg $38.50":                              "nothing is converted",
		"olive 5 kg 38 CHF":                              "the ledger is in EUR",
		"olive 5 kg 38 EUR post 3 GBP":                   "two currencies",
		"olive 5 kg 38 42":                               "which of its numbers is the price",
		"olive 5 kg 7.70/kg 39.50":                       "would cost 38.50",
		"olive 5 kg 7.70/l":                              "another unit",
		"olive 5 kg 3 free":                              "leave one",
		"2 x 500 g shea 12.40":                           "12.40 each, or 12.40 together",
		"2 x 500 g shea 6.20 13":                         "do not agree",
		"shea 500 g 250 g 5":                             "two sizes",
		"shea 500 g (10 oz) 5":                           "two sizes differ",
		"shea 8 fl oz 5":                                 "fl: not the same everywhere",
		"shea 2 cups 5":                                  "cups: not the same",
		"titanium white, oil-dispersible 100 ml 5":       "density",
		"packaging: kraft box 5 kg 9":                    "write its pieces",
		"packaging: kraft box 1.5 pieces 9":              "whole pieces",
		"packaging: kraft box 2 x 50 pieces 0.36 each":   "each pack or of each piece",
		"olive 5 kg 38 loss 100 %":                       "cannot be",
		"olive 5 kg 38 loss 1 l":                         "unit of its size",
		"olive 5 kg 38 tare 1 l":                         "weight of the empty tub",
		"olive 5 kg 38 post 4 post 5":                    "postage twice",
		"300 x olive 500 g 5 each":                       "from 1 to 200",
		"Shipping 4.50":                                  "it is postage",
		"olive 5 kg 38\nshea 1 kg 9":                     "second thing",
		strings.Repeat("olive ", 100) + "5 kg 38":        "too long",
		"olive 99999999999999999999999999999999999 kg 5": "cannot be read",
	} {
		_, err := invoice.One(line, k)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%.80q: %v, want %q in it", line, err, says)
		}
	}
}

// pasted is an invoice as it is copied: a head, a table, details under their things, postage, discount, sums, tax.
const pasted = "Invoice 2026-118\nfrom Green Mill\nDate: 20.11.2026\n\n" +
	"Item\tSize\tQty\tEach\tTotal\n" +
	"Olive oil\t5 kg\t2\t38.50\t77.00\n" +
	"  Lot: A12, best before 05/2027\n" +
	"Shea butter\t1 kg\t1\t11.00\t11.00\n" +
	"Kraft boxes 100 pieces 12.00\n" +
	"mystery goo 1 kg 3.00\n" +
	"Subtotal 100.00\nDiscount 10.00\nShipping 4.95\nVAT 20 % 18.99\nTotal 94.95\nThank you for your order!\n"

// Postage and discount by hand, in proportion to 77 : 11 : 12 of 100: of 4.95 they are 3.8115, 0.5445 and 0.594, of 10.00 they are 7.70, 1.10
// and 1.20; to the cent, summing to the whole.
func TestAnInvoiceIsUnderstoodLineByLine(t *testing.T) {
	inv := invoice.Read(pasted, known(t))
	if inv.Count(invoice.Taken) != 3 || inv.Count(invoice.Odd) != 1 || inv.Count(invoice.Postage) != 1 || inv.Count(invoice.Discount) != 1 ||
		inv.Count(invoice.Sum) != 2 || inv.Count(invoice.Aside) != 1 || inv.Count(invoice.Heading) != 2 || inv.Count(invoice.Detail) != 1 {
		for _, l := range inv.Lines {
			t.Logf("%d %q %s", l.Kind, l.Text, l.Tell())
		}
		t.Fatal("the lines are of other kinds")
	}
	if why := inv.Refused(); !strings.Contains(why, "mend or leave out") {
		t.Errorf("a part of it is taken with all the postage: %q", why)
	}
	inv = invoice.Read(strings.Replace(pasted, "mystery goo 1 kg 3.00\n", "", 1), known(t))
	if why := inv.Refused(); why != "" {
		t.Error(why)
	}
	if odd := inv.Check(); len(odd) > 0 {
		t.Errorf("its sums do not agree: %s", odd)
	}
	items := inv.Items()
	for i, want := range []struct{ price, post, name string }{{"69.30", "3.81", "olive oil"}, {"9.90", "0.55", "shea butter"}, {"10.80", "0.59", "Kraft boxes"}} {
		x := items[i]
		if x.Price.String() != want.price || x.Postage.String() != want.post || x.Name != want.name || x.Supplier != "Green Mill" || x.Bought != on(t, "2026-11-20") {
			t.Errorf("%s: %s and %s, from %q on %s; want %+v", x.Name, x.Price, x.Postage, x.Supplier, x.Bought, want)
		}
	}
	if x := items[0]; x.Lot != "A12" || x.Expires != on(t, "2027-05-31") || x.Packs != 2 {
		t.Errorf("what stands under the oil is not its own: %+v", x)
	}
	packs := items[0].Entries()
	if len(packs) != 2 || packs[0].Price.Plus(packs[1].Price).String() != "69.30" || packs[0].Postage.Plus(packs[1].Postage).String() != "3.81" ||
		packs[0].Lot != "A12" || packs[1].Q != 5000*lot.One {
		t.Errorf("its packs are %+v", packs)
	}
	wrong := invoice.Read(strings.Replace(strings.Replace(pasted, "mystery goo 1 kg 3.00\n", "", 1), "Total 94.95", "Total 95.95", 1), known(t))
	if odd := wrong.Check(); len(odd) != 1 || !strings.Contains(odd[0], "94.95") {
		t.Errorf("a sum that is wrong is passed over: %s", odd)
	}
}

// What came before and is on no shelf is known by its name.
func TestWhatCameBeforeIsKnown(t *testing.T) {
	k := known(t)
	box := lot.Material{Kind: lot.Packaging, ID: "kraft-box"}
	k.Held.Held = map[lot.Material]lot.Holding{box: {Packs: []lot.Pack{{ID: "kraft-box-1", Material: box, Name: "kraft box"}}}}
	l, err := invoice.One("kraft box 50 pieces 18", k)
	if err != nil || l.Item.New || l.Item.Material != box {
		t.Errorf("%+v %v", l.Item, err)
	}
	if _, err := invoice.One("kraft bx 50 pieces 18", k); err == nil || !strings.Contains(err.Error(), "did you mean kraft box") {
		t.Errorf("a slip makes a new thing: %v", err)
	}
}

// Everything on the shelf is found by its name behind its kind.
func TestEverythingOnTheShelfCanCome(t *testing.T) {
	k := known(t)
	for _, m := range materials(k) {
		l, err := invoice.One(string(m.Kind)+": "+m.name+", 500 "+m.Kind.Unit()+", 4.00", k)
		if err != nil || l.Item.Material != m.Material {
			t.Errorf("%s %q: %v %v", m.Material, m.name, l.Item.Material, err)
		}
	}
}

type named struct {
	lot.Material
	name string
}

func materials(k invoice.Known) []named {
	var out []named
	add := func(kind lot.Kind, id, name string) { out = append(out, named{lot.Material{Kind: kind, ID: id}, name}) }
	for _, x := range k.Shelf.Oils {
		add(lot.Oil, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Colourants {
		add(lot.Colourant, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Extras {
		add(lot.Extra, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Scents {
		add(lot.Scent, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Toppings {
		add(lot.Topping, x.ID, x.Name)
	}
	add(lot.Alkali, lot.NaOH, "sodium hydroxide")
	add(lot.Packaging, "kraft-box", "kraft box")
	return out
}

// What is told of a thing is understood as the same thing, and its packs are all of it to the last digit.
func TestWhatIsToldIsUnderstoodAgain(t *testing.T) {
	k := known(t)
	all := materials(k)
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(all).Draw(t, "material")
		cents := func(label string, low int) money.Amount {
			return exactly(t, big.NewRat(int64(rapid.IntRange(low, 500_000).Draw(t, label)), 100))
		}
		x := invoice.Item{Material: m.Material, Name: m.name, New: m.Kind == lot.Packaging, Packs: rapid.IntRange(1, 6).Draw(t, "packs")}
		x.Each = lot.Quantity(rapid.Int64Range(1, 1_000_000).Draw(t, "each")) * lot.One
		if !m.Kind.Counted() {
			x.Each = lot.Quantity(rapid.Int64Range(100, 1e10).Draw(t, "g"))
			x.Tare = lot.Quantity(rapid.Int64Range(0, 1e7).Draw(t, "tare"))
		}
		x.Loss = x.Each / 50 / lot.One * lot.One
		x.Price, x.Postage = cents("price", 0), cents("postage", 0)
		x.Lot = rapid.StringMatching(`[A-Z0-9][A-Z0-9/-]{0,8}( [A-Z0-9]{1,3})?`).Draw(t, "lot")
		x.Supplier = rapid.StringMatching(`([A-Z][a-z]{1,8} )?[A-Za-z]{2,9} [A-Z0-9]{1,3}`).Draw(t, "supplier")
		x.Currency = rapid.SampledFrom([]string{"", "EUR", "€"}).Draw(t, "currency")
		x.Bought = k.Today - day.Day(rapid.IntRange(0, 3000).Draw(t, "ago"))
		x.Expires = k.Today + day.Day(rapid.IntRange(0, 3000).Draw(t, "ahead"))
		l, err := invoice.One(x.Tell(), k)
		if err != nil {
			t.Fatalf("%s: %v", x.Tell(), err)
		}
		got := l.Item
		if got.Price.Compare(x.Price) != 0 || got.Postage.Compare(x.Postage) != 0 {
			t.Fatalf("%s: %s and %s", x.Tell(), got.Price, got.Postage)
		}
		got.Price, got.Postage = x.Price, x.Postage
		if got != x {
			t.Fatalf("%s\nis understood as %+v\nwant             %+v", x.Tell(), got, x)
		}
		var price, post money.Amount
		var q lot.Quantity
		for _, e := range x.Entries() {
			price, post, q = price.Plus(e.Price), post.Plus(e.Postage), q+e.Q
		}
		if price.Compare(x.Price) != 0 || post.Compare(x.Postage) != 0 || q != x.Each*lot.Quantity(x.Packs) {
			t.Fatalf("%s: its packs come to %s, %s and %s", x.Tell(), price, post, q)
		}
	})
}

func exactly(t *rapid.T, r *big.Rat) money.Amount {
	a, err := money.Parse(r.FloatString(2))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Whatever is pasted, nothing panics, nothing unsafe is kept, and what is taken is more than nothing of something on a day that was.
func FuzzRead(f *testing.F) {
	k := known(f)
	for _, seed := range []string{
		pasted, "olive 5 kg 38.50 lot A12 exp 2027-05-31", "2 x 500 g shea @ 6.20 \x00\x1b[31m", "½ lb olive", "lot", "from", "exp 31/12", "x", "2x", "@", "/kg", "\"", "\"olive\" 5 kg 3", "€", "€5", "5€",
		"olive\u20285 kg 3", "olive ١٢ kg 3", strings.Repeat("olive 1 kg 3\n", 700), "\u202eolive 5 kg 3", "tare", "loss %", "free", "total", "olive 5 kg 3 / ", "packaging:", "packaging:x 5 pcs 3", ":", ": :", "1 2 3 4 5 6",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		inv := invoice.Read(text, k)
		if len(inv.Lines) > 500 {
			t.Fatal("too many lines")
		}
		for _, l := range inv.Lines {
			if tell := l.Text + l.Tell(); !utf8.ValidString(tell) || strings.ContainsFunc(tell, func(c rune) bool { return unicode.IsControl(c) || c >= 0x202a && c <= 0x202e }) {
				t.Fatalf("unsafe: %q, %q", l.Text, l.Tell())
			}
			if x := l.Item; l.Kind == invoice.Taken && (x.Each <= 0 || x.Packs < 1 || x.Price.Sign() < 0 || x.Postage.Sign() < 0 || x.Loss >= x.Each || x.Bought > k.Today || x.Name == "" || x.Material.ID == "") {
				t.Fatalf("%q gives %+v", l.Text, x)
			}
		}
		if inv.Refused() == "" {
			for _, x := range inv.Items() {
				_ = x.Entries()
			}
		}
		_ = inv.Check()
	})
}

func BenchmarkRead(b *testing.B) {
	k, text := known(b), strings.Repeat("olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 from the mill\n", 100)
	for b.Loop() {
		invoice.Read(text, k)
	}
}
