package life_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/disk/disktest"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// What cannot be is refused, with how to put it right, and the file stays as it was.
func TestWhatCannotBeIsRefused(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 7), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9}})
	gone := b.logs(at(12, 8), count(logbook.Sold, 2)).Event.ID
	b.logs(at(12, 8), logbook.Event{Kind: logbook.TakenBack, What: gone})
	before, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	l := func(k logbook.EventKind, of logbook.Life) logbook.Event { return logbook.Event{Kind: k, Life: of} }
	for what, c := range map[string]struct {
		e    logbook.Event
		says string
	}{
		"a kind that is none":      {logbook.Event{Kind: "eaten"}, "its kinds are unmoulded"},
		"a mark of the run":        {logbook.Event{Kind: logbook.Done, Step: "base mix"}, "its kinds are"},
		"before the pour":          {l(logbook.Given, logbook.Life{Count: 1, Day: "2026-12-04"}), "before the pour, which was on 2026-12-05"},
		"to come":                  {l(logbook.Given, logbook.Life{Count: 1, Day: "2026-12-11"}), "still to come"},
		"an hour to come":          {l(logbook.Given, logbook.Life{Count: 1, Day: "2026-12-10 10:01"}), "still to come"},
		"no day":                   {l(logbook.Given, logbook.Life{Count: 1, Day: "2026-02-30"}), "year-month-day"},
		"more than are left":       {count(logbook.Sold, 10), "10 bars are more than the 9 that are left of the 9 that were cut"},
		"no bar sold":              {count(logbook.Sold, 0), "count is missing: how many"},
		"too strong":               {logbook.Event{Kind: logbook.Sniffed, Value: 5}, "from 0 to 4"},
		"half a strength":          {logbook.Event{Kind: logbook.Sniffed, Value: 1.5}, "whole number"},
		"another's scent":          {logbook.Event{Kind: logbook.Sniffed, Life: logbook.Life{Scent: "meadow-hy"}}, `did you mean "meadow-hay"?`},
		"another's jug":            {logbook.Event{Kind: logbook.Looked, What: logbook.LookColour, Jug: "popy"}, `did you mean "poppy"?`},
		"a bar there is none of":   {l(logbook.WeighIn, logbook.Life{Bars: []int{1, 10}, MassesG: []float64{120, 121}}), "there is no bar 10: 9 were cut"},
		"a bar twice":              {l(logbook.WeighIn, logbook.Life{Bars: []int{1, 1}, MassesG: []float64{120, 121}}), "named twice"},
		"bars without masses":      {l(logbook.WeighIn, logbook.Life{Bars: []int{1, 2}, MassesG: []float64{120}}), "one mass for every bar"},
		"no masses":                {l(logbook.WeighIn, logbook.Life{}), "masses is missing"},
		"a mass of nothing":        {l(logbook.WeighIn, logbook.Life{MassesG: []float64{0}}), "more than 0 g"},
		"weighed before the cut":   {l(logbook.WeighIn, logbook.Life{MassesG: []float64{120}, Day: "2026-12-06"}), "before the cut, which was on 2026-12-07"},
		"seconds beyond the bars":  {l(logbook.Sliced, logbook.Life{Count: 2, Seconds: 3}), "3 seconds are more than the 2 bars"},
		"a cut into nothing":       {l(logbook.Sliced, logbook.Life{}), "say how many bars"},
		"a tongue":                 {logbook.Event{Kind: logbook.Tested, What: "tongue", Value: 9}, "pH, titration"},
		"a pH of 15":               {logbook.Event{Kind: logbook.Tested, What: logbook.TestPH, Value: 15}, "0 to 14"},
		"no picture":               {l(logbook.Photo, logbook.Life{Path: "nowhere.png"}), "find the picture"},
		"a folder for a picture":   {l(logbook.Photo, logbook.Life{Path: t.TempDir()}), "is no file"},
		"a price in words":         {l(logbook.Sold, logbook.Life{Count: 1, Price: "much"}), "decimal number"},
		"failed without why":       {logbook.Event{Kind: logbook.Failed}, "text is missing"},
		"more labels than bars":    {logbook.Event{Kind: logbook.Lotted, Lot: "A", Life: logbook.Life{Count: 10}}, "10 labelled bars are more than the 9"},
		"a correction of nothing":  {logbook.Event{Kind: logbook.Kept, Corrects: "e77", Life: logbook.Life{Count: 1}}, "this pour has no such event"},
		"of what was taken back":   {logbook.Event{Kind: logbook.Kept, Corrects: gone, Life: logbook.Life{Count: 1}}, "does not count any more"},
		"taken back twice":         {logbook.Event{Kind: logbook.TakenBack, What: gone}, "does not count any more"},
		"a mark of the run undone": {logbook.Event{Kind: logbook.TakenBack, What: "p1"}, "a mark of the pour itself"},
	} {
		if got := b.refuses(at(12, 10), c.e); !strings.Contains(got, c.says) {
			t.Errorf("%s: %s; want %s", what, got, c.says)
		}
	}
	after, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	if string(after) != string(before) {
		t.Error("what was refused is in the file")
	}
}

