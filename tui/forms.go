package tui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// formColumns are the columns of a form: what it is, the value, its unit, a remark.
func formColumns() []grid.Column {
	return []grid.Column{{W: 21}, {W: 10, Right: true}, {W: 4}, {W: 0, Grow: 1}}
}

// field is a form's row for a number of the plan, by its path in the file.
func (b *bench) field(path, remark string) grid.Row {
	v, f, ok := pour.Number(b.plan, path)
	if !ok {
		return grid.Row{}
	}
	_, unit := b.show.ToUnit(v, f.Unit)
	cell := b.number(f.Label, b.show.Plain(v, f.Unit), v, f.Unit, f.Step, func(n float64) pour.Edit { return pour.SetNumber(path, n) })
	cell.Hint = fmt.Sprintf("%s: %s to %s %s", f.Label, b.show.Plain(f.Low, f.Unit), b.show.Plain(f.High, f.Unit), unit)
	return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: f.Label}, cell, b.label(unit), b.label(remark)}}
}

// word is a form's row for a word of the plan with a fixed set of values: Enter and the nudge keys go round them.
func (b *bench) word(path, remark string) grid.Row {
	v, f, ok := pour.Word(b.plan, path)
	if !ok {
		return grid.Row{}
	}
	turn := func(steps float64) pour.Edit { return pour.SetWord(path, turned(f.Choices(), v, steps)) }
	cell := grid.Cell{
		Kind: grid.Tick, Text: "‹ " + v + " ›", Plain: v, Name: f.Label, Flip: turn(1),
		Nudge: func(steps float64) (pour.Edit, error) { return turn(steps), nil },
		Hint:  f.Label + ": " + join(f.Choices()),
	}
	return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: f.Label}, cell, {}, b.label(remark)}}
}

// turned is the word so many places after another, round and round.
func turned(words []string, now string, steps float64) string {
	at := slices.Index(words, now) + int(steps)%len(words)
	return words[(at+len(words))%len(words)]
}

func join(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	text := words[0]
	for _, w := range words[1 : len(words)-1] {
		text += ", " + w
	}
	return text + " or " + words[len(words)-1]
}

// figure is a form's row for a figure that was worked out; text carries its unit.
func (b *bench) figure(label, text, remark string) grid.Row {
	unit := ""
	if v := bare(text); v != text {
		text, unit = v, text[len(v)+1:]
	}
	cell := b.shown(text, label+" is worked out; it cannot be typed")
	cell.Plain = text
	return grid.Row{Sub: -1, Cells: []grid.Cell{b.label(label), cell, b.label(unit), b.label(remark)}}
}

// heading is a form's row over the ones below it.
func heading(text string) grid.Row { return grid.Row{Heading: text, Sub: -1} }

// vesselGrid is the mould, how it is cut, and what comes off the cutter.
func (b *bench) vesselGrid() grid.Grid {
	pick := grid.Cell{
		Kind: grid.Choice, Text: "from the shelf ▼", List: listMoulds, Name: "mould",
		Hint: "take the size and cut of a mould on the shelf",
		Pick: func(id string) pour.Edit {
			for _, m := range b.shelf.Moulds {
				if m.ID == id {
					return pour.UseMould(m)
				}
			}
			return pour.SetWord("mould", id)
		},
	}
	rows := []grid.Row{
		{Sub: -1, Cells: []grid.Cell{{Text: "take a mould"}, pick}},
		b.word("mould.shape", ""), b.field("mould.length_mm", ""), b.field("mould.width_mm", ""), b.field("mould.height_mm", ""),
		b.field("mould.fill_mm", b.fillRemark()), b.field("mould.loss_percent", "of what is mixed"),
		heading("cut"), b.field("mould.bar_mm", ""),
	}
	if b.plan.Mould.Shape == "slab" {
		rows = append(rows, b.field("mould.bar_width_mm", "0: the whole width"))
	}
	bars := b.sheet.Bars
	rows = append(rows,
		heading("comes out"),
		b.figure("bars", fmt.Sprint(bars.Count), "whole ones"),
		b.figure("a bar as cut", b.show.Weight(bars.CutG), "with its icing"),
		b.figure("a bar cured", b.show.Weight(bars.CuredG), "about, once dry"),
		b.figure("base stands", b.show.Len(b.sheet.Base.Size.HeightMM), "high in the mould"),
		b.figure("poured", b.show.Volume(b.sheet.Base.Size.PouredML), ""),
	)
	cols := formColumns()
	cols[1].W = 16
	return grid.Grid{Columns: cols, Rows: rows}
}

