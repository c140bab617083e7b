package drying

import (
	"cmp"
	"fmt"
	"slices"

	"pourbench/pour"
)

// Tell says in words what the drawing shows, a sentence to a line.
func (p Plot) Tell() []string {
	p = p.Sound()
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if p.Empty() {
		say("No bar was weighed since the cut.")
	}
	for _, x := range p.Points {
		say("Weighed on %s: %s.", p.DayWords(x.Day), p.Weight(x.G))
	}
	if p.Today.Known {
		say("Today is %s%s.", p.DayWords(p.Today.V), p.todayMass())
	}
	if p.Ready.Known {
		say("Ready, which is dry by the maker's criterion, on %s; 80 %% band %s to %s.", p.DayWords(p.Ready.Day), p.Date(p.Ready.Low), p.Date(p.Ready.High))
	}
	if n := len(p.Curve); n > 0 {
		end := p.Curve[n-1]
		say("On %s a bar weighs %s, 80 %% band %s to %s.", p.DayWords(end.Day), p.Weight(end.G), p.Weight(end.LowG), p.Weight(end.HighG))
	}
	if p.Why != "" {
		say("%s.", p.Why)
	}
	return out
}

// todayMass is what the curve has a bar weigh today.
func (p Plot) todayMass() string {
	s, ok := p.On(p.Today.V)
	if !ok {
		return ""
	}
	return fmt.Sprintf(": about %s, 80 %% band %s to %s", p.Weight(s.G), p.Weight(s.LowG), p.Weight(s.HighG))
}

// On is what the curve has a bar weigh on a day, straight between the days it has; false: it does not reach there.
func (p Plot) On(days float64) (Span, bool) {
	i, _ := slices.BinarySearchFunc(p.Curve, days, func(s Span, d float64) int { return cmp.Compare(s.Day, d) })
	i = max(i, 1)
	if i >= len(p.Curve) || !(days >= p.Curve[0].Day) {
		return Span{}, false
	}
	a, b := p.Curve[i-1], p.Curve[i]
	if b.Day <= a.Day {
		return b, true
	}
	w := (days - a.Day) / (b.Day - a.Day)
	at := func(from, to float64) float64 { return from + w*(to-from) }
	return Span{days, at(a.G, b.G), at(a.LowG, b.LowG), at(a.HighG, b.HighG)}, true
}

// Weight draws a mass to a tenth of a gram, as bars are weighed (common practice, no source), or to a thousandth of an ounce.
func (p Plot) Weight(g float64) string {
	v, unit := p.Show.ToUnit(g, pour.UnitGram)
	places := 1
	if unit != string(pour.UnitGram) {
		places = 3
	}
	return p.Show.Number(v, places) + " " + unit
}
