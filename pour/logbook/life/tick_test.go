package life_test

import (
	"strings"
	"testing"

	"pourbench/pour/label"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// twoMarkets are markets whose check lists share the name of a line.
func twoMarkets() []label.Market {
	return []label.Market{
		{ID: "here", Name: "Here", Rows: []label.Row{{ID: "notified"}, {ID: "maker"}}},
		{ID: "there", Name: "There", Rows: []label.Row{{ID: "notified"}}},
	}
}

func tick(market, row, words string) logbook.Event {
	return logbook.Event{Kind: logbook.Ticked, What: row, Text: words, Life: logbook.Life{Market: market}}
}

func TestALineIsTickedForOneMarketUntilItIsTakenBack(t *testing.T) {
	b := newBench(t)
	b.shelf.Markets = twoMarkets()
	b.logs(at(12, 10), tick("here", "notified", "first"))
	last := b.logs(at(12, 11), tick("here", "notified", "told on the 11th"))
	got := b.on(date(12, 12))
	if ticks := got.Ticks("here"); len(ticks) != 1 || ticks["notified"].Text != "told on the 11th" {
		t.Errorf("ticked are %v", ticks)
	}
	if ticks := got.Ticks("there"); len(ticks) != 0 {
		t.Errorf("a tick counts in another market: %v", ticks)
	}
	if got.State != life.InMould {
		t.Errorf("a tick made it %s", got.State)
	}
	if text := last.Tell(b.plan.Show); text != "ticked notified for here, told on the 11th, on 2026-12-11" {
		t.Errorf("it is told as %q", text)
	}
	for _, e := range got.Of(logbook.Ticked) {
		b.logs(at(12, 13), logbook.Event{Kind: logbook.TakenBack, What: e.ID})
	}
	if ticks := b.on(date(12, 14)).Ticks("here"); len(ticks) != 0 {
		t.Errorf("what was taken back is ticked: %v", ticks)
	}
}

func TestALineThatNoCheckListHasIsNotTicked(t *testing.T) {
	b := newBench(t)
	b.shelf.Markets = twoMarkets()
	for want, e := range map[string]logbook.Event{
		`did you mean "here"`:                                    tick("hers", "maker", ""),
		"of the check list of There: row":                        tick("there", "maker", ""),
		"row is missing":                                         tick("here", "", ""),
		"market is missing":                                      tick("", "maker", ""),
		"2026-12-04 is before the pour":                          {Kind: logbook.Ticked, What: "maker", Life: logbook.Life{Market: "here", Day: "2026-12-04"}},
		"is not a word this key knows; write one of here, there": tick("nowhereatall", "maker", ""),
	} {
		if err := b.refuses(at(12, 10), e); !strings.Contains(err, want) {
			t.Errorf("it says %q, want %q in it", err, want)
		}
	}
}
