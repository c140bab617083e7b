package script_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

func TestContactsAreEvenAndSumToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := script.New(anyBrief(t))
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		c := s.Contact()
		for a := range c {
			for b := range a {
				sum += c[a][b]
				if c[a][b] != c[b][a] || c[a][b] > 0 && (s.Brief.Shares[a] == 0 || s.Brief.Shares[b] == 0) {
					t.Fatalf("%d touches %d by %g and %g", a, b, c[a][b], c[b][a])
				}
			}
		}
		if want := min(1, float64(s.Filled()-1)); math.Abs(sum-want) > 1e-9 {
			t.Fatalf("contacts of %d jugs sum to %g", s.Filled(), sum)
		}
	})
}

// By hand: four layers one on the other touch three times.
func TestLayersTouchTheirNeighboursAlone(t *testing.T) {
	s := must(t, script.Brief{Technique: script.Layers, Shares: []float64{0.25, 0.25, 0.25, 0.25}, Order: []int{2, 0, 3, 1}, First: -1, Last: -1})
	c := s.Contact()
	for _, pair := range [][2]int{{2, 0}, {0, 3}, {3, 1}} {
		if got := c[pair[0]][pair[1]]; math.Abs(got-1./3) > 1e-12 {
			t.Errorf("%v touch by %g, want a third", pair, got)
		}
	}
	if c[2][1] != 0 || c[2][3] != 0 || c[0][1] != 0 {
		t.Errorf("jugs that are no neighbours touch: %v", c)
	}
}

// counted is the contacts of a script as how many of all there are by hand: "0-1 2/7" is two of seven.
func counted(s script.Script, of float64) string {
	out := ""
	c := s.Contact()
	for a := range c {
		for b := a + 1; b < len(c); b++ {
			if n := c[a][b] * of; n > 1e-9 {
				out += fmt.Sprintf("%d-%d %.3g; ", a, b, n)
			}
		}
	}
	return out
}

// inPot is the contacts of a script without those of ribbons on ribbons: of all, 1 to so many parts, by the products of two shares.
func inPot(s script.Script, folded, of float64) string {
	out, sum := "", 0.0
	c, shares := s.Contact(), s.Brief.Shares
	for a := range c {
		for b := a + 1; b < len(c); b++ {
			sum += shares[a] * shares[b]
		}
	}
	for a := range c {
		for b := a + 1; b < len(c); b++ {
			if n := (c[a][b]*(1+folded) - folded*shares[a]*shares[b]/sum) * of; n > 1e-9 {
				out += fmt.Sprintf("%d-%d %.3g; ", a, b, n)
			}
		}
	}
	return out
}

// Round the pot by hand: three colours go round twice, some of the pot before the first of each round, and the last lies beside the first. Of
// 1.7 parts of all boundary, 0.7 arise on the way out.
func TestColoursTouchAsTheyLieInThePot(t *testing.T) {
	for _, c := range []struct {
		technique script.Technique
		pot       float64
		between   bool
		of        float64
		want      string
	}{
		{script.Pot, 0.4, false, 8, "0-1 2; 0-3 2; 1-2 2; 2-3 2; "},                     // 0123 0123 and round
		{script.PotEnd, 0.4, false, 8, "0-1 2; 0-3 2; 1-2 2; 2-3 2; "},                  //
		{script.PotStripes, 0.4, false, 7, "0-1 2; 0-3 1; 1-2 2; 2-3 2; "},              // 0123 0123: the last stripe lies at the rim
		{script.Pot, 0.4, true, 12, "0-1 4; 0-2 4; 0-3 4; "},                            // 010203 010203 and round
		{script.Pot, 0, false, 6, "1-2 2; 1-3 2; 2-3 2; "},                              // 123 123 and round
		{script.PotSpots, 0.4, false, 15, "0-1 2; 0-2 2; 0-3 1; 1-2 3; 1-3 3; 2-3 4; "}, // 0123, 0231, 0312, 0123, 0231, each for itself
	} {
		rest := (1 - c.pot) / 3
		s := must(t, script.Brief{Technique: c.technique, Shares: []float64{c.pot, rest, rest, rest}, First: -1, Last: -1, PotBetween: c.between})
		if got := inPot(s, 0.7, c.of); got != c.want {
			t.Errorf("%s, pot %g, between %v:\n got %s\nwant %s", c.technique, c.pot, c.between, got, c.want)
		}
	}
}

// Streams by hand: each wanders 0.4 of the width to either side, where it covers 0.375; two lines of a pour half of that each. One along 0.2 reaches 12 of the
// 20 places and so covers 4.5 of the bed.
func TestStreamsTouchWhatLiesWhereTheyLand(t *testing.T) {
	for _, c := range []struct {
		lines [][]float64 // of the second jug and the third
		of    float64
		want  string
	}{
		{[][]float64{{0.2}, {0.8}}, 16, "0-1 8; 0-2 7; 1-2 1; "},               // 12 places, 4 of them with 0.375 of the second: 0.5625 of 9
		{[][]float64{{0.2}, {0.2}}, 16, "0-1 8; 0-2 5; 1-2 3; "},               // the same 12: 1.6875
		{[][]float64{{0.2}, {0.25}}, 9.375, "0-1 4.5; 0-2 3.19; 1-2 1.69; "},   // one place more, of the bed
		{[][]float64{{0.2}, {0.25, 0.85}}, 9, "0-1 4.5; 0-2 3.45; 1-2 1.05; "}, // led over: 13 and 11 places, 15 of them with the second
	} {
		s := script.Script{Brief: script.Brief{Technique: script.Drop, Shares: []float64{0.4, 0.3, 0.3}}, Acts: []script.Act{
			{Kind: script.Pour, Jug: 0, Bed: true}, {Kind: script.Pour, Jug: 1, Lines: c.lines[0]}, {Kind: script.Pour, Jug: 2, Lines: c.lines[1]}, {Kind: script.Level, Jug: script.Whole},
		}}
		if got := counted(s, c.of); got != c.want {
			t.Errorf("%v: %s, want %s", c.lines, got, c.want)
		}
	}
}

// By hand, at a cover of 8 widths for the whole batch: half of it covers everything; a twentieth covers 0.4, all of it on the first; the
// next twentieth falls on 0.6 of the first and 0.4 of the second: 0.4, 0.24 and 0.16 are 10, 6 and 4 of 20.
func TestSpoonfulsTouchWhatLiesWhereTheyFall(t *testing.T) {
	s := script.Script{Brief: script.Brief{Technique: script.Spooned, Shares: []float64{0.9, 0.05, 0.05}}, Acts: []script.Act{
		{Kind: script.Spoon, Jug: 0, Share: 0.9},
		{Kind: script.Spoon, Jug: 1, Share: 0.05},
		{Kind: script.Level, Jug: script.Whole},
		{Kind: script.Spoon, Jug: 2, Share: 0.05},
		{Kind: script.Level, Jug: script.Whole},
	}}
	if got := counted(s, 20); got != "0-1 10; 0-2 6; 1-2 4; " {
		t.Errorf("they touch by %s", got)
	}
}
