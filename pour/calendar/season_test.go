package calendar_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/calendar"
	"pourbench/pour/season"
)

// winter is a board of a market with labelling, an order, and two pours that are planned, one on a day.
func winter(t *testing.T) season.Board {
	t.Helper()
	market := season.Date{Name: "Winter market", Day: on(t, "2026-12-19"), Kind: season.Market, Audience: "tourists", LabelDays: 4}
	order := season.Date{Name: "Inn", Day: on(t, "2027-01-10"), Kind: season.Order}
	return season.Board{
		Today: on(t, "2026-10-20"),
		Dates: []season.DateRow{
			{Date: market, Label: on(t, "2026-12-15"), Covers: []season.Cover{{Design: "Alpine Meadow", Wanted: 24, Short: 4}}},
			{Date: order, Label: order.Day},
		},
		Rows: []season.Row{
			{
				Key: "meadow.toml for Winter market", Name: "Alpine Meadow", Plan: "meadow.toml", For: market.Name, Placed: true, HasDate: true,
				Pour: on(t, "2026-11-03"), Label: on(t, "2026-12-15"),
				By:     season.Band{Early: on(t, "2026-11-18"), Middle: on(t, "2026-11-10"), Late: on(t, "2026-11-03")},
				Embeds: []season.EmbedBy{{Name: "star", By: on(t, "2026-10-29")}},
			},
			{Key: "snow.toml for ", Name: "First Snow", Plan: "snow.toml", Placed: true, Fixed: true, Pour: on(t, "2026-11-20")},
			{Key: "gone.toml for Inn", Name: "Gone", Plan: "gone.toml", For: "Inn", Placed: true, Pour: on(t, "2026-11-20"), Fault: errors.New("it cannot be read")},
			{Key: "2026-10-01-a", ID: "2026-10-01-a", Name: "Poured", Placed: true, Pour: on(t, "2026-10-01")},
		},
	}
}

func TestASeasonIsInTheCalendar(t *testing.T) {
	const want = `date 2026-12-19/2026-12-20 -15h0m0s "Market: Winter market"
label 2026-12-15/2026-12-16 9h0m0s "Label and pack for: Winter market"
date 2027-01-10/2027-01-11 -15h0m0s "Order: Inn"
pour-by 2026-11-03/2026-11-04 9h0m0s "Pour by: Alpine Meadow for Winter market"
embed-1 2026-10-29/2026-10-30 9h0m0s "Make embeds by: star, Alpine Meadow for Winter market"
pour 2026-11-20/2026-11-21 -15h0m0s "Pour: First Snow"
`
	entries := calendar.OfSeason(winter(t), at)
	if d := cmp.Diff(want, told(entries)); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff("For tourists\n24 of Alpine Meadow, 4 short", entries[0].Words); d != "" {
		t.Error(d)
	}
	if words := entries[3].Words; !strings.Contains(words, "by 3 Nov to be sure, by 10 Nov by the middle of the forecast, by 18 Nov with luck") || !strings.Contains(words, "first day of labelling, 15 Dec") {
		t.Error(words)
	}
	for _, e := range entries {
		if !calendar.OfTheSeason(e.Batch) || !e.Revised.Equal(at) {
			t.Errorf("%+v", e)
		}
	}
	var out bytes.Buffer
	if err := calendar.Write(&out, entries); err != nil {
		t.Error(err)
	}
	// The day to pour by and that of the embeds speak up a week before too, at nine: seven days less nine hours are six days and fifteen hours.
	if n := strings.Count(out.String(), "TRIGGER:-P6DT15H"); n != 2 {
		t.Errorf("%d reminders a week before, want 2:\n%s", n, out.String())
	}
}

// As days go by, the day by which to pour is the next that is left, until none is.
func TestTheDayToPourByIsTheNextThatIsLeft(t *testing.T) {
	for today, want := range map[string]string{"2026-11-03": "2026-11-03", "2026-11-04": "2026-11-10", "2026-11-11": "2026-11-18", "2026-11-19": ""} {
		b, got := winter(t), ""
		b.Today = on(t, today)
		for _, e := range calendar.OfSeason(b, at) {
			if e.Kind == "pour-by" {
				got = e.Start.Format(time.DateOnly)
			}
		}
		if got != want {
			t.Errorf("on %s it is %q, want %q", today, got, want)
		}
	}
}
