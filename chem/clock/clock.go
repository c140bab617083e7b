// Package clock predicts when the batter of a cold-process soap reaches each stage of trace, jug by jug, with a band.
//
// The shape of the model is well supported: soap formed speeds up its own making, stirring and droplet size carry it,
// warmth follows Arrhenius, the reaction heats the batter. Its absolute numbers are tuned to what makers commonly
// report; nobody has published a usable conversion-against-time curve for a soap batter. So every time comes with an
// 80 % band, which before any log is about a factor of two either way, and outside its range the clock refuses and says why.
// A maker's logs narrow the band through a [Hand].
//
// The use is: [New] for a batch, [Clock.Forecast] for each jug, then [Forecast.ChancePast]. A [Clock] and a [Forecast] never
// change after they are made and may be shared between goroutines. Nothing here says that soap is safe, cured or fully reacted.
//
// The model, its evidence and its limits are written down in MODEL.md beside this file; "trace model 2.1" in a comment is a section of it.
//
// Units: g, °C (K inside), min from the moment all of this batch's lye is in; fractions, not percent, unless a name says so.
package clock

import (
	"math"
	"slices"

	"pourbench/chem"
)

// Clock is one batch, worked out up to its split and ready to forecast its jugs.
type Clock struct {
	law    law
	batter Batter
	hand   Hand
	pace   float64 // Λ, the hand's median speed for this recipe
	z      float64 // 0.90 quantile of the hand's distribution
	common schedule
}

// Time is when a stage is reached, min from this batch's lye-in: the median and the ends of the 80 % band. Low is the early
// end. Where an OK field is false the stage is not reached within [HorizonMin] and the number is 0 and means nothing.
type Time struct {
	Low, Mid, High       float64
	LowOK, MidOK, HighOK bool
}

// Forecast is what the clock says of one jug.
type Forecast struct {
	Stages      [chem.Stages]Time
	StageC      [chem.Stages]float64 // batter temperature as the median reaches the stage, °C; only where MidOK
	Sigma       float64              // sd of ln speed, logs and widenings included
	Pace        float64              // median speed against the model's standard, from the logs; 1 before any
	Pours       int                  // logged pours the hand has learnt from
	RecipePours int                  // of those, of this recipe
	Refusal     string               // why there are no times; empty: there are
	Cautions    []Caution            // also filled in beside a refusal, where they explain it

	clock *Clock
	sched schedule
}

// New works one batch out up to its split. The error is the reason the clock refuses the batch: a number outside the model's
// range or one that cannot be; then the Clock is nil. The zero Hand is a maker who has logged nothing; the
// slices of another must not change while the Clock is in use.
func New(b Batter, h Hand) (*Clock, error) {
	return newClock(standardLaw(), b, h)
}

func newClock(l law, b Batter, h Hand) (*Clock, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	if err := h.check(); err != nil {
		return nil, err
	}
	b.Bursts, b.Additives = slices.Clone(b.Bursts), slices.Clone(b.Additives)
	c := &Clock{law: l, batter: b, hand: h, pace: math.Exp(h.meanPace(b.Recipe)), z: h.quantile90()}
	c.common = l.commonSchedule(b)
	return c, nil
}

// Forecast predicts one jug of the batch, from lye-in: through the common batter to the split, then on its own. A jug outside
// the model's range comes back with a Refusal and no times.
func (c *Clock) Forecast(j Jug) Forecast {
	f := Forecast{
		Pace: c.pace, Pours: c.hand.Pours, RecipePours: c.hand.recipePours(c.batter.Recipe),
		Cautions: c.cautions(j), clock: c,
	}
	if err := c.checkJug(j); err != nil {
		f.Refusal = err.Error()
		return f
	}
	f.Sigma = c.sigma(j)
	f.sched = c.jugSchedule(j)
	mid := c.law.follow(f.sched, c.pace, HorizonMin)
	low := c.law.follow(f.sched, c.pace*math.Exp(c.z*f.Sigma), HorizonMin)
	high := c.law.follow(f.sched, c.pace*math.Exp(-c.z*f.Sigma), HorizonMin)
	for s := range f.Stages {
		f.Stages[s] = Time{
			Low: low.at[s], LowOK: low.ok[s], Mid: mid.at[s], MidOK: mid.ok[s], High: high.at[s], HighOK: high.ok[s],
		}
		if mid.ok[s] {
			f.StageC[s] = mid.kelvin[s] - zeroC
		}
	}
	c.emulsionBand(&f)
	f.Cautions = append(f.Cautions, c.setting(&f)...)
	return f
}

// TraceIndex is how far the jug has come at that minute, at the median speed: 0 at lye-in without soap, 1 at emulsion, then 2 to
// 5 from light to stiff, where it stays. It is an ordinal scale, linear between stages in the model's own clock, and no
// viscosity. The second result is false for a refused jug and for a minute that is not from 0 to [HorizonMin].
func (f Forecast) TraceIndex(minute float64) (float64, bool) {
	if f.clock == nil || f.Refusal != "" || !(minute >= 0 && minute <= HorizonMin) {
		return 0, false
	}
	l := f.clock.law
	end := l.follow(f.sched, f.clock.pace, minute)
	below := 0.0
	for s := range chem.Stages {
		mark := l.dose(stageX(chem.Stage(s)))
		if end.dose < mark {
			return float64(s) + (end.dose-below)/(mark-below), true
		}
		below = mark
	}
	return float64(chem.Stages), true
}
