package clock

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

func TestABatchOutsideTheModelIsRefusedWithItsReason(t *testing.T) {
	// Trace model section 6, and numbers that cannot be. Each also has the last value that is taken.
	set := func(f func(*Batter, float64)) func(*Batter, float64) { return f }
	for _, c := range []struct {
		reason    string
		change    func(*Batter, float64)
		bad, good float64
	}{
		{"KOH", set(func(b *Batter, v float64) { b.KOHShare = v }), .05, 0},
		{"lye concentration", set(func(b *Batter, v float64) { b.Concentration = v }), .219, .22},
		{"lye concentration", set(func(b *Batter, v float64) { b.Concentration = v }), .501, .50},
		{"superfat", set(func(b *Batter, v float64) { b.Superfat = v }), -.021, -.02},
		{"superfat", set(func(b *Batter, v float64) { b.Superfat = v }), .251, .25},
		{"batter temperature", set(func(b *Batter, v float64) { b.StartC = v }), 19.9, 20},
		{"batter temperature", set(func(b *Batter, v float64) { b.StartC = v }), 65.1, 65},
		{"hard fats set", set(func(b *Batter, v float64) { b.CloudKnown, b.CloudC = true, v }), 43.1, 43},
		{"known fatty acids", set(func(b *Batter, v float64) { b.Profiled = v }), .79, .80},
		{"wax", set(func(b *Batter, v float64) { b.WaxFraction = v }), .051, .05},
		{"castor", set(func(b *Batter, v float64) { b.CastorFraction = v }), .151, .15},
		{"unstirred", set(func(b *Batter, v float64) { b.Still = v > 0 }), 1, 0},
		{"mass of oil", set(func(b *Batter, v float64) { b.OilG = v }), 0, 10},
		{"saponification", set(func(b *Batter, v float64) { b.SapKOHMgG = v }), -190, 190},
		{"free fatty acid", set(func(b *Batter, v float64) { b.FFA = v }), -.01, .02},
		{"split", set(func(b *Batter, v float64) { b.SplitMin = v }), 361, 360},
		{"burst", set(func(b *Batter, v float64) { b.Bursts = []Burst{{v, 20}} }), -1, 0},
		{"speed factor of honey", set(func(b *Batter, v float64) { b.Additives = []Additive{{Name: "honey", Factor: v}} }), 0, 1.2},
		{"profile", set(func(b *Batter, v float64) { b.Profile[chem.C18] = v }), -.1, .1},
		{"not a finite number", set(func(b *Batter, v float64) { b.RoomC = v }), math.NaN(), 20},
	} {
		b := batter(balanced(), 35, Burst{0, 20})
		c.change(&b, c.good)
		if _, err := New(b, Hand{}); err != nil {
			t.Errorf("%s %v: refused: %v", c.reason, c.good, err)
		}
		c.change(&b, c.bad)
		got, err := New(b, Hand{})
		if err == nil || got != nil || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s %v: %v", c.reason, c.bad, err)
		}
	}
}

func TestAJugOutsideTheModelIsRefusedWithItsReason(t *testing.T) {
	c := must(t, batter(balanced(), 35, Burst{0, 20}), Hand{})
	with := func(change func(*Scent)) Jug {
		s := scent(2, 3, 2)
		change(&s)
		return Jug{Fraction: .5, Scents: []Scent{s}}
	}
	for _, q := range []struct {
		reason    string
		bad, good Jug
	}{
		{"part of the batter", Jug{}, Jug{Fraction: 1}},
		{"with the water from its colourant", Jug{Fraction: .1, ExtraWaterG: 40}, Jug{Fraction: .1, ExtraWaterG: 5}},
		{"over 4 times", with(func(s *Scent) { s.LoadPercent = 12.1 }), with(func(s *Scent) { s.LoadPercent = 12 })},
		{"rices", with(func(s *Scent) { s.Rices = true }), with(func(s *Scent) { s.Rices, s.LoadPercent = true, 0 })},
		{"test load", with(func(s *Scent) { s.RefLoadPercent = 0 }), with(func(s *Scent) { s.RefLoadPercent = 2 })},
		{"load", with(func(s *Scent) { s.LoadPercent = -1 }), with(func(s *Scent) { s.LoadPercent = 0 })},
		{"jump", with(func(s *Scent) { s.JumpX = .07 }), with(func(s *Scent) { s.JumpX = .06 })},
		{"burst", Jug{Fraction: 1, Bursts: []Burst{{3, -1}}}, Jug{Fraction: 1, Bursts: []Burst{{3, 10}}}},
	} {
		if f := c.Forecast(q.good); f.Refusal != "" {
			t.Errorf("%s: refused: %s", q.reason, f.Refusal)
		}
		f := c.Forecast(q.bad)
		if !strings.Contains(f.Refusal, q.reason) || f.Stages != [chem.Stages]Time{} || f.Sigma != 0 {
			t.Errorf("%s: %+v", q.reason, f)
		}
		if _, ok := f.ChancePast(chem.Light, 5); ok {
			t.Errorf("%s: has a chance", q.reason)
		}
	}
}

