package pour_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/pourtest"
)

// Whatever a plan asks for, every figure a script can read is what plain arithmetic makes of plan and shelf, and no figure is left that nobody
// reckoned. What only the clock and the picture know is theirs to test: stages, turns, chances and neighbours; so are the warnings' words.
func TestEveryFigureIsReckonedASecondTime(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) { reckonPlan(t, pourtest.Rich(t, demo, shelf), shelf) })
}

// The same of what a maker can come to from the example, edit by edit, refused ones included.
func TestWhatEditsLeadToIsReckonedToo(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t, demo, shelf)
		for _, b := range []*pour.Batch{&p.Base, p.Icing} {
			if shares := sumOf(b.Jugs, func(j pour.Jug) float64 { return j.SharePercent }); !near(shares, 100, 1e-6) {
				t.Errorf("the shares sum to %v", shares)
			}
		}
		reckonPlan(t, p, shelf)
	})
}

func reckonPlan(t *rapid.T, p pour.Plan, shelf pour.Shelf) {
	t.Helper()
	sheet := pour.Weigh(p, shelf)
	got := written(t, sheet)
	want := leaves{"plan": p.Name, "scale_step_g": p.Show.ScaleStepG, "lye_step_g": p.Show.LyeStepG, "loss_percent": p.Mould.LossPercent}
	kinds := reckonEmbeds(p, sheet, reckon(p, shelf, pour.Base, 1))
	displaced := displacedBy(p, kinds)
	base, icing := reckonBatch(t, sheet, shelf, pour.Base, displaced, got, want), (*reckoned)(nil)
	want["icing"], want["piping"], want["cure"] = nil, nil, nil // drying takes the maker's hand; a test of its own reckons it
	want["cost"] = nil                                          // nothing on this shelf has a price; what has one is reckoned where costs are
	if p.Icing != nil {
		delete(want, "icing")
		icing = reckonBatch(t, sheet, shelf, pour.Icing, 0, got, want)
	}
	if base == nil || p.Icing != nil && icing == nil {
		return // it cannot be mixed, which has been judged
	}
	sheetDiffers(t, sheet, shelf, base, icing, kinds)
	cut := cutOf(sheet)
	reckonBars(sheet, cut, base, icing, want)
	embedLeaves(t, p, sheet, kinds, got, want)
	embedBars(p, sheet, base, kinds, want)
	cut.leaves(sheet, base, icing, kinds, reckonToppings(p, cut, shelf, got, want), got, want)
	runReckoned(t, p, got)
	for _, d := range got.without("stage_min", "pour_at_min", "late_chance", "neighbours", "run[", "warnings", "lye_in_at").differ(want) {
		t.Error(d)
	}
}

// reckonBatch reckons one batch and puts what it must be into want; nil where it cannot be mixed. A batch that fills a volume is taken at the
// size the program gave it, and then has to fill it.
func reckonBatch(t *rapid.T, sheet pour.Sheet, shelf pour.Shelf, n pour.BatchName, displaced float64, got, want leaves) *reckoned {
	t.Helper()
	p, at := sheet.Plan, string(n)
	if sum := sumOf(p.Batch(n).Oils, func(o pour.OilPart) float64 { return o.Percent }); !near(sum, 100, 1e-4+1e-9) {
		for path, v := range got {
			if rest, ok := strings.CutPrefix(path, at+"."); ok && v != nil && rest != "shape_g" && !strings.HasSuffix(rest, "mg_g") && (strings.HasSuffix(rest, "_g") || strings.HasSuffix(rest, "].g") || strings.HasSuffix(rest, "_ml")) {
				t.Errorf("the oils of the %s sum to %v, and yet %s is %v", at, sum, path, v)
			}
		}
		return nil
	}
	one := reckon(p, shelf, n, 1)
	if one.shortWater || one.shortOil {
		if got[at+".batter_g"] != nil {
			t.Errorf("%s cannot be mixed, and yet there are %v g of it", at, got[at+".batter_g"])
		}
		return nil
	}
	if n == pour.Icing && one.b.Size == pour.SizeShape && (sheet.Piping.Lacks != "" || !p.Piping.Shaped()) {
		if got[at+".batter_g"] != nil {
			t.Errorf("the shape of the icing lacks something, and yet there are %v g of it", got[at+".batter_g"])
		}
		return nil
	}
	all := one.b.OilsG
	if n == pour.Icing && one.b.Size == pour.SizeShape && (p.Piping.Shape == "" || reckonLay(p.Piping, p.Mould, 0, len(sheet.Cut.Bars)).units == 0) {
		if got[at+".batter_g"] != nil {
			t.Errorf("not one unit of icing fits, and yet there are %v g of it", got[at+".batter_g"])
		}
		return nil
	}
	switch one.b.Size {
	case pour.SizeBar:
		all = one.b.PerBarG / cutOf(sheet).part(p.Mould) / (one.poured * one.kept)
		if n == pour.Icing && p.Piping.Shaped() {
			all = got.number(t, at+".oils_g") / (1 - one.taken)
		}
	case pour.SizeMould, pour.SizeLayer, pour.SizeShape:
		all = got.number(t, at+".oils_g") / (1 - one.taken)
	}
	r := reckon(p, shelf, n, all)
	if n == pour.Icing {
		r.pipingReckoned(t, sheet, got, want)
	}
	r.displaced = displaced
	r.lyeLeaves(at, want)
	r.jugLeaves(t, at, got, want)
	r.volume(t, at, got, want)
	return r
}

