package clock

import (
	"math"
	"sort"

	"pourbench/chem"
)

// reference is the model of trace model 2.1 written down as it stands there, in X, E and T, with a fixed-step RK4 that starts afresh
// at every switch and places a crossing by halving the step. It shares the rate constants with the clock and nothing else.
type reference struct {
	law
	b    Batter
	j    Jug
	pace float64
	step float64 // min
}

type state struct{ x, e, k float64 }

// stages gives the minute of every stage up to an horizon, +Inf where it is not reached by then.
func (r reference) stages(horizon float64) [chem.Stages]float64 {
	var at [chem.Stages]float64
	for s := range at {
		at[s] = math.Inf(1)
	}
	y := state{x: r.ffaSoap * r.b.ffa(), k: r.b.StartC + zeroC}
	r.cross(&at, 0, 0, y)
	edges := r.edges(horizon)
	for i := 1; i < len(edges); i++ {
		from, to := edges[i-1], edges[i]
		n := math.Ceil((to - from) / r.step)
		h := (to - from) / n
		for k := range int(n) {
			t := from + float64(k)*h
			r.cross(&at, t, h, y)
			if y = r.rk4(t+h/2, y, h); y.x > 0.081 {
				return at
			}
		}
	}
	return at
}

func (r reference) edges(horizon float64) []float64 {
	out := []float64{0, r.b.SplitMin, horizon}
	for _, u := range r.b.Bursts {
		out = append(out, u.AtMin, u.AtMin+u.S/60)
	}
	for _, s := range r.j.Scents {
		out = append(out, s.AtMin)
	}
	sort.Float64s(out)
	unique := out[:1]
	for _, t := range out {
		if t > unique[len(unique)-1] && t <= horizon {
			unique = append(unique, t)
		}
	}
	return unique
}

func (r reference) rk4(inside float64, y state, h float64) state {
	add := func(y, d state, c float64) state { return state{y.x + c*d.x, y.e + c*d.e, y.k + c*d.k} }
	k1 := r.slope(inside, y)
	k2 := r.slope(inside, add(y, k1, h/2))
	k3 := r.slope(inside, add(y, k2, h/2))
	k4 := r.slope(inside, add(y, k3, h))
	y = add(y, k1, h/6)
	y = add(y, k2, h/3)
	y = add(y, k3, h/3)
	return add(y, k4, h/6)
}

// slope is the right-hand side; the switches are read at a minute inside the step.
func (r reference) slope(inside float64, y state) state {
	split := inside > r.b.SplitMin
	fraction, c, phi := 1.0, r.b.Concentration, 1.0
	if split {
		fraction, c = r.j.Fraction, r.b.jugConcentration(r.j)
		for _, s := range r.j.Scents {
			if inside > s.AtMin {
				phi *= math.Exp(s.LoadPercent / s.RefLoadPercent * s.LnFactor)
			}
		}
	}
	blending := false
	for _, u := range r.b.Bursts {
		blending = blending || (!split && inside > u.AtMin && inside < u.AtMin+u.S/60)
	}
	oil := r.b.OilG / 1000 * fraction
	mol := oil * r.b.SapKOHMgG / 56.106 * (1 - r.b.Superfat)
	capacity := oil*r.oilJ + 0.040*mol/c*r.lyeJ
	rate := r.pace * math.Exp(-r.activeJ/gasJ*(1/y.k-1/308.15)) * r.b.composition() * math.Pow(c/0.33, 1.5) *
		(1 - r.b.Superfat) / 0.95 * phi * (r.coarse + (1-r.coarse)*(1-(1-y.e)*math.Exp(-y.x/r.soapX)))
	for _, a := range r.b.Additives {
		if a.AtPercent > 0 {
			rate *= math.Pow(a.Factor, a.Percent/a.AtPercent)
		} else {
			rate *= a.Factor
		}
	}
	e, watt := math.Max(0, r.handFine-y.e)/r.handMin, 0.0
	if blending {
		rate *= r.blendGain
		e, watt = (1-y.e)/(r.blendMin*math.Sqrt(oil)), r.blendW
	}
	x := rate * r.k0 * (1 + r.r*y.x) * (1 - y.x)
	heat := mol*r.heatJ*x + 60*watt - 60*r.b.cooling()*math.Pow(oil, 2.0/3)*(y.k-r.b.RoomC-zeroC)
	return state{x, e, heat / capacity}
}

// cross looks for stages within a step from t, by halving the step.
func (r reference) cross(at *[chem.Stages]float64, t, h float64, y state) {
	for s := range at {
		if !math.IsInf(at[s], 1) || r.lack(chem.Stage(s), r.rk4(t+h/2, y, h)) > 0 {
			continue
		}
		lo, hi := 0.0, h
		for range 40 {
			mid := (lo + hi) / 2
			if r.lack(chem.Stage(s), y) > 0 && r.lack(chem.Stage(s), r.rk4(t+h/2, y, mid)) > 0 {
				lo = mid
			} else {
				hi = mid
			}
		}
		at[s] = t + hi
	}
}

func (r reference) lack(s chem.Stage, y state) float64 {
	if s == chem.Emulsion { // or light, X = 0.012, where that comes first
		return math.Min((1-y.e)*math.Exp(-y.x/r.soapX)-0.25, 0.012-y.x)
	}
	return stageX(s) - y.x
}
