package live

import (
	"math"
	"slices"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

func minutes(min float64) time.Duration { return time.Duration(min * float64(time.Minute)) }

// A run by hand: two jugs split at 5 min, poured one after the other, the second with a scent that goes in at 20 min. The split was
// done at minute 8 of the base's lye, which went in 3 min after the run was opened.
func handRun(now float64) (Live, State) {
	step := func(key string, kind pour.TaskKind, planned, length float64, moves ...string) StepState {
		own := moves
		return StepState{Step: Step{Key: key, Kind: kind, Batch: pour.Base, PlannedMin: planned, LengthMin: length, Name: key, Moves: moves, Own: own}}
	}
	s := State{
		Steps: []StepState{
			step("mix", pour.TaskMix, 0, 5),
			step("split", pour.TaskSplit, 5, 1),
			step("pour fern", pour.TaskPour, 6, 2, "fern"),
			step("scent poppy", pour.TaskScent, 20, 1),
			step("pour poppy", pour.TaskPour, 21, 1.5, "poppy"),
			step("comb", "comb", 22.5, 1, "fern", "poppy"),
		},
		Next: 1, lyeIn: map[pour.BatchName]time.Duration{pour.Base: minutes(3)},
	}
	s.Steps[0].Done, s.Steps[0].DoneAt = true, minutes(3+8)
	s.Steps[3].Jug = "poppy"
	s.Steps[5].Own = nil
	return Live{run: minutes(3 + now)}, s
}

func TestWhatIsDueFollowsFromTheHandsAlone(t *testing.T) {
	l, s := handRun(10)
	// By hand, minutes after lye-in: the split is under way since 8 and would be done at 9, so it is done now, at 10, 4 later than its
	// plan of 6. Pouring fern takes 10 to 12, 4 later than 8. The scent waits for its minute 20 and the rest is as planned.
	want := []struct {
		key          string
		start, shift float64
	}{{"split", 8, 4}, {"pour fern", 10, 4}, {"scent poppy", 20, 0}, {"pour poppy", 21, 0}, {"comb", 22.5, 0}}
	due := l.due(s, Outlook{})
	for i, w := range want {
		if due[i].Key != w.key || math.Abs(due[i].StartMin-w.start) > 1e-9 || math.Abs(due[i].ShiftMin-w.shift) > 1e-9 {
			t.Errorf("%s starts at %v, %v late; want %s at %v, %v late", due[i].Key, due[i].StartMin, due[i].ShiftMin, w.key, w.start, w.shift)
		}
	}
	if len(due) != len(want) {
		t.Errorf("%d steps are due", len(due))
	}
	// At 25 the split is 19 late, and so is all that follows, but for what the scent's wait takes up: 28 + 1 is 8 later than 21.
	l, s = handRun(25)
	for i, shift := range []float64{19, 19, 7, 7, 7} {
		if got := l.due(s, Outlook{})[i]; math.Abs(got.ShiftMin-shift) > 1e-9 {
			t.Errorf("at 25 min %s is %v late, want %v", got.Key, got.ShiftMin, shift)
		}
	}
	// Before its minute the split waits, though the hands are free since 4.
	l, s = handRun(4.5)
	s.Steps[0].DoneAt = minutes(3 + 4)
	if got := l.due(s, Outlook{})[0]; got.StartMin != 5 || got.ShiftMin != 0 {
		t.Errorf("at 4.5 min the split starts at %v, %v late", got.StartMin, got.ShiftMin)
	}
	// Before lye-in the plan stands.
	s.lyeIn = nil
	for i, start := range []float64{5, 6, 20, 21, 22.5} {
		if got := l.due(s, Outlook{})[i]; got.StartMin != start || got.ShiftMin != 0 {
			t.Errorf("before lye-in %s starts at %v, %v late", got.Key, got.StartMin, got.ShiftMin)
		}
	}
}

// A batter that runs ahead is not waited with: from the scent's start poppy has 1 + 1.5 minutes of work before it until its last turn, so that with a
// window that ends at 18 it is scented at 15.5; where it ends at 10, as soon as the hands are free, at 12; at 30, at its planned 20.
func TestAScentWaitsNoLongerThanItsJugHasTime(t *testing.T) {
	l, s := handRun(10)
	for to, want := range map[float64]float64{18: 15.5, 10: 12, 30: 20} {
		j := JugOutlook{Batch: pour.Base, Jug: "poppy"}
		j.Window.To = pour.Know(to)
		for _, d := range l.due(s, Outlook{Jugs: []JugOutlook{j}}) {
			if d.Kind == pour.TaskScent && math.Abs(d.StartMin-want) > 1e-9 || d.Kind == pour.TaskSplit && d.StartMin != 8 {
				t.Errorf("with a window until %v min %s starts at %v, want %v", to, d.Key, d.StartMin, want)
			}
		}
	}
}

func TestAJugsVerdictFollowsFromItsWindowAndItsLastTurn(t *testing.T) {
	for _, x := range []struct {
		name        string
		now, to     float64
		want        Verdict
		left        float64
		rescueKinds []RescueKind
	}{
		{"far inside", 10, 40, Fine, 30, nil},
		{"its last turn exactly at the end", 10, 22.5, Fine, 12.5, nil},
		{"its last turn after the end", 10, 22.4, TooLate, 12.4, []RescueKind{LeaveScent, StirByHand}},
		{"inside its window and too late", 16, 22.4, TooLate, 6.4, []RescueKind{PourNow, LeaveScent, StirByHand}},
		{"over to the minute", 22, 22, Over, 0, []RescueKind{LeaveScent, UseInBottom, SpoonIt}},
		{"over", 30, 22, Over, -8, []RescueKind{LeaveScent, UseInBottom, SpoonIt}},
	} {
		l, s := handRun(x.now)
		b := Board{Due: l.due(s, Outlook{})}
		s.Steps[1].Done, s.Steps[1].DoneAt = true, minutes(3+8) // one pot would be split first, whatever is done
		j := JugOutlook{Batch: pour.Base, Jug: "poppy", Window: pour.Window{From: pour.Know(15), To: pour.Know(x.to)}}
		got := l.jugBoard(s, b, j)
		var kinds []RescueKind
		for _, r := range got.Rescues {
			kinds = append(kinds, r.Kind)
			if r.Step != "pour poppy" && r.Kind != StirByHand {
				t.Errorf("%s: %s brings up %q", x.name, r.Kind, r.Step)
			}
		}
		if got.Verdict != x.want || math.Abs(got.LeftMin.V-x.left) > 1e-9 || !slices.Equal(kinds, x.rescueKinds) {
			t.Errorf("%s: %s with %v min left, %v; want %s with %v, %v", x.name, got.Verdict, got.LeftMin.V, kinds, x.want, x.left, x.rescueKinds)
		}
		if got.TurnMin.V >= got.LastMin.V || !got.TurnMin.Known {
			t.Errorf("%s: its turns are at %v and %v", x.name, got.TurnMin, got.LastMin)
		}
	}
}

func TestAWindowThatEndsWithinTwoMinutesIsSoon(t *testing.T) {
	l, s := handRun(22)
	for i := range s.Steps[:5] {
		s.Steps[i].Done, s.Steps[i].DoneAt = true, minutes(3+21.9)
	}
	s.Next = 5
	for to, want := range map[float64]Verdict{24: Soon, 24.01: Fine, 23: Soon} {
		got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, JugOutlook{Batch: pour.Base, Jug: "poppy", Window: pour.Window{To: pour.Know(to)}})
		if got.Verdict != want {
			t.Errorf("with a window to %v it is %s at 22 min", to, got.Verdict)
		}
	}
	// It lies with the others by then, so that all that helps is to go on.
	got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, JugOutlook{Batch: pour.Base, Jug: "poppy", Window: pour.Window{To: pour.Know(20)}})
	if got.Verdict != Over || len(got.Rescues) != 1 || got.Rescues[0].Kind != GoOn || got.Rescues[0].Step != "comb" {
		t.Errorf("over, in the mould: %s, %+v", got.Verdict, got.Rescues)
	}
}

