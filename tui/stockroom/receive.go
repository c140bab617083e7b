package stockroom

import (
	"errors"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
	"pourbench/tui/dialog"
)

// padHint says what to write on the page of what came.
const padHint = "Type or paste a line for each thing: its name, its size, its price, then what else is known: \"olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 from the mill\". What is understood stands beside it; an empty line takes them all."

// openPad opens the page of what came on a text.
func (m *Model) openPad(text string) {
	m.dialogs.Open(dialog.NewPad(dialog.Pad{Title: "What came", Hint: padHint, Read: m.understand, Take: m.take}, text))
}

// known is what is known beforehand of what comes.
func (m *Model) known() invoice.Known {
	s := m.shelves.state
	return invoice.Known{Shelf: m.opt.Shelf, Held: s.Stock, Currency: s.Currency, Today: m.opt.Today}
}

// understand says what is made of the lines of what came.
func (m *Model) understand(text string) dialog.Reading {
	inv := invoice.Read(text, m.known())
	var out dialog.Reading
	for _, l := range inv.Lines {
		out.Beside = append(out.Beside, m.beside(l))
	}
	if strings.TrimSpace(text) == "" {
		return out
	}
	if why := inv.Refused(); why != "" {
		out.Sum = append(out.Sum, dialog.Line{Text: "× " + why, Style: m.look.Caution})
	} else {
		n := 0
		for _, x := range inv.Items() {
			n += x.Packs
		}
		out.Sum = append(out.Sum, dialog.Line{Text: plural(n, "pack") + " would be written in; an empty line takes them", Style: m.look.Good})
	}
	if odd := inv.Count(invoice.Odd); odd > 0 {
		out.Sum = append(out.Sum, dialog.Line{Text: "× " + plural(odd, "line") + " not understood: mend or empty it, else it is left out", Style: m.look.Caution})
	}
	for _, c := range inv.Check() {
		out.Sum = append(out.Sum, dialog.Line{Text: "! " + c, Style: m.look.Caution})
	}
	return out
}

// beside is what stands beside a line of what came.
func (m *Model) beside(l invoice.Line) dialog.Line {
	switch l.Kind {
	case invoice.Taken:
		return dialog.Line{Lead: "→", Style: m.look.Good, Text: l.Tell()}
	case invoice.Odd:
		return dialog.Line{Lead: "×", Style: m.look.Wrong, Text: l.Tell()}
	case invoice.Blank:
		if l.Text == "" {
			return dialog.Line{}
		}
	}
	return dialog.Line{Lead: "·", Style: m.look.Quiet, Text: l.Tell(), Quiet: true}
}

// take writes in what was understood; where lines were not, it asks first.
func (m *Model) take(text string) (tea.Cmd, error) {
	inv := invoice.Read(text, m.known())
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	if why := inv.Refused(); why != "" {
		return nil, errors.New(why)
	}
	odd := inv.Count(invoice.Odd)
	if odd == 0 {
		return m.receive(text, false), nil
	}
	m.dialogs.Open(&dialog.Question{
		Title: "Write it in without " + plural(odd, "line") + "?", Text: "What was not understood would be left out.",
		Answers: []dialog.Answer{
			{Text: "back, to mend it", Keys: "b", Do: func() tea.Cmd { m.openPad(text); return nil }},
			{Text: "write the others in", Keys: "w", Do: func() tea.Cmd { return m.receive(text, false) }},
		},
	})
	return nil, nil
}

// askAgain asks whether what seems to be written in already came again.
func (m *Model) askAgain(text string, why error) {
	m.dialogs.Open(&dialog.Question{
		Title: "Did it come again?", Text: why.Error(),
		Answers: []dialog.Answer{
			{Text: "no: back to what was typed", Keys: "n", Do: func() tea.Cmd { m.openPad(text); return nil }},
			{Text: "yes: write it in once more", Keys: "y", Do: func() tea.Cmd { return m.receive(text, true) }},
		},
	})
}

// receive writes in what came; again says that what seems to be written in already came again.
func (m *Model) receive(text string, again bool) tea.Cmd {
	inv := invoice.Read(text, m.known())
	items := inv.Items()
	return m.write(func(s stock.State) (desk.Deed, error) { return desk.Receive(s, items, again) }, writtenMsg{pad: text, undo: undone{said: "undone: what came"}})
}

// receiveForm asks for one thing that came, line by line; what is typed becomes a line that is read as all others.
func (m *Model) receiveForm() {
	var fields []dialog.Field
	start := ""
	if r, ok := m.chosen(); ok {
		start = r.name
	}
	for _, f := range lineFields() {
		if f.Key == nameKey {
			f.Start = start
		}
		fields = append(fields, f)
	}
	m.fillIn(dialog.Form{Title: "What came", Fields: fields}, func(texts map[string]string) (deed, error) {
		l, err := invoice.One(lineOf(texts), m.known())
		if err != nil {
			return nil, err
		}
		return func(s stock.State) (desk.Deed, error) { return desk.Receive(s, []invoice.Item{l.Item}, false) }, nil
	})
}

const nameKey = "name"

// lineFields are the lines of the form of one thing that came; their keys are the words before them in a written line.
func lineFields() []dialog.Field {
	return []dialog.Field{
		{Key: nameKey, Label: "what", Need: true, Hint: "as it is called on the shelf: olive, NaOH, a scent, box …"},
		{Key: "size", Label: "size", Need: true, Hint: "of one pack, with its unit: 5 kg, 250 ml, 100 pieces"},
		{Key: "price", Label: "price", Need: true, Hint: "of the pack, without postage"},
		{Key: "post", Label: "postage", Hint: "its share of it"},
		{Key: "lot", Label: "lot", Hint: "its maker's number, as it stands on the pack"},
		{Key: "exp", Label: "expires", Hint: "the last day it may be used: year-month-day"},
		{Key: "tare", Label: "empty tub", Hint: "what it weighs, with its unit: 350 g"},
		{Key: "bought", Label: "bought", Hint: "year-month-day; nothing: today"},
		{Key: "from", Label: "from", Hint: "the supplier"},
	}
}

// lineOf is what was typed in the form as one line.
func lineOf(texts map[string]string) string {
	words := []string{texts[nameKey], texts["size"], texts["price"]}
	for _, f := range lineFields()[3:] {
		if text := texts[f.Key]; text != "" {
			words = append(words, f.Key, text)
		}
	}
	return strings.Join(words, " ")
}
