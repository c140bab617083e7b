package swirl

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func loaf(t Technique, seed int64) Recipe {
	return Recipe{
		Technique: t, Shares: []float64{0.38, 0.16, 0.16, 0.15, 0.15}, Thickness: 0.3, Seed: seed,
		Box: Box{L: 250, W: 80, H: 62},
	}
}

func mustPour(t testing.TB, r Recipe) *Swirl {
	t.Helper()
	s, err := New(r)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// volumes counts the portions on a stratified grid; n is points along, across and up.
func volumes(s *Swirl, n [3]int) []float64 {
	box := s.recipe.Box
	got := make([]float64, len(s.recipe.Shares))
	d := dice{state: 7}
	for i := range n[0] {
		f := s.Face(box.L * (float64(i) + d.float()) / float64(n[0]))
		for j := range n[1] {
			for k := range n[2] {
				label := f.Label(box.W*(float64(j)+d.float())/float64(n[1]), box.H*(float64(k)+d.float())/float64(n[2]))
				got[label] += 1 / float64(n[0]*n[1]*n[2])
			}
		}
	}
	return got
}

func worst(got, want []float64) (most float64) {
	for i := range want {
		most = max(most, math.Abs(got[i]-want[i]))
	}
	return most
}

func TestEveryTechniqueKeepsEveryShareWithinHalfAPoint(t *testing.T) {
	for i, technique := range Techniques() {
		t.Run(string(technique), func(t *testing.T) {
			t.Parallel()
			s := mustPour(t, loaf(technique, int64(100+i)))
			if e := worst(volumes(s, [3]int{40, 70, 60}), s.recipe.Shares); e > 0.005 {
				t.Errorf("a share is off by %.2f points", 100*e)
			}
		})
	}
}

func TestAnyRecipeKeepsItsSharesWithinTheErrorOfCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRecipe(t)
		s, err := New(r)
		if err != nil {
			t.Fatal(err)
		}
		if !r.Technique.SameInEveryBar() {
			return
		}
		// A coarse count is off by chance now and then; a share that is really off stays off when it is counted finely.
		e := worst(volumes(s, [3]int{3, 30, 30}), s.recipe.Shares)
		if e > 0.01 {
			e = worst(volumes(s, [3]int{3, 200, 200}), s.recipe.Shares)
		}
		if e > 0.01 {
			t.Fatalf("%+v: a share is off by %.2f points", r, 100*e)
		}
	})
}

func anyRecipe(t *rapid.T) Recipe {
	n := rapid.IntRange(1, 6).Draw(t, "portions")
	shares, sum := make([]float64, n), 0.0
	for i := range shares {
		shares[i] = float64(rapid.IntRange(1, 10).Draw(t, "share"))
		sum += shares[i]
	}
	for i := range shares {
		shares[i] /= sum
	}
	return Recipe{
		Technique: rapid.SampledFrom(Techniques()).Draw(t, "technique"), Shares: shares,
		Thickness: rapid.Float64Range(0, 1).Draw(t, "thickness"), Seed: rapid.Int64().Draw(t, "seed"),
		Turns: rapid.Float64Range(0, 6).Draw(t, "turns"), HeightMM: rapid.Float64Range(0, 500).Draw(t, "height"),
		Passes: rapid.SampledFrom([]int{0, 0, 1, 3, 8}).Draw(t, "passes"),
		Box: Box{
			L: rapid.Float64Range(120, 400).Draw(t, "long"), W: rapid.Float64Range(50, 250).Draw(t, "wide"),
			H: rapid.Float64Range(25, 100).Draw(t, "high"),
		},
	}
}

func TestEveryBarCarriesTheSharesOfTheBatchWhereTheTechniqueSaysSo(t *testing.T) {
	var pic Picture
	for _, technique := range Techniques() {
		if !technique.SameInEveryBar() {
			continue
		}
		s := mustPour(t, loaf(technique, 5))
		for _, x := range []float64{0, 60, 145} {
			s.Face(x).Draft(&pic, 240, 180)
			if e := worst(pic.Measure(80, 62, 5).Shares, s.recipe.Shares); e > 0.01 {
				t.Errorf("%s at %g mm: a share is off by %.2f points", technique, x, 100*e)
			}
		}
	}
}

func TestAFaceShowsWhatThePlainTraceShows(t *testing.T) {
	for _, technique := range Techniques() {
		s := mustPour(t, loaf(technique, 11))
		f := s.Face(77)
		d := dice{state: 3}
		differ := 0
		const points = 1500
		for range points {
			y, z := d.between(0, 80), d.between(0, 62)
			if f.Label(y, z) != s.Label(77, y, z) {
				differ++
			}
		}
		// they differ only within the error of the baked waves, some hundredths of a mm, at borders
		if differ > points/50 {
			t.Errorf("%s: %d of %d points differ", technique, differ, points)
		}
	}
}