// reckonedArea is the surface of the batter: of a disc, of all cavities, of a box.
func reckonedArea(m pour.Mould) float64 {
	switch {
	case m.Shape == "tube":
		return math.Pi / 4 * m.WidthMM * m.WidthMM
	case m.Shape == "cavity" && m.CavityML > 0:
		return float64(m.Cavities) * (m.CavityML / (m.FillMM / 1000))
	case m.Shape == "cavity":
		return float64(m.Cavities) * m.LengthMM * m.WidthMM
	}
	return m.LengthMM * m.WidthMM
}

func reckonBars(s pour.Sheet, r cutLaid, base, icing *reckoned, want leaves) {
	m, part := s.Plan.Mould, r.part(s.Plan.Mould)
	if r.count() == 0 {
		part = math.NaN()
	}
	cut := base.poured * base.kept * part
	cured := base.dry * base.kept * part / (1 - base.b.FinalMoisturePercent/100)
	perBar := math.NaN()
	if icing != nil {
		share := r.icingShare(s)
		perBar = icing.poured * icing.kept * share
		cut += perBar
		cured += icing.dry * icing.kept * share / (1 - icing.b.FinalMoisturePercent/100)
	}
	want["bars.bar_count"], want["bars.thickness_mm"] = r.count(), r.thick
	if r.count() == 0 {
		want["bars.thickness_mm"] = math.NaN()
	}
	want["bars.cut_g"], want["bars.cured_g"], want["bars.icing_per_bar_g"] = cut, cured, perBar
	want["bars.final_moisture_percent"] = base.b.FinalMoisturePercent
	stands := 0.0
	for at, r := range map[string]*reckoned{"base": base, "icing": icing} {
		if r != nil {
			ml, _ := want[at+".batter_ml"].(float64)
			stands += (ml + sumOf(r.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })) * r.kept * r.air * 1000 / reckonedArea(m)
			stands += r.displaced / reckonedArea(m)
		}
	}
	want["bars.stands_mm"], want["bars.over_rim_mm"] = stands, stands-m.HeightMM
}

func (r *reckoned) lyeLeaves(at string, want leaves) {
	b := r.b
	put := func(key string, v float64) { want[at+"."+key] = v }
	put("oils_g", r.all-r.taken)
	put("naoh_pure_g", r.naoh)
	put("koh_pure_g", r.koh)
	put("naoh_purity_percent", b.NaOHPurityPercent)
	put("koh_purity_percent", b.KOHPurityPercent)
	put("naoh_weighed_g", r.dryNaOH)
	put("koh_weighed_g", r.dryKOH)
	put("stock_lye_g", r.stock)
	put("stock_lye_percent", b.StockLyePercent)
	put("water_to_add_g", r.add)
	put("extras_g", r.extraG)
	put("water_in_extras_g", r.water)
	put("lye_concentration_percent", 100*r.alkali/(r.alkali+r.allW))
	put("lye_as_mixed_percent", 100*r.alkali/(r.alkali+r.stockWater+r.add+r.before))
	put("batter_g", r.batter)
	put("superfat_percent", b.SuperfatPercent)
	alkali := r.naoh*molKOH/molNaOH + r.koh - r.acid
	put("superfat_low_percent", r.free(alkali, r.low))
	put("superfat_high_percent", r.free(alkali, r.high))
	for i, o := range r.oils {
		oil := fmt.Sprintf("oils[%d].", i)
		want[at+"."+oil+"name"] = o.name
		put(oil+"g", o.g)
		put(oil+"sap_koh_mg_g", o.mid)
		put(oil+"sap_low_koh_mg_g", o.low)
		put(oil+"sap_high_koh_mg_g", o.high)
	}
	for i, x := range r.extras {
		extra := fmt.Sprintf("extras[%d].", i)
		want[at+"."+extra+"name"] = x.x.Name
		put(extra+"g", x.g)
		put(extra+"water_percent", x.x.WaterPercent)
	}
	if len(r.extras) == 0 {
		want[at+".extras"] = ""
	}
}