// A cut that is corrected to fewer bars than went is refused, and one to more is not.
func TestACorrectedCutHasTheBarsThatWent(t *testing.T) {
	b := newBench(t)
	cut := b.logs(at(12, 7), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9}}).Event
	b.logs(at(12, 8), count(logbook.Sold, 5))
	e := life.Correction(cut)
	e.Life.Count = 4
	if got := b.refuses(at(12, 9), e); !strings.Contains(got, "5 bars are gone already, more than the 4 there would be") {
		t.Error(got)
	}
	e.Life.Count = 10
	if now := b.logs(at(12, 9), e).After; now.Bars.Left != 5 || *now.CutDay != date(12, 7) {
		t.Errorf("%+v, cut on %s", now.Bars, *now.CutDay)
	}
}

// Two terminals cannot both sell the last bar, and no two of their events have one name.
func TestTwoTerminalsCannotBothSellTheLastBar(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 7), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 3}})
	var group sync.WaitGroup
	failed := make(chan error, 8)
	for _, session := range []string{"a", "b"} {
		group.Go(func() {
			for range 4 {
				if _, err := life.Log(b.book, b.shelf, b.id, count(logbook.Sold, 1), at(12, 8), session); err != nil {
					failed <- err
				}
			}
		})
	}
	group.Wait()
	if len(failed) != 5 {
		t.Errorf("%d of 8 were refused, want 5", len(failed))
	}
	now := b.on(date(12, 9))
	ids := map[string]bool{}
	for _, e := range now.Events {
		ids[e.ID] = true
	}
	if now.Bars.Left != 0 || now.Bars.Sold != 3 || len(ids) != 4 {
		t.Errorf("%+v, %v", now.Bars, ids)
	}
}

// An event that was being written when the machine stopped is kept as torn; nothing of the next one is in it.
func TestATornEventIsKeptApart(t *testing.T) {
	b := newBench(t)
	first := b.logs(at(12, 7), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9}}).Event
	src, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	must(t, os.WriteFile(b.book.Path(b.id), append(src, "\n[[event]]\nkind = \"sold\"\ncount = "...), 0o600))
	e := life.Correction(first)
	e.Life.Count = 8
	b.logs(at(12, 8), e)
	p, err := b.book.Read(b.id, b.shelf)
	must(t, err)
	torn := p.Events[len(p.Events)-2]
	if torn.Kind != logbook.TornRecord || torn.Corrects != "" || torn.Life.Count != 0 || !strings.Contains(torn.Text, "sold") {
		t.Errorf("%+v", torn)
	}
	if a := b.on(date(12, 9)).Bars; a.Bars != 8 || a.Sold != 0 {
		t.Errorf("%+v", a)
	}
}

// A disk that fails leaves the file as it was.
func TestAFullDiskLeavesTheFileAsItWas(t *testing.T) {
	b := newBench(t)
	before, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	spy := disktest.Spy{Fail: func(_ int, step string) error {
		if strings.HasPrefix(step, "write") {
			return os.ErrPermission
		}
		return nil
	}}
	if _, err := life.Log(b.book.On(spy.Ops()), b.shelf, b.id, logbook.Event{Kind: logbook.Unmoulded, What: "firm"}, at(12, 6), "t1"); err == nil {
		t.Fatal("it was logged on a disk that takes nothing")
	}
	after, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	if d := cmp.Diff(string(before), string(after)); d != "" {
		t.Error(d)
	}
}

