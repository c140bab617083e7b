package sticker_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/sticker"
	"pourbench/pour/vector"
	"pourbench/pour/vector/vectortest"
)

func TestALabelAsTextSaysWhatThePrintedOneSays(t *testing.T) {
	p, shelf := loaf(t, "ca")
	p.Label.Title, p.Label.Says = "Meadow", "Cut by hand."
	text := of(t, p, shelf, sticker.Details{}).Text()
	at := 0
	for _, want := range []string{
		"Meadow\nSoap / Savon\n", "\nCut by hand.\n", "\n100 g\n", "\nIngredients - Ingrédients: ", "\nKeep out of eyes. Outside use only.\n",
		"Hill House Soap\n3 Upper Lane, 6020 Innsbruck, Austria\npost@hillhouse.example\n", "\nLot 2026-11-29\nBest used before the end of 10/2028\nOnce opened: good for 12 months\n",
		"---\nNot on the label: Canada, as looked up ", "check the current text, ask locally",
	} {
		n := strings.Index(text[at:], want)
		if n < 0 {
			t.Fatalf("%q is not said where it belongs in:\n%s", want, text)
		}
		at += n
	}
}

// Only a month is printed, so that it is the last that has ended: 24 months from 29 November 2026 end on 29 November 2028, when October is the last
// whole month; from the last of a month they take all of it.
func TestABestBeforeMonthIsNeverTooLate(t *testing.T) {
	for _, c := range []struct {
		made   string
		months float64
		want   string
	}{
		{"2026-11-29", 24, "10/2028"},
		{"2026-11-30", 24, "11/2028"},
		{"2026-12-01", 1, "12/2026"},
		{"2026-12-31", 2, "02/2027"},
		{"2027-01-30", 1, "02/2027"},
		{"2027-01-27", 1, "01/2027"},
		{"2028-01-28", 1, "01/2028"},
		{"2026-10-15", 3, "12/2026"},
	} {
		p, _ := loaf(t, "eu")
		p.Label.BestBeforeMo = c.months
		made, err := day.Parse(c.made)
		if err != nil {
			t.Fatal(err)
		}
		if got := sticker.DatedForTest(p, sticker.Details{Made: made, Lot: "A-7"}); got.Best != c.want || got.Lot != "A-7" {
			t.Errorf("%g months from %s: %q, lot %q, not %q", c.months, c.made, got.Best, got.Lot, c.want)
		}
		p.PourAt = time.Time{}
		if got := sticker.DatedForTest(p, sticker.Details{}); got.Best != "" || got.Lot != "" {
			t.Errorf("a batch of no day is good until %q, lot %q", got.Best, got.Lot)
		}
	}
}

func TestWhatLooksLikeFoodSaysThatItIsNone(t *testing.T) {
	p, shelf := loaf(t, "ca")
	s := pour.Work(p, shelf, pour.Hand{})
	for food, want := range map[string]bool{"": false, "it has icing": true} {
		s.Label.Food = food
		l, err := sticker.Of(s, shelf, sticker.Details{})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(l.Text(), marketOf(t, "ca").Print.NotFood); got != want {
			t.Errorf("like food %q: it says so %t", food, got)
		}
	}
}

func TestALabelNotesWhatItsMarketWantsAndItHasNot(t *testing.T) {
	p, shelf := loaf(t, "eu")
	p.Label.BestBeforeMo, p.Label.OpenMo, p.PourAt = 0, 0, time.Time{}
	shelf.Label = label.House{}
	notes := strings.Join(of(t, p, shelf, sticker.Details{}).Notes(sticker.Print{}), "\n")
	for _, want := range []string{"asks for who is responsible, with name and address", "asks for a batch number", "asks for best before or months after opening", "as looked up "} {
		if !strings.Contains(notes, want) {
			t.Errorf("nothing says %q in:\n%s", want, notes)
		}
	}
	if strings.Contains(notes, "a way to reach") || strings.Contains(notes, "no weight") {
		t.Errorf("it asks for what the EU does not:\n%s", notes)
	}
	p.Label.BestBeforeMo = 12
	if notes := strings.Join(of(t, p, shelf, sticker.Details{}).Notes(sticker.Print{}), "\n"); !strings.Contains(notes, "the day it was made is not known") {
		t.Errorf("nothing says why it has no best-before:\n%s", notes)
	}
	p, shelf = loaf(t, "us-cosmetic")
	shelf.Label.Makers[0].Contact = ""
	s := pour.Work(p, shelf, pour.Hand{})
	s.Label.Net = label.Net{Why: "no bar was weighed"}
	s.Label.Lines = []label.Line{{Entry: label.Entry{Text: "Sodium Kokumate", Unverified: "no such name is assigned"}}, {Entry: label.Entry{Text: "soda", Class: label.Unlisted, Unverified: "x"}}}
	l, err := sticker.Of(s, shelf, sticker.Details{})
	if err != nil {
		t.Fatal(err)
	}
	notes = strings.Join(l.Notes(sticker.Print{}), "\n")
	for _, want := range []string{"asks for a way to reach the maker", "no weight stands on it: no bar was weighed", "Sodium Kokumate: not verified, no such name is assigned"} {
		if !strings.Contains(notes, want) {
			t.Errorf("nothing says %q in:\n%s", want, notes)
		}
	}
	if strings.Contains(notes, "soda") {
		t.Errorf("what is never listed is noted:\n%s", notes)
	}
}

