package planfile

import (
	"fmt"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// drawPlan makes a plan that [pour.Plan.Check] passes: every field that has a row is drawn from what its row allows, so that
// a new one is drawn too; then what hangs together is put right.
func drawPlan(t *rapid.T, s pour.Shelf) pour.Plan {
	p := pour.Blank()
	drawLists(t, &p.Base)
	if rapid.Bool().Draw(t, "icing") {
		b := pour.BlankBatch(pour.Icing)
		drawLists(t, &b)
		p.Icing = &b
	}
	p.Top.Toppings = make([]pour.Topping, rapid.IntRange(0, 2).Draw(t, "toppings"))
	for i := range p.Top.Toppings {
		p.Top.Toppings[i].Parts = make([]pour.ToppingPart, rapid.IntRange(1, 2).Draw(t, "materials"))
	}
	for _, table := range p.Tables() {
		drawFields(t, s, table.Fields)
	}
	fitBars(&p.Mould)
	if p.Mould.Shape == pour.ShapeTube { // it has no top
		p.Icing, p.Top = nil, pour.Top{}
	}
	for i := range p.Top.Toppings {
		list := p.Top.Toppings[i].Parts
		of := rapid.SliceOfNDistinct(rapid.SampledFrom(s.Toppings), len(list), len(list), func(m pour.ToppingMaterial) string { return m.ID }).Draw(t, "of")
		for k, percent := range drawParts(t, len(list)) {
			list[k] = pour.ToppingPart{Material: of[k].ID, Percent: percent}
		}
	}
	drawWhatHangsTogether(t, s, &p.Base)
	if p.Icing != nil {
		drawWhatHangsTogether(t, s, p.Icing)
	}
	if jugs := p.Base.Jugs; len(jugs) > 1 && rapid.Bool().Draw(t, "pins") {
		p.Swirl.First, p.Swirl.Last = jugs[1].Name, jugs[0].Name
	}
	return p
}

// fitBars makes bars that come out of the mould, a tube round and of cavities one that holds no more than a box of its measures.
func fitBars(m *pour.Mould) {
	switch m.Shape {
	case pour.ShapeTube:
		m.LengthMM = min(m.LengthMM, m.WidthMM)
		m.WidthMM, m.BarMM = m.LengthMM, min(m.BarMM, m.FillMM)
	case pour.ShapeCavity:
		m.Cavities, m.CavityML = max(1, m.Cavities), min(m.CavityML, m.LengthMM*m.WidthMM*m.FillMM/1000)
	default:
		m.BarMM, m.BarWidthMM = min(m.BarMM, m.LengthMM), min(m.BarWidthMM, m.WidthMM)
	}
}

func drawLists(t *rapid.T, b *pour.Batch) {
	few := func(least, most int) int { return rapid.IntRange(least, most).Draw(t, "items") }
	b.Blend, b.Oils, b.Extras = make([]pour.Burst, few(0, 3)), make([]pour.OilPart, few(1, 5)), make([]pour.ExtraPart, few(0, 2))
	b.Jugs, b.Scents = make([]pour.Jug, few(1, 5)), make([]pour.ScentPart, few(0, 2))
	for i := range b.Jugs {
		b.Jugs[i].Colourants = make([]pour.Dose, few(0, 2))
	}
}

func drawFields(t *rapid.T, s pour.Shelf, fields []pour.Field) {
	for _, f := range fields {
		switch at := f.At.(type) {
		case *float64:
			*at = num(t, f.Low, f.High)
			if f.Known != nil {
				if *f.Known = rapid.Bool().Draw(t, "known"); !*f.Known {
					*at = 0
				}
			}
		case *int:
			*at = rapid.IntRange(int(f.Low), int(f.High)).Draw(t, f.Key)
		case *int64:
			*at = rapid.Int64().Draw(t, f.Key)
		case *bool:
			*at = rapid.Bool().Draw(t, f.Key)
		case *string:
			*at = drawText(t, s, f)
		case *[]string:
			if f.Takes == pour.TakesTask {
				*at = rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,8}`), 0, 3).Draw(t, f.Key)
			}
		case *time.Time:
			if rapid.Bool().Draw(t, f.Key) {
				*at = time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "second"), rapid.Int64Range(0, 999999999).Draw(t, "ns")).UTC()
			}
		default:
			f.Items(0, func(_ int, fields []pour.Field) { drawFields(t, s, fields) })
		}
	}
}

func drawText(t *rapid.T, s pour.Shelf, f pour.Field) string {
	if f.Need == pour.Quiet && rapid.Bool().Draw(t, "left out") {
		return ""
	}
	switch f.Takes {
	case pour.TakesWord:
		return rapid.SampledFrom(f.Choices()).Draw(t, f.Key)
	case pour.TakesProse:
		return rapid.StringOfN(rapid.SampledFrom([]rune("abc \"\\\n#=é")), 0, 40, -1).Draw(t, f.Key)
	case pour.TakesColour:
		return rapid.StringMatching(`#[0-9a-fA-F]{6}`).Draw(t, f.Key)
	case pour.TakesTechnique:
		return rapid.SampledFrom(s.Techniques).Draw(t, f.Key).ID
	case pour.TakesOil:
		return rapid.SampledFrom(s.Oils).Draw(t, f.Key).ID
	case pour.TakesColourant:
		return rapid.SampledFrom(s.Colourants).Draw(t, f.Key).ID
	case pour.TakesExtra:
		return rapid.SampledFrom(s.Extras).Draw(t, f.Key).ID
	case pour.TakesScent:
		return rapid.SampledFrom(s.Scents).Draw(t, f.Key).ID
	case pour.TakesTopping:
		return rapid.SampledFrom(s.Toppings).Draw(t, f.Key).ID
	case pour.TakesMarket:
		if len(s.Markets) == 0 {
			return ""
		}
		return rapid.SampledFrom(s.Markets).Draw(t, f.Key).ID
	case pour.TakesMoney:
		return rapid.StringMatching(`[1-9][0-9]{0,3}(\.[0-9]{1,4})?`).Draw(t, f.Key)
	case pour.TakesID:
		return rapid.StringMatching(`[a-z][a-z0-9]{0,9}(-[a-z0-9]{1,9})?`).Draw(t, f.Key)
	case pour.TakesJug:
		return "" // which jugs there are is not known yet
	}
	return rapid.StringMatching(`[A-Z][a-zé "\\#]{0,20}[a-z]`).Draw(t, f.Key)
}

func drawWhatHangsTogether(t *rapid.T, s pour.Shelf, b *pour.Batch) {
	oils := rapid.SliceOfNDistinct(rapid.SampledFrom(s.Oils), len(b.Oils), len(b.Oils), func(o pour.Oil) string { return o.ID }).Draw(t, "oils")
	for i, part := range drawParts(t, len(b.Oils)) {
		b.Oils[i] = pour.OilPart{Oil: oils[i].ID, Percent: part, Held: rapid.Bool().Draw(t, "held")}
		if b.Oils[i].Held && rapid.IntRange(0, 5).Draw(t, "as it was") == 0 {
			b.Oils[i].Percent = part / 2 // a blend that is not finished is kept as it is
		}
	}
	for i, part := range drawParts(t, len(b.Jugs)) {
		b.Jugs[i].Name, b.Jugs[i].SharePercent = fmt.Sprintf("%s %d", rapid.SampledFrom([]string{"pot", "\"fern\"", "côté", `b\ack`}).Draw(t, "jug"), i), part
	}
	for i := range b.Scents {
		if rapid.Bool().Draw(t, "into one") {
			b.Scents[i].Into = []string{rapid.SampledFrom(b.Jugs).Draw(t, "into").Name}
		}
	}
	b.OilsG, b.PerBarG, b.LayerMM = max(1, b.OilsG), max(1, b.PerBarG), max(1, b.LayerMM)
	switch {
	case b.StockLyePercent < 10:
		b.StockLyePercent = 0
	default:
		b.KOHSharePercent = 0
	}
	if b.CarrierOil != "" {
		b.CarrierOil = b.Oils[0].Oil
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
