package tui

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/pour/whatif"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// onRow puts the cursor of a panel onto the cell beside a label.
func onRow(t *testing.T, m *model, s panel.Place, id layout.ID, label string) {
	t.Helper()
	goTo(t, m, s, id)
	for i, r := range m.grids[id].Rows {
		if len(r.Cells) > 1 && strings.TrimSpace(r.Cells[0].Text) == label {
			m.cursors[id] = grid.Cursor{Row: i, Col: 1}
			m.settle()
			return
		}
	}
	t.Fatalf("%s has no row %q", id, label)
}

// told presses keys and checks what the status line says then.
func told(t *testing.T, m *model, keys, want string) {
	t.Helper()
	drive(m, keys)
	if got := m.status.Text(); !strings.Contains(got, want) {
		t.Errorf("%q: the status line says %q, want %q", keys, got, want)
	}
}

// Figures turn to ounces, °F and inches and back, and the plan is the same to the last digit.
func TestUnitsThereAndBackLeaveThePlanAsItWas(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	told(t, m, "t", "figures in oz, °F and in")
	f := frame(m)
	for _, want := range []string{"oils 37.77", "batter 53.77"} { // 1070.6 g and 1524.3 g of the title, 28.3495 g to the ounce
		if !strings.Contains(f, want) {
			t.Errorf("no %s in\n%s", want, f)
		}
	}
	onRow(t, m, panel.Mould, "vessel", "length inside")
	if cell, _, _ := m.cell(); !strings.HasPrefix(cell.Text, "9.84") { // 250 mm / 25.4
		t.Errorf("the length is %q", cell.Text)
	}
	told(t, m, "t", "figures in g, °C and mm")
	if d := cmp.Diff(before, m.session.Plan()); d != "" {
		t.Error(d)
	}
	told(t, m, "u", "undone: units")
	if m.session.Plan().Show.Mass != pour.MassOunce {
		t.Error("turning the units cannot be undone by itself")
	}
}

func TestATemperatureTypedInFahrenheitIsKeptInCelsius(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "t")
	onRow(t, m, panel.Batch, "lye", "oils at")
	drive(m, "1 0 0 enter")
	if got := base(m).OilsC; math.Abs(got-(100-32)*5.0/9) > 1e-9 {
		t.Errorf("100 °F were kept as %v °C", got)
	}
}

func TestUndoAndRedoNameWhatTheyTakeBackAndDoAgain(t *testing.T) {
	m := opened(t, 120, 36)
	told(t, m, "u", "nothing has been changed yet")
	told(t, m, "U", "nothing was undone")
	drive(m, "2 0 enter")
	told(t, m, "u", "undone: share of pot")
	told(t, m, "u", "nothing has been changed yet")
	told(t, m, "ctrl+y", "done again: share of pot")
	if got := base(m).Jugs[0].SharePercent; got != 20 {
		t.Errorf("the pot has %v %%", got)
	}
	drive(m, "u")
	told(t, m, "down + U", "nothing was undone") // another change forgets what was undone
}

func TestABigNudgeIsTenSmallOnes(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "*")
	if got := base(m).Jugs[0].SharePercent; got != 48 {
		t.Errorf("* gives %v %%, want 48", got)
	}
	drive(m, "_ _")
	if got := base(m).Jugs[0].SharePercent; got != 28 {
		t.Errorf("_ _ gives %v %%, want 28", got)
	}
	drive(m, "- shift+left")
	if got := base(m).Jugs[0].SharePercent; got != 17 {
		t.Errorf("- and Shift+← give %v %%, want 17", got)
	}
	for range 3 {
		drive(m, "_")
	}
	if got := base(m).Jugs[0].SharePercent; got < 0 || m.status.Text() == "" {
		t.Errorf("below nothing: %v %%, and it says %q", got, m.status.Text())
	}
}

