package paper

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/pour/pourtest"
	"pourbench/presets"
)

// sheetsOf parts a paper at its form feeds and holds what every sheet must be: no longer or wider than its paper, named and counted.
func sheetsOf(t interface{ Fatalf(string, ...any) }, text string, wide, high int) []string {
	sheets := strings.Split(text, "\f")
	for i, sheet := range sheets {
		lines := strings.Split(strings.TrimSuffix(sheet, "\n"), "\n")
		if len(lines) > high {
			t.Fatalf("sheet %d has %d lines of %d:\n%s", i+1, len(lines), high, sheet)
		}
		if w := runewidth.StringWidth(lines[0]); w >= wide {
			t.Fatalf("with its form feed the title is too long: %q", lines[0])
		}
		if of := fmt.Sprintf("page %d of %d", i+1, len(sheets)); !strings.HasSuffix(lines[0], of) {
			t.Fatalf("sheet %d begins with %q, not with %q", i+1, lines[0], of)
		}
		for _, l := range lines {
			if w := runewidth.StringWidth(l); w > wide {
				t.Fatalf("%d columns: %s", w, l)
			}
		}
		if last := lines[len(lines)-1]; last == "" || regexp.MustCompile(`^-+$`).MatchString(last) {
			t.Fatalf("sheet %d ends with an empty line or a heading:\n%s", i+1, sheet)
		}
	}
	return sheets
}

// examples is every plan that comes with the program, worked out.
func examples(t *testing.T) ([]pour.Sheet, pour.Shelf) {
	t.Helper()
	_, shelf := demo(t)
	var out []pour.Sheet
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planfile.Read(name, strings.NewReader(string(text)), shelf)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, pour.Work(p, shelf, pour.Hand{}))
	}
	return out, shelf
}

// large bends the example to a pour as large as a kitchen sees: seven oils, so many jugs, two alkalis, two scents besides the icing's own.
func large(p pour.Plan, jugs int, technique string) pour.Plan {
	p = p.Clone()
	b := &p.Base
	b.Oils = append(b.Oils, pour.OilPart{Oil: "rice-bran", Percent: 5})
	b.Oils[0].Percent -= 5
	b.KOHSharePercent, b.KOHPurityPercent = 5, 90
	b.Extras = append(b.Extras, pour.ExtraPart{Extra: "sugar", PercentOfOils: 1}, pour.ExtraPart{Extra: "kaolin", PercentOfOils: 1})
	for len(b.Jugs) < jugs {
		j := b.Jugs[1]
		j.Name, j.BatterColour, j.SharePercent = fmt.Sprintf("heather %d", len(b.Jugs)), "", b.Jugs[0].SharePercent/2
		b.Jugs[0].SharePercent /= 2
		b.Jugs = append(b.Jugs, j)
	}
	p.Icing.Scents = []pour.ScentPart{{Scent: "lavender-oil", PercentOfOils: 1}}
	p.Swirl.Technique = technique
	return p
}

// The bench paper of the examples and of a large pour in every technique takes two sheets at most.
func TestTheBenchPaperTakesTwoSheetsAtMost(t *testing.T) {
	sheets, shelf := examples(t)
	p, _ := demo(t)
	for _, technique := range shelf.Techniques {
		sheets = append(sheets, pour.Work(large(p, 6, technique.ID), shelf, pour.Hand{}))
	}
	for _, s := range sheets {
		text := Bench(s, shelf, false)
		if got := sheetsOf(t, text, 80, 66); len(got) > 2 || strings.Contains(text, "too much in this plan") {
			t.Errorf("%s, %s: %d sheets", s.Plan.Name, s.Plan.Swirl.Technique, len(got))
		}
		sheetsOf(t, Bench(s, shelf, true), 40, 33)
		sheetsOf(t, Checklist(s, shelf), 80, 66)
	}
}

