package command

import (
	"bufio"
	"errors"
	"strings"
	"testing"

	"pourbench/pour/backup"
)

func TestEveryFileThatDiffersIsAskedAbout(t *testing.T) {
	for typed, want := range map[string]string{
		"y\nn\ny\n":      "replaced, kept, replaced",
		"maybe\nYes\n\n": "replaced, no answer, no answer",
		"n\na\n":         "kept, replaced, replaced",
		"y\nq\n":         "replaced, stopped, no answer",
		"":               "no answer, no answer, no answer",
	} {
		var said strings.Builder
		a := &asker{in: bufio.NewReader(strings.NewReader(typed)), out: &said}
		if err := a.first([]backup.Step{{State: backup.Other}}); err != nil {
			t.Errorf("with somebody to ask: %v", err)
		}
		var did []string
		for range 3 {
			switch err := a.leave("soap/\x1b[2Ja.toml differs"); {
			case err == nil:
				did = append(did, "replaced")
			case errors.Is(err, errKept):
				did = append(did, "kept")
			case strings.Contains(err.Error(), "no answer"):
				did = append(did, "no answer")
			default:
				did = append(did, "stopped")
			}
		}
		if got := strings.Join(did, ", "); got != want {
			t.Errorf("typed %q: %s, want %s", typed, got, want)
		}
		if !strings.Contains(said.String(), "soap/a.toml differs. Replace it?") {
			t.Errorf("it asked %q", said.String())
		}
	}
}
