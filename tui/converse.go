package tui

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// talk is the bench told in lines and answered in lines. It stands where the screen would: it reads what the model would draw and hands
// it what was typed, and knows nothing of the plan itself.
type talk struct {
	m    *model
	in   *lines.Input
	out  *lines.Paper
	told scene // what was told last, to tell what has changed
	left bool

	refused bool  // the last line was, with the reason
	adding  bool  // the last line adds a row, whose figure is asked for
	cut     error // why it was left from outside; nil: it was not
}

// Converse opens the workbench in plain mode and returns when the maker has left it or nothing more comes in. Work that is in no file
// then is kept in the state directory, as by [Open].
func Converse(o Options, p lines.Talk) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	o.Plain, o.Pixels, o.Keys = true, "", o.Keys.Spoken()
	m := newModel(o)
	defer m.close() //nolint:errcheck // the system lets go of it too
	t := &talk{m: m, in: p.In, out: p.Out}
	err := t.run()
	if !m.quitting {
		if rescueErr := m.rescued(o.Notes); rescueErr != nil {
			return errors.Join(err, rescueErr)
		}
	}
	if err == nil && p.Out.Err() != nil {
		return fmt.Errorf("write the lines: %w", p.Out.Err())
	}
	return err
}

// start says where the maker is, once everything is worked out.
func (t *talk) start() {
	lines.Finish(t.m, t.m.Init())
	t.welcome()
	t.said()
	t.told = t.scene()
	if top := t.m.dialogs.Top(); top != nil {
		t.tellDialog(top)
	} else {
		t.tellPanel(false)
	}
}

// run talks until the bench is left or nothing more comes.
func (t *talk) run() error {
	t.start()
	for !t.left && t.out.Err() == nil {
		t.ask()
		e := <-t.in.Events
		switch {
		case e.End:
			t.out.Gap()
			t.out.Say("The input has ended, and so has the bench.")
			return nil
		case e.Signal != nil:
			t.out.Gap()
			return terminal.Ended(e.Signal)
		case e.Long:
			t.out.Say(lines.TooLong)
		default:
			t.hear(e.Text)
		}
	}
	return t.cut
}

// welcome says where the maker is and how to find out more.
func (t *talk) welcome() {
	t.out.Say("pourbench in plain mode: " + t.m.session.Plan().Name + ". " + t.totals())
	t.out.Say("A number or a name chooses a row, a row and a value set it: 2 16. The name of a station goes there: mould, batch, jugs, swirl, scent, run, icing, top, cut, label, shelf. n begins a new plan, ? tells what can be said, q quits.")
}

// ask writes what the next line is an answer to.
func (t *talk) ask() {
	switch top := t.m.dialogs.Top(); {
	case top != nil:
		t.out.Prompt(top.Tell().Ask + ", or " + dialog.LeaveIt)
	case t.m.typing != nil:
		cell, _, _ := t.m.cell()
		t.out.Prompt("new value, or Enter to leave " + lines.Value(cell))
	default:
		t.out.Prompt(t.place())
	}
}

// place names the station and the panel in as few words as there are.
func (t *talk) place() string {
	station, title := t.m.here().Name, t.m.at().Title
	if strings.EqualFold(station, title) {
		return station
	}
	return station + ", " + title
}

// hear takes a line to what waits for it: the topmost dialog, the cell being typed in, or the bench.
func (t *talk) hear(text string) {
	top, typing := t.m.dialogs.Top(), t.m.typing
	if _, reading := top.(*dialog.Page); reading && text != "" && !isNumber(text) {
		t.hearDialog("") // what is read keeps nobody from saying something else
		top = nil
	}
	switch {
	case t.m.dialogs.Top() != nil:
		t.hearDialog(text)
	case t.m.typing != nil:
		t.hearTyping(text)
	case text == "":
		t.tellPanel(false)
		return
	default:
		t.command(text)
	}
	asks := t.asksFigure()
	t.follow()
	if asks {
		t.m.begin("")
	}
	if refused := t.refused && text != ""; refused && (top != nil && top == t.m.dialogs.Top() || typing != nil && typing == t.m.typing) {
		return // what is asked is known
	}
	t.tellAsked()
}

func isNumber(text string) bool {
	_, err := strconv.Atoi(text)
	return err == nil
}

// follow tells what came of a line: what was said, what has changed.
func (t *talk) follow() {
	t.refused = false
	if t.left {
		return
	}
	t.m.settle()
	t.said()
	t.tellChanges()
}

// tellAsked tells what now waits for an answer, if anything does.
func (t *talk) tellAsked() {
	if t.left {
		return
	}
	switch top := t.m.dialogs.Top(); {
	case top != nil:
		t.tellDialog(top)
	case t.m.typing != nil:
		t.tellCell()
	}
}

// said tells what stands in the status line, once.
func (t *talk) said() {
	t.refused = t.out.Status(t.m.status.Text()) || t.refused
	t.m.status.Clear()
}

// tellDialog tells a dialog. One that asks for nothing is closed with that.
func (t *talk) tellDialog(d dialog.Dialog) {
	told := d.Tell()
	t.out.Tell(told)
	if told.Ask != "" {
		return
	}
	t.hearDialog("")
	if next := t.m.dialogs.Top(); next != nil {
		t.tellDialog(next)
	}
}

func (t *talk) hearDialog(text string) {
	t.update(func() tea.Cmd { // so that what follows from an answer is worked out as after a key
		cmd, told := t.m.dialogs.Hear(text, t.m.refuse)
		if told != nil {
			t.out.Tell(*told)
		}
		return cmd
	})
}

// hearTyping takes a line as what was typed into a cell. An empty one leaves it as it was.
func (t *talk) hearTyping(text string) {
	switch {
	case text == "" || strings.EqualFold(text, dialog.LeaveIt):
		t.m.typing = nil
		t.m.say("as it was")
		return
	}
	rev := t.m.session.Revision()
	t.keep(text)
	t.confirm(rev)
}

// keep puts a text into the cell being typed in; a refusal leaves it open.
func (t *talk) keep(text string) {
	if text == dialog.Nothing {
		text = ""
	}
	t.m.typing.Typed = grid.Typed{Entry: entry.New(text)}
	t.update(func() tea.Cmd { t.m.commit(); return nil })
}
