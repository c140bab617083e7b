package swirl

import (
	"context"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/script"
)

// veined is a face drawn with its veins, 3 pixels to the mm.
func veined(t testing.TB, technique script.Technique) (*Face, *Picture) {
	t.Helper()
	f, p := mustPour(t, loaf(technique, 3)).Face(120), &Picture{}
	if err := f.Refine(context.Background(), p, int(3*f.box.W), int(3*f.box.H)); err != nil {
		t.Fatal(err)
	}
	if p.veins == nil {
		t.Fatalf("%s: no veins", technique)
	}
	return f, p
}

// A vein goes the way its batter went: followed back by the plain, slow moves to where it was poured, each knot is of the pour and the
// place that [tracer.knot] tells.
func TestVeinsGoWithTheBatter(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 3))
		f, told, off := s.Face(120), 0, 0
		for i := range 60 {
			y, z := f.box.W*math.Mod(0.618*float64(i)+0.3, 1), f.box.H*(float64(i)+0.5)/60
			p, slab := vec3{120, y, z}, -1
			for n := len(s.ops) - 1; n >= 0 && slab < 0; n-- {
				if o := s.ops[n]; o.slab == nil {
					p = o.backwards(p)
				} else if p.z >= o.slab.floor(p.x) || n == 0 {
					slab = n
				}
			}
			got := f.tracer.knot(&sample{origin: f.tracer.trace(y, z)})
			fill := s.ops[slab].slab.fill
			if _, ok := fill.(grained); ok || f.tracer.slabs[got.slab].fill != fill {
				continue // a fill of its own grain, or a border the tables round
			}
			along, across := p.y+0.35*p.x, p.z+rolling(p.x, p.y, float64(got.slab))
			if told++; !near(float64(got.along), along, 0.5) || !near(float64(got.across), across, 0.5) {
				off++
			}
		}
		if off > told/20 { // where batter is drawn out most the tables round by more
			t.Errorf("%s: %d of %d veins lie elsewhere", technique, off, told)
		}
	}
}

// Veins change tones, not what is seen where, nor the mean of a colour; each colour has lighter and darker places; and coarse pictures, or plain ones, have none.
func TestVeinsAreEvenOnTheWhole(t *testing.T) {
	for _, technique := range []script.Technique{script.Layers, script.Drop, script.Pot, script.Combed, script.Spooned} {
		f, p := veined(t, technique)
		sum, n, most := 0.0, 0.0, 0.0
		for j := range p.H {
			for i := range p.W {
				v := float64(p.veins.at(i, j, p.Pixels[j*p.W+i].Portion[0]))
				sum, n, most = sum+v, n+1, max(most, math.Abs(v))
			}
		}
		if mean := sum / n; math.Abs(mean) > 0.2 || most < 0.4 || most > 1+1e-6 {
			t.Errorf("%s: veins are %.3f in the mean and %.2f at most, want about 0, and 0.4 to 1", technique, mean, most)
		}
		plain := &Picture{Plain: true}
		if err := f.Refine(context.Background(), plain, p.W, p.H); err != nil || plain.veins != nil {
			t.Errorf("%s: plain: %v, veins %v", technique, err, plain.veins != nil)
		}
		for i := range plain.Pixels {
			if plain.Pixels[i] != p.Pixels[i] {
				t.Fatalf("%s: with veins pixel %d is %v, without %v", technique, i, p.Pixels[i], plain.Pixels[i])
			}
		}
	}
	coarse := &Picture{}
	f := mustPour(t, loaf(script.Drop, 3)).Face(120)
	if err := f.Refine(context.Background(), coarse, int(f.box.W/2), int(f.box.H/2)); err != nil || coarse.veins != nil {
		t.Errorf("pixels of 2 mm: %v, veins %v", err, coarse.veins != nil)
	}
}

