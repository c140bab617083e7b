package lines

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"pourbench/tui/dialog"
)

func TestParagraphsAreBrokenAtBlanksAndPathsNever(t *testing.T) {
	var b bytes.Buffer
	p := NewPaper(&b)
	path := "/home/" + strings.Repeat("very-", 30) + "long.toml"
	p.Say("saved " + path + " and " + strings.Repeat("kept ", 30))
	p.Say("")
	for i, l := range strings.Split(strings.TrimSpace(b.String()), "\n") {
		if len(l) > wide && !strings.Contains(l, path) || i > 0 && !strings.HasPrefix(l, "  ") {
			t.Errorf("line %d is %q", i, l)
		}
	}
	if !strings.Contains(b.String(), path) {
		t.Errorf("the path is broken: %s", b.String())
	}
}

func TestWhatStandsBeforeALineOfADialogIsSaidInWords(t *testing.T) {
	var b bytes.Buffer
	p := NewPaper(&b)
	p.Tell(dialog.Told{Title: "To know", Lines: []dialog.Line{
		{}, {Lead: "! caution", Text: "hot"}, {Lead: "  do", Text: "wait"}, {}, {}, {Lead: "×", Text: "not so"}, {Lead: "·", Text: "a thing"}, {Lead: "2", Text: "leave"}, {Lead: "=", Text: "12 °C"}, {Lead: "base"},
	}})
	if want := "To know\ncaution: hot\ndo: wait\n\nNo: not so\na thing\n2 leave\n= 12 C\nbase\n"; b.String() != want {
		t.Errorf("told is\n%s", b.String())
	}
}

// full is paper that has no room left.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestPaperThatIsFullSaysSo(t *testing.T) {
	p := NewPaper(full{})
	if p.Say("x"); p.Err() == nil {
		t.Error("nothing was written, and no word of it")
	}
}
