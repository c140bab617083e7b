package grid

import (
	"image"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/tui/entry"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// jugs is a small table: names that stay, shares on the right, remarks that grow, and a line of sums the cursor never rests on.
func jugs() Grid {
	row := func(item int, name, share, note string) Row {
		return Row{Item: item, Sub: -1, Cells: []Cell{{Kind: Words, Text: name}, {Kind: Number, Text: share, Plain: share + "00"}, {Kind: Shown, Text: note}}}
	}
	return Grid{
		Columns: []Column{{Head: "jug", W: 6}, {Head: "share", W: 5, Right: true}, {Head: "note", W: 4, Grow: 1}},
		Frozen:  1,
		Rows: []Row{
			{Heading: "base", Item: -1, Sub: -1},
			row(0, "pot", "38", "white"), row(1, "fern", "62", "green leaves"),
			{Total: true, Item: -1, Sub: -1, Cells: []Cell{{Text: "all"}, {Text: "100"}}},
		},
	}
}

// lines is what a grid draws, without styles.
func lines(g Grid, c Cursor, w, h int, focused bool, typed *Typed) []string {
	s := screen.New(w, h)
	g.Draw(s.Area(), c, look.New(true), focused, typed)
	out := strings.Split(ansi.Strip(s.String()), "\n")
	for i := range out {
		out[i] = strings.TrimRight(out[i], " ")
	}
	return out
}

func same(t *testing.T, got []string, want ...string) {
	t.Helper()
	if a, b := strings.Join(got, "\n"), strings.Join(want, "\n"); a != b {
		t.Errorf("drawn:\n%s\nwant:\n%s", a, b)
	}
}

func TestATableIsDrawnWithItsHeadItsHeadingAndItsCursor(t *testing.T) {
	same(t, lines(jugs(), Cursor{Row: 2, Col: 1}, 30, 5, true, nil),
		"  jug    share note",
		" base",
		"  pot       38 white",
		"► fern      62 green leaves",
		"  all      100",
	)
}

func TestWithoutTheFocusNoCellIsMarked(t *testing.T) {
	for _, l := range lines(jugs(), Cursor{Row: 2, Col: 1}, 30, 5, false, nil) {
		if strings.Contains(l, "►") {
			t.Errorf("%q is marked", l)
		}
	}
}

func TestArrowsSayWhereThereIsMore(t *testing.T) {
	g := jugs()
	for _, c := range []struct {
		at    Cursor
		w, h  int
		want  []string
		means string
	}{
		{Cursor{Row: 1}, 30, 3, []string{"  jug    share note", " base", "► pot       38 white"}, "the row of the cursor has its own mark"},
		{Cursor{Row: 3}, 30, 3, []string{"  jug    share note", "↑ fern      62 green leaves", "  all      100"}, "above"},
		{Cursor{Row: 2}, 16, 5, []string{"  jug    share ›", " base", "  pot       38", "► fern      62", "  all      100"}, "to the right"},
	} {
		got := lines(g, g.Scroll(c.at, c.w, c.h), c.w, c.h, c.at.Row < 3, nil)
		if strings.Join(got, "\n") != strings.Join(c.want, "\n") {
			t.Errorf("%s:\n%s\nwant:\n%s", c.means, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
	if got := lines(g, Cursor{}, 30, 3, false, nil); got[2] != "↓ pot       38 white" {
		t.Errorf("below: %q", got[2])
	}
	side := g.Scroll(Cursor{Row: 1, Col: 2}, 16, 5)
	if got := lines(g, side, 16, 5, false, nil); !strings.HasPrefix(got[0], "‹ jug    note") || !strings.Contains(got[2], "pot    whi…") {
		t.Errorf("scrolled sideways the column that stays is gone:\n%s", strings.Join(got, "\n"))
	}
}

func TestWhatIsTypedStandsInItsCellWithTheReasonBelow(t *testing.T) {
	typed := &Typed{Entry: entry.New("140"), Refused: "too much"}
	got := lines(jugs(), Cursor{Row: 1, Col: 1}, 30, 5, true, typed)
	if got[2] != "► pot    140   white" || !strings.Contains(got[3], " × too much") {
		t.Errorf("drawn:\n%s", strings.Join(got, "\n"))
	}
	got = lines(jugs(), Cursor{Row: 2, Col: 1}, 30, 4, true, typed)
	if !strings.Contains(got[2], "× too much") || got[3] != "► fern   140   green leaves" {
		t.Errorf("on the last line the reason stands above:\n%s", strings.Join(got, "\n"))
	}
	long := &Typed{Entry: entry.New("a name longer than its cell")}
	if got := lines(jugs(), Cursor{Row: 1, Col: 0}, 30, 5, true, long); got[2] != "► a name longer than its cell" {
		t.Errorf("a narrow cell does not open to the right: %q", got[2])
	}
	if at, ok := jugs().Caret(Cursor{Row: 1, Col: 1}, 30, 5, typed); !ok || at != image.Pt(9+3, 2) {
		t.Errorf("the terminal's cursor is at %v", at)
	}
	if at, ok := jugs().Caret(Cursor{Row: 2, Col: 1}, 30, 5, nil); !ok || at != image.Pt(9, 3) {
		t.Errorf("with nothing typed it is at %v", at)
	}
}

func TestASwatchStandsBeforeItsText(t *testing.T) {
	g := Grid{Columns: []Column{{W: 10}, {W: 6}}, Rows: []Row{{Cells: []Cell{
		{Kind: Choice, Text: "sky", Swatch: screen.RGB(1, 2, 3)}, {Kind: Shown, Swatches: []screen.Colour{screen.RGB(4, 5, 6), screen.RGB(7, 8, 9)}},
	}}}}
	s := screen.New(20, 1)
	g.Draw(s.Area(), Cursor{}, look.New(true), false, nil)
	text := s.String()
	for _, want := range []string{"48;2;1;2;3m  ", "48;2;4;5;6m  ", "48;2;7;8;9m  "} {
		if !strings.Contains(text, want) {
			t.Errorf("no two cells of %q in %q", want, text)
		}
	}
	if got := ansi.Strip(text); !strings.HasPrefix(got, "     sky") {
		t.Errorf("the name stands in %q", got)
	}
}

func TestAnEmptyGridSaysWhatItIsFor(t *testing.T) {
	g := Grid{Columns: []Column{{Head: "jug", W: 5}}, Empty: "nothing yet: a adds an oil"}
	same(t, lines(g, Cursor{}, 18, 3, true, nil), "  nothing yet: a", "  adds an oil", "")
	if got := g.Lines(); got != 2 {
		t.Errorf("it asks for %d lines, want its head and one", got)
	}
	if _, ok := g.On(Cursor{}); ok {
		t.Error("a cell is under the cursor")
	}
	if got := jugs().Lines(); got != 5 {
		t.Errorf("a grid of four rows and a head asks for %d lines", got)
	}
}

func TestTheCursorPassesOverWhatCannotHoldIt(t *testing.T) {
	g := jugs()
	for _, c := range []struct {
		what string
		got  Cursor
		row  int
		col  int
	}{
		{"settled on the heading", g.Settle(Cursor{}), 1, 0},
		{"settled on the sums", g.Settle(Cursor{Row: 3, Col: 1}), 2, 1},
		{"settled past the end", g.Settle(Cursor{Row: 99, Col: 99}), 2, 2},
		{"up from the first row", g.Down(Cursor{Row: 1, Col: 1}, -1), 1, 1},
		{"down from the last row", g.Down(Cursor{Row: 2, Col: 1}, 5), 2, 1},
		{"left from the first cell", g.Right(Cursor{Row: 1}, -1), 1, 0},
		{"right to the next cell", g.Right(Cursor{Row: 1}, 1), 1, 1},
		{"the next cell to change", g.NextEdit(Cursor{Row: 1}), 1, 1},
		{"the next one is on the next row", g.NextEdit(Cursor{Row: 1, Col: 1}), 2, 0},
		{"after the last it stays", g.NextEdit(Cursor{Row: 2, Col: 1}), 2, 1},
		{"sought by its item", g.Seek(Cursor{Row: 1, Col: 1}, 1, -1), 2, 1},
		{"an item that is not there", g.Seek(Cursor{Row: 1, Col: 1}, 9, -1), 1, 1},
	} {
		if c.got.Row != c.row || c.got.Col != c.col {
			t.Errorf("%s: row %d, column %d, want %d, %d", c.what, c.got.Row, c.got.Col, c.row, c.col)
		}
	}
	g.Rows[1].Sub, g.Rows[2].Sub, g.Rows[2].Item = 0, 1, 0
	if got := g.Seek(Cursor{}, 0, 1); got.Row != 2 {
		t.Errorf("the second part of an item is on row %d", got.Row)
	}
}

func TestAClickTakesTheNearestCellOfItsLine(t *testing.T) {
	g := jugs()
	for at, want := range map[image.Point][3]int{
		{X: 10, Y: 2}: {1, 1, 1}, {X: 0, Y: 3}: {1, 2, 0}, {X: 29, Y: 3}: {1, 2, 2}, {X: 8, Y: 2}: {1, 1, 0},
		{X: 3, Y: 0}: {0, 0, 0}, {X: 3, Y: 1}: {0, 0, 0}, {X: 3, Y: 4}: {0, 0, 0}, {X: 3, Y: 9}: {0, 0, 0},
	} {
		c, ok := g.Hit(Cursor{}, 30, 12, at)
		if ok != (want[0] == 1) || c.Row != want[1] || c.Col != want[2] {
			t.Errorf("a click at %v gives row %d, column %d, %v; want %v", at, c.Row, c.Col, ok, want)
		}
	}
}

func TestAClickOnTheHeadHitsNoRowThatIsScrolledAway(t *testing.T) {
	scrolled := Cursor{Row: 2, Top: 2}
	if c, ok := jugs().Hit(scrolled, 30, 3, image.Pt(3, 0)); ok || c != scrolled {
		t.Errorf("a click on the head gives %+v", c)
	}
	if c, ok := jugs().Hit(scrolled, 30, 3, image.Pt(3, 1)); !ok || c.Row != 2 {
		t.Errorf("a click on the first line shown gives %+v", c)
	}
}

func TestWhatIsCopiedIsWhatCanBeTyped(t *testing.T) {
	for want, c := range map[string]Cell{"38.00": {Text: "38 %", Plain: "38.00"}, "olive oil": {Text: "olive oil"}, "": {}} {
		if got := c.Copy(); got != want {
			t.Errorf("copied %q, want %q", got, want)
		}
	}
	for kind, want := range map[Kind]bool{Blank: false, Shown: false, Number: true, Words: true, Choice: true, Tick: true} {
		if (Cell{Kind: kind}).Edits() != want {
			t.Errorf("kind %d can be changed: %v", kind, !want)
		}
	}
}

func TestTheCursorLeavesASwatchAsItIs(t *testing.T) {
	blue, _ := screen.Hex("#0000ff")
	g := Grid{Columns: []Column{{W: 12}}, Rows: []Row{{Cells: []Cell{{Kind: Words, Text: "pot", Mark: "~", Swatch: blue}}}}}
	s := screen.New(16, 1)
	g.Draw(s.Area(), Cursor{}, look.New(true), true, nil)
	if got := s.String(); strings.Count(got, "48;2;0;0;255") != 1 || strings.Contains(strings.SplitN(got, "~", 2)[0], ";7;48") {
		t.Errorf("the swatch is drawn %q", got)
	}
	same(t, lines(g, Cursor{}, 16, 1, true, nil), "►   ~pot")
}
