package day_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour/day"
)

// Days go on one by one over the ends of months and years as the standard library's calendar has them, whatever the zone.
func TestDaysFollowTheCalendar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, n := rapid.IntRange(1, 9000).Draw(t, "year"), rapid.IntRange(-3000, 3000).Draw(t, "days")
		m, d := rapid.IntRange(1, 12).Draw(t, "month"), rapid.IntRange(1, 28).Draw(t, "day")
		hour := rapid.IntRange(0, 23).Draw(t, "hour")
		zone := time.FixedZone("", rapid.IntRange(-12, 14).Draw(t, "zone")*3600)
		got := day.Of(time.Date(y, time.Month(m), d, hour, 0, 0, 0, zone))
		want := time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC)
		if got.String() != want.Format(time.DateOnly) || got.Weekday() != want.Weekday() {
			t.Fatalf("%s, want %s", got, want)
		}
		if got, want := got+day.Day(n), want.AddDate(0, 0, n); got.String() != want.Format(time.DateOnly) {
			t.Fatalf("%d days on it is %s, want %s", n, got, want)
		}
	})
}

func TestADayIsReadBackAsItIsWritten(t *testing.T) {
	d, err := day.Parse("2026-12-06")
	if err != nil || d.String() != "2026-12-06" || d.Short() != "6 Dec" || d.Weekday() != time.Sunday {
		t.Errorf("%v %v %v %v", d, d.Short(), d.Weekday(), err)
	}
	for _, s := range []string{"", "6.12.2026", "2026-13-01", "2026-02-30", "2026-12-06 10:00"} {
		if d, err := day.Parse(s); err == nil {
			t.Errorf("%q was read as %v", s, d)
		}
	}
}

// Summer time takes an hour of the day away and never the day.
func TestSummerTimeMovesNoDay(t *testing.T) {
	there, err := time.LoadLocation("Europe/Vienna")
	if err != nil {
		t.Skip("this machine has no table of zones")
	}
	d, _ := day.Parse("2027-03-28")
	for hour := range 24 {
		if got := day.Of(d.At(hour, 30, there)); got != d {
			t.Errorf("%d:30 is on %s", hour, got)
		}
	}
}
