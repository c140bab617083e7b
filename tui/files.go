package tui

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
)

// planEnding is what the names of plans end in.
const planEnding = ".toml"

// savedMsg says what became of a save; then is what was to follow it.
type savedMsg struct {
	plan pour.Plan
	path string
	out  planfile.Saved
	err  error
	then func(m *model) tea.Cmd

	opened int // which of the plans that were put on the bench it is
}

// keep remembers where the plan on the bench is kept.
func (m *model) keep(path string, stamp planfile.Stamp) { m.file.path, m.file.stamp = path, stamp }

// bring puts another plan on the bench.
func (m *model) bring(p pour.Plan, isSaved bool, path string, stamp planfile.Stamp) {
	m.session.Replace(p, isSaved)
	m.keep(path, stamp)
	m.file.opened++
	m.file.lent, m.file.like = false, ""
}

// save saves the plan and goes on with then, which may be nil. A plan without a file asks for one.
func (m *model) save(then func(*model) tea.Cmd) tea.Cmd {
	switch {
	case m.file.path == "" && m.file.lent:
		m.askSaveAs(then)
		return nil
	case m.file.path == "": // it has a name of its own
		m.askFile(m.session.Plan().Name, then)
		return nil
	}
	return m.saveTo(m.file.path, planfile.SaveOptions{Since: m.file.stamp}, then)
}

func (m *model) saveTo(path string, o planfile.SaveOptions, then func(*model) tea.Cmd) tea.Cmd {
	if m.file.saving {
		m.refuse("the plan is still being saved; wait a moment")
		return nil
	}
	m.file.saving = true
	plan, opened := m.session.Plan().Clone(), m.file.opened
	return func() tea.Msg {
		out, err := planfile.Save(path, plan, o)
		return savedMsg{plan, path, out, err, then, opened}
	}
}

// saved takes the outcome of a save; a file that is there or has changed is a question, any other failure a reason.
func (m *model) saved(msg savedMsg) tea.Cmd {
	m.file.saving = false
	force := dialog.Answer{Text: "replace it", Do: func() tea.Cmd { return m.saveTo(msg.path, planfile.SaveOptions{Force: true}, msg.then) }}
	other := dialog.Answer{Text: "save under another name", Do: func() tea.Cmd { m.askSaveAs(msg.then); return nil }}
	switch {
	case msg.opened != m.file.opened: // another plan is on the bench by now
		m.say("saved " + msg.path)
		if msg.err != nil {
			m.refuse(msg.err.Error())
		}
	case errors.Is(msg.err, planfile.ErrExists):
		m.ask("There is a file of that name", msg.path+" is there already. Replacing it keeps that one beside it.", force, other)
	case errors.Is(msg.err, planfile.ErrChanged):
		m.ask("The file has changed", msg.path+" was changed by something else since it was read here. Replacing it keeps that copy beside it.",
			force, other, dialog.Answer{Text: "open the changed file", Do: func() tea.Cmd { return m.load(msg.path) }})
	case msg.err != nil:
		m.refuse(msg.err.Error())
	default:
		return m.savedWell(msg)
	}
	return nil
}

func (m *model) savedWell(msg savedMsg) tea.Cmd {
	text := "saved " + msg.path
	if msg.out.Kept != "" {
		text += "; the file as it was is kept as " + filepath.Base(msg.out.Kept)
	}
	m.say(text)
	m.keep(msg.path, msg.out.Stamp)
	m.file.lent, m.file.like = false, ""
	m.session.Saved(msg.plan)
	kept := tea.Sequence(m.writeJournal(), m.enlist())
	switch {
	case msg.then == nil:
		return kept
	case m.session.Dirty(): // edited while the file was written: that is in no file yet
		m.status.Warn(text + "; what was changed meanwhile is not saved yet")
		return kept
	}
	return tea.Sequence(kept, msg.then(m))
}

// askSaveAs asks for the plan's name, and then for its file, which is named after it.
func (m *model) askSaveAs(then func(*model) tea.Cmd) {
	name := m.session.Plan().Name
	if name == m.file.like { // the template keeps its own
		name += " 2"
	}
	m.dialogs.Open(&dialog.Prompt{
		Title: "What is the plan called?", Text: "File and papers are named after it.", Typed: entry.Over(name),
		Done: func(typed string) (tea.Cmd, error) {
			if _, err := pour.Apply(m.session.Plan(), m.session.Shelf(), pour.SetName(typed)); err != nil {
				return nil, err
			}
			m.askFile(typed, then)
			return nil, nil
		},
	})
}

