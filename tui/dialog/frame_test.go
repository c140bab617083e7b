package dialog

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// shown is one dialog of every kind as its owners open it, with the keys that were pressed in it.
func shown() []struct {
	name   string
	dialog Dialog
	keys   string
} {
	nothing := func() tea.Cmd { return nil }
	var chosen string
	var said Status
	said.Say("saved alpine-meadow.toml")
	said.Refuse("no space left on device: save /home/maker/plans/alpine-meadow.toml: the plan on the bench is not saved, the file is as it was")
	return []struct {
		name   string
		dialog Dialog
		keys   string
	}{
		{"question", &Question{Title: "Not saved", Text: "Alpine Meadow has changes that are in no file. Before quitting:", Answers: []Answer{{Text: "save", Do: nothing}, {Text: "discard the changes", Do: nothing}, {Text: "cancel"}}, At: 2}, "left"},
		{"answers", &Question{Title: "Leave the screen?", Answers: []Answer{{Keys: "yq", Text: "Leave. Lye does not pause: the run goes on and can be taken up again with: pourbench run --resume 2026-12-05-alpine-meadow", Do: nothing}, {Keys: "n", Text: "Stay."}}}, ""},
		{"prompt", &Prompt{Title: "Save the plan as", Text: "A file name; the plan is written as TOML.", Typed: entry.New("meadow"), Done: func(string) (tea.Cmd, error) { return nil, fmt.Errorf("save the plan: type a file name") }}, "enter"},
		{"measure", &Prompt{Title: "As it really is", Things: []Thing{{Name: "base lye in °C, planned 40 °C"}, {Name: "base oils in °C, planned 38 °C"}}}, "tab 3 6 , 5"},
		{"pad", padOn("some words\ntset\nand a line that is far too long to stand in the room there is for what is typed", nil), "up up"},
		{"list", oils(&chosen, 40), "1 down down"},
		{"help", NewHelp([]keys.Mode{keys.Line, keys.Page, keys.Asking}, Actions{Keys: keys.BuiltIn(), Own: keys.Bench}, look.New(true)), "pgdown"},
		{"messages", said.Page(look.New(true)), ""},
	}
}

func TestFramesAtTheTwoSizesEveryTerminalHas(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		for _, d := range shown() {
			t.Run(fmt.Sprintf("%s_%dx%d", d.name, size[0], size[1]), func(t *testing.T) {
				s := onStage(t, size[0], size[1], d.dialog)
				s.press(d.keys)
				rows := s.rows()
				for i := range rows {
					rows[i] = strings.TrimRight(rows[i], " ")
				}
				golden.RequireEqual(t, []byte(strings.Join(rows, "\n")+"\n"))
			})
		}
	}
}
