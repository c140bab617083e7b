package pour

import (
	"fmt"
	"math"
)

// stickG is what a stick blender's foot needs around it to draw batter in, g; common practice, no source. The maker's own vessel wins.
const stickG = 150

// Parts from which a difference is worth a word: of the icing that is planned and what its shape comes to, and of what stays in the bags.
const (
	mismatchPart = 0.1
	wastefulPart = 0.2
)

// inspectPiping looks at the icing as it is piped.
func (s *Sheet) inspectPiping() {
	p := &s.Piping
	switch {
	case s.Icing == nil || !p.Stated():
		return
	case p.Lacks != "":
		if s.Plan.Icing.Size != SizeShape {
			s.warn(warning("piping-unfinished", string(Icing), p.Lacks, "state it, or let the icing be put on by eye"))
		}
		return
	}
	s.inspectStand()
	s.inspectPeak()
	if s.Icing.Refused.Masses == "" {
		s.inspectMade()
	}
}

// inspectMade compares what is made with what the shape takes, what the vessel blends and what comes out of the bags.
func (s *Sheet) inspectMade() {
	p, own, show := &s.Piping, &s.Plan.Piping, s.Plan.Show
	if on := s.Icing.Size.PouredG; s.Plan.Icing.Size != SizeShape && math.Abs(on-p.NetG.V) > mismatchPart*math.Max(on, p.NetG.V) {
		s.warn(warning("icing-mismatch", string(Icing), fmt.Sprintf("%s stand on the loaf, the shape comes to %s", show.Weight(on), show.Weight(p.NetG.V)),
			"size the icing by its shape, or change the shape"))
	}
	switch least := own.LeastG; {
	case least == 0 && p.MadeG.V < stickG:
		s.warn(warning("icing-small", string(Icing), fmt.Sprintf("%s are made, too little for most stick blenders to draw in", show.Weight(p.MadeG.V)),
			"state the smallest batch your vessel blends: the rest goes into a small mould (common practice)"))
	case least > 0 && p.MadeG.V < least*(1-noise):
		s.warn(warning("icing-small", string(Icing), fmt.Sprintf("%s are made, your vessel blends no less than %s", show.Weight(p.MadeG.V), show.Weight(least)),
			"size the icing by its shape: then enough is made, and the rest goes into a small mould"))
	}
	if p.RestG.V > 0 {
		s.warn(warning("icing-rest", string(Icing), fmt.Sprintf("%s are made, because your vessel blends no less, and the shape takes %s: %s are left", show.Weight(p.MadeG.V), show.Weight(p.NeedG.V), show.Weight(p.RestG.V)),
			"have a small mould ready for the rest"))
	}
	if p.LeftG.V > wastefulPart*(p.MadeG.V-p.RestG.V)+noise {
		s.warn(warning("icing-bags", string(Icing), fmt.Sprintf("%s of %s stay in bags and tips", show.Weight(p.LeftG.V), show.Weight(p.MadeG.V-p.RestG.V)),
			"pipe from fewer or smaller bags, or scrape them out into a small mould"))
	}
}

// inspectStand says where the units have no room.
func (s *Sheet) inspectStand() {
	p, show := &s.Piping, s.Plan.Show
	if p.CrowdMM.V > 0 {
		s.warn(warning("icing-crowded", string(Icing), fmt.Sprintf("side by side they take %s more than there is across", show.Len(p.CrowdMM.V)), "pipe fewer beside each other, or smaller ones"))
	}
	switch {
	case p.GapMM.Known && p.GapMM.V < p.LaneMM.V-noise:
		left, lane := show.LenBeside(p.GapMM.V, p.LaneMM.V)
		text := fmt.Sprintf("%s are left between neighbours, a cut wants a clear lane of %s", left, lane)
		if p.GapMM.V < 0 {
			text = fmt.Sprintf("units of neighbouring bars stand %s into each other, a cut wants a clear lane of %s", show.Len(-p.GapMM.V), show.Len(p.LaneMM.V))
		}
		s.warn(warning("icing-lane", string(Icing), text, "pipe smaller units or cut thicker bars"))
	case s.Plan.Piping.Along == PipeLoaf && !s.Plan.Piping.Spoons() && len(s.Cut.CutsMM) > 0:
		s.warn(warning("icing-crosses", string(Icing), "it stands in rows along the loaf: every cut goes through it", "cut while the icing is still soft, loaf on its side, or pipe onto the bars' middles"))
	}
}

// inspectPeak compares the peak the base is said to hold with the one it takes.
func (s *Sheet) inspectPeak() {
	p, show := &s.Piping, s.Plan.Show
	if peak := s.Plan.Piping.PeakMM; peak > 0 && p.PeakMM.Known && peak < p.PeakMM.V-noise {
		s.warn(warning("base-soft", string(Icing), fmt.Sprintf("a base that holds a peak of %s does not carry icing %s high on average: one of %s would (an estimate)", show.Len(peak), show.Len(p.MeanMM.V), show.Len(p.PeakMM.V)),
			"wait until the base holds a higher peak, or pipe lower"))
	}
}
