package tui

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/panel"
)

// bound is the workbench with a maker's own keys.
func bound(t *testing.T, w, h int, file string) *model {
	t.Helper()
	shelf, plan := built(t)
	own, err := keys.Read("keys.toml", strings.NewReader(file))
	m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark", Keys: own, KeyFaults: err})
	finish(m, m.Init())
	resize(m, w, h)
	return m
}

// said is what stands in the status line.
func said(m *model) string { return m.status.Text() }

func TestThePaletteDoesWhatTheKeyWould(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m, by := opened(t, size[0], size[1]), opened(t, size[0], size[1])
		for _, c := range []struct{ find, key string }{
			{"much more", "*"},
			{"go to batch", "f3"},
			{"next panel", "tab"},
			{"icing", "I"},
			{"undo", "u"},
			{"redo", "U"},
			{"units", "t"},
			{"learned", "L"},
			{"mouse", "m"},
			{"go to swirl", "f5"},
			{"another face", "R"},
			{"copy panel", "Y"},
		} {
			drive(m, ":")
			m.dialogs.Paste(c.find)
			drive(m, "enter")
			drive(by, c.key)
			if got, want := frame(m), frame(by); strings.ReplaceAll(got, c.find+":", "") != strings.ReplaceAll(want, c.key+" ("+c.find+"):", "") {
				t.Fatalf("%s by the palette:\n%s\nby its key:\n%s", c.find, got, want)
			}
		}
	}
}

func TestThePaletteSaysWhyAnActionCannotBe(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "ctrl+k")
	m.dialogs.Paste("redo")
	if f := frame(m); !strings.Contains(f, "× nothing was undone") || !strings.Contains(f, "U Ctrl+Y") {
		t.Errorf("it shows\n%s", f)
	}
	if drive(m, "enter"); said(m) != "× redo: nothing was undone" || m.dialogs.Top() != nil {
		t.Errorf("it said %q", said(m))
	}
	drive(m, ":")
	m.dialogs.Paste("blender")
	if drive(m, "enter"); said(m) != "× blender: during a pour only; P pours this plan" {
		t.Errorf("of an action of the live run it said %q", said(m))
	}
}

func TestTypingFromThePaletteTypesOverTheCell(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, ":")
	m.dialogs.Paste("type over")
	drive(m, "enter 4 1 enter")
	if got := base(m).Jugs[0].SharePercent; got != 41 {
		t.Errorf("the share is %g", got)
	}
}

func TestTheHelpDoesWhatWasSearchedFor(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "? enter")
	if m.dialogs.Top() != nil || said(m) != "" {
		t.Errorf("Enter with nothing searched for said %q", said(m))
	}
	drive(m, "?")
	m.dialogs.Paste("take it away")
	if drive(m, "enter"); m.session.Plan().Icing != nil {
		t.Error("Enter on the line of the icing left it there")
	}
}

// Footer, help, palette and what is said follow the keys that are bound; those they had before do nothing.
func TestKeysOfHerOwnAreFollowedEverywhere(t *testing.T) {
	m := bound(t, 120, 36, "[bench]\nundo = [\"f9\"]\nhelp = [\"f10\"]\nwarnings = [\"alt+w\"]\nnext-station = [\"f11\"]\nnext-panel = [\"f12\"]\nsuspend = []\n[page]\nclose = [\"f9\"]\n[typing]\ncommit = [\"f2\"]\n")
	drive(m, "+")
	if f := frame(m); !strings.Contains(f, "F10 all keys") || !strings.Contains(f, "[ F11 stations") || !strings.Contains(f, "Alt+w reads all") {
		t.Errorf("the frame shows\n%s", f)
	}
	if drive(m, "u"); said(m) != "× u does nothing here; F10 lists every key, : searches every action" {
		t.Errorf("u: %q", said(m))
	}
	m.Update(tea.KeyPressMsg{Code: tea.KeyF10})
	if f := frame(m); !strings.Contains(f, "F9 close") {
		t.Errorf("the help shows\n%s", f)
	}
	m.dialogs.Paste("undo")
	if f := frame(m); !strings.Contains(f, "F9                  undo") || !strings.Contains(f, "no key") || !strings.Contains(f, "F9 does") {
		t.Errorf("the help shows\n%s", f)
	}
	m.Update(tea.KeyPressMsg{Code: tea.KeyF9})
	if m.dialogs.Top() != nil || m.session.CanUndo() == "" {
		t.Error("F9 on the page closed it not, or undid")
	}
	if m.Update(tea.KeyPressMsg{Code: tea.KeyF9}); m.session.CanUndo() != "" {
		t.Error("F9 did not undo")
	}
	drive(m, "I I")
	if said(m) != "an icing that leans on the base; F9 takes it away" {
		t.Errorf("said %q", said(m))
	}
	if drive(m, "f4 5 enter"); m.typing == nil || !strings.Contains(said(m), "F2 keeps it") {
		t.Errorf("Enter kept what is kept by F2, and said %q", said(m))
	}
	if drive(m, "f2"); m.typing != nil {
		t.Error("F2 did not keep it")
	}
}

