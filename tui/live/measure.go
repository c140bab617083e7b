package live

import (
	"errors"
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// thing is something that can be measured.
type thing struct {
	name    string
	unit    pour.Unit
	planned pour.Figure
	event   logbook.Event // all but its value
}

// words opens a line for words that are journaled as an event.
func (m *Model) words(title string, e logbook.Event) {
	m.dialogs.Open(&dialog.Prompt{Title: title, Done: func(typed string) (tea.Cmd, error) {
		if typed == "" {
			return nil, errors.New(m.opt.Keys.Fill(keys.Line, "there is nothing in it; {close} leaves it"))
		}
		e.Text = typed
		return nil, m.told(m.run.Mark(e), string(e.Kind)+" kept")
	}})
}

func (m *Model) typeNote() { m.words("A note", logbook.Event{Kind: logbook.Noted}) }

func (m *Model) typeResult() { m.words("How it came out", logbook.Event{Kind: logbook.Result}) }

// typeMeasure opens a line for a weight or a temperature, first the one the step under way calls for.
func (m *Model) typeMeasure() {
	things := m.things()
	p := &dialog.Prompt{Title: "As it really is"}
	for _, t := range things {
		p.Things = append(p.Things, m.thingWords(t))
	}
	p.Done = func(typed string) (tea.Cmd, error) { return nil, m.measured(things[p.At], typed) }
	m.dialogs.Open(p)
}

// thingWords names what is measured, its unit and what the plan says.
func (m *Model) thingWords(t thing) string {
	show := m.sheet().Plan.Show
	_, unit := show.ToUnit(0, t.unit)
	planned := show.Figure(t.planned, show.Weight)
	if strings.HasPrefix(unit, "°") {
		planned = show.Figure(t.planned, show.Temp)
	}
	return t.name + " in " + unit + ", planned " + planned
}

// measured reads "36,5", or "381.5 L77" with the lot of what was weighed.
func (m *Model) measured(t thing, typed string) error {
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
	return m.told(m.run.Mark(e), fmt.Sprintf("%s: %s %s", t.name, number, unit))
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
		b, plan := m.sheet().Batch(n), m.sheet().Plan.Batch(n)
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
