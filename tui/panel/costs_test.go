package panel

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/money"
	"pourbench/tui/grid"
)

// The prices of a plan begin with a digit typed on them, keep what was typed to the digit, and refuse what is no price in words of the cell.
func TestAPriceOfThePlanIsTypedOver(t *testing.T) {
	f := worked(t, meadow, nil)
	seen := 0
	for _, r := range f.costGrid().Rows {
		for _, c := range r.Cells {
			if c.Figure != "cost.price" && c.Figure != "cost.wholesale_price" {
				continue
			}
			seen++
			if c.Kind != grid.Number {
				t.Fatalf("%s cannot be typed over with a digit", c.Name)
			}
			edit, err := c.Set("8,50")
			if err != nil {
				t.Fatal(err)
			}
			if got, _, _ := pour.Text(made(t, f, edit), c.Figure); got != "8.50" {
				t.Errorf("%s is %q", c.Name, got)
			}
			if _, err := c.Set("-8"); err == nil || !strings.Contains(err.Error(), "type a number") {
				t.Errorf("%s of -8: %v", c.Name, err)
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d prices", seen)
	}
}

// Where bars are given away the panel tells both costs of a bar, each by its name and what it is over; the batch of 300 over ten good bars is 30,
// over the eight to sell 37.50. Where none is given away it tells one.
func TestThePanelSaysWhichBarACostIsOf(t *testing.T) {
	f := worked(t, meadow, nil)
	all, err := money.Parse("300")
	if err != nil {
		t.Fatal(err)
	}
	f.Sheet.Cost = pour.CostSheet{Stated: true, Bill: cost.Bill{Currency: "EUR", Lines: []cost.Line{{Kind: cost.Materials, Name: "all", Amount: all}}}}
	told := func(testers int) string {
		f.Sheet.Cost.Bill.Bars = cost.Bars{Cut: 11, Good: 10, Testers: testers}
		var out []string
		for _, r := range f.costSums() {
			for _, c := range r.Cells {
				out = append(out, c.Text)
			}
		}
		return strings.Join(strings.Fields(strings.Join(out, " ")), " ")
	}
	for testers, want := range map[int]string{
		0:  "a good bar costs 30.00 EUR over 10 good bars the batch 300.00 EUR",
		2:  "a good bar costs 30.00 EUR over 10 good bars, 2 testers among them a bar sold costs 37.50 EUR over 8 to sell, which carry the testers the batch 300.00 EUR",
		10: "a good bar costs 30.00 EUR over 10 good bars, 10 testers among them a bar sold costs – EUR over 0 to sell, which carry the testers the batch 300.00 EUR",
	} {
		if got := told(testers); got != want {
			t.Errorf("with %d testers:\n got %s\nwant %s", testers, got, want)
		}
	}
}

// Beside the minutes stands what they are of; where nothing has a price there are none to tell.
func TestThePanelSaysWhatTheHandsMinutesAreOf(t *testing.T) {
	f := worked(t, meadow, nil)
	told := func() string {
		for _, r := range f.costGrid().Rows {
			if r.Cells != nil && r.Cells[0].Text == "hands in all" {
				return r.Cells[formValue].Text + " " + r.Cells[len(r.Cells)-1].Text
			}
		}
		return ""
	}
	f.Sheet.Cost = pour.CostSheet{Stated: true, HandsMin: pour.Know(41.4)}
	if got := told(); !strings.HasPrefix(got, "41") || !strings.HasSuffix(got, pour.HandsCounted) {
		t.Errorf("it says %q", got)
	}
	f.Sheet.Cost = pour.CostSheet{}
	if got := told(); got != "" {
		t.Errorf("without a price it says %q", got)
	}
}