// A pour that is too large for two sheets goes on over a third, which the first says; nothing of it is left out.
func TestTooLargeAPourTakesMoreSheetsAndSaysSo(t *testing.T) {
	p, shelf := demo(t)
	p = large(p, 9, "drop")
	for i := range p.Base.Jugs {
		p.Base.Jugs[i].Colourants = append(p.Base.Jugs[i].Colourants, p.Base.Jugs[0].Colourants[0], p.Base.Jugs[1].Colourants[0])
	}
	for _, o := range shelf.Oils[21:34] {
		p.Base.Oils[0].Percent -= 1
		p.Base.Oils = append(p.Base.Oils, pour.OilPart{Oil: o.ID, Percent: 1})
	}
	s := pour.Work(p, shelf, pour.Hand{})
	text := Bench(s, shelf, false)
	sheets := sheetsOf(t, text, 80, 66)
	if want := fmt.Sprintf("There is too much in this plan for 2 pages: it takes %d.", len(sheets)); len(sheets) < 3 || !strings.Contains(sheets[0], want) {
		t.Fatalf("%d sheets, and the first does not say %q:\n%s", len(sheets), want, sheets[0])
	}
	for _, o := range s.Base.Oils {
		if !strings.Contains(flat(text), box+o.Name+" "+s.Plan.Show.Weight(o.WeighG)) {
			t.Errorf("%s is left out", o.Name)
		}
	}
	for _, j := range s.Base.Jugs {
		for _, d := range j.Colourants {
			if !strings.Contains(text, s.Plan.Show.Dose(d.PigmentG)) {
				t.Errorf("a colour of %s is left out", j.Name)
			}
		}
	}
}

// Whatever a plan uses, breaking it into sheets loses no line, parts no item and no lye, and says a parted section's heading again.
func TestSheetsLoseNothingAndPartNoLye(t *testing.T) {
	plan, shelf := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		p := pourtest.Rich(t, plan, shelf)
		p.Name = rapid.SampledFrom([]string{"Meadow", strings.Repeat("A long name ", 6)}).Draw(t, "name")
		s := pour.Work(p, shelf, pour.Hand{})
		for _, large := range []bool{false, true} {
			sheets := sheetsOf(t, Bench(s, shelf, large), 80-40*count(large), 66-33*count(large))
			wholeLye(t, s, sheets, "lye: cold water", "lye, lid on")
		}
		sheets := sheetsOf(t, Checklist(s, shelf), 80, 66)
		wholeLye(t, s, sheets, "Cold water, into the lye jug", "out of reach, to")
	})
}

// Wherever the end of a sheet falls, it does not fall into a lye: a blend of one oil more pushes all that follows down by a line.
func TestNoSheetPartsALyeWhereverItStands(t *testing.T) {
	p, shelf := demo(t)
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 100}}
	for _, o := range shelf.Oils[:48] {
		if o.ID == "olive" || o.ID == "sunflower-ho" {
			continue
		}
		p.Base.Oils[0].Percent--
		p.Base.Oils = append(p.Base.Oils, pour.OilPart{Oil: o.ID, Percent: 1})
		s := pour.Weigh(p, shelf)
		wholeLye(t, s, sheetsOf(t, Bench(s, shelf, false), 80, 66), "lye: cold water", "lye, lid on")
		wholeLye(t, s, sheetsOf(t, Bench(s, shelf, true), 40, 33), "lye: cold water", "lye, lid on")
		wholeLye(t, s, sheetsOf(t, Checklist(s, shelf), 80, 66), "Cold water, into the lye jug", "out of reach, to")
	}
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// wholeLye holds that the making of each batch's lye begins and ends on the same sheet.
func wholeLye(t interface{ Fatalf(string, ...any) }, s pour.Sheet, sheets []string, from, to string) {
	total := 0
	for _, sheet := range sheets {
		begins, ends := strings.Count(flat(sheet), from), strings.Count(flat(sheet), to)
		if begins != ends {
			t.Fatalf("%d lyes begin on a sheet and %d end on it:\n%s", begins, ends, sheet)
		}
		total += begins
	}
	if want := len(s.Batches()); !s.LyeStopped() && total != want {
		t.Fatalf("%d lyes are made of %d", total, want)
	}
}

