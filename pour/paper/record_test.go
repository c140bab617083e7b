package paper

import (
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	underway "pourbench/pour/logbook/live"
)

// bookOf gives a book with one whole pour of the example plan on a fake clock, a step every 20 s.
func bookOf(t *testing.T) (logbook.Book, pour.Shelf, string) {
	t.Helper()
	plan, shelf := demo(t)
	book, err := logbook.OpenBook(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	wall, steady := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), time.Duration(0)
	now := func() underway.Moment { return underway.Moment{Wall: wall, Steady: steady, Of: "fake"} }
	run, err := underway.Begin(book, pour.Work(plan, shelf, pour.Hand{}), "", shelf, now, "t1")
	if err != nil {
		t.Fatal(err)
	}
	pass := func(d time.Duration) { wall, steady = wall.Add(d), steady+d }
	for {
		state := run.State()
		if state.Next >= len(state.Steps) {
			break
		}
		step := state.Steps[state.Next]
		pass(20 * time.Second)
		if err := run.Do(step.Key); err != nil {
			t.Fatal(err)
		}
		if step.Key == "base split" {
			pass(time.Minute)
			if err := run.Mark(logbook.Event{Kind: logbook.Seen, Batch: pour.Base, Jug: "pot", Stage: chem.Light}); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := run.Mark(logbook.Event{Kind: logbook.Noted, Batch: pour.Base, Jug: "pot", Text: "smells of hay"}); err != nil {
		t.Fatal(err)
	}
	return book, shelf, run.ID
}

func TestTheRecordSetsThePlanBesideThePour(t *testing.T) {
	book, shelf, id := bookOf(t)
	record, err := book.Read(id, shelf)
	if err != nil {
		t.Fatal(err)
	}
	text := PourRecord(record, pour.Work(record.Plan, shelf, pour.Hand{}))
	for _, want := range []string{"POUR RECORD: Alpine Meadow", "planned", "base split", "light in pot of the base", "note: pot smells of hay"} {
		if !strings.Contains(text, want) {
			t.Errorf("the record lacks %q:\n%s", want, text)
		}
	}
	sheet := pour.Work(record.Plan, shelf, pour.Hand{})
	light := sheet.Base.Jugs[0].Clock.Stages[chem.Light].Mid.V
	if want := "light, +"; !strings.Contains(Checklist(sheet, shelf), want) {
		t.Errorf("the checklist lacks %q", want)
	}
	if want := padded("light in pot of the base", 44) + record.Plan.Show.Predicted(light); !strings.Contains(text, want+" ") {
		t.Errorf("the record does not say %q as the checklist does:\n%s", want, text)
	}
	for _, line := range strings.Split(text, "\n") {
		if width(line) > 80 {
			t.Errorf("over 80 columns: %q", line)
		}
	}
}

// A step is planned for the same minute on paper, where it is when the step begins, and in the record; what was done began with the end of
// the step before.
func TestARecordAndPaperMeanTheSameByPlanned(t *testing.T) {
	book, shelf, id := bookOf(t)
	record, err := book.Read(id, shelf)
	if err != nil {
		t.Fatal(err)
	}
	sheet := pour.Work(record.Plan, shelf, pour.Hand{})
	text := PourRecord(record, sheet)
	show := pour.Show{}
	for _, st := range sheet.Stints() {
		name := padded(clip(string(st.Batch)+" "+st.Name(), 42), 44)
		if want := name + padded(show.RunTime(st.StartMin), 16); !strings.Contains(text, want) {
			t.Errorf("the record lacks %q:\n%s", want, text)
		}
	}
	// A step every 20 s, the lye-in too; a minute more after the split.
	for _, want := range []string{padded("base mix", 44) + padded("0:00", 16) + "0:00\n", padded("base split", 44) + padded("+2:00", 16) + "+0:20\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("the record lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "@") || strings.Contains(text, "round of") {
		t.Errorf("the record has the program's own names of steps:\n%s", text)
	}
}

func TestTheLessonSaysHowManyPoursItRestsOn(t *testing.T) {
	book, shelf, id := bookOf(t)
	lesson, unread, err := learn.FromBook(book, shelf)
	if err != nil || len(unread) > 0 {
		t.Fatal(err, unread)
	}
	text := LessonText(lesson, unread)
	for _, want := range []string{"From 1 of your pours", id, "light", "the model alone"} {
		if !strings.Contains(text, want) {
			t.Errorf("the lesson lacks %q:\n%s", want, text)
		}
	}
	list, err := book.List()
	if err != nil {
		t.Fatal(err)
	}
	if text := PourList(list); !strings.Contains(text, id) {
		t.Errorf("the list lacks %s:\n%s", id, text)
	}
	day := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	want := `2026-12-05-alpine-meadow  Alpine Meadow: left out, rices, ash on top and a so...
2026-12-05-bog  Bog: trial of alp-rose, open
2026-12-05  fen  Fen: over, no result logged
2026-12-05  hay  Hay: over, to be cut
2026-12-05  ` + strings.Repeat("long-", 20) + "\n"
	if got := PourList([]logbook.Entry{
		{Opened: day, ID: "2026-12-05-alpine-meadow", Name: "Alpine Meadow", Ended: true, LeftOut: true, Troubles: []string{logbook.Rices}, Result: "ash on top and a soft corner that broke"},
		{Opened: day, ID: "2026-12-05-bog", Name: "Bog", TrialScent: "alp-rose"},
		{Opened: day, ID: "fen", Name: "Fen", Ended: true, CutBegun: true},
		{Opened: day, ID: "hay", Name: "Hay", Ended: true},
		{Opened: day, ID: strings.Repeat("long-", 20), Name: "Bog", Ended: true},
	}); got != want {
		t.Errorf("the list is\n%s, want\n%s", got, want)
	}
	if text := PourList(nil); !strings.Contains(text, "No pour is logged yet") {
		t.Errorf("an empty logbook says %q", text)
	}
}

func TestATrialSaysWhatToPutOnTheShelf(t *testing.T) {
	text := TrialText(learn.TrialResult{
		Scent: "alp-rose", Behaviour: pour.BehaviourFast, Learnt: true, Rices: true,
		Finding: learn.Finding{Name: "alp rose", LoadPercent: 3, Factor: 2.2, Low: 1.6, High: 3, Pours: 1},
	})
	for _, want := range []string{"2.20 times the speed", "[[scent]]", `id = "alp-rose"`, `behaviour = "fast"`, "rices = true"} {
		if !strings.Contains(text, want) {
			t.Errorf("the trial lacks %q:\n%s", want, text)
		}
	}
	if text := TrialText(learn.TrialResult{Scent: "alp-rose", Behaviour: pour.BehaviourUnknown}); strings.Contains(text, "[[scent]]") {
		t.Errorf("a trial without a mark gives a shelf entry:\n%s", text)
	}
}

// What was weighed is told with its name, and a slip that was weighed again stands behind it: its name is what it is put right by.
func TestTheRecordNamesSlipsOfTheScaleToo(t *testing.T) {
	book, shelf, id := bookOf(t)
	record, err := book.Read(id, shelf)
	if err != nil {
		t.Fatal(err)
	}
	weighed := func(id string, g float64) logbook.Event {
		return logbook.Event{ID: id, Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: g}
	}
	record.Events = append(record.Events, weighed("w1", 41), weighed("w2", 343.8), logbook.Event{ID: "w3", Kind: logbook.Weighed, Batch: pour.Base, What: "castor oil", Value: 40})
	text := PourRecord(record, pour.Weigh(record.Plan, shelf))
	want := "w2 base olive oil, 343.80 g\n  w1 base olive oil, 41.00 g: does not count, weighed again since\nw3 base castor oil, 40.00 g\n"
	if !strings.Contains(text, want) {
		t.Errorf("the record lacks %q:\n%s", want, text)
	}
}
