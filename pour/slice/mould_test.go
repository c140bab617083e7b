package slice

import "testing"

// A side that lay against the mould shows pits of air, few and small, and comes off a little unevenly.
func TestASideOffTheMouldHasPits(t *testing.T) {
	pits, all, least, most := 0, 0, 2.0, 0.0
	for along := 0.0; along < 120; along += 0.3 {
		for up := 0.0; up < 60; up += 0.3 {
			bright := moulded(along, up)
			if all++; bright < 0.9 {
				pits++
				continue
			}
			least, most = min(least, bright), max(most, bright)
		}
	}
	if part := float64(pits) / float64(all); part < 0.001 || part > 0.02 {
		t.Errorf("%.4f of the side are pits", part)
	}
	if most-least < matTone || most-least > 5*matTone+pitLight {
		t.Errorf("beside them it is %.3f to %.3f bright", least, most)
	}
}
