package swirl

import (
	"image/color"
	"math"
	"testing"
)

// Values of the sRGB curve worked out by hand from IEC 61966-2-1: 10/255/12.92, the middle grey 118, and half the light of white.
func TestTheCurveOfSRGB(t *testing.T) {
	for v, want := range map[uint8]float64{0: 0, 10: 0.0030353, 11: 0.0033465, 118: 0.1811642, 128: 0.2158605, 188: 0.5028865, 255: 1} {
		if got := float64(linear(v)); !near(got, want, 1e-6) {
			t.Errorf("sRGB %d is %.7f of the light of white, want %.7f", v, got, want)
		}
	}
	for light, want := range map[float32]uint8{-1: 0, 0: 0, 0.001: 3, 0.0031308: 10, 0.18: 118, 0.5: 188, 1: 255, 2: 255} {
		if got := encode(light); got != want {
			t.Errorf("a light of %g is sRGB %d, want %d", light, got, want)
		}
	}
}

func TestEveryByteOfAColourComesBackFromLinearLight(t *testing.T) {
	for v := range 256 {
		c := color.NRGBA{uint8(v), uint8(255 - v), uint8(v / 2), 255}
		if got := decode(c).encode(); got != c {
			t.Errorf("%v comes back as %v", c, got)
		}
	}
}

func TestHalfTheLightHasHalfOfEveryChannel(t *testing.T) {
	got := light{0.8, 0.4, 0.2}.scaled(0.5)
	if !near(float64(got.r), 0.4, 1e-6) || !near(float64(got.g), 0.2, 1e-6) || !near(float64(got.b), 0.1, 1e-6) {
		t.Errorf("half the light is %v", got)
	}
}

func TestAWobbleStaysWithinItsAmplitudeAboutItsMean(t *testing.T) {
	for seed := range int64(20) {
		d := newDice(seed)
		w := d.wobble(30, 5)
		low, high, sum := math.Inf(1), math.Inf(-1), 0.0
		const n = 40000
		for x := range n {
			v := w.at(float64(x))
			low, high, sum = min(low, v), max(high, v), sum+v
		}
		if low < 25 || high > 35 {
			t.Errorf("seed %d: it drifts from %.2f to %.2f, want within 25 to 35", seed, low, high)
		}
		if low > 25.5 || high < 34.5 {
			t.Errorf("seed %d: in 40 m it drifts from %.2f to %.2f only", seed, low, high)
		}
		if !near(sum/n, 30, 0.05) {
			t.Errorf("seed %d: its mean is %.2f, want 30", seed, sum/n)
		}
		for i, wave := range [2][2]float64{{60, 110}, {140, 320}} {
			if mm := 2 * math.Pi / w.k[i]; mm < wave[0] || mm > wave[1] {
				t.Errorf("seed %d: a wave is %.0f mm long, want %v", seed, mm, wave)
			}
		}
	}
}

func TestNeighbouringBarsAreRelated(t *testing.T) {
	d := newDice(3)
	w := d.wobble(0, 10)
	for x := range 400 {
		// the steepest a drift of 10 mm can be: 4·2π/60 + 6·2π/140 mm per mm
		if step := math.Abs(w.at(float64(x+1)) - w.at(float64(x))); step > 0.69 {
			t.Errorf("at %d mm it drifts by %.2f mm in a mm", x, step)
		}
	}
	still := wobble{mean: 7, k: [2]float64{1, 1}, offset: [2]float64{1, 1}}
	if still.at(33) != 7 {
		t.Errorf("a drift of nothing is %g, want its mean", still.at(33))
	}
}
