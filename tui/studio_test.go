package tui

import (
	"fmt"
	"image"
	"image/color"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"pourbench/pour"
	"pourbench/tui/panel"
	"pourbench/tui/picture"
	"pourbench/tui/pixels"
	"pourbench/tui/terminal"
)

func TestTheDepthOfThePictureIsThatOfTheTerminal(t *testing.T) {
	for profile, want := range map[colorprofile.Profile]picture.Depth{
		colorprofile.TrueColor: picture.True, colorprofile.ANSI256: picture.Many, colorprofile.ANSI: picture.Few, colorprofile.ASCII: picture.Plain, colorprofile.NoTTY: picture.Plain,
	} {
		s := newStudio(pixels.Off, "")
		if s.setDepth(profile); s.depth != want {
			t.Errorf("%v is drawn in depth %v, want %v", profile, s.depth, want)
		}
	}
	m := opened(t, 80, 24)
	m.backdrop = terminal.NewBackdrop("auto", nil)
	m.Update(tea.BackgroundColorMsg{Color: color.RGBA{R: 250, G: 240, B: 230, A: 255}})
	if m.backdrop.Dark() || m.studio.ground != (color.NRGBA{R: 250, G: 240, B: 230, A: 255}) {
		t.Errorf("on a light terminal: dark %v, ground %v", m.backdrop.Dark(), m.studio.ground)
	}
	m.Update(tea.BackgroundColorMsg{Color: color.RGBA64{R: 0x0a00, G: 0x0cff, B: 0x0e80, A: 0xffff}})
	if !m.backdrop.Dark() || m.studio.ground != (color.NRGBA{R: 10, G: 12, B: 14, A: 255}) {
		t.Errorf("on a dark terminal: dark %v, ground %v", m.backdrop.Dark(), m.studio.ground)
	}
}

func TestTheCaptionSaysWhatIsLookedAt(t *testing.T) {
	m := swirling(t, 120, 36)
	for _, c := range [][2]string{
		{"", "bar 1 of 10, face 7"},
		{">", "bar 2 of 10, face 7"},
		{"v", "all bars, face 7"},
		{"v", "cut along the loaf, "},
		{"v", "the batter from above, face 7"},
		{"v", "from above as it stands, face 7"},
		{"v", "a bar sliced off, face 7"},
		{"v R", "bar 2 of 10, face 8"},
		{"f", "bar 2 of 10, face 8, after some weeks"},
		{"b", "bar 2 of 10, after some weeks"},
	} {
		drive(m, c[0])
		if got := m.caption(); !strings.HasPrefix(got, c[1]) || !strings.Contains(frame(m), c[1][:10]) {
			t.Errorf("after %q the caption is %q, want %q", c[0], got, c[1])
		}
	}
	drive(m, "b f4")
	if got := m.caption(); got != "bar 2 of 10, after some weeks" {
		t.Errorf("on another station it is %q", got)
	}
}

func TestAViewWithoutSingleBarsSaysSo(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, "v v")
	for _, k := range []string{">", "<"} {
		told(t, m, k, "this view has no single bars; v turns it")
	}
	if m.studio.bar != 0 {
		t.Errorf("the bar is %d", m.studio.bar+1)
	}
	m.Update(key("p")) // its ticks are left out: nothing is waited for
	if m.studio.view != picture.Long || !m.studio.play.running {
		t.Error("a cut along the loaf is not watched as it is poured")
	}
	told(t, m, "p", "stopped; ( and ) go step by step, p pours again")
	drive(m, "v v v")
	m.Update(key("p"))
	if m.studio.view != picture.Bar {
		t.Errorf("all bars are watched at once: %v", m.studio.view)
	}
}

func TestThePourTakesAboutNineSecondsHoweverManySteps(t *testing.T) {
	for steps, want := range map[int]time.Duration{
		0: 900 * time.Millisecond, 1: 900 * time.Millisecond, 10: 900 * time.Millisecond, 20: 450 * time.Millisecond, 100: 90 * time.Millisecond, 5000: 90 * time.Millisecond,
	} {
		if got := pace(steps); got != want {
			t.Errorf("%d steps are shown for %v each, want %v", steps, got, want)
		}
	}
}