func TestALabelSaysThatRulesAreOld(t *testing.T) {
	p, shelf := loaf(t, "eu")
	s := pour.Work(p, shelf, pour.Hand{})
	m := marketOf(t, "eu")
	for years, want := range map[int]bool{0: false, 2: true} {
		today := day.Of(m.AsOf.At(12, 0, time.UTC).AddDate(years, 0, 1))
		s.Label = s.Labelled(shelf, pour.Labelling{Today: today})
		l, err := sticker.Of(s, shelf, sticker.Details{})
		if err != nil {
			t.Fatal(err)
		}
		l.Net = "100 g"
		page := vectortest.ReadSVG(t, written(t, l, ".svg", sticker.Print{Paper: sticker.Papers()[0]}))
		if said := find(t, page, "check the current text"); strings.Contains(said.Text, "over twelve months ago") != want || strings.Contains(l.Text(), "over twelve months ago") != want {
			t.Errorf("after %d years it says %q", years, said.Text)
		}
	}
}

// The height that a refusal names is one on which it fits.
func TestARefusalNamesAHeightThatDoes(t *testing.T) {
	l := plain(t, "eu", 80, 30, 100)
	l.List = strings.Repeat("Sodium Olivate, ", 60)
	_, err := l.For("l.pdf", sticker.Print{})
	if err == nil {
		t.Fatal("it fits")
	}
	_, rest, _ := strings.Cut(err.Error(), "on one about ")
	if _, err := fmt.Sscanf(rest, "%f mm high", &l.High); err != nil {
		t.Fatal(err)
	}
	if _, err := l.For("l.pdf", sticker.Print{}); err != nil {
		t.Errorf("on %g mm: %v", l.High, err)
	}
	l.High -= 2
	if _, err := l.For("l.pdf", sticker.Print{}); err == nil {
		t.Errorf("it fits on %g mm already", l.High)
	}
}

func TestALabelThatCannotBePrintedSoIsRefused(t *testing.T) {
	a4 := sticker.Papers()[0]
	for want, c := range map[string]struct {
		file   string
		p      sticker.Print
		change func(*sticker.Label)
	}{
		"mm too high for it in letters of 0.90 mm":   {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.List = strings.Repeat("Sodium Olivate, ", 200) }},
		"mm too high for it in letters of 1.50 mm":   {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.LetterMM, l.List = 1.5, strings.Repeat("Sodium Olivate, ", 80) }},
		"letters of 0.80 mm are lower than the 0.90": {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.LetterMM = 0.8 }},
		"letters of 1.50 mm are lower than the 1.60": {"l.svg", sticker.Print{}, func(l *sticker.Label) { l.Market, l.LetterMM = marketOf(t, "ca"), 1.5 }},
		"the weight is 1":                                       {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.NetMM = 40 }},
		"out of the lowest 30 % of the label":                   {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.Market, l.NetMM, l.Wide, l.High = marketOf(t, "us-soap"), 6, 160, 22 }},
		"its title has letters that this face cannot print: 石鹸": {"l.pdf", sticker.Print{}, func(l *sticker.Label) { l.Title = "石鹸石" }},
		"has no room for words":                                 {"l.svg", sticker.Print{}, func(l *sticker.Label) { l.Wide, l.High = 12, 8 }},
		"ends in .pdf or .svg":                                  {"l.doc", sticker.Print{}, func(*sticker.Label) {}},
		"an SVG is one sheet, and this is 3":                    {"l.svg", sticker.Print{Paper: a4, Count: 19}, func(*sticker.Label) {}},
		"print the labels -1 mm apart":                          {"l.pdf", sticker.Print{Paper: a4, GapMM: -1}, func(*sticker.Label) {}},
		"with a margin of 3 mm":                                 {"l.pdf", sticker.Print{Paper: a4, MarginMM: 3}, func(*sticker.Label) {}},
		"print 100000 labels":                                   {"l.pdf", sticker.Print{Paper: a4, Count: 100000}, func(*sticker.Label) {}},
		"does not fit on a sheet":                               {"l.pdf", sticker.Print{Paper: a4}, func(l *sticker.Label) { l.Wide, l.High = 290, 200 }},
		"60.0 by 274.0 mm does not fit":                         {"l.pdf", sticker.Print{Paper: a4}, func(l *sticker.Label) { l.Wide, l.High = 60, 274 }}, // over the line to measure
	} {
		l := plain(t, "eu", 80, 55, 100)
		c.change(&l)
		if _, err := l.For(c.file, c.p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", want, err)
		}
		if c.p.Paper == (vector.Paper{}) && c.file != "l.doc" {
			if d, err := l.Measure(c.p); err != nil || !strings.Contains(d.Fault, want) {
				t.Errorf("measured: %q, not %q (%v)", d.Fault, want, err)
			}
		}
	}
	if _, err := sticker.PaperOf("a5"); err == nil || !strings.Contains(err.Error(), `print the labels on paper "a5": write a4 or letter`) {
		t.Errorf("a5: %v", err)
	}
}

