package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// blended is the plan with another blend and nothing else that depends on its oils.
func blended(t *testing.T, oils ...pour.OilPart) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := halves(t)
	p.Base.Oils, p.Base.CarrierOil = oils, ""
	return p, shelf
}

// after applies edits one after another; each must be taken.
func after(t testing.TB, p pour.Plan, shelf pour.Shelf, edits ...pour.Edit) pour.Plan {
	t.Helper()
	for i, e := range edits {
		next, err := pour.Apply(p, shelf, e)
		if err != nil {
			t.Fatalf("edit %d: %v", i+1, err)
		}
		p = next
	}
	return p
}

func percents(p pour.Plan) []float64 {
	var out []float64
	for _, o := range p.Base.Oils {
		out = append(out, o.Percent)
	}
	return out
}

// The recipe that could not be typed: seven figures, in whatever order its oils are put in and its figures typed, beside an old blend whose oils
// are typed over or taken out. What comes out is what was typed, to the last bit.
func TestSevenTypedFiguresStayAsTyped(t *testing.T) {
	demo, shelf := shelved(t)
	recipe := []pour.OilPart{{Oil: "olive", Percent: 35}, {Oil: "coconut", Percent: 25}, {Oil: "palm", Percent: 15}, {Oil: "castor", Percent: 5}, {Oil: "shea", Percent: 6}, {Oil: "sunflower", Percent: 8}, {Oil: "avocado", Percent: 6}}
	rapid.Check(t, func(t *rapid.T) {
		p := demo.Clone()
		p.Base.Carrier, p.Base.CarrierOil = pour.CarrierExtra, ""
		order := rapid.Permutation(recipe).Draw(t, "order")
		late := rapid.IntRange(0, len(order)).Draw(t, "old oils go after so many")
		for k, want := range order {
			if k == late {
				p = withoutOthers(t, p, shelf, recipe)
			}
			at := slices.IndexFunc(p.Base.Oils, func(o pour.OilPart) bool { return o.Oil == want.Oil })
			if at < 0 {
				before := percents(p)
				at = len(before)
				p = apply(t, p, shelf, pour.AddOil(pour.Base, want.Oil))
				if now := percents(p); !slices.Equal(now[:at], before) || now[at] != 0 {
					t.Fatalf("a new oil disturbs the others: %v became %v", before, now)
				}
			}
			p = apply(t, p, shelf, pour.SetOilPercent(pour.Base, at, want.Percent))
		}
		p = withoutOthers(t, p, shelf, recipe)
		if so := p.Base.Unfinished(); so != "" || len(p.Base.Oils) != len(recipe) {
			t.Fatalf("%v: %s", p.Base.Oils, so)
		}
		for _, want := range recipe {
			if want.Held = true; !slices.Contains(p.Base.Oils, want) {
				t.Fatalf("%v is not in %v", want, p.Base.Oils)
			}
		}
		if sheet := pour.Weigh(p, shelf); sheet.Base.Refused.Masses != "" || !(sheet.Base.Size.BatterG > 0) {
			t.Fatalf("nothing to mix: %s", sheet.Base.Refused.Masses)
		}
	})
}

func apply(t *rapid.T, p pour.Plan, shelf pour.Shelf, e pour.Edit) pour.Plan {
	next, err := pour.Apply(p, shelf, e)
	if err != nil {
		t.Fatal(err)
	}
	return next
}

// withoutOthers takes out of the blend what is not in the recipe, as long as an oil stays.
func withoutOthers(t *rapid.T, p pour.Plan, shelf pour.Shelf, recipe []pour.OilPart) pour.Plan {
	for i := len(p.Base.Oils) - 1; i >= 0 && len(p.Base.Oils) > 1; i-- {
		if !slices.ContainsFunc(recipe, func(o pour.OilPart) bool { return o.Oil == p.Base.Oils[i].Oil }) {
			p = apply(t, p, shelf, pour.RemoveOil(pour.Base, i))
		}
	}
	return p
}

