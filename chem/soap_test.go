package chem_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

// Worked example of olive 500 g, coconut 300 g and shea 200 g with 95 % of their alkali: middles of published saponification ranges, molar masses as
// in alkali.go, worked out apart from this program to 0.01 g.
func TestSoapsOfAWorkedExample(t *testing.T) {
	fat := func(sap float64) chem.Fat { return chem.Fat{Kind: chem.Triglyceride, Sap: sap} }
	b := chem.Blend{{Fat: fat(191.5), G: 500}, {Fat: fat(256.5), G: 300}, {Fat: fat(177.5), G: 200}}
	r := b.Reacted(141.0020, 0, 0)
	for i, want := range []struct{ soap, glycerol, left float64 }{{490.08, 49.77, 25}, {297.12, 40.00, 15}, {195.59, 18.45, 10}} {
		near(t, "soap", r.Fats[i].SodiumG, want.soap, 0.01)
		near(t, "glycerol", r.Fats[i].GlycerolG, want.glycerol, 0.01)
		near(t, "left", r.Fats[i].LeftG, want.left, 0.01)
		near(t, "water", r.Fats[i].WaterG, 0, 0)
		near(t, "potassium soap", r.Fats[i].PotassiumG, 0, 0)
	}
	near(t, "sodium share", r.SodiumShare, 1, 0)
	near(t, "alkali left", r.NaOHLeftG+r.KOHLeftG, 0, 0)
}

// Molar masses from atomic weights (CIAAW abridged: C 12.011, H 1.008, O 15.999, Na 22.990, K 39.098) and formulas of general references: triolein
// C57H104O6, sodium oleate C18H33NaO2, potassium oleate C18H33KO2, stearic acid C18H36O2, sodium stearate C18H35NaO2, glycerol C3H8O3.
func TestSoapsFollowFromFormulas(t *testing.T) {
	const (
		c, h, o, na, k = 12.011, 1.008, 15.999, 22.990, 39.098
		triolein       = 57*c + 104*h + 6*o
		oleateNa       = 18*c + 33*h + 2*o + na
		oleateK        = 18*c + 33*h + 2*o + k
		stearic        = 18*c + 36*h + 2*o
		stearateNa     = 18*c + 35*h + 2*o + na
	)
	oil := chem.Fat{Kind: chem.Triglyceride, Sap: 3 * 56105.3 / triolein}
	acid := chem.Fat{Kind: chem.FreeAcid, Sap: 56105.3 / stearic}
	one := chem.Blend{{Fat: oil, G: 2 * triolein}}

	half := one.Reacted(3*39.99677, 0, 0).Fats[0]
	near(t, "1 of 2 mol triolein", half.SodiumG, 3*oleateNa, 0.01)
	near(t, "its glycerol", half.GlycerolG, 3*c+8*h+3*o, 0.005)
	near(t, "the other mol", half.LeftG, triolein, 1e-6)

	two := one.Reacted(2*39.99677, 4*56.1053, 0).Fats[0]
	near(t, "a third sodium", two.SodiumG, 2*oleateNa, 0.01)
	near(t, "two thirds potassium", two.PotassiumG, 4*oleateK, 0.01)
	near(t, "nothing left", two.LeftG, 0, 0)

	both := chem.Blend{{Fat: oil, G: triolein}, {Fat: acid, G: stearic}}
	first := both.Reacted(1.5*39.99677, 0, 0)
	near(t, "acids go first: stearate", first.Fats[1].SodiumG, stearateNa, 0.01)
	near(t, "water of the acid", first.Fats[1].WaterG, 2*h+o, 0.005)
	near(t, "acid left", first.Fats[1].LeftG, 0, 0)
	near(t, "acid's glycerol", first.Fats[1].GlycerolG, 0, 0)
	near(t, "0.5 of 3 mol for the oil", first.Fats[0].LeftG, triolein*5/6, 1e-6)
}