func TestTheIcingGoesOnAKeyComesBackOnAnotherAndIsLookedAt(t *testing.T) {
	m := opened(t, 120, 36)
	icing := m.session.Plan().Icing
	told(t, m, "I", "the icing is gone; u brings it back")
	if m.session.Plan().Icing != nil || strings.Contains(frame(m), "a  cream") {
		t.Error("the icing is still there")
	}
	if f := frame(m); !strings.Contains(f, "oils 859.5 g") || !strings.Contains(f, "batter 1229.1 g") {
		t.Errorf("without icing the totals are not the base's alone:\n%s", f)
	}
	told(t, m, "u", "undone: removal of the icing")
	if d := cmp.Diff(icing, m.session.Plan().Icing); d != "" {
		t.Error(d)
	}
	drive(m, "I I")
	if m.station != panel.Icing || m.session.Plan().Icing == nil {
		t.Errorf("a new icing is not gone to: station %v, icing %v", m.station, m.session.Plan().Icing)
	}
	drive(m, "u")
	if m.session.Plan().Icing != nil {
		t.Error("the new icing cannot be undone")
	}
}

// clip is the text a command hands to the terminal's clipboard.
func clip(t *testing.T, m *model, name string) string {
	t.Helper()
	_, cmd := m.Update(key(name))
	var found string
	var look func(tea.Cmd)
	look = func(cmd tea.Cmd) {
		if cmd == nil {
			return
		}
		switch msg := cmd().(type) {
		case tea.BatchMsg:
			for _, c := range msg {
				look(c)
			}
		default:
			if fmt.Sprintf("%T", msg) == fmt.Sprintf("%T", tea.SetClipboard("")()) {
				found = fmt.Sprint(msg)
			}
		}
	}
	look(cmd)
	return found
}

func TestACellIsCopiedAsItIsTypedAndAPanelWithTabs(t *testing.T) {
	m := opened(t, 120, 36)
	if got := clip(t, m, "y"); got != "38" || m.status.Text() != "sent to the terminal's clipboard: 38" {
		t.Errorf("copied %q, and it says %q", got, m.status.Text())
	}
	drive(m, "right right")
	if got := clip(t, m, "y"); !strings.HasPrefix(got, "titanium white") {
		t.Errorf("copied %q", got)
	}
	all := clip(t, m, "Y")
	rows := strings.Split(strings.TrimSuffix(all, "\n"), "\n")
	if len(rows) != 6 || m.status.Text() != "sent to the terminal's clipboard: Jugs" {
		t.Fatalf("%d rows, and it says %q:\n%s", len(rows), m.status.Text(), all)
	}
	cells := strings.Split(rows[1], "\t")
	if cells[1] != "gentian" || cells[3] != "16.0" || cells[4] != "196.6" || cells[5] != "ultramarine blue" {
		t.Errorf("the second row is %q", cells)
	}
	goTo(t, m, panel.Batch, "lye")
	if got := clip(t, m, "Y"); !strings.HasPrefix(got, "size\n") || !strings.Contains(got, "\nto weigh\n") || !strings.Contains(got, "\nNaOH\t120.27\tg\t") {
		t.Errorf("headings and figures are not lines of their own:\n%s", got)
	}
}

func TestWhatIsNoNumberIsNotTypedPastedOrNudged(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	onRow(t, m, panel.Batch, "lye", "NaOH")
	told(t, m, "5", "holds no number that can be typed")
	told(t, m, "+", "nothing to nudge")
	told(t, m, "enter", "worked out from the plan; it cannot be typed")
	m.Update(tea.PasteMsg{Content: "12"})
	if m.typing != nil || !strings.Contains(m.status.Text(), "go to a number or a name first") {
		t.Errorf("pasted: it says %q", m.status.Text())
	}
	goTo(t, m, panel.Jugs, "jugs")
	told(t, m, "Q", "Q does nothing here; ? lists every key")
	if d := cmp.Diff(before, m.session.Plan()); d != "" {
		t.Error(d)
	}
}

