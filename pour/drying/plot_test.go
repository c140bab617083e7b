package drying

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
)

// cut is the day of the cut in these tests, 6 December 2026.
func cut(t testing.TB) day.Day {
	d, err := day.Parse("2026-12-06")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// worked is the data set that is worked out in the reference for drying, section 4 (invented), with its fit; it says a mass on day 28 of
// 113.800324 g, sd 0.221201, and the ready day for 0.5 % a week 27.962892, band 23.584 to 32.342.
func worked(t testing.TB) Plot {
	prior, err := cure.FromRecipe(280./1470, 0.10, 0.03)
	if err != nil {
		t.Fatal(err)
	}
	fit, err := cure.Of(cure.Box{ThickMM: 25, WideMM: 80, HighMM: 62}, prior, []cure.Weighing{{Day: 0, G: 125}, {Day: 1, G: 122.1}, {Day: 2, G: 120.9}, {Day: 4, G: 119.5}, {Day: 7, G: 117.9}, {Day: 10, G: 117}, {Day: 14, G: 116}, {Day: 21, G: 114.6}}, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	ready, err := fit.Ready(0.5)
	if err != nil {
		t.Fatal(err)
	}
	p := Plot{Name: "Alpine Meadow", Cut: cut(t), Today: pour.Know(23), Ready: ReadyOn(ready)}
	for _, w := range fit.Weighings {
		p.Points = append(p.Points, Point{w.Day, w.G})
	}
	return p.Fitted(fit)
}

func TestTheCurveIsThatOfTheFit(t *testing.T) {
	p := worked(t)
	if math.Abs(p.Ready.Day-27.962892) > 1e-5 || math.Abs(p.Ready.Low-23.584) > 1e-3 || math.Abs(p.Ready.High-32.342) > 1e-3 {
		t.Errorf("ready %+v", p.Ready)
	}
	s, ok := p.On(28)
	if !ok || math.Abs(s.G-113.800324) > 1e-3 || math.Abs(s.HighG-(113.800324+1.2815515655*0.221201)) > 2e-3 || math.Abs(s.LowG-(113.800324-1.2815515655*0.221201)) > 2e-3 {
		t.Errorf("on day 28: %+v, %v", s, ok)
	}
	if len(p.Points) != 8 || p.Curve[0].Day != 0 || math.Abs(p.Curve[len(p.Curve)-1].Day-32.342) > 1e-3 {
		t.Errorf("%d points, curve from %v to %v", len(p.Points), p.Curve[0].Day, p.Curve[len(p.Curve)-1].Day)
	}
	for _, days := range []float64{-1, 33, math.NaN(), math.Inf(1)} {
		if s, ok := p.On(days); ok {
			t.Errorf("the curve is said to reach day %v: %+v", days, s)
		}
	}
}

func TestAxesHaveRoundNumbersInTheMakersUnit(t *testing.T) {
	p := Plot{Cut: cut(t), Points: []Point{{0, 125}, {20, 114}}}
	texts := func(a Axis) string {
		var out []string
		for _, tick := range a.Ticks {
			out = append(out, strings.TrimSpace(tick.Text+" "+tick.Calendar))
		}
		return strings.Join(out, "|")
	}
	if a := p.Mass(4); texts(a) != "115|120|125" || a.Label != "a bar, g" || math.Abs(a.Low-113.56) > 1e-9 || math.Abs(a.High-125.44) > 1e-9 {
		t.Errorf("%+v", a)
	}
	if a := p.Days(4); texts(a) != "0 6 Dec|7 13 Dec|14 20 Dec|21 27 Dec|28 3 Jan" || a.Low != 0 || a.High != 28 {
		t.Errorf("%+v", a)
	}
	p.Points = append(p.Points, Point{100, 110})
	if a := p.Days(4); texts(a) != "0 6 Dec|28 3 Jan|56 31 Jan|84 28 Feb" || a.High != 100 {
		t.Errorf("%+v", a)
	}
	p.Show.Mass = pour.MassOunce // 110 g are 3.880 oz, 125 g 4.409 oz
	a := p.Mass(4)
	if texts(a) != "4.0|4.2|4.4" || a.Label != "a bar, oz" {
		t.Errorf("%+v", a)
	}
	if got := a.Ticks[1].At; math.Abs(got-4.2*28.349523125) > 1e-9 {
		t.Errorf("4.2 oz stand at %v g", got)
	}
}

func TestOldBatchesAreNotSquashedByToday(t *testing.T) {
	p := Plot{Points: []Point{{0, 125}, {40, 114}}}
	for _, c := range []struct{ today, last float64 }{{30, 40}, {59, 59}, {61, 40}, {900, 40}} {
		p.Today = pour.Know(c.today)
		if got := p.Days(5).High; got != c.last {
			t.Errorf("with today on day %v the axis ends at %v, want %v", c.today, got, c.last)
		}
	}
	p.Today = pour.Figure{}
	p.Ready = Ready{true, 20, 5, 4000} // known so badly that its band would leave no room
	if got := p.Days(5).High; got != 88 {
		t.Errorf("with a band up to day 4000 the axis ends at %v", got)
	}
}

func TestWhatIsDrawnIsToldInWords(t *testing.T) {
	p := worked(t)
	p.Points = p.Points[:2]
	got := strings.Join(p.Tell(), "\n")
	// A - B(1 - f) with A 125.0277, B 13.0643, tau 19.9114 of the reference and f between its rows: 0.186 on day 23, 0.112 on day 32.3.
	want := "Weighed on day 0, 6 Dec: 125.0 g.\nWeighed on day 1, 7 Dec: 122.1 g.\n" +
		"Today is day 23, 29 Dec: about 114.4 g, 80 % band 114.2 g to 114.6 g.\n" +
		"Ready, which is dry by the maker's criterion, on day 28, 3 Jan; 80 % band 30 Dec to 7 Jan.\n" +
		"On day 32, 7 Jan a bar weighs 113.4 g, 80 % band 113.1 g to 113.8 g."
	if got != want {
		t.Errorf("told:\n%s\nwant:\n%s", got, want)
	}
	if got := (Plot{Why: "1 weighed so far"}).Tell(); !slices.Equal(got, []string{"No bar was weighed since the cut.", "1 weighed so far."}) {
		t.Errorf("of nothing: %q", got)
	}
}

// picture draws a plot and reads it back.
func picture(t testing.TB, p Plot) image.Image {
	t.Helper()
	var a, b bytes.Buffer
	if err := p.PNG(&a); err != nil {
		t.Fatal(err)
	}
	if err := p.PNG(&b); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("the same plot is other bytes: %v", err)
	}
	img, err := png.Decode(&a)
	if err != nil || img.Bounds() != image.Rect(0, 0, WidePX, HighPX) {
		t.Fatalf("%v, %v", img.Bounds(), err)
	}
	return img
}

// under is how much of the picture is left out at its top: title and meanings.
const under = 170

// middle is the middle of all pixels of a colour in a part of the picture, and how many there are.
func middle(img image.Image, in image.Rectangle, want color.NRGBA) (x, y float64, n int) {
	for py := in.Min.Y; py < in.Max.Y; py++ {
		for px := in.Min.X; px < in.Max.X; px++ {
			if color.NRGBAModel.Convert(img.At(px, py)) == want {
				x, y, n = x+float64(px), y+float64(py), n+1
			}
		}
	}
	return x / float64(n), y / float64(n), n
}

// A dot's place says its day and mass: three weighings lie as far apart as arithmetic says, and a fourth where the first two say.
func TestWeighingsLieInThePictureWhereTheyBelong(t *testing.T) {
	at := func(points ...Point) (x, y float64) {
		t.Helper()
		frame := []Point{{0, 100}, {28, 128}} // what the axes are of
		img := picture(t, Plot{Points: append(slices.Clone(frame), points...)})
		all := image.Rect(0, under, WidePX, HighPX)
		bx, by, n := middle(picture(t, Plot{Points: frame}), all, inks().weighed)
		ax, ay, m := middle(img, all, inks().weighed)
		if n < 200 || m <= n {
			t.Fatalf("%d pixels of two dots, %d of all", n, m)
		}
		return (ax*float64(m) - bx*float64(n)) / float64(m-n), (ay*float64(m) - by*float64(n)) / float64(m-n)
	}
	x1, y1 := at(Point{7, 107})
	x2, y2 := at(Point{14, 121})
	for _, c := range []Point{{21, 114}, {17.5, 110.5}, {3.5, 124.5}} {
		x, y := at(c)
		wantX, wantY := x1+(x2-x1)*(c.Day-7)/7, y1+(y2-y1)*(c.G-107)/14
		if math.Abs(x-wantX) > 1 || math.Abs(y-wantY) > 1 {
			t.Errorf("%v lies at %.1f, %.1f, want %.1f, %.1f", c, x, y, wantX, wantY)
		}
	}
	if x2-x1 < 200 || y1-y2 < 200 {
		t.Errorf("a week is %.0f pixels wide, 14 g are %.0f high", x2-x1, y1-y2)
	}
}

func TestThePictureHasCurveBandTodayAndReadyDay(t *testing.T) {
	p := worked(t)
	img, c := picture(t, p), inks()
	below := image.Rect(0, under, WidePX, HighPX)
	q := p
	q.Points = []Point{p.Points[0], p.Points[7]}
	two := picture(t, q)
	x0, _, _ := middle(two, image.Rect(0, under, WidePX/2, HighPX), c.weighed)
	x21, _, _ := middle(two, image.Rect(WidePX/2, under, WidePX, HighPX), c.weighed)
	column := func(day float64) float64 { return x0 + (x21-x0)*day/21 }
	for _, of := range []struct {
		name   string
		colour color.NRGBA
		day    float64
	}{{"today", c.today, 23}, {"the ready day", c.ready, 27.962892}} {
		if x, _, n := middle(img, below, of.colour); n < 100 || math.Abs(x-column(of.day)) > 1 {
			t.Errorf("%s: %d pixels about column %.1f, want %.1f", of.name, n, x, column(of.day))
		}
	}
	at := int(column(18)) // between weighings and before today
	strip := image.Rect(at, under, at+2, HighPX)
	_, curve, n := middle(img, strip, c.curve)
	_, band, m := middle(img, strip, c.band)
	if n == 0 || m == 0 || math.Abs(curve-band) > 4 {
		t.Errorf("on day 18 the curve lies at %.1f (%d pixels), its band about %.1f (%d)", curve, n, band, m)
	}
	early := int(column(23.584)) + 4
	if _, _, n := middle(img, image.Rect(early, under, early+2, HighPX), c.readyBand); n < 200 {
		t.Errorf("the band of the ready day has %d pixels at its beginning", n)
	}
	if _, _, n := middle(img, image.Rect(early-8, under, early-6, HighPX), c.readyBand); n > 0 {
		t.Errorf("the band of the ready day begins before it does")
	}
}

func TestAPlotOfNothingIsRefused(t *testing.T) {
	var b bytes.Buffer
	for _, p := range []Plot{{Name: "X"}, {Name: "X", Points: []Point{{math.NaN(), 3}, {2, math.Inf(1)}}, Today: pour.Know(3)}} {
		if err := p.PNG(&b); err == nil || b.Len() > 0 || !strings.Contains(err.Error(), "X") {
			t.Errorf("%v: %v, %d bytes", p, err, b.Len())
		}
	}
}

// hostile is a number that may be none.
func hostile(t *rapid.T, label string) float64 {
	return rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 400), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0})).Draw(t, label)
}

