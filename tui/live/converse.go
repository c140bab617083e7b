package live

import (
	"cmp"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// talk is the live run told in lines and answered in lines. It stands where the screen would, and says what the screen would draw.
type talk struct {
	m    *Model
	out  *lines.Paper
	left bool
	step string // key of the step that was told last

	marked bool // the last line marked a stage in the chosen jug
}

// lookEvery is how often the run is looked at while no line comes: jumps of the clock are found, and marks that wait are written.
const lookEvery = time.Second

// Converse runs the pour in plain mode and returns when the maker has left it or nothing more comes in. What [Open] says of marks and of
// taking the pour up again holds here too.
func Converse(o Options, with lines.Talk) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	o.Plain, o.Keys = true, o.Keys.Spoken()
	if pours, err := meant(&o, func(w *which) error { return w.converse(with) }); err != nil || !pours {
		return err
	}
	m, err := New(o)
	if err != nil {
		return err
	}
	t := &talk{m: m, out: with.Out}
	err = t.run(with.In)
	tries := 1
	if err != nil {
		tries = lastTries
	}
	m.part(o.Notes, tries, time.Sleep)
	if err == nil && with.Out.Err() != nil {
		return fmt.Errorf("tell the live run of %s: %w", m.ID(), with.Out.Err())
	}
	return err
}

