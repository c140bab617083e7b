package pour

import (
	"math"
	"strings"
)

// Len draws a length in the maker's unit.
func (s Show) Len(mm float64) string { return s.LenApart(mm).String() }

// Rim draws how far something stands over a rim, or under it.
func (s Show) Rim(overMM float64) string {
	if overMM < 0 {
		return s.Len(-overMM) + " under the rim"
	}
	return s.Len(overMM) + " over the rim"
}

// LenApart is [Show.Len] with number and unit apart.
func (s Show) LenApart(mm float64) Amount {
	if s.Length == LengthInch {
		return apart(mm/mmPerInch, 2, "in")
	}
	return apart(mm, 0, "mm")
}

// LenNear draws a length of which tenths of a millimetre matter: a clearance, a place to mark.
func (s Show) LenNear(mm float64) string { return s.LenNearApart(mm).String() }

// LenNearApart is [Show.LenNear] with number and unit apart.
func (s Show) LenNearApart(mm float64) Amount {
	if s.Length == LengthInch {
		return apart(mm/mmPerInch, 3, "in")
	}
	return apart(mm, 1, "mm")
}

// LenTold draws a length whole where it is whole, and to tenths of a millimetre where it is not: for one that a maker set, or one that is held
// against another.
func (s Show) LenTold(mm float64) string { return s.LenToldApart(mm).String() }

// LenToldApart is [Show.LenTold] with number and unit apart.
func (s Show) LenToldApart(mm float64) Amount {
	if s.Length == LengthInch || math.Abs(mm-math.Round(mm)) < 0.05 {
		return s.LenApart(mm)
	}
	return s.LenNearApart(mm)
}

// Marks draws distances that are marked from one end, with their unit once; each stands on the half millimetre that it was rounded to.
func (s Show) Marks(mm ...float64) string {
	out := make([]string, len(mm))
	for i, v := range mm {
		out[i] = s.LenToldApart(v).Number
	}
	return Amount{strings.Join(out, ", "), s.LenApart(0).Unit}.String()
}

// MarkApart draws one of [Show.Marks] for a list of them, with its unit apart: all have the same decimals. Hundredths of an inch are finer than
// the half millimetre it stands on.
func (s Show) MarkApart(mm float64) Amount {
	if s.Length == LengthInch {
		return s.LenApart(mm)
	}
	return s.LenNearApart(mm)
}

// LenUnit names the unit of lengths in words that can be read for nothing else: mm, inches.
func (s Show) LenUnit() string {
	if s.Length == LengthInch {
		return "inches"
	}
	return string(UnitMM)
}

// Told draws a number of the plan as it would be typed, with its unit: what was typed once, and is no mass to weigh or length to mark.
func (s Show) Told(v float64, u Unit) string {
	_, unit := s.ToUnit(v, u)
	return strings.TrimSpace(s.Plain(v, u) + " " + unit)
}

// LenBeside draws two lengths that are held against each other with as many digits as tell them apart, at most a hundredth of a millimetre.
func (s Show) LenBeside(a, b float64) (string, string) {
	for _, draw := range []func(float64) string{s.Len, s.LenNear} {
		if x, y := draw(a), draw(b); x != y {
			return x, y
		}
	}
	return s.Told(math.Round(a*100)/100, UnitMM), s.Told(math.Round(b*100)/100, UnitMM)
}
