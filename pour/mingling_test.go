package pour_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/colour"
	"pourbench/pour"
)

func mingle(p pour.Plan, shelf pour.Shelf, judge *colour.Judge) pour.Sheet {
	return pour.Weigh(p, shelf).Time(shelf, pour.Hand{}).Mingle(shelf, pour.Hand{}, judge)
}

func TestTheOrderByColourIsNeverMuddierThanTheMakersOwn(t *testing.T) {
	demo, shelf := shelved(t)
	judge := colour.NewJudge()
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t, demo, shelf)
		plan.Swirl.PotBetween = rapid.Bool().Draw(t, "between")
		plan.Swirl.Technique = rapid.SampledFrom([]string{"drop", "pot"}).Draw(t, "technique")
		look := mingle(plan, shelf, judge).Mingling
		if !look.Known || len(look.Orders) < 2 {
			t.Fatalf("no orders to choose from: %+v", look)
		}
		own := look.Orders[0]
		for _, o := range look.Orders {
			if sorted := slices.Sorted(slices.Values(o.Jugs)); sorted[0] != 0 || sorted[len(sorted)-1] != len(plan.Base.Jugs)-1 || len(sorted) != len(plan.Base.Jugs) {
				t.Fatalf("%s is no order of the jugs: %v", o.Kind, o.Jugs)
			}
			if o.Kind == pour.OrderByColour && own.Jugs[0] == o.Jugs[0] && (o.Worst > own.Worst+1e-9 || math.Abs(o.Worst-own.Worst) < 1e-9 && o.Total > own.Total+1e-9) {
				t.Fatalf("by colour %v is muddier than %v", o, own)
			}
		}
	})
}

// The mixtures shown between two jugs are those of their parts: mixed again here from the jugs' own colours, as the plan foresees them.
func TestTheMixturesOfAPairAreThoseOfItsParts(t *testing.T) {
	plan, shelf := shelved(t)
	sheet := mingle(plan, shelf, colour.NewJudge())
	if len(sheet.Mingling.Pairs) < 4 {
		t.Fatalf("only %d pairs", len(sheet.Mingling.Pairs))
	}
	paint := func(jug int) colour.Paint {
		c, err := colour.ParseHex(sheet.Base.Jugs[jug].Colour.Hex)
		if err != nil {
			t.Fatal(err)
		}
		p, err := colour.NewPaint(c, sheet.Base.Jugs[jug].WhitePercent)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	for _, p := range sheet.Mingling.Pairs {
		for i, part := range p.Parts {
			mixed, err := colour.Mix([]colour.Paint{paint(p.A), paint(p.B)}, []float64{1 - part, part})
			if err != nil {
				t.Fatal(err)
			}
			want, err := colour.ParseHex(p.Swatches[i])
			if err != nil {
				t.Fatal(err)
			}
			if part <= 0 || part >= 1 || mixed.RGB().Hex() != want.Hex() {
				t.Errorf("%d beside %d, %g of the second: %s, mixed again %s", p.A, p.B, part, p.Swatches[i], mixed.RGB().Hex())
			}
		}
	}
}

func TestATechniqueThatPoursIntoThePotPoursItFirst(t *testing.T) {
	plan, shelf := shelved(t)
	for _, o := range mingle(plan, shelf, colour.NewJudge()).Mingling.Orders[1:] {
		if o.Jugs[0] != 0 {
			t.Errorf("%s drops the colours before there is a pot to drop them into: %v", o.Kind, o.Jugs)
		}
	}
}

func TestPinnedJugsStayAtTheirEnds(t *testing.T) {
	plan, shelf := shelved(t)
	plan.Swirl.First, plan.Swirl.Last = "fern", "pot"
	for _, o := range mingle(plan, shelf, colour.NewJudge()).Mingling.Orders[1:] {
		if o.Jugs[0] != 4 || o.Jugs[len(o.Jugs)-1] != 0 {
			t.Errorf("%s pours %v, want fern first and the pot last", o.Kind, o.Jugs)
		}
	}
}

func TestAChosenOrderIsTheOnePoured(t *testing.T) {
	plan, shelf := shelved(t)
	sheet := pour.Weigh(plan, shelf)
	names := []string{"poppy", "fern", "pot", "gentian", "buttercup"}
	plan, err := pour.Apply(plan, shelf, pour.SetPourOrder(sheet, names))
	if err != nil {
		t.Fatal(err)
	}
	sheet = pour.Weigh(plan, shelf)
	for i, j := range sheet.PourOrder() {
		if sheet.Base.Jugs[j].Name != names[i] {
			t.Errorf("poured %d: %s, want %s", i, sheet.Base.Jugs[j].Name, names[i])
		}
	}
}

func TestVanillinBrownsOnlyItsOwnJug(t *testing.T) {
	plan, shelf := shelved(t)
	plan, err := pour.Apply(plan, shelf, pour.AddScent(pour.Base, "warm-milk-vanilla", 2, []string{"gentian"}))
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range mingle(plan, shelf, colour.NewJudge()).Base.Jugs {
		hasVanillin := slices.ContainsFunc(j.Scents, func(x pour.ScentGrams) bool {
			sc, _ := shelf.Scent(x.ID)
			return sc.VanillinPercent > 0
		})
		if (j.Colour.WeeksHex != "") != hasVanillin {
			t.Errorf("%s: colour after some weeks %q, vanillin %v", j.Name, j.Colour.WeeksHex, hasVanillin)
		}
	}
}

func BenchmarkMingleDemo(b *testing.B) {
	plan, shelf := shelved(b)
	judge := colour.NewJudge()
	sheet := pour.Weigh(plan, shelf).Time(shelf, pour.Hand{})
	for b.Loop() {
		_ = sheet.Mingle(shelf, pour.Hand{}, judge)
	}
}
