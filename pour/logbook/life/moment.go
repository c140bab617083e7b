package life

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// Moment is when something happened by the calendar and the clock on the wall, which summer time does not shift.
type Moment struct {
	Day    day.Day
	Minute int // of the day; counts where Hour is true
	Hour   bool
}

// moment is when an event was.
func moment(e logbook.Event) Moment {
	at, hour := e.When()
	return Moment{day.Of(at), at.Hour()*minutes + at.Minute(), hour}
}

const (
	minutes = 60
	hours   = 24
)

// DaysSince is how many days a moment comes after another: with parts of a day where the hours of both are known, in whole days else.
func (m Moment) DaysSince(from Moment) float64 {
	days := float64(m.Day - from.Day)
	if m.Hour && from.Hour {
		days += float64(m.Minute-from.Minute) / (minutes * hours)
	}
	return days
}

// compare orders moments; one of which no hour is known stands at noon.
func (m Moment) compare(other Moment) int {
	return cmp.Or(cmp.Compare(m.Day, other.Day), cmp.Compare(m.minute(), other.minute()))
}

func (m Moment) minute() int {
	if m.Hour {
		return m.Minute
	}
	return minutes * hours / 2
}

// inOrder sorts events by when they were, so that the order they came into the file says nothing: what was marked earlier comes first where
// the moment is the same.
func inOrder(events []logbook.Event) {
	slices.SortFunc(events, func(a, b logbook.Event) int {
		return cmp.Or(moment(a).compare(moment(b)), a.Wall.Compare(b.Wall), cmp.Compare(a.ID, b.ID))
	})
}
