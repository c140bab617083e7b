package scents

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// meadow is the built-in plan, whose pot and fern hold "meadow-hay", poppy "alp-rose", and the built-in shelf.
func meadow(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	must(t, err)
	text, err := presets.Plan("alpine-meadow")
	must(t, err)
	plan, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	must(t, err)
	return plan, shelf
}

// rosy is the plan with a scent that browns in poppy and nothing else anywhere; on the shelf of the test an eighth of it is vanillin.
func rosy(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	shelf.Scents = slices.Clone(shelf.Scents)
	for i := range shelf.Scents {
		if shelf.Scents[i].ID == "alp-rose" {
			shelf.Scents[i].VanillinPercent = 12
		}
	}
	plan.Icing = nil
	plan.Base.Scents = []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 3, Into: []string{"poppy"}}}
	return plan, shelf
}

// on is a moment on a day of December 2026, which may be past its end.
func on(d int) time.Time { return time.Date(2026, 12, d, 10, 0, 0, 0, time.UTC) }

// poured is a pour of a plan on 5 December, cut on the 6th, with what was logged besides; every event has an id of its own.
func poured(plan pour.Plan, id string, events ...logbook.Event) logbook.Pour {
	p := logbook.Pour{ID: id, Name: plan.Name, Opened: on(5), Plan: plan}
	all := []logbook.Event{
		{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base), Wall: on(5)},
		{Kind: logbook.Ended, Wall: on(5)},
		{Kind: logbook.Sliced, Wall: on(6), Life: logbook.Life{Count: 9}},
	}
	for i, e := range append(all, events...) {
		if e.ID == "" {
			e.ID = fmt.Sprintf("%s-%d", id, i)
		}
		p.Events = append(p.Events, e)
	}
	return p
}

func sniffed(d int, scent string, value float64, text string) logbook.Event {
	return logbook.Event{Kind: logbook.Sniffed, Wall: on(d), Value: value, Text: text, Life: logbook.Life{Scent: scent}}
}

// told makes the pages of pours.
func told(shelf pour.Shelf, lesson learn.Lesson, pours ...logbook.Pour) map[string]Page {
	var uses []use
	for _, p := range pours {
		uses = append(uses, usesOf(p, life.Of(p, shelf, pour.Hand{}, 0), shelf)...)
	}
	out := map[string]Page{}
	for _, p := range pages(uses, shelf, lesson) {
		out[p.ID] = p
	}
	return out
}

// Weeks are counted from the cut on the 6th: the 6th to the 12th are week 0, the 13th is the first day of week 1.
func TestStrengthByWeekIsThatOfTheSniffs(t *testing.T) {
	plan, shelf := meadow(t)
	a := poured(plan, "a", sniffed(6, "alp-rose", 4, "Rose, a bit sharp"), sniffed(12, "alp-rose", 3, "rose"), sniffed(13, "alp-rose", 2, ""), sniffed(5, "alp-rose", 4, "in the mould"))
	b := poured(plan, "b", sniffed(6, "alp-rose", 2, "rose;  a bit sharp"), sniffed(65, "alp-rose", 1, "barely there"), sniffed(20, "meadow-hay", 3, ""))
	got := told(shelf, learn.Lesson{}, a, b)["alp-rose"]
	want := []Week{{0, 3, 2, 4, 3}, {1, 2, 2, 2, 1}, {8, 1, 1, 1, 1}} // (4+3+2)/3
	if diff := cmp.Diff(want, got.Weeks); diff != "" {
		t.Error(diff)
	}
	if got.Unplaced != 1 || got.Poured != 2 {
		t.Errorf("%d sniffs in no week, poured %d times", got.Unplaced, got.Poured)
	}
	if diff := cmp.Diff([]Word{{"rose", 3}, {"a bit sharp", 2}, {"barely there", 1}, {"in the mould", 1}}, got.Words); diff != "" {
		t.Error(diff)
	}
	if s := got.Sentence(); s != "poured 2 times: strong at week 0, faint by week 8" {
		t.Error(s)
	}
}

