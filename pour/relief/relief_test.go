package relief

import (
	"context"
	"image"
	"math"
	"testing"

	"pourbench/pour/shape"
)

// looked draws a view or fails.
func looked(t *testing.T, v *View, pxPerMM float64) *Picture {
	t.Helper()
	wide, high := v.SizeMM()
	w, h := int(math.Round(wide*pxPerMM)), int(math.Round(high*pxPerMM))
	var p Picture
	if err := v.Draw(context.Background(), &p, w, h, image.Rect(0, 0, w, h)); err != nil {
		t.Fatal(err)
	}
	return &p
}

// areaOf is what a stuff covers of a picture, mm².
func areaOf(p *Picture, stuff uint8, pxPerMM float64) float64 {
	sum := 0.0
	for _, d := range p.Dots {
		for k, part := range d.Part {
			if d.Stuff[k] == stuff {
				sum += float64(part) / 255
			}
		}
	}
	return sum / (pxPerMM * pxPerMM)
}

func about(t *testing.T, what string, got, want, part float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > part*math.Abs(want) {
		t.Errorf("%s is %.5g, want %.5g within %g %%", what, got, want, 100*part)
	}
}

// kiss, coils and borders are those of the printed worked examples, in grams there and in mm³ here.
func units() map[string]struct {
	icing Icing
	want  float64
	part  float64
} {
	one := []Spot{{50, 40}}
	star := Icing{Points: 6, Valley: 0.75, Spots: one, Shares: []float64{1}}
	with := func(change func(*Icing)) Icing { c := star; change(&c); return c }
	return map[string]struct {
		icing Icing
		want  float64
		part  float64
	}{
		"a kiss, straight": {with(func(c *Icing) { c.Shape, c.Wide, c.High, c.Profile = Dollop, 36, 34, 1 }), 8262, 0.005},
		"a kiss, round":    {with(func(c *Icing) { c.Shape, c.Wide, c.High, c.Profile = Dollop, 36, 34, 0.5 }), 12393, 0.005},
		"a kiss between":   {with(func(c *Icing) { c.Shape, c.Wide, c.High, c.Profile = Dollop, 36, 34, 0.75 }), 9914.4, 0.005},
		"a rosette": {with(func(c *Icing) {
			c.Shape, c.Strand, c.Lies, c.Overlap, c.Tiers, c.Volume = Rosette, 26.73468, 7.21, 0.2, []float64{8}, 973.15090635
		}), 973.15090635, 0.01},
		"a small rosette": {with(smallRosette), 1979.557, 0.01},
		"a shell": {with(func(c *Icing) {
			c.Points, c.Valley = 8, 0.8
			c.Shape, c.Wide, c.High, c.Head, c.Tail, c.Volume = Shell, 16, 11, 9, 12, 1077.63655
		}), 1077.63655, 0.01},
		"a rope": {with(func(c *Icing) {
			c.Points = 0
			c.Shape, c.Strand, c.Lies, c.Wind, c.Pitch, c.Long = Rope, 16*math.Pi, 8, 5, 14, 98
		}), 59274.5366 * 98 / 480, 0.01},
		"a straight rope of a star": {with(func(c *Icing) { c.Shape, c.Strand, c.Lies, c.Long = Rope, 26.73468, 7.21, 60 }), 26.73468 * 60, 0.01},
		"a ruffle": {with(func(c *Icing) {
			c.Points = 0
			c.Shape, c.Strand, c.Lies, c.Swing, c.Wave, c.Long, c.Foot, c.Edge = Ruffle, 48, 16, 6, 20, 80, 4, 2
		}), 18646.3138 * 80 / 240, 0.01},
		"a spooned top in waves":  {with(func(c *Icing) { c.Shape, c.Layer, c.Relief = Spooned, 8, 12 }), 100 * 80 * (8 + 6), 0.005},
		"a spooned top in swoops": {with(func(c *Icing) { c.Shape, c.Layer, c.Relief, c.Pattern = Spooned, 8, 12, Swoops }), 100 * 80 * (8 + 4), 0.005},
		"a spooned top in points": {with(func(c *Icing) { c.Shape, c.Layer, c.Relief, c.Pattern = Spooned, 8, 12, Points }), 100 * 80 * (8 + 12*math.Pi/12), 0.005},
	}
}

// smallRosette is two coils to 5.08 mm upon each other out of a star of 11.43 and 8.128 mm, 21.59 wide and 22.86 high: a strand that hardly goes round.
func smallRosette(c *Icing) {
	c.Points, c.Valley = 6, 8.128/11.43
	c.Shape, c.Strand, c.Lies, c.Overlap, c.Tiers, c.Volume = Rosette, 69.67728, 11.43, 0.2, []float64{5.08, 0}, 1979.557
}

