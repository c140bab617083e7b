package live

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

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

// typeMeasure opens a line for a weight or a temperature, at the first thing of the step under way that was not measured yet.
func (m *Model) typeMeasure() {
	now, _ := m.now()
	m.typeMeasureAt(now.Step, false)
}

// typeMeasureOf is typeMeasure for the alkali of a batch, as when its lye is made.
func (m *Model) typeMeasureOf(n pour.BatchName) {
	m.typeMeasureAt(underway.Step{Kind: underway.StepMakeLye, Batch: n}, true)
}

// typeMeasureAt is typeMeasure at a step; again: at its alkali, whether that was weighed or not.
func (m *Model) typeMeasureAt(now underway.Step, again bool) {
	things := m.state.Things(m.sheet(), now)
	p := &dialog.Prompt{Title: m.measureTitle(), Text: m.measureHint()}
	tell := func() {
		p.Things = nil
		for _, t := range things {
			p.Things = append(p.Things, m.thingWords(t))
		}
	}
	tell()
	p.At = m.state.Offered(things)
	if again {
		p.At = max(slices.IndexFunc(things, func(t underway.Thing) bool { return t.Weigh.Kind == pour.WeighAlkali }), 0)
	}
	if i := slices.IndexFunc(things, func(t underway.Thing) bool { return m.cutting() && t.Event.Step == now.Key }); i >= 0 {
		p.At = i
	}
	p.Done = func(typed string) (tea.Cmd, error) {
		if e, was := m.weighed(things[p.At]); was && typed == "" {
			m.askWeighing(e)
			return nil, nil
		}
		err := m.measured(things[p.At], typed)
		if err == nil { // the line may go on to the next thing
			things = inPlace(things, m.state.Things(m.sheet(), now))
			tell()
		}
		return nil, err
	}
	m.dialogs.Open(p)
}

// inPlace is things as they stand now, each in the place it had in the list before, so that nobody types at another one.
func inPlace(before, now []underway.Thing) []underway.Thing {
	out := slices.Clone(before)
	for i, t := range out {
		for _, x := range now {
			if x.Event.Kind == t.Event.Kind && logbook.OfOneThing(x.Event, t.Event) {
				out[i] = x
			}
		}
	}
	return out
}

// thingWords names what is measured, its unit, what the plan says and what was measured before.
func (m *Model) thingWords(t underway.Thing) dialog.Thing {
	show := m.sheet().Plan.Show
	_, unit := show.ToUnit(0, t.Unit)
	bare := t.Event
	bare.Batch = ""
	out := dialog.Thing{Bare: m.weighedWords(bare), Name: m.weighedWords(t.Event), Also: lines.ASCII(m.weighedWords(t.Event)), Says: " in " + unit + ", planned " + show.Figure(t.Planned, m.drawn(t)), Had: t.Measured.Known}
	if out.Had {
		out.Says += ", measured " + show.Figure(t.Measured, m.drawn(t))
	}
	return out
}

// drawn is how a figure of a thing is drawn: as the scale shows it on which the paper has it weighed.
func (m *Model) drawn(t underway.Thing) func(float64) string {
	show := m.sheet().Plan.Show
	switch {
	case t.Event.Kind == logbook.Read:
		return show.Temp
	case t.Weigh.Fine():
		return show.Dose
	}
	return show.Weight
}

// weighedWords names what is measured: its batch, its jug and itself.
func (m *Model) weighedWords(e logbook.Event) string {
	if m.cutting() && e.Step != "" {
		return m.pieceName(e.Step)
	}
	return strings.Join(slices.DeleteFunc([]string{string(e.Batch), e.Jug, e.What}, func(s string) bool { return s == "" }), " ")
}

// measured takes what was typed of a thing (see [readMeasure]) and says what was understood, beside what was meant.
func (m *Model) measured(t underway.Thing, typed string) error {
	show := m.sheet().Plan.Show
	read, err := readMeasure(typed, t.Unit, show)
	if err != nil {
		return err
	}
	if read.lot != "" && m.cutting() {
		return fmt.Errorf("note %q: a piece that was cut has no lot; type its number alone", typed)
	}
	if read.v <= 0 && m.weighsBar(t.Event) {
		return fmt.Errorf("weigh %s: %q: a bar of nothing is none; type what it weighs, or go on without", m.weighedWords(t.Event), typed)
	}
	e := t.Event
	e.Value, e.Lot = read.v, read.lot
	done := m.weighedWords(e) + ": " + m.readWords(t, read)
	say := m.say
	if far := farWords(t, e.Value, m.step(t)); far != "" {
		say, done = m.warn, "that is "+far+"; "+m.key(keys.TakeBack)+" takes it back: "+done
	}
	err = m.run.Mark(e)
	m.settle()
	if judged := m.lyeWords(e.Batch); judged != "" && e.Kind == logbook.Weighed && e.Jug == "" {
		say, done = m.warn, done+"; "+judged // on the screen it stands above, too
	}
	return m.toldBy(say, err, done)
}

// lotOf is the lot that the weighing of a thing names that counts.
func (m *Model) lotOf(thing logbook.Event) string {
	for _, e := range slices.Backward(m.state.Marks) {
		if e.Kind == logbook.Weighed && e.Kind == thing.Kind && e.Batch == thing.Batch && e.Jug == thing.Jug && e.What == thing.What && e.Step == thing.Step {
			return e.Lot
		}
	}
	return ""
}

// readWords is what was understood of a thing: the number, in the unit asked for too where another was named, its lot, and what was meant, so
// that a slip of the finger shows.
func (m *Model) readWords(t underway.Thing, read typedMeasure) string {
	show := m.sheet().Plan.Show
	text := read.number
	if !read.plain {
		text += " (" + m.drawn(t)(read.v) + ")"
	}
	switch was := m.lotOf(t.Event); {
	case read.lot != "":
		text += ", lot " + read.lot
	case was != "": // the last weighing counts, with its lot or none
		text += ", without lot " + was + " of the weighing before: type it behind the number if it is of it"
	}
	if t.Planned.Known {
		text += ", planned " + show.Figure(t.Planned, m.drawn(t))
	}
	return text
}

// step is the step of the scale that a thing is weighed on, g.
func (m *Model) step(t underway.Thing) float64 {
	if t.Weigh.Fine() {
		return m.sheet().Plan.Show.LyeStepG
	}
	return m.sheet().Plan.Show.ScaleStepG
}

// A weight within so much of its plan, or within so many steps of its scale, is none that wants an eye.
const (
	nearPart  = 0.2
	nearSteps = 3
)

// farWords says how many times its plan a weight is that lies far from it; "" for one that does not, and for what is no weight.
func farWords(t underway.Thing, g, stepG float64) string {
	const slack = 1e-9
	planned := t.Planned.V
	if off := math.Abs(g - planned); t.Event.Kind == logbook.Read || !t.Planned.Known || planned <= 0 || off <= nearPart*planned+slack || off <= nearSteps*stepG+slack {
		return ""
	}
	switch times := g / planned; {
	case g == 0:
		return "nothing of the plan"
	case times < 0.1:
		return fmt.Sprintf("%.1g times the plan", times)
	default:
		return fmt.Sprintf("%.1f times the plan", times)
	}
}
