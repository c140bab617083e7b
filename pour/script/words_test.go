package script_test

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour/script"
)

func mm(v float64) string { return fmt.Sprintf("%g mm", v) }

// hows is how the acts of a kind are done, in their order, each once.
func hows(s script.Script, kind script.Kind) string {
	var out []string
	for _, a := range s.Acts {
		how := s.How(a, mm)
		if a.Kind == kind && (len(out) == 0 || out[len(out)-1] != how) {
			out = append(out, how)
		}
	}
	return strings.Join(out, " / ")
}

// What the words must say for a maker to do the right thing: common practice, no source.
func TestTheWordsSayWhichWay(t *testing.T) {
	for _, c := range []struct {
		brief func(*script.Brief)
		kind  script.Kind
		want  []string // in this order
	}{
		{func(b *script.Brief) { b.Technique = script.Layers }, script.Pour, []string{"level over the whole width"}},
		{func(b *script.Brief) { b.Technique, b.HeightMM = script.Drop, 180 }, script.Pour, []string{"as the bed", "thin stream from 180 mm"}},
		{func(b *script.Brief) { b.Technique, b.HeightMM = script.Column, 90 }, script.Pour, []string{"as the bed", "down one line from 90 mm"}},
		{func(b *script.Brief) { b.Technique = script.Combed }, script.Pour, []string{"stripes side by side from the left wall", "to the right of the last"}},
		{func(b *script.Brief) { b.Technique = script.Combed }, script.Comb, []string{"across the mould, from wall to wall", "10 tines", "along the mould, from end to end", "5 tines"}},
		{func(b *script.Brief) { b.Technique = script.Spooned }, script.Spoon, []string{"here and there over the whole mould"}},
		{func(b *script.Brief) { b.Technique = script.Spooned }, script.Level, []string{"tap the mould down"}},
		{func(b *script.Brief) { b.Technique = script.Pot }, script.IntoPot, []string{"near half", "left free before the first", "far half"}},
		{func(b *script.Brief) { b.Technique, b.PotBetween = script.PotStripes, true }, script.IntoPot, []string{"stripes", "near half", "free between every two", "far half"}},
		{func(b *script.Brief) { b.Technique = script.PotSpots }, script.IntoPot, []string{"in the middle of the pot", "in a new place"}},
		{func(b *script.Brief) { b.Technique, b.HeightMM = script.Pot, 70 }, script.PourOut, []string{"along the middle, there and back from 70 mm"}},
		{func(b *script.Brief) { b.Technique, b.HeightMM = script.PotEnd, 70 }, script.PourOut, []string{"from the marked end", "from 70 mm"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.Pot, 1 }, script.Turn, []string{"one turn of the spoon"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.Pot, 0.5 }, script.Turn, []string{"half a turn of the spoon"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.Pot, 2.5 }, script.Turn, []string{"2.5 turns of the spoon"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.Hanger, 4 }, script.Wire, []string{"down and up 4 times"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.HangerLoops, 4 }, script.Wire, []string{"in 4 loops"}},
		{func(b *script.Brief) { b.Technique, b.Turns = script.HangerSpiral, 4 }, script.Wire, []string{"spiral of 4 turns"}},
	} {
		b := five("")
		c.brief(&b)
		rest := hows(must(t, b), c.kind)
		for _, want := range c.want {
			_, after, ok := strings.Cut(rest, want)
			if !ok {
				t.Errorf("%s, %s: %q does not say %q in its place", b.Technique, c.kind, hows(must(t, b), c.kind), want)
			}
			rest = after
		}
	}
	b := five(script.Pot)
	b.Shares = []float64{0, 0.5, 0.5}
	if got := hows(must(t, b), script.IntoPot); strings.Contains(got, "free") {
		t.Errorf("an empty pot has nothing to leave free: %q", got)
	}
}

func TestOneBagAndATrialAreToldInWords(t *testing.T) {
	if got := hows(script.Bags([]float64{0.5, 0.5}, []int{0, 1}, true, script.Shaped{}), script.Pipe); got != "side by side in one bag" {
		t.Errorf("one bag is filled %q", got)
	}
	if got := hows(script.Bags([]float64{0.5, 0.5}, []int{0, 1}, false, script.Shaped{}), script.Pipe); got != "" {
		t.Errorf("a bag each is filled %q", got)
	}
	if got := hows(script.Trial([]float64{0.5, 0.5}), script.Watch); !strings.Contains(got, "stir") || !strings.Contains(got, "mark each stage") {
		t.Errorf("a trial is watched %q", got)
	}
}

func TestWhereALineIsIsSaidFromTheLeftWall(t *testing.T) {
	s := must(t, five(script.Drop))
	for _, c := range []struct {
		lines []float64
		want  string
	}{
		{nil, ""},
		{[]float64{0.1}, "(far left)"},
		{[]float64{0.3}, "(left)"},
		{[]float64{0.5}, "(middle)"},
		{[]float64{0.7}, "(right)"},
		{[]float64{0.9}, "(far right)"},
		{[]float64{0.3, 0.9}, "(left, then far right)"},
		{[]float64{0.7, 0.5}, "(right, then middle)"},
	} {
		if got := s.Where(script.Act{Kind: script.Pour, Lines: c.lines}); got != c.want {
			t.Errorf("%v is %q, want %q", c.lines, got, c.want)
		}
	}
	if got := must(t, five(script.Column)).Where(script.Act{Kind: script.Pour, Lines: []float64{0.5}}); got != "" {
		t.Errorf("the one line of a column is told with every jug: %q", got)
	}
}
