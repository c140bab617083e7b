package paper_test

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// FuzzWork takes any text that is accepted as a plan through everything that is worked out of it to every paper: nothing
// panics, figures are JSON without a number that is none, papers are safe to print and hold no lye where a stop stands on it.
func FuzzWork(f *testing.F) {
	shelf, err := presets.Shelf()
	if err != nil {
		f.Fatal(err)
	}
	for _, text := range seeds(f, shelf) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := planfile.Read("plan.toml", strings.NewReader(text), shelf)
		if err != nil {
			return
		}
		s := pour.Work(p, shelf, pour.Hand{})
		if faults := p.Check(shelf); len(faults) > 0 {
			t.Fatalf("an accepted plan has faults: %v", faults)
		}
		checklist := paper.Checklist(s, shelf)
		printable(t, "the checklist", checklist)
		if s.LyeStopped() != strings.Contains(checklist, "DO NOT MIX") {
			t.Fatalf("a stop stands on the lye: %v, but the checklist is\n%s", s.LyeStopped(), checklist)
		}
		for _, large := range []bool{false, true} {
			bench := paper.Bench(s, shelf, large)
			printable(t, "the bench paper", bench)
			if s.LyeStopped() != strings.Contains(bench, "DO NOT MIX") {
				t.Fatalf("a stop stands on the lye: %v, but the bench paper is\n%s", s.LyeStopped(), bench)
			}
		}
		warnings, exit := paper.Check(s, nil)
		printable(t, "the warnings", warnings)
		if stops := strings.Contains(warnings, "stop"); exit != 0 && exit != 1 && exit != 3 || exit == 3 && !stops {
			t.Fatalf("check ends with %d and says\n%s", exit, warnings)
		}
		var figures bytes.Buffer
		if err := paper.WriteFigures(&figures, s); err != nil || !json.Valid(figures.Bytes()) {
			t.Fatalf("the figures cannot be written: %v\n%s", err, figures.String())
		}
		draw(t, s)
	})
}

// draw makes a small picture of a bar, where the bar is no tower: that would be slow, not wrong.
func draw(t *testing.T, s pour.Sheet) {
	t.Helper()
	const width, tallest = 64, 3
	if m := s.Plan.Mould; m.HeightMM > tallest*m.WidthMM || s.Plan.Trial {
		return
	}
	err := paper.Picture(context.Background(), io.Discard, s, paper.PictureOptions{View: paper.ViewBar, Width: width})
	if err != nil && strings.TrimSpace(err.Error()) == "" {
		t.Fatal("what cannot be drawn is refused without a reason")
	}
}

func printable(t *testing.T, what, text string) {
	t.Helper()
	if text == "" || !utf8.ValidString(text) || strings.ContainsFunc(text, func(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\f' }) {
		t.Fatalf("%s is not safe to print:\n%q", what, text)
	}
	for _, word := range strings.Fields(text) {
		if word = strings.Trim(word, "+-.,;:()"); word == "NaN" || word == "Inf" {
			t.Fatalf("%s has a number that is none:\n%s", what, text)
		}
	}
}

// seeds are the example plans, the shared ones, and what bends them towards the edges.
func seeds(f *testing.F, shelf pour.Shelf) []string {
	f.Helper()
	var out []string
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			f.Fatal(err)
		}
		out = append(out, string(text))
	}
	shared, err := filepath.Glob("../../testdata/plans/*.toml")
	if err != nil || len(shared) < 6 {
		f.Fatalf("%d shared plans, %v", len(shared), err)
	}
	for _, path := range shared {
		text, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		out = append(out, string(text))
	}
	return append(out, bent(f, out[0], shelf)...)
}

// bent are plans of one key changed, each accepted: what is stopped, what cannot be mixed, what has nothing in it.
func bent(f *testing.F, plan string, shelf pour.Shelf) []string {
	f.Helper()
	var out []string
	stopped := 0
	for _, x := range []struct{ old, bend string }{
		{"superfat_percent = ", "superfat_percent = -5 #"},
		{"superfat_percent = ", "superfat_percent = 40 #"},
		{"lye_concentration_percent = ", "lye_concentration_percent = 60 #"},
		{"lye_concentration_percent = ", "stock_lye_percent = 10\nlye_concentration_percent = 60 #"},
		{"lye_concentration_percent = ", "koh_share_percent = 100\nlye_concentration_percent = 10 #"},
		{"oils_c = ", "oils_c = 0 #"},
		{"oils_c = ", "oils_c = 120 #"},
		{"length_mm = ", "length_mm = 3000 #"},
		{"bar_mm = ", "bar_mm = 5 #"},
		{"pour_min = ", "pour_min = 0 #"},
		{"pour_min = ", "pour_min = 60 #"},
		{"carrier = ", "carrier = \"from_batch\" #"},
		{"name = ", "trial = true\npour_at = 9999-12-31T23:59:59\nname = "},
	} {
		if !strings.Contains(plan, "\n"+x.old) {
			x.old, x.bend = "\n[base]\n", "\n[base]\n"+x.bend+"\n"
		}
		text := strings.Replace(plan, x.old, x.bend, 1)
		p, err := planfile.Read(x.bend, strings.NewReader(text), shelf)
		if err != nil {
			f.Fatal(err)
		}
		if s := pour.Weigh(p, shelf); s.LyeStopped() {
			stopped++
		}
		out = append(out, text)
	}
	if stopped == 0 || stopped == len(out) {
		f.Fatalf("of %d plans the lye of %d is stopped", len(out), stopped)
	}
	return out
}
