package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
)

// What is no mass but follows from one that cannot be is not known either, and the one stop says why: no second warning repeats it.
func TestWhatFollowsFromALyeShortOfWaterIsUnknown(t *testing.T) {
	for _, c := range [][2]string{{pour.SizeOils, pour.InLye}, {pour.SizeMould, pour.InLye}, {pour.SizeOils, pour.InWater}} {
		p, shelf := halves(t)
		size := c[0]
		p.Base.SuperfatPercent, p.Base.Size = 9, size
		p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 50, In: c[1]}}
		s := pour.Work(p, shelf, pour.Hand{})
		b := s.Base
		for what, f := range map[string]pour.Figure{"lye's rise": b.Heat.LyeRiseK, "lye's peak": b.Heat.LyePeakC, "water to add": b.Lye.WaterToAddG, "first stage": b.Jugs[0].Clock.Stages[0].Mid, "late chance": b.Jugs[0].Clock.LateChancePercent} {
			if f.Known {
				t.Errorf("sized by %s: the %s is said to be %v", size, what, f.V)
			}
		}
		figures := map[string]float64{
			"lye as mixed": b.Lye.AsMixedPercent, "batter's warmth": b.Heat.MixC, "superfat as weighed": b.Superfat.AsWeighedPercent, "superfat as mixed": b.Superfat.MixedPercent,
		}
		for _, j := range b.Jugs {
			figures[j.Name+"'s superfat"], figures[j.Name+"'s firm"] = j.Superfat.HeldPercent, j.Superfat.FirmPercent
			figures[j.Name+"'s low"], figures[j.Name+"'s as weighed"] = j.Superfat.LowPercent, j.Superfat.AsWeighedPercent
		}
		for what, v := range figures {
			if !math.IsNaN(v) {
				t.Errorf("sized by %s: the %s is said to be %v", size, what, v)
			}
		}
		if w, ok := found(s, "clock-refused"); ok || b.Refused.Times != b.Refused.Masses {
			t.Errorf("sized by %s: said again as %+v, the clock says %q", size, w, b.Refused.Times)
		}
	}
}
