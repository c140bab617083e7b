package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// The oracle of these tests is arithmetic written out here, from the saponification values of the reference table (olive 191.5, coconut
// 256.5 mg KOH/g, published minima 184 and 248) and the molar masses 39.99677 and 56.1053 g/mol.
const (
	olive, coconut       = 0.1915, 0.2565
	oliveLow, coconutLow = 0.184, 0.248
	naohPerKOH           = 39.99677 / 56.1053
)

// halves is a kilogram of 60 % olive and 40 % coconut oil at 2 % superfat and 33 % lye: half plain, half black with charcoal in olive oil.
func halves(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := shelved(t)
	p.Icing = nil
	p.Swirl.First, p.Swirl.Last, p.Run.Order = "", "", nil
	b := &p.Base
	b.Size, b.OilsG, b.SuperfatPercent, b.LyeConcentrationPercent = pour.SizeOils, 1000, 2, 33
	b.Carrier, b.CarrierOil, b.Extras, b.Scents = pour.CarrierBatch, "olive", nil, nil
	b.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 40}}
	b.Jugs = []pour.Jug{
		{Name: "plain", SharePercent: 50},
		{Name: "coal", SharePercent: 50, Colourants: []pour.Dose{{Colourant: "activated-charcoal", DosePercent: 1, CarrierParts: 5}}},
	}
	return p, shelf
}

