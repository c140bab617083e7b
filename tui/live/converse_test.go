package live

import (
	"bytes"
	"errors"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// voice is a live run in plain mode that hears lines one after the other.
type voice struct {
	*kitchen
	talk *talk
	said bytes.Buffer
}

func voiced(t testing.TB) *voice {
	t.Helper()
	v := &voice{kitchen: opened(t, t.TempDir(), func(o *Options) { o.Plain, o.Keys = true, keys.BuiltIn().Spoken() })}
	v.talk = &talk{m: v.m, out: lines.NewPaper(&v.said)}
	v.talk.welcome()
	return v
}

// say says lines, a second after each other, and returns what was answered to the last.
func (v *voice) say(said ...string) string {
	for _, line := range said {
		v.c.pass(time.Second)
		v.talk.look()
		v.said.Reset()
		v.talk.hear(lines.Clean(line))
		v.talk.ask()
		if i := strings.IndexFunc(v.said.String(), func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }); i >= 0 {
			v.Errorf("%q is answered with a control or a sign that is no ASCII: %q", line, v.said.String())
		}
	}
	return v.said.String()
}

// hears checks that the answer to a line has some words in it, however its lines are broken.
func (v *voice) hears(line string, words ...string) {
	v.Helper()
	answer := v.say(line)
	for _, w := range words {
		if !strings.Contains(strings.Join(strings.Fields(answer), " "), w) {
			v.Errorf("%q is answered without %q:\n%s", line, w, answer)
		}
	}
}

// untilMix finishes steps until the base's lye is in.
func (v *voice) untilMix() {
	v.Helper()
	for range 10 {
		if now, ok := v.m.now(); ok && v.m.title(now.Step) == "blend" {
			return
		}
		v.say("done")
	}
	v.Fatal("the lye never met its oils")
}

func TestAPourIsToldFromTheLyeToTheEnd(t *testing.T) {
	v := voiced(t)
	v.hears("", "lye has not met oil", "Now, step 1 of", "make the lye", "Next ")
	v.untilMix()
	v.wait(90 * time.Second)
	v.hears("", "since lye met oil, on time", "Stick blender", "of 2:00")
	v.hears("jugs", "1 pot: ", "6 cream: its lye goes in at")
	steps := 0
	for ; steps < 60; steps++ {
		now, left := v.m.now()
		if !left {
			break
		}
		want := lines.ASCII(v.m.title(now.Step))
		v.hears("steps", want)
		v.wait(time.Duration(now.LengthMin * float64(time.Minute)))
		v.hears("done", "done: "+want)
	}
	v.hears("", "Every step is done", "done: the pour is over")
	v.hears("not yet stiff pot", "1 pot: not yet stiff")
	v.hears("o creamy and firm", "result kept")
	v.hears("done", "the pour is over")
	v.say("q")
	if !v.talk.left || steps < 15 {
		t.Errorf("after %d steps the run is left: %v", steps, v.talk.left)
	}
	kept, err := v.book.Read(v.m.ID(), v.shelf)
	must(t, err)
	if !slices.ContainsFunc(kept.Events, func(e logbook.Event) bool { return e.Kind == logbook.Ended }) {
		t.Errorf("the file ends with %+v", kept.Events[len(kept.Events)-1])
	}
}

// What a line marks is what keys mark on the screen.
func TestALineMarksWhatTheKeysMark(t *testing.T) {
	for line, press := range map[string]string{
		"3 l": "3 l", "l 3": "3 l", "light 3": "3 l", "poppy light": "3 l", "poppy stage seen medium": "3 m", "x 3 rices": "3 x r", "3 trouble seizes": "3 x s", "not used 2 yes": "2 d y", "gentian not used y": "2 d y", "stage seen thick 4": "4 t",
	} {
		v, screen := voiced(t), opened(t, t.TempDir(), nil)
		v.untilMix()
		for range 10 {
			if now, _ := screen.m.now(); screen.m.title(now.Step) == "blend" {
				break
			}
			screen.press("space")
		}
		v.say(line)
		screen.press(press)
		mark := func(m *Model) logbook.Event {
			e := m.live.Events[len(m.live.Events)-1]
			return logbook.Event{Kind: e.Kind, Batch: e.Batch, Jug: e.Jug, Stage: e.Stage, What: e.What}
		}
		if got, want := mark(v.m), mark(screen.m); !cmp.Equal(got, want) {
			t.Errorf("%q marks %+v, the keys %q mark %+v; it is answered %s", line, got, press, want, v.said.String())
		}
	}
}

func TestNotesWeightsAndWhatIsTakenBackAreSaid(t *testing.T) {
	v := voiced(t)
	v.untilMix()
	v.hears("n the oils were cloudy", "note kept")
	v.hears("w", "base batter in C, planned 35 C", "which, by its number or a part of its name")
	v.hears("1", "base batter in C", "or cancel>")
	v.hears("34,5", "base batter: 34,5 C")
	v.hears("w 1 nonsense", "No: read")
	v.hears("cancel", "pour>")
	v.hears("undo", "taken back: base batter at")
	v.hears("3 l", "3 poppy: light", "light seen")
	v.hears("3 e", "No: ")
	v.hears("u", "taken back: poppy light")
	v.hears("z", "stick blender on")
	v.wait(8 * time.Second)
	v.hears("z", "stick blender 9 s")
	v.hears("99", "No: there is no jug 99")
	v.hears("nonsense", "No: ")
	v.hears("!", "What was said")
	v.hears("? weigh", "measure")
	v.hears("q", "1 Leave", "or cancel>")
	v.hears("2", "pour>")
	if v.talk.left {
		t.Error("staying leaves")
	}
}

