package paper

import (
	"fmt"
	"strings"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/life"
	underway "pourbench/pour/logbook/live"
)

// PourList writes the pours of a logbook as text, one line each, latest first as they come: of at most 80 columns, or as long as its
// id, which is never cut. The name follows, and how it went.
func PourList(entries []logbook.Entry) string {
	p := textPage()
	if len(entries) == 0 {
		p.wrapped("", "No pour is logged yet. A run of a plan logs itself: pourbench run.")
	}
	for _, e := range entries {
		if e.Fault != nil {
			p.wrapped("", e.ID+": "+e.Fault.Error())
			continue
		}
		line := e.ID
		if day := e.Opened.Format("2006-01-02"); !strings.HasPrefix(e.ID, day) {
			line = day + "  " + line // an id the program gave begins with its day
		}
		if room := p.wide - width(line) - 2; room >= leastRest {
			line += "  " + clip(plain(e.Name+": "+howItWent(e)), room)
		}
		p.raw(line)
	}
	return p.text()
}

// leastRest is the least room behind an id that is worth a word, in columns.
const leastRest = 8

// howItWent is what the list says of a pour behind its name, the words of its result last: they are the first to be cut short.
func howItWent(e logbook.Entry) string {
	var marks []string
	if e.TrialScent != "" {
		marks = append(marks, "trial of "+e.TrialScent)
	}
	switch {
	case !e.Ended:
		marks = append(marks, "open")
	case e.Result == "" && !e.CutBegun && e.TrialScent == "":
		marks = append(marks, "over, to be cut")
	case e.Result == "":
		marks = append(marks, "over, no result logged")
	}
	if e.Failed {
		marks = append(marks, "failed")
	}
	if e.LeftOut {
		marks = append(marks, "left out")
	}
	marks = append(marks, e.Troubles...)
	if e.Result != "" {
		marks = append(marks, e.Result)
	}
	return strings.Join(marks, ", ")
}

// PourRecord writes what was planned beside what happened, and every mark of the run. The sheet is that of the plan as poured.
func PourRecord(record logbook.Pour, sheet pour.Sheet) string {
	p, show := textPage(), sheet.Plan.Show
	p.wrapped("", "POUR RECORD: "+record.Name)
	p.wrapped("", "Begun "+record.Opened.Format("2006-01-02 15:04")+", kept as "+record.ID+".")
	if record.Torn != "" {
		p.wrapped("", "The last mark was being written when the machine stopped; it does not count: "+record.Torn)
	}
	p.wrapped("", "A step stands with when it begins, as on paper: with lye in at 0:00, and with the end of the one done before it.")
	p.raw("")
	p.raw(padded("", 44) + padded("planned", 16) + "actual")
	for _, d := range learn.Compare(record, sheet) {
		planned := unitText(show, d.Planned, d)
		if d.Predicted {
			planned = show.Figure(d.Planned, show.Predicted)
		}
		p.raw(padded(clip(d.What, 42), 44) + padded(plain(planned), 16) + unitText(show, d.Actual, d))
	}
	cutSum(p, record, sheet)
	leaner(p, record, sheet)
	p.raw("")
	standing := logbook.Standing(record.Events)
	for _, e := range standing {
		e = whole(e, standing)
		switch e.Kind {
		case logbook.Skipped:
			p.wrapped("", string(e.Kind)+": "+stepName(&sheet, e.Step))
		case logbook.Noted, logbook.Troubled, logbook.Result, logbook.Rescued, logbook.Unpoured:
			p.wrapped("", strings.TrimSpace(string(e.Kind)+": "+strings.TrimSpace(strings.TrimSpace(e.Jug+" "+e.What)+" "+e.Text)))
		}
	}
	weights(p, record, &sheet)
	afterwards(p, record, show)
	return p.text()
}

// weights lists what was weighed into the batches, each with the name it is corrected by: what counts, and behind it the slips that were weighed again,
// of which may be said that they were of another thing.
func weights(p *page, record logbook.Pour, sheet *pour.Sheet) {
	counting, again := logbook.Counting(logbook.Standing(record.Events), sheet)
	omitted := logbook.OmittedBy(counting)
	first := true
	for _, e := range counting {
		if e.Kind != logbook.Weighed || e.Step != "" {
			continue
		}
		if first {
			p.raw("")
			p.wrapped("", "WEIGHED, each with its name, by which correct and take-back know it")
			first = false
		}
		text := e.ID + "  " + life.Tell(e, sheet.Plan.Show)
		if omitted.Weighing(sheet, e) {
			text += ": did not go in, left out"
		}
		p.wrapped("", text)
		for _, slip := range again[e.ID] {
			p.wrapped("  ", slip.ID+"  "+life.Tell(slip, sheet.Plan.Show)+": does not count, weighed again since")
		}
	}
}

// afterwards lists what became of the batch, by the day, each event with the name it is corrected by.
func afterwards(p *page, record logbook.Pour, show pour.Show) {
	events := life.Events(record)
	if len(events) == 0 {
		return
	}
	p.raw("")
	p.wrapped("", "AFTER THE POUR, each event with its name, by which correct and take-back know it")
	for _, e := range events {
		text := life.Tell(e, show)
		if e.Corrects != "" {
			text += ", in the place of " + e.Corrects
		}
		p.wrapped("", e.Day()+"  "+e.ID+"  "+text)
	}
}

