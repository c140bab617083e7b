package clock

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestGelBeginsWhereTheModelPutsIt(t *testing.T) {
	// Trace model 2.1: T_gel = 71 + (c - 0.33)·16/0.07, held to 55 and 100 °C.
	for c, want := range map[float64]float64{.25: 55, .26: 55, .295: 63, .33: 71, .365: 79, .40: 87, .46: 100, .50: 100} {
		near(t, "gel", GelC(c), want, 1e-9)
	}
}

func TestALoafThatLosesNothingComesToItsAdiabaticRise(t *testing.T) {
	// Trace model 4.4: 50, 57 and 61 K for all of the alkali at 25, 33 and 40 %. From 30 °C that is under boiling.
	for c, rise := range map[float64]float64{.25: 50, .33: 57, .40: 61} {
		b := batter(balanced(), 30, Burst{0, 30})
		b.Concentration, b.RoomC, b.FFA, b.Cooling = c, 30, 1e-9, 1e-9
		h := heat(t, b, Bed{Loaf: Jug{Fraction: 1}, AirC: 30, Cooling: 1e-9, HalfMM: 40})
		// the blender's 30 s at 60 W bring 1800 J to about 3.2 kJ/K: half a kelvin more
		near(t, "warmest", h.Mid, 30+rise+.55, .6)
		near(t, "the edge of a loaf that loses nothing", h.EdgeC, h.Mid, 1e-6)
	}
}

