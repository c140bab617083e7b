package swirl

import (
	"context"
	"errors"
	"image/color"
	"math"
	"strings"
	"testing"
)

func mustPipe(t testing.TB, r IcingRecipe) *Icing {
	t.Helper()
	c, err := NewIcing(r)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// pure is red, green and blue.
func pure() []color.NRGBA {
	return []color.NRGBA{{255, 0, 0, 255}, {0, 255, 0, 255}, {0, 0, 255, 255}}
}

// The area under the outline, column by column of a finely painted icing, is the mean height times the width; at its peak it just ends.
func TestTheOutlineHoldsTheVolumeUpToThePeak(t *testing.T) {
	for _, piping := range []Piping{Rosettes, Peaks} {
		for _, width := range []float64{40, 90} {
			c := mustPipe(t, IcingRecipe{Piping: piping, Shares: []float64{1}, WidthMM: width, MeanMM: 10, Seed: 4})
			const n = 300
			sum, highest := 0.0, 0.0
			for i := range n {
				y, top := width*(float64(i)+0.5)/n, 0.0
				for z := 0.05; z < c.PeakMM(); z += 0.1 {
					if _, bright, ok := c.at(y, z); ok {
						top = z
						if !(bright > 0 && bright <= 1) {
							t.Fatalf("%s: the brightness at (%.1f, %.1f) is %g", piping, y, z, bright)
						}
					}
				}
				sum, highest = sum+top/n, max(highest, top)
			}
			if !near(sum, 10, 0.15) {
				t.Errorf("%s %g mm wide: the mean height is %.2f mm, want 10", piping, width, sum)
			}
			if highest > c.PeakMM() || highest < 0.8*c.PeakMM() {
				t.Errorf("%s %g mm wide: it is seen up to %.2f mm, the peak is %.2f mm", piping, width, highest, c.PeakMM())
			}
			if _, _, ok := c.at(width/2, c.PeakMM()+0.01); ok {
				t.Errorf("%s: there is icing over its peak", piping)
			}
		}
	}
}

// A mound of one colour has its colour on all of it, and no other mound than those of its shares.
func TestEveryMoundOfABagIsOfOneColour(t *testing.T) {
	for _, piping := range []Piping{Rosettes, Peaks} {
		c := mustPipe(t, IcingRecipe{Piping: piping, Shares: []float64{0.5, 0, 0.5}, WidthMM: 80, MeanMM: 10, Seed: 4})
		area, all := [3]float64{}, 0.0
		for y := 0.5; y < 80; y++ {
			for z := 0.25; z < c.PeakMM(); z += 0.5 {
				m, _ := c.mound(y, z)
				portion, _, ok := c.at(y, z)
				if ok != (m != nil) || ok && portion != m.portion {
					t.Fatalf("%s: at (%g, %g) lies portion %d, the mound is %v", piping, y, z, portion, m)
				}
				if ok {
					area[portion]++
					all++
				}
			}
		}
		if area[1] != 0 || !near(area[0]/all, 0.5, 0.12) {
			t.Errorf("%s: of halves the parts seen are %.3f and %.3f; of nothing %.3f", piping, area[0]/all, area[2]/all, area[1]/all)
		}
	}
}

func TestTheColoursOfBagsTakeTurnsAlongTheBar(t *testing.T) {
	c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{0.5, 0.5}, WidthMM: 400, MeanMM: 9, Seed: 1})
	run, longest, last := 0, 0, -1
	for y := 1.; y < 400; y++ { // just over the bar, where the front row stands
		portion, _, ok := c.at(y, 1)
		if ok && portion == last {
			run++
		} else {
			run, last = 1, portion
		}
		longest = max(longest, run)
	}
	if longest > 110 {
		t.Errorf("one of two colours stands alone over %d mm of 400", longest)
	}
}

func TestStripesOfABagShowAboutTheirShares(t *testing.T) {
	for _, piping := range []Piping{Rosettes, Peaks} {
		c := mustPipe(t, IcingRecipe{Piping: piping, Striped: true, Shares: []float64{0.6, 0.3, 0.1}, WidthMM: 200, MeanMM: 12, Seed: 4})
		area, all := [3]float64{}, 0.0
		for y := 0.25; y < 200; y += 0.5 {
			for z := 0.125; z < c.PeakMM(); z += 0.25 {
				if portion, _, ok := c.at(y, z); ok {
					area[portion]++
					all++
				}
			}
		}
		for i, want := range []float64{0.6, 0.3, 0.1} {
			if !near(area[i]/all, want, 0.06) {
				t.Errorf("%s: portion %d shows on %.3f of the icing, want about %g", piping, i, area[i]/all, want)
			}
		}
	}
}

