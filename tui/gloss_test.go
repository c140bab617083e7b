package tui

import (
	"fmt"
	"image/color"
	"regexp"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi/kitty"

	"pourbench/tui/panel"
	"pourbench/tui/picture"
	"pourbench/tui/pixels"
)

// glossy is a bench on a terminal that draws pictures in real pixels, and what was sent to it as it is.
type glossy struct {
	*model
	sent strings.Builder
}

// hear gives the bench a message and runs everything that follows from it.
func (g *glossy) tell(msg tea.Msg) {
	_, cmd := g.Update(msg)
	g.finish(cmd)
}

func (g *glossy) finish(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.RawMsg:
		fmt.Fprint(&g.sent, msg.Msg)
	default:
		if list, ok := commands(msg); ok {
			for _, c := range list {
				g.finish(c)
			}
			return
		}
		g.tell(msg)
	}
}

// took is what was sent since it was last asked.
func (g *glossy) took() string {
	defer g.sent.Reset()
	return g.sent.String()
}

// onPixels opens a bench on a terminal that has answered all it was asked.
func onPixels(t testing.TB, w, h int) *glossy {
	t.Helper()
	g := &glossy{model: opened(t, w, h)}
	g.studio.gloss = newGloss(pixels.Auto)
	g.tell(tea.BackgroundColorMsg{Color: color.Black})
	g.tell(tea.ColorProfileMsg{Profile: colorprofile.TrueColor})
	g.tell(uv.KittyGraphicsEvent{Options: kitty.Options{ID: 31}, Payload: []byte("OK")})
	g.tell(tea.TerminalVersionMsg{Name: "kitty(0.35.2)"})
	g.tell(uv.CellSizeEvent{Width: 8, Height: 16})
	g.tell(uv.PrimaryDeviceAttributesEvent{62})
	return g
}

const sign = "\U0010EEEE"

// shown is the number of the picture whose signs stand on the screen, and how many cells hold one.
func (g *glossy) shown() (colour string, cells int) {
	text := g.View().Content
	m := regexp.MustCompile(`38;2;(\d+;\d+;\d+)m` + sign).FindStringSubmatch(text)
	if m != nil {
		colour = m[1]
	}
	return colour, strings.Count(text, sign)
}

func TestAPictureTurnsIntoPixelsWhenTheHandRestsAndBackAtTheNextKey(t *testing.T) {
	g := onPixels(t, 120, 36)
	asked := g.took()
	if !strings.Contains(asked, "a=q") {
		t.Fatalf("the terminal was asked %q", asked)
	}
	g.tell(key("f5"))
	first, cells := g.shown()
	whole := 0
	for _, tile := range g.studio.mounts[placeNow].print.Plate.Tiles() {
		whole += tile.Rect.Dx() * tile.Rect.Dy()
	}
	if cells != whole || cells < 100 {
		t.Fatalf("%d cells show the picture in pixels, its place has %d", cells, whole)
	}
	if sent := g.took(); strings.Count(sent, "a=T") < 1 {
		t.Errorf("no picture was sent: %.80q", sent)
	}
	_, cmd := g.Update(key(">"))
	now := g.View().Content
	g.finish(cmd)
	if strings.Contains(now, sign) && !strings.Contains(now, "38;2;"+first+"m"+sign) {
		t.Error("while the next bar is drawn another picture than the last shows") // nothing flickers
	}
	second, cells := g.shown()
	if cells != whole || second == first {
		t.Errorf("the next bar shows %d cells of the number %s, after %s", cells, second, first)
	}
	g.Update(g.drafted()) // a print that comes while the picture shows
	if _, cells := g.shown(); cells != 0 {
		t.Errorf("%d cells hold a picture of the print before", cells)
	}
}

// drafted is a print as it comes while a plan is edited.
func (g *glossy) drafted() printedMsg {
	f := &g.studio.mounts[placeNow]
	return printedMsg{place: placeNow, ticket: f.ticket, print: f.print.Plate.Print(f.dye)}
}

// While a picture is on its way nothing of it shows: the half blocks stand until the terminal holds it.
func TestHalfBlocksStandUntilThePictureIsThere(t *testing.T) {
	g := onPixels(t, 120, 36)
	g.tell(key("f5"))
	f := &g.studio.mounts[placeNow]
	g.studio.gloss.over = [places]coat{}
	if _, cells := g.shown(); cells != 0 || !strings.Contains(g.View().Content, "▀") {
		t.Errorf("without a picture %d cells hold its signs", cells)
	}
	stale := restedMsg{placeNow, f.ticket - 1}
	if cmd := g.rested(stale); cmd != nil {
		t.Error("a picture that was changed since is drawn in pixels")
	}
	c := coat{of: f.print}
	if cmd := g.glossed(glossMsg{place: placeNow, ticket: f.ticket - 1, coat: c, sequence: "x"}); cmd != nil {
		t.Error("a stale picture is sent")
	}
	if cmd := g.glossed(glossMsg{place: placeNow, ticket: f.ticket, coat: c, err: fmt.Errorf("no")}); cmd != nil {
		t.Error("a picture that could not be drawn is sent")
	}
	g.coated(coatedMsg{placeNow, f.ticket - 1, c})
	if g.studio.gloss.over[placeNow].of != nil {
		t.Error("a stale picture is shown")
	}
}

