package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

func TestAStopOnTheLyeHidesEveryLyeAmount(t *testing.T) {
	for what, spoil := range map[string]func(*pour.Plan){
		"lye-heavy":   func(p *pour.Plan) { p.Base.SuperfatPercent = -3 },
		"too strong":  func(p *pour.Plan) { p.Icing.LyeConcentrationPercent = 55 },
		"short stock": func(p *pour.Plan) { p.Base.StockLyePercent, p.Base.LyeConcentrationPercent = 30, 40 },
		"short of water, with KOH": func(p *pour.Plan) {
			p.Base.KOHSharePercent, p.Base.Extras[0] = 10, pour.ExtraPart{Extra: "milk", PercentOfOils: 45}
		},
	} {
		p := testPlan()
		p.Show.ScaleStepG, p.Show.LyeStepG = 0.001, 0.001 // so that no two figures look alike by chance
		spoil(&p)
		s := work(p)
		if !s.LyeStopped() {
			t.Fatalf("%s: no stop stands on the lye", what)
		}
		for _, text := range everyPaper(p) {
			text = flat(text)
			if !strings.Contains(text, "DO NOT MIX") {
				t.Errorf("%s: the paper does not say DO NOT MIX", what)
			}
			for _, w := range s.Warnings {
				if w.Severity == pour.Stop && !strings.Contains(text, flat(plain(sentence(w.Told())))) {
					t.Errorf("%s: the reason %q is not on the paper", what, w.Text)
				}
			}
			for _, figure := range lyeFigures(s) {
				if strings.Contains(text, " "+figure) {
					t.Errorf("%s: %s is on the paper", what, figure)
				}
			}
		}
	}
}

// lyeFigures draws every mass of alkali, stock and lye water of a sheet, and those they could be reckoned back from, on both scales.
func lyeFigures(s pour.Sheet) []string {
	masses := []float64{s.Bars.CutG, s.Bars.CuredG}
	for _, b := range s.Batches() {
		masses = append(masses, b.Lye.NaOH.PureG, b.Lye.KOH.PureG, b.Lye.NaOH.WeighedG, b.Lye.KOH.WeighedG, b.Lye.NaOH.ToWeighG, b.Lye.KOH.ToWeighG, b.Lye.Stock.WeighedG, b.Lye.Stock.ToWeighG,
			b.Lye.WaterToAddG.V, b.Lye.AllWaterG, b.Size.BatterG, b.Size.BatterWeighG)
		for _, x := range b.Extras {
			if x.In == pour.InLye {
				masses = append(masses, x.G)
			}
		}
	}
	for _, w := range s.Totals {
		if w.Kind == pour.WeighAlkali || w.Kind == pour.WeighWater {
			masses = append(masses, w.G)
		}
	}
	var out []string
	for _, g := range masses {
		if g > 0 {
			out = append(out, s.Plan.Show.Weight(g), s.Plan.Show.Dose(g))
		}
	}
	return out
}

func TestLyeAmountsAreOnThePaperWhenNoStopStandsOnThem(t *testing.T) {
	s := work(testPlan())
	text := flat(Checklist(s, testShelf()))
	for _, want := range []string{s.Plan.Show.Dose(s.Base.Lye.NaOH.ToWeighG), s.Plan.Show.Weight(s.Base.Lye.WaterToAddG.V)} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not on the paper", want)
		}
	}
	if strings.Contains(text, "DO NOT MIX") {
		t.Error("a sound plan says DO NOT MIX")
	}
}

func TestAStopThatIsNotOnTheLyeLeavesTheLyeButSaysStop(t *testing.T) {
	p := testPlan()
	p.Base.Scents[0].Scent = "clove"
	s := work(p)
	if s.Worst() != pour.Stop || s.LyeStopped() {
		t.Fatal("the plan should carry a stop that is not on the lye")
	}
	for _, text := range everyPaper(p) {
		stopsButHoldsTheLye(t, s, flat(text))
	}
}

func stopsButHoldsTheLye(t *testing.T, s pour.Sheet, text string) {
	t.Helper()
	if !strings.Contains(text, "STOP. Put this right before you pour.") || !strings.Contains(text, s.Plan.Show.Dose(s.Base.Lye.NaOH.ToWeighG)) {
		t.Error("the paper should say STOP and still hold the lye")
	}
}

