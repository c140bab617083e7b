package life

import (
	"fmt"

	"pourbench/pour/logbook"
)

// Mark is an event of a batch's life, and what became of it.
type Mark struct {
	Event    logbook.Event
	Standing bool   // it counts
	Why      string // why it does not: "corrected on 2026-12-06", "taken back"
}

// Marks lists every event of a batch's life by its day, within one as they were marked, and the weights of its pour that were written in once it was over,
// those too that do not count any more; what takes back is not in it, what corrects is.
func Marks(events []logbook.Event) []Mark {
	stands, why := map[string]bool{}, map[string]string{}
	for _, e := range logbook.Standing(events) {
		stands[e.ID] = true
	}
	for _, e := range events {
		switch {
		case e.Kind == logbook.TakenBack:
			why[e.What] = "taken back"
		case e.Corrects != "" && stands[e.ID]:
			why[e.Corrects] = fmt.Sprintf("corrected on %s", e.Wall.Format("2006-01-02"))
		}
	}
	var own []logbook.Event
	over := false
	for _, e := range events {
		over = over || e.Kind == logbook.Ended && stands[e.ID]
		later := over && e.Kind == logbook.Weighed && e.Step == ""
		if later || e.Kind.OfLife() || e.Kind == logbook.Cut || e.Kind == logbook.Cured {
			own = append(own, e)
		}
	}
	inOrder(own, events)
	out := make([]Mark, 0, len(own))
	for _, e := range own {
		m := Mark{Event: e, Standing: stands[e.ID]}
		if !m.Standing {
			if m.Why = why[e.ID]; m.Why == "" {
				m.Why = "another correction counts"
			}
		}
		out = append(out, m)
	}
	return out
}
