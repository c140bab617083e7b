package live

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// hides checks that words do not stand on the screen.
func (b *kitchen) hides(words ...string) {
	b.Helper()
	f := b.frame()
	for _, w := range words {
		if strings.Contains(f, w) {
			b.Errorf("the screen shows %q:\n%s", w, f)
		}
	}
}

// line is the line of the screen that begins with a text, blanks aside.
func (b *kitchen) line(begins string) string {
	b.Helper()
	for l := range strings.SplitSeq(b.frame(), "\n") {
		if strings.HasPrefix(strings.TrimSpace(l), begins) {
			return l
		}
	}
	b.Fatalf("no line begins with %q:\n%s", begins, b.frame())
	return ""
}

func TestEveryStepSaysWhatItNeeds(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(120, 36)
	want := map[pour.TaskKind]string{
		underway.StepMakeLye: "weights are on the paper",
		pour.TaskCoolLye:     "Let the lye cool to 34 °C and bring the oils to 36 °C.",
		underway.StepLyeIn:   "Oils 36 °C, lye 34 °C. The clock starts when it is in: press Space then.",
		pour.TaskMix:         "Stick blender: 20 s at 0:00 (z on and off). Stir by hand until +2:00.",
		pour.TaskSplit:       "No oil streaks left? Into the jugs: pot 467.1 g · gentian 196.6 g · poppy 196.6 g · buttercup 184.4 g · fern 184.4 g",
		pour.TaskColour:      "Stir in titanium white, oil-dispersible 2.34 g, high-oleic sunflower oil 4.67 g",
		pour.TaskScent:       ", by hand",
		pour.TaskBed:         "Cover it without touching the top and wrap it warm, towards gel. Cut after 24 h.",
	}
	for range len(b.m.state.Steps) {
		now, ok := b.m.now()
		if !ok {
			break
		}
		if words, ok := want[now.Kind]; ok && now.Batch != pour.Icing {
			if text := b.m.detail(now.Step); !strings.Contains(text, words) {
				t.Errorf("%s says %q, want %q", now.Key, text, words)
			}
			b.shows(words[:min(len(words), 20)])
			delete(want, now.Kind)
		}
		b.until(now.Key)
	}
	if len(want) > 0 {
		t.Errorf("these steps never came: %v", want)
	}
}

func TestTheStepsComeInTheirOrderWithTheirTimes(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.shows("step 1 of 28")
	b.until("base lye in")
	b.shows("lye into oil", "step 6 of 28", "0:00 of 2:00", "next      +2:")
	late := func(want string) {
		t.Helper()
		if got := b.m.lateText(); got != want {
			t.Errorf("the run is %q, want %q", got, want)
		}
	}
	late("on time")
	b.wait(75 * time.Second)
	b.shows("1:15 of 2:00", "1:15")
	b.wait(2 * time.Minute)
	b.shows("3:15 of 2:00", "planned +2:00, 1.25 min later")
	late("1 min late")
	b.press("down")
	b.shows("out of its turn: split")
	b.press("up")
	b.shows("the next step", "3:1")
	b.hides("out of its turn")
}

func TestAStepThatIsDueLaterCountsDown(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	for range 2 { // the split and the first jug's colour, a minute early
		b.press("space")
	}
	now, ok := b.m.now()
	if !ok {
		t.Fatal("no step is left")
	}
	since, _ := b.m.elapsed()
	now.StartMin, now.LengthMin = since+5, 4
	if text, _ := b.m.timing(now); text != "starts in 5:00" || since == 0 {
		t.Errorf("a step that is due later says %q", text)
	}
	now.StartMin, now.LengthMin = 0, 0
	if text, _ := b.m.timing(now); text != "now" {
		t.Errorf("a step without a length says %q", text)
	}
	min, _ := b.m.elapsed()
	for over, style := range map[float64]screen.Style{min + 1: b.m.look.Text, min - 0.01: b.m.look.Caution} {
		now.LengthMin = over
		if text, st := b.m.timing(now); st != style || !strings.Contains(text, " of ") {
			t.Errorf("after %v of %v min: %q", min, over, text)
		}
	}
}

