package paper

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"sync/atomic"

	"pourbench/pour"
	"pourbench/pour/swirl"
)

// Views of a picture.
const (
	ViewBar  = "bar"  // one bar's face, with its icing
	ViewBars = "bars" // every bar, as a contact sheet
	ViewLoaf = "loaf" // the loaf cut along its middle, with its icing
	ViewTop  = "top"  // the batter from above, without icing; end A at the left, so that the wall at the left, seen from there, is at the top

	ViewStands = "stands" // the same way round, as it stands before the cut: icing, embeds, toppings and cuts
	ViewSlice  = "slice"  // the loaf with a bar sliced off, as it is shown to people
)

// Views lists the views of a picture.
func Views() []string { return []string{ViewBar, ViewBars, ViewLoaf, ViewTop, ViewStands, ViewSlice} }

// PictureOptions says what to draw.
type PictureOptions struct {
	View  string                // one of [Views]
	Bar   int                   // ViewBar and ViewSlice: which, from 1; 0: the middle one
	Width int                   // pixels, 64 to 8000
	Weeks bool                  // in the colours after some weeks, where vanillin browns
	Bare  bool                  // in flat colours, without what the surface of soap shows
	Told  func(percent float64) // how much is drawn, from several goroutines at once; nil: nobody is told
}

// Limits of a picture's width, pixels.
const (
	leastWidth = 64
	mostWidth  = 8000
)

// What a picture may take of the machine's memory, bytes: in all, and the program's own part of that.
const (
	mostMemory = 500e6
	ownMemory  = 80e6
)

// Picture draws the sheet's swirl as a PNG. It stops early with ctx's error. What cannot be drawn is refused with the reason, and what
// would need more than 500 MB of memory with the width that works.
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
	e, err := newEasel(d, poured, o)
	if err != nil {
		return err
	}
	img, err := e.draw(ctx)
	if err != nil {
		return err
	}
	fast := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := fast.Encode(untilStopped{ctx, w}, img); err != nil {
		return fmt.Errorf("write the picture: %w", err)
	}
	return nil
}

// untilStopped is a writer that fails with ctx's error once that is there.
type untilStopped struct {
	ctx context.Context
	w   io.Writer
}

func (u untilStopped) Write(p []byte) (int, error) {
	if err := u.ctx.Err(); err != nil {
		return 0, err
	}
	return u.w.Write(p)
}

// easel is one picture about to be drawn. The sizes are parts of the square of its width.
type easel struct {
	o      PictureOptions
	high   float64 // the whole picture
	atOnce float64 // what is drawn at once
	gaps   float64 // what is never drawn
	draw   func(context.Context) (image.Image, error)
}

// newEasel sets a picture up, and refuses what would take too much memory.
func newEasel(d pour.Drawing, poured *swirl.Swirl, o PictureOptions) (*easel, error) {
	top := d.Topping()
	palette, box, peak := d.Palette, d.Recipe.Box, top.PeakMM()
	if o.Weeks {
		palette = d.Weeks
	}
	e := &easel{o: o}
	finish := e.finish(d)
	faceW, faceH := d.Recipe.FaceMM()
	switch o.View {
	case ViewBar:
		bar, err := barAt(d.Bars, o.Bar)
		if err != nil {
			return nil, err
		}
		e.high, e.atOnce = (faceH+peak)/faceW, faceH/faceW
		e.draw = func(ctx context.Context) (image.Image, error) {
			if d.Recipe.Round {
				return swirl.RenderLong(ctx, poured.Top(bar.From), palette, o.Width, o.Width, finish)
			}
			return swirl.RenderBar(ctx, poured.Face(bar.From), bar.To, palette, top, float64(o.Width)/box.W, finish)
		}
	case ViewBars:
		e.contact(d, poured, palette, top, finish)
	case ViewLoaf:
		e.high, e.atOnce = (box.H+peak)/box.L, box.H/box.L
		e.draw = func(ctx context.Context) (image.Image, error) {
			if d.Recipe.Round { // upright as it was poured, down the middle
				finish.CornerMM = 0
				return swirl.Render(ctx, poured.Face(box.L/2), palette, o.Width, max(1, int(float64(o.Width)*e.high+0.5)), finish)
			}
			return swirl.RenderLoaf(ctx, poured.Lengthwise(box.W/2), palette, top, float64(o.Width)/box.L, finish)
		}
	case ViewTop:
		e.high, e.atOnce = box.W/box.L, box.W/box.L
		e.draw = func(ctx context.Context) (image.Image, error) {
			if top.Stands != nil {
				return swirl.RenderLoaf(ctx, poured.Skim(), palette, top, float64(o.Width)/box.L, finish)
			}
			return swirl.RenderLong(ctx, poured.Skim(), palette, o.Width, max(1, int(float64(o.Width)*e.high+0.5)), finish)
		}
	case ViewStands:
		e.high, e.atOnce = box.W/box.L, box.W/box.L
		e.draw = func(ctx context.Context) (image.Image, error) {
			return swirl.RenderAbove(ctx, poured, palette, top, d.Cuts, float64(o.Width)/box.L, finish)
		}
	case ViewSlice:
		bar, err := barAt(d.Bars, o.Bar)
		if err != nil {
			return nil, err
		}
		e.slice(d, poured, palette, top, bar, finish.Material)
	default:
		return nil, fmt.Errorf("draw the view %q: write one of %v", o.View, Views())
	}
	return e, e.fits()
}

