package picture

import (
	"context"
	"errors"
	"image"
	"image/color"
	"slices"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// refined is a shot drawn in full.
func refined(t *testing.T, s Shot) *Plate {
	t.Helper()
	plate, err := Draft(s)
	if err != nil {
		t.Fatal(err)
	}
	fine, err := plate.Refine(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return fine
}

func TestAPictureOfPixelsIsTheBarItsCellsShow(t *testing.T) {
	ground := color.NRGBA{R: 30, G: 31, B: 32, A: 255}
	for view := View(0); int(view) < Views; view++ {
		s := meadow(view, 60, 24)
		s.Grain = image.Pt(7, 15)
		fine := refined(t, s)
		dye := dyes(True)
		dye.Ground = ground
		img, err := fine.Image(t.Context(), dye)
		if err != nil {
			t.Fatal(err)
		}
		if img.Bounds() != image.Rect(0, 0, 60*7, 24*15) {
			t.Fatalf("%v: the picture is %v", view, img.Bounds())
		}
		for y := range 24 * 15 {
			for x := range 60 * 7 {
				in := false
				for _, tile := range fine.Tiles() {
					in = in || image.Pt(x/7, y/15).In(tile.Rect)
				}
				c := img.NRGBAAt(x, y)
				if c.A != 255 {
					t.Fatalf("%v: pixel %d, %d lets the terminal through: %v", view, x, y, c)
				}
				if !in && c != ground {
					t.Fatalf("%v: pixel %d, %d is %v outside every bar", view, x, y, c)
				}
			}
		}
		// The middle of every tile is soap of one of the colours or between them, and its label is that of the traced picture.
		for i := range fine.tiles {
			tile := &fine.tiles[i]
			w, h := fine.pixels(tile)
			if mid := tile.crown + (h-tile.crown)/2; tile.over.W > 0 && tile.over.Label(w/2, mid) != relief.Bare {
				continue // icing lies there
			}
			label := tile.base.Label(w/2, (h-tile.crown)/2)
			px := tile.base.Pixels[(h-tile.crown)/2*w+w/2]
			got := img.NRGBAAt(tile.rect.Min.X*7+w/2, tile.rect.Min.Y*15+tile.crown+(h-tile.crown)/2)
			if px.Part[0] == 255 && !near(got, dye.Base[label]) {
				t.Errorf("%v: the middle of tile %d is %v, its portion %v", view, i, got, dye.Base[label])
			}
		}
	}
}

// near says whether a colour is another, but for its veins and the streaks of the blade.
func near(a, b color.NRGBA) bool {
	const most = 14
	d := func(x, y uint8) bool { return int(x)-int(y) <= most && int(y)-int(x) <= most }
	return d(a.R, b.R) && d(a.G, b.G) && d(a.B, b.B)
}

func TestABarHasRoundCornersOnTheTerminalsGround(t *testing.T) {
	s := meadow(Bar, 60, 24)
	s.Grain = image.Pt(8, 16)
	plate, err := Draft(s)
	if err != nil {
		t.Fatal(err)
	}
	dye := dyes(True)
	dye.Ground = color.NRGBA{R: 250, G: 251, B: 252, A: 255}
	img, err := plate.Image(t.Context(), dye)
	if err != nil {
		t.Fatal(err)
	}
	r := plate.Tiles()[0].Rect
	for _, at := range []image.Point{{r.Min.X * 8, r.Max.Y*16 - 1}, {r.Max.X*8 - 1, r.Max.Y*16 - 1}} {
		if c := img.NRGBAAt(at.X, at.Y); c != dye.Ground {
			t.Errorf("the corner at %v is %v", at, c)
		}
	}
	if c := img.NRGBAAt((r.Min.X+r.Max.X)*4, r.Max.Y*16-1); c == dye.Ground {
		t.Error("the lower edge is ground")
	}
}

// A bar has a rim that is lit and light that falls off over it; a loaf drawn in lengths goes on where one of them ends.
func TestALengthOfTheLoafHasNoRim(t *testing.T) {
	for view, rim := range map[View]bool{Bar: true, Bars: true, Long: false} {
		s := meadow(view, 60, 24)
		s.Grain = image.Pt(7, 15)
		p := refined(t, s)
		for i := range p.tiles {
			if f := p.finish(&p.tiles[i], dyes(True)); rim != (f.Bevel > 0) || rim != (f.Falloff > 0) || rim != (f.CornerMM > 0) {
				t.Errorf("%v: tile %d has a bevel of %g, a falloff of %g and corners of %g mm", view, i, f.Bevel, f.Falloff, f.CornerMM)
			}
		}
	}
}

func TestAPictureOfPixelsStopsWhenItIsNotWanted(t *testing.T) {
	s := meadow(Bar, 60, 24)
	s.Grain = image.Pt(8, 16)
	plate, err := Draft(s)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := plate.Image(ctx, dyes(True)); !errors.Is(err, context.Canceled) {
		t.Errorf("it ends with %v", err)
	}
}

func TestACellIsDrawnInAsManyPixelsAsThereIsTimeFor(t *testing.T) {
	for _, c := range []struct {
		cell image.Point
		w, h int
		want image.Point
	}{
		{image.Pt(9, 18), 60, 24, image.Pt(9, 18)},
		{image.Pt(3, 6), 290, 200, image.Pt(3, 6)},
	} {
		if got := GrainFor(c.cell, c.w, c.h); got != c.want {
			t.Errorf("%v in %d × %d cells: %v, want %v", c.cell, c.w, c.h, got, c.want)
		}
	}
	for _, cell := range []image.Point{{40, 80}, {20, 40}, {16, 16}, {100, 30}, {30, 190}} {
		got := GrainFor(cell, 200, 60)
		shape := float64(got.X) / float64(got.Y) * float64(cell.Y) / float64(cell.X)
		if got.X*got.Y*200*60 > MostPixels || shape < 0.6 || shape > 1.7 {
			t.Errorf("%v becomes %v, of shape %.2f", cell, got, shape)
		}
	}
}

// Bare pixels have the colours of the jugs, but at the rim; on soap fewer have, and it is another picture.
func TestBarePixelsAreTheColoursAlone(t *testing.T) {
	s := meadow(Bar, 20, 8)
	s.Stands, s.Grain = nil, image.Pt(4, 8)
	p := draft(t, s)
	d := dyes(True)
	own := map[bool]int{}
	for _, d.Bare = range []bool{false, true} {
		img, err := p.Image(context.Background(), d)
		if err != nil {
			t.Fatal(err)
		}
		for y := range img.Rect.Dy() {
			for x := range img.Rect.Dx() {
				if slices.Contains(d.Base, img.NRGBAAt(x, y)) {
					own[d.Bare]++
				}
			}
		}
	}
	if own[true] <= own[false] {
		t.Errorf("%d bare pixels have a jug's own colour, %d of soap", own[true], own[false])
	}
	if soap := dyes(True); soap.Same(d) {
		t.Error("bare or not is the same dye: the key would draw nothing anew")
	}
}

// What is drawn in cells traces no veins, which only pixels show.
func TestCellsTraceNoVeins(t *testing.T) {
	for grain, veined := range map[image.Point]bool{{}: false, {X: 8, Y: 16}: true} {
		s := meadow(Bar, 90, 40)
		if s.Grain = grain; !veined {
			s.W, s.H = 400, 180 // as fine
		}
		s.Stands = nil
		fine := refined(t, s)
		base, differ := &fine.tiles[0].base, 0
		for i := 10; i < base.W-10; i += 5 {
			if base.Clouded(i, base.H-20, swirl.Planed()) != 1 {
				differ++
			}
		}
		if (differ > 10) != veined {
			t.Errorf("pixels of %v in a cell: %d of them show veins", grain, differ)
		}
	}
}