// A sniff of the whole bar speaks for a scent that is alone in it, and for none where there are several.
func TestASniffOfTheBarSpeaksForAScentThatIsAloneInIt(t *testing.T) {
	plan, shelf := meadow(t)
	two := told(shelf, learn.Lesson{}, poured(plan, "a", sniffed(7, "", 4, "lovely")))
	for _, id := range []string{"alp-rose", "meadow-hay"} {
		if p := two[id]; len(p.Weeks) > 0 || p.Shared != 1 || len(p.Words) > 0 {
			t.Errorf("%s: %+v", id, p)
		}
	}
	single, shelf := rosy(t)
	p := told(shelf, learn.Lesson{}, poured(single, "a", sniffed(7, "", 4, "lovely")))["alp-rose"]
	if len(p.Weeks) != 1 || p.Weeks[0].Mean != 4 || p.Shared != 0 || len(p.Words) != 1 {
		t.Errorf("%+v", p)
	}
}

func TestWhatWasOnlySniffedHasAPageToo(t *testing.T) {
	plan, shelf := rosy(t)
	p := told(shelf, learn.Lesson{}, poured(plan, "a", sniffed(8, "made-up", 2, "")))["made-up"]
	if p.Poured != 0 || p.OnShelf || p.Name != "made-up" || len(p.Weeks) != 1 || p.Sentence() != "never poured: clear at week 0" {
		t.Errorf("%q, %+v", p.Sentence(), p)
	}
}

func TestWithoutACutThereAreNoWeeks(t *testing.T) {
	plan, shelf := rosy(t)
	p := poured(plan, "a", sniffed(8, "alp-rose", 3, ""))
	p.Events = slices.DeleteFunc(p.Events, func(e logbook.Event) bool { return e.Kind == logbook.Sliced })
	if got := told(shelf, learn.Lesson{}, p)["alp-rose"]; len(got.Weeks) != 0 || got.Unplaced != 1 {
		t.Errorf("%+v", got)
	}
}

func TestCorrectedSniffsCountAsTheyWereCorrected(t *testing.T) {
	plan, shelf := rosy(t)
	wrong, right := sniffed(7, "alp-rose", 0, ""), sniffed(7, "alp-rose", 3, "")
	wrong.ID, right.ID, right.Corrects, right.Wall = "w", "r", "w", on(9)
	right.Life.Day = "2026-12-07"
	got := told(shelf, learn.Lesson{}, poured(plan, "a", wrong, right))["alp-rose"]
	if diff := cmp.Diff([]Week{{0, 3, 3, 3, 1}}, got.Weeks); diff != "" {
		t.Error(diff)
	}
}

func TestBrowningIsToldAsPredictedAndSeen(t *testing.T) {
	plan, shelf := rosy(t)
	sheet := pour.Weigh(plan, shelf)
	i := slices.IndexFunc(sheet.Base.Jugs, func(j pour.JugSheet) bool { return j.Name == "poppy" })
	predicted := chem.VanillinTint(sheet.Base.Jugs[i].VanillinPercent)
	if predicted == chem.BrowningNone || predicted == "" {
		t.Fatalf("the test's scent does not brown: %v", sheet.Base.Jugs[i].VanillinPercent)
	}
	look := func(d int, jug string, v float64, colour string) logbook.Event {
		return logbook.Event{Kind: logbook.Looked, What: logbook.LookBrowning, Jug: jug, Value: v, Wall: on(d), Life: logbook.Life{Colour: colour}}
	}
	none := told(shelf, learn.Lesson{}, poured(plan, "a"))["alp-rose"]
	if want := "poured once: should brown to " + string(predicted) + ", not looked at yet"; none.Sentence() != want {
		t.Errorf("%q, want %q", none.Sentence(), want)
	}
	p := told(shelf, learn.Lesson{}, poured(plan, "a", look(20, "poppy", 3, "#c8a070"), look(10, "poppy", 1, ""), look(21, "fern", 4, "")))["alp-rose"]
	want := []Browned{{Pour: "a", Jug: "poppy", Poured: day.Of(on(5)), Alone: true, Predicted: predicted, Looked: true, Seen: 3, Week: 2, Placed: true, Colour: "#c8a070"}}
	if diff := cmp.Diff(want, p.Browning); diff != "" {
		t.Error(diff)
	}
	if want := "poured once: browns to " + string(predicted); p.Sentence() != want {
		t.Errorf("%q, want %q", p.Sentence(), want)
	}
	clean := told(shelf, learn.Lesson{}, poured(plan, "a", look(20, "poppy", 0, "")))["alp-rose"]
	if want := "poured once: was to brown to " + string(predicted) + " and did not"; clean.Sentence() != want {
		t.Errorf("%q, want %q", clean.Sentence(), want)
	}
}

