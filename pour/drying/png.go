package drying

import (
	"fmt"
	"image/color"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// The picture is so many pixels, at so many to the inch: letters of 11 points are 22 pixels high.
const (
	WidePX = 1280
	HighPX = 800
	dpi    = 144
)

// ink are the colours of the picture. Band, curve, today and ready day differ in shape and dashes too.
type ink struct{ text, rule, band, curve, weighed, today, ready, readyBand color.NRGBA }

func inks() ink {
	rgb := func(r, g, b uint8) color.NRGBA { return color.NRGBA{r, g, b, 255} }
	return ink{
		text: rgb(40, 40, 46), rule: rgb(224, 224, 228), band: rgb(205, 219, 238), curve: rgb(31, 78, 140), weighed: rgb(20, 20, 24),
		today: rgb(160, 82, 0), ready: rgb(20, 110, 66), readyBand: rgb(224, 240, 228),
	}
}

// PNG writes the plot as a picture of [WidePX] by [HighPX] pixels. The same plot is the same bytes. A plot of nothing is refused.
func (p Plot) PNG(w io.Writer) error {
	p = p.Sound()
	if p.Empty() {
		return fmt.Errorf("draw how %s dries: no bar was weighed and nothing is forecast", p.Name)
	}
	s := sheet{Plot: plot.New(), ink: inks(), drying: newLegend(), days: newLegend()}
	s.BackgroundColor = color.Transparent
	p.axes(&s)
	if err := p.shapes(&s); err != nil {
		return fmt.Errorf("draw how %s dries: %w", p.Name, err)
	}
	canvas := vgimg.NewWith(vgimg.UseWH(pixels(WidePX), pixels(HighPX)), vgimg.UseDPI(dpi))
	s.draw(draw.Crop(draw.New(canvas), pixels(edgePX), -pixels(edgePX), pixels(edgePX), -pixels(edgePX)), p.Name)
	_, err := vgimg.PngCanvas{Canvas: canvas}.WriteTo(w)
	return err
}

// The rooms of the picture, pixels.
const (
	edgePX   = 28
	titlePX  = 48
	legendPX = 84
	ofDaysPX = 520 // where what is said of days begins
)

// sheet is the picture being drawn: the plot, and what its signs mean above it.
type sheet struct {
	*plot.Plot
	ink          ink
	drying, days plot.Legend
}

// draw draws title, meanings and plot, one under the other.
func (s *sheet) draw(c draw.Canvas, title string) {
	style := s.Title.TextStyle
	style.Font, style.Color, style.YAlign = face(15), s.ink.text, draw.YTop
	style.XAlign = draw.XLeft
	c.FillText(style, vg.Point{X: c.Min.X, Y: c.Max.Y}, title)
	legends := draw.Crop(c, 0, 0, c.Max.Y-c.Min.Y-pixels(titlePX+legendPX), -pixels(titlePX))
	s.drying.Draw(legends)
	s.days.Draw(draw.Crop(legends, pixels(ofDaysPX), 0, 0, 0))
	s.Draw(draw.Crop(c, 0, -pixels(edgePX), 0, -pixels(titlePX+legendPX)))
}

func newLegend() plot.Legend {
	l := plot.NewLegend()
	l.Top, l.Left, l.Padding, l.ThumbnailWidth, l.TextStyle.Font, l.TextStyle.Color = true, true, 2, 26, face(10), inks().text
	return l
}

// pixels is a length of so many pixels.
func pixels(n float64) vg.Length { return vg.Length(n) * vg.Inch / dpi }

// fonts of the picture: Liberation Sans, which is part of the program.
func face(size vg.Length) font.Font { return font.Font{Variant: "Sans", Size: size} }

// axes sets title, axes and what is written along them.
func (p Plot) axes(s *sheet) {
	days, mass, c := p.Days(8), p.Mass(7), s.ink
	for _, set := range []struct {
		axis *plot.Axis
		of   Axis
	}{{&s.X, days}, {&s.Y, mass}} {
		a := set.axis
		a.Min, a.Max, a.Label.Text = set.of.Low, set.of.High, set.of.Label
		a.Label.TextStyle.Font, a.Label.TextStyle.Color, a.Label.Padding = face(11), c.text, 4
		a.Tick.Label.Font, a.Tick.Label.Color, a.Tick.Color, a.Color = face(10), c.text, c.text, c.text
		a.Padding = 0
		var ticks plot.ConstantTicks
		for _, t := range set.of.Ticks {
			text := t.Text
			if t.Calendar != "" {
				text += "\n" + t.Calendar
			}
			ticks = append(ticks, plot.Tick{Value: t.At, Label: text})
		}
		a.Tick.Marker = ticks
	}
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = c.rule, c.rule
	s.Add(grid)
}

// shapes adds what is drawn, each over what comes before it, and says what it is.
func (p Plot) shapes(s *sheet) error {
	if err := p.readyShapes(s); err != nil {
		return err
	}
	if err := p.fitShapes(s); err != nil {
		return err
	}
	if p.Today.Known && p.Today.V <= s.X.Max && p.Today.V >= s.X.Min {
		today, err := s.upright(p.Today.V, s.ink.today, 3, 3)
		if err != nil {
			return err
		}
		s.days.Add("today: "+p.DayWords(p.Today.V), today)
	}
	if len(p.Points) == 0 {
		return nil
	}
	dots, err := plotter.NewScatter(points(p.Points))
	if err != nil {
		return err
	}
	dots.Color, dots.Radius, dots.Shape = s.ink.weighed, pixels(dotPX), draw.CircleGlyph{}
	s.Add(dots)
	s.drying.Add("weighed", dots)
	return nil
}

// dotPX is how far a weighing's dot goes from its middle, pixels.
const dotPX = 7

// fitShapes is the band and the curve in it.
func (p Plot) fitShapes(s *sheet) error {
	band, curve := p.curveShapes(s.X.Max)
	if len(curve) < 2 {
		return nil
	}
	area, err := plotter.NewPolygon(band)
	if err != nil {
		return err
	}
	area.Color, area.Width = s.ink.band, 0
	line, err := plotter.NewLine(curve)
	if err != nil {
		return err
	}
	line.Color, line.Width = s.ink.curve, 2
	s.Add(area, line)
	s.drying.Add("the drying law", line)
	s.drying.Add("its 80 % band", area)
	return nil
}

// curveShapes is the outline of the band and the curve, as far as the axis of days goes.
func (p Plot) curveShapes(last float64) (band, curve plotter.XYs) {
	var low plotter.XYs
	for _, s := range p.Curve {
		if s.Day > last {
			if end, ok := p.On(last); ok {
				s = end
			}
		}
		curve = append(curve, plotter.XY{X: s.Day, Y: s.G})
		band = append(band, plotter.XY{X: s.Day, Y: s.HighG})
		low = append(low, plotter.XY{X: s.Day, Y: s.LowG})
		if s.Day >= last {
			break
		}
	}
	for i := len(low) - 1; i >= 0; i-- {
		band = append(band, low[i])
	}
	return band, curve
}

// readyShapes is the ready day and its band from top to bottom.
func (p Plot) readyShapes(s *sheet) error {
	if !p.Ready.Known || p.Ready.Day > s.X.Max {
		return nil
	}
	inside := func(day float64) float64 { return min(max(day, s.X.Min), s.X.Max) }
	low, high := inside(p.Ready.Low), inside(p.Ready.High)
	area, err := plotter.NewPolygon(plotter.XYs{{X: low, Y: s.Y.Min}, {X: high, Y: s.Y.Min}, {X: high, Y: s.Y.Max}, {X: low, Y: s.Y.Max}})
	if err != nil {
		return err
	}
	area.Color, area.Width = s.ink.readyBand, 0
	s.Add(area)
	line, err := s.upright(inside(p.Ready.Day), s.ink.ready, 8, 3)
	if err != nil {
		return err
	}
	s.days.Add("ready, dry by the criterion: "+p.DayWords(p.Ready.Day), line)
	s.days.Add("80 % band of that day: "+p.Date(p.Ready.Low)+" to "+p.Date(p.Ready.High), area)
	return nil
}

// upright adds a dashed line over the whole height at a day.
func (s *sheet) upright(day float64, c color.Color, dash, gap vg.Length) (*plotter.Line, error) {
	line, err := plotter.NewLine(plotter.XYs{{X: day, Y: s.Y.Min}, {X: day, Y: s.Y.Max}})
	if err != nil {
		return nil, err
	}
	line.Color, line.Width, line.Dashes = c, 1.5, []vg.Length{dash, gap}
	s.Add(line)
	return line, nil
}

// points are the weighings as the library takes them.
type points []Point

func (p points) Len() int                { return len(p) }
func (p points) XY(i int) (x, y float64) { return p[i].Day, p[i].G }
