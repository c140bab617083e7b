package live

import (
	"testing"

	"pourbench/pour"
)

// The low end counts the oils alone; where an extra brings fat, which the superfat before it counts, that is said.
func TestALowEndWithoutTheFatOfExtrasIsCalledThat(t *testing.T) {
	s := Superfat{TrueSuperfat: pour.TrueSuperfat{Batch: pour.Base, PlannedPercent: 6, Percent: 4.9, JugPercent: 4.9, LowPercent: -0.4, PlanLowPercent: 0.6}}
	if got, want := s.Words(pour.Show{}), "base superfat as weighed 4.9 %, planned 6.0 %; with every oil at its low end -0.4 %, lye-heavy"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	s.ExtraFat = true
	if got, want := s.Words(pour.Show{}), "base superfat as weighed 4.9 %, planned 6.0 %; without the fat of its extras, every oil at its low end -0.4 %, lye-heavy"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
