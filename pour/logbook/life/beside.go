package life

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Tell says what was written, beside what was planned or what is there now.
func (l Logged) Tell(show pour.Show) string {
	e := l.Event
	if e.Kind == logbook.TakenBack {
		for _, x := range l.Before.Events {
			if x.ID == e.What {
				return fmt.Sprintf("taken back: %s, of %s; %s", Tell(x, show), moment(x).Day, l.After.Bars.Tell())
			}
		}
		if l.was.Kind == logbook.Weighed {
			return joinedBy("; ", "taken back: "+Tell(l.was, show), l.counts)
		}
		return "taken back: " + e.What
	}
	text := fmt.Sprintf("%s, on %s", Tell(e, show), moment(e).Day)
	if e.Corrects != "" {
		text += ", in the place of " + e.Corrects
	}
	return joinedBy("; ", text, l.beside(show), l.counts)
}

// joinedBy puts together what there is of some texts.
func joinedBy(sign string, texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(s string) bool { return s == "" }), sign)
}

// beside is what there is to compare an event with.
func (l Logged) beside(show pour.Show) string {
	p := l.After.Planned
	switch l.Event.Kind {
	case logbook.Sliced:
		return fmt.Sprintf("planned %s of %s", bars(p.Bars), show.Figure(p.CutG, show.Dose))
	case logbook.WeighIn:
		if n := len(l.After.WeighIns); n > 0 && l.After.CutDay != nil {
			return fmt.Sprintf("day %d of the cure; planned %s as cut, %s cured", moment(l.Event).Day-*l.After.CutDay, show.Figure(p.CutG, show.Dose), show.Figure(p.CuredG, show.Dose))
		}
	case logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds, logbook.Counted, logbook.Lotted:
		return l.After.Bars.Tell()
	}
	return ""
}

// Tell says where the bars are.
func (a Account) Tell() string {
	if !a.Known {
		return "how many bars there were is not logged"
	}
	of := ""
	if a.Planned {
		of = " by the plan"
	}
	text := fmt.Sprintf("%d of %s%s left", a.Left, bars(a.Bars), of)
	switch {
	case a.Missing > 0:
		text += fmt.Sprintf(", %d missing", a.Missing)
	case a.Missing < 0:
		text += fmt.Sprintf(", %d more than there were", -a.Missing)
	}
	return text
}
