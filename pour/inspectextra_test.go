package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// What meets lye with a danger of its own says so, as a caution, with what to do where it joins.
func TestExtrasThatMeetLyeAreCautions(t *testing.T) {
	for _, c := range []struct {
		extra, in string
		code, do  string
	}{
		{"sugar", "", "lye-meets-sugar", "before the alkali"},
		{"honey", pour.InOils, "lye-meets-sugar", "at emulsion"},
		{"honey", pour.InLye, "lye-meets-sugar", "little by little"},
		{"cow-milk", pour.InLye, "lye-meets-milk", "ice-cold to the cooled lye"},
		{"cow-milk", pour.InOils, "lye-meets-milk", "at emulsion"},
		{"cow-milk", pour.InWater, "lye-meets-milk", "a spoonful at a time"},
		{"beer", pour.InLye, "lye-meets-alcohol", "boil the alcohol"},
		{"beer", pour.InWater, "lye-meets-alcohol", "a spoonful at a time"},
		{"citric-acid", "", "lye-meets-acid", "never onto dry alkali"},
		{"pumpkin-puree", pour.InWater, "lye-on-ice", "a spoonful at a time"},
	} {
		p, shelf := halves(t)
		p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
		p.Base.Extras = []pour.ExtraPart{{Extra: c.extra, PercentOfOils: 2, In: c.in}}
		if w, ok := found(pour.Weigh(p, shelf), c.code); !ok || w.Severity != pour.Caution || !strings.Contains(w.Do, c.do) {
			t.Errorf("%s in %q: %+v, want %q", c.extra, c.in, w, c.do)
		}
	}
}

// The bounds themselves are usual; salt from 15 % on makes a salt bar.
func TestDosesAreUsualFromBoundToBound(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	shelf.Extras = append(slices.Clone(shelf.Extras), pour.Extra{ID: "husk", Name: "husk", Kind: pour.ExtraPlain, In: pour.InOils, DoseLowPercent: 0.5, DoseHighPercent: 3})
	for _, c := range []struct {
		extra   string
		percent float64
		code    string
	}{{"husk", 0.5, ""}, {"husk", 3, ""}, {"husk", 0.49, "dose-unusual"}, {"husk", 3.01, "dose-unusual"}, {"salt", 14.9, "dose-unusual"}, {"salt", 15, "salt-bar"}} {
		p.Base.Extras = []pour.ExtraPart{{Extra: c.extra, PercentOfOils: c.percent}}
		s := pour.Weigh(p, shelf)
		for _, code := range []string{"dose-unusual", "salt-bar"} {
			if _, ok := found(s, code); ok != (code == c.code) {
				t.Errorf("%v %% of %s: %s is said %v", c.percent, c.extra, code, ok)
			}
		}
	}
}

// 147 g of NaOH in lye of 25 % have 442 g of water, milk's and all, which dissolve 0.359·442 = 159 g of salt and not 180.
func TestASaltBarsSaltDissolvesInAllOfTheWater(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants, p.Base.LyeConcentrationPercent = 5, nil, 25
	for _, milk := range []float64{0, 40} {
		for percent, more := range map[float64]bool{15: false, 18: true} {
			p.Base.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: percent}, {Extra: "cow-milk", PercentOfOils: milk, In: pour.InWater}}
			if w, ok := found(pour.Weigh(p, shelf), "salt-bar"); !ok || strings.Contains(w.Text, "dissolves") != more {
				t.Errorf("%v %% of salt beside %v %% of milk: %+v", percent, milk, w)
			}
		}
	}
}

// Every powder that dusts is named once, from jugs and extras of base and icing.
func TestTheDustNoteNamesEveryPowder(t *testing.T) {
	p, shelf := halves(t)
	shelf.Extras = append(slices.Clone(shelf.Extras), pour.Extra{ID: "flour", Name: "flour", Dust: true, In: pour.InOils}, pour.Extra{ID: "syrup", Name: "syrup", In: pour.InOils})
	shelf.Colourants = append(slices.Clone(shelf.Colourants),
		pour.Colourant{ID: "soot", Name: "soot", Dust: true, Colour: "#101010", DoseHighPercent: 1}, pour.Colourant{ID: "paste", Name: "paste", Colour: "#101010", DoseHighPercent: 1},
		pour.Colourant{ID: "chalk", Name: "chalk", Dust: true, Colour: "#f0f0f0", DoseHighPercent: 1})
	shelf, err := shelf.Prepared()
	if err != nil {
		t.Fatal(err)
	}
	p.Base.SuperfatPercent = 9
	p.Base.Jugs[1].Colourants = []pour.Dose{{Colourant: "soot", DosePercent: 0.5}, {Colourant: "paste", DosePercent: 0.5}}
	p.Base.Extras = []pour.ExtraPart{{Extra: "syrup", PercentOfOils: 1}}
	icing := p.Base.Clone()
	icing.Size, icing.PerBarG = pour.SizeBar, 25
	icing.Extras = []pour.ExtraPart{{Extra: "flour", PercentOfOils: 1}}
	icing.Jugs = []pour.Jug{{Name: "snow", SharePercent: 100, Colourants: []pour.Dose{{Colourant: "chalk", DosePercent: 0.5}, {Colourant: "soot", DosePercent: 0.1}}}}
	p.Icing = &icing
	if w, _ := found(pour.Weigh(p, shelf), "dust"); w.Text != "fine powder: soot, flour, chalk" {
		t.Errorf("said %q", w.Text)
	}
}
