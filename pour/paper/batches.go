package paper

import (
	"fmt"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// BatchList writes batches as text, in the order they come: of each its id and name, and under it its state, its bars and what is due.
func BatchList(batches []life.Batch, today day.Day) string {
	p := textPage()
	if len(batches) == 0 {
		p.wrapped("", "No batch is there, or none holds every word that was asked for. A run of a plan logs itself: pourbench run.")
	}
	for _, b := range batches {
		head := b.ID
		if room := p.wide - width(head) - 2; room >= leastRest {
			head += "  " + clip(plain(b.Name), room)
		}
		p.raw(head)
		p.wrapped("  ", batchWords(b, today))
	}
	return p.text()
}

// batchWords says where a batch stands.
func batchWords(b life.Batch, today day.Day) string {
	if b.Fault != nil {
		return b.Fault.Error()
	}
	words := []string{string(b.State) + " since " + b.Since.String()}
	if b.CutDay != nil && b.Is(life.Cut, life.Curing, life.Ready) {
		words[0] += fmt.Sprintf(", day %d of the cure", today-*b.CutDay)
	}
	if b.Bars.Known {
		words = append(words, b.Bars.Tell())
	}
	for _, d := range b.Due {
		words = append(words, d.Text)
	}
	if b.Drying.Why != nil && len(b.WeighIns) > 1 && b.Is(life.Cut, life.Curing) {
		words = append(words, b.Drying.Tell())
	}
	if b.PlanErr != nil {
		words = append(words, "its plan cannot be used with today's shelf: "+b.PlanErr.Error())
	}
	return strings.Join(words, "; ")
}
