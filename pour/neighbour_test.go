package pour_test

import (
	"strings"
	"testing"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/script"
)

// beside is the demo's five jugs in a technique, mingled.
func beside(t *testing.T, technique script.Technique, order ...string) pour.Sheet {
	t.Helper()
	p, shelf := shelved(t)
	p.Icing, p.Swirl = nil, pour.Swirl{Technique: string(technique), Seed: 1}
	if len(order) > 0 {
		next, err := pour.Apply(p, shelf, pour.SetPourOrder(pour.Weigh(p, shelf), order))
		if err != nil {
			t.Fatal(err)
		}
		p = next
	}
	return mingle(p, shelf, colour.NewJudge())
}

// pair finds two jugs among the neighbours, whichever is named first.
func pair(s pour.Sheet, a, b string) (pour.Pair, bool) {
	for _, p := range s.Mingling.Pairs {
		if x, y := s.Base.Jugs[p.A].Name, s.Base.Jugs[p.B].Name; x == a && y == b || x == b && y == a {
			return p, true
		}
	}
	return pour.Pair{}, false
}

// muddied lists the pairs that a sheet warns of.
func muddied(s pour.Sheet) string {
	out := ""
	for _, w := range s.Warnings {
		if w.Code == "muddy-neighbours" {
			out += w.Text + "; "
		}
	}
	return out
}

// All contact is 100 %, the pairs with the most of it first, and each pair stands there once. A muddy one that touches is warned of.
func TestNeighboursShareOutAllContactMostFirst(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := beside(t, technique)
		sum, before := 0.0, 100.0
		seen := map[[2]int]bool{}
		for _, p := range s.Mingling.Pairs {
			if p.ContactPercent > before || seen[[2]int{p.A, p.B}] || seen[[2]int{p.B, p.A}] {
				t.Errorf("%s: %+v comes after %.2f %%", technique, p, before)
			}
			warned := strings.Contains(muddied(s), s.Base.Jugs[p.A].Name+": beside "+s.Base.Jugs[p.B].Name)
			if warned != (p.Verdict == "muddy" && p.ContactPercent >= 5) {
				t.Errorf("%s: %s along %.2f %% is warned of: %v", technique, p.Verdict, p.ContactPercent, warned)
			}
			sum, before, seen[[2]int{p.A, p.B}] = sum+p.ContactPercent, p.ContactPercent, true
		}
		equal(t, string(technique)+", all contact", sum, 100, 1e-9)
	}
}

// By hand: of layers each touches the next alone, whatever their places in the batch.
func TestLayersAreNeighboursOfTheNext(t *testing.T) {
	order := []string{"fern", "pot", "buttercup", "gentian", "poppy"}
	s := beside(t, script.Layers, order...)
	for i := range order {
		for k := i + 1; k < len(order); k++ {
			p, ok := pair(s, order[i], order[k])
			if next := k == i+1; next != (ok && p.ContactPercent > 15) || !next && p.ContactPercent > 1 {
				t.Errorf("%s and %s touch by %.1f %%", order[i], order[k], p.ContactPercent)
			}
		}
	}
}

// What the faces show is told, and not what the script guesses: a stream that dives lies where it came to rest.
func TestNeighboursAreMeasuredOnTheFaces(t *testing.T) {
	s := beside(t, script.Column)
	p, ok := pair(s, "pot", "fern") // the last ring lies in the bed's own, though many pours lie between
	guess := s.Base.Script.Contact()[0][4] * 100
	if !ok || p.ContactPercent < 5 || p.ContactPercent == guess {
		t.Errorf("pot and fern touch by %.2f %%, the script guesses %.2f", p.ContactPercent, guess)
	}
}

// Poppy and fern go khaki, gentian and buttercup brown (colour table). In a drop poppy and fern touch though a jug is poured between them;
// in a column gentian and buttercup hardly touch, and in these layers gentian lies apart from what muddies it: that is no caution.
func TestMudIsACautionWhereItReallyTouches(t *testing.T) {
	drop, column := beside(t, script.Drop), beside(t, script.Column)
	p, _ := pair(drop, "poppy", "fern")
	if p.ContactPercent < 5 || p.Verdict != "muddy" || !strings.Contains(muddied(drop), "poppy: beside fern") {
		t.Errorf("muddy along %.1f %%: said %q", p.ContactPercent, muddied(drop))
	}
	p, ok := pair(column, "gentian", "buttercup")
	if !ok || p.ContactPercent >= 5 || p.Verdict != "muddy" || strings.Contains(muddied(column), "gentian: beside buttercup") {
		t.Errorf("muddy along %.1f %%: said %q", p.ContactPercent, muddied(column))
	}
	if apart := beside(t, script.Layers, "gentian", "pot", "buttercup", "poppy", "fern"); strings.Contains(muddied(apart), "gentian") {
		t.Errorf("apart: said %q", muddied(apart))
	}
}

// Only orders that can be poured are offered: the pot first where all goes into it or onto it, and each with its own times and contact.
func TestOrdersAreThoseTheTechniqueCanPour(t *testing.T) {
	for _, technique := range []script.Technique{script.Layers, script.Drop, script.PotSpots, script.Combed} {
		p, shelf := shelved(t)
		p.Icing, p.Swirl = nil, pour.Swirl{Technique: string(technique), Seed: 1}
		for _, o := range mingle(p, shelf, colour.NewJudge()).Mingling.Orders {
			if (technique.InPot() || technique.IntoBed()) && o.Jugs[0] != 0 {
				t.Errorf("%s, %s: %v", technique, o.Kind, o.Jugs)
			}
			var names []string
			for _, j := range o.Jugs {
				names = append(names, p.Base.Jugs[j].Name)
			}
			q, err := pour.Apply(p, shelf, pour.SetPourOrder(pour.Weigh(p, shelf), names))
			if err != nil {
				t.Fatalf("%s: %s cannot be poured: %v", technique, o.Kind, err)
			}
			s := pour.Work(q, shelf, pour.Hand{})
			most := 0.0
			for _, j := range s.Base.Jugs {
				most = max(most, j.Clock.LateChancePercent.V)
			}
			equal(t, string(technique)+", "+o.Kind+", late", o.LatePercent.V, most, 1e-6)
			own := s.Mingling.Orders[0]
			equal(t, string(technique)+", "+o.Kind+", mud", o.Total, own.Total, 1e-9)
			equal(t, string(technique)+", "+o.Kind+", worst", o.Worst, own.Worst, 1e-9)
		}
	}
}

// By clock the jug whose window ends first is poured first, but for the pot that has to be.
func TestByClockTheQuickestIsPouredFirst(t *testing.T) {
	p, shelf := shelved(t)
	p.Icing, p.Swirl = nil, pour.Swirl{Technique: string(script.Layers)}
	shelf.Scents = []pour.Scent{{ID: "quick", Name: "quick", Behaviour: pour.BehaviourStrong}}
	p.Base.Scents = []pour.ScentPart{{Scent: "quick", PercentOfOils: 0.5, Into: []string{"buttercup"}}}
	s := mingle(p, shelf, colour.NewJudge())
	for _, o := range s.Mingling.Orders {
		if o.Kind == pour.OrderByClock && s.Base.Jugs[o.Jugs[0]].Name != "buttercup" {
			t.Errorf("poured in the order %v", o.Jugs)
		}
	}
}
