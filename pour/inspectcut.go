package pour

import (
	"fmt"
	"slices"
)

func cutCodes() []CodeInfo {
	return []CodeInfo{
		{"cut-none", Caution, false, "no whole bar comes out of the cut plan"},
		{"cut-outside", Caution, false, "own cuts that would not cut: outside the loaf, or where another cut is"},
		{"cut-rest", Note, false, "a bar and more is left at the ends of the loaf"},
		{"bars-uneven", Note, false, "the heaviest bar weighs well more than the lightest"},
		{"wires-twice", Stop, false, "two wires stand at one place, or nearer than a cut takes: a bar of nothing"},
		{"wires-idle", Note, false, "wires that do not meet the loaf"},
		{"wires-off-pitch", Caution, false, "the wires stand at another pitch than the embeds that are placed"},
		{"slice-none", Note, false, "the trim has no room for the sample slice"},
		{"best-none", Caution, false, "no best cut plan could be found, so bars of the mould's thickness are cut"},
		{"best-shared", Caution, false, "placed embeds that no cut can part, or that have no bar of their own"},
		{"cutter-low", Caution, false, "the loaf does not pass under the cutter's frame"},
		{"cutter-shallow", Caution, false, "the loaf, or what stands on it, reaches beyond the cutter's bed"},
		{"lay-crushes", Caution, false, "the way the loaf lies under the cutter spoils what stands on its top"},
	}
}

// placeCutting is where a warning of the cut plan stands.
const placeCutting = "cut"

// unevenPercent is from how much more the heaviest bar weighs than the lightest that it is worth a word: common practice, no source.
const unevenPercent = 5

// inspectCut looks at the cut plan.
func (s *Sheet) inspectCut() {
	if !s.Plan.Mould.IsCut() {
		return
	}
	s.inspectPieces()
	s.inspectWires()
	s.inspectBest()
	s.inspectCutter()
}

// inspectPieces looks at what comes off the cutter.
func (s *Sheet) inspectPieces() {
	c, show := &s.Cut, s.Plan.Show
	if len(c.Bars) == 0 {
		s.warn(warning("cut-none", placeCutting, "no whole bar comes out: trims, slice and cuts leave no room for one, or no two wires meet the loaf", "cut bars of the mould's thickness, or trim less"))
		return
	}
	if s.Plan.Cut.By == CutMarks && len(c.CutsMM)+len(c.Outside) == 0 && s.Plan.Mould.IsCut() {
		s.warn(warning("cut-none", placeCutting, "none of your own cuts is marked: the loaf stays in one piece", "mark cuts, or cut bars of the mould's thickness"))
	}
	if len(c.Outside) > 0 {
		s.warn(warning("cut-outside", placeCutting, fmt.Sprintf("the cut at %s would not cut: it lies outside the loaf or meets another cut (%d in all)", show.LenNear(c.Outside[0]), len(c.Outside)), "move it, or take it out of the list"))
	}
	if ends := c.TrimAMM + c.TrimBMM; c.LeftMM == 0 && ends >= c.UsualMM+s.Plan.Cut.TrimAMM+s.Plan.Cut.TrimBMM {
		s.warn(warning("cut-rest", placeCutting, fmt.Sprintf("%s at end A and %s at end B are trimmed: together more than a bar", show.Len(c.TrimAMM), show.Len(c.TrimBMM)), "let the bars have what is left over, cut one bar more, or lay the rest under the wires again"))
	}
	if light, heavy := c.LightG.orUnknown(), c.HeavyG.orUnknown(); heavy > light*(1+unevenPercent/100.0) {
		thin, thick := s.between(c.LightG), s.between(c.HeavyG)
		s.warn(warning("bars-uneven", placeCutting, fmt.Sprintf("the lightest bar, %s, weighs %s as cut, the heaviest, %s, %s", thin, show.Weight(light), thick, show.Weight(heavy)), "cut equal bars or bars of one mass, or sell them by weight"))
	}
}

// between names the first bar of a mass as cut by its number and by the cuts it lies between, with its thickness.
func (s *Sheet) between(g Figure) string {
	i := slices.IndexFunc(s.Cut.Bars, func(b BarPiece) bool { return b.CutG == g })
	if i < 0 {
		return "of unknown place"
	}
	b, last := s.Cut.Bars[i], 0
	for k, x := range s.Cut.CutsMM {
		if x <= b.StartMM {
			last = k + 1
		}
	}
	place, n := "before the first cut", len(s.Cut.CutsMM)
	switch {
	case last > 0 && last < n:
		place = fmt.Sprintf("between cuts %d and %d", last, last+1)
	case last > 0:
		place = "behind the last cut"
	}
	return fmt.Sprintf("bar %d %s, %s thick", i+1, place, s.Plan.Show.LenTold(b.ThicknessMM()))
}

