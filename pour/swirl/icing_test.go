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
		for _, mean := range []float64{4, 12, 25} {
			c, err := NewIcing(IcingRecipe{Piping: piping, Shares: []float64{0.7, 0.3}, WidthMM: 80, MeanMM: mean, Seed: 3})
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
	img, err := RenderBar(context.Background(), f, palette(), Topping{Icing: c, Palette: palette()[1:2]}, 2, Soap())
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
	if got := s.Bars(25); got != 10 {
		t.Fatalf("250 mm give %d bars of 25 mm", got)
	}
	img, err := s.Contact(context.Background(), palette(), Sheet{BarMM: 25, Columns: 5, PxPerMM: 1, GapMM: 4, Strip: true})
	if err != nil {
		t.Fatal(err)
	}
	for k := range 10 {
		if got := img.NRGBAAt(4+k%5*84+40, 4+k/5*66+60); got != palette()[0] {
			t.Errorf("the foot of bar %d is %v", k+1, got)
		}
	}
	if _, err := s.Contact(context.Background(), palette(), Sheet{BarMM: 0, PxPerMM: 1}); err == nil {
		t.Error("a sheet of bars without thickness was drawn")
	}
}
