package picture

import (
	"context"
	"math"
	"math/bits"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"pgregory.net/rapid"

	"pourbench/chem/colour"
	"pourbench/tui/screen"
)

func newSplitter() splitter { return splitter{seen: map[screen.Colour]colour.OKLab{}} }

// strain is how far pixels lie from the colours they are drawn in, by another library's OKLab.
func strain(pixels []screen.Colour, set uint8, on, off screen.Colour) (sum float64) {
	lab := func(c screen.Colour) [3]float64 {
		r, g, b := c.Channels()
		x, y, z := colorful.Color{R: float64(r) / 255, G: float64(g) / 255, B: float64(b) / 255}.OkLab()
		return [3]float64{x, y, z}
	}
	for i, c := range pixels {
		as := off
		if set>>i&1 == 1 {
			as = on
		}
		p, q := lab(c), lab(as)
		for k := range p {
			sum += (p[k] - q[k]) * (p[k] - q[k])
		}
	}
	return sum
}

// No other way to part a cell, 8 for four pixels and 32 for six, in any two of its colours, shows its pixels better.
func TestACellIsPartedInTheBestWayThereIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pixels := make([]screen.Colour, rapid.SampledFrom([]int{2, 4, 6}).Draw(t, "pixels"))
		few := rapid.SliceOfN(rapid.Uint32Range(0, 0xffffff), 1, 6).Draw(t, "colours")
		for i := range pixels {
			v := rapid.SampledFrom(few).Draw(t, "colour")
			pixels[i] = screen.RGB(uint8(v>>16), uint8(v>>8), uint8(v))
		}
		s := newSplitter()
		set, on, off := s.split(pixels)
		got := strain(pixels, set, on, off)
		for way := range uint8(1) << (len(pixels) - 1) {
			for _, a := range pixels {
				for _, b := range pixels {
					if best := strain(pixels, way, a, b); best < got-1e-6 {
						t.Fatalf("%x is drawn %06b in %x and %x, %.6f off; %06b in %x and %x is %.6f off", pixels, set, on, off, got, way, a, b, best)
					}
				}
			}
		}
	})
}

// A pixel above the batter is the terminal's own, and the others share one colour, which one of them has.
func TestPixelsWithoutColourStayTheTerminals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pixels := make([]screen.Colour, 4)
		clear := rapid.Uint8Range(1, 15).Draw(t, "clear")
		own := map[screen.Colour]bool{}
		for i := range pixels {
			if clear>>i&1 == 0 {
				pixels[i] = screen.RGB(rapid.Uint8().Draw(t, "r"), rapid.Uint8().Draw(t, "g"), 7)
				own[pixels[i]] = true
			}
		}
		s := newSplitter()
		set, on, off := s.split(pixels)
		if set != 15&^clear || off != 0 || clear == 15 != (on == 0) || on != 0 && !own[on] {
			t.Errorf("%x is drawn %04b in %x and %x", pixels, set, on, off)
		}
	})
}

// Two colours or fewer are drawn as they are.
func TestACellOfTwoColoursIsDrawnAsItIs(t *testing.T) {
	a, b := screen.RGB(1, 2, 3), screen.RGB(200, 2, 3)
	for pixels, want := range map[[4]screen.Colour]uint8{{a, a, a, a}: 15, {a, b, a, a}: 13, {a, b, b, a}: 9, {a, b, b, b}: 1} {
		s := newSplitter()
		set, on, off := s.split(pixels[:])
		if set != want || on != a || want != 15 && off != b {
			t.Errorf("%x is drawn %04b in %x and %x", pixels, set, on, off)
		}
	}
}

// shown is the colour of a pixel of a print, as the terminal shows it.
func (p *Print) shown(x, y int) screen.Colour {
	across, down := p.Plate.grain()
	c := p.cells[y/down*p.w+x/across]
	if c.set>>(y%down*across+x%across)&1 == 1 {
		return c.on
	}
	return c.off
}

