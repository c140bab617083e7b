package dialog

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// numbered is a page of so many lines.
func numbered(n int) *Page {
	var text strings.Builder
	for i := range n {
		fmt.Fprintf(&text, "line %03d\n", i+1)
	}
	return NewPage("A page", text.String())
}

func TestAPageScrollsWithinItsLines(t *testing.T) {
	s := onStage(t, 80, 24, numbered(100)) // 24 rows less two feet, the border and the search leave 19 lines
	s.shows("A page", "line 001", "line 019", "↓ more")
	s.hides("line 020")
	s.press("down down")
	s.shows("line 003", "line 021")
	s.hides("line 002")
	s.press("up up up")
	s.shows("line 001")
	s.press("pgdown space")
	s.shows("line 039")
	s.hides("line 038")
	s.press("pgup")
	s.shows("line 020")
	s.press("pgdown pgdown pgdown pgdown pgdown pgdown pgdown")
	s.shows("line 082", "line 100")
	s.hides("line 081", "↓ more")
	s.Wheel(tea.MouseWheelMsg{Button: tea.MouseWheelUp})
	s.shows("line 079")
	s.hides("line 078")
	for range 9 {
		s.Wheel(tea.MouseWheelMsg{Button: tea.MouseWheelDown})
	}
	s.shows("line 082")
	s.press("down up")
	s.shows("line 081")
	s.press("enter")
	if s.Top() != nil {
		t.Error("Enter did not close the page")
	}
}

func TestTypingSearchesAPageAndTakingLettersAwayFindsAgain(t *testing.T) {
	p := &Page{Title: "Keys", LeadW: 8, Lines: []Line{{Lead: "u", Text: "undo the last change"}, {Lead: "q", Text: "quit the bench"}, {Lead: "Space", Text: "finish the step"}}}
	s := onStage(t, 80, 24, p)
	s.press("t h e space L")
	s.shows("undo the last")
	s.hides("quit the bench", "finish")
	s.press("backspace backspace backspace backspace backspace q")
	s.shows("quit the bench")
	s.hides("undo")
	s.press("x")
	s.shows("nothing matches")
	s.press("backspace backspace")
	s.shows("undo", "quit", "finish")
	s.Clear()
	s.Open(numbered(100))
	s.press("pgdown pgdown l")
	s.shows("line 001")
	s.Clear()
	s.Open(p)
	s.Paste("FINISH\x1b\r\nTHE\u202e")
	s.shows("finish the step", "search FINISH THE")
}

func TestLinesAreWrappedUnderTheirText(t *testing.T) {
	p := &Page{LeadW: 6, Lines: []Line{{Lead: "do", Text: strings.Repeat("weigh it again ", 12)}, {Lead: "a long lead", Text: "beside"}, {Lead: "alone"}}}
	s := onStage(t, 50, 24, p)
	x, y := s.at("weigh")
	rows := s.rows()
	if lead, _ := s.at("do "); x != lead+6 {
		t.Errorf("the text stands %d cells right of its lead", x-lead)
	}
	for i := 1; i < 4; i++ {
		if got := strings.TrimLeft(rows[y+i], " │"); !strings.HasPrefix(rows[y+i][:strings.Index(rows[y+i], got)], " │       ") {
			t.Errorf("line %d is not under the text: %q", i, rows[y+i])
		}
	}
	s.shows("a long lead beside", "alone")
}

// Words in front that are longer than their room leave the text whole: it begins below them where it does not fit beside them.
func TestLongWordsInFrontCutNoText(t *testing.T) {
	lead := "a lead of thirty and more cells"
	s := onStage(t, 80, 24, &Page{Title: "A page", LeadW: 20, Lines: []Line{
		{Lead: lead, Text: "short"},
		{Lead: lead, Text: "one two three four five six seven eight nine ten eleven end"},
	}})
	s.shows(lead+" short", lead+"  ", " one two three", "eleven end")
}

func TestHelpSaysWhatEachKeyDoesAndWhyItCannot(t *testing.T) {
	p := NewHelp(keys.OfPour(), Actions{Keys: keys.BuiltIn(), Own: keys.Pouring, WhyNot: func(b keys.Binding, _ int) string {
		if b.ID == keys.Discount {
			return "the clock has not jumped"
		}
		return ""
	}}, look.New(true))
	s := onStage(t, 120, 200, p)
	for _, b := range keys.BuiltIn().All() {
		switch b.Mode {
		case keys.Pouring, keys.Line, keys.Page, keys.Asking:
			s.shows(b.Help[:min(len(b.Help), 40)])
		case keys.Bench, keys.Typing:
			s.hides("│   " + b.Shown() + "  " + b.Help)
		}
	}
	_, y := s.at("not count the time")
	if why, at := s.at("not now: the clock has not jumped"); at != y+1 || why == 0 {
		t.Errorf("the reason stands in row %d, its key in row %d", at, y)
	}
}

// Lines of one group are found together; others stand by themselves.
func TestAGroupOfLinesIsFoundTogether(t *testing.T) {
	p := &Page{Lines: []Line{{Text: "lye is strong", Group: 1}, {Text: "lower it", Group: 1}, {Text: "bars are thin", Group: 2}, {Text: "cut thicker", Group: 2}, {Text: "the end"}}}
	for find, want := range map[string]int{"": 5, "strong": 2, "lower": 2, "thicker": 2, "the end": 1, "l": 2, "nothing": 0} {
		if got := len(p.broken(60, find)); got != want {
			t.Errorf("%q finds %d lines, want %d", find, got, want)
		}
	}
}

// A line that fits stands as it was written, with the room between its columns; one that does not is broken at its words.
func TestALineThatFitsKeepsItsColumns(t *testing.T) {
	s := onStage(t, 80, 24, NewPage("A page", "first\n  week 0      ###      3.0\n"+strings.Repeat("word   ", 20)))
	s.shows("  week 0      ###      3.0", "word word word")
}
