package dialog

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// onRun is a screen of the live run that only remembers what it was asked to do.
func onRun(did *string) Actions {
	return Actions{
		Keys: keys.BuiltIn(), Own: keys.Pouring,
		WhyNot: func(b keys.Binding, _ int) string {
			switch {
			case b.Mode != keys.Pouring:
				return "at the bench only"
			case b.ID == keys.Discount:
				return "the clock has not jumped"
			}
			return ""
		},
		Do: func(b keys.Binding, nth int) tea.Cmd {
			*did = string(b.ID)
			if nth >= 0 {
				*did += " " + b.Each[nth]
			}
			return nil
		},
		About: func(b keys.Binding, nth int) string {
			if b.ID == keys.PickJug && nth == 1 {
				return "gentian"
			}
			return ""
		},
	}
}

func TestThePaletteListsEveryActionWithItsKeyOrWhyItCannotAct(t *testing.T) {
	var did string
	l := NewPalette(onRun(&did))
	names := map[string]Item{}
	for _, it := range l.Items {
		if names[it.ID].ID != "" {
			t.Errorf("%s stands there twice", it.ID)
		}
		names[it.ID] = it
	}
	if len(names) != len(l.Items) || names["bench suspend"].ID != "" {
		t.Error("what both screens do stands there for the other one too")
	}
	for _, b := range keys.BuiltIn().All() {
		_, own := keys.BuiltIn().Find(keys.Pouring, b.ID)
		if b.ID == keys.Palette || b.Mode != keys.Pouring && (b.Mode != keys.Bench || own) {
			continue
		}
		id, key := b.Mode.Word()+" "+b.ID.Word(), b.Shown()
		if b.Each != nil {
			id, key = id+" "+b.Each[1], keys.Shown(b.Keys[1])
		}
		it, ok := names[id]
		if !ok || it.Aside != key || it.Says != b.Help || (it.Not == "") != (b.Mode == keys.Pouring && b.ID != keys.Discount) {
			t.Errorf("%s is listed as %+v", id, it)
		}
	}
	s := onStage(t, 80, 24, l)
	s.Paste("jump")
	s.shows("not count a jump", "× the clock has not jumped", "not now: the clock has not jumped")
	s.Clear()
	s.Open(NewPalette(onRun(&did)))
	s.press("g e n t")
	s.shows("pick jug: 2 gentian")
	if s.press("enter"); did != "pick jug 2" || s.Top() != nil {
		t.Errorf("Enter did %q", did)
	}
	s.Open(NewPalette(onRun(&did)))
	s.Paste("stage light")
	if s.press("enter"); did != "stage seen light" {
		t.Errorf("Enter did %q", did)
	}
}

func TestAListShowsFirstWhatBeginsAsItIsSearchedFor(t *testing.T) {
	s := onStage(t, 80, 24, &List{Items: []Item{{ID: "a", Name: "go to run"}, {ID: "d", Name: "under way"}, {ID: "e", Name: "under"}, {ID: "b", Name: "other", Detail: []string{"under"}}, {ID: "c", Name: "undo"}}})
	s.press("u n")
	_, undo := s.at("undo")
	_, run := s.at("go to run")
	if _, other := s.at("other"); undo > run || run > other {
		t.Errorf("undo stands in row %d, run in %d, other in %d", undo, run, other)
	}
	s.press("d e r")
	s.shows("► under   ")
	clove := onStage(t, 80, 24, &List{Items: []Item{{ID: "a", Name: "honey clover"}, {ID: "b", Name: "clove bud oil"}}})
	clove.press("c l o v e") // a whole word goes before one that goes on
	clove.shows("► clove bud oil")
}

func TestEnterOnALineOfTheHelpThatWasSearchedForDoesIt(t *testing.T) {
	var did string
	help := func() *Page { return NewHelp(keys.OfPour(), onRun(&did), look.New(true)) }
	s := onStage(t, 80, 24, help())
	if s.press("enter"); did != "" || s.Top() != nil {
		t.Errorf("with nothing searched for Enter did %q", did)
	}
	s.Open(help())
	s.Paste("blender")
	s.shows("► z")
	if s.press("enter"); did != "blender" || s.Top() != nil {
		t.Errorf("Enter did %q", did)
	}
	s.Open(help())
	s.Paste("step")
	s.press("down down")
	s.hides("► Space")
	s.press("up up up enter")
	if did != "finish step" {
		t.Errorf("the first line found is %q", did)
	}
	did = ""
	s.Open(help())
	s.Paste("answer nothing") // a line that only a question does
	if s.press("enter"); did != "" || s.Top() == nil || !strings.Contains(s.refused, "Esc closes") {
		t.Errorf("it did %q and said %q", did, s.refused)
	}
	s.Clear()
	s.Open(help())
	s.Paste("jug")
	x, y := s.at("choose the next jug")
	s.click(x, y)
	if did != "" {
		t.Fatalf("one click did %q", did)
	}
	if s.click(x, y); did != "next jug" {
		t.Errorf("two clicks did %q", did)
	}
}