func TestASheetWithoutALabelHasNone(t *testing.T) {
	p, shelf := loaf(t, "eu")
	for want, change := range map[string]func(*pour.Sheet, *sticker.Details){
		"states no market":           func(s *pour.Sheet, _ *sticker.Details) { s.Label = pour.LabelSheet{} },
		"the batch cannot be mixed":  func(s *pour.Sheet, _ *sticker.Details) { s.Label.Refused = "the batch cannot be mixed" },
		`no market "moon"`:           func(s *pour.Sheet, _ *sticker.Details) { s.Label.Market = "moon" },
		"your logo on the label: it": func(_ *pour.Sheet, d *sticker.Details) { d.Logo = []byte("<svg/>") },
	} {
		s, d := pour.Work(p, shelf, pour.Hand{}), sticker.Details{}
		change(&s, &d)
		if _, err := sticker.Of(s, shelf, d); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", want, err)
		}
	}
}

func TestHowALabelComesOutIsMeasured(t *testing.T) {
	l := plain(t, "us-soap", 80, 55, 100)
	d, err := l.Measure(sticker.Print{})
	if err != nil || d.Fault != "" || d.NetMM < 3.175 || d.NetMM > 3.3 || d.SmallMM < 0.9 {
		t.Errorf("%+v, %v", d, err)
	}
}

// Where room is short the headline and the logo give way, before the small letters do.
func TestTheHeadlineGivesWay(t *testing.T) {
	l := plain(t, "eu", 80, 55, 100)
	l.LetterMM = 1.2
	ample := find(t, both(t, l)["pdf"], "Meadow").Size
	l.List = strings.Repeat("Sodium Olivate, ", 44)
	tight := find(t, both(t, l)["pdf"], "Meadow").Size
	if small := 1.2 / smallOf; ample < 2.1*small || tight > 1.6*small || tight < 1.4*small {
		t.Errorf("its em is %.2f mm where there is room, %.2f where there is little, small words' %.2f", ample, tight, small)
	}
}

// Whatever a label says and however large it is: it is refused with a reason, or all of its words stand inside it and none runs into another.
func TestWordsOfALabelNeverLeaveItNorMeet(t *testing.T) {
	markets := []label.Market{marketOf(t, "eu"), marketOf(t, "us-cosmetic"), marketOf(t, "us-soap"), marketOf(t, "au"), marketOf(t, "ca")}
	rapid.Check(t, func(r *rapid.T) {
		text := func(what string, most int) string {
			return strings.Join(rapid.SliceOfN(rapid.StringMatching(`[A-Za-z(),.&0-9]{1,14}|Supercalifragilisticexpialidociousness|CI 77891`), 1, most).Draw(r, what), " ")
		}
		m := rapid.SampledFrom(markets).Draw(r, "market")
		g := rapid.Float64Range(6, 900).Draw(r, "g")
		l := sticker.Label{
			Market: m, Title: text("title", 4), Identity: "Soap", Says: text("says", 12), List: text("list", 30), Cautions: []string{text("caution", 6)},
			Wide: rapid.Float64Range(30, 160).Draw(r, "wide"), High: rapid.Float64Range(20, 160).Draw(r, "high"), Maker: []string{text("maker", 6)},
			Lot: text("lot", 2), Best: "10/2028", OpenMonths: rapid.IntRange(0, 36).Draw(r, "open"), Net: label.Declare(label.Weighing{Forecast: g, ForecastLow: g, Market: m}).Text,
		}
		l.NetMM = m.LetterMM(g, l.Wide, l.High, max(l.Wide, l.High))
		l.Bar = sticker.Bar{Front: rapid.Float64Range(20, 120).Draw(r, "front"), Side: rapid.Float64Range(15, 60).Draw(r, "side"), Up: l.High, Round: rapid.Bool().Draw(r, "round")}
		p := sticker.Print{Band: rapid.Bool().Draw(r, "band")}
		write, err := l.For("x.svg", p)
		if err != nil {
			r.Skip(err) // rapid draws another instead, and fails where it has to leave out too many
		}
		var b strings.Builder
		if err := write(&b); err != nil {
			r.Fatal(err)
		}
		page := vectortest.ReadSVG(t, []byte(b.String()))
		inside(t, page, m.Print.ClearMM)
		if t.Failed() {
			r.Fatal(fmt.Sprintf("%+v", l))
		}
	})
}
