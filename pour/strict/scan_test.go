package strict

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestEveryKeyIsFoundWhereItStands(t *testing.T) {
	text := "# one\n" +
		"name = 'a # no comment [x]' # two\n" +
		"notes = \"\"\"\n[no.header]\nx = 1 \\\"\"\" # no comment\n\"\"\"\"\"\n" +
		"[base]\n" +
		"  blend = [\n    { at_min = 0, s = 1 }, # three\n    { at_min = 2, s = 3 },\n  ]\n" +
		"'carrier' = \"é\"\n" +
		"a.b = {c = [1, [2, 3]]}\n" +
		"[[base.jug]]\n" +
		"[[base.jug.colourant]]\n" +
		"dose_percent = 1\n" +
		"[[ base . jug ]]\n" +
		"name = 1\n" +
		"[base.jug.more]\n" +
		"x = 1e3\n"
	x := newScanner(text, true)
	x.all()
	for path, want := range map[string]place{
		"name": {2, 1}, "notes": {3, 1}, "base": {7, 1}, "base.blend": {8, 3}, "base.blend[0]": {9, 5}, "base.blend[0].s": {9, 19},
		"base.blend[1].at_min": {10, 7}, "base.carrier": {12, 1}, "base.a.b": {13, 1}, "base.a.b.c": {13, 8}, "base.a.b.c[1][0]": {13, 17},
		"base.jug": {14, 1}, "base.jug[0].colourant[0].dose_percent": {16, 1}, "base.jug[1]": {17, 1}, "base.jug[1].name": {18, 1},
		"base.jug[1].more.x": {20, 1},
	} {
		if got, ok := x.places[path]; !ok || got != want {
			t.Errorf("%s is found at %v, want %v", path, got, want)
		}
	}
	if got := strings.Join(Comments(text), "|"); got != "one|two|three" {
		t.Errorf("comments: %q", got)
	}
	if _, ok := x.places["no.header"]; ok {
		t.Error("a header was found inside a text")
	}
}

func TestTextsEndWhereTheyEnd(t *testing.T) {
	for text, column := range map[string]int{
		"a = ['x', 2]": 11, `a = ["x\"", 2]`: 13, `a = ['x\', 2]`: 12, "a = ['''x''', 2]": 15, "a = ['''x''''', 2]": 17,
		`a = ["""x""", 2]`: 15, `a = ["""x""""", 2]`: 17, `a = ["""x\"""", 2]`: 17, `a = ["", 2]`: 10, `a = ['', 2]`: 10, "a = ['é', 2]": 11,
	} {
		if line, got := open(t, text).Place("a[1]"); line != 1 || got != column {
			t.Errorf("%s: the second item is found at %d:%d, want column %d", text, line, got, column)
		}
	}
}

func TestAPathThatIsNotInTheFileIsFoundAtTheTableAroundIt(t *testing.T) {
	x := open(t, "[base]\n[[base.jug]]\nname = 1\n")
	for path, want := range map[string]place{
		"base.oils_g": {1, 1}, "base.jug[0].share_percent": {2, 1}, "base.jug[7].name": {2, 1}, "icing.oils_g": {}, "": {},
	} {
		if line, column := x.Place(path); (place{line, column}) != want {
			t.Errorf("%q is found at %d:%d, want %v", path, line, column, want)
		}
	}
}

func TestTheScanEndsOnAnyText(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("ab.=[]{}\"'\\#,\n \té\ufeff")), 0, 60, -1).Draw(rt, "text")
		lines := strings.Split(text, "\n")
		x := newScanner(text, true)
		x.all()
		for path, at := range x.places {
			if at.line < 1 || at.line > len(lines) || at.column < 1 || at.column > utf8.RuneCountInString(lines[at.line-1])+1 {
				rt.Fatalf("%q is said to stand at %v of\n%s", path, at, text)
			}
		}
	})
}
