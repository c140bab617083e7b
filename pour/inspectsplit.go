package pour

import (
	"fmt"

	"pourbench/chem"
)

// EmulsionAtMin is when the batch is likely an emulsion, minutes after its own lye-in: the middle of the clock's band for the pot, or for the first
// jug of which the clock says anything. Unknown without a clock.
func (b *BatchSheet) EmulsionAtMin() Figure {
	for i := range b.Jugs {
		if at := b.Jugs[i].Clock.Stages[chem.Emulsion].Mid; at.Known {
			return at
		}
	}
	return Figure{}
}

// beforeEmulsion says whether a minute is earlier than a predicted emulsion, both as it is worked out and as it is drawn: who splits at the
// very minute that stands on paper did as she was told.
func beforeEmulsion(min float64, emulsion Figure) bool {
	return emulsion.Known && min < emulsion.V && RoundMinutes(min) < RoundMinutes(emulsion.V)
}

// warnNoEmulsion says that the batch is divided, or poured, before it is likely an emulsion. What still separates is shared out unevenly: one jug gets
// more lye than its oils can take up, another more oil (common practice, no source). A batch of one jug is not divided: it is judged as it is poured.
func (t *timer) warnNoEmulsion() {
	b, show := t.batch, t.sheet.Plan.Show
	at := b.EmulsionAtMin()
	split, pours := beforeEmulsion(t.plan.SplitAtMin, at), ""
	for i := range b.Jugs {
		c := &b.Jugs[i].Clock
		if c.PourAtMin.Known && beforeEmulsion(c.PourAtMin.V-b.LyeInAtMin, c.Stages[chem.Emulsion].Mid) {
			pours = b.Jugs[i].Name
			break
		}
	}
	text := ""
	switch {
	case len(b.Jugs) > 1 && split && pours != "":
		text = fmt.Sprintf("split at %s and poured before it is likely an emulsion, at %s", show.Minutes(t.plan.SplitAtMin), show.Minutes(at.V))
	case len(b.Jugs) > 1 && split:
		text = fmt.Sprintf("split at %s, before it is likely an emulsion, at %s", show.Minutes(t.plan.SplitAtMin), show.Minutes(at.V))
	case pours != "":
		text = fmt.Sprintf("%s is poured before it is likely an emulsion, at %s", pours, show.Minutes(at.V))
	default:
		return
	}
	t.sheet.warn(warning("split-early", string(b.Name), text+": what still separates is shared out unevenly, lye-heavy here and oily there",
		"divide and pour it only when no oil streaks are left; split later, work warmer or stick-blend longer (common practice, no source)"))
}
