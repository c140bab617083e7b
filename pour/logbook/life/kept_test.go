package life

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
)

// What was kept gives the same batches as the files do, is not believed where a file or the shelf is another, and may be gone or broken.
func TestWhatIsKeptIsBelievedOnlyWhereItFits(t *testing.T) {
	book, shelf := manyPours(t, 3)
	today := day.Of(time.Date(2024, 1, 20, 0, 0, 0, 0, time.UTC))
	opt := cmp.Options{
		cmp.AllowUnexported(Batch{}), cmpopts.IgnoreUnexported(cure.Fit{}), cmpopts.EquateEmpty(), cmpopts.EquateNaNs(),
		cmp.Comparer(func(a, b error) bool { return fmt.Sprint(a) == fmt.Sprint(b) }),
	}
	all := func(shelf pour.Shelf) []Batch {
		t.Helper()
		list, err := All(book, shelf, pour.Hand{}, today)
		fatal(t, err)
		return list
	}
	want := all(shelf)
	if len(book.Kept(keptName)) == 0 {
		t.Fatal("nothing is kept")
	}
	if d := cmp.Diff(want, all(shelf), opt...); d != "" {
		t.Errorf("as kept:\n%s", d)
	}
	// The kept file says something else: it is believed as long as pour and shelf are the same, and so it was read.
	k := readKept(book, keptSum(shelf))
	lie := k.Pours[want[0].ID]
	lie.Story.Name = "From What Is Kept"
	k.Pours[want[0].ID] = lie
	writeKept(book, k)
	if got := all(shelf)[0].Name; got != "From What Is Kept" {
		t.Errorf("%q was read anew", got)
	}
	stocked := shelf
	stocked.Stock = lot.Stock{Today: today, Currency: "EUR", Held: map[lot.Material]lot.Holding{{Kind: lot.Oil, ID: "olive"}: {}}}
	if keptSum(stocked) != keptSum(shelf) {
		t.Error("what lies in stock makes every pour be read anew")
	}
	other := shelf
	other.Oils = other.Oils[:len(other.Oils)-1]
	if got := all(other)[0].Name; got != want[0].Name {
		t.Errorf("with another shelf it is %q", got)
	}
	writeKept(book, k)
	_, err := Log(book, shelf, want[0].ID, logbook.Event{Kind: logbook.Given, Life: logbook.Life{Count: 1}}, time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC), "t")
	fatal(t, err)
	if got := all(shelf)[0]; got.Name != want[0].Name || got.Bars.Given != 1 {
		t.Errorf("after an event it is %q, %+v", got.Name, got.Bars)
	}
	for what, broken := range map[string][]byte{"torn": book.Kept(keptName)[:40], "empty": {}, "of no kind": []byte("soap")} {
		fatal(t, os.WriteFile(filepath.Join(book.Folder(), keptName), broken, 0o600))
		if got := all(shelf); len(got) != 3 || got[1].Name != want[1].Name {
			t.Errorf("%s: %d batches", what, len(got))
		}
	}
}
