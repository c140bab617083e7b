package dialog

import (
	"errors"
	"fmt"
	"image"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
)

// sale is a form that remembers what it was kept with, and refuses a count that is none.
func sale(kept *map[string]string) *Form {
	return NewForm(Form{
		Title: "Sold", Text: "bars that went",
		Fields: []Field{
			{Key: "count", Label: "bars", Hint: "how many", Need: true},
			{Key: "at", Label: "where", Words: []string{"market", "shop"}, Start: "market"},
			{Key: "price", Label: "price"},
			{Key: "day", Label: "day", Start: "2026-12-20"},
		},
		About: func(key, text string) string { return map[string]string{"day2026-12-20": "today"}[key+text] },
		Done: func(texts map[string]string) (tea.Cmd, error) {
			if strings.Trim(texts["count"], "0123456789") != "" {
				return nil, fmt.Errorf("sell: %w", WrongFieldError{"count", errors.New("no number")})
			}
			*kept = texts
			return nil, nil
		},
	})
}

func TestAFormIsFilledFromOneEmptyLineToTheNextAndThenKept(t *testing.T) {
	var kept map[string]string
	s := onStage(t, 80, 24, sale(&kept))
	s.shows("Sold", "bars that went", "► bars", "*", "how many", "market", "today")
	s.press("enter") // past what is needed, which is said at the end
	s.shows("► price")
	s.press("enter")
	s.shows("► bars", "× bars: this is missing")
	s.press("3 enter")
	s.hides("missing")
	s.press("7 enter")
	if want := map[string]string{"count": "3", "at": "market", "price": "7", "day": "2026-12-20"}; fmt.Sprint(kept) != fmt.Sprint(want) || s.Top() != nil {
		t.Errorf("kept is %v", kept)
	}
}

func TestWhatStandsInALineIsTypedOverAndEditedOnceTouched(t *testing.T) {
	var kept map[string]string
	s := onStage(t, 80, 24, sale(&kept))
	s.press("2 up") // round to the day
	s.shows("► day")
	s.press("1")
	s.hides("2026-12-20")
	s.press("up up")
	s.shows("► where", "usual: market, shop")
	s.press("space")
	s.shows("shop")
	s.press("pgup")
	s.shows("where   market")
	s.press("space space pgdown x y")
	s.shows("where   xy")
	s.press("space z") // behind a word of one's own a blank is a blank
	s.shows("where   xy z")
	s.press("backspace backspace backspace backspace space")
	s.shows("where   market")
	s.Paste(" fair\n")
	s.shows("where   fair")
}

func TestWhatIsWrongIsGoneToAndSaid(t *testing.T) {
	var kept map[string]string
	f := sale(&kept)
	s := onStage(t, 80, 24, f)
	s.press("x tab tab")
	s.take(0, f.Act(keys.KeepAll, s.Frame), func(string) {})
	s.shows("► bars", "× sell: no number", "x")
	if kept != nil {
		t.Error("it was kept")
	}
	s.press("backspace")
	s.hides("no number")
	f.Refuse("the disk is full")
	s.shows("× the disk is full")
}

func TestAFormSaysWhyAKeyDoesNothingAndKeepsWhatWasTyped(t *testing.T) {
	var kept map[string]string
	f := sale(&kept)
	frame := Frame{W: 80, H: 24, Keys: keys.BuiltIn()}
	if r := f.Press(tea.KeyPressMsg{Code: tea.KeyF9}, frame); !strings.Contains(r.Refused, "a form is being filled") {
		t.Errorf("F9 says %q", r.Refused)
	}
	if r := f.Act(keys.Flip, frame); r.Refused == "" {
		t.Error("there are no words to switch, and nothing is said")
	}
	if r := f.Away(frame); !r.Close {
		t.Error("a click beside an untouched form leaves it open")
	}
	f.Press(key("3"), frame)
	if r := f.Away(frame); r.Close || r.Refused == "" {
		t.Error("a click beside it throws away what was typed")
	}
	if r := f.Act(keys.Close, frame); !r.Close {
		t.Error("Esc does not leave it")
	}
}

func TestAFormFitsEveryScreenAndItsLinesAreClicked(t *testing.T) {
	var kept map[string]string
	f := sale(&kept)
	for i := range 30 {
		f.Fields = append(f.Fields, Field{Key: fmt.Sprint(i), Label: fmt.Sprintf("line %d", i)})
	}
	f = NewForm(*f)
	for w := 10; w < 120; w += 13 {
		for h := 6; h < 50; h += 5 {
			s := onStage(t, w, h, f)
			s.press("up") // the last one
			if b := f.Box(s.Frame); b.Max.X > w || b.Max.Y > h-feet {
				t.Errorf("at %d × %d it stands at %v", w, h, b)
			}
			if w > 40 && h > 12 {
				s.shows("► line 29")
			}
			s.press("down")
		}
	}
	s := onStage(t, 80, 40, f)
	in, p := inside(f.Box(s.Frame)), f.parts(s.Frame)
	f.Click(image.Pt(in.Min.X+3, in.Min.Y+len(p.above)+3), s.Frame)
	if f.at != 3 {
		t.Errorf("a click on the fourth line goes to %d", f.at)
	}
	f.Wheel(-1, s.Frame)
	if f.at != 2 {
		t.Errorf("the wheel goes to %d", f.at)
	}
}

func TestAFormIsToldAndAnsweredInLines(t *testing.T) {
	var kept map[string]string
	f := sale(&kept)
	told := f.Tell()
	if !strings.HasPrefix(told.Ask, "bars (or NUMBER: TEXT") || len(told.Lines) != 6 || told.Lines[1].Text != "bars: nothing yet, it is needed" {
		t.Errorf("it is told as %+v", told)
	}
	if r := f.Hear(""); r.Close || r.Refused != "bars: this is missing" {
		t.Errorf("kept without its bars: %+v", r)
	}
	if r := f.Hear("3"); r.Told == nil || r.Told.Lines[0].Text != "bars: 3" {
		t.Errorf("3 is answered %+v", r)
	}
	f.Hear("2: fair")
	f.Hear("Day: 2026-12-19")
	f.Hear("1: x")
	if r := f.Hear(""); r.Refused != "sell: no number" {
		t.Errorf("refused: %+v", r)
	}
	f.Hear(`where: ""`)
	f.Hear("bars: 4")
	r := f.Hear("")
	if !r.Close {
		t.Fatalf("Enter keeps nothing: %+v", r)
	}
	if want := map[string]string{"count": "4", "at": "", "price": "", "day": "2026-12-19"}; fmt.Sprint(kept) != fmt.Sprint(want) {
		t.Errorf("kept is %v", kept)
	}
}
