package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

// moves returns the moves of one pour by every technique.
func moves(t testing.TB, seed int64) (list []op) {
	for _, technique := range script.Techniques() {
		for _, o := range mustPour(t, loaf(technique, seed)).ops {
			if o.slab == nil {
				list = append(list, o)
			}
		}
	}
	return list
}

// topMM is how high the batter stands while the move is made.
func (o op) topMM() float64 {
	switch {
	case o.stroke != nil:
		return o.stroke.level
	case o.wave != nil:
		return o.wave.level
	case o.spread != nil && o.spread.pile != nil:
		return o.spread.pile.of.low[o.spread.pile.pour+1]
	case o.spread != nil:
		return o.spread.top
	case o.plume != nil:
		return o.plume.level
	case o.border != nil:
		return o.border.at + o.border.up
	case o.gyre != nil:
		return o.gyre.height
	case o.whirl != nil:
		return o.whirl.centre.z + o.whirl.half.z + o.whirl.room.z
	case o.scrape != nil:
		return o.scrape.high
	case o.wakes != nil:
		return o.wakes.height
	}
	return o.comb.level
}

func (o op) kind() string {
	switch {
	case o.stroke != nil:
		return "stroke"
	case o.wave != nil:
		return "wave"
	case o.spread != nil:
		return "spread"
	case o.border != nil:
		return "border"
	case o.scrape != nil:
		return "scrape"
	case o.wakes != nil:
		return "wakes"
	case o.whirl != nil:
		return "whirl"
	case o.gyre != nil:
		return "gyre"
	case o.plume != nil:
		return "plume"
	}
	return "comb"
}

// Undone, a move brings every point back within half a millimetre, also where a wire stretches most.
func TestUndoingAMoveBringsPointsBackWithinHalfAMillimetre(t *testing.T) {
	const points = 100
	for seed := range int64(3) {
		for i, o := range moves(t, seed) {
			d := newDice(int64(i))
			for range points {
				p := vec3{d.Between(0, 250), d.Between(0, 80), d.Between(0, o.topMM())}
				back := o.backwards(o.forwards(p))
				if away := back.away(p); away > 0.5 {
					t.Errorf("seed %d move %d (%s): %v came back as %v, %.2f mm off", seed, i, o.kind(), p, back, away)
				}
			}
		}
	}
}

// Differences through a whole stroke blow up where it stretches much, so volume is judged step by step.
func TestUndoingAStepOfAStrokeKeepsArea(t *testing.T) {
	const h = 0.002 // mm, for the differences
	strokes := int64(0)
	for i, o := range moves(t, 1) {
		if o.stroke == nil {
			continue
		}
		d := newDice(strokes)
		strokes++
		c := o.stroke.drift(99)
		sum, points := 0.0, 0.0
		for k := range len(o.stroke.path) - 1 {
			g := o.stroke.step(k, o.stroke.at(k, c), o.stroke.at(k+1, c), c)
			for range 12 {
				y := clamp(g.cy+d.Between(-1, 1)*o.stroke.radius, 0.1, 79.9)
				z := clamp(g.cz+d.Between(-1, 1)*o.stroke.radius, 0.1, o.topMM()-0.1)
				a, b := g.undo(y+h, z)
				c, e := g.undo(y-h, z)
				u, v := g.undo(y, z+h)
				w, x := g.undo(y, z-h)
				det := ((a-c)*(v-x)-(b-e)*(u-w))/(4*h*h) - 1
				sum, points = sum+det*det, points+1
				if math.Abs(det) > 0.11 { // the worst of some ten thousand points, where a fade at a wall is steepest; the mean is what shares hang on
					t.Errorf("move %d step %d (%s): the area at (%.1f, %.1f) changes by %.3f", i, k, o.kind(), y, z, det)
				}
			}
		}
		if rms := math.Sqrt(sum / points); rms > 0.01 {
			t.Errorf("move %d (%s): the area changes by %.4f rms", i, o.kind(), rms)
		}
	}
}

func TestWallsStayWallsAndTheInsideStaysInside(t *testing.T) {
	for i, o := range moves(t, 6) {
		d := newDice(int64(i))
		for range 60 {
			x, y, z := d.Between(0, 250), d.Between(0, 80), d.Between(0, o.topMM())
			for _, p := range []vec3{{x, 0, z}, {x, 80, z}, {x, y, 0}, {x, y, o.topMM()}} {
				q := o.backwards(p)
				if o.spread != nil && p.z > 0 {
					q.z = p.z // what was poured stood on the top as a heap
				}
				if p.y == 0 && math.Abs(q.y) > 1e-6 || p.y == 80 && math.Abs(q.y-80) > 1e-6 ||
					p.z == 0 && math.Abs(q.z) > 1e-6 || p.z == o.topMM() && math.Abs(q.z-o.topMM()) > 1e-6 {
					t.Fatalf("move %d (%s): the wall point %v came from %v", i, o.kind(), p, q)
				}
			}
			q := o.backwards(vec3{x, y, z})
			if o.spread != nil {
				q.z = min(q.z, z)
			}
			if min(q.x, q.y, q.z) < -0.01 || q.x > 250.01 || q.y > 80.01 || q.z > o.topMM()+0.01 {
				t.Fatalf("move %d (%s): %v came from outside, %v", i, o.kind(), vec3{x, y, z}, q)
			}
		}
	}
}

