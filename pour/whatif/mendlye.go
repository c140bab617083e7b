package whatif

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// number is one step of a ladder that sets a number of a batch; the clause says what to with the figure as it is drawn.
func (m *mender) number(n pour.BatchName, key string, v float64, clause, drawn string) Mend {
	return Mend{of(n, fmt.Sprintf(clause, drawn)), pour.SetNumber(string(n)+"."+key, v)}
}

// of says in a clause which batch is meant, where it is the icing.
func of(n pour.BatchName, clause string) string {
	if n == pour.Icing {
		return "icing: " + clause
	}
	return clause
}

// The steps in which figures are tried, and the most superfat that is offered, percent. More than that is another soap.
const (
	superfatStep  = 0.5
	mostSuperfat  = 12
	lyeStep       = 1
	leastLye      = 22
	mostLye       = 50 // more does not dissolve safely
	partsOfAmount = 20 // an amount is tried at so many parts of what it is
)

// raised is the superfat of a batch, raised step by step.
func (m *mender) raised(n pour.BatchName) ladder {
	var out ladder
	for s := math.Floor(m.plan.Batch(n).SuperfatPercent/superfatStep)*superfatStep + superfatStep; s <= mostSuperfat; s += superfatStep {
		out = append(out, m.number(n, "superfat_percent", s, "raise the superfat to %s", m.percent(s)))
	}
	return out
}

// concentration is the lye of a batch, made stronger or weaker step by step.
func (m *mender) concentration(n pour.BatchName, by float64, clause string) ladder {
	var out ladder
	for c := math.Round(m.plan.Batch(n).LyeConcentrationPercent) + by; c >= leastLye && c <= mostLye; c += by {
		out = append(out, m.number(n, "lye_concentration_percent", c, clause, m.percent(c)))
	}
	return out
}

// percent draws a percentage with as many digits as it needs.
func (m *mender) percent(v float64) string { return m.plan.Show.Plain(v, pour.UnitPercent) + " %" }

func lyeWays(m *mender, w pour.Warning) []ladder {
	n, _ := w.Batch()
	switch w.Code {
	case "blend-unfinished":
		return []ladder{{{of(n, "make the oils sum to 100 %"), pour.SpreadOils(n)}}}
	case "lye-heavy", "lye-heavy-worst":
		return []ladder{m.raised(n), m.onTop(n)}
	case "lye-mixed-strong":
		return append(m.frozen(n), m.concentration(n, -lyeStep, "mix the lye weaker, at %s"))
	case "lye-short-water":
		return append([]ladder{m.concentration(n, -lyeStep, "mix the lye weaker, at %s")}, m.lessWatery(n)...)
	case "alkali-rounding":
		return []ladder{m.finer()}
	case "purity-unusual":
		return m.purer(n)
	}
	return nil
}

// purer takes an alkali as purer than the plan has it, which weighs less of it. Weaker alkali than the plan has is the maker's to find out:
// guessing it makes lye-heavy soap.
func (m *mender) purer(n pour.BatchName) []ladder {
	naoh := ladder{m.number(n, "naoh_purity_percent", 100, "take the NaOH as pure, %s, until you have its certificate", "100 %")}
	if m.plan.Batch(n).KOHPurityPercent >= usualKOH {
		return []ladder{naoh}
	}
	return []ladder{naoh, {m.number(n, "koh_purity_percent", usualKOH, "take the KOH as the usual %s, until you have its certificate", m.percent(usualKOH))}}
}

// usualKOH is what potassium hydroxide is mostly sold at, percent (grade sheets, from memory).
const usualKOH = 90

// onTop puts the carriers' oil on top of a batch where it is taken out of it.
func (m *mender) onTop(n pour.BatchName) ladder {
	if m.plan.Batch(n).Carrier != pour.CarrierBatch {
		return nil
	}
	return ladder{{of(n, "carry the colours in oil on top of the batch"), pour.SetWord(string(n)+".carrier", pour.CarrierExtra)}}
}

// frozen lets a watery extra be the lye's water instead of joining the lye as it cools.
func (m *mender) frozen(n pour.BatchName) []ladder {
	var out []ladder
	for i, x := range m.before.Batch(n).Extras {
		if x.Joins == pour.JoinsCooled && x.WaterPercent > 0 {
			out = append(out, ladder{{of(n, "let "+x.Name+" be the lye's water, frozen before the alkali"), pour.SetExtraIn(n, i, pour.InWater)}})
		}
	}
	return out
}

