// Package pourtest is for tests only: it draws plans that use whatever a plan can use.
package pourtest

import (
	"slices"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// Rich draws a plan that uses whatever a plan can use: every kind of alkali, acids, milk and purées, every way to carry a colour, scents in
// both batches, every size, every mould, coarse scales and fine ones. Most of them can be mixed.
func Rich(t *rapid.T, plan pour.Plan, shelf pour.Shelf) pour.Plan {
	p := plan.Clone()
	p.Swirl.First, p.Swirl.Last, p.Run.Order = "", "", nil
	p.Swirl.Technique = pick(t, "technique", shelf.Techniques).ID
	p.Show.ScaleStepG = rapid.SampledFrom([]float64{0.01, 0.1, 0.5, 1, 2, 5, 20}).Draw(t, "scale")
	p.Show.LyeStepG = rapid.SampledFrom([]float64{0.001, 0.01, 0.1, 0.3, 1, 5}).Draw(t, "lye scale")
	m := &p.Mould
	m.Shape = rapid.SampledFrom([]string{"loaf", "slab"}).Draw(t, "shape")
	m.LengthMM, m.WidthMM = odd(t, "length", 150, 400), odd(t, "width", 60, 300)
	m.BarMM, m.BarWidthMM = odd(t, "bar", 15, 100), float64(rapid.IntRange(0, 1).Draw(t, "cut both ways"))*40.7
	m.FillMM, m.LossPercent = odd(t, "fill", 20, 70), odd(t, "loss", 0, 10)
	p.Run.CoolLyeMin = float64(rapid.IntRange(0, 1).Draw(t, "cooling is planned")) * 45
	p.Run.SplitMin, p.Run.StirMin, p.Run.ScentMin, p.Run.BedMin = odd(t, "split", 0, 2), odd(t, "stir", 0, 2), odd(t, "scent", 0, 2), odd(t, "bed", 0, 5)
	drawEmbeds(t, &p)
	p.Base = drawBatch(t, p.Base, shelf, []string{pour.SizeMould, pour.SizeOils})
	p.Icing = nil
	if rapid.IntRange(0, 3).Draw(t, "icing") > 0 {
		icing := drawBatch(t, *plan.Icing, shelf, []string{pour.SizeBar, pour.SizeLayer, pour.SizeOils})
		icing.StartAtMin = odd(t, "start", -40, 40)
		drawPiping(t, &p, &icing)
		p.Icing = &icing
	}
	p.Room.HumidityPercent = dosed(t, "humidity", 99)
	p.Cure = pour.Cure{WeeklyLossPercent: dosed(t, "dry when it loses", 3), PackDays: dosed(t, "packed after", 90), LabelG: dosed(t, "label says", 150)}
	if rapid.Bool().Draw(t, "cut by its own plan") {
		p.Cut = Cut(t, p.Mould)
	}
	p.Top.Toppings = drawToppings(t, shelf)
	drawLabel(t, &p, shelf)
	remould(t, &p)
	if faults := p.Check(shelf); len(faults) > 0 {
		t.Fatalf("drew a plan that cannot be: %v", faults)
	}
	return p
}

// remould pours one plan in six into a round tube, which has no top, and one in six into single cavities, whose top the icing alone is piped on.
func remould(t *rapid.T, p *pour.Plan) {
	m := &p.Mould
	switch rapid.IntRange(0, 5).Draw(t, "another mould") {
	case 0:
		d := odd(t, "diameter", 40, 120)
		m.Shape, m.LengthMM, m.WidthMM, m.FillMM, m.BarMM = pour.ShapeTube, d, d, odd(t, "tube filled", 100, 300), odd(t, "round", 12, 40)
		p.Icing = nil
	case 1:
		m.Shape, m.Cavities = pour.ShapeCavity, rapid.IntRange(1, 40).Draw(t, "cavities")
		m.LengthMM, m.WidthMM, m.FillMM = odd(t, "cavity's length", 30, 120), odd(t, "cavity's width", 30, 90), odd(t, "cavity filled", 15, 50)
		m.CavityML = m.LengthMM * m.WidthMM * m.FillMM / 1000 * rapid.SampledFrom([]float64{0, 0.613}).Draw(t, "cavity holds")
	default:
		return
	}
	p.Top = pour.Top{}
}

// odd draws a number that is no round one, so that nothing lies exactly between two steps of a scale.
func odd(t *rapid.T, what string, low, high float64) float64 {
	steps := rapid.IntRange(0, 1000).Draw(t, what)
	return low + (high-low)*(float64(steps)/1000)*0.999871 + 0.0000137
}

// dosed is as odd, and now and then none at all.
func dosed(t *rapid.T, what string, most float64) float64 {
	if rapid.IntRange(0, 7).Draw(t, "none of it") == 0 {
		return 0
	}
	return odd(t, what, most/100, most)
}

// pick draws one of a list by its place, so that a failure prints a number and no entry of the shelf.
func pick[T any](t *rapid.T, what string, list []T) T {
	return list[rapid.IntRange(0, len(list)-1).Draw(t, what)]
}

func drawBatch(t *rapid.T, b pour.Batch, shelf pour.Shelf, sizes []string) pour.Batch {
	b = b.Clone()
	b.Size = rapid.SampledFrom(sizes).Draw(t, "size")
	b.OilsG, b.PerBarG, b.LayerMM, b.LossPercent = odd(t, "oils", 60, 4000), odd(t, "per bar", 5, 60), odd(t, "layer", 2, 30), odd(t, "icing loss", 0, 12)
	b.SuperfatPercent, b.LyeConcentrationPercent = odd(t, "superfat", -3, 20), odd(t, "lye", 18, 48)
	b.FinalMoisturePercent = odd(t, "moisture", 0, 20)
	b.SplitAtMin = odd(t, "split at", 0, 8)
	b.OilsC, b.LyeC, b.BatterC = odd(t, "oils at", 20, 70), odd(t, "lye at", 15, 60), odd(t, "batter at", 20, 60)
	b.BatterMeasured = rapid.Bool().Draw(t, "measured")
	b.ReadyBlend = rapid.SampledFrom([]string{"", "", "house"}).Draw(t, "ready blend")
	drawAlkali(t, &b)
	drawOils(t, &b, shelf)
	drawExtras(t, &b, shelf)
	drawJugs(t, &b, shelf)
	b.Scents = nil
	for range rapid.IntRange(0, 3).Draw(t, "scents") {
		s := pour.ScentPart{Scent: shelf.Scents[rapid.IntRange(3, 6).Draw(t, "scent")].ID, PercentOfOils: dosed(t, "load", 5), AtMin: odd(t, "scented at", 0, 15)}
		for _, j := range b.Jugs {
			if rapid.Bool().Draw(t, "into") {
				s.Into = append(s.Into, j.Name)
			}
		}
		b.Scents = append(b.Scents, s)
	}
	return b
}

func drawAlkali(t *rapid.T, b *pour.Batch) {
	b.StockLyePercent, b.KOHSharePercent, b.KOHShareBy = 0, 0, ""
	b.NaOHPurityPercent, b.KOHPurityPercent = odd(t, "NaOH purity", 80, 100), odd(t, "KOH purity", 70, 100)
	switch rapid.IntRange(0, 4).Draw(t, "alkali") {
	case 0:
		b.NaOHPurityPercent = 100
	case 1:
		b.KOHSharePercent, b.KOHShareBy = odd(t, "KOH by moles", 1, 99), rapid.SampledFrom([]string{"", pour.ShareMoles}).Draw(t, "by")
	case 2:
		b.KOHSharePercent, b.KOHShareBy = odd(t, "KOH by mass", 1, 99), pour.ShareMass
	case 3:
		b.KOHSharePercent = 100
	case 4:
		b.StockLyePercent = odd(t, "stock", 25, 51)
	}
}

// parts draws n parts of a hundred, or of a little less as a hand may write them, none of them nothing unless it may be.
func parts(t *rapid.T, n, least int) []float64 {
	weights, sum := make([]float64, n), 0.0
	for i := range weights {
		weights[i] = float64(rapid.IntRange(least, 50).Draw(t, "weight"))
		sum += weights[i]
	}
	if sum == 0 {
		weights[0], sum = 1, 1
	}
	whole := rapid.SampledFrom([]float64{100, 99.992}).Draw(t, "sum")
	for i := range weights {
		weights[i] = weights[i] / sum * whole
	}
	return weights
}

func drawOils(t *rapid.T, b *pour.Batch, shelf pour.Shelf) {
	n := rapid.IntRange(1, 6).Draw(t, "oils in the blend")
	from := rapid.IntRange(0, len(shelf.Oils)-n).Draw(t, "first oil")
	b.Oils = nil
	for i, percent := range parts(t, n, 3) {
		b.Oils = append(b.Oils, pour.OilPart{Oil: shelf.Oils[from+i].ID, Percent: percent, Held: rapid.Bool().Draw(t, "held")})
	}
	if b.Oils[0].Held && rapid.IntRange(0, 7).Draw(t, "the blend is whole") == 0 {
		b.Oils[0].Percent *= odd(t, "of it so far", 0, 1)
	}
	b.Carrier, b.CarrierOil = rapid.SampledFrom([]string{pour.CarrierExtra, pour.CarrierBatch}).Draw(t, "carrier"), ""
	switch {
	case rapid.Bool().Draw(t, "the largest carries"):
	case b.Carrier == pour.CarrierBatch:
		b.CarrierOil = pick(t, "carrier oil", b.Oils).Oil
	default:
		b.CarrierOil = pick(t, "carrier oil", shelf.Oils).ID
	}
}

// drawExtras draws acids and what is watery or fat as often as all the rest.
func drawExtras(t *rapid.T, b *pour.Batch, shelf pour.Shelf) {
	acids := slices.DeleteFunc(slices.Clone(shelf.Extras), func(x pour.Extra) bool { return x.AlkaliKOHMgG == 0 })
	fats := slices.DeleteFunc(slices.Clone(shelf.Extras), func(x pour.Extra) bool { return x.FatPercent == 0 })
	b.Extras = nil
	for range rapid.IntRange(0, 3).Draw(t, "extras") {
		from := [][]pour.Extra{acids, fats, shelf.Extras, nil}[rapid.IntRange(0, 3).Draw(t, "kind of extra")]
		part := pour.ExtraPart{PercentOfOils: dosed(t, "dose", 8), In: rapid.SampledFrom([]string{"", pour.InOils, pour.InLye, pour.InWater}).Draw(t, "in")}
		if from == nil {
			part.Extra = pick(t, "extra", shelf.Colourants).ID
		} else {
			part.Extra = pick(t, "extra", from).ID
		}
		b.Extras = append(b.Extras, part)
	}
}

func drawJugs(t *rapid.T, b *pour.Batch, shelf pour.Shelf) {
	names := []string{"pot", "ash", "birch", "cedar", "elm"}
	b.Jugs = nil
	for i, share := range parts(t, rapid.IntRange(1, len(names)).Draw(t, "jugs"), 0) {
		j := pour.Jug{Name: names[i], SharePercent: share, Held: rapid.Bool().Draw(t, "share held")}
		for range rapid.IntRange(0, 2).Draw(t, "colourants") {
			j.Colourants = append(j.Colourants, pour.Dose{
				Colourant: pick(t, "colourant", shelf.Colourants).ID, DosePercent: dosed(t, "pigment", 1.5),
				CarrierParts: rapid.SampledFrom([]float64{0, 0, 0.7, 2, 6.3}).Draw(t, "carrier parts"),
				Carrier:      rapid.SampledFrom([]string{"", pour.CarryOil, pour.CarryWater, pour.CarryGlycerin, pour.CarryNone}).Draw(t, "wetted with"),
			})
		}
		b.Jugs = append(b.Jugs, j)
	}
}

// drawToppings draws some toppings, blends among them, typed, by coverage or as is usual.
func drawToppings(t *rapid.T, shelf pour.Shelf) []pour.Topping {
	var out []pour.Topping
	for range rapid.IntRange(0, 3).Draw(t, "toppings") {
		top := pour.Topping{When: rapid.SampledFrom([]string{"", pour.StrewWet, pour.StrewSkin, pour.StrewCut, pour.StrewCure}).Draw(t, "when")}
		switch rapid.IntRange(0, 2).Draw(t, "amount") {
		case 0:
			top.GPerBar = odd(t, "on a bar", 0.01, 8)
		case 1:
			top.CoveragePercent = odd(t, "coverage", 1, 60)
		}
		top.HandsMin = dosed(t, "hands", 6)
		if rapid.Bool().Draw(t, "named") {
			top.Name = "sparkle"
		}
		ids := rapid.SliceOfNDistinct(rapid.IntRange(0, len(shelf.Toppings)-1), 1, 3, rapid.ID).Draw(t, "materials")
		for i, percent := range parts(t, len(ids), 0) {
			top.Parts = append(top.Parts, pour.ToppingPart{Material: shelf.Toppings[ids[i]].ID, Percent: percent})
		}
		out = append(out, top)
	}
	return out
}

// drawLabel puts a label into half of the plans, where the shelf knows a market.
func drawLabel(t *rapid.T, p *pour.Plan, shelf pour.Shelf) {
	p.Label = pour.Label{}
	if len(shelf.Markets) == 0 || rapid.Bool().Draw(t, "no label") {
		return
	}
	p.Label = pour.Label{
		Market: pick(t, "market", shelf.Markets).ID, List: rapid.SampledFrom([]string{"", "as_salts", "as_added"}).Draw(t, "list"),
		Names: rapid.SampledFrom([]string{"", pour.NamesINCI, pour.NamesEnglish}).Draw(t, "names"), System: rapid.SampledFrom([]string{"", pour.SystemMinimum, pour.SystemAverage}).Draw(t, "system"),
		Says: rapid.SampledFrom([]string{"", "smells of hay", "soothes and heals"}).Draw(t, "it says"), LikeFood: rapid.SampledFrom([]string{"", pour.LikeFoodJudged, pour.LikeFoodYes, pour.LikeFoodNo}).Draw(t, "like food"),
		WideMM: dosed(t, "label wide", 200), HighMM: dosed(t, "label high", 100), ScaleErrorG: dosed(t, "scale off by", 2), BestBeforeMo: float64(rapid.IntRange(0, 36).Draw(t, "best before")),
	}
}
