package paper

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/life"
	underway "pourbench/pour/logbook/live"
)

// What is far enough from the plan to be told as a deviation (own, no source).
const (
	offPart = 0.01 // of a planned mass, and more than a step of its scale
	offC    = 2    // °C
	offMin  = 5    // minutes that a step began later
)

// deviations tells what differed from the plan, one line each: what was weighed and read, what began late, trouble and what was done for it, what the
// maker noted, what was corrected. It is worked out of what was marked; what nobody marked is in none of it.
func deviations(record logbook.Pour, sheet *pour.Sheet, b life.Batch) []string {
	out := differed(record, sheet)
	standing := logbook.Standing(record.Events)
	for _, e := range standing {
		if text := happened(whole(e, standing), sheet); text != "" {
			out = append(out, text)
		}
	}
	if n := len(b.Of(logbook.Sliced)); n > 0 && b.Planned.Bars > 0 && b.Bars.Bars != b.Planned.Bars {
		out = append(out, fmt.Sprintf("%d bars, planned %d", b.Bars.Bars, b.Planned.Bars))
	}
	if b.Bars.Missing != 0 {
		out = append(out, "bars: "+b.Bars.Tell())
	}
	return append(out, amended(record.Events, standing)...)
}

// differed are the figures that were not as planned; of the steps that began late the latest.
func differed(record logbook.Pour, sheet *pour.Sheet) []string {
	show := sheet.Plan.Show
	var out []string
	late, worst, count := "", 0.0, 0
	for _, d := range learn.Compare(record, *sheet) {
		off := d.Actual.V - d.Planned.V
		if !d.Planned.Known || !d.Actual.Known || d.Predicted {
			continue
		}
		switch {
		case d.Unit == pour.UnitMinute && off > offMin:
			if count++; off > worst {
				late, worst = d.What, off
			}
		case d.Unit == pour.UnitCelsius && math.Abs(off) > offC, d.Unit == pour.UnitGram && math.Abs(off) > max(offPart*d.Planned.V, scaleStep(show, d)):
			out = append(out, fmt.Sprintf("%s: planned %s, was %s", d.What, unitText(show, d.Planned, d), unitText(show, d.Actual, d))+firstRead(show, d))
		case len(d.Before) > 0:
			out = append(out, fmt.Sprintf("%s: %s", d.What, unitText(show, d.Actual, d))+firstRead(show, d))
		}
	}
	if count > 0 {
		out = append(out, fmt.Sprintf("%d steps began more than %d min late, the latest of them %s, by %s", count, offMin, late, show.Minutes(worst)))
	}
	return out
}

// firstRead tells what a thing was weighed as before it was weighed again; empty: nothing.
func firstRead(show pour.Show, d learn.Difference) string {
	if len(d.Before) == 0 {
		return ""
	}
	var slips []string
	for _, g := range d.Before {
		slips = append(slips, unitText(show, pour.Know(g), d))
	}
	return "; first read " + strings.Join(slips, ", then ") + ", weighed again"
}

// scaleStep is the step of the scale that a difference was weighed on, g.
func scaleStep(show pour.Show, d learn.Difference) float64 {
	if d.Fine {
		return show.LyeStepG
	}
	return show.ScaleStepG
}

// whole is a mark with all of its batch in the place of the jug, where that still was one pot; a scent that was left out is one jug's own, unless all of
// the batch went without.
func whole(e logbook.Event, standing []logbook.Event) logbook.Event {
	own := e.Kind == logbook.Rescued && e.What == logbook.ScentLeftOut
	if own && e.Jug == "" || !own && (e.Kind == logbook.Troubled || e.Kind == logbook.Rescued) && logbook.SplitAfter(standing, e) {
		e.Jug = "all of the " + string(e.Batch)
	}
	return e
}

// happened is what a mark tells that no plan has; empty: nothing.
func happened(e logbook.Event, sheet *pour.Sheet) string {
	of := strings.TrimSpace(e.Jug)
	if of == "" {
		of = string(e.Batch)
	}
	text := func(words ...string) string {
		return strings.Join(slices.DeleteFunc(words, func(w string) bool { return strings.TrimSpace(w) == "" }), ": ")
	}
	switch e.Kind {
	case logbook.Troubled:
		return text(of, "trouble, "+e.What, oneLine(e.Text))
	case logbook.NotYet:
		return text(of, "used before it was at "+e.Stage.String())
	case logbook.Rescued:
		return text(of, "changed plan, "+e.What, oneLine(e.Text))
	case logbook.Unpoured:
		return text(of, "left in its jug", oneLine(e.Text))
	case logbook.Skipped:
		return text(stepName(sheet, e.Step), "not done")
	case logbook.Noted:
		return text(of, "note, "+oneLine(e.Text))
	case logbook.Result:
		return "result: " + oneLine(e.Text)
	case logbook.Failed:
		return "the batch failed: " + oneLine(e.Text)
	case logbook.TornRecord:
		return "a mark was being written when the machine stopped, and does not count"
	}
	return ""
}

// stepName is a step with its batch, by its key.
func stepName(sheet *pour.Sheet, key string) string {
	for _, s := range underway.Steps(*sheet) {
		if s.Key == key {
			return strings.TrimSpace(string(s.Batch) + " " + s.Name)
		}
	}
	return key
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// amended tells how many marks were taken back, and which were corrected.
func amended(all, standing []logbook.Event) []string {
	var out []string
	back := 0
	for _, e := range all {
		if e.Kind == logbook.TakenBack {
			back++
		}
	}
	for _, e := range standing {
		if e.Corrects != "" {
			out = append(out, fmt.Sprintf("corrected: %s of %s, now %s", e.Kind, e.Day(), e.ID))
		}
	}
	if back > 0 {
		out = append(out, fmt.Sprintf("%d marks were taken back", back))
	}
	return out
}
