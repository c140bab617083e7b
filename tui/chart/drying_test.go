package chart

import (
	"math"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/drying"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// straight is a plot of straight lines, so that arithmetic by hand says where everything lies: a bar of 128 g that loses 1 g a day, its band
// growing by 0.1 g a day, weighed on days 0, 7 and 14, today day 21, ready on day 24, 22 to 27.
func straight() drying.Plot {
	cut, err := day.Parse("2026-12-06")
	if err != nil {
		panic(err)
	}
	p := drying.Plot{
		Cut: cut, Points: []drying.Point{{Day: 0, G: 128}, {Day: 7, G: 121}, {Day: 14, G: 114}}, Today: pour.Know(21),
		Ready: drying.Ready{Known: true, Day: 24, Low: 22, High: 27},
	}
	for d := 0.0; d <= 28; d++ {
		p.Curve = append(p.Curve, drying.Span{Day: d, G: 128 - d, LowG: 128 - 1.1*d, HighG: 128 - 0.9*d})
	}
	return p
}

// drawn is the drawing as rows of text without styles.
func drawn(w, h int, l look.Look, p drying.Plot) []string {
	s := screen.New(w, h)
	Drying(s.Area(), l, p)
	return strings.Split(ansi.Strip(s.String()), "\n")
}

// sign is what stands in a cell.
func at(rows []string, x, y int) string {
	r := []rune(rows[y])
	if x >= len(r) {
		return " "
	}
	return string(r[x])
}

func TestEverythingLiesWhereArithmeticPutsIt(t *testing.T) {
	const w, h = 60, 16
	rows := drawn(w, h, look.Own(), straight())
	left := 4 // "125" and the axis
	fieldW, fieldH := w-left, h-4
	low, high := 97.2-0.04*30.8, 128+0.04*30.8 // the band ends at 128 - 30.8 g on day 28, and 4 % stay free on either side
	cell := func(days, g float64) (x, y int) {
		dotX := math.Round(days / 28 * float64(2*fieldW-1))
		dotY := math.Round((high - g) / (high - low) * float64(4*fieldH-1))
		return left + int(dotX)/2, 1 + int(dotY)/4
	}
	for _, c := range []struct {
		name    string
		days, g float64
		want    string
	}{
		{"the first weighing", 0, 128, "●"},
		{"the second weighing", 7, 121, "●"},
		{"the third weighing", 14, 114, "●"},
		{"today, high up", 21, 128, "┊"},
		{"the ready day, high up", 24, 128, "│"},
		{"the upper part of the band", 27, 128 - 0.905*27, "░"},
		{"the lower end of the band", 28, 128 - 1.099*28, "░"},
		{"over the band", 18, 122, " "},
		{"under the band", 18, 100, " "},
	} {
		x, y := cell(c.days, c.g)
		if got := at(rows, x, y); got != c.want {
			t.Errorf("%s: %q in column %d, row %d, want %q\n%s", c.name, got, x, y, c.want, strings.Join(rows, "\n"))
		}
	}
	for _, d := range []float64{3, 10, 18, 25} {
		x, y := cell(d, 128-d)
		if got := []rune(at(rows, x, y))[0]; got < 0x2800 || got > 0x28ff {
			t.Errorf("the curve on day %v: %q in column %d, row %d", d, string(got), x, y)
		}
	}
	for _, c := range []struct {
		days float64
		want string
	}{{21, "T"}, {22, "├"}, {24, "R"}, {27, "┤"}} {
		x, _ := cell(c.days, 100)
		if got := at(rows, x, h-1); got != c.want {
			t.Errorf("under day %v: %q, want %q", c.days, got, c.want)
		}
	}
	for _, d := range []float64{0, 7, 14, 21, 28} {
		if x, _ := cell(d, 100); at(rows, x, h-3) != "┬" {
			t.Errorf("no tick at day %v", d)
		}
	}
	for _, g := range []float64{100, 110, 120} {
		if _, y := cell(0, g); at(rows, left-1, y) != "┤" || !strings.HasPrefix(rows[y], pour.Show{}.Number(g, 0)) {
			t.Errorf("no tick at %v g: %q", g, rows[y])
		}
	}
}

func TestFramesOfThePlot(t *testing.T) {
	var b strings.Builder
	ounces := straight()
	ounces.Show.Mass = pour.MassOunce
	young := drying.Plot{Cut: straight().Cut, Points: straight().Points[:1], Today: pour.Know(0)}
	for _, c := range []struct {
		w, h int
		p    drying.Plot
	}{{60, 12, straight()}, {100, 20, straight()}, {30, 7, straight()}, {27, 6, straight()}, {8, 2, straight()}, {60, 12, ounces}, {60, 12, young}, {40, 3, drying.Plot{}}} {
		b.WriteString(strings.Join(drawn(c.w, c.h, look.Own(), c.p), "\n") + "\n\n")
	}
	golden.RequireEqual(t, b.String())
}

// Colour only adds: with it and without it the same signs stand in the same cells, and each role has a sign of its own.
func TestColourOnlyAddsToTheSigns(t *testing.T) {
	plain := drawn(60, 12, look.Own(), straight())
	for name, l := range map[string]look.Look{"dark": look.New(true), "light": look.New(false), "sixteen": look.Sixteen(true)} {
		if got := drawn(60, 12, l, straight()); strings.Join(got, "\n") != strings.Join(plain, "\n") {
			t.Errorf("%s: other signs", name)
		}
	}
	for _, s := range []string{"T today", "R ready", "● weighed", "─ fitted", "░ 80 %"} {
		if !strings.Contains(plain[0], s) {
			t.Errorf("the meanings lack %q: %q", s, plain[0])
		}
	}
}

func TestAnyPlotFitsAnyPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(label string) float64 {
			return rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 200), rapid.SampledFrom([]float64{math.NaN(), math.Inf(-1), 0, 125})).Draw(t, label)
		}
		p := drying.Plot{
			Today: pour.Figure{V: number("today"), Known: rapid.Bool().Draw(t, "known")},
			Ready: drying.Ready{Known: rapid.Bool().Draw(t, "ready"), Day: number("ready day"), Low: number("low"), High: number("high")},
		}
		for range rapid.IntRange(0, 3).Draw(t, "points") {
			p.Points = append(p.Points, drying.Point{Day: number("day"), G: number("g")})
		}
		for range rapid.IntRange(0, 3).Draw(t, "spans") {
			p.Curve = append(p.Curve, drying.Span{Day: number("day"), G: number("g"), LowG: number("low"), HighG: number("high")})
		}
		w, h := rapid.IntRange(0, 130).Draw(t, "w"), rapid.IntRange(0, 40).Draw(t, "h")
		for _, row := range drawn(w, h, look.Own(), p) {
			if strings.Contains(row, "NaN") || strings.Contains(row, "Inf") || ansi.StringWidth(row) > w {
				t.Fatal(row)
			}
		}
	})
}

func BenchmarkDrying(b *testing.B) {
	s, p, l := screen.New(100, 24), straight(), look.New(true)
	for b.Loop() {
		Drying(s.Area(), l, p)
	}
}
