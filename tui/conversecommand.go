package tui

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// totals is what the title line says, and how many warnings there are.
func (t *talk) totals() string {
	parts, counts := t.m.totals()
	for _, s := range []pour.Severity{pour.Stop, pour.Caution, pour.Note} {
		if n := counts[s]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, plural(string(s), n)))
		}
	}
	return strings.Join(parts, ", ") + "."
}

func plural(word string, n int) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

// What is said besides the rows of the table of keys.
const (
	sayList = "list"
	sayGo   = "go"
)

// command does what a line asks of the bench. A row by its number comes first, then places, actions, and rows by their names.
func (t *talk) command(text string) {
	first, rest, _ := strings.Cut(text, " ")
	rest = strings.TrimSpace(rest)
	if n, err := strconv.Atoi(first); err == nil {
		t.rowByNumber(n, rest)
		return
	}
	switch word := strings.ToLower(first); {
	case word == dialog.LeaveIt:
		t.m.say("nothing waits for an answer")
		return
	case word == sayList:
		t.tellPanel(true)
		return
	case word == sayGo && rest == "":
		t.tellPlaces()
		return
	case word == sayGo && !t.goes(rest):
		t.m.refuse("there is no station or panel " + rest + "; go lists them")
		return
	case word == sayGo || t.goes(text):
		return
	}
	acts := func(b keys.Binding) bool { return b.Acts(t.m.at().Has()) && unheard(b.ID) == "" }
	if asked, ok := lines.Match(t.table(), acts, text); ok {
		t.act(asked)
		return
	}
	t.named(text)
}

// table is the rows of the table of keys that act at the bench.
func (t *talk) table() []keys.Binding {
	return slices.DeleteFunc(slices.Clone(t.m.opt.Keys.Of(keys.Bench)), func(b keys.Binding) bool { return b.ID == keys.Digits })
}

// named takes a line that begins with the name of a row, or with a part of the name of an action.
func (t *talk) named(text string) {
	at, rest, rows := lines.Find(t.rows(), text)
	asked, actions := lines.Begun(t.table(), text)
	switch {
	case at >= 0:
		t.row(at, rest)
	case len(rows) > 0:
		t.m.refuse(text + " could be " + strings.Join(rows, ", ") + ": say more of the name, or the number of the row")
	case asked.Binding.ID != "":
		t.act(asked)
	case len(actions) > 0:
		t.m.refuse(text + " could be " + strings.Join(actions, ", ") + ": say more of it")
	default:
		t.m.refuse("“" + text + "” is no row here, no place and nothing to do; ? tells what can be said, Enter what stands here")
	}
}

// act does what a row of the table of keys does, on the row and the cell that are named behind it. What is said besides is an answer to
// what then is asked.
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
	if rest != "" && ofRow(b) {
		var ok bool
		if rest, ok = t.aim(rest); !ok {
			return
		}
	}
	switch b.ID {
	case keys.Replay:
		t.tellPour()
	case keys.Pour:
		t.pour()
	case keys.Batches:
		t.batches()
	case keys.Stock:
		t.stock()
	default:
		t.adding = b.ID == keys.Add || b.ID == keys.Colour
		t.update(func() tea.Cmd { return t.m.perform(string(b.ID), b, a.Nth) })
		t.looked(b)
	}
	if rest != "" {
		t.answer(rest)
	}
}

// ofRow says whether an action is one on a row or a cell, which may be named behind it.
func ofRow(b keys.Binding) bool {
	const rows = keys.Numbers | keys.Words | keys.Held | keys.Coloured | keys.Removing | keys.Ordered | keys.Named
	return b.Needs&rows != 0 || b.ID == keys.Change || b.ID == keys.Explain
}

// answer takes the rest of a line as the answer to what its beginning has opened.
func (t *talk) answer(text string) {
	if p, ok := t.m.dialogs.Top().(*dialog.Page); ok {
		t.m.dialogs.Replace(p.Holding(text))
		return
	}
	switch {
	case t.adding:
		t.answerAdding(text)
	case t.m.dialogs.Top() != nil && t.m.dialogs.Top().Tell().Ask != "":
		t.hearDialog(text)
	case t.m.typing != nil:
		t.hearTyping(text)
	}
}

// answerAdding takes what is added, and behind it the figure of the new row: "olive oil 35". What is picked from no list is named: "sea 15".
func (t *talk) answerAdding(text string) {
	name, figure := text, ""
	if i := strings.LastIndexByte(text, ' '); i >= 0 && strings.ContainsAny(text[i+1:i+2], "0123456789") {
		name, figure = text[:i], text[i+1:]
	}
	switch {
	case t.m.dialogs.Top() != nil:
		t.hearDialog(name)
	case t.m.at().Has()&keys.Named != 0:
		c := t.m.cursors[t.m.at().ID]
		t.update(func() tea.Cmd { return t.m.act(t.binding(keys.Rename), 0) })
		t.keep(name)
		t.m.cursors[t.m.at().ID] = c
	}
	if figure != "" && t.asksFigure() {
		t.set(figure)
	}
}

