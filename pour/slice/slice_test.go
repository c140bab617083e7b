package slice

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/script"
	"pourbench/pour/swirl"
)

var shares = []float64{0.4, 0.35, 0.25}

func poured(t testing.TB, box swirl.Box, round bool) (*swirl.Swirl, swirl.Recipe) {
	t.Helper()
	sc, err := script.New(script.Brief{Technique: script.Hanger, Shares: shares, First: script.Whole, Last: script.Whole, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	r := swirl.Recipe{Script: sc, Thickness: 0.4, Box: box, Round: round}
	s, err := swirl.New(r)
	if err != nil {
		t.Fatal(err)
	}
	return s, r
}

func iced(box swirl.Box) *relief.Field {
	return relief.New(relief.Recipe{L: box.L, W: box.W, H: box.H, Seed: 7, Icing: relief.Icing{
		Shape: relief.Piped, Volume: 12 * box.L * box.W, Spots: []relief.Spot{{X: box.L / 2, Y: box.W / 2}}, Shares: []float64{0.5, 0.5}, Sinks: 2.5,
	}})
}

func refined(t testing.TB, s *Scene, w int) *relief.Picture {
	t.Helper()
	mmW, mmH := s.SizeMM()
	var p relief.Picture
	if err := s.Refine(context.Background(), &p, w, int(float64(w)*mmH/mmW+0.5), func(int) {}); err != nil {
		t.Fatal(err)
	}
	return &p
}

// seenAt is the label of the pixel in which a place of the world is drawn: by the printed matrix of an axonometric projection, azimuth and elevation.
func seenAt(s *Scene, p *relief.Picture, v vec) int {
	a, e := turnDeg*math.Pi/180, abovDeg*math.Pi/180
	x := v.x*math.Sin(a) + v.y*math.Cos(a)
	y := (v.x*math.Cos(a)-v.y*math.Sin(a))*math.Sin(e) + v.z*math.Cos(e)
	w, h := s.SizeMM()
	return p.Label(int((x-s.low.x)/w*float64(p.W)), int((s.high.y-y)/h*float64(p.H)))
}

// plain is the portion about a place of a face, or none where an edge is near: a pixel is about a millimetre.
func plain(f *swirl.Face, y, z float64) int {
	l := f.Label(y, z)
	for k := range 16 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 8)
		r := 0.8 * float64(1+k%2)
		if f.Label(y+r*cos, z+r*sin) != l {
			return swirl.Empty
		}
	}
	return l
}

// The face of the bar that lies in front is that bar's face, and the loaf's cut face the one behind it, whichever end is left.
func TestTheFacesOfTheSliceAreThoseFaces(t *testing.T) {
	box := swirl.Box{L: 250, W: 80, H: 62}
	pour, r := poured(t, box, false)
	for _, bar := range []swirl.Bar{{From: 25, To: 50}, {From: 200, To: 225}} {
		for _, on := range []*relief.Field{nil, iced(box)} {
			s := New(pour, r, on, bar)
			p := refined(t, s, 260)
			mine, next, turned := pour.Face(bar.From), pour.Face(bar.To), bar.From > 150
			if s.turned != turned {
				t.Errorf("bar at %g: the loaf is seen from the other end: %v", bar.From, s.turned)
			}
			if turned {
				next = pour.Face(bar.From)
			}
			differ, all := 0, 0
			for y := 4.0; y < 78; y += 5 {
				for z := 3.0; z < 56; z += 4 {
					across := y
					if turned {
						across = box.W - y
					}
					for k, want := range [2]int{plain(mine, y, z), plain(next, across, z)} {
						at := [2]vec{s.piece.out(vec{0, y, z}), {0, y, z}}[k]
						if want == swirl.Empty {
							continue
						}
						if all++; seenAt(s, p, at) != want {
							differ++
						}
					}
				}
			}
			if part := float64(differ) / float64(all); part > 0.01 || all < 150 {
				t.Errorf("bar at %g, iced %v: %.1f %% of %d places on the two faces show another portion than the face", bar.From, on != nil, 100*part, all)
			}
		}
	}
}

// A disc of a tube shows its level cut.
func TestTheDiscOfATubeIsItsLevelCut(t *testing.T) {
	pour, r := poured(t, swirl.Box{L: 75, W: 75, H: 200}, true)
	s := New(pour, r, nil, swirl.Bar{From: 50, To: 75})
	p := refined(t, s, 260)
	differ, all := 0, 0
	for y := 3.0; y < 75; y += 4 {
		for z := 3.0; z < 75; z += 4 {
			if math.Hypot(y-37.5, z-37.5) >= 35 {
				continue
			}
			want, clear := pour.Label(y, z, 50), true
			for _, o := range [4][2]float64{{0.8, 0}, {-0.8, 0}, {0, 0.8}, {0, -0.8}} { // a pixel of the slanting disc is as wide: beside a border it may show either
				clear = clear && pour.Label(y+o[0], z+o[1], 50) == want
			}
			if clear {
				if all++; seenAt(s, p, s.piece.out(vec{0, y, z})) != want {
					differ++
				}
			}
		}
	}
	if differ > all/100 || all < 150 {
		t.Errorf("%d of %d places of the disc show another portion", differ, all)
	}
	if l := seenAt(s, p, s.piece.out(vec{0, 74, 74})); l != relief.Bare {
		t.Errorf("beside the disc %d shows", l)
	}
}

