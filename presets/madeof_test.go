package presets_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// made is what an entry of the shelf is made of.
type made struct {
	id    string
	parts []pour.Ingredient
}

func allMade(s pour.Shelf) []made {
	var out []made
	for _, x := range s.Extras {
		out = append(out, made{"extra " + x.ID, x.MadeOf})
	}
	for _, c := range s.Colourants {
		out = append(out, made{"colourant " + c.ID, c.MadeOf})
	}
	for _, m := range s.Toppings {
		out = append(out, made{"topping " + m.ID, m.MadeOf})
	}
	return out
}

// nobodys are the words for what only a packet can name.
func nobodys() []string { return []string{"colours as on the packet", "Sodium soaps"} }

func TestWhatThingsAreMadeOfSumsToThem(t *testing.T) {
	for _, m := range allMade(shelf(t)) {
		sum := 0.0
		for _, p := range m.parts {
			sum += p.Percent
		}
		if len(m.parts) > 0 && math.Abs(sum-100) > 1e-9 {
			t.Errorf("%s: the parts sum to %v", m.id, sum)
		}
	}
}

// Whatever a list can come to has a name that was looked up or is remembered, but for what only a packet can name.
func TestWhatThingsAreMadeOfHasNames(t *testing.T) {
	s := shelf(t)
	named := func(id, text string) {
		t.Helper()
		if n := s.LabelName(text); n.Confidence == "" && !slices.Contains(nobodys(), text) {
			t.Errorf("%s: %q is no name on the shelf", id, text)
		}
	}
	for _, m := range allMade(s) {
		for _, p := range m.parts {
			named(m.id, p.Name)
		}
	}
	for _, c := range s.Colourants {
		for _, number := range strings.Split(c.ColourIndex, ", ") {
			if len(c.MadeOf) == 0 {
				named(c.ID, number)
			}
		}
	}
	for _, x := range s.Extras {
		if len(x.MadeOf) == 0 {
			t.Errorf("%s is made of nothing", x.ID)
		}
	}
	for _, m := range s.Toppings {
		for _, text := range m.Ingredients {
			named(m.ID, text)
		}
	}
}

// The water of what is split into water and the rest is that which the lye counts.
func TestWaterOfExtrasIsTheSameInTheList(t *testing.T) {
	s := shelf(t)
	for _, x := range s.Extras {
		for _, p := range x.MadeOf {
			if s.LabelName(p.Name).INCI == "Water" && p.Percent != x.WaterPercent {
				t.Errorf("%s: %g %% water in the list, %g %% in the lye", x.ID, p.Percent, x.WaterPercent)
			}
		}
	}
	x, _ := s.Extra("sodium-lactate") // 60 %, by its name
	if len(x.MadeOf) != 2 || x.MadeOf[0] != (pour.Ingredient{Name: "Sodium Lactate", Percent: 60}) || x.MadeOf[1] != (pour.Ingredient{Name: "Aqua", Percent: 40}) {
		t.Errorf("sodium lactate solution is %+v", x.MadeOf)
	}
}

// What a topping is made of with shares is what it says of itself without.
func TestToppingsAreMadeOfWhatTheyList(t *testing.T) {
	s := shelf(t)
	for _, m := range s.Toppings {
		has := map[string]bool{}
		for _, text := range m.Ingredients {
			has[s.LabelName(text).INCI+s.LabelName(text).Plain] = true
		}
		if len(m.MadeOf) == 0 {
			continue
		}
		for _, p := range m.MadeOf {
			n := s.LabelName(p.Name)
			if !has[n.INCI+n.Plain] {
				t.Errorf("%s: %q is not in its list", m.ID, p.Name)
			}
			delete(has, n.INCI+n.Plain)
			if p.Doubt == "" {
				t.Errorf("%s: its shares are from memory and not doubted", m.ID)
			}
		}
		if gone := m.ID == "mica-spray"; len(has) > 0 != gone { // its alcohol evaporates
			t.Errorf("%s: not in its parts: %v", m.ID, has)
		}
	}
}

