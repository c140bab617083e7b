package live

import (
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// script works a run through on a fake clock: what happens at which second.
type script struct {
	t *testing.T
	c *wallClock
	r *Run
}

func (s script) at(after time.Duration, do func() error) {
	s.t.Helper()
	for left := after; left > 0; left -= time.Second {
		s.c.pass(min(left, time.Second))
		s.r.Tick()
	}
	must(s.t, do())
}

// until finishes steps up to one, each as long as planned.
func (s script) until(key string) {
	s.t.Helper()
	for s.r.State().Next < len(s.r.State().Steps) {
		step := s.r.State().Steps[s.r.State().Next]
		wait := time.Duration(step.LengthMin * float64(time.Minute))
		if step.Kind == pour.TaskCoolLye {
			wait = time.Minute
		}
		s.at(wait, s.r.next)
		if step.Key == key {
			return
		}
	}
}

func TestAScriptedRunGoesFromLyeToLogbook(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	s := script{t, c, mustRun(t, r, err)}

	must(t, r.Mark(logbook.Event{Kind: logbook.Weighed, What: sheet.Totals[0].Name, Value: 381.5, Lot: "L77"}))
	s.until("base lye in")
	must(t, r.Mark(logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadBatter, Value: 36.5}))
	s.at(20*time.Second, func() error { return r.Mark(logbook.Event{Kind: logbook.Blended, Batch: pour.Base, Value: 20}) })
	if e, ok := r.State().Elapsed(r.Live().Run()); !ok || e != 20*time.Second {
		t.Errorf("lye met oil %v ago, %v", e, ok)
	}
	s.until("base split")
	s.at(30*time.Second, func() error { return r.stage("fern", chem.Light) })
	must(t, r.Mark(logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Browns}))
	must(t, r.note("poppy", "a little \x1b[31mred\x1b[0m"))
	s.at(time.Second, func() error { return r.stage("fern", chem.Thick) })
	must(t, r.Back()) // that was not thick
	s.until("base put to bed")
	must(t, r.Mark(logbook.Event{Kind: logbook.Ended}))
	c.pass(24 * time.Hour)
	over := r.Live().Run()
	must(t, Add(book, r.ID, shelf, c.now, "b", logbook.Event{Kind: logbook.Cut, Value: 131.2}))
	if all := events(t, book, r.ID, shelf); all[len(all)-1].Run != over+24*time.Hour || all[len(all)-1].Kind != logbook.Cut {
		t.Errorf("a bar weighed a day after %v is journaled at %v", over, all[len(all)-1].Run)
	}
	if err := Add(book, r.ID, shelf, c.now, "b", logbook.Event{Kind: logbook.Cured, Value: math.NaN()}); err == nil {
		t.Error("a weight that is no number was taken")
	}

	p, err := book.Read(r.ID, shelf)
	must(t, err)
	if diff := cmp.Diff(sheet.Plan, p.Plan); diff != "" {
		t.Errorf("the plan came back otherwise:\n%s", diff)
	}
	state := Replay(sheet, p.Events)
	if !state.Ended || state.Next != len(state.Steps) || len(state.Sightings) != 1 || len(state.Jumps) != 0 {
		t.Errorf("ended %v, next %d of %d, %d sightings, %d jumps", state.Ended, state.Next, len(state.Steps), len(state.Sightings), len(state.Jumps))
	}
	for _, e := range p.Events {
		if strings.ContainsRune(e.Text, '\x1b') {
			t.Errorf("an escape got into the book: %q", e.Text)
		}
	}
}

