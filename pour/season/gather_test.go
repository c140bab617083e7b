package season_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
	"pourbench/presets"
)

// A batch goes by its own fit where there is one and else by the plan's days; of a loaf that is whole the bars are those of its plan.
func TestABatchStandsByItsOwnFit(t *testing.T) {
	b := life.Batch{ID: "a", Name: "Rose", State: life.Curing, Poured: on(t, "2026-11-01")}
	b.Course = life.Course{Cut: life.Happened{Yes: true, Day: on(t, "2026-11-03")}, CureDays: 28}
	if s := season.StandingOf(b, pour.Mould{}); s.Cut != on(t, "2026-11-03") || s.Ready != (season.Band{on(t, "2026-12-01"), on(t, "2026-12-01"), on(t, "2026-12-01")}) || s.Bars.Known {
		t.Errorf("%+v", s)
	}
	b.Drying.Why = &cure.Refusal{Reason: cure.Misfit}
	if s := season.StandingOf(b, pour.Mould{}); !s.Lawless {
		t.Errorf("its weighings follow no law, and nothing is said of it: %+v", s)
	}
	b.Drying.Why = nil
	if s := season.StandingOf(b, pour.Mould{}); s.Lawless {
		t.Errorf("%+v", s)
	}
	b.Course.Ready = life.Forecast{Known: true, Day: on(t, "2026-12-09"), Early: on(t, "2026-12-04"), Late: on(t, "2026-12-20")}
	if s := season.StandingOf(b, pour.Mould{}); s.Ready != (season.Band{on(t, "2026-12-04"), on(t, "2026-12-09"), on(t, "2026-12-20")}) {
		t.Errorf("%+v", s)
	}
	b.Course.CureDays = 40 // from 3 November until 13 December: dry before that, it is on the rack all the same
	if s := season.StandingOf(b, pour.Mould{}); s.Ready != (season.Band{on(t, "2026-12-13"), on(t, "2026-12-13"), on(t, "2026-12-20")}) {
		t.Errorf("%+v", s)
	}
	b.State = life.Labelled // it was taken off it: her own doing counts
	if s := season.StandingOf(b, pour.Mould{}); s.Ready.Early != on(t, "2026-12-04") {
		t.Errorf("%+v", s)
	}
	b.State, b.Planned.Bars = life.Curing, 9
	if s := season.StandingOf(b, loaf()); s.Bars.Known {
		t.Errorf("a cut loaf nobody counted: %+v", s.Bars)
	}
	b.State = life.InMould
	b.Course = life.Course{LyeIn: time.Date(2026, 11, 1, 10, 0, 0, 0, time.UTC), CutAfterH: 20, CureDays: 28, Today: on(t, "2026-11-05")}
	if s := season.StandingOf(b, loaf()); s.Cut != on(t, "2026-11-05") || s.Ready.Middle != on(t, "2026-12-03") {
		t.Errorf("a loaf that waits for its cut: %+v", s)
	}
	if s := season.StandingOf(b, loaf()); !s.Bars.Known || s.Bars.Left != 9 || s.Mould != loaf() {
		t.Errorf("%+v", s)
	}
}

// A loaf that nobody has logged any further for two months is in no mould, though it is to be cut today at the earliest, every day anew.
func TestALoafLeftLyingIsForgotten(t *testing.T) {
	f := season.Facts{Today: on(t, "2026-12-31"), Standing: []season.Standing{
		stands(t, "lying", "2026-10-31", "2026-12-31", life.InMould, less(0)), stands(t, "waiting", "2026-11-01", "2026-12-31", life.InMould, less(0)),
	}}
	if b := season.Of(f); len(b.Rows) != 1 || b.Rows[0].ID != "waiting" {
		t.Errorf("%+v", b.Rows)
	}
}

// A day on which as many pours stand as she pours is not free: the one before it is.
func TestADayThatIsFullIsNotFree(t *testing.T) {
	f := season.Facts{Today: first, Designs: map[string]season.Design{"a": meadow()}}
	f.File.House.MostPours = 1
	on, before := first+9, first+8
	f.File.Pours = []season.Planned{{Plan: "a", Day: &on}, {Plan: "a", Day: &on}, {Plan: "a", Day: &before}}
	b := season.Of(f)
	if len(b.Collisions) == 0 || !strings.Contains(b.Collisions[len(b.Collisions)-1].Help, (first+7).Short()+", the next free day before") {
		t.Errorf("%+v", b.Collisions)
	}
}

// A rack that is full to the last place has room for all that lies on it, and one place less has not.
func TestARackThatIsJustFullHasRoom(t *testing.T) {
	on := first + 9
	for less, want := range []bool{true, false} {
		f := season.Facts{Today: first, Designs: map[string]season.Design{"a": meadow()}}
		f.File.House = season.House{MostPours: 1, RackBars: 2*meadow().Bars - less}
		f.File.Pours = []season.Planned{{Plan: "a", Day: &on}, {Plan: "a", Day: &on}}
		found := false
		for _, c := range season.Of(f).Collisions {
			found = found || strings.Contains(c.Help, (first+8).Short()+", the next free day before")
		}
		if found != want {
			t.Errorf("with %d places too few the day before is free: %v", less, found)
		}
	}
}

// The plans that a season names are read from its own folder or where they are said to be; one that cannot be is a fault of its pour alone.
func TestThePlansOfASeasonAreRead(t *testing.T) {
	shelf, err := presets.Shelf()
	must(t, err)
	text, err := presets.Plan(presets.Plans()[0])
	must(t, err)
	s := stored(t, "format = 1\n[[pour]]\nplan = \"plans/a.toml\"\n[[pour]]\nplan = \"gone.toml\"\nday = 2026-12-01\n")
	must(t, os.MkdirAll(filepath.Join(s.Dir, "plans"), 0o700))
	away := filepath.Join(t.TempDir(), "b.toml")
	for _, path := range []string{filepath.Join(s.Dir, "plans", "a.toml"), away} {
		must(t, os.WriteFile(path, text, 0o600))
	}
	must(t, s.AddPour(season.Planned{Plan: away}))
	f, err := season.Gather(s.Dir, logbook.Book{}, shelf, pour.Hand{}, nil, day.Day(20_000))
	must(t, err)
	a, b := f.Designs["plans/a.toml"], f.Designs[away]
	if a.Name == "" || a.Name != b.Name || !a.BarsKnown || a.Fault != nil || a.Cure.Early < 42 || a.Cure.Late < a.Cure.Early { // 42 days of cure: what its paper prints
		t.Errorf("%+v", a)
	}
	for _, r := range season.Of(f).Rows {
		if (r.Plan == "gone.toml") != (r.Fault != nil) {
			t.Errorf("%+v", r)
		}
	}
}
