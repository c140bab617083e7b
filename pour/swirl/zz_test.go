package swirl

import (
	"context"
	"testing"
)

func TestZZ(t *testing.T) {
	for _, tech := range Techniques() {
		for _, b := range []Box{{10, 10, 10}, {2000, 400, 10}, {100, 2000, 60}, {60, 40, 500}} {
			for _, sh := range [][]float64{{1}, {0.999, 0.001}, {0.001, 0.999}, {.05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05, .05}} {
				for _, pass := range []int{0, 1, 600} {
					s, err := New(Recipe{Technique: tech, Shares: sh, Box: b, Passes: pass, Thickness: 1, HeightMM: 600, Turns: 8})
					if err != nil {
						t.Fatal(err)
					}
					var p Picture
					if err := s.Face(5).Refine(context.Background(), &p, 20, 10); err != nil {
						t.Fatal(err)
					}
					s.Top(5).Draft(&p, 5, 5)
				}
			}
		}
	}
}
