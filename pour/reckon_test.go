package pour_test

import (
	"pourbench/chem"
	"pourbench/pour"
)

// This is the second working-out of what pour works out: plain arithmetic from a plan and the data of a shelf, by design.md's definitions. It
// calls no function of pour or of chem, so that a slip in theirs cannot be in it as well.

// One mol of each, g: CIAAW atomic weights.
const (
	molNaOH, molKOH       = 39.99677, 56.1053
	molGlycerol, molWater = 92.094, 18.015
)

// reckoned is one batch as it is reckoned here. A capital is grams unless it says otherwise.
type reckoned struct {
	displaced float64 // by embeds, mm³
	plan      pour.Plan
	b         *pour.Batch
	kept      float64 // the part of it that reaches the mould or the bars
	air       float64 // how many times the room of its batter it takes there

	all                    float64 // oils, those that carry colours included
	taken                  float64 // of them, for carriers that come out of the batch
	oils                   []reckonedOil
	extras                 []reckonedExtra
	low, mid, high         float64 // what all oils take up, g KOH
	mixedLow, mixedMid     float64 // what the oils that are left to be mixed take up
	acid, fat              float64 // and the extras, g KOH
	extraG, water, before  float64 // the extras, their water, and of it what is there before the alkali
	naoh, koh              float64 // pure
	dryNaOH, dryKOH, stock float64 // to be weighed
	stockWater, add, allW  float64
	batter                 float64
	jugs                   []reckonedJug
	scentG                 map[string]float64
	dry, poured            float64 // dry: before loss
	carrier                reckonedOil
	shortWater, shortOil   bool
	alkali                 float64 // as weighed; of a stock lye what is in it
}

type reckonedOil struct {
	fat            chem.Fat
	name, id       string
	g              float64
	low, mid, high float64 // mg KOH per g
}

type reckonedExtra struct {
	x pour.Extra
	g float64
}

type reckonedJug struct {
	jug                 pour.Jug
	batter              float64
	pigment, wet        []float64
	wets                []string // with what
	names               []string
	oil, water, other   float64 // carriers
	scents              []reckonedScent
	scentG, scentKOH    float64
	vanillin            float64
	pigments, mlOnTopOf float64
}

type reckonedScent struct {
	id, name string
	g        float64
}

func sumOf[T any](list []T, f func(T) float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += f(v)
	}
	return sum
}

// by finds an entry of the shelf without the shelf's own search.
func by[T any](list []T, is func(T) bool) (T, bool) {
	for _, v := range list {
		if is(v) {
			return v, true
		}
	}
	var none T
	return none, false
}

// reckon works a batch out at a mass of all its oils.
func reckon(p pour.Plan, shelf pour.Shelf, n pour.BatchName, all float64) *reckoned {
	r := &reckoned{plan: p, b: &p.Base, kept: 1 - p.Mould.LossPercent/100, air: 1, all: all, scentG: map[string]float64{}}
	if n == pour.Icing {
		r.b, r.kept = p.Icing, 1-p.Icing.LossPercent/100
	}
	r.reckonOils(shelf)
	r.reckonExtras(shelf)
	r.reckonLye()
	r.reckonCarriers(shelf)
	r.reckonJugs(shelf)
	r.reckonScents(shelf)
	r.reckonDry()
	return r
}

func (r *reckoned) reckonOils(shelf pour.Shelf) {
	parts := sumOf(r.b.Oils, func(o pour.OilPart) float64 { return o.Percent })
	largest, named := -1.0, r.b.CarrierOil
	for _, part := range r.b.Oils {
		oil := reckonOil(shelf, part.Oil)
		oil.g = part.Percent / parts * r.all
		r.oils = append(r.oils, oil)
		r.low += oil.g * oil.low / 1000
		r.mid += oil.g * oil.mid / 1000
		r.high += oil.g * oil.high / 1000
		if named == "" && part.Percent > largest {
			largest, r.carrier = part.Percent, oil
		}
	}
	if named != "" {
		r.carrier = reckonOil(shelf, named)
	}
}

