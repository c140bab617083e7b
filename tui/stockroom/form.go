package stockroom

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
	"pourbench/tui/dialog"
)

// Keys of the lines of forms.
const (
	dayKey   = "day"
	foundKey = "found"
	tareKey  = "tare"
	whyKey   = "why"
	muchKey  = "quantity"
)

// fillIn opens a form whose texts become something that is done.
func (m *Model) fillIn(f dialog.Form, make func(texts map[string]string) (deed, error)) {
	var made *dialog.Form
	f.About = m.about
	f.Done = func(texts map[string]string) (tea.Cmd, error) {
		do, err := make(texts)
		if err != nil || do == nil {
			return nil, err
		}
		if _, err := do(m.shelves.state); err != nil { // it would be refused under the lock, too
			if _, asks := texts[whyKey]; asks && texts[whyKey] == "" && strings.Contains(err.Error(), "say why") {
				return nil, wrong(whyKey, err)
			}
			return nil, err
		}
		return m.write(do, writtenMsg{form: made, undo: undone{said: "undone: " + f.Title}}), nil
	}
	made = dialog.NewForm(f)
	m.dialogs.Open(made)
}

// about is said behind a line of a form: which day it is.
func (m *Model) about(key, text string) string {
	d, err := day.Read(text, m.opt.Today)
	if key != dayKey || err != nil {
		return ""
	}
	switch n := int(m.opt.Today - d); {
	case n == 0:
		return "today"
	case n == 1:
		return "yesterday"
	case n > 1:
		return fmt.Sprintf("%d days ago", n)
	}
	return "still to come"
}

// dayField is the line of the day, which is today.
func (m *Model) dayField() dialog.Field {
	return dialog.Field{
		Key: dayKey, Label: "day", Hint: "year-month-day, 1.12. or 1 Dec", Need: true, Start: m.opt.Today.String(),
		Words: []string{m.opt.Today.String(), (m.opt.Today - 1).String()},
	}
}

// wrong is what is wrong with a line of a form.
func wrong(key string, err error) error { return dialog.WrongFieldError{Key: key, Err: err} }

// onDay reads the day of a form.
func (m *Model) onDay(texts map[string]string) (day.Day, error) {
	d, err := day.Read(texts[dayKey], m.opt.Today)
	if err != nil {
		return 0, wrong(dayKey, err)
	}
	return d, nil
}

// openForm asks on which day the chosen pack was opened.
func (m *Model) openForm() {
	r, _ := m.chosen()
	id := r.pack.ID
	m.fillIn(dialog.Form{Title: "Open " + id, Text: r.name, Fields: []dialog.Field{m.dayField()}}, func(texts map[string]string) (deed, error) {
		on, err := m.onDay(texts)
		return func(s stock.State) (desk.Deed, error) { return desk.Open(s, id, on) }, err
	})
}

// countForm asks what the chosen pack weighs, or how many pieces are in it.
func (m *Model) countForm() {
	r, _ := m.chosen()
	p, kind := r.pack, r.material.Kind
	fields := []dialog.Field{{Key: foundKey, Label: "pieces", Need: true, Hint: "how many are there; by the book " + amount(p.Left, kind)}}
	if !kind.Counted() {
		fields[0] = dialog.Field{Key: foundKey, Label: "with its tub, g", Need: true, Hint: "what the tub weighs with what is in it; by the book " + amount(p.Left, kind) + " are in it"}
		tare := dialog.Field{Key: tareKey, Label: "empty tub, g", Need: true, Hint: "what the empty tub weighs; 0 where the weight is without it"}
		if p.Tare > 0 {
			tare.Start = p.Tare.String()
		}
		fields = append(fields, tare)
	}
	fields = append(fields, dialog.Field{Key: whyKey, Label: "why it differs", Words: []string{"usual loss", "spilled", "weighed wrongly before"}, Hint: "needed where more is missing than usual, or something was found"}, m.dayField())
	m.fillIn(dialog.Form{Title: "Weigh " + p.ID, Text: r.name, Fields: fields}, func(texts map[string]string) (deed, error) {
		on, err := m.onDay(texts)
		if err != nil {
			return nil, err
		}
		w := desk.Weighing{Pack: p.ID, Why: texts[whyKey], On: on}
		if w.Found, err = invoice.Quantity(texts[foundKey], kind); err != nil {
			return nil, wrong(foundKey, err)
		}
		if !kind.Counted() {
			tare, err := quantityOrNone(texts[tareKey], lot.Other)
			if err != nil {
				return nil, wrong(tareKey, err)
			}
			w.Tare = &tare
		}
		return func(s stock.State) (desk.Deed, error) { return desk.Count(s, w) }, nil
	})
}

