package batches

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook/life"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/look"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// talk is the page told in lines and answered in lines. It stands where the screen would, and says what the screen would draw.
type talk struct {
	lines.Chat
	m *Model
}

// Converse opens the page in plain mode and returns when the maker has left it or nothing more comes in. What [Open] says of what it
// returns holds here too.
func Converse(o Options, with lines.Talk) (*Poured, error) {
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	o.Plain, o.Keys, o.Pixels = true, o.Keys.Spoken(), ""
	t := newTalk(New(o), with.Out)
	t.Finish(t.m.load())
	t.Out.Gap()
	t.Out.Say("The batches, in plain mode. A number chooses one and tells it, list tells all of them, search WORDS those that hold the words, log logs what happened to the chosen one, ? tells what can be said, q leaves.")
	t.Said()
	t.tellList()
	err := t.Run(with.In)
	if err == nil && with.Out.Err() != nil {
		err = fmt.Errorf("tell the batches: %w", with.Out.Err())
	}
	return t.m.again, err
}

func newTalk(m *Model, out *lines.Paper) *talk {
	t := &talk{m: m}
	t.Chat = lines.Chat{
		Model: m, Dialogs: &m.dialogs, Status: &m.status, Refuse: m.refuse, Out: out, Name: "batches",
		Command: t.command, Look: m.load, Ended: terminal.Ended,
	}
	return t
}

// What is said besides the rows of the table of keys.
const (
	sayList   = "list"
	saySearch = "search"
	sayMark   = "mark"
)

// command does what a line asks of the page.
func (t *talk) command(text string) {
	first, rest, _ := strings.Cut(text, " ")
	rest = strings.TrimSpace(rest)
	if n, err := strconv.Atoi(first); err == nil {
		t.choose(n, rest)
		return
	}
	switch word := strings.ToLower(first); {
	case text == "":
		t.tellBatch()
		return
	case word == dialog.LeaveIt:
		t.m.say("nothing waits for an answer")
		return
	case word == sayList:
		t.m.clearSearch()
		t.tellList()
		return
	case word == saySearch || word == "/":
		t.m.search.Typed = entry.New(rest)
		t.m.resift()
		t.tellList()
		return
	case word == sayMark:
		t.mark(rest)
		return
	}
	if t.logged(first, rest) {
		return
	}
	if asked, ok := lines.Match(t.m.opt.Keys.Of(keys.Batching), t.acts, text); ok {
		t.act(asked)
		return
	}
	asked, others := lines.Begun(t.m.opt.Keys.Of(keys.Batching), text)
	switch {
	case asked.Binding.ID != "":
		t.act(asked)
	case len(others) > 0:
		t.m.refuse(text + " could be " + strings.Join(others, ", ") + ": say more of it")
	default:
		t.m.refuse("“" + text + "” is nothing to do; ? tells what can be said, list which batches there are")
	}
}

func (t *talk) acts(b keys.Binding) bool { return t.m.cannot(b.ID) == "" && unheard(b.ID) == "" }

// choose chooses a batch by its number in the list and tells it, or does what is said of it.
func (t *talk) choose(n int, rest string) {
	if n < 1 || n > len(t.m.shown) {
		t.m.refuse(fmt.Sprintf("there is no batch %d; %d are in the list", n, len(t.m.shown)))
		return
	}
	t.m.at, t.m.mark = n-1, 0
	t.Finish(t.m.reopen())
	if rest == "" {
		t.tellBatch()
		return
	}
	t.command(rest)
}

// mark chooses a mark of the batch by its number, to be corrected or taken back.
func (t *talk) mark(text string) {
	b, ok := t.m.chosen()
	if !ok {
		t.m.refuse("no batch is chosen")
		return
	}
	first, rest, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(first)
	if marks := t.m.marks(b); err != nil || n < 1 || n > len(marks) {
		t.m.refuse(fmt.Sprintf("a mark is chosen by its number: 1 to %d, as in mark 1 correct", len(marks)))
		return
	}
	t.m.inside, t.m.mark = true, n-1
	if rest = strings.TrimSpace(rest); rest != "" {
		t.command(rest)
		return
	}
	mk, _ := t.m.chosenMark()
	l := t.m.markLine(mk)
	t.Out.Say(l.lead + ": " + l.text)
}

// logged opens the form of a kind that a line begins with, by its label or its name in a file, and says what stands behind it in the first
// empty line of the form.
func (t *talk) logged(first, rest string) bool {
	if len(first) < 2 {
		return false
	}
	for i, name := range t.m.logNames() {
		f, ok := life.FormOf(kindOf(name))
		if !ok || !strings.EqualFold(first, name) && !strings.EqualFold(first, f.Command) && !strings.EqualFold(joined(" ", first, rest), f.Label) {
			continue
		}
		b, _ := t.m.opt.Keys.Find(keys.Batching, keys.LogMark)
		t.Finish(t.m.perform(b, i))
		if top := t.m.dialogs.Top(); top != nil && rest != "" && !strings.EqualFold(joined(" ", first, rest), f.Label) {
			t.Answer(rest)
		}
		return true
	}
	return false
}

