package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour/disk"
	"pourbench/pour/planfile"
)

// savedIn is a bench whose plan was saved into a folder.
func savedIn(t *testing.T, dir string) (*model, string) {
	t.Helper()
	m := opened(t, 100, 30)
	path := filepath.Join(dir, "meadow.toml")
	drive(m, "S enter ctrl+u")
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
	drive(m, "S enter ctrl+u")
	typeText(m, path)
	drive(m, "enter enter")
	if text, _ := os.ReadFile(path); string(text) != "# mine\n" {
		t.Fatal("the file was replaced without an answer")
	}
	drive(m, "S enter ctrl+u")
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

// checklistTo asks for the checklist at a path.
func checklistTo(m *model, path string) {
	drive(m, "x f ctrl+u")
	typeText(m, path)
	drive(m, "enter")
}

func TestTheChecklistIsWrittenToAFile(t *testing.T) {
	m := opened(t, 100, 30)
	path := filepath.Join(t.TempDir(), "list.txt")
	checklistTo(m, path)
	text, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(text), "Alpine Meadow") {
		t.Errorf("no checklist: %v, %s", err, m.status.Text())
	}
}

// x and Enter write the bench paper; a letter chooses another. Each has a file and a way to print it of its own.
func TestEveryPaperIsWrittenToAFileOfItsOwn(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	dir := filepath.Dir(path)
	for keys, want := range map[string][3]string{
		"x enter": {"alpine-meadow-bench.txt", "bench paper ", "page 1 of 2"},
		"x b":     {"alpine-meadow-bench.txt", "bench paper ", "page 1 of 2"},
		"x l":     {"alpine-meadow-bench-large.txt", "lpi=3.5", "page 1 of 9"},
		"x f":     {"alpine-meadow-checklist.txt", "lpi=7", "pour checklist"},
	} {
		file := filepath.Join(dir, want[0])
		_ = os.Remove(file)
		drive(m, keys)
		if f := frame(m); !strings.Contains(f, want[0]) || !strings.Contains(f, "lp -o cpi=") {
			t.Errorf("%s asks:\n%s", keys, f)
		}
		drive(m, "enter")
		text, err := os.ReadFile(file)
		if err != nil || !strings.Contains(string(text), want[2]) || !strings.Contains(m.status.Text(), file) {
			t.Errorf("%s: %v, %q, %s", keys, err, m.status.Text(), text)
		}
		if said := m.status.Text(); !strings.Contains(said, "lp -o") && !strings.Contains(said, want[1]) {
			t.Errorf("%s says %q", keys, said)
		}
	}
}

// A paper whose name ends in .pdf is a PDF, and said to be printed as one.
func TestAPaperIsWrittenAsPDFByItsName(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	file := filepath.Join(filepath.Dir(path), "pour.pdf")
	drive(m, "x enter ctrl+u")
	typeText(m, file)
	drive(m, "enter")
	text, err := os.ReadFile(file)
	if said := m.status.Text(); err != nil || !strings.HasPrefix(string(text), "%PDF") || !strings.HasSuffix(said, "pour.pdf: lp prints it") {
		t.Errorf("%v, %q, %.20q", err, said, text)
	}
}

// A paper never takes the place of a plan, also where one would have said "replace it".
func TestAPaperIsNotWrittenOverAPlan(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	checklistTo(m, path)
	if f := frame(m); !strings.Contains(f, "give it .txt or .pdf") {
		t.Errorf("it is not refused:\n%s", f)
	}
	drive(m, "r esc")
	if after, err := os.ReadFile(path); err != nil || string(after) != string(before) {
		t.Errorf("the plan is %.40q, %v", after, err)
	}
}

// x and r draw the ruler; the ending of its name says as what, and one without gets that of the PDF.
func TestTheRulerIsDrawnFromTheBench(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	dir := filepath.Dir(path)
	drive(m, "x r")
	if f := frame(m); !strings.Contains(f, "alpine-meadow-ruler.pdf") || !strings.Contains(f, "measure its bar of 100 mm") {
		t.Errorf("x r asks:\n%s", f)
	}
	drive(m, "enter")
	if text, err := os.ReadFile(filepath.Join(dir, "alpine-meadow-ruler.pdf")); err != nil || !strings.HasPrefix(string(text), "%PDF-") {
		t.Errorf("no ruler: %v, %q, %s", err, text[:min(len(text), 40)], m.status.Text())
	}
	if said := m.status.Text(); !strings.Contains(said, "print-scaling=none") {
		t.Errorf("x r says %q", said)
	}
	for typed, want := range map[string]string{"own": "%PDF-", "own.svg": "<?xml"} {
		drive(m, "x r ctrl+u")
		typeText(m, filepath.Join(dir, typed))
		drive(m, "enter")
		file := filepath.Join(dir, "own.pdf")
		if filepath.Ext(typed) != "" {
			file = filepath.Join(dir, typed)
		}
		if text, err := os.ReadFile(file); err != nil || !strings.HasPrefix(string(text), want) {
			t.Errorf("%s: %v, %q, %s", typed, err, text[:min(len(text), 40)], m.status.Text())
		}
	}
	drive(m, "x r ctrl+u")
	typeText(m, filepath.Join(dir, "own.txt"))
	drive(m, "enter")
	if _, err := os.Stat(filepath.Join(dir, "own.txt")); err == nil || !strings.Contains(m.status.Text(), ".svg, in one piece") {
		t.Errorf("a ruler in a text file: %q", m.status.Text())
	}
}

