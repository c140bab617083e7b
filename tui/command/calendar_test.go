package command_test

import (
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/presets"
)

// logs adds an event to a pour of hers.
func (m *maker) logs(id string, e logbook.Event) {
	m.t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		m.t.Fatal(err)
	}
	book, err := logbook.OpenBook(m.path("data", "pourbench", "pours"))
	if err != nil {
		m.t.Fatal(err)
	}
	if _, err := life.Log(book, shelf, id, e, time.Now(), "a"); err != nil {
		m.t.Fatal(err)
	}
}

// The calendar follows a pour of the logbook: what is due, what was done on another day, and nothing more once it failed.
func TestTheCalendarFollowsAPour(t *testing.T) {
	m := worked(t)
	id, file := m.poured(), m.path("soap.ics")
	list := m.says("calendar")
	for _, want := range []string{"Unmould: Alpine Meadow of ", "Cut window: Alpine Meadow of ", "Weigh bars, day 7: Alpine Meadow of ", "Turn bars"} {
		if !strings.Contains(list, want) {
			t.Errorf("%q is not due:\n%s", want, list)
		}
	}
	if one := m.says("calendar", id); one != list {
		t.Errorf("the one pour alone is\n%s", one)
	}
	m.says("calendar", "-o", file)
	first := m.reads(file)

	m.logs(id, logbook.Event{Kind: logbook.Failed, Text: "seized"})
	if said := m.says("calendar"); said != "nothing is due\n" {
		t.Errorf("of a pour that failed it is due:\n%s", said)
	}
	m.says("calendar", "-o", file)
	gone := m.reads(file)
	if n := strings.Count(gone, "STATUS:CANCELLED\r\n"); n == 0 || n != strings.Count(gone, "BEGIN:VEVENT") || strings.Count(first, "STATUS:CANCELLED") > 0 {
		t.Errorf("of %d entries %d are cancelled", strings.Count(gone, "BEGIN:VEVENT"), n)
	}
}

// What the calendar was told of a pour whose file cannot be read just now stays as it is.
func TestAFileThatCannotBeReadCancelsNothing(t *testing.T) {
	m := worked(t)
	id, file := m.poured(), m.path("soap.ics")
	m.says("calendar", "-o", file)
	told := m.reads(m.path("data", "pourbench", "calendar.toml"))
	m.writes("broken", "data", "pourbench", "pours", id+".pour.toml")
	code, _, errs := m.types("calendar", "-o", file)
	if code != 2 || !strings.Contains(errs, id+" is left in the calendar as it is") {
		t.Errorf("exit %d, %s", code, errs)
	}
	if now := m.reads(m.path("data", "pourbench", "calendar.toml")); now != told {
		t.Errorf("the register is now\n%s", now)
	}
}

// reads is what a file of hers holds.
func (m *maker) reads(path string) string {
	m.t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		m.t.Fatal(err)
	}
	return string(text)
}