// Everything lies inside the picture, with a margin of ground; the shadow falls to the right and none to the left, and the deeper the nearer.
func TestASliceLiesOnItsGround(t *testing.T) {
	box := swirl.Box{L: 250, W: 80, H: 62}
	pour, r := poured(t, box, false)
	s := New(pour, r, iced(box), swirl.Bar{From: 100, To: 125})
	p := refined(t, s, 400)
	for y := range p.H {
		for x := range p.W {
			if (x < 8 || y < 4 || x >= p.W-8 || y >= p.H-4) && p.Label(x, y) != relief.Bare {
				t.Fatalf("something reaches to the edge of the picture at %d, %d", x, y)
			}
		}
	}
	shade := func(v vec) float64 {
		a, e := turnDeg*math.Pi/180, abovDeg*math.Pi/180
		x, y := v.x*math.Sin(a)+v.y*math.Cos(a), (v.x*math.Cos(a)-v.y*math.Sin(a))*math.Sin(e)
		w, h := s.SizeMM()
		return float64(p.Dots[int((s.high.y-y)/h*float64(p.H))*p.W+int((x-s.low.x)/w*float64(p.W))].Shade) / 255
	}
	if left := shade(vec{-12, 40, 0}); left > 0.15 {
		t.Errorf("the ground before the cut face, in the sun, lacks %.2f of its light", left)
	}
	end := s.loaf.high.x
	near, far := shade(vec{end + 4, 84, 0}), shade(vec{end + 60, 75, 0})
	if near < 0.35 || far < 0.1 || far > near {
		t.Errorf("behind the loaf the ground lacks %.2f of its light near by and %.2f far off", near, far)
	}
}

