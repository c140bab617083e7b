package pour_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
)

// editRow is an edit of the example and the same change made by hand.
type editRow struct {
	what string
	edit pour.Edit
	hand func(p *pour.Plan)
}

// An edit changes what it says and nothing else.
func TestEditsChangeWhatTheySayAndNothingElse(t *testing.T) {
	demo, shelf := shelved(t)
	demo.Run.Order = []string{"base colour gentian", "base pour fern", "icing pipe sky"}
	demo.Swirl.First, demo.Swirl.Last = "pot", "fern"
	for _, r := range append(planEdits(shelf), batchEdits(shelf)...) {
		got, err := pour.Apply(demo, shelf, r.edit)
		if err != nil {
			t.Errorf("%s: %v", r.what, err)
			continue
		}
		want := demo.Clone()
		r.hand(&want)
		if d := cmp.Diff(want.Clone(), got); d != "" {
			t.Errorf("%s: %s", r.what, d)
		}
	}
}

func planEdits(shelf pour.Shelf) []editRow {
	return []editRow{
		{"name", pour.SetName("other"), func(p *pour.Plan) { p.Name = "other" }},
		{"notes", pour.SetNotes("other"), func(p *pour.Plan) { p.Notes = "other" }},
		{"mould", pour.UseMould(shelf.Moulds[0]), func(p *pour.Plan) {
			loss := p.Mould.LossPercent
			p.Mould = shelf.Moulds[0].Mould
			p.Mould.LossPercent = loss
		}},
		{"technique", func(p pour.Plan) (pour.Plan, error) {
			p.Swirl.Passes, p.Swirl.Turns, p.Swirl.HeightMM = 3, 2, 90
			return pour.SetTechnique("pot")(p)
		}, func(p *pour.Plan) {
			p.Swirl.Technique, p.Swirl.Passes, p.Swirl.Turns, p.Swirl.HeightMM = "pot", 0, 0, 0
		}},
		{"seed", pour.Reseed(99), func(p *pour.Plan) { p.Swirl.Seed = 99 }},
		{"passes", pour.SetPasses(4), func(p *pour.Plan) { p.Swirl.Passes = 4 }},
		{"first", pour.PinFirst("poppy"), func(p *pour.Plan) { p.Swirl.First = "poppy" }},
		{"last", pour.PinLast("poppy"), func(p *pour.Plan) { p.Swirl.Last = "poppy" }},
		{"pot between", pour.PotBetween(true), func(p *pour.Plan) { p.Swirl.PotBetween = true }},
		{"no icing", pour.RemoveIcing(), func(p *pour.Plan) { p.Icing = nil }},
		{"number", pour.SetNumber("icing.superfat_percent", 7), func(p *pour.Plan) { p.Icing.SuperfatPercent = 7 }},
		{"word", pour.SetWord("bed.keep", pour.BedChill), func(p *pour.Plan) { p.Bed.Keep = pour.BedChill }},
		{"measured batter", pour.SetNumber("base.batter_c", 38), func(p *pour.Plan) { p.Base.BatterC, p.Base.BatterMeasured = 38, true }},
		{"rename", pour.RenameJug(pour.Base, 4, "moss"), func(p *pour.Plan) {
			p.Base.Jugs[4].Name, p.Swirl.Last = "moss", "moss"
			p.Base.Scents[0].Into[1], p.Run.Order[1] = "moss", "base pour moss"
		}},
		{"rename in the icing", pour.RenameJug(pour.Icing, 1, "fern"), func(p *pour.Plan) { p.Icing.Jugs[1].Name, p.Run.Order[2] = "fern", "icing pipe fern" }},
	}
}

