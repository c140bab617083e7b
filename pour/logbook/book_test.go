package logbook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// filled writes a number of pours into a book, each with a stage or two seen in fern.
func filled(t testing.TB, count int) (Book, pour.Sheet, pour.Shelf) {
	t.Helper()
	sheet, shelf := lonely(t)
	book := openTestBook(t)
	for i := range count {
		c := newClock()
		c.wall = c.wall.AddDate(0, 0, i)
		live, events := Start(sheet, "a", c.now())
		mark := func(after time.Duration, e Event) {
			c.pass(after)
			var marked []Event
			var err error
			live, marked, err = live.Mark(e, c.now())
			must(t, err)
			events = append(events, marked...)
		}
		mark(0, Event{Kind: Done, Step: "base lye in"})
		mark(2*time.Minute, Event{Kind: Done, Step: "base mix"})
		mark(2*time.Minute, Event{Kind: Seen, Batch: pour.Base, Jug: "gentian", Stage: chem.Light})
		mark(5*time.Minute, Event{Kind: Seen, Batch: pour.Base, Jug: "gentian", Stage: chem.Medium})
		mark(time.Minute, Event{Kind: Noted, Text: fmt.Sprintf("pour number %d, =1+1", i)})
		if i%5 == 0 {
			mark(0, Event{Kind: Troubled, Batch: pour.Base, Jug: "poppy", What: Browns})
		}
		mark(time.Minute, Event{Kind: Ended})
		_, err := book.Create(sheet.Plan, "", c.wall, events)
		must(t, err)
	}
	return book, sheet, shelf
}

func TestTheListKnowsEveryPourAndFindsWords(t *testing.T) {
	book, _, _ := filled(t, 12)
	for range 2 { // read from the files, then from the index
		list, err := book.List()
		must(t, err)
		if len(list) != 12 || !list[0].Opened.After(list[11].Opened) || list[0].Name != "Alpine Meadow" || !list[3].Ended {
			t.Fatalf("%d pours, the first %+v", len(list), list[0])
		}
		for text, want := range map[string]int{"": 12, "number 11,": 1, "BROWNS": 3, "alp-rose shea": 12, "nettle": 0, "2026-12": 12} {
			if got := len(Search(list, text)); got != want {
				t.Errorf("%q finds %d pours, want %d", text, got, want)
			}
		}
	}
}

func TestAChangedForgottenOrBrokenPourIsSeenByTheList(t *testing.T) {
	book, _, shelf := filled(t, 3)
	list, err := book.List()
	must(t, err)
	must(t, book.Add(list[0].ID, shelf, newClock().now, "b", Event{Kind: Result, Text: "creamy"}))
	if err := book.Add(list[0].ID, shelf, newClock().now, "b", Event{Kind: Cured, Value: math.NaN()}); err == nil {
		t.Error("a weight that is no number was taken")
	}
	must(t, book.Forget(list[1].ID))
	must(t, os.WriteFile(book.Path("broken"), []byte("name = \"Oh\"\nkind ="), 0o600))
	again, err := book.List()
	must(t, err)
	if len(again) != 3 || len(Search(again, "creamy")) != 1 || len(Search(again, "broken")) != 1 {
		t.Errorf("the list: %+v", again)
	}
	if err := book.Forget("../x"); err == nil {
		t.Error("an id led out of the folder")
	}
}

func TestAPourThatIsLeftOutTeachesNothingUntilItIsTakenIn(t *testing.T) {
	book, _, shelf := filled(t, 3)
	pours := func() int {
		lesson, unread, err := book.Learn(shelf)
		must(t, err)
		if len(unread) > 0 {
			t.Fatalf("not read: %v", unread)
		}
		return lesson.Hand.Pours
	}
	if got := pours(); got != 3 {
		t.Fatalf("learnt from %d pours", got)
	}
	list, err := book.List()
	must(t, err)
	must(t, book.Append(list[0].ID, Event{ID: "x", Kind: LeftOut, Text: "wrong lye", Wall: time.Now()}))
	if got := pours(); got != 2 {
		t.Errorf("with one left out: %d pours", got)
	}
	must(t, book.Append(list[0].ID, Event{ID: "y", Kind: TakenIn, Wall: time.Now()}))
	if got := pours(); got != 3 {
		t.Errorf("taken in again: %d pours", got)
	}
	must(t, book.Forget(list[0].ID))
	if got := pours(); got != 2 {
		t.Errorf("with one forgotten: %d pours", got)
	}
}