// A page with random sections, items and what is kept together comes back from its sheets line by line.
func TestBreakingLosesNoLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &page{format: format{wide: 40, high: rapid.IntRange(8, 30).Draw(t, "high"), blank: "____", numbers: rapid.Bool().Draw(t, "numbers")}}
		n := 0
		item := func() {
			n++
			p.tick(row{text: fmt.Sprintf("item <%d> %s", n, strings.Repeat("word ", rapid.IntRange(0, 12).Draw(t, "words"))), figure: "1 g", write: true})
		}
		for range rapid.IntRange(1, 6).Draw(t, "sections") {
			fresh := len(p.lines)
			p.heading(rapid.SampledFrom([]string{"one", "a title that is long enough to take two lines"}).Draw(t, "title"), "planned", "actual")
			if rapid.Bool().Draw(t, "fresh") {
				p.fresh = append(p.fresh, fresh)
			}
			for range rapid.IntRange(0, 9).Draw(t, "items") {
				if rapid.IntRange(0, 3).Draw(t, "kept") > 0 {
					item()
					continue
				}
				p.keep(func() {
					for range rapid.IntRange(1, 12).Draw(t, "together") {
						item()
					}
				})
			}
		}
		printed := strings.Join(sheetsOrLong(p), "\n")
		for _, l := range p.lines {
			if i := strings.Index(printed, l.text); l.text != "" && i < 0 {
				t.Fatalf("%q is lost", l.text)
			}
		}
		at := 0
		for i := 1; i <= n; i++ {
			next := strings.Index(printed[at:], fmt.Sprintf("item <%d>", i))
			if next < 0 {
				t.Fatalf("item %d is lost or out of its order", i)
			}
			at += next
		}
		for i, sheet := range p.sheets() {
			if len(sheet) > p.high-titleLines {
				t.Fatalf("sheet %d has %d lines", i+1, len(sheet))
			}
		}
	})
}

// A heading with nothing under it goes to the next sheet with the heading after it, wherever the end of a sheet falls.
func TestNoSheetEndsWithABareHeading(t *testing.T) {
	for items := range 24 {
		p := &page{format: format{wide: 40, high: 12, blank: "____", numbers: true}}
		p.heading("weigh", "planned", "actual")
		for range items {
			p.tick(row{text: "oil", figure: "1 g", write: true})
		}
		p.heading("lay out", "planned", "actual")
		p.heading("pour", "", "")
		p.tick(row{text: "the base", write: true})
		for i, sheet := range p.sheets() {
			if last := sheet[len(sheet)-1]; last == strings.Repeat("-", 40) {
				t.Errorf("after %d items sheet %d ends with a heading:\n%s", items, i+1, strings.Join(sheet, "\n"))
			}
		}
	}
}

func sheetsOrLong(p *page) []string {
	var out []string
	for _, sheet := range p.sheets() {
		out = append(out, sheet...)
	}
	return out
}

func TestASectionThatGoesOnSaysItsHeadingAgain(t *testing.T) {
	for _, numbers := range []bool{true, false} {
		p := &page{format: format{wide: 40, high: 12, blank: "____", numbers: numbers}}
		p.heading("weigh", "planned", "actual")
		for range 12 {
			p.tick(row{text: "oil", figure: "1 g", write: true})
		}
		lead := map[bool]string{true: "1     ", false: ""}[numbers]
		for i, sheet := range p.sheets()[1:] {
			if want := padded(lead+"WEIGH (goes on)", 27) + "planned  actual"[:13]; !strings.HasPrefix(sheet[0], want[:20]) || !strings.HasSuffix(sheet[0], "planned  actual") || sheet[1] != strings.Repeat("-", 40) {
				t.Errorf("sheet %d begins with %q", i+2, sheet[:2])
			}
		}
	}
}