// A jug's bar is what is left of its window: dots until it opens, solid while it is open, a stroke at its turn, shaded when that is too late.
func TestAJugsBarShrinksWithItsWindow(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	draw := func(j underway.JugBoard) string {
		s := screen.New(10, 1)
		b.m.drawBar(s.Area(), j, screen.Style{})
		return strings.TrimRight(ansi.Strip(s.String()), " \n")
	}
	b.until("base lye in")
	b.wait(4*time.Minute - time.Second)
	b.press("n esc")
	b.m.outlook.Jugs = nil // ten minutes wide, a minute to a cell
	j := underway.JugBoard{}
	j.Batch, j.Jug = pour.Base, "gentian"
	j.Window = pour.Window{From: pour.Know(6), To: pour.Know(11)}
	since, _ := b.m.sinceIn(j)
	if since < 3.9 || since > 4.1 {
		t.Fatalf("the lye is in for %v min", since)
	}
	if got := draw(j); got != "··█████" {
		t.Errorf("two minutes before it opens the bar is %q", got)
	}
	j.TurnMin = pour.Know(since + 3.2)
	if got := draw(j); got != "··█│███" {
		t.Errorf("with its turn in three minutes it is %q", got)
	}
	j.Verdict = underway.TooLate
	if got := draw(j); got != "··▒│▒▒▒" {
		t.Errorf("with a turn too late it is %q", got)
	}
	j.Window.From = pour.Figure{}
	if got := draw(j); got != "▒▒▒│▒▒▒" {
		t.Errorf("open from the start it is %q", got)
	}
	j.Verdict = underway.Used
	if got := draw(j); got != "" {
		t.Errorf("used, it is %q", got)
	}
	j.Verdict, j.Window.To = underway.Fine, pour.Figure{}
	if got := draw(j); got != "" {
		t.Errorf("without an end it is %q", got)
	}
	j.Batch, j.Window, j.TurnMin = pour.Icing, pour.Window{From: pour.Know(1), To: pour.Know(4)}, pour.Figure{}
	if got := draw(j); got != "····" {
		t.Errorf("before its lye is in the whole window is %q", got)
	}
}

func TestTheBarsAreAsLongAsTheLongestWindow(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	for to, want := range map[float64]float64{3: 10, 10: 10, 10.1: 15, 44: 45, 500: 120} {
		b.m.outlook.Jugs = []underway.JugOutlook{{Window: pour.Window{To: pour.Know(to)}}, {Window: pour.Window{To: pour.Know(2)}}, {}}
		if got := b.m.barMin(); got != want {
			t.Errorf("for a window of %v min the bars are %v long, want %v", to, got, want)
		}
	}
}

func TestEachJugSaysHowItStandsInWords(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	if l := b.line("►1     pot"); !strings.Contains(l, "its lye goes in at") {
		t.Errorf("before the lye is in it says %q", l)
	}
	b.until("base split")
	since, _ := b.m.sinceIn(b.m.board.Jugs[1])
	j := b.m.board.Jugs[1]
	of := func(change func(*underway.JugBoard)) string {
		k := j
		k.TurnMin = pour.Figure{}
		change(&k)
		return b.m.standing(k)
	}
	for want, change := range map[string]func(*underway.JugBoard){
		"no times: the clock knows none":  func(k *underway.JugBoard) { k.Refusal = "the clock knows none" },
		"■ over for 4 min, r: what helps": func(k *underway.JugBoard) { k.Verdict, k.LeftMin = underway.Over, pour.Know(-4) },
		"any thickness will do":           func(k *underway.JugBoard) { k.Verdict, k.LeftMin = underway.Fine, pour.Figure{} },
		"7 min left": func(k *underway.JugBoard) {
			k.Verdict, k.LeftMin, k.Window = underway.Fine, pour.Know(7), pour.Window{}
		},
		"opens in 3:00": func(k *underway.JugBoard) {
			k.Verdict, k.LeftMin, k.Window.From = underway.Fine, pour.Know(9), pour.Know(since+3)
		},
		"5 min left, turn in 8 min": func(k *underway.JugBoard) {
			m, _ := b.m.elapsed()
			k.Verdict, k.LeftMin, k.TurnMin = underway.TooLate, pour.Know(5), pour.Know(m+8)
		},
		"4 min left, turn next": func(k *underway.JugBoard) {
			m, _ := b.m.elapsed()
			k.Verdict, k.LeftMin, k.Window, k.TurnMin = underway.Fine, pour.Know(4), pour.Window{}, pour.Know(m-1)
		},
		"its lye goes in at ": func(k *underway.JugBoard) { k.Batch, k.Verdict = pour.Icing, underway.Unknown },
		"poured":              func(k *underway.JugBoard) { k.Verdict = underway.Used },
		"piped":               func(k *underway.JugBoard) { k.Verdict, k.Batch, k.Jug = underway.Used, pour.Icing, "sky" },
	} {
		if got := of(change); !strings.HasPrefix(got, want) {
			t.Errorf("it says %q, want %q", got, want)
		}
	}
}

