package label_test

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour/label"
)

func plainEntry(text string, g float64) label.Entry {
	return label.Entry{Name: label.Name{INCI: text, Confidence: "read"}, Text: text, G: g, Class: label.Plain}
}

func colourEntry(inci, plain string, g float64) label.Entry {
	return label.Entry{Name: label.Name{INCI: inci, Plain: plain, Colour: true, Confidence: "read"}, Text: inci, G: g, Class: label.Colourant}
}

func texts(lines []label.Line) string {
	var of []string
	for _, l := range lines {
		of = append(of, l.Text)
	}
	return strings.Join(of, ", ")
}

// At exactly 1 % the EU keeps the order ("below 1 %", read 2nd-hand), Canada ("1 % or less", s. 21.4(2), read) and the US (701.3(f), memory) do not.
func TestExactlyOnePercentInTheEUAndInCanada(t *testing.T) {
	for _, c := range []struct {
		m    label.Market
		g    float64
		free bool
	}{
		{listEU(), 1, false},
		{listEU(), 0.9999, true},
		{listEU(), 1.0001, false},
		{listGB(), 1, false},
		{listAU(), 1, false},
		{listCA(), 1, true},
		{listCA(), 0.9999, true},
		{listCA(), 1.0001, false},
		{listUS(), 1, true},
		{listUS(), 1.0001, false},
		{label.Market{}, 0.001, false},
	} {
		got := label.List([]label.Entry{plainEntry("a", 100-c.g), plainEntry("b", c.g)}, c.m)
		if got[1].Free != c.free || got[0].Free {
			t.Errorf("%v %% in %s: free %v", got[1].Percent, c.m.ID, got[1].Free)
		}
	}
	// 0.29 of 29 g come out under 1 % and 0.07 of 7 g above it, by binary rounding alone.
	for _, m := range listed() {
		for of, g := range map[float64]float64{28.71: 0.29, 6.93: 0.07} {
			if got := label.List([]label.Entry{plainEntry("a", of), plainEntry("b", g)}, m); got[1].Free != m.FreeAt {
				t.Errorf("%v g and %v g in %s: %v %% is free: %v", of, g, m.ID, got[1].Percent, got[1].Free)
			}
		}
	}
	// So is 0.1 ten times.
	for _, m := range []label.Market{listEU(), listCA()} {
		tenths := []label.Entry{plainEntry("a", 99)}
		for range 10 {
			tenths = append(tenths, plainEntry("b", 0.1))
		}
		if got := label.List(tenths, m); got[1].Free != m.FreeAt {
			t.Errorf("1 %% out of tenths is free in %s: %v", m.ID, got[1].Free)
		}
	}
}

func TestColourantsStandLastByTheirNumber(t *testing.T) {
	entries := []label.Entry{
		colourEntry("Spirulina", "", 9), colourEntry("Titanium Dioxide", "CI 77891", 30), colourEntry("Iron Oxides", "CI 77491", 1), plainEntry("a", 2),
		colourEntry("Beta-Carotene", "CI 40800", 0.1), colourEntry("Caramel", "Caramel", 20), colourEntry("Lamp Black", "CI 77268:1", 3), plainEntry("b", 1),
	}
	want := "a, b, Beta-Carotene, Lamp Black, Iron Oxides, Titanium Dioxide, Caramel, Spirulina"
	for _, m := range listed() {
		if got := texts(label.List(entries, m)); got != want {
			t.Errorf("%s: %s", m.ID, got)
		}
	}
	for _, l := range label.List(entries, listEU()) {
		if l.Class == label.Colourant && l.Free {
			t.Errorf("%s is called free, where all colourants are", l.Text)
		}
	}
}