func TestTroubleIsThatOfTheJugsThatHoldTheScent(t *testing.T) {
	plan, shelf := meadow(t)
	trouble := func(jug, what string) logbook.Event {
		return logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: jug, What: what, Wall: on(5)}
	}
	back := trouble("poppy", logbook.Rices)
	back.ID = "rices"
	got := told(shelf, learn.Lesson{}, poured(plan, "a", trouble("poppy", logbook.Seizes), trouble("poppy", logbook.Seizes), trouble("fern", logbook.Browns), back,
		logbook.Event{Kind: logbook.TakenBack, What: "rices", Wall: on(5)}), poured(plan, "b", trouble("", logbook.Seizes)))
	if diff := cmp.Diff([]Trouble{{logbook.Seizes, 2, 1}}, got["alp-rose"].Troubles); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]Trouble{{logbook.Browns, 1, 1}, {logbook.Seizes, 1, 0}}, got["meadow-hay"].Troubles); diff != "" {
		t.Error(diff)
	}
	if s := got["alp-rose"].Sentence(); !strings.HasPrefix(s, "poured 2 times: seizes 2 times") {
		t.Error(s)
	}
	split := logbook.Event{Kind: logbook.Done, Step: logbook.Split(pour.Base), Wall: on(5), Run: time.Minute}
	if got := told(shelf, learn.Lesson{}, poured(plan, "c", trouble("poppy", logbook.Seizes), split))["alp-rose"].Troubles; len(got) != 0 {
		t.Errorf("before the split %v is the scent's", got)
	}
}

func TestTheClocksVerdictIsByItsWholeBand(t *testing.T) {
	plan, shelf := rosy(t)
	for _, c := range []struct {
		low, high float64
		pours     int
		want      string
	}{{1.2, 2, 3, "quick"}, {0.5, 0.9, 3, "slow"}, {0.8, 1.4, 3, "may be quick or slow"}, {1.2, 2, 0, ""}} {
		lesson := learn.Lesson{Scents: []learn.Finding{{ID: "alp-rose", Low: c.low, High: c.high, Pours: c.pours}}}
		if got := told(shelf, lesson, poured(plan, "a"))["alp-rose"].Pace(); got != c.want {
			t.Errorf("a band of %v to %v from %d pours is %q, want %q", c.low, c.high, c.pours, got, c.want)
		}
	}
}

func TestAudiencesAreThoseOfItsBars(t *testing.T) {
	plan, shelf := meadow(t)
	to := func(kind logbook.EventKind, who string, n int) logbook.Event {
		return logbook.Event{Kind: kind, Wall: on(40), Life: logbook.Life{Audience: who, Count: n}}
	}
	got := told(shelf, learn.Lesson{}, poured(plan, "a", to(logbook.Sold, "bright", 3), to(logbook.Sold, "bright", 2), to(logbook.Given, "quiet", 1)),
		poured(plan, "b", to(logbook.Sold, "bright", 4), to(logbook.Given, "", 2)))["alp-rose"]
	if diff := cmp.Diff([]Audience{{"bright", 9, 0, 2}, {"", 0, 2, 1}, {"quiet", 0, 1, 1}}, got.Audiences); diff != "" {
		t.Error(diff)
	}
}

