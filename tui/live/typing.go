package live

import (
	"errors"
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
)

// typing is a line being typed.
type typing struct {
	title   string
	text    entry.Entry
	things  []thing // what can be measured; empty: it is words
	at      int
	refused string
	done    func(m *Model, typed string) error
}

// thing is something that can be measured.
type thing struct {
	name    string
	unit    pour.Unit
	planned pour.Figure
	event   logbook.Event // all but its value
}

func (m *Model) pressTyping(k tea.KeyPressMsg) tea.Cmd {
	t := m.typing
	t.refused = ""
	switch b, _ := lookup(keys.Typing, k.String()); b.ID {
	case keys.Restore:
		m.typing = nil
	case keys.Commit:
		if err := t.done(m, strings.TrimSpace(t.text.Text())); err != nil {
			t.refused = err.Error()
		}
	case nextItem, prevItem:
		if n := len(t.things); n > 0 {
			t.at = (t.at + map[bool]int{true: 1, false: n - 1}[b.ID == nextItem]) % n
		}
	default:
		if k.Text != "" {
			t.text.Insert(k.Text)
		} else {
			t.text.Press(k)
		}
	}
	return nil
}

// words opens a line for words that are journaled as an event.
func (m *Model) words(title string, e logbook.Event) {
	m.typing = &typing{title: title, text: entry.New(""), done: func(m *Model, typed string) error {
		if typed == "" {
			return errors.New("there is nothing in it; Esc leaves it")
		}
		e.Text = typed
		return m.keep(e, string(e.Kind)+" kept")
	}}
}

func (m *Model) typeNote() { m.words("A note", logbook.Event{Kind: logbook.Noted}) }

func (m *Model) typeResult() { m.words("How it came out", logbook.Event{Kind: logbook.Result}) }

// keep journals what was typed and closes the line; when it cannot, the line stays with the reason.
func (m *Model) keep(e logbook.Event, said string) error {
	if err := m.told(m.run.Mark(e), said); err != nil {
		return err
	}
	m.typing = nil
	return nil
}

// typeMeasure opens a line for a weight or a temperature, first the one the step under way calls for.
func (m *Model) typeMeasure() {
	m.typing = &typing{title: "As it really is", text: entry.New(""), things: m.things(), done: (*Model).measured}
}

// measured reads "36,5", or "381.5 L77" with the lot of what was weighed.
func (m *Model) measured(typed string) error {
	t := m.typing.things[m.typing.at]
	number, lot, _ := strings.Cut(typed, " ")
	v, err := strict.ParseNumber(number)
	if err != nil {
		return err
	}
	show := m.sheet().Plan.Show
	e := t.event
	e.Value = show.FromUnit(v, t.unit)
	if e.Kind == logbook.Weighed {
		e.Lot = strings.TrimSpace(lot)
	}
	_, unit := show.ToUnit(e.Value, t.unit)
	return m.keep(e, fmt.Sprintf("%s: %s %s", t.name, number, unit))
}

// things lists what can be measured: temperatures of the batch under way, then the other's, then everything on the weighing list.
func (m *Model) things() []thing {
	var out []thing
	now, _ := m.now()
	first := now.Batch
	if first == "" {
		first = pour.Base
	}
	for _, n := range []pour.BatchName{first, map[pour.BatchName]pour.BatchName{pour.Base: pour.Icing, pour.Icing: pour.Base}[first]} {
		b, plan := m.batchSheet(n), m.sheet().Plan.Batch(n)
		if b == nil || plan == nil {
			continue
		}
		temps := []thing{
			m.temperature(n, logbook.ReadLye, plan.LyeC), m.temperature(n, logbook.ReadOils, plan.OilsC), m.temperature(n, logbook.ReadBatter, b.Heat.MixC),
		}
		if m.running(n) { // only the batter can still be measured
			temps = temps[2:]
		}
		out = append(out, temps...)
	}
	for _, w := range m.sheet().Totals {
		out = append(out, thing{w.Name, pour.UnitGram, pour.Know(w.G), logbook.Event{Kind: logbook.Weighed, What: w.Name}})
	}
	return out
}

func (m *Model) temperature(n pour.BatchName, what string, planned float64) thing {
	return thing{string(n) + " " + what, pour.UnitCelsius, pour.Know(planned), logbook.Event{Kind: logbook.Read, Batch: n, What: what}}
}
