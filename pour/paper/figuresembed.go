package paper

import "pourbench/pour"

// EmbedKindReport is one kind of embed; clear_mm is that of its worst piece.
type EmbedKindReport struct {
	Name          string `json:"name"`
	Material      string `json:"material"`
	PieceG        Number `json:"piece_g"`
	AllG          Number `json:"all_g"`
	CuredG        Number `json:"cured_g"`
	WholeML       Number `json:"whole_ml"`
	SubmergedML   Number `json:"submerged_ml"`
	DisplacesG    Number `json:"displaces_g"`
	ExtentMM      Number `json:"extent_mm"`
	AcrossMM      Number `json:"extent_across_mm"`
	NeedMM        Number `json:"need_mm"`
	ClearMM       Number `json:"clear_mm"`
	BuriedPercent Number `json:"buried_percent"`
	HoldN         Number `json:"hold_n"` // an estimate
}

// EmbedReport is one piece: where it stands, in mm from end A and from the loaf's middle, and how clear of the cuts it is. Bar is null in none; a
// clearance is null towards a side that is not cut.
type EmbedReport struct {
	Kind     string `json:"kind"`
	Bar      Number `json:"bar"`
	CentreMM Number `json:"centre_mm"`
	AcrossMM Number `json:"across_mm"`
	MarkMM   Number `json:"mark_mm"`
	ClearMM  Number `json:"clear_mm"`
	ClearAMM Number `json:"clear_a_mm"`
	ClearBMM Number `json:"clear_b_mm"`
	ClearLMM Number `json:"clear_left_mm"` // seen from end A
	ClearRMM Number `json:"clear_right_mm"`
	Verdict  string `json:"verdict"`
	PlaceMM  Number `json:"place_mm"` // the errors each side has to leave room for: of the hand, the wire, the eye, and half of what a cut takes
	WanderMM Number `json:"wander_mm"`
	SightMM  Number `json:"sight_mm"`
	KerfMM   Number `json:"half_kerf_mm"`
	NeedMM   Number `json:"need_mm"`  // all of them at once
	UsualMM  Number `json:"usual_mm"` // independent of each other
}

func embedKinds(s pour.Sheet) []EmbedKindReport {
	out := make([]EmbedKindReport, len(s.Embeds))
	for i, k := range s.Embeds {
		worst, _ := k.Worst()
		out[i] = EmbedKindReport{
			Name: k.Name, Material: k.Material, PieceG: known(k.PieceG), AllG: known(k.AllG), CuredG: known(k.CuredG), WholeML: finite(k.WholeMM3 / 1000),
			SubmergedML: finite(k.SubmergedMM3.V / 1000), DisplacesG: known(k.DisplacesG), ExtentMM: finite(k.ExtentMM), AcrossMM: finite(k.AcrossMM), NeedMM: known(k.NeedMM), ClearMM: known(worst.ClearMM),
			BuriedPercent: known(k.BuriedPercent), HoldN: known(k.HoldN),
		}
	}
	return out
}

func embeds(s pour.Sheet) []EmbedReport {
	out := []EmbedReport{}
	for _, k := range s.Embeds {
		for _, p := range k.Pieces {
			bar := Number(nil)
			if p.Bar > 0 {
				bar = finite(float64(p.Bar))
			}
			b := p.Budget
			out = append(out, EmbedReport{
				Kind: k.Name, Bar: bar, CentreMM: finite(p.CentreMM), AcrossMM: finite(p.AcrossMM), MarkMM: finite(p.MarkMM), ClearMM: known(p.ClearMM), ClearAMM: known(p.ClearAMM),
				ClearBMM: known(p.ClearBMM), ClearLMM: known(p.ClearLeftMM), ClearRMM: known(p.ClearRightMM), Verdict: p.Verdict, PlaceMM: finite(b.Placing), WanderMM: finite(b.Wander), SightMM: finite(b.Sight), KerfMM: finite(b.HalfKerf),
				NeedMM: finite(b.Worst()), UsualMM: finite(b.Usual()),
			})
		}
	}
	return out
}
