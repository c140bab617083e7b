package paper

import (
	"bytes"
	"context"
	"errors"
	"image/png"
	"strings"
	"testing"

	"pourbench/chem/clock"
	"pourbench/pour"
)

func pictured(t *testing.T, s pour.Sheet, o PictureOptions) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Picture(context.Background(), &out, s, o); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestEveryViewIsAPictureOfTheWidthAskedFor(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, clock.Hand{})
	for _, view := range Views() {
		img, err := png.Decode(bytes.NewReader(pictured(t, s, PictureOptions{View: view, Width: 120})))
		if err != nil {
			t.Fatal(err)
		}
		if w := img.Bounds().Dx(); w < 110 || w > 130 {
			t.Errorf("%s: %d pixels wide, want about 120", view, w)
		}
		seen := map[[3]uint32]bool{}
		for x := 0; x < img.Bounds().Dx(); x += 2 {
			for y := 0; y < img.Bounds().Dy(); y += 2 {
				r, g, b, _ := img.At(x, y).RGBA()
				seen[[3]uint32{r >> 12, g >> 12, b >> 12}] = true
			}
		}
		if len(seen) < 5 {
			t.Errorf("%s: only %d colours of five jugs", view, len(seen))
		}
	}
}

func TestTheSameSeedGivesTheSameBytesAndAnotherAnother(t *testing.T) {
	p, shelf := demo(t)
	o := PictureOptions{View: ViewBar, Width: 100}
	first := pictured(t, pour.Work(p, shelf, clock.Hand{}), o)
	if !bytes.Equal(first, pictured(t, pour.Work(p, shelf, clock.Hand{}), o)) {
		t.Error("the same plan gave other bytes")
	}
	p.Swirl.Seed++
	if bytes.Equal(first, pictured(t, pour.Work(p, shelf, clock.Hand{}), o)) {
		t.Error("another seed gave the same bytes")
	}
}

func TestAPictureThatCannotBeDrawnSaysWhy(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, clock.Hand{})
	for want, o := range map[string]PictureOptions{
		"pixels wide": {View: ViewBar, Width: 5}, "write one of": {View: "inside", Width: 100}, "cut into": {View: ViewBar, Bar: 11, Width: 100},
	} {
		if err := Picture(context.Background(), &bytes.Buffer{}, s, o); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, want a refusal with %q", o, err, want)
		}
	}
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	if err := Picture(stopped, &bytes.Buffer{}, s, PictureOptions{View: ViewBars, Width: 800}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

func BenchmarkPictureBar1200(b *testing.B) {
	p, shelf := demo(b)
	s := pour.Work(p, shelf, clock.Hand{})
	for b.Loop() {
		if err := Picture(context.Background(), &bytes.Buffer{}, s, PictureOptions{View: ViewBar, Width: 1200}); err != nil {
			b.Fatal(err)
		}
	}
}
