package command_test

import (
	"strings"
	"testing"
	"time"
)

// A day is read alike wherever it is typed: behind a command, in a flag, in a correction; what could be two days is refused with both.
func TestDaysAreReadAsMakersTypeThem(t *testing.T) {
	m := newMaker(t)
	m.now = func() time.Time { return time.Date(2026, 11, 30, 9, 0, 0, 0, time.UTC) }
	id := m.pours(time.Date(2026, 11, 2, 10, 0, 0, 0, time.UTC))
	m.says("logbook", "slice", id, "--count", "10", "--day", "3.11.")
	m.says("logbook", "look", id, "ash", "2", "--day", "8 Nov 9:30")
	m.says("logbook", "cured", id, "131", "yesterday")
	m.says("stock", "receive", "olive 2 kg 9 EUR lot A12 bought 2026-11-20")
	m.says("stock", "open", "olive-1", "--day", "28.11.2026")
	m.says("season", "add-date", "winter market", "19 Dec")
	show := m.says("logbook", "show", id)
	for _, want := range []string{"\n2026-11-03 ", "\n2026-11-08 ", "\n2026-11-29 "} {
		if !strings.Contains(show, want) {
			t.Errorf("%q is not in\n%s", want, show)
		}
	}
	if out := m.says("season"); !strings.Contains(out, "19") {
		t.Errorf("the season: %s", out)
	}
	if out := m.says("stock", "entries"); !strings.Contains(out, "2026-11-28") {
		t.Errorf("the ledger: %s", out)
	}
	for _, args := range [][]string{
		{"logbook", "slice", id, "--count", "10", "--day", "1/12"}, {"logbook", "cured", id, "131", "1/12"}, {"season", "add-date", "fair", "1/12"}, {"stock", "open", "olive-1", "--day", "1/12"},
	} {
		code, _, errs := m.types(args...)
		if code != 2 || !strings.Contains(errs, "2026-12-01 (1 Dec)") || !strings.Contains(errs, "2027-01-12 (12 Jan)") {
			t.Errorf("%q: exit %d, %q", args, code, errs)
		}
	}
}
