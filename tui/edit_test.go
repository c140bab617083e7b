package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/panel"
)

func TestTypingAShareMakesTheOthersGiveWayAndGoesDown(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down 2 2 , 5 enter")
	if got := base(m).Jugs[1].SharePercent; got != 22.5 {
		t.Errorf("gentian has %v %%, want 22.5", got)
	}
	sum := 0.0
	for _, j := range base(m).Jugs {
		sum += j.SharePercent
	}
	if math.Abs(sum-100) > 1e-9 {
		t.Errorf("the shares sum to %v", sum)
	}
	if got := m.cursors[m.at().ID].Row; got != 2 {
		t.Errorf("the cursor is on row %d, want 2", got)
	}
}

func TestTabKeepsWhatWasTypedAndGoesRight(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "4 0 tab")
	if got := base(m).Jugs[0].SharePercent; got != 40 {
		t.Errorf("the pot has %v %%, want 40", got)
	}
	if cell, row, _ := m.cell(); row.Item != 0 || cell.Name != "colourant of pot" {
		t.Errorf("the cursor is on %q of row %d; want the colourant of the pot", cell.Name, row.Item)
	}
}

func TestARefusalStaysAtTheCellWithItsReasonAndEscRestores(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	drive(m, "1 4 0 enter")
	if m.typing == nil || m.typing.Entry.Text() != "140" {
		t.Fatal("the typed text is gone")
	}
	if !strings.Contains(m.typing.Refused, "0 to 100") || m.status.Text() != "× "+m.typing.Refused {
		t.Errorf("refused with %q, status %q", m.typing.Refused, m.status.Text())
	}
	if !strings.Contains(frame(m), "× set the share of pot to 140 %") {
		t.Error("the reason does not stand at the cell")
	}
	drive(m, "backspace")
	if m.typing.Refused != "" || m.typing.Entry.Text() != "14" {
		t.Errorf("after mending: %q, refused %q", m.typing.Entry.Text(), m.typing.Refused)
	}
	drive(m, "esc")
	if m.typing != nil || cmp.Diff(before, m.session.Plan()) != "" {
		t.Error("Esc did not restore the plan")
	}
}

func TestAnAmbiguousNumberIsRefusedNotGuessed(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "1 , 2 3 4 enter")
	if m.typing == nil || !strings.Contains(m.typing.Refused, "1.234") {
		t.Errorf("1,234 was read, or refused without the way out: %+v", m.typing)
	}
}

func TestNudgesOfOneCellAreUndoneTogether(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "+ + + shift+right -")
	if got := base(m).Jugs[0].SharePercent; math.Abs(got-50) > 1e-9 {
		t.Errorf("the pot has %v %%, want 50", got)
	}
	drive(m, "u")
	if got := base(m).Jugs[0].SharePercent; got != 38 {
		t.Errorf("one undo gives %v %%, want 38", got)
	}
	drive(m, "ctrl+y")
	if got := base(m).Jugs[0].SharePercent; math.Abs(got-50) > 1e-9 {
		t.Errorf("redo gives %v %%, want 50", got)
	}
}

func TestSpaceHoldsAShareSoThatItDoesNotGiveWay(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down down space up up 5 0 enter")
	if got := base(m).Jugs[2]; !got.Held || got.SharePercent != 16 {
		t.Errorf("poppy: held %v with %v %%, want held with 16", got.Held, got.SharePercent)
	}
}

// A typed share is held as one that Space holds, a nudged one is not, and what held ones do not leave is refused with the key that lets go.
func TestATypedShareIsHeld(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "4 0 enter + down 5 enter")
	var got []bool
	for _, j := range base(m).Jugs {
		got = append(got, j.Held)
	}
	if want := []bool{true, false, true, false, false}; !slices.Equal(got, want) || base(m).Jugs[0].SharePercent != 40 {
		t.Errorf("held %v, want %v; the pot has %v %%", got, want, base(m).Jugs[0].SharePercent)
	}
	drive(m, "7 0 enter")
	if want := "held ones leave 55 %; Space lets one go"; !strings.Contains(m.status.Text(), want) {
		t.Errorf("%q does not say how to put it right", m.status.Text())
	}
	drive(m, "esc up up up space down 7 0 enter")
	if j := base(m).Jugs; j[0].Held || j[1].SharePercent != 70 || !j[1].Held {
		t.Errorf("let go, the pot still does not give way: %+v %+v", j[0], j[1])
	}
}

func TestJugsAreAddedRenamedColouredMovedAndRemoved(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down a")
	drive(m, "r ctrl+u")
	typeText(m, "night sky")
	drive(m, "enter c")
	typeText(m, "ultramarine")
	drive(m, "enter shift+up")
	j := base(m).Jugs[1]
	if j.Name != "night sky" || len(j.Colourants) != 1 || !strings.Contains(j.Colourants[0].Colourant, "ultramarine") {
		t.Fatalf("the new jug is %+v", j)
	}
	drive(m, "home d")
	if got := base(m).Jugs[1].Name; got != "gentian" {
		t.Errorf("after removing it jug 2 is %q, want gentian", got)
	}
}

