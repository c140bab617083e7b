package command

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/sticker"
	"pourbench/pour/stock/taking"
)

// labelOfBatch works out the label of a batch as it was poured.
func (g *program) labelOfBatch(book logbook.Book, shelf pour.Shelf, id string, of labelOf) (labelsheet, error) {
	record, _, _, err := g.poured("label", book, shelf, id)
	if err != nil {
		return labelsheet{}, err
	}
	plan, market, err := of.on(record.Plan, shelf)
	if err != nil {
		return labelsheet{}, err
	}
	record.Plan = plan
	hand := g.hand(shelf)
	b := life.Of(record, shelf, hand, g.today())
	l := g.labelOfPour(pour.Weigh(plan, shelf).Time(shelf, hand), shelf, record, b, market)
	if of.lot != "" {
		l.on.Lot = of.lot
	}
	l.work()
	return l, nil
}

// labelOfPour gathers what the label of a batch rests on; the sheet is its plan's.
func (g *program) labelOfPour(sheet pour.Sheet, shelf pour.Shelf, record logbook.Pour, b life.Batch, market label.Market) labelsheet {
	standing := logbook.Standing(record.Events)
	went, weighed := taking.Went(&sheet, shelf, standing)
	told := paper.Label{Name: record.Name, ID: record.ID, Market: market, Show: record.Plan.Show, Today: g.today(), Ticks: map[string]string{}}
	of := pour.Labelling{Went: went, Ticks: map[string]bool{}, Today: told.Today}
	on := sticker.Details{Made: b.Poured}
	if n := len(b.Lots); n > 0 {
		on.Lot = b.Lots[n-1].Lot
	}
	for row, e := range b.Ticks(market.ID) {
		of.Ticks[row] = true
		told.Ticks[row] = life.TickedText(e)
	}
	all := len(went)
	switch {
	case weighed == 0:
		told.Rests = append(told.Rests, "Nothing of it was weighed by the marks of its run: its contents are the plan's.")
	case weighed < all:
		told.Rests = append(told.Rests, fmt.Sprintf("Its contents are what was weighed, %d of %d weights; of the rest the plan's count.", weighed, all))
	default:
		told.Rests = append(told.Rests, fmt.Sprintf("Its contents are what was weighed, all %d weights.", all))
	}
	if out := logbook.OmittedBy(standing).Tell(&sheet); len(out) > 0 {
		told.Rests = append(told.Rests, "Left out by the marks of its run: "+strings.Join(out, ", ")+".")
	}
	told.Rests = append(told.Rests, "What is set into it and what is strewn are the plan's.")
	of.Bars.CutG = b.AsCut()
	if b.Bars.Known && !b.Bars.Planned {
		of.Bars.Made = b.Bars.Bars
	}
	if p, ok := b.Packing(); ok {
		of.Bars.MassesG, of.Bars.Bars, of.Bars.LastG = p.MassesG, p.Bars, p.LastG
		told.Rests = append(told.Rests, fmt.Sprintf("Its bars were weighed on %s, for packing on %s.", p.Weighed, p.Day))
	} else {
		told.Rests = append(told.Rests, "No bar of it was weighed for packing (since it is ready, or in the week before it was labelled): its weight is the forecast.")
		told.Rests = append(told.Rests, tooEarly(b, record.Plan.Show)...)
	}
	return labelsheet{sheet, shelf, of, on, told}
}

// tooEarly says of bars that were weighed, but not for packing, what they weighed last and that it does not count.
func tooEarly(b life.Batch, show pour.Show) []string {
	if len(b.WeighIns) == 0 {
		return nil
	}
	last := b.WeighIns[len(b.WeighIns)-1]
	sum := 0.0
	for _, g := range last.MassesG {
		sum += g
	}
	mean := show.Figure(pour.AsFigure(sum/float64(max(len(last.MassesG), 1))), show.Dose)
	return []string{fmt.Sprintf("Weighed last on %s, %s on average: bars lose weight after that, so it does not count here. Weigh them again, and the label goes by it.", last.When.Day, mean)}
}
