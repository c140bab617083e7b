package tui

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
)

// keeping is a bench that keeps its journal in a folder, on a plan file or, with an empty path, on a plan without one.
func keeping(t *testing.T, state, path string) *model {
	t.Helper()
	shelf, plan := built(t)
	doc := planfile.Document{Plan: plan}
	if path != "" {
		var err error
		if doc, err = planfile.Load(path, shelf); err != nil {
			t.Fatal(err)
		}
	}
	m := newModel(Options{Document: doc, Shelf: shelf, StateDir: state, Background: "dark"})
	t.Cleanup(func() { _ = m.close() })
	finish(m, m.Init())
	return m
}

// planFile is a plan in a folder of its own.
func planFile(t *testing.T) string {
	t.Helper()
	_, plan := built(t)
	path := filepath.Join(t.TempDir(), "plan.toml")
	if _, err := planfile.Save(path, plan, planfile.SaveOptions{}); err != nil {
		t.Fatal(err)
	}
	return path
}

// share gives the pot a share and journals that.
func share(t *testing.T, m *model, percent float64) {
	t.Helper()
	if err := m.session.Apply("share", pour.SetShare(pour.Base, 0, percent)); err != nil {
		t.Fatal(err)
	}
	finish(m, m.writeJournal())
}

// killed leaves lost work behind: the pot's share, from a bench that is gone.
func killed(t *testing.T, state, path string, percent float64) {
	t.Helper()
	m := keeping(t, state, path)
	for m.dialogs.Top() != nil {
		drive(m, "l")
	}
	share(t, m, percent)
	if err := m.close(); err != nil {
		t.Fatal(err)
	}
}

// journals is what is kept in a folder: the pot's shares, the latest first.
func journals(t *testing.T, state string) []float64 {
	t.Helper()
	found, err := planfile.Recoveries(state)
	if err != nil {
		t.Fatal(err)
	}
	out := []float64{}
	for _, r := range found {
		out = append(out, r.Plan.Base.Jugs[0].SharePercent)
	}
	return out
}

func TestRecoveryShowsWhatDiffersBeforeItIsTaken(t *testing.T) {
	state := t.TempDir()
	killed(t, state, "", 44)
	m := keeping(t, state, "")
	if f := frame(m); !strings.Contains(f, "base jug pot: share 38 % →") || !strings.Contains(f, "and 4 more.") {
		t.Errorf("the question does not say what differs:\n%s", f)
	}
	drive(m, "s")
	f := frame(m)
	for _, want := range []string{"What differs", "base jug pot: share 38 % → 44 %", "base jug gentian: share 16 % → 14.4516 %"} {
		if !strings.Contains(f, want) {
			t.Errorf("%q is not on the page:\n%s", want, f)
		}
	}
	if drive(m, "esc"); !strings.Contains(frame(m), "take it up") || base(m).Jugs[0].SharePercent != 38 {
		t.Errorf("after the page it is not asked again, or the work was taken:\n%s", frame(m))
	}
	drive(m, "t")
	if got := base(m).Jugs[0].SharePercent; got != 44 {
		t.Errorf("taken up with %v %%", got)
	}
}

func TestUnsavedWorkIsJournalledOfferedAndForgottenOnceSaved(t *testing.T) {
	state := t.TempDir()
	killed(t, state, "", 44)
	again := keeping(t, state, "")
	if again.dialogs.Top() == nil {
		t.Fatal("the journal was not offered")
	}
	drive(again, "t")
	if got := base(again).Jugs[0].SharePercent; got != 44 || !again.session.Dirty() {
		t.Errorf("taken up with %v %%, dirty %v", got, again.session.Dirty())
	}
	if got := journals(t, state); len(got) != 1 || got[0] != 44 {
		t.Errorf("taken up, the journals hold %v", got)
	}
	drive(again, "S enter ctrl+u")
	typeText(again, filepath.Join(t.TempDir(), "x.toml"))
	drive(again, "enter")
	left, err := os.ReadDir(state)
	left = slices.DeleteFunc(left, func(e os.DirEntry) bool { return e.Name() == "plans" }) // the list for a backup stays
	if err != nil || len(left) != 0 {
		t.Errorf("after the save %v are left, %v", left, err)
	}
}

