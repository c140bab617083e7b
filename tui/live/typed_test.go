package live

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// An avoirdupois ounce is 28.349523125 g (NIST Handbook 44, appendix C); 98.6 °F are 37 °C.
func TestAUnitBehindANumberIsItsUnitAndNoLot(t *testing.T) {
	metric, usual := pour.Show{Mass: pour.MassGram, Temperature: pour.DegreesC}, pour.Show{Mass: pour.MassOunce, Temperature: pour.DegreesF}
	for _, x := range []struct {
		typed string
		unit  pour.Unit
		show  pour.Show
		v     float64
		lot   string
	}{
		{"355.9", pour.UnitGram, metric, 355.9, ""},
		{"230.5 g", pour.UnitGram, metric, 230.5, ""},
		{"230,5g", pour.UnitGram, metric, 230.5, ""},
		{"355.9 g lot OLV-77", pour.UnitGram, metric, 355.9, "OLV-77"},
		{"355.9 lot OLV-77", pour.UnitGram, metric, 355.9, "OLV-77"},
		{"355.9 OLV-77", pour.UnitGram, metric, 355.9, "OLV-77"},
		{"355.9g  Lot: OLV 77", pour.UnitGram, metric, 355.9, "OLV 77"},
		{"355.9 lot:OLV-77", pour.UnitGram, metric, 355.9, "OLV-77"},
		{"355.9 lot g", pour.UnitGram, metric, 355.9, "g"},
		{"355.9 lotus-3", pour.UnitGram, metric, 355.9, "lotus-3"},
		{"0.3559 KG A7", pour.UnitGram, metric, 355.9, "A7"},
		{"10 oz", pour.UnitGram, metric, 283.49523125, ""},
		{"10", pour.UnitGram, usual, 283.49523125, ""},
		{"10 oz lot A7", pour.UnitGram, usual, 283.49523125, "A7"},
		{"100 g", pour.UnitGram, usual, 100, ""},
		{"37 °C", pour.UnitCelsius, metric, 37, ""},
		{"98.6F", pour.UnitCelsius, metric, 37, ""},
		{"98.6", pour.UnitCelsius, usual, 37, ""},
		{"37C", pour.UnitCelsius, usual, 37, ""},
	} {
		got, err := readMeasure(x.typed, x.unit, x.show)
		if err != nil || math.Abs(got.v-x.v) > 1e-9 || got.lot != x.lot {
			t.Errorf("%q is %+v, %v; want %v, lot %q", x.typed, got, err, x.v, x.lot)
		}
	}
	for typed, says := range map[string]string{"": "", "g": "", "355.9x": "", "355.9 g lot": "nothing stands behind", "37 oz": "no unit of a temperature"} {
		unit := pour.UnitGram
		if strings.HasPrefix(says, "no unit") {
			unit = pour.UnitCelsius
		}
		if got, err := readMeasure(typed, unit, metric); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q is %+v, %v", typed, got, err)
		}
	}
}

// Said as on a scale of pounds or in fractions it is one weight: by hand 3 5/8 oz are 3.625 of 28.349523125 g, 1 lb 2 oz are 18. What stands behind is
// its lot, and what looks like more of the weight is no lot.
func TestAWeightInSeveralWordsIsOneWeight(t *testing.T) {
	metric, usual := pour.Show{Mass: pour.MassGram}, pour.Show{Mass: pour.MassOunce}
	const oz = 28.349523125
	for _, x := range []struct {
		typed string
		show  pour.Show
		v     float64
		lot   string
	}{
		{"3 5/8 oz", usual, 3.625 * oz, ""},
		{"3 5/8", usual, 3.625 * oz, ""},
		{"3 5/8 oz A7", metric, 3.625 * oz, "A7"},
		{"1 lb 2 oz", usual, 18 * oz, ""},
		{"1 lb 2 oz lot A 7", usual, 18 * oz, "A 7"},
		{"2lb", metric, 32 * oz, ""},
		{"381.5 12/26", metric, 381.5, "12/26"},
		{"381 12/26", metric, 381, "12/26"},
		{"381 lot 1/2", metric, 381, "1/2"},
	} {
		got, err := readMeasure(x.typed, pour.UnitGram, x.show)
		if err != nil || math.Abs(got.v-x.v) > 1e-9 || got.lot != x.lot {
			t.Errorf("%q is %+v, %v; want %v, lot %q", x.typed, got, err, x.v, x.lot)
		}
	}
	for _, typed := range []string{"3 5/0 oz", "3 x 5 oz", "1 lb 20 oz", "40 2 g", "1.5 lb 2 oz"} {
		if got, err := readMeasure(typed, pour.UnitGram, metric); err == nil || !strings.Contains(err.Error(), "behind the word lot") {
			t.Errorf("%q is %+v, %v", typed, got, err)
		}
	}
}

// logged is the last weighing in the pour's file.
func (b *kitchen) logged() logbook.Event {
	b.Helper()
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(b, err)
	return p.Events[len(p.Events)-1]
}

func TestWhatWasUnderstoodOfAWeightIsTold(t *testing.T) {
	b := alpine(t)
	b.size(120, 36)
	b.weigh("base "+pour.NameWater, "230.5 g")
	b.shows("base " + pour.NameWater + ": 230.5 g, planned")
	if e := b.logged(); e.Value != 230.5 || e.Lot != "" {
		t.Errorf("journaled: %+v", e)
	}
	b.weigh("base "+pour.NameWater, "0.2305 kg lot W 7")
	b.shows(": 0.2305 kg (230.5 g), lot W 7, planned")
	if e := b.logged(); e.Value != 230.5 || e.Lot != "W 7" {
		t.Errorf("journaled: %+v", e)
	}
	b.press("u")
	b.shows("taken back: base " + pour.NameWater + " 230.50 g, lot W 7")

	v := voiced(t)
	v.hears("w 1 230.5 g lot OLV-77", "230.5 g, lot OLV-77, planned")
	if e := v.logged(); e.Value != 230.5 || e.Lot != "OLV-77" {
		t.Errorf("in plain mode: %+v", e)
	}
	v.hears("w 1 30 g lot", "nothing stands behind")
}

// Typed at the water, a number is the water's when Tab goes on to the lye, and the list says so when it comes round.
func TestTabInTheMiddleOfWeighingKeepsItWhereItWasTyped(t *testing.T) {
	b := alpine(t)
	b.size(120, 36)
	b.measure("base " + pour.NameWater)
	b.write("230.5")
	b.press("tab")
	b.shows("base "+pour.NameNaOH+" in g", "base "+pour.NameWater+": 230.5 g, planned")
	if e := b.logged(); e.What != pour.NameWater || e.Value != 230.5 {
		t.Errorf("journaled: %+v", e)
	}
	b.press("shift+tab")
	b.shows("base "+pour.NameWater+" in g", "measured 230.5 g")
	b.press("esc")
	if n := kinds(b)[logbook.Weighed]; n != 1 {
		t.Errorf("%d weights are kept", n)
	}
}
