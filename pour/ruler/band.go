package ruler

import (
	"fmt"
	"slices"
	"strconv"

	"pourbench/pour"
	"pourbench/pour/shape"
	"pourbench/pour/vector"
)

// How a strip is laid out, mm above its edge, which is what is laid along the mould.
const (
	bandHigh    = 50
	headAt      = 42.5
	rowsAt      = 37.0 // the first row of the cuts' labels
	rowHigh     = 3.6
	labelRows   = 3
	centreRows  = 2
	crossHighAt = 24.0
	crossLowAt  = 20.0
	spansHigh   = 17.0
	centresAt   = 8.0
	tickHigh    = 1.5
	crossHalf   = 2.5
	hatchApart  = 2
	tickApart   = 10
	tickApartIn = 12.7 // half an inch, where lengths are in inches
)

// band is one strip being drawn: part of an edge, its left end at x and its lower edge at foot.
type band struct {
	*drawing
	show    pour.Show
	edge    Edge
	strip   shape.Strip
	x, foot float64
	rows    [labelRows]float64  // how far each row of the cuts' labels is taken
	under   [centreRows]float64 // the same of the middles' labels
}

// at is where a distance lies on the paper.
func (b *band) at(mm float64) float64 { return b.x + mm - b.strip.From }

// on says whether a distance lies on this strip.
func (b *band) on(mm float64) bool { return mm >= b.strip.From-slack && mm <= b.strip.To+slack }

// slack is less than what can be drawn, mm.
const slack = 1e-6

// draw draws everything there is on the strip.
func (b *band) draw(number, of int) {
	for i := range b.rows {
		b.rows[i] = b.x - marginMM
	}
	for i := range b.under {
		b.under[i] = b.x - marginMM
	}
	b.outline(number, of)
	for _, s := range b.edge.Spans {
		b.span(s)
	}
	for _, c := range b.edge.Centres {
		if b.on(c.MM) {
			b.centre(c)
		}
	}
	for i, mm := range b.edge.Cuts {
		if b.on(mm) {
			b.cut(i+1, mm)
		}
	}
	for _, mm := range b.strip.Crosses {
		b.cross(b.at(mm), b.foot-crossLowAt)
		b.cross(b.at(mm), b.foot-crossHighAt-rowHigh)
	}
}

// outline is the edge with a tick every 10 mm or half inch, both ends and what the strip is.
func (b *band) outline(number, of int) {
	left, right := b.at(b.strip.From), b.at(b.strip.To)
	b.Line(classEdge, left, b.foot, right, b.foot, bold)
	b.Line(classEdge, left, b.foot, left, b.foot-rowsAt-rowHigh, thin)
	b.Line(classEdge, right, b.foot, right, b.foot-rowsAt-rowHigh, thin)
	apart := float64(tickApart)
	if b.show.Length == pour.LengthInch {
		apart = tickApartIn
	}
	for i := 0; float64(i)*apart <= b.strip.To+slack; i++ {
		mm := float64(i) * apart
		if b.on(mm) {
			b.Line(classTick, b.at(mm), b.foot, b.at(mm), b.foot-tickHigh, fine)
		}
	}
	text := b.edge.Along + ": " + b.edge.EndA + " here"
	if number > 1 {
		text = fmt.Sprintf("%s: goes on from strip %d, its crosses on those", b.edge.Along, number-1)
	}
	if of > 1 {
		text = fmt.Sprintf("strip %d of %d, %s to %s. %s", number, of, b.show.LenToldApart(b.strip.From).Number, b.show.LenTold(b.strip.To), text)
	}
	b.Write(left, b.foot-headAt, plainText, vector.Start, fitted(text, plainText, b.strip.To-b.strip.From-33))
	if number == of {
		b.Write(right, b.foot-headAt, plainText, vector.End, "other end")
	}
	b.arrow(right-32, b.foot-headAt-1, 10)
}

// span hatches what is trimmed or kept as a sample, and numbers the bars.
func (b *band) span(s Span) {
	from, to := max(s.From, b.strip.From), min(s.To, b.strip.To)
	if to <= from+slack {
		return
	}
	mid := b.at((from + to) / 2)
	switch s.Kind {
	case Trim:
		for _, l := range shape.Hatch(b.at(from), b.foot-spansHigh, to-from, spansHigh, hatchApart) {
			b.Line(classHatch, l[0], l[1], l[2], l[3], fine)
		}
		b.named("trim", mid, to-from)
	case Slice:
		for y := b.foot - spansHigh; y < b.foot; y += hatchApart {
			b.Line(classHatch, b.at(from), y, b.at(to), y, fine)
		}
		b.named("sample", mid, to-from)
	case Bar:
		text := strconv.Itoa(s.Number)
		switch {
		case s.Row:
			text = "row " + text
		case s.Last > 0:
			text += "-" + strconv.Itoa(s.Last)
		}
		b.named(text, mid, to-from)
	}
}

// named writes what a span is in its middle or, where that is too narrow, its first letter; hatches leave the words no room below.
func (b *band) named(text string, mid, room float64) {
	if wideOf(text, smallText) > room {
		text = text[:1]
	}
	b.Write(mid, b.foot-spansHigh-1, smallText, vector.Middle, text)
}

// centre is the middle of an embed: another sign than a cut, with its distance.
func (b *band) centre(c Centre) {
	x := b.at(c.MM)
	b.Line(classCentre, x, b.foot, x, b.foot-centresAt, thin)
	b.diamond(x, b.foot)
	text := b.show.MarkApart(c.MM).Number
	if kinds := b.edge.kinds(); len(kinds) > 1 {
		text = letter(slices.Index(kinds, c.Name)) + " " + text
	}
	row := free(b.under[:], x, wideOf(text, smallText))
	b.Write(x, b.foot-centresAt-1-float64(row)*rowHigh, smallText, vector.Middle, text)
}

// free is the first row in which a text of a width has room about x, or the last; it is taken then.
func free(rows []float64, x, wide float64) int {
	row := 0
	for row < len(rows)-1 && rows[row] > x-wide/2 {
		row++
	}
	rows[row] = x + wide/2 + 0.5
	return row
}

// cut is one cut from the edge up to its label, which stands in the lowest row where there is room.
func (b *band) cut(number int, mm float64) {
	x, text := b.at(mm), fmt.Sprintf("%d: %s", number, b.show.MarkApart(mm).Number)
	// Its words stay on the strip, whose ends are lines.
	half := wideOf(text, smallText) / 2
	words := max(b.at(b.strip.From)+half, min(x, b.at(b.strip.To)-half))
	y := b.foot - rowsAt + float64(labelRows-1-free(b.rows[:], words, 2*half))*rowHigh
	b.Line(classCut, x, b.foot, x, y+0.8, bold)
	b.Write(words, y, smallText, vector.Middle, text)
}

// cross is one mark to lay a strip on the next by.
func (b *band) cross(x, y float64) {
	b.Line(classCross, x-crossHalf, y, x+crossHalf, y, thin)
	b.Line(classCross, x, y-crossHalf, x, y+crossHalf, thin)
}
