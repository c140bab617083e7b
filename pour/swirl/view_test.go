package swirl

import (
	"context"
	"math"
	"testing"
)

// cut is what a face and a cut along the loaf have in common.
type cut interface {
	Draft(dst *Picture, w, h int)
	Refine(ctx context.Context, dst *Picture, w, h int) error
}

// views are the cuts through the ball of radius 20 mm at (50, 30, 25) in a mould of 200 by 80 by 60 mm: a cut d mm off its middle is a disc of
// radius √(400 - d²) in a rectangle.
var views = []struct {
	name         string
	of           func(s *Swirl) cut
	wide, high   float64 // mm of the picture
	x, y, radius float64 // mm of the disc, from the upper left
}{
	{"the face through its middle", func(s *Swirl) cut { return s.Face(50) }, 80, 60, 30, 35, 20},
	{"a face 12 mm on", func(s *Swirl) cut { return s.Face(62) }, 80, 60, 30, 35, 16},
	{"the lengthwise cut", func(s *Swirl) cut { return s.Lengthwise(30) }, 200, 60, 50, 35, 20},
	{"the view from above, 12 mm over its middle", func(s *Swirl) cut { return s.Top(37) }, 200, 80, 50, 50, 16},
	{"a part of the lengthwise cut", func(s *Swirl) cut { return s.Lengthwise(30).Part(20, 100) }, 80, 60, 30, 35, 20},
}

func TestABallShowsAsADiscInEveryViewAtEverySize(t *testing.T) {
	s := cast(Box{L: 200, W: 80, H: 60}, 2, ball(vec3{50, 30, 25}, 20))
	for _, v := range views {
		for _, size := range [][2]int{{40, 30}, {97, 61}, {160, 120}} {
			var draft, fine Picture
			v.of(s).Draft(&draft, size[0], size[1])
			if err := v.of(s).Refine(context.Background(), &fine, size[0], size[1]); err != nil {
				t.Fatal(err)
			}
			want := math.Pi * v.radius * v.radius / (v.wide * v.high)
			for _, c := range []struct {
				name string
				pic  *Picture
				off  float64 // of the area
			}{{"drafted", &draft, 0.06}, {"refined", &fine, 0.03}} {
				part, x, y := spot(c.pic, 1)
				if c.pic.W != size[0] || c.pic.H != size[1] {
					t.Errorf("%s, %s: the picture is %d by %d, want %v", v.name, c.name, c.pic.W, c.pic.H, size)
				}
				if !near(part, want, c.off*want) {
					t.Errorf("%s, %s at %v: the disc covers %.4f, want %.4f", v.name, c.name, size, part, want)
				}
				if !near(x*v.wide, v.x, 0.6) || !near(y*v.high, v.y, 0.6) {
					t.Errorf("%s, %s at %v: its middle is at (%.1f, %.1f) mm, want (%g, %g)", v.name, c.name, size, x*v.wide, y*v.high, v.x, v.y)
				}
			}
		}
	}
}

// covered is the part of a pixel on the negative side of the plane a·x + b·y = c, by 24 by 24 points.
func covered(x, y int, a, b, c float64) float64 {
	const n = 24
	hits := 0
	for i := range n * n {
		if a*(float64(x)+(float64(i%n)+0.5)/n)+b*(float64(y)+(float64(i/n)+0.5)/n) < c {
			hits++
		}
	}
	return float64(hits) / (n * n)
}

