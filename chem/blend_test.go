package chem_test

import (
	"math"
	"testing"

	"pourbench/chem"
)

// blendA is the blend of the worked examples: 1000 g of olive, coconut, palm and castor, 40/30/20/10. Its values are
// the middles of published ranges; every result worked out from them is a regression, to 0.01 g.
func blendA(t testing.TB) chem.Blend {
	t.Helper()
	return chem.Blend{
		{Fat: tableFat(t, "olive"), G: 400},
		{Fat: tableFat(t, "coconut"), G: 300},
		{Fat: tableFat(t, "palm"), G: 200},
		{Fat: tableFat(t, "castor"), G: 100},
	}
}

func TestBlendDemandIsTheMassWeightedSumRegression(t *testing.T) {
	b := blendA(t)
	_, mid, _ := b.DemandKOH()
	near(t, "demand", mid, 211.6, 1e-9)
	near(t, "saponification value", b.SapKOH(), 211.6, 1e-9)
	near(t, "mass", b.G(), 1000, 0)
}

func TestMoleBasisSapOfCoconutRegression(t *testing.T) {
	coconut, ok := tableFat(t, "coconut").TheorySap()
	if !ok {
		t.Fatal("no theory for coconut")
	}
	near(t, "coconut", coconut, 254.36, 0.005)
	if arithmetic := 247.22; math.Abs(coconut-arithmetic) < 5 {
		t.Errorf("coconut %v is near the arithmetic mean's %v", coconut, arithmetic)
	}
}

func TestTheoryOfTheExampleBlendRegression(t *testing.T) {
	sum := 0.0
	want := []float64{192.97, 254.36, 198.68, 181.94}
	for i, part := range blendA(t) {
		theory, ok := part.Fat.TheorySap()
		if !ok {
			t.Fatalf("no theory for part %d", i)
		}
		near(t, "part", theory, want[i], 0.005)
		sum += part.G / 1000 * theory
	}
	near(t, "blend", sum, 211.43, 0.005)
}

func TestBlendProfileAndIodineValueRegression(t *testing.T) {
	p, profiled := blendA(t).Profile()
	near(t, "profiled", profiled, 1, 1e-12)
	want := chem.Profile{
		chem.C6: 0.101, chem.C8: 2.114, chem.C10: 1.882, chem.C12: 14.282, chem.C14: 5.729, chem.C16: 16.718,
		chem.C16x1: 0.813, chem.C18: 3.047, chem.C18x1: 37.869, chem.C18x2: 7.989, chem.C18x3: 0.276, chem.C20: 0.246,
		chem.C20x1: 0.148, chem.C22: 0.059, chem.C24: 0.040, chem.Ricinoleic: 8.687,
	}
	sum := 0.0
	for i := range want {
		near(t, chem.Acid(i).Name(), 100*p[i], want[i], 0.0005)
		sum += p[i]
	}
	near(t, "sum", sum, 1, 1e-12)
	iodine, ok := blendA(t).IodineValue()
	if !ok {
		t.Error("no iodine value")
	}
	near(t, "iodine value", iodine, 55.10, 0.005)
}

func TestGlycerolOfACompleteSaponificationRegression(t *testing.T) {
	b := blendA(t)
	glycerol := b.GlycerolG()
	near(t, "glycerol", glycerol, 115.78, 0.01)
	_, koh, _ := b.DemandKOH()
	near(t, "sodium soap", 1000+koh*chem.AlkaliRatio-glycerol, 1035.07, 0.01)
	near(t, "potassium soap", 1000+koh-glycerol, 1095.82, 0.01)
	near(t, "fatty acid", 1000+koh/chem.MolarKOH*chem.MolarWater-glycerol, 952.17, 0.01)
}

func TestWaxesAndFreeAcidsGiveNoGlycerol(t *testing.T) {
	b := chem.Blend{{Fat: tableFat(t, "beeswax"), G: 30}, {Fat: tableFat(t, "jojoba"), G: 30}, {Fat: tableFat(t, "stearic_acid"), G: 40}}
	near(t, "glycerol", b.GlycerolG(), 0, 0)
	_, mid, _ := b.DemandKOH()
	near(t, "demand", mid, 0.03*95.5+0.03*92.2+0.04*203, 1e-9)
}

// Worked with the range the example prints, olive from 187; the table has since widened it to 184 (Codex, memory).
func TestPublishedRangeMovesTheSuperfatRegression(t *testing.T) {
	b := blendA(t)
	wide, _, _ := b.DemandKOH()
	b[0].Fat.SapLow = 187
	low, mid, high := b.DemandKOH()
	near(t, "low demand", low, 204.8, 1e-9)
	near(t, "high demand", high, 218.4, 1e-9)
	alkali := 0.95 * mid
	var order chem.LyeOrder
	near(t, "superfat, low", 100*order.SuperfatOf(0, alkali, low), 1.85, 0.005)
	near(t, "superfat, high", 100*order.SuperfatOf(0, alkali, high), 7.96, 0.005)
	near(t, "superfat, low, olive from 184", 100*order.SuperfatOf(0, alkali, wide), 1.27, 0.005)
	near(t, "discount at which the low case is just even", 100*(1-low/mid), 3.21, 0.005)
}

