package batches

import (
	"errors"
	"io/fs"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook/life"
)

func TestARecordIsReadAndWrittenToAFileThatIsNotThereYet(t *testing.T) {
	written, there := map[string]string{}, true
	s := opened(t, Options{
		Read:   func() ([]life.Batch, error) { return handful(t), nil },
		Record: func(id string) (string, error) { return "record of " + id + "\nrelease: ______", nil },
		Write: func(path, text string) error {
			if there {
				return fs.ErrExist
			}
			written[path] = text
			return nil
		},
	})
	s.press("home down r")
	s.shows("write this to a file", "release: ______")
	s.press("enter")
	s.shows("2026-11-07-alpine-meadow-record.txt")
	s.press("enter")
	s.says("× there is a file 2026-11-07-alpine-meadow-record.txt already")
	there = false
	s.press("r enter enter")
	if text := written["2026-11-07-alpine-meadow-record.txt"]; !strings.HasPrefix(text, "record of 2026-11-07") {
		t.Errorf("written is %v", written)
	}
	s.says("written to")
}

func TestAScentsPageIsReadAndOfSeveralAskedFor(t *testing.T) {
	ids := []string{"lime"}
	s := opened(t, Options{
		Read:   func() ([]life.Batch, error) { return handful(t), nil },
		Scents: func(string) []string { return ids },
		Scent:  func(id string) (string, string, error) { return "Scent " + id, "poured 7 times: quick", nil },
	})
	s.press("h")
	s.shows("Scent lime", "poured 7 times")
	s.press("esc")
	ids = []string{"lime", "hay"}
	s.press("h")
	s.shows("Which scent", "hay")
	s.press("down enter")
	s.shows("Scent hay")
	s.press("esc")
	ids = nil
	s.press("h")
	s.says("the batch has no scent")
}

func TestAPourIsPouredAgainOnTheBench(t *testing.T) {
	fail := errors.New("its plan cannot be used")
	s := opened(t, Options{
		Read:  func() ([]life.Batch, error) { return handful(t), nil },
		Again: func(id string) (pour.Plan, string, error) { return pour.Plan{Name: id}, "was 38 °C", fail },
	})
	s.press("a")
	s.says("× its plan cannot be used")
	fail = nil
	s.press("a")
	if p := s.m.Again(); !s.left || p == nil || p.Plan.Name != "2026-12-19-dusk" || p.Said != "was 38 °C" {
		t.Errorf("left %v with %+v", s.left, p)
	}
}
