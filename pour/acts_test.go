package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// in gives the demo another technique.
func in(t testing.TB, technique string, passes int) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := shelved(t)
	plan.Swirl.Technique, plan.Swirl.Passes = technique, passes
	return plan, shelf
}

func TestMovingAnActMovesItsJugInTheOrder(t *testing.T) {
	plan, shelf := in(t, "layers", 1)
	sheet := pour.Weigh(plan, shelf)
	plan, err := pour.Apply(plan, shelf, pour.MoveTask(sheet, "base pour poppy", -1))
	if err != nil {
		t.Fatal(err)
	}
	sheet = pour.Weigh(plan, shelf)
	if got := sheet.PourOrder(); !slices.Equal(got, []int{0, 2, 1, 3, 4}) {
		t.Errorf("with poppy earlier the jugs are poured in the order %v", got)
	}
	plan.Swirl.Technique = "pot" // the order stays when the technique changes
	sheet = pour.Weigh(plan, shelf)
	if got := sheet.PourOrder(); !slices.Equal(got, []int{0, 2, 1, 3, 4}) {
		t.Errorf("into the pot the jugs go in the order %v", got)
	}
}

func TestWhatTheTechniqueSettlesIsNotMoved(t *testing.T) {
	for _, c := range []struct {
		technique, key string
		passes, by     int
		pin, want      string
	}{
		{"pot", "base turn", 0, -1, "", "the technique says when"},
		{"pot", "base pour@2 gentian", 0, -1, "", "the rounds follow each other"},
		{"hanger", "base draw the wire", 0, 1, "", "the technique says when"},
		{"layers", "base pour gentian", 1, -1, "pot", "pinned to its end"},
	} {
		plan, shelf := in(t, c.technique, c.passes)
		plan.Swirl.First = c.pin
		_, err := pour.Apply(plan, shelf, pour.MoveTask(pour.Weigh(plan, shelf), c.key, c.by))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: moving %q gave %v, want %q", c.technique, c.key, err, c.want)
		}
	}
}

// By hand, from the demo's own minutes: a jug in n rounds takes its minutes in n parts and a change each time.
func TestActsTakeTheirPartOfTheHandsMinutes(t *testing.T) {
	plan, shelf := in(t, "hanger", 4)
	plan.Run.PourMin, plan.Run.ChangeMin, plan.Run.WireMin, plan.Run.LevelMin = 2, 0.25, 1.5, 0.5
	want := map[pour.TaskKind]float64{"pour": 2./4 + 0.25, "draw the wire": 1.5, "level": 0.5}
	seen := map[pour.TaskKind]int{}
	for _, task := range pour.Weigh(plan, shelf).Run {
		if minutes, ok := want[task.Kind]; ok && task.Batch == "base" {
			seen[task.Kind]++
			if task.LengthMin != minutes {
				t.Errorf("%s takes %g min, want %g", task.Key, task.LengthMin, minutes)
			}
		}
	}
	if seen["pour"] != 20 || seen["draw the wire"] != 1 || seen["level"] != 1 {
		t.Errorf("the acts are %v", seen)
	}

	plan, shelf = in(t, "pot", 6)
	plan.Run.IntoPotMin, plan.Run.TurnMin, plan.Run.PourOutMin, plan.Run.ChangeMin, plan.Swirl.Turns = 1, 0.2, 3, 0.1, 2
	want = map[pour.TaskKind]float64{"into the pot": 1./2 + 0.1, "turn": 2 * 0.2, "pour out": 3. / 6}
	for _, task := range pour.Weigh(plan, shelf).Run {
		if minutes, ok := want[task.Kind]; ok && task.LengthMin != minutes {
			t.Errorf("%s takes %g min, want %g", task.Key, task.LengthMin, minutes)
		}
	}
}

func TestAJugIsJudgedFromItsFirstActToItsLast(t *testing.T) {
	plan, shelf := in(t, "pot", 0)
	sheet := pour.Weigh(plan, shelf)
	var into, out float64
	for _, task := range sheet.Run {
		switch {
		case task.Kind == "into the pot" && task.Jug == "gentian" && task.Round.V == 1:
			into = task.StartMin
		case task.Kind == "pour out":
			out = task.StartMin // the last one stands
		}
	}
	j := sheet.Base.Jugs[1]
	if j.Clock.PourAtMin.V != into || j.Clock.LastAtMin.V != out || out <= into {
		t.Errorf("gentian is used from %v to %v, its acts begin at %g and %g", j.Clock.PourAtMin, j.Clock.LastAtMin, into, out)
	}
}

func TestThePotIsJudgedByTheQuickestInIt(t *testing.T) {
	plan, shelf := in(t, "pot", 0)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	quickest := pour.JugSheet{}
	for _, j := range sheet.Base.Jugs[1:] {
		if j.Clock.LateChancePercent.V > quickest.Clock.LateChancePercent.V {
			quickest = j
		}
	}
	pot := sheet.Base.Jugs[0]
	if pot.Clock.LateChancePercent != quickest.Clock.LateChancePercent || pot.Clock.LateJug != quickest.Name {
		t.Errorf("the pot's chance is %v by %s, the quickest's %v by %s", pot.Clock.LateChancePercent, pot.Clock.LateJug, quickest.Clock.LateChancePercent, quickest.Name)
	}
	plain, shelf := in(t, "layers", 1)
	for _, j := range pour.Work(plain, shelf, pour.Hand{}).Base.Jugs {
		if j.Clock.LateJug != j.Name {
			t.Errorf("%s in layers is judged by %q", j.Name, j.Clock.LateJug)
		}
	}
}
