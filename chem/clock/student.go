package clock

import "math"

// normal90 is the 0.90 quantile of the standard normal distribution, 1.2816.
const normal90 = 1.2815515655446004

// studentCDF is the distribution function of Student's t with a whole number of degrees of freedom ≥ 1, by the finite sums of
// Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
func studentCDF(t float64, freedom int) float64 {
	theta := math.Atan(t / math.Sqrt(float64(freedom)))
	sin, cos := math.Sincos(theta)
	term, sum, first := 1.0, 1.0, 2
	if freedom%2 == 1 {
		if freedom == 1 {
			return 0.5 + theta/math.Pi
		}
		term, sum, first = cos, cos, 3
	}
	for k := first; k < freedom; k += 2 {
		term *= cos * cos * float64(k-1) / float64(k)
		sum += term
	}
	if freedom%2 == 1 {
		return 0.5 + (theta+sin*sum)/math.Pi
	}
	return 0.5 + sin*sum/2
}

// student90 is the 0.90 quantile of Student's t, by bisection.
func student90(freedom int) float64 {
	lo, hi := 0.0, 10.0
	for range 60 {
		mid := (lo + hi) / 2
		if studentCDF(mid, freedom) < 0.90 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
