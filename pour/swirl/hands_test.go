package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// At either end a wire is where the hand there is; between it is on the straight line, but for coming after: most in the middle of the loaf, by so much
// of its way, and so round turns it goes less far.
func TestAWireIsLedByAHandAtEitherEndAndBendsBetween(t *testing.T) {
	s := rod([]vec2{{10, 30}, {20, 30}}, 1)
	s.radius = 8
	var one, other []vec2
	for i := range 401 {
		a := 2 * math.Pi * float64(i) / 100
		one, other = append(one, vec2{10 + 0.1*float64(i), 30 + 20*math.Cos(a)}), append(other, vec2{20 + 0.1*float64(i), 30 + 10*math.Cos(a)})
	}
	s.lead(one, other, 200, 5)
	n := len(s.path)
	low, most := 99.0, 0.0
	for i := range s.path {
		p, q := s.at(i, course{sway: 1, depth: 1}), s.at(i, course{sway: 1, depth: 1, x: 200})
		if math.Hypot(p.y-s.path[i].y, p.z-s.path[i].z) > 1e-9 || math.Abs(q.y-p.y-10) > 0.01 {
			t.Fatalf("knot %d is at %v at the one end and at %v at the other", i, p, q)
		}
		mid, quarter := s.at(i, course{sway: 1, depth: 1, x: 100}), s.at(i, course{sway: 1, depth: 1, x: 50})
		straight := vec2{0.5 * (p.y + q.y), 0.5 * (p.z + q.z)}
		behind := math.Hypot(mid.y-straight.y, mid.z-straight.z)
		here := vec2{0.75*p.y + 0.25*q.y, 0.75*p.z + 0.25*q.z}
		if got := math.Hypot(quarter.y-here.y, quarter.z-here.z); !near(got, 0.75*behind, 1e-6) {
			t.Fatalf("knot %d comes %.2f mm after in the middle and %.2f a quarter in", i, behind, got)
		}
		low, most = min(low, mid.z), max(most, behind)
	}
	if n < 100 || most < 4 || most > 5.01 || low < 15.5 || low > 19.5 { // straight between the hands it would go down to 15 mm
		t.Errorf("over %d knots the middle comes up to %.2f mm after and goes down to %.2f mm", n, most, low)
	}
	if got := s.hands.bend[0]; got != (vec2{}) {
		t.Errorf("where its way begins the middle is %v behind", got)
	}
}

// The other hand turns as often, in the same order, within the mould, and each time somewhat elsewhere.
func TestTheOtherHandTurnsAsOftenAndElsewhere(t *testing.T) {
	up, aside := 0.0, 0.0
	for seed := range int64(12) {
		r := poured(script.Hanger, 1)
		r.Script.Brief.Seed = seed
		b := newBuilder(r)
		ends := b.waves()
		other := b.otherHand(ends)
		if len(other) != len(ends) {
			t.Fatalf("the one hand turns at %v, the other at %v", ends, other)
		}
		for i, p := range other {
			if p.y < wireMarginMM || p.y > 80-wireMarginMM || p.z < wireFloorMM || p.z > 60 || (p.z-29.25)*(ends[i].z-29.25) < 0 {
				t.Errorf("where the one hand turns at %v the other turns at %v", ends[i], p)
			}
			up, aside = max(up, math.Abs(p.z-ends[i].z)), max(aside, math.Abs(p.y-ends[i].y))
		}
	}
	if up < 4 || aside < 1.5 || aside > 8 {
		t.Errorf("the hands turn up to %.1f mm aside of each other and %.1f mm over", aside, up)
	}
}
