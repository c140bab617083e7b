package season

import (
	"slices"

	"pourbench/pour/day"
)

// week is its days.
const week = 7

// pours reports whether she pours on a day of the week.
func (h House) pours(d day.Day) bool {
	return len(h.BenchDays) == 0 || slices.Contains(h.BenchDays, d.Weekday())
}

// onOrBefore is the last bench day up to a day.
func (h House) onOrBefore(d day.Day) day.Day {
	for range week {
		if h.pours(d) {
			return d
		}
		d--
	}
	return d
}

// onOrAfter is the first bench day from a day on.
func (h House) onOrAfter(d day.Day) day.Day {
	for range week {
		if h.pours(d) {
			return d
		}
		d++
	}
	return d
}