// Coils upon each other are drawn about as high as they are said to stand, a strand's width each, and not as a thin peak or a puddle: where a coil hardly goes
// round, its body is drawn under it. Turns run into each other, so that a tenth or so of the height is lost.
func TestCoilsUponEachOtherAreDrawnAsHighAsTheyStand(t *testing.T) {
	small := Icing{Shares: []float64{1}, Spots: []Spot{{X: 50, Y: 40}}}
	smallRosette(&small)
	if got := New(Recipe{L: 100, W: 80, H: 50, Icing: small}).PeakMM(); got < 0.85*22.86 || got > 1.05*22.86 {
		t.Errorf("a small rosette of 22.86 mm is drawn %.2f mm high", got)
	}
}

// What is drawn of a unit is as much icing as the closed form says: its heights are summed over another grid than they were fitted on.
func TestAUnitIsDrawnAsLargeAsItIs(t *testing.T) {
	for name, c := range units() {
		f := New(Recipe{L: 100, W: 80, H: 50, Seed: 5, Icing: c.icing})
		const step = 0.13
		sum := 0.0
		for x := step / 2; x < 100; x += step {
			for y := step / 2; y < 80; y += step {
				sum += f.at(x, y).z
			}
		}
		about(t, name, sum*step*step, c.want, c.part)
	}
}

// The worked examples' outer measures: a rosette of 23.21 mm, a kiss 36 across its ridges and 34 high, a shell 21 by 16.
func TestAUnitIsDrawnAsWideAndHighAsItIs(t *testing.T) {
	for name, want := range map[string]struct{ wide, across, high, least float64 }{
		"a kiss, straight": {36, 36, 34, 0.93}, "a rosette": {23.21, 23.21, 0, 0.7}, "a shell": {21, 16, 11, 0.97},
	} {
		f := New(Recipe{L: 100, W: 80, H: 50, Icing: units()[name].icing})
		low, high := shape.Point{X: 1e9, Y: 1e9}, shape.Point{}
		for x := 0.05; x < 100; x += 0.1 {
			for y := 0.05; y < 80; y += 0.1 {
				if f.at(x, y).z > 0 {
					low, high = shape.Point{X: min(low.X, x), Y: min(low.Y, y)}, shape.Point{X: max(high.X, x), Y: max(high.Y, y)}
				}
			}
		}
		if got := high.X - low.X; got > want.wide+0.2 || got < want.least*want.wide { // a star stands between its ridges, and a coil reaches out where it ends alone
			t.Errorf("%s is %.2f mm long, want %.2f", name, got, want.wide)
		}
		if got := high.Y - low.Y; got > want.across+0.2 || got < want.least*want.across {
			t.Errorf("%s is %.2f mm across, want %.2f", name, got, want.across)
		}
		if got := f.PeakMM(); want.high > 0 && math.Abs(got-want.high) > 0.06*want.high {
			t.Errorf("%s stands %.2f mm high, want %.2f", name, got, want.high)
		}
	}
}

// By hand: a ball of 20 mm is a disc of π·100 where a plane goes through its middle, π·(100 − 36) six mm off it; a box of 18 × 10 set 20 deep and turned
// by a quarter is 18 across and 20 deep.
func TestAPlaneCutsAPieceInItsSection(t *testing.T) {
	const perMM = 10
	ball := Piece{Outline: shape.RoundOutline(20), X: 50, Y: 40, High: 20, Out: 4, Ball: true}
	box := Piece{Outline: shape.BoxOutline(18, 10), X: 50, Y: 40, High: 20, Out: 0}
	turned := box
	turned.Turn = math.Pi / 2
	oval := Piece{Outline: shape.OvalOutline(24, 12), X: 50, Y: 40, High: 15, Out: 5, Turn: 0.4}
	rod := Piece{Outline: shape.BoxOutline(100, 16), X: 50, Y: 40, High: 16, Out: 3, RoundRod: true}
	bay := Piece{Outline: shape.Outline{Corners: []shape.Point{{X: -8, Y: -8}, {X: 8, Y: -8}, {X: 8, Y: 8}, {X: 0, Y: 0}, {X: -8, Y: 8}}}, X: 50, Y: 40, High: 10, Out: 2}
	chord := func(x float64) float64 { // of the turned oval at x off its middle, by its implicit equation
		sin, cos := math.Sincos(0.4)
		a := sin*sin/144 + cos*cos/36
		b := x * sin * cos * (1./144 - 1./36)
		c := x*x*(cos*cos/144+sin*sin/36) - 1
		return 2 * math.Sqrt(b*b-a*c) / a
	}
	for _, c := range []struct {
		name  string
		piece Piece
		at    float64
		want  float64
	}{
		{"a ball through its middle", ball, 50, 100 * math.Pi},
		{"a ball six off", ball, 44, 64 * math.Pi},
		{"a box", box, 50, 200},
		{"a box turned", turned, 52, 360},
		{"an oval", oval, 53, 15 * chord(3)},
		{"a round rod", rod, 10, 64 * math.Pi},
		{"a piece with a bay", bay, 50 - 1e-9, 80},
	} {
		f := New(Recipe{L: 100, W: 80, H: 50, Pieces: []Piece{c.piece}})
		about(t, c.name, areaOf(looked(t, f.Face(c.at, c.at+0.01), perMM), 0, perMM), c.want, 0.01)
	}
	f := New(Recipe{L: 100, W: 80, H: 50, Pieces: []Piece{oval}})
	about(t, "an oval from above", areaOf(looked(t, f.Above(), perMM), 0, perMM), math.Pi*12*6, 0.01)
	about(t, "an oval in a level cut", areaOf(looked(t, f.Level(3), perMM), 0, perMM), math.Pi*12*6, 0.01)
	if got := areaOf(looked(t, f.Level(11), perMM), 0, perMM); got != 0 {
		t.Errorf("below the oval a level cut shows %.2f mm² of it", got)
	}
}