func TestWhileACellIsTypedOnlyTypingKeysAct(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "4 5")
	m.Update(tea.KeyPressMsg{Code: 'x', Text: "x", Mod: tea.ModAlt})
	if got := m.typing.Entry.Text(); got != "45" || !strings.Contains(m.status.Text(), "a cell is being typed in; Enter keeps it, Esc puts back") {
		t.Errorf("Alt+x: %q, and it says %q", got, m.status.Text())
	}
	drive(m, "f5")
	if m.typing == nil || m.station != panel.Jugs {
		t.Error("F5 left the cell")
	}
	if f := frame(m); !strings.Contains(f, "Enter keep, go down") || !strings.Contains(f, "Esc as it was") {
		t.Errorf("the footer does not name the keys of typing:\n%s", f)
	}
	told(t, m, "esc", "as it was")
	if base(m).Jugs[0].SharePercent != 38 {
		t.Error("Esc kept what was typed")
	}
	drive(m, "4 5")
	if left := drive(m, "ctrl+c"); !left || base(m).Jugs[0].SharePercent != 38 {
		t.Error("Ctrl+C while typing did not leave a plan that is unchanged")
	}
}

func TestTheStationsAndPanelsGoRoundBothWays(t *testing.T) {
	m := opened(t, 120, 36)
	var went []string
	for range panel.Places {
		drive(m, "]")
		went = append(went, m.here().Name)
	}
	if got := strings.Join(went, " "); got != "Swirl Scent Run Icing Top Cut Label Shelf Mould Batch Jugs" {
		t.Errorf("] goes to %s", got)
	}
	drive(m, "[")
	if m.station != panel.Batch {
		t.Errorf("[ goes to %s", m.here().Name)
	}
	drive(m, "]")
	first := m.at().ID
	drive(m, "tab")
	second := m.at().ID
	drive(m, "shift+tab")
	if m.at().ID != first || second == first {
		t.Errorf("Tab and Shift+Tab: %s, %s, %s", first, second, m.at().ID)
	}
	drive(m, "shift+tab")
	if m.at() != m.panels[len(m.panels)-1] {
		t.Errorf("before the first panel comes %s", m.at().ID)
	}
}

func TestTheCursorGoesAlongItsRowAndByScreenfuls(t *testing.T) {
	m := opened(t, 120, 36)
	at := func() grid.Cursor { return m.cursors[m.at().ID] }
	drive(m, "end")
	end := at().Col
	drive(m, "home")
	if at().Col >= end || at().Row != 0 {
		t.Errorf("Home goes to column %d, End to %d", at().Col, end)
	}
	goTo(t, m, panel.Run, "tasks")
	drive(m, "home")
	r, _ := m.placed.Find("tasks")
	drive(m, "pgdown")
	if got, want := at().Row, min(r.Dy()-3, len(m.grids["tasks"].Rows)-1); got != want {
		t.Errorf("a screenful down is row %d, want %d of %d lines", got, want, r.Dy())
	}
	drive(m, "pgup")
	if at().Row != 0 {
		t.Errorf("and up again is row %d", at().Row)
	}
}

func TestTheWindowIsNamedAfterTheFileAndMarkedWhenUnsaved(t *testing.T) {
	m := opened(t, 100, 30)
	if got := m.View().WindowTitle; got != "Alpine Meadow – pourbench" {
		t.Errorf("the window is %q", got)
	}
	drive(m, "+")
	if got := m.View().WindowTitle; got != "Alpine Meadow • – pourbench" || !strings.Contains(frame(m), "Alpine Meadow ●") {
		t.Errorf("unsaved, the window is %q:\n%s", got, frame(m))
	}
	saved, _ := savedIn(t, t.TempDir())
	if got := saved.View().WindowTitle; got != "meadow.toml – pourbench" || strings.Contains(frame(saved), "●") {
		t.Errorf("saved, the window is %q", got)
	}
}

