package paper

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/mattn/go-runewidth"
	"pgregory.net/rapid"

	"pourbench/pour"
)

// flat is a paper as one line without its leader dots, so that what was wrapped can be searched.
func flat(text string) string {
	text = regexp.MustCompile(` \.{3,} `).ReplaceAllString(text, " ")
	return strings.Join(strings.Fields(text), " ")
}

func widest(text string) (line string, columns int) {
	for l := range strings.Lines(text) {
		l = strings.TrimSuffix(l, "\n")
		if w := runewidth.StringWidth(l); w > columns {
			line, columns = l, w
		}
	}
	return line, columns
}

func TestNoLineOfAnyPaperIsOver80Columns(t *testing.T) {
	name := rapid.OneOf(rapid.StringMatching(`[a-zäöüéñ漢字]{1,24}`), rapid.StringMatching(`漢{24}`), rapid.StringMatching(`[A-Za-z ]{0,22}x`))
	rapid.Check(t, func(t *rapid.T) {
		p := testPlan()
		p.Name = rapid.StringMatching(`[A-Z漢é][A-Za-z 漢字é-]{0,79}`).Draw(t, "plan name")
		p.Notes = rapid.StringMatching(`[a-z é漢字\n\t\x{1b}\x{202e}]{0,200}`).Draw(t, "notes")
		names := rapid.SliceOfNDistinct(name, len(p.Base.Jugs), len(p.Base.Jugs), rapid.ID).Draw(t, "jug names")
		for i, n := range names {
			p.Base.Jugs[i].Name = n
		}
		p.Base.Scents[0].Into = names[:1]
		p.Show = rapid.SampledFrom([]pour.Show{
			p.Show, {Mass: "oz", Temperature: "F", Length: "in", ScaleStepG: 0.1, LyeStepG: 0.01}, {Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 0.001, LyeStepG: 0.001},
		}).Draw(t, "show")
		if rapid.Bool().Draw(t, "no date") {
			p.PourAt = time.Time{}
		}
		p.Base.Size, p.Base.OilsG = pour.SizeOils, rapid.Float64Range(1, 100000).Draw(t, "oils")
		if rapid.Bool().Draw(t, "no icing") {
			p.Icing = nil
		}
		s := work(p)
		if faults := p.Check(testShelf()); len(faults) > 0 && faults[0].Path != "name" {
			t.Fatal(faults[0])
		}
		warnings, _ := Check(s, nil)
		for _, text := range []string{Checklist(s, testShelf()), Bench(s, testShelf(), false), warnings} {
			if line, w := widest(text); w > 80 {
				t.Fatalf("%d columns: %s", w, line)
			}
		}
		if line, w := widest(Bench(s, testShelf(), true)); w > 40 {
			t.Fatalf("%d columns: %s", w, line)
		}
	})
}

// Sections count up from 1 and so do the items of each, whatever a plan has or lacks; a section is named at most once besides where it goes on.
func TestSectionsAndItemsAreNumberedWithoutGaps(t *testing.T) {
	number := regexp.MustCompile(`^(\d+)(?:\.(\d+))? +`)
	heading := regexp.MustCompile(`^\d+ +[A-Z][A-Z ,:]+(  |\n)`)
	for what, cut := range map[string]func(*pour.Plan){
		"nothing": func(*pour.Plan) {},
		"icing":   func(p *pour.Plan) { p.Icing = nil },
		"extras":  func(p *pour.Plan) { p.Base.Extras, p.Icing.Extras = nil, nil },
		"scent":   func(p *pour.Plan) { p.Base.Scents, p.Icing.Scents = nil, nil },
		"KOH":     func(p *pour.Plan) { p.Base.KOHSharePercent = 20 },
		"stock":   func(p *pour.Plan) { p.Base.StockLyePercent, p.Base.Extras = 50, nil },
		"stop":    func(p *pour.Plan) { p.Base.SuperfatPercent = -3 },
		"colour": func(p *pour.Plan) {
			for i := range p.Base.Jugs {
				p.Base.Jugs[i].Colourants = nil
			}
		},
	} {
		p := testPlan()
		cut(&p)
		section, item := 0, 0
		for l := range strings.Lines(print(p)) {
			m := number.FindStringSubmatch(l)
			switch {
			case m == nil || strings.Contains(l, "(goes on)") || !strings.HasPrefix(strings.TrimLeft(l[len(m[0]):], " "), "[ ]") && m[2] != "":
			case m[2] == "" && heading.MatchString(l):
				if section, item = section+1, 0; m[1] != strconv.Itoa(section) {
					t.Errorf("without %s section %d is numbered: %s", what, section, l)
				}
			case m[2] != "":
				if item++; m[1] != strconv.Itoa(section) || m[2] != strconv.Itoa(item) {
					t.Errorf("without %s item %d.%d is numbered: %s", what, section, item, l)
				}
			}
		}
		if section < 8 {
			t.Errorf("without %s there are %d sections", what, section)
		}
	}
}

// A section that a text points to is the one it speaks of.
func TestASectionPointedToIsTheOneSpokenOf(t *testing.T) {
	text := print(testPlan())
	title := map[string]string{}
	for _, m := range regexp.MustCompile(`(?m)^(\d+) +([A-Z][A-Z :,]*[A-Z])`).FindAllStringSubmatch(text, -1) {
		title[m[1]] = m[2]
	}
	for before, want := range map[string]string{
		"base: make the lye (section ": "BASE: WEIGH AND MAKE THE LYE", "icing: make the lye (section ": "ICING: WEIGH AND MAKE THE LYE",
		"put it to bed (section ": "PUT TO BED",
	} {
		_, rest, _ := strings.Cut(flat(text), before)
		if number, _, _ := strings.Cut(rest, ")"); title[number] != want {
			t.Errorf("%s%s) points to %q, want %q", before, number, title[number], want)
		}
	}
}

