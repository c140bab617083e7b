package clock

import (
	"fmt"
	"math"
)

// refusal says why there is no estimate.
type refusal string

// Error returns the reason.
func (r refusal) Error() string { return "can't estimate this one: " + string(r) }

func refuse(format string, args ...any) error { return refusal(fmt.Sprintf(format, args...)) }

// rule is a number with the range it must lie in, ends included, and what to say if it does not.
type rule struct {
	name      string
	v, lo, hi float64
	shown     string // unit
	scale     float64
	why       string
}

func (r rule) check() error {
	if r.v >= r.lo && r.v <= r.hi {
		return nil
	}
	if math.IsNaN(r.v) || math.IsInf(r.v, 0) {
		return refuse("%s is %v, not a finite number; give one", r.name, r.v)
	}
	return refuse("%s is %.4g%s; %s", r.name, r.v*r.scale, r.shown, r.why)
}

func first(rules []rule) error {
	for _, r := range rules {
		if err := r.check(); err != nil {
			return err
		}
	}
	return nil
}

const (
	tiny = 1e-9 // what must be over 0 must be over this
	huge = 1e9  // what has no end in the model ends here
)

// check refuses what section 6 of the trace model refuses, and numbers that cannot be.
func (b Batter) check() error {
	if b.Still {
		return refuse("unstirred lye under oil stops reacting once a skin of soap has formed; blend it, or stir it")
	}
	if err := first(b.rules()); err != nil {
		return err
	}
	if err := first(b.model()); err != nil {
		return err
	}
	for a, w := range b.Profile {
		if !(w >= 0 && w <= huge) {
			return refuse("fatty acid %d of the profile is %v; a fraction is 0 or more", a, w)
		}
	}
	if b.CloudKnown && b.StartC < b.CloudC-cloudBandC {
		return refuse("the batter at %.3g °C is more than %d °C under the point (about %.3g °C) where its hard fats set, and thickness would not be trace; work warmer",
			b.StartC, cloudBandC, b.CloudC)
	}
	if err := checkBursts(b.Bursts); err != nil {
		return err
	}
	for _, a := range b.Additives {
		if err := a.check(); err != nil {
			return err
		}
	}
	return nil
}

// cloudBandC is how rough the cloud estimate is, °C either way.
const cloudBandC = 8

// rules are what must hold of the numbers themselves.
func (b Batter) rules() []rule {
	return []rule{
		{"the mass of oil", b.OilG, 1, 1e6, " g", 1, "the clock knows batches from a gram to a tonne"},
		{"the saponification value", b.SapKOHMgG, 1, 1000, " mg KOH/g", 1, "an oil has 100 to 300"},
		{"the room", b.RoomC, -30, 60, " °C", 1, "the clock knows rooms from -30 to 60 °C"},
		{"the cloud point", b.CloudC, -100, 200, " °C", 1, "give one from -100 to 200 °C, or none"},
		{"the free fatty acid", b.FFA, 0, 0.25, " %", 100, "the clock knows oils with up to 25 % of it"},
		{"the split", b.SplitMin, 0, HorizonMin, " min", 1, "it must lie from lye-in to six hours after it"},
		{"the cooling", b.Cooling, 0, 1000, " W/K", 1, "it must be 0 or more"},
		{"the profiled part of the oils", b.Profiled, 0, 1 + tiny, " %", 100, "it must lie from 0 to 100 %"},
	}
}

// model are the ranges of the model, trace model section 6.
func (b Batter) model() []rule {
	return []rule{
		{"the KOH share", b.KOHShare, 0, tiny, " %", 100, "the clock knows sodium soap only, neither dual lye nor liquid soap"},
		{"the lye concentration", b.Concentration, 0.22, 0.50, " %", 100, "outside what this model covers, 22 to 50 %"},
		{"the superfat", b.Superfat, -0.02, 0.25, " %", 100, "outside what this model covers, -2 to 25 %"},
		{"the batter temperature", b.StartC, 20, 65, " °C", 1, "outside what this model covers, 20 to 65 °C without heating"},
		{"the part of the oils with known fatty acids", b.Profiled, 0.80 - tiny, 2, " %", 100, "at least 80 % must be known to tell how fast they go"},
		{"the wax and resin in the oils", b.WaxFraction, 0, 0.05 + tiny, " %", 100, "over 5 % they thicken a batter by setting, which is not trace"},
		{"the castor oil in the oils", b.CastorFraction, 0, 0.15 + tiny, " %", 100, "over 15 % is untested"},
	}
}

func checkBursts(bursts []Burst) error {
	for _, u := range bursts {
		if err := first([]rule{
			{"the start of a burst", u.AtMin, 0, huge, " min", 1, "it must be 0 or more after lye-in"},
			{"the length of a burst", u.S, 0, huge, " s", 1, "it must be 0 or more"},
		}); err != nil {
			return err
		}
	}
	return nil
}

func (a Additive) check() error {
	if err := first([]rule{
		{"the speed factor of " + a.Name, a.Factor, 0.01, 100, "", 1, "it must lie from 0.01 to 100"},
		{"the sd of the speed factor of " + a.Name, a.SD, 0, 5, "", 1, "it must lie from 0 to 5"},
		{"the dose of " + a.Name, a.Percent, 0, huge, " %", 1, "it must be 0 or more, percent of oils"},
		{"the dose that the speed factor of " + a.Name + " holds for", a.AtPercent, 0, huge, " %", 1, "it must be 0 or more, percent of oils"},
	}); err != nil {
		return err
	}
	if r := a.Ratio(); a.Factor != 1 && !(r <= mostRatio) {
		return refuse("%s stands at %.3g %% of the oils, %.2g times the dose its effect was stated for; over %d times nothing is known: use less of it",
			a.Name, a.Percent, r, mostRatio)
	}
	return nil
}
