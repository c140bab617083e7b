package fresh

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pourbench/pour"
)

// Form asks for the wishes of a new plan, one question after another. It knows no screen: a list and a line to type can show it, and so can
// lines of text. The zero value of its steps is the first question.
type Form struct {
	Wishes Wishes
	shelf  pour.Shelf
	step   step
}

// step is a question of the form.
type step int

const (
	askMould step = iota
	askBars
	askTechnique
	askColours
	askScents
	askIcing
	askName
	done
)

// NewForm is a form at its first question, for a plan in the units of the one before; the zero value: metric.
func NewForm(s pour.Shelf, before pour.Show) Form {
	return Form{Wishes: Wishes{Show: before}, shelf: s}
}

// Question is one thing to be decided: a choice, or where there are none a line to type.
type Question struct {
	Ask     string
	Note    string   // said beside it
	Typed   string   // what stands on the line already
	Shelf   string   // the list of the shelf that the choices are from, as the bench names it; empty: none
	SoFar   string   // what was chosen of it already
	Choices []Choice // the first is what is usual
}

// The lists of the shelf that choices are from.
const (
	listMoulds     = "moulds"
	listTechniques = "techniques"
	listColourants = "colourants"
	listScents     = "scents"
)

// Choice is one answer to choose. One that is on the shelf has its id and name only: the shelf tells the rest.
type Choice struct {
	ID     string
	Name   string
	Aside  string   // said beside the name
	Detail []string // said where there is room
}

// Ids of choices that stand for no entry of the shelf.
const (
	choiceDone  = "done"
	choicePlain = "plain"
	choiceBars  = "bars"
	choiceYes   = "yes"
	choiceNo    = "no"
)

// Question is what is asked now; false where everything is.
func (f Form) Question() (Question, bool) {
	switch f.step {
	case askMould:
		return f.mould(), true
	case askBars:
		return Question{Ask: "How many bars?", Note: "A loaf of the shelf is blocked off behind the last one, or made longer. Put your own sizes in later, under Mould.", Typed: "10"}, true
	case askTechnique:
		return f.technique(), true
	case askColours:
		return f.colours(), true
	case askScents:
		return f.scents(), true
	case askIcing:
		return Question{Ask: "An icing piped on top?", Choices: []Choice{
			{ID: choiceNo, Name: "no icing", Detail: []string{"No icing", "I on the bench adds one later."}},
			{ID: choiceYes, Name: "an icing", Detail: []string{"An icing", "A second, stiffer batch, " + f.Wishes.show().Told(pour.UsualIcingG, pour.UnitGram) + " on every bar, uncoloured; colour and size it under Icing."}},
		}}, true
	case askName:
		return Question{Ask: "What is it called?", Note: "Plan, file and papers are named after it. Enter alone: " + everydayName + ". Its figures are in " + f.Wishes.show().Units() + "."}, true
	}
	return Question{}, false
}

// Answer takes the id of a choice, or a line that was typed, and goes on. What cannot be is refused with the reason.
func (f Form) Answer(id string) (Form, error) {
	if q, ok := f.Question(); !ok || len(q.Choices) > 0 && !slices.ContainsFunc(q.Choices, func(c Choice) bool { return c.ID == id }) {
		return f, fmt.Errorf("answer %q: it is none of the choices", id)
	}
	next := f
	next.step++
	w := &next.Wishes
	w.Colours, w.Scents = slices.Clone(w.Colours), slices.Clone(w.Scents)
	switch f.step {
	case askMould:
		if id != choiceBars {
			w.Mould, next.step = id, askTechnique
		}
	case askBars:
		n, err := strconv.Atoi(strings.TrimSpace(id))
		if err != nil || n < 1 || n > MostBars {
			return f, fmt.Errorf("%q bars: write a whole number from 1 to %d", id, MostBars)
		}
		w.Bars = n
	case askTechnique:
		w.Technique = id
	case askColours:
		next.step = f.colour(w, id)
	case askScents:
		switch {
		case id != choiceDone:
			w.Scents = append(w.Scents, id)
			next.step = askScents
		case f.topless():
			next.step = askName
		}
	case askIcing:
		w.Icing = id == choiceYes
	case askName:
		w.Name = strings.TrimSpace(id)
	}
	return next, nil
}

// topless says whether the mould chosen has no top that every bar shares, so that no icing is asked for.
func (f Form) topless() bool {
	return slices.ContainsFunc(f.shelf.Moulds, func(m pour.MouldEntry) bool { return m.ID == f.Wishes.Mould && m.Mould.Shape == pour.ShapeTube })
}

