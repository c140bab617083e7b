package tui

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// Every figure a cell shows has an account of the same number, to the digits the cell has.
func TestEveryCellSaysWhereItsFigureComesFrom(t *testing.T) {
	everyCell(t, opened(t, 200, 60), 150)
	everyCell(t, topped(t, 200, 60), 300)
	m := marketed(t, 200, 60)
	if m.edit("market", pour.SetText("label.market", "vale")) != nil {
		t.Fatal("no market")
	}
	finish(m, m.workFigures())
	everyCell(t, m, 200)
}

func everyCell(t *testing.T, m *model, least int) {
	t.Helper()
	silent, told := map[string]string{}, 0
	for s := range panel.Places {
		visit(m, panel.Place(s))
		for _, p := range m.panels {
			for _, row := range m.grids[p.ID].Rows {
				for _, c := range row.Cells {
					switch {
					case c.Figure != "":
						told++
						checkCell(t, m, p.Title, c)
					case p.ID == layout.Warnings: // words, no figures
					case panel.Place(s) == panel.Label && c.Hint != "": // names and verdicts, told by their hints
					case p.ID == panel.OnShelf || p.ID == "entry" || p.ID == "packs" || p.ID == "cost" && c.Hint != "": // the shelf's own words and figures, each with its source beside it
					case p.ID == "measures" && c.Hint != "": // counted on the one face that is drawn: it is no figure of the plan
					case c.Kind == grid.Shown || c.Kind == grid.Number:
						silent[p.Title+": "+c.Text] = c.Hint
					}
				}
			}
		}
	}
	if told < least {
		t.Errorf("only %d cells are told", told)
	}
	for cell, hint := range silent {
		t.Errorf("a cell cannot be explained: %s (%s)", cell, hint)
	}
}

func checkCell(t *testing.T, m *model, title string, c grid.Cell) {
	t.Helper()
	a, err := m.told().Explain(c.Figure, m.session.Shelf(), m.session.Hand())
	if err != nil {
		t.Errorf("%s, %q: %v", title, c.Text, err)
		return
	}
	shown := regexp.MustCompile(`-?\d+(\.\d+)?`).FindString(strings.TrimSuffix(c.Text, "…"))
	if regexp.MustCompile(`^[^-\d.]*[A-Za-z]`).MatchString(c.Text) || shown == "" || a.Word != "" || strings.HasPrefix(c.Text, "its own") || a.Unit == pour.UnitCelsius && strings.Contains(c.Text, "°F") {
		return // a dash, or a word
	}
	v, err := strconv.ParseFloat(shown, 64)
	if err != nil {
		t.Fatal(err)
	}
	digits := 0
	if _, after, ok := strings.Cut(shown, "."); ok {
		digits = len(after)
	}
	if a.Unit == pour.UnitMinute || strings.Contains(c.Text, ":") || strings.Contains(c.Text, "h ") {
		return // a time is drawn as minutes and seconds
	}
	if got := a.Value.V; math.Abs(got-v) > 0.5001*math.Pow10(-digits) {
		t.Errorf("%s shows %q for %s, which is %v", title, c.Text, c.Figure, got)
	}
}

// e opens the page for the cell under the cursor, on a figure and on what the maker typed; on nothing it says why not.
func TestTheKeyThatExplainsOpensItsPage(t *testing.T) {
	m := opened(t, 120, 36)
	visit(m, panel.Jugs)
	drive(m, "right e")
	text := frame(m)
	for _, want := range []string{"Where it comes from", "base.jugs[0].batter_weigh_g", "largest remainder", "(base.jugs[0].batter_g)", "your plan, show.scale_step_g"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page:\n%s", want, text)
		}
	}
	drive(m, "esc")
	if text := frame(m); strings.Contains(text, "Where it comes from") {
		t.Error("Esc leaves the page open")
	}
}