func (b *bench) fillRemark() string {
	if b.plan.Base.Size == pour.SizeMould {
		return "sizes the base"
	}
	return "the base is sized by its oils"
}

// bedGrid is what happens from the last pour to the shelf.
func (b *bench) bedGrid() grid.Grid {
	g := pour.Gel{}
	if b.clock != nil {
		g = b.clock.Gel
	}
	temp := func(f pour.Figure) string { return b.show.Figure(f, b.show.Temp) }
	gels := "gels from " + temp(g.FromC)
	if g.Word != "" {
		gels += ": " + g.Word
	}
	return grid.Grid{Columns: formColumns(), Rows: []grid.Row{
		b.word("bed.keep", "insulate for gel, chill against"), b.field("bed.cut_after_h", "from lye-in"),
		b.field("bed.cure_days", "after the cut"), b.field("room.temperature_c", ""),
		b.figure("middle reaches", b.clockText(temp(g.MiddleC.Mid)), gels),
	}}
}

// aboutGrid is the plan's name, units and scale steps.
func (b *bench) aboutGrid() grid.Grid {
	row := func(label string, c grid.Cell) grid.Row {
		return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: label}, c}}
	}
	name := b.words("plan name", b.plan.Name, pour.SetName)
	notes := b.words("notes", b.plan.Notes, pour.SetNotes)
	notes.Hint = "your own words; nothing reads them"
	if notes.Text == "" {
		notes.Text = "–"
	}
	return grid.Grid{Columns: []grid.Column{{W: 15}, {W: 14, Grow: 1}, {W: 3}}, Rows: []grid.Row{
		row("name", name), row("notes", notes), row("poured at", b.pourAtCell()),
		b.word("show.mass", ""), b.word("show.temperature", ""), b.word("show.length", ""),
		left(b.field("show.scale_step_g", "")), left(b.field("show.lye_step_g", "")),
	}}
}

// pourAtForm is how the moment of the pour is shown and typed.
const pourAtForm = "2006-01-02 15:04"

func (b *bench) pourAtCell() grid.Cell {
	c := grid.Cell{Kind: grid.Words, Text: "–", Style: b.look.Quiet, Name: "moment of the pour"}
	c.Hint = "date and time of the base's lye-in, as in 2026-12-05 10:00; empty: papers carry relative times"
	if at := b.plan.PourAt; !at.IsZero() {
		c.Text = at.Format(pourAtForm)
		c.Plain, c.Style = c.Text, screen.Style{}
	}
	c.Set = func(typed string) (pour.Edit, error) {
		if strings.TrimSpace(typed) == "" {
			return pour.SetPourAt(time.Time{}), nil
		}
		at, err := time.Parse(pourAtForm, strings.TrimSpace(typed))
		if err != nil {
			return nil, fmt.Errorf("read %q as a date and time: write it as in 2026-12-05 10:00, or nothing", typed)
		}
		return pour.SetPourAt(at), nil
	}
	return c
}

// left puts a row's unit beside its number, for a form whose values stand left.
func left(r grid.Row) grid.Row {
	r.Cells[1].Text += " " + r.Cells[2].Text
	r.Cells[2].Text = ""
	return r
}

// handGrid is how long the hands need for each task.
func (b *bench) handGrid() grid.Grid {
	g := grid.Grid{Columns: formColumns()}
	paths := []string{"run.cool_lye_min", "base.split_at_min", "run.split_min", "run.stir_min", "run.scent_min"}
	for _, path := range slices.Concat(paths, b.sheet.HandsUsed(), []string{"run.bed_min"}) {
		g.Rows = append(g.Rows, b.field(path, ""))
	}
	if b.sheet.Icing != nil {
		g.Rows = append(g.Rows, heading("icing"), b.field("icing.start_at_min", "on the run clock"), b.field("icing.split_at_min", "after its lye-in"))
	}
	return g
}