func TestAJugOfWhichTheClockSaysNothingHasNoVerdict(t *testing.T) {
	l, s := handRun(10)
	b := Board{Due: l.due(s, Outlook{})}
	if got := l.jugBoard(s, b, JugOutlook{Batch: pour.Base, Jug: "fern", Refusal: "unknown oils"}); got.Verdict != Unknown || got.LeftMin.Known {
		t.Errorf("refused it is %s with %v left", got.Verdict, got.LeftMin)
	}
	if got := l.jugBoard(s, b, JugOutlook{Batch: pour.Base, Jug: "fern"}); got.Verdict != Fine {
		t.Errorf("without a window it is %s", got.Verdict)
	}
	for i := range s.Steps {
		s.Steps[i].Done = true
	}
	if got := l.jugBoard(s, b, JugOutlook{Batch: pour.Base, Jug: "fern", Refusal: "unknown oils"}); got.Verdict != Used {
		t.Errorf("poured it is %s", got.Verdict)
	}
	s.lyeIn = nil // not begun: its last turn is judged by the plan, and nothing is left to run out
	s.Steps[2].Done, s.Steps[5].Done = false, false
	got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, JugOutlook{Batch: pour.Base, Jug: "fern", Window: pour.Window{To: pour.Know(7)}})
	if got.Verdict != TooLate || got.LeftMin.Known {
		t.Errorf("before lye-in it is %s with %v left", got.Verdict, got.LeftMin)
	}
	for _, r := range got.Rescues {
		if r.Kind == PourNow {
			t.Error("it is to be poured before its lye is in")
		}
	}
}