// By hand: of a ball 20 wide standing 4 out, a face before it shows the cap alone: a circle segment of height 4, 10²·acos(0.6) − 6·8 = 44.73 mm².
func TestAPieceBehindAFaceShowsWhatStandsOut(t *testing.T) {
	ball := Piece{Outline: shape.RoundOutline(20), X: 62, Y: 40, High: 20, Out: 4, Ball: true}
	f := New(Recipe{L: 100, W: 80, H: 50, Pieces: []Piece{ball}})
	const perMM = 10
	about(t, "the cap", areaOf(looked(t, f.Face(50, 75), perMM), 0, perMM), 100*math.Acos(0.6)-48, 0.015)
	if got := areaOf(looked(t, f.Face(25, 50), perMM), 0, perMM); got != 0 {
		t.Errorf("a bar before it shows %.2f mm² of it", got)
	}
	if got := areaOf(looked(t, f.Face(75, 100), perMM), 0, perMM); got != 0 {
		t.Errorf("a bar behind it shows %.2f mm² of it", got)
	}
	about(t, "the section in a cut along the loaf", areaOf(looked(t, f.Side(40), perMM), 0, perMM), 100*math.Pi, 0.01)
}

// A grain hides the sky behind it: what is strewn covers what it is asked to, from above.
func TestGrainsCoverWhatTheyAreAskedTo(t *testing.T) {
	const perMM = 4
	for _, look := range []string{Grains, Flakes, Dust, Sheen, Drizzle} {
		for _, want := range []float64{0.05, 0.15, 0.4} {
			f := New(Recipe{L: 125, W: 80, H: 50, Seed: 3, Strewn: []Strewn{{Look: look, SizeMM: 1.5, Coverage: want, Stuff: 2}}})
			got := areaOf(looked(t, f.Above(), perMM), 2, perMM) / (125 * 80)
			if math.Abs(got-want) > 0.2*want {
				t.Errorf("%s of %g cover %.3f", look, want, got)
			}
		}
	}
}

func TestColoursTakeTurnsByTheirShares(t *testing.T) {
	take, count := newTurns([]float64{0.5, 0.3, 0.2}), [3]int{}
	for range 100 {
		count[take.next()]++
	}
	if count != [3]int{50, 30, 20} {
		t.Errorf("of 100 units the colours get %v", count)
	}
}

func TestWhatIsNotThereIsNotDrawn(t *testing.T) {
	f := New(Recipe{L: 100, W: 80, H: 50, Icing: Icing{Shape: Dollop}, Pieces: []Piece{{}}, Strewn: []Strewn{{Look: Grains}}})
	if f.PeakMM() != 0 {
		t.Errorf("nothing stands %g mm high", f.PeakMM())
	}
	for _, v := range []*View{f.Above(), f.Face(0, 25), f.Side(40), f.Level(3)} {
		for _, d := range looked(t, v, 2).Dots {
			if d != (Dot{}) {
				t.Fatalf("a picture of nothing holds %+v", d)
			}
		}
	}
}