func batchEdits(shelf pour.Shelf) []editRow {
	gold, _ := by(shelf.Colourants, func(c pour.Colourant) bool { return c.ID == "mica-gold" })
	return []editRow{
		{"bursts", pour.SetBursts(pour.Base, []pour.Burst{{AtMin: 1, S: 5}}), func(p *pour.Plan) { p.Base.Blend = []pour.Burst{{AtMin: 1, S: 5}} }},
		{"capacity", pour.SetCapacity(pour.Base, 1, 700), func(p *pour.Plan) { p.Base.Jugs[1].CapacityML = 700 }},
		{"batter colour", pour.SetBatterColour(pour.Base, 2, "#a0B1c2"), func(p *pour.Plan) { p.Base.Jugs[2].BatterColour = "#a0B1c2" }},
		{"hold", pour.HoldShare(pour.Icing, 1, true), func(p *pour.Plan) { p.Icing.Jugs[1].Held = true }},
		{"dose", pour.SetDose(pour.Base, 1, 0, 0.8), func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].DosePercent = 0.8 }},
		{"carrier parts", pour.SetCarrierParts(pour.Base, 1, 0, 4), func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].CarrierParts = 4 }},
		{"another colour", pour.SetColourant(pour.Base, 1, 1, gold), func(p *pour.Plan) {
			p.Base.Jugs[1].BatterColour = "" // it was seen without
			p.Base.Jugs[1].Colourants = append(p.Base.Jugs[1].Colourants,
				pour.Dose{Colourant: gold.ID, DosePercent: (gold.DoseLowPercent + gold.DoseHighPercent) / 2, CarrierParts: gold.CarrierParts})
		}},
		{"colour in its place", pour.SetColourant(pour.Base, 1, 0, gold), func(p *pour.Plan) { // 0.45 % is a usual dose of it too
			p.Base.Jugs[1].BatterColour = ""
			p.Base.Jugs[1].Colourants[0] = pour.Dose{Colourant: gold.ID, DosePercent: 0.45, CarrierParts: gold.CarrierParts}
		}},
		{"colour at another dose", func(p pour.Plan) (pour.Plan, error) {
			p.Base.Jugs[1].Colourants[0].DosePercent = gold.DoseHighPercent + 0.01
			return pour.SetColourant(pour.Base, 1, 0, gold)(p)
		}, func(p *pour.Plan) {
			p.Base.Jugs[1].BatterColour = ""
			p.Base.Jugs[1].Colourants[0] = pour.Dose{Colourant: gold.ID, DosePercent: (gold.DoseLowPercent + gold.DoseHighPercent) / 2, CarrierParts: gold.CarrierParts}
		}},
		{"no colour", pour.RemoveColourant(pour.Base, 1, 0), func(p *pour.Plan) { p.Base.Jugs[1].Colourants, p.Base.Jugs[1].BatterColour = nil, "" }},
		{"move", pour.MoveJug(pour.Base, 1, 3), func(p *pour.Plan) {
			j := p.Base.Jugs
			j[1], j[2], j[3] = j[2], j[3], j[1]
		}},
		{"swap oil", pour.SwapOil(pour.Base, 2, "grapeseed"), func(p *pour.Plan) { p.Base.Oils[2].Oil = "grapeseed" }},
		{"extra", pour.AddExtra(pour.Icing, "sugar", 1), func(p *pour.Plan) { p.Icing.Extras = []pour.ExtraPart{{Extra: "sugar", PercentOfOils: 1}} }},
		{"more extra", pour.SetExtra(pour.Base, 0, 2), func(p *pour.Plan) { p.Base.Extras[0].PercentOfOils = 2 }},
		{"no extra", pour.RemoveExtra(pour.Base, 0), func(p *pour.Plan) { p.Base.Extras = nil }},
		{"scent", pour.AddScent(pour.Icing, "tarn-mint", 1, []string{"sky"}), func(p *pour.Plan) {
			p.Icing.Scents = []pour.ScentPart{{Scent: "tarn-mint", PercentOfOils: 1, Into: []string{"sky"}, AtMin: p.Icing.SplitAtMin}}
		}},
		{"load", pour.SetScentLoad(pour.Base, 1, 2), func(p *pour.Plan) { p.Base.Scents[1].PercentOfOils = 2 }},
		{"scent's minute", pour.SetScentAt(pour.Base, 1, 7), func(p *pour.Plan) { p.Base.Scents[1].AtMin = 7 }},
		{"swap scent", pour.SwapScent(pour.Base, 1, "tarn-mint"), func(p *pour.Plan) { p.Base.Scents[1].Scent = "tarn-mint" }},
		{"into a jug", pour.ToggleScentJug(pour.Base, 0, "gentian"), func(p *pour.Plan) { p.Base.Scents[0].Into = []string{"pot", "gentian", "fern"} }},
		{"out of a jug", pour.ToggleScentJug(pour.Base, 0, "fern"), func(p *pour.Plan) { p.Base.Scents[0].Into = []string{"pot"} }},
		{"no scent", pour.RemoveScent(pour.Base, 0), func(p *pour.Plan) { p.Base.Scents = p.Base.Scents[1:] }},
	}
}

