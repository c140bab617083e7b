package stock_test

import (
	"errors"
	"os"
	"testing"

	"pourbench/pour/stock"
	"pourbench/pour/strict"
)

// Whatever a ledger's file holds, it is read or refused with the line, worked out without a panic, and what is added to it can be read back.
func FuzzALedgerIsReadOrRefused(f *testing.F) {
	l := stocked(f)
	src, err := os.ReadFile(l.Path())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(src))
	f.Add(string(src[:len(src)-9]))
	f.Add("format = 1\n[[entry]]\nkind = \"made\"\npack = \"a\"\nday = 2026-05-01\nmaterial = \"blend x\"\nquantity = 1\n[[entry]]\nkind = \"taken\"\npack = \"a\"\nfor = \"a\"\nquantity = 1\nday = 2026-05-01\n")
	f.Add("\ufeff\r\n")
	f.Fuzz(func(t *testing.T, src string) {
		entries, err := stock.Parse("ledger.toml", src)
		if err != nil {
			var faults *strict.Error
			if !errors.As(err, &faults) || len(faults.Faults) == 0 {
				t.Fatalf("refused without a fault: %v", err)
			}
			return
		}
		s := stock.Of(entries, 20000)
		if len(s.Entries) > len(entries) {
			t.Fatal("more entries count than there are")
		}
		l := stock.New(t.TempDir())
		if err := os.WriteFile(l.Path(), []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := l.Decide(now(), "aa", func(stock.State) ([]stock.Entry, error) {
			return []stock.Entry{{Kind: stock.Offered, Material: olive(), Q: 1}}, nil
		}); err != nil {
			t.Fatalf("nothing can be added to what can be read: %v", err)
		}
		if after, err := l.Read(); err != nil || len(after) < 1 {
			t.Fatalf("what was added cannot be read: %v", err)
		}
	})
}