func TestAKilledTerminalResumesWhereItWas(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	s := script{t, c, mustRun(t, r, err)}
	s.until("base split")
	must(t, r.stage("fern", chem.Light))
	before := r.State()

	c.sleep(90 * time.Second) // nobody looks; another process follows
	c.of, c.steady = "two", 0
	again, err := Resume(book, r.ID, shelf, pour.Hand{}, c.now, "b")
	mustRun(t, again, err)
	after := again.State()
	if diff := cmp.Diff(before.Steps, after.Steps); diff != "" {
		t.Errorf("the steps differ:\n%s", diff)
	}
	if diff := cmp.Diff(before.Sightings, after.Sightings); diff != "" {
		t.Errorf("the sightings differ:\n%s", diff)
	}
	if got, want := again.Live().Run(), r.Live().Run()+90*time.Second; got != want {
		t.Errorf("the run is at %v, want %v: lye does not pause", got, want)
	}
	if len(after.Jumps) != 1 || after.Jumps[0].What != string(Reopened) {
		t.Errorf("the jump is not told: %v", after.Jumps)
	}
}

func TestASleepingLaptopMovesTheRunAndShowsIt(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	s := script{t, c, mustRun(t, r, err)}
	s.until("base split")
	before := r.Live().Run()
	c.sleep(4 * time.Minute)
	r.Tick()
	if got := r.Live().Run() - before; got != 4*time.Minute {
		t.Errorf("the run went on by %v", got)
	}
	if jumps := r.State().Jumps; len(jumps) != 1 || jumps[0].What != string(Slept) || jumps[0].Value != 240 {
		t.Errorf("jumps: %v", jumps)
	}
}

func TestTwoTerminalsSeeEachOthersMarks(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	one, err := Begin(book, sheet, "", shelf, c.now, "a")
	s := script{t, c, mustRun(t, one, err)}
	s.until("base split")
	two, err := Resume(book, one.ID, shelf, pour.Hand{}, c.now, "b")
	mustRun(t, two, err)
	for i := range 10 {
		c.pass(time.Second)
		must(t, one.note("fern", "one"))
		if i%3 == 0 {
			must(t, two.stage("poppy", chem.Stage(i/3)))
		}
	}
	c.pass(time.Second)
	one.Tick()
	two.Tick()
	if diff := cmp.Diff(one.State().Marks, two.State().Marks); diff != "" {
		t.Errorf("the terminals disagree:\n%s", diff)
	}
	ids := map[string]bool{}
	for _, e := range one.State().Marks {
		if ids[e.ID] {
			t.Errorf("two events are called %s", e.ID)
		}
		ids[e.ID] = true
	}
	if one.Live().Run() != two.Live().Run() {
		t.Errorf("one terminal is at %v, the other at %v", one.Live().Run(), two.Live().Run())
	}
}

