package swirl

import (
	"testing"

	"pourbench/pour/script"
)

// unlike is how much two faces differ: the part of the places that show another portion, against that of two faces which have nothing in
// common but their shares: 0 is the same face, about 1 is chance.
func unlike(a, b *Picture, shares []float64) float64 {
	differ, chance := 0.0, 1.0
	for i := range a.Pixels {
		if a.Pixels[i].Portion[0] != b.Pixels[i].Portion[0] {
			differ++
		}
	}
	for _, p := range shares {
		chance -= p * p
	}
	return differ / float64(len(a.Pixels)) / chance
}

const facesOfASeed = 4

// seedFaces drafts neighbouring bars of some seeds.
func seedFaces(t *testing.T, technique script.Technique, seeds int, shares ...float64) [][facesOfASeed]Picture {
	out := make([][facesOfASeed]Picture, seeds)
	for seed := range out {
		s := mustPour(t, scripted(technique, int64(seed), shares...))
		for k := range out[seed] {
			s.Face(62+25*float64(k)).Draft(&out[seed][k], 80, 62)
		}
	}
	return out
}

// likeness is how much the faces of some seeds differ: each from each, and every bar from the next; on average, and the least.
type likeness struct{ seeds, leastSeeds, next, leastNext float64 }

func likenessOf(faces [][facesOfASeed]Picture, shares []float64) likeness {
	l := likeness{leastSeeds: 9, leastNext: 9}
	pairs, bars := 0.0, 0.0
	for a := range faces {
		for b := range a {
			d := unlike(&faces[a][1], &faces[b][1], shares)
			l.seeds, l.leastSeeds, pairs = l.seeds+d, min(l.leastSeeds, d), pairs+1
		}
		for k := 1; k < facesOfASeed; k++ {
			d := unlike(&faces[a][k-1], &faces[a][k], shares)
			l.next, l.leastNext, bars = l.next+d, min(l.leastNext, d), bars+1
		}
	}
	l.seeds, l.next = l.seeds/pairs, l.next/bars
	return l
}

// A seed is another loaf; the next bar is another cut of this one. Layers lie in one order whatever the seed: only their borders can differ.
func TestOtherSeedsGiveOtherFacesAndNeighboursAreAlikeButNotStamped(t *testing.T) {
	seeds := 6
	if testing.Short() {
		seeds = 3
	}
	shares := []float64{0.38, 0.16, 0.16, 0.15, 0.15}
	for _, technique := range script.Techniques() {
		l := likenessOf(seedFaces(t, technique, seeds, shares...), shares)
		t.Logf("%-14s other seeds %.2f (least %.2f), neighbours %.2f (least %.2f)", technique, l.seeds, l.leastSeeds, l.next, l.leastNext)
		want := likeness{seeds: 0.3, leastSeeds: 0.15, next: 0.1, leastNext: 0.05}
		switch technique {
		case script.Layers:
			want = likeness{seeds: 0.1, leastSeeds: 0.06, next: 0.05, leastNext: 0.03}
		case script.Hanger, script.HangerLoops, script.HangerSpiral, script.Combed, script.Spooned:
			want = likeness{seeds: 0.5, leastSeeds: 0.4, next: 0.2, leastNext: 0.15}
		}
		if l.seeds < want.seeds || l.leastSeeds < want.leastSeeds {
			t.Errorf("%s: other seeds differ by %.2f, at least %.2f; want %.2f and %.2f", technique, l.seeds, l.leastSeeds, want.seeds, want.leastSeeds)
		}
		if l.next < want.next || l.leastNext < want.leastNext {
			t.Errorf("%s: neighbours are stamped: they differ by %.2f, at least %.2f; want %.2f and %.2f", technique, l.next, l.leastNext, want.next, want.leastNext)
		}
		if l.next > l.seeds {
			t.Errorf("%s: neighbours differ by %.2f, other seeds by %.2f only", technique, l.next, l.seeds)
		}
	}
}

func TestHowUnlikeTwoFacesAre(t *testing.T) {
	a, b := Picture{Pixels: make([]Pixel, 8)}, Picture{Pixels: make([]Pixel, 8)}
	if got := unlike(&a, &b, []float64{0.5, 0.5}); got != 0 {
		t.Errorf("a face is unlike itself by %g", got)
	}
	for _, i := range []int{1, 4, 6, 7} { // half of the places: chance with two portions of a half each
		b.Pixels[i].Portion[0] = 1
	}
	if got := unlike(&a, &b, []float64{0.5, 0.5}); got != 1 {
		t.Errorf("faces by chance are unlike by %g", got)
	}
}
