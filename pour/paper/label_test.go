package paper

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

func lookedUp(t *testing.T, text string) day.Day {
	t.Helper()
	d, err := day.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// oneLabel is a label with one of everything that is told.
func oneLabel(t *testing.T) Label {
	t.Helper()
	m := label.Market{
		ID: "here", Name: "Here", FreePercent: 1, ScentWord: "Parfum", Allergens: label.AllergensLong, OverPercent: 0.01, HeightBy: label.HeightByMass, AsOf: lookedUp(t, "2026-11-28"),
		Rows: []label.Row{
			{ID: "maker", Text: "who made it", Document: "Act 1", Clause: "s. 2", Confidence: "read", AsOf: lookedUp(t, "2026-11-28")},
			{ID: "told", Text: "the office was told", Document: "Act 2", Confidence: "memory", AsOf: lookedUp(t, "2025-01-02")},
			{ID: "asked", Text: "somebody was asked", Document: "-", Confidence: "common practice", AsOf: lookedUp(t, "2026-11-28")},
		},
	}
	line := func(text string, percent float64, class label.Class, free bool, unverified string) label.Line {
		return label.Line{Entry: label.Entry{Text: text, Class: class, From: []string{"of " + text}, Unverified: unverified}, Percent: percent, Free: free}
	}
	s := pour.LabelSheet{
		Market: "here", AsBase: []string{"moon"}, Dried: "Aqua stands elsewhere once dried", Style: label.AsSalts, Text: "Ingredients: Sodium Olivate, Aqua, Mel, CI 1", MadeG: pour.Know(125.25), CuredG: pour.Know(110.5),
		Lines: []label.Line{
			line("Sodium Olivate", 70.1234, label.Plain, false, ""), line("Aqua", 28, label.Plain, false, ""), line("Mel", 0.5, label.Plain, true, "nobody looked it up"),
			line("CI 1", 0.25, label.Colourant, false, ""), line("Parfum", 1.5, label.Perfume, false, ""), line("sodium carbonate", 0.0625, label.Unlisted, false, ""),
		},
		Allergens: []label.Found{
			{Name: "Linalool", CuredPercent: 0.010014, Named: true, From: []label.Traced{{Scent: "lavender"}, {Scent: "lime"}}},
			{Name: "Citral", CuredPercent: 0.01},
			{Name: "Orange oil", CuredPercent: 0.2, Either: []string{"orange flower", "orange peel"}},
			{Name: "Safrole", CuredPercent: 0.02, Most: 0.01, Over: true},
			{Name: "Banned", CuredPercent: 0.001, Prohibited: true},
			{Name: "Odd", CuredPercent: 0.1, Unlisted: true},
		},
		Net: label.Net{System: "minimum", G: 109, Text: "109 g", From: label.FromScale, Notes: []string{"of its own"}, Bars: 3, Average: 110.25, Least: 109.75}, HeightMM: pour.Know(25.4 / 8),
		Food:   "it stands under piped icing",
		Report: label.Verdict{Report: "R-12", Missed: []label.Miss{{Range: label.Range{Kind: label.RangeOil, Most: 40}, What: "olive oil", Is: 42.1, By: 2.1}, {Range: label.Range{Kind: label.RangeScent, Most: 1}, What: "hay", Is: 1.5, By: 0.5}}},
	}
	s.Checks = []label.Check{
		{Row: m.Rows[0], State: label.Ticked, Why: "she stands on it"}, {Row: m.Rows[1], State: label.Ticked, Why: "ticked by you", Stale: true}, {Row: m.Rows[2], State: label.Unknown},
	}
	return Label{
		Name: "Meadow", ID: "2026-12-05-meadow", Market: m, Show: pour.Show{ScaleStepG: 1, LyeStepG: 0.01}, Sheet: s, Today: lookedUp(t, "2027-01-10"),
		Ticks: map[string]string{"told": "ticked on 2027-01-09: number 7"}, Warnings: []pour.Warning{{Code: "label-claim", Text: "it says too much", Do: "say less"}}, Rests: []string{"All 9 weights are as weighed."},
	}
}

func unbroken(text string) string { return strings.Join(strings.Fields(text), " ") }

func tells(t *testing.T, text string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(unbroken(text), w) {
			t.Errorf("%q is not told:\n%s", w, text)
		}
	}
}