func TestOnlyAJugNearItsEndNeedsAHand(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	for i := range b.m.board.Jugs {
		b.m.board.Jugs[i].LeftMin, b.m.board.Jugs[i].Verdict = pour.Know(9), underway.Fine
	}
	if b.m.worst() != -1 || b.m.worstWords() != "" {
		t.Errorf("with nine minutes left %q needs a hand", b.m.worstWords())
	}
	b.m.board.Jugs[3].LeftMin = pour.Know(2)
	b.m.board.Jugs[1].LeftMin = pour.Know(1.5)
	b.m.board.Jugs[5].LeftMin = pour.Know(1) // the icing's lye is not in
	if got := b.m.worstWords(); got != "gentian 1.5 min" {
		t.Errorf("the first to end is %q", got)
	}
	b.m.board.Jugs[3].LeftMin, b.m.board.Jugs[3].Verdict = pour.Know(-1), underway.Over
	if got := b.m.worstWords(); got != "buttercup over" {
		t.Errorf("with one over it is %q", got)
	}
	b.m.board.Jugs[3].Seized = true
	if got := b.m.worstWords(); got != "buttercup seizes" {
		t.Errorf("with one that seizes it is %q", got)
	}
	b.m.board.Jugs[3].Verdict = underway.Used
	b.m.board.Jugs[1].LeftMin = pour.Know(2.1)
	if got := b.m.worstWords(); got != "" {
		t.Errorf("with one used and one two minutes off it is %q", got)
	}
}

func TestAStageIsSaidAsSeenOrAsAbout(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	j := underway.JugBoard{}
	j.Batch, j.Jug = pour.Base, "fern"
	since, _ := b.m.sinceIn(j)
	for s := range j.Stages {
		j.Stages[s] = pour.Know(since + float64(s) - 2.5) // emulsion, light and medium are past
	}
	if got := b.m.stageWord(j); got != "about medium, " {
		t.Errorf("by the clock: %q", got)
	}
	j.Reached = int(chem.Thick) + 1
	if got := b.m.stageWord(j); got != "thick, " {
		t.Errorf("as seen: %q", got)
	}
	j.Stages, j.Reached = [chem.Stages]pour.Figure{}, 0
	j.Stages[chem.Emulsion], j.Stages[chem.Light], j.Stages[chem.Medium] = pour.Know(1), pour.Know(4), pour.Know(9)
	if got := b.m.stageWords(j); got != "light about 4 min · medium about 9 min" {
		t.Errorf("predicted: %q", got)
	}
	j.Seen[chem.Emulsion], j.Seen[chem.Light] = true, true
	if got := b.m.stageWords(j); got != "emulsion seen +1:00 · light seen +4:00 · medium about 9 min" {
		t.Errorf("two seen: %q", got)
	}
	j.Reached = 2
	if got := b.m.nextStageWords(j, 5); got != "light seen, medium in about 4 min" {
		t.Errorf("to wait for: %q", got)
	}
	if got := b.m.nextStageWords(j, 9); got != "light seen, medium expected: look now" {
		t.Errorf("due: %q", got)
	}
	j.Reached = 3
	if got := b.m.nextStageWords(j, 9); got != "medium seen, nothing more is expected" {
		t.Errorf("at the end: %q", got)
	}
}

