package picture

import (
	"context"
	"image"
	"image/draw"
	"math"

	"pourbench/pour/swirl"
)

// MostPixels is the most a picture of real pixels holds: about a second of work, and three megabytes for the terminal.
const MostPixels = 1 << 20 * 3 / 2

// GrainFor is how many pixels of a cell are drawn in w by h cells of a size: all, or fewer where that would be more than [MostPixels].
// The terminal stretches what is smaller than its place.
func GrainFor(cell image.Point, w, h int) image.Point {
	scale := math.Sqrt(MostPixels / max(float64(cell.X*cell.Y*w*h), 1))
	if scale >= 1 {
		return cell
	}
	return image.Pt(max(int(float64(cell.X)*scale), 1), max(int(float64(cell.Y)*scale), 1))
}

// Image draws a plate traced for real pixels, its cells one beside the other, on the dye's ground. It stops early with ctx's error.
func (p *Plate) Image(ctx context.Context, d Dye) (*image.NRGBA, error) {
	across, down := p.grain()
	img := image.NewNRGBA(image.Rect(0, 0, p.Shot.W*across, p.Shot.H*down))
	draw.Draw(img, img.Bounds(), image.NewUniform(d.Ground), image.Point{}, draw.Src)
	for i := range p.tiles {
		t := &p.tiles[i]
		at := image.Pt(t.rect.Min.X*across, t.rect.Min.Y*down)
		w, h := p.pixels(t)
		body := image.Rect(0, t.crown, w, h).Add(at)
		wide, high := p.sizeMM()
		if err := t.base.Finish(ctx, d.Base, img.SubImage(body).(*image.NRGBA), p.finish(t, d), wide, high); err != nil {
			return nil, err
		}
		if err := p.dress(ctx, img, t, d, at); err != nil {
			return nil, err
		}
	}
	return img, nil
}

// dress lays what stands on the loaf over a tile, and marks the cuts where it is seen as it stands.
func (p *Plate) dress(ctx context.Context, img *image.NRGBA, t *tile, d Dye, at image.Point) error {
	if p.Shot.Done != Whole {
		return nil
	}
	w, h := p.pixels(t)
	part := img.SubImage(image.Rect(0, 0, w, h).Add(at)).(*image.NRGBA)
	if p.dressed(t) {
		wide, _ := p.sizeMM()
		if err := swirl.Dress(ctx, part, &t.over, swirl.NewStuffs(d.stuffs(t)), p.finish(t, d), wide/float64(w), t.crown); err != nil {
			return err
		}
	}
	if p.Shot.View == Stands {
		swirl.MarkCuts(part, p.Shot.Cuts, float64(w)/p.Shot.Recipe.Box.L)
	}
	return nil
}

// finish is how a tile is made to look like soap. Without grain: a terminal far away gets a picture a tenth the size.
func (p *Plate) finish(t *tile, d Dye) swirl.Finish {
	ground := d.Ground
	if p.Shot.Done != Whole || p.Pot {
		return swirl.Finish{Ground: ground}
	}
	f := swirl.Soap()
	f.Ground, f.FlatTop = ground, t.crown > 0
	f.Material.Tooth, f.Material.Pores, f.Material.Surfaces = 0, 0, d.Looks
	if d.Bare {
		f = f.Bare()
	}
	if p.Shot.Recipe.Round {
		f.CornerMM = p.Shot.Recipe.Box.W / 2
	}
	if t.bar < 0 { // a cut of the loaf or its top has its corners yet, and where a length of it ends is no rim
		f.CornerMM, f.Bevel, f.Falloff = 0, 0, 0
	}
	return f
}

// sizeMM is what each tile shows of the batter, without the icing on it, mm.
func (p *Plate) sizeMM() (w, h float64) {
	box := p.Shot.Recipe.Box
	switch {
	case p.Pot:
		return 1, 1 // never finished
	case p.Shot.View == Long:
		if p.Shot.Recipe.Round {
			return box.W, box.H
		}
		return box.L / float64(max(p.Cut.N, 1)), box.H
	case p.Shot.View == Top, p.Shot.View == Stands:
		return box.L, box.W
	}
	return p.Shot.Recipe.FaceMM()
}
