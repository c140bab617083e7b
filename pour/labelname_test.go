package pour_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
)

// lines are the lines of a label by their texts.
func lines(l pour.LabelSheet) map[string]label.Line {
	out := map[string]label.Line{}
	for _, line := range l.Lines {
		out[line.Text] = line
	}
	return out
}

// A colourant with several numbers is listed by each of them, in equal parts that are not sure; with one, by that.
func TestAColourantIsListedByItsNumbers(t *testing.T) {
	for index, want := range map[string][]string{
		"CI 77891": {"CI 77891"}, "CI 77019, CI 77891": {"Mica", "CI 77891"}, " , ": {"coal"}, "": {"coal"},
	} {
		p, shelf := twoJugs(t)
		shelf.Colourants = append([]pour.Colourant(nil), shelf.Colourants...)
		for i := range shelf.Colourants {
			if shelf.Colourants[i].ID == "coal" {
				shelf.Colourants[i].ColourIndex, shelf.Colourants[i].MadeOf = index, nil
			}
		}
		got := lines(labelled(t, p, shelf))
		for _, text := range want {
			// 0.7310747 g of it are in a bar, as by hand in TestByHandWhatIsInABar.
			if line := got[text]; math.Abs(line.G-0.7310747/float64(len(want))) > 1e-6 || strings.Contains(line.Unverified, "taken as equal") != (len(want) > 1) {
				t.Errorf("colour index %q: %q is %+v", index, text, line)
			}
		}
	}
}

// A colourant in the whole batch is listed as in a jug.
func TestAColourantAsExtraIsListedByItsNumber(t *testing.T) {
	p, shelf := twoJugs(t)
	shelf.Colourants = append([]pour.Colourant(nil), shelf.Colourants...)
	for i := range shelf.Colourants {
		if shelf.Colourants[i].ID == "coal" {
			shelf.Colourants[i].ColourIndex, shelf.Colourants[i].MadeOf = "CI 77266", nil
		}
	}
	p.Base.Jugs[1].Colourants = nil
	p.Base.Extras = []pour.ExtraPart{{Extra: "coal", PercentOfOils: 1}}
	if line := lines(labelled(t, p, shelf))["CI 77266"]; math.Abs(line.G-1) > 1e-6 { // 1 % of a kilogram in ten bars
		t.Errorf("coal in the batch is %+v", line)
	}
}
