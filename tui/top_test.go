package tui

import (
	"fmt"
	"math"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/panel"
)

// topped is the workbench on a plan with all that can be piped, strewn, set and cut.
func topped(t testing.TB, w, h int) *model {
	t.Helper()
	shelf, _ := built(t)
	doc, err := planfile.Load("../testdata/plans/topped.toml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	m := newModel(Options{Document: planfile.Document{Plan: doc.Plan}, Shelf: shelf, Background: "dark"})
	finish(m, m.Init())
	resize(m, w, h)
	return m
}

func TestFramesOfTopAndCutWithAllThatCanBe(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := topped(t, size[0], size[1])
		for _, s := range []panel.Place{panel.Top, panel.Cut} {
			t.Run(fmt.Sprintf("%s_%dx%d", m.stations[s].Name, size[0], size[1]), func(t *testing.T) {
				visit(m, s)
				golden.RequireEqual(t, []byte(trimmed(masked(m, frame(m)))))
			})
		}
	}
}

func TestNoFrameOfTopAndCutIsLargerThanItsScreen(t *testing.T) {
	m := topped(t, 120, 36)
	for name, presses := range modes() {
		for _, s := range []panel.Place{panel.Top, panel.Cut} {
			for tabs := range 4 {
				if tabs > 0 && testing.Short() {
					break // every panel in turn costs a picture each: left to the whole suite
				}
				m.Update(tea.WindowSizeMsg{Width: 120, Height: 36})
				m.dialogs.Clear()
				m.typing = nil
				visit(m, s)
				drive(m, strings.Repeat("tab ", tabs)+presses)
				for w := 1; w <= 210; w += 61 {
					for h := 1; h <= 66; h += 21 {
						m.Update(tea.WindowSizeMsg{Width: w, Height: h})
						fits(t, m, fmt.Sprintf("%s, %d, %s", m.stations[s].Name, tabs, name), w, h)
					}
				}
			}
		}
	}
}

// cuts are where the loaf on the bench is cut.
func cuts(m *model) []float64 { return m.session.Sheet().Cut.CutsMM }

// The keys that choose and nudge a number choose and nudge a cut; masses and warnings follow at once, and undo takes it back.
func TestCutsAreChosenAndNudgedWithKeys(t *testing.T) {
	m := topped(t, 120, 36)
	if err := m.session.Apply("way to cut", pour.SetWord("cut.by", pour.CutBars)); err != nil {
		t.Fatal(err)
	}
	m.settle()
	goTo(t, m, panel.Cut, "cuts")
	was, mass := cuts(m)[2], m.session.Sheet().Cut.Bars[1].CutG.V
	drive(m, "home right right + + + +")
	if got := cuts(m)[2]; math.Abs(got-was-2) > 0.051 {
		t.Fatalf("nudged four times from %v, the cut stands at %v", was, got)
	}
	after := m.session.Sheet().Cut.Bars[1].CutG.V
	if !(after > mass+5) || !strings.Contains(frame(m), m.facts.Show.WeightApart(after).Number) {
		t.Errorf("the bar before it weighs %v, before %v", after, mass)
	}
	drive(m, "u")
	if got := cuts(m)[2]; got != was {
		t.Errorf("undone, the cut stands at %v for %v", got, was)
	}
	drive(m, "6 2 , 5 enter")
	if got := cuts(m)[2]; got != 62.5 {
		t.Errorf("typed, the cut stands at %v", got)
	}
	drive(m, "9 9 9")
	if f := frame(m); !strings.Contains(f, "at 999") {
		t.Errorf("what is typed is not shown:\n%s", f)
	}
	drive(m, "enter")
	if m.typing == nil || m.typing.Refused == "" {
		t.Error("a cut outside the loaf was taken")
	}
	drive(m, "esc d")
	if n := len(cuts(m)); n != 9 {
		t.Errorf("one taken away leaves %d cuts", n)
	}
}

