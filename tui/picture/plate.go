package picture

import (
	"context"
	"image"
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/slice"
	"pourbench/pour/swirl"
	"pourbench/tui/screen"
)

// Plate is a shot traced: where each portion shows. It knows no colours, so it can be printed again with others. It never changes.
type Plate struct {
	Shot  Shot
	Fine  bool // traced with smooth edges
	Bars  int  // whole bars the loaf gives
	Steps int  // acts of the pour
	Pot   bool // the pot is shown from above, as nothing is in the mould yet
	Cut   Lengths
	peak  float64 // mm above the base, of what is on it
	tiles []tile
}

// tile is one picture of a plate: a bar's face with its icing, or a cut.
type tile struct {
	bar    int // -1: a cut of the whole loaf
	rect   image.Rectangle
	crown  int          // rows of pixels above the base
	scene  *slice.Scene // all of the tile, as dots of base and top; nil: it is a cut
	stands *relief.View // what is known piece by piece; nil: nothing is
	over   relief.Picture
	cut    cut
	base   swirl.Picture
}

// cut is a face or a cut along the loaf.
type cut interface {
	Draft(dst *swirl.Picture, w, h int)
	Refine(ctx context.Context, dst *swirl.Picture, w, h int) error
}

// Draft traces a shot with one sample in each pixel, for a picture that follows every key. It refuses what cannot be poured or has no room.
func Draft(s Shot) (*Plate, error) {
	whole, err := swirl.New(s.Recipe)
	if err != nil {
		return nil, err
	}
	p := &Plate{Shot: s, Bars: max(len(s.Bars), 1), Steps: whole.Acts()}
	poured := whole
	if s.Done != Whole {
		p.Shot.Done = min(max(s.Done, 0), p.Steps)
		poured = whole.Upto(p.Shot.Done)
	}
	if pot := poured.Pot(); pot != nil && s.Done != Whole {
		p.Pot = true
		p.add(tile{bar: -1, rect: fit(1, 1, s.W, s.H), cut: pot})
	} else {
		p.place(poured, s.stands())
	}
	for i := range p.tiles {
		t := &p.tiles[i]
		w, h := p.pixels(t)
		if t.scene != nil {
			t.scene.Draft(&t.over, w, h)
			t.base.Reset(w, h)
			continue
		}
		t.cut.Draft(&t.base, w, h-t.crown)
		if p.dressed(t) {
			_ = t.stands.Draw(context.Background(), &t.over, w, h, image.Rect(0, 0, w, h)) // nothing stops it
		}
	}
	return p, nil
}

// dressed says whether what stands on the loaf is on a tile: not before the pour is done. Its room is kept free before.
func (p *Plate) dressed(t *tile) bool {
	return (t.stands != nil || t.scene != nil) && p.Shot.Done == Whole
}

// stands is what stands on the shot's loaf; nil where nothing does.
func (s Shot) stands() *relief.Field { return s.Kept.Field(s.Stands) }

// Refine traces a plate again with smooth edges. It stops early with ctx's error.
func (p *Plate) Refine(ctx context.Context) (*Plate, error) {
	fine := *p
	fine.Fine = true
	fine.tiles = append([]tile(nil), p.tiles...)
	for i := range fine.tiles {
		t := &fine.tiles[i]
		t.base = swirl.Picture{Plain: p.Shot.Grain == image.Point{}} // cells show no veins
		w, h := p.pixels(t)
		if t.scene != nil {
			t.base.Reset(w, h)
			t.over = relief.Picture{}
			if err := t.scene.Refine(ctx, &t.over, w, h, func(int) {}); err != nil {
				return nil, err
			}
			continue
		}
		if err := t.cut.Refine(ctx, &t.base, w, h-t.crown); err != nil {
			return nil, err
		}
	}
	return &fine, nil
}

// grain is how many traced pixels a cell has across and down: those of its mosaic, or three each way where cells are voted on.
func (p *Plate) grain() (across, down int) {
	switch {
	case p.Shot.Letters:
		return 3, 3
	case p.Shot.Grain != image.Point{}:
		return p.Shot.Grain.X, p.Shot.Grain.Y
	}
	return p.mosaic().Grain()
}

