package presets_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/script"
	"pourbench/presets"
)

func shelf(t testing.TB) pour.Shelf {
	t.Helper()
	s, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// entry is what every entry of the shelf has.
type entry struct {
	table, id, name string
	sources         []pour.Source
}

func entries(s pour.Shelf) []entry {
	var all []entry
	for _, o := range s.Oils {
		all = append(all, entry{"oil", o.ID, o.Name, []pour.Source{o.INCISource, o.SapSource, o.IodineSource, o.DensitySource, o.FattyAcidSource, o.FreeAcidSource, o.SaltSource, o.TintSource}})
	}
	for _, c := range s.Colourants {
		all = append(all, entry{"colourant", c.ID, c.Name, []pour.Source{c.Source}})
	}
	for _, x := range s.Extras {
		all = append(all, entry{"extra", x.ID, x.Name, []pour.Source{x.Source}})
	}
	for _, f := range s.Families {
		all = append(all, entry{"family", f.ID, f.Name, []pour.Source{f.Source}})
	}
	for _, sc := range s.Scents {
		all = append(all, entry{"scent", sc.ID, sc.Name, []pour.Source{sc.Source}})
	}
	for _, a := range s.Allergens {
		all = append(all, entry{"allergen", a.Entry, a.Name, []pour.Source{{Text: a.From, Confidence: a.Confidence}}})
	}
	for _, m := range s.Moulds {
		all = append(all, entry{"mould", m.ID, m.Name, []pour.Source{m.Source}})
	}
	for _, te := range s.Techniques {
		all = append(all, entry{"technique", te.ID, te.Name, []pour.Source{te.Source}})
	}
	for _, m := range s.Toppings {
		all = append(all, entry{"topping", m.ID, m.Name, []pour.Source{m.Heat.Source, m.Wet.Source, m.Alkali.Source, m.Use.Source}})
	}
	for _, n := range s.Names {
		sources := []pour.Source{n.Source}
		if n.Salts.Sodium != "" {
			sources = append(sources, n.SaltSource)
		}
		all = append(all, entry{"name", n.ID, n.INCI, sources})
	}
	return all
}

func TestEveryEntryHasAnIDANameAndASource(t *testing.T) {
	kebab := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	sourceID := regexp.MustCompile(`\bS\d\d\b`)
	words := " read read (2nd-hand) derived mixed memory common practice invented "
	seen := map[string]bool{}
	for _, e := range entries(shelf(t)) {
		if !kebab.MatchString(e.id) || seen[e.table+e.id] {
			t.Errorf("%s %q: the id is not kebab-case or stands twice", e.table, e.id)
		}
		seen[e.table+e.id] = true
		if e.name == "" {
			t.Errorf("%s %q has no name", e.table, e.id)
		}
		for _, src := range e.sources {
			if len(src.Text) < 10 || sourceID.MatchString(src.Text) {
				t.Errorf("%s %q: %q names no document", e.table, e.id, src.Text)
			}
			if !strings.Contains(words, " "+src.Confidence+" ") {
				t.Errorf("%s %q: confidence %q is not one of%s", e.table, e.id, src.Confidence, words)
			}
		}
	}
}

func TestTheShelfIsWellStocked(t *testing.T) {
	s := shelf(t)
	for _, c := range []struct {
		table     string
		have, few int
	}{
		{"oils", len(s.Oils), 36},
		{"colourants", len(s.Colourants), 24},
		{"extras", len(s.Extras), 14},
		{"families", len(s.Families), 14},
		{"scents", len(s.Scents), 12},
		{"moulds", len(s.Moulds), 6},
		{"techniques", len(s.Techniques), 10},
		{"toppings", len(s.Toppings), 30},
		{"names", len(s.Names), 140},
	} {
		if c.have < c.few {
			t.Errorf("%d %s, want %d or more", c.have, c.table, c.few)
		}
	}
}

func TestColourantsAreUsable(t *testing.T) {
	hex := regexp.MustCompile(`^#[0-9a-f]{6}$`)
	for _, c := range shelf(t).Colourants {
		if !hex.MatchString(c.Colour) {
			t.Errorf("%s: colour %q", c.ID, c.Colour)
		}
		if !(0 < c.DoseLowPercent && c.DoseLowPercent < c.DoseHighPercent && c.DoseHighPercent <= 3) {
			t.Errorf("%s: doses %g to %g %%", c.ID, c.DoseLowPercent, c.DoseHighPercent)
		}
		if c.Alkali != pour.AlkaliStable && c.AlkaliNote == "" {
			t.Errorf("%s is not stable in alkali and does not say how", c.ID)
		}
		if (c.Class == "pigment" || c.Class == "mica") && !c.Dust {
			t.Errorf("%s is a fine powder and does not warn of its dust", c.ID)
		}
	}
}

func TestTitaniumWhiteComesInBothGrades(t *testing.T) {
	s := shelf(t)
	for id, disperse := range map[string]string{"titanium-white-oil": pour.DisperseOil, "titanium-white-water": pour.DisperseWater} {
		c, ok := s.Colourant(id)
		if !ok || c.Disperse != disperse || !c.Titanium || !c.White {
			t.Errorf("%s = %+v, want a titanium white that wets in %s", id, c, disperse)
		}
	}
	if c, _ := s.Colourant("ferric-ferrocyanide"); c.Alkali != pour.AlkaliDies {
		t.Errorf("ferric ferrocyanide is %q in alkali, want %q", c.Alkali, pour.AlkaliDies)
	}
}

func TestExtrasBringTheirWaterAndTheirAcid(t *testing.T) {
	s := shelf(t)
	for _, c := range []struct {
		id, kind     string
		water, alkal float64
		factor       float64 // assumed, the clock's own table
	}{
		{"sugar", pour.ExtraSugar, 0, 0, 1.2},
		{"sodium-lactate", pour.ExtraSalt, 40, 0, 1}, // a 60 % solution
		{"goat-milk", pour.ExtraMilk, 87, 0, 1.2},
		{"beer", pour.ExtraAlcohol, 93, 0, 1.5},
		{"kaolin", pour.ExtraClay, 0, 0, 1.1},
		{"citric-acid", pour.ExtraAcid, 0, 3 * chem.MolarKOH / 192.123 * 1000, 1}, // three protons, molar mass 192.123
	} {
		x, ok := s.Extra(c.id)
		if !ok || x.Kind != c.kind || x.WaterPercent != c.water || math.Abs(x.AlkaliKOHMgG-c.alkal) > 0.001 || x.ClockFactor != c.factor {
			t.Errorf("%s = %+v, want %+v", c.id, x, c)
		}
	}
	for _, x := range s.Extras {
		if x.DoseLowPercent >= x.DoseHighPercent || x.DensityGML <= 0 || x.ClockFactor < 1 || x.ClockSD <= 0 || x.Caution == "" {
			t.Errorf("%s is not filled: %+v", x.ID, x)
		}
	}
}

func TestScentsBehaveInWordsTheClockKnows(t *testing.T) {
	s := shelf(t)
	for _, f := range s.Families {
		if _, _, ok := clock.ScentPrior(f.Behaviour); !ok {
			t.Errorf("family %s: the clock does not know %q", f.ID, f.Behaviour)
		}
	}
	for _, sc := range s.Scents {
		if _, _, ok := clock.ScentPrior(s.BehaviourOf(sc)); !ok {
			t.Errorf("scent %s: the clock does not know %q", sc.ID, s.BehaviourOf(sc))
		}
		if len(sc.Families) == 0 || sc.DensityGML <= 0 || sc.FlashC <= 0 {
			t.Errorf("scent %s is not filled: %+v", sc.ID, sc)
		}
	}
}

func TestOnlyInventedScentsCarryALimit(t *testing.T) {
	for _, sc := range shelf(t).Scents {
		if sc.Invented != (sc.LimitPercent > 0) || sc.Invented != (sc.Source.Confidence == "invented") {
			t.Errorf("%s: limit %g, invented %v, confidence %q", sc.ID, sc.LimitPercent, sc.Invented, sc.Source.Confidence)
		}
		if !sc.Invented && len(sc.Allergens) > 0 {
			t.Errorf("%s: a real oil's allergens belong to its own lot", sc.ID)
		}
	}
}

func TestMouldsHoldWholeBars(t *testing.T) {
	for _, m := range shelf(t).Moulds {
		bars := m.Mould.AlongMM() / m.Mould.ThicknessMM()
		if bars != math.Trunc(bars) || m.Mould.FillMM >= m.Mould.HeightMM {
			t.Errorf("%s: %g bars, filled %g of %g mm", m.ID, bars, m.Mould.FillMM, m.Mould.HeightMM)
		}
		if m.Mould.Shape == "slab" && math.Mod(m.Mould.WidthMM, m.Mould.BarWidthMM) != 0 {
			t.Errorf("%s: %g mm of width in bars of %g", m.ID, m.Mould.WidthMM, m.Mould.BarWidthMM)
		}
	}
}

func TestEveryTechniqueCanBeDrawnAsTheShelfSays(t *testing.T) {
	listed := map[script.Technique]bool{}
	for _, te := range shelf(t).Techniques {
		drawn := script.Technique(te.ID)
		listed[drawn] = true
		if !drawn.Known() || !script.Technique(te.Kind).Known() {
			t.Errorf("%s of kind %s cannot be drawn", te.ID, te.Kind)
		}
		if te.Passes != 0 || te.Turns != 0 || te.HeightMM != 0 {
			t.Errorf("%s sets dials: those of the picture would stand in two places", te.ID)
		}
		if te.Do == "" || te.From > te.To {
			t.Errorf("%s is not filled: %+v", te.ID, te)
		}
	}
	for _, drawn := range script.Techniques() {
		if !listed[drawn] {
			t.Errorf("%s can be drawn but is not on the shelf", drawn)
		}
	}
}

func TestTechniquesSuitTheStagesMakersUseThemAt(t *testing.T) {
	s := shelf(t)
	for id, stages := range map[string][2]chem.Stage{ // common practice, no source
		"pot": {chem.Light, chem.Light}, "drop": {chem.Light, chem.Medium}, "column": {chem.Light, chem.Light},
		"hanger": {chem.Emulsion, chem.Light}, "layers": {chem.Medium, chem.Thick}, "spoon": {chem.Medium, chem.Thick},
	} {
		te, _ := s.Technique(id)
		if te.From != stages[0] || te.To != stages[1] {
			t.Errorf("%s suits %s to %s, want %s to %s", id, te.From, te.To, stages[0], stages[1])
		}
	}
}
