package panel

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// about is the plan's name, units and scale steps.
func about() Panel {
	return Panel{ID: "about", Title: "This plan", cells: keys.Numbers | keys.Words, Grid: (*Facts).aboutGrid}
}

func (f *Facts) aboutGrid() grid.Grid {
	notes := words("notes", f.Plan.Notes, pour.SetNotes)
	notes.Hint = "your own words; nothing reads them"
	if notes.Text == "" {
		notes.Text = "–"
	}
	return grid.Grid{Columns: []grid.Column{formLabel: {W: 15}, formValue: {W: 14, Grow: 1}, formUnit: {W: 3}}, Rows: []grid.Row{
		formRow("name", words("plan name", f.Plan.Name, pour.SetName)), formRow("notes", notes), formRow("poured at", f.pourAtCell()),
		f.word("show.mass", ""), f.word("show.temperature", ""), f.word("show.length", ""),
		left(named(f.field("show.scale_step_g", ""), "scale_step_g")), left(named(f.field("show.lye_step_g", ""), "lye_step_g")),
	}}
}

// pourAtForm is how the moment of the pour is shown and typed.
const pourAtForm = "2006-01-02 15:04"

func (f *Facts) pourAtCell() grid.Cell {
	c := grid.Cell{Kind: grid.Words, Text: "–", Style: f.Look.Quiet, Name: "moment of the pour"}
	c.Hint = "date and time of the base's lye-in, as in 2026-12-05 10:00; empty: papers carry relative times"
	if at := f.Plan.PourAt; !at.IsZero() {
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