// Whatever is done to a blend, what was typed last stands as typed, what is held is not moved by others, and while an oil that is not held can
// make the sum a hundred, typing leaves it a hundred.
func TestHeldOilsAreMovedByNothingButTheirOwnHand(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t, demo, shelf)
		oil, percent := rapid.IntRange(0, len(p.Base.Oils)-1).Draw(t, "oil"), rapid.Float64Range(0, 100).Draw(t, "percent")
		q, err := pour.Apply(p, shelf, pour.SetOilPercent(pour.Base, oil, percent))
		if err != nil {
			t.Fatal(err)
		}
		held, free := percent, 0
		for i, o := range p.Base.Oils {
			now := q.Base.Oils[i]
			switch {
			case i == oil:
				if now.Percent != percent || !now.Held {
					t.Fatalf("%v was typed and %+v stands", percent, now)
				}
			case o.Held:
				held += o.Percent
				if now != o {
					t.Fatalf("held %+v became %+v", o, now)
				}
			default:
				free++
			}
		}
		sum := sumOf(q.Base.Oils, func(o pour.OilPart) float64 { return o.Percent })
		if free > 0 && held <= 100 && !near(sum, 100, 1e-9) {
			t.Fatalf("%d could give way and the sum is %v", free, sum)
		}
		if whole := math.Abs(sum-100) < 0.01; whole != (q.Base.Unfinished() == "") {
			t.Fatalf("the sum is %v: %q", sum, q.Base.Unfinished())
		}
	})
}

// How far a blend is that is not finished is told in figures that can be typed.
func TestHowFarABlendIs(t *testing.T) {
	for _, c := range []struct {
		parts []float64
		says  string
	}{
		{[]float64{35, 25, 15, 5, 6, 7}, "93.0 % so far, 7.0 % to go"},
		{[]float64{60, 43}, "3.0 % too much"},
		{[]float64{60.25, 33}, "93.25 % so far, 6.75 % to go"},
		{[]float64{60.2512, 33}, "93.25 % so far, 6.75 % to go"},
		{[]float64{60, 39.98}, "99.98 % so far, 0.02 % to go"},
		{[]float64{0}, "0.0 % so far, 100.0 % to go"},
		{[]float64{33.33, 33.33, 33.33}, ""}, // as makers write a third
		{[]float64{60, 40}, ""},
	} {
		var b pour.Batch
		for _, v := range c.parts {
			b.Oils = append(b.Oils, pour.OilPart{Percent: v, Held: true})
		}
		if got := b.Unfinished(); got != c.says {
			t.Errorf("%v: %q, want %q", c.parts, got, c.says)
		}
	}
}

