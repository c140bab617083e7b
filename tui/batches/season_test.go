package batches

import (
	"errors"
	"testing"

	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
	"pourbench/tui/keys"
)

func TestTheSeasonIsASecondPage(t *testing.T) {
	var fail error
	s := opened(t, Options{
		Read: func() ([]life.Batch, error) { return handful(t), nil },
		Season: func() (season.Board, string, error) {
			return season.Board{Rows: make([]season.Row, 9)}, "nine pours", fail
		},
	})
	s.press("tab")
	s.hides("Alpine Meadow")
	if !s.m.season.read {
		t.Fatal("the board was not worked out")
	}
	s.press("down down end down")
	if s.m.season.row != 8 {
		t.Errorf("the last of 9 rows is %d", s.m.season.row)
	}
	s.press("pgdown")
	if s.m.season.weeks != 1 {
		t.Errorf("the board begins %d weeks on", s.m.season.weeks)
	}
	s.press("home enter")
	s.says("the board of the season is in view")
	if s.m.season.row != 0 || s.m.season.weeks != 0 {
		t.Error("Home does not go to the first pour and week")
	}
	s.press("esc")
	s.shows("Alpine Meadow")
	fail = errors.New("season.toml:3: no day")
	s.press("tab")
	s.says("× season.toml:3: no day")
	for range 3 {
		s.press("tab")
	}
	if b, _ := keys.BuiltIn().Find(keys.Batching, keys.Board); s.m.whyNot(b, 0) != "" {
		t.Error("the board cannot be gone to")
	}
}