func TestScentInItsPlaceOrLast(t *testing.T) {
	scent := label.Entry{Name: label.Name{INCI: "Parfum"}, Text: "Parfum", G: 5, Class: label.Perfume}
	entries := []label.Entry{plainEntry("a", 50), plainEntry("b", 2), scent, colourEntry("Red", "CI 1", 9), {Text: "balance", G: 70, Class: label.Unlisted}}
	if got := texts(label.List(entries, listEU())); got != "a, Parfum, b, Red, balance" {
		t.Errorf("EU: %s", got)
	}
	if got := texts(label.List(entries, listCA())); got != "a, b, Red, Parfum, balance" {
		t.Errorf("Canada: %s", got)
	}
}

// Equal masses, and such as differ by rounding alone, stand by the alphabet, in whatever order they come.
func TestEqualMassesDoNotJump(t *testing.T) {
	third := 1.0 / 3
	for _, entries := range [][]label.Entry{
		{plainEntry("a", 0.3), plainEntry("b", 0.1+0.2), plainEntry("c", third*0.9)},
		{plainEntry("c", third*0.9), plainEntry("b", 0.1), plainEntry("a", 0.3), plainEntry("b", 0.2)},
	} {
		if got := texts(label.List(entries, listEU())); got != "a, b, c" {
			t.Error(got)
		}
	}
	if got := texts(label.List([]label.Entry{plainEntry("a", 10), plainEntry("b", 10.0001)}, listEU())); got != "b, a" {
		t.Errorf("a difference that is one: %s", got)
	}
}

// Two things of one text are one line, told by the less sure of their names.
func TestOneTextIsOneLine(t *testing.T) {
	unsure, memory := plainEntry("Aqua", 4), plainEntry("aqua", 3)
	unsure.Unverified, unsure.Name.Confidence = "not looked up", ""
	memory.Name.Confidence = "memory"
	for _, order := range [][]label.Entry{{plainEntry("Aqua", 1), memory, unsure}, {unsure, plainEntry("Aqua", 1), memory}} {
		got := label.List(order, listEU())
		if len(got) != 1 || got[0].G != 8 || got[0].Percent != 100 || got[0].Unverified != "not looked up" || got[0].Name.Confidence != "" {
			t.Errorf("%+v", got)
		}
	}
	if got := label.List([]label.Entry{plainEntry("Aqua", 1), memory}, listEU()); got[0].Name.Confidence != "memory" {
		t.Errorf("read and memory is %q", got[0].Name.Confidence)
	}
	both := colourEntry("Zinc Oxide", "CI 77947", 1)
	if got := label.List([]label.Entry{both, plainEntry("Zinc Oxide", 1)}, listEU()); len(got) != 1 || got[0].Class != label.Plain {
		t.Errorf("what is a colourant and something else: %+v", got)
	}
	if got := label.List(nil, listEU()); len(got) != 0 {
		t.Errorf("nothing lists %+v", got)
	}
}

// An allergen that is an ingredient by itself is said once, where it stands by mass.
func TestAnAllergenIsSaidOnce(t *testing.T) {
	got := label.List([]label.Entry{plainEntry("Aqua", 9), plainEntry("Benzyl Alcohol", 1)}, listEU())
	found := []label.Found{{Name: "Linalool", Named: true}, {Name: "benzyl alcohol", Named: true}, {Name: "Farnesol", Prohibited: true}}
	want := "Ingredients: Aqua, Benzyl Alcohol, Linalool"
	if text := label.Text(got, found, listEU()); text != want {
		t.Errorf("%s", text)
	}
	headless := listEU()
	headless.Heading = ""
	if text := label.Text(got, nil, headless); text != "Aqua, Benzyl Alcohol" {
		t.Errorf("without a heading: %q", text)
	}
}

func ExampleList() {
	for _, l := range label.List([]label.Entry{
		{Text: "CI 77891", G: 4, Class: label.Colourant}, {Text: "Aqua", G: 20}, {Text: "Glycerin", G: 75.5}, {Text: "Aqua", G: 0.5},
	}, label.Market{FreePercent: 1}) {
		fmt.Printf("%s %.1f %%\n", l.Text, l.Percent)
	}
	// Output:
	// Glycerin 75.5 %
	// Aqua 20.5 %
	// CI 77891 4.0 %
}