func TestAJugIsChosenByNumberAndByArrowRoundAndRound(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("3")
	b.shows("►3     poppy", "chosen: 3 poppy")
	b.press("tab")
	b.shows("►4     buttercup")
	b.press("left left left left")
	if b.m.jug != len(b.m.board.Jugs)-1 {
		t.Errorf("before the first jug comes %d", b.m.jug+1)
	}
	b.press("right")
	b.shows("►1     pot")
}

func TestOneRowOfJugsKeepsTheChosenOneInSight(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(60, 16)
	b.shows("pot")
	b.press("7")
	b.shows("►7     sky")
	b.press("1")
	b.shows("►1     pot", "↓")
}

func TestTheClockShowsMinutesAndThenHours(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	if b.m.elapsedText() != "-:--" {
		t.Errorf("before lye met oil the clock shows %s", b.m.elapsedText())
	}
	b.until("base lye in")
	for _, at := range []struct {
		wait time.Duration
		want string
	}{{59 * time.Second, "0:59"}, {time.Second, "1:00"}, {59*time.Minute - time.Second, "59:59"}, {time.Second, "1:00:00"}, {3*time.Minute + 7*time.Second, "1:03:07"}} {
		b.c.pass(at.wait)
		b.m.run.Tick()
		b.m.settle()
		if got := b.m.elapsedText(); got != at.want {
			t.Errorf("the clock shows %s, want %s", got, at.want)
		}
	}
}

func TestTheClockStandsStillOnceThePourIsOver(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base put to bed")
	b.shows("Space           the pour is over")
	if _, ok := b.m.now(); ok {
		t.Fatal("a step is left")
	}
	b.press("space")
	at := b.m.elapsedText()
	b.c.pass(time.Hour)
	b.update(tickMsg{})
	if got := b.m.elapsedText(); got != at {
		t.Errorf("the clock went on from %s to %s", at, got)
	}
	b.shows("later", "pourbench logbook cut "+b.m.ID()+", when it is", "file")
	b.hides("min late", "on time")
	b.press("space")
	b.shows("× the pour is over; q leaves")
}

func TestAnEmptyNoteIsRefusedAndEscLeavesIt(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("n enter")
	b.shows("there is nothing in it; Esc leaves it")
	b.press("esc")
	b.hides("A note")
	if b.files() != 0 || b.m.state.Kept() != 0 {
		t.Errorf("%d marks were kept", b.m.state.Kept())
	}
}

// Fahrenheit and ounces are typed as the plan shows them and kept as °C and g.
func TestWhatIsMeasuredInOtherUnitsIsKeptMetric(t *testing.T) {
	b := opened(t, t.TempDir(), func(o *Options) {
		plan := o.Sheet.Plan
		plan.Show.Temperature, plan.Show.Mass = pour.DegreesF, pour.MassOunce
		o.Sheet = pour.Work(plan, o.Shelf, pour.Hand{})
	})
	b.measure("base lye")
	b.shows("base lye in °F, planned 93 °F")
	b.write("95")
	b.press("enter")
	b.shows("base lye: 95 °F")
	b.measure("base olive oil")
	b.shows(" in oz, planned ")
	b.write("10 A7")
	b.press("enter")
	for _, e := range b.m.state.Marks {
		switch e.Kind {
		case logbook.Read:
			if e.Value != 35 || e.What != logbook.ReadLye || e.Batch != pour.Base {
				t.Errorf("95 °F is kept as %v °C of the %s's %s", e.Value, e.Batch, e.What)
			}
		case logbook.Weighed:
			if d := e.Value - 283.49523125; d > 1e-6 || d < -1e-6 || e.Lot != "A7" {
				t.Errorf("10 oz are kept as %v g, lot %q", e.Value, e.Lot)
			}
		}
	}
}

func TestOnlyTheBatterIsMeasuredOnceTheLyeIsIn(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	names := func() string {
		var out []string
		now, _ := b.m.now()
		for _, th := range b.m.state.Things(b.m.sheet(), now.Step) {
			if th.Unit == pour.UnitCelsius {
				out = append(out, b.m.weighedWords(th.Event))
			}
		}
		return strings.Join(out, ", ")
	}
	if got := names(); got != "base lye, base oils, base batter, icing lye, icing oils, icing batter" {
		t.Errorf("at the start: %s", got)
	}
	b.until("base lye in")
	if got := names(); got != "base batter, icing lye, icing oils, icing batter" {
		t.Errorf("with the base's lye in: %s", got)
	}
	b.until("icing lye in")
	if got := names(); got != "icing batter, base batter" {
		t.Errorf("with the icing's lye in: %s", got)
	}
}

