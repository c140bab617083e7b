package learn

import (
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// measuredPour is a pour in which a weight, a temperature, a burst and a stage were marked, and a bar weighed the day after.
func measuredPour(t *testing.T) (logbook.Pour, pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := lonely(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	m := begins(t, openTestBook(t), sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	m.after(0, logbook.Event{Kind: logbook.Weighed, What: sheet.Totals[0].Name, Value: 381.5, Lot: "L77"}) // as logs had it once
	m.until("base lye in")
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadBatter, Value: 36.5})
	m.after(20*time.Second, logbook.Event{Kind: logbook.Blended, Batch: pour.Base, Value: 20})
	m.until("base split")
	m.sees(30*time.Second, "fern", chem.Light)
	m.until("base put to bed")
	m.after(24*time.Hour, logbook.Event{Kind: logbook.Cut, Value: 131.2})
	return m.record(shelf), sheet, shelf
}

func TestAPourGivesALogOfWhatReallyHappened(t *testing.T) {
	p, _, shelf := measuredPour(t)
	logs := logsOf(p, shelf)
	if len(logs) != 1 {
		t.Fatalf("the pour gives %d logs, want fern's", len(logs))
	}
	l := logs[0]
	if !l.Batter.Measured || l.Batter.StartC != 36.5 || len(l.Batter.Bursts) != 1 || l.Batter.Bursts[0].S != 20 {
		t.Errorf("the log took %v °C (measured %v) and bursts %v", l.Batter.StartC, l.Batter.Measured, l.Batter.Bursts)
	}
	lesson := fromLogs(logs)
	if lesson.Hand.Pours != 1 || len(lesson.Hand.Traits) < 2 {
		t.Errorf("the lesson rests on %d pours and has %d traits", lesson.Hand.Pours, len(lesson.Hand.Traits))
	}
	if _, err := clock.New(l.Batter, lesson.Hand); err != nil {
		t.Errorf("the clock does not take the hand: %v", err)
	}
}

func TestWhatWasMeasuredStandsBesideItsPlan(t *testing.T) {
	p, sheet, _ := measuredPour(t)
	want := map[string]float64{sheet.Totals[0].Name: 381.5, "base batter": 36.5, "a bar as cut on 2026-12-06": 131.2}
	for _, d := range Compare(p, sheet) {
		if v, ok := want[d.What]; ok {
			if d.Actual.V != v || !d.Planned.Known {
				t.Errorf("%s: planned %v, actual %v", d.What, d.Planned, d.Actual)
			}
			delete(want, d.What)
		}
	}
	if len(want) > 0 {
		t.Errorf("not compared: %v", want)
	}
}

// Each figure beside its plan, by the plan's own numbers and the minutes that were marked.
func TestEveryFigureOfARecordIsThatOfThePlanAndOfThePour(t *testing.T) {
	plan, shelf := lonely(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	m := begins(t, openTestBook(t), sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	m.after(2*time.Minute, logbook.Event{Kind: logbook.Done, Step: "base make the lye"})
	m.after(time.Minute, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
	m.after(4*time.Minute, logbook.Event{Kind: logbook.Done, Step: "base mix"})
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 40.5})
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 31})
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadBatter, Value: 36})
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Icing, What: logbook.ReadOils, Value: 33})
	m.sees(time.Minute, "fern", chem.Light)
	m.after(time.Minute, logbook.Event{Kind: logbook.NotYet, Batch: pour.Base, Jug: "poppy", Stage: chem.Thick})
	m.after(0, logbook.Event{Kind: logbook.Weighed, What: "something unplanned", Value: 5})
	m.after(0, logbook.Event{Kind: logbook.Cut, Value: 130})
	m.after(0, logbook.Event{Kind: logbook.Cured, What: "2026-12-05", Value: 101})
	m.after(0, logbook.Event{Kind: logbook.Noted, Text: "no figure"})

	var mix, fern, poppy pour.Figure
	for _, s := range m.run.State().Steps {
		if s.Key == "base mix" {
			mix = pour.Know(s.PlannedMin)
		}
	}
	for _, j := range sheet.Base.Jugs {
		switch j.Name {
		case "fern":
			fern = j.Clock.Stages[chem.Light].Mid
		case "poppy":
			poppy = j.Clock.Stages[chem.Thick].Mid
		}
	}
	want := map[string]Difference{
		"base mix":                           {Unit: pour.UnitMinute, Planned: mix, Actual: pour.Know(0)},
		"base make the lye":                  {Unit: pour.UnitMinute, Planned: pour.Figure{}, Actual: pour.Know(-3)},
		"base oils":                          {Unit: pour.UnitCelsius, Planned: pour.Know(plan.Base.OilsC), Actual: pour.Know(40.5)},
		"base lye":                           {Unit: pour.UnitCelsius, Planned: pour.Know(plan.Base.LyeC), Actual: pour.Know(31)},
		"base batter":                        {Unit: pour.UnitCelsius, Planned: pour.AsFigure(sheet.Base.Heat.MixC), Actual: pour.Know(36)},
		"icing oils":                         {Unit: pour.UnitCelsius, Planned: pour.Figure{}, Actual: pour.Know(33)},
		"light in all of the base":           {Unit: pour.UnitMinute, Planned: fern, Actual: pour.Know(5), Predicted: true},
		"not yet thick in poppy of the base": {Unit: pour.UnitMinute, Planned: poppy, Actual: pour.Know(6), Predicted: true},
		"something unplanned":                {Unit: pour.UnitGram, Planned: pour.Figure{}, Actual: pour.Know(5)},
		"a bar as cut on 2026-12-05":         {Unit: pour.UnitGram, Planned: pour.AsFigure(sheet.Bars.CutG), Actual: pour.Know(130)},
		"a cured bar on 2026-12-05":          {Unit: pour.UnitGram, Planned: pour.AsFigure(sheet.Bars.CuredG), Actual: pour.Know(101)},
	}
	for _, d := range Compare(m.record(shelf), sheet) {
		w, ok := want[d.What]
		if !ok {
			if d.Actual.Known && d.What != "base lye in" {
				t.Errorf("%s is compared, with %v", d.What, d.Actual)
			}
			continue
		}
		delete(want, d.What)
		if d.Unit != w.Unit || d.Predicted != w.Predicted || d.Actual.Known != w.Actual.Known || d.Actual.V-w.Actual.V > 1e-9 || w.Actual.V-d.Actual.V > 1e-9 {
			t.Errorf("%s was %v %v, want %v %v", d.What, d.Actual, d.Unit, w.Actual, w.Unit)
		}
		if d.What != "base make the lye" && d.Planned != w.Planned {
			t.Errorf("%s is planned at %v, want %v", d.What, d.Planned, w.Planned)
		}
	}
	if len(want) > 0 || !fern.Known || !poppy.Known || !mix.Known {
		t.Errorf("not compared: %v", want)
	}
}

