package swirl

import (
	"image/color"
	"testing"
)

// drawn is a picture of whole pixels, one digit for each, a point for empty.
func drawn(rows ...string) *Picture {
	p := &Picture{}
	p.Reset(len(rows[0]), len(rows))
	for j, row := range rows {
		for i, c := range row {
			if c != '.' {
				p.Pixels[j*p.W+i] = Pixel{Portion: [3]uint8{uint8(c - '0')}, Part: [3]uint8{255}}
			}
		}
	}
	return p
}

// Straight borders told by hand, times π/4: a pixel of this picture is 2 mm wide and 5 mm high.
func TestBordersAreAsLongAsTheSidesOfTheirPixels(t *testing.T) {
	m := drawn(
		"0011",
		"0011",
		"2.11").Measure(8, 15, 3)
	const quarter = 0.78539816339 // π/4
	for _, c := range []struct {
		a, b int
		want float64
	}{{0, 1, 10}, {0, 2, 2}, {1, 2, 0}, {0, 0, 0}, {1, 1, 0}} {
		if got := m.Borders[c.a][c.b]; !near(got, c.want*quarter, 1e-6) || got != m.Borders[c.b][c.a] {
			t.Errorf("%d and %d meet along %.3f mm, want %.3f", c.a, c.b, got, c.want*quarter)
		}
	}
	for i, want := range []float64{4. / 11, 6. / 11, 1. / 11} {
		if !near(m.Shares[i], want, 1e-9) {
			t.Errorf("portion %d shows on %.4f of what is drawn, want %.4f", i, m.Shares[i], want)
		}
	}
}

func TestMeasureCountsMixedPixelsByTheirParts(t *testing.T) {
	p := drawn("01")
	p.Pixels[0] = Pixel{Portion: [3]uint8{0, 1, 2}, Part: [3]uint8{127, 77, 51}} // 51 of 255 is a fifth
	m := p.Measure(2, 1, 3)
	for i, want := range []float64{127. / 510, (77 + 255.) / 510, 0.1} {
		if !near(m.Shares[i], want, 1e-9) {
			t.Errorf("portion %d has %.4f, want %.4f", i, m.Shares[i], want)
		}
	}
}

func TestMeasureLeavesOutPortionsItIsNotAskedFor(t *testing.T) {
	m := drawn("0000", "7711").Measure(4, 2, 2)
	if !near(m.Shares[0], 4./6, 1e-9) || !near(m.Shares[1], 2./6, 1e-9) || len(m.Borders) != 2 {
		t.Errorf("the shares are %.3f", m.Shares)
	}
	var none Picture
	if m := none.Measure(8, 5, 3); len(m.Shares) != 3 || m.Shares[0] != 0 || m.Borders[2][1] != 0 {
		t.Errorf("a picture without pixels measures %v", m)
	}
	if m := drawn("...", "...").Measure(8, 5, 1); m.Shares[0] != 0 {
		t.Errorf("an empty picture shows %v", m.Shares)
	}
}

func TestVotesAreCountedCellByCell(t *testing.T) {
	p := drawn(
		"110022",
		"1.0222",
		"..3344",
		"...345")
	for _, c := range []struct {
		columns, rows int
		want          []int
	}{
		{3, 2, []int{1, 0, 2, Empty, 3, 4}},
		{1, 1, []int{Empty}}, // 6 of 24 are empty, of no portion lie more
		{6, 4, []int{1, 1, 0, 0, 2, 2, 1, Empty, 0, 2, 2, 2, Empty, Empty, 3, 3, 4, 4, Empty, Empty, Empty, 3, 4, 5}},
		{3, 1, []int{Empty, 0, 2}}, // of the first 8 five are empty, of the second three are 0
		{0, 4, nil},
	} {
		got := p.Vote(c.columns, c.rows)
		if len(got) != len(c.want) {
			t.Errorf("%d by %d cells: %d votes", c.columns, c.rows, len(got))
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%d by %d cells: cell %d votes %d, want %d", c.columns, c.rows, i, got[i], c.want[i])
			}
		}
	}
}

func TestAPixelVotesInEveryCellItLiesIn(t *testing.T) {
	got := drawn("01").Vote(4, 2)
	for i, want := range []int{0, 0, 1, 1, 0, 0, 1, 1} {
		if got[i] != want {
			t.Errorf("cell %d votes %d, want %d", i, got[i], want)
		}
	}
}