// act does what a row of the table does.
func (t *talk) act(a lines.Asked) {
	b := a.Binding
	if why := unheard(b.ID); why != "" {
		t.m.refuse(why)
		return
	}
	switch b.ID {
	case keys.Help, keys.Palette:
		t.help(cmp.Or(a.Rest, map[keys.ID]string{keys.Palette: lines.Every}[b.ID]))
		return
	case keys.Correct, keys.TakeBack:
		t.m.inside = true
		if a.Rest != "" {
			t.mark(a.Rest + " " + string(b.ID))
			return
		}
	}
	if b.ID == keys.CutLive && t.m.whyNot(b, a.Nth) == "" {
		at, _ := t.m.chosen()
		err := t.m.opt.Cut(at.ID)
		if errors.Is(err, terminal.ErrInterrupted) || errors.As(err, &terminal.EndedError{}) {
			t.Cut, t.Left = err, true
			return
		}
		t.Finish(func() tea.Msg { return backMsg{"the cut", err} })
		return
	}
	t.Finish(t.m.perform(b, a.Nth))
	if b.ID == keys.Order {
		t.tellList()
	}
	if b.ID == keys.Board && t.m.board {
		t.tellBoard()
	}
	t.AnswerRest(a.Rest)
}

// unheard says why an action of the page has no line of its own, or "".
func unheard(id keys.ID) string {
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last, keys.LookAt, keys.ToList:
		return "a batch is chosen by its number; list tells which there are"
	case keys.Search:
		return "search and words tells the batches that hold them"
	case keys.Mouse:
		return "there is no mouse in plain mode"
	case keys.Suspend:
		return "Ctrl+Z stops the program as it does any other, and fg goes on"
	}
	return ""
}

// toldBatches is how many batches are told at once.
const toldBatches = 20

// tellList tells the batches that are shown, each with its number.
func (t *talk) tellList() {
	if len(t.m.shown) == 0 {
		t.Out.Say(t.m.nothing())
		return
	}
	t.Out.Say(t.m.counted() + ".")
	for i, b := range t.m.shown {
		if i == toldBatches {
			t.Out.Say(fmt.Sprintf("and %d more; search WORDS narrows the list", len(t.m.shown)-toldBatches))
			return
		}
		state := string(b.State)
		if b.Fault != nil {
			state = "faulty file"
		}
		due, _ := t.m.dueWords(b)
		t.Out.Say(strconv.Itoa(i+1) + " " + joined(", ", b.Name, state, "poured "+b.Poured.String(), due))
	}
}

// tellBatch tells all of the chosen batch, its marks with their numbers.
func (t *talk) tellBatch() {
	b, ok := t.m.chosen()
	if !ok {
		t.m.refuse("no batch is chosen; list tells which there are")
		return
	}
	t.Out.Gap()
	t.Out.Say(joined(", ", b.Name, b.ID) + ".")
	const wide = 1 << 15
	for _, l := range t.m.told(b, wide) {
		switch {
		case l.plot > 0 || l.lead == "" && l.text == "":
		case l.head:
			t.Out.Say(l.lead + ":")
		case l.text == swatchesHere:
			t.Out.Say("colours: " + colourWords(b.Swatches))
		case l.mark > 0:
			t.Out.Say(fmt.Sprintf("mark %d, %s: %s", l.mark, l.lead, l.text))
		default:
			t.Out.Tell(dialog.Told{Lines: []dialog.Line{{Lead: l.lead, Text: l.text}}})
		}
	}
	for _, text := range t.m.plotWords(b) {
		t.Out.Say(text)
	}
}

// colourWords names colours, each with its letter.
func colourWords(list []string) string {
	out := make([]string, len(list))
	for i, hex := range list {
		word := "not known"
		if c, ok := screen.Hex(hex); ok {
			word = look.ColourWord(c)
		}
		out[i] = look.Letter(i) + " " + word
	}
	return strings.Join(out, ", ")
}

// help tells what can be said: in short, all of it, or what holds a word.
func (t *talk) help(about string) {
	if about == "" {
		t.Out.Say("A number chooses a batch and tells it; Enter tells the chosen one again. list tells all batches, search WORDS those that hold every word, order goes on to the next order.")
		t.Out.Say("log lists what can be logged; so does its name: weigh 128,4, sniff 3, sell 2, fail. A form is answered line by line, Enter keeps it. mark 2 correct and mark 2 take back change a mark, undo undoes the last thing.")
		t.Out.Say("? all tells every action, ? and a word those with that word.")
	}
	t.Out.Actions(t.m.opt.Keys.Of(keys.Batching), about, unheard, t.m.whyNot)
}
