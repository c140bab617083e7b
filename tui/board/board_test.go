package board_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
	"pourbench/tui/board"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

func on(s string) day.Day {
	d, err := day.Parse(s)
	if err != nil {
		panic(err)
	}
	return d
}

// autumn is a season in which two pours are planned for a market on one day with one mould, one is too late for an order, and one dries.
func autumn() season.Board {
	loaf := pour.Mould{Shape: pour.ShapeLoaf, LengthMM: 250, WidthMM: 80, HeightMM: 70}
	design := func(name string, early, middle, late int) season.Design {
		return season.Design{Name: name, Mould: loaf, Bars: 10, BarsKnown: true, CutDays: 1, Cure: season.Span{Early: early, Middle: middle, Late: late}}
	}
	meadow := design("Alpine Meadow", 21, 28, 40)
	meadow.Embeds = []season.Embed{{Name: "petals", Days: 14}}
	return season.Of(season.Facts{
		Today: on("2026-10-28"),
		File: season.File{
			House: season.House{RackBars: 25, MostPours: 1, Moulds: []season.Mould{{Name: "loaf 10", Count: 1, Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 70}}},
			Dates: []season.Date{
				{Name: "winter market", Day: on("2026-12-19"), LabelDays: 2, Wants: []season.Want{{Design: "Alpine Meadow", Bars: 12}}},
				{Name: "inn", Day: on("2026-11-20"), Kind: season.Order},
			},
			Pours: []season.Planned{{Plan: "meadow", For: "winter market"}, {Plan: "rose", For: "winter market"}, {Plan: "rose", For: "inn"}},
		},
		Designs:  map[string]season.Design{"meadow": meadow, "rose": design("Rosenholz und Zimt", 20, 27, 40)},
		Standing: []season.Standing{{ID: "2026-10-10-moss", Name: "Moss", State: life.Curing, Poured: on("2026-10-10"), Cut: on("2026-10-11"), Ready: season.Band{Early: on("2026-11-05"), Middle: on("2026-11-09"), Late: on("2026-11-16")}, Bars: life.Account{Known: true, Bars: 11, Left: 11}}},
	})
}

// drawn is the board as rows of text.
func drawn(b season.Board, w, h, row int) []string {
	s := screen.New(w, h)
	board.Draw(s.Area(), b, board.View{Look: look.New(true), From: board.First(b), Row: row})
	return strings.Split(ansi.Strip(s.String()), "\n")
}

func TestFramesOfTheBoard(t *testing.T) {
	var out strings.Builder
	for _, size := range [][2]int{{120, 33}, {80, 21}, {40, 12}} {
		for _, row := range []int{0, 2, -1} {
			fmt.Fprintf(&out, "%d × %d, row %d\n%s\n", size[0], size[1], row, strings.Join(drawn(autumn(), size[0], size[1], row), "\n"))
		}
	}
	golden.RequireEqual(t, []byte(out.String()))
}

// Counted off a calendar: strips begin on Monday 5 October, 3 cells a week. The market of Saturday 19 December is in the eleventh week, its
// sixth day: cell 10 × 3 + 5 × 3 ÷ 7 = 32; two days before, Thursday, is cell 31.
func TestSignsStandOnTheirDays(t *testing.T) {
	b := autumn()
	rows := drawn(b, 120, 33, -1)
	for i, r := range b.Rows {
		if r.Name != "Alpine Meadow" {
			continue
		}
		const left = 2 + 24 + 1 + 16 + 1 + 17 + 1 // sign and cursor, three columns, a blank after each
		cells := []rune(rows[3+i])[left:]
		if cells[32] != 'M' || cells[31] != 'L' {
			t.Errorf("market and label in %q", string(cells))
		}
	}
}

// Whatever the size and the season, drawing leaves its area alone and never panics.
func TestItDrawsAtAnySize(t *testing.T) {
	b := autumn()
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(0, 200).Draw(t, "w"), rapid.IntRange(0, 60).Draw(t, "h")
		s := screen.New(w, h)
		v := board.View{Look: look.New(true), From: b.Today + day.Day(rapid.IntRange(-4000, 4000).Draw(t, "from")), Row: rapid.IntRange(-1, 9).Draw(t, "row"), Top: rapid.IntRange(0, 9).Draw(t, "top")}
		board.Draw(s.Area(), b, v)
		board.Draw(s.Area(), season.Board{Today: b.Today}, v)
		if board.Rows(h) < 0 || board.Weeks(w) < 0 {
			t.Fatal("less than nothing fits")
		}
	})
}
