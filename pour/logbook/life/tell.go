package life

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Tell is one line of what an event says, without its day and id, masses as the plan shows them.
func Tell(e logbook.Event, show pour.Show) string {
	l := e.Life
	parts := make([]string, 0, 8)
	say := func(format string, args ...any) { parts = append(parts, fmt.Sprintf(format, args...)) }
	switch e.Kind {
	case logbook.Unmoulded:
		say("out of the mould")
	case logbook.Sliced:
		say("cut into %s", bars(max(l.Count, len(l.MassesG))))
	case logbook.WeighIn:
		say("weighed")
	case logbook.Sniffed:
		say("smells %s", degree(e.Value, "of nothing", "faintly", "clearly", "strongly", "very strongly"))
	case logbook.Looked:
		say("%s %s", e.What, degree(e.Value, "none", "a little", "some", "much", "very much"))
	case logbook.Tested:
		say("%s %.6g%s", e.What, e.Value, map[string]string{logbook.TestTitration: " % free NaOH"}[e.What])
	case logbook.Photo:
		say("photo %s", l.Path)
	case logbook.Ticked:
		say("ticked %s for %s", e.What, l.Market)
	case logbook.Lotted:
		say("%s labelled as %s", bars(l.Count), e.Lot)
	case logbook.Sold, logbook.Given, logbook.Kept:
		say("%s %s", bars(l.Count), e.Kind)
	case logbook.Seconds:
		say("%s not good enough to sell", bars(l.Count))
	case logbook.Counted:
		say("%s left by counting them", bars(l.Count))
	case logbook.Cut, logbook.Cured:
		if e.Step != "" {
			say("%s, %s", e.Step, show.Dose(e.Value))
			break
		}
		say("one bar %s, %s", map[logbook.EventKind]string{logbook.Cut: "as cut", logbook.Cured: "cured"}[e.Kind], show.Dose(e.Value))
	case logbook.Weighed:
		say("%s, %s", strings.TrimSpace(string(e.Batch)+" "+e.What), show.Dose(e.Value))
		if e.Lot != "" {
			say("lot %s", e.Lot)
		}
	default:
		say("%s", e.Kind)
	}
	parts = append(parts, details(e, show)...)
	return strings.Join(parts, ", ")
}

// details are what an event says beside its first words.
func details(e logbook.Event, show pour.Show) []string {
	l := e.Life
	var out []string
	add := func(there bool, format string, args ...any) {
		if there {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	if len(l.MassesG) > 0 {
		mean := 0.0
		for _, g := range l.MassesG {
			mean += g / float64(len(l.MassesG))
		}
		add(true, "%s on average", show.Dose(mean))
		add(e.Kind == logbook.WeighIn, "bars %s", joined(numbered(l), func(n int) string { return fmt.Sprint(n) }))
	}
	add(l.CrumbsG > 0, "crumbs %s", show.Dose(l.CrumbsG))
	add(l.Seconds > 0, "%d of them seconds", l.Seconds)
	add(e.Kind == logbook.Unmoulded && e.What != "", "%s", e.What)
	add(e.Kind == logbook.Sold && e.What != "", "at %s", e.What)
	add(e.Kind == logbook.Kept && e.What != "", "as %s", map[string]string{logbook.KeptSample: "the batch's sample", logbook.KeptOwn: "one's own"}[e.What])
	add(l.Price != "", "%s", strings.TrimSpace(l.Price+" "+l.Currency)+" a bar")
	add(l.Audience != "", "for %s", l.Audience)
	add(l.Scent != "", "of %s", l.Scent)
	add(e.Jug != "", "in %s", e.Jug)
	add(l.Colour != "", "%s", l.Colour)
	add(e.Text != "", "%s", strings.Join(strings.Fields(e.Text), " "))
	return out
}

// bars is a number of bars in words.
func bars(n int) string {
	if n == 1 {
		return "1 bar"
	}
	return fmt.Sprintf("%d bars", n)
}

// degree is a strength of 0 to 4 in words.
func degree(v float64, words ...string) string {
	if i := int(v); float64(i) == v && i >= 0 && i < len(words) {
		return fmt.Sprintf("%s (%d of %d)", words[i], i, logbook.Strongest)
	}
	return fmt.Sprintf("%.6g of %d", v, logbook.Strongest)
}
