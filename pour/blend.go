package pour

import "strings"

// A blend whose parts do not sum to 100 is not finished: what was typed stays as it was typed, the plan can be kept and taken up again, and
// nothing can be mixed from it. It is a blend with an oil that is held; where none is, the others have given way and the sum is 100.

// oilSum is what the parts of the blend sum to, percent.
func (b *Batch) oilSum() float64 {
	sum := 0.0
	for _, o := range b.Oils {
		sum += o.Percent
	}
	return sum
}

// Unfinished says how far a blend is whose parts do not sum to 100, "93.0 % so far, 7.0 % to go" or "3.0 % too much"; empty: it is whole.
func (b Batch) Unfinished() string {
	sum := b.oilSum()
	if isHundred(sum) {
		return ""
	}
	if sum > 100 {
		return asFar(sum-100) + " % too much"
	}
	return asFar(sum) + " % so far, " + asFar(100-sum) + " % to go"
}

// asFar draws a part of a blend with one decimal, and with two where it has them: what is to go can be typed as it stands.
func asFar(percent float64) string { return strings.TrimSuffix(fixed(percent, 2), "0") }
