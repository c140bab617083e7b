package paper

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestPaperEqualsTheScreenToTheDigit(t *testing.T) {
	for _, show := range []pour.Show{
		{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 1, LyeStepG: 0.1},
		{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 0.5, LyeStepG: 0.01},
		{Mass: "oz", Temperature: "F", Length: "in", ScaleStepG: 0.1, LyeStepG: 0.01},
	} {
		p := testPlan()
		p.Show = show
		s := work(p)
		text := flat(Checklist(s, testShelf()))
		for _, want := range drawn(s) {
			if !strings.Contains(text, flat(plain(want))) {
				t.Errorf("%s: %q is not on the paper", show.Mass, want)
			}
		}
	}
}

// drawn is every figure of a sheet that a maker needs at the bench, with the words it stands behind.
func drawn(s pour.Sheet) []string {
	show := s.Plan.Show
	out := []string{show.Temp(s.Plan.Base.OilsC), show.Len(s.Bars.ThicknessMM), show.Weight(s.Bars.CutG), show.Weight(s.Bars.CuredG)}
	for _, b := range s.Batches() {
		for _, o := range b.Oils {
			out = append(out, o.Name+" "+show.Weight(o.WeighG))
		}
		out = append(out, "Cold water, into the lye jug "+show.Weight(b.Lye.WaterToAddG.V), "Sodium hydroxide (NaOH) "+show.Dose(b.Lye.NaOH.ToWeighG),
			show.Temp(b.Heat.LyePeakC.V), show.Temp(b.Heat.MixC), show.Percent(b.Superfat.AsWeighedPercent, 1), "all batter together "+show.Weight(b.Size.BatterWeighG))
		for _, x := range b.Extras {
			out = append(out, show.Dose(x.G))
		}
		for _, j := range b.Jugs {
			out = append(out, show.Percent(j.SharePercent, 1)+" "+show.Weight(j.BatterWeighG), j.Name+" "+show.Weight(j.TotalG), show.Volume(j.TotalML),
				show.RunTime(j.Clock.PourAtMin.V), show.Percent(j.Clock.LateChancePercent.V, 0))
			for _, c := range j.Colourants {
				out = append(out, j.Name+": "+c.Name+" "+show.Dose(c.PigmentG))
				if c.CarrierG > 0 {
					out = append(out, show.Dose(c.CarrierG))
				}
			}
			for _, x := range j.Scents {
				out = append(out, j.Name+": "+x.Name+" "+show.Dose(x.G))
			}
		}
	}
	for _, st := range s.Stints() {
		out = append(out, show.RunTime(st.StartMin))
	}
	return out
}

func TestSpoonsAreLabelledAsAnEstimate(t *testing.T) {
	text := flat(print(testPlan()))
	for rest := text; ; {
		_, after, ok := strings.Cut(rest, "With a 5 mL spoon")
		if !ok {
			break
		}
		if says, _, ok := strings.Cut(after, ", an estimate: weighing wins."); !ok || len(says) > 25 {
			t.Errorf("a spoon without its label: %.60s", after)
		}
		rest = after
	}
	if !strings.Contains(text, "With a 5 mL spoon about 3/4 teaspoon") {
		t.Error("titanium white has a bulk density on this shelf, so its spoons should be estimated")
	}
}

func TestUnknownFiguresAreDrawnAsADashNeverAsZero(t *testing.T) {
	s := pour.Weigh(testPlan(), testShelf())
	s.Base.Heat.LyePeakC, s.Warnings = pour.Figure{}, nil
	s.Base.Refused.Times = "the lye is too weak for the clock"
	text := Checklist(s, testShelf())
	if !strings.Contains(flat(text), "Hottest it could get, from the room's 21 deg C - ____") {
		t.Error("an unknown temperature is no dash")
	}
	for _, want := range []string{"No stage times: go by what you see. The lye is too weak for the clock."} {
		if !strings.Contains(flat(text), want) {
			t.Errorf("the paper lacks %q", want)
		}
	}
}

// What is gathered of a thing is the sum of what is weighed of it, to the digit.
func TestWhatIsGatheredIsTheSumOfWhatIsWeighed(t *testing.T) {
	sheets, _ := examples(t)
	ounces := testPlan()
	ounces.Show.Mass = pour.MassOunce
	for _, s := range append(sheets, work(testPlan()), work(ounces)) {
		half := s.Plan.Show.LyeStepG / 1000
		if s.Plan.Show.Mass == pour.MassOunce {
			half = 0.00501 // from 1 or 10 oz on the sum is drawn in hundredths, what it sums may be finer
		}
		weighed := map[string]float64{}
		for _, b := range s.Batches() {
			for _, w := range b.Weighings() {
				if w.Kind != pour.WeighBatter {
					weighed[w.Kind+w.Name] += onPaper(t, s, w)
				}
			}
		}
		for _, e := range s.Embeds {
			weighed[pour.WeighEmbed+e.Name] += onPaper(t, s, pour.Weighing{Kind: pour.WeighEmbed, G: e.AllG.V})
		}
		for _, line := range s.Toppings {
			for _, p := range line.Parts {
				weighed[pour.WeighTopping+p.Name] += onPaper(t, s, pour.Weighing{Kind: pour.WeighTopping, G: p.G.V})
			}
		}
		for _, w := range s.Totals {
			if got, want := onPaper(t, s, w), weighed[w.Kind+w.Name]; math.Abs(got-want) > half {
				t.Errorf("%s: %v of %s are gathered, %v are weighed", s.Plan.Name, got, w.Name, want)
			}
		}
	}
}

// onPaper is a weight as the paper draws it.
func onPaper(t *testing.T, s pour.Sheet, w pour.Weighing) float64 {
	t.Helper()
	draw := s.Plan.Show.WeightApart
	if w.Fine() {
		draw = s.Plan.Show.DoseApart
	}
	v, err := strconv.ParseFloat(draw(w.G).Number, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
