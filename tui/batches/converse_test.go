package batches

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// voice is the page in plain mode on a logbook on the disk, which hears lines one after the other.
type voice struct {
	*kept
	talk *talk
	said bytes.Buffer
}

func voiced(t testing.TB, names ...string) *voice {
	t.Helper()
	k := onDisk(t, names...)
	o := k.options(t)
	o.Plain, o.Keys = true, keys.BuiltIn().Spoken()
	k.shop = opened(t, o)
	v := &voice{kept: k}
	v.talk = newTalk(k.m, lines.NewPaper(&v.said))
	return v
}

// hears checks that the answer to a line has some words in it, however its lines are broken, and nothing that is no ASCII.
func (v *voice) hears(line string, words ...string) {
	v.Helper()
	v.said.Reset()
	v.talk.Hear(lines.Clean(line))
	v.talk.Ask()
	answer := strings.Join(strings.Fields(v.said.String()), " ")
	for _, w := range words {
		if !strings.Contains(answer, w) {
			v.Errorf("%q is answered without %q:\n%s", line, w, v.said.String())
		}
	}
	if i := strings.IndexFunc(v.said.String(), func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }); i >= 0 {
		v.Errorf("%q is answered with a control or a sign that is no ASCII: %q", line, v.said.String())
	}
}

func TestABatchIsLivedInLines(t *testing.T) {
	v := voiced(t, "Alpine Meadow", "Dusk")
	v.hears("list", "2 batches, by what is due", "1 Alpine Meadow, in the mould, poured 2026-12-05", "2 Dusk")
	v.hears("search dusk", "1 of 2 batches", "1 Dusk")
	v.hears("search nothing such", `No batch holds "nothing such"`)
	v.hears("list", "2 Dusk")
	v.hears("9", "No: there is no batch 9; 2 are in the list")
	v.hears("1", "Alpine Meadow, 2026-12-05-alpine-meadow", "colours: A ", "nothing yet")
	v.hears("slice", "cut, Alpine Meadow", "1 masses, g: nothing", "3 how many, bars: nothing", "masses, g (or NUMBER: TEXT for another line, Enter keeps the form), or cancel>")
	v.hears("3: 10", "bars: 10")
	v.hears("day: 2026-12-07", "day: 2026-12-07")
	v.hears("", "cut into 10 bars")
	v.hears("weigh 128,4", "bar 2, g: 128,4", "2 bar 6, g: nothing yet, it is needed")
	v.hears("127")
	v.hears("126")
	v.hears("", "weighed, 127.1", "bars 2 6 9")
	v.hears("sell 3", "sold, Alpine Meadow", "bars: 3")
	v.hears("", "3 bars sold")
	v.hears("", "10 bars: 3 sold, 7 left", "mark 1, 2026-12-07: cut into 10 bars", "mark 3, 2026-12-20: 3 bars sold")
	v.hears("mark 3", "3 bars sold")
	v.hears("mark 3 correct", "Correct: sold")
	v.hears("1: 2", "bars: 2")
	v.hears("", "2 bars sold")
	v.hears("mark 4 take back", "taken back: 2 bars sold")
	v.hears("undo", "back again: 2 bars sold")
	v.hears("mark 77", "a mark is chosen by its number")
	v.hears("fail", "words: nothing yet, it is needed")
	v.hears("cancel")
	b, _ := v.m.chosen()
	if b.State == life.Failed || b.Bars.Sold != 2 {
		t.Errorf("it is %s, %+v", b.State, b.Bars)
	}
	v.hears("order", "by ")
	v.hears("dance", "is nothing to do; ? tells what can be said")
	v.hears("q")
	if !v.talk.Left {
		t.Error("q does not leave")
	}
}

func TestEveryActionOfThePageCanBeSaid(t *testing.T) {
	v := voiced(t, "Alpine Meadow")
	for _, b := range keys.BuiltIn().Of(keys.Batching) {
		if b.ID == keys.Quit {
			continue
		}
		for _, w := range lines.Words(b) {
			v.said.Reset()
			v.talk.Hear(w)
			for v.m.dialogs.Top() != nil {
				v.talk.Hear("cancel")
			}
			if v.said.Len() == 0 {
				t.Errorf("%s (%s) is answered with nothing", w, b.ID)
			}
		}
	}
	v.hears("?", "A number chooses a batch")
	v.hears("? picture", "see picture", "not now: ")
	v.hears("? all", "scent page")
}

func TestTheConversationEndsWithItsInputOrASignal(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	var out bytes.Buffer
	in := lines.Open(strings.NewReader("1\n" + strings.Repeat("x", 9000) + "\nsell 2\n\n"))
	defer in.Close()
	if _, err := Converse(k.options(t), lines.Talk{In: in, Out: lines.NewPaper(&out)}); err != nil {
		t.Fatal(err)
	}
	for _, w := range []string{"The batches, in plain mode", "1 Alpine Meadow", "longer than 4096"} {
		if !strings.Contains(out.String(), w) {
			t.Errorf("it says nothing of %q:\n%s", w, out.String())
		}
	}
	r, w := io.Pipe()
	must(t, r.Close())
	in = lines.Open(strings.NewReader("list\n"))
	defer in.Close()
	if _, err := Converse(k.options(t), lines.Talk{In: in, Out: lines.NewPaper(w)}); err == nil {
		t.Error("that nothing could be told is no error")
	}
}

func TestTheCutIsLentTheConversation(t *testing.T) {
	v := voiced(t, "Alpine Meadow")
	v.hears("cut live", "No: ", "no cut can be opened from here")
	var cut string
	v.m.opt.Cut = func(id string) error { cut = id; return nil }
	v.hears("cut live", "back from the cut")
	if cut != v.m.all[0].ID {
		t.Errorf("cut is %q", cut)
	}
	v.m.opt.Cut = func(string) error { return errors.New("no such loaf") }
	v.hears("cut live", "No: no such loaf")
	v.m.opt.Cut = func(string) error { return terminal.ErrInterrupted }
	v.hears("cut live")
	if !v.talk.Left || !errors.Is(v.talk.Cut, terminal.ErrInterrupted) {
		t.Error("an interrupted cut does not end the conversation")
	}
}

// What is said of a batch is what the screen shows of it.
func TestWhatIsToldIsWhatTheScreenShows(t *testing.T) {
	v := voiced(t, "Alpine Meadow")
	v.log(v.m.all[0].ID, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-07", Count: 10}})
	v.hears("1")
	told := strings.Join(strings.Fields(v.said.String()), " ")
	v.size(200, 60)
	b, _ := v.m.chosen()
	for _, l := range v.m.told(b, 1<<15) {
		if text := lines.ASCII(l.text); l.text != swatchesHere && !strings.Contains(told, text) {
			t.Errorf("%q is not told", text)
		}
	}
}
