package label_test

import (
	"testing"

	"pourbench/pour/label"
)

func TestNamesInTheWordsOfAMarket(t *testing.T) {
	wax := named("Beeswax", "Cera Alba", "beeswax")
	bare := label.Name{INCI: "Prunus Amygdalus Dulcis (Sweet Almond) Oil", Confidence: "read"}
	open := label.Name{INCI: "Mica (and", Confidence: "read"}
	plainOnly := label.Name{INCI: "Caramel", Plain: "Caramel", Colour: true, Confidence: "read"}
	nameless := label.Name{INCI: "Red 40", Colour: true, Confidence: "read"}
	for _, c := range []struct {
		n                                      label.Name
		eu, us, ca, au, usEnglish, auInEnglish string
	}{
		{oliveName(), "Olea Europaea Fruit Oil", "Olea Europaea (Olive) Fruit Oil", "Olea Europaea (Olive) Fruit Oil", "Olea Europaea (Olive) Fruit Oil", "olive oil", "olive oil"},
		{waterName(), "Aqua", "Water", "Aqua", "Water", "water", "water"},
		{wax, "Cera Alba", "Beeswax", "Cera Alba", "Beeswax", "beeswax", "beeswax"},
		{bare, "Prunus Amygdalus Dulcis Oil", bare.INCI, bare.INCI, bare.INCI, bare.INCI, bare.INCI},
		{open, "Mica (and", "Mica (and", "Mica (and", "Mica (and", "Mica (and", "Mica (and"},
		{whiteName(), "CI 77891", "Titanium Dioxide", "Titanium Dioxide", "CI 77891", "titanium dioxide", "CI 77891"},
		{plainOnly, "Caramel", "Caramel", "Caramel", "Caramel", "Caramel", "Caramel"},
		{nameless, "Red 40", "Red 40", "Red 40", "Red 40", "Red 40", "Red 40"},
	} {
		for _, in := range []struct {
			m       label.Market
			english bool
			want    string
		}{
			{listEU(), false, c.eu},
			{listEU(), true, c.eu},
			{listUS(), false, c.us},
			{listCA(), false, c.ca},
			{listCA(), true, c.ca},
			{listAU(), false, c.au},
			{listUS(), true, c.usEnglish},
			{listAU(), true, c.auInEnglish},
		} {
			made, err := label.Made(label.AsAdded, []label.Charge{{Kind: label.Other, Name: c.n, G: 1}}, in.m, in.english)
			if err != nil || len(made) != 1 || made[0].Text != in.want {
				t.Errorf("%s in %s, English %v: %+v, %v; want %q", c.n.INCI, in.m.ID, in.english, made, err, in.want)
			}
		}
	}
}

// Soaps and what else alkali makes keep their INCI names where English ones are asked for: makers' lists know no others.
func TestSaltsInEnglish(t *testing.T) {
	made, err := label.Made(label.AsSalts, s1(), listUS(), true)
	if err != nil {
		t.Fatal(err)
	}
	want := "Ingredients: Sodium Olivate, Sodium Cocoate, water, Sodium Shea Butterate, glycerin, Fragrance, olive oil, coconut oil, shea butter, titanium dioxide"
	if got := label.Text(label.List(made, listUS()), nil, listUS()); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}