// An icing's windows count from its own lye: 10 min after the base's as it went, or as planned until then.
func TestAnIcingsTurnIsJudgedOnTheBasesClock(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Weigh(plan, shelf)
	_, s := handRun(10)
	planned := sheet.Batch(pour.Icing).LyeInAtMin
	if got := s.inMin(pour.Icing, sheet); got != planned {
		t.Errorf("not begun, its lye goes in at %v, planned is %v", got, planned)
	}
	s.lyeIn[pour.Icing] = minutes(13)
	if got := s.inMin(pour.Icing, sheet); got != 10 {
		t.Errorf("its lye went in %v min after the base's, want 10", got)
	}
	delete(s.lyeIn, pour.Base)
	if got := s.inMin(pour.Icing, sheet); got != planned {
		t.Errorf("without the base's lye its own goes in at %v", got)
	}
	s.lyeIn[pour.Base] = minutes(3)
	s.Steps = append(s.Steps, StepState{Step: Step{Key: "pipe", Batch: pour.Icing, PlannedMin: 30, LengthMin: 5, Moves: []string{"cream"}, Own: []string{"cream"}}})
	l := Live{run: minutes(3 + 10), Sheet: sheet}
	due := l.due(s, Outlook{})
	at := due[len(due)-1].StartMin // 23.5, 13.5 after its own lye
	for to, want := range map[float64]Verdict{at - 10: Fine, at - 10.1: TooLate} {
		if got := l.jugBoard(s, Board{Due: due}, JugOutlook{Batch: pour.Icing, Jug: "cream", Window: pour.Window{To: pour.Know(to)}}); got.Verdict != want {
			t.Errorf("with a window to %v of its own and its turn at %v it is %s", to, at, got.Verdict)
		}
	}
	if at != 23.5 {
		t.Errorf("its turn comes at %v", at)
	}
}

// An icing planned at 25 min, split at 33 and piped after that. Its lye went in at +1:35, 23:25 early: it is split 8 min after that, at
// +9:35, and its pipe follows. With its lye 4 min late, at 29, it is split at 37.
func TestWhatIsLeftOfAnIcingFollowsItsOwnLye(t *testing.T) {
	step := func(key string, kind pour.TaskKind, planned, length float64) StepState {
		return StepState{Step: Step{Key: key, Kind: kind, Batch: pour.Icing, PlannedMin: planned, LengthMin: length}}
	}
	for lyeIn, want := range map[float64][]float64{
		1 + 35./60: {9 + 35./60, 9 + 35./60 + .5, 11 + 35./60},
		25:         {33, 33.5, 35},
		29:         {37, 37.5, 39},
	} {
		s := State{
			Steps: []StepState{
				step("icing lye in", StepLyeIn, 25, 0),
				step("icing mix", pour.TaskMix, 25, 8),
				step("icing split", pour.TaskSplit, 33, .5),
				step("icing pipe", pour.TaskPipe, 33.5, 1),
				step("icing scent white", pour.TaskScent, 35, 1),
			},
			Next: 2, lyeIn: map[pour.BatchName]time.Duration{pour.Base: minutes(3), pour.Icing: minutes(3 + lyeIn)},
		}
		for i := range 2 {
			s.Steps[i].Done, s.Steps[i].DoneAt = true, minutes(3+lyeIn)
		}
		due := Live{run: minutes(3 + lyeIn + 1)}.due(s, Outlook{})
		for i, at := range want {
			if math.Abs(due[i].StartMin-at) > 1e-9 {
				t.Errorf("lye in at %v: %s starts at %v, want %v", lyeIn, due[i].Key, due[i].StartMin, at)
			}
		}
		if got := due[0].ShiftMin; math.Abs(got-(lyeIn-25)) > 1e-9 {
			t.Errorf("lye in at %v: the split is %v late, want %v", lyeIn, got, lyeIn-25)
		}
	}
}

