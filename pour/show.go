package pour

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Exact definitions: international avoirdupois ounce and inch (International Yard and Pound Agreement, 1959; from memory).
const (
	gramsPerOunce = 28.349523125
	mmPerInch     = 25.4
)

// dash stands where a figure could not be worked out.
const dash = "–"

// Weight draws grams on the scale step, in the maker's unit. Ounces are drawn to the step's nearest decimal place.
func (s Show) Weight(g float64) string { return s.grams(g, s.ScaleStepG) }

// Dose draws grams on the finer lye step, in the maker's unit.
func (s Show) Dose(g float64) string { return s.grams(g, s.LyeStepG) }

func (s Show) grams(g, stepG float64) string {
	if s.Mass == "oz" {
		places := decimals(stepG / gramsPerOunce)
		return with(g/gramsPerOunce, places, "oz")
	}
	return with(math.Round(g/stepG)*stepG, decimals(stepG), "g")
}

// decimals is how many decimal places a step needs, at most 4.
func decimals(step float64) int {
	for places := 0; places < 4; places++ {
		scaled := step * math.Pow10(places)
		if scaled >= 1-1e-9 && math.Abs(scaled-math.Round(scaled)) < 1e-6 {
			return places
		}
		if scaled >= 10 {
			return places
		}
	}
	return 4
}

// with draws a number with its unit; what is no number is a dash.
func with(v float64, places int, unit string) string {
	if text := fixed(v, places); text != dash {
		return text + " " + unit
	}
	return dash
}

// fixed draws a number with that many decimals and never as minus zero; what is no number is a dash.
func fixed(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return dash
	}
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// Temp draws a temperature in the maker's unit, whole degrees.
func (s Show) Temp(c float64) string {
	if s.Temperature == "F" {
		return with(c*9/5+32, 0, "°F")
	}
	return with(c, 0, "°C")
}

// TempDiff draws a difference of temperatures.
func (s Show) TempDiff(k float64) string {
	if s.Temperature == "F" {
		return with(k*9/5, 0, "°F")
	}
	return with(k, 0, "°C")
}

// Len draws a length in the maker's unit.
func (s Show) Len(mm float64) string {
	if s.Length == "in" {
		return with(mm/mmPerInch, 2, "in")
	}
	return with(mm, 0, "mm")
}

// Volume draws millilitres, whole.
func (s Show) Volume(ml float64) string { return with(ml, 0, "mL") }

// Percent draws a percentage with that many decimals.
func (s Show) Percent(p float64, places int) string { return with(p, places, "%") }

// Minutes draws a time as finely as the clock deserves: under 2 min to a quarter, under 10 to a half, else to a whole minute, over two hours in hours and minutes.
func (s Show) Minutes(min float64) string {
	m := RoundMinutes(min)
	if math.Abs(m) >= 120 {
		sign := ""
		if m < 0 {
			sign = "-"
		}
		whole := int(math.Abs(m))
		return fmt.Sprintf("%s%d h %02d", sign, whole/60, whole%60)
	}
	return strconv.FormatFloat(m, 'f', -1, 64) + " min"
}

// RunTime draws a moment of the run as it is planned: "+4:15" in minutes and seconds, "-2 h 25" from an hour on.
func (s Show) RunTime(min float64) string {
	sign, seconds := "+", int(math.Round(math.Abs(min)*60))
	if min < 0 {
		sign = "-"
	}
	if seconds == 0 {
		return "0:00"
	}
	if seconds >= 3600 {
		minutes := (seconds + 30) / 60
		return fmt.Sprintf("%s%d h %02d", sign, minutes/60, minutes%60)
	}
	return fmt.Sprintf("%s%d:%02d", sign, seconds/60, seconds%60)
}

// Span draws how long something takes, in minutes and seconds, or in hours from an hour on.
func (s Show) Span(min float64) string { return strings.TrimLeft(s.RunTime(math.Abs(min)), "+") }

// RoundMinutes rounds a predicted time: under 2 min to a quarter, under 10 to a half, else to one.
func RoundMinutes(min float64) float64 {
	step := 1.0
	switch a := math.Abs(min); {
	case a < 2:
		step = 0.25
	case a < 10:
		step = 0.5
	}
	return math.Round(min/step)*step + 0
}

// Figure draws a figure with the given drawing, or a dash when it is unknown.
func (s Show) Figure(f Figure, draw func(float64) string) string {
	if !f.Known {
		return dash
	}
	return draw(f.V)
}

// FromUnit turns a number the maker typed, in her unit, into the plan's.
func (s Show) FromUnit(v float64, u Unit) float64 {
	switch {
	case u == UnitGram && s.Mass == "oz":
		return v * gramsPerOunce
	case u == UnitMM && s.Length == "in":
		return v * mmPerInch
	case u == UnitCelsius && s.Temperature == "F":
		return (v - 32) * 5 / 9
	}
	return v
}

// ToUnit turns a number of the plan into the maker's unit, and names that unit.
func (s Show) ToUnit(v float64, u Unit) (float64, string) {
	switch {
	case u == UnitGram && s.Mass == "oz":
		return v / gramsPerOunce, "oz"
	case u == UnitMM && s.Length == "in":
		return v / mmPerInch, "in"
	case u == UnitCelsius && s.Temperature == "F":
		return v*9/5 + 32, "°F"
	}
	return v, string(u)
}

// Plain draws a number of the plan in the maker's unit without the unit, as it would be typed: at most 3 decimals, no trailing zeros.
func (s Show) Plain(v float64, u Unit) string {
	v, _ = s.ToUnit(v, u)
	return strconv.FormatFloat(round3(v)+0, 'f', -1, 64)
}