// inspectWires looks at wires that cut all at once.
func (s *Sheet) inspectWires() {
	g, show := &s.Cut.Gang, s.Plan.Show
	if s.Plan.Cut.By != CutGang || !g.Placed {
		return
	}
	wires := s.Plan.Cut.gang()
	for i := range max(len(wires.Wires)-1, 0) {
		if wires.Gap(i) <= noise {
			s.warn(warning("wires-twice", placeCutting, fmt.Sprintf("wires %d and %d stand at %s and %s from the first: no bar is left between them",
				i+1, i+2, show.LenToldApart(wires.Wires[i]).Number, show.LenToldApart(wires.Wires[i+1])),
				"measure them again, or leave one of them out"))
		}
	}
	if g.Idle > 0 {
		s.warn(warning("wires-idle", placeCutting, fmt.Sprintf("%d of %d wires do not meet the loaf", g.Idle, g.Wires), "lay the loaf elsewhere, or take it as it is"))
	}
	if g.Missed > 0 {
		s.warn(warning("wires-off-pitch", placeCutting, fmt.Sprintf("too near a wire: %d of the embeds you have placed; the wires stand %s apart on average, the worst piece is %s off the middle", g.Missed, show.LenNear(g.PitchMM.V), show.LenNear(g.WorstMM.V)),
			"set the embeds to the wires, into the middles of the bars, or cut one by one"))
	}
	if g.NoSlice {
		s.warn(warning("slice-none", placeCutting, fmt.Sprintf("the trim beside the wires has no room for a sample slice of %s and its cut", show.Len(s.Plan.Cut.SliceMM)), "cut a thinner one, or take a trim as the sample"))
	}
}

// inspectBest looks at the best plan.
func (s *Sheet) inspectBest() {
	b := &s.Cut.Best
	if s.Plan.Cut.By != CutBest {
		return
	}
	if !b.Found {
		s.warn(warning("best-none", placeCutting, "no cut plan keeps clear of what is placed with bars no thinner and no thicker than allowed", "let bars vary more, trim an end, or set embeds into the middles of the bars"))
		return
	}
	switch {
	case len(b.Tight) > 0:
		s.warn(warning("best-shared", placeCutting, fmt.Sprintf("placed embeds %d and %d, counted from the first of your list, stand too near each other for a cut between them (%d such pairs): they share a bar", b.Tight[0][0]+1, b.Tight[0][1]+1, len(b.Tight)), "set them further apart, or into the middles of the bars"))
	case b.Lost > 0:
		s.warn(warning("best-shared", placeCutting, fmt.Sprintf("%d of the embeds you have placed have no bar of their own", b.Lost), "set them into the middles of the bars, or let bars vary more"))
	}
}

// inspectCutter looks at the cutter and at how the loaf lies under it.
func (s *Sheet) inspectCutter() {
	own, c, show := &s.Plan.Cut, &s.Cut, s.Plan.Show
	if own.OpeningMM > 0 && c.OpeningNeedMM.Known && c.OpeningNeedMM.V > own.OpeningMM {
		s.warn(warning("cutter-low", placeCutting, fmt.Sprintf("the loaf is at least %s high as it lies, the cutter lets %s through", show.Len(c.OpeningNeedMM.V), show.Len(own.OpeningMM)), "lay it another way, or make it lower"))
	}
	if own.BedMM > 0 && c.BedNeedMM.Known && c.BedNeedMM.V > own.BedMM {
		s.warn(warning("cutter-shallow", placeCutting, fmt.Sprintf("the loaf takes at least %s from the stop behind, the bed is %s deep: what overhangs is not held", show.Len(c.BedNeedMM.V), show.Len(own.BedMM)), "lay it another way, or hold what overhangs with a board"))
	}
	if own.Lay != LayUpsideDown && own.Lay != LayPulledUp {
		return
	}
	out := s.Icing != nil
	for _, e := range s.Embeds {
		out = out || e.OutMM > 0
	}
	if out {
		s.warn(warning("lay-crushes", placeCutting, "icing or embeds stand on its top: the wire meets "+own.Laid().Passes+", which "+own.Laid().Does, "lay the loaf on its side"))
	}
}