func TestAPourThatTeachesNothingIsCountedAlone(t *testing.T) {
	plan, shelf := rosy(t)
	out := poured(plan, "a", sniffed(7, "alp-rose", 4, "x"), logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes, Wall: on(5)},
		logbook.Event{Kind: logbook.LeftOut, Text: "wrong lye", Wall: on(6)})
	p := told(shelf, learn.Lesson{}, out)["alp-rose"]
	if p.Poured != 1 || p.LeftOut != 1 || len(p.Weeks)+len(p.Troubles)+len(p.Words)+len(p.Browning) > 0 {
		t.Errorf("%+v", p)
	}
}

func TestStrengthsHaveWords(t *testing.T) {
	for v, want := range map[float64]string{-1: "gone", 0: "gone", 0.49: "gone", 0.5: "faint", 1.4: "faint", 2: "clear", 3.49: "strong", 3.5: "very strong", 4: "very strong", 9: "very strong"} {
		if got := Strength(v); got != want {
			t.Errorf("%v is %q, want %q", v, got, want)
		}
	}
}

// anyEvents are sniffs, looks, sales and troubles on any days after the cut.
func anyEvents(t *rapid.T, prefix string) []logbook.Event {
	var out []logbook.Event
	for i := range rapid.IntRange(0, 8).Draw(t, "events") {
		e := logbook.Event{
			ID: fmt.Sprintf("%s%d", prefix, i), Wall: on(rapid.IntRange(2, 90).Draw(t, "day")), Value: rapid.Float64Range(0, 4).Draw(t, "value"),
			Kind: rapid.SampledFrom([]logbook.EventKind{logbook.Sniffed, logbook.Sniffed, logbook.Looked, logbook.Sold, logbook.Troubled}).Draw(t, "kind"),
			Text: rapid.SampledFrom([]string{"", "rose", "sharp, rose"}).Draw(t, "words"), Jug: rapid.SampledFrom([]string{"", "poppy"}).Draw(t, "jug"),
		}
		switch e.Kind {
		case logbook.Looked:
			e.What = logbook.LookBrowning
		case logbook.Sold:
			e.Life = logbook.Life{Count: 1, Audience: rapid.SampledFrom([]string{"bright", "quiet"}).Draw(t, "audience")}
		case logbook.Troubled:
			e.What, e.Batch, e.Wall = logbook.Seizes, pour.Base, on(5)
		case logbook.Sniffed:
			e.Life.Scent = rapid.SampledFrom([]string{"", "alp-rose", "meadow-hay"}).Draw(t, "scent")
		}
		out = append(out, e)
	}
	return out
}

// Neither the order of the pours nor that of what was logged says anything, and no figure is none.
func TestTheOrderSaysNothing(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		var pours []logbook.Pour
		for i := range rapid.IntRange(1, 4).Draw(t, "pours") {
			pours = append(pours, poured(plan, fmt.Sprintf("p%d", i), anyEvents(t, fmt.Sprintf("p%d-e", i))...))
		}
		want := told(shelf, learn.Lesson{}, pours...)
		mixed := slices.Clone(pours)
		for i := range mixed {
			mixed[i].Events = rapid.Permutation(mixed[i].Events).Draw(t, "events")
		}
		got := told(shelf, learn.Lesson{}, rapid.Permutation(mixed).Draw(t, "order")...)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatal(diff)
		}
		for _, p := range want {
			for _, w := range p.Weeks {
				if w.N < 1 || !(w.Low >= 0 && w.Low <= w.Mean+1e-9 && w.Mean <= w.High+1e-9 && w.High <= 4) {
					t.Fatalf("%+v", w)
				}
			}
			if s := p.Sentence(); strings.Contains(s, "NaN") || s == "" {
				t.Fatal(s)
			}
		}
	})
}

