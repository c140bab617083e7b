package script_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

// five is a brief of five jugs; the pot has 38 %.
func five(t script.Technique) script.Brief {
	return script.Brief{Technique: t, Shares: []float64{0.38, 0.16, 0.16, 0.15, 0.15}, First: script.Whole, Last: script.Whole, Seed: 7}
}

func must(t testing.TB, b script.Brief) script.Script {
	t.Helper()
	s, err := script.New(b)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// told is the acts in a short hand: kind, jug, and the round where there is one.
func told(s script.Script) string {
	var out []string
	for _, a := range s.Acts {
		text := string(a.Kind)
		if a.Jug != script.Whole {
			text += fmt.Sprintf(" %c", 'A'+a.Jug)
		}
		if a.Bed {
			text += " bed"
		}
		if a.Round > 0 {
			text += fmt.Sprintf(" %d/%d", a.Round, a.Rounds)
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}

// The acts a maker does by each technique: common practice, no source, as the shelf's own line on each tells it.
func TestEveryTechniqueIsTheListOfActsAMakerDoes(t *testing.T) {
	for technique, want := range map[script.Technique]string{
		script.Layers: "pour A, pour B, pour C, pour D, pour E, level",
		script.Drop: "pour A bed, pour B 1/3, pour C 1/3, pour D 1/3, pour E 1/3, pour A 2/3, pour B 2/3, pour C 2/3, pour D 2/3, pour E 2/3, " +
			"pour A 3/3, pour B 3/3, pour C 3/3, pour D 3/3, pour E 3/3, level",
		script.Column: "pour A bed, pour B 1/2, pour C 1/2, pour D 1/2, pour E 1/2, " +
			"pour A 2/2, pour B 2/2, pour C 2/2, pour D 2/2, pour E 2/2, level",
		script.Pot: "into the pot B 1/2, into the pot C 1/2, into the pot D 1/2, into the pot E 1/2, " +
			"into the pot B 2/2, into the pot C 2/2, into the pot D 2/2, into the pot E 2/2, turn, pour out 1/3, pour out 2/3, pour out 3/3, level",
		script.PotSpots: "into the pot B 1/5, into the pot C 1/5, into the pot D 1/5, into the pot E 1/5, " +
			"into the pot C 2/5, into the pot D 2/5, into the pot E 2/5, into the pot B 2/5, " +
			"into the pot D 3/5, into the pot E 3/5, into the pot B 3/5, into the pot C 3/5, " +
			"into the pot E 4/5, into the pot B 4/5, into the pot C 4/5, into the pot D 4/5, " +
			"into the pot B 5/5, into the pot C 5/5, into the pot D 5/5, into the pot E 5/5, turn, pour out 1/3, pour out 2/3, pour out 3/3, level",
		script.Hanger: "pour A 1/2, pour B 1/2, pour C 1/2, pour D 1/2, pour E 1/2, " +
			"pour A 2/2, pour B 2/2, pour C 2/2, pour D 2/2, pour E 2/2, draw the wire, level",
		script.Combed: "pour A 1/3, pour B 1/3, pour C 1/3, pour D 1/3, pour E 1/3, pour A 2/3, pour B 2/3, pour C 2/3, pour D 2/3, pour E 2/3, " +
			"pour A 3/3, pour B 3/3, pour C 3/3, pour D 3/3, pour E 3/3, comb 1/2, comb 2/2, level",
		script.Spooned: "spoon A 1/2, spoon B 1/2, spoon C 1/2, spoon D 1/2, spoon E 1/2, level 1/2, " +
			"spoon A 2/2, spoon B 2/2, spoon C 2/2, spoon D 2/2, spoon E 2/2, level",
	} {
		b := five(technique)
		switch technique {
		case script.Pot, script.PotSpots:
			b.Passes = 3
		case script.Column:
			b.Passes = 2
		case script.Spooned:
			b.Passes = 2
		}
		if got := told(must(t, b)); got != want {
			t.Errorf("%s:\n got %s\nwant %s", technique, got, want)
		}
	}
}

func TestPotBetweenKeepsTheOthersApart(t *testing.T) {
	for _, technique := range []script.Technique{script.Layers, script.Drop, script.Column, script.Hanger, script.Combed} {
		b := five(technique)
		b.PotBetween = true
		before := 0
		for i, a := range must(t, b).Acts {
			if a.Kind != script.Pour {
				continue
			}
			if i > 0 && a.Jug != 0 && before != 0 {
				t.Errorf("%s: act %d pours %d onto %d", technique, i, a.Jug, before)
			}
			before = a.Jug
		}
	}
}

func TestPinsStandAtTheirEndsAndThePotIsThePot(t *testing.T) {
	b := five(script.Layers)
	b.Order, b.First, b.Last = []int{2, 1, 0, 4, 3}, 3, 2
	if got := must(t, b).Brief.Order; !slices.Equal(got, []int{3, 1, 0, 4, 2}) {
		t.Errorf("poured in the order %v", got)
	}
	b = five(script.Pot)
	b.Order, b.First, b.Last = []int{2, 1, 0, 4, 3}, 3, 0
	if got := must(t, b).Brief.Order; !slices.Equal(got, []int{0, 3, 2, 1, 4}) {
		t.Errorf("poured in the order %v", got)
	}
}

// Whatever the brief, every jug is used up, and all batter is moved into the mould once.
func TestEveryJugIsUsedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBrief(t)
		s, err := script.New(b)
		if err != nil {
			t.Fatal(err)
		}
		parts, mould, out := make([]float64, len(b.Shares)), 0.0, 0.0
		for _, a := range s.Acts {
			if a.Jug != script.Whole {
				parts[a.Jug] += a.Part
				if math.Abs(a.Share-a.Part*s.Brief.Shares[a.Jug]) > 1e-12 {
					t.Fatalf("%+v moves a share that is not its part of the jug's", a)
				}
			}
			switch a.Kind {
			case script.Pour, script.Spoon:
				mould += a.Share
			case script.PourOut:
				mould, out = mould+a.Share, out+a.Part
			}
			if a.Round > a.Rounds || a.Round < 0 {
				t.Fatalf("%+v: a round beyond the last", a)
			}
			for _, line := range a.Lines {
				if line < 0 || line > 1 {
					t.Fatalf("%+v pours beside the mould", a)
				}
			}
		}
		for j, v := range parts {
			want := 1.0
			if s.Brief.Shares[j] == 0 || j == 0 && s.Brief.Technique.InPot() {
				want = 0
			}
			if math.Abs(v-want) > 1e-9 {
				t.Fatalf("%s: %g of jug %d is used, want %g", s.Brief.Technique, v, j, want)
			}
		}
		if math.Abs(mould-1) > 1e-9 || s.Brief.Technique.InPot() && math.Abs(out-1) > 1e-9 {
			t.Fatalf("%s: %g of the batter comes into the mould", s.Brief.Technique, mould)
		}
	})
}

