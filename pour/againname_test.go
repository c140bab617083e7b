package pour

import (
	"strings"
	"testing"
)

func TestANameSaysHowOftenItIsPouredAgain(t *testing.T) {
	for was, want := range map[string]string{
		"Meadow": "Meadow, again", "Meadow, again": "Meadow, again 2", "Meadow, again 2": "Meadow, again 3", "Meadow, again and again": "Meadow, again and again, again",
		"Meadow, again x": "Meadow, again x, again", ", again": ", again, again", strings.Repeat("é", 80): strings.Repeat("é", 73) + ", again",
	} {
		if got := NameAgain(was); got != want || len([]rune(got)) > 80 {
			t.Errorf("%q becomes %q, want %q", was, got, want)
		}
	}
}

// What is poured again is of the same design, however often.
func TestAPlanThatPoursAgainIsOfTheSameDesign(t *testing.T) {
	for name, want := range map[string]string{
		"Meadow": "Meadow", "Meadow, again": "Meadow", "Meadow, again 3": "Meadow", "Meadow, again and again": "Meadow, again and again", ", again": ", again", "": "",
	} {
		if got := DesignName(name); got != want {
			t.Errorf("%q is of the design %q, want %q", name, got, want)
		}
	}
}
