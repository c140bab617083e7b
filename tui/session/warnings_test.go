package session

import (
	"slices"
	"testing"

	"pourbench/chem/colour"
	"pourbench/pour"
)

// worked works everything out that is worked out beside the keyboard.
func worked(t *testing.T, s *Session) {
	t.Helper()
	if work := s.Untimed(); work != nil {
		s.Timed(s.Revision(), work())
	}
	mingle := s.Unmingled(colour.NewJudge())
	if mingle == nil {
		t.Fatal("what the colours do is not asked for once the clock is known")
	}
	s.Mingled(s.Revision(), mingle())
}

func codes(list []pour.Warning) []string {
	var out []string
	for _, w := range list {
		out = append(out, w.Code)
	}
	return out
}

// What needs the clock stands on while it is worked out again; what stands on the lye is never that of the plan before.
func TestALateWarningStaysWhileItIsLookedForAgainAndALyeWarningNever(t *testing.T) {
	s := opened(t)
	worked(t, s)
	if !slices.Contains(codes(s.Warnings()), "scent-fast-late") || slices.Contains(codes(s.Warnings()), "lye-heavy") {
		t.Fatalf("worked out, it warns of %q", codes(s.Warnings()))
	}
	if err := s.Apply("superfat", pour.SetNumber("base.superfat_percent", -1)); err != nil {
		t.Fatal(err)
	}
	now := s.Warnings()
	if !slices.Contains(codes(now), "scent-fast-late") || now[0].Code != "lye-heavy" {
		t.Errorf("while it is worked out again it warns of %q", codes(now))
	}
	if !slices.IsSortedFunc(now, func(a, b pour.Warning) int { return rank(a.Severity) - rank(b.Severity) }) {
		t.Errorf("the worst do not come first: %q", codes(now))
	}
	if err := s.Apply("superfat", pour.SetNumber("base.superfat_percent", 5)); err != nil {
		t.Fatal(err)
	}
	if slices.Contains(codes(s.Warnings()), "lye-heavy") {
		t.Error("the lye's warning of the plan before still stands")
	}
}

func TestAWarningThatIsWordedOtherwiseIsTheSame(t *testing.T) {
	a := []pour.Warning{{Code: "x", Where: "base", Text: "one"}, {Code: "x", Where: "icing"}, {Code: "y", Where: "base"}}
	got := without(a, []pour.Warning{{Code: "x", Where: "base", Text: "another"}})
	if len(got) != 2 || got[0].Where != "icing" || got[1].Code != "y" || len(a) != 3 {
		t.Errorf("left are %+v of %d", got, len(a))
	}
	if !(rank(pour.Stop) < rank(pour.Caution) && rank(pour.Caution) < rank(pour.Note)) {
		t.Error("a stop is not worse than a caution, or that not than a note")
	}
}

func TestTheColoursAreTakenForTheirOwnRevisionAlone(t *testing.T) {
	s := opened(t)
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 38.5)); err != nil {
		t.Fatal(err)
	}
	if s.Unmingled(colour.NewJudge()) != nil {
		t.Error("the colours are worked out before the clock, which they need")
	}
	worked(t, s)
	sheet, fresh := s.Colours()
	if !fresh || len(sheet.Mingling.Orders) == 0 || s.Unmingled(colour.NewJudge()) != nil {
		t.Fatalf("fresh %v, %d orders", fresh, len(sheet.Mingling.Orders))
	}
	old, rev := *sheet, s.Revision()
	if err := s.Apply("share", pour.SetShare(pour.Base, 0, 50)); err != nil {
		t.Fatal(err)
	}
	s.Mingled(rev, old)
	if _, fresh := s.Colours(); fresh || s.Sheet().Plan.Base.Jugs[0].SharePercent != 50 {
		t.Error("the colours of the plan before were taken for this one's")
	}
	if sheet, _ := s.Colours(); sheet.Plan.Base.Jugs[0].SharePercent != 38.5 {
		t.Error("the colours before do not stand in meanwhile")
	}
}

func TestUndoAndRedoNameTheirEdit(t *testing.T) {
	s := opened(t)
	if _, err := s.Undo(); err == nil {
		t.Error("nothing was undone without a word")
	}
	if _, err := s.Redo(); err == nil {
		t.Error("nothing was done again without a word")
	}
	for i, name := range []string{"first", "second"} {
		if err := s.Apply(name, pour.SetShare(pour.Base, 0, float64(40+i))); err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{"second", "first"} {
		if s.CanUndo() != want {
			t.Errorf("to undo is %q, want %q", s.CanUndo(), want)
		}
		if name, err := s.Undo(); err != nil || name != want || s.CanRedo() != want {
			t.Errorf("undone %q, to redo %q, %v", name, s.CanRedo(), err)
		}
	}
	for i, want := range []string{"first", "second"} {
		if name, err := s.Redo(); err != nil || name != want || s.Plan().Base.Jugs[0].SharePercent != float64(40+i) {
			t.Errorf("done again: %q with %v %%, %v", name, s.Plan().Base.Jugs[0].SharePercent, err)
		}
	}
	if s.CanRedo() != "" || s.CanUndo() != "second" {
		t.Errorf("at the end: undo %q, redo %q", s.CanUndo(), s.CanRedo())
	}
}
