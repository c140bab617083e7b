package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// A waver goes no further aside than it may, each way by itself, changes little from place to place and much over half a loaf, in
// shorter waves within a few bars.
func TestAWaverTakesEveryPartOfAWayAsideByItself(t *testing.T) {
	d := newDice(2)
	for name, c := range map[string]struct {
		w           waver
		short, long float64 // mm, of its waves
	}{"a waver": {d.waver(6, 3), 250, 700}, "in shorter waves it": {d.waves(6, 3, 90, 260), 90, 260}} {
		most, step, apart, far, up := 0.0, 0.0, 0.0, 0.0, 0.0
		for i := range 200 {
			x, part := 1.25*float64(i), float64(i%20)/20
			a, next, other, there := c.w.at(x, part), c.w.at(x+1, part), c.w.at(x, part+0.4), c.w.at(x+0.3*c.long, part)
			most, up = max(most, math.Abs(a.y), math.Abs(a.z)), max(up, math.Abs(a.z))
			step = max(step, math.Abs(next.y-a.y), math.Abs(next.z-a.z))
			apart, far = max(apart, math.Abs(other.y-a.y)), max(far, math.Abs(there.y-a.y))
		}
		if most > 6 || most < 3 || step > 6*2*math.Pi/c.short || apart < 3 || far < 3 || up < 3 {
			t.Errorf("%s goes %.2f mm aside, up or down %.2f, %.2f from one mm to the next, %.2f from part to part and %.2f over %g mm", name, most, up, step, apart, far, 0.3*c.long)
		}
	}
	var none waver
	if none.at(9, 0.3) != (vec2{}) {
		t.Errorf("no waver goes aside by %v", none.at(9, 0.3))
	}
}

func TestAStrokeWavers(t *testing.T) {
	s := rod([]vec2{{30, 30}, {50, 30}}, 1)
	d := newDice(2)
	s.waver = d.waver(5, 2)
	for i, p := range s.path {
		off := s.waver.at(70, float64(i)/float64(len(s.path)-1))
		if got := s.at(i, s.drift(70)); !near(got.y, p.y+off.y, 1e-9) || !near(got.z, p.z+off.z, 1e-9) {
			t.Errorf("knot %d at %v wavers by %v to %v", i, p, off, got)
		}
	}
}

// Where a wire slips it takes along what is left of its grip, where it slips all the way nothing, and never batter backwards.
func TestWhereAStrokeSlipsItTakesLessAlong(t *testing.T) {
	s := rod([]vec2{{30, 30}, {50, 30}}, 0.8)
	dice := newDice(7)
	s.slip = dice.waver(1.8, 3)
	some, none := false, false
	for x := 0.0; x < 250; x += 5 {
		c := s.drift(x)
		for i := range len(s.path) - 1 {
			d := s.step(i, s.at(i, c), s.at(i+1, c), c)
			hold := max(0, 1-math.Abs(s.slip.at(x, float64(i)/float64(len(s.path)-1)).y))
			if !near(d.gy, hold*0.8*d.dy, 1e-9) {
				t.Fatalf("at %g mm step %d of %.2f mm takes batter %.2f mm along, want %.2f of that", x, i, d.dy, d.gy, 0.8*hold)
			}
			some, none = some || hold > 0.5, none || hold == 0
		}
	}
	if !some || !none {
		t.Errorf("somewhere it holds %v, somewhere it slips through %v", some, none)
	}
}

// A drift held within a length goes as far as that and no further; one that goes less far stays as it is.
func TestADriftIsHeldWithinALength(t *testing.T) {
	d := newDice(4)
	w := d.wobble(2, 9)
	if w.within(9.01) != w {
		t.Error("a drift that has room changes")
	}
	held, most := w.within(3), 0.0
	for x := 0.0; x < 4000; x += 3 {
		if !near(held.at(x)-2, (w.at(x)-2)/3, 1e-9) {
			t.Fatalf("at %g mm a drift to %.2f is held to %.2f", x, w.at(x), held.at(x))
		}
		most = max(most, math.Abs(held.at(x)-2))
	}
	if most > 3 || most < 2.4 {
		t.Errorf("held within 3 mm it goes %.2f mm", most)
	}
}

// Where its way begins and ends a wire takes nothing along; over the length it eases in over it takes ever more, then all it can.
func TestAWiresPullComesAndGoesGently(t *testing.T) {
	path := make([]vec2, 41)
	for i := range path {
		path[i] = vec2{10 + float64(i), 30}
	}
	s := rod(path, 0.8)
	s.path, s.radius, s.ease = path, 4, 10 // steps of a mm
	c := s.drift(9)
	last := 0.0
	for i := range 20 {
		d, e := s.step(i, s.at(i, c), s.at(i+1, c), c), s.step(39-i, s.at(39-i, c), s.at(40-i, c), c)
		if !near(d.gy, e.gy, 1e-9) || d.gy < last || i < 10 && d.gy == last || i == 0 && d.gy > 0.01 || i >= 10 && !near(d.gy, 0.8, 1e-9) {
			t.Errorf("%d mm on it takes batter %.3f mm along, and as far from its end %.3f", i, d.gy, e.gy)
		}
		last = d.gy
	}
}

// Where a wire drags along more, what it drags lies further off, and where less, less far.
func TestAWireDragsMoreHereAndLessThere(t *testing.T) {
	s := rod([]vec2{{20, 30}, {50, 30}}, 0.8)
	dice := newDice(3)
	s.girth = dice.waver(0.5, 2)
	least, most := 9.0, 0.0
	for i := range len(s.path) - 1 {
		c := s.drift(70)
		by := 1 + s.girth.at(70, float64(i)/float64(len(s.path)-1)).y
		d := s.step(i, s.at(i, c), s.at(i+1, c), c)
		if !near(d.inv, 1/(by*by*s.radius*s.radius), 1e-9) {
			t.Errorf("step %d drags what lies within %.2f mm, want %.2f", i, 1/math.Sqrt(d.inv), by*s.radius)
		}
		least, most = min(least, by), max(most, by)
	}
	if least > 0.9 || most < 1.1 {
		t.Errorf("it drags what lies within %.2f to %.2f of its radius", least, most)
	}
}

// A stroke's steps are as long as its pace asks for; over how many of them its pull comes does not change over how many mm.
func TestAStrokesPaceIsHowLongItsStepsAre(t *testing.T) {
	b := newBuilder(poured(script.Hanger, 1))
	b.level = 60
	for pace, want := range map[float64]int{0: 40, 2: 20, 0.5: 80} { // steps of a mm over 40 mm
		s := stroke{radius: 4, grip: 1, pace: pace, ease: 10}
		b.draw(&s, []vec2{{10, 30}, {50, 30}})
		if got := len(s.path) - 1; got != want {
			t.Errorf("at a pace of %g it makes %d steps, want %d", pace, got, want)
		}
		if here := s.hold(want / 8); !near(here, 0.5, 0.16) {
			t.Errorf("at a pace of %g it holds %.2f of its grip 5 mm on, want about half", pace, here)
		}
	}
}