// The same scene is drawn to the same bytes; a draft shows what the fine picture shows; whoever waits can stop it.
func TestASliceIsDrawnTheSameAgain(t *testing.T) {
	box := swirl.Box{L: 120, W: 60, H: 40}
	pour, r := poured(t, box, false)
	s := New(pour, r, iced(box), swirl.Bar{From: 20, To: 40})
	a, b := refined(t, s, 160), refined(t, s, 160)
	if !slices.Equal(a.Dots, b.Dots) {
		t.Error("drawn twice it differs")
	}
	var draft relief.Picture
	s.Draft(&draft, a.W, a.H)
	differ := 0
	for y := range a.H {
		for x := range a.W {
			if a.Label(x, y) != draft.Label(x, y) {
				differ++
			}
		}
	}
	if part := float64(differ) / float64(len(a.Dots)); part > 0.06 {
		t.Errorf("the draft differs at %.1f %% of the pixels", 100*part)
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if err := s.Refine(stopped, &draft, 400, 300, func(int) {}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

// Odd sizes and bars out of the loaf are drawn all the same, and a picture of no size is nothing.
func TestASliceOfAnySize(t *testing.T) {
	for _, box := range []swirl.Box{{L: 10, W: 10, H: 10}, {L: 400, W: 90, H: 90}, {L: 300, W: 250, H: 30}} {
		pour, r := poured(t, box, false)
		for _, bar := range []swirl.Bar{{From: 0, To: 25}, {From: box.L - 5, To: box.L}, {From: -10, To: 5000}, {From: box.L, To: box.L}} {
			s := New(pour, r, nil, bar)
			var p relief.Picture
			for _, size := range [][2]int{{60, 40}, {1, 1}, {0, 5}, {-3, 2}} {
				s.Draft(&p, size[0], size[1])
			}
			if w, h := s.SizeMM(); !(w > 20 && h > 20 && w < 2000) {
				t.Errorf("box %v, bar %v: a picture of %g by %g mm", box, bar, w, h)
			}
			if r := s.Fit(120, 80); r.Dx() > 120 || r.Dy() > 80 || r.Dx() < 20 {
				t.Errorf("box %v: it is fitted into %v", box, r)
			}
		}
	}
}

func BenchmarkSliceDraft120x60(b *testing.B) {
	box := swirl.Box{L: 250, W: 80, H: 62}
	pour, r := poured(b, box, false)
	on := iced(box)
	var p relief.Picture
	for b.Loop() {
		New(pour, r, on, swirl.Bar{From: 100, To: 125}).Draft(&p, 120, 60)
	}
}

func BenchmarkSliceRefine120x60(b *testing.B) {
	box := swirl.Box{L: 250, W: 80, H: 62}
	pour, r := poured(b, box, false)
	s := New(pour, r, iced(box), swirl.Bar{From: 100, To: 125})
	var p relief.Picture
	for b.Loop() {
		_ = s.Refine(context.Background(), &p, 120, 60, func(int) {})
	}
}

// A material is seen on the flat sides of a fine picture and nowhere changes what shows; without one a side is even.
func TestAPlanedSliceShowsItsMaterial(t *testing.T) {
	pour, r := poured(t, swirl.Box{L: 100, W: 60, H: 40}, false)
	s := New(pour, r, nil, swirl.Bar{From: 20, To: 40})
	bare, planed := refined(t, s, 300), refined(t, s.Planed(swirl.Planed()), 300)
	differ := 0
	for i, d := range planed.Dots {
		b := bare.Dots[i]
		if d.Bright != b.Bright {
			differ++
		}
		if d.Bright, b.Bright = 0, 0; d != b {
			t.Fatalf("pixel %d shows %+v, without a material %+v", i, d, b)
		}
	}
	if differ < len(bare.Dots)/12 {
		t.Errorf("%d of %d pixels show the material", differ, len(bare.Dots))
	}
}

// The upright edge between the cut face and the long side is rounded: there the face turns to the side, and further in it does not.
func TestEdgesOfASliceAreRounded(t *testing.T) {
	pour, r := poured(t, swirl.Box{L: 100, W: 60, H: 40}, false)
	s := New(pour, r, nil, swirl.Bar{From: 20, To: 40})
	b := &block{pose: &s.loaf, s: s}
	faces := func(p vec) vec {
		n, _ := b.nearest(p)
		return n.unit()
	}
	if at, in := faces(vec{0, 60, 20}), faces(vec{0, 60 - 2*edgeMM, 20}); at.y < 0.5 || in != (vec{x: -1}) {
		t.Errorf("at the edge the face faces %+v, inside %+v", at, in)
	}
	if foot := faces(vec{0, 30, 0}); foot.z > -0.5 {
		t.Errorf("at its foot the face faces %+v", foot)
	}
	if top := b.edged(vec{10, 60, 40}, vec{z: 1}); top.y < 0.5 || b.edged(vec{10, 30, 40}, vec{z: 1}) != (vec{z: 1}) {
		t.Errorf("at the edge the top faces %+v", top)
	}
}

// By hand: a look along a face, a tenth of a millimetre inside the corner of a block, meets the rounded edge where a circle of its radius is, and one
// further in the flat.
func TestALookMeetsARoundedEdge(t *testing.T) {
	pour, r := poured(t, swirl.Box{L: 100, W: 60, H: 40}, false)
	s := New(pour, r, nil, swirl.Bar{From: 20, To: 40})
	b := &block{pose: &s.loaf, s: s}
	for in, want := range map[float64]float64{0.1: 10 + edgeMM - math.Sqrt(edgeMM*edgeMM-(edgeMM-0.1)*(edgeMM-0.1)), 3: 10} {
		if at, ok := b.trimmed(vec{-10, 60 - in, 20}, vec{x: 1}, 10, 80); !ok || math.Abs(at-want) > 0.06 {
			t.Errorf("%.1f mm inside the corner it is met after %.2f mm, want %.2f: %v", in, at, want, ok)
		}
	}
	if at, ok := b.trimmed(vec{-0.3, 59.4, 20}, vec{0.4, 0.9, 0}, 0.75, 1.2); ok { // across the very corner
		t.Errorf("past the corner it is met after %.2f mm", at)
	}
}

// Icing that was pressed against the wall shows there in its own colour, and not as more of the base.
func TestIcingAgainstTheWallHasItsOwnColour(t *testing.T) {
	box := swirl.Box{L: 250, W: 80, H: 62}
	pour, r := poured(t, box, false)
	on := iced(box)
	s := New(pour, r, on, swirl.Bar{From: 25, To: 50})
	p := refined(t, s, 260)
	wrong, all := 0, 0
	for along := 60.0; along < 240; along++ {
		if z, stuff := on.Surface(along, box.W-1e-6); z > 2 && stuff != relief.Bare {
			all++
			if got := seenAt(s, p, s.loaf.out(vec{along - s.bar.To, box.W, box.H + 1})); got >= 0 && got < s.portions {
				wrong++
			}
		}
	}
	if all < 5 || wrong > all/5 {
		t.Errorf("at %d of %d places where icing stands at the wall the base shows", wrong, all)
	}
}
