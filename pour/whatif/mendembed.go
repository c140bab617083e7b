package whatif

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// embedWays mends where embeds stand, how large they are and when they are made.
func embedWays(m *mender, w pour.Warning) []ladder {
	if w.Code == "embed-squeeze" {
		return []ladder{m.singleCuts()}
	}
	i, ok := w.Embed(&m.before)
	if !ok {
		if w.Code == "embed-crowd" {
			return m.eachEmbed(m.smallerEmbed)
		}
		return nil
	}
	switch w.Code {
	case "embed-cut", "embed-tight", "embed-astray":
		ways := []ladder{m.toMiddles(i), m.smallerEmbed(i), m.thickerBars(), m.widerBars(), m.singleCuts()}
		if w.Code == "embed-tight" {
			ways = append(ways, m.straightLook())
		}
		for k := range ways {
			ways[k] = m.clearing(i, ways[k])
		}
		return ways
	case "embed-sight":
		return []ladder{m.smallerEmbed(i), m.toMiddles(i), m.thickerBars(), m.widerBars()}
	case "embed-high":
		return []ladder{m.deeper(i)}
	case "embed-deep":
		return []ladder{m.further(i), m.lowerEmbed(i), m.higherFill()}
	case "embed-wall", "embed-touch", "embed-crowd":
		return []ladder{m.inwards(i), m.fewerAbreast(i), m.smallerEmbed(i)}
	case "embed-iced":
		return m.icedWays(i)
	case "embed-late":
		return []ladder{m.earlier(i)}
	case "embed-weight":
		return []ladder{m.bySize(i)}
	case "embed-hard":
		return []ladder{m.younger(i)}
	case "embed-melts":
		return []ladder{m.bed(pour.BedChill, "chill the loaf"), m.bed(pour.BedBare, "cover the loaf lightly"), m.cooler(pour.Base)}
	}
	return nil
}

func (m *mender) eachEmbed(way func(int) ladder) []ladder {
	var out []ladder
	for i := range m.plan.Top.Embeds {
		out = append(out, way(i))
	}
	return out
}

// clearing are the steps of a way that leave every piece of a kind clear; where none does, all of them.
func (m *mender) clearing(i int, way ladder) ladder {
	var out ladder
	for _, step := range way {
		p, err := pour.Apply(m.plan, m.shelf, step.Edit)
		if err != nil {
			continue
		}
		s := pour.Weigh(p, m.shelf)
		if !slices.ContainsFunc(s.Embeds[i].Pieces, func(x pour.EmbedPiece) bool { return x.Verdict != pour.VerdictClear }) {
			out = append(out, step)
		}
	}
	if len(out) == 0 {
		return way
	}
	return out
}

// bySize lets what a kind of embed weighs be reckoned from its size and what its material weighs.
func (m *mender) bySize(i int) ladder {
	return ladder{{"reckon the weight of " + m.plan.Top.Embeds[i].Name + " from its size", pour.Both(pour.SetNumber(embedAt(i, "g"), 0), pour.SetNumber(embedAt(i, "density_g_ml"), 0))}}
}

// embedAt is the path of a key of a kind of embed.
func embedAt(i int, key string) string { return fmt.Sprintf("top.embed[%d].%s", i, key) }

// toMiddles sets a kind of embed on the middles of its bars, wherever cuts or wires leave them, and makes it smaller as well where that alone is not
// enough.
func (m *mender) toMiddles(i int) ladder {
	step, ok := m.middles(i)
	if !ok {
		return nil
	}
	out := ladder{step}
	for _, smaller := range m.smallerEmbed(i) {
		out = append(out, Mend{step.Says + ", and " + smaller.Says, pour.Both(step.Edit, smaller.Edit)})
	}
	return out
}

