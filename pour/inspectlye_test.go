package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// coals is halves with its plain jug between two black ones: 25, 50 and 25 %.
func coals(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := halves(t)
	plain, coal := p.Base.Jugs[0], p.Base.Jugs[1]
	soot := coal
	coal.SharePercent, soot.SharePercent, soot.Name = 25, 25, "soot"
	p.Base.Jugs = []pour.Jug{coal, plain, soot}
	return p, shelf
}

// The leanest jug is the one judged, wherever it stands.
func TestTheLeanestJugNeedNotBeTheFirst(t *testing.T) {
	for superfat, code := range map[float64]string{2: "lye-heavy", 5: "lye-heavy-worst"} {
		p, shelf := coals(t)
		p.Base.SuperfatPercent = superfat
		s := pour.Weigh(p, shelf)
		if w, ok := found(s, code); !ok || w.Where != "base jug plain" {
			t.Errorf("at %v %% the jugs hold %.2f, %.2f and %.2f %%; said %+v", superfat,
				s.Base.Jugs[0].Superfat.HeldPercent, s.Base.Jugs[1].Superfat.HeldPercent, s.Base.Jugs[2].Superfat.HeldPercent, w)
		}
		if j, ok := s.Base.LeanestJug(); !ok || j.Name != "plain" {
			t.Errorf("the leanest jug is called %q", j.Name)
		}
	}
}

// Oils at their published minima: 1 % of superfat becomes 100·(1 - 0.99·217.5/209.6) = -2.7 %. Where all jugs share that, it is the batch's.
func TestTheLowCaseOfAllJugsAlikeIsTheBatchs(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.Carrier = nil, pour.CarrierExtra
	for i := range 40 { // so many sizes that the last bits of what must be equal differ
		share, superfat := 3+2.3*float64(i), float64(i)/40
		p.Base.Jugs[0].SharePercent, p.Base.Jugs[1].SharePercent, p.Base.SuperfatPercent, p.Base.OilsG = share, 100-share, superfat, 100+37.3*float64(i)
		low := 100 * (1 - (1-superfat/100)*(0.6*olive+0.4*coconut)/(0.6*oliveLow+0.4*coconutLow))
		w, ok := found(pour.Weigh(p, shelf), "lye-heavy-worst")
		if !ok || w.Where != "base" || !strings.Contains(w.Text, pour.Show{}.Percent(low, 1)) {
			t.Errorf("%v g at %v %%, shared %v to %v: said %+v, want %.1f %%", p.Base.OilsG, superfat, share, 100-share, w, low)
		}
	}
	p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 20}} // its fat saves the jugs; the oils alone are short
	p.Base.SuperfatPercent = 3
	s := pour.Weigh(p, shelf)
	if w, ok := found(s, "lye-heavy-worst"); !ok || w.Where != "base" || s.Base.Jugs[0].Superfat.LowPercent < s.Base.Superfat.LowPercent {
		t.Errorf("with milk: said %+v", w)
	}
}

// At 0.5 % a step of 40 g can take 5 g of 385 and more: the batch is lye-heavy as weighed, and no jug's carrier is to blame.
func TestABatchThatIsLyeHeavyAsWeighedIsStopped(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Base.OilsG = nil, 0.5, 415
	p.Show.ScaleStepG, p.Show.LyeStepG = 40, 0.01
	s := pour.Weigh(p, shelf)
	demand := 415 * (0.6*olive + 0.4*coconut) * 0.995
	if shown := 240*olive + 160*coconut; 100*(1-demand/shown) > -2 { // 249 and 166 g on the step
		t.Fatalf("%v g of KOH in oils that want %v", demand, shown)
	}
	if w, ok := found(s, "lye-heavy"); !ok || w.Where != "base" || !strings.Contains(w.Text, "weighed") || !s.LyeStopped() {
		t.Errorf("as weighed %.2f %%: said %+v", s.Base.Superfat.AsWeighedPercent, w)
	}
}

// What scents can take up is an upper bound: it clears no stop, on paper, in the low case or as weighed.
func TestNoScentClearsAStop(t *testing.T) {
	p, shelf := coals(t)
	shelf.Scents = append(slices.Clone(shelf.Scents), pour.Scent{ID: "eugenol", Name: "eugenol", AlkaliKOHMgG: 341.7, LimitPercent: 5})
	for _, superfat := range []float64{2, 3.3, 5} {
		p.Base.SuperfatPercent, p.Base.Scents = superfat, nil
		p.Show.ScaleStepG, p.Show.LyeStepG = 20, 0.01
		bare := pour.Weigh(p, shelf)
		p.Base.Scents = []pour.ScentPart{{Scent: "eugenol", PercentOfOils: 4, Into: []string{"plain"}}}
		s := pour.Weigh(p, shelf)
		for i, j := range s.Base.Jugs {
			without := bare.Base.Jugs[i]
			equal(t, j.Name+" firm", j.Superfat.FirmPercent, without.Superfat.HeldPercent, 1e-9)
			equal(t, j.Name+" low", j.Superfat.LowPercent, without.Superfat.LowPercent, 1e-9)
			equal(t, j.Name+" as weighed", j.Superfat.AsWeighedPercent, without.Superfat.AsWeighedPercent, 1e-9)
		}
		if heavy(s) != heavy(bare) {
			t.Errorf("at %v %% said %q without the scent and %q with it", superfat, heavy(bare), heavy(s))
		}
	}
}

