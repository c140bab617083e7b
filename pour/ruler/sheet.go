package ruler

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/shape"
	"pourbench/pour/vector"
)

// How a sheet is laid out, mm from its top.
const (
	titleAt  = 15
	linesAt  = 21
	lineHigh = 4.4
	checkAt  = 42
	bandsAt  = 46
	tickHalf = 2
)

// place is one strip of one edge.
type place struct {
	edge       Edge
	strip      shape.Strip
	number, of int
}

// places lists the strips of all edges, none wider than so many mm.
func (r Ruler) places(most float64) []place {
	var out []place
	for _, e := range r.Edges {
		strips := shape.Strips(e.LengthMM, most, overlapMM)
		for i, s := range strips {
			out = append(out, place{e, s, i + 1, len(strips)})
		}
	}
	return out
}

// sheets lays the ruler out on paper: as many strips on a sheet as there is room for, each sheet with its own check bar.
func (r Ruler) sheets(p Paper) []drawing {
	places := r.places(float64(int(p.Wide - 2*marginMM)))
	each := int((p.High - marginMM - bandsAt) / bandHigh)
	var out []drawing
	all := (len(places) + each - 1) / each
	for i := range all {
		d := drawing{vector.Drawing{Wide: p.Wide, High: p.High}}
		r.head(&d, marginMM, p.Wide-2*marginMM, fmt.Sprintf("sheet %d of %d", i+1, all))
		for j, at := range places[i*each : min(len(places), (i+1)*each)] {
			b := band{drawing: &d, show: r.Show, edge: at.edge, strip: at.strip, x: marginMM, foot: bandsAt + float64(j+1)*bandHigh}
			b.draw(at.number, at.of)
		}
		out = append(out, d)
	}
	return out
}

// whole lays the ruler out in one piece, whatever its length: x is the distance from end A.
func (r Ruler) whole() drawing {
	long := float64(leastWide)
	for _, e := range r.Edges {
		long = max(long, e.LengthMM)
	}
	d := drawing{vector.Drawing{Left: -marginMM, Wide: long + 2*marginMM, High: bandsAt + marginMM + float64(len(r.Edges))*bandHigh}}
	r.head(&d, 0, long, "")
	for i, e := range r.Edges {
		b := band{drawing: &d, show: r.Show, edge: e, strip: shape.Strip{To: e.LengthMM}, foot: bandsAt + float64(i+1)*bandHigh}
		b.draw(1, 1)
	}
	return d
}

// leastWide is what the words above a short ruler need, mm.
const leastWide = 240

// head is the words above, and the bar to measure.
func (r Ruler) head(d *drawing, x, wide float64, sheet string) {
	d.Write(x, titleAt, titleText, vector.Start, fitted(r.title(), titleText, wide-wideOf(sheet, plainText)-4))
	d.Write(x+wide, titleAt, plainText, vector.End, sheet)
	y := float64(linesAt)
	for _, text := range r.words() {
		d.Write(x, y, plainText, vector.Start, fitted(text, plainText, wide*1.3))
		y += lineHigh
	}
	d.Line(classCheck, x, checkAt, x+CheckMM, checkAt, bold)
	d.Line(classCheck, x, checkAt-tickHalf, x, checkAt+tickHalf, thin)
	d.Line(classCheck, x+CheckMM, checkAt-tickHalf, x+CheckMM, checkAt+tickHalf, thin)
	d.Write(x+CheckMM+3, checkAt+1, plainText, vector.Start, r.checked())
}

// checked says what the bar is measured for.
func (r Ruler) checked() string {
	if r.Show.Length == pour.LengthInch {
		return "This bar is 100 mm, 3.94 in: measure it. At 3.92 a mark at 10 is 0.05 in off."
	}
	return "This bar is 100 mm: measure it. At 99.5 a mark at 250 is 1.25 mm off."
}

// kerf is what a cut takes, which is less than a length that is marked.
func (r Ruler) kerf() string { return r.Show.Told(r.KerfMM, pour.UnitMM) }

// title names the ruler, its plan and its day.
func (r Ruler) title() string {
	title := r.Plan + ": ruler"
	if r.Day != "" {
		title += ", poured " + r.Day
	}
	return title
}

// words say how the ruler is printed, laid and read.
func (r Ruler) words() []string {
	return []string{
		"Print at 100 % (actual size), not fit to page. Lay the lower edge along the mould, the beginnings together. All in " + r.Show.LenUnit() + " from there.",
		"Tall line: the middle of a cut, its number and distance. " + r.assumed() + " " + r.diamonds(),
		"Slanting hatch: trimmed. Level hatch: sample slice. A number by itself: the bar.",
	}
}

// diamonds says what the diamonds are.
func (r Ruler) diamonds() string {
	var kinds []string
	for _, e := range r.Edges {
		for _, k := range e.kinds() {
			if !slices.Contains(kinds, k) {
				kinds = append(kinds, k)
			}
		}
	}
	switch len(kinds) {
	case 0:
		return "No embeds."
	case 1:
		return "Diamond: the middle of " + kinds[0] + "."
	}
	for i, k := range kinds {
		kinds[i] = letter(i) + ": " + k
	}
	return "Diamonds, their middles: " + strings.Join(kinds, ", ") + "."
}

// assumed is what a cut was taken to take.
func (r Ruler) assumed() string {
	if r.KerfMM > 0 {
		return "Assumed: one cut takes " + r.kerf() + "."
	}
	return "Assumed: a cut takes nothing."
}
