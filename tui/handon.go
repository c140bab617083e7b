package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/paper"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
)

// handedPaper is one of the papers a pour is made from.
type handedPaper struct {
	name  string // in a sentence
	file  string // at the end of its file's name
	label string // in the list to choose from; its first letter chooses it
	print string // how it is printed
	write func(pour.Sheet, pour.Shelf) string
}

// papers lists them, the one for the bench first.
func papers() []handedPaper {
	return []handedPaper{
		{
			"bench paper", "bench", "bench paper, two pages", "lp -o cpi=12 -o lpi=7",
			func(s pour.Sheet, shelf pour.Shelf) string { return paper.Bench(s, shelf, false) },
		},
		{
			"large bench paper", "bench-large", "large type, to read from the table", "lp -o cpi=6 -o lpi=3.5",
			func(s pour.Sheet, shelf pour.Shelf) string { return paper.Bench(s, shelf, true) },
		},
		{"checklist", "checklist", "full checklist, with everything", "lp -o cpi=12 -o lpi=7", paper.Checklist},
	}
}

// writtenMsg says what became of a file that was handed on.
type writtenMsg struct {
	paper handedPaper
	path  string
	err   error
}

// askPaper asks which paper is to be written; Enter takes the first.
func (m *model) askPaper() {
	var answers []dialog.Answer
	for _, p := range papers() {
		answers = append(answers, dialog.Answer{Text: p.label, Keys: p.label[:1], Do: func() tea.Cmd { m.askChecklist(p); return nil }})
	}
	m.dialogs.Open(&dialog.Question{Title: "Which paper", Answers: answers})
}

// askChecklist asks for the file a paper goes to.
func (m *model) askChecklist(p handedPaper) {
	start := slug(m.session.Plan().Name) + "-" + p.file + ".txt"
	if m.file.path != "" {
		start = filepath.Join(filepath.Dir(m.file.path), start)
	}
	m.dialogs.Open(&dialog.Prompt{
		Title: "Write the " + p.name + " to", Text: "Plain text in pages. Print it with " + p.print + ".", Typed: entry.New(start),
		Done: func(typed string) (tea.Cmd, error) {
			path, err := fileName(typed, "")
			if err != nil {
				return nil, fmt.Errorf("%w: write the %s", err, p.name)
			}
			return m.writeChecklist(p, path, false), nil
		},
	})
}

func (m *model) writeChecklist(p handedPaper, path string, replace bool) tea.Cmd {
	sheet, shelf := *m.session.Sheet(), m.session.Shelf()
	if work := m.session.Untimed(); work != nil {
		sheet = work()
	}
	return func() tea.Msg {
		err := disk.OS().Save(path, disk.Bytes([]byte(p.write(sheet, shelf))), disk.Want{Mode: disk.Shared, New: !replace})
		return writtenMsg{p, path, err}
	}
}

func (m *model) written(msg writtenMsg) tea.Cmd {
	switch {
	case errors.Is(msg.err, fs.ErrExist):
		m.ask("There is a file of that name", msg.path+" is there already.",
			dialog.Answer{Text: "replace it", Do: func() tea.Cmd { return m.writeChecklist(msg.paper, msg.path, true) }},
			dialog.Answer{Text: "take another name", Do: func() tea.Cmd { m.askChecklist(msg.paper); return nil }})
	case msg.err != nil:
		m.refuse(disk.Reason(msg.err).Error() + ": write the " + msg.paper.name + " to " + msg.path)
	default:
		m.say(msg.paper.name + " written to " + msg.path + ": " + msg.paper.print + " prints it")
	}
	return nil
}