func TestAJumpOfTheClockIsSaidForWhatItWas(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	for kind, want := range map[underway.JumpKind]string{
		underway.Slept:     "the machine slept 2:00; the run went on",
		underway.ClockSet:  "the wall clock was set by 2:00; the run did not follow it",
		underway.Reopened:  "no screen for 2:00; the run went on",
		underway.Backwards: "the wall clock was set back 2:00; what passed meanwhile is not known",
	} {
		if got := b.m.jumpWords(logbook.Event{What: string(kind), Value: 120}); got != want {
			t.Errorf("%s is said as %q", kind, got)
		}
	}
	for _, kind := range []underway.JumpKind{underway.ClockSet, underway.Backwards} {
		b.m.state.Jumps = []logbook.Event{{What: string(kind), Value: 120}}
		if _, ok := b.m.lastJump(); ok {
			t.Errorf("a jump that the run did not follow can be taken back: %s", kind)
		}
	}
	b.m.state.Jumps = []logbook.Event{{ID: "a", What: string(underway.Slept), Value: 120}, {ID: "b", What: string(underway.ClockSet), Value: 5}}
	if e, ok := b.m.lastJump(); !ok || e.ID != "a" {
		t.Errorf("the jump to take back is %q", e.ID)
	}
	b.m.state.Jumps[1].Run = b.m.live.Run()
	if n := b.m.notices(); len(n) != 1 || strings.Contains(n[0], "j: it did not") {
		t.Errorf("of a jump that was not followed it says %q", n)
	}
	b.m.state.Jumps = b.m.state.Jumps[:1]
	b.m.state.Jumps[0].Run = b.m.live.Run()
	if n := b.m.notices(); len(n) != 1 || !strings.HasSuffix(n[0], "(j: it did not)") {
		t.Errorf("of one that was it says %q", n)
	}
	b.m.state.Jumps[0].Run = b.m.live.Run() - 5*time.Minute
	if n := b.m.notices(); len(n) != 0 {
		t.Errorf("after five minutes it still says %q", n)
	}
}

func TestWhyAMarkIsNotWrittenIsSaidWithHowMany(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	failed := &fs.PathError{Op: "open", Path: "/a/long/path", Err: errors.New("no space left on device")}
	b.m.unkept = failed
	for n, want := range []string{"NOT WRITTEN: no space left on device", "NOT WRITTEN, 1 mark: no space left on device", "NOT WRITTEN, 2 marks: no space left on device"} {
		b.m.waiting = make([]logbook.Event, n)
		if got := b.m.unwrittenNotice(); got != want {
			t.Errorf("%d marks: %q, want %q", n, got, want)
		}
	}
	b.m.unkept = disk.ErrLocked
	if got := b.m.unwrittenNotice(); got != "NOT WRITTEN, 2 marks: "+disk.ErrLocked.Error() {
		t.Errorf("locked: %q", got)
	}
	b.shows("■ NOT WRITTEN", "it is tried again")
	b.hides("written to")
	b.size(40, 6)
	b.shows("NOT WRITTEN, 2 marks")
}

func TestTheBlenderThatRunsIsInSightUntilItIsOff(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.press("z")
	b.shows("stick blender on; z again when it is off")
	b.wait(7 * time.Second)
	b.shows("! stick blender on for 7 s: z when it is off")
	b.press("z")
	b.hides("z when it is off")
	b.press("z")
	b.update(key("z"))
	b.shows("less than a second; nothing is noted")
	if got := kinds(b)[logbook.Blended]; got != 1 {
		t.Errorf("%d bursts were noted", got)
	}
	b.press("b")
	b.shows("taken back: a burst of 8 s")
}

func TestWhatIsTakenBackIsNamed(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	for _, c := range [][2]string{
		{"2 m u", "taken back: gentian medium"}, {"3 x r backspace", "taken back: poppy rices"}, {"5 d y b", "taken back: fern stays in its jug"},
	} {
		b.press(c[0])
		b.shows(c[1])
	}
	b.press("space b")
	b.shows("taken back: colour pot")
	b.measure("base batter")
	b.write("41")
	b.press("enter b")
	b.shows("taken back: base batter at 41 °C")
}

