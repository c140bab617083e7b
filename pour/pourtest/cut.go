package pourtest

import (
	"slices"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// Cut draws a cut plan for a mould: every way to cut, trims and kept ends, a slice, own marks and own wires, some of them outside the loaf.
func Cut(t *rapid.T, m pour.Mould) pour.Cut {
	c := pour.Blank().Cut
	c.By = rapid.SampledFrom([]string{"", pour.CutBars, pour.CutCount, pour.CutMass, pour.CutMarks, pour.CutGang, pour.CutBest}).Draw(t, "cut by")
	c.Count = rapid.IntRange(0, 12).Draw(t, "bars")
	c.KerfMM, c.TrimAMM, c.TrimBMM = dosed(t, "kerf", 1.5), dosed(t, "trim a", 12), dosed(t, "trim b", 12)
	if rapid.Bool().Draw(t, "slice") {
		c.SliceMM, c.SliceAt = odd(t, "slice", 3, 8), rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "slice at")
	}
	c.Left = rapid.SampledFrom([]string{"", pour.LeftEndA, pour.LeftEndB, pour.LeftTrims, pour.LeftBars}).Draw(t, "left")
	c.Lay = rapid.SampledFrom([]string{"", pour.LaySide, pour.LayUpsideDown, pour.LayPulledUp}).Draw(t, "lay")
	c.Even = rapid.SampledFrom([]string{"", pour.EvenMass, pour.EvenThickness}).Draw(t, "even")
	for range rapid.IntRange(0, 8).Draw(t, "marks") {
		c.MarksMM = append(c.MarksMM, odd(t, "mark", 0, m.LengthMM*1.1))
	}
	at := 0.0
	for range rapid.IntRange(0, 10).Draw(t, "wires") {
		c.WiresMM = append(c.WiresMM, at)
		at += odd(t, "to the next wire", m.BarMM*0.8, m.BarMM*1.2)
	}
	slices.Reverse(c.WiresMM)
	c.GangAtMM = dosed(t, "gang at", 60)
	c.OpeningMM, c.BedMM = dosed(t, "opening", 150), dosed(t, "bed", 150)
	return c
}
