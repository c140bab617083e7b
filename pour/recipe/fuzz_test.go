package recipe_test

import (
	"math"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/recipe"
)

// Whatever is pasted, nothing panics, nothing unsafe is kept, every part is a number from a line that says so, and what is taken gives a plan that
// can be worked out or kept, or is refused.
func FuzzRead(f *testing.F) {
	s := shelf(f)
	for _, seed := range []string{
		"olive oil 35 %\ncoconut 25 %\nwater 300 g", "olive\t350 g\r\nshea,2 oz\x00\x1b[31m", "olive 1e999 %\nolive NaN %", "½ lb olive", "-\n1. \n- 5", "olive 99999999999999999999999999999999999999 g",
		"olive\u2028coconut 5 %", "olive ١٢ %", "1 lb 4 oz palm\n3 % 5 g palm kernel", strings.Repeat("olive 1 %\n", 500), "\u202eolive 5 %", "olive 5 %" + strings.Repeat("x", 1000), "°", "5°", "%", "g", "5g", "olive 0 g",
	} {
		f.Add(seed)
	}
	plan := pour.Blank()
	plan.Name, plan.Mould, plan.Swirl.Technique = "x", s.Moulds[0].Mould, "drop"
	plan.Base.Jugs = []pour.Jug{{Name: "pot", SharePercent: 100}}
	plan.Base.Oils = []pour.OilPart{{Oil: "lard", Percent: 100}}
	f.Fuzz(func(t *testing.T, text string) {
		r := recipe.Read(text, s)
		if len(r.Lines) > 200 || math.IsNaN(r.OilsG) || math.IsInf(r.OilsG, 0) || r.OilsG < 0 {
			t.Fatalf("%d lines, %v g", len(r.Lines), r.OilsG)
		}
		for _, l := range r.Lines {
			if !utf8.ValidString(l.Text+l.Why) || strings.ContainsFunc(l.Text+l.Why, func(c rune) bool { return unicode.IsControl(c) || c >= 0x202a && c <= 0x202e }) {
				t.Fatalf("unsafe: %q, %q", l.Text, l.Why)
			}
			if l.Kind == recipe.Taken && (!(l.Percent >= 0) || l.Percent > 100 || !strings.ContainsAny(l.Text, "0123456789")) {
				t.Fatalf("%q gives %v %%", l.Text, l.Percent)
			}
			for _, name := range l.Near {
				_ = l.Renamed(name)
			}
		}
		next, err := pour.Apply(plan, s, r.Edit(pour.Base))
		if err == nil && len(next.Check(s)) > 0 {
			t.Fatal("a plan with a fault was taken")
		}
	})
}
