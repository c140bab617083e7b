package swirl

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"math"
	"reflect"
	"sync/atomic"
	"testing"

	"pourbench/pour/script"
)

// slice is a bar of 80 by 60 mm of one portion.
func slice() *Face {
	return cast(Box{L: 100, W: 80, H: 60}, 1, func(_, _, _ float64) int { return 0 }).Face(50)
}

func white() []color.NRGBA { return []color.NRGBA{{255, 255, 255, 255}} }

// solid is how much of an image is opaque, mm², at a number of pixels per mm.
func solid(img *image.NRGBA, perMM float64) (sum float64) {
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			sum += float64(img.NRGBAAt(x, y).A) / 255
		}
	}
	return sum / (perMM * perMM)
}

// Four rounded corners of radius r take (4-π)r² off a rectangle, two take half of that.
func TestRoundedCornersTakeTheirAreaOff(t *testing.T) {
	for _, r := range []float64{0, 4, 10, 30} {
		for flat, want := range map[bool]float64{false: 4800 - (4-math.Pi)*r*r, true: 4800 - (4-math.Pi)*r*r/2} {
			img, err := Render(context.Background(), slice(), white(), 160, 120, Finish{CornerMM: r, FlatTop: flat})
			if err != nil {
				t.Fatal(err)
			}
			if got := solid(img, 2); !near(got, want, 0.03*r*r+1) {
				t.Errorf("corners of %g mm, flat at the top %v: %.1f mm² are drawn, want %.1f", r, flat, got, want)
			}
			if top, foot := img.NRGBAAt(0, 0).A, img.NRGBAAt(159, 119).A; r > 3 && (foot != 0 || (top == 255) != flat) {
				t.Errorf("corners of %g mm, flat at the top %v: the upper corner covers %d, the lower %d", r, flat, top, foot)
			}
		}
	}
}

// Distances to the outline of a bar of 80 by 60 mm with corners of 10 mm, by hand: from a corner's own middle 10 mm off both sides the
// outline is 10 mm away, from the corner itself 10√2 - 10.
func TestHowFarAPlaceLiesInsideTheBar(t *testing.T) {
	for _, flat := range []bool{false, true} {
		p := painter{Finish: Finish{CornerMM: 10, FlatTop: flat}, mmW: 80, mmH: 60}
		for at, want := range map[vec2]float64{
			{40, 30}: 30, {10, 30}: 10, {40, 59}: 1, {75, 30}: 5, {-1, 30}: -1, {10, 50}: 10,
			{0, 60}: 10 - 10*math.Sqrt2, {80, 60}: 10 - 10*math.Sqrt2, {74, 52}: 10 - math.Hypot(4, 2),
		} {
			if got := p.inside(at.y, at.z); !near(got, want, 1e-9) {
				t.Errorf("%v lies %.3f mm inside, want %.3f", at, got, want)
			}
		}
		want := 10 - 10*math.Sqrt2
		if flat {
			want = 0
		}
		if got := p.inside(80, 0); !near(got, want, 1e-9) {
			t.Errorf("flat at the top %v: the upper corner lies %.3f mm inside, want %.3f", flat, got, want)
		}
	}
}

// The rim darkens with the square of the way into it, and with its eighth power for a fine line where it ends: at its very edge by twice Darken, half
// way by little more than a quarter of it, beyond not at all.
func TestTheRimDarkensTowardsTheEdge(t *testing.T) {
	img, err := Render(context.Background(), slice(), white(), 800, 600, Finish{EdgeMM: 5, Darken: 0.4})
	if err != nil {
		t.Fatal(err)
	}
	for x, mm := range map[int]float64{0: 0.05, 10: 1.05, 24: 2.45, 45: 4.55, 60: 6.05, 400: 30} {
		e := max(0, 1-mm/5)
		want := srgb(1 - 0.4*(e*e+math.Pow(e, 8)))
		for name, got := range map[string]color.NRGBA{"left": img.NRGBAAt(x, 300), "right": img.NRGBAAt(799-x, 300), "top": img.NRGBAAt(400, min(x, 300)), "bottom": img.NRGBAAt(400, 599-min(x, 300))} {
			if !near(float64(got.R), want, 1) || got.R != got.B || got.A != 255 {
				t.Errorf("%.2f mm from the %s it is %v, want %.1f", mm, name, got, want)
			}
		}
	}
}

