package pour

import (
	"math"
	"testing"
)

func TestAFiguresNumberAndUnitStandApartAndTogether(t *testing.T) {
	metric := Show{Mass: MassGram, Temperature: DegreesC, Length: LengthMM, ScaleStepG: 0.5, LyeStepG: 0.01}
	other := Show{Mass: MassOunce, Temperature: DegreesF, Length: LengthInch, ScaleStepG: 1, LyeStepG: 0.1}
	for _, c := range []struct {
		name   string
		got    Amount
		text   string
		number string
		unit   string
	}{
		{"grams on a half-gram scale", metric.WeightApart(101.3), metric.Weight(101.3), "101.5", "g"},
		{"a dose", metric.DoseApart(0.126), metric.Dose(0.126), "0.13", "g"},
		{"ounces: 100 g ÷ 28.349523125, two places for a step of 0.035 oz", other.WeightApart(100), other.Weight(100), "3.53", "oz"},
		{"°C", metric.TempApart(38.4), metric.Temp(38.4), "38", "°C"},
		{"°F: 38.4 × 9/5 + 32 = 101.12", other.TempApart(38.4), other.Temp(38.4), "101", "°F"},
		{"a difference: 10 K × 9/5", other.TempDiffApart(10), other.TempDiff(10), "18", "°F"},
		{"mm", metric.LenApart(24.6), metric.Len(24.6), "25", "mm"},
		{"inches: 254 ÷ 25.4", other.LenApart(254), other.Len(254), "10.00", "in"},
		{"millilitres", metric.VolumeApart(11.5), metric.Volume(11.5), "12", "mL"},
		{"percent", metric.PercentApart(33.333, 1), metric.Percent(33.333, 1), "33.3", "%"},
		{"less than nothing shown is no minus", metric.PercentApart(-0.01, 1), metric.Percent(-0.01, 1), "0.0", "%"},
		{"what is no number", metric.WeightApart(math.NaN()), metric.Weight(math.NaN()), "–", ""},
		{"unknown", metric.FigureApart(Figure{}, metric.TempApart), metric.Figure(Figure{}, metric.Temp), "–", ""},
		{"known", metric.FigureApart(Know(20), metric.TempApart), metric.Figure(Know(20), metric.Temp), "20", "°C"},
	} {
		whole := c.number
		if c.unit != "" {
			whole += " " + c.unit
		}
		if c.got.Number != c.number || c.got.Unit != c.unit || c.text != whole || c.got.String() != whole {
			t.Errorf("%s: %q and %q, together %q; want %q and %q", c.name, c.got.Number, c.got.Unit, c.text, c.number, c.unit)
		}
	}
	if got := metric.Number(math.Inf(1), 1); got != "–" {
		t.Errorf("infinity is drawn as %q", got)
	}
}

// Times are drawn as finely as they deserve, by hand.
func TestTimesAreDrawn(t *testing.T) {
	show := Show{}
	for min, want := range map[float64][3]string{ // on the run clock, as a length, as the clock deserves
		0:      {"0:00", "0:00", "0 min"},
		4.25:   {"+4:15", "4:15", "4.5 min"},
		-4.25:  {"-4:15", "4:15", "-4.5 min"},
		1.1:    {"+1:06", "1:06", "1 min"},
		1.9:    {"+1:54", "1:54", "2 min"},
		0.001:  {"0:00", "0:00", "0 min"},
		9.7:    {"+9:42", "9:42", "9.5 min"},
		59.99:  {"+59:59", "59:59", "60 min"},
		60:     {"+1:00:00", "1:00:00", "60 min"},
		-145.4: {"-2:25:00", "2:25:00", "-2 h 25"},
		119.4:  {"+1:59:00", "1:59:00", "119 min"},
		119.6:  {"+2:00:00", "2:00:00", "2 h 00"},
		60.49:  {"+1:00:00", "1:00:00", "60 min"},
	} {
		if got := [3]string{show.RunTime(min), show.Span(min), show.Minutes(min)}; got != want {
			t.Errorf("%v min: %q, want %q", min, got, want)
		}
	}
	for min, want := range map[float64]string{0.3: "+0:15", 4.2: "+4:00", -9.8: "-10:00", 10.4: "+10:00", 77.3: "+1:17:00", 0.1: "0:00"} {
		if got := show.Predicted(min); got != want {
			t.Errorf("predicted for %v min: %q, want %q", min, got, want)
		}
	}
	for _, c := range []struct {
		v    float64
		u    Unit
		show Show
		want string
	}{
		{36.5, UnitCelsius, Show{}, "36.5"},
		{36.5, UnitCelsius, Show{Temperature: DegreesF}, "97.7"}, // 36.5 · 9/5 + 32
		{25.4, UnitMM, Show{Length: LengthInch}, "1"},
		{100, UnitGram, Show{Mass: MassOunce}, "3.527"}, // 28.349523125 g (by definition) to the ounce
		{0.12345, UnitPercent, Show{}, "0.123"},
		{-0.0001, UnitPercent, Show{}, "0"},
	} {
		if got := c.show.Plain(c.v, c.u); got != c.want {
			t.Errorf("%v %s is typed %q, want %q", c.v, c.u, got, c.want)
		}
	}
}

