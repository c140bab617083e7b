package pour_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/script"
)

// names are the stints of the acts, each once.
func names(s pour.Sheet) string {
	var out []string
	for _, st := range s.Stints() {
		if st.Tasks[0].Act != pour.NoAct {
			out = append(out, st.Name())
		}
	}
	return strings.Join(out, "; ")
}

func TestRoundsAreToldAsOneStepEach(t *testing.T) {
	for technique, want := range map[script.Technique]string{
		script.Drop:    "pour pot; pour, round 1 of 3; pour, round 2 of 3; pour, round 3 of 3; level",
		script.Column:  "pour pot; pour in 3 rounds; level",
		script.Pot:     "into the pot, round 1 of 2; into the pot, round 2 of 2; turn; pour out in 3 passes; level",
		script.Hanger:  "pour, round 1 of 3; pour, round 2 of 3; pour, round 3 of 3; draw the wire; level",
		script.Combed:  "pour, round 1 of 3; pour, round 2 of 3; pour, round 3 of 3; comb, stroke 1 of 3; comb, stroke 2 of 3; comb, stroke 3 of 3; level",
		script.Spooned: "spoon, round 1 of 3; spoon, round 2 of 3; spoon, round 3 of 3; level",
	} {
		p, shelf := paced(t, technique)
		s := pour.Weigh(p, shelf)
		if got := names(s); got != want {
			t.Errorf("%s:\n got %s\nwant %s", technique, got, want)
		}
	}
}

// Every task is in one stint, which lasts from the start of its first task to the end of its last, and no two stints share a key.
func TestStintsAreTheWholeRun(t *testing.T) {
	for _, technique := range script.Techniques() {
		p, shelf := paced(t, technique)
		s := pour.Weigh(p, shelf)
		keys, told := map[string]bool{}, 0
		for _, st := range s.Stints() {
			if keys[st.Key] {
				t.Errorf("%s: %q is the key of two stints", technique, st.Key)
			}
			keys[st.Key] = true
			for _, task := range st.Tasks {
				if task.Key != s.Run[told].Key {
					t.Fatalf("%s: %s comes where the run has %s", technique, task.Key, s.Run[told].Key)
				}
				told++
			}
			last := st.Tasks[len(st.Tasks)-1]
			equal(t, string(technique)+", "+st.Name(), st.StartMin+st.LengthMin, last.StartMin+last.LengthMin, 1e-9)
		}
		if told != len(s.Run) {
			t.Errorf("%s: %d of %d tasks are told", technique, told, len(s.Run))
		}
	}
}