func TestAFaultyFileOfKeysStopsNothingAndIsTold(t *testing.T) {
	m := bound(t, 80, 24, "[bench]\nundo = [\"f9\"]\nundoo = [\"x\"]\nquit = []\n")
	if m.opt.KeyFaults == nil || !strings.Contains(frame(m), "! your file of keys has faults, the built-in keys stay; ! reads them") {
		t.Errorf("the bench shows\n%s", frame(m))
	}
	if drive(m, "+ u"); m.session.CanUndo() != "" {
		t.Error("the built-in u does not undo")
	}
	drive(m, "!")
	f := frame(m)
	first, second := strings.Index(f, "keys.toml:3:1: bench.undoo"), strings.Index(f, "keys.toml:4:1: bench.quit")
	if first < 0 || second < first {
		t.Errorf("the messages are\n%s", f)
	}
	m = newModel(Options{Document: planfile.Document{Plan: m.session.Plan()}, Shelf: m.session.Shelf(), KeyFaults: errors.New("no permission")})
	if !strings.Contains(said(m), "built-in keys stay") {
		t.Errorf("of a file that cannot be opened it said %q", said(m))
	}
}

// Whatever stands in braces in what is shown is an action's key by then.
func TestNoBraceIsLeftInWhatIsSaid(t *testing.T) {
	if testing.Short() {
		t.Skip("one pair of hands: nothing for the race detector, and long under it")
	}
	m := opened(t, 200, 60)
	m.status.Clear()
	for s := range panel.Places {
		for range m.here().Panels(true) {
			for range 40 {
				if f := frame(m); strings.ContainsAny(f, "{}") {
					t.Fatalf("station %d shows\n%s", s, f)
				}
				cell, _, _ := m.cell()
				if drive(m, "e"); strings.ContainsAny(frame(m), "{}") {
					t.Fatalf("%s is explained as\n%s", cell.Name, frame(m))
				}
				drive(m, "esc right")
				if next, _, _ := m.cell(); next.Name == cell.Name && next.Hint == cell.Hint {
					drive(m, "down home")
				}
			}
			drive(m, "tab")
		}
		drive(m, "]")
	}
	for _, b := range m.opt.Keys.All() {
		if strings.ContainsAny(b.Help, "{}") {
			t.Errorf("%s is told as %q", b.ID, b.Help)
		}
		if why := m.whyNot(b, -1); strings.ContainsAny(why, "{}") {
			t.Errorf("%s cannot be because %q", b.ID, why)
		}
	}
	if drive(m, "f4 d"); strings.ContainsAny(said(m), "{}") || !strings.Contains(said(m), "u brings it back") && !strings.HasPrefix(said(m), "×") {
		t.Errorf("said %q", said(m))
	}
}

