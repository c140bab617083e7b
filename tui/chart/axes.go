package chart

import (
	"pourbench/pour/drying"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// legend says what the signs are, as far as there is room, behind what is drawn upwards.
func legend(a screen.Area, l look.Look, p drying.Plot, label string) {
	x := a.Text(0, 0, screen.Clip(label, a.W()), l.Quiet) + 2
	for _, s := range []struct {
		there      bool
		sign, word string
		style      screen.Style
	}{
		{p.Today.Known, todaySign, "today", l.Accent},
		{p.Ready.Known, readySign, "ready", l.Good},
		{len(p.Points) > 0, weighedSign, "weighed", l.Strong},
		{len(p.Curve) > 0, "─", "fitted", l.Text},
		{len(p.Curve) > 0, bandSign, "80 %", l.Quiet},
	} {
		end := x + screen.Width(s.sign) + 1 + screen.Width(s.word)
		if !s.there || end > a.W() {
			continue
		}
		x = a.Text(x, 0, s.sign, s.style) + 1
		x = a.Text(x, 0, s.word, l.Quiet) + 2
	}
}

// upright draws the axis of masses into an area left of the field.
func (f field) upright(a screen.Area, l look.Look) {
	end := a.W() - 1
	for y := range a.H() {
		a.Text(end, y, "│", l.Rule)
	}
	for _, t := range f.mass.Ticks {
		_, y := f.cell(f.days.Low, t.At)
		a.Right(end, y, t.Text, l.Quiet)
		a.Text(end, y, "┤", l.Rule)
	}
}

// level draws the axis of days and its numbers into two rows under the field, with the corner before it.
func (f field) level(a screen.Area, l look.Look) {
	for x := range a.W() {
		a.Text(x, 0, "─", l.Rule)
	}
	a.Text(0, 0, "└", l.Rule)
	free := 0
	for _, t := range f.days.Ticks {
		x, _ := f.cell(t.At, f.mass.Low)
		a.Text(x+1, 0, "┬", l.Rule)
		text := t.Text
		if t.At == 0 {
			text = "day 0"
		}
		w := screen.Width(text)
		from := min(max(x+1-w/2, free), a.W()-w)
		if from < free {
			continue
		}
		free = a.Text(from, 1, text, l.Quiet) + 1
	}
}

// marks draws today and the ready day on its band into the row under the days, with the date of that day where there is room.
func (f field) marks(a screen.Area, l look.Look, p drying.Plot) {
	x := func(day float64) int {
		at, _ := f.cell(day, f.mass.Low)
		return at
	}
	today := -1
	if p.Today.Known {
		today = x(p.Today.V)
	}
	if p.Ready.Known {
		from, to := x(p.Ready.Low), x(p.Ready.High)
		for i := max(from, 0); i <= min(to, a.W()-1); i++ {
			a.Text(i, 0, "─", l.Good)
		}
		a.Text(from, 0, "├", l.Good)
		a.Text(to, 0, "┤", l.Good)
		a.Text(x(p.Ready.Day), 0, readySign, l.Good.With(screen.Bold))
		date := p.Date(p.Ready.Day)
		w := screen.Width(date)
		for _, at := range []int{to + 2, from - w - 1} {
			if at >= 0 && at+w <= a.W() && (today < at-1 || today > at+w) {
				a.Text(at, 0, date, l.Quiet)
				break
			}
		}
	}
	a.Text(today, 0, todaySign, l.Accent.With(screen.Bold))
}
