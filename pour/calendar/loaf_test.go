package calendar_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/calendar"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

func on(t *testing.T, text string) day.Day {
	t.Helper()
	d, err := day.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// meadow is a pour of 5 December at 10, to be cut after 18 hours and forecast to be ready on 3 January.
func meadow(t *testing.T) calendar.Loaf {
	t.Helper()
	return calendar.Loaf{
		Batch: "2026-12-05-alpine-meadow", ID: "2026-12-05-alpine-meadow", Name: "Alpine Meadow", LossPercent: 0.5,
		Course: life.Course{
			LyeIn: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), CutAfterH: 18, CureDays: 28,
			Ready: life.Forecast{Known: true, Day: on(t, "2027-01-03"), Early: on(t, "2026-12-30"), Late: on(t, "2027-01-07")},
		},
		Revised: time.Date(2026, 12, 5, 12, 0, 0, 0, time.UTC),
	}
}

// told is a line an entry: its name, its hours or days, its reminder and its title.
func told(entries []calendar.Entry) string {
	var b strings.Builder
	for _, e := range entries {
		form, silent := "2006-01-02 15:04", "silent"
		if e.AllDay {
			form = "2006-01-02"
		}
		if e.Reminded {
			silent = e.Remind.String()
		}
		fmt.Fprintf(&b, "%s %s/%s %s %q", e.Kind, e.Start.Format(form), e.End.Format(form), silent, e.What)
		if e.Sequence > 0 {
			fmt.Fprintf(&b, " #%d", e.Sequence)
		}
		if e.Cancelled {
			b.WriteString(" cancelled")
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func TestALoafIsInTheCalendarFromTheMouldToTheRack(t *testing.T) {
	const want = `unmould 2026-12-06 04:00/2026-12-06 10:00 -1h0m0s "Unmould: Alpine Meadow of 5 Dec"
cut 2026-12-06 04:00/2026-12-06 10:00 -1h0m0s "Cut window: Alpine Meadow of 5 Dec"
weigh-0 2026-12-06/2026-12-07 9h0m0s "Weigh bars, day 0 (forecast): Alpine Meadow of 5 Dec"
weigh-1 2026-12-07/2026-12-08 9h0m0s "Weigh bars, day 1 (forecast): Alpine Meadow of 5 Dec"
weigh-2 2026-12-08/2026-12-09 9h0m0s "Weigh bars, day 2 (forecast): Alpine Meadow of 5 Dec"
weigh-4 2026-12-10/2026-12-11 9h0m0s "Weigh bars, day 4 (forecast): Alpine Meadow of 5 Dec"
weigh-7 2026-12-13/2026-12-14 9h0m0s "Weigh bars, day 7 (forecast): Alpine Meadow of 5 Dec"
turn-7 2026-12-13/2026-12-14 silent "Turn bars (forecast): Alpine Meadow of 5 Dec"
weigh-14 2026-12-20/2026-12-21 9h0m0s "Weigh bars, day 14 (forecast): Alpine Meadow of 5 Dec"
turn-14 2026-12-20/2026-12-21 silent "Turn bars (forecast): Alpine Meadow of 5 Dec"
weigh-21 2026-12-27/2026-12-28 9h0m0s "Weigh bars, day 21 (forecast): Alpine Meadow of 5 Dec"
turn-21 2026-12-27/2026-12-28 silent "Turn bars (forecast): Alpine Meadow of 5 Dec"
weigh-28 2027-01-03/2027-01-04 9h0m0s "Weigh bars, day 28 (forecast): Alpine Meadow of 5 Dec"
ready 2027-01-03/2027-01-04 9h0m0s "Ready (forecast, 3 Jan to 7 Jan): Alpine Meadow of 5 Dec"
`
	entries := meadow(t).Entries()
	if d := cmp.Diff(want, told(entries)); d != "" {
		t.Error(d)
	}
	ready := entries[len(entries)-1].Words
	for _, says := range []string{"less than 0.5 % a week", "about 3 Jan; four times in five between 30 Dec and 7 Jan", "28 days of cure end on 3 Jan", "Ready means dry and its plan's cure over", "Pour 2026-12-05-alpine-meadow"} {
		if !strings.Contains(ready, says) {
			t.Errorf("%q is not in %q", says, ready)
		}
	}
}

// TestASecondExportTellsWhatHappened: cut a day later, bars weighed, the forecast moved: what was said before is moved and what is gone is
// cancelled, all under the names it has.
func TestASecondExportTellsWhatHappened(t *testing.T) {
	l := meadow(t)
	_, r := calendar.Register{}.Revise(l.Entries(), all, time.Date(2026, 12, 5, 13, 0, 0, 0, time.UTC))
	l.Course.Cut = life.Happened{Yes: true, Day: on(t, "2026-12-07")}
	l.Course.WeighedOn = []day.Day{on(t, "2026-12-07"), on(t, "2026-12-08"), on(t, "2026-12-09"), on(t, "2026-12-11"), on(t, "2026-12-15")}
	l.Course.Ready = life.Forecast{Known: true, Day: on(t, "2026-12-29"), Early: on(t, "2026-12-24"), Late: on(t, "2027-01-06")}
	l.Revised = time.Date(2026, 12, 15, 9, 0, 0, 0, time.UTC)
	const want = `unmould 2026-12-07/2026-12-08 silent "Out of the mould: Alpine Meadow of 5 Dec" #1
cut 2026-12-07/2026-12-08 silent "Cut: Alpine Meadow of 5 Dec" #1
weigh-0 2026-12-07/2026-12-08 silent "Weighed, day 0: Alpine Meadow of 5 Dec" #1
weigh-1 2026-12-08/2026-12-09 silent "Weighed, day 1: Alpine Meadow of 5 Dec" #1
weigh-2 2026-12-09/2026-12-10 silent "Weighed, day 2: Alpine Meadow of 5 Dec" #1
weigh-4 2026-12-11/2026-12-12 silent "Weighed, day 4: Alpine Meadow of 5 Dec" #1
turn-7 2026-12-14/2026-12-15 9h0m0s "Turn bars: Alpine Meadow of 5 Dec" #1
weigh-7 2026-12-15/2026-12-16 silent "Weighed, day 8: Alpine Meadow of 5 Dec" #1
weigh-14 2026-12-21/2026-12-22 9h0m0s "Weigh bars, day 14: Alpine Meadow of 5 Dec" #1
turn-14 2026-12-21/2026-12-22 silent "Turn bars: Alpine Meadow of 5 Dec" #1
weigh-21 2026-12-28/2026-12-29 9h0m0s "Weigh bars, day 21: Alpine Meadow of 5 Dec" #1
turn-21 2026-12-28/2026-12-29 silent "Turn bars: Alpine Meadow of 5 Dec" #1
weigh-28 2027-01-04/2027-01-05 9h0m0s "Weigh bars, day 28: Alpine Meadow of 5 Dec" #1
ready 2027-01-04/2027-01-05 9h0m0s "Ready (forecast, 4 Jan to 6 Jan): Alpine Meadow of 5 Dec" #1
`
	out, _ := r.Revise(l.Entries(), all, l.Revised)
	if d := cmp.Diff(want, told(out)); d != "" {
		t.Error(d)
	}
}

// A forecast before the plan's own cure is over, as the season counts it: the day is the plan's, and the words have both. Without a forecast it is the plan's
// alone.
func TestReadyWaitsForThePlansOwnCure(t *testing.T) {
	for _, r := range []struct {
		days      float64
		known     bool
		on, title string
		says      string
	}{
		{42, true, "2027-01-17", "Ready (by the plan's 42 days of cure)", "about 3 Jan; four times in five between 30 Dec and 7 Jan.\nThe plan's 42 days of cure end on 17 Jan."},
		{30, true, "2027-01-05", "Ready (forecast, 5 Jan to 7 Jan)", "The plan's 30 days of cure end on 5 Jan."},
		{7, true, "2027-01-03", "Ready (forecast, 30 Dec to 7 Jan)", "The plan's 7 days of cure end on 13 Dec."},
		{42, false, "2027-01-17", "Ready (by the plan's 42 days of cure)", "The plan's 42 days of cure end on 17 Jan."},
	} {
		l := meadow(t)
		l.Course.CureDays, l.Course.Ready.Known = r.days, r.known
		i := slices.IndexFunc(l.Entries(), func(e calendar.Entry) bool { return e.Kind == "ready" })
		if i < 0 {
			t.Fatalf("%v days: nothing says when it is ready", r.days)
		}
		e := l.Entries()[i]
		if e.Start.Format("2006-01-02") != r.on || !strings.HasPrefix(e.What, r.title) || !strings.Contains(e.Words, r.says) {
			t.Errorf("%v days: %s %q %q", r.days, e.Start, e.What, e.Words)
		}
	}
}

func TestAPlannedPourIsInTheCalendarByItsHour(t *testing.T) {
	l := meadow(t)
	l.Batch, l.ID, l.PourFrom, l.PourTo = "plan meadow.toml", "", l.Course.LyeIn.Add(-time.Hour), l.Course.LyeIn.Add(time.Hour)
	e := l.Entries()[0]
	if d := cmp.Diff("pour 2026-12-05 09:00/2026-12-05 11:00 -1h0m0s \"Pour: Alpine Meadow of 5 Dec\"\n", told([]calendar.Entry{e})); d != "" || e.Words != "" {
		t.Error(d, e.Words)
	}
}

// TestEveryCourseCanBeWritten whatever was planned and happened, each entry under a name of its own.
func TestEveryCourseCanBeWritten(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := meadow(t)
		l.Course.LyeIn = l.Course.LyeIn.Add(time.Duration(rapid.IntRange(0, 400*24*3600).Draw(r, "lye in")) * time.Second)
		l.Course.CutAfterH, l.Course.CureDays = rapid.Float64Range(1, 240).Draw(r, "cut after"), rapid.Float64Range(0, 1e9).Draw(r, "cure")
		l.Course.Whole, l.Course.Ready.Known = rapid.Bool().Draw(r, "whole"), rapid.Bool().Draw(r, "forecast")
		poured := day.Of(l.Course.LyeIn)
		l.Course.Cut = life.Happened{Yes: rapid.Bool().Draw(r, "cut"), Day: poured + day.Day(rapid.IntRange(-1, 9).Draw(r, "cut day"))}
		for _, n := range rapid.SliceOfN(rapid.IntRange(-2, 90), 0, 6).Draw(r, "weighed") {
			l.Course.WeighedOn = append(l.Course.WeighedOn, poured+day.Day(n))
		}
		var out bytes.Buffer
		if err := calendar.Write(&out, l.Entries()); err != nil {
			r.Fatal(err)
		}
	})
}