func equal(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func found(s pour.Sheet, code string) (pour.Warning, bool) {
	i := slices.IndexFunc(s.Warnings, func(w pour.Warning) bool { return w.Code == code })
	if i < 0 {
		return pour.Warning{}, false
	}
	return s.Warnings[i], true
}

// The batter is mixed without the carriers' oil and divided; then one half gets all of that oil.
func TestAJugsSuperfatIsThatOfWhatItHolds(t *testing.T) {
	p, shelf := halves(t)
	s := pour.Weigh(p, shelf)
	demand := 600*olive + 400*coconut
	alkali := demand * 0.98
	whole := 1000 + alkali*naohPerKOH/0.33
	batter := whole / (1 + 0.5*0.01*5) // the carrier is 5 % of half the batter that is left
	taken := whole - batter
	mixed := (600-taken)*olive + 400*coconut
	mixedLow := (600-taken)*oliveLow + 400*coconutLow
	plain, coal := s.Base.Jugs[0], s.Base.Jugs[1]
	equal(t, "the plain pot", plain.Superfat.HeldPercent, 100*(1-alkali/mixed), 1e-9)
	equal(t, "the plain pot, as the page says", plain.Superfat.HeldPercent, -1.17, 0.005)
	equal(t, "the plain pot, low", plain.Superfat.LowPercent, 100*(1-alkali/mixedLow), 1e-9)
	equal(t, "the black jug", coal.Superfat.HeldPercent, 100*(1-alkali/2/(mixed/2+taken*olive)), 1e-9)
	equal(t, "the black jug, low", coal.Superfat.LowPercent, 100*(1-alkali/2/(mixedLow/2+taken*oliveLow)), 1e-9)
	equal(t, "the batter as mixed", s.Base.Superfat.MixedPercent, 100*(1-alkali/mixed), 1e-9)
	equal(t, "the batch", s.Base.Superfat.PlannedPercent, 2, 0)
	equal(t, "the batch, low", s.Base.Superfat.LowPercent, 100*(1-alkali/(600*oliveLow+400*coconutLow)), 1e-9)
	w, ok := found(s, "lye-heavy")
	if !ok || w.Severity != pour.Stop || w.Where != "base jug plain" || !strings.Contains(w.Text, "-1.2 %") {
		t.Errorf("a pot at -1.17 %% is not stopped: %+v", w)
	}
	// 100·(1−m/D), with m the mixed oils' and D all oils' demand, is the least superfat that leaves the plain pot at 0.
	if need := math.Ceil(1000*(1-mixed/demand)) / 10; !strings.Contains(w.Do, pour.Show{}.Percent(need, 1)) {
		t.Errorf("%q does not say that %.1f %% would do", w.Do, need)
	}
}

func TestTheLowCaseIsJudgedOnTheLeanestJug(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent = 5
	s := pour.Weigh(p, shelf)
	// 5 % less what the published minima take, 3.6 of 217.5, is above 0 for the batch, and below it for the pot that lost 3.1 % of its oil.
	if s.Base.Superfat.LowPercent <= 0 || s.Base.Jugs[0].Superfat.LowPercent >= 0 || s.Base.Jugs[0].Superfat.HeldPercent <= 0 {
		t.Fatalf("the case does not part batch (%v) from jug (%v)", s.Base.Superfat.LowPercent, s.Base.Jugs[0].Superfat.LowPercent)
	}
	if w, ok := found(s, "lye-heavy-worst"); !ok || w.Where != "base jug plain" {
		t.Errorf("the leanest jug's low case is not said: %+v", w)
	}
	p.Base.Carrier = pour.CarrierExtra
	s = pour.Weigh(p, shelf)
	if w, ok := found(s, "lye-heavy-worst"); ok {
		t.Errorf("carriers on top take nothing from the pot: %+v", w)
	}
	equal(t, "the plain pot beside carriers on top", s.Base.Jugs[0].Superfat.HeldPercent, 5, 1e-9)
}

// Eugenol takes up one mol of alkali per 164.2 g: 56.1053/0.1642 = 341.7 mg KOH/g (safety page, A4: 0.244 g NaOH per g).
func TestAScentThatTakesUpAlkaliRaisesItsJugAndClearsNoStop(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	shelf.Scents = append(slices.Clone(shelf.Scents), pour.Scent{ID: "eugenol", Name: "eugenol", AlkaliKOHMgG: 341.7, LimitPercent: 5})
	p.Base.Scents = []pour.ScentPart{{Scent: "eugenol", PercentOfOils: 4, Into: []string{"coal"}}}
	s := pour.Weigh(p, shelf)
	demand := 600*olive + 400*coconut
	jug := s.Base.Jugs[1]
	equal(t, "the scented jug", jug.Superfat.HeldPercent, 100*(1-(demand*0.98/2-40*0.3417)/(demand/2)), 1e-9)
	equal(t, "the NaOH eugenol takes, g", 40*0.3417*naohPerKOH, 9.7, 0.05)
	equal(t, "the other jug", s.Base.Jugs[0].Superfat.HeldPercent, 2, 1e-9)
	equal(t, "the scented jug, low", jug.Superfat.LowPercent, s.Base.Jugs[0].Superfat.LowPercent, 1e-9)
	if w, ok := found(s, "superfat-jug"); !ok || !strings.Contains(w.Text, "scent") {
		t.Errorf("a jug lifted to %.1f %% is not said: %+v", jug.Superfat.HeldPercent, w)
	}
	p.Base.Scents[0].Into = nil
	p.Base.SuperfatPercent = -1
	if s = pour.Weigh(p, shelf); !s.LyeStopped() {
		t.Error("what a scent can take up at most cleared a lye-heavy plan")
	}
}

// Butterfat 3.25 % of 226 mg KOH/g in 20 % cow's milk: 200 × 0.0325 × 0.226 = 1.469 g KOH beside the oils' 217.5.
func TestMilkFatIsSuperfat(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 20}}
	s := pour.Weigh(p, shelf)
	demand := 600*olive + 400*coconut
	want := 100 * (1 - demand*0.98/(demand+200*0.0325*0.226))
	equal(t, "a jug with milk", s.Base.Jugs[0].Superfat.HeldPercent, want, 1e-9)
	equal(t, "the batch, exact", s.Base.Superfat.ExactPercent, want, 1e-9)
	equal(t, "the alkali", s.Base.Lye.NaOH.PureG, demand*0.98*naohPerKOH, 1e-9)
	equal(t, "the planned superfat", s.Base.Superfat.PlannedPercent, 2, 0)
}