func heat(t rapid.TB, b Batter, bed Bed) Heat {
	t.Helper()
	c, err := New(b, Hand{})
	if err != nil {
		t.Fatal(err)
	}
	h, err := c.Heat(bed)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// loafPeak follows a loaf by the equations of trace model 2.1 as they are written, fixed steps of a twentieth of a minute by the
// midpoint rule, from an emulsion (E = 1) that is in its bed at once. It knows nothing of the clock's own integrator.
func loafPeak(b Batter, cooling, airC, gelC, pace float64) float64 {
	oil := b.OilG / 1000
	mol := oil * b.SapKOHMgG / 56.106 * (1 - b.Superfat)
	capacity := oil*2000 + 0.040*mol/b.Concentration*3400
	x, k, best := 0.30*b.FFA, b.StartC+273.15, 0.0
	slope := func(x, k float64) (dx, dk float64) {
		d := 1.0
		if x > 0.080 {
			set := 0.15 + 0.85*math.Exp(-(x-0.080)/0.05)
			d = set + (1-set)/(1+math.Exp(-(k-273.15-gelC)/1.0))
		}
		rate := pace * math.Exp(-47000/8.314462618*(1/k-1/308.15)) * b.composition() * math.Pow(b.Concentration/0.33, 1.5) * (1 - b.Superfat) / 0.95 * d
		dx = rate * 0.00205 * (1 + 15*x) * (1 - x)
		dk = (mol*55000*dx - 60*cooling*math.Pow(oil, 2.0/3)*(k-273.15-airC)) / capacity
		if k >= 373.15 {
			dk = math.Min(dk, 0)
		}
		return dx, dk
	}
	const h = 0.05
	for range int(24 * 60 / h) {
		best = math.Max(best, k)
		dx, dk := slope(x, k)
		dx, dk = slope(x+dx*h/2, k+dk*h/2)
		x, k = x+dx*h, k+dk*h
	}
	return best - 273.15
}

func TestALoafIsFollowedAsTheEquationsSay(t *testing.T) {
	gelled := 0
	for _, c := range []struct{ start, concentration, cooling, air float64 }{
		{28, .33, .35, 22}, {38, .33, .35, 22}, {38, .33, .10, 22}, {38, .28, .10, 22}, {33, .40, .10, 20}, {48, .33, .35, 5}, {55, .36, .35, 22},
	} {
		b := batter(balanced(), c.start)
		b.Concentration, b.FFA, b.SplitMin, b.Cooling = c.concentration, .003, 0, c.cooling
		l := standardLaw()
		l.coarse = 1 // G = 1: fine from the start, as the other reckoning has it
		clock, err := newClock(l, b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		bed := Bed{Loaf: Jug{Fraction: 1}, AirC: c.air, Cooling: c.cooling}
		h, err := clock.Heat(bed)
		if err != nil {
			t.Fatal(err)
		}
		want := loafPeak(b, c.cooling, c.air, 71+(c.concentration-.33)*16/.07, 1)
		near(t, "warmest", h.Mid, want, .1)
		if want > h.GelC {
			gelled++
		}
		sigma := clock.sigma(bed.Loaf)
		near(t, "warmest of the slow tenth", h.Low, loafPeak(b, c.cooling, c.air, h.GelC, math.Exp(-1.28155*sigma)), .1)
		near(t, "warmest of the quick tenth", h.High, loafPeak(b, c.cooling, c.air, h.GelC, math.Exp(1.28155*sigma)), .1)
	}
	if gelled < 2 || gelled > 5 {
		t.Errorf("%d of 7 loaves gel: the test does not look at both sides", gelled)
	}
}

func TestTheEdgeStandsUnderTheMiddleAsInASlab(t *testing.T) {
	// A slab that makes heat evenly (Carslaw and Jaeger, Conduction of Heat in Solids): its middle stands Bi/2 of the edge's excess over
	// the air above the edge. Bi = U·L/k with U = 0.35 W/K on 0.09 m², 40 mm and 0.3 W/(m K) is 0.5185.
	b := batter(balanced(), 45, Burst{0, 30})
	thin := heat(t, b, Bed{Loaf: Jug{Fraction: 1}, AirC: 22, FromMin: 20})
	thick := heat(t, b, Bed{Loaf: Jug{Fraction: 1}, AirC: 22, FromMin: 20, HalfMM: 40})
	near(t, "thin", thin.EdgeC, thin.Mid, 1e-9)
	near(t, "the same middle", thick.Mid, thin.Mid, 0)
	near(t, "the middle over the edge", thick.Mid-thick.EdgeC, (thick.EdgeC-22)*.5185/2, .01)
}

func TestMoreOutsideCoolsALoafInProportion(t *testing.T) {
	// Twice the outside of a loaf of 1 kg of oil, 0.09 m², is twice its cooling.
	b := batter(balanced(), 45, Burst{0, 30})
	wide := heat(t, b, Bed{Loaf: Jug{Fraction: 1}, AirC: 22, FromMin: 20, Cooling: .1, AreaM2: .18})
	cool := heat(t, b, Bed{Loaf: Jug{Fraction: 1}, AirC: 22, FromMin: 20, Cooling: .2})
	near(t, "warmest", wide.Mid, cool.Mid, 1e-6)
}

func TestWhatWarmsALoafNeverMakesItGelLess(t *testing.T) {
	// Provable: in dT/dX = ΔT_ad - loss/rate a quicker reaction loses less at every X. The blender and a late bed break it: a quick
	// batter has less of the blender's heat at the same X, and more of its own outside the bed. So neither is here.
	rapid.Check(t, func(t *rapid.T) {
		b := drawBatter(t)
		b.Bursts, b.SplitMin = nil, 0
		b.StartC = rapid.Float64Range(24, 50).Draw(t, "warmth")
		bed := Bed{
			Loaf: Jug{Fraction: rapid.Float64Range(.5, 1).Draw(t, "kept")},
			AirC: rapid.Float64Range(0, 24).Draw(t, "air"), Cooling: rapid.Float64Range(.05, .5).Draw(t, "cooling"), HalfMM: 40,
		}
		was := heat(t, b, bed)
		if was.EdgeC > was.Mid+1e-9 || was.EdgeGels > was.MiddleGels || was.Low > was.Mid+.1 || was.Mid > was.High+.1 || was.High > 100 {
			t.Fatalf("%+v", was)
		}
		for _, q := range []float64{was.MiddleGels, was.EdgeGels} {
			if q < .05 || q > .95 {
				t.Fatalf("a chance of %v", q)
			}
		}
		warm := bed
		warm.AirC += 8
		sugar := b
		sugar.Additives = []Additive{{Name: "sugar", Factor: 1.2, Percent: 2, AtPercent: 2}}
		for name, now := range map[string]Heat{"warmer air": heat(t, b, warm), "sugar": heat(t, sugar, bed)} {
			if now.Mid < was.Mid-.1 || now.MiddleGels < was.MiddleGels-1e-9 {
				t.Fatalf("%s: %+v after %+v", name, now, was)
			}
		}
	})
}

func TestABedOutsideTheModelIsRefused(t *testing.T) {
	c := must(t, batter(balanced(), 35, Burst{0, 20}), Hand{})
	loaf := Jug{Fraction: 1}
	for name, b := range map[string]Bed{
		"no loaf": {}, "NaN air": {Loaf: loaf, AirC: math.NaN()}, "late": {Loaf: loaf, FromMin: 1e6}, "thick": {Loaf: loaf, HalfMM: -1},
		"cooling": {Loaf: loaf, Cooling: math.Inf(1)}, "outside": {Loaf: loaf, AreaM2: -1},
	} {
		if h, err := c.Heat(b); err == nil {
			t.Errorf("%s: %+v", name, h)
		}
	}
}

func BenchmarkHeat(b *testing.B) {
	batch := batter(balanced(), 38, Burst{0, 30})
	batch.SplitMin = 2
	c, err := New(batch, Hand{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := c.Heat(Bed{Loaf: Jug{Fraction: 1}, FromMin: 20, AirC: 22, Cooling: CoolingInsulated, HalfMM: 38}); err != nil {
			b.Fatal(err)
		}
	}
}
