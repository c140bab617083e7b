package paper

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"

	"pourbench/pour"
	"pourbench/pour/swirl"
)

// pairGapMM is the room about the pictures of a pair, mm.
const pairGapMM = 6

// Pair draws two sheets' swirls side by side as a PNG, the first at the left: the face of a bar above, the loaf from above below it. Both are drawn to
// one scale, so that sizes can be compared. It is as wide as [PictureOptions.Width] says; the view and the bar are not used.
func Pair(ctx context.Context, w io.Writer, a, b pour.Sheet, o PictureOptions) error {
	if o.Width < 2*leastWidth || o.Width > mostWidth {
		return fmt.Errorf("draw a pair of pictures %d pixels wide: write %d to %d", o.Width, 2*leastWidth, mostWidth)
	}
	sides := [2]pairSide{{sheet: a}, {sheet: b}}
	widest := 0.0
	for i := range sides {
		s := &sides[i]
		d, err := s.sheet.Drawing()
		if err != nil {
			return fmt.Errorf("draw %s: %w", s.sheet.Plan.Name, err)
		}
		if s.poured, err = swirl.New(d.Recipe); err != nil {
			return fmt.Errorf("draw %s: %w", s.sheet.Plan.Name, err)
		}
		s.drawing = d
		faceW, _ := d.Recipe.FaceMM()
		widest = max(widest, faceW, d.Recipe.Box.L)
	}
	scale := float64(o.Width) / (2*widest + 3*pairGapMM) // pixels of a mm
	var rows [2][2]image.Image
	for i := range sides {
		for k, view := range sides[i].views() {
			img, err := sides[i].draw(ctx, view, scale, o)
			if err != nil {
				return err
			}
			rows[k][i] = img
		}
	}
	fast := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := fast.Encode(untilStopped{ctx, w}, laidOut(rows, o.Width, int(pairGapMM*scale))); err != nil {
		return fmt.Errorf("write the pictures: %w", err)
	}
	return nil
}

// pairSide is one of two plans that are drawn side by side.
type pairSide struct {
	sheet   pour.Sheet
	drawing pour.Drawing
	poured  *swirl.Swirl
}

// views are what is drawn of it: a face, and the loaf from above as far as anything stands on it, else just under its surface.
func (s *pairSide) views() [2]string {
	if s.drawing.Stands != nil {
		return [2]string{ViewBar, ViewStands}
	}
	return [2]string{ViewBar, ViewTop}
}

// draw draws one view to a scale.
func (s *pairSide) draw(ctx context.Context, view string, scale float64, o PictureOptions) (image.Image, error) {
	wide, _ := s.drawing.Recipe.FaceMM()
	if view != ViewBar {
		wide = s.drawing.Recipe.Box.L
	}
	e, err := newEasel(s.drawing, s.poured, PictureOptions{View: view, Width: max(1, int(wide*scale+0.5)), Weeks: o.Weeks})
	if err != nil {
		return nil, err
	}
	return e.draw(ctx)
}

// laidOut puts the pictures into two columns, each in its middle, and what stands in a row on one bottom line.
func laidOut(rows [2][2]image.Image, wide, gap int) image.Image {
	high := gap
	for _, row := range rows {
		high += max(row[0].Bounds().Dy(), row[1].Bounds().Dy()) + gap
	}
	out := image.NewNRGBA(image.Rect(0, 0, wide, high))
	draw.Draw(out, out.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
	column := (wide - 3*gap) / 2
	y := gap
	for _, row := range rows {
		tall := max(row[0].Bounds().Dy(), row[1].Bounds().Dy())
		for i, img := range row {
			size := img.Bounds().Size()
			at := image.Pt(gap+i*(column+gap)+(column-size.X)/2, y+tall-size.Y)
			draw.Draw(out, image.Rectangle{at, at.Add(size)}, img, img.Bounds().Min, draw.Over)
		}
		y += tall + gap
	}
	return out
}