// A loaf whose pieces change sides gives the mirrored face and the mirrored view from above, but for the light.
func TestTheMirrorOfALoafMirrors(t *testing.T) {
	pieces := []Piece{
		{Outline: shape.BoxOutline(18, 10), X: 40, Y: 22, High: 20, Out: 6, Turn: 0.5},
		{Outline: shape.RoundOutline(16), X: 55, Y: 60, High: 16, Out: 5, Ball: true, Stuff: 1},
		{Outline: shape.OvalOutline(24, 12), X: 44, Y: 44, High: 12, Out: 3, Turn: -0.3, Stuff: 2},
	}
	mirrored := make([]Piece, len(pieces))
	for i, p := range pieces {
		p.Y, p.Turn = 80-p.Y, -p.Turn
		mirrored[i] = p
	}
	one, other := New(Recipe{L: 100, W: 80, H: 50, Pieces: pieces}), New(Recipe{L: 100, W: 80, H: 50, Pieces: mirrored})
	for name, views := range map[string][2]*View{"a face": {one.Face(41, 66), other.Face(41, 66)}, "a level cut": {one.Level(2), other.Level(2)}} {
		a, b := looked(t, views[0], 4), looked(t, views[1], 4)
		for y := range a.H {
			for x := range a.W {
				u, v := a.W-1-x, y
				if name == "a level cut" {
					u, v = x, a.H-1-y
				}
				if got, want := b.Label(u, v), a.Label(x, y); got != want {
					t.Fatalf("%s shows %d at (%d, %d), its mirror image %d", name, want, x, y, got)
				}
			}
		}
	}
}

// A picture drawn in parts is the picture drawn at once.
func TestAPictureIsTheSumOfItsParts(t *testing.T) {
	f := New(Recipe{L: 100, W: 80, H: 50, Seed: 2, Icing: units()["a rosette"].icing, Strewn: []Strewn{{Look: Grains, SizeMM: 2, Coverage: 0.1, Stuff: 3}}})
	for _, v := range []*View{f.Above(), f.Face(40, 65), f.Side(40)} {
		whole := looked(t, v, 3)
		var p Picture
		for x := 0; x < whole.W; x += 50 {
			at := image.Rect(x, 7, min(x+50, whole.W), whole.H)
			if err := v.Draw(context.Background(), &p, whole.W, whole.H, at); err != nil {
				t.Fatal(err)
			}
			for j := range p.H {
				for i := range p.W {
					if got, want := p.Dots[j*p.W+i], whole.Dots[(j+7)*whole.W+x+i]; got != want {
						t.Fatalf("(%d, %d) is %+v in a part and %+v in the whole", x+i, j+7, got, want)
					}
				}
			}
		}
	}
}

func TestRecipesThatDifferAnywhereAreNotEqual(t *testing.T) {
	make1 := func() *Recipe {
		c := units()["a rosette"].icing
		return &Recipe{
			L: 100, W: 80, H: 50, Icing: c, Pieces: []Piece{{Outline: shape.RoundOutline(9), High: 9, X: 4, Y: 5}},
			Strewn: []Strewn{{Look: Grains, SizeMM: 2, Coverage: 0.1}},
		}
	}
	if !make1().Equal(make1()) || make1().Equal(nil) {
		t.Fatal("equal recipes are not equal, or nothing is")
	}
	for i, change := range []func(*Recipe){
		func(r *Recipe) { r.L++ },
		func(r *Recipe) { r.Seed++ },
		func(r *Recipe) { r.Icing.Striped = !r.Icing.Striped },
		func(r *Recipe) { r.Icing.Volume++ },
		func(r *Recipe) { r.Icing.Tiers = []float64{7} },
		func(r *Recipe) { r.Icing.Spots = []Spot{{50, 41}} },
		func(r *Recipe) { r.Icing.Shares = []float64{0.5, 0.5} },
		func(r *Recipe) { r.Pieces[0].Y++ },
		func(r *Recipe) { r.Pieces[0].Outline.Along++ },
		func(r *Recipe) { r.Pieces = nil },
		func(r *Recipe) { r.Strewn[0].Coverage = 0.2 },
	} {
		other := make1()
		change(other)
		if make1().Equal(other) {
			t.Errorf("change %d is not seen", i)
		}
	}
}

// By hand: the upper edge of a piece seen from the side is brighter by two fifths, its upright edge darker by three tenths, its foot by 0.42; half way into
// an edge it is a quarter of that, and a round one has no edges but its foot.
func TestAPieceIsLitAsASolid(t *testing.T) {
	cube, rod := &solid{top: 10}, &solid{top: 10, radius: 5}
	for name, c := range map[string]struct {
		s    *solid
		in   float64
		up   float64
		want float64
	}{
		"middle": {cube, 5, 5, 1}, "top": {cube, 5, 10, 1.4}, "half way": {cube, 5, 10 - 0.75, 1.1}, "side": {cube, 0, 5, 0.7}, "foot": {cube, 5, 0, 0.58},
		"round": {rod, 0, 10, 1}, "its foot": {rod, 5, 0, 0.58},
	} {
		if got := c.s.rounded(c.in, c.up); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: it is %.3f bright, want %.3f", name, got, c.want)
		}
	}
}
