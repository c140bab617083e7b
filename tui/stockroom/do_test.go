package stockroom

import (
	"errors"
	"os"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/stock"
)

// The quantities are by hand: 5000 g came, the tub of 350 g weighs 4850 g, so 4500 g are there and 500 g are lost.
func TestAPackIsReceivedOpenedWeighedLostCorrectedAndTakenBack(t *testing.T) {
	r := stocked(t)
	if got := r.lies("olive-1"); got != "4500" {
		t.Fatalf("weighed, %s g are left", got)
	}
	r.press("home down down down down l")
	r.write("120,5")
	r.press("enter")
	r.write("rancid")
	r.press("ctrl+s")
	r.says("120.5 g lost, 4379.5 left")
	r.press("enter")
	r.shows("received 5000 g, price 38.50", "opened", "counted, 4500 g there, 500 g less than the book, spilled", "lost 120.5 g, rancid")
	r.press("c tab")
	r.write("100")
	r.press("ctrl+s")
	if got := r.lies("olive-1"); got != "4400" {
		t.Errorf("corrected to 100 g lost, %s g are left", got)
	}
	r.shows("(corrected)")
	r.press("end d")
	if got := r.lies("olive-1"); got != "4379.5" {
		t.Errorf("the correction taken back, %s g are left", got)
	}
	for i, want := range []string{"4400", "4379.5", "4500", "5000", "5000", "none"} {
		r.press("u")
		if got := r.lies("olive-1"); got != want {
			t.Errorf("undone %d times, %s g are left, want %s: %s", i+1, got, want, r.m.status.Text())
		}
	}
	r.press("u")
	r.says("nothing was written since this page was opened")
	if n := strings.Count(r.file(), "[[entry]]"); n < 14 {
		t.Errorf("the file holds %d entries: undoing adds and never takes out", n)
	}
}

func TestWhatCannotBeIsRefusedAtItsLine(t *testing.T) {
	r := stocked(t)
	before := r.file()
	for _, c := range []struct{ press, text, then, want string }{
		{"home down down down down w", "200", "tab tab tab ctrl+s", "the tub with what is in it"},
		{"w", "4000", "enter ctrl+s", "say why"},
		{"w", "nonsense", "enter ctrl+s", "write a weight"},
		{"l", "9 kg", "enter space ctrl+s", "more than the 4500 left"},
		{"o", "", "", "it was opened on 2026-11-28"},
	} {
		r.press(c.press)
		r.write(c.text)
		r.press(c.then)
		r.shows(c.want)
		r.press("esc")
		r.m.inside = false
	}
	r.press("f")
	r.write("no such thing")
	r.press("enter")
	r.write("5 kg")
	r.press("enter")
	r.write("7")
	r.press("ctrl+s")
	r.shows("×")
	r.press("esc home down down down down enter c ctrl+s")
	r.says("nothing was changed, so nothing was written")
	if r.file() != before {
		t.Error("something that was refused is written")
	}
}

func TestOneThingIsReceivedInAForm(t *testing.T) {
	r := opened(t, nil)
	r.press("f")
	for _, text := range []string{"shea", "2 kg", "19,80", "2.00", "B7", "2027-01-31", "", "2026-11-02", "the harbour"} {
		r.write(text)
		r.press("tab")
	}
	r.press("ctrl+s")
	s := r.m.shelves.state
	for _, h := range s.Held {
		p := h.Packs[0]
		if p.Size.String() != "2000" || p.Price.String() != "19.80" || p.Postage.String() != "2.00" || p.Lot != "B7" || p.Expires.String() != "2027-01-31" || p.Bought.String() != "2026-11-02" || p.Supplier != "the harbour" {
			t.Errorf("it came as %+v", p)
		}
	}
	if len(s.Held) != 1 {
		t.Errorf("%d materials came: %s", len(s.Held), r.frame())
	}
}

func TestLinesPastedOntoThePageAreWhatCame(t *testing.T) {
	r := opened(t, nil)
	r.update(tea.PasteMsg{Content: "olive 5 kg 38.50\nwobble 5 kg 3.00\ncoconut 5 kg 21.00"})
	r.shows("What came", "2 packs would be written in", "1 line not understood")
	r.press("enter")
	r.shows("Write it in without 1 line?")
	r.press("w")
	r.shows("olive-1", "coconut-1")
	r.press("u")
	r.shows("Nothing lies on the shelves yet")
}