func TestMarksThatMakeNoSenseAreRefused(t *testing.T) {
	sheet, _ := lonely(t)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	if _, _, err := live.Back(c.now()); err == nil {
		t.Error("there was nothing to take back")
	}
	if _, _, err := live.stage(pour.Base, "fern", chem.Light, c.now()); err == nil {
		t.Error("a stage was seen before lye met oil")
	}
	live, _, err := live.Do("base lye in", c.now())
	must(t, err)
	for _, e := range []logbook.Event{
		{Kind: logbook.Done, Step: "base lye in"},
		{Kind: logbook.Done, Step: "base dance"},
		{Kind: logbook.Seen, Batch: pour.Base, Jug: "nettle", Stage: chem.Light},
		{Kind: logbook.Seen, Batch: pour.Icing, Jug: "cream", Stage: chem.Light},
		{Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: 9},
		{Kind: logbook.Troubled, Batch: pour.Base, Jug: "fern", What: "sings"},
		{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 900},
		{Kind: logbook.Blended, Batch: pour.Base, Value: -1},
		{Kind: logbook.Weighed, What: "olive", Value: -2},
		{Kind: logbook.Noted, Text: strings.Repeat("x", logbook.MostLetters+1)},
		{Kind: logbook.Weighed, What: "olive", Value: 2, Lot: strings.Repeat("x", 1<<20)},
	} {
		if _, _, err := live.Mark(e, c.now()); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

func TestTheBoardMovesWithAReality(t *testing.T) {
	sheet, shelf := lonely(t)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	o := live.Outlook(shelf, pour.Hand{})
	if b := live.Board(o); b.LateMin != 0 || b.Elapsed.Known {
		t.Errorf("before lye meets oil it is %v min late", b.LateMin)
	}
	for _, key := range []string{"base cool the lye", "base lye in", "base mix"} {
		if step, ok := live.State().step(key); ok && !step.Done {
			live, _, _ = live.Do(key, c.now())
		}
		c.pass(2 * time.Minute)
	}
	live, _ = live.Tick(c.now())
	o = live.Outlook(shelf, pour.Hand{})
	early := live.Board(o)
	c.pass(10 * time.Minute) // the telephone
	live, _ = live.Tick(c.now())
	late := live.Board(o)
	if late.LateMin <= early.LateMin {
		t.Errorf("ten minutes lost: %v min late, before it was %v", late.LateMin, early.LateMin)
	}
	for i := range late.Due {
		if late.Due[i].StartMin < early.Due[i].StartMin {
			t.Errorf("%s moved up from %v to %v", late.Due[i].Key, early.Due[i].StartMin, late.Due[i].StartMin)
		}
	}
	checkRescues(t, late)
}

func checkRescues(t *testing.T, b Board) {
	t.Helper()
	lost := 0
	for _, j := range b.Jugs {
		if j.Verdict == TooLate || j.Verdict == Over {
			lost++
			if len(j.Rescues) == 0 {
				t.Errorf("%s is %s and nothing is said to do", j.Jug, j.Verdict)
			}
		}
	}
	if lost == 0 {
		t.Error("ten lost minutes cost no jug its window")
	}
}

func TestAnEarlyStageShortensTheWindowOfItsSisters(t *testing.T) {
	sheet, shelf := lonely(t)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	for _, key := range []string{"base lye in", "base mix", "base split"} {
		live, _, _ = live.Do(key, c.now())
		c.pass(2 * time.Minute)
	}
	live, _ = live.Tick(c.now())
	before := live.Outlook(shelf, pour.Hand{})
	own, _ := before.Jug(pour.Base, "buttercup")
	c.pass(max(0, time.Duration((own.Stages[chem.Light].V*.8)*float64(time.Minute))-4*time.Minute))
	live, _, err := live.stage(pour.Base, "buttercup", chem.Medium, c.now())
	must(t, err)
	after := live.Outlook(shelf, pour.Hand{})
	for _, name := range []string{"buttercup", "gentian"} {
		a, _ := before.Jug(pour.Base, name)
		b, _ := after.Jug(pour.Base, name)
		if b.Pace <= 1 || b.Window.To.V >= a.Window.To.V {
			t.Errorf("%s: pace %v, window to %v min, before %v", name, b.Pace, b.Window.To.V, a.Window.To.V)
		}
	}
	x, _ := after.Jug(pour.Base, "buttercup")
	y, _ := after.Jug(pour.Base, "gentian")
	if y.Pace >= x.Pace {
		t.Errorf("the sister jug moved by %v, the jug itself by %v", y.Pace, x.Pace)
	}
}

func TestTheFileIsGoodToReadAndMend(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	mustRun(t, r, err)
	must(t, r.Do("base lye in"))
	src, err := os.ReadFile(book.Path(r.ID))
	must(t, err)
	for _, want := range []string{"name = \"Alpine Meadow\"", "[[base.jug]]", "kind = \"done\"\nstep = \"base lye in\"", "wall = 2026-12-05T10:00:00.000Z"} {
		if !strings.Contains(string(src), want) {
			t.Errorf("the file does not say %q:\n%s", want, src)
		}
	}
	if got := r.ID; got != "2026-12-05-alpine-meadow" {
		t.Errorf("the pour is called %s", got)
	}
	mended := strings.Replace(string(src), `kind = "done"`, `kind = "done" # I forgot to press`, 1)
	must(t, os.WriteFile(book.Path(r.ID), []byte(strings.ReplaceAll(mended, "\n", "\r\n")), 0o600))
	if _, err := book.Read(r.ID, shelf); err != nil {
		t.Errorf("a file mended on another system is refused: %v", err)
	}
}
