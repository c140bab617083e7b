package command_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/calendar"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
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
	for _, want := range []string{"Unmould: Alpine Meadow of ", "Cut window: Alpine Meadow of ", "Weigh bars, day 7", ": Alpine Meadow of ", "Turn bars"} {
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

// pours puts a pour of the first example into her logbook, lye in at a moment, and returns its id.
func (m *maker) pours(at time.Time) string {
	m.t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		m.t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		m.t.Fatal(err)
	}
	plan, err := planfile.Read("meadow", bytes.NewReader(text), shelf)
	if err != nil {
		m.t.Fatal(err)
	}
	book, err := logbook.OpenBook(m.path("data", "pourbench", "pours"))
	if err != nil {
		m.t.Fatal(err)
	}
	id, err := book.Create(plan, "", at, []logbook.Event{
		{ID: "a-1", Kind: logbook.Opened, Wall: at},
		{ID: "a-2", Kind: logbook.Done, Step: logbook.LyeIn(pour.Base), Wall: at},
		{ID: "a-3", Kind: logbook.Ended, Run: time.Hour, Wall: at.Add(time.Hour)},
	})
	if err != nil {
		m.t.Fatal(err)
	}
	return id
}

// Over the weeks of a batch every export tells what was done and what is due under the names the calendar has already: cut a day late, everything
// after it moves by a day; when the bars are sold, nothing is due.
func TestTheCalendarFollowsABatchOverItsWeeks(t *testing.T) {
	room := time.FixedZone("room", 3600)
	m := newMaker(t)
	on := func(day, hour int) { m.now = func() time.Time { return time.Date(2027, 3, day, hour, 0, 0, 0, room) } }
	file := m.path("soap.ics")
	id := m.pours(time.Date(2027, 3, 1, 10, 0, 0, 0, room))

	on(1, 14)
	m.says("calendar", "-o", file)
	first := events(t, m.reads(file))
	cut, week := first[calendar.UID(id, "cut")], first[calendar.UID(id, "weigh-7")]
	if !strings.HasPrefix(cut["DTSTART"], "20270302T") || week["DTSTART"] != "20270309" || week["SEQUENCE"] != "0" {
		t.Errorf("at first: cut %v, weigh %v", cut, week)
	}
	if stamp := cut["DTSTAMP"]; stamp != "20270301T090000Z" {
		t.Errorf("an entry says it was revised at %s and not when lye was in", stamp)
	}

	on(3, 18)
	m.says("logbook", "slice", id, "--count", "10")
	m.says("logbook", "weigh", id, "100", "101", "102")
	m.says("calendar", "-o", file)
	second := events(t, m.reads(file))
	cut, week = second[calendar.UID(id, "cut")], second[calendar.UID(id, "weigh-7")]
	if cut["DTSTART"] != "20270303" || cut["SEQUENCE"] != "1" || week["DTSTART"] != "20270310" || week["SEQUENCE"] != "1" || week["DTSTAMP"] != "20270303T170000Z" {
		t.Errorf("cut a day late: cut %v, weigh %v", cut, week)
	}
	ready, was := second[calendar.UID(id, "ready")], first[calendar.UID(id, "ready")]
	if !strings.HasPrefix(was["SUMMARY"], "Ready (by the plan's 42 days of cure)") || was["SEQUENCE"] != "0" || ready["SEQUENCE"] != "1" || ready["DTSTART"] <= was["DTSTART"] || !strings.Contains(ready["DESCRIPTION"], "less than 0.5 % a week") {
		t.Errorf("its ready day was %v and is %v", was, ready)
	}
	if second[calendar.UID(id, "weigh-0")]["SUMMARY"] != "Weighed\\, day 0: Alpine Meadow of 1 Mar" {
		t.Errorf("the weighing is %v", second[calendar.UID(id, "weigh-0")])
	}

	on(12, 9)
	m.says("logbook", "give", id, "10", "friends")
	m.says("calendar", "-o", file)
	for uid, e := range events(t, m.reads(file)) {
		if e["STATUS"] != "CANCELLED" || e["DTSTART"] < "20270312" {
			t.Errorf("of what is gone there is %s: %v", uid, e)
		}
	}
}

// events reads an iCalendar file by hand: the values of each event by its name.
func events(t *testing.T, text string) map[string]map[string]string {
	t.Helper()
	out := map[string]map[string]string{}
	for _, part := range strings.Split(strings.ReplaceAll(text, "\r\n ", ""), "BEGIN:VEVENT\r\n")[1:] {
		e := map[string]string{}
		for _, line := range strings.Split(strings.Split(part, "BEGIN:VALARM")[0], "\r\n") {
			name, value, _ := strings.Cut(line, ":")
			name, _, _ = strings.Cut(name, ";")
			e[name] = value
		}
		out[e["UID"]] = e
	}
	if len(out) == 0 {
		t.Fatalf("no event is in\n%s", text)
	}
	return out
}

