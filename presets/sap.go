package presets

import (
	"fmt"
	"strings"

	"pourbench/chem"
	"pourbench/pour/strict"
)

// What a saponification value can be, mg KOH per g: acetic acid, the smallest that could count as a fatty acid, has 934.
const (
	lowestSap  = 1
	highestSap = 800
)

const sapKey = "sap_koh_mg_g"

// readSap reads the saponification value and its range. A working value given alone by a new entry, or outside the range it finds, is its own range.
// published is what the entry had before the file.
func readSap(r *row, f *chem.Fat, published chem.Fat) {
	r.numberUnless(sapKey, &f.Sap, lowestSap, highestSap, "working saponification value, mg KOH per g", func(v float64) (problem, mend string) {
		if v >= lowestSap && v <= highestSap {
			return "", ""
		}
		return bandOf(r, *f, published).slip(v)
	})
	alone := r.has(sapKey) && !r.has("sap_low_koh_mg_g") && !r.has("sap_high_koh_mg_g")
	if alone && (r.fresh || f.Sap < f.SapLow || f.Sap > f.SapHigh) {
		f.SapLow, f.SapHigh = f.Sap, f.Sap
	}
	r.number("sap_low_koh_mg_g", &f.SapLow, lowestSap, highestSap, "lowest published saponification value; left out: the working one")
	r.number("sap_high_koh_mg_g", &f.SapHigh, lowestSap, highestSap, "highest published saponification value; left out: the working one")
	if f.SapLow == 0 {
		f.SapLow = f.Sap
	}
	if f.SapHigh == 0 {
		f.SapHigh = f.Sap
	}
	r.ordered("sap_low_koh_mg_g", f.SapLow, sapKey, f.Sap)
	r.ordered(sapKey, f.Sap, "sap_high_koh_mg_g", f.SapHigh)
}

// The saponification values of the triglycerides of behenic acid, the heaviest acid an oil has much of, 3 KOH to C69H134O6 of 1059.8 g/mol, and of
// caprylic acid, the lightest, to C27H50O6 of 470.7 g/mol (molar masses by the standard atomic weights).
const (
	heaviestSap = 3000 * chem.MolarKOH / 1059.8
	lightestSap = 3000 * chem.MolarKOH / 470.7
)

// naohToKOH turns what alkali a gram of fat takes from NaOH to KOH.
const naohToKOH = chem.MolarKOH / chem.MolarNaOH

// How far off what is published a value of an oil can lie, and off what its fatty acids call for: own, no source. A value for the other alkali is
// 40 % off.
const (
	offPublished = 0.05
	offTheory    = 0.1
)

// sapBand is what a saponification value can be expected to be, mg KOH per g, and what says so; high 0: nothing is known of it.
type sapBand struct {
	low, high float64
	says      string
}

func (b sapBand) holds(v float64) bool { return v >= b.low && v <= b.high }

// bandOf is what can be expected of an oil: near what is published of it where the shelf had it, near what its fatty acids call for where a new one
// states them, or what triglycerides have. Of waxes and acids that are new nothing is.
func bandOf(r *row, f, published chem.Fat) sapBand {
	if !r.fresh && published.Kind == f.Kind && published.Sap > 0 {
		low, high := published.LowSap(), published.HighSap()
		return sapBand{low * (1 - offPublished), high * (1 + offPublished), fmt.Sprintf("published of it is %.0f to %.0f", low, high)}
	}
	if theory, ok := f.TheorySap(); ok {
		return sapBand{theory * (1 - offTheory - f.UnsaponifiableGKg/1000), theory * (1 + offTheory), fmt.Sprintf("its fatty acids call for %.0f", theory)}
	}
	if f.Kind != chem.Triglyceride {
		return sapBand{}
	}
	return sapBand{heaviestSap * (1 - f.UnsaponifiableGKg/1000), lightestSap, fmt.Sprintf("oils have %.0f to %.0f", heaviestSap, lightestSap)}
}

// meantValue is a saponification value that was meant, mg KOH per g, and what was written in its place.
type meantValue struct {
	sap  float64
	unit string
}

// meantSap lists what a figure may mean that stands where mg KOH per g is wanted: another unit, the other alkali, or NaOH turned into KOH where it was
// KOH already.
func meantSap(v float64, band sapBand) []meantValue {
	var out []meantValue
	for _, by := range []struct {
		times float64
		unit  string
	}{{1, "mg %s per g"}, {10, "g %s per 100 g"}, {1000, "g %s per g"}, {0.001, "mg %s per kg"}} {
		for _, alkali := range []struct {
			times float64
			unit  string
		}{{1, fmt.Sprintf(by.unit, "KOH")}, {naohToKOH, fmt.Sprintf(by.unit, "NaOH")}, {1 / naohToKOH, fmt.Sprintf(by.unit, "KOH") + " times 1.403 again"}} {
			sap := v * by.times * alkali.times
			if by.times*alkali.times != 1 && band.holds(sap) {
				out = append(out, meantValue{sap, alkali.unit})
			}
		}
	}
	return out
}

// slip says what a figure out of the band looks like and what to write in its place; "" where it may be meant.
func (b sapBand) slip(v float64) (problem, mend string) {
	if b.holds(v) {
		return "", ""
	}
	meant := meantSap(v, b)
	switch len(meant) {
	case 0:
		return "", ""
	case 1:
		return "looks like " + meant[0].unit, fmt.Sprintf("write %.1f mg KOH per g: %s", meant[0].sap, b.says)
	}
	var all []string
	for _, m := range meant {
		all = append(all, fmt.Sprintf("%.1f if it is %s", m.sap, m.unit))
	}
	return "is no saponification value in mg KOH per g", "write " + strings.Join(all, ", ")
}

// slippedSap refuses a saponification value that is far from what is known of its oil and is near it in another unit or for the other alkali, and one
// that no triglyceride has, of what alkali takes of it. Read for KOH, a value for NaOH leaves a third of the oil as it is, and one that was turned into
// KOH's twice makes lye-heavy soap.
func slippedSap(r *row, f, published chem.Fat) {
	if !r.has(sapKey) || f.Sap <= 0 {
		return
	}
	oil, least := f.Kind == chem.Triglyceride, heaviestSap*(1-f.UnsaponifiableGKg/1000)
	low, high := oil && f.Sap < least, oil && f.Sap > lightestSap
	problem, mend := bandOf(r, f, published).slip(f.Sap)
	switch {
	case problem != "":
	case low:
		problem, mend = fmt.Sprintf("is lower than any triglyceride's, %.0f", least), "write its saponification value in mg KOH per g"
	case high:
		problem, mend = fmt.Sprintf("is higher than any oil's, %.0f", lightestSap), "write its saponification value in mg KOH per g"
	default:
		return
	}
	switch {
	case low:
		mend += fmt.Sprintf("; of a wax write kind = %q too", chem.WaxEster)
	case high:
		mend += fmt.Sprintf("; of a fatty acid write kind = %q too", chem.FreeAcid)
	case !r.fresh:
		mend += "; of another oil write an id of its own"
	}
	r.fault(sapKey, strict.Short(f.Sap), problem, mend)
}
