package drying

import (
	"fmt"
	"math"

	"pourbench/pour"
	"pourbench/pour/day"
)

// Axis is one side of a drawing: from Low to High, in days or g, with what is written along it.
type Axis struct {
	Low, High float64
	Ticks     []Tick
	Label     string // what it is and in which unit
}

// Tick is a place on an axis: its number in the maker's unit and, on the axis of days, the day of the calendar.
type Tick struct {
	At       float64
	Text     string
	Calendar string
}

// Along is where a value stands between Low, 0, and High, 1.
func (a Axis) Along(v float64) float64 { return (v - a.Low) / (a.High - a.Low) }

// Days is the axis of days, with at most so many ticks (1 or more) beside the first. Steps are days and whole weeks.
func (p Plot) Days(ticks int) Axis {
	a := Axis{High: p.reach(), Label: "days from the cut on " + p.Cut.String()}
	step := dayStep(a.High, ticks)
	for v := 0.0; v <= a.High; v += step {
		a.Ticks = append(a.Ticks, Tick{v, p.Show.Number(v, 0), p.Date(v)})
	}
	return a
}

// dayStep is the least step of whole days, weeks or doubled weeks that takes no more ticks than that.
func dayStep(last float64, ticks int) float64 {
	ticks = max(ticks, 1)
	for _, step := range []float64{1, 2, 7, 14} {
		if last/step <= float64(ticks) {
			return step
		}
	}
	step := 28.0
	for last/step > float64(ticks) {
		step *= 2
	}
	return step
}

// marginPart is how much of what is drawn stays free above and below it.
const marginPart = 0.04

// Mass is the axis of masses in g, its ticks at round numbers of the maker's unit: about so many, two at the least.
func (p Plot) Mass(ticks int) Axis {
	low, high := p.masses()
	if low > high {
		low, high = 0, 1
	}
	one, unit := p.Show.ToUnit(1, pour.UnitGram)
	low, high = low*one, high*one
	if high-low < 1e-6*max(1, math.Abs(high)) { // one weight alone stands in the middle
		low, high = low-one, high+one
	}
	margin := marginPart * (high - low)
	low, high = low-margin, high+margin
	a := Axis{Low: low / one, High: high / one, Label: "a bar, " + unit}
	step := roundStep((high - low) / float64(max(ticks, 2)))
	for math.Floor(high/step)-math.Ceil(low/step) < 1 {
		step = roundStep(step * 0.4)
	}
	places := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	for n := math.Ceil(low / step); n <= math.Floor(high/step); n++ {
		a.Ticks = append(a.Ticks, Tick{At: n * step / one, Text: p.Show.Number(n*step, places)})
	}
	return a
}

// roundStep is the least of 1, 2 and 5 times a power of ten that is not under a step.
func roundStep(least float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, by := range []float64{1, 2, 5} {
		if by*ten >= least*(1-1e-9) {
			return by * ten
		}
	}
	return 10 * ten
}

// DayWords is a day from the cut as it is read: its number and its date.
func (p Plot) DayWords(days float64) string {
	return fmt.Sprintf("day %s, %s", p.Show.Number(days, 0), p.Date(days))
}

// Date is the day of the calendar that a day from the cut rounds to.
func (p Plot) Date(days float64) string { return (p.Cut + day.Day(math.Round(days))).Short() }
