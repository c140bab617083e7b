// Package board draws the season: a row for every pour, a column for every week, signs for what is on which day, and below them the words of
// the row under the cursor. It is one pure function into an area of any size; colour only adds to the signs.
package board

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/season"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// View is how a board is looked at.
type View struct {
	Look look.Look
	From day.Day // Monday of the first week shown; another day stands for that of its week
	Row  int     // under the cursor; -1: none
	Top  int     // the first row shown
}

// The rows of the drawing around those of the pours: title, months, days above them; a rule and the legend below, with the words between.
const (
	headH   = 3
	legendH = 1
)

// First is the Monday to begin with.
func First(b season.Board) day.Day { return b.First() }

// columns are the widths of what stands left of the weeks, for a width of the area: name, date, pour by.
func columns(w int) (name, date, by int) {
	switch {
	case w >= 110:
		return 24, 16, 17
	case w >= 70:
		return 16, 0, 17
	}
	return max(min(w/3, 16), 1), 0, 0
}

// left is what stands left of the weeks: a sign, and after each column a blank.
func left(w int) int {
	name, date, by := columns(w)
	n := 2 + name + 1
	for _, c := range []int{date, by} {
		if c > 0 {
			n += c + 1
		}
	}
	return n
}

// Weeks is how many weeks fit into a width.
func Weeks(w int) int { return max((w-left(w))/season.CellsOfWeek, 0) }

// wordsH is how many lines there are for the words of a row in an area of that height.
func wordsH(h int) int {
	return max(min(h/3, 8), 0)
}

// Rows is how many pours fit into a height.
func Rows(h int) int { return max(h-headH-legendH-wordsH(h), 0) }

// Draw draws the board.
func Draw(a screen.Area, b season.Board, v View) {
	if a.W() < 1 || a.H() < 1 {
		return
	}
	v.From = season.Monday(v.From)
	title(a, b, v.Look)
	if len(b.Rows) == 0 {
		empty(a, b, v.Look)
		return
	}
	weeks := Weeks(a.W())
	grid := a.Cut(left(a.W()), 0, weeks*season.CellsOfWeek, a.H())
	calendar(grid, v)
	n := min(Rows(a.H()), len(b.Rows)-min(v.Top, len(b.Rows)))
	today(grid.Cut(0, headH, grid.W(), n), b, v)
	for i := range n {
		row := v.Top + i
		named(a.Cut(0, headH+i, a.W(), 1), b, row, v)
		strip(grid.Cut(0, headH+i, grid.W(), 1), b, row, v)
	}
	words(a.Cut(0, headH+Rows(a.H()), a.W(), wordsH(a.H())), b, v)
	a.Text(0, a.H()-1, screen.Clip(season.Legend(), a.W()), v.Look.Quiet)
}

// title says what the season is like as a whole.
func title(a screen.Area, b season.Board, l look.Look) {
	x := a.Text(0, 0, "Season ", l.Strong)
	text := fmt.Sprintf("%d pours, %d dates", len(b.Rows), len(b.Dates))
	x = a.Text(x, 0, text+"  ", l.Quiet)
	if n := len(b.Collisions); n > 0 {
		a.Text(x, 0, fmt.Sprintf("! %d to look at", n), l.Caution)
	} else {
		a.Text(x, 0, "nothing collides", l.Good)
	}
}

// empty says how a season begins.
func empty(a screen.Area, b season.Board, l look.Look) {
	y := 2
	for _, d := range b.Dates {
		if y < a.H()-3 {
			a.Text(0, y, screen.Clip(fmt.Sprintf("%s  %s", d.Day, d.Name), a.W()), l.Text)
			y++
		}
	}
	for _, line := range []string{"No pour is planned, and none dries.", "Add a date and the pours for it: by the keys below, or", "pourbench season add-date, pourbench season add-pour"} {
		a.Text(0, y, screen.Clip(line, a.W()), l.Quiet)
		y++
	}
}

// calendar writes the months and the Mondays above the weeks.
func calendar(g screen.Area, v View) {
	months, days := season.Head(v.From, g.W()/season.CellsOfWeek)
	g.Text(0, 1, strings.TrimRight(months, " "), v.Look.Strong)
	g.Text(0, 2, strings.TrimRight(days, " "), v.Look.Quiet)
}

// today draws a line through the day.
func today(g screen.Area, b season.Board, v View) {
	x := season.Cell(b.Today, v.From)
	for y := range g.H() {
		g.Text(x, y, "│", v.Look.Rule)
	}
}

// styles are the colours of the marks.
func style(m season.Mark, l look.Look) screen.Style {
	switch m {
	case season.PourMark:
		return l.Accent.With(screen.Bold)
	case season.CutMark:
		return l.Strong
	case season.BandMark:
		return l.Good
	case season.MarketMark, season.OrderMark:
		return l.Focus
	case season.LabelMark:
		return l.Note
	case season.EmbedsMark:
		return l.Note
	}
	return l.Quiet
}

// strip draws a pour's weeks.
func strip(g screen.Area, b season.Board, row int, v View) {
	for x, m := range b.Strip(row, v.From, g.W()/season.CellsOfWeek) {
		if m != season.NoMark {
			g.Text(x, 0, m.Sign(), style(m, v.Look))
		}
	}
}

// named draws what stands left of the weeks: the area is all of the row.
func named(a screen.Area, b season.Board, row int, v View) {
	r := b.Rows[row]
	name, date, by := columns(a.W())
	st := v.Look.Text
	if row == v.Row {
		st = v.Look.Focus
		a.Text(1, 0, "▸", st)
		a.Focus(1, 0)
	}
	a.Text(0, 0, sign(b, row), signStyle(b, row, v.Look))
	a.Text(2, 0, screen.Clip(r.Name, name), st)
	x := 2 + name + 1
	if date > 0 {
		a.Text(x, 0, screen.Clip(r.For, date), v.Look.Quiet)
		x += date + 1
	}
	if by > 0 {
		a.Text(x, 0, screen.Clip(b.ByWords(row), by), st)
	}
}

// sign is that of the row's verdict, or of what it collides with.
func sign(b season.Board, row int) string {
	if collides(b, row) {
		return "!"
	}
	if s := b.Rows[row].Verdict.Sign(); s != " " {
		return s
	}
	return "·"
}

func collides(b season.Board, row int) bool {
	return b.Rows[row].Fault != nil || slices.ContainsFunc(b.Collisions, func(c season.Collision) bool { return c.Row == row })
}

func signStyle(b season.Board, row int, l look.Look) screen.Style {
	switch v := b.Rows[row].Verdict; {
	case collides(b, row), v == season.TooLate, v == season.Past, v == season.Luck:
		return l.Caution
	case v == season.InTime:
		return l.Good
	}
	return l.Quiet
}

// words writes what is to be said of the row under the cursor or, where none is, of what collides.
func words(a screen.Area, b season.Board, v View) {
	if a.H() < 2 {
		return
	}
	a.Text(0, 0, strings.Repeat("─", a.W()), v.Look.Rule)
	var lines []string
	if v.Row >= 0 && v.Row < len(b.Rows) {
		lines = b.Tell(v.Row)
	} else {
		lines = b.TellCollisions()
	}
	y := 1
	for _, line := range lines {
		st := v.Look.Text
		if strings.HasPrefix(line, "!") {
			st = v.Look.Caution
		}
		for _, part := range screen.Wrap(line, a.W()) {
			if y >= a.H() {
				return
			}
			a.Text(0, y, part, st)
			y++
		}
	}
}
