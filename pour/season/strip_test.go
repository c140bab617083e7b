package season_test

import (
	"strings"
	"testing"

	"pourbench/pour/season"
)

// Counted off a calendar: 28 September 2026 is a Monday and the last of its month, so that only October is written.
func TestMonthsDoNotRunTogether(t *testing.T) {
	months, days := season.Head(on(t, "2026-09-28"), 6)
	if strings.TrimRight(months, " ") != "   Oct         Nov" || days != "28 5  12 19 26 2  " {
		t.Errorf("%q\n%q", months, days)
	}
	if months, _ := season.Head(on(t, "2026-10-26"), 4); months != "   Nov      " {
		t.Errorf("%q", months)
	}
}

// What stands in one cell is put beside: a pour on Saturday 14 November and its cut on the Sunday, a market on the Saturday and its label on
// the Friday before.
func TestMarksThatShareACellStandBesideEachOther(t *testing.T) {
	f := oneDate(season.Date{Name: "market", Day: on(t, "2026-12-26"), LabelDays: 1, Kind: season.Order}, on(t, "2026-11-01"))
	at := on(t, "2026-11-14")
	f.File.Pours[0].Day = &at
	d := f.Designs["meadow.toml"]
	d.Cure, d.Embeds = season.Span{Early: 14, Middle: 21, Late: 28}, nil
	f.Designs["meadow.toml"] = d
	var got strings.Builder
	for _, m := range season.Of(f).Strip(0, on(t, "2026-11-09"), 7) {
		got.WriteString(m.Sign())
	}
	// Weeks from 9 Nov; P in its third cell, C in the next; dry 29 Nov to 13 Dec; Friday 25 Dec is the cell before that of Saturday 26 Dec.
	if want := "  PC────▒▒▒▒▒▒▒    LO"; got.String() != want {
		t.Errorf("%q, want %q", got.String(), want)
	}
}