func part(name string, percent float64, doubt string) pour.Ingredient {
	return pour.Ingredient{Name: name, Percent: percent, Doubt: doubt}
}

// ownExtra is what an extra of a shelf file is made of.
func ownExtra(t *testing.T, keys string) ([]pour.Ingredient, error) {
	t.Helper()
	s, err := overlay(t, "[[extra]]\nid = \"mine\"\nname = \"my mix\"\n"+keys)
	x, _ := s.Extra("mine")
	return x.MadeOf, err
}

func TestSharesThatAreLeftOutAreEqualPartsOfTheRest(t *testing.T) {
	const equal, own, off = "how much of each part my mix holds is not stated: taken as equal", "ask", "the parts of my mix sum to 80 %: taken in proportion"
	for keys, want := range map[string][]pour.Ingredient{
		`made_of = [{ name = "A" }]`:                                                         {{Name: "A", Percent: 100}},
		`made_of = [{ name = "A", percent = 70 }, { name = "B" }]`:                           {{Name: "A", Percent: 70}, {Name: "B", Percent: 30}},
		`made_of = [{ name = "A", percent = 40 }, { name = "B" }, { name = "C" }]`:           {part("A", 40, equal), part("B", 30, equal), part("C", 30, equal)},
		`made_of = [{ name = "A", percent = 60 }, { name = "B", percent = 20 }]`:             {part("A", 75, off), part("B", 25, off)},
		`made_of = [{ name = "A", percent = 50 }, { name = "B", percent = 50 }]`:             {{Name: "A", Percent: 50}, {Name: "B", Percent: 50}},
		"made_of = [{ name = \"A\" }, { name = \"B\" }]\nmade_of_doubt = \"ask\"":            {part("A", 50, own), part("B", 50, own)},
		"made_of = [{ name = \"A\", percent = 100 }]\nmade_of_doubt = \"\"\nwater_percent=3": {{Name: "A", Percent: 100}},
	} {
		got, err := ownExtra(t, keys)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%s: %+v, %v; want %+v", keys, got, err, want)
		}
	}
	for keys, want := range map[string]string{
		`made_of = [{ percent = 3 }]`:                                           "lacks its name",
		`made_of = [{ name = "A", percent = 100 }, { name = "B" }]`:             "1 of them without a share",
		`made_of = [{ name = "A", percent = 0 }]`:                               "sum to 0 %",
		`made_of = [{ name = "A", percent = 101 }]`:                             "101",
		`made_of = [{ name = "A", percent = nan }]`:                             "percent",
		`made_of = [{ name = "A", part = 1 }]`:                                  "part",
		`made_of = "A"`:                                                         "list of tables",
		`made_of = [{ name = "` + strings.Repeat("A", 121) + `", percent = 1}]`: "120",
	} {
		if _, err := ownExtra(t, keys); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want a word of %q", keys, err, want)
		}
	}
}

// What was said of other ingredients does not outlive them.
func TestOwnIngredientsTakeTheShelfsPartsAway(t *testing.T) {
	s, err := overlay(t, `
[[topping]]
id = "nonpareils"
ingredients = ["Sucrose", "Rice Starch"]
[[colourant]]
id = "mica-blue"
colour_index = "CI 77019, CI 77007"
[[extra]]
id = "sodium-lactate"
water_percent = 50
`)
	if err != nil {
		t.Fatal(err)
	}
	if m, _ := s.Topping("nonpareils"); len(m.MadeOf) > 0 {
		t.Errorf("nonpareils are still %+v", m.MadeOf)
	}
	if c, _ := s.Colourant("mica-blue"); len(c.MadeOf) > 0 {
		t.Errorf("blue mica is still %+v", c.MadeOf)
	}
	if x, _ := s.Extra("sodium-lactate"); len(x.MadeOf) != 2 || x.MadeOf[0].Doubt == "" {
		t.Errorf("a solution of another strength is %+v, undoubted", x.MadeOf)
	}
	if x, _ := shelf(t).Extra("sodium-lactate"); x.MadeOf[0].Doubt != "" {
		t.Error("the base shelf changed too")
	}
}
