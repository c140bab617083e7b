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
		if t, ok := sheet.TrueSuperfat(b.Name, s.weighed(b)); ok {
			_, in := s.lyeIn[b.Name]
			out = append(out, Superfat{TrueSuperfat: t, LyeIn: in, Why: s.reasons[b.Name]})
		}
	}
	return out
}

// weighed is what was weighed of a batch, in the order it was marked.
func (s State) weighed(b *pour.BatchSheet) (list []pour.Weighing) {
	plan := b.Weighings()
	for _, e := range s.Marks {
		if e.Batch != b.Name || e.Kind != logbook.Weighed || e.Jug != "" || e.Step != "" {
			continue
		}
		for _, w := range plan {
			if w.Name == e.What && w.Jug == "" {
				w.G = e.Value
				list = append(list, w)
			}
		}
	}
	return list
}

// reasonsOf are why batches are meant to be lye-heavy, in her words. A reason is of what was weighed when it was given: a weighing since, or one from
// before that is taken back or said to be of another thing since, ends it. What is mended after the pour does not.
func reasonsOf(events []logbook.Event) map[pour.BatchName]string {
	type weighing struct {
		batch pour.BatchName
		at    int
	}
	stands, weighed := map[string]bool{}, map[string]weighing{}
	for _, e := range logbook.Standing(events) {
		stands[e.ID] = true
	}
	out, given := map[pour.BatchName]string{}, map[pour.BatchName]int{}
	end := func(w weighing, known bool) {
		if known && w.at < given[w.batch] {
			delete(out, w.batch)
		}
	}
	for i, e := range events {
		switch {
		case e.Kind == logbook.Ended && stands[e.ID]:
			return out
		case e.Kind == logbook.Noted && e.What == logbook.LyeHeavy && stands[e.ID]:
			out[e.Batch], given[e.Batch] = e.Text, i
		case e.Kind == logbook.TakenBack:
			w, known := weighed[e.What]
			end(w, known)
		case e.Kind == logbook.Weighed && e.Jug == "" && e.Step == "":
			weighed[e.ID] = weighing{e.Batch, i}
			if stands[e.ID] {
				delete(out, e.Batch)
			}
			w, known := weighed[e.Corrects]
			end(w, known && stands[e.ID])
		case e.Kind == logbook.Weighed && e.Corrects != "" && stands[e.ID]: // it was of a jug
			w, known := weighed[e.Corrects]
			end(w, known)
		}
	}
	return out
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
	case s.LowPercent < 0 && s.ExtraFat:
		return text + fmt.Sprintf("; without the fat of its extras, every oil at its low end %s, lye-heavy", show.Percent(s.LowPercent, 1))
	case s.LowPercent < 0:
		return text + fmt.Sprintf("; with every oil at its low end %s, lye-heavy", show.Percent(s.LowPercent, 1))
	}
	return text
}