func TestSteppingBackStopsAtTheEmptyMouldAndOnAtTheWholePour(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, ") ( (")
	if m.studio.play.done != 0 {
		t.Errorf("before the empty mould comes step %d", m.studio.play.done)
	}
	n := m.steps()
	for range n {
		drive(m, ")")
	}
	if m.studio.play.done != picture.Whole {
		t.Errorf("after %d of %d steps the pour is at %d", n, n, m.studio.play.done)
	}
	m.Update(key("p"))
	drive(m, ")")
	if m.studio.play.running || m.studio.play.done != 1 {
		t.Errorf("stepping on while it runs: running %v at step %d", m.studio.play.running, m.studio.play.done)
	}
}

// The legend goes by the order in which the jugs are poured, which an order taken changes; the icing's have small letters.
func TestTheLegendIsInPourOrder(t *testing.T) {
	m := swirling(t, 120, 36)
	text := func() string {
		var out []string
		for _, x := range m.legend() {
			out = append(out, x.ink.Letter+" "+x.name+" "+x.aside)
		}
		return strings.Join(out, ", ")
	}
	if got := text(); got != "A pot 38 %, B gentian 16 %, C poppy 16 %, D buttercup 15 %, E fern 15 %, a cream icing, b sky icing" {
		t.Errorf("the legend is %s", got)
	}
	m.studio.mounts[placeNow].print = nil
	if got := text(); !strings.HasPrefix(got, "A pot") || !strings.HasSuffix(got, "a cream icing, b sky icing") {
		t.Errorf("before the picture is drawn the legend is %s", got)
	}
	if err := m.session.Apply("order", pour.PinLast("gentian")); err != nil {
		t.Fatal(err)
	}
	m.settle()
	finish(m, m.develop())
	if got := text(); !strings.Contains(got, "E fern 15 %, B gentian 16 %, a cream") {
		t.Errorf("with gentian last it is %s", got)
	}
	drive(m, "I")
	if got := text(); strings.Contains(got, "icing") {
		t.Errorf("without an icing it is %s", got)
	}
}

func TestTheFaceShowsEveryColourOfTheBar(t *testing.T) {
	m := swirling(t, 200, 60)
	content := m.View().Content
	for jug, c := range m.studio.design.Palette {
		if want := fmt.Sprintf("48;2;%d;%d;%dm", c.R, c.G, c.B); !strings.Contains(content, want) {
			t.Errorf("jug %d's colour %s is nowhere on the screen", jug+1, want)
		}
	}
}

func TestOnlySoManyPicturesAreKept(t *testing.T) {
	m := swirling(t, 80, 24)
	first := m.studio.plates[0]
	for i := range cached + 3 {
		p := *first
		p.Shot.Bar = 100 + i
		m.remember(&p)
		m.remember(&p) // twice is once
	}
	if len(m.studio.plates) != cached {
		t.Errorf("%d pictures are kept, want %d", len(m.studio.plates), cached)
	}
	if last := m.studio.plates[cached-1].Shot.Bar; last != 100+cached+2 || m.traced(first.Shot) != nil {
		t.Errorf("the newest kept is of bar %d, and the oldest is still there: %v", last, m.traced(first.Shot) != nil)
	}
}

func TestWhatCannotBePouredSaysWhyInPlaceOfItsPicture(t *testing.T) {
	m := swirling(t, 120, 36)
	m.studio.problem = "the hanger is wider than the mould"
	if f := frame(m); !strings.Contains(f, "the hanger is wider than the mould") || strings.Contains(f, "bar 1 of 10") {
		t.Errorf("the picture's panel shows:\n%s", f)
	}
	finish(m, m.develop())
	if m.studio.mounts[placeNow].stop != nil {
		t.Error("a picture is still worked on")
	}
	m.studio.problem = ""
	f := &m.studio.mounts[placeNow]
	f.stop = func() {}
	m.printed(printedMsg{place: placeNow, ticket: f.ticket, err: errTooWide{}})
	if !strings.Contains(frame(m), "too wide to draw") {
		t.Errorf("the reason is not shown:\n%s", frame(m))
	}
}

