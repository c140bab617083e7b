package label_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/label"
)

// The worked example cured to 10 % of water weighs 1305.56 g, of which 130.56 g are water: less than its Sodium Shea Butterate (195.59 g), more than its
// Glycerin (108.22 g).
func TestWaterOfTheCuredBarInTheWorkedExample(t *testing.T) {
	for _, c := range []struct {
		style label.Style
		cured float64
		after string
	}{
		{label.AsSalts, 1305.56, "Sodium Shea Butterate"},
		{label.AsAdded, 1305.56, "Sodium Hydroxide"},
		{label.AsSalts, 1461.28 - 286.28 + 108.23, "Sodium Shea Butterate"},
		{label.AsSalts, 1461.28 - 286.28 + 108.21, "Glycerin"},
		{label.AsSalts, 1461.28 - 286.28, "Butyrospermum Parkii Butter"},
		{label.AsSalts, 1461.28 - 90.6, ""},
		{label.AsSalts, 1461.28 - 90.8, "Sodium Shea Butterate"},
		{label.AsSalts, 1461.28, ""},
		{label.AsSalts, 1461.3, ""},
		{label.AsSalts, 0, ""},
		{label.AsSalts, math.NaN(), ""},
	} {
		list := lines(t, c.style, s1(), listEU())
		got := label.Dried(list, c.cured, listEU())
		if (got == "") != (c.after == "") || !strings.HasSuffix(got, c.after) {
			t.Errorf("%s, %v g: %q, want after %q", c.style, c.cured, got, c.after)
		}
	}
	if got := label.Dried(lines(t, label.AsSalts, s1()[:1], listEU()), 400, listEU()); got != "" {
		t.Errorf("without water: %q", got)
	}
	// Scent that stands last is not what water is compared with.
	perfumed := label.List([]label.Entry{{Name: waterName(), Text: "Aqua", G: 5, Class: label.Plain}, {Text: "Parfum", G: 4, Class: label.Perfume}}, listCA())
	if got := label.Dried(perfumed, 5, listCA()); got != "" {
		t.Errorf("scent at the end: %q", got)
	}
}