// jugLeaves reckons the jugs. What each gets on the scale is the program's to choose, within the rules of the largest remainder.
func (r *reckoned) jugLeaves(t *rapid.T, at string, got, want leaves) {
	t.Helper()
	alkali := r.naoh*molKOH/molNaOH + r.koh - r.acid
	weighed := make([]float64, len(r.jugs))
	for i, j := range r.jugs {
		jug := fmt.Sprintf("%s.jugs[%d].", at, i)
		weighed[i] = got.number(t, jug+"batter_weigh_g")
		part := j.batter / r.batter
		want[jug+"name"], want[jug+"share_percent"] = j.jug.Name, j.jug.SharePercent
		want[jug+"batter_g"], want[jug+"batter_weigh_g"] = j.batter, weighed[i]
		want[jug+"total_g"] = weighed[i] + j.pigments + j.oil + j.water + j.other + j.scentG
		want[jug+"superfat_percent"] = r.free(part*alkali-j.scentKOH, part*(r.mixedMid+r.fat)+j.oil*r.carrier.mid/1000)
		want[jug+"superfat_low_percent"] = r.free(part*alkali, part*(r.mixedLow+r.fat)+j.oil*r.carrier.low/1000)
		want[jug+"scent_load_percent"] = 0.0
		if part > 0 {
			want[jug+"scent_load_percent"] = 100 * j.scentG / (r.all * part)
		}
		j.doseLeaves(jug, want)
	}
	r.byRemainder(t, at, weighed)
	batch, _ := r.onTheScale(weighed)
	want[at+".superfat_as_weighed_percent"] = batch
}

func (j reckonedJug) doseLeaves(jug string, want leaves) {
	if len(j.pigment) == 0 {
		want[jug+"colourants"] = ""
	}
	if len(j.scents) == 0 {
		want[jug+"scents"] = ""
	}
	for k := range j.pigment {
		dose := fmt.Sprintf("%scolourants[%d].", jug, k)
		want[dose+"name"], want[dose+"pigment_g"], want[dose+"carrier_g"] = j.names[k], j.pigment[k], j.wet[k]
	}
	for k, x := range j.scents {
		scent := fmt.Sprintf("%sscents[%d].", jug, k)
		want[scent+"name"], want[scent+"g"] = x.name, x.g
	}
}

// byRemainder judges what the jugs get on the scale: whole steps, as many as the batter has, none a step off, and nobody gets the step above
// who lost less than one that did not.
func (r *reckoned) byRemainder(t *rapid.T, at string, weighed []float64) {
	t.Helper()
	step, sum := r.plan.Show.ScaleStepG, 0.0
	leastUp, mostDown := 1.0, 0.0
	for i, g := range weighed {
		steps, exact := g/step, r.jugs[i].batter/step
		lost := exact - math.Floor(exact+1e-7)
		if !near(steps, math.Round(steps), 1e-9) || math.Abs(steps-exact) > 1+1e-6 {
			t.Errorf("%s: on a step of %v jug %d gets %v of %v g", at, step, i, g, r.jugs[i].batter)
		}
		switch {
		case steps > exact+1e-7:
			leastUp = min(leastUp, lost)
		case lost > 1e-6:
			mostDown = max(mostDown, lost)
		}
		sum += steps
	}
	if want := math.Round(r.batter / step); math.Round(sum) != want {
		t.Errorf("%s: the jugs get %v steps of %v", at, sum, want)
	}
	if leastUp < mostDown-1e-6 {
		t.Errorf("%s: one that lost %v of a step was rounded up, one that lost %v was not", at, leastUp, mostDown)
	}
}

