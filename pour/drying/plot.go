// Package drying draws how the bars of a batch dry: mass over the days since the cut, as weighed and as fitted, with the band, today and
// the day they are ready. One value of plain numbers is drawn as a picture here, as cells by the screens, and told in words.
//
// Days are from the cut, masses g of one bar; units of the maker only in what is drawn. "Ready" is dry by her criterion, nothing else.
package drying

import (
	"cmp"
	"math"
	"slices"

	"pourbench/pour"
	"pourbench/pour/day"
)

// Plot is what is drawn. What is no number in it is not drawn, and neither is what there is none of.
type Plot struct {
	Name   string // of the batch
	Show   pour.Show
	Cut    day.Day     // day 0
	Points []Point     // weighings, in any order
	Curve  []Span      // the fitted law, by day; none: it was not fitted
	Today  pour.Figure // days from the cut
	Ready  Ready
	Why    string // why there is no curve or no ready day, in words
}

// Point is what a bar weighed, or the mean of the same bars.
type Point struct{ Day, G float64 }

// Span is what the law has a bar weigh on a day, with its 80 % band.
type Span struct{ Day, G, LowG, HighG float64 }

// Ready is the day on which the bars are dry by the maker's criterion, with its 80 % band.
type Ready struct {
	Known          bool
	Day, Low, High float64
}

// leastDays is the least that is drawn along: the four weeks that a cure usually takes (common practice, no source).
const leastDays = 28

// farToday is how many times everything else today may be from the cut to stretch the drawing.
const farToday = 1.5

// Sound is the plot without what cannot be drawn, points and curve in the order of their days.
func (p Plot) Sound() Plot {
	p.Points = slices.DeleteFunc(slices.Clone(p.Points), func(x Point) bool { return !drawn(x.Day, x.G) })
	slices.SortStableFunc(p.Points, func(a, b Point) int { return cmp.Compare(a.Day, b.Day) })
	p.Curve = slices.DeleteFunc(slices.Clone(p.Curve), func(x Span) bool { return !drawn(x.Day, x.G, x.LowG, x.HighG) })
	slices.SortStableFunc(p.Curve, func(a, b Span) int { return cmp.Compare(a.Day, b.Day) })
	p.Today.Known = p.Today.Known && drawn(p.Today.V)
	p.Ready.Known = p.Ready.Known && drawn(p.Ready.Day, p.Ready.Low, p.Ready.High)
	return p
}

// mostDrawn is more than any day or mass that is drawn.
const mostDrawn = 1e7

func drawn(of ...float64) bool {
	return !slices.ContainsFunc(of, func(v float64) bool { return !(math.Abs(v) <= mostDrawn) })
}

// Empty reports whether there is nothing to draw.
func (p Plot) Empty() bool { return len(p.Points) == 0 && len(p.Curve) == 0 }

// reach is the last day that is drawn: four weeks, or what is there and the end of the band of the ready day, and today where it is near.
func (p Plot) reach() float64 {
	last := float64(leastDays)
	for _, x := range p.Points {
		last = max(last, x.Day)
	}
	if p.Ready.Known {
		last = max(last, p.Ready.Day, min(p.Ready.High, 3*p.Ready.Day+leastDays))
	}
	if p.Today.Known && p.Today.V <= farToday*last {
		last = max(last, p.Today.V)
	}
	return last
}

// masses is the lightest and the heaviest that is drawn.
func (p Plot) masses() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	see := func(v float64) { low, high = min(low, v), max(high, v) }
	for _, x := range p.Points {
		see(x.G)
	}
	last := p.reach()
	for _, x := range p.Curve {
		if x.Day <= last {
			see(x.LowG)
			see(x.HighG)
		}
	}
	return low, high
}
