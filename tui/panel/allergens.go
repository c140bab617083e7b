package panel

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// The columns of the allergens.
const (
	allergenName = iota
	allergenPercent
	allergenBar
	allergenStands
	allergenFrom
)

// allergens is what the scents bring of the substances a market wants named, against the threshold from which it does.
func allergens() Panel {
	return Panel{ID: "allergens", Title: "Allergens of the scents", cells: keys.Words, least: atMost(leastAllergens), Grid: (*Facts).allergenGrid, change: changeMarket}
}

func (f *Facts) allergenGrid() grid.Grid {
	l := f.labelled()
	g := grid.Grid{Empty: f.noFigures(l), Columns: []grid.Column{
		allergenName:    {Head: "allergen", W: 22, Grow: 2},
		allergenPercent: {Head: "cured %", W: 8, Right: true},
		allergenBar:     {Head: "threshold", W: barHalf*2 + 1},
		allergenStands:  {W: 10},
		allergenFrom:    {Head: "from", W: 12, Grow: 3},
	}}
	if g.Empty != "" {
		return g
	}
	m := f.market(l)
	if len(l.Allergens) == 0 {
		g.Empty = "no scent here says what allergens are in it: its supplier's sheet does"
		return g
	}
	g.Rows = append(g.Rows, heading(f.thresholdSays(m)))
	for i := range l.Allergens {
		g.Rows = append(g.Rows, f.allergenRow(&l.Allergens[i], m, i))
	}
	return g
}

// thresholdSays is which allergens a market wants named, and from where on.
func (f *Facts) thresholdSays(m label.Market) string {
	named := map[string]string{label.AllergensLong: "long list", label.AllergensOld: "old list of 24"}[m.Allergens]
	if named == "" {
		return "this market names none by itself; " + currentText
	}
	return "over " + f.Show.Plain(m.OverPercent, "") + " % is named, " + named + "; " + currentText
}

func (f *Facts) allergenRow(a *label.Found, m label.Market, i int) grid.Row {
	stands, style := f.allergenStands(a)
	hint := a.Name + ": " + stands + "; " + f.sources(a)
	percent := f.shown(f.Show.Number(a.CuredPercent, allergenPlaces), at("label.allergens", i)+"cured_percent", "percent of the cured bar, base and icing together; "+hint)
	cells := f.awaited([]grid.Cell{
		allergenName:    {Kind: grid.Shown, Text: a.Name, Hint: hint},
		allergenPercent: percent,
		allergenBar:     {Text: thresholdBar(a.CuredPercent, m.OverPercent)},
		allergenStands:  {Text: stands},
		allergenFrom:    f.label(f.sources(a)),
	})
	cells[allergenStands].Style = style
	if m.Allergens == label.AllergensNone {
		cells[allergenBar].Text = ""
	}
	return grid.Row{Item: i, Sub: -1, Cells: cells}
}

// allergenPlaces is as fine as the thresholds of the law are told from what is beside them.
const allergenPlaces = 4

// allergenStands says in a word how an allergen stands.
func (f *Facts) allergenStands(a *label.Found) (string, screen.Style) {
	switch {
	case a.Prohibited:
		return "prohibited", f.Look.Stop
	case a.Over:
		return "over cap", f.Look.Caution
	case len(a.Either) > 0:
		return "ask which", f.Look.Caution
	case a.Unlisted:
		return "no list", f.Look.Quiet
	case a.Named:
		return "named", f.Look.Accent
	}
	return "not named", f.Look.Quiet
}

// sources is which scents bring an allergen, the most first, and how much of it.
func (f *Facts) sources(a *label.Found) string {
	var out []string
	for _, t := range a.From {
		v, _ := f.Show.ToUnit(t.G, pour.UnitGram)
		out = append(out, t.Scent+" "+f.Show.Number(v, allergenPlaces))
	}
	text := strings.Join(out, ", ")
	if text != "" {
		text += " " + f.grams()
	}
	if len(a.Either) > 0 {
		text = fmt.Sprintf("its number stands for %s: ask the supplier which; %s", strings.Join(a.Either, " and for "), text)
	}
	return text
}

// A bar against a threshold has so many cells on each side of it; perTenfold of them are ten times as much, so that a trace and much of
// something both stand on it.
const (
	barHalf    = 6
	perTenfold = 3
)

// thresholdBar draws how much there is against a threshold, which stands in its middle, on a scale of tenfolds. Nothing in it is told in plain lines,
// where figure and word say it.
func thresholdBar(percent, threshold float64) string {
	full := 0
	if percent > 0 && threshold > 0 {
		full = min(max(int(math.Floor(barHalf+perTenfold*math.Log10(percent/threshold))), 0), barHalf*2)
		if percent > threshold { // over it is never drawn as under it
			full = max(full, barHalf+1)
		} else {
			full = min(full, barHalf)
		}
	}
	row := []rune(strings.Repeat("█", full) + strings.Repeat("░", barHalf*2-full))
	return string(row[:barHalf]) + "│" + string(row[barHalf:])
}