// Ounces by hand: 28.349523125 g. A step of 0.01 g is 0.00035 oz, one of 1 g 0.035 oz.
func TestOuncesAreDrawnAsScalesShowThem(t *testing.T) {
	fine := Show{Mass: MassOunce, ScaleStepG: 1, LyeStepG: 0.01}
	for _, c := range []struct {
		got, want string
	}{
		{fine.Dose(75.1815 * 28.349523125), "75.18 oz"},
		{fine.Dose(5.34567 * 28.349523125), "5.346 oz"},
		{fine.Dose(0.88), "0.0310 oz"},
		{fine.Dose(0.01), "0.0004 oz"},
		{fine.Weight(906.2), "31.97 oz"},
		{fine.Weight(14), "0.49 oz"},
		{fine.Weight(1), "0.04 oz"},
	} {
		if c.got != c.want {
			t.Errorf("drawn %s, want %s", c.got, c.want)
		}
	}
}

func TestTeaspoonsAreNoFinerThanSpoons(t *testing.T) {
	for teaspoons, want := range map[float64]string{
		0.01: "a pinch: weigh it", 0.06: "a pinch: weigh it", 0.07: "about 1/8 teaspoon", 0.3: "about 1/4 teaspoon", 0.88: "about 7/8 teaspoon", 1: "about 1 teaspoon", 1.13: "about 1 1/8 teaspoons",
		2.52: "about 2 1/2 teaspoons",
	} {
		if got := (Show{}).Spoons(teaspoons); got != want {
			t.Errorf("%v teaspoons are %q, want %q", teaspoons, got, want)
		}
	}
}

// By hand: 25.4 mm to the inch; 25.5 mm is 1.0039 in, 76 mm 2.9921 in. A cup of 231/16 cubic inches holds 8 fluid ounces, 236.588 mL.
func TestLengthsAndVolumesAreSaidInTheMakersUnit(t *testing.T) {
	mm, in := Metric(), Avoirdupois()
	for _, c := range []struct{ got, want string }{
		{mm.Marks(25.5, 51, 76), "25.5, 51, 76 mm"},
		{in.Marks(25.5, 51, 76), "1.00, 2.01, 2.99 in"},
		{mm.MarkApart(51).String(), "51.0 mm"},
		{in.MarkApart(76).String(), "2.99 in"},
		{mm.Volume(236.588), "237 mL"},
		{in.Volume(236.588), "237 mL (8.0 fl oz)"},
		{in.Volume(math.NaN()), "–"},
		{mm.LenUnit() + " " + in.LenUnit(), "mm inches"},
		{mm.Told(30, UnitGram) + ", " + in.Told(30, UnitGram), "30 g, 1.058 oz"},
		{in.Told(0.6, UnitMM), "0.0236 in"},
		{in.Told(0.01, UnitGram), "0.000353 oz"}, // the step of a scale is never 0
		{in.Told(0.1, UnitGram), "0.00353 oz"},
		{in.Told(0, UnitGram), "0 oz"},
		{in.Told(-17.8, UnitCelsius), "-0.04 °F"},
		{in.Dose(0.02234 * 28.349523125), "0.022 oz"}, // as many places as the step of the finer scale has
		{in.Dose(0.7556 * 28.349523125), "0.756 oz"},
		{in.Weight(30.4567 * 28.349523125), "30.46 oz"},
	} {
		if c.got != c.want {
			t.Errorf("drawn %s, want %s", c.got, c.want)
		}
	}
	if a, b := in.LenBeside(25.401, 25.402); a == b && a != "1 in" {
		t.Errorf("held against each other: %s and %s", a, b)
	}
}

// Steps that are usual for the unit before are nobody's own; a maker's own go along.
func TestANewPlanIsShownAsTheOneBefore(t *testing.T) {
	turned := Metric() // grams' scales under figures in ounces, as units are turned on the bench
	turned.Mass, turned.Temperature, turned.Length = MassOunce, DegreesF, LengthInch
	own := turned
	own.LyeStepG = 0.05
	back := Avoirdupois()
	back.Mass, back.Temperature, back.Length = MassGram, DegreesC, LengthMM
	for i, c := range []struct{ before, want Show }{{Metric(), Metric()}, {Avoirdupois(), Avoirdupois()}, {turned, Avoirdupois()}, {own, own}, {back, Metric()}} {
		if got := c.before.Anew(); got != c.want {
			t.Errorf("%d: after %+v comes %+v, want %+v", i, c.before, got, c.want)
		}
	}
	if got := Avoirdupois().Units(); got != "oz, °F and in" {
		t.Errorf("the units are %q", got)
	}
}
