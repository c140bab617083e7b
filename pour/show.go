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

// The usual steps of scales that show grams, and of those that show ounces (common practice, no source).
const (
	scaleStepG, lyeStepG   = 0.1, 0.01
	scaleStepOz, lyeStepOz = 0.01, 0.001
)

// Metric is how figures are shown where nobody said otherwise: grams, °C and mm.
func Metric() Show {
	return Show{Mass: MassGram, Temperature: DegreesC, Length: LengthMM, ScaleStepG: scaleStepG, LyeStepG: lyeStepG}
}

// Avoirdupois shows ounces, °F and inches.
func Avoirdupois() Show {
	return Show{Mass: MassOunce, Temperature: DegreesF, Length: LengthInch, ScaleStepG: scaleStepOz * gramsPerOunce, LyeStepG: lyeStepOz * gramsPerOunce}
}

// Anew is how a new plan shows its figures after this one: in the same units, on the same scales. Steps that are usual for the other unit are
// nobody's own; those of this unit stand in their place.
func (s Show) Anew() Show {
	usual, other := Metric(), Avoirdupois()
	if s.Mass == MassOunce {
		usual, other = other, usual
	}
	if s.ScaleStepG == other.ScaleStepG && s.LyeStepG == other.LyeStepG {
		s.ScaleStepG, s.LyeStepG = usual.ScaleStepG, usual.LyeStepG
	}
	return s
}

// Paper is the sheets that who measures so prints on: Letter beside inches, else A4 (common practice, no source).
func (s Show) Paper() string {
	if s.Length == LengthInch {
		return "letter"
	}
	return "a4"
}

// Units names the units that masses, temperatures and lengths are shown in.
func (s Show) Units() string { return s.Mass + ", °" + s.Temperature + " and " + s.Length }

// mlPerFluidOunce is the US fluid ounce, 231 cubic inches in 128 parts (from memory).
const mlPerFluidOunce = 231 * mmPerInch * mmPerInch * mmPerInch / 1000 / 128

// dash stands where a figure could not be worked out.
const dash = "–"

// Amount is a drawn figure with its number and its unit apart, for a column whose head says the unit.
type Amount struct{ Number, Unit string } // a figure that is no number has a dash and no unit

// String is the number with its unit.
func (a Amount) String() string {
	if a.Unit == "" {
		return a.Number
	}
	return a.Number + " " + a.Unit
}

// Weight draws grams on the scale step, in the maker's unit. Ounces are drawn as finely as the step wants and a scale in ounces shows.
func (s Show) Weight(g float64) string { return s.WeightApart(g).String() }

// WeightApart is [Show.Weight] with number and unit apart.
func (s Show) WeightApart(g float64) Amount { return s.grams(g, s.ScaleStepG) }

// Dose draws grams on the finer lye step, in the maker's unit.
func (s Show) Dose(g float64) string { return s.DoseApart(g).String() }

// DoseApart is [Show.Dose] with number and unit apart.
func (s Show) DoseApart(g float64) Amount { return s.grams(g, s.LyeStepG) }

// drawnStep is the step, g, on which a mass of a kind that is weighed is drawn.
func (s Show) drawnStep(kind string, g float64) float64 {
	stepG := s.ScaleStepG
	if (Weighing{Kind: kind}).Fine() {
		stepG = s.LyeStepG
	}
	if s.Mass != MassOunce {
		return stepG
	}
	return gramsPerOunce / math.Pow10(ouncePlaces(g/gramsPerOunce, stepG/gramsPerOunce, stepG == s.LyeStepG))
}

func (s Show) grams(g, stepG float64) Amount {
	if s.Mass == MassOunce {
		oz := g / gramsPerOunce
		return apart(oz, ouncePlaces(oz, stepG/gramsPerOunce, stepG == s.LyeStepG), "oz")
	}
	return apart(math.Round(g/stepG)*stepG, decimals(stepG), "g")
}

// ouncePlaces is how many decimal places an amount in ounces needs: as fine as the step, but from 1 oz on no finer than hundredths, on the
// finer scale from 10 oz on, which is what scales in ounces show (common practice, no source).
func ouncePlaces(oz, stepOz float64, finer bool) int {
	places := min(max(int(math.Ceil(-math.Log10(stepOz)-1e-9)), 0), 4) // a thousandth of an ounce, kept in g, is no whole thousandth any more
	switch {
	case oz >= 10 || oz >= 1 && !finer:
		return min(places, 2)
	case oz >= 1:
		return min(places, 3)
	}
	return places
}