// The step that was waited for with the icing's own lye is begun then: lye in at 1:35 of the base's, split planned 8 min after it.
func TestAnIcingsSplitIsBegunAfterItsOwnLye(t *testing.T) {
	split := StepState{Step: Step{Key: "icing split", Kind: pour.TaskSplit, Batch: pour.Icing, PlannedMin: 33, LengthMin: .5}, Done: true, DoneAt: minutes(3 + 10)}
	s := State{
		Steps: []StepState{{Step: Step{Key: "icing lye in", Kind: StepLyeIn, Batch: pour.Icing, PlannedMin: 25}, Done: true, DoneAt: minutes(3 + 1.5)}, split},
		lyeIn: map[pour.BatchName]time.Duration{pour.Base: minutes(3), pour.Icing: minutes(3 + 1.5)},
	}
	if got := s.Began(split); got != minutes(3+1.5+8) {
		t.Errorf("begun at %v of the run, want 12.5 min", got)
	}
}

// Lye into the icing at +1:35 while the base is stirred till +5: the icing's mixing of 8 min runs from then on, till +9:35, though its
// turn in the plan comes after the base's pour; the pour takes from 5 to 7. At +20 it is done at once.
func TestAMixingRunsFromItsOwnLyeThoughItsTurnIsLater(t *testing.T) {
	step := func(n pour.BatchName, kind pour.TaskKind, planned, length float64) StepState {
		return StepState{Step: Step{Key: string(n) + " " + string(kind), Kind: kind, Batch: n, PlannedMin: planned, LengthMin: length}}
	}
	s := State{
		Steps: []StepState{step(pour.Base, pour.TaskMix, 0, 5), step(pour.Base, pour.TaskPour, 5, 2), step(pour.Icing, pour.TaskMix, 25, 8), step(pour.Icing, pour.TaskPipe, 33, 1)},
		lyeIn: map[pour.BatchName]time.Duration{pour.Base: minutes(3), pour.Icing: minutes(3 + 1 + 35./60)},
	}
	s.Steps = append([]StepState{{Step: Step{Key: "icing lye in", Kind: StepLyeIn, Batch: pour.Icing, PlannedMin: 25}, Done: true, DoneAt: s.lyeIn[pour.Icing]}}, s.Steps...)
	s.Next = 1
	for now, want := range map[float64][]float64{2: {0, 5, 1 + 35./60, 9 + 35./60}, 20: {0, 20, 1 + 35./60, 22}} {
		for i, d := range (Live{run: minutes(3 + now)}).due(s, Outlook{}) {
			if math.Abs(d.StartMin-want[i]) > 1e-9 {
				t.Errorf("at %v min %s starts at %v, want %v", now, d.Key, d.StartMin, want[i])
			}
		}
	}
}

// A jug far inside its window, with trouble marked: what helps against that is told, each way once, and no other jug is concerned. One that
// is too late as well is not to be kept from the blender that may smooth it.
func TestAJugInTroubleCanBeHelpedInsideItsWindow(t *testing.T) {
	l, s := handRun(10)
	s.Steps[1].Done = true // split before anything went wrong
	b := Board{Due: l.due(s, Outlook{})}
	mark := func(what string) {
		s.Marks = append(s.Marks, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: what})
	}
	kinds := func(jug string, to float64) []RescueKind {
		var out []RescueKind
		for _, r := range l.jugBoard(s, b, JugOutlook{Batch: pour.Base, Jug: jug, Window: pour.Window{To: pour.Know(to)}}).Rescues {
			out = append(out, r.Kind)
		}
		return out
	}
	mark(logbook.Rices)
	mark(logbook.Rices)
	if got := kinds("poppy", 40); !slices.Equal(got, []RescueKind{BlendIt, UseInBottom, SpoonIt, LeaveScent}) {
		t.Errorf("riced it is helped by %v", got)
	}
	if got := kinds("poppy", 22.4); slices.Contains(got, StirByHand) || !slices.Contains(got, PourNow) {
		t.Errorf("riced and too late it is helped by %v", got)
	}
	if got := kinds("fern", 40); got != nil {
		t.Errorf("its sister is helped by %v", got)
	}
	mark(logbook.Seizes)
	if got := kinds("poppy", 40); !slices.Equal(got, []RescueKind{BlendIt, UseInBottom, SpoonIt, LeaveScent, WarmIt}) {
		t.Errorf("riced and seized it is helped by %v", got)
	}
}