// The tooth of the surface makes places brighter and darker by as much at most, and leaves the mean.
func TestTheToothVariesTheBrightnessAboutItsMean(t *testing.T) {
	grey := []color.NRGBA{{188, 188, 188, 255}}
	want := float64(linear(188))
	img, err := Render(context.Background(), slice(), grey, 1600, 1200, Finish{Material: Material{Tooth: 0.1}})
	if err != nil {
		t.Fatal(err)
	}
	low, high, sum := 1.0, 0.0, 0.0
	for y := range 1200 {
		for x := range 1600 {
			v := float64(linear(img.NRGBAAt(x, y).R))
			low, high, sum = min(low, v), max(high, v), sum+v
		}
	}
	if !near(low, 0.9*want, 0.01) || !near(high, 1.1*want, 0.01) || !near(sum/(1600*1200), want, 0.003) {
		t.Errorf("light of %.3f runs from %.3f to %.3f about %.3f, want within a tenth", want, low, high, sum/(1600*1200))
	}
	again, err := Render(context.Background(), slice(), grey, 1600, 1200, Finish{Material: Material{Tooth: 0.1}})
	if err != nil || string(again.Pix) != string(img.Pix) {
		t.Errorf("a second rendering differs, %v", err)
	}
}

// At the rim the bar is blended with the ground in linear light: half of white over black is sRGB 188.
func TestTheRimIsBlendedWithTheGround(t *testing.T) {
	p := painter{Finish: Finish{Ground: color.NRGBA{0, 0, 0, 255}}, curve: curve()}
	if got := p.over(light{1, 1, 1}, 0.5); got != (color.NRGBA{188, 188, 188, 255}) {
		t.Errorf("half of white over black is %v", got)
	}
	if got := p.over(light{1, 0.5, 0}, 1); got != (color.NRGBA{255, 188, 0, 255}) {
		t.Errorf("all of the bar is %v", got)
	}
	quarter, rest := uint8(srgb(0.25)+0.5), uint8(srgb(0.75)+0.5)
	p.Ground = color.NRGBA{255, 0, 0, 255}
	if got := p.over(light{0, 0, 1}, 0.25); got != (color.NRGBA{rest, 0, quarter, 255}) {
		t.Errorf("a quarter of blue over red is %v, want (%d, 0, %d)", got, rest, quarter)
	}
	p.Ground = color.NRGBA{}
	if got := p.over(light{1, 1, 1}, 0.25); got != (color.NRGBA{255, 255, 255, 64}) {
		t.Errorf("a quarter over nothing is %v", got)
	}
}

func TestTheTableOfTheCurveIsTheCurve(t *testing.T) {
	p := painter{curve: curve()}
	for i := range 1001 {
		if v := float64(i) / 1000; !near(float64(p.curved(float32(v))), srgb(v), 1.01) {
			t.Errorf("a light of %g is %d, want %.1f", v, p.curved(float32(v)), srgb(v))
		}
	}
	if p.curved(3) != 255 || p.curved(-1) != 0 {
		t.Errorf("beyond the light of white it is %d, below none %d", p.curved(3), p.curved(-1))
	}
}

func TestPicturesTooSmallOrTooLargeAreRefused(t *testing.T) {
	for size, fits := range map[[2]int]bool{{1, 1}: true, {0, 5}: false, {5, 0}: false, {-1, -1}: false, {1 << 14, 1<<13 + 1}: false, {math.MaxInt, 2}: false} {
		img, err := canvas(size[0], size[1])
		if (err == nil) != fits || fits && (img.Rect.Dx() != size[0] || img.Rect.Dy() != size[1]) {
			t.Errorf("%v: %v", size, err)
		}
	}
}

func TestAPartOfAnImageSharesItsPixels(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 10, 8))
	p := part(img, image.Rect(3, 2, 99, 5))
	if p.Rect != image.Rect(3, 2, 10, 5) {
		t.Fatalf("the part is %v", p.Rect)
	}
	p.SetNRGBA(3, 2, color.NRGBA{9, 8, 7, 6})
	if img.NRGBAAt(3, 2) != (color.NRGBA{9, 8, 7, 6}) {
		t.Error("what is drawn on the part does not show on the whole")
	}
	if e := part(img, image.Rect(20, 20, 30, 30)); !e.Rect.Empty() || len(e.Pix) != 0 {
		t.Errorf("a part beyond is %v", e.Rect)
	}
}

