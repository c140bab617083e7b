package batches

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/gif"  // the pictures that can be shown
	_ "image/jpeg" // as above
	_ "image/png"  // as above
	"io"
	"os"

	"golang.org/x/image/draw"
)

// The largest picture that is shown, as a file and in pixels: what a telephone takes is a tenth of it.
const (
	mostBytes  = 64 << 20
	mostPixels = 200 << 20
)

// IsPicture says whether a file begins like a picture, of any kind that is known.
func IsPicture(path string) error {
	f, err := openFile(path)
	if err != nil {
		return err
	}
	defer f.Close() //nolint:errcheck // nothing was written
	_, _, err = image.DecodeConfig(f)
	if err != nil {
		return fmt.Errorf("look at the picture %s: it is none that can be shown (PNG, JPEG, GIF)", path)
	}
	return nil
}

// openFile opens a plain file. A pipe would be waited for for ever.
func openFile(path string) (*os.File, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("look at the picture: %w", err)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("look at the picture: %s is no file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("look at the picture: %w", err)
	}
	return f, nil
}

// develop reads a picture and makes it so large that it fills as much of so many cells as its sides let it; it returns how many those are.
func develop(path string, cell image.Point, columns, rows int) (img image.Image, w, h int, err error) {
	f, err := openFile(path)
	if err != nil {
		return nil, 0, 0, err
	}
	defer f.Close() //nolint:errcheck // nothing was written
	conf, _, err := image.DecodeConfig(f)
	switch {
	case err != nil:
		return nil, 0, 0, fmt.Errorf("look at the picture %s: it is none that can be shown (PNG, JPEG, GIF)", path)
	case conf.Width < 1 || conf.Height < 1 || conf.Width > mostPixels/conf.Height:
		return nil, 0, 0, fmt.Errorf("look at the picture %s: %d × %d pixels are too many", path, conf.Width, conf.Height)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return nil, 0, 0, fmt.Errorf("look at the picture: %w", err)
	}
	whole, _, err := image.Decode(io.LimitReader(f, mostBytes))
	if err != nil {
		return nil, 0, 0, fmt.Errorf("look at the picture %s: %w", path, errors.Join(err))
	}
	size, w, h := fits(whole.Bounds().Size(), cell, columns, rows)
	out := image.NewRGBA(image.Rectangle{Max: size})
	draw.Draw(out, out.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src) // the terminal takes no half covered pixels
	draw.CatmullRom.Scale(out, out.Bounds(), whole, whole.Bounds(), draw.Over, nil)
	return out, w, h, nil
}

// fits is the size in pixels, and in cells, of a picture that keeps its sides' proportion and fills as much of so many cells as it can.
func fits(pic, cell image.Point, columns, rows int) (size image.Point, w, h int) {
	scale := min(float64(columns*cell.X)/float64(pic.X), float64(rows*cell.Y)/float64(pic.Y))
	w = min(max(int(float64(pic.X)*scale/float64(cell.X)+0.5), 1), columns)
	h = min(max(int(float64(pic.Y)*scale/float64(cell.Y)+0.5), 1), rows)
	return image.Pt(w*cell.X, h*cell.Y), w, h
}
