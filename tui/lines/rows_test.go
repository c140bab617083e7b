package lines

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// jugs is a grid with a letter and a name before its figures, forms one with labels and without heads.
func jugs() grid.Grid {
	row := func(letter, name, held, share string, hex screen.Colour) grid.Row {
		return grid.Row{Cells: []grid.Cell{
			{Text: letter},
			{Kind: grid.Words, Text: name, Swatch: hex},
			{Kind: grid.Tick, Text: "·", Round: []string{held, "x"}},
			{Kind: grid.Number, Text: share},
			{Kind: grid.Shown, Text: "–"},
			{Kind: grid.Shown, Text: "4.67 oil"},
		}}
	}
	g := grid.Grid{
		Columns: []grid.Column{{}, {Head: "   jug"}, {Head: "held"}, {Head: "share %"}, {Head: "late %"}, {Head: "carrier g"}},
		Rows:    []grid.Row{row("A", "pot", "no", "60.0", 0), {Heading: "more"}, row("B", "sea green", "yes", "40.0", screen.RGB(0, 0, 255))},
	}
	for _, i := range []int{0, 2} {
		c := &g.Rows[i].Cells[2]
		if c.Round[0] == "yes" {
			c.Round[1] = "no"
		} else {
			c.Round[1] = "yes"
		}
	}
	return g
}

func form() grid.Grid {
	return grid.Grid{Columns: make([]grid.Column, 4), Rows: []grid.Row{
		{Cells: []grid.Cell{{Text: "fill height"}, {Kind: grid.Number, Text: "60"}, {Text: "mm"}, {Text: "sizes the base"}}},
		{Cells: []grid.Cell{{Text: "shape"}, {Kind: grid.Tick, Text: "‹ loaf ›", Round: []string{"loaf", "slab"}}}},
	}}
}

func TestRowsAreToldInWords(t *testing.T) {
	var got []string
	for _, g := range []grid.Grid{jugs(), form()} {
		for _, r := range Rows(g) {
			got = append(got, r.Line(), r.Brief().Line())
		}
	}
	want := []string{
		"A pot: held no, share % 60.0, late % none, carrier g 4.67 oil", "A pot: share % 60.0, carrier g 4.67 oil",
		"more", "more",
		"B sea green: looks blue, held yes, share % 40.0, late % none, carrier g 4.67 oil", "B sea green: looks blue, held yes, share % 40.0, carrier g 4.67 oil",
		"fill height: 60 mm, sizes the base", "fill height: 60 mm, sizes the base",
		"shape: loaf", "shape: loaf",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("told is\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestRowsAreNumberedWithoutTheirHeadings(t *testing.T) {
	for i, r := range Rows(jugs()) {
		if want := []int{1, 0, 2}[i]; r.N != want || r.At != i {
			t.Errorf("%s has number %d and place %d", r.Name, r.N, r.At)
		}
	}
}

func TestARowIsFoundByABeginningOfItsName(t *testing.T) {
	rows := Rows(jugs())
	for line, want := range map[string]string{
		"pot 35": "A pot|35", "sea 35": "B sea green|35", "sea green 35": "B sea green|35", "green share 3": "B sea green|share 3", "b": "B sea green|", "se gr": "B sea green|", "A": "A pot|",
	} {
		at, rest, _ := Find(rows, line)
		if at < 0 || rows[at].Name+"|"+rest != want {
			t.Errorf("%q finds %d %q, want %s", line, at, rest, want)
		}
	}
	if at, _, others := Find(append(rows, Row{Name: "sea blue", Parts: []Part{{}}}), "sea 3"); at >= 0 || len(others) != 2 {
		t.Errorf("two rows: %d, %q", at, others)
	}
	if at, _, others := Find(rows, "more"); at >= 0 || others != nil {
		t.Error("a heading is found")
	}
}

func TestAColumnIsFoundByABeginningOfItsHead(t *testing.T) {
	r := Rows(jugs())[0]
	for line, want := range map[string]int{"share 35": 3, "share % 35": 3, "sh 35": 3, "carrier": 5, "held yes": 2, "jug posh": 1, "late": 4} {
		if col, _, ok := r.Column(line); !ok || col != want {
			t.Errorf("%q finds column %d, %v", line, col, ok)
		}
	}
	if _, rest, ok := r.Column("35"); ok || rest != "35" {
		t.Error("a number is a column")
	}
}

func TestAnActionIsNamedByKeyByWordOrByTheBeginningOfOne(t *testing.T) {
	table := []keys.Binding{
		{ID: "save", Keys: []string{"s", "ctrl+s"}, Label: "save"}, {ID: "save as", Keys: []string{"S"}}, {ID: "show", Keys: []string{"v"}, Needs: keys.Picture}, {ID: "view", Keys: []string{"v"}},
	}
	acts := func(b keys.Binding) bool { return b.Needs == 0 }
	for line, want := range map[string]string{"s": "save 0 ", "S x.toml": "save as 0 x.toml", "save as x": "save as -1 x", "Save": "save -1 ", "save x": "save -1 x", "v": "view 0 "} {
		if got, ok := Match(table, acts, line); !ok || fmt.Sprintf("%s %d %s", got.Binding.ID, got.Nth, got.Rest) != want {
			t.Errorf("%q is %s %d %s, want %s", line, got.Binding.ID, got.Nth, got.Rest, want)
		}
	}
	if _, ok := Match(table, acts, "saved"); ok {
		t.Error("a longer word is an action")
	}
	if got, _ := Begun(table, "vie 3"); got.Binding.ID != "view" || got.Rest != "3" {
		t.Errorf("vie is %+v", got)
	}
	if got, others := Begun(table, "sa 3"); got.Binding.ID != "" || len(others) != 2 {
		t.Errorf("sa is %+v, %q", got, others)
	}
}