// mosaic is what the cells of a plate are divided into. A small palette has no colour between two others for a cell of more than two
// pixels to be drawn in.
func (p *Plate) mosaic() screen.Mosaic {
	if p.Shot.Flat {
		return screen.Halves
	}
	return p.Shot.Mosaic
}

// pixels is the size of a tile in traced pixels.
func (p *Plate) pixels(t *tile) (w, h int) {
	across, down := p.grain()
	return t.rect.Dx() * across, t.rect.Dy() * down
}

// place lays the tiles out and readies their cuts. A shot without room gets none.
func (p *Plate) place(poured *swirl.Swirl, on *relief.Field) {
	s, box := p.Shot, p.Shot.Recipe.Box
	if p.sliced() {
		scene := slice.New(poured, s.Recipe, on, s.at(s.Bar))
		wide, high := scene.SizeMM()
		p.add(tile{bar: -1, rect: fit(wide, high, s.W, s.H), scene: scene})
		return
	}
	if on != nil && s.View != Top && s.View != Stands {
		p.peak = on.PeakMM()
	}
	wide, high := s.Recipe.FaceMM()
	high += p.peak
	switch s.View {
	case Bars:
		n := BarsFor(p.Bars, wide, high, s.W, s.H)
		first := min(max(s.Bar-n/2, 0), p.Bars-n)
		for i, r := range grid(n, wide, high, s.W, s.H) {
			p.add(p.face(first+i, r, poured, on))
		}
	case Long:
		p.lengths(poured, on)
	case Top, Stands:
		t := tile{bar: -1, rect: fit(box.L, box.W, s.W, s.H), cut: poured.Skim()}
		if s.View == Stands { // a line below is left for the bars' numbers
			t.rect, t.cut = fit(box.L, box.W, s.W, s.H-1), poured.Above()
		}
		if on != nil {
			t.stands = on.Level(swirl.SkimMM)
			if s.View == Stands {
				t.stands = on.Above()
			}
		}
		p.add(t)
	default:
		bar := min(max(s.Bar, 0), p.Bars-1)
		r := fit(wide, high, s.W-2*wall, s.H).Add(image.Pt(wall, 0))
		p.add(p.face(bar, r, poured, on))
	}
}

// sliced says whether the plate shows a bar sliced off: of a pour that is under way a face is shown in its place.
func (p *Plate) sliced() bool { return p.Shot.View == Slice && p.Shot.Done == Whole }

// SliceMM is the size of what [Slice] shows, mm, of one of a loaf's bars, where so much stands on it.
func SliceMM(r swirl.Recipe, peakMM float64, bars []swirl.Bar, bar int) (w, h float64) {
	return slice.SizeMM(r, peakMM, Shot{Recipe: r, Bars: bars}.at(bar))
}

// face is a bar's tile.
func (p *Plate) face(bar int, r image.Rectangle, poured *swirl.Swirl, on *relief.Field) tile {
	at := p.Shot.at(bar)
	t := tile{bar: bar, rect: r, cut: p.Shot.side(poured, at.From)}
	if on != nil {
		t.stands = on.Face(at.From, at.To)
	}
	return t
}

// side is the cut side of a bar that begins there: of a tube level, else upright.
func (s Shot) side(poured *swirl.Swirl, at float64) cut {
	if s.Recipe.Round {
		return poured.Top(at)
	}
	return poured.Face(at)
}

// lengths lays out the lengths of a cut along the loaf.
func (p *Plate) lengths(poured *swirl.Swirl, on *relief.Field) {
	s, box := p.Shot, p.Shot.Recipe.Box
	high := box.H + p.peak
	if s.Recipe.Round { // upright as it was poured, down its middle
		p.Cut = Lengths{N: 1, Tall: 1}
		p.add(tile{bar: -1, rect: fit(box.W, box.H, s.W, s.H), cut: poured.Face(box.L / 2)})
		return
	}
	p.Cut = LengthsFor(box.L, high, s.W, s.H)
	for i, r := range p.Cut.rects(box.L, high, s.W, s.H) {
		one := box.L / float64(p.Cut.N)
		from, to := one*float64(i), one*float64(i+1)
		t := tile{bar: -1, rect: r, cut: poured.Lengthwise(box.W/2).Part(from, to)}
		if on != nil {
			t.stands = on.Side(box.W/2).Part(from, to)
		}
		p.add(t)
	}
}

