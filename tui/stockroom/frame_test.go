package stockroom

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/tui/keys"
)

func TestFramesAtThreeSizes(t *testing.T) {
	r := stocked(t)
	for _, at := range []struct{ name, press string }{
		{"list", ""}, {"search", "/ m i l l"}, {"pack", "esc home down down down down enter"}, {"weigh", "w"}, {"correct", "esc c"}, {"pad", "esc esc r"}, {"form", "esc f"}, {"trace", "esc t"}, {"help", "esc ?"},
	} {
		r.press(at.press)
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			name := fmt.Sprintf("%s_%dx%d", at.name, size[0], size[1])
			r.size(size[0], size[1])
			r.dump(name)
			t.Run(name, func(t *testing.T) { golden.RequireEqual(t, []byte(r.frame())) })
		}
	}
}

func TestNoFrameIsLargerThanItsScreen(t *testing.T) {
	r := stocked(t)
	r.receives("olive 5 kg 38.50 lot 雪" + strings.Repeat("9", 60) + " from \x1b]52;c;aGk=\a" + strings.Repeat("long ", 40))
	for _, press := range []string{"", "/ x", "esc home down enter", "w", "esc r", "esc f", "esc ?", "esc :"} {
		r.press(press)
		for w := 0; w < 140; w += 23 {
			for h := 0; h < 50; h += 11 {
				r.size(w, h)
				content := r.m.View().Content
				rows := strings.Split(content, "\n")
				if len(rows) > max(h, 1) {
					t.Fatalf("%q at %d × %d: %d lines", press, w, h, len(rows))
				}
				for _, row := range rows {
					if ansi.StringWidth(row) > w {
						t.Fatalf("%q at %d × %d: a line of %d", press, w, h, ansi.StringWidth(row))
					}
				}
				if strings.Contains(content, "\x1b]52") {
					t.Fatal("an escape sequence of a name reaches the terminal")
				}
			}
		}
		r.size(120, 36)
	}
}

func TestEveryKeyOfTheTableActsOrSaysWhy(t *testing.T) {
	for name, open := range map[string]func() *room{"full": func() *room { return stocked(t) }, "empty": func() *room { return opened(t, nil) }, "bare": func() *room {
		return opened(t, func(o *Options) { o.Decide, o.Shopping, o.Expiring, o.Trace = nil, nil, nil, nil })
	}} {
		r := open()
		for _, b := range keys.BuiltIn().Of(keys.Stocking) {
			for _, k := range b.Keys {
				if k == keys.Leaves || b.ID == keys.Suspend {
					continue
				}
				r.m.dialogs.Clear()
				r.m.search.On, r.m.inside, r.left = false, false, false
				r.m.status.Clear()
				r.press("home")
				r.m.status.Clear()
				before := r.frame()
				r.press(k)
				if !r.left && r.frame() == before && r.m.status.Text() == "" && !r.m.search.On && b.ID != keys.Up && b.ID != keys.First && b.ID != keys.PageUp {
					t.Errorf("%s: %s (%s) does nothing and says nothing", name, k, b.ID)
				}
			}
		}
	}
	r := stocked(t)
	r.press("Z")
	r.says("does nothing here", "? lists the keys")
}

func TestHelpPaletteAndFooterTellWhatCanBeDone(t *testing.T) {
	r := stocked(t)
	r.shows("r receive", "s to get", "? keys")
	r.size(200, 60)
	r.press("?")
	r.write("lose some")
	r.press("esc :")
	r.write("trace")
	r.shows("trace", "not now: go to a pack first")
	r.press("esc :")
	r.write("rule of costs")
	r.press("enter")
	r.shows("The rule of costs", "three letters")
}

func TestColumnsEndWithTheListAndNeverOverlap(t *testing.T) {
	for w := 40; w < 220; w++ {
		c := columnsIn(w)
		x := mark
		for _, col := range []column{c.name, c.lot, c.left, c.reserved, c.opened, c.expires, c.value} {
			if col.w == 0 {
				continue
			}
			if col.x != x {
				t.Fatalf("in %d a column stands at %d; the one before ends at %d", w, col.x, x)
			}
			x = col.x + col.w + 1
		}
		if x-1 != w || c.name.w < 10 {
			t.Fatalf("in %d the columns end at %d, the name has %d", w, x-1, c.name.w)
		}
	}
}
