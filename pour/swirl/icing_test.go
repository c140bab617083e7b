package swirl

import (
	"context"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/script"
)

// iced is a loaf's icing of one colour, so many mm deep on average: swirls side by side.
func iced(box Box, meanMM float64) *relief.Field {
	return relief.New(relief.Recipe{L: box.L, W: box.W, H: box.H, Seed: 7, Icing: relief.Icing{
		Shape: relief.Piped, Volume: meanMM * box.L * box.W, Spots: []relief.Spot{{X: box.L / 2, Y: box.W / 2}}, Shares: []float64{1},
	}})
}

func TestACutAlongTheLoafHasItsIcingOnTop(t *testing.T) {
	s := mustPour(t, loaf(script.Layers, 1))
	top := Topping{Stands: iced(s.recipe.Box, 12), Palette: []color.NRGBA{{0, 0, 255, 255}}}
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

func TestABarWithIcingIsHigherByItsPeak(t *testing.T) {
	s := mustPour(t, loaf(script.Layers, 1))
	c := iced(s.recipe.Box, 12)
	img, err := RenderBar(context.Background(), s.Face(50), 75, palette(), Topping{Stands: c, Palette: palette()[1:2]}, 2, Soap())
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
