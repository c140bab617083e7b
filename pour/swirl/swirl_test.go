package swirl

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

func loaf(t script.Technique, seed int64) Recipe {
	return scripted(t, seed, 0.38, 0.16, 0.16, 0.15, 0.15)
}

// scripted is a loaf of any shares.
func scripted(t script.Technique, seed int64, shares ...float64) Recipe {
	s, err := script.New(script.Brief{Technique: t, Shares: shares, First: script.Whole, Last: script.Whole, Seed: seed})
	if err != nil {
		panic(err)
	}
	return Recipe{Script: s, Thickness: 0.3, Box: Box{L: 250, W: 80, H: 62}}
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
	got := make([]float64, len(s.recipe.Script.Brief.Shares))
	d := newDice(int64(7))
	for i := range n[0] {
		f := s.Face(box.L * (float64(i) + d.Float()) / float64(n[0]))
		for j := range n[1] {
			for k := range n[2] {
				label := f.Label(box.W*(float64(j)+d.Float())/float64(n[1]), box.H*(float64(k)+d.Float())/float64(n[2]))
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
	for i, technique := range script.Techniques() {
		t.Run(string(technique), func(t *testing.T) {
			t.Parallel()
			s := mustPour(t, loaf(technique, int64(100+i)))
			if e := worst(volumes(s, [3]int{70, 80, 30}), s.recipe.Script.Brief.Shares); e > 0.005 {
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
		if !r.Script.Brief.Technique.SameInEveryBar() {
			return
		}
		// A coarse count is off by chance now and then; a share that is really off stays off when it is counted finely.
		e := worst(volumes(s, [3]int{3, 30, 30}), s.recipe.Script.Brief.Shares)
		if e > 0.01 {
			e = worst(volumes(s, [3]int{3, 200, 200}), s.recipe.Script.Brief.Shares)
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
	acts, err := script.New(script.Brief{
		Technique: rapid.SampledFrom(script.Techniques()).Draw(t, "technique"), Shares: shares,
		First: rapid.IntRange(script.Whole, n-1).Draw(t, "first"), Last: rapid.IntRange(script.Whole, n-1).Draw(t, "last"),
		PotBetween: rapid.Bool().Draw(t, "pot between"), Seed: rapid.Int64().Draw(t, "seed"),
		Turns: rapid.Float64Range(0, 6).Draw(t, "turns"), HeightMM: rapid.Float64Range(0, 500).Draw(t, "height"),
		Passes: rapid.SampledFrom([]int{0, 0, 1, 3, 8}).Draw(t, "passes"),
	})
	if err != nil {
		t.Fatal(err)
	}
	return Recipe{
		Script: acts, Thickness: rapid.Float64Range(0, 1).Draw(t, "thickness"),
		Box: Box{
			L: rapid.Float64Range(120, 400).Draw(t, "long"), W: rapid.Float64Range(50, 250).Draw(t, "wide"),
			H: rapid.Float64Range(25, 100).Draw(t, "high"),
		},
	}
}

func TestEveryBarCarriesTheSharesOfTheBatchWhereTheTechniqueSaysSo(t *testing.T) {
	var pic Picture
	for _, technique := range script.Techniques() {
		if !technique.SameInEveryBar() {
			continue
		}
		s := mustPour(t, loaf(technique, 5))
		for _, x := range []float64{0, 60, 145} {
			s.Face(x).Draft(&pic, 240, 180)
			if e := worst(pic.Measure(80, 62, 5).Shares, s.recipe.Script.Brief.Shares); e > 0.01 {
				t.Errorf("%s at %g mm: a share is off by %.2f points", technique, x, 100*e)
			}
		}
	}
}

func TestAFaceShowsWhatThePlainTraceShows(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 11))
		d := newDice(int64(3))
		differ := 0
		const points = 1500
		for _, x := range [...]float64{37, 77, 110} { // three: behind a comb the batter turns here and there
			f := s.Face(x)
			for range points / 3 {
				y, z := d.Between(0, 80), d.Between(0, 62)
				if f.Label(y, z) != s.Label(x, y, z) {
					differ++
				}
			}
		}
		// they differ only within the error of the baked waves, some hundredths of a mm, at borders; a comb has many of them, and draws
		// out the error of the wave before it
		if differ > points/20 {
			t.Errorf("%s: %d of %d points differ", technique, differ, points)
		}
	}
}

func TestAPortionWithNoShareNeverShows(t *testing.T) {
	for _, technique := range script.Techniques() {
		if got := volumes(mustPour(t, scripted(technique, 2, 0, 0.5, 0, 0.5)), [3]int{12, 30, 30}); got[0] != 0 || got[2] != 0 {
			t.Errorf("%s: shares drawn are %v", technique, got)
		}
	}
}

func TestOnePortionFillsTheMould(t *testing.T) {
	for _, technique := range script.Techniques() {
		if got := volumes(mustPour(t, scripted(technique, 2, 1)), [3]int{3, 10, 10}); math.Abs(got[0]-1) > 1e-9 {
			t.Errorf("%s: the share drawn is %v", technique, got)
		}
	}
}

func TestTheSameSeedGivesTheSamePicture(t *testing.T) {
	for _, technique := range script.Techniques() {
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
	for _, technique := range script.Techniques() {
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
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 4))
		acts := s.recipe.Script.Acts
		if s.Acts() != len(acts) {
			t.Fatalf("%s: %d acts are drawn of %d", technique, s.Acts(), len(acts))
		}
		poured, level := 0.0, 0.0
		for n := range len(acts) + 1 {
			part := s.Upto(n)
			if part.Acts() != n {
				t.Fatalf("%s: %d acts are done after %d", technique, part.Acts(), n)
			}
			if n > 0 && acts[n-1].Kind != script.IntoPot {
				poured += acts[n-1].Share
			}
			shown := part.shown()
			if math.Abs(shown-poured) > 0.01 && !(technique == script.Spooned && shown < poured) {
				t.Errorf("%s: after act %d (%s) %.3f of the batter is in the mould, %.3f was poured", technique, n, acts[max(0, n-1)].Kind, shown, poured)
			}
			if part.LevelMM() < level {
				t.Errorf("%s: act %d takes the level down from %g to %g mm", technique, n, level, part.LevelMM())
			}
			level = part.LevelMM()
		}
		if whole := s.Upto(1 << 20); whole.LevelMM() != 62 || len(whole.ops) != len(s.ops) {
			t.Errorf("%s: the whole pour ends at %g mm after %d moves", technique, whole.LevelMM(), len(whole.ops))
		}
	}
}

// shown is the part of the mould that a pour has filled.
func (s *Swirl) shown() float64 {
	var pic Picture
	full, n := 0, 0
	for _, x := range []float64{20, 90, 200} {
		s.Face(x).Draft(&pic, 160, 124)
		for i := range pic.Pixels {
			n++
			if pic.Pixels[i].Part[0] > 0 {
				full++
			}
		}
	}
	return float64(full) / float64(n)
}

func TestPourSoFarKeepsWhatWasPoured(t *testing.T) {
	s := mustPour(t, loaf(script.Drop, 4))
	want := make([]float64, 5)
	for n, a := range s.recipe.Script.Acts {
		if a.Kind != script.Pour {
			continue
		}
		want[a.Jug] += a.Share
		part := s.Upto(n + 1)
		got := make([]float64, 5)
		for i, v := range want {
			got[i] = v * 62 / part.level
		}
		var pic Picture
		part.Face(99).Draft(&pic, 240, 186)
		if e := worst(pic.Measure(80, 62, 5).Shares, got); e > 0.015 {
			t.Errorf("after act %d a portion is off by %.2f points", n+1, 100*e)
		}
	}
}

func TestImpossibleRecipesAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Recipe){
		"no acts":             func(r *Recipe) { r.Script = script.Script{} },
		"thickness of 2":      func(r *Recipe) { r.Thickness = 2 },
		"thickness of NaN":    func(r *Recipe) { r.Thickness = math.NaN() },
		"a mould without end": func(r *Recipe) { r.Box.L = math.Inf(1) },
		"a flat mould":        func(r *Recipe) { r.Box.H = 0 },
	} {
		r := loaf(script.Drop, 1)
		spoil(&r)
		if _, err := New(r); !errors.Is(err, ErrRecipe) {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}