func rod(path []vec2, grip float64) *stroke {
	return &stroke{
		path: resample(path, 13*strokeSpacing), radius: 13, grip: grip, width: 80, level: 62,
		pivot: path[0], sway: wobble{mean: 1}, depth: wobble{mean: 1},
	}
}

func TestAStrokeOfNoLengthOrNoGripMovesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, z := rapid.Float64Range(0, 80).Draw(t, "y"), rapid.Float64Range(0, 62).Draw(t, "z")
		still := rod([]vec2{{40, 30}, {40, 30}}, 1)
		if a, b := still.move(9, y, z, -1); a != y || b != z {
			t.Fatalf("no length: (%g, %g) came from (%g, %g)", y, z, a, b)
		}
		slips := rod([]vec2{{20, 30}, {60, 30}}, 0)
		if a, b := slips.move(9, y, z, -1); a != y || b != z {
			t.Fatalf("no grip: (%g, %g) came from (%g, %g)", y, z, a, b)
		}
	})
}

func TestTheWayBackUndoesAStroke(t *testing.T) {
	there := rod([]vec2{{15, 50}, {40, 12}, {65, 50}}, 0.8)
	back := rod([]vec2{{65, 50}, {40, 12}, {15, 50}}, 0.8)
	back.pivot = there.pivot
	rapid.Check(t, func(t *rapid.T) {
		y, z := rapid.Float64Range(0, 80).Draw(t, "y"), rapid.Float64Range(0, 62).Draw(t, "z")
		a, b := there.move(9, y, z, 1)
		a, b = back.move(9, a, b, 1)
		if math.Hypot(a-y, b-z) > 0.5 {
			t.Fatalf("(%g, %g) came back as (%g, %g)", y, z, a, b)
		}
	})
}

func TestAStrokeDragsItsCentreAlongAndLeavesFarPointsAlone(t *testing.T) {
	s := rod([]vec2{{30, 30}, {50, 30}}, 1)
	if y, z := s.move(0, 30, 30, 1); math.Hypot(y-50, z-30) > 0.05 {
		t.Errorf("the point at the rod went to (%g, %g), want (50, 30)", y, z)
	}
	if y, z := s.move(0, 40, 44, 1); y != 40 || z != 44 {
		t.Errorf("a point beyond the rod's reach went to (%g, %g)", y, z)
	}
}

func TestTheQuickSineAndCosineAgreeWithTheLibrary(t *testing.T) {
	for i := range 1001 {
		a := math.Pi * float64(i) / 1000
		sin, cos := sincos(a)
		if math.Abs(sin-math.Sin(a)) > 1e-7 || math.Abs(cos-math.Cos(a)) > 1e-7 {
			t.Fatalf("at %g they are %g and %g", a, sin, cos)
		}
	}
}

func TestABakedWaveIsTheWave(t *testing.T) {
	d := newDice(int64(5))
	w := newWave(&d, Box{250, 80, 62}, 62, 4)
	r := w.at(33)
	var table waveTable
	table.bake(&r)
	for range 2000 {
		y, z := d.Between(0, 80), d.Between(0, 62)
		a, b := r.move(y, z, -1)
		e, f := table.undo(y, z)
		if math.Hypot(a-e, b-f) > 0.05 {
			t.Fatalf("(%g, %g) comes from (%g, %g), baked from (%g, %g)", y, z, a, b, e, f)
		}
	}
}

// The closed form of a tine line (Jaffer, The Mathematics of Marbling): the pull halves every reach to the side.
func TestFarFromATineTheCombIsATineLine(t *testing.T) {
	const reach, pull = 6., 20.
	c := newComb([]tine{{at: 100, pull: pull}}, reach, 200, 300, 60)
	mean := -c.shift[0] + pull*math.Exp2(tineRound-math.Hypot(tineRound, 100/reach))
	for _, u := range []float64{130, 140, 150} {
		x, y := c.move(u, 150, 60, 1)
		z, w := c.move(u+reach, 150, 60, 1)
		if x != u || z != u+reach {
			t.Fatalf("inside the mould a tine line only shears, but %g went to %g", u, x)
		}
		if ratio := (w - 150 + mean) / (y - 150 + mean); math.Abs(ratio-0.5) > 0.02 {
			t.Errorf("from %g to %g mm the pull falls to %.3f, want a half", u, u+reach, ratio)
		}
	}
	if _, y := c.move(100, 150, 60, 1); math.Abs(y-150+mean-pull) > 1e-9 {
		t.Errorf("at the tine the batter goes %g mm, want %g", y-150+mean, pull)
	}
}

func TestAResampledPathKeepsItsEndsAndSpacing(t *testing.T) {
	out := resample([]vec2{{0, 0}, {10, 0}, {10, 10}}, 3)
	if len(out) != 8 || out[0] != (vec2{0, 0}) || out[7] != (vec2{10, 10}) {
		t.Fatalf("the path is %v", out)
	}
	for i := 1; i < len(out); i++ {
		if d := math.Hypot(out[i].y-out[i-1].y, out[i].z-out[i-1].z); d > 20./7+1e-9 {
			t.Errorf("knot %d is %g mm on", i, d)
		}
	}
}