// A slanted plane in a picture of one pixel to a mm: every pixel shows the portions by the parts they cover of it.
func TestAnEdgePixelShowsEachPortionByThePartItCovers(t *testing.T) {
	s := cast(Box{L: 80, W: 80, H: 60}, 2, below(func(x, y, z float64) float64 { return x + y + 0.35*(60-z) - 70 }))
	for _, c := range []struct {
		name       string
		of         cut
		h          int
		a, b, c    float64 // of the plane in pixels from the upper left
		mean, most float64 // how far a part may be off
	}{
		{"a face", s.Face(30), 60, 1, 0.35, 40, 0.045, 0.12},
		{"a lengthwise cut", s.Lengthwise(30), 60, 1, 0.35, 40, 0.13, 0.34},
		{"the view from above", s.Top(40), 80, 1, -1, 70 - 80 - 7, 0.13, 0.34},
	} {
		var pic Picture
		if err := c.of.Refine(context.Background(), &pic, 80, c.h); err != nil {
			t.Fatal(err)
		}
		sum, edges := 0.0, 0.0
		for i := range pic.Pixels {
			want, got := covered(i%80, i/80, c.a, c.b, c.c), 0.0
			for k, part := range pic.Pixels[i].Part {
				if part > 0 && pic.Pixels[i].Portion[k] == 0 {
					got += float64(part) / 255
				}
			}
			if want > 0 && want < 1 {
				sum, edges = sum+math.Abs(got-want), edges+1
			}
			if !near(got, want, c.most) {
				t.Errorf("%s: pixel (%d, %d) shows %.2f of portion 0, which covers %.2f of it", c.name, i%80, i/80, got, want)
			}
		}
		if edges < 60 || sum/edges > c.mean {
			t.Errorf("%s: %g pixels lie on the edge, off by %.3f on average, want %.2f at most", c.name, edges, sum/edges, c.mean)
		}
	}
}

// A boundary a quarter of a pixel up in its row of pixels shows a quarter of what lies below it there, and whole rows either side.
func TestALayersTopIsDrawnWithinItsPixel(t *testing.T) {
	s := cast(Box{L: 100, W: 80, H: 60}, 2, below(func(_, _, z float64) float64 { return z - 24.25 }))
	pic := refined(t, s.Face(10), 80, 60)
	for i, px := range pic.Pixels {
		row, want := i/80, Pixel{Portion: [3]uint8{1}, Part: [3]uint8{255}}
		switch {
		case row > 35:
			want.Portion[0] = 0
		case row == 35:
			if px.Portion != [3]uint8{1, 0} || !near(float64(px.Part[1]), 255/4., 2) {
				t.Fatalf("pixel %d of the row of the boundary is %v, want a quarter of portion 0", i%80, px)
			}
			continue
		}
		if px != want {
			t.Fatalf("pixel (%d, %d) is %v, want %v", i%80, row, px, want)
		}
	}
}

func TestAboveTheBatterEveryViewIsEmpty(t *testing.T) {
	s := castTo(Box{L: 100, W: 80, H: 60}, 40, 1, func(_, _, _ float64) int { return 0 })
	var face, side, top Picture
	s.Face(10).Draft(&face, 40, 30)
	s.Lengthwise(10).Draft(&side, 40, 30)
	s.Top(60).Draft(&top, 40, 30)
	fine := refined(t, s.Face(10), 40, 30)
	var long Picture
	if err := s.Lengthwise(10).Refine(context.Background(), &long, 40, 30); err != nil {
		t.Fatal(err)
	}
	for i := range face.Pixels {
		want := 0
		if i/40 < 10 { // 20 of 60 mm are empty: 10 of 30 rows
			want = Empty
		}
		for name, p := range map[string]*Picture{"a face": &face, "a refined face": fine, "a lengthwise cut": &side, "a refined cut": &long} {
			// a pixel whose foot stands on the batter may show it
			if got := p.Label(i%40, i/40); got != want && !(i/40 == 9 && (p == fine || p == &long)) {
				t.Fatalf("%s: pixel (%d, %d) shows %d, want %d", name, i%40, i/40, got, want)
			}
		}
		if top.Label(i%40, i/40) != 0 {
			t.Fatalf("from above pixel (%d, %d) is empty: the surface is wanted", i%40, i/40)
		}
	}
	for z, want := range map[float64]int{-1: 0, 0: 0, 39.9: 0, 40.1: Empty, 70: Empty} {
		if got, face := s.Label(10, 10, z), s.Face(10).Label(10, z); got != want || face != want {
			t.Errorf("at %g mm up lies %d, in the face %d, want %d", z, got, face, want)
		}
	}
}

// The view from above shows what lies just under the level it is cut at, the surface where that is above it, and the bottom at 0.
func TestTheViewFromAboveIsCutWhereItIsAsked(t *testing.T) {
	s := castTo(Box{L: 100, W: 80, H: 60}, 50, 6, func(_, _, z float64) int { return int(z / 10) })
	for z, want := range map[float64]int{-5: 0, 0: 0, 5: 0, 15: 1, 29: 2, 49: 4, 50: 4, 60: 4, 1e9: 4} {
		var pic Picture
		s.Top(z).Draft(&pic, 7, 5)
		for i := range pic.Pixels {
			if pic.Label(i%7, i/7) != want {
				t.Errorf("cut at %g mm pixel %d shows %d, want %d", z, i, pic.Label(i%7, i/7), want)
			}
		}
	}
}