// The batch's low and high end count its oils alone: 60 % olive and 40 % coconut oil at 2 % superfat are lye-heavy at the published minima,
// 600 × 0.184 + 400 × 0.248 = 209.6 g KOH against 213.15, and stay so with 20 % coconut milk, whose fat, 21.3 % of 256.5 mg KOH/g, takes 10.9 more and
// lifts every jug's low end over 0. The caution stands, and says what it does not count.
func TestFatOfAnExtraQuietsNoCautionOfTheLowEnd(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	plain, ok := found(pour.Weigh(p, shelf), "lye-heavy-worst")
	if !ok || plain.Where != "base" || strings.Contains(plain.Text, "not counted") {
		t.Errorf("without milk: %+v", plain)
	}
	p.Base.Extras = []pour.ExtraPart{{Extra: "coconut-milk", PercentOfOils: 20}}
	s := pour.Weigh(p, shelf)
	x, _ := shelf.Extra("coconut-milk")
	fat, alkali := 200*x.FatPercent/100*x.FatSapKOHMgG/1000, (600*olive+400*coconut)*0.98
	low, high := 600*oliveLow+400*coconutLow, 600*0.196+400*0.265
	equal(t, "what its fat takes, g KOH", fat, 200*0.213*coconut, 1e-9)
	equal(t, "the batch, low", s.Base.Superfat.LowPercent, 100*(1-alkali/low), 1e-9)
	equal(t, "the batch, high", s.Base.Superfat.HighPercent, 100*(1-alkali/high), 1e-9)
	equal(t, "a jug, low", s.Base.Jugs[0].Superfat.LowPercent, 100*(1-alkali/(low+fat)), 1e-9)
	if s.Base.Superfat.LowPercent >= 0 || s.Base.Jugs[0].Superfat.LowPercent <= 0 {
		t.Fatalf("the case does not part batch (%v) from jug (%v)", s.Base.Superfat.LowPercent, s.Base.Jugs[0].Superfat.LowPercent)
	}
	if w, ok := found(s, "lye-heavy-worst"); !ok || w.Where != "base" || !strings.HasSuffix(w.Text, "is -1.7 %, the fat of its extras not counted") {
		t.Errorf("with milk: %+v", w)
	}
	if got, ok := s.TrueSuperfat(pour.Base, []pour.Weighing{alkaliG(s.Base.Lye.NaOH.ToWeighG)}); !ok || !got.ExtraFat || got.LowPercent >= 0 {
		t.Errorf("as weighed: %+v", got)
	}
}

// The example slab plans 6 % of all its oils; the oils it lists to be melted, without the carriers', leave 4.45 %.
func TestTheSlabExampleSaysWhichSuperfatIsWhich(t *testing.T) {
	p, shelf := example(t, "autumn-slab")
	s := pour.Weigh(p, shelf)
	demand := 0.0
	for _, o := range s.Base.Oils {
		demand += o.G * o.SapKOHMgG / 1000
	}
	listed := 100 * (1 - s.Base.Lye.NaOH.PureG/naohPerKOH/demand)
	equal(t, "the listed oils", s.Base.Superfat.MixedPercent, listed, 1e-9)
	equal(t, "the plan", s.Base.Superfat.PlannedPercent, 6, 0)
	equal(t, "the listed oils, as the page says", listed, 4.45, 0.005)
}

func TestScalesThatMoveTheSuperfatAreSaid(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	p.Base.SuperfatPercent = 3
	for _, c := range []struct {
		oilsG, stepG float64
		said         bool
	}{{1000, 0.1, false}, {480, 50, true}, {400, 50, true}, {1450, 50, false}, {253, 5, true}, {430, 5, false}} {
		p.Base.OilsG, p.Show.ScaleStepG, p.Show.LyeStepG = c.oilsG, c.stepG, 0.1
		s := pour.Weigh(p, shelf)
		demand := c.oilsG * (0.6*olive + 0.4*coconut)
		naoh := math.Floor(demand*0.97*naohPerKOH*10) / 10
		shown := s.Base.Oils[0].WeighG*olive + s.Base.Oils[1].WeighG*coconut
		if got := s.Base.Oils[0].WeighG + s.Base.Oils[1].WeighG; got != math.Round(c.oilsG/c.stepG)*c.stepG {
			t.Fatalf("%v g of oils on a step of %v show %v", c.oilsG, c.stepG, got)
		}
		want := 100 * (1 - naoh/naohPerKOH/shown)
		equal(t, "as weighed", s.Base.Superfat.AsWeighedPercent, want, 1e-9)
		if w, ok := found(s, "alkali-rounding"); ok != c.said || ok != (math.Abs(want-3) > 0.5) || ok && w.Severity != pour.Caution {
			t.Errorf("%v g on a step of %v: %.2f %% instead of 3, said: %v", c.oilsG, c.stepG, want, w)
		}
	}
}

