package planfile

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// refusal is one mistake made in the meadow plan: old becomes wrong, and the problem stands at the text at.
type refusal struct {
	name, old, wrong string
	at               string
	says             []string
}

func syntaxRefusals() []refusal {
	return []refusal{
		{"a decimal comma", "percent = 40", "percent = 40,5", ",5", []string{"decimal point: 40.5"}},
		{"a unit after the number", "fill_mm = 62", "fill_mm = 62 mm", " mm\nbar_mm", []string{"alone, 62"}},
		{"a word without quotes", `oil = "olive"`, "oil = olive", "olive", []string{`"olive"`}},
		{"curly quotes", `oil = "olive"`, "oil = “olive”", "“", []string{"straight quotes"}},
		{"an open quote", `oil = "olive"`, `oil = "olive`, "", []string{"double quote"}},
		{"an open header", "[room]", "[room", "", []string{"close the header"}},
		{"a key twice", "fill_mm = 62", "fill_mm = 62\nfill_mm = 63", "", []string{"stand once"}},
		{"a section twice", "[room]", "[mould]\n[room]", "", []string{"stand once"}},
		{"a list that is not closed", `into = ["pot", "fern"]`, `into = ["pot", "fern"`, "", []string{"close the list"}},
		{"a control character", "[room]", "# \x01\n[room]", "", []string{"plain text in UTF-8"}},
		{"bytes that are no UTF-8", `name = "Meadow"`, "name = \"M\xffeadow\"", "", []string{"plain text in UTF-8"}},
		{"a point with nothing before it", "percent = 40", "percent = .4", "", []string{"0.5"}},
	}
}

func shapeRefusals() []refusal {
	return []refusal{
		{"an unknown key that is a slip", "share_percent = 16", "share_procent = 16", "share_procent", []string{"base.jug[1].share_procent", "did you mean share_percent?"}},
		{"an unknown key that lacks its unit", "share_percent = 16", "share = 16", "share = 16", []string{"did you mean share_percent?"}},
		{"a key in the wrong section", "temperature_c = 21", "temperature_c = 21\nfill_mm = 62", "fill_mm = 62\n\n[base]", []string{"room.fill_mm", "fill_mm belongs under [mould]"}},
		{"a key of the top under a section", "[room]", "[room]\nnotes = \"x\"", "notes", []string{"above the first [section]"}},
		{"an unknown section", "[room]", "[climate]\nheat = 1\n[room]", "[climate]", []string{"climate", "no key of a plan"}},
		{"text for a number", "fill_mm = 62", `fill_mm = "62,5 %"`, "fill_mm", []string{`mould.fill_mm = "62,5 %"`, "but this is text", "write 62.5"}},
		{"text with a unit for a number", "fill_mm = 62", `fill_mm = "62 mm"`, "fill_mm", []string{"write 62, without"}},
		{"a number for text", `oil = "olive"`, "oil = 7", "oil = 7", []string{"base.oil[0].oil = 7", "double quotes"}},
		{"a fraction for a whole number", "[room]", "[swirl]\npasses = 2.5\n[room]", "passes", []string{"swirl.passes = 2.5", "no whole number"}},
		{"text for a switch", "share_percent = 16", "share_percent = 16\nheld = \"yes\"", "held", []string{"true or false"}},
		{"a text for a list", `into = ["pot", "fern"]`, `into = "pot"`, "into", []string{"base.scent[0].into", "brackets"}},
		{"a number in a list of texts", `into = ["pot", "fern"]`, `into = ["pot", 3]`, "3]", []string{"base.scent[0].into[1] = 3"}},
		{"a table for a list", "blend = [ { at_min = 0, s = 20 } ]", "blend = { at_min = 0, s = 20 }", "blend", []string{"list of tables"}},
		{"a value for a section", "[room]\ntemperature_c = 21", "[room.temperature_c]\nx = 1", "[room.temp", []string{"a number is wanted", "a table"}},
		{"nan", "percent = 40", "percent = nan", "percent = nan", []string{"base.oil[0].percent = NaN", "ordinary number"}},
		{"infinity", "fill_mm = 62", "fill_mm = -inf", "fill_mm", []string{"mould.fill_mm = -Inf"}},
		{"nan in an inline table", "s = 20", "s = nan", "s = nan", []string{"base.blend[0].s = NaN"}},
		{"a missing key of a list", "percent = 40\n", "", `[[base.oil]]`, []string{"base.oil[0].percent: is missing", "in this [[base.oil]]"}},
		{"a missing key of a section", "fill_mm = 62\n", "", "[mould]", []string{"mould.fill_mm: is missing", "under [mould]"}},
		{"a missing name", `name = "Meadow"`, "", "", []string{"plan.toml: name: is missing"}},
		{"a missing format", "format = 1", "", "", []string{"format: is missing", "write format = 1"}},
		{"an old format", "format = 1", "format = 0", "format", []string{"never was such a format"}},
		{"a date without a time", "# pour_at = 2026-12-05T10:00:00", "pour_at = 2026-12-05", "pour_at", []string{"pour_at = 2026-12-05:", "2026-12-05T10:00:00"}},
		{"a time with a zone", "# pour_at = 2026-12-05T10:00:00", "pour_at = 2026-12-05T10:00:00+01:00 ", "pour_at", []string{"without a zone"}},
		{"a date in quotes", "# pour_at = 2026-12-05T10:00:00", `pour_at = "5.12.2026"`, "pour_at", []string{"without quotes"}},
		{"a very long text", `name = "gentian"`, `name = "` + strings.Repeat("x", 300) + `"`, `name = "xx`, []string{"300 letters"}},
		{"two sizes and no word which", "per_bar_g = 18", "per_bar_g = 18\nlayer_mm = 9", "[icing]", []string{"icing.size", "more than one size"}},
	}
}

