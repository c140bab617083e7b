package cure

import "math"

// misfitTail is how seldom weighings that follow the law are said not to.
const misfitTail = 0.01

// Check refuses a fit whose weighings lie further off the law than they should: the data part of S above the 99 % point of chi-square with
// as many degrees as there are weighings. A fit without weighings passes.
func (f *Fit) Check() error {
	n := len(f.Weighings)
	if n == 0 || chiTail(f.DataS, n) >= misfitTail {
		return nil
	}
	last, least := f.Weighings[n-1], f.Weighings[0]
	for _, w := range f.Weighings {
		if w.G < least.G {
			least = w
		}
	}
	if last.G > least.G+3*f.SDG {
		return refuse(Misfit, "does not follow the drying law: it rose again from %.5g g on day %.4g to %.5g g on day %.4g: the room is damper than the bar; check scale, date, humidity", least.G, least.Day, last.G, last.Day)
	}
	worst, off := 0, 0.0
	for i, r := range f.Residuals() {
		if math.Abs(r) > math.Abs(off) {
			worst, off = i, r
		}
	}
	return refuse(Misfit, "does not follow the drying law: check scale, date, humidity; furthest off is day %.4g, %.2g g %s", f.Weighings[worst].Day, math.Abs(off), overOrUnder(off))
}

func overOrUnder(g float64) string {
	if g < 0 {
		return "under it"
	}
	return "over it"
}

// chiTail is the chance that chi-square with n degrees, 1 or more, is above x: its closed sums, over whole numbers for even n and from
// the error function for odd (derived by parts; Abramowitz and Stegun 26.4.4 and 26.4.5, memory).
func chiTail(x float64, n int) float64 {
	if x <= 0 {
		return 1
	}
	half := x / 2
	if n%2 == 0 {
		sum, term := 0.0, math.Exp(-half)
		for k := 0; k < n/2; k++ {
			sum += term
			term *= half / float64(k+1)
		}
		return sum
	}
	sum, term := math.Erfc(math.Sqrt(half)), math.Exp(-half)*math.Sqrt(half)*2/math.SqrtPi
	for k := 1; k <= n/2; k++ {
		sum += term
		term *= half / (float64(k) + 0.5)
	}
	return sum
}
