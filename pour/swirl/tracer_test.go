package swirl

import (
	"slices"
	"testing"

	"pourbench/pour/script"
)

// Where no wave is baked, the sets of steps only leave out what cannot touch a point: the quick trace is the plain one.
func TestTheQuickTraceLeavesNothingOut(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 12))
		var tr tracer
		d, differ := newDice(8), 0
		for _, x := range []float64{3, 125, 244} {
			tr.prepare(s, x, false) // over what the cross-section before left in it
			for range 60 {
				y, z := d.Between(0, 80), d.Between(0, 62)
				o := tr.trace(y, z)
				if got, want := int(tr.label(&o)), s.Label(x, y, z); got != want {
					differ++
				}
			}
		}
		// what a comb drew along the loaf settled before it; the quick trace undoes that at the cross-section it draws
		if differ > 0 && (technique != script.Combed || differ > 10) {
			t.Errorf("%s: the quick trace finds others than the plain one at %d of 180 points", technique, differ)
		}
	}
}

// A drag can touch what lies within its radius of its way: no cell that holds such a point may be said to be missed.
func TestNoCellWithinReachOfAStepIsMissed(t *testing.T) {
	d := newDice(8)
	s := &stroke{radius: 7, grip: 1, width: 80, level: 60}
	missed := 0
	for range 200 {
		from := vec2{d.Between(5, 75), d.Between(5, 55)}
		g := newDrag(from, vec2{from.y + d.Between(-4, 4), from.z + d.Between(-4, 4)}, s)
		for range 40 {
			y, z := d.Between(0, 80), d.Between(0, 60)
			if a, b := g.undo(y, z); (a != y || b != z) && g.misses(int(y/3), int(z/3), 7) {
				t.Fatalf("a step from %v moves (%.2f, %.2f), but its cell is missed", from, y, z)
			}
			if g.misses(int(y/3), int(z/3), 7) {
				missed++
			}
		}
	}
	if missed < 200*40/2 {
		t.Errorf("%d of 8000 cells are missed: the mesh saves little", missed)
	}
}

func TestCellsStayInTheMesh(t *testing.T) {
	var tr tracer
	for _, c := range []struct {
		from, to    float64
		first, last int
	}{{-20, -10, 0, 0}, {0, 2.9, 0, 0}, {3, 8.9, 1, 2}, {20, 400, 6, 9}, {500, 600, 9, 9}} {
		if first, last := tr.cells(c.from, c.to, 10); first != c.first || last != c.last {
			t.Errorf("%g to %g mm are cells %d to %d, want %d to %d", c.from, c.to, first, last, c.first, c.last)
		}
	}
}

// The last step before one, of those a cell knows, over the border of a word of 64 steps as well.
func TestTheLastStepThatCanTouchAPoint(t *testing.T) {
	tr := tracer{words: 2, ny: 1, nz: 1, sets: []uint64{1 | 1<<5 | 1<<63, 1 | 1<<3}}
	for _, c := range [][2]int{{128, 67}, {67, 64}, {64, 63}, {63, 5}, {6, 5}, {5, 0}, {1, 0}, {0, -1}} {
		if got := tr.below(0, 0, c[0]); got != c[1] {
			t.Errorf("before step %d it is %d, want %d", c[0], got, c[1])
		}
	}
}

