package pour_test

import (
	"fmt"
	"math"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// sheetDiffers compares what only a sheet says, and no script reads: what the scales show, what a jug's superfat is judged by, what is dry, what a
// scent is in the bar. It lists what is not as reckoned.
func sheetDiffers(t *rapid.T, s pour.Sheet, shelf pour.Shelf, base, icing *reckoned, kinds []reckonedKind) {
	t.Helper()
	cured, scents := 0.0, map[string]float64{}
	batches := map[pour.BatchName]*reckoned{pour.Base: base}
	if icing != nil {
		batches[pour.Icing] = icing
	}
	for _, r := range batches {
		cured += r.dry * r.kept * 100 / (100 - r.b.FinalMoisturePercent)
		for id, g := range r.scentG {
			scents[id] += g * r.kept
		}
	}
	all := sumOf([]*reckoned{base, icing}, func(r *reckoned) float64 {
		if r == nil {
			return 0
		}
		return sumOf(r.b.Scents, func(x pour.ScentPart) float64 { return x.PercentOfOils / 100 * r.all * r.kept })
	})
	same := func(what string, got, want float64) {
		t.Helper()
		if !near(got, want, 1e-9) {
			t.Errorf("%s is %v, reckoned %.12g", what, got, want)
		}
	}
	same("all scent in the bar", s.Bars.BaseScentPercent, 100*all/cured)
	for _, b := range s.Batches() {
		r := batches[b.Name]
		r.weighedSame(*b, func(what string, got, want float64) { t.Helper(); same(string(b.Name)+": "+what, got, want) })
		r.jugsSame(*b, func(what string, got, want float64) { t.Helper(); same(string(b.Name)+": "+what, got, want) })
		for _, x := range b.Scents {
			same(string(b.Name)+": "+x.ID+" in the bar", x.InBarPercent, 100*scents[x.ID]/cured)
			same(string(b.Name)+": its vanillin", x.VanillinInBarPercent, scents[x.ID]/cured*x.VanillinPercent)
		}
	}
	totalsSame(t, s, shelf, base, icing, kinds)
}

// weighedSame compares what goes on the scales and what the whole batch comes to.
func (r *reckoned) weighedSame(b pour.BatchSheet, same func(what string, got, want float64)) {
	coarse, fine := r.plan.Show.ScaleStepG, r.plan.Show.LyeStepG
	down := func(g float64) float64 { return math.Floor(g/fine+1e-7) * fine }
	for i, g := range largestRemainder(r.oils, coarse) {
		same(b.Oils[i].ID+" on the scale", b.Oils[i].WeighG, g)
	}
	same("oils on the scale", b.Size.OilsWeighG, math.Round((r.all-r.taken)/coarse)*coarse)
	same("batter on the scale", b.Size.BatterWeighG, math.Round(r.batter/coarse)*coarse)
	same("NaOH on the scale", b.Lye.NaOH.ToWeighG, down(r.dryNaOH))
	same("KOH on the scale", b.Lye.KOH.ToWeighG, down(r.dryKOH))
	same("stock lye on the scale", b.Lye.Stock.ToWeighG, down(r.stock))
	same("all water", b.Lye.AllWaterG, r.allW)
	same("water there before", b.Lye.WaterBeforeG, r.before)
	same("pure lye", b.Lye.PureConcentrationPercent, 100*(r.naoh+r.koh)/(r.alkali+r.allW))
	same("demand", b.Lye.DemandKOHG, r.mid)
	same("acids", b.Lye.AcidKOHG, r.acid)
	same("fat in extras", b.Lye.ExtraFatKOHG, r.fat)
	same("poured", b.Size.PouredG, r.poured*r.kept)
	same("dry", b.Size.DryG, r.dry)
	alkali := r.naoh*molKOH/molNaOH + r.koh - r.acid
	same("superfat, exact", b.Superfat.ExactPercent, r.free(alkali, r.mid+r.fat))
	same("superfat as mixed", b.Superfat.MixedPercent, r.free(alkali, r.mixedMid+r.fat))
	poured := (b.Size.BatterML + sumOf(r.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })) * r.kept
	same("poured mL", b.Size.PouredML, poured)
	same("height", b.Size.HeightMM, (poured*r.air*1000+r.displaced)/reckonedArea(r.plan.Mould))
}