// The back row stands in the gaps of the front row, and is darker.
func TestTheBackRowStandsInTheGapsAndIsDarker(t *testing.T) {
	c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 120, MeanMM: 10, Seed: 4})
	front, back := 0, 0
	for i, m := range c.mounds {
		switch {
		case m.dim == 1:
			front++
			if back > 0 {
				t.Errorf("mound %d stands in front of an earlier one of the back row", i)
			}
		case m.dim < 1:
			back++
			if _, in := m.across(m.at, 0.1); !in {
				t.Errorf("mound %d does not reach its own middle", i)
			}
		}
	}
	if back != front-1 {
		t.Errorf("%d mounds stand behind %d", back, front)
	}
	for k := range back { // between the k-th of the front and the next, nearer to the middle of the gap than to either; the outermost of the front are moved in
		left, right := c.mounds[k].at, c.mounds[k+1].at
		if m := c.mounds[front+k]; !near(m.at, (left+right)/2, 0.4*(right-left)) {
			t.Errorf("mound %d of the back stands at %.1f mm, the gap is from %.1f to %.1f mm", k, m.at, left, right)
		}
	}
	for i, m := range c.mounds {
		if m.at < 0 || m.at > 120 || m.half <= 0 || m.high <= 0 || m.high > c.PeakMM() {
			t.Errorf("mound %d stands at %g mm, %g mm wide and %g mm high", i, m.at, 2*m.half, m.high)
		}
	}
}

func TestTheSeedOfAnIcingIsItsFace(t *testing.T) {
	r := IcingRecipe{Piping: Peaks, Striped: true, Shares: []float64{0.5, 0.5}, WidthMM: 80, MeanMM: 10, Seed: 4}
	paint := func(r IcingRecipe) []color.NRGBA { return mustPipe(t, r).Paint(pure(), color.NRGBA{}, 60, 20, nil) }
	one, two := paint(r), paint(r)
	r.Seed = 5
	other, differ := paint(r), 0
	for i := range one {
		if one[i] != two[i] {
			t.Fatalf("pixel %d of one icing is %v and %v", i, one[i], two[i])
		}
		if one[i] != other[i] {
			differ++
		}
	}
	if differ < len(one)/20 {
		t.Errorf("another seed changes %d of %d pixels", differ, len(one))
	}
}

// An icing of one pure colour is painted in shades of it, over the ground above and none of it at the foot.
func TestAnIcingIsPaintedInItsColoursOverTheGround(t *testing.T) {
	c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{0, 1}, WidthMM: 80, MeanMM: 10, Seed: 4})
	ground := color.NRGBA{0, 0, 255, 255}
	got := c.Paint(pure(), ground, 160, 40, nil)
	top, foot, most := 0, 0, uint8(0)
	for i, px := range got {
		if px.R != 0 || px.A != 255 {
			t.Fatalf("pixel %d is %v: neither green nor blue", i, px)
		}
		if i < 160 && px == ground {
			top++
		}
		if i >= 39*160 && px.B == 0 && px.G > 0 {
			foot++
		}
		most = max(most, px.G)
	}
	if top < 100 || foot < 140 || most < 180 {
		t.Errorf("%d of 160 pixels of the top row are ground, %d of the foot icing, the brightest %d", top, foot, most)
	}
	// over nothing, a pixel that is half covered is half opaque and as bright as where it is covered
	dst := make([]color.NRGBA, 160*40)
	partly := 0
	for i, px := range c.Paint(pure(), color.NRGBA{}, 160, 40, dst) {
		if px.A > 0 && px.A < 255 {
			partly++
			if px.G < 60 {
				t.Errorf("pixel %d is %v: its colour is mixed with nothing", i, px)
			}
		}
		if px != dst[i] {
			t.Fatal("the picture is not drawn where it was asked to be")
		}
	}
	if partly < 50 {
		t.Errorf("%d pixels of the outline are smooth", partly)
	}
}

// A black icing before white leaves as much light of a pixel as it does not cover; before nothing, it is as opaque as it covers.
func TestTheOutlineOfAnIcingIsBlendedWithTheGround(t *testing.T) {
	c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 80, MeanMM: 10, Seed: 4})
	black := []color.NRGBA{{0, 0, 0, 255}}
	clear := c.Paint(black, color.NRGBA{}, 160, 40, nil)
	for i, px := range c.Paint(black, color.NRGBA{255, 255, 255, 255}, 160, 40, nil) {
		if want := srgb(1 - float64(clear[i].A)/255); clear[i].A > 8 && clear[i].A < 247 && !near(float64(px.R), want, 3) {
			t.Errorf("pixel %d is %v where %d of 255 of it are covered, want %.0f", i, px, clear[i].A, want)
		}
	}
}

