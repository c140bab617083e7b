package clock

import (
	"math"
	"testing"

	"pourbench/chem"
)

// bare is a schedule with nothing but the reaction: R = 1, T = T_ref, unless riseK warms it.
func bare(l law, startX, riseK float64) schedule {
	return schedule{
		legs:   []leg{{to: 1000, tau: l.handMin, speed: (1 + l.r) * l.k0, riseK: riseK, airK: refK}},
		startX: startX, startK: refK,
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.9g, want %.9g within %.2g", what, got, want, within)
	}
}

// minuteOf gives when a bare run comes to a conversion, by halving.
func minuteOf(l law, s schedule, x float64) float64 {
	lo, hi := 0.0, 1000.0
	for range 100 {
		mid := (lo + hi) / 2
		if l.conversion(l.followTo(s, 1, mid, 100).dose) < x {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

func TestIntegratorMatchesTheClosedForm(t *testing.T) {
	// Trace model 4.1: the exact solution of the isothermal autocatalytic rate law, k0 = 0.002 and k1 = 0.030 per minute.
	l := standardLaw()
	l.k0 = 0.002
	s := bare(l, 0, 0)
	for _, c := range []struct{ x, minute float64 }{
		{.01, 4.68163}, {.05, 19.0909}, {.10, 31.9266}, {.50, 88.5379}, {.90, 155.523},
	} {
		near(t, "minute", minuteOf(l, s, c.x), c.minute, c.minute*4e-6)
	}
	for _, c := range []struct{ minute, x float64 }{
		{1, .00202822}, {10, .0230277}, {30, .0915128}, {60, .266760}, {120, .739945},
	} {
		near(t, "conversion", l.conversion(l.followTo(s, 1, c.minute, 100).dose), c.x, c.x*3e-6)
	}
}

func TestDefaultsReachTheStagesAtTheTabledMinutesRegression(t *testing.T) {
	// Regression. Trace model 4.1, default parameters, X0 = 0.0009.
	l := standardLaw()
	got := l.follow(bare(l, .0009, 0), 1, HorizonMin)
	for s, want := range map[chem.Stage]float64{chem.Light: 4.97796, chem.Medium: 10.0446, chem.Thick: 16.6935, chem.Stiff: 26.1442} {
		near(t, "stage", got.at[s], want, 6e-5)
	}
	near(t, "nominal emulsion", minuteOf(l, bare(l, .0009, 0), .004), 1.46240, 6e-6)
}

func TestSelfHeatingFollowsTheAdiabaticOracle(t *testing.T) {
	// Trace model 4.2: Simpson's rule over X; 54 K, X0 = 0, Ea = 47 kJ/mol, from 35 °C.
	l := standardLaw()
	warm, cold := l.follow(bare(l, 0, 54), 1, HorizonMin), l.follow(bare(l, 0, 0), 1, HorizonMin)
	near(t, "light", warm.at[chem.Light], 5.31389, 1e-5)
	near(t, "medium", warm.at[chem.Medium], 10.0916, 6e-5)
	near(t, "light, isothermal", cold.at[chem.Light], 5.41424, 1e-5)
	near(t, "medium, isothermal", cold.at[chem.Medium], 10.4808, 6e-5)
	for s := chem.Light; s <= chem.Stiff; s++ { // invariant 5, exact by construction
		near(t, "rise", warm.kelvin[s]-refK, 54*stageX(s), 54*1e-7)
	}
}

func TestStageTimesScaleWithSpeedWithoutHeatAndBlender(t *testing.T) {
	// Trace model, invariant 4: t·Λ is constant, 10.00295 min at medium for the balanced blend.
	l := standardLaw()
	s := bare(l, .0009, 0)
	s.legs[0].speed *= batter(balanced(), 35).composition()
	one := l.follow(s, 1, HorizonMin)
	near(t, "medium", one.at[chem.Medium], 10.00295, 5e-6)
	for _, pace := range []float64{2, 5} {
		near(t, "medium times speed", pace*l.follow(s, pace, HorizonMin).at[chem.Medium], one.at[chem.Medium], 1e-6)
	}
}

func TestWithoutAutocatalysisTheAlkaliDecaysExponentially(t *testing.T) {
	// Trace model, invariant 7.
	l := standardLaw()
	l.r = 0
	for _, minute := range []float64{1, 30, 300} {
		got := l.conversion(l.followTo(bare(l, .01, 0), 1, minute, 100).dose)
		near(t, "conversion", got, 1-.99*math.Exp(-l.k0*minute), 1e-9)
	}
}

func TestFreeAcidBeyondAStagePutsItAtLyeIn(t *testing.T) {
	b := batter(balanced(), 35, Burst{0, 20})
	b.FFA = .10 // X0 = 0.03, past medium
	f := forecast(t, b, Jug{Fraction: 1})
	near(t, "medium", f.Stages[chem.Medium].Mid, 0, 0)
	if !(f.Stages[chem.Thick].Mid > 0) {
		t.Errorf("thick at %v", f.Stages[chem.Thick].Mid)
	}
}

func TestAJumpMovesTheBatterOnAtOnce(t *testing.T) {
	b := batter(balanced(), 35, Burst{0, 20})
	b.SplitMin = 2
	s := scent(1, 3, 5)
	s.JumpX = .05 // past thick at once, by definition
	f := forecast(t, b, Jug{Fraction: .5, Scents: []Scent{s}})
	plain := forecast(t, b, Jug{Fraction: .5})
	near(t, "thick", f.Stages[chem.Thick].Mid, 5, 0)
	near(t, "light, before it", f.Stages[chem.Light].Mid, plain.Stages[chem.Light].Mid, 1e-3)
	if !(f.Stages[chem.Stiff].Mid > 5 && f.Stages[chem.Stiff].Mid < plain.Stages[chem.Stiff].Mid) {
		t.Errorf("stiff at %v, without the jump %v", f.Stages[chem.Stiff].Mid, plain.Stages[chem.Stiff].Mid)
	}
}

func TestBlendingAJugIsAsBlendingTheBatch(t *testing.T) {
	// Undivided and split after the first burst, the second burst may be the batch's or the jug's.
	whole := batter(balanced(), 35, Burst{0, 20}, Burst{1, 20})
	whole.SplitMin = 5
	split := batter(balanced(), 35, Burst{0, 20})
	a, b := forecast(t, whole, Jug{Fraction: 1}), forecast(t, split, Jug{Fraction: 1, Bursts: []Burst{{1, 20}}})
	for s := range a.Stages {
		near(t, chem.Stage(s).String(), b.Stages[s].Mid, a.Stages[s].Mid, 1e-4)
	}
}

func TestOverlappingBurstsCountOnce(t *testing.T) {
	a := forecast(t, batter(balanced(), 35, Burst{0, 30}), Jug{Fraction: 1})
	b := forecast(t, batter(balanced(), 35, Burst{.2, 18}, Burst{0, 15}, Burst{.1, 10}), Jug{Fraction: 1})
	near(t, "medium", b.Stages[chem.Medium].Mid, a.Stages[chem.Medium].Mid, 1e-9)
}

func TestScentPriorsAreTheTabledOnesRegression(t *testing.T) {
	// Regression. Trace model 2.4.
	for word, want := range map[string][2]float64{
		"unknown": {1.2, .5}, "none": {1, .2}, "slows": {.8, .25}, "fast": {2, .35}, "strong": {2.74, .45}, "seizes": {8, .6},
	} {
		ln, sd, ok := ScentPrior(word)
		if !ok {
			t.Errorf("%s is not known", word)
		}
		near(t, word, math.Exp(ln), want[0], .0051)
		near(t, word, sd, want[1], 0)
	}
	if _, _, ok := ScentPrior("sings"); ok {
		t.Error("any word is known")
	}
}

func TestOilsHaveTheTabledSpeedsRegression(t *testing.T) {
	// Regression. Trace model 2.3, F_c of single oils. The fatty acids of lard, shea and cocoa butter are not given there: ours are from memory.
	for name, want := range map[string]float64{
		"sunflower": .43, "olive": .53, "palm": .96, "coconut": 1.58, "castor": 1.59, "lard": .91, "shea": 1.09, "cocoa": 1.23,
	} {
		b := batter(map[string]float64{name: 1}, 35)
		within := .0051
		if name == "lard" || name == "shea" || name == "cocoa" {
			within = .0101
		}
		near(t, name, b.composition(), want, within)
	}
	b := batter(balanced(), 35)
	near(t, "reference blend", b.composition(), 1, .02) // "about 1"
	b.Profiled = 0
	near(t, "no profile", b.composition(), 1/1.30, 1e-12)
}

func TestWarmthHasTheTabledEffectRegression(t *testing.T) {
	// Regression. Trace model 2.3, θ.
	l := standardLaw()
	for c, want := range map[float64]float64{25: .54, 30: .74, 35: 1, 40: 1.34, 45: 1.78, 50: 2.34} {
		near(t, "theta", math.Exp(-l.activeJ/gasJ*(1/(c+zeroC)-1/refK)), want, .0051)
	}
}

func forecast(t *testing.T, b Batter, j Jug) Forecast {
	t.Helper()
	c, err := New(b, Hand{})
	if err != nil {
		t.Fatal(err)
	}
	f := c.Forecast(j)
	if f.Refusal != "" {
		t.Fatal(f.Refusal)
	}
	return f
}