// asksFigure says whether a row was added whose figure is still to be given: the cursor is on it.
func (t *talk) asksFigure() bool {
	cell, _, _ := t.m.cell()
	if !t.adding || t.m.dialogs.Top() != nil || t.m.typing != nil || cell.Set == nil && cell.Keep == nil {
		return false
	}
	t.adding = false
	return t.m.session.Revision() != t.told.revision
}

// looked tells the picture in words, after an action that looks at it in another way.
func (t *talk) looked(b keys.Binding) {
	switch b.ID {
	case keys.NextView, keys.PrevBar, keys.NextBar, keys.StepBack, keys.StepOn:
		t.out.Say(t.m.caption())
	case keys.Compare, keys.Weeks:
		t.tellFace()
	}
}

// tellPour tells the pour from the empty mould to the last stroke.
func (t *talk) tellPour() {
	acts := len(t.m.studio.design.Recipe.Script.Acts)
	for i := range acts {
		t.out.Sayf("step %d of %d: %s", i+1, acts, t.m.session.Sheet().TellAct(pour.Base, i))
	}
}

// pour hands the conversation to the live run of this plan.
func (t *talk) pour() {
	if t.m.opt.Pour == nil {
		t.m.refuse("no live run was opened with this bench")
		return
	}
	t.lend(func() (tea.Msg, error) {
		err := t.m.opt.Pour(t.m.session.Plan().Clone())
		return pouredMsg{err}, err
	})
}

// batches hands the conversation to the page of batches and takes it back when that is left.
func (t *talk) batches() {
	if t.m.opt.Batches == nil {
		t.m.refuse("no logbook was opened with this bench")
		return
	}
	t.lend(func() (tea.Msg, error) {
		poured, err := t.m.opt.Batches()
		return batchesMsg{poured, err}, err
	})
}

// stock hands the conversation to the page of stock and takes it back when that is left.
func (t *talk) stock() {
	if t.m.opt.Stock == nil {
		t.m.refuse(noLedger)
		return
	}
	t.lend(func() (tea.Msg, error) {
		err := t.m.opt.Stock()
		return stockMsg{err}, err
	})
}

// lend hands the conversation to something else. When that was ended from outside, so is this.
func (t *talk) lend(to func() (tea.Msg, error)) {
	t.update(func() tea.Cmd {
		msg, err := to()
		if errors.Is(err, terminal.ErrInterrupted) || errors.As(err, &terminal.EndedError{}) {
			t.cut, t.left = err, true
			return nil
		}
		return func() tea.Msg { return msg }
	})
}

// unheard says why an action of the bench has no line of its own, or "".
func unheard(id keys.ID) string {
	switch id {
	case keys.Up, keys.Down, keys.Left, keys.Right, keys.RowStart, keys.RowEnd, keys.PageUp, keys.PageDown:
		return "a row is chosen by its number or its name, a cell by the row and the head of its column"
	case keys.Digits:
		return "a row and a value set it: 2 16"
	case keys.Copy, keys.CopyPanel:
		return "there is no clipboard in plain mode; what is told can be copied from there"
	case keys.Mouse:
		return "there is no mouse in plain mode"
	case keys.ShowFace, keys.Letters, keys.Cells, keys.Bare, keys.OtherFace:
		return "there is no picture in plain mode; face tells the swirl in words"
	case keys.Suspend:
		return "Ctrl+Z stops the program as it does any other, and fg goes on"
	}
	return ""
}

// help tells what can be said: in short, all of it, or what holds a word.
func (t *talk) help(about string) {
	if about == "" {
		for _, l := range [...]string{
			"Enter tells the panel again, list all every figure of it.",
			"A number or a name chooses a row and tells all of it: 2, or poppy.",
			"A row and a value set it: 2 16, or poppy 16. The head of a column between them names another cell: poppy dose 0.4. Without a value it is asked for.",
			"The name of a station or a panel goes there: jugs, oils, lye, clock. go lists them all.",
			"An action is said by its key or its word, with the row it is for: d 2 or remove 2, hold 2, c 2, e 2 batter, a olive. ? all tells all actions, ? and a word those with that word.",
			`In a question, ` + dialog.LeaveIt + ` leaves it, and ` + dialog.Nothing + ` is an empty text.`,
		} {
			t.out.Say(l)
		}
	}
	t.out.Actions(t.table(), about, unheard, t.m.whyNot)
}
