package calendar

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook/life"
)

// OfBatch is a pour of the logbook as the calendar tells of it; there is the zone of the maker's room. It is false where nothing of it is due
// any more: what the calendar was told of its days to come is then cancelled.
func OfBatch(b life.Batch, there *time.Location) (Loaf, bool) {
	if b.Is(life.Failed, life.SoldOut, life.Trial) || !Known(b) {
		return Loaf{}, false
	}
	l := Loaf{Batch: b.ID, ID: b.ID, Name: b.Name, Course: b.Course, LossPercent: b.Drying.Criterion, Revised: wall(b.Course.LyeIn, there)}
	for _, e := range b.Events {
		if e.Wall.After(l.Revised) {
			l.Revised = e.Wall
		}
	}
	return l, true
}

// Known reports whether a pour's file says what is due. Of one that does not, the calendar keeps what it was told.
func Known(b life.Batch) bool { return b.Fault == nil && b.PlanErr == nil }

// wall is the moment at which the clock on a wall shows a time.
func wall(t time.Time, there *time.Location) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), 0, there)
}

// planMark begins what the entries of a planned pour are known by.
const planMark = "plan "

// PlanBatch is what the entries of a planned pour are known by: its plan's file, by its whole path.
func PlanBatch(path string) string { return planMark + path }

// PlanOf is the path of the plan by which entries are known; false: they are no plan's.
func PlanOf(batch string) (string, bool) { return strings.CutPrefix(batch, planMark) }

// ErrNoDay is the reason when a plan does not say when it is poured.
var ErrNoDay = errors.New("it does not say when it is poured; give it a day and an hour (pour_at)")

// OfPlan is a pour that is planned, by its sheet and its file's whole path; revised is when the file was written last.
func OfPlan(s *pour.Sheet, path string, revised time.Time) (Loaf, error) {
	at := s.Plan.PourAt
	if at.IsZero() {
		return Loaf{}, fmt.Errorf("put %s into the calendar: %w", path, ErrNoDay)
	}
	l := Loaf{Batch: PlanBatch(path), Name: s.Plan.Name, Revised: revised}
	l.PourFrom, l.PourTo = hoursOf(s.Run, at)
	if !s.Plan.Trial {
		l.Course, l.LossPercent = life.Planning(s), s.Plan.Cure.Criterion()
	}
	return l, nil
}

// hoursOf is when the tasks of a run begin and end, by the clock on the wall; at least an hour.
func hoursOf(run []pour.Task, lyeIn time.Time) (from, to time.Time) {
	first, last := 0.0, 60.0
	for _, t := range run {
		if start, end := t.StartMin, t.StartMin+t.LengthMin; !math.IsNaN(start+end) && !math.IsInf(start+end, 0) {
			first, last = min(first, start), max(last, end)
		}
	}
	at := lyeIn.Truncate(time.Minute)
	return at.Add(time.Duration(math.Floor(first)) * time.Minute), at.Add(time.Duration(math.Ceil(last)) * time.Minute)
}

// Planned lists the paths of the plans of which the register holds entries, cancelled ones too: a stick that was out may be in again.
func (r Register) Planned() []string {
	var out []string
	for _, e := range r.entries {
		if path, ok := PlanOf(e.Batch); ok && !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	return out
}