// volume reckons how much room the batter takes and whether what is sized by a volume fills it. The tables of the lye's density and heat are
// chem's to test: here a handbook's every tenth percent is good to a hundredth.
func (r *reckoned) volume(t *rapid.T, at string, got, want leaves) {
	t.Helper()
	ml := got.number(t, at+".batter_ml")
	want[at+".batter_ml"] = ml
	mix := r.mixC()
	rest := ml
	for _, o := range r.oils {
		whole := o.g
		if o.id == r.carrier.id {
			whole += r.taken // the blend's own density is that of the whole, and what is taken leaves in its proportion
		}
		rest -= whole * (r.all - r.taken) / r.all / (o.fat.DensityGML - 0.00067*(mix-o.fat.DensityC))
	}
	for _, x := range r.extras {
		density := x.x.DensityGML
		if x.x.WaterPercent > 0 || density == 0 {
			density = 1.5
		}
		rest -= x.g * (1 - x.x.WaterPercent/100) / density
	}
	lye := r.alkali + r.allW
	strength := (r.naoh + r.koh) / lye
	if density := r.density(strength); math.Abs(lye/rest/density-1) > 0.01 {
		t.Errorf("%s: %v mL of batter leave %v mL for %v g of lye of %v: %v g/mL, want about %v", at, ml, rest, lye, strength, lye/rest, density)
	}
	poured := ml + sumOf(r.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })
	m := r.plan.Mould
	height := map[string]float64{pour.SizeMould: m.FillMM, pour.SizeLayer: r.b.LayerMM}[r.b.Size]
	if height > 0 && !near(poured*r.kept*r.air*1000+r.displaced, reckonedArea(m)*height, 1e-9) {
		t.Errorf("%s: %v mL do not stand %v mm high", at, poured*r.kept, height)
	}
	want[at+".lye_rise_k"] = got[at+".lye_rise_k"]
	r.rise(t, at, got)
}

// density is that of the lye in the batter, g/mL: of NaOH and of KOH at 20 °C every ten percent (CRC Handbook, memory), side by side in a mixed
// lye, and a twentieth of a percent less for every degree above.
func (r *reckoned) density(strength float64) float64 {
	naoh := between([]float64{0.9982, 1.1089, 1.2192, 1.3277, 1.4299, 1.5253}, strength*10)
	koh := between([]float64{0.9982, 1.0918, 1.1884, 1.2905, 1.3991, 1.5143}, strength*10)
	return (r.naoh + r.koh) / (r.naoh/naoh + r.koh/koh) * (1 - 0.0005*(r.mixC()-20))
}

// between draws straight lines through values that stand at 0, 1, 2 and so on.
func between(at []float64, x float64) float64 {
	i := min(int(x), len(at)-2)
	return at[i] + (at[i+1]-at[i])*(x-float64(i))
}

// mixC is how warm the batter is: measured, or what oils and lye give each other. Specific heat of a fat: Choi & Okos; of lye from 4.18 for
// water to 3.47 kJ/(kg K) for 40 % (derived, as chem's table).
func (r *reckoned) mixC() float64 {
	if r.b.BatterMeasured {
		return r.b.BatterC
	}
	oil := (r.all - r.taken) * (1.9842 + 1.4733e-3*r.b.OilsC - 4.8008e-6*r.b.OilsC*r.b.OilsC)
	lyeG := r.alkali + r.allW
	lye := lyeG * between([]float64{4.18, 3.86, 3.70, 3.61, 3.47, 3.23, 3}, (r.naoh+r.koh)/lyeG*10)
	return (oil*r.b.OilsC + lye*r.b.LyeC) / (oil + lye)
}

// rise judges how far dissolving dry alkali warms its water: Felder & Rousseau, table B.11, and the heat of the solution give 27.9, 57.1, 79.3,
// 89.5 and 86.8 K for 10 to 50 % of pure NaOH (derived). A stock lye is dissolved already; more KOH than NaOH has no table.
func (r *reckoned) rise(t *rapid.T, at string, got leaves) {
	t.Helper()
	water := r.add + r.before
	strength := (r.naoh + r.koh) / (r.alkali + water)
	moles := r.koh / molKOH / (r.koh/molKOH + r.naoh/molNaOH)
	if math.Abs(moles-0.5) < 1e-9 || math.Abs(strength-0.5) < 1e-9 {
		return // at the bound itself the last bit decides
	}
	rise, known := got[at+".lye_rise_k"].(float64)
	if want := r.stock == 0 && moles < 0.5 && strength < 0.5; known != want {
		t.Errorf("%s: the rise is known %v, want %v", at, known, want)
	}
	if want := between([]float64{0, 27.9, 57.1, 79.3, 89.5, 86.8, 80}, strength*10); known && math.Abs(rise-want) > 2.5 {
		t.Errorf("%s: lye of %v as mixed rises by %v K, want about %v", at, strength, rise, want)
	}
}
