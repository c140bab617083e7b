package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// milky is a kilogram of oils at 5 % superfat and 33 % lye with cow's milk, 88.1 % water, at a percentage of the oils.
func milky(t testing.TB, percent float64, in string) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent = nil, 5
	p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: percent, In: in}}
	return p, shelf
}

// The NaOH of these oils and the water it wants at 33 %, by hand.
func naohAndWater() (naoh, water float64) {
	naoh = (600*olive + 400*coconut) * 0.95 * naohPerKOH
	return naoh, naoh * 67 / 33
}

func TestMilkCanBeAllOfTheLyesWater(t *testing.T) {
	naoh, water := naohAndWater()
	all := water / 0.881 / 10 // percent of a kilogram of oils
	p, shelf := milky(t, all-0.1, pour.InLye)
	s := pour.Weigh(p, shelf)
	toAdd := 0.1 / 100 * 1000 * 0.881
	equal(t, "as mixed, milk joining after the alkali", s.Base.Lye.AsMixedPercent, 100*naoh/(naoh+toAdd), 1e-6)
	w, ok := found(s, "lye-mixed-strong")
	if !ok || !strings.Contains(w.Do, "lye_water") {
		t.Errorf("nearly dry alkali is not stopped, or the way out is not told: %+v", w)
	}
	p.Base.Extras[0].In = pour.InWater
	s = pour.Weigh(p, shelf)
	equal(t, "as mixed, milk there before", s.Base.Lye.AsMixedPercent, 33, 1e-9)
	equal(t, "water to add", s.Base.Lye.WaterToAddG.V, toAdd, 1e-6)
	equal(t, "so much would be all", s.Base.Extras[0].AllPercent.V, all, 1e-6)
	if s.LyeStopped() || !s.Base.Lye.OnIce || s.Base.Heat.LyePeakC.Known {
		t.Errorf("milk as the lye's water: stopped %v, on ice %v, a peak of %v is claimed", s.LyeStopped(), s.Base.Lye.OnIce, s.Base.Heat.LyePeakC)
	}
	if w, _ = found(s, "lye-meets-milk"); !strings.Contains(w.Do, "freeze") || !strings.Contains(w.Do, "35 °C") {
		t.Errorf("how to go about it is not told: %+v", w)
	}
	if first := s.Run[0]; first.Kind != pour.TaskCoolLye {
		t.Errorf("a lye over ice is never made: the run begins with %s", first.Kind)
	}
	for _, task := range s.Run {
		if task.Kind == pour.TaskCoolLye && (task.StartMin != -30 || task.LengthMin != 30) {
			t.Errorf("over ice the lye is made at %v for %v min, want half an hour before lye-in", task.StartMin, task.LengthMin)
		}
	}
	p.Base.Extras[0].PercentOfOils = all + 0.1
	if w, ok = found(pour.Weigh(p, shelf), "lye-short-water"); !ok || !strings.Contains(w.Do, pour.Show{}.Percent(math.Floor(all*100)/100, 2)) {
		t.Errorf("too much milk is not stopped, or how much there may be is not told: %+v", w)
	}
}

// A syrup, 17.1 % water, in the lye's water: what it brings is there before the alkali, which meets no stronger lye for it.
func TestASyrupsWaterIsThereBeforeTheAlkali(t *testing.T) {
	naoh, water := naohAndWater()
	p, shelf := milky(t, 20, pour.InWater)
	p.Base.Extras[0].Extra = "honey"
	b := pour.Weigh(p, shelf).Base
	equal(t, "water to add", b.Lye.WaterToAddG.V, water-200*0.171, 1e-6)
	equal(t, "as mixed", b.Lye.AsMixedPercent, 100*naoh/(naoh+water), 1e-9)
	p.Base.Extras[0].In = pour.InLye
	equal(t, "as mixed, the syrup joining later", pour.Weigh(p, shelf).Base.Lye.AsMixedPercent, 100*naoh/(naoh+water-200*0.171), 1e-9)
}