func TestSizesInPixelsAreRounded(t *testing.T) {
	for _, c := range []struct {
		mm, per float64
		want    int
	}{{10, 2, 20}, {10, 0.26, 3}, {10, 0.24, 2}, {0.01, 1, 1}, {math.NaN(), 1, maxPixels}, {math.Inf(1), 1, maxPixels}, {80, 1.5, 120}} {
		if got := pixels(c.mm, c.per); got != c.want {
			t.Errorf("%g mm at %g pixels to the mm are %d, want %d", c.mm, c.per, got, c.want)
		}
	}
}

// bars are 8 bars of 25 mm, each of a portion of its own from its first cut side to the next.
func numbered() *Swirl {
	return cast(Box{L: 200, W: 40, H: 30}, 8, func(x, _, _ float64) int { return min(int((x+1e-6)/25), 7) })
}

func eight() (out []color.NRGBA) {
	for i := range 8 {
		out = append(out, color.NRGBA{uint8(30 * i), uint8(255 - 20*i), 200, 255})
	}
	return out
}

func TestHowManyBarsALoafGives(t *testing.T) {
	for mm, want := range map[float64]int{25: 8, 24: 8, 26: 7, 200. / 11: 11, 200: 1, 500: 1, 0: 0, -5: 0} {
		if got := len(Even(200, mm)); got != want {
			t.Errorf("200 mm give %d bars of %g mm, want %d", got, mm, want)
		}
	}
	if got := len(Even(200, math.NaN())); got != 0 {
		t.Errorf("a thickness that is no number gives %d bars", got)
	}
}

// The sheet told by hand: bars of 40 by 30 mm at 2 pixels to the mm with gaps of 3 mm stand 86 pixels apart across and 66 down.
func TestAContactSheetHasEveryBarInItsPlace(t *testing.T) {
	ground := color.NRGBA{1, 2, 3, 255}
	for columns, want := range map[int]image.Point{3: {6 + 3*86, 6 + 3*66}, 8: {6 + 8*86, 6 + 66}, 99: {6 + 8*86, 6 + 66}, 0: {6 + 4*86, 6 + 2*66}, 1: {6 + 86, 6 + 8*66}} {
		var told atomic.Int64
		img, err := numbered().Contact(context.Background(), eight(), Sheet{
			Bars: Even(200, 25), Columns: columns, PxPerMM: 2, GapMM: 3, Finish: Finish{Ground: ground, Told: func(n int) { told.Add(int64(n)) }},
		})
		if err != nil {
			t.Fatal(err)
		}
		if got := img.Rect.Size(); got != want {
			t.Fatalf("%d columns: the sheet is %v, want %v", columns, got, want)
		}
		across := (want.X - 6) / 86
		for k := range 8 {
			x, y := 6+k%across*86, 6+k/across*66
			for _, p := range []image.Point{{x, y}, {x + 79, y}, {x, y + 59}, {x + 79, y + 59}, {x + 40, y + 30}} {
				if got := img.NRGBAAt(p.X, p.Y); got != eight()[k] {
					t.Errorf("%d columns: bar %d is %v at %v, want %v", columns, k+1, got, p, eight()[k])
				}
			}
			for _, p := range []image.Point{{x - 1, y}, {x, y - 1}, {x + 80, y + 30}, {x + 40, y + 60}} {
				if got := img.NRGBAAt(p.X, p.Y); got != ground {
					t.Errorf("%d columns: beside bar %d it is %v at %v, want the ground", columns, k+1, got, p)
				}
			}
		}
		if told.Load() != 8*80*60 {
			t.Errorf("%d columns: %d pixels were told of, %d were drawn", columns, told.Load(), 8*80*60)
		}
	}
}

// Every bar shows its first cut side: here it is 5 mm from the marked end of the loaf to the next portion.
func TestEveryBarOfASheetShowsItsFirstCutSide(t *testing.T) {
	s := cast(Box{L: 100, W: 40, H: 30}, 20, func(x, _, _ float64) int { return min(int((x+1e-6)/5), 19) })
	palette := make([]color.NRGBA, 20)
	for i := range palette {
		palette[i] = color.NRGBA{uint8(10 * i), 0, 0, 255}
	}
	img, err := s.Contact(context.Background(), palette, Sheet{Bars: Even(200, 25), Columns: 4, PxPerMM: 1, GapMM: 2})
	if err != nil {
		t.Fatal(err)
	}
	for k := range 4 {
		if got := img.NRGBAAt(2+42*k+20, 17); got != palette[5*k] {
			t.Errorf("bar %d is cut where it is %v, want %v", k+1, got, palette[5*k])
		}
	}
}