// A pixel keeps the three that show most, greatest first; what is left over by rounding goes to the first, equal counts to the lower portion.
func TestATallyKeepsTheThreeThatShowMost(t *testing.T) {
	for name, c := range map[string]struct {
		add  [][2]int
		want Pixel
	}{
		"nothing":       {nil, Pixel{}},
		"one":           {[][2]int{{4, 3}}, Pixel{Portion: [3]uint8{4}, Part: [3]uint8{255}}},
		"what is empty": {[][2]int{{none, 9}, {4, 3}}, Pixel{Portion: [3]uint8{4}, Part: [3]uint8{255}}},
		"thirds":        {[][2]int{{5, 1}, {3, 1}, {4, 1}}, Pixel{Portion: [3]uint8{3, 4, 5}, Part: [3]uint8{85, 85, 85}}},
		"a half and two quarters": {[][2]int{{5, 1}, {3, 1}, {4, 2}}, Pixel{
			Portion: [3]uint8{4, 3, 5}, Part: [3]uint8{129, 63, 63},
		}},
		"four":           {[][2]int{{5, 4}, {3, 3}, {4, 2}, {1, 1}}, Pixel{Portion: [3]uint8{5, 3, 4}, Part: [3]uint8{114, 85, 56}}},
		"twice the same": {[][2]int{{5, 1}, {3, 1}, {5, 1}}, Pixel{Portion: [3]uint8{5, 3}, Part: [3]uint8{170, 85}}},
	} {
		var sum tally
		for _, a := range c.add {
			sum.add(uint8(a[0]), uint16(a[1]))
		}
		if got := sum.pixel(); got != c.want {
			t.Errorf("%s: the pixel is %v, want %v", name, got, c.want)
		}
	}
	var many tally
	for i := range 20 {
		many.add(uint8(i), 1)
	}
	if px := many.pixel(); px.Portion != [3]uint8{0, 1, 2} || int(px.Part[0])+int(px.Part[1])+int(px.Part[2]) != 255 {
		t.Errorf("of twenty portions the pixel is %v", px)
	}
}

// Light by hand: a fifth of red and four fifths of blue.
func TestAMixedPixelHasTheLightOfItsParts(t *testing.T) {
	p := Picture{W: 3, H: 1, Pixels: []Pixel{
		{Portion: [3]uint8{1, 0}, Part: [3]uint8{204, 51}},
		{Portion: [3]uint8{9}, Part: [3]uint8{255}},
		{Portion: [3]uint8{1, 0, 2}, Part: [3]uint8{153, 51, 51}},
	}}
	ground := color.NRGBA{0, 255, 0, 255}
	got := p.Colour([]color.NRGBA{{255, 0, 0, 255}, {0, 0, 255, 255}}, ground, nil)
	red, blue, green := uint8(srgb(0.2)+0.5), uint8(srgb(0.8)+0.5), uint8(srgb(0.6)+0.5)
	for i, want := range []color.NRGBA{{red, 0, blue, 255}, ground, {red, red, green, 255}} {
		if got[i] != want {
			t.Errorf("pixel %d is %v, want %v", i, got[i], want)
		}
	}
}

func TestPicturesReuseWhatTheyAreGiven(t *testing.T) {
	var p Picture
	p.Reset(10, 10)
	p.Pixels[3] = Pixel{Part: [3]uint8{255}}
	first := &p.Pixels[0]
	p.Reset(5, 4)
	if &p.Pixels[0] != first || len(p.Pixels) != 20 || p.Pixels[3] != (Pixel{}) || p.W != 5 || p.H != 4 {
		t.Errorf("a smaller picture is %d by %d of %d pixels, the fourth %v", p.W, p.H, len(p.Pixels), p.Pixels[3])
	}
	dst := make([]color.NRGBA, 30)
	if got := p.Colour(nil, color.NRGBA{1, 2, 3, 4}, dst); len(got) != 20 || &got[0] != &dst[0] || got[19] != (color.NRGBA{1, 2, 3, 4}) {
		t.Errorf("%d colours are drawn elsewhere", len(got))
	}
	if got := p.Colour(nil, color.NRGBA{}, dst[:0:3]); len(got) != 20 {
		t.Errorf("%d colours are drawn on what is too small", len(got))
	}
}

func TestALabelIsThePortionThatShowsMost(t *testing.T) {
	p := drawn("01", ".2")
	p.Pixels[1] = Pixel{Portion: [3]uint8{6, 1}, Part: [3]uint8{200, 55}}
	for at, want := range map[[2]int]int{{0, 0}: 0, {1, 0}: 6, {0, 1}: Empty, {1, 1}: 2} {
		if got := p.Label(at[0], at[1]); got != want {
			t.Errorf("pixel %v shows %d, want %d", at, got, want)
		}
	}
}