func TestTroubleIsNotedAsItLooks(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	for i, c := range [][2]string{{"r", logbook.Rices}, {"s", logbook.Seizes}, {"b", logbook.Browns}, {"p", logbook.Separates}} {
		b.press("2 x")
		b.shows("Trouble in 2 gentian", "grains like cooked rice", "sets within seconds", "oil or water stands apart")
		b.press(c[0])
		b.shows("2 gentian " + c[1])
		var all []string
		for _, e := range b.m.state.Marks {
			if e.Kind == logbook.Troubled {
				all = append(all, e.Jug+" "+e.What)
			}
		}
		if len(all) != i+1 || !slices.Contains(all, "gentian "+c[1]) {
			t.Errorf("%s notes %q", c[0], all)
		}
	}
}

func TestEachStageKeyMarksItsStage(t *testing.T) {
	for key, want := range map[string]chem.Stage{"e": chem.Emulsion, "l": chem.Light, "m": chem.Medium, "t": chem.Thick, "s": chem.Stiff} {
		row, _ := keys.BuiltIn().Lookup(keys.Pouring, 0, key)
		if got := row.Each[row.Nth(key)]; got != want.String() || row.Nth(key) != int(want) {
			t.Errorf("%s is %s, want %s", key, got, want)
		}
	}
	b := opened(t, t.TempDir(), nil)
	b.until("base put to bed")
	b.press("2 T")
	b.shows("2 gentian: not yet thick")
	e := b.m.state.Marks[len(b.m.state.Marks)-1]
	if e.Kind != logbook.NotYet || e.Stage != chem.Thick || e.Jug != "gentian" {
		t.Errorf("marked %+v", e)
	}
	b.press("2 t")
	b.shows("× gentian is poured already; u takes it back")
}

func TestAMessageGoesAfterHalfAMinute(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("2")
	b.wait(29 * time.Second)
	b.shows("chosen: 2 gentian")
	b.wait(3 * time.Second)
	b.hides("chosen: 2 gentian")
}

func TestTheLookFollowsTheTerminalsBackground(t *testing.T) {
	b := opened(t, t.TempDir(), func(o *Options) { o.Background = "auto" })
	if b.m.look != look.Own() {
		t.Error("before the terminal has answered the look is not the terminal's own")
	}
	b.m.Update(tea.BackgroundColorMsg{Color: white{}})
	if b.m.look != look.New(false) {
		t.Error("on white the look is not that for light")
	}
	light := opened(t, t.TempDir(), func(o *Options) { o.Background = "light" })
	if light.m.look != look.New(false) {
		t.Error("--background light is not followed")
	}
}

// white is the colour white.
type white struct{}

func (white) RGBA() (r, g, b, a uint32) { return 0xffff, 0xffff, 0xffff, 0xffff }

func TestLargeLettersFallBackWhereThereIsNoRoom(t *testing.T) {
	draw := func(text string, w, h, most int) string {
		s := screen.New(w, h)
		drawLarge(s.Area(), text, most, screen.Style{})
		var lines []string
		for l := range strings.SplitSeq(s.String(), "\n") {
			lines = append(lines, strings.TrimRight(ansi.Strip(l), " "))
		}
		return strings.Join(lines, "\n")
	}
	if got := draw("to", 8, 3, 1); got != "▀█▀ ▄▀▀▄\n █  █  █\n ▀   ▀▀" {
		t.Errorf("in block letters:\n%s", got)
	}
	if got := draw("to go", 12, 1, 2); got != "T O   G O" {
		t.Errorf("one line high: %q", got)
	}
	if got := draw("to go", 6, 1, 2); got != "to go" {
		t.Errorf("six cells wide: %q", got)
	}
	if got := draw("to go", 4, 1, 2); screen.Width(got) > 4 || !strings.HasPrefix(got, "to") {
		t.Errorf("four cells wide: %q", got)
	}
	if got := draw("é", 20, 5, 2); !strings.Contains(got, "É") {
		t.Errorf("a letter that the alphabet does not have: %q", got)
	}
}
