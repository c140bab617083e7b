package colour

import (
	"math"
	"testing"
)

// The words agree with the named colours of CSS Color 4 (section 6.1), and with what a kitchen calls a batter.
func TestAColoursWordIsWhatPeopleCallIt(t *testing.T) {
	for hex, want := range map[string]string{
		"#ffffff": "white", "#000000": "black", "#808080": "grey", "#ff0000": "red", "#0000ff": "blue", "#000080": "dark blue", "#008000": "green",
		"#ffff00": "yellow", "#ffa500": "orange", "#ffc0cb": "light pink", "#a52a2a": "red", "#8b4513": "brown", "#808000": "olive", "#ee82ee": "pink",
		"#40e0d0": "turquoise", "#8a2be2": "violet", "#add8e6": "light greyish blue", "#fffdd0": "cream", "#d3d3d3": "light grey", "#303030": "dark grey",
	} {
		c, err := ParseHex(hex)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Word(); got != want {
			t.Errorf("%s is called %q, want %q (%+v)", hex, got, want, c.OKLCH())
		}
	}
	if got := (RGB{R: math.NaN()}).Word(); got != "" {
		t.Errorf("what is no colour is called %q", got)
	}
}