// The ways through a blend in which everything is held, each figure by hand.
func TestABlendThatIsNotFinished(t *testing.T) {
	p, shelf := blended(t, pour.OilPart{Oil: "olive", Percent: 50}, pour.OilPart{Oil: "coconut", Percent: 30}, pour.OilPart{Oil: "shea", Percent: 20})
	set, hold, base := pour.SetOilPercent, pour.HoldOil, pour.Base
	all := []pour.Edit{set(base, 0, 50), set(base, 1, 30), set(base, 2, 13)}
	for what, c := range map[string]struct {
		more []pour.Edit
		want []float64
		says string
	}{
		"typed too little":                 {nil, []float64{50, 30, 13}, "93.0 % so far, 7.0 % to go"},
		"typed too much":                   {[]pour.Edit{set(base, 0, 60)}, []float64{60, 30, 13}, "3.0 % too much"},
		"spread over all":                  {[]pour.Edit{pour.SpreadOils(base)}, []float64{5000. / 93, 3000. / 93, 1300. / 93}, ""},
		"too much, spread over all":        {[]pour.Edit{set(base, 0, 60), pour.SpreadOils(base)}, []float64{6000. / 103, 3000. / 103, 1300. / 103}, ""},
		"let go, it stays":                 {[]pour.Edit{hold(base, 0, false)}, []float64{50, 30, 13}, "93.0 % so far, 7.0 % to go"},
		"let go and spread":                {[]pour.Edit{hold(base, 0, false), pour.SpreadOils(base)}, []float64{57, 30, 13}, ""},
		"two let go and spread":            {[]pour.Edit{hold(base, 0, false), hold(base, 1, false), pour.SpreadOils(base)}, []float64{50 * 87. / 80, 30 * 87. / 80, 13}, ""},
		"let go, another typed":            {[]pour.Edit{hold(base, 0, false), set(base, 2, 14)}, []float64{56, 30, 14}, ""},
		"all let go, all give way":         {[]pour.Edit{hold(base, 0, false), hold(base, 1, false), hold(base, 2, false)}, []float64{5000. / 93, 3000. / 93, 1300. / 93}, ""},
		"a new oil waits":                  {[]pour.Edit{pour.AddOil(base, "castor")}, []float64{50, 30, 13, 0}, "93.0 % so far, 7.0 % to go"},
		"a new oil takes what is to go":    {[]pour.Edit{pour.AddOil(base, "castor"), pour.SpreadOils(base)}, []float64{50, 30, 13, 7}, ""},
		"a new oil typed":                  {[]pour.Edit{pour.AddOil(base, "castor"), set(base, 3, 5)}, []float64{50, 30, 13, 5}, "98.0 % so far, 2.0 % to go"},
		"one removed, it stays open":       {[]pour.Edit{pour.RemoveOil(base, 2)}, []float64{50, 30}, "80.0 % so far, 20.0 % to go"},
		"a free one at nothing stays":      {[]pour.Edit{pour.AddOil(base, "castor"), set(base, 0, 60)}, []float64{60, 30, 13, 0}, "3.0 % too much"},
		"too much, the free cannot give":   {[]pour.Edit{pour.AddOil(base, "castor"), set(base, 0, 60), pour.SpreadOils(base)}, []float64{6000. / 103, 3000. / 103, 1300. / 103, 0}, ""},
		"nothing so far, spread":           {[]pour.Edit{set(base, 0, 0), set(base, 1, 0), set(base, 2, 0), pour.SpreadOils(base)}, []float64{100. / 3, 100. / 3, 100. / 3}, ""},
		"swapped":                          {[]pour.Edit{pour.SwapOil(base, 2, "castor")}, []float64{50, 30, 13}, "93.0 % so far, 7.0 % to go"},
		"another blend":                    {[]pour.Edit{pour.SetBlend(base, []pour.OilPart{{Oil: "lard", Percent: 80, Held: true}}, 0)}, []float64{80}, "80.0 % so far, 20.0 % to go"},
		"typed over from nothing to whole": {[]pour.Edit{set(base, 2, 20)}, []float64{50, 30, 20}, ""},
	} {
		q := after(t, p, shelf, slices.Concat(all, c.more)...)
		if len(q.Base.Oils) != len(c.want) || q.Base.Unfinished() != c.says {
			t.Errorf("%s: %v, %q", what, q.Base.Oils, q.Base.Unfinished())
			continue
		}
		for i, want := range c.want {
			equal(t, what, q.Base.Oils[i].Percent, want, 1e-12)
		}
	}
	whole := after(t, p, shelf, set(base, 0, 50))
	if _, err := pour.Apply(whole, shelf, pour.SpreadOils(base)); err == nil || !strings.Contains(err.Error(), "100 % already") {
		t.Errorf("a whole blend was spread: %v", err)
	}
}

