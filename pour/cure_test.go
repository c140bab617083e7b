package pour_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/pourtest"
)

func cureRows() []codeRow {
	return []codeRow{
		{"packed-damp", number("cure.pack_days", 10), number("cure.pack_days", 60)},
		{"label-over-mass", number("cure.label_g", 220), number("cure.label_g", 60)},
	}
}

// reckonLeft is f of a block by the long sums, to the last term that counts.
func reckonLeft(sides [3]float64, share float64) float64 {
	if share <= 0 {
		return 1
	}
	all, left := 0.0, 1.0
	for _, l := range sides {
		all += 1 / (l * l)
	}
	for _, l := range sides {
		s, sum := share/(l*l)/all, 0.0
		for n := 1.0; n*n*s < 50; n += 2 {
			sum += math.Exp(-n*n*s) / (n * n)
		}
		left *= sum * 8 / math.Pi / math.Pi
	}
	return left
}

// dryReckoned is what the sheet's bar does, by arithmetic of this test's own.
type dryReckoned struct {
	sides          [3]float64
	cut, goes, tau float64
	goesSD, lnTau  float64
}

func (d dryReckoned) mass(day float64) float64 {
	return d.cut - d.goes*(1-reckonLeft(d.sides, day/d.tau))
}

func (d dryReckoned) weekly(day float64) float64 {
	return 100 * (d.mass(day) - d.mass(day+7)) / d.mass(day)
}

