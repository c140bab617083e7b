package tables

import (
	"fmt"
	"io"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// saleKeys are the columns of a sale that are keys of its form, too.
func saleKeys() []string { return []string{"day", "count", "at", "price", "currency", "to"} }

// WriteSales writes every sale of every batch.
func WriteSales(w io.Writer, batches []life.Batch) error {
	return written(w, "sales", append([]string{"pour", "name", "event"}, saleKeys()...), func(row func(...string)) {
		for _, b := range batches {
			for _, e := range b.Of(logbook.Sold) {
				row(b.ID, b.Name, e.ID, e.Day(), fmt.Sprint(e.Life.Count), e.What, e.Life.Price, e.Life.Currency, e.Life.Audience)
			}
		}
	})
}

// Sale is a sale that is to be logged.
type Sale struct {
	Line  int // of the table
	Pour  string
	Event logbook.Event
}

// ReadSales reads the sales of a table that are not logged yet, by the names of their events, checked against the batches they are of.
func ReadSales(r io.Reader, batches []life.Batch) (sales []Sale, known int, err error) {
	table, err := rows(r, append([]string{"pour", "name", "event"}, saleKeys()...), []string{"pour", "day", "count"})
	if err != nil {
		return nil, 0, fmt.Errorf("take in sales: %w", err)
	}
	logged, there := map[string]bool{}, map[string]bool{}
	for _, b := range batches {
		there[b.ID] = true
		for _, e := range b.Of(logbook.Sold) {
			logged[b.ID+" "+e.ID] = true
		}
	}
	for _, row := range table {
		id := row.at("pour")
		if !there[id] {
			return nil, 0, fmt.Errorf("take in sales: %w", row.refuse("no pour %q is in the logbook", id))
		}
		if e := row.at("event"); e != "" && logged[id+" "+e] {
			known++
			continue
		}
		e := logbook.Event{Kind: logbook.Sold}
		fields := life.Fields(&e, pour.Plan{})
		for _, key := range saleKeys() {
			for _, f := range fields {
				if f.Key != key || row.at(key) == "" {
					continue
				}
				if err := f.Set(row.at(key)); err != nil {
					return nil, 0, fmt.Errorf("take in sales: %w", row.refuse("%w", err))
				}
			}
		}
		sales = append(sales, Sale{row.line, id, e})
	}
	return sales, known, nil
}
