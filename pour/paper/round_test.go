package paper

import (
	"bytes"
	"context"
	"image/png"
	"testing"

	"pourbench/pour"
)

// A round's face is as wide as high and clear in its corners; six of them fill the contact sheet of a tube, and one cavity stands for all.
func TestRoundsAreDrawnRoundAndCavitiesOnce(t *testing.T) {
	p, shelf := demo(t)
	p.Icing, p.Top = nil, pour.Top{}
	p.Mould = pour.Mould{Shape: pour.ShapeTube, LengthMM: 75, WidthMM: 75, HeightMM: 220, FillMM: 200, BarMM: 30}
	s := pour.Work(p, shelf, pour.Hand{})
	d, err := s.Drawing()
	if err != nil || len(d.Bars) != 6 || d.Bars[5].From != 150 || !d.Recipe.Round || len(d.Cuts) != 0 {
		t.Fatalf("%v, %+v", err, d.Bars)
	}
	for view, ratio := range map[string]float64{ViewBar: 1, ViewTop: 1, ViewLoaf: 200. / 75} {
		var b bytes.Buffer
		if err := Picture(context.Background(), &b, s, PictureOptions{View: view, Width: 120}); err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(img.Bounds().Dy()) / float64(img.Bounds().Dx()); got < ratio-0.02 || got > ratio+0.02 {
			t.Errorf("%s is %g times as high as wide", view, got)
		}
		_, _, _, corner := img.At(3, 3).RGBA()
		_, _, _, middle := img.At(60, img.Bounds().Dy()/2).RGBA()
		if round := view != ViewLoaf; (corner == 0) != round || middle == 0 {
			t.Errorf("%s: the corner has %d, the middle %d", view, corner, middle)
		}
	}
	p.Mould = pour.Mould{Shape: pour.ShapeCavity, LengthMM: 80, WidthMM: 55, HeightMM: 32, FillMM: 28, BarMM: 80, Cavities: 12}
	s = pour.Work(p, shelf, pour.Hand{})
	if d, err = s.Drawing(); err != nil || len(d.Bars) != 1 || d.Bars[0].From != 40 || d.Recipe.Box.L != 80 {
		t.Errorf("%v, %+v, %+v", err, d.Bars, d.Recipe.Box)
	}
}
