package colour

import (
	"math"
	"testing"
)

// film is a paint film with two Kubelka-Munk constants, fitted to a measured masstone and one measured
// mixture with white (testdata/colour/pigment_spectra.csv). White scatters 1 in every band.
type film struct {
	name        string
	absorb      Spectrum
	scatter     Spectrum
	tint        Spectrum // reflectance of the measured mixture; white has none
	tintOfWhole float64  // its weight fraction of colour
}

// films fits S from q_m (w S + 1 - w) = w q S + (1 - w) q_white, q being K/S. Where paint and white
// reflect alike, S hardly matters and is kept within 0.05 to 5.
func films(t *testing.T) []film {
	names, rows := readTable(t, "pigment_spectra.csv", 1)
	white := rows[0][1:]
	var all []film
	for i, name := range names[:13] {
		f := film{name: name, tintOfWhole: 1}
		masstone := rows[i][1:]
		for b := range Bands {
			q := ratio(masstone[b])
			f.scatter[b] = 1
			if name != "white" {
				row := rows[12+i]
				w, qm, qw := row[0], ratio(row[1+b]), ratio(white[b])
				f.tint[b], f.tintOfWhole = row[1+b], w
				f.scatter[b] = min(max((1-w)*(qw-qm)/(w*(qm-q)), 0.05), 5)
				if math.IsNaN(f.scatter[b]) {
					t.Fatalf("%s: no scattering at %g nm", name, Wavelength(b))
				}
			}
			f.absorb[b] = q * f.scatter[b]
		}
		all = append(all, f)
	}
	return all
}

// blend is the film mixed of share of b and the rest a, K and S adding up band by band.
func (f film) blend(other film, share float64) film {
	var m film
	for i := range Bands {
		m.absorb[i] = (1-share)*f.absorb[i] + share*other.absorb[i]
		m.scatter[i] = (1-share)*f.scatter[i] + share*other.scatter[i]
	}
	return m
}

func (f film) seen() RGB {
	var s Spectrum
	for i := range s {
		s[i] = reflectance(f.absorb[i] / f.scatter[i])
	}
	return s.RGB()
}

// predicted is what the package makes of the two colours alone.
func predicted(t *testing.T, a, b RGB, share float64) RGB {
	t.Helper()
	var paints [2]Paint
	for i, c := range [2]RGB{a, b} {
		p, err := NewPaint(c, 0)
		if err != nil {
			t.Fatal(err)
		}
		paints[i] = p
	}
	return mix(t, paints[:], []float64{1 - share, share}).RGB()
}

// compare mixes all pairs of films at 25, 50 and 75 % and returns the mean and the largest CIEDE2000
// difference of the prediction.
func compare(t *testing.T, all []film) (pairs int, mean, most float64) {
	n := 0
	for i, a := range all {
		for _, b := range all[:i] {
			pairs++
			for _, w := range []float64{0.25, 0.5, 0.75} {
				d := predicted(t, a.seen(), b.seen(), w).Difference(a.blend(b, w).seen())
				mean, most, n = mean+d, max(most, d), n+1
			}
		}
	}
	return pairs, mean / float64(n), most
}

func tints(all []film, share float64) []film {
	var t []film
	for _, f := range all {
		t = append(t, all[0].blend(f, share))
	}
	return t
}

// The truth is itself Kubelka-Munk, fitted to measured paint films; the prediction knows only the two
// colours. Pale tints in a common white are what coloured batters are. The figures are regression; a
// prototype of the same method gave means of 1.3, 2.3 and 6.4, and 1.5 for 10 % tints is the goal.
func TestMixPredictsTintsOfMeasuredPaints(t *testing.T) {
	all := films(t)
	for _, c := range []struct {
		name       string
		films      []film
		pairs      int
		mean, most float64
	}{
		{"10 % tints", tints(all, 0.1), 78, 1.38, 8.71},
		{"30 % tints", tints(all, 0.3), 78, 2.42, 12.10},
		{"masstones", all[1:12], 55, 6.44, 22.33},
	} {
		pairs, mean, most := compare(t, c.films)
		t.Logf("%s: %d pairs, mean %.2f, most %.2f", c.name, pairs, mean, most)
		if pairs != c.pairs || math.Abs(mean-c.mean) > 0.01 || math.Abs(most-c.most) > 0.01 {
			t.Errorf("%s: %d pairs, mean %.2f, most %.2f; want %d, %g, %g", c.name, pairs, mean, most, c.pairs, c.mean, c.most)
		}
	}
}

// Against raw measurements of strong paints the method is poor, because a masstone hides its hue: why
// the program asks for the colour of the finished batter.
func TestMixIsPoorForMasstonesAsDocumented(t *testing.T) {
	all := films(t)
	mean := 0.0
	for _, f := range all[1:] {
		mean += predicted(t, all[0].seen(), f.seen(), f.tintOfWhole).Difference(f.tint.RGB()) / 12
	}
	t.Logf("12 measured tints: mean %.1f", mean)
	if math.Abs(mean-14.1) > 0.1 {
		t.Errorf("mean difference %.1f, want 14.1 (regression; 13.9 in a prototype that fitted otherwise)", mean)
	}
}