func TestAScreenThatIsTooSmallTakesCtrlCAlone(t *testing.T) {
	m := opened(t, 59, 20)
	if drive(m, "q + 5 enter") || m.session.Dirty() || m.typing != nil {
		t.Error("a key acted that nobody could see")
	}
	if f := frame(m); !strings.Contains(f, "59 × 20") || !strings.Contains(f, "Ctrl+C quits") {
		t.Errorf("it says:\n%s", f)
	}
	if !drive(m, "ctrl+c") || !m.quitting {
		t.Error("Ctrl+C did not leave a plan that is saved")
	}
	m = opened(t, 60, 16)
	drive(m, "+")
	resize(m, 60, 15)
	if !drive(m, "ctrl+c") || m.quitting {
		t.Error("with unsaved work the bench was left as if it had been asked about")
	}
}

func TestTheLogbookIsReadOnAKey(t *testing.T) {
	m := opened(t, 120, 36)
	m.opt.Learned = func() (string, error) { return "Your pours run 1.2 times as fast.", nil }
	drive(m, "L")
	if f := frame(m); !strings.Contains(f, "What your pours have taught the clock") || !strings.Contains(f, "1.2 times as fast") {
		t.Errorf("not shown:\n%s", f)
	}
	drive(m, "esc")
	m.opt.Learned = func() (string, error) { return "", errors.New("the logbook is locked") }
	told(t, m, "L", "× the logbook is locked")
	if m.dialogs.Top() != nil {
		t.Error("an empty page was opened")
	}
}

func TestTheLiveRunGetsACopyOfThePlanAndTheBenchSaysHowItEnded(t *testing.T) {
	m := opened(t, 120, 36)
	var got pour.Plan
	m.opt.Pour = func(p pour.Plan) error {
		got = p
		got.Base.Jugs[0].Name = "taken"
		return errors.New("no terminal")
	}
	drive(m, "+")
	if err := m.guest().Run(); err == nil || got.Base.Jugs[0].SharePercent != 39 {
		t.Errorf("poured %v, %v", got.Base.Jugs[0].SharePercent, err)
	}
	if base(m).Jugs[0].Name == "taken" || len(got.Base.Jugs) != len(base(m).Jugs) {
		t.Error("the run had the bench's own plan")
	}
	m.Update(pouredMsg{err: errors.New("no terminal")})
	if m.status.Text() != "× no terminal" {
		t.Errorf("after a run that failed it says %q", m.status.Text())
	}
	m.Update(pouredMsg{})
	if !strings.Contains(m.status.Text(), "back from the run; what was marked is in the logbook") {
		t.Errorf("after a run it says %q", m.status.Text())
	}
}

func TestEveryWarningIsReadWithWhereAndWhatToDo(t *testing.T) {
	m := opened(t, 120, 60)
	drive(m, "w")
	f := frame(m)
	for _, want := range []string{"! caution", "· note", "likely past medium when it is poured", "do ", "poppy: likely past", "mend →", "cooler", "scent-fast-late: " + meaning("scent-fast-late")[:20]} {
		if !strings.Contains(f, want) {
			t.Errorf("no %q on the page:\n%s", want, f)
		}
	}
	mends := 0
	for i := range m.facts.Warnings {
		mends += len(m.facts.MendsOf(i))
	}
	if n := len(m.facts.Warnings); n == 0 || mends == 0 || len(m.warningLines()) != 4*n+mends {
		t.Errorf("%d lines for %d warnings with %d mends", len(m.warningLines()), n, mends)
	}
	if meaning("no-such-code") != "" {
		t.Error("a code that there is not has a meaning")
	}
	m.facts.Warnings = nil
	if lines := m.warningLines(); len(lines) != 1 || lines[0].Text != panel.NothingStands {
		t.Errorf("without warnings the page says %+v", lines)
	}
}