// What is not sure is marked on screen, and the list as it is printed carries no mark.
func TestALabelIsToldWithWhatItRestsOn(t *testing.T) {
	l := oneLabel(t)
	text := LabelText(l)
	tells(t, text, "Label of Meadow, as poured, 2026-12-05-meadow", "Market: Here (here)", "ask locally", "All 9 weights are as weighed.",
		"Ingredients: Sodium Olivate, Aqua, Mel, CI 1", "average bar of 125.25 g as it was made", "Sodium Olivate 70.123 % of Sodium Olivate", "under 1 %, where any order is right: ? Mel 0.500 %",
		"colourants, last: CI 1 0.250 % of CI 1 scent, at the end: Parfum 1.500 %", "moon is counted as the base's own soap, its colours and scents in it", "Aqua stands elsewhere once dried", "sodium carbonate (in no list) 0.062 %", "Mel: nobody looked it up",
		"cured bar of 110.50 g: named above 0.01 %", "Linalool 0.01001 % named lavender, lime", "Citral 0.01000 % not named", "Orange oil 0.20000 % to be asked", "several rows (orange flower; orange peel)",
		"! Safrole: beyond the 0.01 %", "! Banned: the list says that it may not be there", "Odd 0.10000 % in no list",
		"NET WEIGHT 109 g", "by the minimum system, of 3 bars weighed: 110.25 g on average, the lightest 109.75 g of its own", "at least 3.175 mm high", "LOOKS LIKE FOOD it stands under piped icing",
		"TO BE SEEN TO ! It says too much. Say less.", "REPORT outside report R-12: olive oil 42.1 %, 2.1 over its most; and 1 more ! hay 1.50 %, 0.50 over its most", "1 of 3 lines are not ticked", "Act 1: 2026-11-28", "Act 2: 2025-01-02, over twelve months ago: look it up anew")
	if list, _, _ := strings.Cut(text, "INGREDIENTS as"); strings.Contains(list, "?") {
		t.Errorf("the list that is printed carries a mark:\n%s", list)
	}
	l.Sheet = pour.LabelSheet{Market: "here", Refused: "no bar is cut"}
	tells(t, LabelText(l), "It cannot be worked out: no bar is cut.")
}

func TestACheckListTellsEveryLineWithItsRule(t *testing.T) {
	l := oneLabel(t)
	text := LabelCheckText(l)
	tells(t, text, "[x] maker: who made it she stands on it (Act 1, s. 2; as of 2026-11-28, read)",
		"[x] told: the office was told ticked on 2027-01-09: number 7 (Act 2; as of 2025-01-02, over twelve months ago: look it up anew, memory)",
		"[?] asked: somebody was asked (no document; as of 2026-11-28, common practice)", "[x] ticked 2 [ ] open 0 [?] unknown 1", "ask locally")
	l.Sheet = pour.LabelSheet{Market: "here", Refused: "no bar is cut"}
	l.Market.Rows[0].Finds = "net"
	tells(t, LabelCheckText(l), "the design answers nothing of it: no bar is cut.", "[?] maker", "[x] told", "[x] ticked 1 [ ] open 0 [?] unknown 2")
}

func TestMarketsAreListedWithTheirRules(t *testing.T) {
	l := oneLabel(t)
	text := MarketsText([]label.Market{l.Market, {ID: "there", Name: "There", Pounds: true, English: true, WholeINCI: true, FreeAt: true, FreePercent: 1, HeightBy: label.HeightByFace}}, l.Today)
	tells(t, text, "here Here 3 lines to check, looked up on 2026-11-28; 1 of them over twelve months ago: look them up anew", "list: INCI names, any order under 1 %, scent as Parfum",
		"allergens of the long list above 0.01 % of the cured bar", "weight in grams, its letters as high as the weight asks",
		"there There 0 lines", "INCI names with their English words, or English names, any order at or under 1 %", "no allergens are named", "weight in ounces and grams, its letters as high as the area of the face it stands on asks")
	tells(t, MarketText(l.Market, l.Today), "- told: the office was told (Act 2; as of 2025-01-02, over twelve months ago: look it up anew, memory)", "- maker: who made it (Act 1, s. 2; as of 2026-11-28, read)")
}

// The record of a batch has its label where its plan names a market, with every line of the check list, and nothing of it else.
func TestABatchRecordHasItsLabel(t *testing.T) {
	plan, shelf := demo(t)
	p := logbook.Pour{ID: "x", Name: "x", Opened: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), Plan: plan}
	sheet := pour.Work(plan, shelf, pour.Hand{})
	b := life.Of(p, shelf, pour.Hand{}, day.Of(p.Opened))
	l := oneLabel(t)
	tells(t, BatchRecord(p, sheet, b, l), "LABEL FOR HERE", "ask locally", "moon is counted as the base's own soap", "Ingredients: Sodium Olivate, Aqua, Mel, CI 1", "? Mel: not verified, nobody looked it up", "Allergens named: Linalool",
		"Net weight on the label: 109 g, weighed", "Assessor: outside report R-12", "[x] told: the office was told ticked on 2027-01-09: number 7 (Act 2; as of 2025-01-02, over twelve months ago")
	if text := BatchRecord(p, sheet, b, Label{}); strings.Contains(strings.ToLower(text), "label for") || strings.Contains(text, "ask locally") {
		t.Errorf("without a market it tells of a label:\n%s", text)
	}
	l.Sheet = pour.LabelSheet{Market: "here", Refused: "no bar is cut"}
	tells(t, BatchRecord(p, sheet, b, l), "It cannot be worked out: no bar is cut")
}

// The figures of a label name the embeds that are counted as the base's own soap; without any it is an empty list, not null.
func TestTheFiguresNameTheEmbedsCountedAsTheBase(t *testing.T) {
	l := oneLabel(t).Sheet
	for want, names := range map[string][]string{`"as_base": ["moon"]`: {"moon"}, `"as_base": []`: nil} {
		l.AsBase = names
		var b strings.Builder
		if err := WriteLabel(&b, l); err != nil || !strings.Contains(unbroken(b.String()), strings.ReplaceAll(want, "[\"moon\"]", "[ \"moon\" ]")) {
			t.Errorf("%v, %s is not in %s", err, want, b.String())
		}
	}
}
