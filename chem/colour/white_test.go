package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// titanium is titanium white as the shelf tells of it: at the middle of 0.2 to 1 %.
func titanium(percent float64) Dose {
	shelf, err := ParseHex("#f6f3ea")
	if err != nil {
		panic(err)
	}
	return Dose{Name: "titanium white", AtMid: shelf, MidPercent: 0.6, Percent: percent, White: true}
}

// By eye, no source: what a cream batter looks like with titanium white in it.
func TestTitaniumWhiteWhitensACreamBatter(t *testing.T) {
	for _, c := range []struct {
		percent float64
		want    string
		within  float64 // CIEDE2000
	}{{0, PlainBatter, 0.01}, {0.5, "#f6f3ea", 1}, {0.6, "#f6f3ea", 0.01}, {1, "#f8f5ee", 1.2}} {
		got := estimate(t, hex(t, PlainBatter), c.percent, titanium(c.percent))
		t.Logf("%g %%: %s", c.percent, got.Hex())
		if d := got.Difference(hex(t, c.want)); d > c.within {
			t.Errorf("%g %%: %s is %.2f from %s, want %g at most", c.percent, got.Hex(), d, c.want, c.within)
		}
	}
}

// Arithmetic by another hand: a white mixed in by its scattering lies between the batter and itself, so more of it is nearer to itself.
func TestMoreOfAWhiteIsWhiterAndNeverDarker(t *testing.T) {
	cream := paint(t, PlainBatter)
	rapid.Check(t, func(t *rapid.T) {
		oils := mix(t, []Paint{cream, drawPaint(t)}, []float64{9, 1}).RGB()
		low := rapid.Float64Range(0, 5).Draw(t, "low")
		high := low + rapid.Float64Range(0, 5).Draw(t, "more")
		little, much := estimate(t, oils, 0, titanium(low)), estimate(t, oils, 0, titanium(high))
		most := estimate(t, oils, 0, titanium(doseMost))
		if d, e := little.Difference(most), much.Difference(most); e > d+1e-6 {
			t.Fatalf("%s with %g %% is %.3f from all white, with %g %% %.3f", oils.Hex(), low, d, high, e)
		}
		if little.Luminance() > much.Luminance()+1e-3 {
			t.Fatalf("%s darkens from %g %% to %g %%", oils.Hex(), low, high)
		}
	})
}

// A shelf may call any colour a white: a cream batter takes it at the middle dose, however white it is.
func TestAnyWhiteIsReachedAtItsMiddleDose(t *testing.T) {
	cream := hex(t, PlainBatter)
	rapid.Check(t, func(t *rapid.T) {
		c := drawColour(t)
		dose := rapid.Float64Range(0.01, 5).Draw(t, "dose")
		got := estimate(t, cream, 0, Dose{Name: "one", AtMid: c, MidPercent: dose, Percent: dose, White: true})
		want := c.clip(darkest, lightest)
		for _, part := range [...]float64{got.R - want.R, got.G - want.G, got.B - want.B} {
			if math.Abs(part) > 1e-6 {
				t.Fatalf("%s became %s", want.Hex(), got.Hex())
			}
		}
	})
}

// Two half doses are one whole dose: the shelf has titanium white twice.
func TestTwoHalvesOfAWhiteAreTheWhole(t *testing.T) {
	oils := hex(t, "#e4dca8")
	whole, halves := estimate(t, oils, 0.8, titanium(0.8)), estimate(t, oils, 0.8, titanium(0.4), titanium(0.4))
	if d := whole.Difference(halves); d > 1e-6 {
		t.Errorf("%s and %s", whole.Hex(), halves.Hex())
	}
}

func TestAWhiteIsRefusedWhatAColourantIs(t *testing.T) {
	for _, dose := range []float64{0, -1, 31, math.NaN()} {
		if s, err := NewWhite(RGB{0.9, 0.9, 0.9}, dose); err == nil {
			t.Errorf("a middle dose of %g %% gave %v", dose, s)
		}
	}
}