func TestWhatHelpsIsListedWithWhatItDoesToEveryJug(t *testing.T) {
	m := opened(t, 120, 36)
	fig := pour.Know
	m.Update(suggestedMsg{rev: m.session.Revision(), outside: []string{"poppy"}, list: []whatif.Suggestion{
		{What: []string{"work cooler"}, Edit: pour.SetNumber("base.oils_c", 30), Solves: true, Jugs: []whatif.Effect{
			{Batch: pour.Base, Jug: "poppy", LateBefore: fig(63), LateAfter: fig(12), EarlyBefore: fig(0), EarlyAfter: pour.Figure{}},
		}},
		{What: []string{"less blending"}, Edit: pour.SetNumber("base.oils_c", 31)},
	}})
	f := frame(m)
	for _, want := range []string{"What would bring the jugs inside", "work cooler", "all inside", "less blending", "helps", "poppy of the base: too late 12 %, was 63 %;"} {
		if !strings.Contains(f, want) {
			t.Errorf("no %q in\n%s", want, f)
		}
	}
	for l := range strings.SplitSeq(f, "\n") {
		if strings.Contains(l, "all inside") && strings.Contains(l, "less blending") {
			t.Errorf("what only helps is said to bring all inside: %q", l)
		}
	}
	told(t, m, "down enter", "done: less blending; u takes it back")
	if base(m).OilsC != 31 {
		t.Errorf("the oils are at %v", base(m).OilsC)
	}
	m.Update(suggestedMsg{rev: m.session.Revision()})
	if m.dialogs.Top() != nil || !strings.Contains(m.status.Text(), "every jug with a time is likely inside its window") {
		t.Errorf("with nothing to suggest it says %q", m.status.Text())
	}
}

// opening is a bench on a plan in a folder with another plan beside it, and one example.
func opening(t *testing.T) (*model, string) {
	t.Helper()
	m, path := savedIn(t, t.TempDir())
	_, other := built(t)
	other.Name = "Desert"
	if _, err := planfile.Save(filepath.Join(filepath.Dir(path), "desert.toml"), other, planfile.SaveOptions{}); err != nil {
		t.Fatal(err)
	}
	example := other.Clone()
	example.Name, example.Notes = "Tidal Pool", "Blue and green."
	m.opt.Examples = func() []Example { return []Example{{Name: "tidal-pool", Plan: example}} }
	return m, path
}

func TestOpenListsThePlansOfTheFolderAndTheExamples(t *testing.T) {
	m, path := opening(t)
	drive(m, "o")
	f := frame(m)
	for _, want := range []string{"a new plan", "Desert", "Alpine Meadow", "Tidal Pool", "example"} {
		if !strings.Contains(f, want) {
			t.Errorf("no %q in the list:\n%s", want, f)
		}
	}
	typeText(m, "desert")
	drive(m, "enter")
	if got := m.session.Plan().Name; got != "Desert" || m.file.path != filepath.Join(filepath.Dir(path), "desert.toml") || m.session.Dirty() {
		t.Errorf("on the bench is %q, kept as %s", got, m.file.path)
	}
	drive(m, "o")
	typeText(m, "tidal")
	told(t, m, "enter", "an example: saving asks for a name and a file of your own")
	if m.session.Plan().Name != "Tidal Pool" || m.file.path != "" || m.session.Dirty() {
		t.Errorf("the example is %q, kept as %q", m.session.Plan().Name, m.file.path)
	}
	drive(m, "+ s enter")
	if m.dialogs.Top() == nil || !strings.Contains(frame(m), "tidal-pool.toml") {
		t.Errorf("saving an example does not ask for a name of its own:\n%s", frame(m))
	}
}

func TestAPathIsTypedToOpenIt(t *testing.T) {
	m, path := opening(t)
	drive(m, "o")
	typeText(m, filepath.Join(filepath.Dir(path), "desert.toml"))
	drive(m, "enter")
	if m.session.Plan().Name != "Desert" {
		t.Errorf("on the bench is %q: %s", m.session.Plan().Name, m.status.Text())
	}
}