// errTooWide is a reason why there is no picture.
type errTooWide struct{}

func (errTooWide) Error() string { return "too wide to draw" }

func TestAPriceThatIsWorkedOutAgainIsMarked(t *testing.T) {
	m := swirling(t, 120, 36)
	fresh := m.price()
	if strings.Contains(fresh[0]+fresh[1], "…") || !strings.HasPrefix(fresh[0], "mud 0.") || !strings.Contains(fresh[1], "% at most: poppy") {
		t.Errorf("the price is %q", fresh)
	}
	m.Update(key("R"))
	for i, line := range m.price() {
		if line != fresh[i]+" …" {
			t.Errorf("while it is worked out again the price is %q", line)
		}
	}
	m.facts.Colours = &pour.Sheet{}
	if got := m.price(); got != [2]string{"mud …", "late …"} {
		t.Errorf("before it is known the price is %q", got)
	}
}

func TestTheWheelAndAClickTurnThePicture(t *testing.T) {
	m := opened(t, 120, 36)
	at := m.placed.Face.Min.Add(image.Pt(3, 3))
	_, cmd := m.Update(tea.MouseClickMsg{X: at.X, Y: at.Y, Button: tea.MouseRight})
	finish(m, cmd)
	if m.station != panel.Jugs {
		t.Error("a click with the right button acted")
	}
	_, cmd = m.Update(tea.MouseClickMsg{X: at.X, Y: at.Y, Button: tea.MouseLeft})
	finish(m, cmd)
	if m.station != panel.Swirl {
		t.Fatalf("a click on the face goes to %s", m.here().Name)
	}
	e, _ := m.easel()
	m.Update(tea.MouseWheelMsg{X: e.now.Min.X + 2, Y: e.now.Min.Y + 2, Button: tea.MouseWheelDown})
	if m.studio.bar != 1 {
		t.Errorf("one notch down shows bar %d", m.studio.bar+1)
	}
	for range 2 {
		m.Update(tea.MouseWheelMsg{X: e.now.Min.X + 2, Y: e.now.Min.Y + 2, Button: tea.MouseWheelUp})
	}
	if m.studio.bar != 9 {
		t.Errorf("two notches up show bar %d, want the last", m.studio.bar+1)
	}
}

func TestAClickOnTheWarningsReadsThemAll(t *testing.T) {
	m := opened(t, 80, 24) // where they are one line
	at := m.placed.Warnings.Min.Add(image.Pt(4, 0))
	m.Update(tea.MouseClickMsg{X: at.X, Y: at.Y, Button: tea.MouseLeft})
	if m.dialogs.Top() == nil || !strings.Contains(frame(m), panel.WarningsTitle) {
		t.Errorf("the page is not open:\n%s", frame(m))
	}
}

func TestEveryTabIsHitOverItsWholeName(t *testing.T) {
	m := opened(t, 120, 36)
	for s, x := range m.tabs() {
		name := m.stations[s].Name
		for _, at := range []int{x, x + len(name) + 1} {
			m.station = panel.Place((s + 1) % panel.Places)
			m.clickTab(at)
			if m.station != panel.Place(s) {
				t.Errorf("column %d of the tabs goes to %s, want %s", at, m.here().Name, name)
			}
		}
	}
	m.station = panel.Run
	if m.clickTab(110); m.station != panel.Run {
		t.Error("a click beside the tabs went somewhere")
	}
}

func TestTheFootKeysAreThoseThatCanAct(t *testing.T) {
	m := opened(t, 120, 36)
	if f := frame(m); !strings.Contains(f, "0–9 type a number") || strings.Contains(f, "u undo") {
		t.Errorf("at the start the footer is wrong:\n%s", f)
	}
	drive(m, "right")
	if f := frame(m); strings.Contains(f, "0–9 type a number") {
		t.Errorf("on a figure it still offers to type:\n%s", f)
	}
	drive(m, "f5 tab +")
	drive(m, "f5")
	resize(m, 250, 40)
	names := ""
	for _, b := range m.footKeys() {
		names += string(b.ID) + " "
	}
	if !strings.Contains(frame(m), "all keys") {
		t.Errorf("help is not offered: %s", names)
	}
}