func TestAPlanThatCannotBeWorkedOutGivesItsFaultsAndNoFigures(t *testing.T) {
	p := testPlan()
	p.Base.Oils = nil
	for _, text := range everyPaper(p) {
		text = flat(text)
		for _, want := range []string{"DO NOT MIX", "blend is empty"} {
			if !strings.Contains(text, want) {
				t.Errorf("the paper lacks %q", want)
			}
		}
		if !strings.Contains(strings.ToLower(text), "nothing to weigh") || strings.Contains(text, "GATHER") || strings.Contains(text, " g ") || strings.Contains(text, "JUGS") {
			t.Errorf("the paper of a plan with faults holds figures:\n%s", text)
		}
	}
}

func TestAStockLyeIsOneWeighing(t *testing.T) {
	p := testPlan()
	p.Base.StockLyePercent, p.Base.Extras = 50, nil
	s := work(p)
	text := flat(Checklist(s, testShelf()))
	want := "Stock lye, 50.0 % NaOH " + s.Plan.Show.Dose(s.Base.Lye.Stock.ToWeighG)
	if !strings.Contains(strings.ReplaceAll(text, " .... ", " "), want) {
		t.Errorf("the paper lacks %q", want)
	}
	if lye := between(t, Checklist(s, testShelf()), " BASE: WEIGH AND MAKE THE LYE", "BASE: WEIGH AND WET"); strings.Contains(lye, "Sodium hydroxide") {
		t.Error("dry alkali stands beside a stock lye")
	}
}

// With fat in its extras a batch's range counts its oils alone and its jugs' do not: the paper says so, and nothing of it where there is none.
func TestThePaperSaysWhichFatsASuperfatCounts(t *testing.T) {
	p, shelf := testPlan(), testShelf()
	p.Base.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: 10}}
	without := []string{"% without the fat of the extras. As weighed", "no alkali taken up by scents, the fat of the extras counted: "}
	for _, fat := range []float64{0, 4} {
		shelf.Extras[1].FatPercent, shelf.Extras[1].FatSapKOHMgG = fat, 226*fat/4
		part := flat(Checklist(pour.Weigh(p, shelf), shelf))
		for _, want := range without {
			if strings.Contains(part, want) != (fat > 0) {
				t.Errorf("%v %% of fat: said is %q: %v", fat, want, fat == 0)
			}
		}
	}
}

func TestAReadyMixedBlendIsOneWeighingWithItsPartsForInformation(t *testing.T) {
	p := testPlan()
	p.Base.ReadyBlend = "house blend"
	s := work(p)
	part := between(t, Checklist(s, testShelf()), " BASE: WEIGH THE OILS", "BASE: WEIGH AND MAKE")
	if !strings.Contains(flat(part), "Ready-mixed oils: house blend "+s.Plan.Show.Weight(s.Base.Size.OilsWeighG)) {
		t.Errorf("the blend is not weighed as one:\n%s", part)
	}
	for _, o := range s.Base.Oils {
		if !strings.Contains(flat(part), o.Name+" "+s.Plan.Show.Weight(o.G)) {
			t.Errorf("%s is not named with its grams", o.Name)
		}
		if strings.Contains(part, box+o.Name) {
			t.Errorf("%s is weighed besides", o.Name)
		}
	}
}

