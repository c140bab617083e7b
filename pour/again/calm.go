package again

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// calm says on what ground a scent gave no trouble in a pour that is over: its jugs were marked as they were poured, where trouble is marked too, or what
// was said of the pour since. False: it was in trouble, or nobody told how it went. Of a pour that was written in afterwards nothing is known by itself.
func (p Past) calm(s pour.ScentLine) (ground string, told bool) {
	if !p.state.Ended || slices.Contains(p.troubledScents(), s.ID) {
		return "", false
	}
	words, over := "", false
	for _, e := range p.standing {
		over = over || e.Kind == logbook.Ended
		if e.Kind != logbook.Result && e.Kind != logbook.Noted {
			continue
		}
		if tellsTrouble(e.Text) {
			return "", false
		}
		if over && words == "" {
			words = strings.TrimSpace(e.Text)
		}
	}
	switch {
	case slices.ContainsFunc(p.state.Steps, func(step live.StepState) bool { return step.Done && p.pours(step.Step, s.ID) }):
		return fmt.Sprintf("%s gave no trouble in %s", s.Name, p.Pour.ID), true
	case words != "":
		return fmt.Sprintf("no trouble of %s is told of %s: \"%s\"", s.Name, p.Pour.ID, words), true
	}
	return "", false
}

// pours says whether a step pours or moves a jug with a scent.
func (p Past) pours(step live.Step, id string) bool {
	b := p.Sheet.Batch(step.Batch)
	if b == nil {
		return false
	}
	return slices.ContainsFunc(b.Jugs, func(j pour.JugSheet) bool {
		return slices.Contains(step.Moves, j.Name) && slices.ContainsFunc(j.Scents, func(x pour.ScentGrams) bool { return x.ID == id })
	})
}

// tellsTrouble says whether words tell of a batter that set, riced or came apart. Words that deny it count too: who reads them too strictly offers less.
func tellsTrouble(text string) bool {
	text = strings.ToLower(text)
	return slices.ContainsFunc([]string{"seiz", "riced", "rices", "ricing", "separat"}, func(word string) bool { return strings.Contains(text, word) })
}

// faster says whether by the shelf a scent is faster than another; of one that is not on it nobody knows.
func (a *asker) faster(id, than string) bool {
	one, known := a.shelf.Scent(id)
	other, also := a.shelf.Scent(than)
	return !known || !also || a.shelf.Faster(one, other)
}
