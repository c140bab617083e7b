package stockroom

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// talk is the page told in lines and answered in lines.
type talk struct {
	lines.Chat
	m *Model
}

// Converse opens the page in plain mode and returns when the maker has left it or nothing more comes in.
func Converse(o Options, with lines.Talk) error {
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	o.Keys = o.Keys.Spoken()
	t := newTalk(New(o), with.Out)
	t.Finish(t.m.load())
	t.Out.Gap()
	t.Out.Say("The stock, in plain mode. A number chooses a line and tells it, list tells all of them, search WORDS those that hold the words, receive writes in what came, ? tells what can be said, q leaves.")
	t.Said()
	t.tellList()
	err := t.Run(with.In)
	if err == nil && with.Out.Err() != nil {
		err = fmt.Errorf("tell the stock: %w", with.Out.Err())
	}
	return err
}

func newTalk(m *Model, out *lines.Paper) *talk {
	t := &talk{m: m}
	t.Chat = lines.Chat{
		Model: m, Dialogs: &m.dialogs, Status: &m.status, Refuse: m.refuse, Out: out, Name: "stock",
		Command: t.command, Look: m.load, Ended: terminal.Ended,
	}
	return t
}

// command does what a line asks of the page.
func (t *talk) command(text string) {
	first, rest, _ := strings.Cut(text, " ")
	rest = strings.TrimSpace(rest)
	if n, err := strconv.Atoi(first); err == nil {
		t.choose(n, rest)
		return
	}
	switch word := strings.ToLower(first); word {
	case "":
		t.tellRow()
		return
	case dialog.LeaveIt:
		t.m.say("nothing waits for an answer")
		return
	case "list":
		t.m.clearSearch()
		t.tellList()
		return
	case "search", "/":
		t.m.search.Typed = entry.New(rest)
		t.m.sift()
		t.tellList()
		return
	case "entry":
		t.entry(rest)
		return
	}
	table := t.m.opt.Keys.Of(keys.Stocking)
	if asked, ok := lines.Match(table, t.acts, text); ok {
		t.act(asked)
		return
	}
	asked, others := lines.Begun(table, text)
	switch {
	case asked.Binding.ID != "":
		t.act(asked)
	case len(others) > 0:
		t.m.refuse(text + " could be " + strings.Join(others, ", ") + ": say more of it")
	default:
		t.m.refuse("“" + text + "” is nothing to do; ? tells what can be said, list what there is")
	}
}

func (t *talk) acts(b keys.Binding) bool { return t.m.cannot(b.ID) == "" && unheard(b.ID) == "" }

// choose chooses a line by its number in the list and tells it, or does what is said of it.
func (t *talk) choose(n int, rest string) {
	if n < 1 || n > len(t.m.shown) {
		t.m.refuse(fmt.Sprintf("there is no line %d; %d are in the list", n, len(t.m.shown)))
		return
	}
	t.m.list.At, t.m.inside, t.m.story.Mark = n-1, false, 0
	if rest == "" {
		t.tellRow()
		return
	}
	t.command(rest)
}

// entry chooses an entry of the pack by its number, to be corrected or taken back.
func (t *talk) entry(text string) {
	r, _ := t.m.chosen()
	first, rest, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(first)
	marks := t.m.marks(r)
	switch {
	case len(marks) == 0:
		t.m.refuse("no entry is here; go to a pack by its number")
		return
	case err != nil || n < 1 || n > len(marks):
		t.m.refuse(fmt.Sprintf("an entry is chosen by its number: 1 to %d, as in entry 1 correct", len(marks)))
		return
	}
	t.m.inside, t.m.story.Mark = true, n-1
	if rest = strings.TrimSpace(rest); rest != "" {
		t.command(rest)
		return
	}
	t.Out.Say(marks[n-1].Day.String() + ": " + t.m.movement(marks[n-1], r.material.Kind))
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
		if a.Rest != "" {
			t.entry(a.Rest + " " + string(b.ID))
			return
		}
	}
	t.Finish(t.m.perform(b, a.Nth))
	if b.ID == keys.Emptied {
		t.tellList()
	}
	t.AnswerRest(a.Rest)
}

// unheard says why an action of the page has no line of its own, or "".
func unheard(id keys.ID) string {
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last, keys.LookAt, keys.ToList:
		return "a line is chosen by its number; list tells all of them, entry 2 an entry of the pack"
	case keys.Mouse:
		return "there is no mouse in plain mode"
	case keys.Suspend:
		return "Ctrl+Z stops the program as it does any other, and fg goes on"
	}
	return ""
}

// mostTold is how many lines are told at once.
const mostTold = 60

// tellList tells the lines of the list, each with its number.
func (t *talk) tellList() {
	t.Out.Say(t.m.counted() + ".")
	if len(t.m.shown) == 0 {
		t.Out.Say(t.m.nothing())
		return
	}
	for i, r := range t.m.shown {
		if i == mostTold {
			t.Out.Say(fmt.Sprintf("and %d more; search WORDS narrows the list", len(t.m.shown)-mostTold))
			return
		}
		c := t.m.cells(r)
		words := []string{c.name, c.left + " left"}
		for _, w := range []struct{ lead, text string }{{"lot ", c.lot}, {"reserved ", c.reserved}, {"opened ", c.opened}, {"cost ", c.value}} {
			if w.text != "" {
				words = append(words, w.lead+w.text)
			}
		}
		switch {
		case !r.isPack && c.expires != "":
			words = append(words, "some past its date")
		case r.isPack:
			words = append(words, map[expiry]string{undated: "no date", good: "expires ", soon: "soon expires ", past: "past its date "}[expiryOf(r.pack, t.m.shelves.state.Today)]+strings.TrimLeft(c.expires, " ×!"))
		}
		t.Out.Say(strconv.Itoa(i+1) + " " + strings.Join(words, ", "))
	}
}

// tellRow tells all of the chosen line, its entries with their numbers.
func (t *talk) tellRow() {
	r, ok := t.m.chosen()
	if !ok {
		t.m.refuse("nothing is chosen; list tells what there is")
		return
	}
	t.Out.Gap()
	t.Out.Say(heading(r) + ".")
	const wide = 1 << 15
	for _, l := range t.m.told(r, wide) {
		switch {
		case l.Head:
			t.Out.Say(l.Lead + ":")
		case l.Mark > 0:
			t.Out.Say(fmt.Sprintf("entry %d, %s: %s", l.Mark, l.Lead, l.Text))
		default:
			t.Out.Tell(dialog.Told{Lines: []dialog.Line{{Lead: l.Lead, Text: l.Text}}})
		}
	}
}

// help tells what can be said: in short, all of it, or what holds a word.
func (t *talk) help(about string) {
	if about == "" {
		t.Out.Say("A number chooses a line and tells it; Enter tells the chosen one again. list tells all lines, search WORDS those that hold every word.")
		t.Out.Say("receive asks for what came, a line for each thing; receive olive 5 kg 38.50 begins with that. A form is answered line by line, Enter keeps it. entry 2 correct and entry 2 take back change an entry, undo undoes the last thing.")
		t.Out.Say("? all tells every action, ? and a word those with that word.")
	}
	t.Out.Actions(t.m.opt.Keys.Of(keys.Stocking), about, unheard, t.m.whyNot)
}
