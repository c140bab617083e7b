package pour_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/pourtest"
)

// Whatever embeds a plan has, each of their figures comes out of its account again, and so does what they change of the base and the list.
func TestEveryFigureOfEmbedsIsToldTruly(t *testing.T) {
	demo, shelf := shelved(t)
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(pourtest.Rich(t, demo, shelf), shelf)
		if len(s.Embeds) == 0 {
			return
		}
		for _, path := range s.Explained() {
			if !strings.HasPrefix(path, "embed") && !strings.HasPrefix(path, "totals") && path != "base.height_mm" && path != "base.oils_g" {
				continue
			}
			a, err := s.Explain(path, shelf, pour.Hand{})
			if err != nil {
				t.Fatal(err)
			}
			if seen++; a.Value.Known {
				checkAccount(t, s.Plan.Name, a)
			} else if a.Absent == "" {
				t.Errorf("%s is unknown for no reason", path)
			}
		}
	})
	if seen < 20 {
		t.Errorf("only %d figures of embeds were told", seen)
	}
}