func reckonOil(shelf pour.Shelf, id string) reckonedOil {
	entry, _ := by(shelf.Oils, func(o pour.Oil) bool { return o.ID == id })
	f := entry.Fat
	o := reckonedOil{fat: f, name: entry.Name, id: id, low: f.Sap, mid: f.Sap, high: f.Sap}
	if f.SapHigh > f.Sap {
		o.high = f.SapHigh
	}
	if f.SapLow > 0 && f.SapLow < o.low {
		o.low = f.SapLow
	}
	if theory := theorySap(f.Profile); f.Kind == chem.Triglyceride && theory > 0 {
		o.low = min(o.low, theory*(1000-f.UnsaponifiableGKg)/1000)
	}
	return o
}

// theorySap is the saponification value that a fat's acids call for: three of them and glycerol, less three water, take three KOH.
func theorySap(p chem.Profile) float64 {
	carbons := [chem.AcidCount]float64{6, 8, 10, 12, 14, 16, 16, 18, 18, 18, 18, 20, 20, 22, 22, 24, 18}
	bonds := [chem.AcidCount]float64{0, 0, 0, 0, 0, 0, 1, 0, 1, 2, 3, 0, 1, 0, 1, 0, 1}
	g, mol := 0.0, 0.0
	for i, part := range p {
		oxygens := 2.0
		if chem.Acid(i) == chem.Ricinoleic {
			oxygens = 3
		}
		g += part
		mol += part / (carbons[i]*12.011 + (carbons[i]*2-bonds[i]*2)*1.008 + oxygens*15.999)
	}
	if g == 0 {
		return 0
	}
	return 1000 * molKOH * 3 / (3*g/mol + molGlycerol - 3*molWater)
}

func (r *reckoned) reckonExtras(shelf pour.Shelf) {
	for _, part := range r.b.Extras {
		x, ok := by(shelf.Extras, func(x pour.Extra) bool { return x.ID == part.Extra })
		if c, colour := by(shelf.Colourants, func(c pour.Colourant) bool { return c.ID == part.Extra }); !ok && colour {
			x = pour.Extra{Name: c.Name, In: pour.InOils, LyeWhen: pour.LyeBefore, DensityGML: 3.5} // a dry powder
		}
		g := r.all * part.PercentOfOils / 100
		r.extras = append(r.extras, reckonedExtra{x, g})
		r.extraG += g
		r.water += g * x.WaterPercent / 100
		r.acid += g * x.AlkaliKOHMgG / 1000
		r.fat += g * x.FatPercent * x.FatSapKOHMgG / 1e5
		in := part.In
		if in == "" {
			in = x.In
		}
		if in == pour.InWater || in == pour.InLye && x.LyeWhen == pour.LyeBefore {
			r.before += g * x.WaterPercent / 100
		}
	}
}

func (r *reckoned) reckonLye() {
	b := r.b
	koh := r.mid*(1-b.SuperfatPercent/100) + r.acid // were it all KOH
	share := b.KOHSharePercent / 100
	if b.KOHShareBy == pour.ShareMass {
		share = share / molKOH / (share/molKOH + (1-share)/molNaOH)
	}
	r.koh = koh * share
	r.naoh = (koh - r.koh) / molKOH * molNaOH
	alkali := r.naoh
	if b.StockLyePercent > 0 {
		r.stock = r.naoh * 100 / b.StockLyePercent
		r.stockWater = r.stock - r.naoh
	} else {
		r.dryNaOH, r.dryKOH = r.naoh*100/b.NaOHPurityPercent, r.koh*100/b.KOHPurityPercent
		alkali = r.dryNaOH + r.dryKOH
	}
	r.alkali = alkali
	r.allW = alkali * (100/b.LyeConcentrationPercent - 1)
	r.add = r.allW - r.water - r.stockWater
	r.shortWater = r.add < 0
	r.batter = r.all + r.extraG + r.add
	r.batter += r.dryNaOH + r.dryKOH + r.stock
}

// wetting is what a dose is wetted with, and how many grams of it a gram takes.
func wetting(shelf pour.Shelf, d pour.Dose) (name, with string, parts float64) {
	c, _ := by(shelf.Colourants, func(c pour.Colourant) bool { return c.ID == d.Colourant })
	with, parts = d.Carrier, d.CarrierParts
	if parts == 0 {
		parts = c.CarrierParts
	}
	switch {
	case with == "" && c.Disperse == "water":
		with = "water"
	case with == "":
		with = "oil"
	case with == "none":
		parts = 0
	}
	return c.Name, with, parts
}

