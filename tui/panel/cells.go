package panel

import (
	"math"
	"slices"
	"strconv"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/tui/grid"
)

// shown is a figure to read and copy. The path is the figure's in what `pourbench figures` writes; empty: it is not there.
func (f *Facts) shown(text, path, hint string) grid.Cell {
	return grid.Cell{Kind: grid.Shown, Text: text, Figure: path, Hint: hint}
}

// label is text the cursor passes over.
func (f *Facts) label(text string) grid.Cell { return grid.Cell{Text: text, Style: f.Look.Quiet} }

// number is a number that can be typed over and nudged. v is in the plan's unit, step too; set gets the plan's unit back.
func (f *Facts) number(name, text string, v float64, u pour.Unit, step float64, set func(float64) pour.Edit) grid.Cell {
	return grid.Cell{
		Kind: grid.Number, Text: text, Plain: f.Show.Plain(v, u), Name: name,
		Set: func(typed string) (pour.Edit, error) {
			n, err := f.Show.Read(typed, u)
			if err != nil {
				return nil, err
			}
			return set(n), nil
		},
		Nudge: func(steps float64) (pour.Edit, error) { return set(Trim(v + steps*step)), nil },
	}
}

// part is the number at a key of an item of a list, by its row in the plan's list of fields: fields are those of the item.
func (f *Facts) part(fields []pour.Field, key, name, text string, set func(float64) pour.Edit) grid.Cell {
	field, _ := pour.Row(fields, key)
	at, ok := field.At.(*float64)
	if !ok {
		return grid.Cell{}
	}
	return f.number(name, text, *at, field.Unit, field.Step, set)
}

// choices are the words a key of an item of a list can be.
func choices(fields []pour.Field, key string) []string {
	field, _ := pour.Row(fields, key)
	return field.Choices()
}

// Trim takes the last bits off a nudged number, so that 0.1 + 0.2 is typed as 0.3.
func Trim(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// asTyped shows a number as it would be typed.
func asTyped(c grid.Cell) grid.Cell { c.Text = c.Plain; return c }

// words is free text.
func words(name, text string, set func(string) pour.Edit) grid.Cell {
	return grid.Cell{
		Kind: grid.Words, Text: text, Plain: text, Name: name,
		Set: func(typed string) (pour.Edit, error) { return set(plain.Line(typed)), nil },
	}
}

// turning is a word that Enter, Space and the nudge keys take round a set of values, of which one is the present; turn gives the edit
// for so many places on.
func turning(name, text string, values []string, now string, turn func(steps float64) pour.Edit) grid.Cell {
	return grid.Cell{
		Kind: grid.Tick, Text: text, Name: name, Flip: turn(1), Round: round(values, now),
		Nudge: func(steps float64) (pour.Edit, error) { return turn(steps), nil },
	}
}

// round is a set of values from the present one on.
func round(values []string, now string) []string {
	at := max(slices.Index(values, now), 0)
	return slices.Concat(values[at:], values[:at])
}

// yesNo is the values of a switch, the present one first.
func yesNo(on bool) []string {
	return round([]string{"no", "yes"}, map[bool]string{true: "yes", false: "no"}[on])
}

// flip is what a key comes to that switches the cell under the cursor.
func flip(on On) Do { return Do{Name: on.Cell.Name, Edit: on.Cell.Flip} }

// heldCell says whether a part stays when another changes.
func (f *Facts) heldCell(held bool, what string) grid.Cell {
	if held {
		return grid.Cell{Kind: grid.Tick, Text: "held", Style: f.Look.Accent, Round: yesNo(held), Hint: "its " + what + " stays when another changes; {hold} lets it go"}
	}
	return grid.Cell{Kind: grid.Tick, Text: "·", Style: f.Look.Quiet, Round: yesNo(held), Hint: "its " + what + " gives way when another changes; {hold} holds it"}
}

// at is the path of a figure's row in a list, to be followed by the figure's own name.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]." }
