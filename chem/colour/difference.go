package colour

import "math"

// Difference returns the CIEDE2000 colour difference of two colours. Below 1 hardly anybody sees it,
// 10 is plain. It is symmetric, and 0 only for equal colours.
func (c RGB) Difference(other RGB) float64 {
	return c.Lab().Difference(other.Lab())
}

// Difference returns the CIEDE2000 colour difference with all parametric factors 1 (CIE 142:2001;
// formulas as in Sharma, Wu and Dalal, Color Research and Application 30(1), 2005).
func (p Lab) Difference(q Lab) float64 {
	stretch := redStretch((math.Hypot(p.A, p.B) + math.Hypot(q.A, q.B)) / 2)
	a1, a2 := float64(stretch*p.A), float64(stretch*q.A)
	c1, c2 := math.Hypot(a1, p.B), math.Hypot(a2, q.B)
	h1, h2 := degrees(p.B, a1), degrees(q.B, a2)
	turn, hue := hues(h1, h2)
	if c1 == 0 || c2 == 0 { // a grey has no hue of its own: take the other's
		turn, hue = 0, h1+h2
	}
	dL, dC := q.L-p.L, c2-c1
	dH := 2 * math.Sqrt(c1*c2) * sin(turn/2)

	lightness, chroma := (p.L+q.L)/2, (c1+c2)/2
	off := (lightness - 50) * (lightness - 50)
	sL := 1 + 0.015*off/math.Sqrt(20+off)
	sC := 1 + 0.045*chroma
	sH := 1 + 0.015*chroma*hueWeight(hue)
	rT := -sin(60*math.Exp(-square((hue-275)/25))) * 2 * blueShare(chroma)
	l, k, h := dL/sL, dC/sC, dH/sH
	return math.Sqrt(max(0, l*l+k*k+h*h+rT*k*h))
}

// hues returns the signed turn from h1 to h2 and their mean, in degrees. Exactly opposite hues are a
// jump of the formula: pairs 10 and 14 of Sharma's table sit on it. Rounding must not decide the side,
// so a turn within a billionth of a degree of 180 counts as 180.
func hues(h1, h2 float64) (turn, mean float64) {
	turn, mean = h2-h1, (h1+h2)/2
	if math.Abs(turn) <= 180+1e-9 {
		return turn, mean
	}
	if h1+h2 < 360 {
		mean += 180
	} else {
		mean -= 180
	}
	return turn - math.Copysign(360, turn), mean
}

func redStretch(chroma float64) float64 { return 1 + 0.5*(1-blueShare(chroma)) }

// blueShare is sqrt(C^7 / (C^7 + 25^7)), 0 to 1.
func blueShare(chroma float64) float64 {
	seventh := math.Pow(chroma, 7)
	return math.Sqrt(seventh / (seventh + 6103515625))
}

func hueWeight(h float64) float64 {
	return 1 - 0.17*cos(h-30) + 0.24*cos(2*h) + 0.32*cos(3*h+6) - 0.20*cos(4*h-63)
}

func square(x float64) float64 { return x * x }

func sin(d float64) float64 { return math.Sin(d * math.Pi / 180) }

func cos(d float64) float64 { return math.Cos(d * math.Pi / 180) }
