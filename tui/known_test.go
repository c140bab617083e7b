package tui

import (
	"path/filepath"
	"slices"
	"testing"

	"pourbench/pour/planfile"
)

// A backup keeps the plans that were opened at the start or from the list, and those that were saved under a new name.
func TestTheBenchRemembersWhatItOpenedAndSaved(t *testing.T) {
	state, first, second := t.TempDir(), planFile(t), planFile(t)
	m := keeping(t, state, first)
	finish(m, m.load(second))
	finish(m, m.load(second))
	third := filepath.Join(filepath.Dir(second), "third.toml")
	finish(m, m.saveTo(third, planfile.SaveOptions{}, nil))
	known, err := planfile.Known(state)
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{first, second, third}; !slices.Equal(known, want) {
		t.Errorf("it remembers %q, want %q", known, want)
	}
}

func TestAnExampleIsNoFileToRemember(t *testing.T) {
	state := t.TempDir()
	keeping(t, state, "")
	if known, err := planfile.Known(state); err != nil || len(known) != 0 {
		t.Errorf("it remembers %q, %v", known, err)
	}
}
