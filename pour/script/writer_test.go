package script_test

import (
	"math"
	"slices"
	"testing"

	"pourbench/pour/script"
)

func TestEverySecondStrokeOfTheCombIsAlong(t *testing.T) {
	b := five(script.Combed)
	b.Passes = 4
	var along []bool
	for _, a := range must(t, b).Acts {
		if a.Kind == script.Comb {
			along = append(along, a.Along)
		} else if a.Along {
			t.Errorf("%s is drawn along", a.Kind)
		}
	}
	if !slices.Equal(along, []bool{false, true, false, true}) {
		t.Errorf("strokes along: %v", along)
	}
}

// By hand: three jugs, 17/3 rounds to 6 of them. A sixth of the first is 0.1 of the mould, 1.7 of 17 stripes: two, and of the others one lies between
// them and one behind them.
func TestAWideStripeIsPouredInSeveral(t *testing.T) {
	s := must(t, script.Brief{Technique: script.Combed, Shares: []float64{0.6, 0.3, 0.1}, First: script.Whole, Last: script.Whole})
	for i, want := range [][]float64{{0.025, 0.125}, {0.075}, {0.15 + 1./120}} {
		got := s.Acts[i].Lines
		if len(got) != len(want) {
			t.Fatalf("jug %d is poured along %v, want %v", i, got, want)
		}
		for k := range want {
			if math.Abs(got[k]-want[k]) > 1e-12 {
				t.Errorf("jug %d is poured along %v, want %v", i, got, want)
			}
		}
	}
	// by hand: in each of six rounds the first meets the second twice and the third once, and the third the first of the next but once
	if c := s.Contact(); math.Abs(c[0][1]-12./23) > 1e-12 || math.Abs(c[0][2]-11./23) > 1e-12 || c[1][2] != 0 {
		t.Errorf("the stripes touch as %v", c)
	}
}

// By hand: two jugs of 0.6 and 0.4, 17/2 rounds to 9 of them (Go rounds half away from 0): stripes of 0.6/9 and 0.4/9, each poured along its middle.
func TestStripesArePouredAlongTheirMiddles(t *testing.T) {
	s := must(t, script.Brief{Technique: script.Combed, Shares: []float64{0.6, 0.4}, First: script.Whole, Last: script.Whole})
	at, n := 0.0, 0
	for _, a := range s.Acts {
		if a.Kind != script.Pour {
			continue
		}
		wide := []float64{0.6, 0.4}[a.Jug] / 9
		if a.Jug != n%2 || len(a.Lines) != 1 || math.Abs(a.Lines[0]-(at+wide/2)) > 1e-12 {
			t.Errorf("stripe %d is %+v, want its middle at %g", n, a, at+wide/2)
		}
		at, n = at+wide, n+1
	}
	if n != 18 || math.Abs(at-1) > 1e-12 {
		t.Errorf("%d stripes are %g wide together", n, at)
	}
}

// Two drops that follow each other, and two of one jug, begin on different sides of the middle.
func TestDropsChangeSides(t *testing.T) {
	for seed := range int64(5) {
		b := five(script.Drop)
		b.Seed, b.Passes = seed, 6
		side := map[int]bool{}
		for i, a := range must(t, b).Acts {
			if a.Kind != script.Pour || a.Bed {
				continue
			}
			left := a.Lines[0] < 0.5
			if before, ok := side[a.Jug]; ok && before == left {
				t.Errorf("seed %d: act %d drops jug %d on the same side again", seed, i, a.Jug)
			}
			if len(a.Lines) > 2 || len(a.Lines) == 2 && (a.Lines[1] < 0.5) == left {
				t.Errorf("seed %d: act %d is led over to %v", seed, i, a.Lines)
			}
			side[a.Jug] = left
		}
	}
}

func TestDialsAreKeptToWhatCanBeDone(t *testing.T) {
	for _, c := range []struct {
		technique     script.Technique
		asked, passes int
	}{
		{script.Layers, 50, 8},
		{script.Hanger, 50, 8},
		{script.Spooned, 50, 12},
		{script.Spooned, 1, 2},
		{script.Combed, 50, 4},
		{script.Drop, 50, 40},
		{script.Pot, 50, 40},
		{script.Drop, 7, 7},
		{script.Pot, 0, 12},
		{script.Drop, 0, 3},
		{script.Column, 0, 8},
	} {
		b := five(c.technique)
		b.Passes, b.Turns, b.HeightMM = c.asked, 9, 700
		got := must(t, b).Brief
		if got.Passes != c.passes || got.Turns > 8 || got.HeightMM > 600 {
			t.Errorf("%s, %d passes asked: %d, %g turns, from %g mm", c.technique, c.asked, got.Passes, got.Turns, got.HeightMM)
		}
	}
}

// Pins and order of a pour in the pot: nothing comes before the pot, which is poured by nobody.
func TestThePotIsFirstInThePotWhateverIsPinned(t *testing.T) {
	for _, technique := range []script.Technique{script.Pot, script.PotStripes, script.PotSpots, script.PotEnd} {
		b := five(technique)
		b.Order, b.First, b.Last = []int{2, 1, 0, 4, 3}, 3, 2
		s := must(t, b)
		if !slices.Equal(s.Brief.Order, []int{0, 3, 1, 4, 2}) {
			t.Errorf("%s: the order is %v", technique, s.Brief.Order)
		}
		for _, a := range s.Acts {
			if a.Jug == 0 {
				t.Errorf("%s: the pot itself is in %q", technique, a.Kind)
			}
		}
	}
}

// What a tool or a pour out of the pot moves is everything; a jug's own act moves that jug; making even and what is done to the loaf moves none.
func TestAnActMovesItsJugOrAll(t *testing.T) {
	s := must(t, five(script.Pot))
	for _, kind := range script.Kinds() {
		one, all := s.Uses(script.Act{Kind: kind, Jug: 2}, 2), s.Uses(script.Act{Kind: kind, Jug: script.Whole}, 4)
		tool := slices.Contains([]script.Kind{script.Turn, script.PourOut, script.Wire, script.Comb, script.Fill, script.Pipe, script.Watch}, kind)
		none := slices.Contains([]script.Kind{script.Level, script.Peak, script.Embed, script.Strew, script.Firm, script.Mark, script.Cut, script.Aside, script.Weigh, script.Wipe}, kind)
		if one == none || all != tool || s.Uses(script.Act{Kind: kind, Jug: 2}, 3) {
			t.Errorf("%s of one jug moves it %v, of all moves one %v", kind, one, all)
		}
	}
}

// About fifteen times a spoon goes into the jugs, but never in so many or so few rounds that the spoonfuls are none.
func TestSpoonfulsOfFewJugsTakeMoreRounds(t *testing.T) {
	for jugs, want := range map[int]int{1: 6, 2: 6, 3: 5, 4: 4, 5: 3, 8: 3, 32: 3} {
		if got := script.Spooned.Own(jugs).Passes; got != want {
			t.Errorf("%d jugs are spooned in %d rounds, want %d", jugs, got, want)
		}
	}
}
