package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// caked is a white half and a plain half, both given a scent with vanillin or not, under a white icing or none.
func caked(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Carrier = 5, pour.CarrierExtra
	p.Base.Jugs[0].Colourants = []pour.Dose{{Colourant: "red-iron-oxide", DosePercent: 0.3}}
	p.Base.Jugs[1].Colourants = []pour.Dose{{Colourant: "titanium-white-oil", DosePercent: 0.5, Carrier: pour.CarryNone}}
	shelf.Scents = append(slices.Clone(shelf.Scents),
		pour.Scent{ID: "cake", Name: "cake", VanillinPercent: 8, LimitPercent: 9, Behaviour: pour.BehaviourNone},
		pour.Scent{ID: "mint", Name: "mint", LimitPercent: 9, Behaviour: pour.BehaviourNone})
	return p, shelf
}

// said is which vanillin warnings stand where.
func said(s pour.Sheet) string {
	var out []string
	for _, w := range s.Warnings {
		if strings.HasPrefix(w.Code, "vanillin") {
			out = append(out, w.Code+" at "+w.Where)
		}
	}
	slices.Sort(out)
	return strings.Join(out, ", ")
}

func TestVanillinIsJudgedByWhatReachesAJugsPartOfTheBar(t *testing.T) {
	p, shelf := caked(t)
	p.Base.Scents = []pour.ScentPart{{Scent: "cake", PercentOfOils: 3, Into: []string{"plain", "coal"}}}
	s := pour.Weigh(p, shelf)
	b := s.Base
	// Half of 30 g of scent with 8 % vanillin, in half of what is dry: oils, pure alkali, pigments and carriers of both jugs, scent; cured to 10 %.
	dry := 1000 + b.Lye.NaOH.PureG + b.Jugs[0].Colourants[0].PigmentG + b.Jugs[0].Colourants[0].CarrierG + b.Jugs[1].Colourants[0].PigmentG + 30
	equal(t, "vanillin in the white jug", b.Jugs[1].VanillinPercent, 100*15*0.08/(dry/2/0.9), 1e-6)
	if got := said(s); got != "vanillin-browns at base jug plain, vanillin-white at base jug coal" {
		t.Errorf("said: %s", got)
	}
	if w, _ := found(s, "vanillin-white"); !strings.Contains(w.Text, "cake leaves 0.18 % vanillin in its part of the bar, enough for tan") {
		t.Errorf("said: %s", w.Text)
	}
	p.Base.Scents[0].PercentOfOils = 0.06 // a fiftieth: 0.0037 % of the bar
	if got := said(pour.Weigh(p, shelf)); got != "" {
		t.Errorf("what reaches the bar cannot be seen, and yet: %s", got)
	}
}

// 1 and 2 % of the same scent into the same two jugs are 3 % of it, and it is named once.
func TestTheSameScentTwiceIsNoMoreVanillin(t *testing.T) {
	p, shelf := caked(t)
	into := []string{"plain", "coal"}
	p.Base.Scents = []pour.ScentPart{{Scent: "cake", PercentOfOils: 3, Into: into}}
	once := pour.Weigh(p, shelf)
	p.Base.Scents = []pour.ScentPart{{Scent: "cake", PercentOfOils: 1, Into: into}, {Scent: "cake", PercentOfOils: 2, Into: into}}
	twice := pour.Weigh(p, shelf)
	equal(t, "vanillin in the white jug", twice.Base.Jugs[1].VanillinPercent, once.Base.Jugs[1].VanillinPercent, 1e-12)
	one, _ := found(once, "vanillin-white")
	if two, _ := found(twice, "vanillin-white"); one.Text == "" || one.Text != two.Text {
		t.Errorf("once: %q, twice: %q", one.Text, two.Text)
	}
}

func TestVanillinBesideWhite(t *testing.T) {
	for what, c := range map[string]struct {
		change func(*pour.Plan)
		want   string
	}{
		"unscented": {func(*pour.Plan) {}, "vanillin-browns at base jug plain, vanillin-near-white at base jug coal"},
		"with a scent of its own": {func(p *pour.Plan) {
			p.Base.Scents = append(p.Base.Scents, pour.ScentPart{Scent: "mint", PercentOfOils: 1, Into: []string{"coal"}})
		}, "vanillin-browns at base jug plain, vanillin-near-white at base jug coal"},
		"by zinc oxide": {func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Colourant = "zinc-oxide" }, "vanillin-browns at base jug plain, vanillin-near-white at base jug coal"},
		"by pearl mica": {func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Colourant = "mica-pearl" }, "vanillin-browns at base jug plain, vanillin-near-white at base jug coal"},
		"by titanium in the whole batch": {func(p *pour.Plan) {
			p.Base.Jugs[1].Colourants = nil
			p.Base.Extras = []pour.ExtraPart{{Extra: "titanium-white-oil", PercentOfOils: 0.6}}
		}, "vanillin-browns at base jug plain, vanillin-near-white at base jug coal"},
		"hardly white": {func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].DosePercent = 0.1 }, "vanillin-browns at base jug plain"},
		"white and yellow": {func(p *pour.Plan) {
			p.Base.Jugs[1].Colourants = append(p.Base.Jugs[1].Colourants, pour.Dose{Colourant: "yellow-iron-oxide", DosePercent: 0.1})
		}, "vanillin-browns at base jug plain"},
		"charcoal in the whole batch": {func(p *pour.Plan) {
			p.Base.Extras = []pour.ExtraPart{{Extra: "activated-charcoal", PercentOfOils: 0.5}}
		}, "vanillin-browns at base jug plain"},
		"white icing on it": {func(p *pour.Plan) {
			p.Base.Jugs[1].Colourants = nil
			icing := p.Base.Clone()
			icing.Size, icing.PerBarG, icing.Scents = pour.SizeBar, 25, nil
			icing.Jugs = []pour.Jug{{Name: "snow", SharePercent: 100, Colourants: []pour.Dose{{Colourant: "titanium-white-oil", DosePercent: 0.5}}}}
			p.Icing = &icing
		}, "vanillin-browns at base jug plain, vanillin-near-white at icing jug snow"},
	} {
		p, shelf := caked(t)
		p.Base.Scents = []pour.ScentPart{{Scent: "cake", PercentOfOils: 3, Into: []string{"plain"}}}
		c.change(&p)
		s := pour.Weigh(p, shelf)
		if got := said(s); got != c.want {
			t.Errorf("white %s: said %q, want %q", what, got, c.want)
		}
		if w, ok := found(s, "vanillin-near-white"); ok && strings.HasPrefix(w.Where, "icing") && !strings.Contains(w.Text, "plain of the base") {
			t.Errorf("whose brown creeps is not said: %s", w.Text)
		}
	}
}
