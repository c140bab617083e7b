package clock

import (
	"math"
	"sort"
)

// leg is a stretch of time in which nothing is switched: no blender on or off, no split, no scent.
type leg struct {
	from, to   float64 // min
	blend      bool
	coarse     float64 // 1 − E at from
	tau        float64 // of the emulsion, min
	speed      float64 // (1 + r)·k0·F_c·F_w·F_s·F_a·Φ·B: ×Λ·θ·G is the growth of the dose, 1/min
	riseK      float64 // adiabatic rise of full conversion, K
	lossPerMin float64 // UA/(m·cp), 1/min
	blendPerK  float64 // the blender's heat, K/min
	jump       float64 // conversion added at from
	airK       float64 // of what it loses heat to
}

// schedule is all the legs of a jug from lye-in to the horizon, and the start.
type schedule struct {
	legs   []leg
	startX float64
	startK float64
}

// portion is what a mass of batter is like, whatever is done to it.
type portion struct {
	speed, tau, riseK, lossPerMin, blendPerK, airK float64
}

func (l law) portion(b Batter, fraction, concentration, cooling float64) portion {
	oilKG, mol := b.OilG/1000*fraction, b.naohMol()*fraction
	capacity := oilKG*l.oilJ + 0.040*mol/concentration*l.lyeJ
	p := portion{
		speed:      (1 + l.r) * l.k0 * b.composition() * (1 - b.Superfat) / referenceSuperfat,
		tau:        l.blendMin * math.Sqrt(oilKG),
		riseK:      mol * l.heatJ / capacity,
		lossPerMin: 60 * cooling * math.Pow(oilKG, 2.0/3) / capacity,
		blendPerK:  60 * l.blendW / capacity,
		airK:       b.RoomC + zeroC,
	}
	p.speed *= math.Pow(concentration/referenceConcentration, waterExponent)
	for _, a := range b.Additives {
		p.speed *= math.Exp(a.ln())
	}
	return p
}

// commonSchedule is the batch from lye-in to its split.
func (l law) commonSchedule(b Batter) schedule {
	s := schedule{startX: l.freeSoap(b), startK: b.StartC + zeroC}
	s.extend(l, l.portion(b, 1, b.Concentration, b.cooling()), window{0, b.SplitMin}, blending(b.Bursts), nil)
	return s
}

// jugSchedule is the common batch and then the jug to the horizon. It shares nothing with the common schedule.
func (c *Clock) jugSchedule(j Jug) schedule {
	cooling := j.Cooling
	if cooling == 0 {
		cooling = c.batter.cooling()
	}
	s := c.common
	s.legs = append(make([]leg, 0, len(s.legs)+len(j.Scents)+2*len(j.Bursts)+1), s.legs...)
	p := c.law.portion(c.batter, j.Fraction, c.batter.jugConcentration(j), cooling)
	s.extend(c.law, p, window{c.batter.SplitMin, HorizonMin}, blending(j.Bursts), c.additions(j))
	return s
}

// addition is a scent as the schedule sees it.
type addition struct{ at, ln, jump float64 }

func (c *Clock) additions(j Jug) []addition {
	var out []addition
	for _, s := range j.Scents {
		if s.LoadPercent == 0 {
			continue
		}
		f := s.LnFactor + c.hand.scentShift(s.ID)
		out = append(out, addition{at: math.Max(s.AtMin, c.batter.SplitMin), ln: s.Ratio() * f, jump: s.JumpX})
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].at < out[k].at })
	return out
}

// window is a stretch of time, min.
type window struct{ from, to float64 }

// blending turns bursts into stretches of blending that neither overlap nor touch, in order.
func blending(bursts []Burst) []window {
	all := make([]window, 0, len(bursts))
	for _, b := range bursts {
		if b.S > 0 {
			all = append(all, window{b.AtMin, b.AtMin + b.S/60})
		}
	}
	sort.Slice(all, func(i, k int) bool { return all[i].from < all[k].from })
	out := all[:0]
	for _, w := range all {
		if n := len(out); n > 0 && w.from <= out[n-1].to {
			out[n-1].to = math.Max(out[n-1].to, w.to)
			continue
		}
		out = append(out, w)
	}
	return out
}

// extend appends the legs of one portion over a window.
func (s *schedule) extend(l law, p portion, w window, blending []window, adds []addition) {
	coarse, ln := s.coarseAtEnd(l), 0.0
	for t := w.from; t < w.to; {
		g := leg{from: t, to: w.to, coarse: coarse, tau: l.handMin, riseK: p.riseK, lossPerMin: p.lossPerMin, airK: p.airK}
		for len(adds) > 0 && adds[0].at <= t {
			ln += adds[0].ln
			g.jump += adds[0].jump
			adds = adds[1:]
		}
		if len(adds) > 0 {
			g.to = math.Min(g.to, adds[0].at)
		}
		g.speed = p.speed * math.Exp(ln)
		for _, b := range blending {
			if t >= b.from && t < b.to {
				g.blend, g.to, g.tau, g.blendPerK = true, math.Min(g.to, b.to), p.tau, p.blendPerK
				g.speed *= l.blendGain
			} else if b.from > t {
				g.to = math.Min(g.to, b.from)
			}
		}
		s.legs = append(s.legs, g)
		t, coarse = g.to, g.coarseAt(l, g.to)
	}
}

// coarseAt is 1 - E at a minute.
func (s *schedule) coarseAt(l law, minute float64) float64 {
	coarse := 1.0
	for i := range s.legs {
		if g := &s.legs[i]; g.from <= minute {
			coarse = g.coarseAt(l, math.Min(minute, g.to))
		}
	}
	return coarse
}

func (s *schedule) coarseAtEnd(l law) float64 {
	if len(s.legs) == 0 {
		return 1
	}
	last := &s.legs[len(s.legs)-1]
	return last.coarseAt(l, last.to)
}

// coarseAt is 1 − E at a minute of the leg: the fineness E does not depend on the reaction, so it is exact. The blender makes it
// finer without end, the hand up to handFine; it never falls back.
func (g *leg) coarseAt(l law, t float64) float64 {
	if g.blend {
		return g.coarse * math.Exp(-(t-g.from)/g.tau)
	}
	rest := 1 - l.handFine
	if g.coarse <= rest {
		return g.coarse
	}
	return rest + (g.coarse-rest)*math.Exp(-(t-g.from)/g.tau)
}