func TestOpeningAsksBeforeItLosesWhatIsNotSaved(t *testing.T) {
	m, _ := opening(t)
	drive(m, "+ o")
	if f := frame(m); !strings.Contains(f, "has changes that are in no file. Before opening another plan:") {
		t.Fatalf("it does not ask:\n%s", f)
	}
	drive(m, "esc")
	if !m.session.Dirty() || m.dialogs.Top() != nil {
		t.Error("Esc lost the changes, or went on")
	}
	drive(m, "o s")
	if m.session.Dirty() || !strings.Contains(frame(m), "Desert") {
		t.Errorf("saved first, the list is not shown:\n%s", frame(m))
	}
	drive(m, "esc + o d")
	if !strings.Contains(frame(m), "Desert") {
		t.Errorf("discarding does not go on to the list:\n%s", frame(m))
	}
}

func TestAFileNameIsReadAsItIsTyped(t *testing.T) {
	t.Setenv("HOME", filepath.FromSlash("/home/maker"))
	for typed, want := range map[string]string{
		"meadow": "meadow.toml", "meadow.toml": "meadow.toml", "a/b.txt": "a/b.txt", "~/soap/m": filepath.FromSlash("/home/maker/soap/m.toml"), "~m": "~m.toml", "v1.2": "v1.2",
	} {
		if got, err := fileName(typed, ".toml"); err != nil || got != want {
			t.Errorf("%q is read as %q, %v, want %q", typed, got, err, want)
		}
	}
	for typed, want := range map[string]string{"": "type the name of a file", "soap/": "soap/ is the name of a folder; add the name of a file"} {
		if got, err := fileName(typed, ".toml"); err == nil || err.Error() != want || got != "" {
			t.Errorf("%q is read as %q, %v", typed, got, err)
		}
	}
	for name, want := range map[string]string{"Alpine Meadow": "alpine-meadow", "  N° 5, é! ": "n-5", "漢字": "plan", "": "plan", "a--b": "a-b"} {
		if got := slug(name); got != want {
			t.Errorf("the plan %q is kept as %q, want %q", name, got, want)
		}
	}
}

func TestTheChecklistGoesBesideThePlanAndCanTakeAnotherName(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	list := filepath.Join(filepath.Dir(path), "alpine-meadow-checklist.txt")
	drive(m, "x f")
	if f := frame(m); !strings.Contains(f, "Write the checklist to") || !strings.Contains(f, "checklist.txt") {
		t.Errorf("it asks:\n%s", f)
	}
	told(t, m, "enter", "checklist written to "+list)
	drive(m, "x f enter")
	if f := frame(m); !strings.Contains(f, "is there already") {
		t.Fatalf("the second time it does not ask:\n%s", f)
	}
	drive(m, "t")
	if f := frame(m); !strings.Contains(f, "Write the checklist to") {
		t.Errorf("another name is not asked for:\n%s", f)
	}
}

func TestAFileThatChangedUnderAnUnsavedPlanIsToldNotAsked(t *testing.T) {
	m, path := savedIn(t, t.TempDir())
	drive(m, "+")
	m.Update(changedMsg{path})
	if m.dialogs.Top() != nil || !strings.Contains(m.status.Text(), "meadow.toml was changed by something else; saving will ask which to keep") {
		t.Errorf("it says %q", m.status.Text())
	}
	m.status.Clear()
	m.Update(changedMsg{"another.toml"})
	if m.status.Text() != "" {
		t.Errorf("a file that is no longer on the bench: %q", m.status.Text())
	}
}

// What the border of a panel says Tab comes to is where Tab goes, at every panel of every station.
func TestTheBorderSaysWhereTabGoes(t *testing.T) {
	m := opened(t, 80, 24)
	said := 0
	for s := range panel.Places {
		m.station = panel.Place(s)
		m.settle()
		for range m.panels {
			_, says, named := strings.Cut(frame(m), "Tab: ")
			at := m.at()
			m.turn(1)
			m.settle()
			if next := []rune(m.at().Title); named && !strings.HasPrefix(says, string(next[:min(len(next), 5)])) {
				t.Errorf("at %s the border says Tab goes to %.20q, and it goes to %s", at.Title, says, m.at().Title)
			}
			if named {
				said++
			}
		}
	}
	if said < 5 {
		t.Errorf("the border says %d times where Tab goes", said)
	}
}