func (t *talk) run(in *lines.Input) error {
	second := time.NewTicker(lookEvery)
	defer second.Stop()
	t.welcome()
	for !t.left && t.out.Err() == nil {
		t.ask()
		e := t.next(in, second)
		t.look()
		switch {
		case e.End:
			t.out.Gap()
			t.out.Say("The input has ended. The run goes on.")
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
	return nil
}

// next waits for what comes in, and looks at the run meanwhile. Nothing is said by itself.
func (t *talk) next(in *lines.Input, second *time.Ticker) lines.Event {
	for {
		select {
		case e := <-in.Events:
			return e
		case <-second.C:
			t.look()
		}
	}
}

func (t *talk) look() {
	t.m.run.Tick()
	t.m.settle()
}

// converse asks in lines which pour is meant. Where nothing more comes in, nothing is poured.
func (w *which) converse(with lines.Talk) error {
	with.Out.Tell(w.dialogs.Top().Tell())
	for {
		with.Out.Prompt(w.dialogs.Top().Tell().Ask)
		switch e := <-with.In.Events; {
		case e.End:
			with.Out.Gap()
			return nil
		case e.Signal != nil:
			with.Out.Gap()
			return terminal.Ended(e.Signal)
		default:
			cmd, _ := w.dialogs.Hear(e.Text, w.status.Refuse)
			if lines.Finish(w, cmd) || w.dialogs.Top() == nil {
				return with.Out.Err()
			}
			with.Out.Status(w.status.Text())
		}
	}
}

func (t *talk) welcome() {
	t.out.Gap()
	if t.m.cutting() {
		t.welcomeCut()
		return
	}
	t.out.Say("The live run of " + t.m.sheet().Plan.Name + ", in plain mode. " + t.m.journalText() + ".")
	t.out.Say("done finishes the step, undo takes the last mark back, 3 l says that jug 3 is light now, Enter tells the time and the step, jugs how they stand, ? what can be said, q leaves.")
	t.said()
	t.tellNow()
}

// ask writes what a line is waited for with.
func (t *talk) ask() {
	if top := t.m.dialogs.Top(); top != nil {
		t.out.Prompt(top.Tell().Ask + ", or " + dialog.LeaveIt)
		return
	}
	t.out.Prompt("pour")
}

// hear takes a line to what waits for it: the topmost dialog, or the run.
func (t *talk) hear(text string) {
	seen := len(t.m.state.Sightings)
	switch top := t.m.dialogs.Top(); {
	case top != nil:
		t.hearDialog(text)
	case text == "":
		t.tellNow()
	default:
		t.m.status.Clear()
		t.command(text)
	}
	t.marked = len(t.m.state.Sightings) != seen
	if t.left {
		return
	}
	t.said()
	if t.marked {
		t.tellJug(t.m.jug)
	}
	_ = t.m.ring() // the bell is a control of the terminal: what it says is said in words
	t.said()
	if top := t.m.dialogs.Top(); top != nil {
		t.tellDialog(top)
		return
	}
	if now, _ := t.m.now(); now.Key != t.step {
		t.tellNow()
	}
}

// said tells what stands in the status line, once.
func (t *talk) said() {
	t.out.Status(t.m.status.Text())
	t.m.status.Clear()
}

func (t *talk) hearDialog(text string) {
	cmd, told := t.m.dialogs.Hear(text, t.m.refuse)
	if told != nil {
		t.out.Tell(*told)
	}
	t.left = lines.Finish(t.m, cmd) || t.left
	t.m.settle()
}

// tellDialog tells a dialog. One that asks for nothing is closed with that.
func (t *talk) tellDialog(d dialog.Dialog) {
	told := d.Tell()
	t.out.Tell(told)
	if told.Ask == "" {
		t.hearDialog("")
	}
}

// command does what a line asks of the run. The number or the name of a jug comes before what is marked of it.
func (t *talk) command(text string) {
	first, rest, _ := strings.Cut(text, " ")
	if t.m.cutting() && t.massSaid(text) {
		return
	}
	if n, err := strconv.Atoi(first); err == nil {
		t.jug(n-1, strings.TrimSpace(rest))
		return
	}
	switch strings.ToLower(text) {
	case "jugs":
		t.tellJugs()
		return
	case "steps":
		t.tellSteps()
		return
	}
	if asked, ok := t.stage(text); ok {
		t.act(asked)
		return
	}
	if asked, ok := lines.Match(t.table(), t.acts, text); ok {
		t.act(asked)
		return
	}
	if i, behind, ok := t.named(text); ok {
		t.jug(i, behind)
		return
	}
	asked, others := lines.Begun(t.table(), text)
	switch {
	case asked.Binding.ID != "":
		t.act(asked)
	case len(others) > 0:
		t.m.refuse(text + " could be " + strings.Join(others, ", ") + ": say more of it")
	default:
		t.m.refuse("“" + text + "” is no jug and nothing to do; ? tells what can be said, Enter where the run stands")
	}
}

// jug chooses a jug, and does what is said of it; where nothing is, it tells how the jug stands.
func (t *talk) jug(i int, rest string) {
	if i < 0 || i >= len(t.m.board.Jugs) {
		t.m.refuse(fmt.Sprintf("there is no jug %d; there are %d", i+1, len(t.m.board.Jugs)))
		return
	}
	t.m.jug = i
	if rest == "" {
		t.tellJug(i)
		return
	}
	t.command(rest)
}

// named finds the jug whose name a line begins with.
func (t *talk) named(text string) (jug int, rest string, ok bool) {
	for i, j := range t.m.board.Jugs {
		name := lines.ASCII(j.Jug)
		if rest, found := strings.CutPrefix(strings.ToLower(lines.ASCII(text))+" ", strings.ToLower(name)+" "); found {
			return i, strings.TrimSpace(rest), true
		}
	}
	return 0, "", false
}

// table is the rows of the table of keys that act during a pour.
func (t *talk) table() []keys.Binding {
	return t.m.opt.Keys.Of(keys.Pouring)
}

func (t *talk) acts(b keys.Binding) bool { return t.m.cannot(b.ID) == "" }

// stage reads a stage by its name, with "not yet" before it for one that a used jug had not reached.
func (t *talk) stage(text string) (lines.Asked, bool) {
	for _, b := range t.table() {
		if b.ID != keys.SeeStage && b.ID != keys.NotYet {
			continue
		}
		words := strings.Fields(strings.ToLower(text))
		named := strings.Fields(string(b.ID))
		switch {
		case len(words) > len(named) && slices.Equal(words[:len(named)], named):
			words = words[len(named):]
		case b.ID == keys.NotYet || len(words) == 0:
			continue
		}
		if i := slices.Index(b.Each, words[0]); i >= 0 {
			return lines.Asked{Binding: b, Nth: i, Rest: strings.Join(words[1:], " ")}, true
		}
	}
	return lines.Asked{}, false
}

// act does what a row of the table does, on the jug that is named behind it. What is said besides is an answer to what then is asked.
func (t *talk) act(a lines.Asked) {
	b, rest := a.Binding, a.Rest
	if why := unheard(b.ID); why != "" {
		t.m.refuse(why)
		return
	}
	switch b.ID {
	case keys.Help:
		t.help(rest)
		return
	case keys.Palette: // a line says an action by its name
		t.help(cmp.Or(rest, lines.Every))
		return
	}
	if rest != "" && ofJug(b.ID) {
		first, behind, _ := strings.Cut(rest, " ")
		if n, err := strconv.Atoi(first); err == nil && n >= 1 && n <= len(t.m.board.Jugs) {
			t.m.jug, rest = n-1, strings.TrimSpace(behind)
		} else if i, behind, ok := t.named(rest); ok {
			t.m.jug, rest = i, behind
		}
	}
	t.m.finished = -quiet // a typed line is no wet glove that pressed twice
	t.left = lines.Finish(t.m, t.m.perform(b, a.Nth)) || t.left
	t.m.settle()
	if top := t.m.dialogs.Top(); rest != "" && top != nil && top.Tell().Ask != "" {
		t.hearDialog(rest)
	}
}

// ofJug says whether an action is one on a jug, which may be named behind it.
func ofJug(id keys.ID) bool {
	return slices.Contains([]keys.ID{keys.SeeStage, keys.NotYet, keys.Trouble, keys.Rescue, keys.NotUsed}, id)
}

// unheard says why an action of the run has no line of its own, or "".
func unheard(id keys.ID) string {
	switch id {
	case keys.PickJug:
		return "a jug is chosen by its number or its name"
	case keys.Suspend:
		return "Ctrl+Z stops the program as it does any other, and fg goes on; the run goes on meanwhile"
	}
	return ""
}