// What is drawn out finer than the mesh is even: knots far apart along their veins differ by the tone of their pour alone.
func TestWhatIsDrawnOutFineIsEven(t *testing.T) {
	mesh := func(step float32) *veins {
		from := make([]knot, 100)
		for i := range from {
			from[i] = knot{across: float32(i%10) * step, along: float32(i/10) * step, slab: 4}
		}
		return newVeins(10, 10, 1, from)
	}
	spread := func(v *veins) int8 {
		low, high := int8(127), int8(-127)
		for _, k := range v.knots {
			low, high = min(low, k), max(high, k)
		}
		return high - low
	}
	if got := spread(mesh(40)); got != 0 {
		t.Errorf("knots 40 mm apart differ by %d", got)
	}
	if got := spread(mesh(0.3)); got < 10 {
		t.Errorf("knots 0.3 mm apart differ by %d at most", got)
	}
}

// Twice as much more colourant takes the square of the light: the law of Beer and Lambert, light^(1+more).
func TestMoreColourantTakesMoreLight(t *testing.T) {
	ink := newInks([]color.NRGBA{{180, 90, 140, 255}}, color.NRGBA{})
	c := ink.light[0]
	for _, more := range []float32{-0.18, -0.05, 0, 0.05, 0.18} {
		got := ink.dyed(c, 0, more)
		for k, v := range [3][2]float32{{got.r, c.r}, {got.g, c.g}, {got.b, c.b}} {
			want := math.Pow(float64(v[1]), 1+float64(more)) * math.Exp(-cloud*float64(more))
			if !near(float64(v[0]), want, 0.004) {
				t.Errorf("%+.2f colourant, channel %d: %.4f, want %.4f", more, k, v[0], want)
			}
		}
	}
}

// A pixel asks the knots of its own portion alone.
func TestVeinsEndAtBorders(t *testing.T) {
	v := &veins{w: 2, h: 2, pixels: 4, knots: []int8{100, -100, 100, -100}, shows: []uint8{0, 1, 0, 1}}
	for i := range 3 {
		if a, b := v.at(i, 1, 0), v.at(i, 1, 1); !near(float64(a), 100./127, 1e-6) || !near(float64(b), -100./127, 1e-6) {
			t.Errorf("pixel %d: %.3f and %.3f", i, a, b)
		}
	}
	if got := v.at(1, 1, 2); got != 0 {
		t.Errorf("a portion no knot shows: %.3f", got)
	}
	if got := (*veins)(nil).at(1, 1, 0); got != 0 {
		t.Errorf("no veins: %.3f", got)
	}
}

// One bar and the cut along the loaf meet in the same veins.
func TestACutAlongTheLoafMeetsTheFace(t *testing.T) {
	s := mustPour(t, loaf(script.Layers, 3))
	f, long := s.Face(120), &Picture{}
	l := s.Lengthwise(f.box.W / 2)
	if err := l.Refine(context.Background(), long, int(3*l.long), int(3*l.deep)); err != nil || long.veins == nil {
		t.Fatalf("%v, veins %v", err, long.veins != nil)
	}
	face := &Picture{}
	if err := f.Refine(context.Background(), face, int(3*f.box.W), int(3*f.box.H)); err != nil {
		t.Fatal(err)
	}
	far, n := 0.0, 0.0
	for j := 12; j < face.H-12; j += 5 {
		a, b := face.Pixels[j*face.W+face.W/2].Portion[0], long.Pixels[j*long.W+360].Portion[0]
		if a == b {
			far += math.Abs(float64(face.veins.at(face.W/2, j, a) - long.veins.at(360, j, b)))
			n++
		}
	}
	if n < 20 || far/n > 0.1 {
		t.Errorf("at %g places the veins differ by %.3f in the mean", n, far/n)
	}
}

