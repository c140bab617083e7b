package picture

import (
	"image"
	"image/color"
	"slices"

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

// cell is two pixels, or a sign on a ground.
type cell struct {
	upper, lower screen.Colour // of a sign: its own and its ground's
	sign         string
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
				a.Text(x, y, c.sign, screen.Style{Fg: c.upper, Bg: c.lower})
			case c.upper != 0 || c.lower != 0:
				a.Halves(x, y, c.upper, c.lower)
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
	ground := p.Dye.Ground
	w, h := p.Plate.pixels(t)
	done := p.Plate.Shot.Done == Whole
	shown := &t.base
	if w < crispBelow {
		shown = crisp(shown)
	}
	base := shown.Colour(p.Dye.Base, color.NRGBA{}, nil)
	var top []color.NRGBA
	if p.Plate.iced(t) {
		top = t.icing.Paint(p.Dye.Top, ground, w, t.crown-t.bare, nil)
	}
	behind := func(x, y int) (c color.NRGBA) {
		switch {
		case y >= t.crown:
			return base[(y-t.crown)*w+x]
		case top == nil || y < t.bare:
			return color.NRGBA{}
		case top[(y-t.bare)*w+x] == ground:
			return color.NRGBA{}
		}
		return top[(y-t.bare)*w+x]
	}
	if p.Plate.dressed(t) {
		behind = p.dressed(t, w, behind)
	}
	p.halves(t, func(x, y int) screen.Colour {
		c := behind(x, y)
		if c.A == 0 || y < t.crown && c.A < half || done && t.corner(x, y, w, h) {
			return 0
		}
		return screen.RGB(c.R, c.G, c.B)
	})
}

// dressed lays what stands on the loaf, and the cuts on it, over the colours of a tile.
func (p *Print) dressed(t *tile, w int, behind func(x, y int) color.NRGBA) func(x, y int) color.NRGBA {
	stuffs, ground := swirl.NewStuffs(p.Dye.Top), p.Dye.Ground
	return func(x, y int) color.NRGBA {
		c, d := behind(x, y), t.over.Dots[y*w+x]
		if c.A == 0 && d.Part[0] != 0 {
			c = ground
			if c.A == 0 && int(d.Part[0])+int(d.Part[1]) < half {
				return c
			}
		}
		return stuffs.Over(c, d)
	}
}

// crispBelow is the width of a picture under which a pixel holds so many filaments that their plain average is mud: there the
// portion that shows most gets more than its part.
const crispBelow = 40

// crisp is a picture whose parts are sharpened: cubed and brought back to their sum.
func crisp(p *swirl.Picture) *swirl.Picture {
	out := &swirl.Picture{W: p.W, H: p.H, Pixels: slices.Clone(p.Pixels)}
	for i := range out.Pixels {
		part := &out.Pixels[i].Part
		if part[0] == 0 || part[0] == 255 {
			continue
		}
		sum := 0
		for _, v := range part {
			sum += int(v) * int(v) * int(v)
		}
		left := 255
		for k := len(part) - 1; k > 0; k-- {
			v := int(part[k])
			part[k] = uint8(v * v * v * 255 / sum)
			left -= int(part[k])
		}
		part[0] = uint8(left)
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
			inks, label = p.Top, t.over.Label(x, y)
		case y >= t.crown:
			label = t.base.Label(x, y-t.crown)
		case p.Plate.iced(t) && y >= t.bare:
			inks, label = p.Top, t.labels.Label(x, y-t.bare)
		}
		if label == swirl.Empty || label >= len(inks) || done && t.corner(x, y, w, h) {
			return 0
		}
		return inks[label].Colour
	})
}

// halves fills a tile's cells from its pixels.
func (p *Print) halves(t *tile, at func(x, y int) screen.Colour) {
	for y := range t.rect.Dy() {
		row := p.cells[(t.rect.Min.Y+y)*p.w+t.rect.Min.X:]
		for x := range t.rect.Dx() {
			row[x] = cell{upper: at(x, 2*y), lower: at(x, 2*y+1)}
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
	bare := t.bare / down
	votes := t.base.Vote(w, t.rect.Dy()-crown)
	top := t.labels.Vote(w, crown-bare)
	for y := range t.rect.Dy() {
		cells := p.cells[(t.rect.Min.Y+y)*p.w+t.rect.Min.X:]
		switch {
		case y >= crown:
			signRow(cells, votes[(y-crown)*w:(y-crown+1)*w], p.Base, y)
		case p.Plate.iced(t) && y >= bare:
			signRow(cells, top[(y-bare)*w:(y-bare+1)*w], p.Top, y)
		}
		if p.Plate.dressed(t) {
			signRow(cells, t.over.Vote(w, t.rect.Dy(), y), p.Top, y)
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
		return cell{upper: k.On, lower: k.Colour, sign: k.Letter}
	default:
		return cell{upper: k.Colour, lower: k.Colour}
	}
}
