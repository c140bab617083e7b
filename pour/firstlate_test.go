package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// What is so already is no advice: the jug that is poured first cannot be poured before itself.
func TestAJugPouredFirstIsNotToldToBeFirst(t *testing.T) {
	plan, shelf := shelved(t)
	for _, e := range []pour.Edit{
		pour.SetNumber("base.oils_c", 42), pour.SetNumber("base.lye_c", 42), pour.SetNumber("base.split_at_min", 15),
	} {
		var err error
		if plan, err = pour.Apply(plan, shelf, e); err != nil {
			t.Fatal(err)
		}
	}
	plan.Base.Scents = []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 3, AtMin: 15}} // into every jug
	sheet := pour.Work(plan, shelf, pour.Hand{})
	first := sheet.Base.Jugs[0]
	for _, j := range sheet.Base.Jugs {
		if j.Clock.PourAtMin.V < first.Clock.PourAtMin.V {
			first = j
		}
	}
	own, others := 0, 0
	for _, w := range sheet.Warnings {
		if w.Code != "scent-fast-late" {
			continue
		}
		told := strings.Contains(strings.ToLower(w.Do), "first")
		if strings.Contains(w.Where, first.Name) {
			if own++; told {
				t.Errorf("%s is poured first and told: %s", first.Name, w.Do)
			}
			continue
		}
		if others++; !told {
			t.Errorf("%s can be poured first, and is told: %s", w.Where, w.Do)
		}
	}
	if own != 1 || others == 0 {
		t.Errorf("%d and %d jugs are warned of; want the first one and others", own, others)
	}
}