func TestFamiliesSumToAHundred(t *testing.T) {
	b := append(blendA(t), chem.Part{Fat: tableFat(t, "beeswax"), G: 50})
	f := b.Families()
	sum := f.ShortPercent + f.PalmiticStearicPercent + f.OleicPercent + f.LinoleicLinolenicPercent + f.RicinoleicPercent + f.OtherPercent
	near(t, "sum", sum, 100, 1e-9)
	near(t, "ricinoleic", f.RicinoleicPercent, 8.687/1.05, 0.001)
	near(t, "short", f.ShortPercent, (0.101+2.114+1.882+14.282+5.729)/1.05, 0.005)
	if f.OtherPercent < 100*50.0/1050 {
		t.Errorf("other %v leaves out the wax without a profile", f.OtherPercent)
	}
}

// A fat of one acid alone belongs to one family, all of it; what is listed nowhere is among the others.
func TestEveryAcidIsInOneFamily(t *testing.T) {
	for a := range chem.Acid(chem.AcidCount) {
		fat := chem.Fat{Kind: chem.Triglyceride, Sap: 190}
		fat.Profile[a] = 0.5 // the rest of it not known: the acids are taken as parts of what is
		f := chem.Blend{{Fat: fat, G: 7}}.Families()
		family := map[chem.Acid]float64{
			chem.C6: f.ShortPercent, chem.C8: f.ShortPercent, chem.C10: f.ShortPercent, chem.C12: f.ShortPercent, chem.C14: f.ShortPercent,
			chem.C16: f.PalmiticStearicPercent, chem.C18: f.PalmiticStearicPercent, chem.C18x1: f.OleicPercent,
			chem.C18x2: f.LinoleicLinolenicPercent, chem.C18x3: f.LinoleicLinolenicPercent, chem.Ricinoleic: f.RicinoleicPercent,
		}
		got, listed := family[a]
		if !listed {
			got = f.OtherPercent
		}
		near(t, a.Name(), got, 100, 1e-9)
		near(t, a.Name()+", all families", f.ShortPercent+f.PalmiticStearicPercent+f.OleicPercent+f.LinoleicLinolenicPercent+f.RicinoleicPercent+f.OtherPercent, 100, 1e-9)
	}
}

// By hand: 3 g all lauric and 1 g all oleic, whatever their published acids sum to. What has no mass says nothing and hides nothing.
func TestAProfileIsWeightedByMassAlone(t *testing.T) {
	lauric, oleic := chem.Fat{Kind: chem.Triglyceride, DensityGML: 0.9, DensityC: 20}, chem.Fat{Kind: chem.Triglyceride, DensityGML: 0.8, DensityC: 20}
	lauric.Profile[chem.C12], oleic.Profile[chem.C18x1] = 0.5, 1.6
	blend := chem.Blend{{Fat: chem.Fat{}, G: 0}, {Fat: lauric, G: 3}, {Fat: oleic, G: 1}}
	p, profiled := blend.Profile()
	near(t, "lauric", p[chem.C12], 0.75, 1e-12)
	near(t, "oleic", p[chem.C18x1], 0.25, 1e-12)
	near(t, "profiled", profiled, 1, 0)
	iodine, ok := blend.IodineValue()
	near(t, "iodine value, 0.860 for every percent of oleic", iodine, 86./4, 1e-9)
	near(t, "volume", blend.ML(20), 3/0.9+1/0.8, 1e-12)
	if !ok {
		t.Error("an oil of no mass hides the iodine value")
	}
}

func TestBlendIodineValueTakesThePublishedRangeOfAWax(t *testing.T) {
	iodine, ok := chem.Blend{{Fat: tableFat(t, "beeswax"), G: 10}}.IodineValue()
	if !ok {
		t.Error("no iodine value for beeswax")
	}
	near(t, "beeswax, middle of 7 to 16", iodine, 11.5, 1e-12)
	unknown := chem.Blend{{Fat: tableFat(t, "olive"), G: 10}, {Fat: chem.Fat{Kind: chem.WaxEster, Sap: 90}, G: 1}}
	if iodine, ok := unknown.IodineValue(); ok {
		t.Errorf("a fat without any iodine value gives the blend %v", iodine)
	}
}

// Lipid Handbook slope (memory); the density itself is the table's.
func TestBlendVolumeGrowsWithWarmth(t *testing.T) {
	olive := chem.Blend{{Fat: tableFat(t, "olive"), G: 911.4}}
	near(t, "at 20", olive.ML(20), 1000, 1e-9)
	near(t, "at 40", olive.ML(40), 911.4/(0.9114-0.0134), 1e-9)
	if v := (chem.Blend{{Fat: chem.Fat{Sap: 190}, G: 1}}).ML(20); !math.IsNaN(v) {
		t.Errorf("a fat without density fills %v mL", v)
	}
}

func TestEmptyBlendGivesNoFigure(t *testing.T) {
	var b chem.Blend
	if _, profiled := b.Profile(); profiled != 0 {
		t.Errorf("profiled %v of nothing", profiled)
	}
	if _, ok := b.IodineValue(); ok {
		t.Error("nothing has an iodine value")
	}
	if _, ok := b.CloudC(); ok {
		t.Error("nothing has a cloud point")
	}
	if b.Families() != (chem.Families{}) {
		t.Errorf("nothing has families %v", b.Families())
	}
	if !math.IsNaN(b.SapKOH()) {
		t.Errorf("nothing has a saponification value %v", b.SapKOH())
	}
}
