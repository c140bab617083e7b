package tui

import (
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
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