func faultRefusals() []refusal {
	return []refusal{
		{"a negative mass", `size = "mould" `, "size = \"oils\"\noils_g = -900 ", "oils_g = -900", []string{"base.oils_g = -900"}},
		{"shares over 100", "share_percent = 16", "share_percent = 17", "[[base.jug]]", []string{"the shares sum to 101 %"}},
		{"an unknown oil", `oil = "olive"`, `oil = "olvie"`, `oil = "olvie"`, []string{`base.oil[0].oil = "olvie"`, `did you mean "olive"?`}},
		{"an unknown colourant", `"ultramarine-blue"`, `"ultramarin-blue"`, `colourant = "ultramarin-blue"`, []string{"base.jug[1].colourant[0].colourant", `"ultramarine-blue"`}},
		{"an unknown jug", `"fern"]`, `"ferm"]`, "into", []string{"base.scent[0].into", `did you mean "fern"?`}},
		{"two jugs of one name", `name = "gentian"`, `name = "pot"`, "name = \"pot\"\nshare_percent = 16", []string{"base.jug[1].name", "two jugs"}},
		{"a word that is none", `shape = "loaf"`, `shape = "round"`, "shape", []string{`mould.shape = "round"`, "loaf, slab"}},
		{"a colour that is none", `"#5566b0"`, `"blue"`, "batter_colour", []string{"#5566b0"}},
		{"superfat far out", "superfat_percent = 5", "superfat_percent = 500", "superfat_percent", []string{"from -5 to 40"}},
		{"a number beyond counting", "fill_mm = 62", "fill_mm = 1e300", "fill_mm", []string{"mould.fill_mm = 1e+300"}},
	}
}

func TestEveryMistakeIsRefusedWithItsPlaceAndHowToMendIt(t *testing.T) {
	good := planText(t, "meadow.toml")
	cases := append(append(syntaxRefusals(), shapeRefusals()...), faultRefusals()...)
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(good, c.old) {
				t.Fatalf("the plan has no %q", c.old)
			}
			text := strings.Replace(good, c.old, c.wrong, 1)
			problem := only(t, text)
			if want := placeOf(text, c.at); c.at != "" && want != [2]int{problem.Line, problem.Column} {
				t.Errorf("stands at %d:%d, want %d:%d: %v", problem.Line, problem.Column, want[0], want[1], problem)
			}
			for _, s := range c.says {
				if !strings.Contains(problem.Error(), s) {
					t.Errorf("%q is not in:\n%v", s, problem)
				}
			}
			if problem.Mend == "" {
				t.Errorf("nothing is said on how to mend it: %v", problem)
			}
		})
	}
}

// only reads a text that has exactly one thing wrong.
func only(t *testing.T, text string) strict.Fault {
	t.Helper()
	_, err := Read("plan.toml", strings.NewReader(text), shelf(t))
	var e *strict.Error
	if !errors.As(err, &e) {
		t.Fatalf("was not refused: %v", err)
	}
	if len(e.Faults) != 1 || e.More != 0 {
		t.Fatalf("%d problems are reported, want 1:\n%v", len(e.Faults)+e.More, e)
	}
	if !utf8.ValidString(e.Error()) || strings.ContainsAny(e.Error(), "\x1b\x01\r") {
		t.Errorf("the report is not safe to print: %q", e.Error())
	}
	return e.Faults[0]
}

// placeOf finds a text without help from the code under test.
func placeOf(text, part string) [2]int {
	before, _, ok := strings.Cut(text, part)
	if !ok || part == "" {
		return [2]int{}
	}
	lines := strings.Split(before, "\n")
	return [2]int{len(lines), utf8.RuneCountInString(lines[len(lines)-1]) + 1}
}

