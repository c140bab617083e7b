package batches

import (
	"errors"
	"strings"
	"testing"

	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// threePours is a board of three pours without a date, which stand in the order of their days.
func threePours(t testing.TB) season.Board {
	f := season.Facts{Today: on(t, "2026-12-20"), Designs: map[string]season.Design{"a": {Name: "Moss", Bars: 8, BarsKnown: true, CutDays: 1, Cure: season.Span{Early: 20, Middle: 25, Late: 30}}}}
	for _, d := range []string{"2026-12-26", "2026-12-27", "2027-01-02"} {
		at := on(t, d)
		f.File.Pours = append(f.File.Pours, season.Planned{Plan: "a", Day: &at})
	}
	return season.Of(f)
}

// nothing is an empty logbook.
func nothing() ([]life.Batch, error) { return nil, nil }

// Tab shows the board, which is worked out anew each time it comes into view; its rows are gone along by the keys of the list.
func TestTheBoardOfTheSeasonIsTheSecondPage(t *testing.T) {
	asked := 0
	s := opened(t, Options{Read: nothing, Season: func() (season.Board, error) { asked++; return threePours(t), nil }})
	if asked != 0 {
		t.Error("the season was worked out while nobody looks at it")
	}
	s.press("tab")
	if f := s.frame(); asked != 1 || !strings.Contains(f, "3 pours, 0 dates") || !strings.Contains(f, "planned for Sat 26 Dec, cut Sun 27 Dec, dry about Thu 21 Jan") {
		t.Errorf("asked %d times:\n%s", asked, f)
	}
	s.press("down down down")
	if f := s.frame(); !strings.Contains(f, "planned for Sat 2 Jan") || s.m.season.view.Row != 2 {
		t.Errorf("row %d:\n%s", s.m.season.view.Row, f)
	}
	before := s.m.season.view.From
	s.press("pgdown")
	if s.m.season.view.From != before+28 {
		t.Errorf("from %s", s.m.season.view.From)
	}
	s.press("home")
	if s.m.season.view.Row != 0 || s.m.season.view.From != before {
		t.Errorf("row %d from %s", s.m.season.view.Row, s.m.season.view.From)
	}
	s.press("tab tab")
	if asked != 2 {
		t.Errorf("asked %d times", asked)
	}
}

func TestASeasonThatCannotBeReadSaysWhy(t *testing.T) {
	s := opened(t, Options{Read: nothing, Season: func() (season.Board, error) {
		return season.Board{}, errors.New("season.toml:4:1: date[0].day = \"soon\": a day is wanted\n    to mend: write it without quotes")
	}})
	s.press("tab down end home")
	if f := s.frame(); !strings.Contains(f, "season.toml:4:1") || !strings.Contains(f, "to mend: write it without quotes") {
		t.Error(f)
	}
}
