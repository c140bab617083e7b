package live

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/tui/keys"
)

// asking is a run that is to be opened: what it was asked, and the pour it takes up.
func asking(t *testing.T, dir string, answer string, change func(*Options)) (asked, id string, pours bool) {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(dir)
	must(t, err)
	o := Options{Book: book, Sheet: pour.Work(plan, shelf, pour.Hand{}), Shelf: shelf, Keys: keys.BuiltIn(), Background: "dark"}
	if change != nil {
		change(&o)
	}
	pours, err = meant(&o, func(w *which) error {
		asked = strings.Join(strings.Fields(strings.ReplaceAll(whichFrame(w), "│", " ")), " ")
		w.Update(key(answer))
		return nil
	})
	must(t, err)
	return asked, o.Resume, pours
}

// Without a plan the one pour that is under way is meant, whatever it pours; several are asked about, and with a plan of another name the one that
// stands there is told of before a new one begins.
func TestAPourUnderWayIsOfferedWhateverPlanIsNamed(t *testing.T) {
	dir := t.TempDir()
	unnamed := func(o *Options) { o.Unnamed = true }
	if asked, id, pours := asking(t, dir, "l", unnamed); asked != "" || id != "" || !pours {
		t.Errorf("in an empty logbook it asks %q and takes up %q", asked, id)
	}
	desert := leftOf(t, dir, func(p *pour.Plan) { p.Name = "Desert" }, 12*time.Minute)
	if asked, id, pours := asking(t, dir, "l", unnamed); asked != "" || id != desert.m.ID() || !pours {
		t.Errorf("without a plan it asks %q and takes up %q", asked, id)
	}
	asked, id, pours := asking(t, dir, "1", nil)
	for _, words := range []string{"A pour of Desert is under way", "Take up the pour of Desert, begun at", "lye in oil for 12:0", "Begin a new pour of Alpine Meadow"} {
		if !strings.Contains(asked, words) {
			t.Errorf("the question does not say %q: %s", words, asked)
		}
	}
	if id != desert.m.ID() || !pours {
		t.Errorf("it takes up %q", id)
	}
	if _, id, pours := asking(t, dir, "b", nil); id != "" || !pours {
		t.Errorf("a new pour is %q", id)
	}
	if _, id, pours := asking(t, dir, "l", nil); id != "" || pours {
		t.Errorf("left, it pours %q", id)
	}
	if asked, _, _ := asking(t, dir, "l", func(o *Options) { o.Anew = true }); asked != "" {
		t.Errorf("asked for a new one it asks %q", asked)
	}
	leftOf(t, dir, func(p *pour.Plan) { p.Name = "Dune" }, time.Hour)
	if asked, id, _ := asking(t, dir, "2", unnamed); !strings.Contains(asked, "2 pours are under way") || !strings.Contains(asked, "the built-in example") || id == "" || id == desert.m.ID() {
		t.Errorf("of two it takes up %q: %s", id, asked)
	}
	own := leftOf(t, dir, nil, time.Minute)
	if asked, id, _ := asking(t, dir, "l", nil); asked != "" || id != own.m.ID() {
		t.Errorf("of this very plan it asks %q and takes up %q", asked, id)
	}
}

// A pour that is over is not opened by its name without a question, which says how its record is put right.
func TestAPourThatIsOverIsAskedAbout(t *testing.T) {
	dir := t.TempDir()
	b := leftOf(t, dir, nil, 20*24*time.Hour)
	named := func(o *Options) { o.Resume = b.m.ID() }
	if asked, _, pours := asking(t, dir, "l", named); asked != "" || !pours {
		t.Errorf("before it is over it asks %q", asked)
	}
	must(t, b.m.run.Mark(logbook.Event{Kind: logbook.Ended}))
	before, err := b.book.Read(b.m.ID(), b.shelf)
	must(t, err)
	asked, _, pours := asking(t, dir, "l", named)
	if !strings.Contains(asked, "is over") || !strings.Contains(asked, "logbook correct "+b.m.ID()) || pours {
		t.Errorf("it pours %v, asked %s", pours, asked)
	}
	if after, err := b.book.Read(b.m.ID(), b.shelf); err != nil || len(after.Events) != len(before.Events) {
		t.Errorf("it was written to: %d events, %d before, %v", len(after.Events), len(before.Events), err)
	}
	if _, id, pours := asking(t, dir, "o", named); id != b.m.ID() || !pours {
		t.Errorf("opened all the same it is %q, %v", id, pours)
	}
}
