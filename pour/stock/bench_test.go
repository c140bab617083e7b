package stock_test

import (
	"os"
	"path/filepath"
	"testing"

	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/stocktest"
)

// long is a ledger of ten years, 60 000 movements, on the disk.
func long(b *testing.B) (stock.Ledger, stocktest.Business) {
	b.Helper()
	years := stocktest.Draw(stocktest.Seeded(1), stocktest.TenYears())
	l := stock.New(b.TempDir())
	if _, err := write(l, years.Entries...); err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(len(years.Entries)), "entries")
	return l, years
}

func BenchmarkOpeningCold(b *testing.B) {
	l, years := long(b)
	for b.Loop() {
		_ = os.Remove(filepath.Join(l.Dir, ".ledger"))
		if _, err := l.State(years.Today); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOpeningFromWhatWasKept(b *testing.B) {
	l, years := long(b)
	if _, err := l.State(years.Today); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := l.State(years.Today); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWorkingOut(b *testing.B) {
	_, years := long(b)
	for b.Loop() {
		stock.Of(years.Entries, years.Today)
	}
}

func BenchmarkOneAppend(b *testing.B) {
	l, years := long(b)
	if _, err := l.State(years.Today); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := write(l, stock.Entry{Kind: stock.Offered, Material: olive(), Q: lot.One}); err != nil {
			b.Fatal(err)
		}
	}
}