// heavy is where a sheet says lye-heavy, and how badly.
func heavy(s pour.Sheet) string {
	var out []string
	for _, w := range s.Warnings {
		if strings.HasPrefix(w.Code, "lye-heavy") {
			out = append(out, w.Code+" at "+w.Where)
		}
	}
	return strings.Join(out, ", ")
}

// The icing is lye too: whatever is said of the base's is said of it.
func TestTheIcingsLyeIsJudgedLikeTheBases(t *testing.T) {
	for code, spoil := range map[string]func(*pour.Batch){
		"lye-heavy":        func(b *pour.Batch) { b.SuperfatPercent = -1 },
		"lye-heavy-worst":  func(b *pour.Batch) { b.SuperfatPercent = 0.5 },
		"purity-unusual":   func(b *pour.Batch) { b.NaOHPurityPercent = 85 },
		"purity-assumed":   func(b *pour.Batch) { b.NaOHPurityPercent = 100 },
		"lye-mixed-strong": func(b *pour.Batch) { b.LyeConcentrationPercent = 51 },
		"lye-short-water":  func(b *pour.Batch) { b.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 50}} },
	} {
		p, shelf := halves(t)
		p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Base.NaOHPurityPercent = nil, 6, 98
		icing := p.Base.Clone()
		icing.Size, icing.PerBarG = pour.SizeBar, 25
		icing.Jugs = []pour.Jug{{Name: "snow", SharePercent: 100}}
		p.Icing = &icing
		if s := pour.Weigh(p, shelf); slices.ContainsFunc(s.Warnings, func(w pour.Warning) bool { return w.Code == code }) {
			t.Fatalf("%s is said before anything is spoilt", code)
		}
		spoil(p.Icing)
		if w, ok := found(pour.Weigh(p, shelf), code); !ok || w.Where != "icing" {
			t.Errorf("%s of the icing: %+v", code, w)
		}
	}
}

// 51 % is too strong, and 50 % still dissolves.
func TestLyeOverHalfAlkaliIsStopped(t *testing.T) {
	for percent, stopped := range map[float64]bool{33: false, 50: false, 50.1: true, 55: true} {
		p, shelf := halves(t)
		p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Base.LyeConcentrationPercent = nil, 5, percent
		s := pour.Weigh(p, shelf)
		if _, ok := found(s, "lye-mixed-strong"); ok != stopped || s.LyeStopped() != stopped {
			t.Errorf("%v %%: said %v, stopped %v", percent, ok, s.LyeStopped())
		}
	}
}

// 1.5 % of citric acid takes 15·3·56.1053/192.123 g KOH, which the alkali brings beside 95 % of what the oils take: were NaOH of 85 % really
// 99 %, the oils would meet (all·0.99/0.85 - acid) of it.
func TestAPurityIsJudgedWithoutWhatAcidsTake(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Base.NaOHPurityPercent = nil, 5, 85
	p.Base.Extras = []pour.ExtraPart{{Extra: "citric-acid", PercentOfOils: 1.5}}
	s := pour.Weigh(p, shelf)
	oils, acid := 600*olive+400*coconut, 15*3*56.1053/192.123
	would := 100 * (1 - ((oils*0.95+acid)*0.99/0.85-acid)/oils)
	if w, _ := found(s, "purity-unusual"); !strings.Contains(w.Text, pour.Show{}.Percent(would, 1)) {
		t.Errorf("want %.1f %%, said %+v", would, w)
	}
	equal(t, "the batch", s.Base.Superfat.ExactPercent, 5, 1e-9)
	if math.Abs(would+10.6) < 0.2 {
		t.Fatal("the acid makes no difference that a page could show")
	}
}

// 36 g of olive oil on top of half the batter: 108.75 g KOH of demand become 115.7, and 5 % of superfat 10.7.
func TestACarrierThatLiftsItsJugIsSaid(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Carrier = 5, pour.CarrierExtra
	half := (600*olive + 400*coconut) / 2
	for parts, said := range map[float64]bool{5: true, 1: false} {
		p.Base.Jugs[1].Colourants[0].CarrierParts = parts
		s := pour.Weigh(p, shelf)
		own := 100 * (1 - half*0.95/(half+s.Base.Size.BatterG/2*0.01*parts*olive))
		w, ok := found(s, "superfat-jug")
		if ok != said || ok != (own > 8) || ok && (w.Where != "base jug coal" || !strings.Contains(w.Text, "carrier oil lifts its superfat to "+pour.Show{}.Percent(own, 1))) {
			t.Errorf("%v parts lift it to %.1f %%: said %+v", parts, own, w)
		}
	}
}

// Strong lye is said to come near boiling from a peak of 90 °C on, and not below.
func TestLyeThatComesNearBoilingIsSaid(t *testing.T) {
	said := map[bool]int{}
	for percent := 24.0; percent <= 36; percent += 0.5 {
		p, shelf := halves(t)
		p.Base.SuperfatPercent, p.Room.TemperatureC, p.Base.LyeConcentrationPercent, p.Base.Jugs[1].Colourants = 5, 21, percent, nil
		s := pour.Weigh(p, shelf)
		_, ok := found(s, "lye-near-boil")
		if peak := s.Base.Heat.LyePeakC; !peak.Known || ok != (peak.V >= 90) || math.Abs(peak.V-21-s.Base.Heat.LyeRiseK.V) > 1e-9 {
			t.Errorf("lye of %v %% comes to %v: said %v", percent, peak, ok)
		}
		said[ok]++
	}
	if said[true] == 0 || said[false] == 0 {
		t.Fatalf("the lyes do not reach both sides: %v", said)
	}
}