// Whatever gives way does so in proportion, and the whole stays a hundred.
func TestWhatGivesWayDoesSoInProportion(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 50}, {Oil: "coconut", Percent: 30}, {Oil: "shea", Percent: 20}}
	p.Base.CarrierOil = ""
	for what, c := range map[string]struct {
		edit pour.Edit
		want []float64
	}{
		"set":        {pour.SetOilPercent(pour.Base, 1, 65), []float64{25, 65, 10}},
		"add":        {pour.AddOil(pour.Base, "castor"), []float64{50, 30, 20, 0}},
		"remove":     {pour.RemoveOil(pour.Base, 1), []float64{500. / 7, 200. / 7}},
		"all of it":  {pour.SetOilPercent(pour.Base, 0, 100), []float64{100, 0, 0}},
		"none of it": {pour.SetOilPercent(pour.Base, 0, 0), []float64{0, 60, 40}},
	} {
		q, err := pour.Apply(p, shelf, c.edit)
		if err != nil || len(q.Base.Oils) != len(c.want) {
			t.Errorf("%s: %v, %v", what, q.Base.Oils, err)
			continue
		}
		for i, want := range c.want {
			equal(t, what, q.Base.Oils[i].Percent, want, 1e-9)
		}
	}
	q, err := pour.Apply(p, shelf, pour.SetOilPercent(pour.Base, 0, 100))
	if err == nil {
		q, err = pour.Apply(q, shelf, pour.SetOilPercent(pour.Base, 0, 80)) // the others have nothing: they share alike
	}
	if err != nil || q.Base.Oils[1].Percent != 10 || q.Base.Oils[2].Percent != 10 {
		t.Errorf("from nothing: %v, %v", q.Base.Oils, err)
	}
}

func TestEditsThatCannotBeAreRefusedWithTheirReason(t *testing.T) {
	demo, shelf := shelved(t)
	single := demo.Clone()
	single.Base.Jugs, single.Base.Oils, single.Base.Scents = single.Base.Jugs[:1], single.Base.Oils[:1], nil
	single.Base.Jugs[0].SharePercent, single.Base.Oils[0].Percent, single.Icing = 100, 100, nil
	gold := shelf.Colourants[0]
	for _, c := range []struct {
		p    pour.Plan
		edit pour.Edit
		says string
	}{
		{demo, pour.AddIcing(), "the plan has one"},
		{single, pour.RemoveIcing(), "the plan has none"},
		{single, pour.SetShare(pour.Icing, 0, 50), "add an icing first"},
		{single, pour.RenameJug(pour.Icing, 0, "x"), "this plan has none"},
		{single, pour.RemoveJug(pour.Base, 0), "needs its pot"},
		{single, pour.RemoveOil(pour.Base, 0), "needs one"},
		{demo, pour.RemoveOil(pour.Base, 6), "change oil 7: there are 6"},
		{demo, pour.SwapOil(pour.Base, -1, "olive"), "change oil 0"},
		{demo, pour.SetShare(pour.Base, 5, 50), "change jug 6: there are 5"},
		{demo, pour.SetShare(pour.Base, 0, 100.5), "from 0 to 100"},
		{demo, pour.SetShare(pour.Base, 0, -0.5), "from 0 to 100"},
		{demo, pour.AddJug(pour.Base, 5, ""), "change jug 6"},
		{demo, pour.RenameJug(pour.Base, 5, "x"), "change jug 6"},
		{demo, pour.RenameJug(pour.Base, 1, "poppy"), "two jugs"},
		{demo, pour.MoveJug(pour.Base, 0, -1), "at the end already"},
		{demo, pour.MoveJug(pour.Base, 4, 5), "at the end already"},
		{demo, pour.SetDose(pour.Base, 1, 1, 1), "choose its colourant first"},
		{demo, pour.RemoveColourant(pour.Base, 1, 1), "change colourant 2: there are 1"},
		{demo, pour.SetColourant(pour.Base, 1, 2, gold), "no place 3"},
		{demo, pour.SetColourant(pour.Base, 1, -1, gold), "no place 0"},
		{demo, pour.SetExtra(pour.Base, 1, 1), "change extra 2"},
		{demo, pour.RemoveExtra(pour.Base, 1), "change extra 2"},
		{demo, pour.SetScentLoad(pour.Base, 2, 1), "change scent 3"},
		{demo, pour.RemoveScent(pour.Base, 2), "change scent 3"},
		{demo, pour.ToggleScentJug(pour.Base, 1, "poppy"), "remove the scent instead"},
		{demo, pour.ToggleScentJug(pour.Base, 1, "sky"), "no jug of the base"},
		{demo, pour.SetNumber("base.nothing", 1), "no such number"},
		{demo, pour.SetNumber("bed.keep", 1), "no such number"},
		{demo, pour.SetWord("base.oils_g", "mould"), "no such word"},
		{demo, pour.PinLast("sky"), "no jug of the base"},
	} {
		p, err := pour.Apply(c.p, shelf, c.edit)
		if err == nil || !strings.Contains(err.Error(), c.says) || cmp.Diff(c.p, p) != "" {
			t.Errorf("want %q: %v; %s", c.says, err, cmp.Diff(c.p, p))
		}
	}
}