func TestPlacesOutsideTheMouldAreBroughtToItsWalls(t *testing.T) {
	s := cast(Box{L: 100, W: 80, H: 60}, 8, func(x, y, _ float64) int { return int(x/50) + 2*int(y/40) })
	for _, c := range []struct{ x, y, toX, toY float64 }{{-9, 10, 1, 10}, {109, 10, 99, 10}, {10, -9, 10, 1}, {10, 79, 10, 79}} {
		if got, want := s.Label(c.x, c.y, 5), s.Label(c.toX, c.toY, 5); c.x < 100 && got != want {
			t.Errorf("(%g, %g) shows %d, the wall %d", c.x, c.y, got, want)
		}
		if got, want := s.Face(c.x).Label(c.y, 5), s.Face(min(c.x, 100)).Label(c.toY, 5); got != want {
			t.Errorf("the face at %g mm shows %d at %g mm, at the wall %d", c.x, got, c.y, want)
		}
	}
	var out, in Picture
	s.Lengthwise(-40).Draft(&out, 20, 5)
	s.Lengthwise(0).Draft(&in, 20, 5)
	if out.Label(3, 3) != in.Label(3, 3) {
		t.Errorf("a cut left of the mould shows %d, its wall %d", out.Label(3, 3), in.Label(3, 3))
	}
	if part := s.Lengthwise(3).Part(-50, 900); part.from != 0 || part.long != 100 {
		t.Errorf("a part beyond the loaf runs from %g over %g mm, want the whole loaf", part.from, part.long)
	}
	if part := s.Lengthwise(3).Part(60, 20); part.from != 60 || part.long != 0 {
		t.Errorf("a part the wrong way round runs from %g over %g mm, want none", part.from, part.long)
	}
}

func TestPicturesWithoutPixelsAreEmpty(t *testing.T) {
	s := cast(Box{L: 100, W: 80, H: 60}, 1, func(_, _, _ float64) int { return 0 })
	for _, size := range [][2]int{{0, 0}, {0, 5}, {5, 0}, {-3, 5}, {5, -3}} {
		var pic Picture
		pic.Reset(3, 3)
		for name, draw := range map[string]func() error{
			"a face":           func() error { return s.Face(1).Refine(context.Background(), &pic, size[0], size[1]) },
			"a draft":          func() error { s.Face(1).Draft(&pic, size[0], size[1]); return nil },
			"a cut":            func() error { return s.Lengthwise(1).Refine(context.Background(), &pic, size[0], size[1]) },
			"a draft of a cut": func() error { s.Top(1).Draft(&pic, size[0], size[1]); return nil },
		} {
			if err := draw(); err != nil || len(pic.Pixels) != 0 {
				t.Errorf("%s of %v: %d pixels, %v", name, size, len(pic.Pixels), err)
			}
		}
	}
}

// Areas told by hand: portion 0 fills the left half of an 80 by 60 mm face, 1 the upper right quarter, 2 the lower right. They meet along
// 30, 30 and 40 mm.
func TestTouchingCountsTheLengthOfEveryBoundary(t *testing.T) {
	s := cast(Box{L: 200, W: 80, H: 60}, 4, func(_, y, z float64) int {
		switch {
		case y < 40:
			return 0
		case z > 30:
			return 1
		}
		return 2
	})
	got := s.Touching()
	for _, c := range []struct {
		a, b int
		want float64
	}{{0, 1, 0.3}, {0, 2, 0.3}, {1, 2, 0.4}, {0, 3, 0}, {1, 1, 0}, {0, 0, 0}} {
		if !near(got[c.a][c.b], c.want, 0.02) || got[c.a][c.b] != got[c.b][c.a] {
			t.Errorf("%d and %d touch by %.3f and %.3f, want %g", c.a, c.b, got[c.a][c.b], got[c.b][c.a], c.want)
		}
	}
}