// Any is a plot of any numbers.
func anyPlot(t *rapid.T) Plot {
	p := Plot{Today: pour.Figure{V: hostile(t, "today"), Known: rapid.Bool().Draw(t, "known")}}
	for range rapid.IntRange(0, 4).Draw(t, "points") {
		p.Points = append(p.Points, Point{hostile(t, "day"), hostile(t, "g")})
	}
	for range rapid.IntRange(0, 4).Draw(t, "spans") {
		p.Curve = append(p.Curve, Span{hostile(t, "day"), hostile(t, "g"), hostile(t, "low"), hostile(t, "high")})
	}
	p.Ready = Ready{rapid.Bool().Draw(t, "ready"), hostile(t, "ready day"), hostile(t, "from"), hostile(t, "to")}
	if rapid.Bool().Draw(t, "ounces") {
		p.Show.Mass = pour.MassOunce
	}
	return p
}

// Whatever the numbers, axes run upwards, every tick lies on its axis with a number to read, and nothing told is no number.
func TestNoNumberIsDrawnThatIsNone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlot(t).Sound()
		for _, a := range []Axis{p.Days(rapid.IntRange(-1, 12).Draw(t, "ticks")), p.Mass(rapid.IntRange(-1, 12).Draw(t, "ticks"))} {
			if !(a.High > a.Low) || len(a.Ticks) == 0 || len(a.Ticks) > 60 {
				t.Fatalf("%+v", a)
			}
			for _, tick := range a.Ticks {
				if v := a.Along(tick.At); !(v > -1e-9 && v < 1+1e-9) || strings.Contains(tick.Text, "–") {
					t.Fatalf("%+v in %v to %v", tick, a.Low, a.High)
				}
			}
		}
		for _, line := range p.Tell() {
			if strings.Contains(line, "NaN") || strings.Contains(line, "Inf") || strings.Contains(line, "– ") {
				t.Fatal(line)
			}
		}
	})
}

func BenchmarkPNG(b *testing.B) {
	p := worked(b)
	for b.Loop() {
		var out bytes.Buffer
		if err := p.PNG(&out); err != nil {
			b.Fatal(err)
		}
	}
}