// Below the bars stand the cut down the middle and the view from above, as wide as the bars together: here 8·43 - 3 mm of pixels for 200 mm.
func TestAContactSheetHasTheLoafBelowTheBars(t *testing.T) {
	img, err := numbered().Contact(context.Background(), eight(), Sheet{Bars: Even(200, 25), Columns: 8, PxPerMM: 1, GapMM: 3, Strip: true})
	if err != nil {
		t.Fatal(err)
	}
	wide := 8*43 - 3
	side, above := int(math.Round(30*float64(wide)/200)), int(math.Round(40*float64(wide)/200))
	if got, want := img.Rect.Size(), (image.Point{wide + 6, 3 + 33 + side + 3 + above + 3}); got != want {
		t.Fatalf("the sheet is %v, want %v", got, want)
	}
	for k := range 8 {
		x := 3 + (2*k+1)*wide/16
		for name, y := range map[string]int{"lengthwise": 36 + side/2, "from above": 36 + side + 3 + above/2} {
			if got := img.NRGBAAt(x, y); got != eight()[k] {
				t.Errorf("%s bar %d is %v at (%d, %d), want %v", name, k+1, got, x, y, eight()[k])
			}
		}
	}
	if got := img.NRGBAAt(100, 36+side+1); got.A != 0 {
		t.Errorf("between the two it is %v, want the ground", got)
	}
}

func TestImpossibleContactSheetsAreRefused(t *testing.T) {
	for name, c := range map[string]Sheet{
		"no thickness": {PxPerMM: 1}, "no resolution": {Bars: Even(200, 25)}, "too fine": {Bars: Even(200, 25), PxPerMM: 1001}, "a gap of less than nothing": {Bars: Even(200, 25), PxPerMM: 1, GapMM: -1},
		"no number": {Bars: Even(200, math.NaN()), PxPerMM: 1}, "a gap that is no number": {Bars: Even(200, 25), PxPerMM: 1, GapMM: math.NaN()}, "too large": {Bars: Even(200, 25), PxPerMM: 1000},
	} {
		if _, err := numbered().Contact(context.Background(), eight(), c); err == nil {
			t.Errorf("%s: a sheet was drawn", name)
		}
	}
}

func TestEveryPictureStopsWhenItIsCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	s := numbered()
	icing := iced(s.recipe.Box, 8)
	top := Topping{Stands: icing, Palette: white()}
	var pic Picture
	pot := PotView{stream: &stream{}, layout: &sectors{quarters()}}
	for name, draw := range map[string]func() error{
		"a sheet": func() error { _, err := s.Contact(ctx, eight(), Sheet{Bars: Even(200, 25), PxPerMM: 1}); return err },
		"strips": func() error {
			_, err := s.Contact(ctx, eight(), Sheet{Bars: Even(200, 25), PxPerMM: 1, Strip: true})
			return err
		},
		"a bar":    func() error { _, err := RenderBar(ctx, s.Face(3), 28, eight(), top, 1, Finish{}); return err },
		"a loaf":   func() error { _, err := RenderLoaf(ctx, s.Lengthwise(3), eight(), top, 1, Finish{}); return err },
		"a cut":    func() error { _, err := RenderLong(ctx, s.Top(3), eight(), 9, 9, Finish{}); return err },
		"a pot":    func() error { return pot.Refine(ctx, &pic, 9, 9) },
		"a length": func() error { return s.Lengthwise(3).Refine(ctx, &pic, 9, 9) },
		"nothing":  func() error { return s.Upto(0).Face(3).Refine(ctx, &pic, 9, 9) },
	} {
		if err := draw(); !errors.Is(err, context.Canceled) {
			t.Errorf("%s gives %v", name, err)
		}
	}
}

// A picture stopped half way stops soon: at the first word of progress, long before all of it is drawn.
func TestAPictureStopsHalfWay(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var told atomic.Int64
	_, err := Render(ctx, slice(), white(), 200, 2000, Finish{Told: func(n int) {
		told.Add(int64(n))
		cancel()
	}})
	if !errors.Is(err, context.Canceled) || told.Load() == 0 || told.Load() > 200*2000/2 {
		t.Errorf("after %d of %d pixels: %v", told.Load(), 200*2000, err)
	}
}

