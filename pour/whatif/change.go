package whatif

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
	"pourbench/pour/script"
	"pourbench/pour/strict"
)

// pace lists changes that make a whole batch slower (sign −1) or quicker (1).
func (w *whatIf) pace(n pour.BatchName, sign float64) []change {
	b := w.plan.Batch(n)
	at := string(n) + "."
	warmer, stronger, more := "cooler", "weaker", "less"
	if sign > 0 {
		warmer, stronger, more = "warmer", "stronger", "more"
	}
	var out []change
	for _, k := range []float64{3, 6, 9} {
		if b.BatterMeasured {
			break // it is as warm as it is
		}
		out = append(out, change{
			kind: at + "warmth", what: sentence(n, "work %s %s", w.plan.Show.TempDiff(k), warmer),
			edit: pour.Both(pour.SetNumber(at+"oils_c", b.OilsC+sign*k), pour.SetNumber(at+"lye_c", b.LyeC+sign*k)),
		})
	}
	for _, k := range []float64{2, 4, 6} {
		to := b.LyeConcentrationPercent + sign*k
		out = append(out, change{
			kind: at + "lye", what: sentence(n, "mix the lye %s, at %s %%", stronger, strict.Short(to)), edit: pour.SetNumber(at+"lye_concentration_percent", to),
		})
	}
	for _, k := range []float64{0.5, 0.25} {
		if len(b.Blend) == 0 {
			break
		}
		bursts, total := slices.Clone(b.Blend), 0.0
		for i := range bursts {
			bursts[i].S = math.Round(bursts[i].S * (1 + sign*k))
			total += bursts[i].S
		}
		out = append(out, change{
			kind: at + "blend", what: sentence(n, "stick-blend %s: %s s in all", more, strict.Short(total)), edit: pour.SetBursts(n, bursts),
		})
	}
	return out
}

// scentChanges lists other minutes and other jugs for the scents of jugs that come too late.
func (w *whatIf) scentChanges(n pour.BatchName) []change {
	var out []change
	b, sheet := w.plan.Batch(n), w.before.Batch(n)
	for i, part := range b.Scents {
		late := slices.ContainsFunc(sheet.Jugs, func(j pour.JugSheet) bool {
			return part.GoesInto(j.Name) && j.Clock.LateChancePercent.V >= pour.LikelyPercent
		})
		if !late {
			continue
		}
		sc, _ := w.shelf.Scent(part.Scent)
		for _, k := range []float64{2, 5} {
			out = append(out, change{
				kind: "scent " + part.Scent, what: sentence(n, "stir %s in %s later", sc.Name, w.plan.Show.Minutes(k)), edit: pour.SetScentAt(n, i, part.AtMin+k),
			})
		}
		for _, j := range w.firstPoured(sheet) {
			if len(part.Into) == 1 && part.Into[0] == j {
				continue
			}
			out = append(out, change{
				kind: "scent " + part.Scent, what: sentence(n, "put %s into %s alone", sc.Name, j), edit: pour.SetScentInto(n, i, j),
			})
		}
	}
	return out
}

// firstPoured names the two jugs poured first.
func (w *whatIf) firstPoured(b *pour.BatchSheet) []string {
	jugs := slices.Clone(b.Jugs)
	slices.SortStableFunc(jugs, func(a, b pour.JugSheet) int { return cmp.Compare(a.Clock.PourAtMin.V, b.Clock.PourAtMin.V) })
	var out []string
	for _, j := range jugs[:min(2, len(jugs))] {
		out = append(out, j.Name)
	}
	return out
}

// order lists other orders of the hands: fewer rounds, the most urgent jugs first, and every scent just before its jug is poured.
func (w *whatIf) order() []change {
	urgent := w.urgentFirst()
	late := setOrder(keys(w.scentLast(w.before.Run)))
	out := []change{
		{kind: kindOrder, what: []string{"pour the jugs in the order their windows end"}, edit: urgent},
		{kind: kindOrder, what: []string{"scent each jug just before it is poured"}, edit: late},
		{kind: kindOrder, what: []string{"pour the jugs in the order their windows end, each scented just before"}, edit: pour.Both(urgent, w.lateScents)},
	}
	if w.rounds() {
		out = append(out, change{kind: kindOrder, what: []string{"pour every jug in one round"}, edit: pour.SetPasses(1)})
	}
	return out
}

// rounds says whether jugs are poured again and again, other than into the pot.
func (w *whatIf) rounds() bool {
	acts := w.before.Base.Script
	return !acts.Brief.Technique.InPot() && slices.ContainsFunc(acts.Acts, func(a script.Act) bool { return a.Kind == script.Pour && a.Rounds > 1 })
}

// lateScents puts every scent of a plan just before its jug is poured.
func (w *whatIf) lateScents(p pour.Plan) (pour.Plan, error) {
	sheet := pour.Weigh(p, w.shelf)
	return setOrder(keys(w.scentLast(sheet.Run)))(p)
}

func setOrder(order []string) pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p.Run.Order = order
		return p, nil
	}
}

func keys(tasks []pour.Task) []string {
	var out []string
	for _, t := range tasks {
		if t.Kind != pour.TaskCoolLye && t.Kind != pour.TaskMix {
			out = append(out, t.Key)
		}
	}
	return out
}

// urgentFirst pours the base's jugs in the order in which their windows end.
func (w *whatIf) urgentFirst() pour.Edit {
	jugs := slices.Clone(w.before.PourOrder())
	end := func(j int) float64 {
		if to := w.before.Base.Jugs[j].Clock.Window.To; to.Known {
			return to.V
		}
		return math.Inf(1)
	}
	slices.SortStableFunc(jugs, func(a, b int) int { return cmp.Compare(end(a), end(b)) })
	names := make([]string, len(jugs))
	for i, j := range jugs {
		names[i] = w.before.Base.Jugs[j].Name
	}
	return pour.SetPourOrder(w.before, names)
}

// scentLast is the run with every scent of the base just before its jug's pour.
func (w *whatIf) scentLast(run []pour.Task) []pour.Task {
	var out []pour.Task
	for _, t := range run {
		if t.Kind == pour.TaskScent && t.Batch == pour.Base {
			continue
		}
		for _, s := range run {
			if s.Kind == pour.TaskScent && s.Batch == pour.Base && t.Batch == s.Batch && t.Act != pour.NoAct && !slices.Contains(out, s) && w.before.Touches(t, s.Jug) {
				out = append(out, s)
			}
		}
		out = append(out, t)
	}
	return out
}

// String puts the changes of a suggestion into one line.
func (s Suggestion) String() string {
	switch len(s.What) {
	case 0:
		return ""
	case 1:
		return s.What[0]
	}
	return fmt.Sprintf("%s, and %s", s.What[0], s.What[1])
}
