package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

const degree = math.Pi / 180

// E3: a box 18 × 10 turned by 30° takes 18·cos 30° + 10·sin 30°.
func TestTheBoxOfTheWorkedExample(t *testing.T) {
	near(t, "its extent", shape.BoxOutline(18, 10).Extent(30*degree), 20.58846, 5e-7)
	near(t, "its extent, from the formula", shape.BoxOutline(18, 10).Extent(30*degree), 18*math.Sqrt(3)/2+5, 1e-12)
	a, b := shape.Between(0, 25, 12.5, shape.BoxOutline(18, 10).Extent(30*degree))
	near(t, "its room towards A", a, 2.20577, 5e-6)
	near(t, "its room towards B", b, 2.20577, 5e-6)
}

// Closed forms: a box, an ellipse of half axes a and b, a right-angled triangle 3-4-5, each turned.
func TestTheLengthAnOutlineTakes(t *testing.T) {
	for _, deg := range []float64{-170, -90, -31, 0, 10, 45, 90, 123} {
		sin, cos := math.Abs(math.Sin(deg*degree)), math.Abs(math.Cos(deg*degree))
		near(t, "a disc", shape.RoundOutline(20).Extent(deg*degree), 20, 1e-12)
		near(t, "a box", shape.BoxOutline(18, 10).Extent(deg*degree), 18*cos+10*sin, 1e-12)
		near(t, "a box across", shape.BoxOutline(18, 10).ExtentAcross(deg*degree), 18*sin+10*cos, 1e-12)
		near(t, "an ellipse", shape.OvalOutline(24, 14).Extent(deg*degree), 2*math.Sqrt(144*cos*cos+49*sin*sin), 1e-12)
		near(t, "an ellipse across", shape.OvalOutline(24, 14).ExtentAcross(deg*degree), 2*math.Sqrt(144*sin*sin+49*cos*cos), 1e-12)
	}
	triangle := shape.Outline{Corners: []shape.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 0, Y: 3}}}
	near(t, "the triangle", triangle.Extent(0), 4, 1e-12)
	near(t, "the triangle on its side", triangle.Extent(90*degree), 3, 1e-12)
	// Turned so that the long side lies along the loaf.
	near(t, "the triangle on its longest side", triangle.Extent(math.Atan2(3, 4)), 5, 1e-12)
}

func TestAreaEdgeAndCircleOfAnOutline(t *testing.T) {
	triangle := shape.Outline{Corners: []shape.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 0, Y: 3}}}
	near(t, "the triangle's area", triangle.Area(), 6, 1e-12)
	near(t, "its edge", triangle.Perimeter(), 12, 1e-12)
	near(t, "the circle around a right angle is over its longest side", triangle.Enclosing(), 5, 1e-12)
	near(t, "the box's area", shape.BoxOutline(18, 10).Area(), 180, 1e-12)
	near(t, "its edge", shape.BoxOutline(18, 10).Perimeter(), 56, 1e-12)
	near(t, "its diagonal", shape.BoxOutline(18, 10).Enclosing(), math.Hypot(18, 10), 1e-12)
	near(t, "the disc's area", shape.RoundOutline(20).Area(), 100*math.Pi, 1e-12)
	near(t, "its edge", shape.RoundOutline(20).Perimeter(), 20*math.Pi, 1e-12)
	near(t, "the ellipse's circle", shape.OvalOutline(24, 14).Enclosing(), 24, 0)
	// Ramanujan's second approximation for the ellipse's perimeter, good to 1e-9 at this flatness (memory).
	h := (12.0 - 7) / (12 + 7) * (12.0 - 7) / (12 + 7)
	near(t, "the ellipse's edge", shape.OvalOutline(24, 14).Perimeter(), math.Pi*19*(1+3*h/(10+math.Sqrt(4-3*h))), 1e-8)
	// An equilateral triangle of side s has a circle of 2s/√3 around it.
	side := 12.0
	even := shape.Outline{Corners: []shape.Point{{X: 0, Y: 0}, {X: side, Y: 0}, {X: side / 2, Y: side * math.Sqrt(3) / 2}}}
	near(t, "the circle of an even triangle", even.Enclosing(), 2*side/math.Sqrt(3), 1e-12)
	line := shape.Outline{Corners: []shape.Point{{X: 0, Y: 0}, {X: 3, Y: 0}, {X: 9, Y: 0}, {X: 6, Y: 0}}}
	near(t, "the circle of a line", line.Enclosing(), 9, 1e-12)
}

func outlines() *rapid.Generator[shape.Outline] {
	length := rapid.Float64Range(0.5, 60)
	return rapid.Custom(func(t *rapid.T) shape.Outline {
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 0:
			return shape.OvalOutline(length.Draw(t, "length"), length.Draw(t, "width"))
		case 1:
			return shape.BoxOutline(length.Draw(t, "length"), length.Draw(t, "width"))
		}
		at := rapid.Float64Range(-30, 30)
		corners := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) shape.Point {
			return shape.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")}
		}), 3, 9).Draw(t, "corners")
		return shape.Outline{Corners: corners}
	})
}

// scaled is the same outline so much larger.
func scaled(o shape.Outline, by float64) shape.Outline {
	out := shape.Outline{Along: o.Along * by, Across: o.Across * by}
	for _, c := range o.Corners {
		out.Corners = append(out.Corners, shape.Point{X: c.X * by, Y: c.Y * by})
	}
	return out
}

