package tui

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/paper"
	"pourbench/pour/ruler"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
)

// handedPaper is one of the papers a pour is made from.
type handedPaper struct {
	name  string // in a sentence
	file  string // at the end of its file's name
	ends  string // what a name without an ending is given
	about string // what kind of file it is
	label string // in the list to choose from; its first letter chooses it
	print string // how it is printed
	write func(s pour.Sheet, shelf pour.Shelf, path string) (func(io.Writer) error, error)
}

const pages = "Text in pages; .pdf makes a PDF."

// texts writes a paper that is text.
func texts(write func(pour.Sheet, pour.Shelf) string) func(pour.Sheet, pour.Shelf, string) (func(io.Writer) error, error) {
	return func(s pour.Sheet, shelf pour.Shelf, path string) (func(io.Writer) error, error) {
		return paper.For(path, s.Plan.Name, write(s, shelf), s.Plan.Show)
	}
}

// printsIt is how a file of the paper is printed: how large plain text comes out has to be told, a PDF knows it.
func (p *handedPaper) printsIt(path string) string {
	if p.ends == "" && strings.EqualFold(filepath.Ext(path), ".pdf") {
		return "lp"
	}
	return p.print
}

// papers lists them, the one for the bench first.
func papers() []handedPaper {
	return []handedPaper{
		{
			"bench paper", "bench.txt", "", pages, "bench paper, two pages", "lp -o cpi=12 -o lpi=7",
			texts(func(s pour.Sheet, shelf pour.Shelf) string { return paper.Bench(s, shelf, false) }),
		},
		{
			"large bench paper", "bench-large.txt", "", pages, "large type, to read from the table", "lp -o cpi=6 -o lpi=3.5",
			texts(func(s pour.Sheet, shelf pour.Shelf) string { return paper.Bench(s, shelf, true) }),
		},
		{"checklist", "checklist.txt", "", pages, "full checklist, with everything", "lp -o cpi=12 -o lpi=7", texts(paper.Checklist)},
		{
			"ruler", "ruler.pdf", ".pdf", "To lay along the mould, at true scale: measure its bar of 100 mm. A name that ends in .svg draws it in one piece.",
			"ruler of cuts and embeds, to lay along the mould", "lp -o print-scaling=none",
			func(s pour.Sheet, _ pour.Shelf, path string) (func(io.Writer) error, error) {
				r, err := ruler.Of(s)
				if err != nil {
					return nil, err
				}
				on, err := r.PaperOf("")
				if err != nil {
					return nil, err
				}
				return r.For(path, on)
			},
		},
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
	start := slug(m.session.Plan().Name) + "-" + p.file
	if m.file.path != "" {
		start = filepath.Join(filepath.Dir(m.file.path), start)
	}
	m.dialogs.Open(&dialog.Prompt{
		Title: "Write the " + p.name + " to", Text: p.about + " Print it with " + p.print + ".", Typed: entry.New(start),
		Done: func(typed string) (tea.Cmd, error) {
			path, err := fileName(typed, p.ends)
			if err != nil {
				return nil, fmt.Errorf("%w: write the %s", err, p.name)
			}
			if strings.EqualFold(filepath.Ext(path), planEnding) {
				return nil, fmt.Errorf("write the %s to %s: names in %s are plans; give it .txt or .pdf", p.name, path, planEnding)
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
		write, err := p.write(sheet, shelf, path)
		if err != nil {
			return writtenMsg{p, path, err}
		}
		return writtenMsg{p, path, disk.OS().Save(path, write, disk.Want{Mode: disk.Shared, New: !replace})}
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
		m.say(msg.paper.name + " written to " + msg.path + ": " + msg.paper.printsIt(msg.path) + " prints it")
	}
	return nil
}
