package cure_test

import (
	"testing"

	"pourbench/chem/cure"
)

// A thousand batches of eight weighings each: fit, check, ready day and its band.
func BenchmarkAThousandBatches(b *testing.B) {
	p, w := prior(b), weighed()
	b.ReportAllocs()
	for b.Loop() {
		for range 1000 {
			f, err := cure.Of(table(), p, w, 0.15)
			if err != nil {
				b.Fatal(err)
			}
			if _, err := f.Ready(0.5); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkOnePosterior(b *testing.B) {
	f := fitted(b, 8)
	for b.Loop() {
		if _, err := f.Posterior(0.5); err != nil {
			b.Fatal(err)
		}
	}
}