// What is weighed is the acid in its own doses and, with a ready blend, all oils at once.
func TestTheSuperfatAsWeighedCountsAcidsAndReadyBlends(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	p.Base.OilsG, p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = 483, 5, 10, 1
	p.Base.Extras = []pour.ExtraPart{{Extra: "citric-acid", PercentOfOils: 1.5}} // 7.245 g, on the scale 7
	p.Base.ReadyBlend = "house"
	s := pour.Weigh(p, shelf)
	demand := 483 * (0.6*olive + 0.4*coconut)
	citric := 3 * 56.1053 / 192.123 // g KOH per g, three acid groups
	naoh := math.Floor((demand*0.95 + 483*0.015*citric) * naohPerKOH)
	want := 100 * (1 - (naoh/naohPerKOH-7*citric)/(480*(0.6*olive+0.4*coconut)))
	equal(t, "as weighed", s.Base.Superfat.AsWeighedPercent, want, 1e-4)
}

// The carriers are weighed too: what is taken out of the batch comes back on the finer scale.
func TestTheSuperfatAsWeighedCountsTheCarriersOfTheBatch(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = 8, 5, 0.5
	s := pour.Weigh(p, shelf)
	b := s.Base
	naoh := math.Floor(b.Lye.NaOH.WeighedG/0.5) * 0.5
	carrier := math.Round(b.Jugs[1].Colourants[0].CarrierG/0.5) * 0.5
	mixed := b.Oils[0].WeighG*olive + b.Oils[1].WeighG*coconut
	equal(t, "the batch as weighed", b.Superfat.AsWeighedPercent, 100*(1-naoh/naohPerKOH/(mixed+carrier*olive)), 1e-9)
	part := b.Jugs[1].BatterWeighG / (b.Jugs[0].BatterWeighG + b.Jugs[1].BatterWeighG)
	equal(t, "the black jug as weighed", b.Jugs[1].Superfat.AsWeighedPercent, 100*(1-part*naoh/naohPerKOH/(part*mixed+carrier*olive)), 1e-9)
	equal(t, "the plain pot as weighed", b.Jugs[0].Superfat.AsWeighedPercent, 100*(1-naoh/naohPerKOH/mixed), 1e-9)
}

// A pot that is right on paper can be lye-heavy as weighed: then it is stopped too.
func TestAPotThatIsLyeHeavyAsWeighedIsStopped(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = 3.3, 20, 0.01
	for oils := 900.0; oils < 1100; oils += 7 {
		p.Base.OilsG = oils
		s := pour.Weigh(p, shelf)
		plain := s.Base.Jugs[0]
		if plain.Superfat.HeldPercent <= 0 || plain.Superfat.AsWeighedPercent > -0.1 || s.Base.Superfat.AsWeighedPercent < 0 {
			continue
		}
		if w, ok := found(s, "lye-heavy"); !ok || w.Where != "base jug plain" || !strings.Contains(w.Text, "weighed") {
			t.Errorf("%v g of oils: %.2f %% on paper, %.2f %% as weighed, not stopped: %+v", oils, plain.Superfat.HeldPercent, plain.Superfat.AsWeighedPercent, w)
		}
		return
	}
	t.Fatal("no batch of the row shows the case")
}