// reckonCarriers takes oil out of the batch for the colours, where the plan says so. Whatever x is left of the batter w, its colours want
// p·x of oil for p of carrier in each gram, and x + p·x = w.
func (r *reckoned) reckonCarriers(shelf pour.Shelf) {
	if r.b.Carrier == pour.CarrierBatch {
		shares := sumOf(r.b.Jugs, func(j pour.Jug) float64 { return j.SharePercent })
		perG := 0.0
		for _, j := range r.b.Jugs {
			for _, d := range j.Colourants {
				if _, with, parts := wetting(shelf, d); with == "oil" {
					perG += j.SharePercent / shares * d.DosePercent / 100 * parts
				}
			}
		}
		r.taken = r.batter * perG / (1 + perG)
		r.batter -= r.taken
	}
	for i := range r.oils {
		o := &r.oils[i]
		if o.id == r.carrier.id {
			o.g -= r.taken
			r.shortOil = r.shortOil || o.g < 0
		}
		r.mixedLow += o.g * o.low / 1000
		r.mixedMid += o.g * o.mid / 1000
	}
}

func (r *reckoned) reckonJugs(shelf pour.Shelf) {
	shares := sumOf(r.b.Jugs, func(j pour.Jug) float64 { return j.SharePercent })
	for _, j := range r.b.Jugs {
		out := reckonedJug{jug: j, batter: r.batter * j.SharePercent / shares}
		for _, d := range j.Colourants {
			name, with, parts := wetting(shelf, d)
			pigment := out.batter * d.DosePercent / 100
			wet := pigment * parts
			out.names, out.wets = append(out.names, name), append(out.wets, with)
			out.pigment, out.wet = append(out.pigment, pigment), append(out.wet, wet)
			out.pigments += pigment
			switch with {
			case "oil":
				out.oil += wet
				out.mlOnTopOf += wet / 0.915
			case "water":
				out.water += wet
				out.mlOnTopOf += wet / 0.9982
			default:
				out.other += wet
				out.mlOnTopOf += wet / 1.2613
			}
			out.mlOnTopOf += pigment / 3.5
		}
		r.jugs = append(r.jugs, out)
	}
}

func (r *reckoned) reckonScents(shelf pour.Shelf) {
	for _, part := range r.b.Scents {
		sc, _ := by(shelf.Scents, func(s pour.Scent) bool { return s.ID == part.Scent })
		into := map[string]bool{}
		for _, name := range part.Into {
			into[name] = true
		}
		scented := sumOf(r.jugs, func(j reckonedJug) float64 {
			if len(into) == 0 || into[j.jug.Name] {
				return j.batter
			}
			return 0
		})
		for i := range r.jugs {
			j := &r.jugs[i]
			if scented == 0 || len(into) > 0 && !into[j.jug.Name] {
				continue
			}
			g := r.all * part.PercentOfOils / 100 * j.batter / scented
			j.scents = append(j.scents, reckonedScent{sc.ID, sc.Name, g})
			j.scentG += g
			j.scentKOH += g * sc.AlkaliKOHMgG / 1000
			j.vanillin += g * sc.VanillinPercent / 100
			j.mlOnTopOf += g / sc.DensityGML
		}
		r.scentG[sc.ID] += r.all * part.PercentOfOils / 100
	}
}

// reckonDry leaves out what dries away or is no soap: water, whoever brought it, and what is not alkali in the alkali.
func (r *reckoned) reckonDry() {
	r.dry = r.all - r.taken + r.naoh + r.koh + r.extraG - r.water
	r.poured = r.batter
	for _, j := range r.jugs {
		r.dry += j.pigments + j.oil + j.other + j.scentG
		r.poured += j.pigments + j.oil + j.other + j.water + j.scentG
	}
}

// free is the superfat, percent, where alkali meets what would take up demand, both g KOH.
func (r *reckoned) free(alkali, demand float64) float64 {
	if demand == 0 {
		return r.b.SuperfatPercent
	}
	return 100 * (demand - alkali) / demand
}