// A round moves every jug in it, not its first alone.
func TestAStintMovesEveryJugInIt(t *testing.T) {
	for technique, want := range map[script.Technique][]int{
		script.Drop:   {1, 4, 5, 5, 0},
		script.Column: {1, 5, 0},
		script.Pot:    {4, 4, 5, 5, 0},
		script.Hanger: {5, 5, 5, 5, 0},
	} {
		p, shelf := paced(t, technique)
		s := pour.Weigh(p, shelf)
		var got []int
		for _, st := range s.Stints() {
			if st.Tasks[0].Act != pour.NoAct {
				got = append(got, len(s.Moves(st)))
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: the steps move %v jugs, want %v", technique, got, want)
		}
	}
}

// A round is told with its number, every jug with its own grams, where it goes and how.
func TestARoundIsToldInFull(t *testing.T) {
	p, shelf := paced(t, script.Drop)
	s := pour.Weigh(p, shelf)
	for _, st := range s.Stints() {
		text := s.Tell(st)
		if st.Rounds == 0 {
			continue
		}
		if !strings.HasPrefix(text, fmt.Sprintf("round %d of 3, pour: ", st.Round)) || !strings.HasSuffix(text, "in a thin stream from "+p.Show.Len(120)) {
			t.Errorf("said %q", text)
		}
		for _, task := range st.Tasks {
			if want := task.Jug + " " + p.Show.Weight(task.G.V) + " " + s.Base.Script.Where(s.Base.Script.Acts[task.Act]); !strings.Contains(text, want) {
				t.Errorf("%q does not say %q", text, want)
			}
			if act := s.TellAct(pour.Base, task.Act); !strings.Contains(act, task.Jug) || !strings.Contains(act, fmt.Sprintf("round %d of 3", st.Round)) {
				t.Errorf("the act is told %q", act)
			}
		}
	}
}

// Small pours down one line are told once, every jug with what it gives each time.
func TestPoursDownOneLineAreToldOnce(t *testing.T) {
	p, shelf := paced(t, script.Column)
	s := pour.Weigh(p, shelf)
	told := 0
	for _, st := range s.Stints() {
		if st.Rounds == 0 {
			continue
		}
		told++
		text := s.Tell(st)
		if !strings.HasPrefix(text, "pour in 3 rounds, each time about: ") || !strings.HasSuffix(text, "; down one line from "+p.Show.Len(120)) {
			t.Errorf("said %q", text)
		}
		for _, j := range s.Base.Jugs {
			if n := strings.Count(text, j.Name+" "); n != 1 {
				t.Errorf("%q says %s %d times", text, j.Name, n)
			}
		}
	}
	if told != 1 {
		t.Errorf("the pours are told in %d steps", told)
	}
}

func TestToolsAndBagsAreToldInFull(t *testing.T) {
	p, shelf := paced(t, script.Pot)
	icing := p.Base.Clone()
	icing.Size, icing.PerBarG, icing.Scents, icing.Extras, icing.Bags = pour.SizeBar, 25, nil, nil, pour.BagOne
	p.Icing = &icing
	s := pour.Weigh(p, shelf)
	told := ""
	for _, st := range s.Stints() {
		told += s.Tell(st) + "\n"
		if st.Kind == pour.TaskKind(script.PourOut) && !strings.Contains(s.Tell(st), "in 3 passes of about "+p.Show.Weight(st.Tasks[0].G.V)) {
			t.Errorf("said %q", s.Tell(st))
		}
		if st.Kind != pour.TaskPipe {
			continue
		}
		for _, j := range s.Icing.Jugs {
			if !strings.Contains(s.Tell(st), j.Name) {
				t.Errorf("%q leaves %s out of the bag", s.Tell(st), j.Name)
			}
		}
	}
	if !strings.Contains(told, "side by side in one bag") || !strings.Contains(told, "1.5 turns of the spoon") {
		t.Errorf("told:\n%s", told)
	}
	p, shelf = paced(t, script.Spooned)
	s = pour.Weigh(p, shelf)
	for _, st := range s.Stints() {
		if st.Round > 0 && st.Round < 3 && !strings.Contains(s.Tell(st), "then tap the mould down") {
			t.Errorf("said %q", s.Tell(st))
		}
	}
}

// A round suits from when its slowest jug is thick enough to when its quickest is too thick; a jug whose end is not known leaves it open.
func TestAStintSuitsWhileAllItsJugsDo(t *testing.T) {
	p, shelf := paced(t, script.Drop)
	s := pour.Weigh(p, shelf)
	windows := []pour.Window{{From: pour.Know(4), To: pour.Know(17)}, {From: pour.Know(5.5), To: pour.Know(30)}, {From: pour.Know(3), To: pour.Know(9)}}
	for i := range s.Base.Jugs {
		s.Base.Jugs[i].Clock.Window = windows[i%len(windows)]
	}
	rounds := 0
	for _, st := range s.Stints() {
		got := s.Suits(st)
		switch moved := s.Moves(st); {
		case len(moved) == 0:
			if got != (pour.Window{}) {
				t.Errorf("%s moves nothing and suits %v", st.Name(), got)
			}
		case len(moved) >= 3:
			if rounds++; got != (pour.Window{From: pour.Know(5.5), To: pour.Know(9)}) {
				t.Errorf("%s of %v suits %v", st.Name(), moved, got)
			}
		case len(moved) == 1 && moved[0] == s.Base.Jugs[0].Name && got != windows[0]:
			t.Errorf("%s suits %v", st.Name(), got)
		}
	}
	s.Base.Jugs[1].Clock.Window.To = pour.Figure{}
	for _, st := range s.Stints() {
		if got := s.Suits(st); len(s.Moves(st)) >= 3 && (got.To.Known || got.From != pour.Know(5.5)) {
			t.Errorf("with an end that is not known %s suits %v", st.Name(), got)
		}
	}
	if rounds == 0 {
		t.Error("no round moves three jugs")
	}
}

// A step names the jugs that are likely too thick for it, by the clock's own chance at the step's minutes: those that are past with more than
// 55 in 100 as it begins, none that is past with under 45 as it ends.
func TestAStepNamesTheJugsThatAreTooThickForIt(t *testing.T) {
	named := 0
	for _, technique := range script.Techniques() {
		p, shelf := paced(t, technique)
		s := pour.Work(p, shelf, pour.Hand{})
		batter, _ := s.ClockBatter(pour.Base, shelf)
		c, err := clock.New(batter, clock.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		span, _ := s.Span(pour.Base, shelf)
		for _, st := range s.Stints() {
			thick := s.TooThick(st)
			named += len(thick)
			for i, j := range s.Base.Jugs {
				if span.To >= chem.Stiff || i == 0 && technique.InPot() {
					continue
				}
				jug, _ := s.ClockJug(pour.Base, j.Name, shelf)
				f := c.Forecast(jug)
				begins, _ := f.ChancePast(span.To+1, st.StartMin)
				ends, _ := f.ChancePast(span.To+1, st.StartMin+st.LengthMin)
				moved, got := slices.Contains(s.Moves(st), j.Name), slices.Contains(thick, j.Name)
				if moved && begins > 0.55 && !got || got && (!moved || ends < 0.45) {
					t.Errorf("%s, %s at %g: %s is past with %g to %g, moved %t, named %t", technique, st.Name(), st.StartMin, j.Name, begins, ends, moved, got)
				}
			}
		}
	}
	if named == 0 {
		t.Error("no step of any technique names a jug: the test looks at nothing")
	}
}

// A jug that is warned of is named at the last step that moves it, and a plan without such a warning names none.
func TestWhoIsWarnedOfIsNamedAtTheStep(t *testing.T) {
	for _, technique := range script.Techniques() {
		p, shelf := paced(t, technique)
		s := pour.Work(p, shelf, pour.Hand{})
		warned := map[string]bool{}
		for _, w := range s.Warnings {
			if n, jug, ok := w.Jug(); ok && n == pour.Base && (w.Code == "jug-late" || w.Code == "scent-fast-late") {
				warned[jug] = true
			}
		}
		last := map[string][]string{}
		for _, st := range s.Stints() {
			thick := s.TooThick(st)
			for _, jug := range s.Moves(st) {
				last[jug] = thick
			}
			if len(warned) == 0 && st.Batch == pour.Base && len(thick) > 0 {
				t.Errorf("%s: %v named, nothing warned of", technique, thick)
			}
		}
		for jug := range warned {
			if quick := s.Base.Jugs[slices.IndexFunc(s.Base.Jugs, func(j pour.JugSheet) bool { return j.Name == jug })].Clock.LateJug; !slices.Contains(last[jug], quick) {
				t.Errorf("%s: %s is warned of for %s, its last step names %v", technique, jug, quick, last[jug])
			}
		}
	}
}
