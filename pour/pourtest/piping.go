package pourtest

import (
	"pgregory.net/rapid"

	"pourbench/pour"
)

// drawPiping draws the shape an icing is piped in, every other time none: every shape out of every tip, on the bars and along the loaf, weighed by
// a cup or whipped, with what stays by percent or by the bag; and now and then has it size the icing.
func drawPiping(t *rapid.T, p *pour.Plan, icing *pour.Batch) {
	icing.Bags = rapid.SampledFrom([]string{"", pour.BagEach, pour.BagOne}).Draw(t, "bags")
	if p.Piping = (pour.Piping{}); rapid.Bool().Draw(t, "put on by eye") {
		return
	}
	q := &p.Piping
	q.Shape = rapid.SampledFrom([]string{pour.PipeDollop, pour.PipeRosette, pour.PipeShells, pour.PipeRope, pour.PipeRuffle, pour.PipeSpooned}).Draw(t, "piped")
	q.Tip = rapid.SampledFrom([]string{"", pour.TipRound, pour.TipStar, pour.TipSlot}).Draw(t, "tip")
	q.Points, q.TipMM = rapid.IntRange(3, 12).Draw(t, "points"), odd(t, "opening", 4, 16)
	q.ValleyMM, q.WideMM, q.NarrowMM = q.TipMM*odd(t, "valley", 0.4, 1), odd(t, "wide", 1, 5), odd(t, "narrow", 0, 3)
	q.Swell, q.Pull = dosed(t, "swell", 1.1), dosed(t, "pull", 1.6)
	q.WidthMM, q.HeightMM, q.Profile = odd(t, "unit's width", 6, 40), odd(t, "unit's height", 4, 40), dosed(t, "profile", 2)
	q.CoilFromMM, q.CoilMM, q.Tiers = odd(t, "coil from", 0, 3), odd(t, "coil", 4, 15), rapid.IntRange(0, 3).Draw(t, "tiers")
	q.OverlapPercent, q.HeadMM, q.TailMM = odd(t, "overlap", 0, 60), odd(t, "head", 4, 20), odd(t, "tail", 4, 20)
	q.WindMM, q.PitchMM, q.SwingMM, q.WaveMM = dosed(t, "wind", 8), odd(t, "pitch", 5, 30), dosed(t, "swing", 10), odd(t, "wave", 6, 30)
	q.LayerMM, q.ReliefMM = odd(t, "flat layer", 1, 12), odd(t, "relief", 0, 15)
	q.Relief = rapid.SampledFrom([]string{"", pour.ReliefWaves, pour.ReliefSwoops, pour.ReliefPoints}).Draw(t, "relief is")
	q.Along = rapid.SampledFrom([]string{"", pour.PipeBars, pour.PipeLoaf}).Draw(t, "stands")
	q.PerBar, q.Rows = rapid.IntRange(0, 5).Draw(t, "on each bar"), rapid.IntRange(0, 4).Draw(t, "rows")
	if rapid.Bool().Draw(t, "a cup was weighed") {
		q.CupML, q.CupG = 118.3, odd(t, "cup", 80, 130)
	}
	q.OverrunPercent, q.ResiduePercent = odd(t, "air", 0, 40), odd(t, "residue", 0, 15)
	q.BagG, q.UnitS, q.FillMin = odd(t, "bag", 120, 400), odd(t, "for one", 0, 12), odd(t, "filling", 0, 4)
	if icing.Size != pour.SizeOils {
		q.ResidueBagG = dosed(t, "in each bag", 40)
	}
	if rapid.Bool().Draw(t, "sized by its shape") {
		icing.Size, q.LeastG = pour.SizeShape, dosed(t, "least", 900)
	}
}