func (d dryReckoned) ready(criterion float64) float64 {
	if d.weekly(0) < criterion {
		return 0
	}
	lo, hi := 0.0, 20000.0
	for range 100 {
		if mid := (lo + hi) / 2; d.weekly(mid) > criterion {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// sd is how far a figure is moved by an sd of what goes and of ln tau, which are known apart.
func (d dryReckoned) sd(of func(dryReckoned) float64) float64 {
	moved := func(goes, lnTau float64) float64 {
		x := d
		x.goes, x.tau = d.goes+goes, d.tau*math.Exp(lnTau)
		return of(x)
	}
	const h = 1e-4
	return math.Hypot((moved(h, 0)-moved(-h, 0))/(2*h)*d.goesSD, (moved(0, h)-moved(0, -h))/(2*h)*d.lnTau)
}

// reckonDrying is the bar of a sheet: its base's box, the plan's own moisture, and what lies on it that came after the cure taken off.
func reckonDrying(s pour.Sheet) (d dryReckoned, late float64) {
	m, cut := s.Plan.Mould, cutOf(s)
	thick, n := 0.0, 0
	for _, b := range cut.bars {
		thick += b[1] - b[0]
		n++
	}
	wide := 0.0
	for _, r := range cut.rows {
		wide += (r[1] - r[0]) / float64(len(cut.rows))
	}
	d.sides = [3]float64{thick / float64(n), wide, s.Base.Size.HeightMM}
	switch m.Shape {
	case "tube":
		d.sides[1], d.sides[2] = m.LengthMM, m.LengthMM
	case "cavity":
		d.sides[0], d.sides[1] = m.LengthMM, reckonedArea(m)/float64(m.Cavities)/m.LengthMM
	}
	for _, l := range s.Toppings {
		if l.When == "cut" || l.When == "cured" {
			late += l.AddsG.V
		}
	}
	d.cut = s.Bars.CutG
	d.goes = d.cut - (s.Bars.CuredG - late)
	end := s.Plan.Base.FinalMoisturePercent / 100
	d.goesSD = 0.03 * (d.cut - d.goes) / (1 - end)
	d.tau, d.lnTau = 16, 0.6
	return d, late
}

// Every figure of the forecast of a drying bar is what plain arithmetic makes of the bar as it is cut and cured.
func TestTheForecastOfADryingBarIsReckonedASecondTime(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Work(pourtest.Rich(t, demo, shelf), shelf, pour.Hand{})
		c := s.Cure
		if c.Refused != "" {
			if c.TauDays.Known || c.PackG.Mid.Known {
				t.Fatalf("refused (%s), and yet %+v", c.Refused, c)
			}
			return
		}
		d, late := reckonDrying(s)
		x := s.Plan.Cure.WeeklyLossPercent
		if x == 0 {
			x = 0.5
		}
		x = max(x, 0.01)
		day := s.Plan.Cure.PackDays
		if day == 0 {
			day = s.Plan.Bed.CureDays
		}
		judge := func(what string, got pour.Figure, want, by float64) {
			if !got.Known || math.Abs(got.V-want) > by*(1+math.Abs(want)) {
				t.Errorf("%s: %+v, want %v", what, got, want)
			}
		}
		judge("thickness", c.ThickMM, d.sides[0], 1e-9)
		judge("width", c.WideMM, d.sides[1], 1e-9)
		judge("height", c.HighMM, d.sides[2], 1e-9)
		judge("water as cut", c.CutMoisturePercent, 100*(1-(d.cut-d.goes)/d.cut*(1-s.Plan.Base.FinalMoisturePercent/100)), 1e-9)
		judge("what goes", c.LossPercent, 100*d.goes/d.cut, 1e-9)
		judge("its sd", c.LossSDPercent, 100*d.goesSD/d.cut, 1e-9)
		judge("tau", c.TauDays, 16, 1e-12)
		judge("criterion", c.CriterionPercent, x, 1e-12)
		judge("day of packing", c.PackDay, day, 1e-12)
		judge("in the end", c.FinalG, s.Bars.CuredG, 1e-9)
		ready := d.ready(x)
		judge("dry", c.ReadyDay.Mid, ready, 1e-6)
		judge("when packed", c.PackG.Mid, d.mass(day)+late, 1e-8)
		judge("its light end", c.PackG.Low, d.mass(day)+late-1.2815515655*d.sd(func(d dryReckoned) float64 { return d.mass(day) }), 1e-5)
		judge("its heavy end", c.PackG.High, d.mass(day)+late+1.2815515655*d.sd(func(d dryReckoned) float64 { return d.mass(day) }), 1e-5)
		judge("what it loses then", c.PackLossPercent, d.weekly(day), 1e-7)
		if ready > 0.5 {
			sd := d.sd(func(d dryReckoned) float64 { return d.ready(x) })
			judge("early", c.ReadyDay.Low, max(0, ready-1.2815515655*sd), 1e-3)
			judge("late", c.ReadyDay.High, ready+1.2815515655*sd, 1e-3)
		}
		if label := s.Plan.Cure.LabelG; label > late || label > 0 && late == 0 { // what is strewn on it may weigh more than the label says
			judge("to cut for the label", c.CutForLabelG, (label-late)*d.cut/d.mass(day), 1e-8)
		} else if c.CutForLabelG.Known {
			t.Error("there is no label to cut for")
		}
	})
}

// What own batches taught moves tau by the box and the moisture by how well each is known; a hand without them is the zero hand.
func TestOwnBatchesMoveTheForecast(t *testing.T) {
	p, shelf := example(t, "first-snow")
	before := pour.Work(p, shelf, pour.Hand{}).Cure
	rack := cure.Rack{LnD: cure.Learnt{Mean: math.Log(2e-11), SD: 0.25, Batches: 4}, Moisture: cure.Learnt{Mean: 0.13, SD: 0.01, Batches: 3}}
	s := pour.Work(p, shelf, pour.Hand{Rack: rack})
	c := s.Cure
	l := [3]float64{c.ThickMM.V, c.WideMM.V, c.HighMM.V}
	tau := 1 / (math.Pi * math.Pi * 2e-11 * 86400e6 * (1/(l[0]*l[0]) + 1/(l[1]*l[1]) + 1/(l[2]*l[2])))
	end := (0.13/0.0001 + p.Base.FinalMoisturePercent/100/0.0009) / (1/0.0001 + 1/0.0009)
	dry := 1 - c.CutMoisturePercent.V/100
	for what, x := range map[string][2]float64{
		"tau": {c.TauDays.V, tau}, "ln tau": {c.LnTauSD.V, 0.25}, "loss": {c.LossPercent.V, 100 * (1 - dry/(1-end))}, "batches": {c.OwnBatches.V, 4},
	} {
		if math.Abs(x[0]-x[1]) > 1e-9*(1+x[1]) {
			t.Errorf("%s: %v, want %v", what, x[0], x[1])
		}
	}
	if before.OwnBatches.V != 0 || math.Abs(before.TauDays.V-16) > 1e-9 || before.CutMoisturePercent != c.CutMoisturePercent || s.Bars.CuredG != pour.Weigh(p, shelf).Bars.CuredG {
		t.Errorf("%+v; cured %v", before, s.Bars.CuredG)
	}
	for _, path := range s.Explained() {
		if a, err := s.Explain(path, shelf, pour.Hand{Rack: rack}); err != nil {
			t.Error(err)
		} else if a.Value.Known {
			checkAccount(t, "own batches", a)
		}
	}
}

func TestWhatCannotBeMixedIsNotForecast(t *testing.T) {
	p, shelf := example(t, "first-snow")
	p.Base.Oils[0].Percent -= 5
	p.Base.Oils[0].Held = true
	s := pour.Work(p, shelf, pour.Hand{})
	if s.Cure.Refused == "" || s.Cure.ReadyDay.Mid.Known {
		t.Errorf("%+v", s.Cure)
	}
	p, _ = example(t, "first-snow")
	p.Cut.TrimAMM, p.Cut.TrimBMM = 200, 200
	if c := pour.Work(p, shelf, pour.Hand{}).Cure; c.Refused != "no whole bar comes out of the cut plan" {
		t.Errorf("%+v", c)
	}
}