func TestAcidsBesideTheFatsGoFirst(t *testing.T) {
	b := chem.Blend{{Fat: chem.Fat{Kind: chem.FreeAcid, Sap: 200}, G: 100}, {Fat: chem.Fat{Kind: chem.Triglyceride, Sap: 200}, G: 100}}
	half := b.Reacted(0, 5, 10)
	near(t, "half of them", half.Acids, 0.5, 0)
	near(t, "nothing for the free acid", half.Fats[0].LeftG, 100, 0)
	near(t, "nothing for the oil", half.Fats[1].LeftG, 100, 0)
	r := b.Reacted(0, 10+20+5, 10)
	near(t, "all of them", r.Acids, 1, 0)
	near(t, "free acid left", r.Fats[0].LeftG, 0, 0)
	near(t, "oil left", r.Fats[1].LeftG, 75, 1e-9)
	near(t, "none beside", b.Reacted(0, 0, 0).Acids, 1, 0)
	over := b.Reacted(39.99677, 56.1053, 0) // 2 mol of each half, and 40 g KOH of demand
	want := 2 - 40/56.1053
	near(t, "NaOH left", over.NaOHLeftG, want/2*39.99677, 1e-9)
	near(t, "KOH left", over.KOHLeftG, want/2*56.1053, 1e-9)
}

// A wax frees an alcohol that stays in its line: no glycerol. What has no saponification value stays.
func TestWaxesAndWhatHasNoValue(t *testing.T) {
	b := chem.Blend{{Fat: chem.Fat{Kind: chem.WaxEster, Sap: 95}, G: 100}, {Fat: chem.Fat{Kind: chem.Triglyceride}, G: 10}}
	r := b.Reacted(0, 4.75, 0)
	near(t, "half the wax and all that alkali", r.Fats[0].PotassiumG, 50+4.75, 1e-9)
	near(t, "wax's glycerol", r.Fats[0].GlycerolG, 0, 0)
	near(t, "wax's water", r.Fats[0].WaterG, 0, 0)
	if r.Fats[1] != (chem.Soap{LeftG: 10}) {
		t.Errorf("what takes up no alkali became %+v", r.Fats[1])
	}
}

// Alkali that is enough but for rounding leaves neither a trace of fat nor of alkali.
func TestJustEnoughAlkaliLeavesNothing(t *testing.T) {
	oils := readOils(t)
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, oils)
		_, demand, _ := b.DemandKOH()
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		r := b.Reacted(demand*(1-share)*chem.AlkaliRatio, demand*share, 0)
		if r.NaOHLeftG != 0 || r.KOHLeftG != 0 {
			t.Fatalf("%v g NaOH, %v g KOH left", r.NaOHLeftG, r.KOHLeftG)
		}
		for i, s := range r.Fats {
			if s.LeftG != 0 && b[i].Fat.Sap > 0 {
				t.Fatalf("%v g of fat %d left", s.LeftG, i)
			}
		}
	})
}

// Mass in is mass out, alkali taken is one mole for each carboxyl, and glycerol is that of the blend for what reacted.
func TestReactedKeepsMassAndMoles(t *testing.T) {
	oils := readOils(t)
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, oils)
		_, demand, _ := b.DemandKOH()
		koh := demand * rapid.Float64Range(0, 1.2).Draw(t, "koh")
		naoh := demand * rapid.Float64Range(0, 1.2).Draw(t, "naoh")
		acid := rapid.Float64Range(0, 50).Draw(t, "acid")
		r := b.Reacted(naoh, koh, acid)
		out, carboxyls, glycerol := r.NaOHLeftG+r.KOHLeftG, acid*r.Acids/56.1053, 0.0
		for i, s := range r.Fats {
			out += s.SodiumG + s.PotassiumG + s.GlycerolG + s.WaterG + s.LeftG
			reacted := b[i].G - s.LeftG
			n := reacted * b[i].Fat.Sap / 56105.3
			carboxyls += n
			switch b[i].Fat.Kind {
			case chem.Triglyceride:
				glycerol += n / 3 * 92.094
			case chem.FreeAcid:
				same(t, "water", s.WaterG, n*18.015)
			default:
			}
		}
		taken := (naoh-r.NaOHLeftG)/39.99677 + (koh-r.KOHLeftG)/56.1053
		same(t, "moles", taken, carboxyls)
		acids := r.Acids * acid / 56.1053 * (r.SodiumShare*39.99677 + (1-r.SodiumShare)*56.1053)
		same(t, "mass", out+acids, b.G()+naoh+koh)
		sum := 0.0
		for _, s := range r.Fats {
			sum += s.GlycerolG
		}
		same(t, "glycerol", sum, glycerol)
		if math.IsNaN(out) {
			t.Fatal("no number")
		}
	})
}
