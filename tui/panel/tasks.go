package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the run.
const (
	taskAt = iota
	taskTakes
	taskKind
	taskJug
	taskBatch
)

// tasks is the run in its order; the acts of one round stand in one row.
func tasks() Panel {
	return Panel{
		ID: "tasks", Title: "The run, in order", Grid: (*Facts).taskGrid,
		move: func(f *Facts, on On, by int) Do { return f.moveTask(on.Row.Item, by) },
	}
}

// moveTask moves a row of the run: its first task before the one above, or its last behind the one below. The cursor goes along.
func (f *Facts) moveTask(row, by int) Do {
	var key string
	return Do{
		Name: "order of the run",
		Edit: func(p pour.Plan) (pour.Plan, error) {
			moved := f.Sheet.Stints()[row].Tasks
			key = moved[0].Key
			if by > 0 {
				key = moved[len(moved)-1].Key
			}
			return pour.MoveTask(*f.Sheet, key, by)(p)
		},
		Seek: func(next *Facts) (To, bool) {
			at := slices.IndexFunc(next.Sheet.Stints(), func(st pour.Stint) bool {
				return slices.ContainsFunc(st.Tasks, func(t pour.Task) bool { return t.Key == key })
			})
			return To{Item: at, Sub: -1, Col: keepCol}, at >= 0
		},
	}
}

func (f *Facts) taskGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{
		taskAt:    {Head: "at", W: 9, Right: true},
		taskTakes: {Head: "takes", W: 8, Right: true},
		taskKind:  {Head: "task", W: 14},
		taskJug:   {Head: "jug", W: 18, Grow: 1},
		taskBatch: {Head: "batch", W: 6},
	}}
	const hint = "J and K change the order; times are from the moment the base's lye meets its oils, minutes:seconds"
	first := 0 // of the row's tasks in the run
	for i, st := range f.Sheet.Stints() {
		path := at("run", first)
		first += len(st.Tasks)
		jug := f.stintJugs(st)
		if jug.Hint = f.Sheet.Tell(st); jug.Hint == "" {
			jug.Hint = hint
		}
		jug.Plain = jug.Hint
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			taskAt:    f.shown(f.Show.RunTime(st.StartMin), path+"start_min", hint),
			taskTakes: f.shown(f.Show.Span(st.LengthMin), path+"length_min", hint),
			taskKind:  f.shown(string(st.Kind), path+"start_min", jug.Hint), taskJug: jug, taskBatch: f.label(string(st.Batch)),
		}})
	}
	return g
}

// stintJugs is which jugs a row of the run is about: one by name, those of a round by their letters.
func (f *Facts) stintJugs(st pour.Stint) grid.Cell {
	batch := f.batch(st.Batch)
	if batch == nil || st.Batch == "" {
		return grid.Cell{Text: st.Item}
	}
	place := func(jug string) int {
		return slices.IndexFunc(batch.Jugs, func(j pour.JugSheet) bool { return j.Name == jug })
	}
	if st.Jug != "" {
		k := max(place(st.Jug), 0)
		c := grid.Cell{Text: look.Letter(k) + " " + st.Jug}
		c.Swatch, _ = screen.Hex(batch.Jugs[k].Colour.Hex)
		return c
	}
	var letters []string
	for _, t := range st.Tasks {
		if t.Jug != "" {
			letters = append(letters, look.Letter(max(place(t.Jug), 0)))
		}
	}
	text := strings.Join(letters, " ")
	switch {
	case len(letters) == 0 && len(st.Tasks) > 1:
		text = fmt.Sprintf("%d passes", len(st.Tasks))
	case st.Rounds > 0:
		text = strings.TrimSuffix(fmt.Sprintf("%d of %d: %s", st.Round, st.Rounds, text), ": ")
	}
	return grid.Cell{Text: text}
}
