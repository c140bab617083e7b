package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/planfile"
)

// savedIn is a bench whose plan was saved into a folder.
func savedIn(t *testing.T, dir string) (*Model, string) {
	t.Helper()
	m := opened(t, 100, 30)
	path := filepath.Join(dir, "meadow.toml")
	drive(m, "S ctrl+u")
	typeText(m, path)
	drive(m, "enter")
	if m.session.Dirty() || m.file.path != path {
		t.Fatalf("not saved: %s", m.status.Text())
	}
	return m, path
}

func TestSavingAndOpeningGivesTheSamePlan(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	drive(m, "down 2 5 enter s")
	if m.session.Dirty() {
		t.Fatalf("not saved: %s", m.status.Text())
	}
	want := m.session.Plan()
	shelf, _ := built(t)
	doc, err := planfile.Load(path, shelf)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, doc.Plan); d != "" {
		t.Error(d)
	}
}

func TestUndoSurvivesASave(t *testing.T) {
	m, _ := savedIn(t, t.TempDir())
	drive(m, "5 0 enter s u")
	if got := base(m).Jugs[0].SharePercent; got != 38 || !m.session.Dirty() {
		t.Errorf("after the save undo gives %v %%, dirty %v", got, m.session.Dirty())
	}
}

func TestQuittingUnsavedAsksAndCancelIsTheDefault(t *testing.T) {
	m := opened(t, 100, 30)
	drive(m, "+")
	if drive(m, "q enter") {
		t.Fatal("Enter on the question left the bench")
	}
	if drive(m, "q esc") {
		t.Fatal("Esc on the question left the bench")
	}
	if !drive(m, "q d") {
		t.Error("discarding did not leave the bench")
	}
	if m = opened(t, 100, 30); !drive(m, "q") {
		t.Error("a plan without changes asked before quitting")
	}
}

func TestSavingFromTheQuestionSavesBeforeLeaving(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	drive(m, "4 4 enter")
	if !drive(m, "q s") {
		t.Fatal("the bench was not left")
	}
	text, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(text), "44") {
		t.Errorf("the file does not hold the change: %v", err)
	}
}

func TestSavingOverAFileThatIsThereAsksFirst(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "other.toml")
	if err := os.WriteFile(path, []byte("# mine\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	m := opened(t, 100, 30)
	drive(m, "S ctrl+u")
	typeText(m, path)
	drive(m, "enter enter")
	if text, _ := os.ReadFile(path); string(text) != "# mine\n" {
		t.Fatal("the file was replaced without an answer")
	}
	drive(m, "S ctrl+u")
	typeText(m, path)
	drive(m, "enter r")
	if text, _ := os.ReadFile(path); !strings.Contains(string(text), "Alpine Meadow") {
		t.Errorf("the file was not replaced: %s", m.status.Text())
	}
}

func TestAFileChangedBySomethingElseIsNeverOverwrittenSilently(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(string(text), "Alpine Meadow", "Her Meadow", 1)
	if err := os.WriteFile(path, []byte(changed), 0o600); err != nil {
		t.Fatal(err)
	}
	_, cmd := m.Update(tea.FocusMsg{})
	finish(m, cmd)
	if m.dialogs.Top() == nil {
		t.Fatal("the change was not noticed on focus")
	}
	drive(m, "esc 3 9 enter s")
	if m.dialogs.Top() == nil {
		t.Fatalf("saving did not ask: %s", m.status.Text())
	}
	drive(m, "o")
	if got := m.session.Plan().Name; got != "Her Meadow" {
		t.Errorf("opening the changed file gives %q", got)
	}
}

func TestAFileThatCannotBeReadExplainsItselfAndChangesNothing(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	broken := strings.Replace(string(text), "fill_mm", "fil_mm", 1)
	if err := os.WriteFile(path, []byte(broken), 0o600); err != nil {
		t.Fatal(err)
	}
	before := m.session.Plan()
	finish(m, m.load(path))
	if f := frame(m); !strings.Contains(f, "did you mean") {
		t.Errorf("the frame does not say where:\n%s", f)
	}
	if d := cmp.Diff(before, m.session.Plan()); d != "" {
		t.Error(d)
	}
}

func TestTheChecklistIsWrittenToAFile(t *testing.T) {
	m := opened(t, 100, 30)
	path := filepath.Join(t.TempDir(), "list.txt")
	drive(m, "x ctrl+u")
	typeText(m, path)
	drive(m, "enter")
	text, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(text), "Alpine Meadow") {
		t.Errorf("no checklist: %v, %s", err, m.status.Text())
	}
}

func TestUnsavedWorkIsJournalledOfferedAndForgottenOnceSaved(t *testing.T) {
	state := t.TempDir()
	shelf, plan := built(t)
	open := func() *Model {
		return New(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, StateDir: state, Background: "dark"})
	}
	m := open()
	if err := m.session.Apply("share", pour.SetShare(pour.Base, 0, 44)); err != nil {
		t.Fatal(err)
	}
	finish(m, m.writeJournal())
	again := open()
	finish(again, again.lookForLostWork())
	if again.dialogs.Top() == nil {
		t.Fatal("the journal was not offered")
	}
	drive(again, "t")
	if got := base(again).Jugs[0].SharePercent; got != 44 || !again.session.Dirty() {
		t.Errorf("taken up with %v %%, dirty %v", got, again.session.Dirty())
	}
	drive(again, "S ctrl+u")
	typeText(again, filepath.Join(t.TempDir(), "x.toml"))
	drive(again, "enter")
	if left, err := planfile.ReadJournals(state); err != nil || len(left) != 0 {
		t.Errorf("after the save %d journals are left, %v", len(left), err)
	}
}

func TestAHangUpKeepsTheWorkBeforeLeaving(t *testing.T) {
	state := t.TempDir()
	shelf, plan := built(t)
	m := New(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, StateDir: state, Background: "dark"})
	m.Update(key("+"))
	_, cmd := m.Update(hangupMsg{})
	if !finish(m, cmd) {
		t.Error("the bench was not left")
	}
	if kept, err := planfile.ReadJournals(state); err != nil || len(kept) != 1 {
		t.Errorf("%d journals are kept, %v", len(kept), err)
	}
}
