package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/pour/fresh"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/screen"
)

// shelved puts plans of these names into a folder, each a day older than the one before, and returns a bench that knows them.
func shelved(t *testing.T, names ...string) (m *model, dir string) {
	t.Helper()
	state, dir := t.TempDir(), t.TempDir()
	for i, name := range names {
		_, p := built(t)
		p.Name = name
		p.Template = strings.HasPrefix(name, "T ")
		path := filepath.Join(dir, slug(name)+".toml")
		if _, err := planfile.Save(path, p, planfile.SaveOptions{}); err != nil {
			t.Fatal(err)
		}
		day := time.Date(2026, 11, 20-i, 12, 0, 0, 0, time.Local)
		if err := os.Chtimes(path, day, day); err != nil {
			t.Fatal(err)
		}
		if err := planfile.Remember(state, path); err != nil {
			t.Fatal(err)
		}
	}
	return keeping(t, state, ""), dir
}

func top(t *testing.T, m *model) *dialog.List {
	t.Helper()
	l, ok := m.dialogs.Top().(*dialog.List)
	if !ok {
		t.Fatalf("no list is open:\n%s", frame(m))
	}
	return l
}

func TestPlansAreListedTheLatestFirstWithDayAndColours(t *testing.T) {
	m, dir := shelved(t, "Newest", "T Bar", "Oldest")
	damaged := filepath.Join(dir, "damaged.toml")
	if err := os.WriteFile(damaged, []byte("format = 1\nname = \x00"), 0o600); err != nil {
		t.Fatal(err)
	}
	huge := filepath.Join(dir, "huge.toml")
	if err := os.WriteFile(huge, make([]byte, largestLooked+1), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, p := range []string{damaged, huge} {
		day := time.Date(2026, 11, 1, 12, 0, 0, 0, time.Local)
		if err := os.Chtimes(p, day, day); err != nil {
			t.Fatal(err)
		}
		if err := planfile.Remember(m.opt.StateDir, p); err != nil {
			t.Fatal(err)
		}
	}
	if err := planfile.Remember(m.opt.StateDir, filepath.Join(dir, "gone.toml")); err != nil {
		t.Fatal(err)
	}
	drive(m, "o")
	want := []struct{ name, aside string }{
		{"a new plan", "asks what is wanted"}, {"Newest", "2026-11-20"}, {"Oldest", "2026-11-18"}, {"damaged.toml", "cannot be read"}, {"huge.toml", "2026-11-01"}, {"T Bar", "template"},
	}
	items := top(t, m).Items
	if len(items) < len(want) {
		t.Fatalf("listed are %+v", items)
	}
	for i, w := range want {
		if items[i].Name != w.name || items[i].Aside != w.aside {
			t.Errorf("place %d is %q, %q; want %q, %q", i, items[i].Name, items[i].Aside, w.name, w.aside)
		}
	}
	sheet := m.session.Sheet() // all are the built-in plan
	for i, j := range sheet.Base.Jugs {
		if c, _ := screen.Hex(j.Colour.Hex); len(items[1].Swatches) <= i || items[1].Swatches[i] != c {
			t.Errorf("jug %s is painted %v, want %v", j.Name, items[1].Swatches, c)
		}
	}
	if all := strings.Join(items[1].Detail, "\n"); !strings.Contains(all, "pot, gentian, poppy, buttercup, fern") || !strings.Contains(all, dir) {
		t.Errorf("without colour it says %q", all)
	}
}

// The list opens before its files are looked into, and what is highlighted then stays so.
func TestTheListOfPlansOpensAtOnce(t *testing.T) {
	m, _ := shelved(t, "Newest", "T Bar", "Oldest")
	msg := m.list()()
	cmd := m.listed(msg.(listedMsg))
	if l := top(t, m); len(l.Items) != 4 || l.Items[2].Name != "t-bar.toml" {
		t.Fatalf("listed are %+v", l.Items)
	}
	drive(m, "down")
	finish(m, cmd)
	l := top(t, m)
	if l.Items[l.At].Name != "T Bar" || l.At != 3 {
		t.Errorf("highlighted is %d of %+v", l.At, l.Items)
	}
	drive(m, "esc")
	m.looked(lookedMsg{l, nil, nil})
	if m.dialogs.Top() != nil {
		t.Error("what was looked into late opened the list again")
	}
}

func TestAFileThatSaysNothingIsNotWaitedFor(t *testing.T) {
	dir := t.TempDir()
	here, gone := filepath.Join(dir, "here.toml"), filepath.Join(dir, "gone.toml")
	if err := os.WriteFile(here, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	hang := make(chan struct{})
	defer close(hang)
	files := onDisk([]string{gone, here, here, dir}, func(path string) (os.FileInfo, error) {
		if path == gone {
			<-hang
		}
		return os.Stat(path)
	})
	if len(files) != 1 || files[0].path != here {
		t.Errorf("found are %+v", files)
	}
}

func TestATemplateBeginsANewPlanOrIsOpenedItself(t *testing.T) {
	m, dir := shelved(t, "T Bar")
	drive(m, "o")
	typeText(m, "T Bar")
	drive(m, "enter")
	if f := frame(m); !strings.Contains(f, "begin a new plan from it") {
		t.Fatalf("it does not ask:\n%s", f)
	}
	drive(m, "enter") // what it is for stands highlighted
	if p := m.session.Plan(); p.Template || m.file.path != "" || !m.session.Dirty() {
		t.Errorf("the new plan: template %v, kept as %q, unsaved %v", p.Template, m.file.path, m.session.Dirty())
	}
	drive(m, "s")
	if f := frame(m); !strings.Contains(f, "What is the plan called?") {
		t.Errorf("saving does not ask for a name:\n%s", f)
	}
	if drive(m, "enter"); !strings.Contains(frame(m), "t-bar-2.toml") {
		t.Errorf("saving offers the template's own file:\n%s", frame(m))
	}
	drive(m, "esc o d")
	typeText(m, "T Bar")
	drive(m, "enter o")
	if !m.session.Plan().Template || m.file.path != filepath.Join(dir, "t-bar.toml") {
		t.Errorf("on the bench is %q of %q", m.session.Plan().Name, m.file.path)
	}
	if f := frame(m); !strings.Contains(f, "(template)") {
		t.Errorf("nothing says that it is a template:\n%s", f)
	}
	drive(m, "T")
	if m.session.Plan().Template {
		t.Error("the mark is not taken away")
	}
	drive(m, "u")
	if !m.session.Plan().Template {
		t.Error("undo does not bring the mark back")
	}
}

func TestPlanFileAndPapersAreNamedAfterThePlan(t *testing.T) {
	m := opened(t, 100, 30)
	dir := t.TempDir()
	m.keep(filepath.Join(dir, "old.toml"), planfile.Stamp{})
	drive(m, "S ctrl+u")
	drive(m, "enter")
	if f := frame(m); !strings.Contains(f, "What is the plan called?") || !strings.Contains(f, "×") {
		t.Errorf("a plan may have no name:\n%s", f)
	}
	typeText(m, "Hay Day")
	drive(m, "enter enter")
	if m.session.Plan().Name != "Hay Day" || m.file.path != filepath.Join(dir, "hay-day.toml") || m.session.Dirty() {
		t.Errorf("it is %q, kept as %q: %s", m.session.Plan().Name, m.file.path, m.status.Text())
	}
	doc, err := planfile.Load(filepath.Join(dir, "hay-day.toml"), m.session.Shelf())
	if err != nil || doc.Plan.Name != "Hay Day" {
		t.Errorf("the file holds %q, %v", doc.Plan.Name, err)
	}
	drive(m, "S")
	if drive(m, "enter"); !strings.Contains(frame(m), "hay-day.toml") {
		t.Errorf("the same name does not keep its file:\n%s", frame(m))
	}
	drive(m, "esc S ctrl+u")
	typeText(m, "Other")
	drive(m, "enter esc")
	if m.session.Plan().Name != "Hay Day" {
		t.Errorf("left before it had a file, the plan is called %q", m.session.Plan().Name)
	}
}

func TestANewPlanTakesSixAnswers(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "n enter enter enter enter enter")
	typeText(m, "Hay Day")
	drive(m, "enter")
	p := m.session.Plan()
	if p.Name != "Hay Day" || len(p.Base.Jugs) != 3 || p.Icing != nil || m.file.path != "" || !m.session.Dirty() {
		t.Errorf("on the bench is %q with %d jugs, kept as %q, unsaved %v: %s", p.Name, len(p.Base.Jugs), m.file.path, m.session.Dirty(), m.status.Text())
	}
	drive(m, "s")
	if f := frame(m); !strings.Contains(f, "hay-day.toml") {
		t.Errorf("its file is not named after it:\n%s", f)
	}
}

func TestTheQuestionsOfANewPlanGoBackAndLeaveWithoutLoss(t *testing.T) {
	m := opened(t, 80, 24)
	_, before := built(t)
	drive(m, "n enter")
	if f := frame(m); !strings.Contains(f, "How do the colours meet?") {
		t.Fatalf("the second question is:\n%s", f)
	}
	drive(m, "esc")
	if f := frame(m); !strings.Contains(f, "Which mould?") {
		t.Errorf("Esc does not go back:\n%s", f)
	}
	typeText(m, "many bars")
	drive(m, "enter ctrl+u 0 enter")
	if f := frame(m); !strings.Contains(f, "1 to 80") {
		t.Errorf("no bars are taken:\n%s", f)
	}
	drive(m, "esc esc")
	if m.dialogs.Top() != nil || m.session.Plan().Name != before.Name || m.session.Dirty() {
		t.Errorf("left, the bench holds %q, unsaved %v", m.session.Plan().Name, m.session.Dirty())
	}
	drive(m, "+ n")
	if f := frame(m); !strings.Contains(f, "Before beginning a new") {
		t.Errorf("unsaved work is not asked for:\n%s", f)
	}
	drive(m, "d enter enter enter enter enter")
	stale := m.makePlan(fresh.Wishes{})
	drive(m, "esc esc esc esc esc esc +")
	finish(m, stale)
	if m.session.Plan().Name != before.Name {
		t.Error("a plan that was made late replaced what was changed meanwhile")
	}
}

// Every answer that is on the shelf is told with all the shelf knows of it.
func TestAnswersFromTheShelfAreToldByTheShelf(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "n")
	if it := top(t, m).Items[0]; len(it.Detail) < 3 {
		t.Errorf("a mould is told as %q", it.Detail)
	}
	drive(m, "enter")
	if it := top(t, m).Items[0]; len(it.Detail) < 3 {
		t.Errorf("a technique is told as %q", it.Detail)
	}
	drive(m, "enter")
	if it := top(t, m).Items[3]; len(it.Swatches) != 1 || len(it.Detail) < 3 {
		t.Errorf("a colourant is told as %q, %v", it.Detail, it.Swatches)
	}
	drive(m, "enter")
	if it := top(t, m).Items[1]; len(it.Detail) < 3 {
		t.Errorf("a scent is told as %q", it.Detail)
	}
}