// Where a cell shows one portion or two, every pixel of the print is that of its portion, in every mosaic.
func TestEveryMosaicShowsThePixelsThatWereTraced(t *testing.T) {
	for m := range screen.Mosaic(screen.Mosaics) {
		s := meadow(Bar, 60, 24)
		s.Stands, s.Mosaic = nil, m
		p := draft(t, s).Print(dyes(True))
		tile := &p.Plate.tiles[0]
		across, down := p.Plate.grain()
		w, h := tile.rect.Dx()*across, tile.rect.Dy()*down
		if tile.base.W != w || tile.base.H != h {
			t.Fatalf("mosaic %d is traced in %d × %d pixels, want %d × %d", m, tile.base.W, tile.base.H, w, h)
		}
		wrong, corners := 0, 0
		for y := range h {
			for x := range w {
				got, want := p.shown(tile.rect.Min.X*across+x, tile.rect.Min.Y*down+y), p.Base[tile.base.Label(x, y)].Colour
				switch {
				case tile.corner(x, y, w, h) && got == 0:
					corners++
				case got != want:
					wrong++
				}
			}
		}
		if worst := w * h / 20; wrong > worst || corners != 2 || m == screen.Halves && wrong > 0 {
			t.Errorf("mosaic %d: %d of %d pixels are drawn in another colour, %d corners are cut", m, wrong, w*h, corners)
		}
	}
}

// A picture of letters or of a small palette has the pixels it always had.
func TestOnlyTrueColourIsDrawnInFinerPixels(t *testing.T) {
	for m := range screen.Mosaic(screen.Mosaics) {
		s := meadow(Bar, 60, 24)
		s.Mosaic, s.Flat = m, true
		if a, d := draft(t, s).grain(); a != 1 || d != 2 {
			t.Errorf("mosaic %d: a small palette gets %d × %d pixels a cell", m, a, d)
		}
		s.Letters = true
		if a, d := draft(t, s).grain(); a != 3 || d != 3 {
			t.Errorf("mosaic %d: letters get %d × %d pixels a cell", m, a, d)
		}
	}
}

// variety is how much the colours of a print's neighbouring pixels differ, on average, in OKLab.
func variety(p *Print) float64 {
	s := newSplitter()
	tile := p.Plate.tiles[0]
	across, down := p.Plate.grain()
	sum, n := 0.0, 0
	for y := tile.rect.Min.Y*down + tile.crown; y < tile.rect.Max.Y*down-1; y++ {
		for x := tile.rect.Min.X * across; x < tile.rect.Max.X*across-1; x++ {
			sum += math.Sqrt(distance(s.tone(p.shown(x, y)), s.tone(p.shown(x+1, y))))
			n++
		}
	}
	return sum / float64(n)
}

// The smooth picture takes the draft's place a moment later: it must not look like the draft through a fog.
func TestTheSmoothPictureIsAboutAsCrispAsItsDraft(t *testing.T) {
	for _, size := range [][2]int{{30, 12}, {60, 24}, {110, 44}} {
		s := meadow(Bar, size[0], size[1])
		s.Stands, s.Mosaic = nil, screen.Quarters
		d := draft(t, s)
		fine, err := d.Refine(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		rough, smooth := variety(d.Print(dyes(True))), variety(fine.Print(dyes(True)))
		if smooth < 0.75*rough {
			t.Errorf("%d × %d: pixels differ by %.4f beside %.4f in the draft", size[0], size[1], smooth, rough)
		}
	}
}

// Fewer changes of the ground are fewer bytes: where a cell's neighbour has its other colour as ground, so has the cell.
func TestAGroundGoesOnWhereItCan(t *testing.T) {
	s := meadow(Bar, 60, 24)
	s.Mosaic = screen.Quarters
	p := draft(t, s).Print(dyes(True))
	for i := 1; i < len(p.cells); i++ {
		if c, before := p.cells[i], p.cells[i-1]; i%p.w > 0 && c.off != 0 && c.on != c.off && bits.OnesCount8(c.set&15)%4 != 0 && c.on == before.off {
			t.Fatalf("cell %d has the ground %x, before it is %x", i, c.off, before.off)
		}
	}
}
