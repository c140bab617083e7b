package swirl

import (
	"context"
	"errors"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/script"
)

func palette() []color.NRGBA {
	return []color.NRGBA{{244, 238, 220, 255}, {74, 91, 168, 255}, {200, 80, 60, 255}, {232, 185, 60, 255}, {92, 140, 74, 255}}
}

func refined(t testing.TB, f *Face, w, h int) *Picture {
	t.Helper()
	var p Picture
	if err := f.Refine(context.Background(), &p, w, h); err != nil {
		t.Fatal(err)
	}
	return &p
}

// apart is the mean difference of the parts of the portions of two pictures of one size, 0 to 1.
func apart(a, b *Picture) (sum float64) {
	for i := range a.Pixels {
		var part [MaxPortions]int
		for k := range 3 {
			part[a.Pixels[i].Portion[k]] += int(a.Pixels[i].Part[k])
			part[b.Pixels[i].Portion[k]] -= int(b.Pixels[i].Part[k])
		}
		for _, v := range part {
			sum += math.Abs(float64(v)) / (2 * 255 * float64(len(a.Pixels)))
		}
	}
	return sum
}

// shrunk averages k by k pixels.
func shrunk(p *Picture, k int) *Picture {
	out := &Picture{}
	out.Reset(p.W/k, p.H/k)
	for i := range out.Pixels {
		var t tally
		for j := range k * k {
			px := p.Pixels[(i/out.W*k+j/k)*p.W+i%out.W*k+j%k]
			for n, part := range px.Part {
				t.add(px.Portion[n], uint16(part))
			}
		}
		out.Pixels[i] = t.pixel()
	}
	return out
}

// leftOut is what more may differ where colours lie so finely that a pixel of 1 or 2 mm holds more than the three it can tell: twice the
// pixels to a mm, and it is half.
func leftOut(technique script.Technique) float64 {
	if technique == script.PotSpots {
		return 1.25
	}
	return 1
}

func TestARefinedPictureIsTheAverageOfAFinerOne(t *testing.T) {
	for _, technique := range script.Techniques() {
		f := mustPour(t, loaf(technique, 3)).Face(110)
		small, large := refined(t, f, 40, 30), refined(t, f, 160, 120)
		// 8 samples in a pixel where colours fold finely leave noise of some hundredths
		if d := apart(small, shrunk(large, 4)); d > 0.11*leftOut(technique) {
			t.Errorf("%s: the pictures differ by %.3f on average", technique, d)
		}
	}
}

func TestPatchesShowWhatTracingEveryPointShows(t *testing.T) {
	for _, technique := range script.Techniques() {
		f := mustPour(t, loaf(technique, 3)).Face(110)
		fast, plain := refined(t, f, 80, 62), &Picture{}
		f.Draft(plain, 480, 372)
		if d := apart(fast, shrunk(plain, 6)); d > 0.08*leftOut(technique) {
			t.Errorf("%s: the pictures differ by %.3f on average", technique, d)
		}
	}
}

func TestEveryPixelOfAPictureSumsToOne(t *testing.T) {
	p := refined(t, mustPour(t, loaf(script.PotSpots, 3)).Face(10), 90, 70)
	for i, px := range p.Pixels {
		if sum := int(px.Part[0]) + int(px.Part[1]) + int(px.Part[2]); sum != 255 || px.Part[0] < px.Part[1] || px.Part[1] < px.Part[2] {
			t.Fatalf("pixel %d is %+v", i, px)
		}
	}
}

func TestACancelledPictureStopsWithTheReason(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	s := mustPour(t, loaf(script.Drop, 3))
	var p Picture
	if err := s.Face(3).Refine(ctx, &p, 60, 40); !errors.Is(err, context.Canceled) {
		t.Errorf("a face gives %v", err)
	}
	if err := s.Top(62).Refine(ctx, &p, 60, 40); !errors.Is(err, context.Canceled) {
		t.Errorf("the view from above gives %v", err)
	}
	if _, err := Render(ctx, s.Face(3), palette(), 60, 40, Soap()); !errors.Is(err, context.Canceled) {
		t.Errorf("a rendering gives %v", err)
	}
}

func TestCutsAlongTheLoafAgreeWithTheFaces(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 8))
		var side, top Picture
		s.Lengthwise(30).Draft(&side, 25, 31)
		s.Top(40).Draft(&top, 25, 40)
		differ := 0
		for i := range 25 {
			f := s.Face(10*float64(i) + 5)
			for j := range 31 {
				if f.Label(30, 62-2*float64(j)-1) != side.Label(i, j) {
					differ++
				}
			}
			for j := range 40 {
				if f.Label(80-2*float64(j)-1, 40) != top.Label(i, j) {
					differ++
				}
			}
		}
		if differ > 25*71/40 { // the faces bake their waves
			t.Errorf("%s: %d of %d points differ", technique, differ, 25*71)
		}
	}
}

func TestAPartOfACutIsThatPartOfTheWhole(t *testing.T) {
	s := mustPour(t, loaf(script.Hanger, 8))
	for _, cut := range []*Long{s.Lengthwise(30), s.Top(59)} {
		var whole, half Picture
		cut.Draft(&whole, 100, 30)
		cut.Part(125, 250).Draft(&half, 50, 30)
		for j := range 30 {
			for i := range 50 {
				if half.Label(i, j) != whole.Label(50+i, j) {
					t.Fatalf("(%d, %d) of the second half is %d, of the whole %d", i, j, half.Label(i, j), whole.Label(50+i, j))
				}
			}
		}
	}
}

