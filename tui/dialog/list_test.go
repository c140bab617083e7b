package dialog

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/screen"
)

// oils is a list that keeps what was chosen of it.
func oils(chosen *string, n int) *List {
	l := &List{Title: "Pick an oil", Choose: func(id string) tea.Cmd { *chosen = id; return nil }}
	for i := range n {
		l.Items = append(l.Items, Item{ID: fmt.Sprintf("o%d", i), Name: fmt.Sprintf("oil %02d", i), Aside: "SAP 190", Detail: []string{fmt.Sprintf("all about %02d", i), "source: memory"}})
	}
	return l
}

func TestAListIsSearchedChosenFromAndLeft(t *testing.T) {
	var chosen string
	s := onStage(t, 110, 30, oils(&chosen, 40))
	s.shows("►", "oil 00", "all about 00", "SAP 190")
	s.press("down down up")
	s.shows("all about 01")
	s.press("pgdown pgup pgup")
	s.shows("all about 00")
	s.press("3 7")
	s.shows("oil 37", "all about 37")
	s.hides("oil 00")
	s.press("backspace")
	s.shows("oil 03", "oil 30")
	s.press("1")
	if s.press("enter"); chosen != "o31" || s.Top() != nil {
		t.Errorf("chose %q", chosen)
	}
	s.Open(oils(&chosen, 3))
	if s.press("esc"); s.Top() != nil || chosen != "o31" {
		t.Errorf("leaving the list chose %q", chosen)
	}
}

func TestWhatIsFoundInTheNameComesFirst(t *testing.T) {
	var chosen string
	l := oils(&chosen, 0)
	l.Items = []Item{{ID: "olive", Name: "olive oil", Detail: []string{"goes well with castor"}}, {ID: "castor", Name: "castor oil"}, {ID: "palm", Name: "palm oil"}}
	s := onStage(t, 110, 30, l)
	s.press("c a s t o r")
	s.hides("palm oil")
	if s.press("enter"); chosen != "castor" {
		t.Errorf("chose %q", chosen)
	}
}

func TestNothingFoundIsRefusedUnlessTheTextItselfWillDo(t *testing.T) {
	var chosen string
	s := onStage(t, 80, 24, oils(&chosen, 3))
	s.press("x y enter")
	if s.Top() == nil || !strings.Contains(s.refused, "nothing matches xy") {
		t.Errorf("said %q", s.refused)
	}
	s.shows("nothing matches")
	free := oils(&chosen, 3)
	free.Free = "open the file of that path"
	s = onStage(t, 80, 24, free)
	s.Paste("plans/\x1bnew.toml\r")
	s.shows("Enter: open the file of that", " path")
	if s.press("enter"); chosen != "plans/new.toml" {
		t.Errorf("chose %q", chosen)
	}
}

func TestAClickHighlightsAndASecondTakes(t *testing.T) {
	var chosen string
	s := onStage(t, 110, 30, oils(&chosen, 40))
	x, y := s.at("oil 05")
	s.click(x, y)
	s.shows("all about 05")
	if chosen != "" {
		t.Fatalf("one click chose %q", chosen)
	}
	s.click(s.at("search")) // on no entry
	if s.click(x, y); chosen != "o5" {
		t.Errorf("two clicks chose %q", chosen)
	}
	s.Open(oils(&chosen, 2))
	x, y = s.at("oil 01")
	s.click(x, y+3) // below the last entry
	if chosen != "o5" {
		t.Errorf("a click on nothing chose %q", chosen)
	}
}

func TestTheHighlightedEntryStaysInSight(t *testing.T) {
	var chosen string
	for _, size := range [][2]int{{60, 16}, {80, 24}, {120, 36}} {
		s := onStage(t, size[0], size[1], oils(&chosen, 60))
		for range 80 {
			s.press("down")
			at := s.Top().(*List).At
			s.shows(fmt.Sprintf("► oil %02d", at), fmt.Sprintf("all about %02d", at))
		}
		for range 40 {
			s.Wheel(tea.MouseWheelMsg{Button: tea.MouseWheelUp})
		}
		s.shows("► oil 00")
	}
}

func TestASwatchStandsBeforeTheName(t *testing.T) {
	var chosen string
	l := oils(&chosen, 1)
	bare := onStage(t, 80, 24, l)
	x, _ := bare.at("oil 00")
	l.Items[0].Swatches = []screen.Colour{screen.RGB(200, 40, 30)}
	if with, _ := bare.at("oil 00"); with != x+3 {
		t.Errorf("the name moved from column %d to %d", x, with)
	}
}