// mirrored is the outline with its ends changed round.
func mirrored(o shape.Outline) shape.Outline {
	out := shape.Outline{Along: o.Along, Across: o.Across}
	for _, c := range o.Corners {
		out.Corners = append(out.Corners, shape.Point{X: -c.X, Y: c.Y})
	}
	return out
}

func TestAnOutlineTurnedMirroredAndScaled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := outlines().Draw(t, "outline")
		turn := rapid.Float64Range(-10, 10).Draw(t, "turn")
		extent := o.Extent(turn)
		switch {
		case extent < 0 || o.Area() < 0:
			t.Fatalf("it takes %g of the loaf, over %g", extent, o.Area())
		case extent > o.Enclosing()+1e-9:
			t.Fatalf("it takes %g of the loaf, more than the circle around it, %g", extent, o.Enclosing())
		case math.Abs(o.Centred(turn).Extent(turn)-extent) > 1e-9 || math.Abs(o.Centred(turn).Area()-o.Area()) > 1e-6:
			t.Fatal("moved it has another length or area")
		case math.Abs(extent-o.Extent(turn+math.Pi)) > 1e-9:
			t.Fatal("half a turn changes its length")
		case math.Abs(extent-mirrored(o).Extent(-turn)) > 1e-9:
			t.Fatal("mirrored and turned the other way it has another length")
		case math.Abs(scaled(o, 3).Extent(turn)-3*extent) > 1e-9 || math.Abs(scaled(o, 3).Area()-9*o.Area()) > 1e-6:
			t.Fatal("three times as large it is not three times as long")
		case math.Abs(scaled(o, 3).Enclosing()-3*o.Enclosing()) > 1e-6:
			t.Fatal("three times as large its circle is not three times as wide")
		}
	})
}

// The smallest circle has two corners over its middle or three on its edge: every pair and every three are tried here, another way to the same.
func TestTheSmallestCircleIsSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.IntRange(-12, 12)
		var corners []shape.Point
		for range rapid.IntRange(3, 7).Draw(t, "corners") {
			corners = append(corners, shape.Point{X: float64(at.Draw(t, "x")), Y: float64(at.Draw(t, "y"))})
		}
		got := shape.Outline{Corners: corners}.Enclosing() / 2
		best := math.Inf(1)
		for i, p := range corners {
			for j, q := range corners[:i] {
				best = math.Min(best, farthest(corners, (p.X+q.X)/2, (p.Y+q.Y)/2))
				for _, r := range corners[:j] {
					// The middle is as far from p as from q and r: two equations in two unknowns.
					d := 2 * ((q.X-p.X)*(r.Y-p.Y) - (r.X-p.X)*(q.Y-p.Y))
					e, f := q.X*q.X+q.Y*q.Y-p.X*p.X-p.Y*p.Y, r.X*r.X+r.Y*r.Y-p.X*p.X-p.Y*p.Y
					if d != 0 {
						best = math.Min(best, farthest(corners, (e*(r.Y-p.Y)-f*(q.Y-p.Y))/d, (f*(q.X-p.X)-e*(r.X-p.X))/d))
					}
				}
			}
		}
		if math.Abs(got-best) > 1e-9 {
			t.Fatalf("the circle has a radius of %.9f, all pairs and threes give %.9f", got, best)
		}
	})
}

// A right-angled triangle drawn from its corner is marked in the middle of what it takes, turned or not.
func TestAPieceIsMarkedInTheMiddleOfWhatItTakes(t *testing.T) {
	triangle := shape.Outline{Corners: []shape.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 0, Y: 3}}}
	for i, want := range []shape.Point{{X: -2, Y: -1.5}, {X: 2, Y: -1.5}, {X: -2, Y: 1.5}} {
		got := triangle.Centred(0).Corners[i]
		near(t, "x", got.X, want.X, 1e-12)
		near(t, "y", got.Y, want.Y, 1e-12)
	}
	// A quarter turn to the left brings (x, y) to (−y, x): the corner lies at (1.5, −2) from the middle.
	turned := triangle.Centred(90 * degree).Corners[0]
	near(t, "the turned corner along", -turned.Y, 1.5, 1e-12)
	near(t, "the turned corner across", turned.X, -2, 1e-12)
}

// farthest is how far the furthest corner is from a place.
func farthest(corners []shape.Point, x, y float64) float64 {
	far := 0.0
	for _, c := range corners {
		far = math.Max(far, math.Hypot(c.X-x, c.Y-y))
	}
	return far
}

func TestTheRoomBetweenTwoPieces(t *testing.T) {
	disc, box := shape.RoundOutline(20), shape.BoxOutline(18, 10)
	near(t, "two discs side by side", shape.Gap(disc, 0, disc, 0, shape.Point{X: 15, Y: 20}), 5, 1e-12)
	near(t, "two discs into each other", shape.Gap(disc, 0, disc, 0, shape.Point{Y: 16}), -4, 1e-12)
	near(t, "two boxes side by side", shape.Gap(box, 0, box, 0, shape.Point{Y: 14}), 4, 1e-12)
	near(t, "one of them turned", shape.Gap(box, 90*degree, box, 0, shape.Point{Y: 16}), 2, 1e-12)
	near(t, "corner to corner", shape.Gap(box, 0, box, 0, shape.Point{X: 21, Y: 14}), 5, 1e-3)
}
