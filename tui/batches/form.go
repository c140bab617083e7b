package batches

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// askLog lists what can be logged.
func (m *Model) askLog() tea.Cmd {
	l := &dialog.List{Title: "Log what happened to the batch", Below: true}
	row, _ := m.opt.Keys.Find(keys.Batching, keys.LogMark)
	for _, f := range life.Forms() {
		it := dialog.Item{ID: string(f.Kind), Name: f.Label, Says: f.Means, Detail: []string{f.Label + ": " + f.Means}}
		if i := slices.Index(row.Each, string(f.Kind)); i >= 0 && i < len(row.Keys) {
			it.Aside = keys.Shown(row.Keys[i])
		}
		l.Items = append(l.Items, it)
	}
	l.Choose = func(id string) tea.Cmd { return m.openForm(logbook.EventKind(id)) }
	m.dialogs.Open(l)
	return nil
}

// openForm opens the form of a kind for the chosen batch, with what is usual in it.
func (m *Model) openForm(kind logbook.EventKind) tea.Cmd {
	b, ok := m.chosen()
	if !ok {
		return nil
	}
	e := logbook.Event{Kind: kind}
	m.usual(b, &e)
	m.openFormOf(b, e, "")
	return nil
}

// openFormOf opens the form of an event as it stands; a correction says what it corrects.
func (m *Model) openFormOf(b *life.Batch, e logbook.Event, corrects string) {
	form, ok := life.FormOf(e.Kind)
	if !ok {
		form.Label = string(e.Kind)
	}
	f := dialog.Form{Title: form.Label + ", " + b.Name, Text: form.Means, About: m.aboutField}
	if corrects != "" {
		f.Title = "Correct: " + f.Title
	}
	for _, fl := range life.Fields(&e, m.planOf(b)) {
		f.Fields = append(f.Fields, m.lines(b, &e, fl)...)
	}
	id := b.ID
	var made *dialog.Form
	f.Done = func(texts map[string]string) (tea.Cmd, error) {
		event, err := fill(e, m.planOf(b), texts, m.opt.Today)
		if err != nil {
			return nil, err
		}
		if corrects != "" {
			if same(e, event, m.planOf(b)) {
				m.say("nothing was changed, so nothing was written")
				return nil, nil
			}
			event.Corrects = corrects
		}
		said := m.words(event)
		return m.write(id, event, said, made), nil
	}
	made = dialog.NewForm(f)
	m.dialogs.Open(made)
}

// massesKey is the field of the masses, which has a line for every bar where it is known which bars are weighed.
const massesKey = "masses"

// lines are the lines of a form for a field.
func (m *Model) lines(b *life.Batch, e *logbook.Event, f life.Field) []dialog.Field {
	start := f.Text()
	if start == "0" && e.Corrects == "" { // nobody has typed it
		start = ""
	}
	one := dialog.Field{Key: f.Key, Label: labelled(f.Label, f.Unit), Hint: f.Means, Words: f.Words, Need: f.Required, Start: start}
	if f.Key == dayKey {
		one.Words = []string{m.opt.Today.String(), (m.opt.Today - 1).String()}
	}
	if f.Key != massesKey || e.Kind != logbook.WeighIn || len(e.Life.Bars) == 0 {
		if len(one.Words) == 0 {
			one.Words = m.before(e.Kind, f.Key)
		}
		return []dialog.Field{one}
	}
	var out []dialog.Field
	last := lastMasses(b)
	for i, n := range e.Life.Bars {
		each := one
		each.Key = fmt.Sprintf("%s %d", massesKey, i)
		each.Label = labelled(fmt.Sprintf("bar %d", n), f.Unit)
		each.Start, each.Need, each.Words, each.Hint = "", true, nil, "what it weighs now"
		if i < len(e.Life.MassesG) {
			each.Start = fmt.Sprintf("%g", e.Life.MassesG[i])
		}
		if g, ok := last[n]; ok {
			each.Hint = fmt.Sprintf("it was %g g the last time", g)
		}
		out = append(out, each)
	}
	return out
}

// labelled is a label with its unit, where it does not say that already.
func labelled(label, unit string) string {
	if unit == "" || strings.Contains(label, unit) {
		return label
	}
	return label + ", " + unit
}

// dayKey is the field of the day, which every kind has.
const dayKey = "day"

