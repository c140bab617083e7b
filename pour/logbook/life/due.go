package life

import (
	"fmt"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// course is what the batch's way goes by.
func (s story) course(b *Batch, today day.Day) Course {
	c := Course{LyeIn: s.LyeIn, CutAfterH: s.Planned.CutAfterH, CureDays: s.Planned.CureDays, Today: today, Whole: s.Whole}
	if out := b.Of(logbook.Unmoulded); len(out) > 0 {
		c.Unmoulded = Happened{true, moment(out[0]).Day}
	}
	if b.CutDay != nil {
		c.Cut = Happened{true, *b.CutDay}
	}
	for _, w := range s.WeighIns {
		c.WeighedOn = append(c.WeighedOn, w.When.Day)
	}
	return c
}

// due is what comes next of each kind in the batch's state, soonest first.
func (b *Batch) due(today day.Day) []Due {
	if b.Fault != nil || b.PlanErr != nil || !b.Is(InMould, Unmoulded, Cut, Curing) {
		return nil
	}
	var out []Due
	for _, s := range b.Course.Next(today) {
		if b.CutDay == nil && s.Kind != DueUnmould && s.Kind != DueCut && s.Kind != DueReady {
			continue // days that are counted from a cut which is not made yet
		}
		out = append(out, Due{Kind: s.Kind, Day: s.Day, Early: s.Early, Late: s.Late, Nth: s.Nth, Text: dueText(s, today)})
	}
	return out
}

// dueText says what is due and when.
func dueText(s Step, today day.Day) string {
	if s.Kind == DueReady {
		text := "ready " + s.Day.Short()
		if s.Early != s.Day || s.Late != s.Day {
			text += ", " + s.Early.Short() + " to " + s.Late.Short()
		}
		return text
	}
	return string(s.Kind) + away(int(s.Day-today))
}

// away says how far off a day is.
func away(days int) string {
	switch {
	case days == 0:
		return " today"
	case days == 1:
		return " tomorrow"
	case days > 1:
		return fmt.Sprintf(" in %d days", days)
	case days == -1:
		return ", a day late"
	}
	return fmt.Sprintf(", %d days late", -days)
}
