package swirl

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/script"
	outline "pourbench/pour/shape"
)

// set is a loaf of one colour with two balls of 20 mm, 4 out, the first 10 mm from the left wall.
func set(t testing.TB) (*Swirl, Topping) {
	t.Helper()
	s := mustPour(t, loaf(script.Layers, 1))
	box := s.recipe.Box
	ball := relief.Piece{Outline: outline.RoundOutline(20), X: 60, Y: 20, High: 20, Out: 4, Ball: true, Stuff: 1}
	other := ball
	other.X, other.Y = 100, 50
	field := relief.New(relief.Recipe{L: box.L, W: box.W, H: box.H, Pieces: []relief.Piece{ball, other}})
	return s, Topping{Stands: field, Above: field, Palette: []color.NRGBA{{255, 255, 255, 255}, {0, 0, 255, 255}}}
}

// blue counts the pixels of an image that are blue, mm².
func blue(img *image.NRGBA, pxPerMM float64) float64 {
	n := 0.0
	for y := img.Rect.Min.Y; y < img.Rect.Max.Y; y++ {
		for x := img.Rect.Min.X; x < img.Rect.Max.X; x++ {
			if c := img.NRGBAAt(x, y); c.A > 127 && c.B > 90 && c.R < 60 && c.G < 60 {
				n++
			}
		}
	}
	return n / (pxPerMM * pxPerMM)
}

