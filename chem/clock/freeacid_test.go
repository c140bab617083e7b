package clock

import (
	"math"
	"strings"
	"testing"

	"pourbench/chem"
)

// minuteTo is the closed form of trace model 4.1, written out: the minute at which an isothermal batter at 35 °C comes to a conversion,
// from the soap of its free acid, X0 = 0.30·FFA, at the reference rate 0.00205·f per minute and r = 15.
func minuteTo(x, ffa, f float64) float64 {
	k0 := 0.00205 * f
	k1, x0 := 15*k0, 0.30*ffa
	return math.Log((k0+k1*x)*(1-x0)/((k0+k1*x0)*(1-x))) / (k0 + k1)
}

func TestFreeAcidStartsTheBatterOnItsSoap(t *testing.T) {
	// Isothermal and fine from the start, the clock must give the closed form: default 0.3 %, then 1, 3, 5 and 10 % free acid.
	for _, ffa := range []float64{.003, .01, .03, .05, .10} {
		b := batter(balanced(), 35)
		b.RoomC, b.FFA, b.Cooling = 35, ffa, 1e-9
		l := standardLaw()
		l.coarse, l.heatJ = 1, 1e-9
		c, err := newClock(l, b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		f := c.Forecast(Jug{Fraction: 1})
		for s, x := range map[chem.Stage]float64{chem.Light: .012, chem.Medium: .025, chem.Thick: .045, chem.Stiff: .080} {
			want := math.Max(0, minuteTo(x, ffa, b.composition())) // 5 % and more begin past light
			near(t, s.String(), f.Stages[s].Mid, want, 1e-4)
		}
	}
}

func TestSoapOfFreeAcidIsNoTrace(t *testing.T) {
	// X0 = 0.30·FFA against the stages' 0.012, 0.025, 0.045 and 0.080: 4, 8.33, 15 and 26.7 % free acid.
	for _, c := range []struct {
		ffa  float64
		want chem.Stage
		ok   bool
	}{
		{0, 0, false},
		{.0399, 0, false},
		{.0401, chem.Light, true},
		{.0834, chem.Medium, true},
		{.10, chem.Medium, true},
		{.1501, chem.Thick, true},
		{.2668, chem.Stiff, true},
	} {
		b := batter(balanced(), 50, Burst{0, 20})
		b.FFA = c.ffa
		got, ok := b.StageAtLyeIn()
		if got != c.want || ok != c.ok {
			t.Errorf("%v: %v, %v", c.ffa, got, ok)
		}
		said := false
		for _, x := range b.Cautions() {
			said = said || x.Kind == FreeAcidSoap && strings.Contains(x.Text, c.want.String()+" trace")
		}
		if said != c.ok {
			t.Errorf("%v: the caution is %v", c.ffa, said)
		}
	}
}

func TestAnAdditiveActsByItsDose(t *testing.T) {
	// A factor of 1.2 stated for 2 % of oils: at 3 % it is 1.2^1.5 = 1.3145, at half a percent 1.2^0.25 = 1.0466. Speed divides the minutes
	// where nothing else changes with time (trace model, invariant 4).
	medium := func(percent float64) float64 {
		b := batter(balanced(), 35)
		b.RoomC, b.Cooling = 35, 1e-9
		b.Additives = []Additive{{Name: "sugar", Factor: 1.2, Percent: percent, AtPercent: 2}}
		l := standardLaw()
		l.coarse, l.heatJ = 1, 1e-9
		c, err := newClock(l, b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		return c.Forecast(Jug{Fraction: 1}).Stages[chem.Medium].Mid
	}
	none := medium(0)
	for percent, factor := range map[float64]float64{2: 1.2, 3: 1.31453, .5: 1.04664, 4: 1.44, 8: 2.0736} {
		near(t, "medium", medium(percent)*factor, none, 1e-3)
	}
}

func TestAnAdditivesDoubtGrowsWithItsDose(t *testing.T) {
	// Sd 0.2 at the stated 2 %: (ratio·0.2)², and 0.3² over 1.7 of it, 0.5² over 2, as for scents (trace model 2.4 and 6); a pinch adds no more than its part.
	width := func(a Additive) float64 {
		b := batter(balanced(), 35, Burst{0, 20})
		plain := must(t, b, Hand{}).sigma(Jug{Fraction: 1})
		b.Additives = []Additive{a}
		return square(must(t, b, Hand{}).sigma(Jug{Fraction: 1})) - square(plain)
	}
	at := func(factor, percent float64) Additive {
		return Additive{Name: "x", Factor: factor, SD: .2, Percent: percent, AtPercent: 2}
	}
	for _, c := range []struct {
		what string
		a    Additive
		want float64
	}{
		{"as stated", at(1.2, 2), .04},
		{"half as much", at(1.2, 1), .01},
		{"a fifth", at(1.2, .4), .0016},
		{"1.8 times", at(1.2, 3.6), .1296 + .09},
		{"2.5 times", at(1.2, 5), .25 + .25},
		{"a fifth of what changes nothing", at(1, .4), .0016},
		{"2.5 times of what changes nothing", at(1, 5), .25 + .25},
		{"25 times of what changes nothing: as four times", at(1, 50), .64 + .25},
		{"half of what heats", Additive{Name: "x", Factor: 1.2, Percent: 1, AtPercent: 2, Heat: true}, .01},
		{"as stated, with alcohol", Additive{Name: "x", Factor: 1.2, Percent: 2, AtPercent: 2, Alcohol: true}, .04},
		{"half of what holds alcohol", Additive{Name: "x", Factor: 1.2, Percent: 1, AtPercent: 2, Alcohol: true}, .01},
		{"1.5 times what holds alcohol", Additive{Name: "x", Factor: 1.2, Percent: 3, AtPercent: 2, Alcohol: true}, .04},
		{"1.5 times what heats", Additive{Name: "x", Factor: 1.2, Percent: 3, AtPercent: 2, Heat: true}, .04},
		{"no stated dose", Additive{Name: "x", Factor: 1.2, SD: .2, Percent: 9}, .04},
	} {
		near(t, c.what, width(c.a), c.want, 1e-12)
	}
}

func TestADoseFarOverTheStatedOneIsRefusedOrSaid(t *testing.T) {
	b := batter(balanced(), 35, Burst{0, 20})
	b.Additives = []Additive{{Name: "honey", Factor: 1.2, SD: .2, Percent: 8.1, AtPercent: 2}}
	if _, err := New(b, Hand{}); err == nil || !strings.Contains(err.Error(), "honey stands at 8.1 %") {
		t.Errorf("four times and more: %v", err)
	}
	b.Additives[0].Percent = 8
	if !warns(forecast(t, b, Jug{Fraction: 1}), OffDose) {
		t.Error("four times is taken without a word")
	}
	b.Additives[0].Percent = 2
	if warns(forecast(t, b, Jug{Fraction: 1}), OffDose) {
		t.Error("the stated dose is called off")
	}
	b.Additives = []Additive{{Name: "salt", Factor: 1, SD: .2, Percent: 50, AtPercent: 2}}
	if !warns(forecast(t, b, Jug{Fraction: 1}), OffDose) {
		t.Error("a bar of salt is taken without a word")
	}
}

func TestAPinchMovesNeitherTheClockNorItsDoubt(t *testing.T) {
	b := batter(balanced(), 35, Burst{0, 20})
	plain := forecast(t, b, Jug{Fraction: 1})
	b.Additives = []Additive{{Name: "milk", Factor: 1.2, SD: .2, Percent: 1e-6, AtPercent: 20, Heat: true, Alcohol: true}}
	pinch := forecast(t, b, Jug{Fraction: 1})
	for s := range plain.Stages {
		near(t, "early end", pinch.Stages[s].Low, plain.Stages[s].Low, 1e-5)
		near(t, "median", pinch.Stages[s].Mid, plain.Stages[s].Mid, 1e-5)
		near(t, "late end", pinch.Stages[s].High, plain.Stages[s].High, 1e-5)
	}
	if warns(pinch, OffDose) {
		t.Error("a pinch is called off its dose")
	}
}