func TestAPartOfAnIcingStaysWithinIt(t *testing.T) {
	c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 80, MeanMM: 10})
	for in, want := range map[[2]float64][2]float64{{20, 50}: {20, 30}, {-9, 50}: {0, 50}, {20, 900}: {20, 60}, {60, 20}: {60, 0}} {
		p := c.Part(in[0], in[1])
		if p.from != want[0] || p.wide != want[1] {
			t.Errorf("the part of %v runs from %g over %g mm, want %v", in, p.from, p.wide, want)
		}
		if p.PeakMM() != c.PeakMM() {
			t.Errorf("the part of %v is %g mm high, the whole %g mm", in, p.PeakMM(), c.PeakMM())
		}
	}
	if c.from != 0 || c.wide != 80 {
		t.Error("the whole is changed by its part")
	}
}

// Shares that are held to sum to 1 within a thousandth are scaled, not cut.
func TestTheBoundsOfAnIcing(t *testing.T) {
	for name, c := range map[string]struct {
		change func(r *IcingRecipe)
		says   string // nothing where it can be drawn
	}{
		"narrowest":     {func(r *IcingRecipe) { r.WidthMM = 10 }, ""},
		"too narrow":    {func(r *IcingRecipe) { r.WidthMM = 9.9 }, "10 to 2000 mm"},
		"widest":        {func(r *IcingRecipe) { r.WidthMM = 2000 }, ""},
		"too wide":      {func(r *IcingRecipe) { r.WidthMM = 2001 }, "10 to 2000 mm"},
		"lowest":        {func(r *IcingRecipe) { r.MeanMM = 1 }, ""},
		"too low":       {func(r *IcingRecipe) { r.MeanMM = 0.9 }, "1 to 200 mm"},
		"highest":       {func(r *IcingRecipe) { r.MeanMM = 200 }, ""},
		"too high":      {func(r *IcingRecipe) { r.MeanMM = 201 }, "1 to 200 mm"},
		"rounded":       {func(r *IcingRecipe) { r.Shares = []float64{0.3333, 0.3333, 0.3333} }, ""},
		"too little":    {func(r *IcingRecipe) { r.Shares = []float64{0.5, 0.49} }, "sum to 1"},
		"too much":      {func(r *IcingRecipe) { r.Shares = []float64{0.6, 0.6} }, "sum to 1"},
		"less than 0":   {func(r *IcingRecipe) { r.Shares = []float64{1, -0.0005} }, "portion 1 has a share of -0.0005"},
		"33 portions":   {func(r *IcingRecipe) { r.Shares = append(make([]float64, 32), 1) }, "at most 32"},
		"32 portions":   {func(r *IcingRecipe) { r.Shares = append(make([]float64, 31), 1) }, ""},
		"other pipings": {func(r *IcingRecipe) { r.Piping = "" }, `"rosettes" or "peaks"`},
	} {
		r := IcingRecipe{Piping: Peaks, Shares: []float64{1}, WidthMM: 80, MeanMM: 10}
		c.change(&r)
		switch _, err := NewIcing(r); {
		case c.says == "" && err != nil:
			t.Errorf("%s: %v", name, err)
		case c.says != "" && (!errors.Is(err, ErrIcing) || !strings.Contains(err.Error(), c.says)):
			t.Errorf("%s: the error is %v, want it to say %q", name, err, c.says)
		}
	}
}

// The stretch of a loaf that is drawn has the stretch of the icing that stands on it.
func TestAPartOfALoafHasItsPartOfTheIcing(t *testing.T) {
	s := cast(Box{L: 200, W: 40, H: 30}, 1, func(_, _, _ float64) int { return 0 })
	top := Topping{Icing: mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 40, MeanMM: 8}), Palette: pure()}
	whole, err := RenderLoaf(context.Background(), s.Lengthwise(20), white(), top, 2, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	half, err := RenderLoaf(context.Background(), s.Lengthwise(20).Part(100, 200), white(), top, 2, Finish{})
	if err != nil {
		t.Fatal(err)
	}
	if half.Rect.Dx() != 200 || half.Rect.Dy() != whole.Rect.Dy() {
		t.Fatalf("half of a loaf is %v, the whole %v", half.Rect, whole.Rect)
	}
	for y := range half.Rect.Dy() {
		for x := range 200 {
			if a, b := half.NRGBAAt(x, y), whole.NRGBAAt(200+x, y); a != b {
				t.Fatalf("(%d, %d) of the half is %v, of the whole %v", x, y, a, b)
			}
		}
	}
}

// Twice as high a mean height on the same width is an icing twice the area, and a peak that rises with it.
func TestMoreIcingStandsHigher(t *testing.T) {
	last := 0.0
	for _, mean := range []float64{4, 8, 16, 32} {
		c := mustPipe(t, IcingRecipe{Piping: Rosettes, Shares: []float64{1}, WidthMM: 80, MeanMM: mean, Seed: 1})
		if c.PeakMM() <= math.Max(last, mean) {
			t.Errorf("a mean of %g mm has its peak at %g mm, less icing at %g mm", mean, c.PeakMM(), last)
		}
		last = c.PeakMM()
	}
}