// A new icing leans on the base: its oils and temperatures, one white jug, 30 g on each bar, after the base.
func TestANewIcingLeansOnTheBase(t *testing.T) {
	demo, shelf := shelved(t)
	demo.Icing = nil
	p, err := pour.Apply(demo, shelf, pour.AddIcing())
	if err != nil {
		t.Fatal(err)
	}
	want := demo.Base.Clone()
	want.Size, want.PerBarG, want.LossPercent, want.StartAtMin = pour.SizeBar, 30, 8, 25
	want.Jugs, want.Extras, want.Scents = []pour.Jug{{Name: "icing", SharePercent: 100}}, nil, nil
	if d := cmp.Diff(want.Clone(), *p.Icing); d != "" {
		t.Error(d)
	}
	demo.Icing = p.Icing
	if d := cmp.Diff(demo, p); d != "" {
		t.Errorf("beside the icing: %s", d)
	}
}

// A new jug takes half of the pot's share, at most an equal part, from all; a name that is taken gets a number.
func TestANewJugTakesItsShareFromAll(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Scents = []pour.ScentPart{{Scent: "meadow-hay", PercentOfOils: 1, Into: []string{"coal"}}, {Scent: "alp-rose", PercentOfOils: 1, Into: []string{"plain", "coal"}}}
	q, err := pour.Apply(p, shelf, pour.AddJug(pour.Base, 0, "coal"))
	if err != nil || q.Base.Jugs[1].Name != "coal 2" {
		t.Fatalf("%v, %v", q.Base.Jugs, err)
	}
	for i, want := range []float64{37.5, 25, 37.5} { // half of 50 is less than a third of a hundred
		equal(t, q.Base.Jugs[i].Name, q.Base.Jugs[i].SharePercent, want, 1e-9)
	}
	q.Base.Jugs[0].Held = true
	q, err = pour.Apply(q, shelf, pour.RemoveJug(pour.Base, 2))
	if err != nil || len(q.Base.Jugs) != 2 || q.Base.Jugs[0].SharePercent != 37.5 || q.Base.Jugs[1].SharePercent != 62.5 {
		t.Errorf("without coal, the pot held: %v, %v", q.Base.Jugs, err)
	}
	want := []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 1, Into: []string{"plain"}}} // the other had no jug but this
	if d := cmp.Diff(want, q.Base.Scents); d != "" {
		t.Error(d)
	}
}