// Slabs poured with nothing moved in between share a group; a place between two traced ones is found in the slab of the group it lies in.
func TestSlabsWithoutAMoveBetweenAreAGroup(t *testing.T) {
	s := mustPour(t, poured(script.Layers, 3,
		script.Act{Kind: script.Pour, Jug: 0, Share: 0.25}, script.Act{Kind: script.Pour, Jug: 1, Share: 0.25},
		script.Act{Kind: script.Level, Jug: script.Whole},
		script.Act{Kind: script.Pour, Jug: 2, Share: 0.25}, script.Act{Kind: script.Pour, Jug: 0, Share: 0.25}))
	s.ops = slices.DeleteFunc(s.ops, func(o op) bool { return o.border != nil }) // of even layers
	var tr tracer
	tr.prepare(s, 9, true)
	for i, want := range []int32{0, 0, 1, 1} {
		if tr.group[i] != want || tr.lowest(int32(i)) != 2*want {
			t.Errorf("slab %d is in group %d, which begins with slab %d; want %d", i, tr.group[i], tr.lowest(int32(i)), want)
		}
	}
	for _, c := range []struct {
		slab int32
		z    float64
		want uint8
	}{{0, 5, 0}, {0, 20, 1}, {1, 5, 0}, {1, 29, 1}, {1, 40, 1}, {2, 40, 2}, {2, 50, 0}, {3, 31, 2}, {3, 10, 2}} {
		if got := tr.labelNear(&origin{vec3{9, 9, c.z}, c.slab}); got != c.want {
			t.Errorf("near slab %d at %g mm lies %d, want %d", c.slab, c.z, got, c.want)
		}
	}
	// back to when the third slab was poured: a place below it is found there too, before the tapping is undone
	for z, slab := range map[float64]int32{50: 3, 35: 2, 10: 2} {
		if o := tr.traceTo(40, z, 3); o.p != (vec3{9, 40, z}) || o.slab != slab {
			t.Errorf("(40, %g) was at %v in slab %d, want it unmoved in slab %d", z, o.p, o.slab, slab)
		}
	}
}

// A heap told by hand over one mesh of 10 by 10 mm: the first act slopes from nothing at one end to 8 mm at the other, the second fills 10 mm.
func TestAHeapIsReadBetweenTheKnotsOfItsMesh(t *testing.T) {
	h := &heap{
		box: Box{L: 10, W: 10, H: 10}, nx: 2, ny: 2, perX: 0.1, perY: 0.1,
		high: [][]float32{{0, 0, 8, 8}, {10, 10, 10, 10}}, portion: []int{3, 1}, act: []int{2, 5}, done: 2,
	}
	for _, c := range []struct {
		x, y, z float64
		acts    int
		want    int
	}{
		{5, 5, 3.9, 9, 3},
		{5, 5, 4.1, 9, 1},
		{10, 0, 7.9, 9, 3},
		{10, 10, 8.1, 9, 1},
		{0, 3, 0.1, 9, 1},
		{2.5, 9, 1.9, 9, 3},
		{2.5, 9, 2.1, 9, 1},
		{5, 5, 3.9, 2, Empty},
		{5, 5, 3.9, 3, 3},
		{5, 5, 4.1, 3, Empty},
		{5, 5, 4.1, 5, Empty},
		{5, 5, 4.1, 6, 1},
	} {
		if got := h.upto(c.acts).label(c.x, c.y, c.z); got != c.want {
			t.Errorf("after %d acts at (%g, %g, %g) lies %d, want %d", c.acts, c.x, c.y, c.z, got, c.want)
		}
	}
	h.high[0] = []float32{0, 8, 0, 8} // the slope the other way, across
	for _, x := range []float64{1, 9} {
		if h.label(x, 2.5, 1.9) != 3 || h.label(x, 2.5, 2.1) != 1 {
			t.Errorf("across the mould at %g mm the heap slopes otherwise than it stands", x)
		}
	}
}

func TestBlurringKeepsWhatStandsOnEveryLine(t *testing.T) {
	z := []float64{0, 8, 0, 0, 3, 0, 0, 4, 1, 1, 1, 1}
	blur(z, 4, 3, 1, 4)
	for i, want := range []float64{4, 4, 2, 0, 1.5, 0.75, 1, 2, 1, 1, 1, 1} { // quarters, a half and quarters; a place at an end is half as wide
		if z[i] != want {
			t.Errorf("place %d stands at %g, want %g", i, z[i], want)
		}
	}
	for line, want := range []float64{8, 3.5, 3} { // ends count half
		v := z[4*line : 4*line+4]
		if sum := v[0]/2 + v[1] + v[2] + v[3]/2; !near(sum, want, 1e-12) {
			t.Errorf("line %d holds %g, want %g", line, sum, want)
		}
	}
	one := []float64{5}
	if blur(one, 1, 1, 1, 1); one[0] != 5 {
		t.Errorf("a line of one place stands at %g, want 5", one[0])
	}
}
