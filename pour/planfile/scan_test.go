package planfile

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
	x := newIndex(text)
	for path, want := range map[string]place{
		"name": {2, 1}, "notes": {3, 1}, "base": {7, 1}, "base.blend": {8, 3}, "base.blend[0]": {9, 5}, "base.blend[0].s": {9, 19},
		"base.blend[1].at_min": {10, 7}, "base.carrier": {12, 1}, "base.a.b": {13, 1}, "base.a.b.c": {13, 8}, "base.a.b.c[1][0]": {13, 17},
		"base.jug": {14, 1}, "base.jug[0].colourant[0].dose_percent": {16, 1}, "base.jug[1]": {17, 1}, "base.jug[1].name": {18, 1},
		"base.jug[1].more.x": {20, 1},
	} {
		if got, ok := x.at[path]; !ok || got != want {
			t.Errorf("%s is found at %v, want %v", path, got, want)
		}
	}
	if strings.Join(x.comments, "|") != "one|two|three" {
		t.Errorf("comments: %q", x.comments)
	}
	if _, ok := x.at["no.header"]; ok {
		t.Error("a header was found inside a text")
	}
}

func TestAPathThatIsNotInTheFileIsFoundAtTheTableAroundIt(t *testing.T) {
	x := newIndex("[base]\n[[base.jug]]\nname = 1\n")
	for path, want := range map[string]place{
		"base.oils_g": {1, 1}, "base.jug[0].share_percent": {2, 1}, "base.jug[7].name": {2, 1}, "icing.oils_g": {}, "": {},
	} {
		if got := x.find(path); got != want {
			t.Errorf("%q is found at %v, want %v", path, got, want)
		}
	}
}

func TestEveryPlaceInAWrittenPlanPointsAtItsOwnKey(t *testing.T) {
	s := shelf(t)
	rapid.Check(t, func(rt *rapid.T) {
		text, err := encode(drawPlan(rt, s))
		if err != nil {
			rt.Fatal(err)
		}
		lines := strings.Split(text, "\n")
		for path, at := range newIndex(text).at {
			key := bare(path)[strings.LastIndex(bare(path), ".")+1:]
			rest := string([]rune(lines[at.line-1])[at.column-1:])
			if !strings.HasPrefix(rest, key) && !strings.HasPrefix(rest, "[") && !strings.HasPrefix(rest, "{") && !strings.HasPrefix(rest, `"`) {
				rt.Fatalf("%s is said to stand at %v, where the file has %q", path, at, rest)
			}
		}
	})
}

func TestTheScanEndsOnAnyText(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("ab.=[]{}\"'\\#,\n \té\ufeff")), 0, 60, -1).Draw(rt, "text")
		lines := strings.Split(text, "\n")
		for path, at := range newIndex(text).at {
			if at.line < 1 || at.line > len(lines) || at.column < 1 || at.column > utf8.RuneCountInString(lines[at.line-1])+1 {
				rt.Fatalf("%q is said to stand at %v of\n%s", path, at, text)
			}
		}
	})
}
