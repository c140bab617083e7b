package command

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"testing"

	"pourbench/pour/backup"
)

func TestWhatIsAPlanIsNoFigure(t *testing.T) {
	for word, want := range map[string]bool{"-": true, "meadow.toml": true, "../a b.toml": true, "base.superfat_percent": false, "": false, "toml": false, "meadow.toml.x": false} {
		if isPlan(word) != want {
			t.Errorf("%q is a plan: %v", word, !want)
		}
	}
}

// Without anybody to ask, every file that differs is named before anything is written, up to twelve and then how many more.
func TestARestoreNobodyCanBeAskedAboutNamesWhatDiffers(t *testing.T) {
	steps := []backup.Step{{State: backup.Same, Path: "same.toml"}}
	for i := range 14 {
		steps = append(steps, backup.Step{State: backup.Other, Path: fmt.Sprintf("other-%02d.toml", i+1)})
	}
	err := (&asker{out: io.Discard}).first(steps)
	if err == nil {
		t.Fatal("it was allowed")
	}
	said := err.Error()
	for _, want := range []string{"14 files differ", "nothing was written", "--replace", "other-01.toml", "other-12.toml", "and 2 more"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in:\n%s", want, said)
		}
	}
	if strings.Contains(said, "same.toml") || strings.Contains(said, "other-13") {
		t.Errorf("too much is named:\n%s", said)
	}
	for name, a := range map[string]*asker{"with leave given": {replace: true}, "with somebody to ask": {in: bufio.NewReader(strings.NewReader(""))}} {
		if err := a.first(steps); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (&asker{}).first(steps[:1]); err != nil {
		t.Errorf("nothing differs: %v", err)
	}
}
