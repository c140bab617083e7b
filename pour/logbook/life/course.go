package life

import (
	"math"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
)

// Course is what a batch's way from the mould to the end of the rack goes by: what was planned, what has happened, what is forecast. Its hours
// are those of the clock on the wall of the room, kept as if that were UTC.
type Course struct {
	LyeIn     time.Time // when lye met oil; the zero time: not known, and there is no course
	CutAfterH float64   // hours in the mould, from lye-in
	CureDays  float64   // on the rack, from the cut, as the plan has it; 0: it says nothing
	Today     day.Day   // a loaf that is not cut by then is cut that day at the earliest; the zero day: as it is planned
	Whole     bool      // the bars come out of moulds of their own: nothing is cut, and the cure counts from there

	Unmoulded, Cut Happened
	WeighedOn      []day.Day // in any order
	Ready          Forecast  // when its bars are dry; see [Course.Done]
}

// Planning is the course of a pour that is planned, by its sheet; one whose plan does not say when it is poured has none.
func Planning(s *pour.Sheet) Course {
	c := Course{LyeIn: s.Plan.PourAt, CutAfterH: s.Plan.Bed.CutAfterH, CureDays: s.Plan.Bed.CureDays, Whole: !s.Plan.Mould.IsCut()}
	if dry := s.Cure.ReadyDay; dry.Low.Known && dry.Mid.Known && dry.High.Known {
		c.Ready = Around(c.CutDay(), dry.Low.V, dry.Mid.V, dry.High.V)
	}
	return c
}

// Around is a forecast in days of the calendar: so many days after the cut, and its band, each the nearest day. What lies
// before the cut is the day of the cut. Numbers that are none are no forecast.
func Around(cut day.Day, low, mid, high float64) Forecast {
	if math.IsNaN(low + mid + high) {
		return Forecast{}
	}
	on := func(days float64) day.Day { return cut + day.Day(math.Round(min(max(days, 0), farthest))) }
	return Forecast{Known: true, Day: on(mid), Early: on(low), Late: on(high)}
}

// Happened is something that was done once.
type Happened struct {
	Yes bool
	Day day.Day
}

// Forecast is a day with its band.
type Forecast struct {
	Known            bool
	Day, Early, Late day.Day
}

// Step is one thing of a batch's course.
type Step struct {
	Kind        DueKind
	Nth         int       // of weighings and turns: the day of it, from the cut
	Day         day.Day   // when it is to be done, or was
	From, To    time.Time // its hours on that day or into the next; the zero time: it is of the day
	Early, Late day.Day   // the band of a forecast; both Day where there is none
	Done        bool
}

// The hours and days of a course.
const (
	cutHours = 6      // how long a loaf stays right for the cut; common practice, no source
	week     = 7      // between turns, and between weighings after the first week; common practice, no source
	mostDays = 52 * 7 // no course is longer
	farthest = 3650   // no forecast goes beyond: ten years
)

// firstWeek is the days after the cut on which bars are weighed at first: the early ones pin the shape of the drying curve. Common
// practice, no source.
func firstWeek() []int { return []int{0, 1, 2, 4, week} }

// Steps lists the course from the mould on, in the order of the plan: what is done stands on the day it was done. A weighing that was left
// out is none any more once a later one was made.
func (c Course) Steps() []Step {
	if c.LyeIn.IsZero() {
		return nil
	}
	out := c.mould()
	out = append(out, c.weighings()...)
	for n := week; n < c.length(); n += week {
		out = append(out, c.onDay(DueTurn, n))
	}
	if done := c.Done(); done.Known {
		out = append(out, Step{Kind: DueReady, Day: done.Day, Early: done.Early, Late: done.Late})
	}
	slices.SortStableFunc(out, func(a, b Step) int { return int(a.Day) - int(b.Day) })
	return out
}

// Next is the step of each kind that is due next, in the order of their days: the weighing and the turn that were due last and are not
// done, or the next one after today.
func (c Course) Next(today day.Day) []Step {
	var out []Step
	for _, s := range c.Steps() {
		same := slices.IndexFunc(out, func(o Step) bool { return o.Kind == s.Kind })
		switch {
		case s.Done, s.Kind == DueTurn && s.Day < today: // that a bar was turned is not logged
		case same < 0:
			out = append(out, s)
		case s.Day <= today:
			out[same] = s
		}
	}
	slices.SortStableFunc(out, func(a, b Step) int { return int(a.Day) - int(b.Day) })
	return out
}

