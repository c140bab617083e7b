package dialog

import (
	"errors"
	"strings"
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
	p := &Prompt{Things: []Thing{{Name: "base lye in °C"}, {Name: "base oils in °C"}, {Name: "olive oil in g"}}}
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
	p := &Prompt{Things: []Thing{{Name: "water"}, {Name: "lye"}, {Name: "oil"}}}
	p.Done = func(typed string) (tea.Cmd, error) {
		if typed == "7.7.7" {
			return nil, errors.New("read it as a number")
		}
		kept = append(kept, p.Things[p.At].Name+" "+typed)
		return nil, nil
	}
	s := onStage(t, 80, 24, p)
	s.press("tab shift+tab 2 3 0 tab")
	s.shows("lye")
	s.hides("230")
	if len(kept) != 1 || kept[0] != "water 230" {
		t.Fatalf("kept are %q", kept)
	}
	s.press("7 . 7 . 7 up")
	s.shows("lye", "× read it as a number")
	s.press("backspace backspace backspace backspace up")
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
	if names(&Prompt{}) || !names(&Prompt{Things: []Thing{{Name: "base lye"}}}) {
		t.Error("the footer of a line names the wrong keys")
	}
	s := onStage(t, 80, 24, &Prompt{Done: func(string) (tea.Cmd, error) { return nil, nil }})
	s.press("tab up down")
	if s.Top() == nil {
		t.Error("keys without a thing to go to closed the line")
	}
}

// onThings is a line about an oil weighed before, one that was not, and a lye.
func onThings(t *testing.T) (s *stage, p *Prompt, kept *[]string) {
	t.Helper()
	kept = &[]string{}
	p = &Prompt{Title: "Weigh", Text: "Letters search.", Things: []Thing{
		{Name: "base lye", Says: " in °C"},
		{Name: "base olive oil", Says: " in g, measured 356 g", Had: true},
		{Name: "icing olive oil", Says: " in g"},
		{Name: "icing Grün", Also: "icing Gruen"},
	}}
	p.Done = func(typed string) (tea.Cmd, error) {
		*kept = append(*kept, p.Things[p.At].Name+" "+typed)
		return nil, nil
	}
	return onStage(t, 80, 24, p), p, kept
}

// Letters list the things that have them in their name, the first that was not weighed highlighted; arrows go round those, a number behind the letters is
// kept for the one highlighted, and letters alone choose it. What was weighed is marked.
func TestLettersFindWhatALineIsAbout(t *testing.T) {
	s, _, kept := onThings(t)
	s.shows("► ", "  ✓ base olive oil in g, measured 356 g", "    icing Grün", "Letters search.")
	s.press("o l i")
	s.shows("►   icing olive oil", "  ✓ base olive oil")
	s.hides("base lye", "icing Grün")
	s.press("down")
	s.shows("► ✓ base olive oil", "    icing olive oil", "oli")
	s.press("down space 3 0 , 5 space l o t space 7 enter")
	if len(*kept) != 1 || (*kept)[0] != "icing olive oil 30,5 lot 7" || s.Top() != nil {
		t.Fatalf("kept are %q", *kept)
	}
	s, _, kept = onThings(t)
	s.press("g r u e n enter")
	s.shows("icing Grün", "base lye")
	if s.press("8 enter"); len(*kept) != 1 || (*kept)[0] != "icing Grün 8" {
		t.Errorf("kept are %q", *kept)
	}
	s, p, again := onThings(t)
	kept = again
	s.press("x y 5 enter")
	s.shows("no match", "× nothing here is called xy5")
	s.press("backspace backspace backspace o i l space 4 tab")
	if s.Top() == nil || len(*kept) != 1 || (*kept)[0] != "icing olive oil 4" || p.At != 3 {
		t.Errorf("kept are %q, at %d", *kept, p.At)
	}
}

// In plain lines words find it too: those that one thing has are enough, those of several leave these to be told.
func TestWordsFindWhatALineIsAboutInLines(t *testing.T) {
	s, p, kept := onThings(t)
	refused := ""
	hear := func(text string) { _, _ = s.Hear(text, func(why string) { refused = why }) }
	hear("olive 30")
	if told := p.Tell(); !strings.Contains(refused, "2 are called olive") || len(told.Lines) != 3 || told.Lines[1].Lead != "2" || told.Lines[2].Text != "icing olive oil in g" {
		t.Errorf("%s: %+v", refused, told)
	}
	hear("gris 30")
	if !strings.Contains(refused, "nothing here is called gris") || len(*kept) != 0 {
		t.Errorf("%s, kept %q", refused, *kept)
	}
	if hear("ic olive 30,5"); len(*kept) != 1 || (*kept)[0] != "icing olive oil 30,5" || s.Top() != nil {
		t.Errorf("kept are %q", *kept)
	}
	s, p, kept = onThings(t)
	hear("base olive")
	if told := p.Tell(); told.Ask != "base olive oil in g, measured 356 g" {
		t.Errorf("%+v", told)
	}
	if hear(""); len(*kept) != 1 || (*kept)[0] != "base olive oil " {
		t.Errorf("kept are %q", *kept)
	}
	s, _, kept = onThings(t)
	if hear(`base olive ""`); len(*kept) != 1 || (*kept)[0] != "base olive oil " {
		t.Errorf("kept are %q", *kept)
	}
}

// A name that two batches have is nobody's where one of them was weighed: it may be weighed again, or the other for the first time. The one at hand is
// highlighted, nothing is kept before she has gone to the one she means or named its batch, and what she typed waits.
func TestANameThatTwoThingsHaveIsAskedAbout(t *testing.T) {
	open := func(had bool) (*stage, *[]string) {
		var kept []string
		p := &Prompt{Title: "Weigh", Things: []Thing{
			{Name: "base cocoa butter", Bare: "cocoa butter", Had: had},
			{Name: "base castor oil", Bare: "castor oil"},
			{Name: "icing cocoa butter", Bare: "cocoa butter"},
			{Name: "base cocoa powder", Bare: "cocoa powder"},
		}}
		p.Done = func(typed string) (tea.Cmd, error) {
			kept = append(kept, p.Things[p.At].Name+" "+typed)
			return nil, nil
		}
		return onStage(t, 80, 24, p), &kept
	}
	for typed, want := range map[string]string{
		"c o c o a space b space 2 2 enter enter":             "",
		"c o c o a space b space 2 2 enter down enter":        "icing cocoa butter 22",
		"c o c o a space b space 2 2 down up enter":           "base cocoa butter 22",
		"c o c o a space b space 2 2 enter tab tab tab enter": "base cocoa butter 22",
		"b a s e space b u t space 2 2 enter":                 "base cocoa butter 22",
		"i c space b u t space 2 2 enter":                     "icing cocoa butter 22",
		"p o w space 2 2 enter":                               "base cocoa powder 22",
		"c a s t space 2 2 tab esc":                           "base castor oil 22",
	} {
		s, kept := open(true)
		s.press(typed)
		if got := strings.Join(*kept, ", "); got != want {
			t.Errorf("%s: kept is %q, want %q", typed, got, want)
		}
		if want == "" {
			s.shows("► ✓ base cocoa butter", "× base cocoa butter ✓ or icing cocoa butter?")
		}
	}
	s, kept := open(false)
	if s.press("b u t space 2 2 enter"); len(*kept) != 1 || (*kept)[0] != "base cocoa butter 22" {
		t.Errorf("neither was weighed, and the one at hand is meant: %q", *kept)
	}
}
