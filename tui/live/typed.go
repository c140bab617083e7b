package live

import (
	"fmt"
	"strings"
	"unicode"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// typedMeasure is what was typed of a thing.
type typedMeasure struct {
	v      float64 // in the plan's unit
	number string  // as it was typed, with the unit it was meant in
	plain  bool    // in the unit that is asked for
	lot    string
}

// readMeasure reads "36,5", "355.9 g" or "381.5 lot L77": a number, its unit where it is named (a weight as it is said too, see [saidWeight]), and of a weight the lot, with or without the
// word before it. What is meant as a unit is never taken for a lot; a lot that is called like one is typed with the word.
func readMeasure(typed string, unit pour.Unit, show pour.Show) (typedMeasure, error) {
	out, behind, said := saidWeight(typed, show)
	if !said || unit != pour.UnitGram {
		var err error
		if out, behind, err = readNumber(typed, unit, show); err != nil {
			return typedMeasure{}, err
		}
	}
	lot, err := lotOf(strings.TrimSpace(behind))
	if err == nil && unit == pour.UnitGram && lot == strings.TrimSpace(behind) {
		err = lotNotWeight(lot)
	}
	if err != nil {
		return typedMeasure{}, fmt.Errorf("read %q: %w", typed, err)
	}
	out.lot = lot
	if out.lot != "" && unit == pour.UnitCelsius {
		return typedMeasure{}, fmt.Errorf("read %q: %q is no unit of a temperature; type °C, °F or the number alone", typed, out.lot)
	}
	return out, nil
}

// readNumber reads a number with its unit, where it is named, and gives what stands behind both.
func readNumber(typed string, unit pour.Unit, show pour.Show) (out typedMeasure, behind string, err error) {
	number, rest := splitUnit(typed, unit)
	v, err := strict.ParseNumber(number)
	if err != nil {
		return typedMeasure{}, "", err
	}
	_, asked := show.ToUnit(0, unit)
	word, behind, _ := strings.Cut(rest, " ")
	in, named := unitOf(unit, word)
	if !named {
		in, behind = asked, rest
	}
	return typedMeasure{v: fromUnit(v, in, unit), number: number + " " + in, plain: in == asked}, behind, nil
}

// splitUnit parts a number from what stands behind it: a blank or, glued to it, its unit. What else is glued to it stays, to be refused whole.
func splitUnit(typed string, unit pour.Unit) (number, rest string) {
	fields := strings.Fields(typed)
	if len(fields) == 0 {
		return "", ""
	}
	rest = strings.Join(fields[1:], " ")
	i := strings.IndexFunc(fields[0], func(r rune) bool { return r == '°' || unicode.IsLetter(r) })
	if i <= 0 {
		return fields[0], rest
	}
	if _, named := unitOf(unit, fields[0][i:]); !named {
		return fields[0], rest
	}
	return fields[0][:i], strings.TrimSpace(fields[0][i:] + " " + rest)
}

// unitOf is the unit that a word means, as it is drawn.
func unitOf(unit pour.Unit, word string) (in string, named bool) {
	switch word = strings.ToLower(strings.TrimSuffix(word, ".")); unit {
	case pour.UnitGram:
		in = map[string]string{"g": "g", "gr": "g", "gram": "g", "grams": "g", "kg": "kg", "oz": "oz", "ounce": "oz", "ounces": "oz"}[word]
	case pour.UnitCelsius:
		in = map[string]string{"c": "°C", "°c": "°C", "f": "°F", "°f": "°F"}[word]
	}
	return in, in != ""
}

// fromUnit turns a number in a unit that was named into the plan's.
func fromUnit(v float64, in string, unit pour.Unit) float64 {
	switch in {
	case "kg":
		return v * 1000
	case "oz":
		return pour.Show{Mass: pour.MassOunce}.FromUnit(v, unit)
	case "°F":
		return pour.Show{Temperature: pour.DegreesF}.FromUnit(v, unit)
	}
	return v
}

// lotOf reads "lot OLV-77", "lot: OLV-77" or "OLV-77" as the lot.
func lotOf(text string) (string, error) {
	word, behind, _ := strings.Cut(text, " ")
	if before, glued, ok := strings.Cut(word, ":"); ok && strings.EqualFold(before, "lot") {
		word, behind = before, strings.TrimSpace(glued+" "+behind)
	}
	if !strings.EqualFold(word, "lot") {
		return text, nil
	}
	if behind = strings.TrimSpace(behind); behind == "" {
		return "", fmt.Errorf("nothing stands behind %q; type the lot's number there", word)
	}
	return behind, nil
}
