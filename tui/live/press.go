package live

import (
	"fmt"
	"runtime"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/terminal"
)

// quiet is how long after a step was finished Space does not finish the next one: a wet glove presses twice, a held key repeats.
const quiet = 800 * time.Millisecond

// press gives a key to what is open, or to the run.
func (m *Model) press(k tea.KeyPressMsg) tea.Cmd {
	if k.String() == keys.Leaves {
		return m.leave()
	}
	if m.dialogs.Top() != nil {
		return m.dialogs.Press(k, m.refuse)
	}
	if m.startsMass(k.String()) {
		m.typeMass(k.String())
		return nil
	}
	b, ok := m.opt.Keys.Lookup(keys.Pouring, 0, k.String())
	if !ok && k.String() == "enter" { // it ends every typed line: pressed once too often it must not finish a step
		m.refuse("{finish step} finishes the step; Enter only keeps what was typed")
		return nil
	}
	if !ok {
		m.refuse("the key " + keys.Shown(k.String()) + " does nothing here; {help} lists the keys, {palette} searches every action")
		return nil
	}
	return m.perform(b, b.Nth(k.String()))
}

// perform does what an action of the table asks, or says why it cannot be: the one way for keys, palette, help and footer. Where each key
// of it does its own, nth is which; below 0 it is asked.
func (m *Model) perform(b keys.Binding, nth int) tea.Cmd {
	if why := m.whyNot(b, nth); why != "" {
		m.refuse(why)
		return nil
	}
	if b.Each != nil && nth < 0 {
		l := dialog.NewPalette(m.actions())
		l.Paste(string(b.ID) + ": ")
		m.dialogs.Open(l)
		return nil
	}
	return m.do(b.ID, nth)
}

// actions is what help and palette ask of the run.
func (m *Model) actions() dialog.Actions {
	return dialog.Actions{Keys: m.opt.Keys, Own: keys.Pouring, WhyNot: m.whyNot, Do: m.perform, About: m.about}
}

// about is the name of the jug that a digit chooses.
func (m *Model) about(b keys.Binding, nth int) string {
	if b.ID == keys.PickJug && nth < len(m.board.Jugs) {
		return m.board.Jugs[nth].Jug
	}
	return ""
}

// fill puts the keys of the run into a text.
func (m *Model) fill(text string) string { return m.opt.Keys.Fill(keys.Pouring, text) }

// key is the key of an action of the run, for what is said.
func (m *Model) key(id keys.ID) string { return m.opt.Keys.Name(keys.Pouring, id) }

// do does what an action asks, which is known to be possible; nth is which of those that each key of it does.
func (m *Model) do(id keys.ID, nth int) tea.Cmd {
	switch id {
	case keys.Finish:
		return m.finish()
	case keys.TakeBack:
		m.takeBack()
	case keys.NextStep:
		m.choose(1)
	case keys.PrevStep:
		m.choose(-1)
	case keys.PickJug:
		m.pick(nth)
	case keys.NextJug:
		m.jug = (m.jug + 1) % len(m.board.Jugs)
	case keys.PrevJug:
		m.jug = (m.jug + len(m.board.Jugs) - 1) % len(m.board.Jugs)
	case keys.SeeStage:
		m.see(chem.Stage(nth), logbook.Seen)
	case keys.NotYet:
		m.see(chem.Stage(nth), logbook.NotYet)
	case keys.Blender:
		m.blend()
	case keys.Mouse:
		m.releaseMouse()
	default:
		return m.openFor(id)
	}
	return nil
}

// openFor opens what takes the keys from here: a question, a line to type, a page.
func (m *Model) openFor(id keys.ID) tea.Cmd {
	m.status.Clear()
	switch id {
	case keys.NotUsed:
		m.askNotUsed()
	case keys.SkipStep:
		m.askSkip()
	case keys.Trouble:
		m.askTrouble()
	case keys.Rescue:
		if f, stops := m.anyStopped(); stops {
			m.askLye(f)
			return nil
		}
		m.askRescue()
	case keys.Note:
		m.typeNote()
	case keys.Outcome:
		m.typeResult()
	case keys.Measure:
		m.typeMeasure()
	case keys.Reweigh:
		m.listWeighings()
	case keys.Discount:
		m.askDiscount()
	case keys.Guide:
		m.dialogs.Open(guidePage())
	case keys.Help:
		m.dialogs.Open(dialog.NewHelp(keys.OfPour(), m.actions(), m.look))
	case keys.Palette:
		m.dialogs.Open(dialog.NewPalette(m.actions()))
	case keys.Said:
		m.dialogs.Open(m.status.Page(m.look))
	case keys.Suspend:
		return terminal.Suspend()
	case keys.Quit:
		if m.state.Ended {
			return m.leave()
		}
		m.askLeave()
	}
	return nil
}