// One more sniff changes its own week and no other.
func TestMoreSniffsChangeNoOtherWeek(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		events := anyEvents(t, "e")
		before := told(shelf, learn.Lesson{}, poured(plan, "a", events...))["alp-rose"]
		d := rapid.IntRange(6, 100).Draw(t, "day")
		v := rapid.Float64Range(0, 4).Draw(t, "value")
		after := told(shelf, learn.Lesson{}, poured(plan, "a", append(events, sniffed(d, "alp-rose", v, ""))...))["alp-rose"]
		own := int(math.Floor(float64(d-6) / 7))
		other := func(weeks []Week) []Week {
			return slices.DeleteFunc(slices.Clone(weeks), func(w Week) bool { return w.Week == own })
		}
		if diff := cmp.Diff(other(before.Weeks), other(after.Weeks), cmpopts.EquateEmpty()); diff != "" {
			t.Fatal(diff)
		}
		n := func(weeks []Week) (n int) {
			for _, w := range weeks {
				n += w.N
			}
			return n
		}
		if n(after.Weeks) != n(before.Weeks)+1 {
			t.Fatalf("%d sniffs, then %d", n(before.Weeks), n(after.Weeks))
		}
	})
}

// filled is a book with pours of a plan, a sniff in each.
func filled(t testing.TB, n int) (logbook.Book, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	for i := range n {
		p := poured(plan, fmt.Sprintf("p%d", i), sniffed(7+i%60, "alp-rose", float64(i%5), "rose"), sniffed(40, "meadow-hay", 1, ""),
			logbook.Event{Kind: logbook.Sold, Wall: on(50), Life: logbook.Life{Count: 2, Audience: "bright"}})
		_, err := book.Create(plan, "", on(5+i), p.Events)
		must(t, err)
	}
	return book, shelf
}

func TestTheBookIsReadOnceAndAgainWhereItChanged(t *testing.T) {
	book, shelf := filled(t, 3)
	read := func() []Page {
		t.Helper()
		got, unread, err := FromBook(book, shelf, learn.Lesson{})
		must(t, err)
		if len(unread) > 0 {
			t.Fatal(unread)
		}
		return got
	}
	first := read()
	if len(first) < 2 || first[0].Poured != 3 {
		t.Fatalf("%+v", first)
	}
	if diff := cmp.Diff(first, read()); diff != "" {
		t.Errorf("read again: %s", diff)
	}
	k := readKept(book, shelfSum(shelf))
	for id, g := range k.Pours { // as if something else had been gathered: only one who uses what is kept can know
		for i := range g.Uses {
			g.Uses[i].Shared += 10
		}
		k.Pours[id] = g
	}
	writeKept(book, k)
	if got := read(); got[0].Shared != first[0].Shared+30 {
		t.Errorf("what was kept is not used: %d shared, first %d", got[0].Shared, first[0].Shared)
	}
	list, err := book.List()
	must(t, err)
	must(t, book.Forget(list[0].ID))
	if got := read(); got[0].Poured != 2 || got[0].Shared != first[0].Shared+20 {
		t.Errorf("with one forgotten: %+v", got[0])
	}
	other := shelf
	other.Scents = slices.Clone(shelf.Scents)
	other.Scents[0].VanillinPercent++
	got, _, err := FromBook(book, other, learn.Lesson{})
	must(t, err)
	if got[0].Shared != first[0].Shared {
		t.Error("with another shelf what was kept is used")
	}
	must(t, os.WriteFile(book.Path(list[1].ID), []byte("nonsense = 1\n"), 0o600))
	got, unread, err := FromBook(book, shelf, learn.Lesson{})
	must(t, err)
	if len(unread) != 1 || unread[0].ID != list[1].ID || got[0].Poured != 1 {
		t.Errorf("with one broken: %v, %+v", unread, got[0])
	}
}

func BenchmarkThousandPours(b *testing.B) {
	book, shelf := filled(b, 1)
	list, err := book.List()
	must(b, err)
	src, err := os.ReadFile(book.Path(list[0].ID))
	must(b, err)
	for i := range 999 {
		must(b, os.WriteFile(book.Path(fmt.Sprintf("copy-%d", i)), src, 0o600))
	}
	start := time.Now()
	_, _, err = FromBook(book, shelf, learn.Lesson{})
	must(b, err)
	b.Logf("the first time, from the files: %v", time.Since(start))
	for b.Loop() {
		pages, _, err := FromBook(book, shelf, learn.Lesson{})
		must(b, err)
		if pages[0].Poured != 1000 {
			b.Fatal(pages[0].Poured)
		}
	}
}