// cutSum is what all pieces weighed at the cut weigh, and what planned and true mean.
func cutSum(p *page, record logbook.Pour, sheet pour.Sheet) {
	show := sheet.Plan.Show
	var all, planned float64
	n, known := 0, true
	for _, m := range underway.Masses(&sheet, logbook.Standing(record.Events)) {
		if m.TrueG.Known {
			n++
			all, planned, known = all+m.TrueG.V, planned+m.PlannedG.V, known && m.PlannedG.Known
		}
	}
	if n == 0 {
		return
	}
	p.raw(padded("all that was weighed as cut", 44) + padded(show.Figure(pour.Figure{V: planned, Known: known}, show.Weight), 16) + show.Weight(all))
	p.wrapped("", "Planned is what the plan puts into a piece, with its icing, embeds and topping, before anything dries; actual is what the scale said. A loaf that has "+
		"stood a day is usually some percent lighter (common practice, no source). Steps of the cut are counted from when it began.")
}

// leaner says of every batch that had less superfat as weighed than planned, or was lye-heavy, and why it went on, if that was said.
func leaner(p *page, record logbook.Pour, sheet pour.Sheet) {
	for _, f := range underway.Replay(sheet, record.Events).Superfats(&sheet) {
		text := f.Words(sheet.Plan.Show)
		switch {
		case text == "":
			continue
		case f.Why != "":
			text += ". Said: " + f.Why
		case f.Stops():
			text += ". Nobody said why"
		}
		p.raw("")
		p.wrapped("", strings.ToUpper(text[:1])+text[1:]+".")
	}
}

// unitText draws a figure of a record in the plan's units.
func unitText(show pour.Show, f pour.Figure, of learn.Difference) string {
	return strings.ReplaceAll(of.Told(show, f), "°", "deg ")
}

// clip shortens a text to a width, with three dots where something is left out.
func clip(text string, to int) string {
	if width(text) <= to {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && width(string(runes))+3 > to {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "..."
}

// LessonText says what all pours have taught the clock: the maker's pace, what each scent has turned out to be, and predicted beside
// observed for every log. Unread pours are named with the reason.
func LessonText(l learn.Lesson, unread []learn.Unread) string {
	p := textPage()
	p.wrapped("", "WHAT YOUR POURS HAVE TAUGHT THE CLOCK")
	p.wrapped("", fmt.Sprintf("From %d of your pours. Without any, a time can easily be half or double; the band never shrinks below a factor of 1.38, which is "+
		"what one pour differs from the next.", l.Hand.Pours))
	p.raw("")
	for _, f := range l.Scents {
		p.wrapped("", fmt.Sprintf("%s: %.2f times the speed at %g %% of oils (%.2f to %.2f), believed %.2f before; nearest word %s; from %d of your pours",
			f.Name, f.Factor, f.LoadPercent, f.Low, f.High, f.Prior, f.Behaviour, f.Pours))
	}
	for _, r := range l.Logs {
		p.raw("")
		lessonLog(p, r)
	}
	for _, r := range l.Left {
		p.wrapped("", "not learnt from: "+r.Log.Pour+", "+r.Log.JugName+": "+r.Why)
	}
	lessonDrying(p, l)
	p.unread(unread)
	return p.text()
}

// lessonLog is one jug of one pour: predicted without any log, and seen.
func lessonLog(p *page, r learn.LogResult) {
	odd := ""
	if r.Odd {
		odd = " This pour was far from expected; it counts less. Check temperature and lye strength. If a stage was marked by a slip, let it teach nothing: pourbench logbook leave-out " + r.Log.Pour + " WHY"
	}
	p.wrapped("", fmt.Sprintf("%s, %s of the %s: went %.2f times as fast as expected.%s", r.Log.Pour, r.Log.JugName, r.Log.Batch, r.Factor(), odd))
	predicted, ok := r.Log.Predicted(clock.Hand{})
	for _, seen := range r.Log.Seen {
		line := "  " + padded(seen.Stage.String(), 10) + "seen " + padded(minutes(seen.Min), 12)
		if at := stageTime(predicted, seen.Stage); ok && at.MidOK {
			line += "the model alone " + minutes(at.Mid)
		}
		p.raw(line)
	}
}

func stageTime(times [chem.Stages]clock.Time, s chem.Stage) clock.Time {
	if s < 0 || int(s) >= len(times) {
		return clock.Time{}
	}
	return times[s]
}

func minutes(v float64) string { return pour.Show{}.Minutes(v) }

// TrialText says what a scent trial has shown, and the lines that put it on the maker's own shelf.
func TrialText(r learn.TrialResult) string {
	p := textPage()
	p.raw("")
	if !r.Learnt && r.Behaviour == pour.BehaviourUnknown && !r.Rices {
		p.wrapped("", "Nothing that was marked tells how "+r.Scent+" behaves: mark a stage in both jugs.")
		return p.text()
	}
	if r.Learnt {
		f := r.Finding
		p.wrapped("", fmt.Sprintf("%s: %.2f times the speed at %g %% of oils (%.2f to %.2f), from %d of your pours. The clock reckons with it already.",
			f.Name, f.Factor, f.LoadPercent, f.Low, f.High, f.Pours))
	}
	p.wrapped("", "To have its word on your own shelf too:")
	p.raw("")
	p.raw("  [[scent]]")
	p.raw(fmt.Sprintf("  id = %q", r.Scent))
	p.raw(fmt.Sprintf("  behaviour = %q", r.Behaviour))
	if r.Rices {
		p.raw("  rices = true")
	}
	return p.text()
}
