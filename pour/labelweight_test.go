package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
)

// weighedIn is a plan's label in a market.
func weighedIn(p pour.Plan, shelf pour.Shelf, m label.Market) (pour.Sheet, pour.LabelSheet) {
	m.ID = "here"
	shelf.Markets = []label.Market{m}
	p.Label.Market = m.ID
	s := pour.Work(p, shelf, pour.Hand{})
	return s, s.Label
}

// The lightest bar of the cut, dried to the light end of the forecast, is what may be declared; where it is judged later, dried to the end.
func TestTheForecastWeightIsThatOfTheLightestBarOfTheCut(t *testing.T) {
	p, shelf := twoJugs(t)
	p.Cut = pour.Cut{By: pour.CutMarks, MarksMM: []float64{50, 90, 150, 200}}
	s, l := weighedIn(p, shelf, label.Market{})
	if len(s.Cut.Bars) < 4 || !s.Cure.PackG.Low.Known || !s.Cut.LightG.Known {
		t.Fatalf("%d bars, packed %v", len(s.Cut.Bars), s.Cure.PackG)
	}
	light, sum := math.Inf(1), 0.0
	for _, b := range s.Cut.Bars {
		g := s.Cure.PackG.Low.V * b.CutG.V / s.Bars.CutG // nothing is strewn on
		light, sum = min(light, g), sum+g
	}
	if light > 0.9*s.Cure.PackG.Low.V {
		t.Fatalf("the bars are even: %v of %v", light, s.Cure.PackG.Low.V)
	}
	if want := math.Floor(light); l.Net.G != want || l.Net.Why != "" || l.Net.From != label.FromForecast {
		t.Errorf("%+v, want %v g", l.Net, want)
	}
	_, later := weighedIn(p, shelf, label.Market{AfterPacking: true})
	if want := math.Floor(light * s.Cure.FinalG.V / s.Cure.PackG.Mid.V); later.Net.G != want || want >= l.Net.G {
		t.Errorf("judged later %+v, want %v g", later.Net, want)
	}
	p.Label.System = pour.SystemAverage
	_, five := weighedIn(p, shelf, label.Market{Average: label.AverageFive})
	if want := math.Floor(min(sum/float64(len(s.Cut.Bars)), light/0.95)); five.Net.G != want || want <= l.Net.G {
		t.Errorf("by the average %+v, want %v g", five.Net, want)
	}
}

// The face that counts is the side of the bar, however small the sticker on it.
func TestASmallStickerMakesNoSmallerFigures(t *testing.T) {
	p, shelf := twoJugs(t)
	m := label.Market{HeightBy: label.HeightByFace}
	s, _ := weighedIn(p, shelf, m)
	b := &s.Cut.Bars[0]
	largest := max(b.WideMM()*s.Bars.StandsMM, b.WideMM()*b.ThicknessMM(), b.ThicknessMM()*s.Bars.StandsMM) / 100
	m.Heights = []label.Height{{UpTo: largest - 0.1, MM: 1}, {UpTo: largest + 0.1, MM: 2}, {MM: 3}}
	for _, c := range []struct{ wide, high, want float64 }{{20, 20, 2}, {b.WideMM() * 2, s.Bars.StandsMM * 2, 3}} {
		p.Label.WideMM, p.Label.HighMM = c.wide, c.high
		if _, l := weighedIn(p, shelf, m); !l.HeightMM.Known || l.HeightMM.V != c.want {
			t.Errorf("a label of %g × %g on a side of %g cm²: %v mm, want %g", c.wide, c.high, largest, l.HeightMM, c.want)
		}
	}
}
