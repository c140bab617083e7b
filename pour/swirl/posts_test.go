package swirl

import (
	"testing"

	"pourbench/pour/script"
)

// late is how wide a cross-section shows, 3 mm under the surface, what was poured in the upper third of the mould, mm.
func late(s *Swirl, x float64) (wide float64) {
	f := s.Face(x)
	for y := 0.25; y < f.box.W; y += 0.5 {
		if f.tracer.trace(y, f.box.H-SkimMM).p.z > f.box.H*2/3 {
			wide += 0.5
		}
	}
	return wide
}

// From above the rings of a column are ovals round its posts: wide there, and drawn in between them several times along the loaf.
func TestAColumnIsDrawnInBetweenItsPosts(t *testing.T) {
	for seed := range int64(3) {
		s := mustPour(t, loaf(script.Column, seed))
		least, most, turns, up := 99.0, 0.0, 0, true
		before := late(s, 10)
		for x := 14.0; x <= 240; x += 4 {
			wide := late(s, x)
			least, most = min(least, wide), max(most, wide)
			if d := wide - before; d > 1 && !up || d < -1 && up {
				turns, up = turns+1, !up
			}
			before = wide
		}
		if most < 1.25*least || turns < 4 { // more would make a bar at a post another than its neighbours
			t.Errorf("seed %d: the rings are %.1f to %.1f mm wide, and turn %d times", seed, least, most, turns)
		}
	}
}

// Under every so many pours a place turns, and it keeps inside the mould without being held by a wall.
func TestPlacesTurnUnderAColumn(t *testing.T) {
	s := mustPour(t, loaf(script.Column, 2))
	pours, turns := 0, 0
	for _, a := range s.recipe.Script.Acts {
		if len(a.Lines) > 0 {
			pours++
		}
	}
	for _, o := range s.ops {
		if o.whirl != nil {
			turns++
		}
	}
	if least, most := pours/postTurns-2, pours/postTurns; turns < least || turns > most || least < 1 { // the first pours are too shallow
		t.Errorf("under %d pours %d places turn, want %d to %d", pours, turns, least, most)
	}
}

// What is poured first runs out over the floor with steep flanks, what is poured last holds together with soft ones: in thin batter, in the mean of
// all seeds, to more than twice the width.
func TestTheFirstPoursOfAColumnRunOutOverTheFloor(t *testing.T) {
	first, last := 0.0, 0.0
	for seed := range int64(8) {
		var rows []row
		r := loaf(script.Column, seed)
		r.Thickness = 0
		for _, o := range mustPour(t, r).ops {
			if o.spread != nil {
				rows = append(rows, o.spread.rows[0])
			}
		}
		a, z := rows[0], rows[len(rows)-1]
		first, last = first+a.half, last+z.half
		if a.blunt < 0.4 || z.blunt != 0 {
			t.Errorf("seed %d: the first pour's flanks are %.2f steep, the last's %.2f", seed, a.blunt, z.blunt)
		}
	}
	if first < 2*last || first < 8*0.35*80 {
		t.Errorf("half of the first pours is %.1f mm, of the last %.1f mm", first/8, last/8)
	}
}
