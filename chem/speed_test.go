package chem_test

import (
	"testing"

	"pourbench/chem"
)

func BenchmarkMixLye(b *testing.B) {
	o := order()
	for b.Loop() {
		if _, err := chem.MixLye(o); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBlendOfTwentyOils(b *testing.B) {
	oils := readOils(b)[:20]
	blend := make(chem.Blend, len(oils))
	for i, oil := range oils {
		blend[i] = chem.Part{Fat: oil.fat, G: 50}
	}
	for b.Loop() {
		blend.DemandKOH()
		blend.Profile()
		blend.IodineValue()
		blend.Families()
		blend.ML(40)
		blend.GlycerolG()
	}
}
