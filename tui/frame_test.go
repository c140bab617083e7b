package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
	"pourbench/tui/screen"
)

func TestFramesAtTheTwoSizesEveryTerminalHas(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := opened(t, size[0], size[1])
		for s := range panel.Places {
			t.Run(fmt.Sprintf("%s_%dx%d", m.stations[s].Name, size[0], size[1]), func(t *testing.T) {
				visit(m, panel.Place(s))
				golden.RequireEqual(t, []byte(trimmed(masked(m, frame(m)))))
			})
		}
	}
}

// A label in a market, with a scent that is tried: what stands beside what at the sizes every terminal has.
func TestFramesOfTheLabel(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := marketed(t, size[0], size[1])
		if m.edit("market", pour.SetText("label.market", "vale")) != nil {
			t.Fatal("no market")
		}
		m.trying = trying{of: &panel.Swap{Batch: pour.Base, At: 1, ID: "gentian-root"}, opened: m.file.opened}
		_, cmd := m.Update(changingMsg{m.workFigures})
		finish(m, cmd)
		visit(m, panel.Label)
		for _, at := range []string{"ingredients", "this label", "another scent"} {
			t.Run(fmt.Sprintf("%s_%dx%d", strings.ReplaceAll(at, " ", "-"), size[0], size[1]), func(t *testing.T) {
				goTo(t, m, panel.Label, layout.ID(at))
				golden.RequireEqual(t, []byte(trimmed(masked(m, frame(m)))))
			})
		}
	}
}

// masked paints over the picture, which has goldens of its own: how a technique falls is not what these frames are about.
func masked(m *model, text string) string {
	e, ok := m.easel()
	p := m.studio.mounts[placeNow].print
	if !ok || p == nil {
		return text
	}
	lines := strings.Split(text, "\n")
	for _, tile := range p.Plate.Tiles() {
		r := tile.Rect.Add(e.now.Min)
		for y := r.Min.Y; y < r.Max.Y && y < len(lines); y++ {
			row := []rune(lines[y])
			for x := r.Min.X; x < r.Max.X && x < len(row); x++ {
				row[x] = '▒'
			}
			lines[y] = string(row)
		}
	}
	return strings.Join(lines, "\n")
}

// trimmed takes the blanks off the ends of lines, so that the files can be read and edited.
func trimmed(text string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(lines, "\n") + "\n"
}

// modes are the things a frame can show: the keys that bring them up from any station.
func modes() map[string]string {
	return map[string]string{"at rest": "", "help": "?", "warnings": "w", "typing": "5", "refused": "9 9 9 enter", "list": "enter", "prompt": "S", "question": "+ q", "open": "o", "other view": "v", "letters": "i", "compared": "b R", "half poured": ") ) ) )"}
}

func TestNoFrameIsLargerThanItsScreen(t *testing.T) {
	m := opened(t, 80, 24)
	for name, presses := range modes() {
		for s := range panel.Places {
			m.Update(tea.WindowSizeMsg{Width: 120, Height: 36})
			m.dialogs, m.typing = dialog.Stack{}, nil
			visit(m, panel.Place(s))
			drive(m, presses)
			for w := 1; w <= 210; w += 29 {
				for h := 1; h <= 66; h += 11 {
					m.Update(tea.WindowSizeMsg{Width: w, Height: h})
					fits(t, m, fmt.Sprintf("%s, %s", m.stations[s].Name, name), w, h)
				}
			}
		}
	}
}

func TestASizeThatNoTerminalHasIsDrawnInPart(t *testing.T) {
	m := opened(t, 80, 24)
	m.Update(tea.WindowSizeMsg{Width: 5000, Height: 5000})
	fits(t, m, "vast", screen.MaxW, screen.MaxH)
	for _, want := range []string{"? all keys", "buttercup"} {
		if !strings.Contains(frame(m), want) {
			t.Errorf("a vast screen does not show %q", want)
		}
	}
	m.Update(tea.WindowSizeMsg{Width: -1, Height: 1 << 40})
	fits(t, m, "thin", 0, screen.MaxH)
}

