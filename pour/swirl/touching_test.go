package swirl

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"pourbench/pour/script"
)

// fine measures contact as [Swirl.Touching] does, but by counting all borders of many finely drawn faces.
func fine(s *Swirl, faces int) [][]float64 {
	n := len(s.recipe.Script.Brief.Shares)
	of, sum := make([][]float64, n), 0.0
	for a := range of {
		of[a] = make([]float64, n)
	}
	var pic Picture
	box := s.recipe.Box
	for k := range faces {
		s.Face(box.L*(float64(k)+0.5)/float64(faces)).Draft(&pic, int(3*box.W), int(3*box.H))
		m := pic.Measure(box.W, box.H, n)
		for a := range of {
			for b := range of[a] {
				of[a][b] += m.Borders[a][b]
				if a < b {
					sum += m.Borders[a][b]
				}
			}
		}
	}
	for a := range of {
		for b := range of[a] {
			of[a][b] /= sum
		}
	}
	return of
}

func TestTouchingSeesWhatAFineCountSees(t *testing.T) {
	if testing.Short() {
		t.Skip("counts a million points")
	}
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 3))
		quick, slow := s.Touching(), fine(s, 10)
		sum := 0.0
		for a := range quick {
			for b := range a {
				sum += quick[a][b]
				if quick[a][b] != quick[b][a] || math.Abs(quick[a][b]-slow[a][b]) > 0.05 {
					t.Errorf("%s: %d and %d touch by %.3f of all boundary, counted finely %.3f", technique, a, b, quick[a][b], slow[a][b])
				}
			}
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s: the contacts sum to %g", technique, sum)
		}
	}
}

// By hand: a level slab on another touches it alone, whatever waves lie between.
func TestThreeLayersTouchTwice(t *testing.T) {
	got := mustPour(t, scripted(script.Layers, 1, 0.4, 0.3, 0.3)).Touching()
	if math.Abs(got[0][1]-0.5) > 0.03 || math.Abs(got[1][2]-0.5) > 0.03 || got[0][2] > 0.005 {
		t.Errorf("the layers touch by %.3f", got)
	}
}

func TestOneJugTouchesNothing(t *testing.T) {
	if got := mustPour(t, scripted(script.Drop, 1, 1)).Touching(); len(got) != 1 || got[0][0] != 0 {
		t.Errorf("it touches by %v", got)
	}
}

// ranks gives equal values the mean of their places.
func ranks(v []float64) []float64 {
	order := make([]int, len(v))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(v[a], v[b]) })
	out := make([]float64, len(v))
	for i := 0; i < len(order); {
		k := i
		for k < len(order) && v[order[k]] == v[order[i]] {
			k++
		}
		for _, at := range order[i:k] {
			out[at] = float64(i+k-1) / 2
		}
		i = k
	}
	return out
}

// spearman is the rank correlation of two lists (Spearman 1904): the correlation of their ranks, with mean ranks for ties.
func spearman(x, y []float64) float64 {
	a, b := ranks(x), ranks(y)
	mean := float64(len(x)-1) / 2
	var ab, aa, bb float64
	for i := range a {
		ab += (a[i] - mean) * (b[i] - mean)
		aa += (a[i] - mean) * (a[i] - mean)
		bb += (b[i] - mean) * (b[i] - mean)
	}
	return ab / math.Sqrt(aa*bb)
}

// The order search lives on the script's estimate: it must rank the pairs about as the drawn faces do. The figure is reported, and held
// above what no longer helps.
func TestTheScriptsEstimateRanksPairsAsTheFacesDo(t *testing.T) {
	if testing.Short() {
		t.Skip("draws many faces")
	}
	for _, technique := range script.Techniques() {
		sum, n := 0.0, 0.0
		for seed := range int64(6) {
			b := loaf(technique, seed).Script.Brief
			b.Order = [][]int{{0, 1, 2, 3, 4}, {0, 3, 1, 4, 2}, {0, 4, 3, 2, 1}, {0, 2, 4, 1, 3}, {0, 1, 3, 2, 4}, {0, 4, 2, 3, 1}}[seed]
			acts, err := script.New(b)
			if err != nil {
				t.Fatal(err)
			}
			quick, drawn := acts.Contact(), mustPour(t, Recipe{Script: acts, Thickness: 0.3, Box: Box{L: 250, W: 80, H: 62}}).Touching()
			var x, y []float64
			for a := range quick {
				for b := range a {
					x, y = append(x, quick[a][b]), append(y, drawn[a][b])
				}
			}
			sum, n = sum+spearman(x, y), n+1
		}
		t.Logf("%s: rank agreement %.2f", technique, sum/n)
		if sum/n < 0.5 {
			t.Errorf("%s: the estimate ranks pairs by %.2f like the faces, want 0.5", technique, sum/n)
		}
	}
}

func BenchmarkTouching(b *testing.B) {
	for _, technique := range script.Techniques() {
		s := mustPour(b, loaf(technique, 1))
		b.Run(string(technique), func(b *testing.B) {
			for b.Loop() {
				_ = s.Touching()
			}
		})
	}
}
