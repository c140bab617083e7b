package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/whatif"
)

// reported holds the plan against a report drawn closely around it, with its ranges bent.
func reported(ranges func([]label.Range) []label.Range) bend {
	return sold(func(p *pour.Plan, shelf *pour.Shelf) {
		s := pour.Weigh(*p, *shelf)
		has, err := s.Amounts(*shelf, nil)
		if err != nil {
			panic(err) // the rows are constant: one that cannot be is a mistake in them
		}
		around := label.Around(has, 8)
		if ranges != nil {
			around = ranges(around)
		}
		p.Label.Report, shelf.Label.Reports = "R-12", []label.Report{{ID: "R-12", Ranges: around}}
	})
}

// allows lets a report allow of one thing so many times as much as the plan has, and of all else half as much and twice as much again.
func allows(of string, times float64) bend {
	return reported(func(ranges []label.Range) []label.Range {
		for i := range ranges {
			x := &ranges[i]
			middle := (x.Least + x.Most) / 2
			x.Least, x.Most = x.Least/2, min(100, x.Most*2)
			switch {
			case x.Of() != of:
			case times < 1:
				x.Most = middle * times
			default:
				x.Least = middle * times
			}
		}
		return ranges
	})
}

// unnamed has no range for one thing.
func unnamed(of string) bend {
	return reported(func(ranges []label.Range) []label.Range {
		for i := range ranges {
			ranges[i].Least, ranges[i].Most = ranges[i].Least/2, min(100, ranges[i].Most*2)
		}
		return slices.DeleteFunc(ranges, func(x label.Range) bool { return x.Of() == of })
	})
}

// outside are what the sheet says leaves the report.
func outside(s pour.Sheet) (out []pour.Warning) {
	for _, w := range s.Warnings {
		if w.Code == "outside-report" {
			out = append(out, w)
		}
	}
	return out
}

func TestADesignIsHeldAgainstItsReport(t *testing.T) {
	plan, full := hanger(t)
	p, shelf := reported(nil).of(plan, full)
	s := pour.Work(p, shelf, pour.Hand{})
	if v := s.Label.Report; v.Tell() != "inside report R-12" || len(outside(s)) != 0 {
		t.Errorf("%+v, %+v", v, outside(s))
	}
	for name, c := range map[string]struct {
		with bend
		want string
	}{
		"too much":     {allows("oil olive", 0.9), "olive oil"},
		"too little":   {allows("superfat", 1.5), "superfat of the base"},
		"not assessed": {unnamed("oil coconut"), "coconut oil"},
		"missing": {reported(func(x []label.Range) []label.Range {
			return append(x, label.Range{Kind: label.RangeOil, ID: "sweet-almond", Least: 1, Most: 2}, label.Range{Kind: label.RangeScent, ID: "no-such", Least: 1, Most: 2})
		}), "no sweet almond oil, 1.0 % under its least"},
	} {
		p, shelf := c.with.of(plan, full)
		s := pour.Work(p, shelf, pour.Hand{})
		got := outside(s)
		if len(got) == 0 || !strings.HasPrefix(got[0].Text, c.want) || !strings.HasSuffix(got[0].Text, ": outside report R-12") || got[0].Severity != pour.Caution {
			t.Errorf("%s: %+v", name, got)
		}
		if len(got) != len(s.Label.Report.Missed) {
			t.Errorf("%s: %d warnings of %+v", name, len(got), s.Label.Report.Missed)
		}
	}
}

// Without a market there is no label, whatever report is named; without a report no verdict; and one that is not there is told with the id that was meant.
func TestAReportThatIsNotThereIsToldOf(t *testing.T) {
	plan, full := hanger(t)
	p, shelf := reported(nil).of(plan, full)
	p.Label.Report = "R-21"
	s := pour.Work(p, shelf, pour.Hand{})
	if v := s.Label.Report; !strings.Contains(v.Why, `did you mean "R-12"?`) || len(outside(s)) != 1 || !strings.Contains(outside(s)[0].Text, "R-21 cannot be told") {
		t.Errorf("%+v, %+v", v, outside(s))
	}
	p.Label.Report = ""
	if s := pour.Work(p, shelf, pour.Hand{}); s.Label.Report.Tell() != "" || len(outside(s)) != 0 {
		t.Errorf("%+v", s.Label.Report)
	}
	p.Label = pour.Label{Report: "R-12"}
	if s := pour.Work(p, shelf, pour.Hand{}); s.Label.Report.Tell() != "" || len(outside(s)) != 0 {
		t.Errorf("%+v", s.Label.Report)
	}
}

