package pour_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
)

// small is a plan with two jugs.
func small() pour.Plan {
	p := pour.Blank()
	p.Name = "Meadow"
	p.Base = pour.BlankBatch(pour.Base)
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 40}}
	p.Base.Jugs = []pour.Jug{{Name: "pot", SharePercent: 70}, {Name: "fern", SharePercent: 30}}
	return p
}

func TestAPlanDiffersFromItselfInNothing(t *testing.T) {
	if got := pour.Differences(small(), small()); got != nil {
		t.Errorf("%v", got)
	}
}

func TestEveryDifferenceSaysWhereAndWhatStoodThere(t *testing.T) {
	p := small()
	p.Name = "Hay"
	p.Base.SuperfatPercent = 6.5
	p.Base.Oils[0].Percent, p.Base.Oils[1].Percent = 55, 45
	p.Base.Jugs[1].Held = true
	p.Base.Jugs = slices.Insert(p.Base.Jugs, 1, pour.Jug{Name: "sky", SharePercent: 0})
	p.Icing = nil
	want := []pour.Change{
		{Where: "name", Was: `"Meadow"`, Now: `"Hay"`},
		{Table: "base", Where: "base: superfat", Was: "5 %", Now: "6.5 %"},
		{Table: "base", Where: "base oil olive: part", Was: "60 %", Now: "55 %"},
		{Table: "base", Where: "base oil coconut: part", Was: "40 %", Now: "45 %"},
		{Table: "base", Where: "base jug sky: name", Was: "–", Now: `"sky"`},
		{Table: "base", Where: "base jug sky: share", Was: "–", Now: "0 %"},
		{Table: "base", Where: "base jug fern: held", Was: "–", Now: "yes"},
	}
	if d := cmp.Diff(want, pour.Differences(small(), p)); d != "" {
		t.Error(d)
	}
	gone := small()
	gone.Base.Jugs = gone.Base.Jugs[:1]
	want = []pour.Change{{Table: "base", Where: "base jug fern: name", Was: `"fern"`, Now: "–"}, {Table: "base", Where: "base jug fern: share", Was: "30 %", Now: "–"}}
	if d := cmp.Diff(want, pour.Differences(small(), gone)); d != "" {
		t.Error(d)
	}
}

func TestTwoOfOneNameAreToldApartByTheirOrder(t *testing.T) {
	twice := func(second float64) pour.Plan {
		p := small()
		p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "olive", Percent: second}}
		return p
	}
	want := []pour.Change{{Table: "base", Where: "base oil olive: part (2)", Was: "40 %", Now: "41 %"}}
	if d := cmp.Diff(want, pour.Differences(twice(40), twice(41))); d != "" {
		t.Error(d)
	}
}
