package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// strewn is a plan with two toppings and two embeds.
func strewn(t *testing.T) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := shelved(t)
	plan.Top = pour.Top{
		Toppings: []pour.Topping{
			{Name: "first", CoveragePercent: 8, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 60}, {Material: "coloured-sugar", Percent: 40}}},
			{Name: "second", GPerBar: 0.2, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}},
		},
		Embeds: []pour.Embed{{Name: "star", LengthMM: 12}, {Name: "moon", LengthMM: 14}},
	}
	return plan, shelf
}

func TestToppingsAndEmbedsAreAddedMovedAndTakenAway(t *testing.T) {
	plan, shelf := strewn(t)
	names := func(p pour.Plan) string {
		var all []string
		for _, x := range p.Top.Toppings {
			all = append(all, x.Name)
		}
		for _, x := range p.Top.Embeds {
			all = append(all, x.Name)
		}
		return strings.Join(all, " ")
	}
	for _, c := range []struct {
		what string
		edit pour.Edit
		want string
	}{
		{"a new topping", pour.AddTopping(pour.Topping{Name: "third", Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}}), "first second third star moon"},
		{"a topping later", pour.MoveTopping(0, 1), "second first star moon"},
		{"a topping gone", pour.RemoveTopping(0), "second star moon"},
		{"a new embed", pour.AddEmbed(pour.Embed{Name: "sun", LengthMM: 9}), "first second star moon sun"},
		{"an embed earlier", pour.MoveEmbed(1, -1), "first second moon star"},
		{"an embed gone", pour.RemoveEmbed(1), "first second star"},
	} {
		next, err := pour.Apply(plan, shelf, c.edit)
		if err != nil || names(next) != c.want {
			t.Errorf("%s: %q, %v; want %q", c.what, names(next), err, c.want)
		}
		if names(plan) != "first second star moon" {
			t.Fatalf("%s changed the plan it was given: %q", c.what, names(plan))
		}
	}
}

func TestThePartsOfAToppingAlwaysSumToAHundred(t *testing.T) {
	plan, shelf := strewn(t)
	percents := func(p pour.Plan) (all []float64) {
		for _, x := range p.Top.Toppings[0].Parts {
			all = append(all, x.Percent)
		}
		return all
	}
	for _, c := range []struct {
		what string
		edit pour.Edit
		want []float64
	}{
		{"one is set", pour.SetToppingPart(0, 0, 75), []float64{75, 25}},
		{"one goes", pour.RemoveToppingPart(0, 0), []float64{100}},
		{"one is swapped", pour.SwapToppingPart(0, 1, "nonpareils"), []float64{60, 40}},
	} {
		next, err := pour.Apply(plan, shelf, c.edit)
		if err != nil || !slices.Equal(percents(next), c.want) {
			t.Errorf("%s: %v, %v; want %v", c.what, percents(next), err, c.want)
		}
	}
	next, err := pour.Apply(plan, shelf, pour.AddToppingPart(1, "coloured-sugar"))
	if parts := next.Top.Toppings[1].Parts; err != nil || len(parts) != 2 || parts[0].Percent != 50 || parts[1].Percent != 50 {
		t.Errorf("a part is mixed in: %v, %v", parts, err)
	}
}

func TestEditsOfTheTopThatCannotBeSayWhy(t *testing.T) {
	plan, shelf := strewn(t)
	for want, edit := range map[string]pour.Edit{
		"remove the topping": pour.RemoveToppingPart(1, 0),
		"in it already":      pour.AddToppingPart(0, "sanding-sugar"),
		"there are 2":        pour.RemoveTopping(7),
		"there are 1":        pour.SetToppingPart(1, 3, 10),
		"write a number":     pour.SetToppingPart(0, 0, 130),
		"nothing can give":   pour.SetToppingPart(1, 0, 50),
		"the end already":    pour.MoveEmbed(0, -1),
	} {
		if _, err := pour.Apply(plan, shelf, edit); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q, got %v", want, err)
		}
	}
}
