package picture

import (
	"image"
	"strings"
	"testing"

	"pourbench/pour/swirl"
)

// A bar of 80 by 62 mm in 40 by 20 cells, which are twice as high as wide: 40 wide allows 0.5 a mm, 20 high 40/62 a mm; the width decides.
func TestAPictureKeepsItsShapeInTheMiddleOfItsRoom(t *testing.T) {
	for _, c := range []struct {
		wmm, hmm float64
		w, h     int
		want     image.Rectangle
	}{
		{80, 62, 40, 20, image.Rect(0, 2, 40, 18)},   // 62 × 0.5 / 2 = 15.5, rounded to 16
		{80, 62, 100, 10, image.Rect(37, 0, 63, 10)}, // 80 × 20/62 = 25.8, rounded to 26
		{80, 80, 10, 5, image.Rect(0, 0, 10, 5)},
		{1000, 1, 10, 10, image.Rect(0, 4, 10, 5)}, // never thinner than a cell
		{80, 62, 0, 10, image.Rectangle{}},
		{80, 62, 10, 0, image.Rectangle{}},
	} {
		if got := fit(c.wmm, c.hmm, c.w, c.h); got != c.want {
			t.Errorf("%v × %v mm in %d × %d cells stands at %v, want %v", c.wmm, c.hmm, c.w, c.h, got, c.want)
		}
	}
}

func TestAllBarsStandInRowsWithALineForTheirNumbers(t *testing.T) {
	tiles := grid(10, 80, 80, 76, 24)
	if len(tiles) != 10 {
		t.Fatalf("%d tiles", len(tiles))
	}
	for i, a := range tiles {
		if a.Size() != tiles[0].Size() || !a.In(image.Rect(0, 0, 76, 24)) {
			t.Errorf("tile %d is %v beside %v", i, a, tiles[0])
		}
		for j, b := range tiles[:i] {
			below := image.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y+1)
			if a.Overlaps(below) {
				t.Errorf("tile %d at %v stands on tile %d or its number at %v", i, a, j, below)
			}
			if a.Min.Y == b.Min.Y && a.Min.X-b.Max.X < tileGap {
				t.Errorf("tiles %d and %d are %d columns apart", j, i, a.Min.X-b.Max.X)
			}
		}
	}
	if got := grid(3, 80, 80, 4, 1); got != nil {
		t.Errorf("without room for a number they stand at %v", got)
	}
}

// Parts 153 and 102 of 255 are as 3 to 2, their fifth powers as 243 to 32: the second gets 255 × 32/275, cut to 29, and the first the rest.
func TestAPictureOfCellsShowsWhatPrevails(t *testing.T) {
	p := &swirl.Picture{W: 4, H: 1, Pixels: []swirl.Pixel{
		{Portion: [3]uint8{0, 1}, Part: [3]uint8{153, 102}},
		{Portion: [3]uint8{2}, Part: [3]uint8{255}},
		{},
		{Portion: [3]uint8{0, 1, 2}, Part: [3]uint8{85, 85, 85}},
	}}
	got := crisp(p)
	if got.Pixels[0].Part != [3]uint8{226, 29, 0} {
		t.Errorf("sharpened to %v", got.Pixels[0].Part)
	}
	if got.Pixels[3].Part != [3]uint8{85, 85, 85} {
		t.Errorf("what has one third each was sharpened to %v", got.Pixels[3].Part)
	}
	if got.Pixels[1] != p.Pixels[1] || got.Pixels[2] != p.Pixels[2] || p.Pixels[0].Part[0] != 153 {
		t.Error("a pixel of one portion, an empty one or the picture itself was changed")
	}
}

func TestLettersStandNowAndThenOnTheirColour(t *testing.T) {
	row := func(y int, labels ...int) string {
		cells := make([]cell, len(labels))
		signRow(cells, labels, []Ink{{Colour: 1, Letter: "A"}, {Colour: 2, Letter: "B"}}, y)
		out := ""
		for _, c := range cells {
			switch {
			case c.sign != "":
				out += c.sign
			case c.off != 0:
				out += "_"
			default:
				out += " "
			}
		}
		return out
	}
	e := swirl.Empty
	if got := row(0, 0, 0, 0, e, 1); got != "_A_ _" {
		t.Errorf("short runs: %q", got)
	}
	if got := row(1, 0, 0, 0, e, 1); got != "___ _" {
		t.Errorf("every second row has none: %q", got)
	}
	long := make([]int, 24)
	if got := row(0, long...); got != "_______A______A______A__" {
		t.Errorf("a long run: %q", got)
	}
	if got := row(2, long...); got != "____A______A______A_____" {
		t.Errorf("two rows on it is shifted: %q", got)
	}
	if got := row(0, 7, 7, 7); got != "   " {
		t.Errorf("a portion that there is not: %q", got)
	}
}

func TestABarHasRoundedLowerCorners(t *testing.T) {
	bar, cutAlong := &tile{bar: 0}, &tile{bar: -1}
	for _, c := range []struct {
		t    *tile
		x, y int
		w, h int
		want bool
	}{
		{bar, 0, 29, 24, 30, true},
		{bar, 23, 29, 24, 30, true},
		{bar, 1, 29, 24, 30, false},
		{bar, 0, 28, 24, 30, false},
		{bar, 0, 29, 23, 30, false},
		{cutAlong, 0, 29, 24, 30, false},
	} {
		if got := c.t.corner(c.x, c.y, c.w, c.h); got != c.want {
			t.Errorf("pixel %d, %d of %d × %d (bar %d) is a corner: %v", c.x, c.y, c.w, c.h, c.t.bar, got)
		}
	}
}

func TestABarIsSeenFromItsFirstCutSide(t *testing.T) {
	s := Shot{Bars: []swirl.Bar{{From: 9.8, To: 34.8}, {From: 35.4, To: 60.4}}}
	for bar, want := range map[int]float64{-1: 9.8, 0: 9.8, 1: 35.4, 7: 35.4} {
		if got := s.at(bar); got.From != want {
			t.Errorf("bar %d is looked at %v mm along the loaf, want %v", bar+1, got.From, want)
		}
	}
	for v, want := range map[View]string{Bar: "one bar", Bars: "all bars", Long: "cut along the loaf", Top: "the batter from above", Stands: "from above as it stands"} {
		if v.String() != want {
			t.Errorf("view %d is called %q", v, v)
		}
	}
}

func TestTheBrightestPortionHasTheMostInkOnADarkTerminal(t *testing.T) {
	d := dyes(Plain)
	for dark, want := range map[bool][2]string{true: {"@", "."}, false: {".", "@"}} {
		d.DarkTerminal = dark
		base, top := d.inks()
		all := append(append([]Ink(nil), base...), top...)
		// the icing's cream and the pot are the lightest, ultramarine and the red oxide the darkest
		lightest, darkest := all[0].Glyph+all[5].Glyph, all[1].Glyph+all[2].Glyph
		if !strings.Contains(lightest, want[0]) || !strings.Contains(darkest, want[1]) {
			t.Errorf("dark %v: the light ones are %q, the dark ones %q", dark, lightest, darkest)
		}
		seen := map[string]bool{}
		for _, k := range all {
			if seen[k.Glyph] || k.Glyph == "" {
				t.Errorf("dark %v: the sign %q twice, or none", dark, k.Glyph)
			}
			seen[k.Glyph] = true
		}
	}
	d.Letters = true
	base, _ := d.inks()
	for i, want := range []string{"A", "B", "C", "D", "E"} {
		if base[i].Glyph != want {
			t.Errorf("with letters portion %d has the sign %q", i, base[i].Glyph)
		}
	}
}
