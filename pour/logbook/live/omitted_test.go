package live

import (
	"slices"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// scentSteps are the jugs whose scent is still waited for.
func scentSteps(l Live) []string {
	var out []string
	for _, d := range l.Board(Outlook{}).Due {
		if d.Kind == pour.TaskScent {
			out = append(out, d.Jug)
		}
	}
	slices.Sort(out)
	return out
}

// Before the split one jug goes without its scent when it alone is late, and all of them when the pot is in trouble; nothing but the mark says which.
// Left out it is neither waited for nor does it quicken its jug.
func TestAScentIsLeftOutOfOneJugOrOfThePot(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	at := func(min float64) Moment {
		return Moment{Wall: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC).Add(minutes(min)), Steady: minutes(min), Of: "one"}
	}
	l, _ := start(sheet, "a", at(0))
	l, _, err := l.Do("base lye in", at(1))
	must(t, err)
	all := scentSteps(l)
	if len(all) < 2 {
		t.Fatalf("%v are to be scented", all)
	}
	before := l.Outlook(shelf, pour.Hand{})
	one := Rescue{Kind: LeaveScent}.Mark(JugBoard{JugOutlook: JugOutlook{Batch: pour.Base, Jug: "poppy"}})
	own, _, err := l.Mark(one, at(1.5))
	must(t, err)
	if got := scentSteps(own); len(got) != len(all)-1 || slices.Contains(got, "poppy") {
		t.Errorf("of %v %v are left", all, got)
	}
	was, _ := before.Jug(pour.Base, "poppy")
	now, _ := own.Outlook(shelf, pour.Hand{}).Jug(pour.Base, "poppy")
	if !(now.Window.To.V > was.Window.To.V) || now.Scented {
		t.Errorf("its window ends at %v, with its scent at %v", now.Window.To, was.Window.To)
	}
	if e := own.State().Marks; own.State().Whole(e[len(e)-1]) {
		t.Error("one jug's scent is told as that of all")
	}
	if _, _, err := l.Mark(logbook.Event{Kind: logbook.Rescued, Batch: pour.Base, Jug: "nowhere", What: "leave its scent out"}, at(2)); err == nil {
		t.Error("a jug that is not there goes without its scent")
	}
	l, _, err = l.Mark(logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Rices}, at(2))
	must(t, err)
	for _, j := range l.Board(l.Outlook(shelf, pour.Hand{})).Jugs {
		i := slices.IndexFunc(j.Rescues, func(r Rescue) bool { return r.Kind == LeaveScent })
		if j.Batch != pour.Base {
			continue
		}
		if i < 0 {
			t.Fatalf("%s cannot go without scent: %v", j.Jug, j.Rescues)
		}
		whole, _, err := l.Mark(j.Rescues[i].Mark(j), at(3))
		must(t, err)
		if got := scentSteps(whole); len(got) != 0 {
			t.Errorf("all of the pot goes without, %v are left", got)
		}
	}
}

// What nothing is poured without, what a jug has no other turn than, and what counts as planned on the loaf cannot be said to be not done; a swirl and a
// colour can, and what is done since is done.
func TestWhatCanBeNotDone(t *testing.T) {
	at := Moment{Wall: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), Of: "one"}
	loaf, free := 0, 0
	for _, name := range []string{"alpine-meadow", "edelweiss-morning", "first-snow", "autumn-slab"} {
		plan, shelf := example(t, name)
		l, _ := start(pour.Work(plan, shelf, pour.Hand{}), "a", at)
		for _, x := range l.State().Steps {
			skipped, _, err := l.Mark(logbook.Event{Kind: logbook.Skipped, Step: x.Key}, at)
			needed := slices.Contains([]pour.TaskKind{StepMakeLye, StepLyeIn, pour.TaskMix}, x.Kind) || x.Batch == "" && x.Item != ""
			only := l.State().OnlyMove(x.Step) != ""
			if (err == nil) == (needed || only) {
				t.Errorf("%s, %s: %v", name, x.Key, err)
			}
			if x.Batch == "" && x.Item != "" {
				loaf++
			}
			if err != nil {
				continue
			}
			free++
			if _, _, err := skipped.Mark(logbook.Event{Kind: logbook.Skipped, Step: x.Key}, at); err == nil {
				t.Errorf("%s, %s is not done twice", name, x.Key)
			}
			done, _, err := skipped.Do(x.Key, at)
			must(t, err)
			if s := done.State(); s.Omitted.Skipped(x.Key) {
				t.Errorf("%s, %s was done and counts as not done", name, x.Key)
			}
		}
	}
	if loaf == 0 || free == 0 {
		t.Errorf("%d steps are on a loaf, %d can be not done", loaf, free)
	}
}
