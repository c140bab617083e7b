package live

import (
	"fmt"
	"slices"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
)

// finish finishes the step under way; when none is left, it closes the pour.
func (m *Model) finish() tea.Cmd {
	now, ok := m.now()
	if !ok {
		return m.end()
	}
	m.run.Tick()
	m.settle()
	if m.live.Run()-m.finished < quiet {
		m.refuse("a step was finished a moment ago; press {finish step} again for the next one")
		return nil
	}
	if f, stops := m.stopped(now.Batch); stops && !f.LyeIn && (now.Kind == underway.StepLyeIn || now.Kind == pour.TaskMix) {
		m.askLye(f)
		return nil
	}
	if x, weighs := m.mass(now.Step); weighs {
		if m.opt.Plain {
			m.refuse("say what " + x.Name + " weighs: its grams, a number")
			return nil
		}
		m.typeMeasure()
		return nil
	}
	if m.told(m.run.Do(now.Key), "done: "+m.title(now.Step)) == nil {
		m.chosen, m.finished = "", m.live.Run()
	}
	return nil
}

// takeBack takes back the last mark and says which it was.
func (m *Model) takeBack() {
	if m.told(m.run.Back(), "") != nil {
		return
	}
	m.finished = -quiet
	events := m.live.Events
	for _, e := range events {
		if e.ID == events[len(events)-1].What {
			if e.Kind == logbook.Rescued || e.Kind == logbook.Troubled { // the step it brought up goes with it
				m.chosen = ""
			}
			m.say("taken back: " + m.markWords(e))
		}
	}
}

// markWords is a mark in words.
func (m *Model) markWords(e logbook.Event) string {
	switch e.Kind {
	case logbook.Done, logbook.Skipped:
		for _, s := range m.state.Steps {
			if s.Key == e.Step && e.Kind == logbook.Skipped {
				return m.title(s.Step) + ", not done"
			}
			if s.Key == e.Step {
				return m.title(s.Step)
			}
		}
	case logbook.Seen:
		return e.Jug + " " + e.Stage.String()
	case logbook.NotYet:
		return e.Jug + " not yet " + e.Stage.String()
	case logbook.Blended:
		return fmt.Sprintf("a burst of %.0f s", e.Value)
	case logbook.Read:
		return m.weighedWords(e) + " at " + m.sheet().Plan.Show.Temp(e.Value)
	case logbook.Weighed, logbook.Cut:
		text := m.weighedWords(e) + " " + m.sheet().Plan.Show.Dose(e.Value)
		if e.Lot != "" {
			text += ", lot " + e.Lot
		}
		return text
	case logbook.Noted, logbook.Result:
		return string(e.Kind) + ": " + e.Text
	case logbook.Ended:
		return "the end of the " + m.event()
	case logbook.Unpoured:
		return e.Jug + " stays in its jug"
	}
	return strings.TrimSpace(e.Jug + " " + e.What)
}

// choose chooses a step out of its turn.
func (m *Model) choose(by int) {
	list := m.left
	m.chooseStep(list[min(max(m.nowIndex(list)+by, 0), len(list)-1)].Key)
}

// chooseStep chooses a step that is left by its key.
func (m *Model) chooseStep(key string) {
	i := slices.IndexFunc(m.left, func(d underway.Due) bool { return d.Key == key })
	if m.chosen = key; i == 0 {
		m.chosen = ""
		m.say("the next step")
		return
	}
	m.say("out of its turn: " + m.title(m.left[i].Step))
}

// pick chooses a jug by its number.
func (m *Model) pick(i int) {
	m.jug = i
	m.say("chosen: " + m.jugName(i))
}

// see notes that the chosen jug is at a stage now, or was not yet there when it was used.
func (m *Model) see(stage chem.Stage, kind logbook.EventKind) {
	j := m.board.Jugs[m.jug]
	words := ""
	if kind == logbook.NotYet {
		words = "not yet "
	}
	if kind == logbook.Seen && j.Reached > int(stage) {
		m.refuse(fmt.Sprintf("%s was seen at %s already; %s takes it back", j.Jug, chem.Stage(j.Reached-1), m.key(keys.TakeBack)))
		return
	}
	all := ""
	if kind == logbook.Seen && m.state.OnePot(j.Batch, m.live.Run()) {
		all = fmt.Sprintf(", and all of the %s: it is still one pot", j.Batch)
	}
	_ = m.told(m.run.Mark(logbook.Event{Kind: kind, Batch: j.Batch, Jug: j.Jug, Stage: stage}), fmt.Sprintf("%s: %s%s%s", m.jugName(m.jug), words, stage, all))
}

// blend switches the stick blender on, or off and notes the burst.
func (m *Model) blend() {
	m.run.Tick()
	m.settle()
	if m.blender < 0 {
		m.blender = m.live.Run()
		m.say("stick blender on; {blender} again when it is off")
		return
	}
	s := (m.live.Run() - m.blender).Round(time.Second).Seconds()
	m.blender = -1
	if s < 1 {
		m.refuse("the stick blender ran for less than a second; nothing is noted")
		return
	}
	now, ok := m.now()
	if !ok {
		return
	}
	_ = m.told(m.run.Mark(logbook.Event{Kind: logbook.Blended, Batch: now.Batch, Value: s}), fmt.Sprintf("stick blender %.0f s", s))
}

// end closes the pour.
func (m *Model) end() tea.Cmd {
	if m.told(m.run.Mark(logbook.Event{Kind: logbook.Ended}), "the "+m.event()+" is over; {quit} leaves") != nil || !m.trialling() {
		return nil
	}
	return m.readTrial()
}
