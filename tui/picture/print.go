package picture

import (
	"image"
	"image/color"
	"slices"

	"pourbench/chem/colour"
	"pourbench/pour/relief"
	"pourbench/pour/swirl"
	"pourbench/tui/screen"
)

// Print is a plate in its dyes: cells ready to be drawn. It never changes.
type Print struct {
	Plate *Plate
	Dye   Dye
	Base  []Ink // by portion
	Top   []Ink // by the icing's jugs
	w, h  int
	cells []cell
}

// cell is pixels in two colours, or a sign on a ground.
type cell struct {
	on, off screen.Colour // of the pixels that are set and of the others; of a sign: its own and its ground's
	set     uint8         // which pixels are, as [screen.Area.Mosaic] takes them
	sign    string
}

// Print prints a plate.
func (p *Plate) Print(d Dye) *Print {
	out := &Print{Plate: p, Dye: d, w: p.Shot.W, h: p.Shot.H, cells: make([]cell, max(p.Shot.W, 0)*max(p.Shot.H, 0))}
	out.Base, out.Top = d.inks()
	for i := range p.tiles {
		t := &p.tiles[i]
		switch {
		case p.Shot.Letters:
			out.signs(t)
		case d.Depth == True:
			out.blended(t)
		default:
			out.flat(t)
		}
	}
	return out
}

// Draw draws the print into the upper left corner of an area.
func (p *Print) Draw(a screen.Area) {
	for y := range min(p.h, a.H()) {
		for x := range min(p.w, a.W()) {
			switch c := &p.cells[y*p.w+x]; {
			case c.sign != "":
				a.Text(x, y, c.sign, screen.Style{Fg: c.on, Bg: c.off})
			case c.on != 0 || c.off != 0:
				a.Mosaic(x, y, p.Plate.mosaic(), c.set, c.on, c.off)
			}
		}
	}
}

// Tile is one picture of a print: which bar, and its cells.
type Tile struct {
	Bar  int // -1: a cut of the whole loaf
	Rect image.Rectangle
}

// Tiles returns where the pictures stand.
func (p *Plate) Tiles() []Tile {
	out := make([]Tile, len(p.tiles))
	for i, t := range p.tiles {
		out[i] = Tile{t.bar, t.rect}
	}
	return out
}

// blended prints in true colour, pixel edges mixed in linear light.
func (p *Print) blended(t *tile) {
	w, h := p.Plate.pixels(t)
	done := p.Plate.Shot.Done == Whole
	base := crisp(&t.base).Colour(p.Dye.Base, color.NRGBA{}, nil)
	behind := func(x, y int) color.NRGBA {
		if y < t.crown {
			return color.NRGBA{}
		}
		return base[(y-t.crown)*w+x]
	}
	if p.Plate.dressed(t) {
		behind = p.dressed(t, w, behind)
	}
	p.tesserae(t, func(x, y int) screen.Colour {
		c := behind(x, y)
		if c.A == 0 || y < t.crown && c.A < half || done && t.corner(x, y, w, h) {
			return 0
		}
		return screen.RGB(c.R, c.G, c.B)
	})
}

// half is the alpha of a pixel that is half covered.
const half = 128

// dressed lays what stands on the loaf, and the cuts on it, over the colours of a tile.
func (p *Print) dressed(t *tile, w int, behind func(x, y int) color.NRGBA) func(x, y int) color.NRGBA {
	stuffs, ground := swirl.NewStuffs(p.Dye.stuffs(t)), p.Dye.Ground
	return func(x, y int) color.NRGBA {
		c, d := behind(x, y), t.over.Dots[y*w+x]
		if c.A == 0 && (d.Part[0] != 0 || t.scene != nil && d.Shade > 0) {
			c = ground
			if c.A == 0 && int(d.Part[0])+int(d.Part[1]) < half {
				return c
			}
		}
		return stuffs.Over(c, d)
	}
}

// stuffs is the colours of the stuffs that are laid over a tile: of a scene the base's as well.
func (d *Dye) stuffs(t *tile) []color.NRGBA {
	if t.scene == nil {
		return d.Top
	}
	return slices.Concat(d.Base, d.Top)
}

// stuffs is how the stuffs that are laid over a tile are drawn.
func (p *Print) stuffs(t *tile) []Ink {
	if t.scene == nil {
		return p.Top
	}
	return slices.Concat(p.Base, p.Top)
}

// crisp is a picture whose parts are sharpened: the fifth powers of what they were, by eye, brought back to their sum. A pixel of a
// terminal is as large as many filaments are wide, and their plain average is mud: a draft, which knows one portion in each pixel, would
// look better than the picture that knows them all.
func crisp(p *swirl.Picture) *swirl.Picture {
	fifth := func(v uint8) int64 { w := int64(v); return w * w * w * w * w }
	out := &swirl.Picture{W: p.W, H: p.H, Pixels: slices.Clone(p.Pixels)}
	for i := range out.Pixels {
		part := &out.Pixels[i].Part
		if part[0] == 0 || part[0] == 255 {
			continue
		}
		sum := fifth(part[0]) + fifth(part[1]) + fifth(part[2])
		part[1], part[2] = uint8(fifth(part[1])*255/sum), uint8(fifth(part[2])*255/sum)
		part[0] = 255 - part[1] - part[2]
	}
	return out
}

