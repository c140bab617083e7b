package command

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// After a run that ended the maker is told how to take what it used, once: not without a ledger, not when it was taken.
func TestARunThatEndedOffersToTakeWhatItUsed(t *testing.T) {
	dir := t.TempDir()
	now := time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC)
	var errs bytes.Buffer
	g := &program{Process: Process{Errs: &errs, Now: func() time.Time { return now }, Environ: []string{"XDG_DATA_HOME=" + dir}}}
	if filepath.Dir(g.dataDir()) != dir {
		t.Skip("the folder of data is elsewhere on this system")
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		t.Fatal(err)
	}
	id, err := book.Create(pour.Plan{Name: "Meadow"}, "", now, []logbook.Event{
		{Kind: logbook.Opened, ID: "a", Wall: now}, {Kind: logbook.Done, Step: logbook.LyeIn(pour.Base), ID: "b", Wall: now}, {Kind: logbook.Ended, ID: "c", Wall: now},
	})
	if err != nil {
		t.Fatal(err)
	}
	said := func() string {
		errs.Reset()
		g.offerTake()
		return errs.String()
	}
	if s := said(); s != "" {
		t.Errorf("without a ledger it says %q", s)
	}
	write := func(e stock.Entry) {
		t.Helper()
		if _, err := g.ledger().Decide(now, "t", func(stock.State) ([]stock.Entry, error) { return []stock.Entry{e}, nil }); err != nil {
			t.Fatal(err)
		}
	}
	write(stock.Entry{Kind: stock.Received, Pack: "olive-1", Material: lot.Material{Kind: lot.Oil, ID: "olive"}, Q: 1000 * lot.One})
	if s := said(); !strings.Contains(s, "pourbench stock take "+id) {
		t.Errorf("it says %q", s)
	}
	write(stock.Entry{Kind: stock.Taken, Pack: "olive-1", Q: 10 * lot.One, For: id})
	if s := said(); s != "" {
		t.Errorf("taken, it says %q", s)
	}
}
