package logbook

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// told is a pour with everything that a list tells of one.
func told(t *testing.T) (Book, string) {
	t.Helper()
	plan, _ := meadow(t)
	book := openTestBook(t)
	c := course{from: opened()}
	c.mark(0, Event{Kind: Opened})
	c.mark(1, Event{Kind: Troubled, Batch: pour.Base, Jug: "poppy", What: Browns})
	c.mark(2, Event{Kind: Troubled, Batch: pour.Base, Jug: "fern", What: Rices})
	c.mark(3, Event{Kind: Troubled, Batch: pour.Base, Jug: "fern", What: Browns})
	c.mark(4, Event{Kind: Weighed, What: "Olive oil", Value: 3, Lot: "L-77"})
	c.mark(5, Event{Kind: Ended})
	c.mark(6, Event{Kind: Noted, Text: "no result\tat all"})
	c.mark(7, Event{Kind: Result, Text: "rustic, firm"})
	c.mark(8, Event{Kind: LeftOut, Text: "wrong lye"})
	id, err := book.Create(plan, "alp-rose", c.from, c.events)
	must(t, err)
	return book, id
}

func TestAnEntryTellsThePourFromItsFileAndFromTheIndexAlike(t *testing.T) {
	book, id := told(t)
	want := Entry{
		ID: id, Name: "Alpine Meadow", Opened: opened(), TrialScent: "alp-rose", Ended: true, LeftOut: true, Troubles: []string{Browns, Rices}, Result: "rustic, firm",
	}
	var fromFile Entry
	for i := range 2 {
		list, err := book.List()
		must(t, err)
		if len(list) != 1 {
			t.Fatalf("%d pours", len(list))
		}
		got := list[0]
		if d := cmp.Diff(want, got, cmpopts.IgnoreFields(Entry{}, "Size", "Modified"), cmpopts.IgnoreUnexported(Entry{})); d != "" {
			t.Errorf("look %d:\n%s", i+1, d)
		}
		if i == 0 {
			fromFile = got
			continue
		}
		if got.Size != fromFile.Size || got.Modified != fromFile.Modified || got.words != fromFile.words {
			t.Errorf("the index tells %d bytes of %d with %q, the file %d of %d with %q", got.Size, got.Modified, got.words, fromFile.Size, fromFile.Modified, fromFile.words)
		}
	}
	for _, word := range []string{"rustic", "l-77", "2026-12-05", "alp-rose", "olive", "wrong", "browns"} {
		if len(Search([]Entry{fromFile}, word)) != 1 {
			t.Errorf("%q is not found in %q", word, fromFile.words)
		}
	}
	for _, e := range strings.Fields(fromFile.words) {
		if strings.Count(" "+fromFile.words+" ", " "+e+" ") != 1 {
			t.Errorf("%q stands in the words more than once", e)
		}
	}
	_, _, err := book.Append(id, 0, Event{ID: "in", Kind: TakenIn, Wall: opened()})
	must(t, err)
	list, err := book.List()
	must(t, err)
	if list[0].LeftOut {
		t.Error("a pour that was taken in again is listed as left out")
	}
}

// What was taken back is neither listed nor found, whatever it was; what was marked a second time is.
func TestWhatWasTakenBackIsNotListed(t *testing.T) {
	plan, _ := meadow(t)
	book := openTestBook(t)
	c := course{from: opened()}
	c.mark(0, Event{Kind: Troubled, Batch: pour.Base, Jug: "fern", What: Rices})
	c.mark(1, Event{Kind: Troubled, Batch: pour.Base, Jug: "fern", What: Browns})
	c.mark(2, Event{Kind: Ended})
	c.mark(3, Event{Kind: Result, Text: "dull"})
	c.mark(4, Event{Kind: LeftOut, Text: "no scale"})
	for i, id := range []string{"e0", "e2", "e3", "e4"} {
		c.mark(5+float64(i), Event{Kind: TakenBack, What: id})
	}
	id, err := book.Create(plan, "", c.from, c.events)
	must(t, err)
	list, err := book.List()
	must(t, err)
	want := []Entry{{ID: id, Name: "Alpine Meadow", Opened: opened(), Troubles: []string{Browns}}}
	if d := cmp.Diff(want, list, cmpopts.IgnoreFields(Entry{}, "Size", "Modified"), cmpopts.IgnoreUnexported(Entry{})); d != "" {
		t.Error(d)
	}
	for word, found := range map[string]int{"rices": 0, "dull": 0, "scale": 0, "browns": 1} {
		if len(Search(list, word)) != found {
			t.Errorf("%q is found: %v, in %q", word, found == 0, list[0].words)
		}
	}
}

// The index is used as long as size and time of a file are the same, and by nobody who cannot read it.
func TestTheIndexIsBelievedOnlyWhereItFits(t *testing.T) {
	book, id := told(t)
	_, err := book.List()
	must(t, err)
	index := string(book.Kept(indexName))
	renamed := strings.Replace(index, "Alpine Meadow", "From The Index", 1)
	name := func() string {
		t.Helper()
		list, err := book.List()
		must(t, err)
		return list[0].Name
	}
	book.Keep(indexName, []byte(renamed))
	if got := name(); got != "From The Index" {
		t.Errorf("with an index that fits the pour is %q: it is not used", got)
	}
	for what, broken := range map[string]string{
		"an older program's": strings.Replace(renamed, "index 4", "index 1", 1),
		"a field short":      strings.Replace(renamed, "\trustic, firm", "", 1),
		"no size":            strings.Replace(renamed, id+"\t", id+"\tx", 1),
		"empty":              "",
		"a line that is cut": renamed[:len(renamed)/2],
	} {
		book.Keep(indexName, []byte(broken))
		if got := name(); got != "Alpine Meadow" {
			t.Errorf("%s: the pour is %q", what, got)
		}
		if again := string(book.Kept(indexName)); again != index {
			t.Errorf("%s: the index is not written anew:\n%s", what, again)
		}
	}
	book.Keep(indexName, []byte(renamed))
	later := opened().Add(time.Hour)
	must(t, os.Chtimes(book.Path(id), later, later))
	if got := name(); got != "Alpine Meadow" {
		t.Errorf("with a file changed since the pour is %q", got)
	}
}

func TestTheLatestPourStandsFirst(t *testing.T) {
	plan, _ := meadow(t)
	book := openTestBook(t)
	for _, hours := range []int{3, 50, 3, -20} {
		_, err := book.Create(plan, "", opened().Add(time.Duration(hours)*time.Hour), nil)
		must(t, err)
	}
	src := fileOf(t, book, "2026-12-07-alpine-meadow")
	for _, id := range []string{"a", "z"} { // named by hand: the moment goes first, the name where that is the same
		must(t, os.WriteFile(book.Path(id), []byte(src), 0o600))
	}
	list, err := book.List()
	must(t, err)
	var got []string
	for _, e := range list {
		got = append(got, e.ID)
	}
	want := []string{"z", "a", "2026-12-07-alpine-meadow", "2026-12-05-alpine-meadow-2", "2026-12-05-alpine-meadow", "2026-12-04-alpine-meadow"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestPoursAreNamedAfterTheirPlans(t *testing.T) {
	for name, want := range map[string]string{
		"Alpine Meadow": "alpine-meadow", "  Été – 3 %  ": "t-3", "": "pour", "雪": "pour", "A--b": "a-b", "../x": "x",
		strings.Repeat("long ", 20): "long-long-long-long-long-long-long-long",
	} {
		if got := plain.Slug(name, "pour"); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}
