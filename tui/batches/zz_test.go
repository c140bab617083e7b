package batches

import (
	"fmt"
	"os"
	"testing"
	"time"

	"pourbench/pour/logbook"
)

func TestZZ(t *testing.T) {
	dir := os.Getenv("OUT")
	if dir == "" {
		t.Skip()
	}
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(dir)
	must(t, err)
	k := &kept{book: book, shelf: shelf, plan: plan, wall: time.Now()}
	k.shop = &shop{TB: t}
	for i := range 40 {
		id := k.pour(t, fmt.Sprintf("%s %d", []string{"Alpine Meadow", "Dusk", "Harbour fog", "Marigold & lime", "Zebra"}[i%5], i), time.Now().AddDate(0, 0, -i*4))
		if i == 0 {
			continue
		}
		d := func(n int) string { return time.Now().AddDate(0, 0, -i*4+n).Format("2006-01-02") }
		lg := func(e logbook.Event) {
			k.m = New(k.options(t))
			if _, err := k.options(t).Log(id, e); err != nil {
				fmt.Println(err)
			}
		}
		lg(logbook.Event{Kind: logbook.Unmoulded, What: "firm", Life: logbook.Life{Day: d(1)}})
		lg(logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: d(2), Count: 10, CrumbsG: 6}})
		lg(logbook.Event{Kind: logbook.Sniffed, Value: 3, Text: "sweet, the lime is loud", Life: logbook.Life{Day: d(2)}})
		for w := 0; w < i/2 && w < 8; w++ {
			loss := 8 * (1 - 1/(1+float64(w)*0.9))
			lg(logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{Day: d(2 + w*7), Bars: []int{2, 5, 8}, MassesG: []float64{128 - loss, 129 - loss, 127.5 - loss*1.01}}})
		}
		if i > 12 {
			lg(logbook.Event{Kind: logbook.Sniffed, Value: 2, Text: "softer", Life: logbook.Life{Day: d(30)}})
			lg(logbook.Event{Kind: logbook.Sold, What: "market", Life: logbook.Life{Day: d(44), Count: 3, Price: "7.50", Currency: "EUR", Audience: "bold"}})
			lg(logbook.Event{Kind: logbook.Given, Life: logbook.Life{Day: d(45), Count: i % 8, Audience: "friends"}})
		}
		if i%9 == 0 {
			lg(logbook.Event{Kind: logbook.Failed, Text: "seized and crumbles", Life: logbook.Life{Day: d(3)}})
		}
	}
}
