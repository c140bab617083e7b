package colour

import (
	"math/rand/v2"
	"testing"
)

func BenchmarkNewPaint(b *testing.B) {
	c := hex(b, "#6b3fa0")
	for b.Loop() {
		if _, err := NewPaint(c, 0); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMixOfTwoAndItsColour(b *testing.B) {
	paints, half := []Paint{paint(b, "#6b3fa0"), paint(b, "#f2c230")}, []float64{0.5, 0.5}
	for b.Loop() {
		m, err := Mix(paints, half)
		if err != nil {
			b.Fatal(err)
		}
		_ = m.RGB()
	}
}

func BenchmarkMix(b *testing.B) {
	paints, half := []Paint{paint(b, "#6b3fa0"), paint(b, "#f2c230")}, []float64{0.5, 0.5}
	for b.Loop() {
		if _, err := Mix(paints, half); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMud(b *testing.B) {
	judge, p, q := NewJudge(), paint(b, "#6b3fa0"), paint(b, "#f2c230")
	for b.Loop() {
		if _, err := judge.Mud(p, q); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNewJudge(b *testing.B) {
	for b.Loop() {
		NewJudge()
	}
}

func BenchmarkOrderOfTwelve(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 2))
	table := make([][]float64, 12)
	for i := range table {
		table[i] = make([]float64, 12)
		for k := range i {
			table[i][k] = random.Float64()
			table[k][i] = table[i][k]
		}
	}
	for b.Loop() {
		if _, _, _, err := BestOrder(OrderProblem{Mud: table, First: None, Last: None, Spacer: None}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkQuantiseTwelve(b *testing.B) {
	colours := make([]RGB, 12)
	for i := range colours {
		colours[i] = FromBytes(uint8(20*i), uint8(255-15*i), 128)
	}
	for b.Loop() {
		if _, err := Quantise(colours, Palette256); err != nil {
			b.Fatal(err)
		}
	}
}