// Spoons draws an estimate in teaspoons no finer than spoons are: eighths, and less than half of one is a pinch.
func (s Show) Spoons(teaspoons float64) string {
	eighths := int(math.Round(teaspoons * 8))
	if eighths < 1 || math.IsNaN(teaspoons) {
		return "a pinch: weigh it"
	}
	text := ""
	if whole := eighths / 8; whole > 0 {
		text = strconv.Itoa(whole)
	}
	text = strings.TrimSpace(text + [...]string{"", " 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"}[eighths%8])
	if eighths <= 8 {
		return "about " + text + " teaspoon"
	}
	return "about " + text + " teaspoons"
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

// apart draws a number with its unit; what is no number is a dash.
func apart(v float64, places int, unit string) Amount {
	if text := fixed(v, places); text != dash {
		return Amount{text, unit}
	}
	return Amount{Number: dash}
}

// Number draws a bare number with that many decimals; what is no number is a dash.
func (s Show) Number(v float64, places int) string { return fixed(v, places) }

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
func (s Show) Temp(c float64) string { return s.TempApart(c).String() }

// TempApart is [Show.Temp] with number and unit apart.
func (s Show) TempApart(c float64) Amount {
	if s.Temperature == DegreesF {
		return apart(c*9/5+32, 0, "°F")
	}
	return apart(c, 0, "°C")
}

// TempDiff draws a difference of temperatures.
func (s Show) TempDiff(k float64) string { return s.TempDiffApart(k).String() }

// TempDiffApart is [Show.TempDiff] with number and unit apart.
func (s Show) TempDiffApart(k float64) Amount {
	if s.Temperature == DegreesF {
		return apart(k*9/5, 0, "°F")
	}
	return apart(k, 0, "°C")
}

// Volume draws millilitres, whole; jugs are marked so everywhere. Who weighs in ounces is told the fluid ounces that stand beside them.
func (s Show) Volume(ml float64) string {
	text := s.VolumeApart(ml).String()
	if s.Mass == MassOunce && text != dash {
		text += " (" + fixed(ml/mlPerFluidOunce, 1) + " fl oz)"
	}
	return text
}

// VolumeApart is the millilitres of [Show.Volume] with number and unit apart.
func (s Show) VolumeApart(ml float64) Amount { return apart(ml, 0, "mL") }

// Percent draws a percentage with that many decimals.
func (s Show) Percent(p float64, places int) string { return s.PercentApart(p, places).String() }

// PercentApart is [Show.Percent] with number and unit apart.
func (s Show) PercentApart(p float64, places int) Amount { return apart(p, places, "%") }

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

// RunTime draws a moment of the run as it is planned, in minutes and seconds, "+4:15", and with hours from an hour on, "-2:25:00".
func (s Show) RunTime(min float64) string {
	sign, seconds := "+", int(math.Round(math.Abs(min)*60))
	if min < 0 {
		sign = "-"
	}
	if seconds >= 3600 {
		minutes := (seconds + 30) / 60
		return fmt.Sprintf("%s%d:%02d:00", sign, minutes/60, minutes%60)
	}
	if seconds == 0 {
		sign = ""
	}
	return fmt.Sprintf("%s%d:%02d", sign, seconds/60, seconds%60)
}

// Predicted draws a predicted moment as [Show.RunTime], as finely as the clock deserves.
func (s Show) Predicted(min float64) string { return s.RunTime(RoundMinutes(min)) }

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

// FigureApart is [Show.Figure] with number and unit apart.
func (s Show) FigureApart(f Figure, draw func(float64) Amount) Amount {
	if !f.Known {
		return Amount{Number: dash}
	}
	return draw(f.V)
}

// FromUnit turns a number the maker typed, in her unit, into the plan's.
func (s Show) FromUnit(v float64, u Unit) float64 {
	switch {
	case u == UnitGram && s.Mass == MassOunce:
		return v * gramsPerOunce
	case u == UnitMM && s.Length == LengthInch:
		return v * mmPerInch
	case u == UnitCelsius && s.Temperature == DegreesF:
		return (v - 32) * 5 / 9
	}
	return v
}

// ToUnit turns a number of the plan into the maker's unit, and names that unit.
func (s Show) ToUnit(v float64, u Unit) (float64, string) {
	switch {
	case u == UnitGram && s.Mass == MassOunce:
		return v / gramsPerOunce, "oz"
	case u == UnitMM && s.Length == LengthInch:
		return v / mmPerInch, "in"
	case u == UnitCelsius && s.Temperature == DegreesF:
		return v*9/5 + 32, "°F"
	}
	return v, string(u)
}

// Plain draws a number of the plan in the maker's unit without the unit, as it would be typed: at most 3 decimals, no trailing zeros. A small one that
// is turned into another unit keeps three digits: a step of a hundredth of a gram is no 0 oz.
func (s Show) Plain(v float64, u Unit) string {
	turned, _ := s.ToUnit(v, u)
	if a := math.Abs(turned); turned != v && a > 0 && a < 0.1 && u != UnitCelsius {
		return strings.TrimRight(strconv.FormatFloat(turned, 'f', 2-int(math.Floor(math.Log10(a))), 64), "0")
	}
	return strconv.FormatFloat(round3(turned)+0, 'f', -1, 64)
}
