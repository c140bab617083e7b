package sticker_test

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/sticker"
)

// A list that lacks what only a packet can name is printed in no form, and the refusal says what to state.
func TestALabelWhoseListLacksSomethingIsNotPrinted(t *testing.T) {
	p, shelf := loaf(t, "eu")
	p.Top.Toppings = []pour.Topping{{GPerBar: 1, Parts: []pour.ToppingPart{{Material: "nonpareils", Percent: 100}}}}
	l := of(t, p, shelf, sticker.Details{})
	for _, form := range []string{".txt", ".pdf", ".svg"} {
		if _, err := l.For("label"+form, sticker.Print{}); err == nil || !strings.Contains(err.Error(), "colours as on the packet of nonpareils") || !strings.Contains(err.Error(), "made_of") {
			t.Errorf("%s: %v", form, err)
		}
	}
	if strings.Contains(l.List, "packet") {
		t.Errorf("its list says %q", l.List)
	}
}
