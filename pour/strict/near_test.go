package strict

import (
	"errors"
	"io/fs"
	"math"
	"strings"
	"testing"
)

func TestWhatWasProbablyMeant(t *testing.T) {
	keys := []string{"share_percent", "dose_percent", "held", "name", "olive", "titanium-white", "mm", "in"}
	for word, want := range map[string]string{
		"share_procent": "share_percent", "SHARE_PERCENT": "share_percent", "share": "share_percent", "dose": "dose_percent", "percent": "share_percent",
		"white": "titanium-white", "oli": "olive", "oliv": "olive", "olvie": "olive", "helt": "held", "im": "in", "mmm": "mm", "naem": "name", "ehld": "held",
		"": "", "x": "", "zz": "", "sh": "", "colour": "", "hlxx": "", "nam_": "name", "ercent": "", strings.Repeat("share_percent", 4): "",
	} {
		if got := Nearest(word, keys); got != want {
			t.Errorf("%q was taken for %q, want %q", word, got, want)
		}
	}
	if got := Nearest("sene", []string{"done", "seen"}); got != "seen" {
		t.Errorf("of two as near, %q was taken, want the one that begins alike", got)
	}
	if got := Nearest("xm", []string{"ym", "zm"}); got != "ym" {
		t.Errorf("of two as near, %q was taken, want the first", got)
	}
	if got := Nearest(strings.Repeat("a", 40), []string{strings.Repeat("a", 39)}); got == "" {
		t.Error("a word of forty letters has no neighbour")
	}
	if got := Nearest("abc", nil); got != "" {
		t.Errorf("of nothing, %q was taken", got)
	}
	if got := Nearest("ab", []string{"", "abc"}); got != "abc" {
		t.Errorf("%q", got)
	}
}

func TestAdviceOnAWordThatIsNotKnown(t *testing.T) {
	for _, x := range []struct{ word, then, want string }{
		{"olvie", "", `did you mean "olive"?`},
		{"olvie", "Or add it", `did you mean "olive"? Or add it`},
		{"lard", "Or add it", "take another"},
	} {
		if got := Meant(x.word, []string{"olive"}, "take another", x.then); got != x.want {
			t.Errorf("%s: %s, want %s", x.word, got, x.want)
		}
	}
}

func TestANumberOutsideItsRangeSaysWhichItIs(t *testing.T) {
	for _, x := range []struct {
		v    float64
		want string
	}{
		{500, "a.b = 500: is outside what can be; write a number from -5 to 40"},
		{math.NaN(), "a.b = NaN: is not a number; write a number from -5 to 40"},
		{math.Inf(1), "a.b = +Inf: is not a number; write a number from -5 to 40"},
	} {
		if got := Outside("a.b", x.v, -5, 40).Error(); got != x.want {
			t.Errorf("%s, want %s", got, x.want)
		}
	}
}

func TestAFaultIsToldOnOneLineAndAnErrorOnTwo(t *testing.T) {
	f := Fault{File: "p.toml", Line: 3, Column: 4, Path: "a", Value: "1", Problem: "is wrong", Mend: "write 2"}
	if got, want := f.Error(), "p.toml:3:4: a = 1: is wrong; write 2"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if got, want := (&Error{Faults: []Fault{f}}).Error(), "p.toml:3:4: a = 1: is wrong\n    to mend: write 2"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	for want, f := range map[string]Fault{
		"is wrong": {Problem: "is wrong"}, "p.toml: is wrong": {File: "p.toml", Problem: "is wrong"},
		"a: is wrong; mend it": {Path: "a", Problem: "is wrong", Mend: "mend it"}, "p.toml: a: is wrong": {File: "p.toml", Path: "a", Problem: "is wrong"},
	} {
		if got := f.Error(); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	if err := Refuse("a\x1bb", fs.ErrExist, "m"); !errors.Is(err, fs.ErrExist) || strings.Contains(err.Error(), "\x1b") {
		t.Errorf("%v", err)
	}
}
