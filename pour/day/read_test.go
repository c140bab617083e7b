package day_test

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour/day"
)

func parsed(t testing.TB, text string) day.Day {
	t.Helper()
	d, err := day.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Every way a maker types a day, on 30 November 2026, and what is refused with what it could be.
func TestADayIsReadAsItIsTyped(t *testing.T) {
	today := parsed(t, "2026-11-30")
	for text, want := range map[string]string{
		"2026-12-01": "2026-12-01", " today ": "2026-11-30", "Yesterday": "2026-11-29", "tomorrow": "2026-12-01",
		"1.12.2026": "2026-12-01", "01.12.2026": "2026-12-01", "1.12.": "2026-12-01", "1.12": "2026-12-01", "1. 12. 2026": "2026-12-01", "31.12.": "2026-12-31",
		"1 Dec": "2026-12-01", "1 dec 2026": "2026-12-01", "Dec 1": "2026-12-01", "December 1, 2026": "2026-12-01", "1. december": "2026-12-01", "1-Dec-2026": "2026-12-01",
		"12 Jan": "2027-01-12", "8 Oct": "2026-10-08", "29.2.2028": "2028-02-29",
		"13/12": "2026-12-13", "12/13/2026": "2026-12-13", "12/12": "2026-12-12",
	} {
		if d, err := day.Read(text, today); err != nil || d.String() != want {
			t.Errorf("%q is read as %s, %v; want %s", text, d, err, want)
		}
	}
	for text, says := range map[string][]string{
		"1/12":      {"2027-01-12 (12 Jan)", "2026-12-01 (1 Dec)"},
		"1/12/2026": {"2026-12-01 (1 Dec)", "2026-01-12 (12 Jan)"},
		"1-12":      {"2026-12-01", "2027-01-12"},
		"1 Jun":     {"2026-06-01 or 2027-06-01"},
		"31.11.":    {"no calendar has it"}, "31.11.2026": {"no calendar has it"}, "0.12.2026": {"no calendar"},
		"1.12.26": {"year-month-day"}, "": {"year-month-day"}, "soon": {"year-month-day"}, "Dec": {"year-month-day"}, "12": {"year-month-day"},
		"1.12.2026.": {"year-month-day"}, "1 Dec Dec": {"year-month-day"}, "2026-13-01": {"year-month-day"}, "29 Feb": {"of which year?", "2028-02-29"},
	} {
		now := today
		if text == "29 Feb" {
			now = parsed(t, "2027-06-30")
		}
		d, err := day.Read(text, now)
		if err == nil {
			t.Errorf("%q is read as %s", text, d)
			continue
		}
		for _, s := range says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%q: %v, which lacks %q", text, err, s)
			}
		}
	}
}

func TestADayIsReadWithItsHour(t *testing.T) {
	today := parsed(t, "2026-11-30")
	for text, want := range map[string]string{"2026-12-06 09:30": "2026-12-06 09:30", "28.11. 9:30": "2026-11-28 09:30", "28 Nov 15:00": "2026-11-28 15:00", "yesterday": "2026-11-29", "today 07:05": "2026-11-30 07:05"} {
		if got, err := day.ReadMoment(text, today); err != nil || got != want {
			t.Errorf("%q is read as %q, %v", text, got, err)
		}
	}
	for _, text := range []string{"28.11. 25:00", "9:30", "28.11. 9", ""} {
		if got, err := day.ReadMoment(text, today); err == nil {
			t.Errorf("%q is read as %q", text, got)
		}
	}
}

// What is written out in full is that day whatever today is; without its year it is that day within the months around today.
func TestEveryDayIsReadInAllItsForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := day.Day(rapid.IntRange(10_000, 40_000).Draw(t, "today"))
		d := today + day.Day(rapid.IntRange(-149, 149).Draw(t, "from it"))
		at := d.At(0, 0, time.UTC)
		for _, form := range []string{"2006-01-02", "2.1.2006", "2 Jan 2006", "January 2, 2006", "2.1.", "2 Jan", "Jan 2"} {
			if got, err := day.Read(at.Format(form), today); err != nil || got != d {
				t.Fatalf("%s on %s: %s, %v", at.Format(form), today, got, err)
			}
		}
	})
}
