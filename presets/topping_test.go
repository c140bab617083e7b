package presets_test

import (
	"math"
	"regexp"
	"testing"

	"pourbench/pour"
)

func topping(t *testing.T, id string) pour.ToppingMaterial {
	t.Helper()
	m, ok := shelf(t).Topping(id)
	if !ok {
		t.Fatalf("no topping %q", id)
	}
	return m
}

// The figures of the reference's table of materials, by another hand: from what each of its own sources there says.
func TestToppingsMeltWhereTheirSourcesSay(t *testing.T) {
	for id, c := range map[string]float64{
		"cocoa-butter-curls": 33.8, "chocolate": 28, "paraffin-pieces": 63.3, "beeswax-pieces": 70.3, "carnauba-flakes": 87.9, "isomalt": 145,
		"melt-and-pour-pieces": 50,
	} {
		if m := topping(t, id); m.Heat.MeltsC != pour.Know(c) {
			t.Errorf("%s melts at %v, want %g", id, m.Heat.MeltsC, c)
		}
	}
	for _, id := range []string{"nonpareils", "coarse-salt", "mica-dust", "rose-petals", "polyester-glitter"} {
		if m := topping(t, id); m.Heat.MeltsC.Known {
			t.Errorf("%s melts at %v", id, m.Heat.MeltsC)
		}
	}
}

// CRC: 75.25 % for sodium chloride at 25 °C, 32.79 % for the hydrate of magnesium chloride; sucrose 85 %.
func TestToppingsWeepWhereTheirCrystalsDo(t *testing.T) {
	for id, rh := range map[string]float64{"sanding-sugar": 85, "nonpareils": 85, "coarse-salt": 75.25, "sea-salt": 32.79, "hard-candy": 60} {
		m := topping(t, id)
		if got := m.WeepsRH(25); !got.Known || math.Abs(got.V-rh) > 0.005 {
			t.Errorf("%s weeps from %v, want %g", id, got, rh)
		}
		if !m.Wet.Dissolves {
			t.Errorf("%s does not dissolve on wet soap", id)
		}
	}
	for _, id := range []string{"mica-dust", "beeswax-pieces", "rose-petals"} {
		if got := topping(t, id).WeepsRH(25); got.Known {
			t.Errorf("%s weeps from %v", id, got)
		}
	}
}

func TestToppingsWarnOfWhatTheyAre(t *testing.T) {
	flags := func(m pour.ToppingMaterial) string {
		out := ""
		for _, f := range []struct {
			is   bool
			word string
		}{{m.Dust, "dust "}, {m.Flammable, "flammable "}, {m.Plastic, "plastic "}, {m.Batter, "batter "}} {
			if f.is {
				out += f.word
			}
		}
		return out + "bleeds " + m.Alkali.Bleeds + " browns " + m.Alkali.Browns
	}
	for id, want := range map[string]string{
		"nonpareils": "bleeds yes browns no", "sanding-sugar": "bleeds no browns no", "calendula-petals": "bleeds no browns no",
		"rose-petals": "bleeds may browns yes", "lavender-buds": "bleeds may browns yes", "mica-dust": "dust bleeds may browns no",
		"mica-spray": "dust flammable bleeds may browns no", "alcohol-mist": "flammable bleeds no browns no",
		"polyester-glitter": "dust plastic bleeds no browns no", "mineral-glitter": "dust bleeds no browns no", "icing-drizzle": "batter bleeds no browns no",
	} {
		if got := flags(topping(t, id)); got != want {
			t.Errorf("%s: %s, want %s", id, got, want)
		}
	}
}

func TestToppingsAreUsable(t *testing.T) {
	hex := regexp.MustCompile(`^#[0-9a-f]{6}$`)
	for _, m := range shelf(t).Toppings {
		u := m.Use
		if !hex.MatchString(m.Colour) || u.HandsS <= 0 || u.StaysPercent > 100 {
			t.Errorf("%s: colour %q, %g s, %g %% stays", m.ID, m.Colour, u.HandsS, u.StaysPercent)
		}
		if strewn, dosed := u.CoverHighPercent > 0, u.DoseHighG > 0; strewn == dosed {
			t.Errorf("%s has neither coverage nor grams, or both: %+v", m.ID, u)
		}
		if u.CoverHighPercent > 0 && (u.SizeMM <= 0 || u.DensityGML <= 0) {
			t.Errorf("%s is strewn by coverage without size or density: %+v", m.ID, u)
		}
		if m.Kind == pour.ToppingDust && !m.Dust {
			t.Errorf("%s is dusted and does not warn of its dust", m.ID)
		}
		if m.Alkali.Bleeds != pour.ToppingNever && m.Alkali.Note == "" {
			t.Errorf("%s bleeds and does not say how", m.ID)
		}
		if len(m.Ingredients) == 0 != m.Batter {
			t.Errorf("%s lists %d ingredients", m.ID, len(m.Ingredients))
		}
	}
}
