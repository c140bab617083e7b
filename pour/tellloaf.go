package pour

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour/script"
)

// tellLoaf says what is done to the loaf.
func (s *Sheet) tellLoaf(a script.Act) string {
	show := s.Plan.Show
	switch a.Kind {
	case script.Embed:
		return s.tellEmbed(a)
	case script.Strew:
		return s.tellStrew(a)
	case script.Firm:
		text := "press a corner with a gloved thumb: it gives no more, nothing sticks, and the middle of the mould is cool; else wait some hours"
		if len(s.Cut.CutsMM)+len(s.Cut.AcrossMM) == 0 {
			text += "; then take what is in the mould out"
		}
		return text
	case script.Mark:
		return s.tellMarks()
	case script.Cut:
		return s.tellCut(a)
	case script.Aside:
		return "set " + strings.Join(s.aside(), " and ") + " aside, apart from the bars"
	case script.Weigh:
		p := s.Pieces()[a.Item]
		return "weigh " + p.Name + ", planned " + show.Figure(p.PlannedG, show.Weight)
	case script.Wipe:
		return "wipe what cut and its bed, gloves on; crumbs are soap and raw"
	}
	return ""
}

// tellMarks says where the cuts are marked.
func (s *Sheet) tellMarks() string {
	var parts []string
	if len(s.Cut.MarksMM) > 0 {
		parts = append(parts, "from end A at "+s.Plan.Show.Marks(s.Cut.MarksMM...))
	}
	if len(s.Cut.AcrossMarkMM) > 0 {
		parts = append(parts, "from the left wall, seen from end A, at "+s.Plan.Show.Marks(s.Cut.AcrossMarkMM...))
	}
	return "mark " + strings.Join(parts, "; ") + "; measure each from there, none from the last mark"
}

// aside is what is no bar.
func (s *Sheet) aside() []string {
	var out []string
	for _, p := range s.Pieces() {
		if p.Bar == 0 {
			out = append(out, p.Name)
		}
	}
	return out
}

// tellEmbed says how many pieces are set where.
func (s *Sheet) tellEmbed(a script.Act) string {
	e := s.Embeds[a.Item]
	where := "into the icing"
	if a.Into {
		where = "into the fresh base"
		if s.Icing != nil {
			where += ", before the icing goes on"
		}
	}
	if e.Rod {
		return fmt.Sprintf("lay %s along the whole loaf, %s%s", e.Name, where, s.tellAcross(&e, "; middles from the left wall, seen from end A, at "))
	}
	out := ""
	if e.OutMM > 0 {
		out = ", " + s.Plan.Show.LenTold(e.OutMM) + " of each above the base"
	}
	return fmt.Sprintf("set %d of %s %s%s; middles from end A at %s%s", len(e.Pieces), e.Name, where, out, s.Plan.Show.Marks(e.marks()...), s.tellAcross(&e, "; from the left wall, seen from there, at "))
}

// tellAcross says where pieces stand across a slab; nothing of a mould that is not cut along its length.
func (s *Sheet) tellAcross(k *EmbedSheet, begins string) string {
	at := s.AcrossMarks(k)
	if len(at) == 0 {
		return ""
	}
	return begins + s.Plan.Show.Marks(at...)
}

// AcrossMarks are the marks of a kind's pieces across a slab that is cut along its length, mm from its left wall seen from end A, each once and
// rounded once; none where no cut runs so.
func (s *Sheet) AcrossMarks(k *EmbedSheet) []float64 {
	var out []float64
	if len(s.Cut.AcrossMM) == 0 {
		return nil
	}
	for _, p := range k.Pieces {
		mark := math.Round((p.AcrossMM+s.Plan.Mould.WidthMM/2)/markStepMM) * markStepMM
		if !slices.Contains(out, mark) {
			out = append(out, mark)
		}
	}
	slices.Sort(out)
	return out
}