// A colour in the first half of the loaf alone touches on the faces of that half alone, another in the other half on those.
func TestTouchingLooksAtTheWholeLoaf(t *testing.T) {
	s := cast(Box{L: 240, W: 80, H: 60}, 3, func(x, y, _ float64) int {
		switch {
		case y < 40:
			return 0
		case x < 120:
			return 1
		}
		return 2
	})
	if got := s.Touching(); !near(got[0][1], 0.5, 1e-9) || !near(got[0][2], 0.5, 1e-9) {
		t.Errorf("a colour in half of the loaf touches by %.3f, the other by %.3f", got[0][1], got[0][2])
	}
}

// Half full, with 0 on the left and 1 under 2 on the right: they meet along 18, 12 and 40 mm, and the air over them is no portion.
func TestTouchingLeavesOutWhatIsEmpty(t *testing.T) {
	s := castTo(Box{L: 240, W: 80, H: 60}, 30, 3, func(_, y, z float64) int {
		switch {
		case y < 40:
			return 0
		case z < 18:
			return 1
		}
		return 2
	})
	got := s.Touching()
	for pair, want := range map[[2]int]float64{{0, 1}: 18. / 70, {0, 2}: 12. / 70, {1, 2}: 40. / 70} {
		if !near(got[pair[0]][pair[1]], want, 0.03) {
			t.Errorf("%v touch by %.3f, want %.3f", pair, got[pair[0]][pair[1]], want)
		}
	}
	if got := s.Upto(0).Touching(); got[0][1] != 0 {
		t.Errorf("an empty mould touches by %g", got)
	}
}

// A boundary across the loaf in the middle of a column of pixels: the column shows half of either side, its neighbours one alone.
func TestABoundaryAcrossTheLoafIsDrawnWithinItsColumn(t *testing.T) {
	s := cast(Box{L: 80, W: 60, H: 60}, 2, below(func(x, _, _ float64) float64 { return x - 20.5 }))
	for name, c := range map[string]cut{"lengthwise": s.Lengthwise(30), "from above": s.Top(30)} {
		var pic Picture
		if err := c.Refine(context.Background(), &pic, 80, 60); err != nil {
			t.Fatal(err)
		}
		for i, px := range pic.Pixels {
			column, want := i%80, Pixel{Portion: [3]uint8{0}, Part: [3]uint8{255}}
			switch {
			case column == 20:
				want = Pixel{Portion: [3]uint8{0, 1}, Part: [3]uint8{128, 127}}
			case column > 20:
				want.Portion[0] = 1
			}
			if px != want {
				t.Fatalf("%s: pixel (%d, %d) is %v, want %v", name, column, i/80, px, want)
			}
		}
	}
}

// The pot is drawn with its right on the right and its far side up, however high the picture: stripes of the pot stand upright, the first
// on the left; of a cake the first piece is cut from the left against the sun, and so lies lower left.
func TestThePotIsDrawnTheRightWayRound(t *testing.T) {
	for name, c := range map[string]struct {
		layout layout
		want   [4]int // upper left, upper right, lower left, lower right
	}{
		"stripes": {&bands{beside{until: []float64{0.5, 1}, portion: []int{3, 1}, act: []int{0, 0}}}, [4]int{3, 1, 3, 1}},
		"a cake":  {&sectors{beside{until: []float64{0.25, 0.5, 0.75, 1}, portion: []int{0, 1, 2, 3}, act: make([]int, 4)}}, [4]int{3, 2, 0, 1}},
	} {
		p := &PotView{layout: c.layout}
		for _, size := range [][2]int{{40, 40}, {40, 20}} {
			var draft, fine Picture
			p.Draft(&draft, size[0], size[1])
			if err := p.Refine(context.Background(), &fine, size[0], size[1]); err != nil {
				t.Fatal(err)
			}
			for i, want := range c.want {
				x, y := size[0]/4+i%2*size[0]/2, size[1]/4+i/2*size[1]/2
				if got := draft.Label(x, y); got != want || fine.Label(x, y) != want {
					t.Errorf("%s of %v: at (%d, %d) lies %d, refined %d, want %d", name, size, x, y, got, fine.Label(x, y), want)
				}
			}
			if draft.Label(0, 0) != Empty || fine.Label(size[0]-1, size[1]-1) != Empty {
				t.Errorf("%s of %v: the corners are not empty", name, size)
			}
		}
	}
}
