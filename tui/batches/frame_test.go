package batches

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/pour/logbook/life"
	"pourbench/tui/keys"
)

func TestFramesAtThreeSizes(t *testing.T) {
	s := page(t, handful(t))
	for _, at := range []struct{ name, press string }{
		{"list", ""}, {"search", "/ a l p"}, {"batch", "esc home down enter"}, {"marks", "down down down"}, {"form", "w"}, {"kinds", "esc e"}, {"faulty", "esc esc end"}, {"help", "?"}, {"byname", "esc o o o"},
	} {
		s.press(at.press)
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			name := fmt.Sprintf("%s_%dx%d", at.name, size[0], size[1])
			s.size(size[0], size[1])
			s.dump(name)
			t.Run(name, func(t *testing.T) { golden.RequireEqual(t, []byte(s.frame())) })
		}
	}
}

func TestNoFrameIsLargerThanItsScreen(t *testing.T) {
	list := handful(t)
	list[0].Name = "雪\x1b]52;c;aGk=\a" + strings.Repeat("long ", 40)
	s := page(t, list)
	for _, press := range []string{"", "/ x", "esc home enter", "down down w", "esc e", "esc ?", "esc :"} {
		s.press(press)
		for w := 0; w < 140; w += 7 {
			for h := 0; h < 50; h += 5 {
				s.size(w, h)
				content := s.m.View().Content
				rows := strings.Split(content, "\n")
				if len(rows) > max(h, 1) {
					t.Fatalf("%q at %d × %d: %d lines", press, w, h, len(rows))
				}
				for _, r := range rows {
					if ansi.StringWidth(r) > w {
						t.Fatalf("%q at %d × %d: a line of %d", press, w, h, ansi.StringWidth(r))
					}
				}
				if strings.Contains(content, "\x1b]52") || strings.ContainsRune(s.m.View().WindowTitle, '\x1b') {
					t.Fatal("an escape sequence of a name reaches the terminal")
				}
			}
		}
		s.size(120, 36)
	}
}

func TestEveryKeyOfTheTableActsOrSaysWhy(t *testing.T) {
	for _, list := range [][]life.Batch{handful(t), nil} {
		for _, b := range keys.BuiltIn().Of(keys.Batching) {
			for _, k := range b.Keys {
				if k == keys.Leaves {
					continue
				}
				s := page(t, list)
				before := s.frame()
				s.press(k)
				if !s.left && s.frame() == before && s.m.status.Text() == "" && !s.m.search.On {
					if b.ID == keys.Suspend || b.ID == keys.Up || b.ID == keys.First || b.ID == keys.PageUp || b.ID == keys.PageDown {
						continue // it goes to the shell; it is the first already
					}
					t.Errorf("%s (%s) with %d batches does nothing and says nothing", k, b.ID, len(list))
				}
			}
		}
	}
	s := page(t, handful(t))
	s.press("Z")
	s.says("does nothing here", "? lists the keys")
	s.press("x")
	s.says("no cut can be opened from here")
}

func TestHelpAndPaletteListEveryKeyAndWhyItCannotAct(t *testing.T) {
	s := page(t, handful(t))
	s.size(200, 60)
	s.press("?")
	s.write("undo what")
	s.shows("undo what was logged", "not now: nothing was logged")
	s.press("esc :")
	s.write("unmoulded")
	s.shows("log: unmoulded")
	s.press("enter")
	s.shows("out of the mould, ")
}

func TestTheFooterNamesWhatCanBeDone(t *testing.T) {
	s := page(t, handful(t))
	s.shows("log", "look at it", "search", "keys")
	s.hides("undo", "season", "pour again")
	s.press("/")
	s.shows("Enter take it", "Esc leave")
}
