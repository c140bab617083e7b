package clock

import (
	"math"
	"testing"

	"pourbench/chem"
)

// nineJugs is a batch in nine jugs with a scent each, as a slow Sheet would ask for it: nine forecasts and eighteen chances.
func nineJugs(b *testing.B, batch Batter) {
	c, err := New(batch, Hand{})
	if err != nil {
		b.Fatal(err)
	}
	for i := range 9 {
		f := c.Forecast(Jug{Fraction: 1. / 9, Scents: []Scent{scent(1+float64(i)/9, 3, 2+float64(i))}})
		late, ok := f.ChancePast(chem.Medium, 5)
		early, ok2 := f.ChancePast(chem.Thick, 9)
		if !ok || !ok2 || math.IsNaN(late+early) {
			b.Fatal("no chance")
		}
	}
}

func BenchmarkClockNineJugs(b *testing.B) {
	batch := batter(balanced(), 35, pulsed()...)
	batch.SplitMin = 2
	b.ReportAllocs()
	for b.Loop() {
		nineJugs(b, batch)
	}
}

func BenchmarkClockNineJugsHandStirred(b *testing.B) {
	batch := batter(balanced(), 35)
	batch.SplitMin = 2
	b.ReportAllocs()
	for b.Loop() {
		nineJugs(b, batch)
	}
}