// marks are the marks of a kind's pieces, each distance once.
func (e EmbedSheet) marks() []float64 {
	var out []float64
	for _, p := range e.Pieces {
		if n := len(out); n == 0 || out[n-1] != p.MarkMM {
			out = append(out, p.MarkMM)
		}
	}
	return out
}

// tellStrew says what goes on in what measure.
func (s *Sheet) tellStrew(a script.Act) string {
	t, show := s.Toppings[a.Item], s.Plan.Show
	verb := map[string]string{ToppingDrizzle: "drizzle", ToppingSpray: "spray, no flame near,", ToppingPiece: "lay", ToppingDust: "dust, mask on,"}[t.Kind]
	if verb == "" {
		verb = "strew"
	}
	text := fmt.Sprintf("%s %s, %s on each bar, %s in all", verb, t.Name, show.Figure(t.PerBarG, show.Dose), show.Figure(t.AllG, show.Dose))
	if t.PerBarG.Known && t.PerBarG.V < show.LyeStepG { // no scale of hers shows it
		text = fmt.Sprintf("%s %s, %s in all, evenly over the bars", verb, t.Name, show.Figure(t.AllG, show.Dose))
	}
	switch t.When {
	case StrewSkin:
		text = "when the top has skinned but is tacky, about " + show.Span(orUsual(s.Plan.Run.SkinMin, usualSkinMin)) + " after it was touched last, " + s.skinSaid() + ": " + text
	case StrewCut:
		text += "; after the cut, once the bars are weighed"
	case StrewCure:
		text += "; on the cured bars"
	}
	return text
}

// skinSaid says whose figure the wait for the skin is.
func (s *Sheet) skinSaid() string {
	if s.Plan.Run.SkinMin > 0 {
		return "as you say"
	}
	return "an estimate"
}

// tellCut says which cut is made where, and how the loaf lies.
func (s *Sheet) tellCut(a script.Act) string {
	lay := map[string]string{LaySide: "the loaf on its side", LayUpsideDown: "the loaf upside down"}[s.Plan.Cut.Lay]
	if lay == "" {
		lay = "the loaf upright"
	}
	tool := "wire"
	if s.Plan.Cut.Tool == CutBlade {
		tool = "blade"
	}
	if s.Plan.Cut.By == CutGang {
		return fmt.Sprintf("all %d wires through at once, %s, the first at %s from end A; no stop at its end pressed tight", len(s.Cut.CutsMM), lay, s.Plan.Show.Marks(s.Cut.MarksMM[0]))
	}
	which := "cut"
	if a.Rounds > 1 {
		which = fmt.Sprintf("cut %d of %d", a.Round, a.Rounds)
	}
	at := ""
	if k := a.Item - len(s.Cut.MarksMM); k >= 0 {
		at = s.Plan.Show.Marks(s.Cut.AcrossMarkMM[k]) + " from the left wall, along the whole length"
	} else {
		at = s.Plan.Show.Marks(s.Cut.MarksMM[a.Item]) + " from end A"
	}
	return fmt.Sprintf("%s at %s, %s; then wipe the %s", which, at, lay, tool)
}

// tellBag says how the base is tried and how bags are filled.
func (s *Sheet) tellBag(n BatchName, a script.Act) string {
	show := s.Plan.Show
	if a.Kind == script.Peak {
		text := "pull a peak out of the base with a spoon: it stands"
		if p := s.Piping.PeakMM; p.Known {
			text = "pull a peak out of the base with a spoon: one of " + show.Len(p.V) + " stands, and it carries the icing, an estimate"
		}
		return text + "; else wait"
	}
	what := "all colours side by side"
	if a.Jug != script.Whole {
		what = s.Batch(n).Jugs[a.Jug].Name
	}
	return fmt.Sprintf("fill the bag with %s, %s, at most %s each, tip on", what, Times(a.Times), show.Weight(s.Plan.Piping.BagG))
}

// Times is how often something is done, in words: once, 2 times.
func Times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}