// A jug that will not make it is told with what helps, and what helps can be taken.
func TestWhatStillCanBeDoneIsTold(t *testing.T) {
	v := voiced(t)
	v.untilMix()
	v.wait(7 * time.Minute)
	v.hears("", "will not make it as planned")
	v.hears("r", "What still can be done for", "answer by number")
	v.hears("1", ": ")
	if !slices.ContainsFunc(v.m.state.Marks, func(e logbook.Event) bool { return e.Kind == logbook.Rescued }) {
		t.Errorf("nothing was marked: %s", v.said.String())
	}
}

// Every action of the table of keys can be said, or the maker is told why not.
func TestEveryActionOfThePourCanBeSaid(t *testing.T) {
	v := voiced(t)
	for _, b := range v.talk.table() {
		if why := unheard(b.ID); why != "" {
			v.hears(string(b.ID), why[:20])
			continue
		}
		if !slices.ContainsFunc(lines.Words(b), func(w string) bool {
			got, ok := lines.Match(v.talk.table(), func(x keys.Binding) bool { return x.ID == b.ID }, w)
			return ok && got.Binding.ID == b.ID
		}) {
			t.Errorf("%q cannot be said: its words %q mean something else", b.ID, lines.Words(b))
		}
		v.hears("? all", strings.Join(strings.Fields(lines.ASCII(b.Help)), " "))
	}
}

// What the screen shows of time, step and jugs is what is told.
func TestWhatIsToldIsWhatTheScreenShows(t *testing.T) {
	v := voiced(t)
	v.untilMix()
	v.size(200, 60)
	v.wait(3 * time.Minute)
	answer := strings.Join(strings.Fields(v.say("")), " ")
	now, _ := v.m.now()
	timing, _ := v.m.timing(now)
	for _, shown := range []string{timing, v.m.stepText(), v.m.detail(now.Step)} {
		v.shows(strings.Fields(shown)[0])
		if want := strings.Join(strings.Fields(lines.ASCII(shown)), " "); !strings.Contains(answer, want) {
			t.Errorf("%q is on the screen and not told:\n%s", want, answer)
		}
	}
	answer = strings.Join(strings.Fields(v.say("jugs")), " ")
	for i, j := range v.m.board.Jugs {
		if want := strings.Join(strings.Fields(lines.ASCII(v.m.standing(j))), " "); !strings.Contains(answer, want) {
			t.Errorf("jug %d stands %q, and that is not told:\n%s", i+1, want, answer)
		}
	}
}

func TestTheEndOfTheInputLeavesTheRunGoing(t *testing.T) {
	v := voiced(t)
	dir, notes := t.TempDir(), bytes.Buffer{}
	book, err := logbook.OpenBook(dir)
	must(t, err)
	var out bytes.Buffer
	in := lines.Open(strings.NewReader("done\n" + strings.Repeat("x", 1<<20) + "\ndone"))
	defer in.Close()
	o := v.m.opt
	o.Book, o.Notes = book, &notes
	must(t, Converse(o, lines.Talk{In: in, Out: lines.NewPaper(&out)}))
	if !strings.Contains(notes.String(), "Take it up again with") || !strings.Contains(out.String(), "input has ended") || !strings.Contains(out.String(), "longer than 4096") {
		t.Errorf("said %s, noted %s", out.String(), notes.String())
	}
	list, err := book.List()
	must(t, err)
	kept, err := book.Read(list[0].ID, v.shelf)
	must(t, err)
	if done := slices.DeleteFunc(kept.Events, func(e logbook.Event) bool { return e.Kind != logbook.Done }); len(done) != 2 {
		t.Errorf("%d steps are done in the file", len(done))
	}
}

// Where it is not clear which pour is meant, that is asked in lines before anything is poured.
func TestWhichPourIsMeantIsAskedInLines(t *testing.T) {
	first := voiced(t)
	first.untilMix()
	plan := first.m.sheet().Plan
	plan.Base.SuperfatPercent++
	for answer, resumes := range map[string]bool{"1\n": true, "nonsense\nb\n": false} {
		o := first.m.opt
		o.Clock, o.Session, o.Resume, o.Anew = nil, "b", "", false
		o.Sheet = pour.Work(plan, o.Shelf, o.Hand)
		var out, notes bytes.Buffer
		o.Notes = &notes
		in := lines.Open(strings.NewReader(answer))
		must(t, Converse(o, lines.Talk{In: in, Out: lines.NewPaper(&out)}))
		in.Close()
		if text := strings.Join(strings.Fields(out.String()), " "); !strings.Contains(text, "a pour of this name is under way") || strings.Contains(text, "taken up again: the pour of") != resumes {
			t.Errorf("answered %q: %s", answer, out.String())
		}
	}
}

func TestAnInterruptedConversationSaysWhatBecomesOfTheRun(t *testing.T) {
	v := voiced(t)
	notes := bytes.Buffer{}
	o := v.m.opt
	o.Notes = &notes
	hears, types := io.Pipe()
	defer func() { _ = types.Close() }()
	in := lines.Open(hears)
	defer in.Close()
	go func() {
		p, err := os.FindProcess(os.Getpid())
		if err == nil {
			err = p.Signal(os.Interrupt)
		}
		if err != nil {
			_ = types.Close() // the test ends all the same, and says so
		}
	}()
	err := Converse(o, lines.Talk{In: in, Out: lines.NewPaper(io.Discard)})
	if !errors.Is(err, terminal.ErrInterrupted) || !strings.Contains(notes.String(), "no pour is kept") {
		t.Errorf("%v, noted %s", err, notes.String())
	}
}
