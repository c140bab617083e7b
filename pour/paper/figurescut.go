package paper

import "pourbench/pour"

// CutReport is where the loaf is cut and what comes of it: lengths from the named end A of the mould, of a slab's bars also from its left side.
// All of it is null where no bar could be cut.
type CutReport struct {
	CutsMM        []Number        `json:"cuts_mm"`         // middles of the cuts
	MarksMM       []Number        `json:"marks_mm"`        // as they are marked, each rounded once
	AcrossMM      []Number        `json:"across_mm"`       // of a slab: middles of the cuts along its length
	AcrossMarksMM []Number        `json:"across_marks_mm"` // as they are marked
	KerfMM        Number          `json:"kerf_mm"`
	LaneMM        Number          `json:"lane_mm"`
	Bars          []CutBarReport  `json:"bars"`
	Trims         []CutRestReport `json:"trims"`
	SidesG        Number          `json:"sides_g"` // of a slab: trimmed off its sides
	Sample        *CutRestReport  `json:"sample"`  // null: none
	KerfG         Number          `json:"kerf_g"`  // crumbs
	LightestG     Number          `json:"lightest_g"`
	HeaviestG     Number          `json:"heaviest_g"`
	GangAtMM      Number          `json:"gang_at_mm"`      // where the first of the maker's wires meets the loaf; null: it is not cut so
	GangPitchMM   Number          `json:"gang_pitch_mm"`   // mean distance from wire to wire
	GangWorstMM   Number          `json:"gang_worst_mm"`   // furthest that a placed embed's middle is off the middle between its wires
	OpeningNeedMM Number          `json:"opening_need_mm"` // what the cutter has to let through
	BedNeedMM     Number          `json:"bed_need_mm"`     // how deep its bed has to be
}

// CutBarReport is one bar as it is cut.
type CutBarReport struct {
	StartMM  Number `json:"start_mm"`
	EndMM    Number `json:"end_mm"`
	LeftMM   Number `json:"left_mm"`
	RightMM  Number `json:"right_mm"`
	CutG     Number `json:"cut_g"`
	CuredG   Number `json:"cured_g"`
	BaseG    Number `json:"base_g"`
	IcingG   Number `json:"icing_g"`
	EmbedG   Number `json:"embed_g"`
	ToppingG Number `json:"topping_g"`
}

// CutRestReport is a trim or the sample slice.
type CutRestReport struct {
	StartMM Number `json:"start_mm"`
	EndMM   Number `json:"end_mm"`
	G       Number `json:"g"`
}

func cutReport(s pour.Sheet) *CutReport {
	c := s.Cut
	if len(c.Bars) == 0 {
		return nil
	}
	r := CutReport{
		CutsMM: numbers(c.CutsMM), MarksMM: numbers(c.MarksMM), AcrossMM: numbers(c.AcrossMM), AcrossMarksMM: numbers(c.AcrossMarkMM),
		KerfMM: finite(c.KerfMM), LaneMM: finite(c.LaneMM), Bars: make([]CutBarReport, len(c.Bars)), Trims: []CutRestReport{}, SidesG: known(c.SidesG),
		KerfG: known(c.KerfG), LightestG: known(c.LightG), HeaviestG: known(c.HeavyG),
		GangAtMM: known(c.Gang.AtMM), GangPitchMM: known(c.Gang.PitchMM), GangWorstMM: known(c.Gang.WorstMM),
		OpeningNeedMM: known(c.OpeningNeedMM), BedNeedMM: known(c.BedNeedMM),
	}
	for i, b := range c.Bars {
		r.Bars[i] = CutBarReport{
			finite(b.StartMM), finite(b.EndMM), finite(b.LeftMM), finite(b.RightMM),
			known(b.CutG), known(b.CuredG), known(b.BaseG), known(b.IcingG), known(b.EmbedG), known(b.ToppingG),
		}
	}
	for _, t := range c.Trims() {
		r.Trims = append(r.Trims, CutRestReport{finite(t.StartMM), finite(t.EndMM), known(t.G)})
	}
	if c.SliceMM > 0 {
		r.Sample = &CutRestReport{finite(c.SliceAt), finite(c.SliceAt + c.SliceMM), known(c.SliceG)}
	}
	return &r
}

func numbers(list []float64) []Number {
	out := make([]Number, len(list))
	for i, v := range list {
		out[i] = finite(v)
	}
	return out
}