// A picture's path is kept from the folder of the pours, and found again from there.
func TestAPicturesPathIsThatFromThePoursFile(t *testing.T) {
	b := newBench(t)
	folder := filepath.Join(filepath.Dir(b.book.Folder()), "pictures")
	must(t, os.MkdirAll(folder, 0o700))
	file := filepath.Join(folder, "cut.png")
	must(t, os.WriteFile(file, []byte("x"), 0o600))
	e := b.logs(at(12, 8), logbook.Event{Kind: logbook.Photo, Life: logbook.Life{Path: file}}).Event
	if e.Life.Path != "../pictures/cut.png" || life.PhotoFile(b.book, e) != file {
		t.Errorf("%s, %s", e.Life.Path, life.PhotoFile(b.book, e))
	}
	mended := life.Correction(e)
	mended.Text = "end A"
	if got := b.logs(at(12, 9), mended).Event; got.Life.Path != e.Life.Path {
		t.Errorf("corrected, it is %s", got.Life.Path)
	}
}

// A file mended by hand is read: an event without a name gets one, and one that cannot be is told with its line.
func TestAFileMendedByHand(t *testing.T) {
	b := newBench(t)
	src, err := os.ReadFile(b.book.Path(b.id))
	must(t, err)
	by := func(more string) (life.Batch, error) {
		must(t, os.WriteFile(b.book.Path(b.id), []byte(string(src)+more), 0o600))
		list, err := life.All(b.book, b.shelf, pour.Hand{}, date(12, 20))
		must(t, err)
		return list[0], list[0].Fault
	}
	got, err := by("\n[[event]]\nkind = \"sliced\"\ncount = 9\nday = \"2026-12-07\"\nwall = 2026-12-08T09:00:00Z\n")
	if err != nil || got.Bars.Bars != 9 || *got.CutDay != date(12, 7) || got.Events[0].ID == "" {
		t.Errorf("%v, %+v", err, got.Events)
	}
	if _, err = by("\n[[event]]\nkind = \"sliced\"\ncount = -3\nwall = 2026-12-08T09:00:00Z\n"); err == nil || !strings.Contains(err.Error(), "count = -3") {
		t.Errorf("%v", err)
	}
}

// What can hardly be is logged, and said.
func TestWhatCanHardlyBeIsSaid(t *testing.T) {
	b := newBench(t)
	says := func(on int, e logbook.Event, want string) {
		t.Helper()
		if got := strings.Join(b.logs(at(12, on), e).Doubts, "; "); !strings.Contains(got, want) || want == "" && got != "" {
			t.Errorf("%s: %q, want %q", e.Kind, got, want)
		}
	}
	says(6, count(logbook.Given, 1), "not logged that the loaf was cut")
	if got := b.refuses(at(12, 6), count(logbook.Sold, 1)); !strings.Contains(got, "not logged that the loaf was cut") {
		t.Errorf("%s", got)
	}
	says(7, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9}}, "9 bars where the plan has 10")
	says(7, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{150, 151}}}, "")
	says(8, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{149, 512}}}, "mass 2, 512 g, is 3.3 times that of a planned bar; bar 2, 512 g, is heavier than the 151 g of 2026-12-07")
	says(9, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{149}, Bars: []int{7}}}, "none of these bars was weighed on 2026-12-08")
	says(10, count(logbook.Counted, 7), "8 bars were to be left, 1 fewer are there")
	says(11, logbook.Event{Kind: logbook.Sold, Life: logbook.Life{Count: 1, Price: "7.5"}}, "no currency")
}

// On a scale of whole grams a bar that did not change can be read a gram heavier; two grams are more than that, and on a fine scale one is.
func TestAGramMoreOfWholeGramsIsNoDoubt(t *testing.T) {
	for tenth, want := range map[float64][2]string{0: {"", "bar 1, 147 g, is heavier than the 145 g"}, 0.3: {"bar 1, 145 g, is heavier than the 144.3 g", "bar 1, 147 g, is heavier than the 145 g"}} {
		b := newBench(t)
		weigh := func(on int, g ...float64) string {
			return strings.Join(b.logs(at(12, on), logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: g}}).Doubts, "; ")
		}
		b.logs(at(12, 7), count(logbook.Sliced, 10))
		for i, g := range []float64{150, 147, 146, 144} {
			weigh(8+2*i, g+tenth, g+1+tenth)
		}
		for i, g := range []float64{145, 147} {
			if got := weigh(20+i, g, 140); want[i] == "" && got != "" || !strings.Contains(got, want[i]) {
				t.Errorf("%v: %v g: %q, want %q", tenth, g, got, want[i])
			}
		}
	}
}

