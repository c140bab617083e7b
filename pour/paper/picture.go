package paper

import (
	"context"
	"fmt"
	"image"
	"image/png"
	"io"

	"pourbench/pour"
	"pourbench/pour/swirl"
)

// Views of a picture.
const (
	ViewBar  = "bar"  // one bar's face, with its icing
	ViewBars = "bars" // every bar, as a contact sheet
	ViewLoaf = "loaf" // the loaf cut along its middle, with its icing
	ViewTop  = "top"  // just under the surface from above, without icing
)

// Views lists the views of a picture.
func Views() []string { return []string{ViewBar, ViewBars, ViewLoaf, ViewTop} }

// PictureOptions says what to draw.
type PictureOptions struct {
	View  string // one of [Views]
	Bar   int    // ViewBar: which, from 1; 0: the middle one
	Width int    // pixels, 64 to 8000
	Weeks bool   // in the colours after some weeks, where vanillin browns
}

// Limits of a picture's width, pixels.
const (
	leastWidth = 64
	mostWidth  = 8000
)

// Picture draws the sheet's swirl as a PNG. It stops early with ctx's error. What cannot be drawn is refused with the reason.
func Picture(ctx context.Context, w io.Writer, s pour.Sheet, o PictureOptions) error {
	if o.Width < leastWidth || o.Width > mostWidth {
		return fmt.Errorf("draw a picture %d pixels wide: write %d to %d", o.Width, leastWidth, mostWidth)
	}
	d, err := s.Drawing()
	if err != nil {
		return err
	}
	poured, err := swirl.New(d.Recipe)
	if err != nil {
		return err
	}
	img, err := drawView(ctx, s, d, poured, o)
	if err != nil {
		return err
	}
	fast := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := fast.Encode(w, img); err != nil {
		return fmt.Errorf("write the picture: %w", err)
	}
	return nil
}

func drawView(ctx context.Context, s pour.Sheet, d pour.Drawing, poured *swirl.Swirl, o PictureOptions) (image.Image, error) {
	palette, box := d.Palette, d.Recipe.Box
	if o.Weeks {
		palette = d.Weeks
	}
	top, err := d.Topping()
	if err != nil {
		return nil, err
	}
	tall := func(high, wide float64) int { return max(1, int(float64(o.Width)*high/wide+0.5)) }
	switch o.View {
	case ViewBar:
		x, err := barAt(s, o.Bar)
		if err != nil {
			return nil, err
		}
		return swirl.RenderBar(ctx, poured.Face(x), palette, top, float64(o.Width)/box.W, swirl.Soap())
	case ViewBars:
		c := swirl.Sheet{BarMM: s.Plan.Mould.BarMM, Columns: 0, GapMM: sheetGapMM, Top: top, Finish: swirl.Soap()}
		c.PxPerMM = float64(o.Width) / (float64(columnsOf(poured.Bars(c.BarMM)))*(box.W+sheetGapMM) + sheetGapMM)
		c.Columns = columnsOf(poured.Bars(c.BarMM))
		return poured.Contact(ctx, palette, c)
	case ViewLoaf:
		return swirl.RenderLoaf(ctx, poured.Lengthwise(box.W/2), palette, top, float64(o.Width)/box.L, swirl.Soap())
	case ViewTop:
		return swirl.RenderLong(ctx, poured.Top(box.H-swirl.SkimMM), palette, o.Width, tall(box.W, box.L), swirl.Soap())
	}
	return nil, fmt.Errorf("draw the view %q: write one of %v", o.View, Views())
}

// sheetGapMM is the room between the bars of a contact sheet, mm.
const sheetGapMM = 6

// columnsOf sets bars out about as wide as high or wider, with the fewest places left empty.
func columnsOf(bars int) int {
	square := 1
	for square*square < bars {
		square++
	}
	best := square
	for c := square; c < 2*square; c++ {
		if empty(bars, c) < empty(bars, best) {
			best = c
		}
	}
	return best
}

func empty(bars, columns int) int { return (columns - bars%columns) % columns }

// barAt is where a bar's first cut side lies along the loaf, mm.
func barAt(s pour.Sheet, bar int) (float64, error) {
	m := s.Plan.Mould
	slices := int(m.LengthMM/m.BarMM + 1e-9)
	if bar == 0 {
		bar = slices/2 + 1
	}
	if bar < 1 || bar > slices {
		return 0, fmt.Errorf("draw bar %d: the loaf is cut into %d along its length", bar, slices)
	}
	return float64(bar-1) * m.BarMM, nil
}