// jugsSame compares what each jug is judged by.
func (r *reckoned) jugsSame(b pour.BatchSheet, same func(what string, got, want float64)) {
	weighed := make([]float64, len(b.Jugs))
	for i, j := range b.Jugs {
		weighed[i] = j.BatterWeighG
	}
	_, onScale := r.onTheScale(weighed)
	alkali := r.naoh*molKOH/molNaOH + r.koh - r.acid
	for i, j := range r.jugs {
		got, part := b.Jugs[i], j.batter/r.batter
		firm := r.free(part*alkali, part*(r.mixedMid+r.fat)+j.oil*r.carrier.mid/1000)
		same(got.Name+"'s superfat without its scents", got.Superfat.FirmPercent, firm)
		if weighed[i] == 0 { // the scale shows nothing of it: what is meant is said
			onScale[i] = firm
		}
		same(got.Name+"'s superfat on the scale", got.Superfat.AsWeighedPercent, onScale[i])
		same(got.Name+" mL", got.TotalML, b.Size.BatterML*part+j.mlOnTopOf)
		vanillin := 0.0
		if j.vanillin > 0 {
			vanillin = 100 * j.vanillin / (r.dry * part * 100 / (100 - r.b.FinalMoisturePercent))
		}
		same(got.Name+"'s vanillin", got.VanillinPercent, vanillin)
	}
}

// totalsSame compares the shopping list: each thing once, the sum of what the scales show of it, largest first.
func totalsSame(t *rapid.T, s pour.Sheet, shelf pour.Shelf, base, icing *reckoned, kinds []reckonedKind) {
	t.Helper()
	want := map[string]float64{}
	add := func(kind, name string, g float64) {
		if !(g <= 0) {
			want[kind+" "+name] += g
		}
	}
	base.shopping(add)
	if icing != nil {
		icing.shopping(add)
	}
	for _, k := range kinds {
		fine := s.Plan.Show.LyeStepG
		add("embed", k.e.Name, math.Round(k.g*float64(len(k.along)*len(k.across))/fine)*fine)
	}
	toppingShopping(s, shelf, add)
	last := math.Inf(1)
	for _, w := range s.Totals {
		if w.G == 0 { // there is less of it than the scale shows
			continue
		}
		key := fmt.Sprint(w.Kind, " ", w.Name)
		if math.IsNaN(w.G) && math.IsNaN(want[key]) {
			delete(want, key)
			last = -1 // what is unknown stands last
			continue
		}
		if !near(w.G, want[key], 1e-9) || w.G > last {
			t.Errorf("of %s there are %v g, reckoned %v; before it stand %v g", key, w.G, want[key], last)
		}
		delete(want, key)
		last = w.G
	}
	if len(want) > 0 {
		t.Errorf("not on the list: %v", want)
	}
}

// shopping is what is weighed, as the scales show it: oils and water on the kitchen scale, the rest on the finer one, alkali rounded down.
func (r *reckoned) shopping(add func(kind, name string, g float64)) {
	coarse, fine := r.plan.Show.ScaleStepG, r.plan.Show.LyeStepG
	down := func(g float64) float64 { return math.Floor(g/fine+1e-7) * fine }
	near := func(g, step float64) float64 { return math.Round(g/step) * step }
	if r.b.ReadyBlend != "" {
		add("oil", "ready-mixed oils: "+r.b.ReadyBlend, near(r.all-r.taken, coarse))
	} else {
		for i, g := range largestRemainder(r.oils, coarse) {
			add("oil", r.oils[i].name, g)
		}
	}
	add("alkali", "sodium hydroxide (NaOH)", down(r.dryNaOH))
	add("alkali", "potassium hydroxide (KOH)", down(r.dryKOH))
	add("alkali", "stock lye", down(r.stock))
	add("water", "water", near(r.add, coarse))
	for _, x := range r.extras {
		add("extra", x.x.Name, near(x.g, fine))
	}
	for _, j := range r.jugs {
		for k, with := range j.wets {
			name := map[string]string{"oil": r.carrier.name, "none": ""}[with]
			if with == "water" || with == "glycerin" {
				name = with
			}
			add("colourant", j.names[k], near(j.pigment[k], fine))
			add("carrier", name, near(j.wet[k], fine))
		}
		for _, x := range j.scents {
			add("scent", x.name, near(x.g, fine))
		}
	}
}
