package pour

import (
	"fmt"
	"slices"

	"pourbench/pour/strict"
)

// When a topping goes on.
const (
	StrewWet  = "wet"   // on the fresh top, right after the icing
	StrewSkin = "skin"  // when the top has skinned but is tacky
	StrewCut  = "cut"   // after the cut
	StrewCure = "cured" // on the cured bar
)

// Top is what goes onto and into the poured loaf.
type Top struct {
	Toppings []Topping
	Embeds   []Embed
}

// clone returns a copy that shares nothing with t.
func (t Top) clone() Top {
	t.Toppings = append([]Topping(nil), t.Toppings...)
	for i := range t.Toppings {
		t.Toppings[i].Parts = append([]ToppingPart(nil), t.Toppings[i].Parts...)
	}
	t.Embeds = append([]Embed(nil), t.Embeds...)
	for i := range t.Embeds {
		t.Embeds[i].AtMM = append([]float64(nil), t.Embeds[i].AtMM...)
		t.Embeds[i].Corners = append([]float64(nil), t.Embeds[i].Corners...)
		t.Embeds[i].MadeOf = append([]MadeOf(nil), t.Embeds[i].MadeOf...)
	}
	return t
}

// Topping is what is sprinkled, dusted, sprayed or drizzled on the top; they go on in the order of the list.
type Topping struct {
	Name            string        // what it is called; empty: as its first material
	GPerBar         float64       // on every bar; 0: CoveragePercent counts
	CoveragePercent float64       // of the bar's top that its grains hide; both 0: as the shelf says is usual of its first material
	When            string        // one of the Strew… words; empty: as the shelf says of its first material
	HandsMin        float64       // to put it on the whole loaf; 0: estimated from the shelf's seconds for a bar
	Parts           []ToppingPart // what it is mixed of
}

// ToppingPart is one material of a topping.
type ToppingPart struct {
	Material string  // id on the shelf
	Percent  float64 // of the topping by mass; the parts of a topping sum to 100
}

func topLists(t *Top) []Field {
	return []Field{
		{Key: "topping", Label: "toppings", Need: Quiet, High: maxParts, At: &t.Toppings, Means: "sprinkled, dusted, sprayed or drizzled on, in this order"},
		{Key: "embed", Label: "embeds", Need: Quiet, High: maxParts, At: &t.Embeds, Means: "pieces set into the top"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (t *Topping) Fields() []Field {
	return []Field{
		{Key: "name", Label: "name", Need: Quiet, High: 40, At: &t.Name, Means: "what it is called; left out: as its first material"},
		{Key: "g_per_bar", Label: "on each bar", Need: Quiet, Unit: UnitGram, High: 500, Step: 0.05, At: &t.GPerBar, Means: "grams on every bar; 0: coverage_percent counts"},
		{Key: "coverage_percent", Label: "covers", Need: Quiet, Unit: UnitPercent, High: 100, Step: 1, At: &t.CoveragePercent, Means: "of the bar's top that its grains hide; both 0: as the shelf says is usual"},
		{Key: "when", Label: "goes on", Need: Quiet, Takes: TakesWord, Words: StrewWet + " " + StrewSkin + " " + StrewCut + " " + StrewCure, At: &t.When, Means: "on the wet top, on a tacky skin, after the cut, on the cured bar; left out: as the shelf says"},
		{Key: "hands_min", Label: "takes", Need: Quiet, Unit: UnitMinute, High: 120, Step: 0.5, At: &t.HandsMin, Means: "to put it on the whole loaf; 0: estimated"},
		{Key: "part", Label: "made of", Need: Quiet, High: maxParts, At: &t.Parts, Means: "what it is mixed of; its percentages sum to 100"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (t *ToppingPart) Fields() []Field {
	return []Field{
		{Key: "material", Label: "material", Need: Required, Takes: TakesTopping, At: &t.Material, Means: "what it is"},
		{Key: "percent", Label: "part", Need: Required, Unit: UnitPercent, High: 100, Step: 1, At: &t.Percent, Means: "of the topping by mass"},
	}
}

// toppings checks what hangs together in the toppings.
func (c *checker) toppings(list []Topping) {
	for i, t := range list {
		at := fmt.Sprintf("top.topping[%d].part", i)
		if len(t.Parts) == 0 {
			c.add(at, "", "the topping is made of nothing", "add at least one [[top.topping.part]] with material and percent")
			continue
		}
		sum := 0.0
		for k, part := range t.Parts {
			if slices.ContainsFunc(t.Parts[:k], func(before ToppingPart) bool { return before.Material == part.Material }) {
				c.add(fmt.Sprintf("%s[%d].material", at, k), strict.Quote(part.Material), "stands in the topping twice", "add the two percentages up")
			}
			sum += part.Percent
		}
		c.hundred(at, "the parts of the topping sum", sum, "make the percentages sum to 100")
	}
}