// lessWatery takes less of each extra that brings water.
func (m *mender) lessWatery(n pour.BatchName) []ladder {
	var out []ladder
	for i, x := range m.before.Batch(n).Extras {
		if x.WaterPercent > 0 {
			out = append(out, m.lessExtra(n, i, x))
		}
	}
	return out
}

func (m *mender) lessExtra(n pour.BatchName, i int, x pour.ExtraLine) ladder {
	var out ladder
	for _, v := range downFrom(x.Percent) {
		out = append(out, m.extraAt(n, i, x, v))
	}
	return out
}

func (m *mender) extraAt(n pour.BatchName, i int, x pour.ExtraLine, percent float64) Mend {
	return Mend{of(n, fmt.Sprintf("take %s of the oils of %s", m.percent(percent), x.Name)), pour.SetExtra(n, i, percent)}
}

// downFrom lists ever smaller parts of an amount, each cut to two figures.
func downFrom(v float64) []float64 {
	var out []float64
	for k := partsOfAmount - 1; k > 0; k-- {
		part := v * float64(k) / partsOfAmount
		step := math.Pow10(int(math.Floor(math.Log10(part))) - 1)
		if cut := trimmed(math.Floor(part/step) * step); cut > 0 && !slices.Contains(out, cut) {
			out = append(out, cut)
		}
	}
	return out
}

// trimmed takes the last bits off a number that was worked out, so that it is written as it is meant.
func trimmed(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// finer weighs on finer scales.
func (m *mender) finer() ladder {
	var out ladder
	s := m.plan.Show
	for _, step := range []float64{1, 0.5, 0.1, 0.01} {
		for _, scale := range []float64{s.ScaleStepG, min(s.ScaleStepG, step)} {
			if step < s.LyeStepG || scale < s.ScaleStepG {
				fine := s
				fine.LyeStepG, fine.ScaleStepG = min(s.LyeStepG, step), scale
				out = append(out, Mend{
					"weigh the oils in steps of " + fine.Weight(scale) + " and the alkali in steps of " + fine.Dose(fine.LyeStepG) + ", on scales that do",
					pour.Both(pour.SetNumber("show.lye_step_g", fine.LyeStepG), pour.SetNumber("show.scale_step_g", scale)),
				})
			}
		}
	}
	return out
}

// fatWays mends what the carriers' oil does.
func fatWays(m *mender, w pour.Warning) []ladder {
	switch w.Code {
	case "carrier-short":
		n, _ := w.Batch()
		return []ladder{m.onTop(n), {{of(n, "carry the colours in the oil there is most of"), pour.SetCarrierOil(n, "")}}}
	case "superfat-jug":
		n, name, _ := w.Jug()
		out := m.lessCarrier(n, name)
		for _, i := range m.scentsIn(n, name) {
			out = append(out, m.spread(n, i), m.lowerLoad(n, i))
		}
		return out
	}
	return nil
}

// lessCarrier carries the colours of a jug in less oil, or in something else.
func (m *mender) lessCarrier(n pour.BatchName, jug string) []ladder {
	var out []ladder
	i, j := m.jug(n, jug)
	for k, d := range j.Colourants {
		c, _ := m.shelf.Colourant(d.Colourant)
		var less ladder
		for _, v := range downFrom(max(d.CarrierParts, c.CarrierParts)) {
			less = append(less, Mend{of(n, fmt.Sprintf("wet %s with %s parts of oil", c.Name, m.plan.Show.Plain(v, pour.UnitCount))), pour.SetCarrierParts(n, i, k, v)})
		}
		out = append(out, less)
		for _, with := range []string{pour.CarryGlycerin, pour.CarryWater} {
			out = append(out, ladder{{of(n, "wet "+c.Name+" with "+with), pour.SetCarrier(n, i, k, with)}})
		}
	}
	return out
}

// jug finds a jug of the plan by its name.
func (m *mender) jug(n pour.BatchName, name string) (int, pour.Jug) {
	if n == "" {
		return -1, pour.Jug{}
	}
	jugs := m.plan.Batch(n).Jugs
	i := slices.IndexFunc(jugs, func(j pour.Jug) bool { return j.Name == name })
	if i < 0 {
		return i, pour.Jug{}
	}
	return i, jugs[i]
}
