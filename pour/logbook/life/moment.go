package life

import (
	"cmp"
	"slices"
	"time"

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

// inOrder sorts events of a file by when they were, so that the order they came into it says nothing: by their days and, within one, by the
// hour where they say one and by when they were marked where they do not. What was marked on a later day than its own and says no hour comes
// at the end of that day. A correction stands where what it corrects was marked.
func inOrder(events, file []logbook.Event) {
	marked := logbook.Marked(file)
	slices.SortFunc(events, func(a, b logbook.Event) int {
		x, y := marked(a), marked(b)
		return cmp.Or(placed(a, x).Compare(placed(b, y)), x.Compare(y), a.Wall.Compare(b.Wall), cmp.Compare(a.ID, b.ID))
	})
}

// placed is where an event stands among those of its day, by the clock on the wall as if that were UTC.
func placed(e logbook.Event, marked time.Time) time.Time {
	at, hour := e.When()
	if hour {
		return civil(at)
	}
	y, m, d := at.Date()
	begin := time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	end := time.Date(y, m, d+1, 0, 0, 0, -1, time.UTC)
	switch t := civil(marked); {
	case t.Before(begin):
		return begin
	case t.After(end):
		return end
	default:
		return t
	}
}

// civil is what the clock on the wall showed, kept as if that were UTC.
func civil(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
}