func TestAllProblemsAreReportedAtOnceInTheOrderOfTheFile(t *testing.T) {
	_, err := Read("four.toml", strings.NewReader(planText(t, "broken-four.toml")), shelf(t))
	var e *strict.Error
	if !errors.As(err, &e) {
		t.Fatal("was not refused")
	}
	want := []string{"mould.fill_mm", "base.oils_c", "base.oil[0].oil", "base.jug[0].share_procent"}
	var got []string
	last := 0
	for _, p := range e.Faults {
		got = append(got, p.Path)
		if p.Line <= last {
			t.Errorf("line %d comes after line %d", p.Line, last)
		}
		last = p.Line
	}
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("problems at %v, want %v", got, want)
	}
	if !strings.HasPrefix(err.Error(), "four.toml:17:1: mould.fill_mm") {
		t.Errorf("the report begins %q", err.Error())
	}
}

func TestAShareOverAHundredIsRefusedBesideTheSumItSpoils(t *testing.T) {
	text := strings.Replace(planText(t, "meadow.toml"), "share_percent = 16", "share_percent = 160", 1)
	_, err := Read("plan.toml", strings.NewReader(text), shelf(t))
	for _, s := range []string{"base.jug: the shares sum to 244 %", "plan.toml:52:1: base.jug[1].share_percent = 160", "a number from 0 to 100"} {
		if err == nil || !strings.Contains(err.Error(), s) {
			t.Errorf("%q is not in:\n%v", s, err)
		}
	}
}

func TestNoMoreThanTwentyProblemsAreNamedAndTheRestCounted(t *testing.T) {
	text := planText(t, "smallest.toml")
	for i := range 30 {
		text += fmt.Sprintf("nonsense_%d = 1\n", i)
	}
	_, err := Read("plan.toml", strings.NewReader(text), shelf(t))
	var e *strict.Error
	if !errors.As(err, &e) || len(e.Faults) != 20 || e.More != 10 || !strings.HasSuffix(err.Error(), "and 10 more") {
		t.Errorf("got %v", err)
	}
}

func TestAPlanOfANewerFormatIsRefusedKindlyAndForThatAlone(t *testing.T) {
	problem := only(t, planText(t, "broken-newer.toml"))
	if problem.Line != 1 || !strings.Contains(problem.Error(), "newer pourbench") || !strings.Contains(problem.Mend, "left as it is") {
		t.Errorf("got %v", problem)
	}
}

func TestAnEmptyFileAndAnEmptyBlendAreRefused(t *testing.T) {
	_, err := Read("plan.toml", strings.NewReader(""), shelf(t))
	for _, s := range []string{"format: is missing", "name: is missing", "mould.length_mm: is missing", "base.oil: the blend is empty", "base.jug: there is no jug"} {
		if err == nil || !strings.Contains(err.Error(), s) {
			t.Errorf("%q is not in:\n%v", s, err)
		}
	}
}

func TestWhatIsNoPlanAtAllIsRefusedInsteadOfTakingTheMachineDown(t *testing.T) {
	deep := strings.Repeat("[", 100000)
	for name, text := range map[string]string{
		"a huge file":        strings.Repeat("# x\n", 200000),
		"deep brackets":      "a = " + deep,
		"deep tables":        "a = " + strings.Repeat("{a = ", 50000),
		"a key of many dots": strings.Repeat("a.", 100000) + "a = 1",
		"a deep header":      "[" + strings.Repeat("a.", 100000) + "a]",
		"a long list":        "[base]\nblend = [" + strings.Repeat("{at_min=1,s=1},", 20000) + "]",
		"many jugs":          strings.Repeat("[[base.jug]]\n", 30000),
		"many unknown keys":  manyKeys(20000),
	} {
		if _, err := Read("plan.toml", strings.NewReader(text), shelf(t)); err == nil {
			t.Errorf("%s was read as a plan", name)
		}
	}
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "key_%d = %d\n", i, i)
	}
	return b.String()
}

func TestAFileThatCannotBeOpenedSaysSoByName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "no\x1b[2Jsuch.toml")
	_, err := Load(path, pour.Shelf{})
	var e *strict.Error
	if !errors.As(err, &e) || !errors.Is(err, fs.ErrNotExist) || e.Faults[0].Mend == "" {
		t.Fatalf("got %v", err)
	}
	if strings.Contains(err.Error(), "\x1b") {
		t.Errorf("the name of the file is not safe to print: %q", err.Error())
	}
	if _, err := Load(t.TempDir(), pour.Shelf{}); !errors.As(err, &e) {
		t.Errorf("a folder was read as a plan: %v", err)
	}
}
