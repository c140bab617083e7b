package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/disk"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
)

// loadedMsg brings a plan that was opened, and the revision of the plan on the bench when that was asked for.
type loadedMsg struct {
	doc planfile.Document
	err error
	rev int
}

// listedMsg brings the plan files that can be opened.
type listedMsg struct{ paths []string }

// examplePrefix marks an example in the list of plans; no path starts with it.
const examplePrefix = "\x00"

// open lists the plans of the folder and the examples; an unsaved plan is a question first.
func (m *model) open() tea.Cmd {
	if m.session.Dirty() {
		m.unsaved("opening another plan", func(m *model) tea.Cmd { return m.list() })
		return nil
	}
	return m.list()
}

func (m *model) list() tea.Cmd {
	dir := filepath.Dir(m.file.path)
	return func() tea.Msg {
		paths, err := filepath.Glob(filepath.Join(dir, "*.toml"))
		if err != nil {
			return listedMsg{}
		}
		return listedMsg{paths}
	}
}

// listed opens the list of plans.
func (m *model) listed(msg listedMsg) {
	l := &dialog.List{Title: "Open a plan: pick one, or type a path", Free: "open the file of that path", Choose: m.openPlan}
	for _, p := range msg.paths {
		l.Items = append(l.Items, dialog.Item{ID: p, Name: filepath.Base(p), Aside: "file", Detail: []string{p}})
	}
	for _, e := range m.examples() {
		l.Items = append(l.Items, dialog.Item{ID: examplePrefix + e.Name, Name: e.Plan.Name, Aside: "example", Detail: []string{e.Plan.Name, "an example that comes with pourbench", e.Plan.Notes}})
	}
	m.dialogs.Open(l)
}

func (m *model) examples() []Example {
	if m.opt.Examples == nil {
		return nil
	}
	return m.opt.Examples()
}

func (m *model) openPlan(id string) tea.Cmd {
	name, ok := strings.CutPrefix(id, examplePrefix)
	if !ok {
		return m.load(expand(id))
	}
	for _, e := range m.examples() {
		if e.Name == name {
			drop := m.dropJournal()
			m.bring(e.Plan.Clone(), true, "", planfile.Stamp{})
			m.say("an example: saving asks for a file of your own")
			return tea.Sequence(drop, m.findLostWork())
		}
	}
	return nil
}

func (m *model) load(path string) tea.Cmd {
	shelf, rev := m.session.Shelf(), m.session.Revision()
	return func() tea.Msg {
		doc, err := planfile.Load(path, shelf)
		return loadedMsg{doc, err, rev}
	}
}

// loaded puts an opened plan on the bench, or shows everything that keeps it from being read.
func (m *model) loaded(msg loadedMsg) tea.Cmd {
	if msg.err != nil {
		m.dialogs.Open(dialog.NewPage("This plan cannot be opened", msg.err.Error()))
		return nil
	}
	if msg.rev != m.session.Revision() && m.session.Dirty() {
		m.refuse("the plan on the bench was changed while " + msg.doc.Path + " was read; open it again")
		return nil
	}
	drop := m.dropJournal()
	m.bring(msg.doc.Plan, true, msg.doc.Path, msg.doc.Stamp)
	m.say("opened " + msg.doc.Path)
	if msg.doc.HandComments {
		m.say("opened " + msg.doc.Path + "; its comments are not kept by saving, the file as it was is kept beside it")
	}
	return tea.Sequence(drop, m.enlist(), m.findLostWork())
}

// writtenMsg says what became of a file that was handed on.
type writtenMsg struct {
	path string
	err  error
}

// askChecklist asks for the file the checklist goes to.
func (m *model) askChecklist() {
	start := slug(m.session.Plan().Name) + "-checklist.txt"
	if m.file.path != "" {
		start = filepath.Join(filepath.Dir(m.file.path), start)
	}
	m.dialogs.Open(&dialog.Prompt{
		Title: "Write the checklist to", Text: "Plain text, 80 columns, for any printer.", Typed: entry.New(start),
		Done: func(typed string) (tea.Cmd, error) {
			path, err := fileName(typed, "")
			if err != nil {
				return nil, fmt.Errorf("%w: write the checklist", err)
			}
			return m.writeChecklist(path, false), nil
		},
	})
}

func (m *model) writeChecklist(path string, replace bool) tea.Cmd {
	sheet, shelf := *m.session.Sheet(), m.session.Shelf()
	if work := m.session.Untimed(); work != nil {
		sheet = work()
	}
	return func() tea.Msg {
		text := paper.Checklist(sheet, shelf)
		err := disk.OS().Save(path, disk.Bytes([]byte(text)), disk.Want{Mode: disk.Shared, New: !replace})
		return writtenMsg{path, err}
	}
}

func (m *model) written(msg writtenMsg) tea.Cmd {
	switch {
	case errors.Is(msg.err, fs.ErrExist):
		m.ask("There is a file of that name", msg.path+" is there already.",
			dialog.Answer{Text: "replace it", Do: func() tea.Cmd { return m.writeChecklist(msg.path, true) }},
			dialog.Answer{Text: "take another name", Do: func() tea.Cmd { m.askChecklist(); return nil }})
	case msg.err != nil:
		m.refuse(disk.Reason(msg.err).Error() + ": write the checklist to " + msg.path)
	default:
		m.say("checklist written to " + msg.path + ": print it and take it to the bench")
	}
	return nil
}