// A plan that was in the calendar gives way to its pour, and stays where that of the logbook is another's.
func TestAPlannedPourGivesWayToThePour(t *testing.T) {
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	m := newMaker(t)
	plan := m.path("soap", "meadow.toml")
	m.writes(strings.Replace(string(text), "\nname =", "\npour_at = 2027-03-01T10:00:00\nname =", 1), "soap", "meadow.toml")
	file := m.path("soap.ics")
	m.now = func() time.Time { return time.Date(2027, 2, 20, 9, 0, 0, 0, time.UTC) }
	m.says("calendar", "-o", file, plan)
	ready := calendar.UID(calendar.PlanBatch(plan), "ready")
	if e := events(t, m.reads(file))[ready]; e["SEQUENCE"] != "0" {
		t.Fatalf("the plan's ready day is %v", e)
	}
	m.pours(time.Date(2027, 2, 15, 10, 0, 0, 0, time.UTC)) // the same design, a fortnight earlier
	m.says("calendar", "-o", file)
	if e := events(t, m.reads(file))[ready]; e["SEQUENCE"] != "0" || e["STATUS"] != "" {
		t.Errorf("beside an earlier pour of the design its ready day is %v", e)
	}
	id := m.pours(time.Date(2027, 3, 1, 10, 20, 0, 0, time.UTC))
	m.now = func() time.Time { return time.Date(2027, 3, 1, 14, 0, 0, 0, time.UTC) }
	m.says("calendar", "-o", file)
	after := events(t, m.reads(file))
	if e := after[ready]; e["STATUS"] != "CANCELLED" || e["SEQUENCE"] != "1" {
		t.Errorf("once poured the plan's ready day is %v", e)
	}
	if e := after[calendar.UID(id, "cut")]; e["DTSTART"] == "" || e["STATUS"] != "" {
		t.Errorf("the pour is to be cut %v", e)
	}
}

// Markets and the days to pour by are in the calendar of everything; a market that moves moves them, and a season that cannot be read leaves them.
func TestTheSeasonIsInTheCalendar(t *testing.T) {
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	m := newMaker(t)
	file, at := m.path("soap.ics"), []string{"data", "pourbench", "season.toml"}
	m.writes(string(text), "data", "pourbench", "meadow.toml")
	season := "format = 1\n\n[[date]]\nname = \"Spring market\"\nday = 2027-06-19\nkind = \"market\"\nlabel_days = 2\n\n[[pour]]\nplan = \"meadow.toml\"\nfor = \"Spring market\"\n"
	m.now = func() time.Time { return time.Date(2027, 3, 1, 14, 0, 0, 0, time.UTC) }
	m.writes(season, at...)
	list := m.says("calendar")
	for _, want := range []string{"Sat 2027-06-19                 Market: Spring market\n", "2027-06-17                 Label and pack for: Spring market\n", "Pour by: Alpine Meadow for Spring market\n"} {
		if !strings.Contains(list, want) {
			t.Errorf("%q is not in\n%s", want, list)
		}
	}
	m.says("calendar", "-o", file)
	market, by := calendar.UID("date Spring market", "date"), calendar.UID("planned meadow.toml for Spring market", "pour-by")
	first := events(t, m.reads(file))

	m.writes("format = 1\n[[date", at...)
	code, _, errs := m.types("calendar", "-o", file)
	if code != 2 || !strings.Contains(errs, "the season is left in the calendar as it is") {
		t.Errorf("a season that cannot be read: exit %d, %s", code, errs)
	}
	m.writes(strings.Replace(season, "06-19", "06-26", 1), at...)
	m.says("calendar", "-o", file)
	second := events(t, m.reads(file))
	if e := second[market]; e["DTSTART"] != "20270626" || e["SEQUENCE"] != "1" {
		t.Errorf("the market that moved is %v", e)
	}
	was, err1 := time.Parse("20060102", first[by]["DTSTART"])
	now, err2 := time.Parse("20060102", second[by]["DTSTART"])
	if err1 != nil || err2 != nil || now.Sub(was) != 7*24*time.Hour || second[by]["SEQUENCE"] != "1" {
		t.Errorf("the day to pour by was %v and is %v", first[by], second[by])
	}
	m.writes("format = 1\n", at...)
	m.says("calendar", "-o", file)
	for uid, e := range events(t, m.reads(file)) {
		if e["STATUS"] != "CANCELLED" {
			t.Errorf("of a season that is empty there is %s: %v", uid, e)
		}
	}
}
