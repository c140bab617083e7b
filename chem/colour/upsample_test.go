package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The constants of spectrum.go are worked out again from the CIE table.
func TestResponseFollowsFromTheCIETable(t *testing.T) {
	_, rows := readTable(t, "cie1931_d65_10nm.csv", 0)
	if len(rows) != Bands {
		t.Fatalf("%d bands, want %d", len(rows), Bands)
	}
	toRGB := [3][3]float64{{3.2404542, -1.5371385, -0.4985314}, {-0.9692660, 1.8760108, 0.0415560}, {0.0556434, -0.2040259, 1.0572252}}
	var want [Bands][3]float64
	var sum [3]float64
	for i, r := range rows {
		if r[0] != Wavelength(i) {
			t.Fatalf("band %d is at %g nm, want %g", i, r[0], Wavelength(i))
		}
		for c := range 3 {
			want[i][c] = r[4] * (toRGB[c][0]*r[1] + toRGB[c][1]*r[2] + toRGB[c][2]*r[3])
			sum[c] += want[i][c]
		}
	}
	for i, row := range response() {
		for c := range 3 {
			if math.Abs(row[c]-want[i][c]/sum[c]) > 1e-12 {
				t.Errorf("band %d channel %d: %g, want %g", i, c, row[c], want[i][c]/sum[c])
			}
		}
	}
}

func TestUpsampleComesBackToTheColourOverTheWholeCube(t *testing.T) {
	worst := 0.0
	for r := 0; r < 256; r += 15 {
		for g := 0; g < 256; g += 15 {
			for b := 0; b < 256; b += 15 {
				worst = max(worst, upsampleError(t, FromBytes(uint8(r), uint8(g), uint8(b))))
			}
		}
	}
	t.Logf("5832 colours, worst round trip %.2g", worst)
	if worst > 1e-8 {
		t.Errorf("worst round trip %g, want 1e-8", worst)
	}
}

func TestUpsampleComesBackToAnyColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawColour(t)
		if worst := upsampleError(t, c); worst > 1e-8 {
			t.Fatalf("%s comes back %g off", c.Hex(), worst)
		}
	})
}

type fataler interface {
	Fatalf(format string, args ...any)
}

func upsampleError(t fataler, c RGB) float64 {
	s, err := Upsample(c)
	if err != nil {
		t.Fatalf("%v", err)
	}
	for i, r := range s {
		if !(r > 0 && r < 1) {
			t.Fatalf("%s reflects %g at %g nm", c.Hex(), r, Wavelength(i))
		}
	}
	want, got := c.clip(darkest, lightest), s.RGB()
	return max(math.Abs(got.R-want.R), math.Abs(got.G-want.G), math.Abs(got.B-want.B))
}

func TestUpsampledGreyIsFlat(t *testing.T) {
	s, err := Upsample(RGB{0.3, 0.3, 0.3})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range s {
		if math.Abs(r-0.3) > 1e-8 {
			t.Errorf("%g nm: %g, want 0.3", Wavelength(i), r)
		}
	}
}
