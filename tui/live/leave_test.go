package live

import (
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
)

// left leaves a run as Open does and returns what is said then.
func (b *kitchen) parted() string {
	b.Helper()
	if !b.left {
		b.Errorf("the run was not left:\n%s", b.frame())
	}
	var said strings.Builder
	b.m.part(&said, 1, func(time.Duration) {})
	return said.String()
}

func (b *kitchen) files() int {
	b.Helper()
	list, err := b.book.List()
	must(b, err)
	return len(list)
}

func TestARunThatIsLeftBeforeLyeMetOilLeavesNoPour(t *testing.T) {
	const none = "no pour is kept"
	for keys, want := range map[string]struct {
		files int
		said  string
	}{
		"q q":              {0, none}, // opened and left
		"ctrl+c":           {0, none},
		"space q q":        {0, none}, // pressed through
		"space q f":        {0, none},
		"space u q q":      {0, none}, // nothing of it stands
		"space u ctrl+c":   {0, none},
		"space q k":        {1, "Take it up again with"},
		"w 3 enter q q":    {1, "Take it up again with"}, // a weight is worth keeping
		"w 3 enter q f":    {0, none},
		"w 3 enter ctrl+c": {1, "Take it up again with"},
	} {
		b := opened(t, t.TempDir(), nil)
		b.press(keys)
		if said := b.parted(); !strings.Contains(said, want.said) || b.files() != want.files {
			t.Errorf("%s leaves %d pours and says %q, want %d and %q", keys, b.files(), said, want.files, want.said)
		}
	}
	b := opened(t, t.TempDir(), nil)
	b.press("space q n")
	if b.left || b.files() != 1 {
		t.Error("staying left the run, or removed its file")
	}
	b.until("base lye in")
	b.press("q q")
	if said := b.parted(); !strings.Contains(said, "Take it up again with") || b.files() != 1 {
		t.Errorf("with lye in oil %d pours are left, and %q", b.files(), said)
	}
}

func TestAPourIsEndedWhereItStands(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.press("q e")
	if said := b.parted(); said != "" || kinds(b)[logbook.Ended] != 1 {
		t.Errorf("ended: %q, %v", said, kinds(b))
	}
}

// u takes back everywhere; d asks before a jug is passed over, and again takes it in.
func TestAJugIsNotDroppedWithoutAQuestion(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	b.press("4 u")
	b.shows("taken back: split")
	b.press("space")
	b.press("4 d n d esc d enter")
	b.shows("answer with the letter")
	b.press("n")
	if got := kinds(b)[logbook.Unpoured]; got != 0 {
		t.Fatalf("without a yes %d jugs are dropped", got)
	}
	b.press("d y")
	b.shows("4 buttercup stays in its jug")
	b.press("2 l 4 d")
	b.shows("Use it after all")
	b.press("y")
	if got := kinds(b); got[logbook.Unpoured] != 0 || got[logbook.Seen] != 1 {
		t.Errorf("used after all: %v", got)
	}
	b.hides("4 buttercup stays")
}

// leftOf leaves a pour of a plan under way in a folder.
func leftOf(t *testing.T, dir string, plan func(*pour.Plan), ago time.Duration) *kitchen {
	t.Helper()
	b := opened(t, dir, func(o *Options) {
		p := o.Sheet.Plan
		if plan != nil {
			plan(&p)
		}
		o.Sheet = pour.Work(p, o.Shelf, pour.Hand{})
		c := newLaptop()
		c.wall = time.Now().Add(-ago)
		o.Clock = c.now
	})
	b.m.run.Tick()
	must(t, b.m.run.Do(logbook.LyeIn(pour.Base)))
	return b
}

// A pour is taken up without a question only where it is the one of this very plan.
func TestAPourOfAnotherPlanOfTheSameNameIsAskedAbout(t *testing.T) {
	dir := t.TempDir()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(dir)
	must(t, err)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	ask := func() (string, bool, *which) {
		t.Helper()
		now := time.Now()
		found, err := underway.UnderWay(book, plan, shelf, now)
		must(t, err)
		id, asks := underway.TakeUp(found, true)
		return id, asks, newWhich(Options{Sheet: sheet, Shelf: shelf, Keys: keys.BuiltIn(), Background: "dark"}, found, now)
	}
	if id, asks, _ := ask(); id != "" || asks {
		t.Errorf("in an empty logbook %q is taken up, asked %v", id, asks)
	}
	leftOf(t, dir, nil, underway.Stale+time.Hour)
	if id, asks, _ := ask(); id != "" || asks {
		t.Errorf("too old: %q is taken up, asked %v", id, asks)
	}
	other := leftOf(t, dir, func(p *pour.Plan) { p.Base.OilsG, p.Base.Size = 500, pour.SizeOils }, 12*time.Minute)
	id, asks, w := ask()
	if id != "" || !asks {
		t.Fatalf("another plan of the same name: %q is taken up, asked %v", id, asks)
	}
	frame := whichFrame(w)
	for _, words := range []string{"1   Take up the pour begun at ", "lye in oil for 12:0", "It pours ANOTHER plan, its own: base oils 500.0 g", "b   Begin a new pour", "l   Leave"} {
		if !strings.Contains(frame, words) {
			t.Errorf("the question does not say %q:\n%s", words, frame)
		}
	}
	own := leftOf(t, dir, nil, time.Minute)
	if id, asks, _ := ask(); id != own.m.ID() || asks {
		t.Errorf("with one of this very plan %q is taken up, asked %v, want %s", id, asks, own.m.ID())
	}
	leftOf(t, dir, nil, 2*time.Minute)
	_, asks, w = ask()
	if !asks || strings.Count(strings.Join(strings.Fields(whichFrame(w)), " "), "this very plan") != 2 {
		t.Errorf("two of this plan: asked %v\n%s", asks, whichFrame(w))
	}
	for keys, want := range map[string]which{"3": {resume: other.m.ID()}, "b": {anew: true}, "l": {}, "esc": {}, "ctrl+c": {}, "down down down enter": {resume: other.m.ID()}} {
		_, _, w := ask()
		quit := false
		for name := range strings.FieldsSeq(keys) {
			if _, cmd := w.Update(key(name)); cmd != nil {
				_, quit = cmd().(tea.QuitMsg)
			}
		}
		if w.resume != want.resume || w.anew != want.anew || !quit {
			t.Errorf("%s: takes up %q, anew %v, closed %v", keys, w.resume, w.anew, quit)
		}
	}
}

func whichFrame(w *which) string {
	w.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
	return stripped(w.View().Content)
}
