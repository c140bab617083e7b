package clock

import (
	"math"

	"pourbench/chem"
)

// course is what a run of the model found.
type course struct {
	at     [chem.Stages]float64 // min
	kelvin [chem.Stages]float64
	ok     [chem.Stages]bool
	end    float64 // min, where the run stopped: stiff was reached, or the time asked for
	dose   float64 // there
	rate   float64 // of the dose there, 1/min
}

// follow takes a jug at a speed Λ to the minute until, or to stiff where that comes first. Every leg starts afresh, so no step
// crosses a switch. The slowing of a batter beyond stiff is left out: it cannot change a stage.
func (l law) follow(s schedule, pace, until float64) course {
	return l.followToStage(s, pace, until, chem.Stiff)
}

// followToStage is follow, to the stage last where that comes first. What shows light trace is an emulsion, whatever the fineness says:
// so emulsion is never after light.
func (l law) followToStage(s schedule, pace, until float64, last chem.Stage) course {
	w := walk{law: l, pace: pace, marking: true}
	for s := range w.marks {
		w.marks[s] = l.dose(stageX(chem.Stage(s)))
	}
	w.stop = w.marks[last]
	c := w.follow(s, until)
	if c.ok[chem.Light] && !(c.ok[chem.Emulsion] && c.at[chem.Emulsion] <= c.at[chem.Light]) {
		c.at[chem.Emulsion], c.kelvin[chem.Emulsion], c.ok[chem.Emulsion] = c.at[chem.Light], c.kelvin[chem.Light], true
	}
	return c
}

// followTo is follow without noting the stages, and with another dose to stop at.
func (l law) followTo(s schedule, pace, until, stop float64) course {
	w := walk{law: l, pace: pace, stop: stop}
	return w.follow(s, until)
}

func (w *walk) follow(s schedule, until float64) course {
	w.dose, w.kelvin = w.law.dose(s.startX), s.startK
	for i := range s.legs {
		g := &s.legs[i]
		if i > 0 && (g.from >= until || w.dose >= w.stop) {
			break
		}
		w.enter(g)
		w.through(math.Min(g.to, until))
	}
	w.out.dose, w.out.rate = w.dose, w.slope.dose
	return w.out
}

// point is the state that is integrated: the dose, and q, the temperature beyond what the reaction alone would give. In q the heat
// balance is exact without losses, and smooth with them.
type point struct{ dose, q float64 }

// walk is one run under way.
type walk struct {
	law
	leg    *leg
	pace   float64
	stop   float64
	dose   float64
	kelvin float64
	slope  point   // at the end of the last step
	baseK  float64 // temperature where the leg began
	baseX  float64 // conversion there
	out    course

	marking bool
	marks   [chem.Stages]float64 // doses of the stages; emulsion's is not used

	gelK          float64 // T_gel; 0: the slowing beyond stiff is left out
	loose         float64 // how much more than for a stage a step may err; 0: no more
	peaking       bool
	peakFrom      float64 // min from which the warmest is looked for
	peakK, peakAt float64
}

// enter starts a leg, with its jump of conversion, if any.
func (w *walk) enter(g *leg) {
	w.leg = g
	w.baseX, w.baseK = w.conversion(w.dose), w.kelvin
	if g.jump > 0 {
		x := math.Min(w.baseX+g.jump, 1-1e-9)
		w.kelvin += g.riseK * (x - w.baseX)
		w.baseX, w.baseK, w.dose = x, w.kelvin, w.law.dose(x)
	}
	w.slope = w.rates(g.from, point{dose: w.dose})
	if w.marking {
		w.markAtOnce()
	}
}

// temperature of the batter in this leg.
func (w *walk) temperature(x, q float64) float64 {
	return w.baseK + w.leg.riseK*(x-w.baseX) + q
}

// rates is the right-hand side of the model: trace model 2.1 with X replaced by the dose.
func (w *walk) rates(t float64, p point) point {
	x := w.conversion(p.dose)
	kelvin := w.temperature(x, p.q)
	fine := 1 - w.leg.coarseAt(w.law, t)*math.Exp(-x/w.soapX)
	warm := math.Exp(-w.activeJ / gasJ * (1/kelvin - 1/refK))
	d := point{
		dose: w.pace * w.leg.speed * warm * (w.coarse + (1-w.coarse)*fine) * w.setting(x, kelvin),
		q:    w.leg.blendPerK - w.leg.lossPerMin*(kelvin-w.leg.airK),
	}
	if kelvin >= boilK && !w.peaking {
		made := w.leg.riseK * d.dose * (1 + w.r*x) * (1 - x) / (1 + w.r)
		d.q = math.Min(d.q, -made)
	}
	return d
}
