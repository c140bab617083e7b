package strict

import (
	"math"
	"strings"
	"testing"
)

func TestParseNumberTakesCommaAndPoint(t *testing.T) {
	for text, want := range map[string]float64{
		"12": 12, "12.5": 12.5, "12,5": 12.5, " 0,45 ": 0.45, "-3": -3, "+2,5": 2.5, ".5": 0.5, ",5": 0.5, "16 %": 16, "0,125": 0.125, "1,2345": 1.2345, "1.234": 1.234,
	} {
		if got, err := ParseNumber(text); err != nil || got != want {
			t.Errorf("ParseNumber(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestParseNumberRefusesWhatCouldBeReadTwoWays(t *testing.T) {
	for text, teaches := range map[string]string{
		"": "nothing in it", "1.234,5": "comma and a point", "1,234": "could be 1234 or 1.234", "123,456": "could be 123456 or 123.456", "1.2.3": "two decimal signs",
		"NaN": "only digits", "inf": "only digits", "1e5": "only digits", "0x1p4": "only digits", "12 g": "only digits", "--1": "type digits", "٣": "only digits",
	} {
		if got, err := ParseNumber(text); err == nil || !strings.Contains(err.Error(), teaches) {
			t.Errorf("ParseNumber(%q) = %v, %v; want a refusal that says %q", text, got, err, teaches)
		}
	}
}

func FuzzParseNumber(f *testing.F) {
	for _, seed := range []string{"12,5", "1.234,5", "1,234", "NaN", "-0", "999999999999999999999", "1e309", "\x00"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := ParseNumber(text)
		if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("ParseNumber(%q) = %v without a refusal", text, v)
		}
		if err != nil && v != 0 {
			t.Fatalf("ParseNumber(%q) refuses and gives %v", text, v)
		}
	})
}

// A decimal comma is written as a point; what is no number, or could be two, stays for whoever reads it to refuse.
func TestADecimalCommaIsWrittenAsAPoint(t *testing.T) {
	for typed, want := range map[string]string{"0,25": "0.25", "16.00": "16.00", "3,5 ": "3.5 ", "1,234": "1,234", "a,b": "a,b", "1,2,3": "1,2,3", "": ""} {
		if got := WithPoint(typed); got != want {
			t.Errorf("%q is written %q, want %q", typed, got, want)
		}
	}
}
