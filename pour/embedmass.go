package pour

import "math"

// agedLoss is the part of its mass a cold-process piece has lost after so many days: a tenth in four weeks (8 to 12 %, common practice), by the
// square root of the time before that, as water that diffuses through a surface does; nothing more after. An estimate.
func agedLoss(days float64) float64 {
	const month, lost = 28.0, 0.1
	return lost * math.Sqrt(min(days, month)/month)
}

// weighEmbeds works out what the pieces weigh, what they will weigh in a cured bar, and what batter they take the place of. Masses of the base are
// there already.
func (s *Sheet) weighEmbeds() {
	for i := range s.Embeds {
		k, e := &s.Embeds[i], &s.Plan.Top.Embeds[i]
		g := e.G
		if g == 0 {
			g = k.WholeMM3 / 1000 * e.gml()
		}
		n := float64(len(k.Pieces))
		k.PieceG, k.AllG, k.CuredG = Know(g), Know(g*n), AsFigure(g*s.cures(e))
		in := float64(k.inLoaf(s.Plan.Mould.AlongMM()))
		k.DisplacesG = AsFigure(in * k.SubmergedMM3.V / 1000 * s.Base.gml())
	}
}

// gml is the density of what is poured of a batch, g/mL.
func (b *BatchSheet) gml() float64 { return b.Size.PouredG / b.Size.PouredML }

// cures is the part of its mass that a piece has in a cured bar. A cold-process piece is taken to be made as the base is: it has lost some water
// since, and dries with its bar to the base's final moisture. Glycerin soap keeps its water, dried pieces have none to lose, and of anything else
// nothing is known: they stay as they are.
func (s *Sheet) cures(e *Embed) float64 {
	if !e.soap() {
		return 1
	}
	dry := s.Base.Size.DryG * s.Base.kept() / s.Base.Size.PouredG
	return min(dry/(1-agedLoss(e.made()))/(1-s.Plan.Base.FinalMoisturePercent/100), 1)
}

// inBar is what embeds bring into one bar.
type inBar struct {
	g, curedG    float64
	displacedMM3 float64
}

// embedded is what embeds bring into the bar at a place of [CutSheet.Bars], with its part of every rod.
func (s *Sheet) embedded(bar int) inBar {
	var in inBar
	for i := range s.Embeds {
		k := &s.Embeds[i]
		n := s.piecesIn(k, bar)
		in.g += n * k.PieceG.orUnknown()
		in.curedG += n * k.CuredG.orUnknown()
		in.displacedMM3 += n * k.SubmergedMM3.V
	}
	return in
}

// piecesIn is how many pieces of a kind are in the bar at a place of [CutSheet.Bars], with its part of every rod.
func (s *Sheet) piecesIn(k *EmbedSheet, bar int) float64 {
	n := 0.0
	for _, p := range k.Pieces {
		switch {
		case k.Rod && s.rodIn(p, bar):
			n += s.Cut.Bars[bar].ThicknessMM() / s.Plan.Mould.AlongMM()
		case p.Bar == bar+1:
			n++
		}
	}
	return n
}

// rodIn reports whether a rod lies in a bar: of bars side by side, in the one that its middle is in.
func (s *Sheet) rodIn(p EmbedPiece, bar int) bool {
	b, across := s.Cut.Bars[bar], p.AcrossMM+s.Plan.Mould.WidthMM/2
	return !s.Cut.sides() || across >= b.LeftMM && across < b.RightMM
}