func TestEveryTickAfterTheCautionsLeavesRoomToWrite(t *testing.T) {
	_, rest, _ := strings.Cut(print(testPlan()), "\n2     GATHER")
	ticks := strings.Split(rest, box)[1:]
	if len(ticks) < 100 {
		t.Fatalf("only %d items", len(ticks))
	}
	for _, tick := range ticks {
		if !strings.Contains(tick, fullFormat().blank) {
			t.Errorf("no room to write: %s", tick)
		}
	}
}

func TestPaperIsASCIIWhenNamesAre(t *testing.T) {
	for _, text := range everyPaper(testPlan()) {
		for i, r := range text {
			if r > '~' || r < ' ' && r != '\n' && r != '\f' {
				t.Fatalf("%U at byte %d", r, i)
			}
		}
	}
}

func TestNamesKeepTheirAccents(t *testing.T) {
	p := testPlan()
	p.Name, p.Base.Jugs[1].Name = "Crème à la rosé", "grüne Wiese"
	for _, text := range everyPaper(p) {
		for _, name := range []string{p.Name, p.Base.Jugs[1].Name} {
			if !strings.Contains(flat(text), name) {
				t.Errorf("%q is not on the paper", name)
			}
		}
	}
}

func TestAHostileNameCannotForgeALine(t *testing.T) {
	p := testPlan()
	p.Name = "x\n6.3   [ ] Sodium hydroxide 999 g\x1b[2J\r\u202e"
	p.Notes = "see\n6.3   [ ] Sodium hydroxide 999 g"
	p.Base.Jugs[0].Name = "pot\n\x1b]0;a\a\u2066"
	p.Base.Scents[0].Into = []string{p.Base.Jugs[0].Name}
	for _, text := range everyPaper(p) {
		if regexp.MustCompile(`(?m)^(6\.3 .*|\[ \] .*)999`).MatchString(text) {
			t.Error("the name wrote a line of its own")
		}
		for _, r := range text {
			if r < ' ' && r != '\n' && r != '\f' || r == 0x7f || r == '\u202e' || r == '\u2066' {
				t.Fatalf("%U is on the paper", r)
			}
		}
	}
}

func TestTimesAreClockTimesOnlyWhenThePlanSaysWhenItIsPoured(t *testing.T) {
	p := testPlan()
	dated := flat(print(p))
	for _, want := range []string{"Pour day 2026-12-05 lye meets oil at 10:00", "Cut from Sun 2026-12-06 06:00", "Cure until Sun 2027-01-03 06:00", "10:30 +30:00"} {
		if !strings.Contains(dated, want) {
			t.Errorf("the dated paper lacks %q", want)
		}
	}
	p.PourAt = time.Time{}
	bare := flat(print(p))
	for _, want := range []string{"Cut from pour day + 1,", "Cure until pour day + 29,", "+30:00"} {
		if !strings.Contains(bare, want) {
			t.Errorf("the undated paper lacks %q", want)
		}
	}
	if m := regexp.MustCompile(` \d\d:\d\d|20\d\d-`).FindString(bare); m != "" {
		t.Errorf("the undated paper says %q", m)
	}
}

func TestTheRunOnPaperKeepsTheMakersOrder(t *testing.T) {
	p := testPlan()
	p.Run.Order = []string{"base pour poppy", "base pour pot", "base pour gentian"}
	_, rest, _ := strings.Cut(print(p), "THE POUR, IN ORDER")
	if want := "pour: poppy 85 g, pot 215 g, gentian 127 g; level over the whole width"; !strings.Contains(flat(rest), want) {
		t.Errorf("the paper lacks %q in %s", want, flat(rest)[:1500])
	}
}

func TestEveryWarningAboveANoteIsOnThePaper(t *testing.T) {
	p := testPlan()
	s := work(p)
	text := flat(Checklist(s, testShelf()))
	for _, w := range s.Warnings {
		if !strings.Contains(text, flat(plain(sentence(w.Text)))) {
			t.Errorf("%s of %s is not on the paper", w.Code, w.Where)
		}
	}
}

func TestWarningsAreSaidWhereTheyMatter(t *testing.T) {
	text := print(testPlan())
	split := between(t, text, "base: split;", "base: stir in the colour")
	if !strings.Contains(flat(split), "374 mL goes into a jug of 300 mL") {
		t.Errorf("the split does not say that the jug is too small:\n%s", split)
	}
	if bed := between(t, text, " PUT TO BED", " CLEAN UP"); !strings.Contains(bed, "gel") {
		t.Errorf("the bed does not speak of gel:\n%s", bed)
	}
}

func between(t *testing.T, text, from, to string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, from)
	part, _, ok2 := strings.Cut(rest, to)
	if !ok || !ok2 {
		t.Fatalf("no part from %q to %q", from, to)
	}
	return part
}

func TestEveryCodeThatNamesAStepHasAPlaceOnPaper(t *testing.T) {
	known := map[string]bool{}
	for _, c := range pour.Codes() {
		known[c.Code] = true
		if placeOf(c.Code) == placeFront && c.Code != "plan-fault" && c.Code != "figure-unknown" {
			t.Errorf("%s has no place of its own", c.Code)
		}
	}
	if known["no-such-code"] || placeOf("no-such-code") != placeFront {
		t.Error("an unknown code does not stay on the first page")
	}
}