// quantityOrNone is a quantity that may be nothing.
func quantityOrNone(text string, kind lot.Kind) (lot.Quantity, error) {
	if t := strings.TrimSpace(text); t == "" || t == "0" {
		return 0, nil
	}
	return invoice.Quantity(text, kind)
}

// loseForm asks what of the chosen pack was lost, and why.
func (m *Model) loseForm() {
	r, _ := m.chosen()
	p, kind := r.pack, r.material.Kind
	fields := []dialog.Field{
		{Key: muchKey, Label: "how much, " + kind.Unit(), Hint: "nothing written: all that is left, " + amount(p.Left, kind)},
		{Key: whyKey, Label: "why", Need: true, Words: []string{"spilled", "rancid", "past its date", "given away"}, Hint: "what became of it"},
		m.dayField(),
	}
	m.fillIn(dialog.Form{Title: "Lose of " + p.ID, Text: r.name + ", " + amount(p.Left, kind) + " left", Fields: fields}, func(texts map[string]string) (deed, error) {
		on, err := m.onDay(texts)
		if err != nil {
			return nil, err
		}
		q, err := quantityOrNone(texts[muchKey], kind)
		if err != nil {
			return nil, wrong(muchKey, err)
		}
		return func(s stock.State) (desk.Deed, error) { return desk.Lose(s, p.ID, q, texts[whyKey], on) }, nil
	})
}

// correctForm opens the chosen entry as it stands; what is changed is written anew.
func (m *Model) correctForm() {
	e, ok := m.chosenMark()
	if !ok {
		return
	}
	fields := correctFields(e.Entry)
	id := e.ID
	m.fillIn(dialog.Form{Title: "Correct " + id, Text: desk.Tell(e.Entry), Fields: fields}, func(texts map[string]string) (deed, error) {
		var pairs []string
		for _, f := range fields {
			if texts[f.Key] != f.Start {
				pairs = append(pairs, f.Key+"="+texts[f.Key])
			}
		}
		if len(pairs) == 0 {
			m.say("nothing was changed, so nothing was written")
			return nil, nil
		}
		return func(s stock.State) (desk.Deed, error) { return desk.Correct(s, id, pairs) }, nil
	})
}

// correctFields are the lines of an entry that can be corrected, by the keys of [desk.Correct].
func correctFields(e stock.Entry) []dialog.Field {
	written := func(q lot.Quantity) string {
		if q == 0 {
			return ""
		}
		return q.String()
	}
	date := func(d day.Day) string {
		if d == 0 {
			return ""
		}
		return d.String()
	}
	out := []dialog.Field{{Key: "day", Label: "day", Need: true, Start: date(e.Day)}}
	came := e.Kind == stock.Received || e.Kind == stock.Made
	if came {
		out = append(out, dialog.Field{Key: "name", Label: "name", Start: e.Name}, dialog.Field{Key: "lot", Label: "lot", Start: e.Lot},
			dialog.Field{Key: "supplier", Label: "from", Start: e.Supplier}, dialog.Field{Key: "expires", Label: "expires", Start: date(e.Expires), Hint: "the last day it may be used; nothing where none is named"})
	}
	if e.Kind != stock.Opened {
		out = append(out, dialog.Field{Key: muchKey, Label: "quantity", Start: written(e.Q), Hint: "g, or pieces of what is counted; kg may stand behind it"})
	}
	if came {
		out = append(out, dialog.Field{Key: tareKey, Label: "empty tub, g", Start: written(e.Tare)}, dialog.Field{Key: "loss", Label: "usual loss", Start: written(e.Loss)})
	}
	if e.Kind == stock.Received {
		out = append(out, dialog.Field{Key: "price", Label: "price", Need: true, Start: e.Price.String()}, dialog.Field{Key: "postage", Label: "postage", Start: e.Postage.String()})
	}
	if !came {
		out = append(out, dialog.Field{Key: "text", Label: "words", Start: e.Text})
	}
	return out
}

// ruleForm asks how costs are found and in which currency prices are.
func (m *Model) ruleForm() {
	s := m.shelves.state
	fields := []dialog.Field{
		{Key: "formula", Label: "costs by", Need: true, Words: []string{string(lot.FIFO), string(lot.Average)}, Start: string(s.Formula), Hint: "fifo: first in, first out; average: moving average. One rule is kept for all"},
		{Key: "currency", Label: "currency", Start: s.Currency, Hint: "three letters, of all prices; nothing is converted"},
		{Key: whyKey, Label: "why", Hint: "needed once something came: everything that went out is costed anew"},
	}
	m.fillIn(dialog.Form{Title: "The rule of costs", Fields: fields}, func(texts map[string]string) (deed, error) {
		return func(s stock.State) (desk.Deed, error) {
			return desk.Rule(s, lot.Formula(texts["formula"]), strings.ToUpper(texts["currency"]), texts[whyKey])
		}, nil
	})
}
