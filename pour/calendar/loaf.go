package calendar

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// Loaf is a batch, or a pour that is planned, as far as the calendar tells of it.
type Loaf struct {
	Batch string // what its entries are known by: the pour's id
	Name  string // of the design
	ID    string // of the pour; empty: it is not poured yet

	PourFrom, PourTo time.Time // of a planned pour; the zero time: it is poured
	Course           life.Course
	LossPercent      float64 // a week, at which it counts as dry; 0: not known
	Revised          time.Time
}

// Kinds of entries that others ask for.
const (
	kindUnmould = "unmould"
	kindCut     = "cut"
)

// Reminders.
const (
	hourBefore = -time.Hour
	inMorning  = 9 * time.Hour
)

// Entries is everything of a loaf in the calendar, whatever day it is.
func (l Loaf) Entries() []Entry {
	var out []Entry
	if !l.PourFrom.IsZero() {
		out = append(out, l.pour())
	}
	steps := l.Course.Steps()
	for _, s := range steps {
		out = append(out, l.step(s, steps))
	}
	return out
}

// entry begins an entry of the loaf.
func (l Loaf) entry(kind, what string, words ...string) Entry {
	if l.ID != "" {
		words = append(words, "Pour "+l.ID)
	}
	return Entry{Batch: l.Batch, Kind: kind, What: what + ": " + l.called(), Words: strings.Join(words, "\n"), Revised: l.Revised}
}

// called is the loaf's name and, since a design is poured again, its day.
func (l Loaf) called() string {
	if l.Course.LyeIn.IsZero() {
		return l.Name
	}
	return l.Name + " of " + day.Of(l.Course.LyeIn).Short()
}

func (l Loaf) pour() Entry {
	e := l.entry("pour", "Pour")
	e.Start, e.End, e.Reminded, e.Remind = l.PourFrom, l.PourTo, true, hourBefore
	return e
}

// step is one step of the course. What is done stands on its day and reminds of nothing.
func (l Loaf) step(s life.Step, all []life.Step) Entry {
	kind, what, words := l.told(s)
	e := l.entry(kind, what, words...)
	switch {
	case s.Done:
		e.Done = true
		return e.on(s.Day)
	case !s.From.IsZero():
		e.Start, e.End, e.Reminded, e.Remind = s.From, s.To, true, hourBefore
		return e
	}
	e.Reminded, e.Remind = s.Kind != life.DueTurn || !weighedOn(s.Day, all), inMorning
	return e.on(s.Day)
}

// weighedOn reports whether bars are to be weighed on a day, and she will be at the rack.
func weighedOn(d day.Day, all []life.Step) bool {
	return slices.ContainsFunc(all, func(s life.Step) bool { return s.Kind == life.DueWeigh && s.Day == d && !s.Done })
}

// told is what the calendar says of a step: what it is known by, its title, and more words.
func (l Loaf) told(s life.Step) (kind, what string, words []string) {
	if s.Done {
		switch s.Kind {
		case life.DueUnmould:
			return kindUnmould, "Out of the mould", nil
		case life.DueCut:
			return kindCut, "Cut", nil
		default:
			return fmt.Sprintf("weigh-%d", s.Nth), fmt.Sprintf("Weighed, day %d", s.Day-l.Course.CutDay()), nil
		}
	}
	switch s.Kind {
	case life.DueUnmould:
		return kindUnmould, "Unmould", []string{"When it is firm and its middle is cool. Gloves on: it is still caustic."}
	case life.DueCut:
		return kindCut, "Cut window", []string{"If it is firm and its middle is cool. Gloves on: it is still caustic.", "Weigh three to five bars that you will weigh again: that is day 0."}
	case life.DueWeigh:
		return fmt.Sprintf("weigh-%d", s.Nth), fmt.Sprintf("Weigh bars, day %d", s.Nth) + l.ifCut(), []string{"Day " + fmt.Sprint(s.Nth) + " after the cut: the same bars, on the same scale, at about the same hour."}
	case life.DueTurn:
		return fmt.Sprintf("turn-%d", s.Nth), "Turn bars" + l.ifCut(), []string{"Day " + fmt.Sprint(s.Nth) + " after the cut: another face up, air all round."}
	default:
		return "ready", "Ready (" + l.readyBy(s) + ")", l.readyWords()
	}
}

// ifCut marks what counts from a cut that has not been: its day is a forecast.
func (l Loaf) ifCut() string {
	if l.Course.Cut.Yes || l.Course.Whole && l.Course.Unmoulded.Yes {
		return ""
	}
	return " (forecast)"
}

// readyBy says what the day goes by: the forecast with its band, or the plan's own days of cure where those are what it waits for.
func (l Loaf) readyBy(s life.Step) string {
	if ends := l.Course.CureEnds(); !l.Course.Ready.Known || s.Late == ends && l.Course.Ready.Late < ends {
		return fmt.Sprintf("by the plan's %.3g days of cure", l.Course.CureDays)
	}
	if s.Early == s.Late {
		return "forecast"
	}
	return "forecast, " + s.Early.Short() + " to " + s.Late.Short()
}

// readyWords say what ready means, and what the day is made of.
func (l Loaf) readyWords() []string {
	var words []string
	if r := l.Course.Ready; r.Known {
		dry := "Dry by your criterion from about " + r.Day.Short()
		if l.LossPercent > 0 {
			dry = fmt.Sprintf("Loses less than %.3g %% a week from about %s", l.LossPercent, r.Day.Short())
		}
		if r.Early != r.Late {
			dry += "; four times in five between " + r.Early.Short() + " and " + r.Late.Short()
		}
		words = append(words, dry+".")
	}
	if l.Course.CureDays > 0 {
		words = append(words, fmt.Sprintf("The plan's %.3g days of cure end on %s.", l.Course.CureDays, l.Course.CureEnds().Short()))
	}
	return append(words, "Ready means dry and its plan's cure over. It says nothing of what the bar does to skin.")
}