func TestWorkLeftForLaterIsNotWrittenOverByEditingOn(t *testing.T) {
	for _, later := range []string{"l", "esc"} {
		state, path := t.TempDir(), planFile(t)
		killed(t, state, path, 44)
		m := keeping(t, state, path)
		drive(m, later)
		share(t, m, 41)
		if got := journals(t, state); len(got) != 2 || got[0]+got[1] != 85 {
			t.Errorf("%s: the journals hold %v", later, got)
		}
		if drive(m, "s"); m.session.Dirty() {
			t.Fatalf("not saved: %s", m.status.Text())
		}
		if got := journals(t, state); len(got) != 1 || got[0] != 44 {
			t.Errorf("%s: after the save the journals hold %v", later, got)
		}
	}
}

func TestAllLostWorkIsOfferedOneAfterTheOther(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	killed(t, state, path, 44)
	killed(t, state, path, 45)
	killed(t, state, path, 46)
	m := keeping(t, state, path)
	drive(m, "l d t")
	if got := journals(t, state); m.dialogs.Top() != nil || len(got) != 2 {
		t.Errorf("one left, one discarded, one taken up: the journals hold %v", got)
	}
	if base(m).Jugs[0].SharePercent == 38 {
		t.Error("nothing was taken up")
	}
}

func TestAPlanOpenedFromTheListOffersItsLostWork(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	killed(t, state, path, 44)
	killed(t, state, "", 41)
	m := keeping(t, state, planFile(t))
	if m.dialogs.Top() != nil {
		t.Fatal("another plan's work was offered")
	}
	finish(m, m.openPlan(path))
	if f := frame(m); !strings.Contains(f, filepath.Base(path)) || m.dialogs.Top() == nil {
		t.Fatalf("the lost work was not offered:\n%s", f)
	}
	drive(m, "t")
	if got := base(m).Jugs[0].SharePercent; got != 44 || m.file.path != path {
		t.Errorf("taken up with %v %% for %s", got, m.file.path)
	}
}

func TestRecoveredWorkNeverReplacesAFileThatChangedSince(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	killed(t, state, path, 44)
	shelf, plan := built(t)
	plan.Name = "Her Meadow"
	if _, err := planfile.Save(path, plan, planfile.SaveOptions{Force: true}); err != nil {
		t.Fatal(err)
	}
	m := keeping(t, state, path)
	drive(m, "t")
	if said := m.status.Text(); !strings.Contains(said, "changed by something else") {
		t.Errorf("it says %q", said)
	}
	drive(m, "s")
	if m.dialogs.Top() == nil {
		t.Fatalf("saving did not ask: %s", m.status.Text())
	}
	drive(m, "esc")
	if doc, err := planfile.Load(path, shelf); err != nil || doc.Plan.Name != "Her Meadow" {
		t.Errorf("the file holds %q, %v", doc.Plan.Name, err)
	}
	drive(m, "s r")
	kept := filepath.Join(filepath.Dir(path), m.status.Text()[strings.LastIndex(m.status.Text(), " ")+1:])
	if doc, err := planfile.Load(kept, shelf); err != nil || doc.Plan.Name != "Her Meadow" {
		t.Errorf("her plan is not kept as %s: %q, %v", kept, doc.Plan.Name, err)
	}
}

func TestRecoveredWorkIsSavedWithoutAQuestionWhenItsFileIsAsItWas(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	killed(t, state, path, 44)
	m := keeping(t, state, path)
	drive(m, "t s")
	if m.session.Dirty() || m.dialogs.Top() != nil {
		t.Errorf("not saved: %s", m.status.Text())
	}
}

func TestTheOldJournalStaysUntilTheNewOneIsWritten(t *testing.T) {
	state := t.TempDir()
	killed(t, state, "", 44)
	found, err := planfile.Recoveries(state)
	if err != nil || len(found) != 1 {
		t.Fatalf("found %d, %v", len(found), err)
	}
	noFolder := filepath.Join(planFile(t), "state") // below a file
	m := keeping(t, noFolder, "")
	finish(m, m.takeUp(found[0]))
	if got := journals(t, state); len(got) != 1 {
		t.Errorf("the bench could not keep what it took up, and the old journal is gone: %s", m.status.Text())
	}
}

// A journal of an earlier version does not say what its file was.
func TestWorkRecoveredFromAnEarlierVersionAsksBeforeItReplaces(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(state, "0123456789abcdef.journal"), append([]byte("# pourbench recovery journal of \""+path+"\"\n"), text...), 0o600); err != nil {
		t.Fatal(err)
	}
	m := keeping(t, state, path)
	drive(m, "t s")
	if m.dialogs.Top() == nil {
		t.Errorf("saving did not ask: %s", m.status.Text())
	}
}