// One drag is one thing to undo.
func TestACutIsDraggedWithTheMouse(t *testing.T) {
	m := topped(t, 120, 36)
	visit(m, panel.Cut)
	r, ok := m.placed.Find("cuts")
	if !ok {
		t.Fatal("the map is not on the screen")
	}
	if err := m.session.Apply("way to cut", pour.SetWord("cut.by", pour.CutBars)); err != nil {
		t.Fatal(err)
	}
	m.settle()
	before := cuts(m)
	per := m.session.Plan().Mould.LengthMM / float64(r.Dx()-2-4)
	x, y := r.Min.X+1+2+int(before[4]/per), r.Min.Y+4
	send := func(msg tea.Msg) { _, cmd := m.Update(msg); finish(m, cmd) }
	send(tea.MouseClickMsg{X: x, Y: y, Button: tea.MouseLeft})
	for i := range 3 {
		send(tea.MouseMotionMsg{X: x + 1 + i, Y: y, Button: tea.MouseLeft})
	}
	send(tea.MouseReleaseMsg{X: x + 3, Y: y, Button: tea.MouseLeft})
	if got, want := cuts(m)[4], before[4]+3*per; math.Abs(got-want) > per {
		t.Errorf("dragged three cells from %v, the cut stands at %v", before[4], got)
	}
	dragged := cuts(m)[4]
	send(tea.MouseMotionMsg{X: x + 4, Y: y, Button: tea.MouseLeft})
	if cuts(m)[4] != dragged {
		t.Error("let go, the cut goes on")
	}
	drive(m, "u")
	if got := cuts(m)[4]; got != before[4] {
		t.Errorf("undone once, the cut stands at %v for %v", got, before[4])
	}
}

// Wires that cut all at once move together.
func TestAGangMovesAsOne(t *testing.T) {
	m := topped(t, 120, 36)
	goTo(t, m, panel.Cut, "cuts")
	before := cuts(m)
	drive(m, "+ +")
	for i, at := range cuts(m) {
		if by := at - before[i]; math.Abs(by-1) > 0.051 {
			t.Errorf("wire %d moved by %v", i+1, by)
		}
	}
}

func TestToppingsEmbedsAndShapesAreMadeWithKeys(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Top, "toppings")
	drive(m, "a")
	typeText(m, "nonpareils")
	drive(m, "enter")
	if got := m.session.Plan().Top.Toppings; len(got) != 1 || got[0].Parts[0].Material != "nonpareils" {
		t.Fatalf("the toppings are %v", got)
	}
	drive(m, "6 enter")
	if got := m.session.Plan().Top.Toppings[0].CoveragePercent; got != 6 {
		t.Errorf("it covers %v %%", got)
	}
	goTo(t, m, panel.Top, "embeds")
	drive(m, "a 1 2 enter r")
	typeText(m, "s")
	drive(m, "enter")
	if got := m.session.Plan().Top.Embeds; len(got) != 1 || got[0].LengthMM != 12 || got[0].Name != "s" {
		t.Errorf("the embeds are %+v", got)
	}
	goTo(t, m, panel.Top, "piping")
	drive(m, "home + +")
	if p := m.session.Plan().Piping; p.Shape != pour.PipeRosette || p.CoilMM <= 0 || !strings.Contains(frame(m), "coil ends at") {
		t.Errorf("the piping is %+v", p)
	}
}

// All of it can be said in lines.
func TestTopAndCutAreDesignedInLines(t *testing.T) {
	s := spokenTo(t)
	s.say("top", "a rose-petals", "5", "toppings", "1 mix in nonpareils", "2 30")
	top := s.m.session.Plan().Top.Toppings
	if len(top) != 1 || top[0].CoveragePercent != 5 || len(top[0].Parts) != 2 || top[0].Parts[1].Percent != 30 {
		t.Fatalf("the toppings are %+v\n%s", top, s.said.String())
	}
	s.say("embeds", "a", "12", "1 outline ball")
	if e := s.m.session.Plan().Top.Embeds; len(e) != 1 || e[0].LengthMM != 12 || e[0].Outline != pour.OutlineBall {
		t.Fatalf("the embeds are %+v\n%s", e, s.said.String())
	}
	s.say("piping", "shape dollop", "width 19")
	if p := s.m.session.Plan().Piping; p.Shape != pour.PipeDollop || p.WidthMM != 19 {
		t.Errorf("the piping is %+v", p)
	}
	s.say("cut")
	s.hears("1 cut 3 72", "72.0")
	if at := cuts(s.m)[2]; at != 72 {
		t.Errorf("the cut stands at %v", at)
	}
	s.hears("", "end A", "cut 3 at 72.0 mm", "embed")
	s.hears("cut plan")
	s.say("cut by gang")
	s.hears("own wires 0 25 50", "own wires")
	s.hears("own wires 0,25,50", "blanks between")
	if w := s.m.session.Plan().Cut.WiresMM; len(w) != 3 {
		t.Errorf("the wires are %v", w)
	}
}
