package pour

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/pour/strict"
)

// measures is how many of the plan's unit are in each that a maker may name beside a figure of it, by the words it goes by.
func measures(u Unit) map[string]float64 {
	out := map[string]float64{strings.ToLower(string(u)): 1}
	add := func(per float64, words ...string) {
		for _, w := range words {
			out[w] = per
		}
	}
	switch u {
	case UnitGram:
		add(1, "gram", "grams")
		add(1000, "kg")
		add(gramsPerOunce, "oz", "ounce", "ounces")
		add(ouncesPerPound*gramsPerOunce, "lb", "lbs", "pound", "pounds")
	case UnitMM:
		add(10, "cm")
		add(mmPerInch, "in", "inch", "inches", `"`, "″", "”")
	}
	return out
}

// ouncesPerPound is by definition.
const ouncesPerPound = 16

// parted is a figure as it is said: a number, a fraction behind it, and the words behind both.
func parted(typed string) (number, fraction, words string) {
	const digits = "0123456789"
	text := strings.TrimSpace(typed)
	rest := strings.TrimLeft(text, "+-.,"+digits)
	number = text[:len(text)-len(rest)]
	if strings.HasPrefix(rest, "/") {
		number, rest = "", number+rest
	}
	rest = strings.TrimSpace(rest)
	if words = strings.TrimLeft(rest, digits+"/"); len(words) < len(rest) {
		fraction = rest[:len(rest)-len(words)]
		if strings.Count(fraction, "/") != 1 { // two numbers
			return typed, "", ""
		}
	}
	if number == "" && fraction == "" { // no figure at all
		return typed, "", ""
	}
	return number, fraction, strings.TrimSpace(words)
}

// Read reads a figure of the plan as a maker says it: a number in the unit that is shown, or with its unit behind it, as in 10", 2.5in or 40 g; with a
// fraction, as in 2 1/2; pounds and ounces, as in 1 lb 2 oz. What could be read in two ways is refused. It gives the plan's unit.
func (s Show) Read(typed string, u Unit) (float64, error) {
	number, fraction, words := parted(typed)
	v, err := counted(typed, number, fraction)
	if err != nil {
		return 0, err
	}
	if words == "" || words == "%" {
		return s.FromUnit(v, u), nil
	}
	word, behind, _ := strings.Cut(strings.ToLower(words), " ")
	word = strings.TrimSuffix(word, ".")
	if u == UnitCelsius {
		return degrees(typed, v, strings.TrimPrefix(word, "°"), behind)
	}
	per, ok := measures(u)[word]
	switch {
	case !ok:
		return 0, fmt.Errorf("read %q: %q is no unit of this figure; type the number alone, in %s%s", typed, word, s.unitOf(u), named(u))
	case behind == "" && !math.IsInf(v*per, 0):
		return v * per, nil
	case per != ouncesPerPound*gramsPerOunce:
		return 0, fmt.Errorf("read %q: something stands behind its unit; type one figure, as in 2.5 %s", typed, word)
	}
	if v != float64(int(v)) {
		return 0, fmt.Errorf("read %q: pounds with ounces behind them are whole, as in 1 lb 2 oz", typed)
	}
	oz, err := Show{Mass: MassOunce}.Read(behind, u)
	switch {
	case err != nil:
		return 0, err
	case !strings.Contains(behind, "o") || oz < 0 || oz >= per:
		return 0, fmt.Errorf("read %q: behind whole pounds stand 0 to 16 ounces, as in 1 lb 2 oz", typed)
	}
	return v*per + oz, nil
}

// counted is a number with the fraction behind it.
func counted(typed, number, fraction string) (float64, error) {
	if fraction == "" {
		return strict.ParseNumber(number)
	}
	over, under, _ := strings.Cut(fraction, "/")
	a, notA := strconv.Atoi(over)
	b, notB := strconv.Atoi(under)
	switch {
	case notA != nil || notB != nil:
		return 0, fmt.Errorf("read %q: %s is no fraction; type it as in 2 1/2", typed, fraction)
	case strings.Trim(number, "0123456789") != "":
		return 0, fmt.Errorf("read %q: only a whole number stands before a fraction, as in 2 1/2", typed)
	case b == 0 || a >= b:
		return 0, fmt.Errorf("read %q: %s is no part of one; type it as in 2 1/2, or with a point", typed, fraction)
	case number == "":
		return float64(a) / float64(b), nil
	}
	whole, err := strict.ParseNumber(number)
	return whole + float64(a)/float64(b), err
}

// degrees is a temperature whose unit is named.
func degrees(typed string, v float64, word, behind string) (float64, error) {
	switch {
	case behind != "":
	case word == "c":
		return v, nil
	case word == "f":
		return Show{Temperature: DegreesF}.FromUnit(v, UnitCelsius), nil
	}
	return 0, fmt.Errorf("read %q: type °C or °F behind the number, or the number alone", typed)
}

// unitOf names the unit in which a figure of the plan is shown.
func (s Show) unitOf(u Unit) string {
	_, unit := s.ToUnit(0, u)
	return unit
}

// named says which units can be named beside a figure.
func named(u Unit) string {
	switch u {
	case UnitGram:
		return ", or name g, kg, oz or lb"
	case UnitMM:
		return ", or name mm, cm or in"
	}
	return ""
}
