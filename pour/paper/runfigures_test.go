package paper

import (
	"math"
	"testing"

	"pourbench/pour"
)

// The parts of a jug sum to 1 and rounds count up from 1; a tool has neither jug nor part, and what is no act has no round.
func TestTheRunInFiguresHasPartsAndRounds(t *testing.T) {
	p := testPlan()
	p.Swirl.Passes = 3
	r := Figures(work(p))
	parts, rounds := map[string]float64{}, map[string]float64{}
	for _, task := range r.Run {
		if task.Batch == nil || *task.Batch != "base" {
			continue
		}
		switch task.Task {
		case "pour":
			if task.Jug == nil || task.Part == nil || task.Round == nil {
				t.Fatalf("a pour without jug, part or round: %+v", task)
			}
			if parts[*task.Jug] += *task.Part; *task.Round != rounds[*task.Jug]+1 {
				t.Errorf("round %v of %s comes after %v", *task.Round, *task.Jug, rounds[*task.Jug])
			}
			rounds[*task.Jug] = *task.Round
		case "draw the wire", "level", "split", "mix", "put to bed":
			if task.Jug != nil || task.Part != nil || task.Round != nil {
				t.Errorf("%s has a jug, a part or a round", task.Task)
			}
		case "colour", "scent":
			if task.Jug == nil || task.Part != nil || task.Round != nil {
				t.Errorf("%s has no jug, or a part or a round", task.Task)
			}
		}
	}
	for _, jug := range []string{"pot", "gentian", "poppy"} {
		if math.Abs(parts[jug]-1) > 1e-9 || rounds[jug] != 3 {
			t.Errorf("%v of %s is poured in %v rounds", parts[jug], jug, rounds[jug])
		}
	}
}

func TestNeighboursInFiguresSumToAHundred(t *testing.T) {
	s := work(testPlan())
	sum := 0.0
	r := Figures(s)
	for i, n := range r.Neighbours {
		sum += *n.ContactPercent
		if pair := s.Mingling.Pairs[i]; n.A != s.Base.Jugs[pair.A].Name || n.B != s.Base.Jugs[pair.B].Name || *n.Mud != pair.Score {
			t.Errorf("%+v stands for %+v", n, pair)
		}
		if *n.Mud < 0 || *n.Mud > 1 {
			t.Errorf("mud is %v", *n.Mud)
		}
	}
	if math.Abs(sum-100) > 1e-9 || len(r.Neighbours) < 2 {
		t.Errorf("contact of %d pairs sums to %v", len(r.Neighbours), sum)
	}
}

// Carriers taken out of the batch leave each jug its own superfat, and its own low case.
func TestFiguresGiveEveryJugItsOwnSuperfat(t *testing.T) {
	p := testPlan()
	p.Base.Carrier = pour.CarrierBatch
	p.Base.SuperfatPercent = 9
	s := work(p)
	r := Figures(s)
	for i, j := range s.Base.Jugs {
		got := r.Base.Jugs[i]
		if *got.SuperfatPercent != j.Superfat.HeldPercent || *got.SuperfatLowPercent != j.Superfat.LowPercent || j.Superfat.HeldPercent == s.Base.Superfat.PlannedPercent {
			t.Errorf("%s: %v and %v %%, the sheet has %v and %v", j.Name, *got.SuperfatPercent, *got.SuperfatLowPercent, j.Superfat.HeldPercent, j.Superfat.LowPercent)
		}
	}
}
