package session

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func opened(t *testing.T) *Session {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := planfile.Load("../testdata/meadow.toml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	return New(doc.Plan, shelf, pour.Hand{}, true)
}

func TestARefusedEditChangesNothingAndGivesTheReason(t *testing.T) {
	s := opened(t)
	before, rev := s.Plan(), s.Revision()
	err := s.Apply("share", pour.SetShare(pour.Base, 0, 140))
	if !errors.Is(err, pour.ErrRefused) {
		t.Errorf("got %v, want a refusal", err)
	}
	if d := cmp.Diff(before, s.Plan()); d != "" || s.Revision() != rev || s.CanUndo() != "" || s.Dirty() {
		t.Errorf("a refused edit left its traces: %s", d)
	}
}

func TestAnEditThatChangesNothingIsNotCounted(t *testing.T) {
	s := opened(t)
	if err := s.Apply("name", pour.SetName(s.Plan().Name)); err != nil {
		t.Fatal(err)
	}
	if s.CanUndo() != "" || s.Dirty() {
		t.Error("setting a name to itself can be undone")
	}
}

func TestNudgesGroupOnlyWithTheirOwnKind(t *testing.T) {
	s := opened(t)
	for _, v := range []float64{39, 40, 41} {
		if err := s.Nudge("share of pot", pour.SetShare(pour.Base, 0, v)); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Nudge("fill height", pour.SetNumber("mould.fill_mm", 63)); err != nil {
		t.Fatal(err)
	}
	if err := s.Nudge("share of pot", pour.SetShare(pour.Base, 0, 42)); err != nil {
		t.Fatal(err)
	}
	for _, want := range []float64{41, 41, 38} {
		if _, err := s.Undo(); err != nil {
			t.Fatal(err)
		}
		if got := s.Plan().Base.Jugs[0].SharePercent; got != want {
			t.Errorf("undo gives %v %%, want %v", got, want)
		}
	}
	if _, err := s.Undo(); !errors.Is(err, errNothingToUndo) {
		t.Errorf("a fourth undo gives %v", err)
	}
}

// What was undone was undone of another plan than a new edit makes: it is not done again on top of it. A refused edit and one that changes
// nothing make no new plan.
func TestANewEditForgetsWhatWasUndone(t *testing.T) {
	s := opened(t)
	share := func(percent float64) error { return s.Apply("share", pour.SetShare(pour.Base, 0, percent)) }
	if err := share(50); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	if err := share(140); err == nil || s.CanRedo() != "share" {
		t.Errorf("a refused edit (%v) leaves %q to redo", err, s.CanRedo())
	}
	if err := s.Apply("name", pour.SetName(s.Plan().Name)); err != nil || s.CanRedo() != "share" {
		t.Errorf("an edit of nothing (%v) leaves %q to redo", err, s.CanRedo())
	}
	if err := s.Apply("fill", pour.SetNumber("mould.fill_mm", 55)); err != nil {
		t.Fatal(err)
	}
	plan := s.Plan()
	if name, err := s.Redo(); !errors.Is(err, errNothingToRedo) || s.CanRedo() != "" {
		t.Errorf("after a new edit %q is done again, %v", name, err)
	}
	if d := cmp.Diff(plan, s.Plan()); d != "" {
		t.Error(d)
	}
}

// A nudge that changes nothing, as of a word round all its values, must not draw the next one into the edit before.
func TestANudgeAfterOneOfNothingIsUndoneByItself(t *testing.T) {
	s := opened(t)
	if err := s.Apply("name", pour.SetName("first")); err != nil {
		t.Fatal(err)
	}
	for _, percent := range []float64{s.Plan().Base.Jugs[0].SharePercent, 50} {
		if err := s.Nudge("share", pour.SetShare(pour.Base, 0, percent)); err != nil {
			t.Fatal(err)
		}
	}
	if name, err := s.Undo(); err != nil || name != "share" || s.Plan().Name != "first" {
		t.Errorf("undo took %q back, and the plan is called %q", name, s.Plan().Name)
	}
}

// However shares are typed, each is undone with the hold it brought, and done again with it.
func TestATypedShareIsUndoneWithItsHold(t *testing.T) {
	start := opened(t).Plan()
	shelf := opened(t).Shelf()
	rapid.Check(t, func(rt *rapid.T) {
		s := New(start, shelf, pour.Hand{}, true)
		been := []pour.Plan{s.Plan()}
		for range rapid.IntRange(1, 6).Draw(rt, "typed") {
			jug := rapid.IntRange(0, len(start.Base.Jugs)-1).Draw(rt, "jug")
			rev := s.Revision()
			if err := s.Apply("share", pour.TypeShare(pour.Base, jug, float64(rapid.IntRange(0, 400).Draw(rt, "tenths"))/10)); err == nil && s.Revision() != rev {
				been = append(been, s.Plan())
			}
		}
		for i := len(been) - 2; i >= 0; i-- {
			if _, err := s.Undo(); err != nil || cmp.Diff(been[i], s.Plan()) != "" {
				rt.Fatalf("%v: %s", err, cmp.Diff(been[i], s.Plan()))
			}
		}
		for _, want := range been[1:] {
			if _, err := s.Redo(); err != nil || cmp.Diff(want, s.Plan()) != "" {
				rt.Fatalf("%v: %s", err, cmp.Diff(want, s.Plan()))
			}
		}
	})
}

func TestUndoingBackToWhatWasSavedIsClean(t *testing.T) {
	s := opened(t)
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 50)); err != nil {
		t.Fatal(err)
	}
	s.Saved(s.Plan())
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 60)); err != nil {
		t.Fatal(err)
	}
	if !s.Dirty() {
		t.Error("a change after a save is not dirty")
	}
	if _, err := s.Undo(); err != nil || s.Dirty() {
		t.Errorf("undoing back to the saved plan is dirty, %v", err)
	}
}

