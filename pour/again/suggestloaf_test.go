package again

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// loaf is a pour of the demo as planned, put to bed so, of which one thing was logged after the cut.
func loaf(t *testing.T, plan pour.Plan, shelf pour.Shelf, keep string, e logbook.Event) Past {
	t.Helper()
	plan.Bed.Keep = keep
	d := newDiary("own", plan)
	d.pours(t, shelf, asPlanned)
	if e.Kind == logbook.Looked {
		d.lives(lyeIn+48*time.Hour, e)
	} else {
		d.mark(d.run, e)
	}
	return d.past(t, shelf)
}

// What is done against ash and heat is suggested where they were marked, in figures or in words, and where the words do not deny them.
func TestAshHeatAndCracksThatWereMarkedSuggestWhatIsDoneAgainstThem(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	looked := func(what string, much float64) logbook.Event {
		return logbook.Event{Kind: logbook.Looked, What: what, Value: much}
	}
	said := func(words string) logbook.Event { return logbook.Event{Kind: logbook.Result, Text: words} }
	for _, r := range []struct {
		name, keep string
		e          logbook.Event
		want, not  []string
	}{
		{"ash seen", pour.BedBare, looked(logbook.LookAsh, 3), []string{"cover the loaf closely", "with less water, at 35", "cut after 30 h"}, []string{"chill", "cooler"}},
		{"a trace of it", pour.BedBare, looked(logbook.LookAsh, 1), nil, []string{"cover the loaf", "less water", "cut after"}},
		{"ash in words", pour.BedBare, said("pretty, ash on top"), []string{"cover the loaf closely"}, nil},
		{"denied", pour.BedBare, said("no ash, not cracked"), nil, []string{"cover the loaf", "chill", "less water"}},
		{"another word", pour.BedBare, said("washed and crashed"), nil, []string{"cover the loaf", "chill", "less water"}},
		{"overheated, wrapped", pour.BedInsulate, said("overheated after an hour"), []string{"do not wrap the loaf", "cooler: oils at"}, []string{"less water"}},
		{"overheated, her own word", pour.BedInsulate, looked("overheated", 2), []string{"do not wrap the loaf"}, nil},
		{"cracks of a loaf that gels", pour.BedInsulate, looked(logbook.LookCracks, 2), []string{"do not wrap the loaf"}, nil},
		{"cracks of a cold loaf", pour.BedChill, looked(logbook.LookCracks, 4), nil, []string{"cooler: oils at", "weaker"}},
	} {
		p := loaf(t, plan, shelf, r.keep, r.e)
		list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
		for _, w := range r.want {
			if !strings.Contains(told(list), w) {
				t.Errorf("%s: %q is not suggested: %s", r.name, w, told(list))
			}
		}
		for _, w := range r.not {
			if strings.Contains(told(list), w) {
				t.Errorf("%s: %q is suggested: %s", r.name, w, told(list))
			}
		}
		before := pour.Work(p.Plan(), shelf, pour.Hand{})
		for _, s := range list {
			next, err := pour.Apply(p.Plan(), shelf, s.Edit)
			must(t, err)
			after := pour.Work(next, shelf, pour.Hand{})
			if cautions(after) > cautions(before) {
				t.Errorf("%s: %q brings a caution", r.name, s.Says)
			}
			if strings.Contains(s.Why, "overheat") && after.Gel.MiddleC.Mid.V >= before.Gel.MiddleC.Mid.V {
				t.Errorf("%s: %q leaves the loaf at %v, it was %v", r.name, s.Says, after.Gel.MiddleC.Mid.V, before.Gel.MiddleC.Mid.V)
			}
		}
	}
}

// A loaf that overheated and has ash on it is not wrapped, nor given a stronger lye.
func TestAshOnALoafThatOverheatedIsNotMendedByWarmth(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	p := loaf(t, plan, shelf, pour.BedBare, logbook.Event{Kind: logbook.Result, Text: "overheated, ash on top"})
	list := told(p.Suggest(p.Plan(), nil, shelf, pour.Hand{}))
	if strings.Contains(list, "keep it warm") || strings.Contains(list, "less water") || !strings.Contains(list, "cut after") {
		t.Error(list)
	}
}
