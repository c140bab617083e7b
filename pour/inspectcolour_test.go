package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

func TestAColourantsOwnCautionIsSaidInAJugAndAsAnExtra(t *testing.T) {
	plan, shelf := shelved(t)
	said := func(p pour.Plan) (found []pour.Warning) {
		sheet := pour.Work(p, shelf, pour.Hand{})
		for _, w := range sheet.Warnings {
			if w.Code == "colour-caution" {
				found = append(found, w)
			}
		}
		return found
	}
	if found := said(plan); len(found) != 0 {
		t.Errorf("the example is cautioned: %v", found)
	}
	henna, _ := shelf.Colourant("henna")
	coloured, err := pour.Apply(plan, shelf, pour.SetColourant(pour.Base, 1, 0, henna))
	if err != nil {
		t.Fatal(err)
	}
	stirred, err := pour.Apply(plan, shelf, pour.AddExtra(pour.Base, "henna", 0.5))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []pour.Plan{coloured, stirred} {
		found := said(p)
		if len(found) != 1 || found[0].Severity != pour.Caution || !strings.Contains(found[0].Text, "sensitises") {
			t.Errorf("henna is cautioned %v, want once, with what it can do", found)
		}
	}
}