func TestTheClockIsTakenForItsOwnRevisionAlone(t *testing.T) {
	s := opened(t)
	if _, fresh := s.Clock(); !fresh {
		t.Fatal("a plan is opened without its clock")
	}
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 50)); err != nil {
		t.Fatal(err)
	}
	old, work := s.Revision(), s.Untimed()
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 60)); err != nil {
		t.Fatal(err)
	}
	s.Timed(old, work())
	if _, fresh := s.Clock(); fresh {
		t.Error("figures of an older plan were taken")
	}
	s.Timed(s.Revision(), s.Untimed()())
	if sheet, fresh := s.Clock(); !fresh || sheet.Plan.Base.Jugs[0].SharePercent != 60 {
		t.Error("figures of the plan on the bench were not taken")
	}
}

// A lesson changes the times of the plan, and nothing that was done to it.
func TestALessonIsWorkedOutAndLeavesWhatWasDone(t *testing.T) {
	s := opened(t)
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 50)); err != nil {
		t.Fatal(err)
	}
	s.Saved(s.Plan())
	taught := pour.Hand{Clock: clock.Hand{Traits: []clock.Trait{{Kind: clock.PaceTrait, Mean: 0.5, Pours: 3}}, Covariance: [][]float64{{0.01}}, Pours: 3}}
	old, work := s.Revision(), s.Untimed()
	if !s.Learn(taught) || s.Learn(taught) {
		t.Error("a lesson is news once")
	}
	s.Timed(old, work())
	if _, fresh := s.Clock(); fresh {
		t.Error("figures without the lesson were taken")
	}
	if s.Dirty() || s.CanUndo() != "share" {
		t.Errorf("dirty %v, undo %q", s.Dirty(), s.CanUndo())
	}
	s.Timed(s.Revision(), s.Untimed()())
	sheet, _ := s.Clock()
	want, _ := New(s.Plan(), s.Shelf(), taught, true).Clock()
	if d := cmp.Diff(want.Base.Jugs[0].Clock, sheet.Base.Jugs[0].Clock); d != "" {
		t.Error(d)
	}
}