func anyBrief(t *rapid.T) script.Brief {
	n := rapid.IntRange(1, 12).Draw(t, "jugs")
	shares, sum := make([]float64, n), 0.0
	for i := range shares {
		shares[i] = float64(rapid.IntRange(0, 10).Draw(t, "share"))
		sum += shares[i]
	}
	if sum == 0 {
		shares[0], sum = 1, 1
	}
	for i := range shares {
		shares[i] /= sum
	}
	return script.Brief{
		Technique: rapid.SampledFrom(script.Techniques()).Draw(t, "technique"), Shares: shares,
		Order: rapid.Permutation(upTo(n)).Draw(t, "order"), First: rapid.IntRange(-1, n-1).Draw(t, "first"), Last: rapid.IntRange(-1, n-1).Draw(t, "last"),
		PotBetween: rapid.Bool().Draw(t, "between"), Passes: rapid.IntRange(0, 50).Draw(t, "passes"), Turns: rapid.Float64Range(0, 10).Draw(t, "turns"),
		HeightMM: rapid.Float64Range(0, 700).Draw(t, "height"), Seed: rapid.Int64().Draw(t, "seed"),
	}
}

func upTo(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func TestPassesAreRounds(t *testing.T) {
	b := script.Brief{Technique: script.Drop, Shares: slices.Repeat([]float64{1. / 12}, 12), First: script.Whole, Last: script.Whole, Passes: 10}
	s := must(t, b)
	rounds := map[int]int{}
	for _, a := range s.Acts {
		rounds[a.Round]++
	}
	// The bed is its jug's turn in the first of the ten rounds.
	if len(s.Acts) != 121 || rounds[1] != 11 || rounds[3] != 12 || rounds[10] != 12 {
		t.Errorf("%d acts, by round %v", len(s.Acts), rounds)
	}
}

func TestABriefThatCannotBeIsRefused(t *testing.T) {
	for name, spoil := range map[string]func(*script.Brief){
		"unknown technique": func(b *script.Brief) { b.Technique = "marble" },
		"no jugs":           func(b *script.Brief) { b.Shares = nil },
		"shares sum to 0.9": func(b *script.Brief) { b.Shares = []float64{0.5, 0.4} },
		"a negative share":  func(b *script.Brief) { b.Shares = []float64{1.2, -0.2} },
		"a share of NaN":    func(b *script.Brief) { b.Shares = []float64{math.NaN(), 1} },
		"too many jugs":     func(b *script.Brief) { b.Shares = slices.Repeat([]float64{1. / 40}, 40) },
		"no such jug":       func(b *script.Brief) { b.Order = []int{5} },
		"no such pin":       func(b *script.Brief) { b.Last = 9 },
		"negative passes":   func(b *script.Brief) { b.Passes = -1 },
		"endless turns":     func(b *script.Brief) { b.Turns = math.Inf(1) },
		"a height of NaN":   func(b *script.Brief) { b.HeightMM = math.NaN() },
	} {
		b := five(script.Drop)
		spoil(&b)
		if _, err := script.New(b); !errors.Is(err, script.ErrBrief) {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}

func TestBagsAreOneEachOrOneForAll(t *testing.T) {
	each := script.Bags([]float64{0.6, 0, 0.4}, []int{2, 1, 0}, false, script.Shaped{})
	if got := told(each); got != "pipe C, pipe A" {
		t.Errorf("a bag each: %s", got)
	}
	one := script.Bags([]float64{0.6, 0, 0.4}, []int{2, 1, 0}, true, script.Shaped{})
	if got := told(one); got != "pipe" {
		t.Errorf("one bag: %s", got)
	}
	if got := told(script.Bags([]float64{1}, []int{0}, true, script.Shaped{})); got != "pipe A" {
		t.Errorf("one bag of one jug: %s", got)
	}
	for jug, want := range []bool{true, true, true} {
		if one.Uses(one.Acts[0], jug) != want {
			t.Errorf("one bag and jug %d: %v", jug, !want)
		}
	}
}

func TestATrialWatchesItsJugsAndPoursNothing(t *testing.T) {
	if got := told(script.Trial([]float64{0.5, 0.5})); got != "watch" {
		t.Errorf("a trial is %s", got)
	}
}

func TestEveryActIsToldInWords(t *testing.T) {
	mm := func(v float64) string { return fmt.Sprintf("%g mm", v) }
	for _, technique := range script.Techniques() {
		s := must(t, five(technique))
		for _, a := range s.Acts {
			if s.How(a, mm) == "" {
				t.Errorf("%s: %s is done without a word", technique, a.Kind)
			}
		}
	}
}
