package tui

import (
	"strings"
	"testing"
)

// The second jug of these tests' plan states its colour, seen with ultramarine.
func TestAStatedColourGoesWithTheColourantItWasSeenWith(t *testing.T) {
	for _, c := range []struct {
		what, keys, pick string
		stays            bool
	}{
		{"another colourant", "down right right enter", "red iron oxide", false},
		{"one more colourant", "down c", "red iron oxide", false},
		{"the colourant taken out", "down right right d", "", false},
		{"the same colourant picked again", "down right right enter", "ultramarine blue", true},
		{"another dose", "down right right right 0 . 6 enter", "", true},
		{"a nudged dose", "down right right right + +", "", true},
	} {
		m := opened(t, 120, 36)
		before := m.session.Plan()
		drive(m, c.keys)
		if c.pick != "" {
			typeText(m, c.pick)
			drive(m, "enter")
		}
		got := base(m).Jugs[1]
		if stays := got.BatterColour == before.Base.Jugs[1].BatterColour; stays != c.stays {
			t.Errorf("%s: the stated colour is %q, %+v", c.what, got.BatterColour, got.Colourants)
		}
		if said := strings.Contains(m.status.Text(), "gentian: stated colour gone with its colourant, now estimated; u undoes"); said == c.stays {
			t.Errorf("%s: said is %q", c.what, m.status.Text())
		}
		if !c.stays {
			drive(m, "u")
			if again := base(m).Jugs[1]; again.BatterColour != "#5566b0" || len(again.Colourants) != 1 {
				t.Errorf("%s: one u leaves %+v", c.what, again)
			}
		}
	}
}

func TestTheJugsSayWhoseColourIsShown(t *testing.T) {
	m := opened(t, 120, 36)
	for _, want := range []string{"~pot ", "=gentian", "~poppy", "~ estimated", "= stated"} {
		if !strings.Contains(frame(m), want) {
			t.Errorf("the jugs do not say %q:\n%s", want, frame(m))
		}
	}
	drive(m, "down d d") // nothing but the jug itself stands under the share: it is gone
	if strings.Contains(frame(m), "= stated") {
		t.Error("the legend explains a mark that stands nowhere")
	}
	drive(m, "u u left left")
	if hint := frame(m); !strings.Contains(hint, "#5566b0 once poured: stated (=) by you") {
		t.Errorf("the name of a jug with a stated colour says:\n%s", hint)
	}
	drive(m, "up")
	if hint := frame(m); !strings.Contains(hint, "estimated (~) from its colourants, their doses and 0.50 % of white") {
		t.Errorf("the name of a white jug says:\n%s", hint)
	}
	drive(m, "down down")
	if hint := frame(m); !strings.Contains(hint, "estimated (~) from its colourants and their doses") {
		t.Errorf("the name of a jug without white says:\n%s", hint)
	}
}

func TestARenamedJugKeepsTheCursor(t *testing.T) {
	for _, keys := range []string{"down r", "down left left enter"} {
		m := opened(t, 80, 24)
		drive(m, keys)
		typeText(m, "x")
		drive(m, "enter")
		if _, row, _ := m.cell(); row.Item != 1 || !strings.HasSuffix(base(m).Jugs[1].Name, "x") {
			t.Errorf("%s: the cursor is on jug %d, %q renamed", keys, row.Item, base(m).Jugs[1].Name)
		}
		drive(m, "c")
		typeText(m, "red iron")
		drive(m, "enter")
		if len(base(m).Jugs[1].Colourants) != 2 || len(base(m).Jugs[2].Colourants) != 1 {
			t.Errorf("%s: c coloured another jug: %+v", keys, base(m).Jugs)
		}
	}
	m := opened(t, 80, 24)
	drive(m, "2 0 enter")
	if _, row, _ := m.cell(); row.Item != 1 {
		t.Errorf("after a figure the cursor is on jug %d: figures are typed down a column", row.Item)
	}
}