func TestWhatIsRecalledIsWhatIsWorkedOut(t *testing.T) {
	book, _, shelf := filled(t, 5)
	first, _, err := book.Learn(shelf)
	must(t, err)
	again, _, err := book.Learn(shelf)
	must(t, err)
	for i, a := range first.Hand.Traits {
		if b := again.Hand.Traits[i]; a != b {
			t.Errorf("worked out %+v, recalled %+v", a, b)
		}
	}
	slower := shelf
	slower.Scents = append([]pour.Scent(nil), shelf.Scents...)
	slower.Scents[0].Notes = "otherwise"
	if shelfSum(shelf) == shelfSum(slower) {
		t.Error("a changed shelf is not seen")
	}
}

func TestExportsHoldEveryEventAndNoFormula(t *testing.T) {
	book, _, shelf := filled(t, 2)
	list, err := book.List()
	must(t, err)
	var pours []Pour
	for _, e := range list {
		p, err := book.Read(e.ID, shelf)
		must(t, err)
		p.Events = append(p.Events, Event{Kind: Noted, Text: "=HYPERLINK()"})
		pours = append(pours, p)
	}
	var out bytes.Buffer
	must(t, ExportCSV(&out, shelf, pours))
	rows, err := csv.NewReader(&out).ReadAll()
	must(t, err)
	if want := 1 + len(pours[0].Events) + len(pours[1].Events); len(rows) != want {
		t.Errorf("%d lines, want %d", len(rows), want)
	}
	for _, row := range rows {
		for _, cell := range row {
			if strings.HasPrefix(cell, "=") {
				t.Errorf("the cell %q would be run", cell)
			}
		}
	}
	out.Reset()
	must(t, ExportJSON(&out, shelf, pours))
	var back []map[string]any
	must(t, json.Unmarshal(out.Bytes(), &back))
	if len(back) != 2 || back[0]["trial_scent"] != nil || len(back[0]["events"].([]any)) != len(pours[0].Events) {
		t.Errorf("the JSON: %v", back)
	}
}