// wall is the column left free on either side of a single bar, for the mould while it is poured.
const wall = 1

// add gives a tile its crown and takes it, unless it is too small to show anything.
func (p *Plate) add(t tile) {
	if t.rect.Dx() < 1 || t.rect.Dy() < 1 {
		return
	}
	_, h := p.pixels(&t)
	unit := 1
	if p.Shot.Letters {
		_, unit = p.grain() // whole cells
	}
	high := p.Shot.Recipe.Box.H + p.peak
	t.crown = int(math.Round(float64(h/unit)*p.peak/high)) * unit
	if h-t.crown < 1 {
		return
	}
	if t.stands != nil {
		t.stands = t.stands.Under(float64(t.crown) * p.Shot.Recipe.Box.H / float64(h-t.crown))
	}
	p.tiles = append(p.tiles, t)
}

// fit is the largest picture of wmm by hmm in w by h cells, which are about twice as high as they are wide, in the middle of them.
func fit(wmm, hmm float64, w, h int) image.Rectangle {
	if w < 1 || h < 1 {
		return image.Rectangle{}
	}
	scale := min(float64(w)/wmm, 2*float64(h)/hmm) // pixels per mm
	cw, ch := min(max(int(math.Round(wmm*scale)), 1), w), min(max(int(math.Round(hmm*scale/2)), 1), h)
	x, y := (w-cw)/2, (h-ch)/2
	return image.Rect(x, y, x+cw, y+ch)
}

// A picture of a bar narrower than so many columns is confetti, by eye: then only a few bars are shown.
const (
	leastTile = 10
	fewBars   = 3
)

// BarsFor is how many of n bars of wmm by hmm are shown beside each other in w by h cells: all, or the few there is room for.
func BarsFor(n int, wmm, hmm float64, w, h int) int {
	if tiles := grid(n, wmm, hmm, w, h); n <= fewBars || len(tiles) > 0 && tiles[0].Dx() >= leastTile {
		return n
	}
	return fewBars
}

// BarsMM is how large w by h cells are in mm of the bars that [BarsFor] shows in them.
func BarsMM(n int, wmm, hmm float64, w, h int) (wide, high float64) {
	tiles := grid(BarsFor(n, wmm, hmm, w, h), wmm, hmm, w, h)
	if len(tiles) == 0 {
		return wmm * float64(n), hmm * float64(n)
	}
	mm := wmm / float64(tiles[0].Dx())
	return mm * float64(w), mm * 2 * float64(h)
}

// tileGap is the columns between two tiles; below each there is a line for its number.
const tileGap = 2

// grid lays n equal pictures out in rows, as large as they can be; the last cell row of each is left for its number.
func grid(n int, wmm, hmm float64, w, h int) []image.Rectangle {
	var best []image.Rectangle
	size := 0
	for columns := 1; columns <= n; columns++ {
		rows := (n + columns - 1) / columns
		cw, ch := (w-(columns-1)*tileGap)/columns, h/rows-1
		one := fit(wmm, hmm, cw, ch)
		if one.Dx()*one.Dy() <= size {
			continue
		}
		size = one.Dx() * one.Dy()
		best = best[:0]
		left := (w - columns*one.Dx() - (columns-1)*tileGap) / 2
		top := (h - rows*(one.Dy()+1)) / 2
		for i := range n {
			x, y := left+i%columns*(one.Dx()+tileGap), top+i/columns*(one.Dy()+1)
			best = append(best, image.Rect(x, y, x+one.Dx(), y+one.Dy()))
		}
	}
	return best
}
