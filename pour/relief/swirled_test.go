package relief

import "testing"

// Beyond its foot a swirl goes on falling, without a step at the foot: what lies over a neighbour is decided there without a ruled line.
func TestASwirlGoesOnFallingBeyondItsFoot(t *testing.T) {
	s := pipedSwirl{high: 1, lap: 0.3}
	if z := s.smooth(1 - 1e-9); z < 0 || z > 1e-3 {
		t.Errorf("just inside its foot it stands %.4f high", z)
	}
	for _, u := range []float64{1.05, 1.3, 2} {
		if got, want := s.smooth(u), -0.5*(u-1); got < want-1e-9 || got > want+1e-9 {
			t.Errorf("at %.2f of its radius it stands %.3f high, want %.3f", u, got, want)
		}
	}
	if s.smooth(0.2) <= s.smooth(0.5) || s.smooth(0.5) <= s.smooth(0.9) {
		t.Errorf("it does not fall outwards: %.3f, %.3f, %.3f", s.smooth(0.2), s.smooth(0.5), s.smooth(0.9))
	}
}
