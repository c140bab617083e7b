package stock_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

func same(a, b any) string {
	return cmp.Diff(a, b, cmp.Comparer(func(a, b money.Amount) bool { return a.Compare(b) == 0 }))
}

// A machine that stops at any byte of an entry loses that entry and no other: the rest is read, what was torn is said, and with the next entry it is
// kept as one of its own.
func TestATornEntryIsKeptAndTheRestRead(t *testing.T) {
	l := stocked(t)
	whole, err := l.Read()
	if err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(l.Path())
	if _, err := write(l, stock.Entry{Kind: stock.Lost, Pack: "olive-2", Q: 12345, Text: "fell\nover = \"bad\" [[entry]]"}); err != nil {
		t.Fatal(err)
	}
	after, _ := os.ReadFile(l.Path())
	for n := len(before) + 3; n < len(after)-1; n += 1 + n%5 {
		if err := os.WriteFile(l.Path(), after[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		got, err := l.Read()
		if err != nil {
			t.Fatalf("torn at %d: %v", n-len(before), err)
		}
		if n < len(after)-2 { // with all but its last letter or two a moment may be whole
			if last := got[len(got)-1]; last.Kind != stock.Torn && len(got) != len(whole)+1 {
				t.Fatalf("torn at %d: %+v", n-len(before), last)
			}
		}
		if diff := same(whole, got[:len(whole)]); diff != "" {
			t.Fatal(diff)
		}
		if _, err := write(l, stock.Entry{Kind: stock.Opened, Pack: "olive-2"}); err != nil {
			t.Fatal(err)
		}
		s, err := l.State(day.Of(now()))
		if p, _ := s.Pack("olive-2"); err != nil || p.Opened == 0 {
			t.Fatalf("after a torn entry nothing could be written: %v", err)
		}
		if torn := got[len(got)-1].Kind == stock.Torn; torn != (len(s.Odd) == 1) {
			t.Fatalf("torn at %d: %+v", n-len(before), s.Odd)
		}
	}
}

// A torn entry that was written again and taken back is said no more.
func TestATornEntryIsTakenBack(t *testing.T) {
	l := stocked(t)
	src, _ := os.ReadFile(l.Path())
	if err := os.WriteFile(l.Path(), append(src, "\n[[entry]]\nkind = \"lo"...), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := write(l, stock.Entry{Kind: stock.Opened, Pack: "olive-2"}); err != nil {
		t.Fatal(err)
	}
	s, _ := l.State(day.Of(now()))
	if len(s.Odd) != 1 || !strings.Contains(s.Odd[0].Text, `kind = "lo`) {
		t.Fatalf("%+v", s.Odd)
	}
	if _, err := write(l, stock.Entry{Kind: stock.TakenBack, Of: s.Odd[0].Entry}); err != nil {
		t.Fatal(err)
	}
	if s, _ := l.State(day.Of(now())); len(s.Odd) != 0 {
		t.Errorf("%+v", s.Odd)
	}
}

// Two terminals that take the last of a pack at once do not both get it, and no two entries have one id.
func TestTwoTerminalsDoNotTakeTheSame(t *testing.T) {
	l := stocked(t)
	empty := errors.New("empty")
	var all sync.WaitGroup
	got := make([]bool, 8)
	for i := range got {
		all.Go(func() {
			_, err := l.Decide(now(), "aa", func(s stock.State) ([]stock.Entry, error) {
				if p, _ := s.Pack("olive-2"); p.Left < 2500*lot.One {
					return nil, empty
				}
				return []stock.Entry{{Kind: stock.Taken, Pack: "olive-2", Q: 2500 * lot.One, For: fmt.Sprint("pour-", i)}}, nil
			})
			got[i] = err == nil
			if err != nil && !errors.Is(err, empty) {
				t.Error(err)
			}
		})
	}
	all.Wait()
	n := 0
	for _, ok := range got {
		if ok {
			n++
		}
	}
	s, err := l.State(day.Of(now()))
	if p, _ := s.Pack("olive-2"); err != nil || n != 2 || p.Left != 0 || len(s.Odd) != 0 {
		t.Errorf("%d terminals took half of the pack; %s is left, %v %v", n, p.Left, s.Odd, err)
	}
}

// What a maker mends by hand is read: other line ends, a mark at the beginning, comments, an entry without id and moment at the end.
func TestALedgerMendedByHandIsRead(t *testing.T) {
	l := stocked(t)
	src, _ := os.ReadFile(l.Path())
	hand := "\n# I forgot this one\n[[entry]]\nkind = \"taken\"\nday = 2026-05-01\npack = \"olive-2\"\nquantity = 12.5\nfor = \"meadow\"\n"
	for name, text := range map[string]string{
		"plain": string(src) + hand, "windows": "\ufeff" + strings.ReplaceAll(string(src)+hand, "\n", "\r\n"), "no end": string(src) + hand + "wall = 2026-05-01T10:00:00+02:00",
	} {
		if err := os.WriteFile(l.Path(), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := write(l, stock.Entry{Kind: stock.Taken, Pack: "olive-2", Q: 5000, For: "meadow"}); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		s, err := l.State(day.Of(now()))
		if p, _ := s.Pack("olive-2"); err != nil || p.Left != 4987*lot.One || len(s.Odd) != 0 {
			t.Errorf("%s: %s left, %v %v", name, p.Left, s.Odd, err)
		}
	}
}

// What is wrong in a file names its line, what stands there and how to mend it; nothing is written over it.
func TestAFaultInTheFileNamesItsLine(t *testing.T) {
	for text, want := range map[string]string{
		"format = 1\n[[entry]]\nkind = \"taken\"\nday = 2026-05-01\npack = \"p\"\nquantity = 0.00001\nfor = \"x\"\n":                                                    ":6:1: entry[0].quantity = 1e-05: is finer than a ledger keeps to mend: write at most four digits after the point",
		"format = 1\n[[entry]]\nkind = \"took\"\nday = 2026-05-01\n":                                                                                                    ":3:1: entry[0].kind",
		"format = 1\n[[entry]]\nkind = \"opened\"\npack = \"p\"\n":                                                                                                      "entry[0].day: is missing to mend: write day = … in this [[entry]]",
		"format = 1\n[[entry]]\nkind = \"taken back\"\nid = \"a\"\nof = \"b\"\n[[entry]]\nkind = \"taken back\"\nid = \"a\"\nof = \"c\"\nwall = 2026-05-01T10:00:00Z\n": `:8:1: entry[1].id = "a": is the id of another entry, too to mend: give one of them another id`,
		"format = 2\n":                   "format = 2: is none this program reads",
		"format = 1\n[[entry]\n":         "ledger.toml:3:1: expected",
		"[[event]]\nkind = \"opened\"\n": "event: is no key of a ledger here",
	} {
		l := stock.New(t.TempDir())
		if err := os.WriteFile(l.Path(), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := write(l, came(t, "olive-1", "2026-03-03"))
		if err == nil || !strings.Contains(strings.Join(strings.Fields(err.Error()), " "), want) {
			t.Errorf("%q\n got  %v\n want %s", text, err, want)
		}
		if now, _ := os.ReadFile(l.Path()); string(now) != text {
			t.Errorf("%q was changed", text)
		}
	}
}

// A folder in place of the file, and a disk that is full, are told; the ledger stays as it was.
func TestAStuckDiskIsTold(t *testing.T) {
	l := stocked(t)
	before, _ := os.ReadFile(l.Path())
	full := errors.New("no space left")
	l.Disk.Sync = func(*os.File) error { return full }
	if _, err := write(l, stock.Entry{Kind: stock.Opened, Pack: "olive-1"}); !errors.Is(err, full) || !strings.Contains(err.Error(), "write the ledger") {
		t.Error(err)
	}
	if after, _ := os.ReadFile(l.Path()); !bytes.Equal(before, after) {
		t.Error("half an entry stands in the file")
	}
	other := stock.New(t.TempDir())
	if err := os.Mkdir(other.Path(), 0o700); err != nil {
		t.Fatal(err)
	}
	if _, err := other.Read(); err == nil || !errors.Is(err, disk.ErrNotPlain) {
		t.Error(err)
	}
}

// An emptied file is begun anew, and one held by another terminal is not waited for longer than said.
func TestAnEmptiedLedgerIsBegunAnew(t *testing.T) {
	l := stocked(t)
	if err := os.WriteFile(l.Path(), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := write(l, came(t, "olive-1", "2026-03-03")); err != nil {
		t.Fatal(err)
	}
	if s, err := l.State(day.Of(now())); err != nil || len(s.Entries) != 1 {
		t.Error(s.Entries, err)
	}
	l.Wait = 0
	l.Disk.TryLock = func(*os.File) error { return disk.ErrLocked }
	if _, err := write(l, stock.Entry{Kind: stock.Opened, Pack: "olive-1"}); !errors.Is(err, disk.ErrLocked) {
		t.Error(err)
	}
}

// What was kept of a long ledger gives the entries the file has: as it was, grown, mended by hand in its middle, and whatever becomes of what was kept.
func TestWhatWasKeptIsWhatTheFileHas(t *testing.T) {
	l := stocked(t)
	var many []stock.Entry
	for i := range 400 {
		many = append(many, stock.Entry{
			Kind: stock.Taken, Pack: "olive-2", For: fmt.Sprint("pour-", i), Jug: "poppy", Q: lot.Quantity(1 + i), Planned: i%2 == 0, Text: "ä\tx", Day: at(t, "2026-05-01"),
		})
	}
	many = append(many, stock.Entry{
		Kind: stock.Received, Pack: "olive-3", Material: olive(), Name: "Olive", Lot: "A12", Supplier: "the mill", Q: 77, Loss: 7, Tare: 3, Price: price(t, "1.234567891"),
		Postage: price(t, "0.5"), Expires: at(t, "2027-05-31"), Currency: "EUR",
	}, stock.Entry{Kind: stock.Offered, Material: olive(), Q: 9, Price: price(t, "3")})
	if _, err := write(l, many...); err != nil {
		t.Fatal(err)
	}
	kept := filepath.Join(l.Dir, ".ledger")
	check := func(what string) {
		t.Helper()
		src, _ := os.ReadFile(l.Path())
		want, err := stock.Parse(l.Path(), string(src))
		if err != nil {
			t.Fatal(err)
		}
		for range 2 {
			got, err := l.Read()
			if diff := same(want, got); err != nil || diff != "" {
				t.Fatalf("%s: %v\n%s", what, err, diff)
			}
		}
	}
	check("kept")
	if _, err := os.Stat(kept); err != nil {
		t.Fatal(err)
	}
	if _, err := write(l, stock.Entry{Kind: stock.Opened, Pack: "olive-3"}); err != nil {
		t.Fatal(err)
	}
	check("grown")
	src, _ := os.ReadFile(l.Path())
	if err := os.WriteFile(l.Path(), bytes.Replace(src, []byte("pour-7\""), []byte("pour-8\""), 1), 0o600); err != nil {
		t.Fatal(err)
	}
	check("mended")
	content, _ := os.ReadFile(kept)
	for _, n := range []int{0, 10, 40, len(content) / 2, len(content) - 1} {
		if err := os.WriteFile(kept, content[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		check(fmt.Sprint("cut at ", n))
	}
	content[len(content)/2] ^= 1
	if err := os.WriteFile(kept, content, 0o600); err != nil {
		t.Fatal(err)
	}
	check("damaged")
}
