package command_test

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// flat is a text with its lines joined.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// tells checks what stands in a text, wherever its lines are broken.
func tells(t *testing.T, text string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(flat(text), flat(w)) {
			t.Errorf("%q is not told:\n%s", w, text)
		}
	}
}

// hides checks what does not stand in a text.
func hides(t *testing.T, text string, not ...string) {
	t.Helper()
	for _, w := range not {
		if strings.Contains(flat(text), flat(w)) {
			t.Errorf("%q is told:\n%s", w, text)
		}
	}
}

func TestALabelIsToldForTheMarketThatIsAskedFor(t *testing.T) {
	m := newMaker(t)
	text := m.says("label", "--market", "eu")
	tells(t, text, "Label of Alpine Meadow, planned", "EU and Northern Ireland (eu)", "check the current text of each document, ask locally",
		"Ingredients: Sodium Olivate, ", "as what alkali made of it", "named above 0.01 %", "Linalool", "meadow hay, alp rose", "Regulation (EC) 1223/2009: 2026-11-28")
	text = m.says("label", "--market", "us-soap", "--list", "as_added")
	tells(t, text, "(us-soap)", "as it was added", "Olea Europaea (Olive) Fruit Oil, ", "Fragrance", "no list of them here", "at or under 1 %")
	hides(t, text, "Sodium Olivate")
	for want, args := range map[string][]string{
		"the plan names none in its table [label]; write --market and its id: eu, gb,": {"label"},
		`did you mean "eu"`: {"label", "--market", "eux"},
		`--list = "as_salt": is not a word this key knows`: {"label", "--market", "eu", "--list", "as_salt"},
		"ticks are kept with a poured batch":               {"label", "check", "--market", "eu", "--tick", "file"},
		"it goes with --tick":                              {"label", "check", "--market", "eu", "--note", "done"},
		`market = "mars": is not a word`:                   {"label", "markets", "mars"},
	} {
		if code, out, errs := m.types(args...); code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%v: exit %d, %q, %q, want %q", args, code, out, errs, want)
		}
	}
}

// A batch's label goes by what was weighed into it and what its bars weighed when they were packed.
func TestABatchsLabelGoesByWhatWasWeighed(t *testing.T) {
	m, id := dried(t, 8)
	m.now = func() time.Time { return time.Date(2027, 1, 20, 9, 0, 0, 0, time.UTC) }
	before := m.says("label", id, "--market", "eu")
	tells(t, before, "as poured, "+id, "Nothing of it was weighed by the marks of its run", "No bar of it was weighed for packing", "Sodium Olivate 21.422 %")
	wall := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	m.marks(id, logbook.Event{ID: "w1", Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: 500, Wall: wall})
	m.says("logbook", "weigh", id, "112.0", "116.0", "--bars", "2 5", "--day", "2027-01-10")
	m.says("logbook", "lot", id, "A17", "--day", "2027-01-12")
	after := m.says("label", id, "--market", "eu")
	tells(t, after, "Its contents are what was weighed, 1 of ", "Its bars were weighed on 2027-01-10, for packing on 2027-01-12", "NET WEIGHT 112 g by the minimum system, of 2 bars weighed: 114.00 g on average, the lightest 112.00 g")
	hides(t, after, "Sodium Olivate 21.422 %")
}

// marks adds events to a pour as a live run does.
func (m *maker) marks(id string, events ...logbook.Event) {
	m.t.Helper()
	book, err := logbook.OpenBook(m.path("data", "pourbench", "pours"))
	if err != nil {
		m.t.Fatal(err)
	}
	if _, _, err := book.Append(id, time.Second, events...); err != nil {
		m.t.Fatal(err)
	}
}

// Bars that were weighed weeks before they are packed are told with why the label does not go by them.
func TestALabelSaysThatAWeighingWasTooEarly(t *testing.T) {
	m := newMaker(t)
	id := m.pours(time.Now().Add(-30 * 24 * time.Hour))
	m.says("logbook", "slice", id, "--count", "10", "--day", time.Now().Add(-29*24*time.Hour).Format(time.DateOnly))
	early := time.Now().Add(-10 * 24 * time.Hour).Format(time.DateOnly)
	m.says("logbook", "weigh", id, "114", "116", "115.5", "--day", early)
	m.says("logbook", "lot", id, "A", "10")
	code, out, errs := m.types("label", id, "--market", "eu")
	if code != 0 {
		t.Fatal(errs)
	}
	tells(t, out, "No bar of it was weighed for packing", "Weighed last on "+early+", 115.17 g on average: bars lose weight after that, so it does not count here", "of the forecast:")
}

// Lines are ticked for a batch in one market and taken back; a tick stands in its life.
func TestALineOfACheckListIsTickedAndUnticked(t *testing.T) {
	m, id := dried(t, 8)
	text := m.says("label", "check", id, "--market", "eu", "--tick", "file", "--tick", "loose", "--note", "folder 3")
	tells(t, text, id+": ticked file for eu, folder 3", "[x] file: before sale", "ticked on 2026-12-29: folder 3", "Arts. 4, 8, 11, 13; as of 2026-11-28, memory", "[x] loose")
	text = m.says("label", "check", id, "--market", "gb")
	hides(t, text, "folder 3")
	text = m.says("label", "check", id, "--market", "eu", "--untick", "file")
	tells(t, text, id+": taken back", "[?] file: before sale", "[x] loose")
	tells(t, m.says("logbook", "show", id), "loose")
	for want, args := range map[string][]string{
		"it is not ticked in EU":                    {"label", "check", id, "--market", "eu", "--untick", "file"},
		"row = \"nothing\": is not a word this key": {"label", "check", id, "--market", "eu", "--tick", "nothing"},
		"for which market: the plan names none":     {"label", "check", id, "--tick", "file"},
	} {
		if code, _, errs := m.types(args...); code != 2 || !strings.Contains(errs, want) {
			t.Errorf("%v: exit %d, %q, want %q", args, code, errs, want)
		}
	}
}

// A rule that was looked up over twelve months before today is marked wherever it is told.
func TestAnOldRuleIsMarked(t *testing.T) {
	m := newMaker(t)
	for day, old := range map[int]bool{28: false, 29: true} {
		m.now = func() time.Time { return time.Date(2027, 11, day, 9, 0, 0, 0, time.UTC) }
		for _, args := range [][]string{{"label", "--market", "eu"}, {"label", "check", "--market", "eu"}, {"label", "markets"}, {"label", "markets", "ca"}} {
			if text := m.says(args...); strings.Contains(flat(text), "over twelve months ago: look") != old {
				t.Errorf("on 2027-11-%d %v says\n%s", day, args, text)
			}
		}
	}
}