// askFile asks for the file of a plan, and saves it there under a name.
func (m *model) askFile(name string, then func(*model) tea.Cmd) {
	start := m.file.path
	if start == "" || name != m.session.Plan().Name {
		start = filepath.Join(filepath.Dir(m.file.path), slug(name)+planEnding)
	}
	m.dialogs.Open(&dialog.Prompt{
		Title: "Save " + name + " as", Text: "A file name; the plan is written as TOML and belongs to pourbench.",
		Typed: entry.New(start),
		Done: func(typed string) (tea.Cmd, error) {
			path, err := fileName(typed, planEnding)
			if err != nil {
				return nil, fmt.Errorf("%w: save the plan", err)
			}
			if err := m.session.Apply("name", pour.SetName(name)); err != nil {
				return nil, err
			}
			since := planfile.Stamp{}
			if path == m.file.path {
				since = m.file.stamp
			}
			return m.saveTo(path, planfile.SaveOptions{Since: since}, then), nil
		},
	})
}

// fileName is the name of a file as it was typed, with an ending where it has none.
func fileName(typed, ending string) (string, error) {
	switch {
	case typed == "":
		return "", errors.New("type the name of a file")
	case os.IsPathSeparator(typed[len(typed)-1]):
		return "", fmt.Errorf("%s is the name of a folder; add the name of a file", typed)
	case filepath.Ext(typed) == "":
		typed += ending
	}
	return expand(typed), nil
}

// slug is a file name made of a plan's name.
func slug(name string) string {
	text := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, name)
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == '-' })
	if len(parts) == 0 {
		return "plan"
	}
	return strings.Join(parts, "-")
}

// expand reads a leading ~ as the home folder.
func expand(path string) string {
	if rest, ok := strings.CutPrefix(path, "~/"); ok {
		if home, err := os.UserHomeDir(); err == nil {
			return filepath.Join(home, rest)
		}
	}
	return path
}

// quit ends the workbench; an unsaved plan is a question first.
func (m *model) quit() tea.Cmd {
	if !m.session.Dirty() {
		return m.leave(m)
	}
	m.unsaved("quitting", m.leave)
	return nil
}

// leave ends the workbench for good: the journal goes first, nothing of it is wanted any more.
func (m *model) leave(*model) tea.Cmd {
	m.quitting = true
	return tea.Sequence(m.dropJournal(), tea.Quit)
}

// unsaved asks what to do with a plan that is not saved before something that loses it.
func (m *model) unsaved(before string, then func(*model) tea.Cmd) {
	m.ask("Not saved", m.session.Plan().Name+" has changes that are in no file. Before "+before+":",
		dialog.Answer{Text: "save", Do: func() tea.Cmd { return m.save(then) }},
		dialog.Answer{Text: "discard the changes", Do: func() tea.Cmd { return then(m) }})
}

// changedMsg says that the file of the plan was changed by something else.
type changedMsg struct{ path string }

// checkFile looks whether something else has changed the file, when the terminal comes back into focus.
func (m *model) checkFile() tea.Cmd {
	path, stamp := m.file.path, m.file.stamp
	if path == "" || stamp.Zero() {
		return nil
	}
	return func() tea.Msg {
		if changed, err := planfile.Changed(path, stamp); err == nil && changed {
			return changedMsg{path}
		}
		return nil
	}
}

// changed takes the news that the file was changed: what is on the bench stays until the maker decides.
func (m *model) changed(msg changedMsg) {
	if msg.path != m.file.path || m.dialogs.Top() != nil {
		return
	}
	if m.session.Dirty() {
		m.refuse(filepath.Base(msg.path) + " was changed by something else; saving will ask which to keep")
		return
	}
	m.ask("The file has changed", msg.path+" was changed by something else. The bench still shows it as it was.",
		dialog.Answer{Text: "open it as it is now", Do: func() tea.Cmd { return m.load(msg.path) }})
}