// lastMasses is what each bar weighed the last time, g.
func lastMasses(b *life.Batch) map[int]float64 {
	out := map[int]float64{}
	for _, w := range b.WeighIns {
		for i, n := range w.Bars {
			if i < len(w.MassesG) {
				out[n] = w.MassesG[i]
			}
		}
	}
	return out
}

// usual puts into an event what is usual: today, the bars of the last weighing, what was said the last time, the first of words that are the
// only ones.
func (m *Model) usual(b *life.Batch, e *logbook.Event) {
	e.Life.Day = m.opt.Today.String()
	if e.Kind == logbook.WeighIn {
		e.Life.Bars = sameBars(b)
	}
	for _, f := range life.Fields(e, m.planOf(b)) {
		switch words := m.before(e.Kind, f.Key); {
		case (f.Key == "currency" || f.Key == "firm") && len(words) > 0:
			_ = f.Set(words[0])
		case len(f.Words) > 0 && f.Only:
			_ = f.Set(f.Words[0])
		}
	}
}

// mostSame is how many bars are weighed again at most: three to five tell as much as all of them (common practice, no source).
const mostSame = 5

// sameBars are the bars that are weighed again: those of the last weighing, or three along the loaf where all were weighed or none was yet.
func sameBars(b *life.Batch) []int {
	if n := len(b.WeighIns); n > 0 && len(b.WeighIns[n-1].Bars) <= mostSame {
		return slices.Clone(b.WeighIns[n-1].Bars)
	}
	n := b.Bars.Bars
	if n <= mostSame {
		return nil
	}
	return []int{n/6 + 1, n/2 + 1, n - n/6}
}

// mostBefore is how many of the last events of a kind are asked for words, and mostWords how many words a line offers.
const (
	mostBefore = 200
	mostWords  = 6
)

// before is the words that were typed into a field of free words before, the last first.
func (m *Model) before(kind logbook.EventKind, key string) []string {
	if !slices.Contains([]string{"at", "to", "currency", "price", "firm"}, key) {
		return nil
	}
	var out []string
	seen := 0
	for i := range m.all {
		for _, e := range slices.Backward(m.all[i].Events) {
			if e.Kind != kind {
				continue
			}
			for _, f := range life.Fields(&e, pour.Plan{}) {
				if text := f.Text(); f.Key == key && text != "" && !slices.Contains(out, text) {
					out = append(out, text)
				}
			}
			if seen++; seen >= mostBefore || len(out) >= mostWords {
				return out
			}
		}
	}
	return out
}

// aboutField is said behind a line of a form: which day it is.
func (m *Model) aboutField(key, text string) string {
	if key != dayKey {
		return ""
	}
	moment, err := day.ReadMoment(text, m.opt.Today)
	if err != nil {
		return ""
	}
	d, err := day.Parse(moment[:len("2026-12-06")])
	if err != nil {
		return ""
	}
	if moment != text && d.String() != text {
		return d.String() + ", " + ago(d, m.opt.Today)
	}
	return ago(d, m.opt.Today)
}

// fill puts what was typed into an event. What is wrong names its line.
func fill(e logbook.Event, plan pour.Plan, texts map[string]string, today day.Day) (logbook.Event, error) {
	e.Life.Bars, e.Life.MassesG = slices.Clone(e.Life.Bars), slices.Clone(e.Life.MassesG)
	for _, f := range life.Fields(&e, plan) {
		key, text := f.Key, texts[f.Key]
		if each := eachMass(texts); f.Key == massesKey && len(each) > 0 {
			for i, one := range each { // one by one, so that the line that is wrong is found
				if err := f.Set(one); err != nil {
					return e, dialog.WrongFieldError{Key: fmt.Sprintf("%s %d", massesKey, i), Err: err}
				}
			}
			text = strings.Join(each, " ")
		}
		if err := f.SetOn(text, today); err != nil {
			return e, dialog.WrongFieldError{Key: key, Err: err}
		}
	}
	return e, nil
}

// eachMass is the masses that were typed bar by bar.
func eachMass(texts map[string]string) []string {
	var out []string
	for i := 0; ; i++ {
		text, ok := texts[fmt.Sprintf("%s %d", massesKey, i)]
		if !ok {
			return out
		}
		out = append(out, text)
	}
}

// same reports whether two events say the same in every field of their kind.
func same(a, b logbook.Event, plan pour.Plan) bool {
	return slices.EqualFunc(life.Fields(&a, plan), life.Fields(&b, plan), func(x, y life.Field) bool { return x.Text() == y.Text() })
}
