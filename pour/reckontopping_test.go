package pour_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// strewnOn is one topping as it is reckoned here.
type strewnOn struct {
	perBar, all, adds, hides, balls, strips, plastic, hands float64
	when                                                    string
	parts                                                   []pour.ToppingMaterial
	pct                                                     []float64
}

// reckonTopping works one topping out from the plan and the data of the shelf.
func reckonTopping(p pour.Plan, r cutLaid, shelf pour.Shelf, t pour.Topping) strewnOn {
	along, across := r.usual(p.Mould)
	x := strewnOn{when: t.When}
	sum := sumOf(t.Parts, func(part pour.ToppingPart) float64 { return part.Percent })
	stays, blind := 0.0, false
	for _, part := range t.Parts {
		m, _ := by(shelf.Toppings, func(m pour.ToppingMaterial) bool { return m.ID == part.Material })
		f := part.Percent / sum
		x.parts, x.pct = append(x.parts, m), append(x.pct, f)
		layer, u := m.Use.SizeMM*2/3, m.Use
		if u.Flat {
			layer = u.SizeMM
		}
		if f > 0 && layer*u.DensityGML <= 0 {
			blind = true
		} else if f > 0 {
			x.hides += f * 1000 / (layer * u.DensityGML)
		}
		if u.SizeMM > 0 && u.DensityGML > 0 && !u.Flat && !m.Batter {
			one := math.Pi * u.SizeMM * u.SizeMM * u.SizeMM / 6 * u.DensityGML / 1000
			x.balls += f / one
			x.strips += f / one * (p.Cut.KerfMM + u.SizeMM)
		}
		if !m.Batter {
			stays += f * u.StaysPercent / 100
		}
		if m.Plastic {
			x.plastic += f * u.StaysPercent / 100
		}
		x.hands += f * u.HandsS
	}
	if blind {
		x.hides = math.NaN()
	}
	first, area := x.parts[0], along*across
	if x.when == "" {
		x.when = first.When
	}
	covered := func(percent float64) float64 { return percent / 100 * area / x.hides }
	switch u := first.Use; {
	case t.GPerBar > 0:
		x.perBar = t.GPerBar
	case t.CoveragePercent > 0:
		x.perBar = covered(t.CoveragePercent)
	case u.CoverHighPercent > 0:
		x.perBar = covered((u.CoverLowPercent + u.CoverHighPercent) / 2)
	default:
		x.perBar = (u.DoseLowG + u.DoseHighG) / 2
	}
	bars := r.count()
	x.hands *= bars / 60
	if t.HandsMin > 0 {
		x.hands = t.HandsMin
	}
	if x.onLoaf() {
		bars = p.Mould.LengthMM * p.Mould.WidthMM / area
	}
	x.all, x.adds = x.perBar*bars, x.perBar*stays
	return x
}

func (x strewnOn) onLoaf() bool { return x.when == "wet" || x.when == "skin" }

// usual is the thickness and the width of a bar on average; where none comes out, the mould's.
func (r cutLaid) usual(m pour.Mould) (along, across float64) {
	if r.count() > 0 {
		return r.thick, r.wide()
	}
	if m.Shape == "slab" && m.BarWidthMM > 0 {
		return m.BarMM, m.BarWidthMM
	}
	return m.BarMM, m.WidthMM
}

