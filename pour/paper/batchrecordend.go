package paper

import (
	"fmt"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// bars is the cut: its day, how many bars, what they weighed.
func (r *batchRecord) bars() {
	b := r.batch
	r.heading("cut", "", "")
	for _, e := range b.Of(logbook.Unmoulded) {
		r.line("Out of the mould", e.Day()+detail(e.What)+detail(oneLine(e.Text)))
	}
	on := ""
	if b.CutDay != nil {
		on = b.CutDay.String()
	}
	r.line("Cut on", on)
	count := ""
	if b.Bars.Known && !b.Bars.Planned {
		count = fmt.Sprintf("%d, of them seconds at any time %d", b.Bars.Bars, b.Bars.Seconds)
	}
	r.line(fmt.Sprintf("Bars (planned %d of %s)", b.Planned.Bars, r.show.Figure(b.Planned.CutG, r.show.Weight)), count)
	masses := ""
	for _, w := range b.WeighIns {
		if b.CutDay != nil && w.When.Day == *b.CutDay {
			masses = r.masses(w)
			break
		}
	}
	r.line("Masses as cut", masses)
	for _, e := range b.Of(logbook.Sliced) {
		if e.Life.CrumbsG > 0 {
			r.line("Crumbs", r.show.Dose(e.Life.CrumbsG))
		}
	}
}

// masses are the bars of a weighing with what each weighed.
func (r *batchRecord) masses(w life.WeighIn) string {
	var parts []string
	for i, g := range w.MassesG {
		if w.Bars[i] == life.OneBar {
			parts = append(parts, "one bar "+r.show.Dose(g))
			continue
		}
		parts = append(parts, fmt.Sprintf("%d: %s", w.Bars[i], r.show.Dose(g)))
	}
	return strings.Join(parts, ", ")
}

func detail(text string) string {
	if text == "" {
		return ""
	}
	return ", " + text
}

// cure is its beginning and end, and the weighings between.
func (r *batchRecord) cure() {
	b := r.batch
	r.heading("cure", "", "")
	from, to := "", ""
	if b.CutDay != nil {
		from = b.CutDay.String()
	}
	if len(b.Lots) > 0 {
		to = b.Lots[0].Day.String() + ", when the first bars were labelled"
	} else if cured := b.Of(logbook.Cured); len(cured) > 0 {
		to = cured[len(cured)-1].Day()
	}
	r.line("Begun on", from)
	r.line("Ended on", to)
	for _, w := range b.WeighIns {
		if b.CutDay == nil || w.When.Day == *b.CutDay {
			continue
		}
		r.keep(func() { r.wrapped("  ", fmt.Sprintf("day %d, %s: %s", w.When.Day-*b.CutDay, w.When.Day, r.masses(w))) })
	}
	if len(b.WeighIns) < 2 {
		r.line("Weighings (day, bars, masses)", "")
	}
}

// checks are what was tested and looked at, as it was logged.
func (r *batchRecord) checks() {
	r.heading("checks, as they were logged", "", "")
	tests := r.batch.Of(logbook.Tested)
	for _, kind := range []logbook.EventKind{logbook.Tested, logbook.Looked, logbook.Sniffed} {
		for _, e := range r.batch.Of(kind) {
			r.keep(func() { r.wrapped("- ", e.Day()+": "+life.Tell(e, r.show)) })
		}
	}
	if len(tests) == 0 {
		r.line("pH of a 1 % solution, or free alkali by titration; day, by whom", "")
	}
	r.info("A reading is what was read and no claim that the batch is safe: soap holds its pH whatever little alkali is over; titration is the proof.")
}

// release is the line to be signed, and the sample that is kept.
func (r *batchRecord) release() {
	r.heading("release and retained sample", "", "")
	r.keep(func() {
		r.raw("[ ] released   [ ] not released   for label and sale, this record read through")
		r.raw("By ____________________   signed ____________________   on ____________________")
	})
	sample := ""
	for _, e := range r.batch.Of(logbook.Kept) {
		if e.What == logbook.KeptSample {
			sample = strings.TrimPrefix(sample+fmt.Sprintf("; %d on %s%s", e.Life.Count, e.Day(), detail(oneLine(e.Text))), "; ")
		}
	}
	r.line("Sample bars kept, and where", sample)
}

// gone is where the bars went: lot to bars, and bars to whom.
func (r *batchRecord) gone() {
	b := r.batch
	r.heading("labels, and where the bars went", "", "")
	for _, l := range b.Lots {
		r.wrapped("- ", fmt.Sprintf("%s: %d labelled as lot %s", l.Day, l.Count, l.Lot))
	}
	for _, e := range b.Events {
		switch e.Kind {
		case logbook.Sold, logbook.Given, logbook.Kept, logbook.Counted, logbook.Seconds:
			r.keep(func() { r.wrapped("- ", dayOf(e).String()+": "+life.Tell(e, r.show)) })
		}
	}
	for _, m := range life.Marks(r.record.Events) {
		if e := m.Event; !m.Standing && m.Why == "taken back" {
			r.keep(func() { r.wrapped("- ", "taken back: "+dayOf(e).String()+", "+life.Tell(e, r.show)) })
		}
	}
	if b.Bars.Known && (b.CutDay != nil || len(b.Lots) > 0) {
		a := b.Bars
		r.wrapped("", fmt.Sprintf("%d bars: %d sold, %d given away, %d kept, %d seconds, %d missing, %d left.", a.Bars, a.Sold, a.Given, a.Kept, a.Seconds, a.Missing, a.Left))
	}
	r.line("Where else, complaints, recalls", "")
}

func dayOf(e logbook.Event) day.Day {
	at, _ := e.When()
	return day.Of(at)
}