// whyNot says why a key of the run cannot act now, for the list of keys.
func (m *Model) whyNot(b keys.Binding, nth int) string {
	switch {
	case b.Mode != keys.Pouring:
		return m.fill("at the bench only; {quit} leaves the run")
	case m.cutting() && ofJugs(b.ID):
		return noJugs
	case b.ID == keys.PickJug && nth >= len(m.board.Jugs):
		return fmt.Sprintf("there is no jug %d; there are %d", nth+1, len(m.board.Jugs))
	}
	return m.fill(m.cannot(b.ID))
}

// cannot says why a key cannot act now; empty: it can.
func (m *Model) cannot(id keys.ID) string {
	_, left := m.now()
	if m.cutting() && ofJugs(id) {
		return noJugs
	}
	switch id {
	case keys.Suspend:
		return terminal.NoSuspend(runtime.GOOS)
	case keys.Finish:
		if m.state.Ended {
			return "the " + m.event() + " is over; {quit} leaves"
		}
	case keys.NextStep, keys.PrevStep:
		if !left {
			return "every step is done; " + m.key(keys.TakeBack) + " takes the last one back"
		}
	case keys.SkipStep:
		return m.cannotSkip()
	case keys.Rescue:
		if _, stops := m.anyStopped(); m.lost() < 0 && !stops {
			return "every jug makes its window as things stand, and none is in trouble"
		}
	case keys.NotUsed, keys.Trouble, keys.SeeStage, keys.NotYet:
		if m.state.Ended && id != keys.Trouble {
			return "the pour is over"
		}
		return m.cannotJug(id)
	case keys.Blender:
		if now, ok := m.now(); !ok || m.blender < 0 && !m.running(now.Batch) {
			return "no lye has met oil in this batch; finish that step first"
		}
	case keys.Reweigh:
		if len(m.live.Scaled()) == 0 {
			return "nothing was weighed yet; {measure} types a weight"
		}
	case keys.Discount:
		if _, ok := m.lastJump(); !ok {
			return "the clock has not jumped"
		}
	case keys.Outcome:
		if left {
			return "steps are left; how it came out is for the end, {note} is a note now"
		}
	case keys.Said:
		if m.status.Silent() {
			return "nothing was said yet"
		}
	case keys.Guide:
		if !m.trialling() {
			return "this is no scent trial"
		}
	}
	return ""
}

// cannotJug says why a key cannot act on the chosen jug.
func (m *Model) cannotJug(id keys.ID) string {
	j := m.board.Jugs[m.jug]
	used := j.Verdict == underway.Used
	switch {
	case used && (id == keys.NotUsed || id == keys.SeeStage):
		return fmt.Sprintf("%s is %s already; %s takes it back", j.Jug, m.usedWord(j), m.key(keys.TakeBack))
	case id != keys.NotUsed && id != keys.Trouble && !m.running(j.Batch):
		return fmt.Sprintf("the %s's lye has not met its oils; finish that step first", j.Batch)
	case id == keys.NotYet && !used:
		return j.Jug + " has not been used; small letters mark what is seen now"
	}
	return ""
}

// cannotSkip says why the step under way cannot be marked as not done.
func (m *Model) cannotSkip() string {
	now, left := m.now()
	switch {
	case m.state.Ended:
		return "the " + m.event() + " is over"
	case !left:
		return "every step is done"
	case m.cutting():
		return "a cut has no step to go without; {finish step} finishes it, {next step} goes on to another"
	case now.OnLoaf():
		return "what lies on the loaf or in it counts as the plan has it: {note} writes what was otherwise"
	case !now.Skippable():
		return "nothing is poured without this step; {quit} leaves the run, or ends it"
	}
	if jug := m.state.OnlyMove(now.Step); jug != "" {
		return "nothing else pours " + jug + ": {not used} says that it stays in its jug"
	}
	return ""
}

// running says whether a batch's lye has met its oils.
func (m *Model) running(n pour.BatchName) bool {
	_, ok := m.state.SinceLyeIn(n, m.live.Run())
	return ok
}