func TestAPurityNoAlkaliHasSaysWhatItWouldDo(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants = nil
	p.Base.SuperfatPercent = 5
	for _, c := range []struct {
		naoh, koh, share float64
		want             string // the superfat were it as pure as usual; empty: not said
	}{
		{85, 90, 0, "-10.6 %"},    // 1 - 0.95 × 0.99/0.85
		{97, 90, 0, ""},           //
		{99, 100, 100, "14.5 %"},  // 1 - 0.95 × 0.90
		{99, 70, 100, "-22.1 %"},  // 1 - 0.95 × 0.90/0.70
		{99, 90, 100, ""},         //
		{99, 80, 100, ""},         // the least of the usual
		{99, 79.9, 100, "-7.0 %"}, // 1 - 0.95 × 0.90/0.799
		{99, 95.1, 100, "10.1 %"}, // 1 - 0.95 × 0.90/0.951
		{99, 98, 50, "8.9 %"},     // 1 - 0.95 × (0.5 + 0.5 × 0.90/0.98)
		{85, 90, 100, ""},         // no NaOH is weighed
		{95, 95, 50, ""},          // the bounds themselves are sold
		{94.9, 90, 50, "2.9 %"},   // 1 - 0.95 × (0.5 × 0.99/0.949 + 0.5)
	} {
		p.Base.NaOHPurityPercent, p.Base.KOHPurityPercent, p.Base.KOHSharePercent = c.naoh, c.koh, c.share
		w, ok := found(pour.Weigh(p, shelf), "purity-unusual")
		if ok != (c.want != "") || ok && (w.Severity != pour.Caution || !strings.Contains(w.Text, c.want)) {
			t.Errorf("NaOH %v %%, KOH %v %%, share %v %%: %+v, want %q", c.naoh, c.koh, c.share, w, c.want)
		}
	}
	p.Base.KOHSharePercent, p.Base.NaOHPurityPercent, p.Base.StockLyePercent = 0, 85, 50
	if _, ok := found(pour.Weigh(p, shelf), "purity-unusual"); ok {
		t.Error("a stock lye has no dry alkali to be impure")
	}
}

// The clock is silent where the batch cannot be mixed, and so is everything that follows from its mass.
func TestABatchThatCannotBeMixedHasNoFiguresThatFollow(t *testing.T) {
	for what, spoil := range map[string]func(*pour.Plan){
		"carriers want more than there is": func(p *pour.Plan) {
			p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 2}, {Oil: "coconut", Percent: 98}}
		},
		"too much milk":    func(p *pour.Plan) { p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 50}} },
		"a weak stock lye": func(p *pour.Plan) { p.Base.StockLyePercent, p.Base.LyeConcentrationPercent = 20, 40 },
	} {
		for _, size := range []string{pour.SizeOils, pour.SizeMould} {
			p, shelf := halves(t)
			p.Base.SuperfatPercent, p.Base.Size = 9, size
			spoil(&p)
			s := pour.Work(p, shelf, pour.Hand{})
			if !s.LyeStopped() || s.Base.Refused.Masses == "" {
				t.Fatalf("%s, sized by %s: not stopped", what, size)
			}
			_, water := found(s, "lye-short-water")
			_, carrier := found(s, "carrier-short")
			if carrier != strings.HasPrefix(what, "carriers") || water == carrier {
				t.Errorf("%s, sized by %s: short of water is said %v, of carrier %v", what, size, water, carrier)
			}
			for path, f := range figuresOf(s) {
				known := size == pour.SizeOils && oilsAlone(path, what)
				if f.Known != known {
					t.Errorf("%s, sized by %s: %s is known %v (%v)", what, size, path, f.Known, f.V)
				}
			}
			if s.Base.Jugs[0].Clock.Stages[0].Mid.Known || s.Base.Refused.Times == "" {
				t.Errorf("%s: the clock gives times", what)
			}
		}
	}
}

func TestABlendThatTakesUpNoAlkaliIsStopped(t *testing.T) {
	p, shelf := halves(t)
	shelf.Oils = append(slices.Clone(shelf.Oils), pour.Oil{ID: "paraffin", Name: "paraffin oil", Fat: chem.Fat{Kind: chem.WaxEster, DensityGML: 0.85, DensityC: 20}})
	p.Base.Oils, p.Base.CarrierOil = []pour.OilPart{{Oil: "paraffin", Percent: 100}}, ""
	s := pour.Work(p, shelf, pour.Hand{})
	if w, ok := found(s, "plan-fault"); !ok || !s.LyeStopped() || s.Base.Lye.WaterToAddG.Known || !math.IsNaN(s.Base.Size.BatterG) {
		t.Errorf("a lye for paraffin: %+v, %v g of batter", w, s.Base.Size.BatterG)
	}
}
