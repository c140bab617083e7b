package tui

import (
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/screen"
)

// timedMsg brings the clock's figures for a revision of the plan.
type timedMsg struct {
	rev   int
	sheet pour.Sheet
}

// mingledMsg brings what the colours do, for a revision of the plan.
type mingledMsg struct {
	rev   int
	sheet pour.Sheet
}

// Update takes a message to the method for its kind.
func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	rev := m.session.Revision()
	cmd := m.take(msg)
	if m.session.Revision() != rev {
		cmd = tea.Batch(cmd, m.workFigures(), m.journalSoon(), m.mendSoon())
	}
	m.settle()
	return m, tea.Batch(cmd, m.develop(), m.mend(), m.try(), m.lookBack(), m.askAgain())
}

func (m *model) take(msg tea.Msg) tea.Cmd {
	return tea.Batch(m.regard(msg), m.takeOwn(msg))
}

func (m *model) takeOwn(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = screen.Fit(msg.Width, msg.Height)
		return raw(m.studio.gloss.terminal.Resized())
	case tea.ColorProfileMsg:
		m.studio.setDepth(msg.Profile)
		return m.askPixels()
	case tea.KeyPressMsg:
		return m.press(msg)
	case tea.PasteMsg:
		return m.paste(msg.Content)
	case tea.MouseClickMsg:
		return m.click(msg)
	case tea.MouseMotionMsg:
		m.drag(msg)
	case tea.MouseReleaseMsg:
		m.held = nil
	case tea.MouseWheelMsg:
		return m.wheel(msg)
	case tea.FocusMsg:
		return tea.Batch(m.checkFile(), m.restock())
	case lookAgainMsg:
		return tea.Batch(m.restock(), m.lookSoon())
	case timedMsg:
		m.session.Timed(msg.rev, msg.sheet)
		return m.workFigures()
	case mingledMsg:
		m.session.Mingled(msg.rev, msg.sheet)
	case awakeMsg:
		m.asleep = false
		return tea.Batch(m.workFigures(), m.mendSoon())
	case idleMsg:
		m.mending.idle = msg.rev
	case mendedMsg:
		m.mended(msg)
	case playMsg:
		return m.played(msg)
	case tea.ResumeMsg:
		return m.back()
	case journalDueMsg:
		return m.writeJournal()
	case hangupMsg:
		return m.hangUp()
	case changingMsg:
		return msg.do()
	default:
		return m.takePicture(msg)
	}
	return nil
}

// takePicture takes what was drawn, counted or measured beside the keyboard.
func (m *model) takePicture(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case printedMsg:
		return m.printed(msg)
	case measuredMsg:
		m.counted(msg)
	case peakedMsg:
		m.studio.peak.reached(msg)
	case restedMsg:
		return m.rested(msg)
	case glossMsg:
		return m.glossed(msg)
	case coatedMsg:
		m.coated(msg)
	default:
		return m.takeResult(msg)
	}
	return nil
}

// takeResult takes what a command brought back from the disk.
func (m *model) takeResult(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case savedMsg:
		return m.saved(msg)
	case loadedMsg:
		return m.loaded(msg)
	case freshMsg:
		return m.freshMade(msg)
	case writtenMsg:
		return m.written(msg)
	case journaledMsg:
		m.journaled(msg)
	case changedMsg:
		m.changed(msg)
	case lostMsg:
		m.offerLostWork(msg)
	case listedMsg:
		return m.listed(msg)
	case lookedMsg:
		m.looked(msg)
	case suggestedMsg:
		m.suggested(msg)
	case triedMsg:
		m.tryDone(msg)
	case learnedMsg:
		m.learned(msg)
	case pastMsg:
		m.lookedBack(msg)
	case againMsg:
		m.askedAgain(msg)
	case pouredAgainMsg:
		return m.pouredAgain(msg)
	case pouredMsg:
		return tea.Batch(m.back(), m.backdrop.Ask(), m.poured(msg), m.restock())
	case stockMsg:
		m.stockLeft(msg)
		return tea.Batch(m.back(), m.backdrop.Ask(), m.restock())
	case batchesMsg:
		return tea.Batch(m.back(), m.backdrop.Ask(), m.batchesLeft(msg), m.restock())
	case restockedMsg:
		m.restocked(msg)
	case largestMsg:
		m.enlarged(msg)
	case provisionsMsg:
		m.provided(msg)
	case handMsg:
		m.relearn(msg)
	default:
		return m.hear(msg)
	}
	return nil
}

// workFigures works out beside the keyboard what takes longer than a key may: the clock, and after it what the colours do.
func (m *model) workFigures() tea.Cmd {
	rev := m.session.Revision()
	if work := m.session.Untimed(); work != nil {
		return func() tea.Msg { return timedMsg{rev, work()} }
	}
	if work := m.session.Unmingled(m.studio.judge); work != nil {
		return func() tea.Msg { return mingledMsg{rev, work()} }
	}
	return nil
}

// awakeMsg says that the first frame has been drawn.
type awakeMsg struct{}

// firstFrame is how long what is slow waits at the start, so that the first frame has both cores: a few frames of the renderer.
const firstFrame = 50 * time.Millisecond

// wake starts what is worked out beside: at once, or on a terminal once the first frame is drawn.
func (m *model) wake() tea.Cmd {
	if !m.asleep {
		return tea.Batch(m.workFigures(), m.develop())
	}
	return tea.Tick(firstFrame, func(time.Time) tea.Msg { return awakeMsg{} })
}

// say puts something into the status line; an action in braces stands for its key.
func (m *model) say(text string) { m.status.Say(m.fill(text)) }

// refuse says why something cannot be done.
func (m *model) refuse(why string) { m.status.Refuse(m.fill(why)) }

// ask opens a question on its last answer, which does nothing: where none does, "cancel" is added.
func (m *model) ask(title, text string, answers ...dialog.Answer) {
	if answers[len(answers)-1].Do != nil {
		answers = append(answers, dialog.Answer{Text: "cancel"})
	}
	m.dialogs.Open(&dialog.Question{Title: title, Text: text, Answers: answers, At: len(answers) - 1})
}

// edit makes an edit and says why where it is refused.
func (m *model) edit(name string, e pour.Edit) error { return m.make(name, e, "") }

// make makes an edit and says what came of it: why it is refused, or else some words, and which colours are no longer the maker's own.
func (m *model) make(name string, e pour.Edit, said string) error {
	before := m.session.Plan()
	if err := m.session.Apply(name, e); err != nil {
		m.refuse(reason(err))
		return err
	}
	if lost := pour.Unstated(before, m.session.Plan()); len(lost) > 0 {
		said = strings.TrimPrefix(said+"; "+unstated(lost), "; ")
	}
	if said != "" {
		m.say(said)
	}
	return nil
}

// unstated says which colours are no longer the maker's own.
func unstated(jugs []string) string {
	return strings.Join(jugs, ", ") + ": stated colour gone with its colourant, now estimated; {undo} undoes"
}
