package panel

import (
	"strings"
	"testing"

	"pourbench/pour"
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