func TestWhatCannotBeWrittenIsNotLost(t *testing.T) {
	r := stocked(t)
	r.m.opt.Decide = func(func(stock.State) ([]stock.Entry, error)) ([]stock.Entry, error) {
		return nil, errors.New("the disk is full")
	}
	r.press("home down down down down l")
	r.write("12")
	r.press("enter space ctrl+s")
	r.shows("× not written: the disk is full", "12")
	r.press("esc")
	r.receives("olive 1 kg 9.00")
	r.shows("What came", "olive 1 kg 9.00")
	r.says("not written: the disk is full")
}

func TestALedgerThatCannotBeReadSaysWhyAndWhatWasKnownStays(t *testing.T) {
	r := stocked(t)
	must(t, os.WriteFile(r.ledger.Path(), []byte(r.file()+"\n[[entry]]\nkind = \"eaten\"\nwall = 2026-11-28T10:00:00Z\nwobble = 3\n"), 0o600))
	r.finish(r.m.load())
	r.shows("olive-1")
	if r.m.fault == nil || !strings.Contains(r.m.fault.Error(), "wobble") {
		t.Errorf("the fault is %v", r.m.fault)
	}
	r.press("r")
	r.says("the ledger cannot be read: mend ledger.toml")
}

func TestAnotherTerminalsEntriesAreSeenWithoutAKey(t *testing.T) {
	r := stocked(t)
	r.press("end")
	was, _ := r.m.chosen()
	_, err := r.ledger.Decide(r.wall, "b", func(stock.State) ([]stock.Entry, error) {
		return []stock.Entry{{Kind: stock.Lost, Pack: "box-1", Q: 120_000, Text: "torn"}}, nil
	})
	must(t, err)
	if _, cmd := r.m.Update(tickMsg{}); cmd == nil {
		t.Fatal("a tick looks at nothing")
	}
	r.m.reading = false
	r.finish(r.m.load())
	r.shows("88 pcs")
	if now, _ := r.m.chosen(); now.id() != was.id() {
		t.Errorf("chosen is %s, it was %s", now.id(), was.id())
	}
}

func TestTheListIsSearchedByWords(t *testing.T) {
	r := stocked(t)
	for words, want := range map[string]string{"mill": "olive-1", "past date": "olive-2", "a12": "olive-1", "expires soon": "coconut-1", "packaging": "box-1", "unopened coco": "coconut-1"} {
		r.press("/")
		r.write(words)
		r.shows(want)
		for _, row := range r.m.shown {
			if row.isPack && row.pack.ID != want {
				t.Errorf("%q finds %s, too", words, row.pack.ID)
			}
		}
		r.press("esc")
	}
	r.press("/")
	r.write("nothing such")
	r.shows("Nothing holds “nothing such”")
	r.press("esc")
	r.press("home down down down down l enter space ctrl+s")
	if strings.Contains(r.frame(), "olive-1 ") {
		t.Error("a pack that is used up stays in the list")
	}
	r.press("e")
	r.shows("olive-1")
}

func TestThePagesOfTheOthersAreRead(t *testing.T) {
	r := stocked(t)
	r.press("s")
	r.shows("What to get", "olive oil 5 kg")
	r.press("esc x")
	r.shows("What expires", "olive-2 is past its date")
	r.press("esc home t")
	r.says("go to a pack first")
	r.press("down t")
	r.shows("Trace of ", "trace of coconut-1")
	r.m.opt.Trace = func(string) (string, error) { return "", errors.New("no logbook") }
	r.press("esc t")
	r.says("× no logbook")
}

func TestWhatIsWrittenInAlreadyIsAskedAbout(t *testing.T) {
	r := opened(t, nil)
	r.receives("olive 5 kg 38.50 lot A12")
	before := r.file()
	r.receives("olive 5 kg 38.50 lot A12")
	r.shows("Did it come again?")
	r.press("n")
	r.shows("olive 5 kg 38.50 lot A12")
	if r.file() != before {
		t.Error("it was written in without an answer")
	}
	r.press("esc")
	r.receives("olive 5 kg 38.50 lot A12")
	r.press("y")
	if r.lies("olive-2") != "5000" {
		t.Error("it was not written in again")
	}
}
