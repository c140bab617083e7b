package planfile

import (
	"fmt"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// drawPlan makes a plan that [pour.Plan.Check] passes.
func drawPlan(t *rapid.T, s pour.Shelf) pour.Plan {
	p := pour.Plan{
		Name:  drawName(t, "name"),
		Notes: rapid.StringOfN(rapid.SampledFrom([]rune("abc \"\\\n#=é")), 0, 40, -1).Draw(t, "notes"),
		Show: pour.Show{
			Mass: one(t, "g", "oz"), Temperature: one(t, "C", "F"), Length: one(t, "mm", "in"),
			ScaleStepG: num(t, 0.001, 50), LyeStepG: num(t, 0.001, 5),
		},
		Mould: pour.Mould{
			Shape: one(t, "loaf", "slab"), LengthMM: num(t, 100, 900), WidthMM: num(t, 100, 900), HeightMM: num(t, 50, 200),
			FillMM: num(t, 10, 50), BarMM: num(t, 5, 100), BarWidthMM: num(t, 0, 100), LossPercent: num(t, 0, 50),
		},
		Room: pour.Room{TemperatureC: num(t, -10, 50)},
		Swirl: pour.Swirl{
			Technique: rapid.SampledFrom(s.Techniques).Draw(t, "technique").ID, Seed: rapid.Int64().Draw(t, "seed"),
			Passes: rapid.IntRange(0, 20).Draw(t, "passes"), Turns: num(t, 0, 20), HeightMM: num(t, 0, 1000),
		},
		Bed: pour.Bed{Keep: one(t, pour.BedBare, pour.BedInsulate, pour.BedChill), CutAfterH: num(t, 1, 240), CureDays: num(t, 0, 730)},
		Run: pour.RunPlan{
			CoolLyeMin: num(t, 0, 100), SplitMin: num(t, 0, 60), StirMin: num(t, 0, 60), ScentMin: num(t, 0, 60),
			PourMin: num(t, 0, 60), ChangeMin: num(t, 0, 10), IntoPotMin: num(t, 0, 60), TurnMin: num(t, 0, 10), PourOutMin: num(t, 0, 60),
			WireMin: num(t, 0, 60), CombMin: num(t, 0, 60), SpoonMin: num(t, 0, 60), LevelMin: num(t, 0, 60), PipeMin: num(t, 0, 60), BedMin: num(t, 0, 60),
			Order: rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,8}`), 0, 3).Draw(t, "order"),
		},
		Base: drawBatch(t, s, one(t, pour.SizeMould, pour.SizeOils)),
	}
	if rapid.Bool().Draw(t, "pour at") {
		p.PourAt = time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "second"), rapid.Int64Range(0, 999999999).Draw(t, "ns")).UTC()
	}
	if rapid.Bool().Draw(t, "icing") {
		b := drawBatch(t, s, one(t, pour.SizeBar, pour.SizeLayer, pour.SizeOils))
		b.Bags = one(t, "", pour.BagEach, pour.BagOne)
		p.Icing = &b
	}
	return p
}

func drawBatch(t *rapid.T, s pour.Shelf, size string) pour.Batch {
	b := pour.Batch{
		Size: size, OilsG: num(t, 1, 90000), PerBarG: num(t, 1, 500), LayerMM: num(t, 1, 50), LossPercent: num(t, 0, 50),
		SuperfatPercent: num(t, -5, 40), LyeConcentrationPercent: num(t, 10, 60),
		NaOHPurityPercent: num(t, 50, 100), KOHPurityPercent: num(t, 50, 100), OilsC: num(t, 20, 90), LyeC: num(t, 20, 90),
		SplitAtMin: num(t, 0, 60), FinalMoisturePercent: num(t, 0, 30), Carrier: pour.CarrierExtra, ReadyBlend: one(t, "", "house blend"),
	}
	if rapid.Bool().Draw(t, "stock") {
		b.StockLyePercent = num(t, 30, 50)
	} else {
		b.KOHSharePercent = num(t, 0, 100)
	}
	if rapid.Bool().Draw(t, "measured") {
		b.BatterC, b.BatterMeasured = num(t, 20, 60), true
	}
	for range rapid.IntRange(0, 3).Draw(t, "bursts") {
		b.Blend = append(b.Blend, pour.Burst{AtMin: num(t, 0, 600), S: num(t, 0, 3600)})
	}
	oils := rapid.SliceOfNDistinct(rapid.SampledFrom(s.Oils), 1, 5, func(o pour.Oil) string { return o.ID }).Draw(t, "oils")
	for i, part := range drawParts(t, len(oils)) {
		b.Oils = append(b.Oils, pour.OilPart{Oil: oils[i].ID, Percent: part})
	}
	for range rapid.IntRange(0, 2).Draw(t, "extras") {
		x := rapid.SampledFrom(s.Extras).Draw(t, "extra")
		b.Extras = append(b.Extras, pour.ExtraPart{Extra: x.ID, PercentOfOils: num(t, 0, 50), In: one(t, "", pour.InOils, pour.InLye, pour.InWater)})
	}
	drawJugs(t, s, &b)
	return b
}

func drawJugs(t *rapid.T, s pour.Shelf, b *pour.Batch) {
	for i, part := range drawParts(t, rapid.IntRange(1, 5).Draw(t, "jugs")) {
		j := pour.Jug{
			Name: fmt.Sprintf("%s %d", one(t, "pot", "\"fern\"", "côté", `b\ack`), i), SharePercent: part,
			Held: rapid.Bool().Draw(t, "held"), CapacityML: num(t, 0, 5000), BatterColour: one(t, "", "#5566b0"),
		}
		for range rapid.IntRange(0, 2).Draw(t, "doses") {
			j.Colourants = append(j.Colourants, pour.Dose{
				Colourant: rapid.SampledFrom(s.Colourants).Draw(t, "colourant").ID, DosePercent: num(t, 0, 20), CarrierParts: num(t, 0, 20),
				Carrier: one(t, "", pour.CarryOil, pour.CarryWater, pour.CarryGlycerin, pour.CarryNone),
			})
		}
		b.Jugs = append(b.Jugs, j)
	}
	for range rapid.IntRange(0, 2).Draw(t, "scents") {
		sc := pour.ScentPart{Scent: rapid.SampledFrom(s.Scents).Draw(t, "scent").ID, PercentOfOils: num(t, 0, 20), AtMin: num(t, 0, 600)}
		if rapid.Bool().Draw(t, "into one") {
			sc.Into = []string{rapid.SampledFrom(b.Jugs).Draw(t, "into").Name}
		}
		b.Scents = append(b.Scents, sc)
	}
}

// drawParts makes n parts that sum to 100 as nearly as floats can.
func drawParts(t *rapid.T, n int) []float64 {
	parts, left := make([]float64, n), 100.0
	for i := range n - 1 {
		parts[i] = num(t, 0, left)
		left -= parts[i]
	}
	parts[n-1] = left
	return parts
}

// num draws a number as makers write it, or any float at all.
func num(t *rapid.T, low, high float64) float64 {
	v := rapid.Float64Range(low, high).Draw(t, "number")
	if rapid.Bool().Draw(t, "whole") {
		return max(low, min(high, float64(int(v))))
	}
	return v
}

func one(t *rapid.T, words ...string) string { return rapid.SampledFrom(words).Draw(t, "word") }

func drawName(t *rapid.T, label string) string {
	return rapid.StringMatching(`[A-Z][a-zé "\\#]{0,20}[a-z]`).Draw(t, label)
}
