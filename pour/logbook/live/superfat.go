package live

import (
	"fmt"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Superfat is what superfat a batch has by what was really weighed of it in a run.
type Superfat struct {
	pour.TrueSuperfat
	LyeIn bool   // its lye has met its oils
	Why   string // why the maker goes on with it lye-heavy as weighed, in her words; empty: she did not say, or weighed again since
}

// Stops reports whether it stops the batch: lye-heavy, and nobody has said why.
func (s Superfat) Stops() bool { return s.LyeHeavy() && s.Why == "" }

// Superfats works out the superfat of every batch of which something was weighed that matters to it, by the marks that stand.
func (s State) Superfats(sheet *pour.Sheet) []Superfat {
	var out []Superfat
	for _, b := range sheet.Batches() {
		weighed, why := s.weighed(b)
		if t, ok := sheet.TrueSuperfat(b.Name, weighed); ok {
			_, in := s.lyeIn[b.Name]
			out = append(out, Superfat{TrueSuperfat: t, LyeIn: in, Why: why})
		}
	}
	return out
}

// weighed is what was weighed of a batch, in the order it was marked, and why it is meant to be lye-heavy: said after the last of them.
func (s State) weighed(b *pour.BatchSheet) (list []pour.Weighing, why string) {
	plan := b.Weighings()
	for _, e := range s.Marks {
		switch {
		case e.Batch != b.Name:
		case e.Kind == logbook.Noted && e.What == logbook.LyeHeavy:
			why = e.Text
		case e.Kind == logbook.Weighed && e.Jug == "" && e.Step == "":
			for _, w := range plan {
				if w.Name == e.What && w.Jug == "" {
					w.G = e.Value
					list, why = append(list, w), ""
				}
			}
		}
	}
	return list, why
}

// Words says that a batch has less superfat as weighed than planned, or is lye-heavy, or with every oil at its low end would be; "" where it is
// as planned or better.
func (s Superfat) Words(show pour.Show) string {
	if !s.Leaner() {
		return ""
	}
	text := fmt.Sprintf("%s superfat as weighed %s, planned %s", s.Batch, show.Percent(s.Percent, 1), show.Percent(s.PlannedPercent, 1))
	switch {
	case s.LyeHeavy() && s.JugPercent < s.Percent-0.05:
		return text + fmt.Sprintf("; %s has %s: lye-heavy", s.Jug, show.Percent(s.JugPercent, 1))
	case s.LyeHeavy():
		return text + ": lye-heavy"
	case s.LowPercent < 0:
		return text + fmt.Sprintf("; with every oil at its low end %s, lye-heavy", show.Percent(s.LowPercent, 1))
	}
	return text
}