func TestTheCursorGoesAlongWithWhatIsAddedOrMoved(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down down down down a")
	if cell, row, _ := m.cell(); row.Item != 5 || cell.Name != "share of jug" {
		t.Errorf("after adding behind the last jug the cursor is on %q of jug %d", cell.Text, row.Item)
	}
	drive(m, "K")
	if cell, row, _ := m.cell(); row.Item != 4 || cell.Name != "share of jug" {
		t.Errorf("after moving it up the cursor is on %q of jug %d, want its share", cell.Name, row.Item)
	}
	goTo(t, m, panel.Run, "tasks")
	row := slices.IndexFunc(m.session.Sheet().Stints(), func(st pour.Stint) bool { return st.Kind == pour.TaskScent })
	m.cursors[m.at().ID] = grid.Cursor{Row: row}
	m.settle()
	task := m.session.Sheet().Stints()[row].Tasks[0].Key
	drive(m, "J")
	_, at, _ := m.cell()
	if moved := m.session.Sheet().Stints()[at.Item]; at.Item != row+1 || !slices.ContainsFunc(moved.Tasks, func(t pour.Task) bool { return t.Key == task }) {
		t.Errorf("the task %q of row %d was moved and the cursor is on row %d, %q: %s", task, row, at.Item, moved.Key, m.status.Text())
	}
}

func TestTheFocusStaysWhereItIsWhenAnIcingComesOrGoes(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Scent, "clock")
	drive(m, "I")
	if m.at().ID != "clock" || m.session.Plan().Icing != nil {
		t.Errorf("without its icing the focus is on %q", m.at().ID)
	}
	drive(m, "u")
	if m.at().ID != "clock" {
		t.Errorf("with its icing the focus is on %q", m.at().ID)
	}
}

func TestASecondColourantGetsARowOfItsOwn(t *testing.T) {
	m := opened(t, 200, 40)
	drive(m, "down c")
	typeText(m, "titanium")
	drive(m, "enter")
	if got := len(base(m).Jugs[1].Colourants); got != 2 {
		t.Fatalf("gentian has %d colourants, want 2", got)
	}
	drive(m, "0 . 3 enter") // the cursor stands on its dose
	if got := base(m).Jugs[1].Colourants[1].DosePercent; got != 0.3 {
		t.Errorf("the second dose is %v, want 0.3", got)
	}
}

func TestAScentGoesIntoAJugByItsColumn(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Scent, "scents")
	drive(m, "right right right right right space")
	if got := base(m).Scents[0].Into; len(got) != 3 || got[1] != "gentian" {
		t.Errorf("the first scent goes into %v, want gentian too", got)
	}
}

func TestATaskMovesAndAnImpossibleOrderSaysWhy(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Run, "tasks")
	for i, task := range m.session.Sheet().Run {
		if task.Kind == pour.TaskSplit && task.Batch == "base" {
			m.cursors[m.at().ID] = grid.Cursor{Row: i}
			break
		}
	}
	m.settle()
	drive(m, "K")
	if !strings.Contains(m.status.Text(), "move") {
		t.Errorf("splitting before mixing gave %q", m.status.Text())
	}
}

func TestUnitsTurnAndTypedOuncesAreRead(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "t")
	goTo(t, m, panel.Mould, "vessel")
	drive(m, "down down 1 0 enter")
	if got := m.session.Plan().Mould.LengthMM; math.Abs(got-254) > 1e-9 {
		t.Errorf("10 in were read as %v mm", got)
	}
	if f := frame(m); !strings.Contains(f, " oz") || strings.Contains(f, "254 mm") {
		t.Error("the frame still shows metric figures")
	}
}

func TestEveryKeyThatCannotActSaysWhy(t *testing.T) {
	m := opened(t, 80, 24)
	for s := range panel.Places {
		for _, p := range m.stations[s].Panels(true) {
			m.station, m.focus[s] = panel.Place(s), p
			m.settle()
			for _, b := range keys.Table() {
				now, acts := m.opt.Keys.Lookup(keys.Bench, p.Has(), append(b.Keys, "")[0])
				if b.Mode != keys.Bench || m.whyNot(b, -1) == "" || acts && now.ID != b.ID {
					continue // it can act, or the same key does something else here
				}
				m.status.Clear()
				rev := m.session.Revision()
				m.Update(key(b.Keys[0]))
				if m.status.Text() == "" || m.session.Revision() != rev || m.dialogs.Top() != nil {
					t.Errorf("%q on %s: status %q, revision %d after %d", b.ID, p.ID, m.status.Text(), m.session.Revision(), rev)
				}
			}
		}
	}
}