// An acid in what is all of the water wants alkali and so more water: what the sheet says would be all of it leaves none to add.
func TestHowMuchVinegarIsAllOfTheWater(t *testing.T) {
	p, shelf := milky(t, 10, pour.InWater)
	p.Base.Extras[0].Extra = "vinegar" // 93.8 % water, 46.714 mg KOH/g
	naoh, _ := naohAndWater()
	// x g of vinegar: 0.938 x = (naoh + 0.046714 x × naohPerKOH) × 67/33
	x := naoh * 67 / 33 / (0.938 - 0.046714*naohPerKOH*67/33)
	equal(t, "vinegar as all of the water", pour.Weigh(p, shelf).Base.Extras[0].AllPercent.V, x/10, 1e-3)
}

// What the shelf says of an extra in words is what the plan does with it.
func TestExtrasJoinWhenTheShelfsOwnNoteSays(t *testing.T) {
	p, shelf := halves(t)
	for _, x := range shelf.Extras {
		p.Base.Extras = []pour.ExtraPart{{Extra: x.ID, PercentOfOils: x.DoseLowPercent}}
		line := pour.Weigh(p, shelf).Base.Extras[0]
		says := func(words ...string) bool {
			return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(x.Caution, w) })
		}
		switch {
		case x.In == pour.InOils && says("at emulsion"):
			if line.Joins != pour.JoinsEmulsion {
				t.Errorf("%s joins %s though its note says %q", x.Name, line.Joins, x.Caution)
			}
		case x.In == pour.InOils:
			if line.Joins != pour.JoinsOils {
				t.Errorf("%s joins %s", x.Name, line.Joins)
			}
		case says("before the alkali", "its own water"):
			if line.Joins != pour.JoinsBefore {
				t.Errorf("%s joins %s though its note says %q", x.Name, line.Joins, x.Caution)
			}
		case says("hot lye") && !says("never"):
			if line.Joins != pour.JoinsHot {
				t.Errorf("%s joins %s though its note says %q", x.Name, line.Joins, x.Caution)
			}
		default:
			if line.Joins == pour.JoinsBefore {
				t.Errorf("%s joins before the alkali, which its note %q does not say", x.Name, x.Caution)
			}
		}
	}
}

func TestTheLyeIsToldInTheOrderItIsMade(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent = 5
	p.Base.Extras = []pour.ExtraPart{{Extra: "sodium-lactate", PercentOfOils: 1}, {Extra: "silk", PercentOfOils: 0.1}, {Extra: "salt", PercentOfOils: 1}, {Extra: "honey", PercentOfOils: 1}}
	b := pour.Weigh(p, shelf).Base
	inOrder(t, strings.Join(b.MakeLye(p.Show), "; "), "salt into the water", "alkali into the water", "silk", "hot", "sodium lactate", "cooled")
	p.Base.Extras = append(p.Base.Extras, pour.ExtraPart{Extra: "beer", PercentOfOils: 20, In: pour.InWater})
	b = pour.Weigh(p, shelf).Base
	inOrder(t, strings.Join(b.MakeLye(p.Show), "; "), "salt into the water", "beer", "frozen", "alkali a spoonful", "35 °C")
}

func inOrder(t *testing.T, text string, words ...string) {
	t.Helper()
	rest := text
	for _, w := range words {
		_, after, ok := strings.Cut(rest, w)
		if !ok {
			t.Errorf("%q does not say %q in its place", text, w)
			return
		}
		rest = after
	}
}

