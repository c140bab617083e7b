package tui

import (
	"reflect"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// built returns the built-in shelf and the plan these tests work on.
func built(t testing.TB) (pour.Shelf, pour.Plan) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := planfile.Load("testdata/meadow.toml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	return shelf, doc.Plan
}

// opened is the workbench on the first example at a size.
func opened(t testing.TB, w, h int) *model {
	t.Helper()
	shelf, plan := built(t)
	m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark"})
	finish(m, m.Init())
	resize(m, w, h)
	return m
}

// resize gives the terminal another size and lets the pictures be drawn for it.
func resize(m *model, w, h int) {
	_, cmd := m.Update(tea.WindowSizeMsg{Width: w, Height: h})
	finish(m, cmd)
}

// visit goes to a station and lets its pictures be drawn.
func visit(m *model, s panel.Place) {
	m.station = s
	m.settle()
	finish(m, m.develop())
}

// key is the message of a key by its name.
func key(name string) tea.KeyPressMsg {
	special := map[string]rune{
		"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter, "esc": tea.KeyEscape,
		"tab": tea.KeyTab, "home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "delete": tea.KeyDelete,
		"backspace": tea.KeyBackspace, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4, "f5": tea.KeyF5, "f6": tea.KeyF6, "f7": tea.KeyF7, "f8": tea.KeyF8,
	}
	var mod tea.KeyMod
	for {
		if rest, ok := strings.CutPrefix(name, "shift+"); ok {
			name, mod = rest, mod|tea.ModShift
		} else if rest, ok := strings.CutPrefix(name, "ctrl+"); ok {
			name, mod = rest, mod|tea.ModCtrl
		} else {
			break
		}
	}
	if code, ok := special[name]; ok {
		return tea.KeyPressMsg{Code: code, Mod: mod}
	}
	if name == "space" {
		return tea.KeyPressMsg{Code: ' ', Text: " "}
	}
	r := []rune(name)[0]
	if mod != 0 {
		return tea.KeyPressMsg{Code: r, Mod: mod}
	}
	return tea.KeyPressMsg{Code: r, Text: name}
}

// drive presses keys one after the other and lets every command finish before the next. It says whether the bench was left.
func drive(m *model, names string) (left bool) {
	for _, name := range strings.Fields(names) {
		_, cmd := m.Update(key(name))
		left = finish(m, cmd) || left
	}
	return left
}

// typeText types a text letter by letter.
func typeText(m *model, text string) {
	for _, r := range text {
		if r == ' ' {
			drive(m, "space")
			continue
		}
		drive(m, string(r))
	}
}

// finish runs a command and everything that follows from it.
func finish(m *model, cmd tea.Cmd) (left bool) {
	if cmd == nil {
		return false
	}
	msg := cmd()
	switch msg.(type) {
	case nil:
		return false
	case tea.QuitMsg:
		return true
	}
	if list, ok := commands(msg); ok {
		for _, next := range list {
			left = finish(m, next) || left
		}
		return left
	}
	_, next := m.Update(msg)
	return finish(m, next) || left
}

// commands is the commands of a batch or a sequence; false for any other message.
func commands(msg tea.Msg) (list []tea.Cmd, ok bool) {
	v := reflect.ValueOf(msg)
	if v.Kind() != reflect.Slice || v.Type().Elem() != reflect.TypeFor[tea.Cmd]() {
		return nil, false
	}
	for i := range v.Len() {
		next, _ := v.Index(i).Interface().(tea.Cmd)
		list = append(list, next)
	}
	return list, true
}

// frame is the screen as text without styles.
func frame(m *model) string { return ansi.Strip(m.View().Content) }

// base is the base batch on the bench.
func base(m *model) pour.Batch { return m.session.Plan().Base }

// goTo puts the focus on a panel of a station.
func goTo(t testing.TB, m *model, s panel.Place, id layout.ID) {
	t.Helper()
	drive(m, []string{"f2", "f3", "f4", "f5", "f6", "f7", "f8", "A", "C", "E", "F"}[s])
	for range m.panels {
		if m.at().ID == id {
			return
		}
		drive(m, "tab")
	}
	t.Fatalf("station %v has no panel %q", s, id)
}