func TestTwoBenchesOnOnePlanLeaveEachOthersWorkAlone(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	one := keeping(t, state, path)
	share(t, one, 44)
	two := keeping(t, state, path)
	if two.dialogs.Top() != nil {
		t.Fatal("the work of a bench that is open was offered")
	}
	share(t, two, 41)
	if got := journals(t, state); len(got) != 2 {
		t.Errorf("the journals hold %v", got)
	}
	if !drive(two, "q d") {
		t.Fatal("the bench was not left")
	}
	if got := journals(t, state); len(got) != 1 || got[0] != 44 {
		t.Errorf("the other bench has left, the journals hold %v", got)
	}
}

func TestWhatIsEditedWhileTheFileIsWrittenStaysJournalled(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	m := keeping(t, state, path)
	share(t, m, 44)
	_, save := m.Update(key("s"))
	share(t, m, 41)
	finish(m, save)
	if got := journals(t, state); !m.session.Dirty() || len(got) != 1 || got[0] != 41 {
		t.Errorf("dirty %v, the journals hold %v", m.session.Dirty(), got)
	}
}

func TestAJournalWrittenLateDoesNotComeBackAfterTheSave(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	m := keeping(t, state, path)
	if err := m.session.Apply("share", pour.SetShare(pour.Base, 0, 44)); err != nil {
		t.Fatal(err)
	}
	late := m.writeJournal()
	drive(m, "s")
	finish(m, late)
	if got := journals(t, state); len(got) != 0 {
		t.Errorf("the journals hold %v", got)
	}
}

// finishAtWorst runs a command as a terminal may at worst: of a batch, whose parts run side by side, what leaves the bench comes
// first, and after that nothing is taken any more.
func finishAtWorst(m *model, cmd tea.Cmd) (left bool) {
	if cmd == nil {
		return false
	}
	msg := cmd()
	switch msg := msg.(type) {
	case nil:
		return false
	case tea.QuitMsg:
		return true
	case tea.BatchMsg:
		for i := len(msg) - 1; i >= 0; i-- {
			if finishAtWorst(m, msg[i]) {
				return true
			}
		}
		return false
	}
	if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() { // a sequence
		for i := range v.Len() {
			next, _ := v.Index(i).Interface().(tea.Cmd)
			if finishAtWorst(m, next) {
				return true
			}
		}
		return false
	}
	_, next := m.Update(msg)
	return finishAtWorst(m, next)
}

func TestTheBenchIsLeftOnlyWhenTheFileIsWrittenAndTheJournalGone(t *testing.T) {
	state, path := t.TempDir(), planFile(t)
	m := keeping(t, state, path)
	share(t, m, 44)
	left := false
	for _, k := range []string{"q", "s"} {
		_, cmd := m.Update(key(k))
		left = finishAtWorst(m, cmd)
	}
	shelf, _ := built(t)
	doc, err := planfile.Load(path, shelf)
	if err != nil || doc.Plan.Base.Jugs[0].SharePercent != 44 || !left {
		t.Errorf("left %v with %v %% in the file, %v", left, doc.Plan.Base.Jugs[0].SharePercent, err)
	}
	if got := journals(t, state); len(got) != 0 {
		t.Errorf("the journals hold %v, which are in the file", got)
	}
}

func TestDiscardingLeavesNoJournalBehind(t *testing.T) {
	state := t.TempDir()
	m := keeping(t, state, planFile(t))
	share(t, m, 44)
	m.Update(key("q"))
	_, cmd := m.Update(key("d"))
	if !finishAtWorst(m, cmd) {
		t.Error("the bench was not left")
	}
	if got := journals(t, state); len(got) != 0 {
		t.Errorf("the journals hold %v", got)
	}
}

func TestAHangUpKeepsTheWorkBeforeLeaving(t *testing.T) {
	state := t.TempDir()
	m := keeping(t, state, "")
	m.Update(key("+"))
	_, cmd := m.Update(hangupMsg{})
	if !finishAtWorst(m, cmd) {
		t.Error("the bench was not left")
	}
	if kept := journals(t, state); len(kept) != 1 {
		t.Errorf("the journals hold %v", kept)
	}
}

func TestAnInterruptedBenchIsRescuedAndItsWorkOffered(t *testing.T) {
	state := t.TempDir()
	m := keeping(t, state, "")
	if kept, err := m.rescue(); kept != "" || err != nil {
		t.Errorf("nothing was changed, and %q is kept, %v", kept, err)
	}
	share(t, m, 44)
	if kept, err := m.rescue(); kept != state || err != nil {
		t.Errorf("kept in %q, %v", kept, err)
	}
	if err := m.close(); err != nil {
		t.Fatal(err)
	}
	if keeping(t, state, "").dialogs.Top() == nil {
		t.Error("the work was not offered")
	}
}
