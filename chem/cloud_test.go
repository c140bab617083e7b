package chem_test

import (
	"math"
	"testing"

	"pourbench/chem"
)

// The rule is assumed; the published figures it stands against are from memory: palm melts at 33 to 40 °C.
func TestCloudPointFollowsTheSaturatedAcids(t *testing.T) {
	palm, ok := chem.Blend{{Fat: tableFat(t, "palm"), G: 1}}.CloudC()
	if !ok || palm < 33 || palm > 40 {
		t.Errorf("palm clouds at %v, %v", palm, ok)
	}
	olive, _ := chem.Blend{{Fat: tableFat(t, "olive"), G: 1}}.CloudC()
	cocoa, _ := chem.Blend{{Fat: tableFat(t, "cocoa_butter"), G: 1}}.CloudC()
	near(t, "olive (regression)", olive, 19.8, 0.05)
	near(t, "cocoa butter (regression)", cocoa, 46.4, 0.05)
	unknown := chem.Blend{{Fat: tableFat(t, "olive"), G: 80}, {Fat: chem.Fat{Sap: 190}, G: 20}}
	if c, ok := unknown.CloudC(); ok {
		t.Errorf("a fifth without profile still clouds at %v", c)
	}
}

// Ralston and Hoerr, J. Org. Chem. 7 (1942) 546 (memory): 100 g of benzene hold 12.4 g of stearic acid at 30 °C, 51.0 g at 40 °C
// and 145 g at 50 °C. The rule is ideal solubility, so it must come within its own band. The solvent has benzene's molar mass.
func TestStearicAcidSetsWhereItsSolubilitySays(t *testing.T) {
	benzene := chem.Fat{Kind: chem.WaxEster, Sap: 56105.3 / 78.11, Profile: chem.Profile{chem.C18x1: 1}}
	stearic := chem.Fat{Kind: chem.FreeAcid, Sap: 56105.3 / 284.48, Profile: chem.Profile{chem.C18: 1}}
	for _, c := range []struct{ g, at float64 }{{12.4, 30}, {51.0, 40}, {145, 50}} {
		got, ok := chem.Blend{{Fat: benzene, G: 100}, {Fat: stearic, G: c.g}}.CloudC()
		if !ok {
			t.Fatal("no cloud point")
		}
		near(t, "cloud point", got, c.at, chem.CloudBandC)
	}
}

// Ideal solubility worked by hand: 30 g of beeswax, 677.2 g/mol, in 970 g of an oil of 190 mg KOH/g, which is 3·56105.3/190 = 885.9
// g/mol: x = 0.0443/(0.0443 + 1.0949) = 0.03889, and 175 J/g melt it at 64 °C = 337.15 K.
func TestAWaxSetsUnderItsMeltingPoint(t *testing.T) {
	oil := chem.Fat{Kind: chem.Triglyceride, Sap: 190, Profile: chem.Profile{chem.C18x1: 1}}
	wax := chem.Fat{Kind: chem.WaxEster, Sap: 95.5, Resin: true}
	got, ok := chem.Blend{{Fat: oil, G: 970}, {Fat: wax, G: 30}}.CloudC()
	want := 1/(1/337.15-8.314462618*math.Log(0.03889)/(175*677.2)) - 273.15
	if near(t, "3 % beeswax", got, want, 0.01); !ok {
		t.Error("no cloud point")
	}
	wax.MeltC = 84
	hard, _ := chem.Blend{{Fat: oil, G: 970}, {Fat: wax, G: 30}}.CloudC()
	near(t, "3 % of a wax that melts at 84 °C", hard, 1/(1/357.15-8.314462618*math.Log(0.03889)/(175*677.2))-273.15, 0.01)
	alone, _ := chem.Blend{{Fat: wax, G: 30}}.CloudC()
	near(t, "the wax alone", alone, 84, 1e-9)
	if dry, _ := (chem.Blend{{Fat: oil, G: 970}, {Fat: wax}}).CloudC(); dry != 10 {
		t.Errorf("no wax and no saturated acid cloud at %v", dry)
	}
}

func TestMoreWaxNeverSetsCooler(t *testing.T) {
	wax, last := tableFat(t, "beeswax"), 0.0
	wax.Resin = true
	for _, g := range []float64{0, 1, 5, 20, 50, 200, 1000, 1e6} {
		c, ok := append(blendA(t), chem.Part{Fat: wax, G: g}).CloudC()
		if !ok || c < last || c > 64 {
			t.Errorf("%v g of beeswax: %v (%v) after %v", g, c, ok, last)
		}
		last = c
	}
}
