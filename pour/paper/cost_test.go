package paper

import (
	"encoding/json"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/money"
)

func amount(t *testing.T, text string) money.Amount {
	t.Helper()
	a, err := money.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The worked example C1 of the reference (cost and stock): its lines in, its printed figures out.
func workedExample(t *testing.T) (pour.Sheet, pour.Shelf) {
	t.Helper()
	fee, err := money.ParsePercent("1.75")
	if err != nil {
		t.Fatal(err)
	}
	shelf := testShelf()
	shelf.House = cost.House{
		Currency: "EUR", WagePerHour: amount(t, "16.00"), EnergyPerBatch: amount(t, "1.85"), OverheadPerBatch: amount(t, "31.00"), FixedPerMonth: amount(t, "385.00"),
		Channels: []cost.Channel{{Name: "market", FeePercent: fee, FeePerSale: amount(t, "0.10")}},
	}
	p := testPlan()
	p.Cost = pour.Cost{Price: "6.50"}
	s := pour.Weigh(p, shelf)
	goods := []cost.Line{}
	for name, a := range map[string]string{
		"oil in lots": "56.525510204081632653", "coconut oil": "23.81", "shea butter": "27.78", "sodium hydroxide": "7.35", "fragrance": "21.58", "titanium dioxide": "0.83",
	} {
		goods = append(goods, cost.Line{Kind: cost.Materials, Name: name, Amount: money.Amount{}.Plus(long(t, a))})
	}
	goods = append(goods, cost.Line{Kind: cost.Packaging, Name: "box", Amount: amount(t, "51.84")})
	s.Cost = s.Costed(shelf, goods, 6.5*60, cost.Bars{Cut: 148, Good: 144}, "")
	return s, shelf
}

// long is an amount with more digits than are typed: its parts of nine digits.
func long(t *testing.T, text string) money.Amount {
	t.Helper()
	before, after, _ := strings.Cut(text, ".")
	return amount(t, before+"."+after[:min(9, len(after))])
}

// The page prints its lines to the cent and adds what is finer: 137.87, 326.56 and 186.63 % there. Of the lines as printed, with the oil of its lots in
// full, the sum is 137.8755 and 326.5655, and (6.50 - 326.5655 / 144) over that bar 186.62 %; the bar, margin, contribution and bars to break even
// are the page's.
func TestTheBillShowsThePrintedFigures(t *testing.T) {
	s, _ := workedExample(t)
	text := CostText(Costs{Name: "C1", Sheet: s.Cost})
	for _, want := range []string{
		"MATERIALS", "137.88", "LABOUR", "104.00", "326.57 EUR", "2.27 EUR", "148 bars cut, 144 to sell", "65.11 %", "186.62 %", "4.23", "91 bars a month", "Hands: 390 min: the run with piping, embeds and toppings, the",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on\n%s", want, text)
		}
	}
	s.Cost.Bill.Bars.Testers = 4 // of 144
	if text, want := CostText(Costs{Name: "C1", Sheet: s.Cost}), "148 bars cut, 144 good, 4 of them given away as testers, 140 to sell"; !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
		t.Errorf("%q is not on\n%s", want, text)
	}
}

// Where bars are given away, a bar has two costs, each under its own name: 326.5655 over 144 good bars is 2.2678, over the 140 that are sold 2.3326.
// Where none is, they are one, and one is told.
func TestWhichBarACostIsOfIsSaid(t *testing.T) {
	s, _ := workedExample(t)
	told := func() string { return strings.Join(strings.Fields(CostText(Costs{Name: "C1", Sheet: s.Cost})), " ") }
	if text := told(); !strings.Contains(text, "A good bar 2.27 EUR 148 bars cut") || strings.Contains(text, "bar sold") {
		t.Errorf("with no testers:\n%s", text)
	}
	s.Cost.Bill.Bars.Testers = 4
	text := told()
	for _, want := range []string{"A good bar 2.27 EUR A bar sold 2.33 EUR", "A good bar: the batch over all good bars. A bar sold: over those to sell, which carry the testers.", "a good bar then costs"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on\n%s", want, text)
		}
	}
	c := Figures(s).Cost
	if c.PerBar == nil || c.PerSold == nil || !strings.HasPrefix(*c.PerBar, "2.2678") || !strings.HasPrefix(*c.PerSold, "2.3326") {
		t.Errorf("the figures say %+v", c)
	}
	s.Cost.Bill.Bars.Testers = 144
	if text := told(); !strings.Contains(text, "A bar sold — EUR") || Figures(s).Cost.PerSold != nil {
		t.Errorf("with all given away:\n%s", text)
	}
}

func TestWhatHasNoPriceIsNotNothing(t *testing.T) {
	s, shelf := workedExample(t)
	lacking := []cost.Line{{Kind: cost.Materials, Name: "olive oil", Lacks: "it has no price"}, {Kind: cost.Materials, Name: "shea", Amount: amount(t, "3")}}
	s.Cost = s.Costed(shelf, lacking, 60, cost.Bars{Cut: 10, Good: 10}, "")
	text := CostText(Costs{Name: "x", Sheet: s.Cost})
	if !strings.Contains(text, "> ") || !strings.Contains(text, "? olive oil: it has no price") || strings.Contains(text, "an hour of hands") {
		t.Errorf("what lacks a price is told as\n%s", text)
	}
	var got map[string]any
	out, err := json.Marshal(Figures(s))
	if err == nil {
		err = json.Unmarshal(out, &got)
	}
	if err != nil {
		t.Fatal(err)
	}
	c := got["cost"].(map[string]any)
	if c["batch"] != nil || c["per_bar"] != nil || c["lines"].([]any)[0].(map[string]any)["amount"] != nil {
		t.Errorf("what is not known is written as %v", c)
	}
	s.Cost = pour.CostSheet{Why: "nothing has a price yet"}
	if text := CostText(Costs{Name: "x", Sheet: s.Cost}); !strings.Contains(text, "nothing has a price yet") || Figures(s).Cost != nil {
		t.Errorf("without any price: %s", text)
	}
}