// flat prints one colour of a small palette in each pixel: that of the portion that shows most.
func (p *Print) flat(t *tile) {
	w, h := p.Plate.pixels(t)
	done := p.Plate.Shot.Done == Whole
	p.halves(t, func(x, y int) screen.Colour {
		inks, label := p.Base, swirl.Empty
		switch {
		case p.Plate.dressed(t) && t.over.Label(x, y) != relief.Bare:
			inks, label = p.stuffs(t), t.over.Label(x, y)
		case y >= t.crown:
			label = t.base.Label(x, y-t.crown)
		}
		if label == swirl.Empty || label >= len(inks) || done && t.corner(x, y, w, h) {
			return 0
		}
		return inks[label].Colour
	})
}

// halves fills a tile's cells from two of the pixels of each, one above the other.
func (p *Print) halves(t *tile, at func(x, y int) screen.Colour) {
	across, down := p.Plate.grain()
	for y := range t.rect.Dy() {
		row := p.cells[(t.rect.Min.Y+y)*p.w+t.rect.Min.X:]
		for x := range t.rect.Dx() {
			row[x] = cell{on: at(x*across, y*down), off: at(x*across, y*down+down/2), set: 1}
		}
	}
}

// tesserae fills a tile's cells from all their pixels.
func (p *Print) tesserae(t *tile, at func(x, y int) screen.Colour) {
	across, down := p.Plate.mosaic().Grain()
	s := splitter{seen: map[screen.Colour]colour.OKLab{}}
	pixels := make([]screen.Colour, across*down)
	for y := range t.rect.Dy() {
		row := p.cells[(t.rect.Min.Y+y)*p.w+t.rect.Min.X:]
		ground := screen.Colour(0)
		for x := range t.rect.Dx() {
			for i := range pixels {
				pixels[i] = at(x*across+i%across, y*down+i/across)
			}
			c := cell{}
			c.set, c.on, c.off = s.split(pixels)
			if c.on == ground && c.off != 0 { // a ground that goes on takes the terminal fewer bytes
				c.set, c.on, c.off = ^c.set, c.off, c.on
			}
			row[x], ground = c, c.off
		}
	}
}

// cornerFrom is the least width at which a picture loses its corner pixels, so that a bar looks rounded.
const cornerFrom = 24

// corner says whether a pixel is one of the lower corners that a bar lacks.
func (t *tile) corner(x, y, w, h int) bool {
	return t.bar >= 0 && w >= cornerFrom && y == h-1 && (x == 0 || x == w-1)
}

// lettersApart is how far apart the letters stand that are strewn over a coloured portion.
const lettersApart = 7

// signs prints one sign in each cell: on colour the letter now and then, without colour the portion's sign in every cell.
func (p *Print) signs(t *tile) {
	_, down := p.Plate.grain()
	crown := t.crown / down
	w := t.rect.Dx()
	votes := t.base.Vote(w, t.rect.Dy()-crown)
	for y := range t.rect.Dy() {
		cells := p.cells[(t.rect.Min.Y+y)*p.w+t.rect.Min.X:]
		if y >= crown {
			signRow(cells, votes[(y-crown)*w:(y-crown+1)*w], p.Base, y)
		}
		if p.Plate.dressed(t) {
			signRow(cells, t.over.Vote(w, t.rect.Dy(), y), p.stuffs(t), y)
		}
	}
}

// signRow prints one row of cells.
func signRow(cells []cell, row []int, inks []Ink, y int) {
	for x := 0; x < len(row); {
		end := x + 1
		for end < len(row) && row[end] == row[x] {
			end++
		}
		if label := row[x]; label != swirl.Empty && label < len(inks) {
			for i := x; i < end; i++ {
				cells[i] = inks[label].cell(lettered(i, x, end, y))
			}
		}
		x = end
	}
}

// lettered says whether a cell of a run from x to end holds the letter: the middle of a short run, and every so often in a long one,
// shifted from row to row.
func lettered(i, x, end, y int) bool {
	if end-x < lettersApart {
		return end-x >= 2 && i == (x+end)/2 && y%2 == 0
	}
	return y%2 == 0 && (i+y/2*3)%lettersApart == 0 && i > x && i < end-1
}

// cell is one cell of a portion.
func (k Ink) cell(lettered bool) cell {
	switch {
	case k.Colour == 0:
		return cell{sign: k.Glyph}
	case lettered && len(k.Letter) == 1:
		return cell{on: k.On, off: k.Colour, sign: k.Letter}
	default:
		return cell{on: k.Colour, off: k.Colour}
	}
}
