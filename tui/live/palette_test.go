package live

import (
	"errors"
	"strings"
	"testing"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

func TestThePaletteOfTheRunDoesWhatItsKeysDo(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.press(":")
	b.shows("finish step", "Space")
	b.m.dialogs.Paste("gentian")
	b.shows("pick jug: 2 gentian")
	b.press("enter")
	b.shows("chosen: 2 gentian")
	b.press(":")
	b.m.dialogs.Paste("stage light")
	b.press("enter")
	e := b.m.state.Marks[len(b.m.state.Marks)-1]
	if e.Kind != logbook.Seen || e.Jug != "gentian" || e.Stage.String() != "light" {
		t.Errorf("marked %+v", e)
	}
	b.press(":")
	b.m.dialogs.Paste("checklist")
	b.shows("× at the bench only; q leaves the run")
	b.press("enter")
	b.shows("× at the bench only; q leaves the run")
	b.press(":")
	b.m.dialogs.Paste("jug: 9")
	b.press("enter")
	b.shows("× there is no jug 9")
}

// On a page what is typed is searched for, the key of the palette too.
func TestTheKeyOfThePaletteIsSearchedForOnAPage(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("? :")
	if _, ok := b.m.dialogs.Top().(*dialog.Page); !ok {
		t.Error("it opened over the page")
	}
	b.shows("search :")
}

// What has a key of its own for each of what it does is asked about where it is asked for as a whole.
func TestALineOfTheHelpThatDoesSeveralThingsAsksWhich(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.press("?")
	b.m.dialogs.Paste("thick or stiff")
	b.press("enter")
	b.shows("search stage seen:", "stage seen: medium")
	b.press("t h i c k enter")
	if e := b.m.state.Marks[len(b.m.state.Marks)-1]; e.Kind != logbook.Seen || e.Stage.String() != "thick" {
		t.Errorf("marked %+v", e)
	}
}

func TestTheFooterOfTheRunIsClickedLikeItsKeys(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		b := opened(t, t.TempDir(), nil)
		b.size(size[0], size[1])
		b.click("done  ")
		b.shows("done: make the lye")
		b.click("n note")
		b.write("warm")
		b.click("Alpine Meadow")
		b.shows("× what was typed stays")
		b.click("Enter keep")
		b.shows("note kept")
		b.click("note kept")
		b.shows("What was said, the newest first")
		b.click("Alpine Meadow")
		b.click("? keys")
		b.shows("Every key")
	}
}

func TestKeysOfHerOwnAreFollowedInTheRun(t *testing.T) {
	own, err := keys.Read("keys.toml", strings.NewReader("[pouring]\nfinish-step = [\"enter\"]\nstage-seen = [\"f1\", \"f2\", \"f3\", \"f4\", \"f5\"]\nhelp = [\"?\"]\n"))
	must(t, err)
	b := opened(t, t.TempDir(), func(o *Options) { o.Keys = own })
	b.shows("Enter done")
	b.press("space")
	b.shows("× the key Space does nothing here; ? lists the keys, : searches every action")
	b.press("enter")
	b.shows("done: make the lye")
	b.press("enter")
	b = opened(t, t.TempDir(), func(o *Options) { o.KeyFaults = errors.New("no permission") })
	b.shows("! your file of keys has faults, the built-in keys stay; ! reads them")
}
