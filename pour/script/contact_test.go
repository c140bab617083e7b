package script_test

import (
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