// A click beside what is open leaves it where nothing is lost by that.
func TestAClickBesideADialogClosesItUnlessSomethingWasTyped(t *testing.T) {
	line := func() *Prompt {
		return &Prompt{Typed: entry.New("a.toml"), Done: func(string) (tea.Cmd, error) { return nil, nil }}
	}
	var chosen string
	path := oils(&chosen, 3)
	path.Free = "open it"
	for name, c := range map[string]struct {
		open   Dialog
		before string
		stays  bool
	}{
		"a page": {numbered(3), "", false}, "a page searched": {numbered(3), "l", false}, "a list": {oils(&chosen, 3), "o", false},
		"a path typed": {path, "x", true}, "a line as it was": {line(), "", false}, "a line typed in": {line(), "x", true},
		"a line with a letter taken away": {line(), "backspace", true},
		"a question":                      {&Question{Text: "sure?", Answers: []Answer{{Text: "yes"}}}, "", true},
		"a pad":                           {NewPad(Pad{Read: reading}, ""), "", false}, "a pad with text": {NewPad(Pad{Read: reading}, "oil 3"), "", true},
	} {
		s := onStage(t, 120, 40, c.open)
		s.press(c.before)
		s.click(0, 0)
		if (s.Top() != nil) != c.stays || (s.refused != "") != c.stays {
			t.Errorf("%s: open %v, said %q", name, s.Top() != nil, s.refused)
		}
	}
	s := onStage(t, 120, 40, numbered(3))
	x, y := s.at("line 002")
	if s.click(x, y); s.Top() == nil {
		t.Error("a click on a page closed it")
	}
}

// What the footer names is what a click on it does.
func TestAFooterIsClickedWhereItIsDrawn(t *testing.T) {
	m := keys.BuiltIn()
	for _, rows := range [][]keys.Binding{m.Footer(keys.Pouring, 0), m.Footer(keys.Bench, keys.Numbers|keys.Elsewhere), m.Footer(keys.List, 0)} {
		for _, w := range []int{40, 80, 200} {
			line := drawn(w, func(a screen.Area) { Footer(a, rows, look.New(true)) })
			hit := 0
			for _, b := range rows {
				before, _, ok := strings.Cut(line, b.InFooter()+" "+b.Label)
				if !ok {
					continue
				}
				hit++
				at := screen.Width(before)
				end := at + screen.Width(b.InFooter()+" "+b.Label)
				first, _, ok1 := FootAt(w, rows, at)
				last, _, ok2 := FootAt(w, rows, end-1)
				if !ok1 || !ok2 || first != b.ID || last != b.ID {
					t.Errorf("%d wide, %q is %q and %q", w, b.Label, first, last)
				}
				if id, _, ok := FootAt(w, rows, end); ok {
					t.Errorf("%d wide, the blank behind %q is %q", w, b.Label, id)
				}
			}
			if hit < 2 {
				t.Errorf("%d of the footer were found in %q", hit, line)
			}
		}
	}
	rows := m.Footer(keys.Bench, keys.Numbers|keys.Elsewhere)
	line := drawn(200, func(a screen.Area) { Footer(a, rows, look.New(true)) })
	at := screen.Width(line[:strings.Index(line, "+ - nudge")])
	for x, want := range map[int]keys.ID{at: keys.More, at + 2: keys.Less, at + 4: keys.More} {
		if id, _, _ := FootAt(200, rows, x); id != want {
			t.Errorf("column %d of %q is %q, want %q", x, line, id, want)
		}
	}
	rows = m.Footer(keys.Pouring, 0)
	line = drawn(200, func(a screen.Area) { Footer(a, rows, look.New(true)) })
	at = screen.Width(line[:strings.Index(line, "e l m t s")])
	for x, want := range map[int]int{at: 0, at + 2: 1, at + 8: 4, at + 10: -1} {
		if id, nth, _ := FootAt(200, rows, x); id != keys.SeeStage || nth != want {
			t.Errorf("column %d of %q is %q %d, want %d", x, line, id, nth, want)
		}
	}
}
