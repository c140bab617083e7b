package live

import (
	"slices"
	"strings"

	underway "pourbench/pour/logbook/live"
)

// welcomeCut begins the cut in lines.
func (t *talk) welcomeCut() {
	t.out.Say("The cut of " + t.m.sheet().Plan.Name + ", in plain mode. " + t.m.journalText() + ".")
	t.out.Say("done finishes the step, a number is what the piece under way weighs, undo takes the last mark back, Enter tells the step, pieces what every piece weighs, ? what can be said, q leaves.")
	t.said()
	t.tellNow()
}

// massSaid takes a line as what the piece under way weighs, or tells all pieces; false where it is neither.
func (t *talk) massSaid(text string) bool {
	if word := strings.ToLower(text); word == "pieces" || word == "jugs" {
		t.tellMasses()
		return true
	}
	if !t.m.startsMass(text[:1]) {
		return false
	}
	now, _ := t.m.now()
	things := t.m.state.Things(t.m.sheet(), now.Step)
	i := slices.IndexFunc(things, func(x underway.Thing) bool { return x.Event.Step == now.Key })
	if err := t.m.measured(things[i], text); err != nil {
		t.m.refuse(err.Error())
	}
	return true
}

// tellMasses tells every piece in lines.
func (t *talk) tellMasses() {
	for _, x := range t.m.masses() {
		t.out.Say(strings.ReplaceAll(t.m.massWords(x), " → ", ", true "))
	}
	t.out.Say(t.m.sumText() + ".")
	t.out.Say(cutMeaning)
}