// colour takes a choice of colours and says what is asked next.
func (f Form) colour(w *Wishes, id string) step {
	switch {
	case id == choicePlain:
		return askScents
	case id != choiceDone:
		w.Colours = append(w.Colours, id)
		return askColours
	case len(w.Colours) == 0:
		w.Colours = f.suggested()
	}
	return askScents
}

// suggested is the everyday colours the shelf holds.
func (f Form) suggested() []string {
	return slices.DeleteFunc(everydayColours(), func(id string) bool { _, ok := f.shelf.Colourant(id); return !ok })
}

func (f Form) mould() Question {
	q := Question{Ask: "Which mould?", Shelf: listMoulds}
	moulds := f.shelf.MouldsToTake()
	for _, m := range moulds {
		q.Choices = append(q.Choices, Choice{ID: m.ID, Name: m.Name})
	}
	if len(moulds) > 0 && !moulds[0].Own { // of a maker's own the first is her usual one
		q.Choices = usualFirst(q.Choices, everydayMould)
	}
	q.Choices = append(q.Choices, Choice{ID: choiceBars, Name: "so many bars", Aside: "asks how many", Detail: []string{"So many bars", "A loaf for as many bars as you want."}})
	return q
}

func (f Form) technique() Question {
	q := Question{Ask: "How do the colours meet?", Shelf: listTechniques}
	for _, t := range f.shelf.Techniques {
		q.Choices = append(q.Choices, Choice{ID: t.ID, Name: t.Name})
	}
	q.Choices = usualFirst(q.Choices, everydayTechnique)
	return q
}

func (f Form) colours() Question {
	q := Question{Ask: "Which colours? A jug each, beside the pot", Shelf: listColourants}
	q.sofar(f.names(f.Wishes.Colours, f.colourName))
	first := Choice{ID: choiceDone, Name: "that is all"}
	if len(f.Wishes.Colours) == 0 {
		first = Choice{ID: choiceDone, Name: "white and blue", Aside: "suggested", Detail: append([]string{"Suggested"}, f.names(f.suggested(), f.colourName)...)}
	}
	q.Choices = append(q.Choices, first)
	if len(f.Wishes.Colours) == 0 {
		q.Choices = append(q.Choices, Choice{ID: choicePlain, Name: "no colour at all", Detail: []string{"No colour at all", "One batter, as it comes."}})
	}
	for _, c := range f.shelf.Colourants {
		if len(f.Wishes.Colours) < mostColours {
			q.Choices = append(q.Choices, Choice{ID: c.ID, Name: c.Name, Aside: f.picked(c.ID)})
		}
	}
	return q
}

// picked says of a colour how often it was chosen: it may have several jugs.
func (f Form) picked(id string) string {
	n := 0
	for _, c := range f.Wishes.Colours {
		if c == id {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return "picked"
	}
	return fmt.Sprintf("picked %d times", n)
}

// mostColours is how many colours the form takes: one for each of the jugs that two hands manage; more are added on the bench.
const mostColours = 8

// mostScents is how many scents the form takes.
const mostScents = 4

func (f Form) scents() Question {
	q := Question{Ask: "Which scents?", Shelf: listScents}
	q.sofar(f.names(f.Wishes.Scents, f.scentName))
	first := Choice{ID: choiceDone, Name: "no scent", Detail: []string{"No scent", "a under Scent adds one later."}}
	if len(f.Wishes.Scents) > 0 {
		first = Choice{ID: choiceDone, Name: "that is all"}
	}
	q.Choices = append(q.Choices, first)
	for _, s := range f.shelf.Scents {
		if len(f.Wishes.Scents) < mostScents && !slices.Contains(f.Wishes.Scents, s.ID) {
			q.Choices = append(q.Choices, Choice{ID: s.ID, Name: s.Name})
		}
	}
	return q
}

// sofar says what was chosen up to now, in the question too: not everybody sees what is said beside it.
func (q *Question) sofar(names []string) {
	if len(names) > 0 {
		q.SoFar = strings.Join(names, ", ")
		q.Ask, _, _ = strings.Cut(q.Ask, "?")
		q.Ask += "? So far: " + q.SoFar
	}
}

func (f Form) names(ids []string, name func(string) string) []string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = name(id)
	}
	return out
}

func (f Form) colourName(id string) string { c, _ := f.shelf.Colourant(id); return c.JugName() }

func (f Form) scentName(id string) string { s, _ := f.shelf.Scent(id); return s.Name }

// usualFirst puts the usual choice before the others.
func usualFirst(list []Choice, id string) []Choice {
	i := slices.IndexFunc(list, func(c Choice) bool { return c.ID == id })
	if i < 1 {
		return list
	}
	usual := list[i]
	return slices.Insert(slices.Delete(list, i, i+1), 0, usual)
}