// above counts how many portions have more than a fiftieth of the view from above.
func above(s *Swirl) (n int) {
	var pic Picture
	s.Top(s.recipe.Box.H-SkimMM).Draft(&pic, 125, 40)
	for _, v := range pic.Measure(250, 80, 5).Shares {
		if v > 0.02 {
			n++
		}
	}
	return n
}

// What was poured over the whole width last covers the rest; whatever is poured along lines, drawn through or spooned leaves the others in sight.
func TestFromAboveMoreThanTheLastJugShows(t *testing.T) {
	for technique, want := range map[script.Technique]int{
		script.Layers: 1, script.Drop: 3, script.Column: 4, script.Pot: 3, script.PotStripes: 3, script.PotSpots: 4, script.PotEnd: 4,
		script.Hanger: 2, script.HangerLoops: 2, script.Combed: 5, script.Spooned: 3,
	} {
		sum := 0
		for seed := range int64(6) {
			sum += above(mustPour(t, loaf(technique, seed)))
		}
		if mean := float64(sum) / 6; mean < float64(want) {
			t.Errorf("%s: %.1f of 5 portions show from above on average, want %d", technique, mean, want)
		}
	}
}

func TestFromAboveOneSeesDownToWhatIsLaidSoFar(t *testing.T) {
	s := mustPour(t, loaf(script.Spooned, 3))
	for _, acts := range []int{5, 12} {
		var pic Picture
		s.Upto(acts).Top(59).Draft(&pic, 50, 20)
		empty := 0
		for i := range pic.Pixels {
			if pic.Pixels[i].Part[0] == 0 {
				empty++
			}
		}
		if empty > 500 {
			t.Errorf("after %d acts %d of 1000 pixels are empty", acts, empty)
		}
	}
}

// The closed form of dropping ink (Jaffer, Dropping Ink): a drop of radius r moves P to C + (P-C)√(1 + r²/|P-C|²), so
// that n drops of radius r show an area of nπr² whatever their order; here its inverse labels a picture.
func TestMeasureFindsTheAreaOfInkDrops(t *testing.T) {
	drops := []struct{ x, y, r float64 }{{50, 50, 16}, {61, 47, 9}, {45, 58, 12}, {52, 44, 6}}
	var p Picture
	p.Reset(800, 800)
	for i := range p.Pixels {
		x, y := (float64(i%800)+0.5)/8, (float64(i/800)+0.5)/8
		label := uint8(0)
		for k := len(drops) - 1; k >= 0; k-- {
			d := drops[k]
			e, f := x-d.x, y-d.y
			q := e*e + f*f
			if q <= d.r*d.r {
				label = uint8(k + 1)
				break
			}
			g := math.Sqrt(1 - d.r*d.r/q)
			x, y = d.x+e*g, d.y+f*g
		}
		p.Pixels[i] = Pixel{Portion: [3]uint8{label}, Part: [3]uint8{255}}
	}
	got := p.Measure(100, 100, 5)
	for k, d := range drops {
		if want := math.Pi * d.r * d.r / 1e4; math.Abs(got.Shares[k+1]-want) > 0.002*want+0.0002 {
			t.Errorf("drop %d covers %.5f, want %.5f", k, got.Shares[k+1], want)
		}
	}
}

func TestMeasureFindsTheLengthOfACircle(t *testing.T) {
	var p Picture
	p.Reset(600, 300) // pixels twice as high as wide
	for i := range p.Pixels {
		label := uint8(0)
		if math.Hypot((float64(i%600)+0.5)/6-50, (float64(i/600)+0.5)/3-50) < 30 {
			label = 1
		}
		p.Pixels[i] = Pixel{Portion: [3]uint8{label}, Part: [3]uint8{255}}
	}
	got := p.Measure(100, 100, 2)
	if want := 2 * math.Pi * 30; math.Abs(got.Borders[0][1]-want) > 0.02*want || got.Borders[0][1] != got.Borders[1][0] {
		t.Errorf("the circle is %g mm long, want %.1f", got.Borders, want)
	}
}

func TestVotesGoToThePortionThatShowsMost(t *testing.T) {
	p := Picture{W: 4, H: 2, Pixels: make([]Pixel, 8)}
	for i, label := range []uint8{0, 0, 1, 1, 0, 2, 1, 2} {
		p.Pixels[i] = Pixel{Portion: [3]uint8{label}, Part: [3]uint8{255}}
	}
	p.Pixels[3] = Pixel{}
	if got := p.Vote(2, 1); len(got) != 2 || got[0] != 0 || got[1] != 1 {
		t.Errorf("the votes are %v, want [0 1]", got)
	}
	var none Picture
	none.Reset(3, 3)
	if got := none.Vote(1, 1); got[0] != Empty {
		t.Errorf("an empty picture votes %v", got)
	}
}

func TestColoursAreAveragedInLinearLight(t *testing.T) {
	p := Picture{W: 2, H: 1, Pixels: []Pixel{{Portion: [3]uint8{0, 1}, Part: [3]uint8{128, 127}}, {}}}
	got := p.Colour([]color.NRGBA{{255, 255, 255, 255}, {0, 0, 0, 255}}, color.NRGBA{1, 2, 3, 4}, nil)
	// IEC 61966-2-1: half the light of white is sRGB 188
	if got[0].R < 187 || got[0].R > 189 || got[0].A != 255 || got[1] != (color.NRGBA{1, 2, 3, 4}) {
		t.Errorf("the colours are %v", got)
	}
}