// Seen from the other end a cut shows the same veins the other way round.
func TestAMirroredCutHasItsVeinsTurned(t *testing.T) {
	r, p := loaf(script.Layers, 3), &Picture{}
	r.Box.W = 70.1 // not a whole number of meshes
	f := mustPour(t, r).Face(120)
	if err := f.Refine(context.Background(), p, 5*70, 5*int(f.box.H)); err != nil {
		t.Fatal(err)
	}
	turned := *p
	turned.Pixels = append([]Pixel(nil), p.Pixels...)
	turned.Mirror()
	m := Planed()
	least, most := 1.0, 1.0
	for j := 3; j < p.H; j += 11 {
		for i := 3; i < p.W-3; i += 7 {
			a, b := p.Clouded(i, j, m), turned.Clouded(p.W-1-i, j, m)
			if !near(a, b, 1e-5) || p.Pixels[j*p.W+i] != turned.Pixels[j*p.W+p.W-1-i] {
				t.Fatalf("(%d, %d): %.4f, turned %.4f", i, j, a, b)
			}
			least, most = min(least, a), max(most, a)
		}
	}
	turned.Mirror()
	for i := 3; i < p.W-3; i += 7 {
		if a, b := p.Clouded(i, 20, m), turned.Clouded(i, 20, m); !near(a, b, 1e-5) {
			t.Fatalf("pixel %d: %.4f, turned twice %.4f", i, a, b)
		}
	}
	if least > 0.99 || most < 1.01 || least < 0.9 || most > 1.1 {
		t.Errorf("veins brighten from %.3f to %.3f", least, most)
	}
	if got := p.Clouded(9, 9, Material{}); got != 1 {
		t.Errorf("without material: %.3f", got)
	}
}

// Veins lie along what was poured: along the sheets of a ribbon, up stripes that stand, and along the top of a spoonful.
func TestVeinsLieAlongWhatWasPoured(t *testing.T) {
	box := Box{L: 250, W: 80, H: 60}
	d := newDice(1)
	h := newHeap(box)
	h.high, h.portion, h.act, h.done = [][]float32{make([]float32, h.nx*h.ny), make([]float32, h.nx*h.ny)}, []int{0, 1}, []int{0, 1}, 2
	for i := range h.high[0] {
		h.high[0][i], h.high[1][i] = 20+0.1*float32(i%h.ny), 60 // a top that rises across
	}
	for name, c := range map[string]struct {
		of            grained
		x, y, z       float64
		along, across float64
	}{
		"a standing ribbon":           {&ribbon{stream: &stream{box: box}, bottom: 0, top: 30, tall: 30}, 10, 20, 15, 0.5*80 + 0.35*10, 0.25 * 36},
		"the same, led the other way": {&ribbon{stream: &stream{box: box}, bottom: 0, top: 30, tall: 30, back: true}, 10, 20, 15, 0.5*80 + 0.35*10, 0.75 * 36},
		"stripes":                     {&stripes{box: box, bow: d.wobble(1, 0)}, 10, 20, 15, 15 + 0.35*10, 20},
		"a spoonful":                  {h, 10, 40, 18, 40 + 0.35*10, 18 - 20 - 0.1*40*64/80},
		"the spoonful over it":        {h, 10, 40, 50, 40 + 0.35*10, 50 - 60},
	} {
		if along, across := c.of.grain(c.x, c.y, c.z); !near(along, c.along, 1e-3) || !near(across, c.across, 1e-3) {
			t.Errorf("%s: at (%.3f, %.3f), want (%.3f, %.3f)", name, along, across, c.along, c.across)
		}
	}
}

// By hand: noise of a third of its strongest already gives half a vein, and either way alike.
func TestAVeinHasSides(t *testing.T) {
	for v, want := range map[float64]float64{0: 0, veinSides: 0.5, -veinSides: -0.5, 1: 1 / 1.35} {
		if got := crisp(v); !near(got, want, 1e-9) {
			t.Errorf("noise of %g gives %.3f of a vein, want %.3f", v, got, want)
		}
	}
}
