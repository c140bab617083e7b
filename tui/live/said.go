package live

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
)

// saidFields is the most words a weight is said in: 1 lb 2 oz.
const saidFields = 4

// saidWeight reads a weight that is said in more than a number and its unit, "3 5/8 oz" or "1 lb 2 oz", and gives what stands behind it. Read as a
// number, all behind its first word would be a lot, and the weight another.
func saidWeight(typed string, show pour.Show) (out typedMeasure, behind string, ok bool) {
	fields := strings.Fields(typed)
	for n := min(saidFields, len(fields)); n > 0; n-- {
		said := strings.ToLower(strings.Join(fields[:n], " "))
		if !kitchenFraction(fields[:n]) && !strings.Contains(said, "lb") && !strings.Contains(said, "pound") {
			continue
		}
		v, err := show.Read(said, pour.UnitGram)
		if err != nil {
			continue
		}
		_, asked := show.ToUnit(0, pour.UnitGram)
		plain := !slices.ContainsFunc(fields[:n], func(f string) bool { return strings.ContainsFunc(f, isLetter) })
		if plain {
			said += " " + asked
		}
		return typedMeasure{v: v, number: said, plain: plain}, strings.Join(fields[n:], " "), true
	}
	return typedMeasure{}, "", false
}

// isLetter says whether a rune may begin a unit.
func isLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }

// kitchenFraction says whether a word is a part that scales and cups are marked in; 12/26 is a lot or a month.
func kitchenFraction(fields []string) bool {
	return slices.ContainsFunc(fields, func(f string) bool {
		_, under, ok := strings.Cut(strings.TrimRightFunc(f, isLetter), "/")
		return ok && slices.Contains([]string{"2", "3", "4", "8", "16"}, under)
	})
}

// lotNotWeight refuses a lot, typed without the word before it, that holds a unit of weight: it is a part of the weight that was not understood.
func lotNotWeight(lot string) error {
	for _, word := range strings.Fields(lot) {
		at := strings.TrimLeft(strings.ToLower(strings.TrimSuffix(word, ".")), "0123456789.,/")
		if _, named := unitOf(pour.UnitGram, at); named || slices.Contains([]string{"lb", "lbs", "pound", "pounds"}, at) {
			return fmt.Errorf("%q stands behind the number and names a unit; type the weight as one figure, as in 3.625 oz, and a lot behind the word lot", lot)
		}
	}
	return nil
}