func TestAChecklistReplacesAFileOnlyWhenToldTo(t *testing.T) {
	m := opened(t, 100, 30)
	path := filepath.Join(t.TempDir(), "list.txt")
	if err := os.WriteFile(path, []byte("mine"), 0o640); err != nil {
		t.Fatal(err)
	}
	checklistTo(m, path)
	drive(m, "esc")
	if text, _ := os.ReadFile(path); string(text) != "mine" {
		t.Fatal("the file was replaced without an answer")
	}
	checklistTo(m, path)
	drive(m, "r")
	text, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(text), "Alpine Meadow") {
		t.Errorf("not replaced: %v, %s", err, m.status.Text())
	}
	if info, err := os.Stat(path); err != nil || os.PathSeparator == '/' && info.Mode().Perm() != 0o640 {
		t.Errorf("the mode became %v, %v", info.Mode(), err)
	}
}

func TestTheNameOfAFolderIsNotTakenForAFile(t *testing.T) {
	m := opened(t, 100, 30)
	dir := t.TempDir()
	for _, ask := range []string{"S enter ctrl+u", "x f ctrl+u"} {
		drive(m, ask)
		typeText(m, dir+string(filepath.Separator))
		drive(m, "enter")
		if f := frame(m); !strings.Contains(f, "add the name of a file") {
			t.Errorf("it does not say what is wrong:\n%s", f)
		}
		drive(m, "esc")
	}
	checklistTo(m, dir)
	if said := m.status.Text(); !strings.Contains(said, "no plain file but a folder") {
		t.Errorf("it says %q", said)
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) > 0 {
		t.Errorf("%v was written, %v", left, err)
	}
}

func TestTheReasonComesFirstWhenAFileCannotBeWritten(t *testing.T) {
	m := opened(t, 80, 24)
	path := filepath.Join(t.TempDir(), "no such folder", "a long name that pushes the reason off the screen")
	for _, ask := range []string{"S enter ctrl+u", "x f ctrl+u"} {
		drive(m, ask)
		typeText(m, path)
		drive(m, "enter")
		_, err := os.Stat(filepath.Dir(path))
		if said := m.status.Text(); !strings.HasPrefix(said, "× "+disk.Reason(err).Error()+": ") || !strings.Contains(said, path) {
			t.Errorf("it says %q", said)
		}
	}
}

// saving presses the key that saves and leaves the saving for later, as on a slow disk.
func saving(m *model) tea.Cmd {
	_, cmd := m.Update(key("s"))
	return cmd
}

func TestASaveThatEndsLateTakesNothingFromThePlanOpenedMeanwhile(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	other := planFile(t)
	drive(m, "4 4 enter")
	late := saving(m)
	finish(m, m.load(other))
	finish(m, late)
	if m.file.path != other || m.session.Dirty() {
		t.Errorf("the plan on the bench is kept as %s, dirty %v", m.file.path, m.session.Dirty())
	}
	shelf, _ := built(t)
	if doc, err := planfile.Load(path, shelf); err != nil || doc.Plan.Base.Jugs[0].SharePercent != 44 {
		t.Errorf("the file holds %v, %v", doc.Plan.Base.Jugs[0].SharePercent, err)
	}
}

func TestAFailedSaveThatEndsLateAsksNothingOfAnotherPlan(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	if err := os.WriteFile(path, []byte("# hers\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	drive(m, "4 4 enter")
	late := saving(m)
	finish(m, m.load(planFile(t)))
	finish(m, late)
	if m.dialogs.Top() != nil || !strings.Contains(m.status.Text(), path) {
		t.Errorf("it says %q and asks %v", m.status.Text(), m.dialogs.Top())
	}
}

func TestTheBenchIsNotLeftWithWhatWasEditedWhileItWasSaved(t *testing.T) {
	m, _ := savedIn(t, t.TempDir())
	drive(m, "4 4 enter q")
	late := saving(m)
	drive(m, "4 1 enter")
	if finish(m, late) {
		t.Error("the bench was left")
	}
	if !m.session.Dirty() || !strings.Contains(m.status.Text(), "not saved yet") {
		t.Errorf("dirty %v, it says %q", m.session.Dirty(), m.status.Text())
	}
}

func TestAPlanIsSavedOnceAtATime(t *testing.T) {
	m, _ := savedIn(t, t.TempDir())
	drive(m, "4 4 enter")
	late := saving(m)
	drive(m, "s")
	if !strings.Contains(m.status.Text(), "still being saved") {
		t.Errorf("it says %q", m.status.Text())
	}
	finish(m, late)
	if m.session.Dirty() || m.dialogs.Top() != nil {
		t.Errorf("not saved: %s", m.status.Text())
	}
}

func TestAPlanReadLateDoesNotReplaceWhatWasEditedMeanwhile(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	late := m.load(planFile(t))
	drive(m, "4 4 enter")
	finish(m, late)
	if got := base(m).Jugs[0].SharePercent; got != 44 || m.file.path != path {
		t.Errorf("the edit is gone: %v %% in %s", got, m.file.path)
	}
}
