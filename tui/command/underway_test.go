package command

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"testing"
	"time"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/backup"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// begun begins a pour so long ago and returns it.
func begun(t *testing.T, book logbook.Book, name, trial string, ago time.Duration) *underway.Run {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read(name, strings.NewReader(string(text)), shelf)
	if err != nil {
		t.Fatal(err)
	}
	plan.Name = name
	then := func() underway.Moment { return underway.Moment{Wall: time.Now().Add(-ago), Of: "a"} }
	run, err := underway.Begin(book, pour.Work(plan, shelf, clock.Hand{}), trial, shelf, then, "a")
	if err != nil {
		t.Fatal(err)
	}
	return run
}

// A pour is taken up by itself only when it is of the same plan, open, no trial, and from less than two days ago; of several the latest.
func TestOnlyAPourOfTheSamePlanThatIsStillOpenIsTakenUp(t *testing.T) {
	book, err := logbook.OpenBook(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	takenUp := func(plan, want, why string) {
		t.Helper()
		if got, err := underWay(book, plan); err != nil || got != want {
			t.Errorf("%s: %q is taken up, want %q, %v", why, got, want, err)
		}
	}
	takenUp("Meadow", "", "an empty logbook")
	begun(t, book, "Meadow", "", 49*time.Hour)
	takenUp("Meadow", "", "a pour of two days and an hour ago")
	begun(t, book, "Meadow", "alp-rose", time.Hour)
	takenUp("Meadow", "", "a scent trial")
	begun(t, book, "Desert", "", time.Hour)
	takenUp("Meadow", "", "a pour of another plan")
	yesterday := begun(t, book, "Meadow", "", 47*time.Hour)
	takenUp("Meadow", yesterday.ID, "a pour of nearly two days ago")
	latest := begun(t, book, "Meadow", "", time.Minute)
	takenUp("Meadow", latest.ID, "the later of two")
	if err := latest.Mark(logbook.Event{Kind: logbook.Ended}); err != nil {
		t.Fatal(err)
	}
	takenUp("Meadow", yesterday.ID, "the later one is over")
}

func TestWhatIsAPlanIsNoFigure(t *testing.T) {
	for word, want := range map[string]bool{"-": true, "meadow.toml": true, "../a b.toml": true, "base.superfat_percent": false, "": false, "toml": false, "meadow.toml.x": false} {
		if isPlan(word) != want {
			t.Errorf("%q is a plan: %v", word, !want)
		}
	}
}

// Without anybody to ask, every file that differs is named before anything is written, up to twelve and then how many more.
func TestARestoreNobodyCanBeAskedAboutNamesWhatDiffers(t *testing.T) {
	steps := []backup.Step{{State: backup.Same, Path: "same.toml"}}
	for i := range 14 {
		steps = append(steps, backup.Step{State: backup.Other, Path: fmt.Sprintf("other-%02d.toml", i+1)})
	}
	err := (&asker{out: io.Discard}).first(steps)
	if err == nil {
		t.Fatal("it was allowed")
	}
	said := err.Error()
	for _, want := range []string{"14 files differ", "nothing was written", "--replace", "other-01.toml", "other-12.toml", "and 2 more"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in:\n%s", want, said)
		}
	}
	if strings.Contains(said, "same.toml") || strings.Contains(said, "other-13") {
		t.Errorf("too much is named:\n%s", said)
	}
	for name, a := range map[string]*asker{"with leave given": {replace: true}, "with somebody to ask": {in: bufio.NewReader(strings.NewReader(""))}} {
		if err := a.first(steps); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (&asker{}).first(steps[:1]); err != nil {
		t.Errorf("nothing differs: %v", err)
	}
}
