package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
)

// A jug of the example that holds five sixths of what was planned gets five sixths of its colour and scent, and every act pours five sixths, to a step of the
// scale; with a third of it left what is stirred in is a third of that, and what was to be poured stays. The other jugs and the plan's own sheet are as
// they were.
func TestAPortionIsDosedAndPouredByWhatItHolds(t *testing.T) {
	p, s := example(t, "alpine-meadow")
	sheet := pour.Weigh(p, s)
	planned := pour.Weigh(p, s)
	poppy := jugOf(t, &planned, "poppy")
	if len(poppy.Colourants) == 0 || len(poppy.Scents) == 0 {
		t.Fatalf("%+v", poppy)
	}
	g := poppy.BatterWeighG * 5 / 6
	for _, c := range []struct{ left, dose float64 }{{1, 5. / 6}, {1. / 3, 5. / 18}} {
		now := sheet.Portioned([]pour.Portion{{Batch: pour.Base, Jug: "poppy", BatterG: g, LeftPart: c.left}})
		got := jugOf(t, &now, "poppy")
		for i, d := range poppy.Colourants {
			if math.Abs(got.Colourants[i].PigmentG-d.PigmentG*c.dose) > 1e-9 || math.Abs(got.Colourants[i].CarrierG-d.CarrierG*c.dose) > 1e-9 {
				t.Errorf("%+v of %+v with %v left", got.Colourants[i], d, c.left)
			}
		}
		for i, x := range poppy.Scents {
			if math.Abs(got.Scents[i].G-x.G*c.dose) > 1e-9 {
				t.Errorf("%+v of %+v with %v left", got.Scents[i], x, c.left)
			}
		}
		if got.BatterWeighG != g {
			t.Errorf("it holds %v, weighed %v", got.BatterWeighG, g)
		}
		sum := 0.0
		for i, task := range now.Run {
			was := planned.Run[i]
			switch {
			case task.Key != was.Key || task.StartMin != was.StartMin:
				t.Fatalf("%+v was %+v", task, was)
			case task.Batch == pour.Base && task.Jug == "poppy" && task.Part.Known:
				sum += task.G.V
				if math.Abs(task.G.V-was.G.V*5/6) > 2*p.Show.ScaleStepG {
					t.Errorf("%s pours %v, planned %v", task.Key, task.G.V, was.G.V)
				}
			case task.G != was.G && task.Jug != "":
				t.Errorf("%s pours %v, planned %v", task.Key, task.G, was.G)
			}
		}
		if math.Abs(sum-poppy.TotalG*5/6) > p.Show.ScaleStepG {
			t.Errorf("in all %v are poured of %v", sum, poppy.TotalG*5/6)
		}
	}
	for i, task := range sheet.Run {
		if task != planned.Run[i] {
			t.Errorf("the plan's own sheet changed: %+v was %+v", task, planned.Run[i])
		}
	}
	if now := jugOf(t, &sheet, "poppy"); now.Colourants[0] != poppy.Colourants[0] || now.TotalG != poppy.TotalG {
		t.Errorf("the plan's own sheet changed: %+v", now)
	}
}

func jugOf(t *testing.T, s *pour.Sheet, name string) pour.JugSheet {
	t.Helper()
	for _, j := range s.Base.Jugs {
		if j.Name == name {
			return j
		}
	}
	t.Fatalf("no jug %s", name)
	return pour.JugSheet{}
}