func TestUndoingEverythingGivesTheFirstPlanAndRedoingTheLast(t *testing.T) {
	pressed := []string{
		"down", "up", "left", "right", "tab", "]", "1 enter", "7 , 5 enter", "3 esc", "+", "-", "*", "_", "space", "a", "d", "K", "J",
		"enter enter", "a enter", "c enter", "I", "t", "u", "U", "home", "end", "5 tab", "r x enter",
	}
	shelf, plan := built(t)
	rapid.Check(t, func(rt *rapid.T) {
		m := newModel(Options{Document: planfile.Document{Plan: plan.Clone()}, Shelf: shelf, Background: "dark"})
		m.Update(tea.WindowSizeMsg{Width: 120, Height: 36})
		first := m.session.Plan()
		for range rapid.IntRange(1, 25).Draw(rt, "n") {
			for _, k := range strings.Fields(rapid.SampledFrom(pressed).Draw(rt, "keys")) {
				m.Update(key(k)) // without its commands: clock and pictures would take nearly all the time
			}
			if m.typing != nil || m.dialogs.Top() != nil {
				m.Update(key("esc"))
			}
		}
		last := m.session.Plan()
		if faults := last.Check(m.session.Shelf()); len(faults) > 0 {
			rt.Fatalf("the bench let through %v", faults[0])
		}
		undone := 0
		for m.session.CanUndo() != "" {
			m.Update(key("u"))
			undone++
		}
		if m.session.CanRedo() == "" {
			return
		}
		if d := cmp.Diff(first, m.session.Plan()); d != "" {
			rt.Fatal(d)
		}
		for range undone {
			m.Update(key("U"))
		}
		if d := cmp.Diff(last, m.session.Plan()); d != "" {
			rt.Fatal(d)
		}
	})
}

func TestStaleClockFiguresAreDropped(t *testing.T) {
	m := opened(t, 120, 36)
	_, cmd := m.Update(key("+"))
	if _, fresh := m.session.Clock(); fresh || !strings.Contains(frame(m), "%…") {
		t.Fatal("an edited plan shows its old clock figures as fresh")
	}
	old := m.session.Untimed()()
	rev := m.session.Revision()
	m.Update(key("+"))
	m.Update(timedMsg{rev, old})
	if _, fresh := m.session.Clock(); fresh {
		t.Error("the clock of an older plan was taken")
	}
	finish(m, cmd)
	finish(m, m.workFigures())
	if sheet, fresh := m.session.Clock(); !fresh || sheet.Plan.Base.Jugs[0].SharePercent != 40 {
		t.Error("the clock of the plan on the bench was not taken")
	}
}

func TestPastingANumberTypesIt(t *testing.T) {
	m := opened(t, 120, 36)
	m.Update(tea.PasteMsg{Content: " 41,5\n"})
	drive(m, "enter")
	if got := base(m).Jugs[0].SharePercent; got != 41.5 {
		t.Errorf("the pot has %v %%, want 41.5", got)
	}
}

func TestAListIsSearchedByTyping(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Batch, "oils")
	drive(m, "a")
	typeText(m, "avoc")
	if f := frame(m); !strings.Contains(f, "avocado") || strings.Contains(f, "babassu") {
		t.Fatal("the list does not follow what is typed")
	}
	drive(m, "enter")
	oils := base(m).Oils
	if got := oils[len(oils)-1].Oil; !strings.Contains(got, "avocado") {
		t.Errorf("the last oil is %q", got)
	}
	drive(m, "a")
	typeText(m, "zzz")
	drive(m, "enter")
	if m.dialogs.Top() == nil || !strings.Contains(m.status.Text(), "nothing matches") {
		t.Error("taking nothing from a list is not explained")
	}
}

func TestAMessageThatDoesNotFitIsReadWholeOnAKey(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "!")
	if m.dialogs.Top() != nil || !strings.Contains(m.status.Text(), "nothing was said yet") {
		t.Fatalf("before anything was said ! says %q", m.status.Text())
	}
	m.refuse("no space left on device: save " + strings.Repeat("/a/long/way", 9) + "/meadow.toml: the plan is not saved")
	if f := frame(m); !strings.Contains(f, "× no space left on device") || !strings.Contains(f, "! reads all") || strings.Contains(f, "is not saved") {
		t.Errorf("the status line does not start with the reason and name the key:\n%s", f)
	}
	drive(m, "!")
	if f := frame(m); !strings.Contains(f, "is not saved") || !strings.Contains(f, "nothing was said yet") {
		t.Errorf("the messages are not shown in full:\n%s", f)
	}
}

func TestTheReasonOfAFailureComesFirst(t *testing.T) {
	failed := &fs.PathError{Op: "open", Path: "/home/maker/pours/index.toml", Err: fs.ErrPermission}
	for _, c := range []struct {
		err  error
		want string
	}{
		{fmt.Errorf("read the logbook: %w", failed), "permission denied: read the logbook: open /home/maker/pours/index.toml"},
		{failed.Err, "permission denied"},
		{fmt.Errorf("%w: a share is from 0 to 100", pour.ErrRefused), "a share is from 0 to 100"},
		{errors.New("read \"4x\" as a number: take x away"), "read \"4x\" as a number: take x away"},
	} {
		if got := reason(c.err); got != c.want {
			t.Errorf("%v is said as %q", c.err, got)
		}
	}
}