// middles sets a kind of embed on the middles of its bars: in every bar where there are as many pieces as bars, else each piece in the bar it stands
// in or next to; false: it stands there.
func (m *mender) middles(i int) (Mend, bool) {
	e, columns := m.plan.Top.Embeds[i], m.before.Cut.Columns()
	if e.In != pour.EmbedOwn {
		edit, off := pour.SetNumber(embedAt(i, "along_mm"), 0), e.AlongMM != 0
		if e.AcrossMM != 0 && len(m.before.Cut.AcrossMM) > 0 {
			edit, off = pour.Both(edit, pour.SetNumber(embedAt(i, "across_mm"), 0)), true
		}
		return Mend{fmt.Sprintf("set %s on the middle of its bars", e.Name), edit}, off
	}
	if len(e.AtMM) >= len(columns) {
		every := pour.Both(pour.SetWord(embedAt(i, "in"), pour.EmbedEach), pour.SetNumber(embedAt(i, "along_mm"), 0))
		return Mend{fmt.Sprintf("set %s on the middle of every bar, as %s", e.Name, m.cutBy()), every}, true
	}
	at, taken := make([]float64, len(e.AtMM)), make([]bool, len(columns))
	for k, x := range e.AtMM {
		at[k] = x
		if b := nearestBar(columns, taken, x); b >= 0 {
			at[k], taken[b] = columns[b].MiddleMM(), true
		}
	}
	return Mend{fmt.Sprintf("set %s on the middles of the bars it stands next to", e.Name), pour.SetNumbers(embedAt(i, "at_mm"), at)}, true
}

// cutBy says what the bars go by, for the words of a mend.
func (m *mender) cutBy() string {
	if m.plan.Cut.By == pour.CutGang {
		return "your wires cut them"
	}
	return "they are cut"
}

// nearestBar is the bar without a piece whose middle is nearest to a place; -1: none is left.
func nearestBar(bars []pour.BarPiece, taken []bool, at float64) int {
	best := -1
	for b := range bars {
		if !taken[b] && (best < 0 || math.Abs(bars[b].MiddleMM()-at) < math.Abs(bars[best].MiddleMM()-at)) {
			best = b
		}
	}
	return best
}

// smallerEmbed makes the pieces of a kind smaller in outline by whole millimetres, to half of what they are.
func (m *mender) smallerEmbed(i int) ladder {
	e := m.plan.Top.Embeds[i]
	if e.Outline == pour.OutlineRod {
		return nil
	}
	var out ladder
	for mm := math.Ceil(e.LengthMM) - 1; mm >= max(e.LengthMM/2, 1); mm-- {
		edit := pour.SetNumber(embedAt(i, "length_mm"), mm)
		if e.WidthMM > 0 {
			edit = pour.Both(edit, pour.SetNumber(embedAt(i, "width_mm"), math.Round(e.WidthMM*mm/e.LengthMM*10)/10))
		}
		if e.Outline != pour.OutlineBall && e.HeightMM == 0 {
			edit = pour.Both(edit, pour.SetNumber(embedAt(i, "height_mm"), e.LengthMM)) // it stays as high as it was
		}
		if e.Outline == pour.OutlineBall && e.OutMM > mm/3 {
			edit = pour.Both(edit, pour.SetNumber(embedAt(i, "out_mm"), math.Floor(mm/3*10)/10))
		}
		out = append(out, Mend{fmt.Sprintf("make %s %s long", e.Name, m.plan.Show.Len(mm)), edit})
	}
	return out
}

// thickerBars cuts thicker bars, by whole millimetres, where the plan says how thick they are.
func (m *mender) thickerBars() ladder {
	var out ladder
	if m.plan.Cut.By != "" && m.plan.Cut.By != pour.CutBars {
		return nil
	}
	for mm := math.Floor(m.plan.Mould.BarMM) + 1; mm <= m.plan.Mould.BarMM*1.6; mm++ {
		out = append(out, Mend{"cut bars of " + m.plan.Show.Len(mm), pour.SetNumber("mould.bar_mm", mm)})
	}
	return out
}

// widerBars cuts a slab into wider bars, by whole millimetres.
func (m *mender) widerBars() ladder {
	if len(m.before.Cut.AcrossMM) == 0 {
		return nil
	}
	var out ladder
	for mm := math.Floor(m.plan.Mould.BarWidthMM) + 1; mm <= m.plan.Mould.BarWidthMM*1.6; mm++ {
		out = append(out, Mend{"cut bars " + m.plan.Show.Len(mm) + " wide", pour.SetNumber("mould.bar_width_mm", mm)})
	}
	return out
}

// singleCuts cuts one by one instead of by all wires at once.
func (m *mender) singleCuts() ladder {
	if m.plan.Cut.By != pour.CutGang {
		return nil
	}
	return ladder{{fmt.Sprintf("cut one by one, bars of %s, instead of by all wires at once", m.plan.Show.Len(m.plan.Mould.BarMM)), pour.SetWord("cut.by", pour.CutBars)}}
}

