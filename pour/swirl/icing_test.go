package swirl

import (
	"context"
	"errors"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/script"
)

func TestTheIcingHasTheMeanHeightAskedFor(t *testing.T) {
	for _, piping := range []Piping{Rosettes, Peaks} {
		for k, mean := range []float64{4, 12, 25} {
			c, err := NewIcing(IcingRecipe{Piping: piping, Striped: k%2 == 0, Shares: []float64{0.7, 0.3}, WidthMM: 80, MeanMM: mean, Seed: 3})
			if err != nil {
				t.Fatal(err)
			}
			const w = 400
			h := int(math.Round(c.PeakMM() * w / 80))
			covered := 0.0
			for _, px := range c.Paint(palette(), color.NRGBA{}, w, h, nil) {
				covered += float64(px.A) / 255
			}
			if got := covered * c.PeakMM() / float64(h) / w; math.Abs(got-mean) > 0.03*mean {
				t.Errorf("%s: the mean height is %.2f mm, want %g", piping, got, mean)
			}
		}
	}
}

// channels counts an icing painted in pure red, green and blue by its first three portions, mixed pixels by their parts, and how many
// pixels are mixed of more than one.
func channels(c *Icing) (part [3]float64, mixed int) {
	pure := []color.NRGBA{{255, 0, 0, 255}, {0, 255, 0, 255}, {0, 0, 255, 255}}
	sum := 0.0
	for _, px := range c.Paint(pure, color.NRGBA{}, 800, 150, nil) {
		n := 0
		for i, v := range [3]uint8{px.R, px.G, px.B} {
			if v > 60 && px.A == 255 {
				part[i]++
				sum++
				n++
			}
		}
		if n > 1 {
			mixed++
		}
	}
	for i := range part {
		part[i] /= sum
	}
	return part, mixed
}

func TestWithABagEachTheColoursTakeTheirSharesOfTheMounds(t *testing.T) {
	if testing.Short() {
		t.Skip("draws many faces")
	}
	for _, piping := range []Piping{Rosettes, Peaks} {
		for _, shares := range [][]float64{{0.5, 0.3, 0.2}, {0.1, 0.8, 0.1}, {0.34, 0.33, 0.33}} {
			r := IcingRecipe{Piping: piping, Shares: shares, WidthMM: 400, MeanMM: 9, Seed: 3}
			c, err := NewIcing(r)
			if err != nil {
				t.Fatal(err)
			}
			part, mixed := channels(c)
			for i, want := range shares {
				if math.Abs(part[i]-want) > 0.03 { // a mound is some 2 to 3 % of what is seen of 45
					t.Errorf("%s %v: portion %d shows on %.3f of the icing", piping, shares, i, part[i])
				}
			}
			r.Striped = true
			striped, err := NewIcing(r)
			if err != nil {
				t.Fatal(err)
			}
			if _, more := channels(striped); mixed*3 > more {
				t.Errorf("%s %v: %d pixels are mixed with a bag each, %d striped", piping, shares, mixed, more)
			}
			for i := range c.mounds {
				if c.mounds[i] = (mound{portion: c.mounds[i].portion}); shares[c.mounds[i].portion] == 0 {
					t.Errorf("a mound is of portion %d, which has no share", c.mounds[i].portion)
				}
			}
		}
	}
}

func TestAnIcingIsSeenFromTheSideOfTheLoafAndInParts(t *testing.T) {
	c, err := NewIcing(IcingRecipe{Piping: Rosettes, Striped: true, Shares: []float64{0.6, 0.4}, WidthMM: 80, MeanMM: 12, Seed: 5})
	if err != nil {
		t.Fatal(err)
	}
	side, err := c.Along(250)
	if err != nil {
		t.Fatal(err)
	}
	if side.PeakMM() < 0.7*c.PeakMM() || side.PeakMM() > 1.4*c.PeakMM() || len(side.mounds) < 2*len(c.mounds) {
		t.Errorf("from the side it stands %.1f mm high in %d mounds, across the bar %.1f mm in %d", side.PeakMM(), len(side.mounds), c.PeakMM(), len(c.mounds))
	}
	whole, half := side.Paint(palette(), color.NRGBA{}, 500, 40, nil), side.Part(125, 250).Paint(palette(), color.NRGBA{}, 250, 40, nil)
	for j := range 40 {
		for i := range 250 {
			if whole[j*500+250+i] != half[j*250+i] {
				t.Fatalf("pixel (%d, %d) of the second half is %v, of the whole %v", i, j, half[j*250+i], whole[j*500+250+i])
			}
		}
	}
	if _, err := c.Along(3000); !errors.Is(err, ErrIcing) {
		t.Errorf("a loaf of 3 m gives %v", err)
	}
}

