package pour

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/strict"
)

// By hand: 25.4 mm to the inch, 28.349523125 g to the ounce, 16 of these to the pound.
func TestFiguresAreReadAsTheyAreSaid(t *testing.T) {
	mm, in := Metric(), Avoirdupois()
	for _, c := range []struct {
		show  Show
		typed string
		unit  Unit
		want  float64
	}{
		{mm, `10"`, UnitMM, 254},
		{mm, "10 in", UnitMM, 254},
		{mm, "2.5in", UnitMM, 63.5},
		{mm, "2 1/2 in", UnitMM, 63.5},
		{mm, `3 1/4"`, UnitMM, 82.55},
		{in, "2 1/2", UnitMM, 63.5},
		{in, "1/2", UnitMM, 12.7},
		{in, "230mm", UnitMM, 230},
		{in, "23 cm", UnitMM, 230},
		{in, "2,5", UnitMM, 63.5},
		{in, "10", UnitMM, 254},
		{in, "3 1/4 inches", UnitMM, 82.55},
		{mm, "2 1/2", UnitMM, 2.5},
		{mm, "23,5 cm", UnitMM, 235},
		{in, "10 In.", UnitMM, 254},
		{in, "40g", UnitGram, 40},
		{mm, "40 g", UnitGram, 40},
		{mm, "1.5 kg", UnitGram, 1500},
		{mm, "2 oz", UnitGram, 56.69904625},
		{in, "2", UnitGram, 56.69904625},
		{mm, "1 lb 2 oz", UnitGram, 510.29141625},
		{in, "1 lb 2 oz", UnitGram, 510.29141625},
		{in, "1 lb", UnitGram, 453.59237},
		{in, "2 1/2 lb", UnitGram, 1133.980925},
		{mm, "1lb 2 1/2oz", UnitGram, 524.4661778125},
		{mm, "100 °F", UnitCelsius, 37.7777777778},
		{in, "38C", UnitCelsius, 38},
		{in, "100", UnitCelsius, 37.7777777778},
		{mm, "-5", UnitCelsius, -5},
		{in, "16 %", UnitPercent, 16},
		{in, "16", UnitPercent, 16},
		{mm, "500 ml", UnitML, 500},
	} {
		if got, err := c.show.Read(c.typed, c.unit); err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q of %s in %s is read as %v, %v; want %v", c.typed, c.unit, c.show.Length, got, err, c.want)
		}
	}
}

func TestWhatIsNoFigureOfThatKindIsRefused(t *testing.T) {
	for typed, teaches := range map[string]string{
		"": "nothing in it", "1,234": "could be 1234 or 1.234", "1.5 1/2": "only a whole number stands before a fraction", "2 3/2": "no part of one", "1/0": "no part of one",
		"40 g": "no unit of this figure", "10 furlongs": "name mm, cm or in", "10 in 3": "something stands behind", "2 1": "only digits", "in": "only digits", "1//2": "only digits", "/2": "no fraction", "-1/2": "only digits", "1e5": "no unit", "- 1/2": "only a whole number", "2..5 in": "two decimal",
	} {
		if got, err := Avoirdupois().Read(typed, UnitMM); err == nil || !strings.Contains(err.Error(), teaches) {
			t.Errorf("%q is read as %v, %v; want a refusal that says %q", typed, got, err, teaches)
		}
	}
	for typed, teaches := range map[string]string{"1.5 lb 2 oz": "are whole", "1 lb 16 oz": "0 to 16", "1 lb 2": "0 to 16", "1 lb 40 g": "0 to 16", "10 in": "name g, kg, oz or lb", "1 lb -2 oz": "0 to 16"} {
		if got, err := Metric().Read(typed, UnitGram); err == nil || !strings.Contains(err.Error(), teaches) {
			t.Errorf("%q is read as %v, %v; want a refusal that says %q", typed, got, err, teaches)
		}
	}
}

// Whatever is a number is read as that number, and whatever is refused gives none.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{"12,5", `10"`, "2 1/2 in", "1 lb 2 oz", "1.234,5", "", "9999999999999999999/3"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := Metric().Read(text, UnitMM)
		if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("%q is read as %v", text, v)
		}
		if n, plain := strict.ParseNumber(text); plain == nil && (err != nil || v != n) {
			t.Fatalf("%q is the number %v and is read as %v, %v", text, n, v, err)
		}
	})
}
