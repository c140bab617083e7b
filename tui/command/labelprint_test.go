package command_test

import (
	"encoding/json"
	"image"
	"image/png"
	"os"
	"strings"
	"testing"

	"pourbench/presets"
)

// A label is written as it is printed, whole or not at all; what is missing on it is said beside.
func TestALabelIsWrittenAsItIsPrinted(t *testing.T) {
	m := newMaker(t)
	for name, begins := range map[string]string{"one.pdf": "%PDF", "one.svg": "<?xml", "one.txt": "Alpine Meadow\nSoap\n"} {
		code, out, errs := m.types("label", "--market", "eu", "-o", m.path(name))
		if code != 0 || out != "" || !strings.Contains(errs, "who is responsible, with name and address") || !strings.Contains(errs, "check the current text, ask locally") {
			t.Errorf("%s: exit %d, %q, %s", name, code, out, errs)
		}
		if text := m.reads(m.path(name)); !strings.HasPrefix(text, begins) {
			t.Errorf("%s begins with %q", name, text[:20])
		}
		if code, _, errs := m.types("label", "--market", "eu", "-o", m.path(name)); code != 0 { // over its own kind
			t.Errorf("again: exit %d, %s", code, errs)
		}
	}
	sheet := func(args ...string) int {
		file := m.path("sheet.svg")
		if code, _, errs := m.types(append([]string{"label", "--market", "eu", "-o", file, "--sheet", "a4"}, args...)...); code != 0 {
			t.Fatalf("%v: exit %d, %s", args, code, errs)
		}
		return len(m.reads(file))
	}
	if two, three, full := sheet("--count", "2"), sheet("--count", "3"), sheet(); three <= two || full <= three {
		t.Errorf("two labels take %d bytes, three %d, a sheet full %d", two, three, full)
	}
	words := m.says("label", "--market", "eu", "-o", "-")
	if words != m.reads(m.path("one.txt")) {
		t.Errorf("on standard output its words are\n%s", words)
	}
	tells(t, m.says("label", "--market", "eu"), "AS IT IS PRINTED", flat(words))
}

func TestALabelThatCannotBePrintedSaysWhy(t *testing.T) {
	m := newMaker(t)
	m.writes("mine", "plan.txt")
	for want, args := range map[string][]string{
		"that file is there and is no label": {"-o", m.path("plan.txt")},
		"a name that ends in .pdf or .svg":   {"-o", m.path("l.doc")},
		`on paper "a9": write a4 or letter`:  {"-o", m.path("l.pdf"), "--sheet", "a9"},
		"say with --sheet on which":          {"-o", m.path("l.pdf"), "--count", "3"},
		"--count -1 cannot be":               {"-o", m.path("l.pdf"), "--sheet", "a4", "--count", "-1"},
		"--gap and --margin are 0 to 100 mm": {"-o", m.path("l.pdf"), "--sheet", "a4", "--gap", "NaN"},
		"name the file with -o":              {"--band"},
		"that goes to standard output":       {"--json", "-o", m.path("l.pdf")},
		"write the label to":                 {"-o", m.path("none", "l.pdf")},
	} {
		code, out, errs := m.types(append([]string{"label", "--market", "eu"}, args...)...)
		if code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%v: exit %d, %q, %q, want %q", args, code, out, errs, want)
		}
	}
	if m.reads(m.path("plan.txt")) != "mine" {
		t.Error("what is no label was written over")
	}
	if _, err := os.Stat(m.path("l.pdf")); err == nil {
		t.Error("what was refused left a file")
	}
}

func TestALabelIsFiguresForOthers(t *testing.T) {
	var got struct {
		Market string
		Lines  []struct{ Percent float64 }
		Checks []map[string]any
	}
	if err := json.Unmarshal([]byte(newMaker(t).says("label", "--market", "ca", "--json")), &got); err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, l := range got.Lines {
		sum += l.Percent
	}
	if got.Market != "ca" || sum < 99.999999 || sum > 100.000001 || len(got.Checks) == 0 {
		t.Errorf("%s: its lines sum to %v %%, %d checks", got.Market, sum, len(got.Checks))
	}
}

// A batch's label has its lot, and her logo where she has one that can be read.
func TestABatchsLabelHasItsLotAndHerLogo(t *testing.T) {
	m, id := dried(t, 8)
	m.says("logbook", "lot", id, "A17", "--count", "8")
	hides(t, m.says("label", id, "--market", "eu", "-o", "-", "--lot", "B2"), "A17")
	words := m.says("label", id, "--market", "eu", "-o", "-")
	tells(t, words, "Lot A17")
	tells(t, m.says("label", "check", id, "--market", "eu"), "[x] lot")
	f, err := os.Create(m.path("logo.png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, image.NewGray(image.Rect(0, 0, 40, 20))); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	size := func() int {
		if code, _, errs := m.types("label", id, "--market", "eu", "-o", m.path("l.pdf")); code != 0 {
			t.Fatalf("exit %d, %s", code, errs)
		}
		return len(m.reads(m.path("l.pdf")))
	}
	without := size()
	m.writes("format = 1\nlogo = \"logo.png\"\n", "data", "pourbench", "label.toml")
	m.writes(m.reads(m.path("logo.png")), "data", "pourbench", "logo.png")
	if with := size(); with <= without {
		t.Errorf("with a logo the file has %d bytes, without %d", with, without)
	}
	if err := os.Remove(m.path("data", "pourbench", "logo.png")); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := m.types("label", id, "--market", "eu", "-o", m.path("l.pdf")); code != 2 || !strings.Contains(errs, "put your logo on the label: open ") {
		t.Errorf("a logo that is not there: exit %d, %s", code, errs)
	}
}

// What only a packet can name is asked for, and nothing that lacks it is printed in any form, on standard output neither.
func TestALabelWhoseListLacksSomethingIsNotPrinted(t *testing.T) {
	m := newMaker(t)
	plan, err := presets.Plan("alpine-meadow")
	if err != nil {
		t.Fatal(err)
	}
	file := m.path("strewn.toml")
	m.writes(string(plan)+"\n[[top.topping]]\ng_per_bar = 0.5\n[[top.topping.part]]\nmaterial = \"nonpareils\"\npercent = 100\n", "strewn.toml")
	for _, to := range []string{"-", m.path("l.txt"), m.path("l.pdf"), m.path("l.svg")} {
		code, out, errs := m.types("label", file, "--market", "eu", "-o", to)
		if code != 2 || out != "" || !strings.Contains(errs, "its list lacks") || !strings.Contains(errs, "made_of") {
			t.Errorf("-o %s: exit %d, %q, %q", to, code, out, errs)
		}
	}
	tells(t, m.says("label", file, "--market", "eu"), "Sucrose", "nonpareils")
}

// A label that is printed although something stands against it says what, beside the file: the words of a drug, a report that is not there.
func TestWhatStandsAgainstAPrintedLabelIsSaid(t *testing.T) {
	m := newMaker(t)
	plan, err := presets.Plan("alpine-meadow")
	if err != nil {
		t.Fatal(err)
	}
	file := m.path("claims.toml")
	m.writes(string(plan)+"\n[label]\nsays = \"Heals eczema.\"\nreport = \"R-77\"\n", "claims.toml")
	code, _, errs := m.types("label", file, "--market", "us-soap", "-o", m.path("l.pdf"))
	if code != 0 || strings.Count(errs, "to be seen to before it is used") < 3 || !strings.Contains(errs, "Heals") || !strings.Contains(errs, "R-77") {
		t.Errorf("exit %d, %q", code, errs)
	}
}