// mould is what is done with the loaf. Who cuts has taken it out of the mould.
func (c Course) mould() []Step {
	from := c.cutFrom()
	to := from.Add(cutHours * time.Hour)
	out := []Step{{Kind: DueUnmould, Day: day.Of(from), From: from, To: to}}
	if !c.Whole {
		out = append(out, Step{Kind: DueCut, Day: day.Of(from), From: from, To: to})
	}
	for i, h := range []Happened{c.out(), c.Cut}[:len(out)] {
		if h.Yes {
			out[i] = Step{Kind: out[i].Kind, Day: h.Day, Done: true}
		}
	}
	for i := range out {
		out[i].Early, out[i].Late = out[i].Day, out[i].Day
	}
	return out
}

// out is when the loaf came out of the mould.
func (c Course) out() Happened {
	if !c.Unmoulded.Yes && c.Cut.Yes {
		return c.Cut
	}
	return c.Unmoulded
}

// cutFrom is when the loaf may be firm enough: to the minute.
func (c Course) cutFrom() time.Time {
	return c.LyeIn.Truncate(time.Minute).Add(time.Duration(math.Round(c.CutAfterH*60)) * time.Minute)
}

// CutDay is the day the cure counts from: that of the cut, or of the unmoulding where nothing is cut; while it is not done, the day that is
// planned, or today once that is past.
func (c Course) CutDay() day.Day {
	switch {
	case c.Whole && c.Unmoulded.Yes:
		return c.Unmoulded.Day
	case c.Cut.Yes:
		return c.Cut.Day
	}
	return max(day.Of(c.cutFrom()), c.Today)
}

// length is how many days after the cut the course ends.
func (c Course) length() int {
	return min(max(int(c.Done().Day-c.CutDay()), 0), mostDays)
}

// CureEnds is the day on which the plan's own cure is over, a day that is begun counted as a whole one; that of the cut where the plan has none.
func (c Course) CureEnds() day.Day {
	if math.IsNaN(c.CureDays) {
		return c.CutDay()
	}
	return c.CutDay() + day.Day(math.Ceil(min(max(c.CureDays, 0), farthest)))
}

// Done is when its bars are dry and its plan's own cure is over, for papers print that, and no bar is sold before it: the one place that puts the two
// together. Where no forecast can be told it is as long as the plan says; not known where neither is.
func (c Course) Done() Forecast {
	cured := c.CureEnds()
	if !c.Ready.Known {
		return Forecast{Known: c.CureDays > 0, Day: cured, Early: cured, Late: cured}
	}
	return Forecast{Known: true, Day: max(c.Ready.Day, cured), Early: max(c.Ready.Early, cured), Late: max(c.Ready.Late, cured)}
}

// onDay is a step on the nth day after the cut.
func (c Course) onDay(kind DueKind, n int) Step {
	d := c.CutDay() + day.Day(n)
	return Step{Kind: kind, Nth: n, Day: d, Early: d, Late: d}
}

// weighings lists those to come and those made. A weighing made on another day is that of the nearest day, the earlier of two as near.
func (c Course) weighings() []Step {
	days := firstWeek()
	for n := 2 * week; n <= c.length(); n += week {
		days = append(days, n)
	}
	days = slices.DeleteFunc(days, func(n int) bool { return n > max(c.length(), 0) && n > 0 })
	made, last := map[int]day.Day{}, -1
	for _, d := range slices.Sorted(slices.Values(c.WeighedOn)) {
		i := nearest(days, int(d-c.CutDay()))
		made[i], last = d, max(last, i)
	}
	var out []Step
	for i, n := range days {
		s := c.onDay(DueWeigh, n)
		d, done := made[i]
		if done {
			s.Day, s.Early, s.Late, s.Done = d, d, d, true
		}
		if done || i > last {
			out = append(out, s)
		}
	}
	return out
}

// nearest is the place of the day nearest to n, the earlier of two as near.
func nearest(days []int, n int) int {
	best := 0
	for i, d := range days {
		if abs(d-n) < abs(days[best]-n) {
			best = i
		}
	}
	return best
}

func abs(n int) int { return max(n, -n) }
