// Package day is calendar days without an hour: what a cure, a market and a shelf life are counted in. A day is the same day in every
// place and is never moved by summer time.
package day

import (
	"fmt"
	"time"
)

// Day is a calendar day, counted from 1 January 1970. The zero value is that day; where none is meant use a pointer or a bool.
type Day int

const hours = 24

// Of is the day a moment falls on where its clock hangs.
func Of(t time.Time) Day {
	y, m, d := t.Date()
	return Day(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (hours * 60 * 60))
}

// Parse reads a day written as year-month-day.
func Parse(s string) (Day, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, fmt.Errorf("read the day %q: write it as year-month-day, such as 2026-12-06", s)
	}
	return Of(t), nil
}

// utc is its midnight in UTC, for reckoning only.
func (d Day) utc() time.Time { return time.Unix(int64(d)*hours*60*60, 0).UTC() }

// At is a moment of the day by a clock that hangs there. An hour that summer time leaves out is the one after it.
func (d Day) At(hour, minute int, there *time.Location) time.Time {
	y, m, n := d.utc().Date()
	return time.Date(y, m, n, hour, minute, 0, 0, there)
}

// String writes the day as year-month-day.
func (d Day) String() string { return d.utc().Format(time.DateOnly) }

// Short writes the day for screens that say the year elsewhere, as 6 Dec.
func (d Day) Short() string { return d.utc().Format("2 Jan") }

// Weekday is its day of the week.
func (d Day) Weekday() time.Weekday { return d.utc().Weekday() }