// What is said to join before the alkali stands on the paper before it, and is weighed once.
func TestThePaperMakesTheLyeInTheOrderItIsMade(t *testing.T) {
	p := testPlan()
	shelf := testShelf()
	shelf.Extras = append(shelf.Extras,
		pour.Extra{ID: "salt", Name: "salt", Kind: pour.ExtraSalt, In: pour.InLye, LyeWhen: pour.LyeBefore, DensityGML: 2, ClockFactor: 1, DoseHighPercent: 3, Caution: "dissolve it in the water before the alkali"},
		pour.Extra{ID: "silk", Name: "silk fibre", Kind: pour.ExtraPlain, In: pour.InLye, LyeWhen: pour.LyeHot, DensityGML: 1, ClockFactor: 1, DoseHighPercent: 3},
		pour.Extra{ID: "lactate", Name: "lactate", Kind: pour.ExtraSalt, In: pour.InLye, LyeWhen: pour.LyeCooled, DensityGML: 1, ClockFactor: 1, DoseHighPercent: 3},
	)
	p.Base.Extras = []pour.ExtraPart{
		{Extra: "lactate", PercentOfOils: 1.11}, {Extra: "silk", PercentOfOils: 0.22}, {Extra: "salt", PercentOfOils: 1.33}, {Extra: "clay", PercentOfOils: 1.44},
	}
	s := pour.Weigh(p, shelf)
	paper := Checklist(s, shelf)
	lye := flat(between(t, paper, " BASE: WEIGH AND MAKE THE LYE", "BASE: WEIGH AND WET"))
	rest := lye
	for _, want := range []string{"Cold water", "before any alkali, stirred until dissolved or smooth: salt", "Dissolve it in the water before the alkali", "Sodium hydroxide", "Alkali into the water", "while it is hot: silk fibre", "Into the cooled lye, little by little: lactate"} {
		_, after, ok := strings.Cut(rest, want)
		if !ok {
			t.Fatalf("%q does not stand in its place in\n%s", want, lye)
		}
		rest = after
	}
	_, weighings, _ := strings.Cut(paper, " BASE: WEIGH THE OILS")
	weighings = flat(weighings)
	for _, x := range s.Base.Extras {
		if n := strings.Count(weighings, x.Name+" "+s.Plan.Show.Dose(x.G)+" ________") + strings.Count(weighings, x.Name+joins(x)+" "+s.Plan.Show.Dose(x.G)+" ________"); n != 1 {
			t.Errorf("%s is weighed %d times", x.Name, n)
		}
	}
}

func TestThePaperOfAMilkLyeSaysHow(t *testing.T) {
	p := testPlan()
	p.Base.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: 30, In: pour.InWater}, {Extra: "sugar", PercentOfOils: 1, In: pour.InWater}}
	text := flat(between(t, print(p), " BASE: WEIGH AND MAKE THE LYE", "BASE: WEIGH AND WET"))
	for _, want := range []string{
		"before that is frozen and before any alkali, stirred until dissolved or smooth: sugar", "In place of water, frozen in small pieces or ice-cold, the jug in ice water: goat's milk",
		"a spoonful at a time", "Warmest it may grow while the alkali goes in (common practice, no source) 35 deg C",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the paper lacks %q in %s", want, text)
		}
	}
	if strings.Contains(text, "Hottest it could get") {
		t.Error("a peak from the room's warmth is said of frozen milk")
	}
}

// A fine powder among the extras is wetted before it flies.
func TestAPowderAmongTheExtrasHasAWettingStep(t *testing.T) {
	p, shelf := testPlan(), testShelf()
	for in, section := range map[string][2]string{pour.InOils: {" BASE: WEIGH THE OILS", "BASE: WEIGH AND MAKE"}, pour.InWater: {" BASE: WEIGH AND MAKE THE LYE", "BASE: WEIGH AND WET"}} {
		p.Base.Extras = []pour.ExtraPart{{Extra: "blue", PercentOfOils: 0.2, In: in}}
		s := pour.Weigh(p, shelf)
		part := flat(between(t, Checklist(s, shelf), section[0], section[1]))
		_, after, ok := strings.Cut(part, "ultramarine blue")
		if !ok || !strings.Contains(strings.ToLower(after), "fine powder: lid on, no draught") {
			t.Errorf("in the %s the powder has no wetting step: %s", in, part)
		}
	}
}

// A warning on an extra stands where that is weighed, not with the colours.
func TestWarningsOfExtrasStandWhereTheyAreWeighed(t *testing.T) {
	p := testPlan()
	for in, section := range map[string][2]string{pour.InOils: {" BASE: WEIGH THE OILS", "BASE: WEIGH AND MAKE"}, pour.InLye: {" BASE: WEIGH AND MAKE THE LYE", "BASE: WEIGH AND WET"}} {
		p.Base.Extras = []pour.ExtraPart{{Extra: "blue", PercentOfOils: 9, In: in}}
		if part := flat(between(t, print(p), section[0], section[1])); !strings.Contains(part, "outside its usual") {
			t.Errorf("the dose is not said where the extra is weighed: %s", part)
		}
	}
}