// straightLook reads the marks from straighter above.
func (m *mender) straightLook() ladder {
	c := m.plan.Cut
	if c.EyeMM > 0 {
		return ladder{{"bring your head over each mark", pour.Both(pour.SetNumber("cut.eye_mm", 0), pour.SetNumber("cut.sight_deg", min(c.SightDeg, 2)))}}
	}
	var out ladder
	for _, deg := range []float64{5, 2, 0} {
		if deg < c.SightDeg {
			out = append(out, Mend{fmt.Sprintf("bring your head over each mark, within %s°", m.plan.Show.Number(deg, 0)), pour.SetNumber("cut.sight_deg", deg)})
		}
	}
	return out
}

// deeper buries two thirds of a kind.
func (m *mender) deeper(i int) ladder {
	k := m.before.Embeds[i]
	out := math.Floor(k.HeightMM/3*10) / 10
	return ladder{{fmt.Sprintf("set %s deeper, with %s standing out", k.Name, m.plan.Show.LenNear(out)), pour.SetNumber(embedAt(i, "out_mm"), out)}}
}

// further lets a kind stand further out, as far as keeps two thirds of it buried.
func (m *mender) further(i int) ladder {
	k := m.before.Embeds[i]
	var out ladder
	for mm := math.Floor(k.OutMM) + 1; mm <= k.HeightMM/3; mm++ {
		out = append(out, Mend{fmt.Sprintf("let %s stand %s out", k.Name, m.plan.Show.Len(mm)), pour.SetNumber(embedAt(i, "out_mm"), mm)})
	}
	return out
}

// lowerEmbed takes lower pieces.
func (m *mender) lowerEmbed(i int) ladder {
	k := m.before.Embeds[i]
	key, word := "height_mm", "high"
	if m.plan.Top.Embeds[i].Outline == pour.OutlineBall {
		key, word = "length_mm", "wide"
	}
	var out ladder
	for mm := math.Ceil(k.HeightMM) - 1; mm > k.OutMM; mm-- {
		edit := pour.SetNumber(embedAt(i, key), mm)
		if k.OutMM > mm/3 {
			edit = pour.Both(edit, pour.SetNumber(embedAt(i, "out_mm"), math.Floor(mm/3*10)/10))
		}
		out = append(out, Mend{fmt.Sprintf("make %s %s %s", k.Name, m.plan.Show.Len(mm), word), edit})
	}
	return out
}

// higherFill fills the mould higher, by whole millimetres.
func (m *mender) higherFill() ladder {
	var out ladder
	for mm := math.Floor(m.plan.Mould.FillMM) + 1; mm < m.plan.Mould.HeightMM && m.plan.Base.Size == pour.SizeMould; mm++ {
		out = append(out, Mend{"fill it " + m.plan.Show.Len(mm) + " high", pour.SetNumber("mould.fill_mm", mm)})
	}
	return out
}

// inwards moves a kind to the middle of the width.
func (m *mender) inwards(i int) ladder {
	e := m.plan.Top.Embeds[i]
	if e.AcrossMM == 0 {
		return nil
	}
	return ladder{{fmt.Sprintf("set %s in the middle of the width", e.Name), pour.SetNumber(embedAt(i, "across_mm"), 0)}}
}

// fewerAbreast sets fewer of a kind side by side.
func (m *mender) fewerAbreast(i int) ladder {
	e := m.plan.Top.Embeds[i]
	var out ladder
	for n := e.PerBar - 1; n >= 1; n-- {
		out = append(out, Mend{fmt.Sprintf("set %d of %s in each bar", n, e.Name), pour.SetNumber(embedAt(i, "per_bar"), float64(n))})
	}
	return out
}

// earlier makes a kind early enough to be hard when it is set.
func (m *mender) earlier(i int) ladder {
	k := m.before.Embeds[i]
	return ladder{{fmt.Sprintf("make %s %s days before the pour", k.Name, m.plan.Show.Number(math.Ceil(k.HardDays), 0)), pour.SetNumber(embedAt(i, "made_days"), math.Ceil(k.HardDays))}}
}

// younger makes a cold-process kind a week before the pour and no earlier.
func (m *mender) younger(i int) ladder {
	return ladder{{fmt.Sprintf("make %s only a week before the pour", m.before.Embeds[i].Name), pour.SetNumber(embedAt(i, "made_days"), 7)}}
}