// Whoever is told of pixels is told of every one once, whatever the size of the picture.
func TestEveryPixelIsToldOfOnce(t *testing.T) {
	s := numbered()
	icing := iced(s.recipe.Box, 8)
	top := Topping{Stands: icing, Palette: white()}
	for _, perMM := range []float64{0.7, 3, 7.3} {
		var told atomic.Int64
		finish := Finish{Told: func(n int) { told.Add(int64(n)) }}
		for name, draw := range map[string]func() (*image.NRGBA, error){
			"a bar": func() (*image.NRGBA, error) {
				return RenderBar(context.Background(), s.Face(3), 28, eight(), top, perMM, finish)
			},
			"a loaf": func() (*image.NRGBA, error) {
				return RenderLoaf(context.Background(), s.Lengthwise(3), eight(), top, perMM, finish)
			},
		} {
			told.Store(0)
			img, err := draw()
			if err != nil {
				t.Fatal(err)
			}
			if want := int64(img.Rect.Dx() * img.Rect.Dy()); told.Load() != want {
				t.Errorf("%s at %g pixels to the mm: told of %d pixels, %d are drawn", name, perMM, told.Load(), want)
			}
		}
	}
}

// On a sheet with an icing every bar is higher by its peak, and has its own part of it.
func TestTheIcingStandsOnEveryBarOfASheet(t *testing.T) {
	s := numbered()
	icing := iced(s.recipe.Box, 8)
	var told atomic.Int64
	img, err := s.Contact(context.Background(), eight(), Sheet{
		Bars: Even(200, 25), Columns: 4, PxPerMM: 2, GapMM: 3, Top: Topping{Stands: icing, Palette: white()},
		Finish: Finish{Told: func(n int) { told.Add(int64(n)) }},
	})
	if err != nil {
		t.Fatal(err)
	}
	over := int(math.Round(2 * icing.PeakMM()))
	if got, want := img.Rect.Size(), (image.Point{6 + 4*86, 6 + 2*(66+over)}); got != want {
		t.Fatalf("the sheet is %v, want %v", got, want)
	}
	if want := int64(8 * 80 * (60 + over)); told.Load() != want {
		t.Errorf("%d pixels were told of, %d are drawn", told.Load(), want)
	}
	for k := range 8 {
		x, y := 6+k%4*86, 6+k/4*(66+over)
		iced := 0
		for j := range over {
			for i := range 80 {
				if img.NRGBAAt(x+i, y+j).A > 0 {
					iced++
				}
			}
		}
		if least := 8 * 40 * 4; iced < least || iced >= 80*over { // 8 mm deep over 40 mm at 4 pixels to the mm², what stands behind seen as well, and air above
			t.Errorf("the icing of bar %d covers %d pixels of %d, want %d or more", k+1, iced, 80*over, least)
		}
		if got := img.NRGBAAt(x+40, y+over+30); got != eight()[k] {
			t.Errorf("under its icing bar %d is %v", k+1, got)
		}
	}
}

// A bare finish keeps the outline and the rim, and nothing of the lamp and the material.
func TestABareFinishIsFlat(t *testing.T) {
	got, want := Soap().Bare(), Finish{CornerMM: Soap().CornerMM, EdgeMM: Soap().EdgeMM, Darken: Soap().Darken}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("bare it is %+v, want %+v", got, want)
	}
}

// A fresh top stands in its mould: it has no rounded rim, and the material of what no blade went over.
func TestAFreshFinishHasNoRim(t *testing.T) {
	want := Soap()
	want.Bevel, want.Material = 0, Planed().Fresh()
	if got := Soap().Fresh(); !reflect.DeepEqual(got, want) {
		t.Errorf("fresh it is %+v, want %+v", got, want)
	}
}

// Every cut is planed for itself: the same soap at another place shows other streaks, and the same place the same again.
func TestAnotherCutShowsOtherStreaks(t *testing.T) {
	s := mustPour(t, scripted(script.Layers, 1, 1))
	planed := func(x float64) *image.NRGBA {
		pic, img := &Picture{}, image.NewNRGBA(image.Rect(0, 0, 160, 124))
		if err := s.Face(x).Refine(context.Background(), pic, 160, 124); err != nil {
			t.Fatal(err)
		}
		if err := pic.Finish(context.Background(), white(), img, Finish{Material: Material{Streaks: 0.3}}, 80, 62); err != nil {
			t.Fatal(err)
		}
		return img
	}
	if here := planed(40); !bytes.Equal(here.Pix, planed(40).Pix) || bytes.Equal(here.Pix, planed(140).Pix) {
		t.Error("the streaks of a cut do not go with its place")
	}
}
