package pour_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

// Ten bars as planned alike. Eight were weighed for packing, and lost a tenth at most since the cut; of the two that were not, one was cut light.
func TestABarThatWasCutLightKeepsTheLabelHonest(t *testing.T) {
	p, shelf := hanger(t)
	p.Label.Market = "eu"
	sheet := pour.Weigh(p, shelf).Time(shelf, pour.Hand{})
	if len(sheet.Cut.Bars) != 10 {
		t.Fatalf("%d bars", len(sheet.Cut.Bars))
	}
	bars := pour.PackedBars{CutG: map[int]float64{}, LastG: map[int]float64{}}
	for bar := 1; bar <= 10; bar++ {
		bars.CutG[bar], bars.LastG[bar] = 120, 120
		if bar <= 8 {
			bars.Bars, bars.MassesG = append(bars.Bars, bar), append(bars.MassesG, 108.5+float64(bar)/2) // 109 of 120 is least
		}
	}
	light := func(cut, last float64) func(*pour.PackedBars) {
		return func(b *pour.PackedBars) { b.CutG[10], b.LastG[10] = cut, last }
	}
	for _, c := range []struct {
		name string
		with func(*pour.PackedBars)
		g    float64
		says string
	}{
		{"cut alike", func(*pour.PackedBars) {}, 109, "caution: 2 of 10 bars were not weighed"},
		{"cut light", light(100, 100), 90, "the lightest of them has 90.8 g"}, // 100 × 109 / 120
		{"light when it was weighed last", light(120, 88.9), 88, "the lightest of them has 88.9 g"},
		{"never weighed, and others cut lighter than planned", func(b *pour.PackedBars) { delete(b.CutG, 10); delete(b.LastG, 10) }, 109, "2 of 10"},
		{"more bars than planned", func(b *pour.PackedBars) { b.Made = 12 }, 109, "4 of 12"},
		{"all of them weighed", func(b *pour.PackedBars) { b.Made = 8 }, 109, ""},
		{"weighed by no number", func(b *pour.PackedBars) { b.Bars = nil }, math.NaN(), "2 of 10"},
		{"weighed by no number, one cut light", func(b *pour.PackedBars) { b.Bars = nil; light(60, 60)(b) }, math.NaN(), "the lightest of them has"},
	} {
		of := pour.PackedBars{MassesG: bars.MassesG, Bars: bars.Bars, CutG: map[int]float64{}, LastG: map[int]float64{}}
		for k, v := range bars.CutG {
			of.CutG[k], of.LastG[k] = v, bars.LastG[k]
		}
		c.with(&of)
		net := sheet.Labelled(shelf, pour.Labelling{Bars: of}).Net
		said := strings.Join(net.Notes, "; ")
		if !math.IsNaN(c.g) && net.G != c.g || !(net.G > 0) || net.G > 109 || !strings.Contains(said, c.says) || (c.says == "") == strings.Contains(said, "not weighed") {
			t.Errorf("%s: %g g, want %g, said %q", c.name, net.G, c.g, said)
		}
	}
}

// Before any bar is weighed for packing the forecast counts, of the bars as they were cut: one of half the mass has half the forecast.
func TestAForecastGoesByTheBarsAsTheyWereCut(t *testing.T) {
	p, shelf := hanger(t)
	p.Label.Market = "eu"
	sheet := pour.Weigh(p, shelf).Time(shelf, pour.Hand{})
	whole := sheet.Labelled(shelf, pour.Labelling{}).Net
	usual := sheet.Bars.CutG
	half := sheet.Labelled(shelf, pour.Labelling{Bars: pour.PackedBars{CutG: map[int]float64{1: usual, 2: usual, 3: usual, 4: usual, 5: usual, 6: usual, 7: usual, 8: usual, 9: usual / 2, 10: usual}}}).Net
	if !(whole.Least > 0) || math.Abs(half.Least-whole.Least/2) > 1e-6 {
		t.Errorf("lightest %g g, and with one of half the mass %g g", whole.Least, half.Least)
	}
}
