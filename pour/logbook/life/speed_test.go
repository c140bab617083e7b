package life

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// manyPours is a book of n pours with twenty events of their lives each.
func manyPours(b testing.TB, n int) (logbook.Book, pour.Shelf) {
	b.Helper()
	shelf, err := presets.Shelf()
	fatal(b, err)
	text, err := presets.Plan("alpine-meadow")
	fatal(b, err)
	plan, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	fatal(b, err)
	book, err := logbook.OpenBook(b.TempDir())
	fatal(b, err)
	for i := range n {
		plan.Name = fmt.Sprintf("Pour %d", i)
		at := time.Date(2024, 1, 1+i, 10, 0, 0, 0, time.UTC)
		_, err := book.Create(plan, "", at, twenty(at))
		fatal(b, err)
	}
	return book, shelf
}

// twenty are the marks of a pour and twenty events of its life.
func twenty(at time.Time) []logbook.Event {
	out := []logbook.Event{
		{Kind: logbook.Opened, ID: "a", Wall: at},
		{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base), ID: "b", Wall: at},
		{Kind: logbook.Ended, ID: "c", Wall: at},
	}
	add := func(after int, e logbook.Event) {
		e.Wall = at.AddDate(0, 0, after)
		e.ID = fmt.Sprintf("e%d", len(out))
		out = append(out, e)
	}
	add(1, logbook.Event{Kind: logbook.Unmoulded, What: logbook.FirmFirm})
	add(1, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{MassesG: []float64{125, 125, 125, 126, 124, 125, 125, 125, 125, 125}}})
	masses := []float64{125.0, 122.1, 120.9, 119.5, 117.9, 117.0, 116.0, 114.6, 113.9}
	for i, days := range []int{0, 1, 2, 4, 7, 10, 14, 21, 28} {
		g := masses[i]
		add(1+days, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{g, g + .2, g - .2}}})
	}
	for week := range 4 {
		add(2+7*week, logbook.Event{Kind: logbook.Sniffed, Value: float64(4 - week), Text: "sweet"})
	}
	add(30, logbook.Event{Kind: logbook.Looked, What: logbook.LookAsh, Value: 1})
	add(31, logbook.Event{Kind: logbook.Lotted, Lot: "L", Life: logbook.Life{Count: 10}})
	for i := range 3 {
		add(32+i, logbook.Event{Kind: logbook.Sold, What: "market", Life: logbook.Life{Count: 2, Price: "7.50", Currency: "EUR", Audience: "cake"}})
	}
	return out
}

func fatal(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func BenchmarkBatchesOfThousandPoursFirst(b *testing.B) {
	book, shelf := manyPours(b, 1000)
	today := day.Of(time.Date(2026, 11, 28, 0, 0, 0, 0, time.UTC))
	for b.Loop() {
		book.Keep(keptName, nil)
		_, err := All(book, shelf, pour.Hand{}, today)
		fatal(b, err)
	}
}

func BenchmarkBatchesOfThousandPoursLater(b *testing.B) {
	book, shelf := manyPours(b, 1000)
	today := day.Of(time.Date(2026, 11, 28, 0, 0, 0, 0, time.UTC))
	_, err := All(book, shelf, pour.Hand{}, today)
	fatal(b, err)
	for b.Loop() {
		_, err := All(book, shelf, pour.Hand{}, today)
		fatal(b, err)
	}
}

func BenchmarkFitOfThousandBatches(b *testing.B) {
	book, shelf := manyPours(b, 1)
	list, err := book.List()
	fatal(b, err)
	s := read(book, shelf, list[0])
	for b.Loop() {
		for range 1000 {
			if d := s.Rack.by(cure.Rack{}); !d.Known {
				b.Fatal(d.Why)
			}
		}
	}
}
