package batches

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// said is an event of a batch's life.
func said(id string, kind logbook.EventKind, on string, change func(*logbook.Event)) logbook.Event {
	at, _ := time.Parse(time.DateOnly, on)
	e := logbook.Event{ID: id, Kind: kind, Wall: at.Add(12 * time.Hour), Life: logbook.Life{Day: on}}
	if change != nil {
		change(&e)
	}
	return e
}

// shelf is a handful of batches made by hand, one in each state that counts; it is 20 December 2026.
func handful(t testing.TB) []life.Batch {
	t.Helper()
	cut := on(t, "2026-11-08")
	due := func(kind life.DueKind, d, text string) life.Due {
		at := on(t, d)
		return life.Due{Kind: kind, Day: at, Early: at, Late: at, Text: text}
	}
	five := []string{"#f2e9d8", "#5a4fa0", "#b8453a", "#d8a93a", "#4f7d4a"}
	return []life.Batch{
		{
			ID: "2026-11-07-alpine-meadow", Name: "Alpine Meadow", Poured: on(t, "2026-11-07"), State: life.Curing, Since: cut, Swatches: five, CutDay: &cut,
			Due:  []life.Due{due(life.DueWeigh, "2026-12-22", "weigh in 2 days"), due(life.DueReady, "2026-12-29", "ready 29 Dec, 24 Dec to 6 Jan")},
			Bars: life.Account{Known: true, Bars: 10, Sold: 3, Given: 1, Kept: 1, Left: 5},
			Events: []logbook.Event{
				said("e4", logbook.Unmoulded, "2026-11-08", func(e *logbook.Event) { e.What = "firm" }),
				said("e5", logbook.Sliced, "2026-11-08", func(e *logbook.Event) { e.Life.Count, e.Life.CrumbsG = 10, 6 }),
				said("e6", logbook.Sniffed, "2026-11-08", func(e *logbook.Event) { e.Value, e.Text = 3, "the lime is loud" }),
				said("e7", logbook.WeighIn, "2026-11-15", func(e *logbook.Event) {
					e.Life.Bars, e.Life.MassesG = []int{2, 5, 8}, []float64{121.5, 122, 120.4}
				}),
				said("e8", logbook.Looked, "2026-12-06", func(e *logbook.Event) { e.What, e.Value = "ash", 1 }),
				said("e9", logbook.Photo, "2026-12-06", func(e *logbook.Event) { e.Life.Path = "photos/meadow.png" }),
				said("e10", logbook.Sold, "2026-12-12", func(e *logbook.Event) {
					e.What, e.Life.Count, e.Life.Price, e.Life.Currency, e.Life.Audience = "market", 3, "7.50", "EUR", "bold"
				}),
			},
		},
		{
			ID: "2026-12-19-dusk", Name: "Dusk", Poured: on(t, "2026-12-19"), State: life.InMould, Since: on(t, "2026-12-19"), Swatches: five[:3],
			Due: []life.Due{due(life.DueUnmould, "2026-12-20", "unmould today")},
		},
		{
			ID: "2026-09-01-harbour", Name: "Harbour fog with very many words in its name", Poured: on(t, "2026-09-01"), State: life.Ready, Since: on(t, "2026-10-20"), Swatches: []string{"#e8e4da", "", "#808890"},
			Bars: life.Account{Known: true, Bars: 12, Sold: 2, Missing: 1, Left: 9},
		},
		{ID: "2026-08-02-marigold", Name: "Marigold & lime", Poured: on(t, "2026-08-02"), State: life.Failed, Since: on(t, "2026-08-04"), Swatches: five[1:], Events: []logbook.Event{
			said("e4", logbook.Failed, "2026-08-04", func(e *logbook.Event) { e.Text = "seized and crumbles" }),
		}},
		{ID: "2026-05-02-zebra", Name: "Zebra", Poured: on(t, "2026-05-02"), State: life.SoldOut, Since: on(t, "2026-11-30"), Swatches: []string{"#ffffff", "#222222"}, Bars: life.Account{Known: true, Bars: 8, Sold: 8}},
		{ID: "2026-04-02-torn", Name: "2026-04-02-torn", Poured: on(t, "2026-04-02"), Fault: errors.New(`2026-04-02-torn.pour.toml:7:1: event[2].kind: "soled" is none; did you mean "sold"?`)},
	}
}

// page opens the page on batches that were made by hand.
func page(t testing.TB, list []life.Batch) *shop {
	t.Helper()
	return opened(t, Options{Folder: "pours", Read: func() ([]life.Batch, error) { return list, nil }, Log: func(string, logbook.Event) (life.Logged, error) {
		return life.Logged{}, errors.New("it is made by hand")
	}})
}

// thousand is as many batches, with so many events each.
func thousand(t testing.TB, events int) []life.Batch {
	t.Helper()
	base := handful(t)[0]
	out := make([]life.Batch, 1000)
	for i := range out {
		b := base
		b.ID, b.Name = fmt.Sprintf("2026-11-07-alpine-meadow-%d", i+1), fmt.Sprintf("%s %d", strings.Fields("Alpine Dusk Harbour Marigold Zebra")[i%5], i+1)
		b.Poured -= day.Day(i)
		b.State = life.States()[i%len(life.States())]
		b.Due = []life.Due{{Kind: life.DueWeigh, Day: b.Poured + 60, Text: fmt.Sprintf("weigh in %d days", i)}}
		b.Events = nil
		for k := range events {
			e := base.Events[k%len(base.Events)]
			e.ID = fmt.Sprintf("e%d", k)
			b.Events = append(b.Events, e)
		}
		out[i] = b
	}
	return out
}
