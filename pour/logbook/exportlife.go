package logbook

import (
	"fmt"
	"strconv"
	"strings"

	"pourbench/pour/plain"
)

// lifeColumns are the columns of a batch's life in the CSV export. Lists are separated by blanks.
func lifeColumns() []string {
	return []string{
		"id", "corrects", "day", "bars", "masses_g", "crumbs_g", "count", "seconds", "price", "currency", "audience", "scent", "colour", "path", "market",
	}
}

// lifeCells are an event's cells in those columns. A number that the event does not carry is empty, never 0.
func (e Event) lifeCells() []string {
	l, j := e.Life, e.lifeJSON()
	bars := make([]string, len(l.Bars))
	for i, n := range l.Bars {
		bars[i] = strconv.Itoa(n)
	}
	masses := make([]string, len(l.MassesG))
	for i, g := range l.MassesG {
		masses[i] = strconv.FormatFloat(g, 'f', -1, 64)
	}
	cells := []string{e.ID, e.Corrects, l.Day, strings.Join(bars, " "), strings.Join(masses, " "), cell(j.CrumbsG), cell(j.Count), cell(j.Seconds)}
	for _, text := range []string{l.Price, l.Currency, l.Audience, l.Scent, l.Colour, l.Path, l.Market} {
		cells = append(cells, plain.Cell(text))
	}
	return cells
}

func cell[T any](v *T) string {
	if v == nil {
		return ""
	}
	return fmt.Sprint(*v)
}

// lifeJSON is what a batch's life adds to an event of the JSON export; null where there is nothing.
type lifeJSON struct {
	ID       string    `json:"id"`
	Corrects *string   `json:"corrects"`
	Day      *string   `json:"day"`
	Bars     []int     `json:"bars"`
	MassesG  []float64 `json:"masses_g"`
	CrumbsG  *float64  `json:"crumbs_g"`
	Count    *int      `json:"count"`
	Seconds  *int      `json:"seconds"`
	Price    *string   `json:"price"` // a decimal number, as it was typed
	Currency *string   `json:"currency"`
	Audience *string   `json:"audience"`
	Scent    *string   `json:"scent"`
	Colour   *string   `json:"colour"`
	Path     *string   `json:"path"`
	Market   *string   `json:"market"`
}

func (e Event) lifeJSON() lifeJSON {
	l := e.Life
	out := lifeJSON{
		ID: e.ID, Corrects: orNull(e.Corrects), Bars: l.Bars, MassesG: l.MassesG, Price: orNull(l.Price), Currency: orNull(l.Currency),
		Audience: orNull(l.Audience), Scent: orNull(l.Scent), Colour: orNull(l.Colour), Path: orNull(l.Path), Market: orNull(l.Market), Day: orNull(l.Day),
	}
	if e.Kind == Sliced {
		out.CrumbsG, out.Seconds = &l.CrumbsG, &l.Seconds
	}
	if e.Kind.counts() || l.Count > 0 {
		out.Count = &l.Count
	}
	return out
}

// counts reports whether an event of that kind carries a number of bars, 0 among them.
func (k EventKind) counts() bool {
	switch k {
	case Lotted, Sold, Given, Kept, Seconds, Counted:
		return true
	}
	return false
}
