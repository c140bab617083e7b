package paper

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image/png"
	"math"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"pourbench/pour"
	"pourbench/pour/swirl"
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
	s := pour.Work(p, shelf, pour.Hand{})
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
	first := pictured(t, pour.Work(p, shelf, pour.Hand{}), o)
	if !bytes.Equal(first, pictured(t, pour.Work(p, shelf, pour.Hand{}), o)) {
		t.Error("the same plan gave other bytes")
	}
	p.Swirl.Seed++
	if bytes.Equal(first, pictured(t, pour.Work(p, shelf, pour.Hand{}), o)) {
		t.Error("another seed gave the same bytes")
	}
}

func TestAPictureThatCannotBeDrawnSaysWhy(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, pour.Hand{})
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
	s := pour.Work(p, shelf, pour.Hand{})
	for b.Loop() {
		if err := Picture(context.Background(), &bytes.Buffer{}, s, PictureOptions{View: ViewBar, Width: 1200}); err != nil {
			b.Fatal(err)
		}
	}
}

// A pixel takes four bytes, and seven more while it is drawn: an image in memory, the portions it shows and what is kept of its icing. A bar is drawn at once but for
// its icing; of a contact sheet one bar is.
func TestThePictureThatTakesTooMuchMemoryNamesTheWidestThatDoesNot(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, pour.Hand{})
	p.Icing = nil
	bare := pour.Work(p, shelf, pour.Hand{})
	for _, c := range []struct {
		sheet pour.Sheet
		view  string
		fits  int
	}{
		{bare, ViewBar, 7019},  // 11 B × w² × 62/80 = 420 MB: w = 7019.03
		{s, ViewBar, 0},        // the icing makes it higher
		{bare, ViewLoaf, 8000}, // 11 B × 8000² × 62/250 = 175 MB
		{s, ViewBars, 8000},
	} {
		drawing, err := c.sheet.Drawing()
		if err != nil {
			t.Fatal(err)
		}
		poured, err := swirl.New(drawing.Recipe)
		if err != nil {
			t.Fatal(err)
		}
		_, err = newEasel(drawing, poured, PictureOptions{View: c.view, Width: 8000})
		if c.fits == 8000 {
			if err != nil {
				t.Errorf("%s: %v", c.view, err)
			}
			continue
		}
		var named int
		if err == nil {
			t.Fatalf("%s, 8000 pixels wide, is not refused", c.view)
		}
		if _, err := fmt.Sscanf(err.Error()[strings.LastIndex(err.Error(), "--width"):], "--width %d", &named); err != nil {
			t.Fatal(err)
		}
		if c.fits > 0 && named != c.fits {
			t.Errorf("%s: %v, want %d", c.view, err, c.fits)
		}
		for width, want := range map[int]bool{named: true, named + 1: false} {
			if _, err := newEasel(drawing, poured, PictureOptions{View: c.view, Width: width}); (err == nil) != want {
				t.Errorf("%s, %d pixels wide: %v", c.view, width, err)
			}
		}
	}
}

// What is told sums to the whole picture, and whoever listens can stop it at any moment.
func TestAPictureTellsHowFarItIsAndStopsWhenTold(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, pour.Hand{})
	for _, view := range Views() {
		var lock sync.Mutex
		most := 0.0
		o := PictureOptions{View: view, Width: 300, Told: func(percent float64) {
			lock.Lock()
			defer lock.Unlock()
			most = max(most, percent)
		}}
		pictured(t, s, o)
		if most < 90 || most > 100 {
			t.Errorf("%s: in the end %.1f %% was told", view, most)
		}
		for _, at := range []float64{0, 30, 80} {
			ctx, stop := context.WithCancel(context.Background())
			var last atomic.Uint64
			o.Told = func(percent float64) {
				if percent > at {
					stop()
				}
				last.Store(math.Float64bits(percent))
			}
			if err := Picture(ctx, &bytes.Buffer{}, s, o); !errors.Is(err, context.Canceled) {
				t.Errorf("%s stopped at %g %%: %v", view, at, err)
			}
			if end := math.Float64frombits(last.Load()); at == 0 && end > 10 {
				t.Errorf("%s was stopped at once and drew to %.0f %%", view, end)
			}
			stop()
		}
	}
}

// A plan with something on it tells as much of its picture, and has the loaf from above below its bars.
func TestAPlanWithSomethingOnItIsPicturedInEveryView(t *testing.T) {
	p, shelf := demo(t)
	p.Icing = nil
	bare := pour.Work(p, shelf, pour.Hand{})
	p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 18, OutMM: 6, Colour: "#ff8000"}}
	p.Top.Toppings = []pour.Topping{{CoveragePercent: 10, Parts: []pour.ToppingPart{{Material: "nonpareils", Percent: 100}}}}
	s := pour.Work(p, shelf, pour.Hand{})
	for _, view := range Views() {
		most := atomic.Uint64{}
		o := PictureOptions{View: view, Width: 300}
		before, err := png.Decode(bytes.NewReader(pictured(t, bare, o)))
		if err != nil {
			t.Fatal(err)
		}
		o.Told = func(percent float64) { most.Store(max(most.Load(), uint64(percent))) }
		img, err := png.Decode(bytes.NewReader(pictured(t, s, o)))
		if err != nil {
			t.Fatal(err)
		}
		if most.Load() < 90 || most.Load() > 100 {
			t.Errorf("%s: in the end %d %% was told", view, most.Load())
		}
		if more := img.Bounds().Dy() - before.Bounds().Dy(); view == ViewBars && more < 60 {
			t.Errorf("the contact sheet is %d pixels higher, want the loaf from above below its bars", more)
		}
		same := img.Bounds() == before.Bounds()
		for y := 0; same && y < img.Bounds().Dy(); y++ {
			for x := 0; same && x < img.Bounds().Dx(); x++ {
				same = img.At(x, y) == before.At(x, y)
			}
		}
		if same {
			t.Errorf("%s shows nothing of what is on the loaf", view)
		}
	}
}
