package grid

import (
	"image"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"pourbench/tui/entry"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// drawn is a grid of random shape with a cursor in it.
func drawn(t *rapid.T) (Grid, Cursor) {
	g := Grid{Frozen: rapid.IntRange(0, 2).Draw(t, "frozen")}
	for range rapid.IntRange(1, 9).Draw(t, "columns") {
		g.Columns = append(g.Columns, Column{Head: rapid.SampledFrom([]string{"", "share %"}).Draw(t, "head"), W: rapid.IntRange(1, 12).Draw(t, "w"), Grow: rapid.IntRange(0, 1).Draw(t, "grow")})
	}
	for range rapid.IntRange(1, 12).Draw(t, "rows") {
		row := Row{Cells: make([]Cell, len(g.Columns))}
		for i := range row.Cells {
			row.Cells[i] = Cell{Kind: rapid.SampledFrom([]Kind{Blank, Shown, Number}).Draw(t, "kind"), Text: rapid.SampledFrom([]string{"", "12.5", "漢字漢字"}).Draw(t, "text")}
		}
		row.Cells[0].Kind = Number
		g.Rows = append(g.Rows, row)
	}
	return g, Cursor{Row: rapid.IntRange(0, 14).Draw(t, "row"), Col: rapid.IntRange(0, 11).Draw(t, "col")}
}

func TestTheCursorAlwaysRestsOnACellAndIsScrolledIntoSight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, c := drawn(t)
		w, h := rapid.IntRange(24, 90).Draw(t, "screen w"), rapid.IntRange(3, 12).Draw(t, "screen h")
		c = g.Settle(c)
		for range 8 {
			switch rapid.IntRange(0, 3).Draw(t, "move") {
			case 0:
				c = g.Down(c, rapid.IntRange(-3, 3).Draw(t, "by"))
			case 1:
				c = g.Right(c, 1)
			case 2:
				c = g.Right(c, -1)
			default:
				c = g.NextEdit(c)
			}
			c = g.Scroll(c, w, h)
			if _, ok := g.On(c); !ok {
				t.Fatalf("the cursor %+v rests on no cell", c)
			}
			if frozenFit(g, w) {
				if _, ok := g.place(c, w, h); !ok {
					t.Fatalf("the cursor %+v is out of sight on %d×%d", c, w, h)
				}
			}
		}
	})
}

// frozenFit says whether the columns that stay leave room for the widest of the others.
func frozenFit(g Grid, w int) bool {
	used, widest := margin, 0
	for i, c := range g.Columns {
		if i < g.Frozen {
			used += c.W + gap
		} else {
			widest = max(widest, c.W)
		}
	}
	return used+widest <= w
}

func TestAHitOnACellGivesThatCell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, c := drawn(t)
		c = g.Scroll(g.Settle(c), 60, 8)
		at, ok := g.place(c, 60, 8)
		if !ok {
			return
		}
		if got, ok := g.Hit(c, 60, 8, image.Pt(at.Min.X, at.Min.Y)); !ok || got != c {
			t.Fatalf("hitting %v gives %+v, want %+v", at, got, c)
		}
	})
}

func TestDrawingStaysInItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, c := drawn(t)
		w, h := rapid.IntRange(1, 60).Draw(t, "screen w"), rapid.IntRange(1, 9).Draw(t, "screen h")
		c = g.Scroll(g.Settle(c), w, h)
		s := screen.New(w, h)
		g.Draw(s.Area(), c, look.New(true), true, &Typed{Entry: entry.New("123456789"), Refused: "too much"})
		for _, l := range strings.Split(s.String(), "\n") {
			if got := ansi.StringWidth(l); got > w {
				t.Fatalf("a line is %d wide on %d", got, w)
			}
		}
	})
}

func TestDownKeepsItsColumnAndSkipsRowsThatHaveNoCellThere(t *testing.T) {
	number := Cell{Kind: Number}
	g := Grid{Columns: make([]Column, 2), Rows: []Row{
		{Cells: []Cell{number, number}}, {Cells: []Cell{{}, number}}, {Cells: []Cell{number, number}},
	}}
	if got := g.Down(Cursor{}, 1); got.Row != 2 || got.Col != 0 {
		t.Errorf("down from the first row gives %+v, want row 2 in the same column", got)
	}
	if got := g.NextEdit(Cursor{Col: 1}); got.Row != 1 || got.Col != 1 {
		t.Errorf("the next cell to change is %+v, want the one on row 1", got)
	}
}