// Every text of the screens that names an action in braces names one there is: a slip would stand on the screen as it is written.
func TestWhatStandsInBracesIsAnAction(t *testing.T) {
	m, inBraces, seen := keys.BuiltIn(), regexp.MustCompile(`\{[a-z]+( [a-z]+)*\}`), 0
	err := filepath.WalkDir(".", func(path string, _ os.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			for _, named := range inBraces.FindAllString(lit.Value, -1) {
				seen++
				known := false
				for mode := keys.Bench; mode <= keys.Stocking; mode++ {
					known = known || m.Fill(mode, named) != named
				}
				if !known {
					t.Errorf("%s: %s is no action", path, named)
				}
			}
			return true
		})
		return nil
	})
	if err != nil || seen < 50 {
		t.Errorf("%d were found, %v", seen, err)
	}
}

func TestTheFooterIsClickedLikeItsKeys(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := opened(t, size[0], size[1])
		share := base(m).Jugs[0].SharePercent
		if clickOn(t, m, "nudge"); base(m).Jugs[0].SharePercent <= share {
			t.Errorf("a click on nudge made %g of %g", base(m).Jugs[0].SharePercent, share)
		}
		if clickOn(t, m, "- nudge"); base(m).Jugs[0].SharePercent != share {
			t.Errorf("a click on its minus made %g of %g", base(m).Jugs[0].SharePercent, share)
		}
		clickOn(t, m, "type a number")
		if m.typing == nil {
			t.Fatal("a click on type a number types none")
		}
		drive(m, "4 1")
		if clickOn(t, m, "keep, go down"); m.typing != nil || base(m).Jugs[0].SharePercent != 41 {
			t.Errorf("a click on Enter kept %g", base(m).Jugs[0].SharePercent)
		}
		clickOn(t, m, "all keys")
		if _, ok := m.dialogs.Top().(*dialog.Page); !ok {
			t.Fatal("a click on all keys opened no page")
		}
		if clickOn(t, m, "go up a row"); m.dialogs.Top() == nil {
			t.Fatal("a click on the page closed it")
		}
		if clickOn(t, m, "Esc close"); m.dialogs.Top() != nil {
			t.Error("a click on close left the page open")
		}
	}
}

func TestAClickOnWhatIsSaidReadsItInFull(t *testing.T) {
	m := opened(t, 80, 24)
	m.status.Clear()
	cell, _, _ := m.cell()
	if clickOn(t, m, cell.Hint[:30]); !strings.Contains(frame(m), "Where it comes from") {
		t.Errorf("a click on the hint shows\n%s", frame(m))
	}
	drive(m, "esc +")
	m.refuse("that cannot be")
	if clickOn(t, m, "that cannot be"); !strings.Contains(frame(m), "What was said") {
		t.Errorf("a click on the message shows\n%s", frame(m))
	}
	if clickOn(t, m, " pourbench "); m.dialogs.Top() != nil {
		t.Error("a click beside the page left it open")
	}
}

func TestAClickBesideALineKeepsWhatWasTyped(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "S")
	if clickOn(t, m, " pourbench "); m.dialogs.Top() != nil {
		t.Fatal("a line with nothing typed stays open")
	}
	drive(m, "S a")
	if clickOn(t, m, " pourbench "); m.dialogs.Top() == nil || said(m) != "× what was typed stays until it is kept or left: Esc leaves it" {
		t.Errorf("said %q", said(m))
	}
}

// The totals in the title are of base and icing: that is said where there is an icing, and room.
func TestTheTotalsSayThatAnIcingIsInThem(t *testing.T) {
	m := opened(t, 120, 36)
	if f := frame(m); !strings.Contains(f, "with icing: oils ") {
		t.Errorf("the title is\n%s", f)
	}
	if resize(m, 80, 24); strings.Contains(frame(m), "with icing: ") || !strings.Contains(frame(m), "Alpine Meadow") {
		t.Errorf("on a narrow screen it is\n%s", frame(m))
	}
	resize(m, 120, 36)
	if drive(m, "f7 I y"); m.session.Plan().Icing != nil || strings.Contains(frame(m), "with icing: ") {
		t.Errorf("without an icing it is\n%s", frame(m))
	}
}