func TestDosesOfExtrasAreLookedAt(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	for _, c := range []struct {
		extra   string
		percent float64
		code    string // empty: nothing is said
		words   string
	}{
		{"sugar", 2, "", ""},
		{"sugar", 12, "dose-unusual", "12.00 % of sugar of the oils is outside its usual 0.5 to 3.00 %"},
		{"salt", 1, "", ""},
		{"salt", 5, "dose-unusual", ""},
		{"salt", 50, "salt-bar", "more than the lye's water dissolves"},
		{"sodium-citrate", 20, "dose-unusual", ""},
		{"titanium-white-oil", 1, "", ""}, // 1 % of the oils is 0.7 % of the batter; usual to 1 % of that
		{"titanium-white-oil", 1.4, "", ""},
		{"titanium-white-oil", 2, "dose-unusual", "of the batter"},
		{"kaolin", 2, "", ""},
		{"kaolin", 6, "dose-unusual", "of the oils"},
	} {
		p.Base.Extras = []pour.ExtraPart{{Extra: c.extra, PercentOfOils: c.percent}}
		s := pour.Weigh(p, shelf)
		for _, code := range []string{"dose-unusual", "salt-bar"} {
			w, ok := found(s, code)
			if ok != (code == c.code) || ok && (w.Severity != pour.Note || !strings.Contains(w.Text, c.words)) {
				t.Errorf("%v %% of %s: %s: %+v", c.percent, c.extra, code, w)
			}
		}
	}
	p.Base.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: 50, In: pour.InOils}}
	if w, ok := found(pour.Weigh(p, shelf), "salt-bar"); !ok || strings.Contains(w.Text, "dissolves") || !strings.Contains(w.Do, "warm") {
		t.Errorf("salt stirred into the oils: %+v", w)
	}
	for in, said := range map[string]bool{pour.InOils: true, pour.InWater: false} {
		p.Base.Extras = []pour.ExtraPart{{Extra: "pumpkin-puree", PercentOfOils: 25, In: in}} // usual to 10 %
		if w, ok := found(pour.Weigh(p, shelf), "dose-unusual"); ok != said {
			t.Errorf("a quarter of purée in the %s: %+v", in, w)
		}
	}
}

func TestFinePowdersAmongTheExtrasAreInTheDustNote(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	for extra, dusts := range map[string]bool{"kaolin": true, "zinc-oxide": true, "mica-pearl": true, "bentonite": true, "salt": false, "honey": false, "beer": false} {
		p.Base.Extras = []pour.ExtraPart{{Extra: extra, PercentOfOils: 1}}
		s := pour.Weigh(p, shelf)
		w, ok := found(s, "dust")
		if ok != dusts || ok && !strings.Contains(w.Text, s.Base.Extras[0].Name) {
			t.Errorf("%s dusts %v: %+v", extra, dusts, w)
		}
	}
}

// Files from before lye_water keep their meaning: an extra "in the lye" joins after the alkali, whatever it is.
func TestInTheLyeStillMeansAfterTheAlkali(t *testing.T) {
	naoh, water := naohAndWater()
	for _, in := range []string{"", pour.InLye} {
		p, shelf := milky(t, 10, in)
		b := pour.Weigh(p, shelf).Base
		equal(t, "as mixed", b.Lye.AsMixedPercent, 100*naoh/(naoh+water-88.1), 1e-6)
		if b.Extras[0].Joins != pour.JoinsCooled {
			t.Errorf("milk %q joins %s", in, b.Extras[0].Joins)
		}
	}
}

// Where one thing goes with the oils, it is either stirred into them or, milk, sugar and what is mostly water, into the batter at emulsion: it is told as one of
// them and never as both, and not as part of the lye.
func TestWhatGoesWithTheOilsGoesIntoThemOrIntoTheBatter(t *testing.T) {
	for _, c := range []struct {
		id string
		at pour.Joining
	}{
		{"coconut-milk", pour.JoinsEmulsion},
		{"yoghurt", pour.JoinsEmulsion},
		{"honey", pour.JoinsEmulsion},
		{"beer", pour.JoinsEmulsion},
		{"egg-yolk", pour.JoinsEmulsion},
		{"pumpkin-puree", pour.JoinsEmulsion},
		{"kaolin", pour.JoinsOils},
		{"colloidal-oats", pour.JoinsOils},
		{"glycerin", pour.JoinsOils},
		{"salt", pour.JoinsOils},
	} {
		p, shelf := milky(t, 5, pour.InOils)
		p.Base.Extras[0].Extra = c.id
		s := pour.Weigh(p, shelf)
		x := s.Base.Extras[0]
		if x.Joins != c.at || x.InTheLye() || (s.Base.IntoOils() != "") == (s.Base.AtEmulsion() != "") || !strings.Contains(s.Base.IntoOils()+s.Base.AtEmulsion(), x.Name) {
			t.Errorf("%s joins %s: into the oils %q, at emulsion %q", c.id, x.Joins, s.Base.IntoOils(), s.Base.AtEmulsion())
		}
		for _, w := range s.Warnings {
			if c.at == pour.JoinsEmulsion && strings.HasPrefix(w.Code, "lye-meets") && strings.Contains(w.Text, "hot lye") {
				t.Errorf("%s in the batter: %s", c.id, w.Text)
			}
		}
	}
}
