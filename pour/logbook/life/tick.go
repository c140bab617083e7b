package life

import (
	"fmt"
	"strings"

	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// Ticks are the lines of a market's check list that were ticked for the batch, by their ids: the last event of each that stands.
func (b Batch) Ticks(market string) map[string]logbook.Event {
	out := map[string]logbook.Event{}
	for _, e := range b.Of(logbook.Ticked) {
		if e.Life.Market == market {
			out[e.What] = e
		}
	}
	return out
}

// TickedText is what was said with a tick, and on which day.
func TickedText(e logbook.Event) string {
	text := "ticked on " + e.Day()
	if words := strings.Join(strings.Fields(e.Text), " "); words != "" {
		text += ": " + words
	}
	return text
}

// ticked refuses a tick of a market that the shelf does not list, or of a line that its check list does not have.
func (c *check) ticked() error {
	if c.e.Kind != logbook.Ticked {
		return nil
	}
	m, ok := c.shelf.Market(c.e.Life.Market)
	if !ok {
		var ids []string
		for _, m := range c.shelf.Markets {
			ids = append(ids, m.ID)
		}
		return strict.NoWord("market", c.e.Life.Market, ids)
	}
	var rows []string
	for _, r := range m.Rows {
		if r.ID == c.e.What {
			return nil
		}
		rows = append(rows, r.ID)
	}
	return fmt.Errorf("of the check list of %s: %w", m.Name, strict.NoWord("row", c.e.What, rows))
}