func TestAPortionWithNoShareNeverShows(t *testing.T) {
	for _, technique := range Techniques() {
		r := loaf(technique, 2)
		r.Shares = []float64{0, 0.5, 0, 0.5}
		if got := volumes(mustPour(t, r), [3]int{12, 30, 30}); got[0] != 0 || got[2] != 0 {
			t.Errorf("%s: shares drawn are %v", technique, got)
		}
	}
}

func TestOnePortionFillsTheMould(t *testing.T) {
	for _, technique := range Techniques() {
		r := loaf(technique, 2)
		r.Shares = []float64{1}
		if got := volumes(mustPour(t, r), [3]int{3, 10, 10}); math.Abs(got[0]-1) > 1e-9 {
			t.Errorf("%s: the share drawn is %v", technique, got)
		}
	}
}

func TestTheSameSeedGivesTheSamePicture(t *testing.T) {
	for _, technique := range Techniques() {
		var one, two, other Picture
		for _, p := range []*Picture{&one, &two} {
			if err := mustPour(t, loaf(technique, 9)).Face(60).Refine(context.Background(), p, 60, 40); err != nil {
				t.Fatal(err)
			}
		}
		if !slices.Equal(one.Pixels, two.Pixels) {
			t.Errorf("%s: two pours by one recipe differ", technique)
		}
		if err := mustPour(t, loaf(technique, 10)).Face(60).Refine(context.Background(), &other, 60, 40); err != nil {
			t.Fatal(err)
		}
		if slices.Equal(one.Pixels, other.Pixels) {
			t.Errorf("%s: another seed gives the same picture", technique)
		}
	}
}

func TestNeighbouringBarsDiffer(t *testing.T) {
	for _, technique := range Techniques() {
		s := mustPour(t, loaf(technique, 9))
		var one, two Picture
		s.Face(75).Draft(&one, 60, 40)
		s.Face(100).Draft(&two, 60, 40)
		if slices.Equal(one.Pixels, two.Pixels) {
			t.Errorf("%s: bars at 75 and 100 mm are alike", technique)
		}
	}
}

func TestAPartOfThePourIsThePourSoFar(t *testing.T) {
	for _, technique := range Techniques() {
		s := mustPour(t, loaf(technique, 4))
		steps := s.Steps()
		for n := range len(steps) + 1 {
			part := s.Upto(n)
			if !slices.Equal(part.Steps(), steps[:n]) {
				t.Fatalf("%s: the first %d steps are not those of the whole", technique, n)
			}
			if n > 0 && part.LevelMM() != steps[n-1].LevelMM {
				t.Errorf("%s: after step %d the level is %g, told as %g", technique, n, part.LevelMM(), steps[n-1].LevelMM)
			}
			if got := part.Face(50).Label(40, part.LevelMM()+0.5); n < len(steps) && part.LevelMM() < 61 && got != Empty {
				t.Errorf("%s: after step %d portion %d hangs above the batter", technique, n, got)
			}
		}
		if whole := s.Upto(1 << 20); whole.LevelMM() != 62 || len(whole.ops) != len(s.ops) {
			t.Errorf("%s: the whole pour ends at %g mm after %d steps", technique, whole.LevelMM(), len(whole.ops))
		}
	}
}

func TestPourSoFarKeepsWhatWasPoured(t *testing.T) {
	s := mustPour(t, loaf(Drop, 4))
	for n := 1; n <= len(s.ops); n += 3 {
		part := s.Upto(n)
		want := make([]float64, 5)
		for _, o := range part.ops {
			if o.slab != nil {
				want[o.name.Portion] += (o.slab.top - o.slab.bottom) / part.level
			}
		}
		var pic Picture
		part.Face(99).Draft(&pic, 240, 186)
		if e := worst(pic.Measure(80, 62, 5).Shares, want); e > 0.015 {
			t.Errorf("after step %d a portion is off by %.2f points", n, 100*e)
		}
	}
}

func TestImpossibleRecipesAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Recipe){
		"unknown technique":   func(r *Recipe) { r.Technique = "marble" },
		"no portions":         func(r *Recipe) { r.Shares = nil },
		"shares sum to 0.9":   func(r *Recipe) { r.Shares = []float64{0.5, 0.4} },
		"a negative share":    func(r *Recipe) { r.Shares = []float64{1.2, -0.2} },
		"a share of NaN":      func(r *Recipe) { r.Shares = []float64{math.NaN(), 1} },
		"too many portions":   func(r *Recipe) { r.Shares = slices.Repeat([]float64{1. / 40}, 40) },
		"thickness of 2":      func(r *Recipe) { r.Thickness = 2 },
		"thickness of NaN":    func(r *Recipe) { r.Thickness = math.NaN() },
		"negative passes":     func(r *Recipe) { r.Passes = -1 },
		"endless turns":       func(r *Recipe) { r.Turns = math.Inf(1) },
		"a height of NaN":     func(r *Recipe) { r.HeightMM = math.NaN() },
		"a mould without end": func(r *Recipe) { r.Box.L = math.Inf(1) },
		"a flat mould":        func(r *Recipe) { r.Box.H = 0 },
	} {
		r := loaf(Drop, 1)
		spoil(&r)
		if _, err := New(r); !errors.Is(err, ErrRecipe) {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}
