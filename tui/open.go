package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
)

// loadedMsg brings a plan that was opened, and the revision of the plan on the bench when that was asked for.
type loadedMsg struct {
	doc planfile.Document
	err error
	rev int
}

// open lists the plans there are; an unsaved plan is a question first.
func (m *model) open() tea.Cmd {
	if m.session.Dirty() {
		m.unsaved("opening another plan", func(m *model) tea.Cmd { return m.list() })
		return nil
	}
	return m.list()
}

// openPlan opens what was picked from the list, or the file of a path that was typed.
func (m *model) openPlan(id string) tea.Cmd {
	if id == newPlanID {
		return m.newPlan()
	}
	if pour, ok := strings.CutPrefix(id, pourPrefix); ok {
		return m.openPour(pour)
	}
	name, ok := strings.CutPrefix(id, examplePrefix)
	if !ok {
		return m.load(expand(id))
	}
	for _, e := range m.examples() {
		if e.Name == name {
			drop := m.dropJournal()
			m.bring(e.Plan.Clone(), true, "", planfile.Stamp{})
			m.file.lent = true
			m.say("an example: saving asks for a name and a file of your own")
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
	if msg.doc.Plan.Template {
		m.dialogs.Open(&dialog.Question{Title: "A template", Text: msg.doc.Plan.Name + " is a template.", Answers: []dialog.Answer{
			{Text: "begin a new plan from it", Do: func() tea.Cmd { return m.beginFrom(msg.doc) }},
			{Text: "open the template itself", Do: func() tea.Cmd { return m.putDown(msg.doc) }},
			{Text: "cancel"},
		}})
		return nil
	}
	return m.putDown(msg.doc)
}

// beginFrom puts a new plan on the bench that a template begins.
func (m *model) beginFrom(doc planfile.Document) tea.Cmd {
	drop := m.dropJournal()
	m.bring(pour.FromTemplate(doc.Plan), false, "", planfile.Stamp{})
	m.file.lent, m.file.like = true, doc.Plan.Name
	m.say("a new plan from the template " + doc.Plan.Name + "; saving asks for its name")
	return drop
}

// toggleTemplate marks the plan as a template or takes the mark away.
func (m *model) toggleTemplate() {
	is := !m.session.Plan().Template
	if m.edit("template", pour.SetTemplate(is)) != nil {
		return
	}
	m.say(map[bool]string{true: "a template from now on: opened, it begins a new plan; save it", false: "no template any more"}[is])
}

// putDown puts an opened plan on the bench.
func (m *model) putDown(doc planfile.Document) tea.Cmd {
	drop := m.dropJournal()
	m.bring(doc.Plan, true, doc.Path, doc.Stamp)
	m.say("opened " + doc.Path)
	if doc.HandComments {
		m.say("opened " + doc.Path + "; its comments are not kept by saving, the file as it was is kept beside it")
	}
	return tea.Sequence(drop, m.enlist(), m.findLostWork())
}