// Nothing can be mixed from a blend that is not finished: no mass of its batch is given, one stop on the lye says how far it is, and the other
// batch keeps its figures. What sums to another figure by hand and holds nothing is refused as it always was.
func TestNothingIsMixedFromABlendThatIsNotFinished(t *testing.T) {
	demo, shelf := shelved(t)
	for _, size := range []string{pour.SizeMould, pour.SizeOils} {
		p := demo.Clone()
		p.Base.Size, p.Base.OilsG = size, 1000
		p.Base.Oils[0].Percent, p.Base.Oils[0].Held = p.Base.Oils[0].Percent-7, true
		s := pour.Work(p, shelf, pour.Hand{})
		b := s.Base
		const so = "93.0 % so far, 7.0 % to go"
		w, ok := found(s, "blend-unfinished")
		if !ok || w.Severity != pour.Stop || !strings.Contains(w.Text, so) || w.Where != "base" || !s.LyeStopped() {
			t.Errorf("%s: it is warned of by %+v", size, w)
		}
		if b.Refused.Masses != so || b.Refused.Times != so {
			t.Errorf("%s: refused by %q and %q", size, b.Refused.Masses, b.Refused.Times)
		}
		for what, v := range map[string]float64{
			"all oils": b.Size.OilsG, "oils to weigh": b.Size.OilsWeighG, "one oil": b.Oils[1].G, "one oil to weigh": b.Oils[1].WeighG, "NaOH": b.Lye.NaOH.ToWeighG, "demand": b.Lye.DemandKOHG,
			"batter": b.Size.BatterG, "mL": b.Size.BatterML, "height": b.Size.HeightMM, "jug": b.Jugs[1].BatterG, "pigment": b.Jugs[1].Colourants[0].PigmentG, "scent": b.Scents[0].G,
			"saponification value": b.Fats.SapKOHMgG, "oleic": b.Fats.Families.OleicPercent, "superfat exact": b.Superfat.ExactPercent, "low": b.Superfat.LowPercent, "high": b.Superfat.HighPercent,
			"mixed": b.Superfat.MixedPercent, "as weighed": b.Superfat.AsWeighedPercent, "batter's warmth": b.Heat.MixC, "bar": s.Bars.CutG,
		} {
			if !math.IsNaN(v) {
				t.Errorf("%s: the %s is said to be %v", size, what, v)
			}
		}
		if b.Fats.IodineValue.Known || b.Heat.CloudC.Known || b.Lye.WaterToAddG.Known || b.Heat.LyePeakC.Known {
			t.Errorf("%s: %+v, %+v, %+v", size, b.Fats, b.Heat, b.Lye.WaterToAddG)
		}
		if icing := s.Icing; size == pour.SizeMould && !(icing.Size.BatterG > 0) {
			t.Errorf("the icing, whose oils are whole, has %v g", icing.Size.BatterG)
		}
		if faults := p.Check(shelf); len(faults) > 0 {
			t.Errorf("it may not be kept: %v", faults)
		}
		p.Base.Oils[0].Held = false
		if faults := p.Check(shelf); len(faults) != 1 || !strings.Contains(faults[0].Error(), "sum to 93 %") {
			t.Errorf("where none is held: %v", faults)
		}
	}
}

