package swirl

import (
	"math"
	"testing"
)

func TestASettlingKeepsAreaAndItsWalls(t *testing.T) {
	d := newDice(3)
	w := newWave(&d, Box{L: 250, W: 80, H: 62}, 50, 4)
	for range 500 {
		x, y, z := d.Between(0, 250), d.Between(0.1, 79.9), d.Between(0.1, 49.9)
		back := func(y, z float64) (float64, float64) { return w.move(x, y, z, -1) }
		if det := determinant(back, y, z, 1e-3); !near(det, 1, 0.01) {
			t.Fatalf("at (%.1f, %.1f, %.1f) an area becomes %.4f of itself", x, y, z, det)
		}
		if a, _ := w.move(x, 0, z, 1); !near(a, 0, 1e-5) {
			t.Fatalf("the left wall goes %g mm in", a)
		}
		if _, b := w.move(x, y, 50, 1); !near(b, 50, 1e-5) {
			t.Fatalf("the surface goes to %g mm", b)
		}
	}
}

// reach is the mean and the greatest way of a settling over a mesh of points.
func reach(w *wave, level float64) (mean, most float64) {
	n := 0.0
	for x := 5.; x < 250; x += 35 {
		for y := 2.; y < 80; y += 6 {
			for z := 2.; z < level; z += 6 {
				a, b := w.move(x, y, z, 1)
				far := math.Hypot(a-y, b-z)
				mean, most, n = mean+far, max(most, far), n+1
			}
		}
	}
	return mean / n, most
}

func TestASettlingMovesBatterByAboutWhatItSays(t *testing.T) {
	for seed := range int64(6) {
		d := newDice(seed)
		mean, most := reach(newWave(&d, Box{L: 250, W: 80, H: 62}, 60, 3), 60)
		if mean < 0.6 || mean > 4.5 || most < 2 || most > 18 {
			t.Errorf("seed %d: a settling of 3 mm moves batter by %.2f mm on average and %.2f mm at most", seed, mean, most)
		}
		d = newDice(seed)
		if half, _ := reach(newWave(&d, Box{L: 250, W: 80, H: 62}, 60, 0.03), 60); !near(half/mean, 0.01, 0.002) {
			t.Errorf("seed %d: a hundredth of the settling moves it by %.4f mm against %.4f mm", seed, half, mean)
		}
		d = newDice(seed)
		if _, none := reach(newWave(&d, Box{L: 250, W: 80, H: 62}, 60, 0), 60); none != 0 {
			t.Errorf("seed %d: no settling moves it by %g mm", seed, none)
		}
	}
}

func TestTheFlowOfASettlingIsThatOfAStreamFunction(t *testing.T) {
	d := newDice(5)
	w := newWave(&d, Box{L: 250, W: 80, H: 62}, 50, 4)
	r := w.at(77)
	// ψ = Σ amp·sin(ky·π·y/W)·sin(kz·π·z/H), by the library's sines; the flow is (∂ψ/∂z, -∂ψ/∂y)
	psi := func(y, z float64) (sum float64) {
		for i, m := range w.modes {
			sum += r.amp[i] * math.Sin(float64(m.ky)*math.Pi*y/80) * math.Sin(float64(m.kz)*math.Pi*z/50)
		}
		return sum
	}
	for range 200 {
		y, z := d.Between(0, 80), d.Between(0, 50)
		vy, vz := r.velocity(y, z)
		const h = 1e-4
		if a, b := (psi(y, z+h)-psi(y, z-h))/(2*h), (psi(y-h, z)-psi(y+h, z))/(2*h); !near(vy, a, 1e-4) || !near(vz, b, 1e-4) {
			t.Fatalf("at (%.1f, %.1f) the flow is (%.5f, %.5f), want (%.5f, %.5f)", y, z, vy, vz, a, b)
		}
	}
}

func TestMultiplesOfAnAngle(t *testing.T) {
	var s, c [6]float64
	for _, a := range []float64{0, 0.3, 1, 2, 3.1} {
		multiples(a, &s, &c)
		for i := range s {
			if want := float64(i) * a; !near(s[i], math.Sin(want), 1e-5) || !near(c[i], math.Cos(want), 1e-5) {
				t.Errorf("%d times %g has the sine %g and the cosine %g", i, a, s[i], c[i])
			}
		}
	}
}

// A cubic through four knots is any cubic, at the ends of the row of knots as well.
func TestACubicThroughFourKnots(t *testing.T) {
	f := func(u float64) float64 { return 2 - 3*u + 0.5*u*u - 0.1*u*u*u }
	knots := make([]vec2, 9)
	for i := range knots {
		knots[i] = vec2{f(float64(i)), 1}
	}
	for u := 0.0; u <= 8; u += 0.16 {
		first, w := cubic(u, len(knots))
		if first < 0 || first > 5 || u >= 1 && u < 7 && first != int(u)-1 { // in the middle two either side
			t.Fatalf("at %g the four knots begin with %d of 9", u, first)
		}
		if got := blend(knots, first, 1, w); !near(got.y, f(u), 1e-9) || !near(got.z, 1, 1e-9) {
			t.Errorf("at %g the cubic is %.6f and the weights sum to %.6f, want %.6f and 1", u, got.y, got.z, f(u))
		}
	}
}

func TestASettlingChangesAlongTheLoaf(t *testing.T) {
	d := newDice(5)
	w := newWave(&d, Box{L: 250, W: 80, H: 62}, 60, 4)
	a, b := w.move(10, 30, 20, 1)
	c, e := w.move(12, 30, 20, 1)
	f, g := w.move(60, 30, 20, 1)
	if near, far := math.Hypot(c-a, e-b), math.Hypot(f-a, g-b); near > 1 || far < near+0.1 {
		t.Errorf("2 mm on it moves %.2f mm otherwise, 50 mm on %.2f mm", near, far)
	}
}

// A length that is whole but for its last bit has the mesh of the whole one.
func TestTheLastBitOfALengthAddsNoKnot(t *testing.T) {
	for length, want := range map[float64]int{62: 63, math.Nextafter(62, 63): 63, math.Nextafter(62, 0): 63, 62.01: 64, 61.5: 63} {
		if got := knots(length, fineMM); got != want {
			t.Errorf("%v mm have %d knots, want %d", length, got, want)
		}
	}
}