// What was weighed for a batch or a jug stands beside that batch's own plan, never beside base and icing together.
func TestAWeightStandsBesideItsOwnBatchAndJug(t *testing.T) {
	plan, shelf := meadow(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	base, icing := sheet.Base.Lye.NaOH, sheet.Icing.Lye.NaOH
	jug := sheet.Base.Jugs[1]
	dye := jug.Colourants[0]
	m := begins(t, openTestBook(t), sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	weigh := func(n pour.BatchName, jug, what string, g float64) {
		m.after(time.Minute, logbook.Event{Kind: logbook.Weighed, Batch: n, Jug: jug, What: what, Value: g})
	}
	weigh(pour.Base, "", pour.NameNaOH, 1)
	weigh(pour.Icing, "", pour.NameNaOH, 2)
	weigh(pour.Base, jug.Name, pour.WeighBatter, 3)
	weigh(pour.Base, jug.Name, dye.Name, 4)
	weigh("", "", pour.NameNaOH, 5)
	want := map[string]Difference{
		"base " + pour.NameNaOH:             {Planned: pour.Know(base.ToWeighG), Actual: pour.Know(1)},
		"icing " + pour.NameNaOH:            {Planned: pour.Know(icing.ToWeighG), Actual: pour.Know(2)},
		"base " + jug.Name + " batter":      {Planned: pour.Know(jug.BatterWeighG), Actual: pour.Know(3)},
		"base " + jug.Name + " " + dye.Name: {Planned: pour.Know(dye.PigmentG), Actual: pour.Know(4)},
		pour.NameNaOH:                       {Planned: pour.Know(base.ToWeighG + icing.ToWeighG), Actual: pour.Know(5)},
	}
	for _, d := range Compare(m.record(shelf), sheet) {
		if w, ok := want[d.What]; ok {
			if d.Planned != w.Planned || d.Actual != w.Actual || d.Unit != pour.UnitGram {
				t.Errorf("%s: planned %v, weighed %v, want %v, %v", d.What, d.Planned, d.Actual, w.Planned, w.Actual)
			}
			delete(want, d.What)
		}
	}
	if len(want) > 0 {
		t.Errorf("not compared: %v", want)
	}
}

// A slip that was weighed again is no second figure of the pour: one line tells the last weight, and knows the first.
func TestAWeightThatWasMendedIsToldOnce(t *testing.T) {
	plan, shelf := lonely(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	m := begins(t, openTestBook(t), sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	for _, g := range []float64{356.2, 250.2} {
		m.after(time.Second, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: sheet.Base.Oils[0].Name, Value: g, Lot: "A7"})
	}
	n := 0
	for _, d := range Compare(m.record(shelf), sheet) {
		if d.What == "base "+sheet.Base.Oils[0].Name {
			if n++; d.Actual.V != 250.2 || len(d.Before) != 1 || d.Before[0] != 356.2 {
				t.Errorf("it is told as %+v", d)
			}
		}
	}
	if n != 1 {
		t.Errorf("it is told %d times", n)
	}
	if s := m.run.State(); s.Kept() != 2 {
		t.Errorf("%d marks are kept", s.Kept())
	}
}
