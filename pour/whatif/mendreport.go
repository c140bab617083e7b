package whatif

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
)

// spot is one place of the plan in which something goes into the bars.
type spot struct {
	n    pour.BatchName // empty: on the top
	is   float64        // how much of it, as the plan says it
	says string         // what that is of: " % of the oils"
	set  func(v float64) pour.Edit
	drop pour.Edit
}

// reportWays brings back into its range what leaves an assessor's report.
func (m *mender) reportWays(w pour.Warning) []ladder {
	missed := m.before.Label.Report.Missed
	i := slices.IndexFunc(missed, func(x label.Miss) bool { return strings.HasPrefix(w.Text, x.Tell()+":") })
	if i < 0 {
		return nil
	}
	x := missed[i]
	spots := m.spots(x)
	switch {
	case x.Range.Kind == label.RangeSuperfat:
		return []ladder{m.superfatInto(x)}
	case len(spots) == 0:
		return nil
	case x.Range.Kind == label.RangeEmbed && !x.Unnamed:
		return m.eachEmbed(m.smallerEmbed)
	case x.Unnamed && x.Range.Kind == label.RangeOil:
		return append([]ladder{leaveOut(x, spots)}, m.exchanges(x, spots)...)
	case x.Unnamed:
		return []ladder{leaveOut(x, spots)}
	case x.Range.Kind == label.RangeOil:
		return append([]ladder{m.inProportion(x, spots)}, m.exchanges(x, spots)...)
	}
	return []ladder{m.inProportion(x, spots)}
}

// end is the end of its range that a figure passed.
func end(x label.Miss) float64 {
	if x.Is < x.Range.Least {
		return x.Range.Least
	}
	return x.Range.Most
}

// parts are the parts of what there is to try, the nearest first, so that the figure comes to the end of its range and further in.
func parts(x label.Miss) []float64 {
	to := end(x) / x.Is
	steps := []float64{1, 0.99, 0.97, 0.94, 0.9, 0.8, 0.65, 0.5, 0.3}
	if to > 1 {
		steps = []float64{1, 1.01, 1.03, 1.06, 1.1, 1.2, 1.35, 1.5, 2}
	}
	out := make([]float64, len(steps))
	for i, s := range steps {
		out[i] = math.Floor(trimmed(to*s)*1000) / 1000
		if to > 1 {
			out[i] = math.Ceil(trimmed(to*s)*1000) / 1000
		}
	}
	return out
}

// inwardsOf cuts an amount to three figures, towards the inside of its range.
func inwardsOf(v, was float64) float64 {
	if !(v > 0) {
		return 0
	}
	step := math.Pow10(int(math.Floor(math.Log10(v))) - 2)
	if v > was {
		return trimmed(math.Ceil(v/step) * step)
	}
	return trimmed(math.Floor(v/step) * step)
}

// superfatInto sets a batch's superfat inside its range, by halves from the end that it passed.
func (m *mender) superfatInto(x label.Miss) ladder {
	n := pour.BatchName(x.Batch)
	planned := m.plan.Batch(n).SuperfatPercent
	from, by, round := planned+end(x)-x.Is, -superfatStep, math.Floor
	if x.Is < x.Range.Least {
		by, round = superfatStep, math.Ceil
	}
	from = round(trimmed(from)/superfatStep) * superfatStep
	var out ladder
	for k := range 8 {
		s := from + float64(k)*by
		out = append(out, m.number(n, "superfat_percent", s, "set the superfat to %s", m.percent(s)))
	}
	return out
}

// inProportion takes less or more of something wherever it goes in.
func (m *mender) inProportion(x label.Miss, spots []spot) ladder {
	var out ladder
	for _, part := range parts(x) {
		edit := func(p pour.Plan) (pour.Plan, error) { return p, nil }
		for _, s := range spots {
			edit = pour.Both(edit, s.set(inwardsOf(s.is*part, s.is)))
		}
		says := fmt.Sprintf("bring %s to %s of what it is, wherever it goes in", x.What, m.percent(100*part))
		if s := spots[0]; len(spots) == 1 {
			says = of(s.n, fmt.Sprintf("take %s%s of %s", m.plan.Show.Plain(inwardsOf(s.is*part, s.is), pour.UnitCount), s.says, x.What))
		}
		out = append(out, Mend{says, edit})
	}
	return out
}

// leaveOut takes something out wherever it goes in, from the last place to the first.
func leaveOut(x label.Miss, spots []spot) ladder {
	edit := spots[len(spots)-1].drop
	for i := len(spots) - 2; i >= 0; i-- {
		edit = pour.Both(edit, spots[i].drop)
	}
	return ladder{{"leave " + x.What + " out", edit}}
}

// exchanges gives what an oil has too much of to another of its blends, or takes from that what it lacks, the largest first.
func (m *mender) exchanges(x label.Miss, spots []spot) []ladder {
	others := slices.Clone(m.plan.Batch(spots[0].n).Oils)
	slices.SortStableFunc(others, func(a, b pour.OilPart) int { return cmp.Compare(b.Percent, a.Percent) })
	var out []ladder
	for _, o := range others {
		everywhere := !slices.ContainsFunc(spots, func(s spot) bool {
			return !slices.ContainsFunc(m.plan.Batch(s.n).Oils, func(p pour.OilPart) bool { return p.Oil == o.Oil })
		})
		if everywhere && o.Oil != x.Range.ID {
			out = append(out, m.exchange(x, spots, o.Oil))
		}
	}
	return out
}

// exchange moves ever more between an oil and another, in every batch that has it.
func (m *mender) exchange(x label.Miss, spots []spot, other string) ladder {
	name := m.shelf.Named(label.Range{Kind: label.RangeOil, ID: other})
	if x.Unnamed {
		return ladder{{"take " + name + " in place of " + x.What, moveOil(x.Range.ID, other, spots, 0)}}
	}
	var out ladder
	for _, part := range parts(x) {
		says := fmt.Sprintf("bring %s to %s of what it is in both batches, with %s making up for it", x.What, m.percent(100*part), name)
		if s := spots[0]; len(spots) == 1 {
			words := [2]string{"less", "more"}
			if part > 1 {
				words = [2]string{"more", "less"}
			}
			says = of(s.n, fmt.Sprintf("take %s of the oils %s of %s and as much %s of %s", m.percent(math.Abs(moved(s, part))), words[0], x.What, words[1], name))
		}
		out = append(out, Mend{says, moveOil(x.Range.ID, other, spots, part)})
	}
	return out
}

// moved is how much of the oils an oil gives where so large a part of it stays, to a tenth of a percent and not too little; below 0 it takes.
func moved(s spot, part float64) float64 {
	by := math.Ceil(trimmed(math.Abs(s.is*(1-part)))*10) / 10
	if part > 1 {
		return -by
	}
	return min(by, s.is)
}

// moveOil lets so large a part of an oil stay in each of its blends, with another making up for it; what has none left goes.
func moveOil(from, to string, spots []spot, part float64) pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		for _, s := range spots {
			b, by := p.Batch(s.n), moved(s, part)
			for i := range b.Oils {
				switch o := &b.Oils[i]; o.Oil {
				case from:
					o.Percent = trimmed(o.Percent - by)
				case to:
					if o.Percent = trimmed(o.Percent + by); o.Percent < 0 {
						return p, fmt.Errorf("there is less of %s than that", to)
					}
				}
			}
			b.Oils = slices.DeleteFunc(b.Oils, func(o pour.OilPart) bool { return o.Percent == 0 && o.Oil == from })
		}
		return p, nil
	}
}