// By hand: a face through the middle of a ball of 20 mm shows π·100 of it, from 4 mm above the base to 16 below; one of a bar before it shows the cap.
func TestAnEmbedTakesThePlaceOfBatterInAFace(t *testing.T) {
	s, top := set(t)
	const perMM = 8
	img, err := RenderBar(context.Background(), s.Face(60), 75, palette(), top, perMM, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	if got := blue(img, perMM); math.Abs(got-100*math.Pi) > 6 {
		t.Errorf("the face shows %.1f mm² of it, want %.1f", got, 100*math.Pi)
	}
	box := s.recipe.Box
	if h := img.Rect.Dy(); h != int(math.Round(perMM*box.H))+4*perMM {
		t.Errorf("the picture is %d high", h)
	}
	before, err := RenderBar(context.Background(), s.Face(45), 75, palette(), top, perMM, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	if got := blue(before, perMM); math.Abs(got-(100*math.Acos(0.6)-48)) > 3 {
		t.Errorf("before it %.1f mm² of its cap show", got)
	}
}

// The wall at the left, seen from end A, is at the top of whatever is seen from above, planed or as it stands: what stands near it does too, and its
// shadow falls to the right and down.
func TestWhatIsSeenFromAboveIsTheRightWayUp(t *testing.T) {
	s, top := set(t)
	box := s.recipe.Box
	img, err := RenderAbove(context.Background(), s, palette(), top, []float64{80}, 4, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	if img.Rect.Dx() != int(4*box.L) || img.Rect.Dy() != int(4*box.W) {
		t.Fatalf("the picture is %v", img.Rect)
	}
	for _, at := range []image.Point{{240, 80}, {400, 200}} {
		if c := img.NRGBAAt(at.X, at.Y); c.B < 100 || c.R > 60 {
			t.Errorf("at %v it is %v, want a ball", at, c)
		}
	}
	planed, err := RenderLoaf(context.Background(), s.Skim(), palette(), top, 4, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	if c, opposite := planed.NRGBAAt(240, 80), planed.NRGBAAt(240, planed.Rect.Dy()-80); c.B < 100 || c.R > 60 || opposite.B > 100 {
		t.Errorf("planed it is %v where a ball stands, %v opposite", c, opposite)
	}
	plain, marked := img.NRGBAAt(300, 2), img.NRGBAAt(320, 2)
	if marked.R >= plain.R {
		t.Errorf("the cut is not marked: %v beside %v", marked, plain)
	}
	var surface Picture
	s = mustPour(t, loaf(script.Drop, 1)) // whose surface has more than one colour
	for down, view := range map[float64]*Long{skinMM: s.Above(), SkimMM: s.Skim()} {
		view.Draft(&surface, 50, 20)
		for x := range 50 {
			for y := range 20 {
				if got, want := surface.Label(x, y), s.Label(box.L*(float64(x)+0.5)/50, box.W*(float64(y)+0.5)/20, box.H-down); got != want {
					t.Fatalf("%v mm down the surface shows %d at (%d, %d), want %d", down, got, x, y, want)
				}
			}
		}
	}
}

func TestNothingStandingChangesNoPixel(t *testing.T) {
	s, top := set(t)
	empty := top
	empty.Stands = relief.New(relief.Recipe{L: s.recipe.Box.L, W: s.recipe.Box.W, H: s.recipe.Box.H})
	bare, err := RenderBar(context.Background(), s.Face(60), 75, palette(), Topping{}, 4, Soap())
	if err != nil {
		t.Fatal(err)
	}
	under, err := RenderBar(context.Background(), s.Face(60), 75, palette(), empty, 4, Soap())
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(bare.Pix, under.Pix) {
		t.Error("a field of nothing changed the picture")
	}
}

func TestEveryBarOfAContactSheetHasItsOwnPieces(t *testing.T) {
	s, top := set(t)
	bars := []Bar{{0, 25}, {25, 50}, {50, 75}, {75, 87.5}, {87.5, 112.5}}
	img, err := s.Contact(context.Background(), palette(), Sheet{Bars: bars, Columns: 5, PxPerMM: 4, GapMM: 4, Top: top, Stands: true, Cuts: []float64{25, 50}})
	if err != nil {
		t.Fatal(err)
	}
	box := s.recipe.Box
	w, high := int(4*box.W), int(4*(box.H+4))
	for k, has := range []bool{false, false, true, false, true} {
		x := 16 + k*(w+16)
		if got := blue(part(img, image.Rect(x, 16, x+w, 16+high)), 4) > 10; got != has {
			t.Errorf("bar %d has a piece: %v", k+1, got)
		}
	}
	if got := blue(part(img, image.Rect(0, 32+high, img.Rect.Dx(), img.Rect.Dy())), 4); got < 500 {
		t.Errorf("below them the loaf from above shows %.0f mm² of its pieces", got)
	}
}

func TestColoursBlendInLight(t *testing.T) {
	s := NewStuffs([]color.NRGBA{{255, 255, 255, 255}})
	half := s.Over(color.NRGBA{A: 255}, relief.Dot{Part: [2]uint8{128}, Bright: relief.Lit})
	if half.R < 186 || half.R > 190 || half.A != 255 { // half the light of white is sRGB 188
		t.Errorf("half of white over black is %v", half)
	}
	if got := s.Over(color.NRGBA{1, 2, 3, 255}, relief.Dot{}); got != (color.NRGBA{1, 2, 3, 255}) {
		t.Errorf("nothing over a colour is %v", got)
	}
	if got := s.Over(color.NRGBA{}, relief.Dot{Part: [2]uint8{255}, Bright: relief.Lit}); got != (color.NRGBA{255, 255, 255, 255}) {
		t.Errorf("white over nothing is %v", got)
	}
}

// Soap in the shade is warmer than in the light, and where it mirrors a window it is whiter.
func TestSoapIsWarmInTheShadeAndWhiteInTheGloss(t *testing.T) {
	s := NewStuffs([]color.NRGBA{{180, 180, 180, 255}, {40, 60, 200, 255}})
	at := func(stuff, bright uint8) color.NRGBA {
		return s.Over(color.NRGBA{A: 255}, relief.Dot{Stuff: [2]uint8{stuff}, Part: [2]uint8{255}, Bright: bright})
	}
	if c := at(0, 80); c.R <= c.B || c.R > 180 || int(c.R)-int(c.B) > 20 {
		t.Errorf("grey in the shade is %v", c)
	}
	if c := at(0, relief.Lit); c.R != 180 || c.G != 180 || c.B != 180 {
		t.Errorf("grey in the light is %v", c)
	}
	if c, gloss := at(1, relief.Lit), at(1, 160); gloss.R-c.R <= gloss.B-c.B {
		t.Errorf("blue is %v, in the gloss %v", c, gloss)
	}
}

// BenchmarkPNGDressed goes from the recipe to a finished file of a bar with rosettes, an embed and sprinkles.
func BenchmarkPNGDressed(b *testing.B) {
	for b.Loop() {
		s := mustPour(b, loaf(script.Drop, 1))
		box := s.recipe.Box
		r := relief.Recipe{L: box.L, W: box.W, H: box.H, Strewn: []relief.Strewn{{Look: relief.Grains, SizeMM: 1.5, Coverage: 0.1, Stuff: 2}}}
		r.Icing = relief.Icing{
			Shape: relief.Rosette, Points: 6, Valley: 0.7, Strand: 26.7, Lies: 7.2, Overlap: 0.2, Tiers: []float64{8}, Volume: 973, Shares: []float64{0.6, 0.4},
		}
		for x := 12.5; x < box.L; x += 25 {
			r.Icing.Spots = append(r.Icing.Spots, relief.Spot{X: x, Y: box.W / 4}, relief.Spot{X: x, Y: 3 * box.W / 4})
			r.Pieces = append(r.Pieces, relief.Piece{Outline: outline.RoundOutline(18), X: x, Y: box.W / 2, High: 18, Out: 5, Ball: true, Stuff: 3})
		}
		img, err := RenderBar(context.Background(), s.Face(75), 100, palette(), Topping{Stands: relief.New(r), Palette: eight()}, 15, Soap())
		if err != nil {
			b.Fatal(err)
		}
		fast := png.Encoder{CompressionLevel: png.BestSpeed}
		if err := fast.Encode(io.Discard, img); err != nil {
			b.Fatal(err)
		}
	}
}
