package cure

import "math"

// Band80 is how many sd an 80 % band goes either way (normal distribution).
const Band80 = 1.2815515655

// weekDays is what a weekly loss is over.
const weekDays = 7

// Estimate is a figure of a fit with its sd, which is that of the fit alone: bars differ among themselves by more.
type Estimate struct{ V, SD float64 }

// Low is the early or light end of its 80 % band.
func (e Estimate) Low() float64 { return e.V - Band80*e.SD }

// High is the other end.
func (e Estimate) High() float64 { return e.V + Band80*e.SD }

// diffStep is how far each of A, B and ln tau is moved to see what a quantity does.
const diffStep = 1e-5

// Quantity returns any quantity of the parameters with its sd, √(∇qᵀ·C·∇q), by central differences.
func (f *Fit) Quantity(q func(Params) float64) Estimate {
	var slope [3]float64
	for i := range 3 {
		slope[i] = (q(f.moved(i, diffStep)) - q(f.moved(i, -diffStep))) / (2 * diffStep)
	}
	v := 0.0
	for i := range 3 {
		for k := range 3 {
			v += slope[i] * f.Covariance[i][k] * slope[k]
		}
	}
	return Estimate{q(f.Params), math.Sqrt(math.Max(0, v))}
}

func (f *Fit) moved(i int, by float64) Params {
	p := f.Params
	*[3]*float64{&p.AG, &p.BG, &p.LnTau}[i] += by
	return p
}

func (f *Fit) mass(p Params, day float64) float64 {
	left, _ := f.law.left(day / p.TauDays())
	return p.AG - p.BG*(1-left)
}

// Mass returns what the bar weighs on a day from the cut, g.
func (f *Fit) Mass(day float64) Estimate {
	return f.Quantity(func(p Params) float64 { return f.mass(p, day) })
}

// Final returns what the bar weighs in the end, A - B, g.
func (f *Fit) Final() Estimate { return f.Quantity(func(p Params) float64 { return p.AG - p.BG }) }

// WeeklyLoss returns what of its mass the bar loses in the week from a day on, percent: 100·(m(t) - m(t+7))/m(t).
func (f *Fit) WeeklyLoss(day float64) Estimate {
	return f.Quantity(func(p Params) float64 { return f.weekly(p, day) })
}

func (f *Fit) weekly(p Params, day float64) float64 {
	m := f.mass(p, day)
	return 100 * (m - f.mass(p, day+weekDays)) / m
}

// Ready returns the day from the cut on which the weekly loss falls to a criterion, percent a week: 0 where it is less from the start.
// Dry by that criterion is all that it means. Its band is too short on the late side; [Fit.Posterior] has the true one. The criterion must be from 0.001 to 100.
func (f *Fit) Ready(criterionPercent float64) (Estimate, error) {
	if err := checkCriterion(criterionPercent); err != nil {
		return Estimate{}, err
	}
	return f.Quantity(func(p Params) float64 { return f.ready(p, criterionPercent) }), nil
}

func checkCriterion(percent float64) error {
	if !(percent >= 0.001 && percent <= 100) {
		return refuse(BadFigure, "ready at a loss of %.4g %% a week: give 0.001 to 100, usual are 0.5 and 1", percent)
	}
	return nil
}

// ready is where the weekly loss, which falls steadily, meets the criterion: between two days that close in on it, by the chord of its logarithm, which is
// nearly straight, the end that stays having half its weight (regula falsi after Illinois); where that gives nothing, by halving.
func (f *Fit) ready(p Params, criterion float64) float64 {
	over := func(day float64) float64 { return math.Log(f.weekly(p, day) / criterion) }
	lo, hi := 0.0, p.TauDays()
	atLo := over(lo)
	if !(atLo > 0) {
		return 0
	}
	atHi := over(hi)
	for atHi > 0 {
		lo, hi, atLo, atHi = hi, 2*hi, atHi, over(2*hi)
	}
	last := lo
	for range mostRounds {
		mid := lo + (hi-lo)*atLo/(atLo-atHi)
		if !(mid > lo && mid < hi) {
			mid = (lo + hi) / 2
		}
		at := over(mid)
		if at == 0 || math.Abs(mid-last) <= 1e-15*hi || mid <= lo || mid >= hi {
			return mid
		}
		if at > 0 {
			lo, atLo = mid, at
			if last < mid {
				atHi /= 2
			}
		} else {
			hi, atHi = mid, at
			if last > mid {
				atLo /= 2
			}
		}
		last = mid
	}
	return last
}

// LeftDays is how many days a ready day is after the last weighing, 0 where it is past; without weighings, after the cut.
func (f *Fit) LeftDays(readyDay float64) float64 { return math.Max(0, readyDay-f.LastDay()) }

// LastDay is the day of the last weighing; 0 without any.
func (f *Fit) LastDay() float64 {
	if len(f.Weighings) == 0 {
		return 0
	}
	return f.Weighings[len(f.Weighings)-1].Day
}

// Residuals are what each weighing is over the law, g, by day.
func (f *Fit) Residuals() []float64 {
	out := make([]float64, len(f.Weighings))
	for i, w := range f.Weighings {
		out[i] = w.G - f.mass(f.Params, w.Day)
	}
	return out
}
