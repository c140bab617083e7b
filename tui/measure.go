package tui

import (
	"fmt"
	"math"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/swirl"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// measured is what was counted on the face of one bar.
type measured struct {
	shot   picture.Shot // what it was counted on; its size says nothing
	ticket int
	known  bool
	of     swirl.Measure
}

// measuredMsg brings what was counted.
type measuredMsg struct {
	ticket int
	of     swirl.Measure
	err    error
}

// measure has the face counted beside the keyboard, once its picture is drawn with smooth edges and the counts are in sight.
func (m *Model) measure() tea.Cmd {
	f := &m.studio.mounts[placeNow]
	if m.station != layout.Swirl || m.studio.play.running || f.print == nil || !f.print.Plate.Fine || f.stop == nil || !f.print.Plate.Shot.Same(f.shot) {
		return nil
	}
	shot := f.shot
	shot.View, shot.Done, shot.W, shot.H, shot.Letters, shot.Flat, shot.Icing = picture.Bar, picture.Whole, 0, 0, false, false, nil
	if m.studio.measured.shot.Same(shot) {
		return nil
	}
	m.studio.measured.shot = shot
	m.studio.measured.ticket++
	ticket := m.studio.measured.ticket
	return func() tea.Msg {
		of, err := picture.Measure(shot)
		return measuredMsg{ticket, of, err}
	}
}

// counted takes what was counted; the counts of a face that has changed since are dropped.
func (m *Model) counted(msg measuredMsg) {
	c := &m.studio.measured
	if msg.ticket != c.ticket {
		return
	}
	c.known, c.of = msg.err == nil, msg.of
}

// border is the border between two portions on a face.
type border struct {
	a, b    int // jugs
	percent float64
}

// borders lists the borders of a face, the longest first, without those under half a percent.
func (c *measured) borders() []border {
	total := 0.0
	for i, row := range c.of.Borders {
		for _, mm := range row[i+1:] {
			total += mm
		}
	}
	var out []border
	for i, row := range c.of.Borders {
		for k, mm := range row[i+1:] {
			if part := mm / total * 100; total > 0 && part >= 0.5 {
				out = append(out, border{i, i + 1 + k, part})
			}
		}
	}
	slices.SortStableFunc(out, func(x, y border) int { return int(math.Round(1000 * (y.percent - x.percent))) })
	return out
}

// measureGrid is what was counted on the face: what each jug has of it, and which colours border on which.
func (b *bench) measureGrid() grid.Grid {
	c := b.measured
	g := grid.Grid{Empty: "the face is being counted …", Columns: []grid.Column{{W: 5, Right: true}, {W: 20, Grow: 1}, {W: 12}}}
	jugs := b.plan.Base.Jugs
	if !c.known || len(c.of.Shares) != len(jugs) {
		return g
	}
	g.Rows = append(g.Rows, heading("of this face"))
	for i, share := range c.of.Shares {
		j := jugs[i]
		name := grid.Cell{Text: look.Letter(i) + " " + j.Name}
		name.Swatch, _ = screen.Hex(b.sheet.Base.Jugs[i].Colour.Hex)
		cell := b.shown(percent(share*100, 0)+" %", j.Name+": its part of this face; the bars of a loaf differ, all of them together have the planned share")
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{cell, name, b.label("planned " + percent(j.SharePercent, 0))}})
	}
	g.Rows = append(g.Rows, heading("of its borders"))
	for i, x := range c.borders() {
		text := jugs[x.a].Name + " against " + jugs[x.b].Name
		cell := b.shown(percent(x.percent, 0)+" %", fmt.Sprintf("%s %% of the borders are %s", percent(x.percent, 0), text))
		cell.Plain = cell.Hint
		g.Rows = append(g.Rows, grid.Row{Item: len(jugs) + i, Sub: -1, Cells: []grid.Cell{cell, {Text: text}, b.mudLabel(x)}})
	}
	return g
}

// mudLabel says how muddy a border is.
func (b *bench) mudLabel(x border) grid.Cell {
	mud := b.colours.Look.Mud
	if x.a >= len(mud) || x.b >= len(mud) {
		return grid.Cell{}
	}
	return b.label("mud " + percent(mud[x.a][x.b], 2))
}