func TestACutAlongTheLoafHasItsIcingOnTop(t *testing.T) {
	c, err := NewIcing(IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 80, MeanMM: 12})
	if err != nil {
		t.Fatal(err)
	}
	s := mustPour(t, loaf(script.Layers, 1))
	top := Topping{Icing: c, Palette: []color.NRGBA{{0, 0, 255, 255}}}
	ground := color.NRGBA{10, 20, 30, 255}
	img, err := RenderLoaf(context.Background(), s.Lengthwise(40), palette(), top, 2, Finish{Ground: ground})
	if err != nil {
		t.Fatal(err)
	}
	peak := img.Bounds().Dy() - 124
	if peak < 24 || img.Bounds().Dx() != 500 {
		t.Fatalf("the picture is %v: 500 by 124 pixels and the icing are wanted", img.Bounds())
	}
	iced := 0
	for x := range 500 {
		if px := img.NRGBAAt(x, peak-3); px.B > 60 && px.R < 60 {
			iced++
		}
	}
	if iced < 450 {
		t.Errorf("the icing covers %d of 500 mm", iced)
	}
	if above, err := RenderLoaf(context.Background(), s.Top(60), palette(), top, 2, Finish{}); err != nil || above.Bounds().Dy() != 160 {
		t.Errorf("the view from above is %v, %v: no icing is wanted", above.Bounds(), err)
	}
}

func TestImpossibleIcingsAreRefused(t *testing.T) {
	for name, r := range map[string]IcingRecipe{
		"unknown piping":  {Piping: "lace", Shares: []float64{1}, WidthMM: 80, MeanMM: 10},
		"no shares":       {Piping: Peaks, WidthMM: 80, MeanMM: 10},
		"a share of NaN":  {Piping: Peaks, Shares: []float64{math.NaN()}, WidthMM: 80, MeanMM: 10},
		"no width":        {Piping: Peaks, Shares: []float64{1}, MeanMM: 10},
		"a height of NaN": {Piping: Peaks, Shares: []float64{1}, WidthMM: 80, MeanMM: math.NaN()},
	} {
		if _, err := NewIcing(r); !errors.Is(err, ErrIcing) {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}

func TestABarWithIcingIsHigherByItsPeak(t *testing.T) {
	c, err := NewIcing(IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 80, MeanMM: 12})
	if err != nil {
		t.Fatal(err)
	}
	f := mustPour(t, loaf(script.Layers, 1)).Face(50)
	img, err := RenderBar(context.Background(), f, 75, palette(), Topping{Icing: c, Palette: palette()[1:2]}, 2, Soap())
	if err != nil {
		t.Fatal(err)
	}
	if want := 124 + int(math.Round(2*c.PeakMM())); img.Bounds().Dx() != 160 || img.Bounds().Dy() != want {
		t.Errorf("the picture is %v, want 160 by %d", img.Bounds(), want)
	}
	if got := img.NRGBAAt(80, img.Bounds().Dy()-2); got.R < 180 {
		t.Errorf("the foot of the bar is %v, not the cream poured first", got)
	}
}

func TestTheFinishRoundsCornersAndDarkensEdges(t *testing.T) {
	r := scripted(script.Layers, 0, 1)
	r.Box = Box{L: 100, W: 80, H: 60}
	f := mustPour(t, r).Face(50)
	ground := color.NRGBA{10, 20, 30, 255}
	img, err := Render(context.Background(), f, palette(), 400, 300, Finish{Ground: ground, CornerMM: 4, EdgeMM: 1.5, Darken: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	if got := img.NRGBAAt(0, 0); got != ground {
		t.Errorf("the corner is %v, want the ground", got)
	}
	if got := img.NRGBAAt(200, 150); got != palette()[0] {
		t.Errorf("the middle is %v, want %v", got, palette()[0])
	}
	if edge := img.NRGBAAt(200, 0); edge.R >= palette()[0].R || edge.R < 200 {
		t.Errorf("the edge is %v", edge)
	}
	if _, err := Render(context.Background(), f, palette(), 0, 10, Finish{}); err == nil {
		t.Error("a picture without width was drawn")
	}
}

func TestAContactSheetShowsEveryBar(t *testing.T) {
	s := mustPour(t, loaf(script.Layers, 1))
	if got := len(Even(250, 25)); got != 10 {
		t.Fatalf("250 mm give %d bars of 25 mm", got)
	}
	img, err := s.Contact(context.Background(), palette(), Sheet{Bars: Even(250, 25), Columns: 5, PxPerMM: 1, GapMM: 4, Strip: true})
	if err != nil {
		t.Fatal(err)
	}
	for k := range 10 {
		if got := img.NRGBAAt(4+k%5*84+40, 4+k/5*66+60); got != palette()[0] {
			t.Errorf("the foot of bar %d is %v", k+1, got)
		}
	}
	if _, err := s.Contact(context.Background(), palette(), Sheet{PxPerMM: 1}); err == nil {
		t.Error("a sheet of bars without thickness was drawn")
	}
}