// Grams that are typed come out as grams on the scale: of a batch that has its size exactly, all of them; of one that fills a mould, the last typed.
func TestTypedGramsComeOutOnTheScale(t *testing.T) {
	demo, shelf := shelved(t)
	p := demo.Clone()
	p.Base.Size, p.Base.OilsG, p.Base.Carrier, p.Base.CarrierOil = pour.SizeOils, 1000, pour.CarrierExtra, ""
	want := []float64{350.5, 250, 149.5, 50, 120.3, 79.7}
	if len(p.Base.Oils) != len(want) {
		t.Fatalf("the example has %d oils", len(p.Base.Oils))
	}
	for i, g := range want {
		p = after(t, p, shelf, pour.SetOilGrams(pour.Base, i, g, shelf))
	}
	sheet := pour.Weigh(p, shelf)
	for i, g := range want {
		equal(t, sheet.Base.Oils[i].Name, sheet.Base.Oils[i].WeighG, g, 1e-12)
		equal(t, "part of "+sheet.Base.Oils[i].Name, p.Base.Oils[i].Percent, g/10, 1e-9)
	}
	for _, carrier := range []string{pour.CarrierExtra, pour.CarrierBatch} { // the largest oil carries the colours
		for i := range demo.Base.Oils {
			p = demo.Clone()
			p.Base.Size, p.Base.Carrier, p.Base.CarrierOil = pour.SizeMould, carrier, ""
			p.Mould.FillMM = 47.3
			p = after(t, p, shelf, pour.SetOilGrams(pour.Base, i, 123.4, shelf))
			got := pour.Weigh(p, shelf).Base.Oils[i]
			if math.Abs(got.G-123.4) > 0.001 || !p.Base.Oils[i].Held {
				t.Errorf("%s, carrier %s: %v g", got.Name, carrier, got.G)
			}
		}
	}
}

func TestTypedGramsInABlendThatIsNotFinished(t *testing.T) {
	p, shelf := blended(t, pour.OilPart{Oil: "olive", Percent: 50, Held: true}, pour.OilPart{Oil: "coconut", Percent: 30, Held: true})
	p.Base.Size, p.Base.OilsG = pour.SizeOils, 800
	p = after(t, p, shelf, pour.SetOilGrams(pour.Base, 1, 400, shelf))
	if p.Base.Oils[1].Percent != 50 || p.Base.Unfinished() != "" {
		t.Errorf("400 g of 800 g: %v, %s", p.Base.Oils, p.Base.Unfinished())
	}
	for g, says := range map[float64]string{801: "together are 800 g", -1: "0 or more", math.NaN(): "0 or more", math.Inf(1): "together are 800 g"} {
		if _, err := pour.Apply(p, shelf, pour.SetOilGrams(pour.Base, 1, g, shelf)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v g: %v", g, err)
		}
	}
	p.Base.StockLyePercent, p.Base.LyeConcentrationPercent = 30, 40 // more water than it wants
	if _, err := pour.Apply(p, shelf, pour.SetOilGrams(pour.Base, 1, 100, shelf)); err == nil || !strings.Contains(err.Error(), "type its percent instead") {
		t.Errorf("a batch without masses: %v", err)
	}
}

// Another blend takes its carrier oil and its name as a ready-mixed blend with it; a batch that goes by its oils takes their mass.
func TestAnotherBlendTakesTheOldOnesTraitsWithIt(t *testing.T) {
	demo, shelf := shelved(t)
	demo.Base.Carrier, demo.Base.CarrierOil, demo.Base.ReadyBlend = pour.CarrierBatch, demo.Base.Oils[1].Oil, "our usual"
	parts := []pour.OilPart{{Oil: "lard", Percent: 60, Held: true}, {Oil: "castor", Percent: 40, Held: true}}
	p := after(t, demo, shelf, pour.SetBlend(pour.Base, parts, 500))
	if !slices.Equal(p.Base.Oils, parts) || p.Base.ReadyBlend != "" || p.Base.CarrierOil != "" || p.Base.OilsG != demo.Base.OilsG {
		t.Errorf("%+v", p.Base)
	}
	demo.Base.Size, demo.Base.OilsG = pour.SizeOils, 900
	if p = after(t, demo, shelf, pour.SetBlend(pour.Base, parts, 500)); p.Base.OilsG != 500 {
		t.Errorf("of 500 g it makes %v", p.Base.OilsG)
	}
	parts[1].Percent = 30
	parts[0].Held, parts[1].Held = false, false
	if _, err := pour.Apply(demo, shelf, pour.SetBlend(pour.Base, parts, 0)); err == nil {
		t.Error("a blend of 90 % that holds nothing was taken")
	}
}
