package dialog

import (
	"errors"
	"image"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// reading says beside each line how many letters it has, and what could stand in the place of "tset".
func reading(text string) Reading {
	r := Reading{Instead: map[int]string{}}
	for i, l := range strings.Split(text, "\n") {
		r.Beside = append(r.Beside, Line{Lead: "→", Text: strings.Repeat("long ", len(l)/2)})
		if l == "tset" {
			r.Instead[i] = "the"
		}
	}
	return r
}

func padOn(text string, take func(string) (tea.Cmd, error)) *Pad {
	return NewPad(Pad{Title: "Words", Read: reading, Take: take}, text)
}

// A pad is typed on line by line; what is pasted keeps its lines, and the cursor then stands on an empty one.
func TestAPadHoldsLines(t *testing.T) {
	var taken []string
	p := padOn("one\r\n\x1b[31mtwo\u2028three\n", func(text string) (tea.Cmd, error) {
		taken = append(taken, text)
		return nil, errors.New("not yet")
	})
	if got := p.text(); got != "one\ntwo\nthree\n" || p.at != 3 {
		t.Fatalf("pasted: %q, on line %d", got, p.at)
	}
	f := Frame{W: 60, H: 20, Keys: keys.BuiltIn()}
	for _, k := range []string{"backspace", "x", "up", "enter", "enter", "enter"} {
		p.Press(key(k), f)
	}
	if got := p.text(); got != "one\ntwo\nthreex\n" || len(taken) != 1 || p.refused != "not yet" {
		t.Errorf("typed: %q, taken %q, refused %q", got, taken, p.refused)
	}
	p = padOn("a\ntset\ntset", func(string) (tea.Cmd, error) { return nil, nil })
	p.Press(key("tab"), f)
	p.Press(key("down"), f)
	p.Press(key("up"), f)
	p.Press(key("tab"), f)
	if got := p.text(); got != "a\nthe\nthe\n" {
		t.Errorf("as meant: %q", got)
	}
	if r := p.Press(key("tab"), f); r.Refused == "" {
		t.Error("Tab does nothing, silently")
	}
	p.Press(key("pgdown"), f)
	if r := p.Press(key("enter"), f); !r.Close {
		t.Error("Enter on an empty line takes nothing")
	}
	if r := p.Press(key("esc"), f); !r.Close || r.Do != nil {
		t.Error("Esc does more than leave")
	}
}

// Whatever stands on a pad, the cursor's line is in sight, at every size, and a click on a line goes there.
func TestTheCursorOfAPadIsInSight(t *testing.T) {
	p := padOn(strings.Repeat("some words on a line\n", 400), func(string) (tea.Cmd, error) { return nil, nil })
	if len(p.lines) != mostPadLines {
		t.Fatalf("it holds %d lines", len(p.lines))
	}
	for h := 8; h < 40; h += 3 {
		for w := 20; w < 130; w += 9 {
			f := Frame{W: w, H: h, Keys: keys.BuiltIn()}
			for _, at := range []int{0, 7, len(p.lines) - 1} {
				p.at = at
				in := inside(p.Box(f))
				high := p.body(in, look.New(true))
				seen := false
				for _, r := range p.rows(p.first(in.Dx(), high), in.Dx(), high) {
					seen = seen || r.line == at
				}
				if !seen {
					t.Fatalf("%d × %d: line %d is out of sight", w, h, at)
				}
				onStage(t, w, h, p).rows()
			}
		}
	}
	p.at = 0
	f := Frame{W: 80, H: 24, Keys: keys.BuiltIn()}
	in := inside(p.Box(f))
	rows := p.rows(0, in.Dx(), p.body(in, look.New(true)))
	p.Click(image.Pt(in.Min.X+3, in.Min.Y+rows[2].y), f)
	if p.at != 2 {
		t.Errorf("a click on the third line goes to line %d", p.at+1)
	}
	p.Wheel(1, f)
	if p.at != 3 {
		t.Errorf("the wheel goes to line %d", p.at+1)
	}
}