func fits(t *testing.T, m *model, what string, w, h int) {
	t.Helper()
	lines := strings.Split(m.View().Content, "\n")
	if len(lines) > h {
		t.Fatalf("%s: %d lines at %d×%d", what, len(lines), w, h)
	}
	for i, l := range lines {
		if got := ansi.StringWidth(l); got > w {
			t.Fatalf("%s: line %d is %d wide at %d×%d", what, i, got, w, h)
		}
	}
}

func TestATooSmallScreenSaysSoAndRecovers(t *testing.T) {
	m := opened(t, 30, 8)
	if f := frame(m); !strings.Contains(f, "30 × 8") || !strings.Contains(f, "60 × 16") {
		t.Errorf("the small screen shows\n%s", f)
	}
	drive(m, "+")
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	if f := frame(m); !strings.Contains(f, "gentian") {
		t.Errorf("the bench did not come back:\n%s", f)
	}
}

func TestTotalsAndTheWorstWarningAreAlwaysInSight(t *testing.T) {
	m := opened(t, 80, 24)
	for s := range panel.Places {
		m.station = panel.Place(s)
		m.settle()
		f, cautions := frame(m), 0
		for _, w := range m.session.Sheet().Warnings {
			if w.Severity == pour.Caution {
				cautions++
			}
		}
		if cautions == 0 {
			t.Fatal("the plan has no caution to be in sight")
		}
		for _, want := range []string{"oils ", "batter ", "10 bars", fmt.Sprintf("! %d", cautions), "Alpine Meadow", "likely past medium"} {
			if !strings.Contains(f, want) {
				t.Errorf("%v at 80×24 does not show %q", m.stations[s].Name, want)
			}
		}
	}
}

func TestTheCursorIsMarkedWithoutColour(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down down")
	for _, l := range strings.Split(frame(m), "\n") {
		if strings.Contains(l, "poppy") && strings.Contains(l, "► C") {
			return
		}
	}
	t.Error("no sign stands beside the row of the cursor")
}

func TestHostileNamesNeverReachTheTerminal(t *testing.T) {
	shelf, plan := built(t)
	const hostile = "\x1b]52;c;aGk=\x07\u009b2J\u202ehi\r\t漢字👩‍🔬"
	plan.Name = hostile
	plan.Base.Jugs[0].Name = hostile
	m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark"})
	for s := range panel.Places {
		m.station = panel.Place(s)
		m.settle()
		v := m.View()
		for _, text := range []string{v.WindowTitle, ansi.Strip(v.Content)} {
			for _, bad := range []string{"\x1b", "\x07", "\u009b", "\u202e", "\r", "\t"} {
				if strings.Contains(text, bad) {
					t.Fatalf("%v holds %q", m.stations[s].Name, bad)
				}
			}
		}
		if strings.Contains(v.Content, "\x1b]") {
			t.Fatalf("%v holds an operating system command", m.stations[s].Name)
		}
		fits(t, m, "hostile names", 80, 24)
	}
}

func TestAStopOnTheLyeHidesTheLyeOnScreen(t *testing.T) {
	m := opened(t, 120, 60)
	if err := m.session.Apply("superfat", pour.SetNumber("base.superfat_percent", -3)); err != nil {
		t.Fatal(err)
	}
	m.settle()
	goTo(t, m, panel.Batch, "lye")
	f := frame(m)
	if !strings.Contains(f, "DO NOT MIX") || !strings.Contains(f, "■ 1") {
		t.Errorf("a lye-heavy plan shows\n%s", f)
	}
}

func TestHelpListsEveryKeyAndIsSearched(t *testing.T) {
	m := opened(t, 100, 400)
	drive(m, "?")
	f := frame(m)
	for _, want := range []string{"undo the last change", "Ctrl+Y", "not now: nothing has been changed yet", "at a question"} {
		if !strings.Contains(f, want) {
			t.Errorf("help does not say %q", want)
		}
	}
	typeText(m, "checklist")
	if f = frame(m); !strings.Contains(f, "write the bench paper") || strings.Contains(f, "undo the last change") {
		t.Error("help is not searched by what is typed")
	}
}
