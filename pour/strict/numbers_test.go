package strict

import (
	"slices"
	"strings"
	"testing"
)

func TestALineOfNumbersIsReadAsItIsMeant(t *testing.T) {
	for text, want := range map[string][]float64{
		"": nil, "  ": nil, "25": {25}, "0 25.5 51": {0, 25.5, 51}, "0 25,5 51": {0, 25.5, 51}, "0, 25.5, 51": {0, 25.5, 51}, "0;25,5;51": {0, 25.5, 51}, " 0 ; 25 ": {0, 25}, "3, 25,5, 51,": {3, 25.5, 51},
	} {
		if got, err := ParseNumbers(text); err != nil || !slices.Equal(got, want) {
			t.Errorf("ParseNumbers(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestALineThatIsNoListOfNumbersSaysWhichOneIsNot(t *testing.T) {
	for text, want := range map[string][]string{
		"25,50,75": {"number 1", "blanks between"}, "25.50.75": {"blanks between"}, "0 25 x": {"number 3", "digits"}, "10 1,250": {"number 2", "could be 1250"}, "10 - 20": {"number 2"}, "1 NaN": {"number 2"}, "1 Inf": {"number 2"},
	} {
		got, err := ParseNumbers(text)
		for _, w := range want {
			if err == nil || !strings.Contains(err.Error(), w) {
				t.Errorf("ParseNumbers(%q) = %v, %v; want an error with %q", text, got, err, w)
			}
		}
	}
}