// A sale says what of it can hardly be, and takes over the currency of the last one; more bars than were cut are more, not fewer below 0.
func TestASaleAndACountSayWhatCanHardlyBe(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 6), count(logbook.Sliced, 10))
	sale := func(on int, price, currency string) life.Logged {
		t.Helper()
		e := count(logbook.Sold, 1)
		e.Life.Currency = currency
		for _, f := range life.Fields(&e, b.plan) {
			if f.Key == "price" {
				must(t, f.Set(price))
			}
		}
		return b.logs(at(12, on), e)
	}
	first := sale(7, "7,50", "EUR")
	if first.Event.Life.Price != "7.50" || !slices.Equal(first.Doubts, []string{"the batch is not ready by its own forecast", "no bar of it is labelled with a lot"}) {
		t.Errorf("%+v: %q", first.Event.Life, first.Doubts)
	}
	b.logs(at(12, 8), logbook.Event{Kind: logbook.Lotted, Lot: "L1", Life: logbook.Life{Count: 5}})
	if second := sale(9, "8", ""); second.Event.Life.Currency != "EUR" || len(second.Doubts) > 0 {
		t.Errorf("%+v: %q", second.Event.Life, second.Doubts)
	}
	for price, want := range map[string]int{"160": 0, "160.01": 1, "0.40": 0, "0.39": 1} { // 8 × 20 and 8 ÷ 20
		got := sale(10, price, "")
		if len(got.Doubts) != want || want > 0 && !strings.Contains(got.Doubts[0], "far from the 8 of 2026-12-09") {
			t.Errorf("%s: %q", price, got.Doubts)
		}
		b.logs(at(12, 10), logbook.Event{Kind: logbook.TakenBack, What: got.Event.ID})
	}
	if got := strings.Join(b.logs(at(12, 11), count(logbook.Counted, 50)).Doubts, "; "); got != "8 bars were to be left, 42 more are there: that is more than the 10 that were cut" {
		t.Errorf("%q", got)
	}
	b.logs(at(12, 12), logbook.Event{Kind: logbook.Failed, Text: "spots"})
	if got := b.refuses(at(12, 12), count(logbook.Sold, 1)); !strings.Contains(got, "failed") {
		t.Errorf("%s", got)
	}
}

// A weighing that names no bars is of those that were weighed the last time; one of other bars is doubted and, the bars followed staying the
// same, left out: 3 bars in 3 weighings say more than one bar in 4.
func TestTheSameBarsAreWeighedAgain(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 6), count(logbook.Sliced, 10))
	weigh := func(on int, bars []int, g ...float64) life.Logged {
		t.Helper()
		return b.logs(at(12, on), logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{Bars: bars, MassesG: g}})
	}
	weigh(7, []int{2, 5, 8}, 150, 151, 152)
	if got := weigh(9, nil, 148, 149, 150); !slices.Equal(got.Event.Life.Bars, []int{2, 5, 8}) || len(got.Doubts) > 0 {
		t.Errorf("%v, %q", got.Event.Life.Bars, got.Doubts)
	}
	weigh(12, nil, 146, 147, 148)
	if got := strings.Join(weigh(14, []int{1, 2, 3}, 144, 145, 146).Doubts, "; "); got != "the bars weighed on 2026-12-12 were 2 5 8, not 1 3: weigh the same ones every time" {
		t.Errorf("%q", got)
	}
	d := b.on(date(12, 15)).Drying
	if !slices.Equal(d.Bars, []int{2, 5, 8}) || len(d.Means) != 3 || d.Means[2].G != 147 || !slices.Equal(d.LeftOut, []day.Day{date(12, 14)}) {
		t.Errorf("bars %v, means %v, left out %v", d.Bars, d.Means, d.LeftOut)
	}
}

// An empty text is no number: where one is needed it is refused.
func TestNothingIsNoNumber(t *testing.T) {
	e := logbook.Event{Kind: logbook.Sniffed, Value: 3}
	for _, f := range life.Fields(&e, pour.Plan{}) {
		if err := f.Set(""); (err != nil) != (f.Key == "strength") {
			t.Errorf("%s: %v", f.Key, err)
		}
	}
	if e.Value != 3 {
		t.Errorf("%v", e.Value)
	}
}
