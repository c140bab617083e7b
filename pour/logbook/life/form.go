package life

import (
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// Form is a kind of event as a maker logs it.
type Form struct {
	Kind    logbook.EventKind
	Command string // the word for it among the commands of the logbook
	Label   string
	Means   string
	Example string // what may stand behind the command and the pour
}

// Forms lists the kinds of event that a batch's life has, in the order they usually come, and last a weight of its pour that was not marked in the run.
func Forms() []Form {
	return []Form{
		{logbook.Unmoulded, "unmoulded", "out of the mould", "the loaf came out of its mould: how firm it was", "firm"},
		{logbook.Sliced, "slice", "cut", "the loaf was cut: what the bars weigh, or how many there are, crumbs and seconds", "128.4 127.9 129.2 --crumbs 6"},
		{logbook.WeighIn, "weigh", "weighed", "the same bars weighed again while they dry", "119.5 120.1 118.8 --bars 2,5,8"},
		{logbook.Sniffed, "sniff", "sniffed", "how strong the bar smells, 0 nothing to 4 very strong, and of what", "3 sweet, the lime is gone"},
		{logbook.Looked, "look", "looked at", "how much there is of something to see, 0 none to 4 very much; or a jug's colour as it came out", "ash 2"},
		{logbook.Tested, "test", "tested", "what a test read: pH as a screen, titration as the proof; never by tongue", "pH 9.5 strip, 1 % in distilled water"},
		{logbook.Photo, "photo", "photo", "a picture, by its file", "pictures/cut.png"},
		{logbook.Ticked, "tick", "ticked", "a line of a market's check list is done for this batch, and how", "eu notified told on 3 December"},
		{logbook.Lotted, "lot", "labelled", "bars labelled as a lot", "261205A --count 8"},
		{logbook.Sold, "sell", "sold", "bars sold", "3 --at market --price 7.50 --currency EUR"},
		{logbook.Given, "give", "given away", "bars given away", "2 --to friends"},
		{logbook.Kept, "keep", "kept", "bars kept: as the batch's own sample, or for oneself", "1 sample"},
		{logbook.Seconds, "second", "seconds", "bars found not good enough to sell", "1 chipped"},
		{logbook.Counted, "count", "counted", "how many bars are left, by counting them", "5"},
		{logbook.Failed, "fail", "failed", "the batch failed, and why", "seized and crumbles"},
		{logbook.Weighed, "weighed", "weight of the pour", "what was weighed into the batch and not marked while it was poured: it counts as weighed, and its mark says when it was written in", "343.8 olive oil --lot A7"},
	}
}

// FormOf is the form of a kind.
func FormOf(kind logbook.EventKind) (Form, bool) {
	for _, f := range Forms() {
		if f.Kind == kind {
			return f, true
		}
	}
	return Form{}, false
}

// mostBars and mostG are the most a field takes; no loaf has more bars, no bar more grams.
const (
	mostBars = 100_000
	mostG    = 1e6
)

// Fields are the fields of an event of its kind, bound to it: what is set in one is in the event. The plan gives the words for its scents and jugs.
func Fields(e *logbook.Event, plan pour.Plan) []Field {
	var own []Field
	switch e.Kind {
	case logbook.Cut, logbook.Cured:
		return []Field{
			{Key: "mass", Label: "mass", Unit: string(pour.UnitGram), Low: 0, High: mostG, Required: true, Lead: true, At: &e.Value},
			{Key: "day", Label: "day", Means: "year-month-day, 1.12., 1 Dec, today or yesterday", Dated: true, Form: isDay, At: &e.What},
		}
	case logbook.Weighed:
		return weighedFields(e, plan)
	case logbook.Unmoulded, logbook.Sliced, logbook.WeighIn:
		own = loafFields(e)
	case logbook.Sniffed, logbook.Looked, logbook.Tested, logbook.Photo:
		own = senseFields(e, plan)
	case logbook.Ticked:
		own = []Field{
			{Key: "market", Label: "market", Means: "its id: pourbench label markets lists them", Required: true, Lead: true, At: &e.Life.Market},
			{Key: "row", Label: "line", Means: "its id in the market's check list: pourbench label check shows it", Required: true, Lead: true, At: &e.What},
		}
	case logbook.Lotted, logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds, logbook.Counted:
		own = countFields(e)
	}
	return append(own,
		Field{Key: "text", Label: "words", Required: e.Kind == logbook.Failed, Rest: true, At: &e.Text},
		Field{Key: "day", Label: "day", Means: "2026-12-06, 6.12., 6 Dec, today or yesterday, with the hour where it counts: 6.12. 09:30; none: now", Dated: true, Form: isDay, At: &e.Life.Day})
}

// weighedFields are what can be corrected of a weight of the pour; a piece of the cut has no lot, and is the piece it is. A weight that is
// written in later begins with what it is of, and says where it went only where the plan has it in several places.
func weighedFields(e *logbook.Event, plan pour.Plan) []Field {
	if e.Corrects == "" {
		return []Field{
			{Key: "what", Label: "of what", Means: "its name in the plan, or a part of it", Required: true, Rest: true, At: &e.What},
			{Key: "mass", Label: "mass", Unit: string(pour.UnitGram), High: mostG, Required: true, Lead: true, At: &e.Value},
			{Key: "lot", Label: "lot", Means: "the maker's number; none: it had none", At: &e.Lot},
			{Key: "batch", Label: "batch", Means: "base or icing, where it goes into both", Words: []string{string(pour.Base), string(pour.Icing)}, At: (*string)(&e.Batch)},
			{Key: "jug", Label: "jug", Means: "into which jug, where it goes into several", Words: jugsOf(plan), At: &e.Jug},
		}
	}
	out := []Field{{Key: "mass", Label: "mass", Unit: string(pour.UnitGram), High: mostG, Required: true, Lead: true, At: &e.Value}}
	if e.Step == "" {
		out = append(
			out, Field{Key: "lot", Label: "lot", Means: "the maker's number; none: it had none", Rest: true, At: &e.Lot},
			Field{Key: "what", Label: "of what", Means: "of which thing it was, by its name in the plan", Required: true, At: &e.What},
			Field{Key: "batch", Label: "batch", Means: "into which batch it went", Words: []string{string(pour.Base), string(pour.Icing)}, Only: true, At: (*string)(&e.Batch)},
			Field{Key: "jug", Label: "jug", Means: "into which jug it went; none: into the batch as a whole", Words: jugsOf(plan), At: &e.Jug},
		)
	}
	return out
}

// loafFields are those of the loaf and of weighing its bars.
func loafFields(e *logbook.Event) []Field {
	l := &e.Life
	masses := Field{
		Key: "masses", Label: "masses", Means: "of the bars, from end A, or in the order of the bars that are named", Unit: string(pour.UnitGram), High: mostG,
		Required: e.Kind == logbook.WeighIn, Lead: true, At: &l.MassesG,
	}
	bars := Field{Key: "bars", Label: "which bars", Means: "by number, from 1 at end A; none: those of the last weighing, or the first ones", Low: 1, High: mostBars, At: &l.Bars}
	switch e.Kind {
	case logbook.Unmoulded:
		return []Field{{Key: "firm", Label: "how firm", Words: logbook.Firmness(), Lead: true, At: &e.What}}
	case logbook.WeighIn:
		return []Field{masses, bars}
	}
	return []Field{
		masses, bars,
		{Key: "count", Label: "how many", Means: "how many bars, where they are not all weighed", Unit: "bars", High: mostBars, At: &l.Count},
		{Key: "crumbs", Label: "crumbs", Means: "what the cut left beside the bars", Unit: string(pour.UnitGram), High: mostG, At: &l.CrumbsG},
		{Key: "seconds", Label: "seconds", Means: "of the bars, those not good enough to sell", Unit: "bars", High: mostBars, At: &l.Seconds},
	}
}

// senseFields are those of what is smelt, seen, tested and pictured.
func senseFields(e *logbook.Event, plan pour.Plan) []Field {
	l := &e.Life
	strength := Field{Key: "strength", Label: "strength", Means: "0 nothing to 4 very strong", High: logbook.Strongest, Whole: true, Required: true, Lead: true, At: &e.Value}
	switch e.Kind {
	case logbook.Sniffed:
		return []Field{strength, {Key: "scent", Label: "scent", Means: "of the plan; none: the bar as a whole", Words: scentsOf(plan), At: &l.Scent}}
	case logbook.Looked:
		strength.Label, strength.Means = "how much", "0 none to 4 very much"
		return []Field{
			{Key: "of", Label: "what", Words: logbook.Looks(), Required: true, Lead: true, At: &e.What},
			strength,
			{Key: "jug", Label: "jug", Means: "whose colour it is", Words: jugsOf(plan), At: &e.Jug},
			{Key: "colour", Label: "colour", Means: "as it came out, #rrggbb", Form: isColour, At: &l.Colour},
		}
	case logbook.Tested:
		return []Field{
			{
				Key: "test", Label: "test", Means: "pH as a screen; titration, % of free NaOH, as the proof", Words: []string{logbook.TestPH, logbook.TestTitration},
				Only: true, Required: true, Lead: true, At: &e.What,
			},
			{Key: "value", Label: "reading", High: 100, Required: true, Lead: true, At: &e.Value},
		}
	}
	return []Field{{Key: "file", Label: "file", Means: "of a picture", Required: true, Lead: true, At: &l.Path}}
}

// countFields are those of where bars went.
func countFields(e *logbook.Event) []Field {
	l := &e.Life
	count := Field{Key: "count", Label: "bars", Means: "how many", Unit: "bars", Low: 1, High: mostBars, Required: true, Lead: true, At: &l.Count}
	audience := Field{Key: "to", Label: "for whom", Means: "your own word for who it was for", At: &l.Audience}
	switch e.Kind {
	case logbook.Lotted:
		return []Field{
			{Key: "lot", Label: "lot", Means: "as on the label", Required: true, Lead: true, At: &e.Lot},
			{Key: "count", Label: "bars", Means: "none: all that are left", Unit: "bars", Low: 1, High: mostBars, Lead: true, At: &l.Count},
		}
	case logbook.Sold:
		return []Field{
			count,
			{Key: "at", Label: "where", Means: "market, shop, order: your own word", At: &e.What},
			{Key: "price", Label: "price", Means: "of one bar", Spelt: strict.WithPoint, Form: isPrice, At: &l.Price},
			{Key: "currency", Label: "currency", Means: "its code, as EUR", Form: isCurrency, At: &l.Currency},
			audience,
		}
	case logbook.Given:
		return []Field{count, audience}
	case logbook.Kept:
		return []Field{count, {
			Key: "as", Label: "as", Means: "the batch's own sample, or for oneself", Words: []string{logbook.KeptSample, logbook.KeptOwn}, Only: true, Lead: true, At: &e.What,
		}}
	case logbook.Counted:
		count.Label, count.Means, count.Low = "bars left", "how many there are", 0
	}
	return []Field{count}
}

// scentsOf are the ids of a plan's scents, each once.
func scentsOf(p pour.Plan) []string {
	return once(p, func(b *pour.Batch) []string {
		var out []string
		for _, s := range b.Scents {
			out = append(out, s.Scent)
		}
		return out
	})
}

// jugsOf are the names of a plan's jugs, each once.
func jugsOf(p pour.Plan) []string {
	return once(p, func(b *pour.Batch) []string {
		var out []string
		for _, j := range b.Jugs {
			out = append(out, j.Name)
		}
		return out
	})
}
