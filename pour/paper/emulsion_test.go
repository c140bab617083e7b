package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// inOrder says which of some words does not come after the ones before it; "" where all do.
func inOrder(text string, words ...string) string {
	for _, want := range words {
		_, after, ok := strings.Cut(text, want)
		if !ok {
			return want
		}
		text = after
	}
	return ""
}

// Milk that goes in with the oils is weighed after they are melted clear, and both papers have one act that adds it: after the lye and the blending, at
// emulsion, before the split. Clay goes into the clear oils before the lye. Neither is called what hot lye scorches.
func TestMilkInTheOilsGoesIntoTheBatterAtEmulsion(t *testing.T) {
	p := testPlan()
	p.Base.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: 10, In: pour.InOils}, {Extra: "clay", PercentOfOils: 1, In: pour.InOils}}
	p.Icing = nil
	s := work(p)
	milk, clay := s.Plan.Show.Dose(s.Base.Extras[0].G), s.Plan.Show.Dose(s.Base.Extras[1].G)
	full, bench := flat(print(p)), flat(Bench(s, testShelf(), false))
	if miss := inOrder(full, "WEIGH THE OILS", "Warm gently until clear", "white clay, for the oils "+clay, "goat's milk, kept cool for the batter at emulsion "+milk, "WEIGH AND MAKE THE LYE",
		"white clay into the clear oils", "lye into the oils, through the strainer", "at emulsion, no oil streaks left, before the split: goat's milk", "split; no oil streaks left"); miss != "" {
		t.Errorf("the full paper lacks %q in its place:\n%s", miss, full)
	}
	if miss := inOrder(bench, "all oils, then warmed", "white clay, for the oils "+clay, "goat's milk, kept cool for the batter at emulsion "+milk, "white clay into the clear oils", "lye into the oils, strained",
		"at emulsion, no oil streaks left, before the split: goat's milk", "split, no oil streaks left"); miss != "" {
		t.Errorf("the bench paper lacks %q in its place:\n%s", miss, bench)
	}
	for name, text := range map[string]string{"full": full, "bench": bench} {
		if strings.Contains(text, "in hot lye") || !strings.Contains(strings.ToLower(text), "stir it in cool, at emulsion") {
			t.Errorf("the %s paper warns of hot lye, or does not say how: %s", name, text)
		}
		if n := strings.Count(text, "heats the batter and the loaf, and browns"); n != 1 {
			t.Errorf("the %s paper says %d times what milk does", name, n)
		}
	}
	lye := flat(between(t, print(p), " WEIGH AND MAKE THE LYE", "WEIGH AND WET"))
	if strings.Contains(lye, "goat's milk") {
		t.Errorf("milk for the batter stands where the lye is made: %s", lye)
	}
}

// What changes how much is weighed is on the bench paper: an icing sized by the bar that is not what its shape comes to.
func TestTheBenchPaperSaysThatTheIcingIsNotWhatItsShapeTakes(t *testing.T) {
	p := testPlan()
	p.Piping = pour.Piping{Shape: pour.PipeRosette, Tip: pour.TipStar, Points: 6, TipMM: 7, ValleyMM: 4.8, OverlapPercent: 20, CoilMM: 6, PerBar: 2, BagG: 250, ResiduePercent: 7, LeastG: 1}
	p.Icing.Size, p.Icing.PerBarG = pour.SizeBar, 25
	s := work(p)
	for _, w := range s.Warnings {
		if w.Code == "icing-mismatch" {
			if text := flat(Bench(s, testShelf(), false)); !strings.Contains(text, flat(plain(w.Text))) {
				t.Errorf("it does not say that %s:\n%s", w.Text, text)
			}
			return
		}
	}
	t.Fatal("nothing is said of the icing")
}
