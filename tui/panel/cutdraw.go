package panel

import (
	"fmt"
	"image"
	"math"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// cutDrawing is a map of the cuts being drawn.
type cutDrawing struct {
	f      *Facts
	a      screen.Area
	scale  cutScale
	chosen int // cut under the cursor
	top    int // first line of the loaf
	rows   int // its lines
}

// drawCuts draws the loaf from above: its ends named, trims hatched, the sample slice dotted, embeds and icing where they stand, cuts as
// lines; above it where the cuts are, below it what the bars come to. Along the loaf it is to scale, across it as far as there are lines.
func (f *Facts) drawCuts(a screen.Area, c grid.Cursor, focused bool) {
	if a.H() < 3 || a.W() < 3*endW || !(f.Plan.Mould.AlongMM() > 0) {
		return
	}
	d := cutDrawing{f: f, a: a, chosen: f.chosenCut(c), top: 1}
	d.scale = f.scaleOf(a.W(), d.chosen)
	below := d.lines(a.H() - d.top - 1)
	d.rows = max(a.H()-d.top-1-len(below), 1)
	if scaled := int(math.Round(f.Plan.Mould.WidthMM / d.scale.per / 2)); scaled >= 2 { // a cell is about twice as high as wide
		d.rows = min(d.rows, scaled)
	}
	d.loaf()
	d.marks(focused)
	for i, line := range below {
		line(d.top + d.rows + i)
	}
	d.foot(d.top+d.rows+len(below), focused)
	if focused && d.chosen >= 0 && f.Typing == nil {
		a.Focus(max(min(d.scale.cut(f.Sheet.Cut.CutsMM[d.chosen]), a.W()-1), 0), d.top)
	}
}

// lines are what is said below the loaf, as many of them as leave it two lines.
func (d *cutDrawing) lines(room int) []func(y int) {
	f := d.f
	bars := f.columnsOfBars()
	number := func(y int) { d.say(y, bars, false, func(_ int, b pour.BarPiece) string { return f.barsOf(b) }) }
	thick := func(y int) {
		d.say(y, bars, true, func(_ int, b pour.BarPiece) string { return f.mm(b.ThicknessMM()) })
	}
	mass := func(y int) { d.say(y, bars, true, func(_ int, b pour.BarPiece) string { return f.barMass(b) }) }
	all := []func(int){number, mass, thick}
	if len(f.Sheet.Embeds) > 0 {
		all = []func(int){number, mass, d.verdicts, thick}
	}
	return all[:min(len(all), max(room-2, 0))]
}

// barMass is what a bar weighs as cut; of bars side by side, each of them.
func (f *Facts) barMass(column pour.BarPiece) string {
	for _, b := range f.Sheet.Cut.Bars {
		if b.StartMM == column.StartMM {
			return f.Show.Figure(b.CutG, func(g float64) string { return f.Show.WeightApart(g).Number })
		}
	}
	return ""
}

// say writes something below every bar, each in its own room; what has none is left out. A label in front says what it is.
func (d *cutDrawing) say(y int, bars []pour.BarPiece, quiet bool, of func(i int, b pour.BarPiece) string) {
	st := screen.Style{}
	if quiet {
		st = d.f.Look.Quiet
	}
	for i, b := range bars {
		d.within(y, b.StartMM, b.EndMM, of(i, b), st)
	}
	if c := d.f.Sheet.Cut; !quiet {
		first, last := d.f.Plan.Mould.AlongMM(), 0.0
		if len(bars) > 0 {
			first, last = bars[0].StartMM, bars[len(bars)-1].EndMM
		}
		if c.TrimAMM > 0 {
			d.within(y, 0, min(c.TrimAMM, first), "trim", d.f.Look.Quiet)
		}
		if c.TrimBMM > 0 {
			d.within(y, max(d.f.Plan.Mould.AlongMM()-c.TrimBMM, last), d.f.Plan.Mould.AlongMM(), "trim", d.f.Look.Quiet)
		}
		if c.SliceMM > 0 {
			d.within(y, c.SliceAt, c.SliceAt+c.SliceMM, "slice", d.f.Look.Quiet)
		}
	}
}

// within writes a text in the middle of a stretch of the loaf, if it has room there and the stretch is in sight.
func (d *cutDrawing) within(y int, from, to float64, text string, st screen.Style) bool {
	a, b := max(d.scale.at(from), d.scale.x), min(d.scale.at(to), d.scale.x+d.scale.w)
	w := screen.Width(text)
	if w > b-a-1 && (w > b-a || len(text) > 1) {
		return false
	}
	d.a.Text(a+(b-a-w+1)/2, y, text, st)
	return true
}

// verdicts says below every bar how the worst of its embeds stands: in a word where it has room, else by its sign.
func (d *cutDrawing) verdicts(y int) {
	for _, b := range d.f.columnsOfBars() {
		verdict, s, there := d.f.columnVerdict(b)
		if !there {
			continue
		}
		st, sign := d.f.Look.Good, "·"
		if s != pour.Note {
			st, sign = d.f.Look.Severity(s), look.Mark(s)
		}
		if !d.within(y, b.StartMM, b.EndMM, short(verdict), st) {
			d.within(y, b.StartMM, b.EndMM, sign, st)
		}
	}
}

// short is a verdict in one word.
func short(verdict string) string {
	switch verdict {
	case pour.VerdictCut:
		return "CUT"
	case pour.VerdictAstray:
		return "ASTRAY"
	}
	return verdict
}

// loaf draws what is seen from above.
func (d *cutDrawing) loaf() {
	f, c := d.f, d.f.Sheet.Cut
	for x := d.scale.x; x < d.scale.x+d.scale.w; x++ {
		mm := d.scale.mm(x)
		glyph := " "
		switch {
		case mm < c.TrimAMM || mm > f.Plan.Mould.AlongMM()-c.TrimBMM:
			glyph = "/"
		case c.SliceMM > 0 && mm >= c.SliceAt && mm <= c.SliceAt+c.SliceMM:
			glyph = "░"
		}
		for y := range d.rows {
			d.a.Text(x, d.top+y, glyph, f.Look.Quiet)
		}
	}
	d.icing()
	for i := range f.Sheet.Embeds {
		d.embed(i)
	}
	d.across()
	if !f.Plan.Mould.IsCut() {
		d.walls()
	}
	for i, mm := range c.CutsMM {
		d.cut(i, mm)
	}
	mid := d.top + (d.rows-1)/2
	d.end(0, mid, "A", d.scale.from > 0, "‹")
	d.end(d.a.W()-1, mid, "B", d.scale.mm(d.scale.x+d.scale.w-1)+d.scale.per < f.Plan.Mould.AlongMM()-1e-6, "›")
}

// end names an end of the loaf, or says that it goes on there.
func (d *cutDrawing) end(x, y int, name string, on bool, more string) {
	if on {
		d.a.Text(x, y, more, d.f.Look.Accent)
		return
	}
	d.a.Text(x, y, name, d.f.Look.Strong)
}

// cut draws one cut; the one under the cursor is double and reversed.
func (d *cutDrawing) cut(i int, mm float64) {
	x := d.scale.cut(mm)
	if !d.scale.shows(x) {
		return
	}
	glyph, st := "│", d.f.Look.Strong
	if i == d.chosen {
		glyph, st = "║", d.f.Look.Focus.With(screen.Reverse)
	}
	for y := range d.rows {
		d.a.Text(x, d.top+y, glyph, st)
	}
}

// walls draws where one single mould ends and the next begins.
func (d *cutDrawing) walls() {
	for _, b := range d.f.columnsOfBars() {
		for _, mm := range [2]float64{b.StartMM, b.EndMM} {
			if x := d.scale.cut(mm); d.scale.shows(x) {
				for y := range d.rows {
					d.a.Text(x, d.top+y, "┊", d.f.Look.Quiet)
				}
			}
		}
	}
}

// row is the line of a place across the loaf, seen from end A: its left side is above.
func (d *cutDrawing) row(across float64) int {
	w := d.f.Plan.Mould.WidthMM
	return d.top + min(max(int((across+w/2)/w*float64(d.rows)), 0), d.rows-1)
}

// across draws the cuts along a slab's length.
func (d *cutDrawing) across() {
	for _, mm := range d.f.Sheet.Cut.AcrossMM {
		y := d.row(mm - d.f.Plan.Mould.WidthMM/2)
		for x := d.scale.x; x < d.scale.x+d.scale.w; x++ {
			d.a.Text(x, y, "─", d.f.Look.Quiet)
		}
	}
}

// icing draws where the units of icing stand.
func (d *cutDrawing) icing() {
	for _, u := range d.f.Sheet.Piping.At {
		if x := d.scale.at(u.AlongMM); d.scale.shows(x) {
			d.a.Text(x, d.row(u.AcrossMM), "o", d.f.Look.Quiet)
		}
	}
}

// embed draws the pieces of a kind, as large as they are, with the sign of their verdict in their middle.
func (d *cutDrawing) embed(i int) {
	f, k := d.f, d.f.Sheet.Embeds[i]
	colour, ok := screen.Hex(f.Plan.Top.Embeds[i].Colour)
	if !ok {
		colour = screen.RGB(150, 150, 150)
	}
	st, fill := screen.Style{Bg: colour, Fg: look.Readable(colour)}, " "
	if f.Colourless {
		st, fill = screen.Style{}, "▒"
	}
	for _, p := range k.Pieces {
		box := image.Rect(d.scale.at(p.CentreMM-k.ExtentMM/2+d.scale.per/2), d.row(p.AcrossMM-k.AcrossMM/2), d.scale.at(p.CentreMM+k.ExtentMM/2-d.scale.per/2)+1, d.row(p.AcrossMM+k.AcrossMM/2)+1)
		middle := d.scale.at(p.CentreMM)
		for y := box.Min.Y; y < box.Max.Y; y++ {
			for x := min(box.Min.X, middle); x < max(box.Max.X, middle+1); x++ {
				if d.scale.shows(x) {
					d.a.Text(x, y, fill, st)
				}
			}
		}
		if d.scale.shows(middle) {
			d.a.Text(middle, d.row(p.AcrossMM), verdictSign(p.Verdict), st.With(screen.Bold))
		}
	}
}

// verdictSign is the sign of a verdict in the middle of a piece.
func verdictSign(verdict string) string {
	switch grade(verdict) {
	case pour.Stop:
		return "■"
	case pour.Caution:
		return "!"
	}
	if verdict == pour.VerdictThrough {
		return "="
	}
	return "●"
}

// marks says above the loaf where the cuts are: that under the cursor, and of the others what has room.
func (d *cutDrawing) marks(focused bool) {
	c := d.f.Sheet.Cut
	taken := make([]bool, d.a.W()+1)
	put := func(i int, st screen.Style) {
		text := d.f.mm(c.CutsMM[i])
		w, x := screen.Width(text), d.scale.cut(c.CutsMM[i])
		if !d.scale.shows(x) {
			return
		}
		x = max(min(x-w/2, d.a.W()-w), 0)
		for k := max(x-1, 0); k < min(x+w+1, len(taken)); k++ {
			if taken[k] {
				return
			}
		}
		for k := x; k < min(x+w, len(taken)); k++ {
			taken[k] = true
		}
		d.a.Text(x, 0, text, st)
	}
	if d.chosen >= 0 {
		st := d.f.Look.Strong
		if focused {
			st = d.f.Look.Focus.With(screen.Reverse)
		}
		put(d.chosen, st)
	}
	for i := range c.CutsMM {
		if i != d.chosen {
			put(i, d.f.Look.Quiet)
		}
	}
}

// foot says what is under the cursor, or takes what is typed there; what is typed in another panel is none of its business.
func (d *cutDrawing) foot(y int, focused bool) {
	f := d.f
	if y >= d.a.H() {
		return
	}
	if d.chosen < 0 {
		text := fmt.Sprintf("nothing is cut; end A is at the left, %s long", f.Show.Len(f.Plan.Mould.AlongMM()))
		if !f.Plan.Mould.IsCut() {
			text = singles
		}
		d.a.Text(1, y, screen.Clip(text, d.a.W()-2), f.Look.Quiet)
		return
	}
	at := f.Sheet.Cut.CutsMM[d.chosen]
	x := d.a.Text(1, y, fmt.Sprintf("cut %d of %d at ", d.chosen+1, len(f.Sheet.Cut.CutsMM)), f.Look.Strong)
	if focused && f.Typing != nil {
		st := f.Look.Typing
		if f.Typing.Refused != "" {
			st = f.Look.Wrong
		}
		f.Typing.Entry.Draw(d.a, x, y, min(12, d.a.W()-x), st)
		return
	}
	x = d.a.Text(x, y, f.Show.LenNear(at)+" from A"+f.besideCut(at), screen.Style{})
	if u := f.unevenness(); u != "" && x+2 < d.a.W() {
		d.a.Text(x, y, screen.Clip(u, d.a.W()-x-1), f.Look.Quiet)
	}
}

// unevenness says how far the bars' masses are apart.
func (f *Facts) unevenness() string {
	c := f.Sheet.Cut
	if !c.LightG.Known || !c.HeavyG.Known {
		return ""
	}
	return fmt.Sprintf("; bars weigh %s to %s", f.Show.WeightApart(c.LightG.V).Number, f.Show.Weight(c.HeavyG.V))
}

func abs(n int) int { return max(n, -n) }
