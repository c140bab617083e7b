package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/strict"
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

// stated is [Facts.field] with all that the reference of the plan file says of it: what it is in the hint, and what 0 means where it is 0.
func (f *Facts) stated(path string) grid.Row {
	v, field, ok := pour.Number(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	means, zero, _ := strings.Cut("; "+field.Means, "; 0: ")
	means = strings.TrimPrefix(means, "; ")
	remark := ""
	if v == 0 && zero != "" {
		remark = "0: " + zero
	}
	r := f.field(path, remark)
	_, unit := f.Show.ToUnit(v, field.Unit)
	c := &r.Cells[formValue]
	c.Hint = strings.TrimPrefix(strings.TrimSpace(fmt.Sprintf("%s; %s to %s %s", means, f.Show.Plain(field.Low, field.Unit), f.Show.Plain(field.High, field.Unit), unit)), "; ")
	if zero != "" {
		c.Hint += "; 0: " + zero
	}
	if field.Unit == pour.UnitCount {
		*c = asTyped(*c)
	}
	return r
}

// chosen is [Facts.word] with what the reference of the plan file says of it in the hint.
func (f *Facts) chosen(path string) grid.Row {
	r := f.word(path, "")
	if _, field, ok := pour.Word(f.Plan, path); ok {
		r.Cells[formValue].Hint = field.Means + ": " + join(field.Choices())
	}
	return r
}

// list is a form's row for a list of numbers of the plan, which is typed on one line.
func (f *Facts) list(path, remark string) grid.Row {
	all, field, ok := pour.Numbers(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	plain := make([]string, len(all))
	for i, v := range all {
		plain[i] = f.Show.Plain(v, field.Unit)
	}
	_, unit := f.Show.ToUnit(0, field.Unit)
	c := grid.Cell{Kind: grid.Numbers, Text: shortList(plain), Plain: strings.Join(plain, " "), Name: field.Label, Figure: path}
	c.Hint = strings.TrimSpace(field.Means + ": numbers with blanks between them, as in 25 50.5 76, " + unit)
	c.Set = func(text string) (pour.Edit, error) {
		typed, err := strict.ParseNumbers(text)
		if err != nil {
			return nil, err
		}
		for i, v := range typed {
			typed[i] = f.Show.FromUnit(v, field.Unit)
		}
		return pour.SetNumbers(path, typed), nil
	}
	return grid.Row{Sub: -1, Cells: []grid.Cell{formLabel: {Text: field.Label}, formValue: c, formUnit: f.label(unit), formRemark: f.label(remark)}}
}

// row is a form's row for a key of the plan, by what it holds.
func (f *Facts) row(path string, field pour.Field) grid.Row {
	switch field.At.(type) {
	case *string:
		if field.Takes == pour.TakesWord {
			return f.chosen(path)
		}
	case *[]float64:
		return f.list(path, "")
	case *bool:
		return f.onOff(path)
	}
	return f.stated(path)
}

// onOff is a form's row for a switch of the plan.
func (f *Facts) onOff(path string) grid.Row {
	on, field, ok := pour.Switch(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	c := grid.Cell{Kind: grid.Tick, Text: "‹ no ›", Plain: "no", Name: field.Label, Flip: pour.SetSwitch(path, !on), Round: yesNo(on), Hint: field.Means}
	if on {
		c.Text, c.Plain = "‹ yes ›", "yes"
	}
	return formRow(field.Label, c)
}

// table is the rows of a table of the plan file that count now, with headings before some of its keys.
func (f *Facts) table(name string, counts func(key string) bool, over map[string]string) []grid.Row {
	var rows []grid.Row
	head := ""
	for _, t := range f.Plan.Tables() {
		if t.Key != name {
			continue
		}
		for _, field := range t.Fields {
			if text, ok := over[field.Key]; ok {
				head = text
			}
			if !counts(field.Key) {
				continue
			}
			if head != "" {
				rows = append(rows, heading(head))
				head = ""
			}
			rows = append(rows, f.row(name+"."+field.Key, field))
		}
	}
	return rows
}

// shortList is a list of numbers in the room of one: how many, the first and the last.
func shortList(all []string) string {
	switch n := len(all); n {
	case 0:
		return "none"
	case 1:
		return all[0]
	case 2:
		return all[0] + " " + all[1]
	default:
		return fmt.Sprintf("%d: %s…%s", n, all[0], all[n-1])
	}
}

// named gives a row's number the name that `pourbench figures` has for it, where that is not its path in the plan.
func named(r grid.Row, path string) grid.Row {
	r.Cells[formValue].Figure = path
	return r
}

// word is a form's row for a word of the plan with a fixed set of values: Enter and the nudge keys go round them.
func (f *Facts) word(path, remark string) grid.Row {
	return f.wordBy(path, remark, func(w string) pour.Edit { return pour.SetWord(path, w) })
}

// wordBy is [Facts.word] with an edit of its own for a word that is chosen.
func (f *Facts) wordBy(path, remark string, edit func(w string) pour.Edit) grid.Row {
	v, field, ok := pour.Word(f.Plan, path)
	if !ok {
		return grid.Row{}
	}
	cell := turning(field.Label, "‹ "+v+" ›", field.Choices(), v, func(steps float64) pour.Edit { return edit(turned(field.Choices(), v, steps)) })
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