// Each kind of figure that leaves a report has edits that bring it back, each tried here once more on a sheet of its own.
func TestWhatLeavesAReportIsBroughtBack(t *testing.T) {
	plan, full := hanger(t)
	strewn := func(p *pour.Plan, _ *pour.Shelf) {
		p.Top.Toppings = []pour.Topping{{GPerBar: 1, When: pour.StrewCure, Parts: []pour.ToppingPart{{Material: "calendula-petals", Percent: 100}}}}
	}
	for name, c := range map[string]struct {
		before, with bend
		want         string // begins the first mend
	}{
		"an oil":            {nil, allows("oil olive", 0.95), "take "},
		"less of an oil":    {nil, allows("oil coconut", 1.06), "bring coconut oil to "},
		"an oil unnamed":    {nil, unnamed("oil castor"), "take coconut oil in place of castor oil"},
		"a scent":           {nil, allows("scent lavender-oil", 0.7), "take "},
		"a scent unnamed":   {nil, unnamed("scent lavender-oil"), "leave "},
		"white":             {nil, allows("white", 0.6), "bring white pigments to 59.3 %"},
		"a colour":          {nil, allows("colourant titanium-white-oil", 0.6), "bring titanium white, oil-dispersible to 59.3 %"},
		"the superfat":      {nil, allows("superfat", 0.95), "icing: set the superfat to "},
		"a superfat more":   {nil, allows("superfat", 1.4), "set the superfat to "},
		"a topping":         {strewn, allows("topping calendula-petals", 0.5), "take "},
		"a topping unnamed": {strewn, unnamed("topping calendula-petals"), "leave "},
	} {
		p, shelf := c.before.of(plan, full)
		p, shelf = c.with.of(p, shelf)
		sheet := pour.Work(p, shelf, pour.Hand{})
		all := whatif.MendsOf(sheet, shelf, pour.Hand{}, func(w pour.Warning) bool { return w.Code == "outside-report" })
		tried := 0
		for i, w := range sheet.Warnings {
			for _, mend := range all[i] {
				mends(t, sheet, shelf, w, mend)
				if tried++; tried == 1 && !strings.HasPrefix(mend.Says, c.want) {
					t.Errorf("%s: %s, want %s", name, mend.Says, c.want)
				}
			}
		}
		if tried == 0 {
			t.Errorf("%s: nothing mends %+v", name, outside(sheet))
		}
	}
}

// Ranges by the sheet are those of plain sums: the grams of an oil that carries no colour over all batches, in proportion to the bar as it was made.
func TestAmountsAreTheGramsOfTheBar(t *testing.T) {
	plan, full := hanger(t)
	s := pour.Work(plan, full, pour.Hand{})
	has, err := s.Amounts(full, nil)
	if err != nil {
		t.Fatal(err)
	}
	coconut := 0.0
	for _, a := range has {
		if a.Kind == label.RangeOil && a.ID == "coconut" {
			coconut += a.Percent
		}
	}
	want := 0.0
	for _, b := range s.Batches() {
		in := s.Bars.CutG - s.Bars.IcingPerBarG
		if b.Name == pour.Icing {
			in = s.Bars.IcingPerBarG
		}
		for _, o := range b.Oils {
			if o.ID == "coconut" {
				want += 100 * o.G / (b.Size.PouredG / (1 - b.Size.LossPercent/100)) * in / s.Bars.CutG
			}
		}
	}
	if math.Abs(coconut-want) > 1e-6 {
		t.Errorf("%g %% coconut oil, want %g", coconut, want)
	}
}
