package presets_test

import (
	"strings"
	"testing"

	"pourbench/chem/colour"
)

func TestAMakersOilMayHaveATint(t *testing.T) {
	s, err := overlay(t, `format = 1
[[oil]]
id = "olive"
tint = "#D9D79A"
[[oil]]
id = "my-plum"
name = "plum kernel"
sap_koh_mg_g = 190
density_g_ml = 0.91
`)
	if err != nil {
		t.Fatal(err)
	}
	built, _ := shelf(t).Oil("olive")
	olive, _ := s.Oil("olive")
	if olive.Tint != "#d9d79a" || olive.TintSource.Confidence != "own" || olive.Fat != built.Fat || olive.SapSource != built.SapSource {
		t.Errorf("olive is %s (%+v)", olive.Tint, olive.TintSource)
	}
	if plum, _ := s.Oil("my-plum"); plum.Tint != colour.PlainBatter || plum.TintSource.Confidence != "common practice" {
		t.Errorf("an oil without a tint is %q (%+v)", plum.Tint, plum.TintSource)
	}
	if _, err := overlay(t, "format = 1\n[[oil]]\nid = \"olive\"\ntint = \"greenish\"\n"); err == nil || !strings.Contains(err.Error(), "tint") {
		t.Errorf("a tint of no colour: %v", err)
	}
}

// Every oil of the shelf says its own colour: none is left at what stands for an unknown one by oversight.
func TestEveryOilOfTheShelfHasATint(t *testing.T) {
	cream := 0
	for _, o := range shelf(t).Oils {
		rgb, err := colour.ParseHex(o.Tint)
		if err != nil || rgb.Luminance() > 0.95 {
			t.Errorf("%s: %q, %v", o.ID, o.Tint, err)
		}
		if o.Tint == colour.PlainBatter {
			cream++
		}
	}
	if cream > 4 {
		t.Errorf("%d oils are plain cream", cream)
	}
}

// Chromium oxide green is a sage, not an olive: between the greens of a leaf and of the hydrated oxide (hue, OKLCH, by eye).
func TestChromiumGreenIsNoOlive(t *testing.T) {
	s, hue := shelf(t), map[string]float64{}
	for _, id := range []string{"nettle", "chromium-green-oxide", "hydrated-chromium-green"} {
		c, _ := s.Colourant(id)
		rgb, err := colour.ParseHex(c.Colour)
		if err != nil {
			t.Fatal(err)
		}
		hue[id] = rgb.OKLCH().H
	}
	if h := hue["chromium-green-oxide"]; h < 142 || h > 155 || h < hue["nettle"]+15 || h > hue["hydrated-chromium-green"]-10 {
		t.Errorf("hues %v", hue)
	}
}