func TestAHandThatDoesNotHoldTogetherIsRefused(t *testing.T) {
	pace := []Trait{{Kind: PaceTrait}}
	for name, h := range map[string]Hand{
		"no covariance":  {Traits: pace},
		"ragged":         {Traits: pace, Covariance: [][]float64{{1, 2}}},
		"NaN mean":       {Traits: []Trait{{Kind: PaceTrait, Mean: math.NaN()}}, Covariance: [][]float64{{1}}},
		"NaN covariance": {Traits: pace, Covariance: [][]float64{{math.NaN()}}},
		"NaN noise":      {Noise: math.NaN()},
		"freedom":        {Freedom: -1},
	} {
		if _, err := New(batter(balanced(), 35), h); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func TestCautionsNameWhatTheyAreAbout(t *testing.T) {
	base := func(change func(*Batter)) Batter {
		b := batter(balanced(), 35, Burst{0, 20})
		change(&b)
		return b
	}
	plain := Jug{Fraction: .5}
	load := func(percent float64) Jug { return Jug{Fraction: .5, Scents: []Scent{scent(2, percent, 2)}} }
	ricing := load(3)
	ricing.Scents[0].Rices = true
	for _, c := range []struct {
		kind CautionKind
		b    Batter
		j    Jug
		want bool
	}{
		{StartingGuess, base(func(*Batter) {}), plain, true},
		{FalseTrace, base(func(b *Batter) { b.CloudKnown, b.CloudC = true, 32.1 }), plain, true},
		{FalseTrace, base(func(b *Batter) { b.CloudKnown, b.CloudC = true, 20 }), plain, false},
		{FalseTrace, base(func(b *Batter) { b.CloudKnown, b.CloudC, b.RoomC, b.Cooling = true, 31.9, 0, 5 }), plain, true}, // cools into it
		{Heats, base(func(b *Batter) { b.Additives = []Additive{{Name: "honey", Factor: 1.2, SD: .2, Heat: true}} }), plain, true},
		{AlcoholIn, base(func(b *Batter) { b.Additives = []Additive{{Name: "beer", Factor: 1.5, SD: .2, Alcohol: true}} }), plain, true},
		{HighLoad, base(func(*Batter) {}), load(6.1), true},
		{HighLoad, base(func(*Batter) {}), load(6), false},
		{OffLoad, base(func(*Batter) {}), load(.8), true},
		{OffLoad, base(func(*Batter) {}), load(3), false},
		{OffLoad, base(func(*Batter) {}), load(.9), false}, // 0.3 of the 3 % it was tested at, to 1.7 of it
		{OffLoad, base(func(*Batter) {}), load(.89), true},
		{OffLoad, base(func(*Batter) {}), load(5.09), false},
		{OffLoad, base(func(*Batter) {}), load(5.11), true},
		{Ricing, base(func(*Batter) {}), ricing, true},
		{HandStirred, base(func(b *Batter) { b.Bursts = nil }), plain, true},
		{HandStirred, base(func(*Batter) {}), plain, false},
		{FarLye, base(func(b *Batter) { b.Concentration = .44 }), plain, true},
		{FarSize, base(func(b *Batter) { b.OilG = 150 }), plain, true},
		{UnknownFFA, base(func(b *Batter) { b.CrudeOil = true }), plain, true},
		{LateBurst, base(func(b *Batter) { b.SplitMin = .1 }), plain, true},
	} {
		if got := warns(must(t, c.b, Hand{}).Forecast(c.j), c.kind); got != c.want {
			t.Errorf("%s: %v, want %v", c.kind, got, c.want)
		}
	}
}

func TestWideningsAddInQuadrature(t *testing.T) {
	// Trace model section 6.
	j := Jug{Fraction: 1}
	at := func(change func(*Batter)) float64 {
		b := batter(balanced(), 35, Burst{0, 20})
		b.Concentration = .33
		change(&b)
		return must(t, b, Hand{}).sigma(j)
	}
	plain := at(func(*Batter) {})
	for name, c := range map[string]struct {
		change func(*Batter)
		want   float64
	}{
		"hand stirred": {func(b *Batter) { b.Bursts = nil }, .25},
		"small batch":  {func(b *Batter) { b.OilG = 199 }, .04},
		"large batch":  {func(b *Batter) { b.OilG = 5001 }, .04},
		"crude oil":    {func(b *Batter) { b.CrudeOil = true }, .16},
		"known FFA":    {func(b *Batter) { b.FFA = .01 }, 0},
		"usual FFA":    {func(b *Batter) { b.CrudeOil, b.FFA = true, .01 }, .16},
		"honey":        {func(b *Batter) { b.Additives = []Additive{{Name: "honey", Factor: 1.2, SD: .2, Heat: true}} }, .08},
		"beer":         {func(b *Batter) { b.Additives = []Additive{{Name: "beer", Factor: 1.5, SD: .2, Alcohol: true}} }, .08},
		"weak lye":     {func(b *Batter) { b.Concentration = .26 }, .04 + square(.5*math.Log(.26/.33))},
	} {
		near(t, name, square(at(c.change))-square(plain), c.want, 1e-12)
	}
	near(t, "measured", square(plain)-square(at(func(b *Batter) { b.Measured = true })),
		(4-.25)*square(47000/(gasJ*308.15*308.15)), 1e-12)
}

// wild draws numbers nobody should give.
func wild(t *rapid.T, name string) float64 {
	return rapid.OneOf(
		rapid.SampledFrom([]float64{0, -1, 1, .33, 35, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)}),
		rapid.Float64(), rapid.Float64Range(0, 1), rapid.Float64Range(-10, 400),
	).Draw(t, name)
}

func TestHostileNumbersAreRefusedAndNeverBecomeNaN(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := batter(balanced(), 35, Burst{0, 20})
		j := Jug{Fraction: .5, Scents: []Scent{scent(2, 3, 2)}}
		b.Additives = []Additive{{Name: "a", Factor: 1, SD: .2, Percent: 2, AtPercent: 2, Heat: true, Alcohol: true}}
		j.Bursts = []Burst{{3, 5}}
		fields := []*float64{
			&b.OilG, &b.Profile[chem.C18x1], &b.Profiled, &b.WaxFraction, &b.CastorFraction, &b.SapKOHMgG, &b.Superfat, &b.Concentration,
			&b.KOHShare, &b.StartC, &b.RoomC, &b.FFA, &b.CloudC, &b.SplitMin, &b.Cooling, &b.Bursts[0].AtMin, &b.Bursts[0].S,
			&b.Additives[0].Factor, &b.Additives[0].SD, &b.Additives[0].Percent, &b.Additives[0].AtPercent, &j.Fraction, &j.ExtraWaterG, &j.Cooling, &j.Bursts[0].AtMin, &j.Bursts[0].S,
			&j.Scents[0].LnFactor, &j.Scents[0].SD, &j.Scents[0].RefLoadPercent, &j.Scents[0].LoadPercent, &j.Scents[0].AtMin,
			&j.Scents[0].JumpX,
		}
		b.CloudKnown = rapid.Bool().Draw(t, "cloud known")
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			*rapid.SampledFrom(fields).Draw(t, "field") = wild(t, "value")
		}
		c, err := New(b, Hand{})
		if err != nil {
			return
		}
		f := c.Forecast(j)
		if f.Refusal != "" {
			return
		}
		sound(t, f)
	})
}

// sound fails on any number of a forecast that is not one.
func sound(t *rapid.T, f Forecast) {
	finite := func(vs ...float64) {
		for _, v := range vs {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", f)
			}
		}
	}
	finite(f.Sigma, f.Pace)
	for s, at := range f.Stages {
		finite(at.Low, at.Mid, at.High, f.StageC[s])
		p, ok := f.ChancePast(chem.Stage(s), 7)
		if finite(p); !ok || p < 0 || p > 1 {
			t.Fatalf("chance %v, %v", p, ok)
		}
	}
}
