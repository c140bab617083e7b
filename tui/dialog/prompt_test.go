package dialog

import (
	"errors"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
)

func TestALineIsKeptWithoutBlanksOrLeft(t *testing.T) {
	var kept []string
	prompt := func() *Prompt {
		return &Prompt{Title: "Save the plan as", Text: "A file name.", Typed: entry.New("meadow.toml"), Done: func(typed string) (tea.Cmd, error) {
			kept = append(kept, typed)
			return nil, nil
		}}
	}
	s := onStage(t, 80, 24, prompt())
	s.shows("Save the plan as", "A file name.", "meadow.toml")
	s.press("space space backspace backspace backspace x space enter")
	if len(kept) != 1 || kept[0] != "meadow.tomx" || s.Top() != nil {
		t.Fatalf("kept %q", kept)
	}
	s.Open(prompt())
	if s.press("esc"); len(kept) != 1 || s.Top() != nil {
		t.Errorf("Esc kept %q", kept)
	}
}

func TestARefusalStandsUnderTheLineUntilSomethingIsTyped(t *testing.T) {
	s := onStage(t, 80, 24, &Prompt{Typed: entry.New("36,5,1"), Done: func(string) (tea.Cmd, error) { return nil, errors.New("read it as a number: one decimal sign") }})
	s.press("enter")
	s.shows("36,5,1", "× read it as a number")
	s.press("backspace")
	s.hides("×")
	s.press("enter")
	s.Paste(" 2\x1b[31m\x07\n3 ")
	s.hides("×")
	s.shows("36,5,2[31m 3")
}

func TestTabGoesRoundTheThingsALineCanBeAbout(t *testing.T) {
	var about int
	p := &Prompt{Things: []string{"base lye in °C", "base oils in °C", "olive oil in g"}}
	p.Done = func(string) (tea.Cmd, error) { about = p.At; return nil, nil }
	s := onStage(t, 80, 24, p)
	s.shows("base lye")
	s.press("tab down tab shift+tab shift+tab up")
	s.shows("base lye")
	s.press("up")
	s.shows("olive oil")
	if s.press("enter"); about != 2 {
		t.Errorf("the line was about thing %d", about)
	}
}

// A number typed at one thing is kept there when Tab goes on, and stands at no other; what is refused stays where it was typed, and nothing typed
// keeps nothing.
func TestTabKeepsWhatWasTypedWhereItWasTyped(t *testing.T) {
	var kept []string
	p := &Prompt{Things: []string{"water", "lye", "oil"}}
	p.Done = func(typed string) (tea.Cmd, error) {
		if typed == "x" {
			return nil, errors.New("read it as a number")
		}
		kept = append(kept, p.Things[p.At]+" "+typed)
		return nil, nil
	}
	s := onStage(t, 80, 24, p)
	s.press("tab shift+tab 2 3 0 tab")
	s.shows("lye")
	s.hides("230")
	if len(kept) != 1 || kept[0] != "water 230" {
		t.Fatalf("kept are %q", kept)
	}
	s.press("x up")
	s.shows("lye", "× read it as a number")
	s.press("backspace 7 up")
	s.shows("water")
	if len(kept) != 2 || kept[1] != "lye 7" || s.Top() == nil {
		t.Errorf("kept are %q", kept)
	}
}

func TestKeysThatGoRoundAreNamedOnlyWhereThereIsSomethingToGoRound(t *testing.T) {
	names := func(p *Prompt) (found bool) {
		for _, b := range p.Keys(Frame{Keys: keys.BuiltIn()}) {
			found = found || b.ID == keys.NextThing
		}
		return found
	}
	if names(&Prompt{}) || !names(&Prompt{Things: []string{"base lye"}}) {
		t.Error("the footer of a line names the wrong keys")
	}
	s := onStage(t, 80, 24, &Prompt{Done: func(string) (tea.Cmd, error) { return nil, nil }})
	s.press("tab up down")
	if s.Top() == nil {
		t.Error("keys without a thing to go to closed the line")
	}
}