func TestATrialOfAScentSetsItsBehaviour(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	trial, err := TrialPlan(plan, "alp-rose", shelf)
	must(t, err)
	sheet := pour.Work(trial, shelf, clock.Hand{})
	for _, j := range sheet.Base.Jugs {
		if math.Abs(j.BatterG-TrialG) > 1e-6 {
			t.Errorf("%s holds %v g", j.Name, j.BatterG)
		}
	}
	load := shelfLoad(shelf, "alp-rose")
	if got := sheet.Base.Jugs[1].ScentLoadPercent; math.Abs(got-load) > 1e-9 {
		t.Errorf("the scented jug has %v %%, the test load is %v %%", got, load)
	}
	book, c := openTestBook(t), newClock()
	r, err := book.Begin(sheet, "alp-rose", shelf, c.now, "a")
	s := script{t, c, mustRun(t, r, err)}
	s.until("base scent " + TrialScented)
	since, _ := r.State().Elapsed(r.Live().Run())
	half := func(jug string, stage chem.Stage, factor float64) { // as seen by a maker for whom the scent is that quick
		j := sheet.Base.Jugs[map[string]int{TrialPlain: 0, TrialScented: 1}[jug]]
		at := time.Duration(j.Clock.Stages[stage].Mid.V*factor*float64(time.Minute)) - since
		s.at(max(0, at), func() error { return r.Stage(pour.Base, jug, stage) })
		since, _ = r.State().Elapsed(r.Live().Run())
	}
	half(TrialScented, chem.Medium, .5)
	half(TrialScented, chem.Thick, .45)
	half(TrialPlain, chem.Medium, 1)
	half(TrialPlain, chem.Thick, 1)
	p, err := book.Read(r.ID, shelf)
	must(t, err)
	lesson := Learn(p.Logs(shelf))
	result, err := p.TrialResult(shelf, lesson)
	must(t, err)
	if !result.Learnt || result.Finding.Factor <= result.Finding.Prior {
		t.Errorf("a scent twice as quick as believed (×%.2f) comes out at ×%.2f", result.Finding.Prior, result.Finding.Factor)
	}
	t.Logf("×%.2f believed, ×%.2f (%.2f to %.2f) after the trial: %s", result.Finding.Prior, result.Finding.Factor, result.Finding.Low, result.Finding.High, result.Behaviour)
	must(t, r.Trouble(pour.Base, TrialScented, Seizes))
	p, err = book.Read(r.ID, shelf)
	must(t, err)
	if result, _ = p.TrialResult(shelf, lesson); result.Behaviour != pour.BehaviourSeizes {
		t.Errorf("a scent that seized is called %s", result.Behaviour)
	}
}

func shelfLoad(shelf pour.Shelf, id string) float64 {
	if sc, _ := shelf.Scent(id); sc.TestLoadPercent > 0 {
		return sc.TestLoadPercent
	}
	return clock.PriorLoadPercent
}

func BenchmarkListAndSearchTenThousand(b *testing.B) {
	book, sheet, _ := filled(b, 1)
	src, err := os.ReadFile(book.Path("2026-12-05-alpine-meadow"))
	must(b, err)
	for i := range 10000 {
		must(b, os.WriteFile(book.Path(fmt.Sprintf("copy-%d", i)), src, 0o600))
	}
	start := time.Now()
	_, err = book.List()
	must(b, err)
	b.Logf("the first list of %s, without an index: %v", sheet.Plan.Name, time.Since(start))
	for b.Loop() {
		list, err := book.List()
		must(b, err)
		if got := len(Search(list, "gentian shea")); got != 10001 {
			b.Fatalf("%d found", got)
		}
	}
}

func BenchmarkBookLearnThousandPours(b *testing.B) {
	book, _, shelf := filled(b, 1)
	src, err := os.ReadFile(book.Path("2026-12-05-alpine-meadow"))
	must(b, err)
	for i := range 1000 {
		must(b, os.WriteFile(book.Path(fmt.Sprintf("copy-%d", i)), src, 0o600))
	}
	start := time.Now()
	_, _, err = book.Learn(shelf)
	must(b, err)
	b.Logf("the first time, from the files: %v", time.Since(start))
	for b.Loop() {
		_, _, err := book.Learn(shelf)
		must(b, err)
	}
}

func BenchmarkBoard(b *testing.B) {
	sheet, shelf := lonely(b)
	c := newClock()
	live, _ := Start(sheet, "a", c.now())
	live, _, _ = live.Do("base lye in", c.now())
	o := live.Outlook(shelf, clock.Hand{})
	for b.Loop() {
		live.Board(o)
	}
}

func BenchmarkOutlook(b *testing.B) {
	sheet, shelf := lonely(b)
	c := newClock()
	live, _ := Start(sheet, "a", c.now())
	live, _, _ = live.Do("base lye in", c.now())
	for b.Loop() {
		live.Outlook(shelf, clock.Hand{})
	}
}

func BenchmarkAppend(b *testing.B) {
	book, _, _ := filled(b, 1)
	e := Event{ID: "x", Kind: Noted, Text: "on", Wall: time.Now()}
	for b.Loop() {
		must(b, book.Append("2026-12-05-alpine-meadow", e))
	}
}
