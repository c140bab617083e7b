package stocktest_test

import (
	"testing"

	"pourbench/pour/stock/stocktest"
)

func TestX(t *testing.T) {
	b := stocktest.Draw(stocktest.Seeded(1), stocktest.TenYears())
	t.Log(len(b.Entries), len(b.Pours), b.First, b.Today)
	s := b.State()
	t.Log(len(s.Odd), s.Odd[:min(5, len(s.Odd))])
	off := 0
	for id, q := range b.Told.Left {
		if p, _ := s.Pack(id); p.Left != q { off++; if off < 5 {t.Log(id, p.Left, q)} }
	}
	t.Log(off, len(b.Told.Left))
}