// finish is how the picture is made to look like soap, or bare.
func (e *easel) finish(d pour.Drawing) swirl.Finish {
	f := swirl.Soap()
	f.Told = e.told()
	f.Material.Surfaces = d.Looks
	if e.o.Bare {
		f = f.Bare()
	}
	if d.Recipe.Round {
		w, _ := d.Recipe.FaceMM()
		f.CornerMM = w / 2
	}
	return f
}

// contact sets the picture of all bars up.
func (e *easel) contact(d pour.Drawing, poured *swirl.Swirl, palette []color.NRGBA, top swirl.Topping, finish swirl.Finish) {
	box, peak := d.Recipe.Box, top.PeakMM()
	faceW, faceH := d.Recipe.FaceMM()
	bars := len(d.Bars)
	columns := columnsOf(bars)
	rows := (bars + columns - 1) / columns
	wide := float64(columns)*(faceW+sheetGapMM) + sheetGapMM
	e.high, e.atOnce = (float64(rows)*(faceH+peak+sheetGapMM)+sheetGapMM)/wide, faceH*faceW/(wide*wide)
	e.gaps = e.high - float64(bars)*(faceH+peak)*faceW/(wide*wide)
	if d.Stands != nil { // the loaf from above stands below the bars
		high := (wide - 2*sheetGapMM) * box.W / box.L
		e.high += (high + sheetGapMM) / wide
		e.gaps += sheetGapMM / wide
		e.atOnce = max(e.atOnce, high*(wide-2*sheetGapMM)/(wide*wide))
	}
	c := swirl.Sheet{Bars: d.Bars, Columns: columns, GapMM: sheetGapMM, Top: top, Finish: finish, PxPerMM: float64(e.o.Width) / wide, Stands: d.Stands != nil, Cuts: d.Cuts}
	e.draw = func(ctx context.Context) (image.Image, error) { return poured.Contact(ctx, palette, c) }
}

// fits refuses a picture that would take too much memory: four bytes for every pixel, and seven more for those drawn at once.
func (e *easel) fits() error {
	const perPixel, perPixelAtOnce = 4, 7
	square := perPixel*e.high + perPixelAtOnce*e.atOnce
	need := square*float64(e.o.Width)*float64(e.o.Width) + ownMemory
	if need <= mostMemory {
		return nil
	}
	return fmt.Errorf("draw %s %d pixels wide: that would take %.0f MB of memory, and %.0f MB is the most; the widest that works is --width %d",
		e.o.View, e.o.Width, need/1e6, mostMemory/1e6, int(math.Sqrt((mostMemory-ownMemory)/square)))
}

// told passes on how much of the picture is drawn.
func (e *easel) told() func(n int) {
	if e.o.Told == nil {
		return nil
	}
	drawn := atomic.Int64{}
	return func(n int) {
		all := float64(e.o.Width) * float64(e.o.Width) * (e.high - e.gaps)
		e.o.Told(min(100, 100*float64(drawn.Add(int64(n)))/all))
	}
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

// barAt is a bar by its number from 1; 0 is the middle one.
func barAt(bars []swirl.Bar, number int) (swirl.Bar, error) {
	if number == 0 {
		number = min(len(bars)/2+1, len(bars))
	}
	if number < 1 || number > len(bars) {
		return swirl.Bar{}, fmt.Errorf("draw bar %d: the loaf is cut into %d along its length", number, len(bars))
	}
	return bars[number-1], nil
}
