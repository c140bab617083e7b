package presets_test

import (
	"fmt"
	"strings"
	"testing"
)

// A saponification value typed in another unit, for the other alkali, or turned into KOH's twice is refused with the figure that was meant. By hand: a
// gram of NaOH does what 56.1053 ÷ 39.99677 = 1.40275 g of KOH do; olive oil is published at 184 to 196, coconut oil at 248 to 265.
func TestASlippedSaponificationValueIsToldWhatWasMeant(t *testing.T) {
	own := "[[oil]]\nid = \"my-oil\"\nname = \"my oil\"\ndensity_g_ml = 0.92\nsap_koh_mg_g = %s\n"
	oleic := own + "fatty_acids_percent = { c18_1 = 100 }\n" // triolein has 190.1
	of := func(id string) string { return "[[oil]]\nid = \"" + id + "\"\nsap_koh_mg_g = %s\n" }
	for _, c := range []struct {
		in, typed string
		want      []string // none: it is taken
	}{
		{of("olive"), "190", nil},
		{of("olive"), "180", nil}, // a certificate may say so
		{of("coconut"), "257", nil},
		{of("olive"), "0.190", []string{"looks like g KOH per g; write 190.0 mg KOH per g: published of it is 184 to 196"}},
		{of("olive"), "0.135", []string{"looks like g NaOH per g; write 189.4 mg KOH per g"}},
		{of("olive"), "0.2666", []string{"looks like g KOH per g times 1.403 again; write 190.1 mg KOH per g"}},
		{of("olive"), "135", []string{"looks like mg NaOH per g; write 189.4 mg KOH per g: published of it is 184 to 196; of a wax write kind"}},
		{of("olive"), "19", []string{"looks like g KOH per 100 g; write 190.0 mg KOH per g"}},
		{of("olive"), "13.5", []string{"looks like g NaOH per 100 g; write 189.4 mg KOH per g"}},
		{of("olive"), "190000", []string{"looks like mg KOH per kg; write 190.0 mg KOH per g"}},
		{of("olive"), "266.6", []string{"looks like mg KOH per g times 1.403 again; write 190.1 mg KOH per g: published of it is 184 to 196; of another oil write an id of its own"}},
		{of("coconut"), "183", []string{"looks like mg NaOH per g; write 256.7 mg KOH per g: published of it is 248 to 265"}},
		{of("coconut"), "360", []string{"looks like mg KOH per g times 1.403 again; write 256.6 mg KOH per g"}},
		{own, "183", nil}, // nothing says that it is coconut oil's for NaOH
		{own, "340", nil},
		{own, "0.19", []string{"is no saponification value in mg KOH per g; write 190.0 if it is g KOH per g, 266.5 if it is g NaOH per g"}},
		{own, "1.9", []string{"is lower than any triglyceride's, 159; write its saponification value in mg KOH per g; of a wax write kind"}}, // tribehenin
		{own, "400", []string{"looks like mg KOH per g times 1.403 again; write 285.2 mg KOH per g: oils have 159 to 358", `of a fatty acid write kind = "free acid" too`}},
		{own, "600", []string{"is higher than any oil's, 358"}}, // tricaprylin
		{own, "5000", []string{"is outside what can be; write a number from 1 to 800"}},
		{own, "-190", []string{"is outside what can be"}},
		{oleic, "190", nil},
		{oleic, "183", nil},
		{oleic, "266.7", []string{"looks like mg KOH per g times 1.403 again; write 190.1 mg KOH per g: its fatty acids call for 190"}},
		{own + "kind = \"wax ester\"\n", "92", nil},
		{own + "kind = \"free acid\"\n", "389", nil}, // caprylic acid
		{of("olive"), "\"190\"", []string{"a number is wanted"}},
	} {
		_, err := overlay(t, fmt.Sprintf(c.in, c.typed))
		if c.want == nil {
			if err != nil {
				t.Errorf("%s in %q: %v", c.typed, c.in, err)
			}
			continue
		}
		told := toldIn(t, err)
		for _, want := range c.want {
			if !strings.Contains(told, want) || strings.Count(told, "sap_koh_mg_g") != 1 {
				t.Errorf("%s:\n%swant\n%s", c.typed, told, want)
			}
		}
	}
}
