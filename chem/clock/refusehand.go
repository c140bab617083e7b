package clock

import "math"

// check refuses a hand that no logbook could have taught.
func (h Hand) check() error {
	if len(h.Covariance) != len(h.Traits) || h.Freedom < 0 || h.Freedom > 1_000_000 || h.Pours < 0 || !(h.Noise >= 0 && h.Noise <= huge) {
		return refuse("what the logs taught does not hold together (%d traits, %d rows of covariance, noise %v, %d degrees of freedom); work the logs out again",
			len(h.Traits), len(h.Covariance), h.Noise, h.Freedom)
	}
	for i, t := range h.Traits {
		if len(h.Covariance[i]) != len(h.Traits) {
			return refuse("row %d of what the logs taught has %d numbers, not %d; work the logs out again", i, len(h.Covariance[i]), len(h.Traits))
		}
		if !(math.Abs(t.Mean) <= 5) {
			return refuse("the logs put ln speed of %s %s at %v, beyond e^5 either way; look for a log with a wrong minute", t.Kind, t.ID, t.Mean)
		}
		for _, v := range h.Covariance[i] {
			if !(math.Abs(v) <= 100) {
				return refuse("the logs leave %s %s with a covariance of %v; work the logs out again", t.Kind, t.ID, v)
			}
		}
	}
	return nil
}