func TestNoPixelsWhereTheyCannotBeOrAreNotWanted(t *testing.T) {
	for name, change := range map[string]func(*glossy){
		"turned off":     func(g *glossy) { g.studio.gloss = newGloss(pixels.Off) },
		"256 colours":    func(g *glossy) { g.tell(tea.ColorProfileMsg{Profile: colorprofile.ANSI256}) },
		"no ground":      func(g *glossy) { g.studio.ground = color.NRGBA{} },
		"letters":        func(g *glossy) { g.studio.letters = true },
		"accessible":     func(g *glossy) { g.opt.Environ = []string{"ACCESSIBLE=1"} },
		"no size":        func(g *glossy) { g.tell(uv.CellSizeEvent{}) },
		"a pour shown":   func(g *glossy) { g.studio.play.running = true },
		"no true colour": func(g *glossy) { g.studio.gloss = newGloss(pixels.Auto) },
	} {
		t.Run(name, func(t *testing.T) {
			g := onPixels(t, 120, 36)
			change(g)
			g.took()
			g.tell(key("f5"))
			if _, cells := g.shown(); cells != 0 {
				t.Errorf("%d cells show a picture in pixels", cells)
			}
			if sent := g.took(); sent != "" {
				t.Errorf("sent was %.80q", sent)
			}
		})
	}
}

func TestThePicturesAreForgottenBeforeTheTerminalIsGivenAwayAndSentAgainAfter(t *testing.T) {
	g := onPixels(t, 120, 36)
	g.tell(key("f5"))
	g.took()
	list, _ := commands(g.press(key("ctrl+z"))())
	if len(list) != 2 {
		t.Fatalf("suspending is %d steps, want the pictures first", len(list))
	}
	g.finish(list[0])
	if sent := g.took(); strings.Count(sent, "a=d") != 1 {
		t.Errorf("before it is suspended it sends %.80q", sent)
	}
	steps, _ := commands(list[1]())
	if len(steps) != 2 {
		t.Fatal("then it is not suspended")
	}
	if _, ok := steps[1]().(tea.SuspendMsg); !ok {
		t.Error("then it is not suspended")
	}
	if _, cells := g.shown(); cells != 0 {
		t.Error("signs of a forgotten picture stand on the screen")
	}
	g.tell(tea.ResumeMsg{})
	if _, cells := g.shown(); cells == 0 || strings.Count(g.took(), "a=T") != 1 {
		t.Error("back from the shell the picture is not sent again")
	}
	g.tell(pouredMsg{})
	if strings.Count(g.took(), "a=T") != 1 {
		t.Error("back from the run the picture is not sent again")
	}
	var out strings.Builder
	g.studio.gloss.forget(&out)
	if strings.Count(out.String(), "a=d") != 2 {
		t.Errorf("at the end it sends %.80q", out.String())
	}
}

func TestAnotherSizeOfLettersIsAskedForAndDrawn(t *testing.T) {
	g := onPixels(t, 120, 36)
	g.tell(key("f5"))
	g.took()
	g.tell(tea.WindowSizeMsg{Width: 121, Height: 36})
	if sent := g.took(); !strings.HasPrefix(sent, "\x1b[16t") {
		t.Errorf("after a resize it sends %.40q", sent)
	}
	g.tell(uv.CellSizeEvent{Width: 12, Height: 24})
	w := g.studio.mounts[placeNow].shot.W
	if sent := g.took(); !strings.Contains(sent, fmt.Sprintf("s=%d,", 12*w)) && w*g.studio.mounts[placeNow].shot.H*12*24 <= picture.MostPixels {
		t.Errorf("the picture is not drawn for the larger letters: %.120q", sent)
	}
}

// Every station's face, all views and a comparison: what stands on the screen as signs is what was sent.
func TestEveryPlaceOfAPictureHasPixels(t *testing.T) {
	if testing.Short() {
		t.Skip("one pair of hands: nothing for the race detector, and long under it")
	}
	g := onPixels(t, 120, 36)
	g.tell(key("f5"))
	for range picture.Views {
		g.tell(key("v"))
		if _, cells := g.shown(); cells == 0 {
			t.Errorf("%v has no pixels", g.studio.view)
		}
	}
	visit(g.model, panel.Jugs)
	g.finish(g.back())
	if _, cells := g.shown(); cells == 0 {
		t.Error("the face beside the jugs has no pixels")
	}
}
