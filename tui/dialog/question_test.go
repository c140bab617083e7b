package dialog

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
)

// asked is a question that keeps which of its answers was given.
func asked(given *string, answers ...Answer) *Question {
	q := &Question{Title: "In no file", Text: "The plan has changes that are in no file.", At: len(answers) - 1}
	for _, a := range answers {
		a.Do = func() tea.Cmd { *given = a.Text; return nil }
		q.Answers = append(q.Answers, a)
	}
	return q
}

func TestAnAnswerIsGivenByLetterArrowsAndMouse(t *testing.T) {
	for _, c := range []struct{ keys, want string }{
		{"enter", "cancel"},
		{"s", "save"},
		{"S", "save"},
		{"d", "discard"},
		{"left enter", "discard"},
		{"right enter", "save"},
		{"tab tab enter", "discard"},
		{"up up enter", "save"},
		{"esc", ""},
		{"left left left left enter", "discard"},
	} {
		var given string
		s := onStage(t, 80, 24, asked(&given, Answer{Text: "save"}, Answer{Text: "discard"}, Answer{Text: "cancel"}))
		s.press(c.keys)
		if given != c.want || s.Top() != nil {
			t.Errorf("%s: gave %q, want %q; still open: %v", c.keys, given, c.want, s.Top() != nil)
		}
	}
	for _, want := range []string{"save", "discard", "cancel"} {
		var given string
		s := onStage(t, 80, 24, asked(&given, Answer{Text: "save"}, Answer{Text: "discard"}, Answer{Text: "cancel"}))
		x, y := s.at(want)
		s.click(x, y+1)
		s.click(x-2, y) // between two answers
		if given != "" {
			t.Fatalf("a click beside %q gave %q", want, given)
		}
		s.click(x, y)
		if given != want {
			t.Errorf("a click on %q gave %q", want, given)
		}
	}
}

func TestAKeyThatAnswersNothingSaysSo(t *testing.T) {
	var given string
	s := onStage(t, 80, 24, asked(&given, Answer{Text: "save"}, Answer{Text: "cancel"}))
	s.press("z")
	if s.refused == "" || given != "" || s.Top() == nil {
		t.Errorf("z gave %q and said %q", given, s.refused)
	}
}

func TestEnterAnswersNothingWhileNoAnswerIsHighlighted(t *testing.T) {
	var given string
	q := asked(&given, Answer{Keys: "r", Text: "rices"}, Answer{Keys: "s", Text: "seizes"})
	q.At = -1
	s := onStage(t, 80, 24, q)
	s.hides("►")
	if s.press("enter space"); given != "" || s.refused == "" {
		t.Fatalf("Enter gave %q", given)
	}
	if s.press("up enter"); given != "seizes" {
		t.Errorf("up came in at %q, want the last answer", given)
	}
}

func TestAnswersWithLettersStandUnderEachOtherAndAreClickedWhole(t *testing.T) {
	var given string
	long := "Leave. Lye does not pause: the run goes on and can be taken up again where it was left, by its name in the logbook."
	s := onStage(t, 60, 24, asked(&given, Answer{Keys: "yq", Text: long}, Answer{Keys: "n", Text: "Stay."}))
	_, first := s.at("Leave.")
	_, last := s.at("Stay.")
	if last < first+2 {
		t.Fatalf("the long answer takes %d lines", last-first)
	}
	if x, _ := s.at("y "); x != 4 {
		t.Errorf("its letter stands in column %d", x)
	}
	s.click(20, last-1)
	if given != long {
		t.Errorf("a click on its last line gave %q", given)
	}
	s.Open(asked(&given, Answer{Keys: "yq", Text: long}, Answer{Keys: "n", Text: "Stay."}))
	given = ""
	if s.press("q"); given != long {
		t.Errorf("its second letter gave %q", given)
	}
}

func TestAnswersWithoutRoomInARowStandUnderEachOther(t *testing.T) {
	var given string
	texts := []string{"replace it", "save under another name", "open the changed file", "cancel"}
	var answers []Answer
	for _, text := range texts {
		answers = append(answers, Answer{Text: text})
	}
	wide, narrow := onStage(t, 110, 24, asked(&given, answers...)), onStage(t, 60, 24, asked(&given, answers...))
	_, top := wide.at(texts[0])
	for i, text := range texts {
		if _, y := wide.at(text); y != top {
			t.Errorf("%q stands in row %d, not %d", text, y, top)
		}
		x, y := narrow.at(text)
		if _, from := narrow.at(texts[0]); y != from+i {
			t.Errorf("%q stands in row %d, want %d", text, y, from+i)
		}
		if onStage(t, 60, 24, asked(&given, answers...)).click(x, y); given != text {
			t.Errorf("a click on %q gave %q", text, given)
		}
	}
}

func TestTheWheelGoesThroughAnswers(t *testing.T) {
	var given string
	s := onStage(t, 80, 24, asked(&given, Answer{Text: "save"}, Answer{Text: "discard"}, Answer{Text: "cancel"}))
	s.Wheel(tea.MouseWheelMsg{Button: tea.MouseWheelUp})
	s.Paste("save")
	if s.press("enter"); given != "discard" {
		t.Errorf("one notch up and Enter gave %q", given)
	}
}

func TestWhatAnAnswerOpensStaysOpen(t *testing.T) {
	s := onStage(t, 80, 24)
	next := &Page{Title: "next"}
	s.Open(&Question{Answers: []Answer{{Text: "go on", Do: func() tea.Cmd { s.Open(next); return nil }}}})
	if s.press("g"); s.Top() != Dialog(next) {
		t.Errorf("the dialog that the answer opened is not open: %v", s.Top())
	}
	if s.press("esc"); s.Top() != nil {
		t.Error("the question is still there below")
	}
}

func TestOnlyTheLeftButtonAnswersAndNothingOpenTakesNothing(t *testing.T) {
	var given string
	s := onStage(t, 80, 24, asked(&given, Answer{Text: "save"}, Answer{Text: "cancel"}))
	x, y := s.at("save")
	if s.Click(tea.MouseClickMsg{X: x, Y: y, Button: tea.MouseRight}, s.refuse); given != "" {
		t.Errorf("the right button gave %q", given)
	}
	s.Clear()
	s.click(x, y)
	s.Wheel(tea.MouseWheelMsg{Button: tea.MouseWheelDown})
	if rows := s.rows(); strings.TrimSpace(strings.Join(rows, "")) != "" {
		t.Errorf("a closed dialog is drawn: %q", rows)
	}
}