// reckonToppings puts what the toppings must be into want, and adds them to the bars; it returns what they bring.
func reckonToppings(p pour.Plan, r cutLaid, shelf pour.Shelf, got, want leaves) brought {
	along, across := r.usual(p.Mould)
	area := along * across
	var all brought
	cut, cured := want["bars.cut_g"].(float64), want["bars.cured_g"].(float64)
	list := make([]strewnOn, len(p.Top.Toppings))
	for i, t := range p.Top.Toppings {
		list[i] = reckonTopping(p, r, shelf, t)
		if cured += list[i].adds; list[i].onLoaf() {
			cut += list[i].adds
			all.loaf += list[i].adds / r.part(p.Mould)
		} else {
			all.later += list[i].adds
		}
	}
	want["bars.cut_g"], want["bars.cured_g"] = cut, cured
	if len(list) == 0 {
		want["toppings"] = ""
	}
	for i, x := range list {
		put := func(key string, v float64) { want[fmt.Sprintf("toppings[%d].%s", i, key)] = v }
		put("per_bar_g", x.perBar)
		put("all_g", x.all)
		put("adds_g", x.adds)
		put("covers_percent", 100*x.perBar*x.hides/area)
		put("pieces", unless(x.balls == 0, x.perBar*x.balls))
		put("cut_hits", unless(x.balls == 0 || !x.onLoaf(), x.perBar*x.strips/area*p.Mould.WidthMM))
		put("hands_min", x.hands)
		put("turn", float64(turnOf(list, i)))
		put("plastic_percent", unless(x.plastic == 0 || !(cured > 0), 100*x.perBar*x.plastic/cured))
		for k := range x.parts {
			put(fmt.Sprintf("parts[%d].percent", k), p.Top.Toppings[i].Parts[k].Percent)
			put(fmt.Sprintf("parts[%d].g", k), x.all*x.pct[k])
			at := fmt.Sprintf("toppings[%d].parts[%d].", i, k)
			want[at+"name"] = x.parts[k].Name
			if len(x.parts[k].Ingredients) == 0 {
				want[at+"ingredients"] = ""
			}
			for n, name := range x.parts[k].Ingredients {
				want[fmt.Sprintf("%singredients[%d]", at, n)] = name
			}
		}
		at := fmt.Sprintf("toppings[%d].", i)
		want[at+"when"], want[at+"name"] = x.when, x.parts[0].Name
		if p.Top.Toppings[i].Name != "" {
			want[at+"name"] = p.Top.Toppings[i].Name
		}
		want[at+"melts_c"], want[at+"weeps_rh_percent"] = meltsOf(x), got[at+"weeps_rh_percent"] // what it weeps at is chem's to reckon
	}
	return all
}

// unless is a figure, or none.
func unless(none bool, v float64) float64 {
	if none {
		return math.NaN()
	}
	return v
}

// turnOf counts those that go on before the ith.
func turnOf(list []strewnOn, i int) int {
	rank := map[string]int{"wet": 0, "skin": 1, "cut": 2, "cured": 3}
	turn := 1
	for k, x := range list {
		if rank[x.when] < rank[list[i].when] || rank[x.when] == rank[list[i].when] && k < i {
			turn++
		}
	}
	return turn
}

func meltsOf(x strewnOn) any {
	least := math.Inf(1)
	for i, m := range x.parts {
		if m.Heat.MeltsC.Known && x.pct[i] > 0 {
			least = min(least, m.Heat.MeltsC.V)
		}
	}
	if math.IsInf(least, 1) {
		return nil
	}
	return least
}

// toppingShopping is what is weighed of the toppings, as the finer scale shows it.
func toppingShopping(s pour.Sheet, shelf pour.Shelf, add func(kind, name string, g float64)) {
	for _, t := range s.Plan.Top.Toppings {
		x := reckonTopping(s.Plan, cutOf(s), shelf, t)
		for k, m := range x.parts {
			if g := x.all * x.pct[k]; !m.Batter && !(g <= 0) { // what is unknown stands on the list without a number
				add("topping", m.Name, math.Round(g/s.Plan.Show.LyeStepG)*s.Plan.Show.LyeStepG)
			}
		}
	}
}

// The same material in two toppings is bought once, and what is put on a bar is what the bars gain.
func TestToppingsAreWeighedOnceForAll(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		p := demo.Clone()
		g := rapid.Float64Range(0.5, 9).Draw(t, "g")
		bare := pour.Weigh(p, shelf)
		one := pour.Topping{GPerBar: g, When: pour.StrewSkin, Parts: []pour.ToppingPart{{Material: "coarse-salt", Percent: 100}}}
		late := one
		late.When = pour.StrewCure
		p.Top.Toppings = []pour.Topping{one, late}
		s := pour.Weigh(p, shelf)
		if !near(s.Bars.CutG, bare.Bars.CutG+g, 1e-9) || !near(s.Bars.CuredG, bare.Bars.CuredG+2*g, 1e-9) {
			t.Errorf("%g g on it, a bar weighs %g cut and %g cured; bare %g and %g", g, s.Bars.CutG, s.Bars.CuredG, bare.Bars.CutG, bare.Bars.CuredG)
		}
		salts := 0
		for _, w := range s.Totals {
			if w.Kind == pour.WeighTopping {
				salts++
				on, after := s.Toppings[0].AllG.V, s.Toppings[1].AllG.V
				if want := math.Round(on/p.Show.LyeStepG)*p.Show.LyeStepG + math.Round(after/p.Show.LyeStepG)*p.Show.LyeStepG; !near(w.G, want, 1e-9) {
					t.Errorf("%g g of salt to weigh, want %g", w.G, want)
				}
			}
		}
		if salts != 1 {
			t.Errorf("salt stands %d times on the list", salts)
		}
	})
}