// Past the first question of a new plan its footer says that Esc goes back, and what was picked is marked, and named with every entry.
func TestTheQuestionsOfANewPlanSayWhatWasPicked(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "n")
	if f := frame(m); !strings.Contains(f, "Esc leave") {
		t.Errorf("the first question shows\n%s", f)
	}
	drive(m, "enter enter")
	typeText(m, "mica-gold")
	drive(m, "enter")
	typeText(m, "mica-rose")
	drive(m, "enter")
	f := frame(m)
	for _, want := range []string{"Which colours? So far: gold, rose", "Esc back"} {
		if !strings.Contains(f, want) {
			t.Errorf("%q does not stand on\n%s", want, f)
		}
	}
	for _, it := range top(t, m).Items {
		picked := it.ID == "mica-gold" || it.ID == "mica-rose"
		if strings.Contains(it.Aside, "picked") != picked || !slices.Contains(it.Detail[:min(2, len(it.Detail))], "So far: gold, rose") {
			t.Errorf("%s says %q, %q", it.ID, it.Aside, it.Detail)
		}
	}
	drive(m, "esc")
	if f := frame(m); !strings.Contains(f, "So far: gold") || strings.Contains(f, "rose,") {
		t.Errorf("one back, it shows\n%s", f)
	}
}
