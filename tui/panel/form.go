package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
)

// The columns of a form.
const (
	formLabel = iota
	formValue
	formUnit
	formRemark
)

// formColumns are the columns of a form: what it is, the value, its unit, a remark.
func formColumns(labelW, valueW int) []grid.Column {
	return []grid.Column{formLabel: {W: labelW}, formValue: {W: valueW, Right: true}, formUnit: {W: 4}, formRemark: {W: 0, Grow: 1}}
}

// The usual room for a form's labels and values.
const (
	labelW = 21
	valueW = 12 // the longest word that can be turned, between its signs
)

// field is a form's row for a number of the plan, by its path in the file.
func (f *Facts) field(path, remark string) grid.Row {
	v, field, ok := pour.Number(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	_, unit := f.Show.ToUnit(v, field.Unit)
	cell := f.number(field.Label, f.Show.Plain(v, field.Unit), v, field.Unit, field.Step, func(n float64) pour.Edit { return pour.SetNumber(path, n) })
	cell.Figure = path
	cell.Hint = fmt.Sprintf("%s: %s to %s %s", field.Label, f.Show.Plain(field.Low, field.Unit), f.Show.Plain(field.High, field.Unit), unit)
	return grid.Row{Sub: -1, Cells: []grid.Cell{formLabel: {Text: field.Label}, formValue: cell, formUnit: f.label(unit), formRemark: f.label(remark)}}
}

// named gives a row's number the name that `pourbench figures` has for it, where that is not its path in the plan.
func named(r grid.Row, path string) grid.Row {
	r.Cells[formValue].Figure = path
	return r
}

// word is a form's row for a word of the plan with a fixed set of values: Enter and the nudge keys go round them.
func (f *Facts) word(path, remark string) grid.Row {
	v, field, ok := pour.Word(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	cell := turning(field.Label, "‹ "+v+" ›", field.Choices(), v, func(steps float64) pour.Edit { return pour.SetWord(path, turned(field.Choices(), v, steps)) })
	cell.Plain, cell.Hint, cell.Figure = v, field.Label+": "+join(field.Choices()), path
	return grid.Row{Sub: -1, Cells: []grid.Cell{formLabel: {Text: field.Label}, formValue: cell, formRemark: f.label(remark)}}
}

// turned is the word so many places after another, round and round.
func turned(words []string, now string, steps float64) string {
	at := slices.Index(words, now) + int(steps)%len(words)
	return words[(at+len(words))%len(words)]
}

// join lists words, the last one after "or".
func join(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// figure is a form's row for a figure that was worked out. The path is the figure's in what `pourbench figures` writes; empty: it is not there.
func (f *Facts) figure(label string, v pour.Amount, path, remark string) grid.Row {
	cell := f.shown(v.Number, path, label+" is worked out; it cannot be typed")
	cell.Plain = v.Number
	return grid.Row{Sub: -1, Cells: []grid.Cell{formLabel: f.label(label), formValue: cell, formUnit: f.label(v.Unit), formRemark: f.label(remark)}}
}

// heading is a form's row over the ones below it.
func heading(text string) grid.Row { return grid.Row{Heading: text, Sub: -1} }

// formRow is a form's row for a cell of its own kind.
func formRow(label string, c grid.Cell) grid.Row {
	return grid.Row{Sub: -1, Cells: []grid.Cell{formLabel: {Text: label}, formValue: c}}
}

// left puts a row's unit beside its number, for a form whose values stand left.
func left(r grid.Row) grid.Row {
	r.Cells[formValue].Text += " " + r.Cells[formUnit].Text
	r.Cells[formUnit].Text = ""
	return r
}
