package again

import (
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/whatif"
)

// inTime are the warnings of jugs that come too late or too early, or that a scent spoils.
func inTime() []string {
	return []string{"jug-late", "base-stiff", "split-early", "jug-early", "icing-thin", "icing-stiff", "scent-fast-late", "scent-seizes", "scent-rices", "false-trace", "hands-busy"}
}

// actual is the plan with all that really was in it, temperatures, bursts, moments and minutes of the hands, as far as it was marked.
func (a *asker) actual() pour.Plan {
	p := a.past.state.Actual(a.plan)
	for _, s := range a.found {
		table, _, _ := strings.Cut(s.Path, ".")
		if table == "run" && s.Path != "run.cool_lye_min" || strings.HasSuffix(s.Path, ".split_at_min") || strings.HasSuffix(s.Path, ".start_at_min") {
			if next, err := pour.Apply(p, a.shelf, s.Edit); err == nil {
				p = next
			}
		}
	}
	for _, n := range a.batches() { // a batter that was read then is not one that is read now
		p.Batch(n).BatterC, p.Batch(n).BatterMeasured = a.plan.Batch(n).BatterC, a.plan.Batch(n).BatterMeasured
	}
	return p
}

// jugsInTime suggests what would bring jugs inside their windows that in truth were not: the mends of the warnings that the plan makes once it is put as
// it was really poured, as far as they are new or the pour bears them out.
func (a *asker) jugsInTime() {
	p := a.actual()
	if len(p.Check(a.shelf)) > 0 {
		return
	}
	sheet := pour.Work(p, a.shelf, a.hand)
	wanted := func(w pour.Warning) bool {
		return slices.Contains(inTime(), w.Code) && (a.isNew(w) || a.borneOut(w) != "")
	}
	for i, mends := range whatif.MendsOf(sheet, a.shelf, a.hand, wanted) {
		w := sheet.Warnings[i]
		why := "as it was really poured: " + w.Told()
		if told := a.borneOut(w); told != "" {
			why = told + "; " + why
		}
		for _, m := range mends {
			if !a.movesFound(m.Edit) {
				a.suggest("", m.Says+a.comesTo(m.Edit), why, m.Edit)
			}
		}
	}
}

// movesFound says whether an edit moves what was otherwise in the pour than in the plan, and is suggested as it was: she first says which of the two she
// wants, for what is cooler than it was may be no cooler than she has planned.
func (a *asker) movesFound(edit pour.Edit) bool {
	next, err := pour.Apply(a.plan, a.shelf, edit)
	return err != nil || slices.ContainsFunc(a.found, func(s Suggestion) bool {
		was, _, ok := pour.Number(a.plan, s.Path)
		now, _, _ := pour.Number(next, s.Path)
		return ok && was != now || strings.HasSuffix(s.Path, ".blend") && !slices.Equal(a.plan.Batch(batchOf(s.Path)).Blend, next.Batch(batchOf(s.Path)).Blend)
	})
}

func batchOf(path string) pour.BatchName {
	n, _, _ := strings.Cut(path, ".")
	return pour.BatchName(n)
}

// mostTold is how many fields a mend is told by.
const mostTold = 3

// comesTo is what a mend that was found on the plan as it was poured makes of the plan as it is typed, where that is few fields.
func (a *asker) comesTo(edit pour.Edit) string {
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err != nil {
		return ""
	}
	changes := pour.Differences(a.plan, next)
	if len(changes) == 0 || len(changes) > mostTold {
		return ""
	}
	words := make([]string, len(changes))
	for i, c := range changes {
		words[i] = c.Where + " " + c.Now
	}
	return " (" + strings.Join(words, ", ") + ")"
}

// isNew says whether the plan as it is typed has no such warning.
func (a *asker) isNew(w pour.Warning) bool {
	return !slices.ContainsFunc(a.before.Warnings, func(o pour.Warning) bool { return o.Code == w.Code && o.Where == w.Where })
}

// borneOut is what happened that bears a warning out; empty: nothing was marked that does.
func (a *asker) borneOut(w pour.Warning) string {
	n, jug, ofJug := w.Jug()
	_, scent, ofScent := w.Scent()
	for _, e := range a.past.standing {
		onePot := e.Kind == logbook.Troubled && logbook.SplitAfter(a.past.standing, e)
		if onePot {
			e.Jug = "all of the " + string(e.Batch)
		}
		into := ofJug && (e.Jug == jug || onePot) && e.Batch == n || ofScent && !onePot && a.past.goesInto(scent, e.Batch, e.Jug)
		switch {
		case !into || e.Kind != logbook.Troubled && e.Kind != logbook.Unpoured:
		case e.Kind == logbook.Unpoured:
			return e.Jug + " was not used"
		case e.What != logbook.Browns:
			return e.Jug + " " + troubled(e.What)
		}
	}
	return ""
}

// goesInto says whether a scent of that name went into a jug.
func (p Past) goesInto(scent string, n pour.BatchName, jug string) bool {
	b := p.Sheet.Batch(n)
	if b == nil {
		return false
	}
	return slices.ContainsFunc(b.Jugs, func(j pour.JugSheet) bool {
		return j.Name == jug && slices.ContainsFunc(j.Scents, func(x pour.ScentGrams) bool { return x.Name == scent })
	})
}
