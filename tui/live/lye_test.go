package live

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// brewed opens a run of the meadow plan with other extras in its base.
func brewed(t *testing.T, change func(*pour.Plan)) *kitchen {
	t.Helper()
	return opened(t, t.TempDir(), func(o *Options) {
		plan := o.Sheet.Plan.Clone()
		change(&plan)
		o.Sheet = pour.Work(plan, o.Shelf, pour.Hand{})
	})
}

func TestTheLiveRunMakesTheLyeBeforeItCools(t *testing.T) {
	b := brewed(t, func(p *pour.Plan) {
		p.Base.Extras = []pour.ExtraPart{{Extra: "sodium-lactate", PercentOfOils: 1}, {Extra: "salt", PercentOfOils: 1}}
	})
	b.shows("step 1 of", "Salt into the water, stirred until dissolved; alkali into the")
	b.until("base make the lye")
	b.shows("Let the lye cool to")
}

func TestTheLiveRunTellsAMilkLyeAtTheSmallestScreen(t *testing.T) {
	b := brewed(t, func(p *pour.Plan) {
		p.Base.Extras = []pour.ExtraPart{{Extra: "goat-milk", PercentOfOils: 25, In: pour.InWater}, {Extra: "salt", PercentOfOils: 1}}
	})
	b.size(80, 24)
	words := strings.Join(strings.Fields(b.frame()), " ")
	for _, want := range []string{"Salt into the water, stirred until dissolved", "goat milk, frozen or ice-cold, in a jug in ice water", "alkali a spoonful at a time, under 35 °C"} {
		if !strings.Contains(words, want) {
			t.Errorf("the screen lacks %q:\n%s", want, b.frame())
		}
	}
}
