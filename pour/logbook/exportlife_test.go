package logbook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
)

// lived is a pour with life after it: a cut, a weighing that was corrected, a sale to somebody whose name a spreadsheet would run, an empty count.
func lived(t *testing.T) (Pour, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	c := course{from: opened()}
	c.mark(2, Event{Kind: Done, Step: LyeIn(pour.Base)})
	c.mark(3, Event{Kind: Sliced, Life: Life{Day: "2026-12-06", MassesG: []float64{128.4, 127}, CrumbsG: 6.5}})
	c.mark(4, Event{Kind: WeighIn, Life: Life{Day: "2026-12-07", Bars: []int{2}, MassesG: []float64{199}}})
	c.mark(5, Event{Kind: WeighIn, Corrects: "e2", Life: Life{Day: "2026-12-07", Bars: []int{2}, MassesG: []float64{119}}})
	c.mark(6, Event{Kind: Sold, What: "market", Life: Life{Count: 2, Price: "7.50", Currency: "EUR", Audience: "=cake people"}})
	c.mark(7, Event{Kind: Counted})
	return Pour{ID: "2026-12-05-x", Name: "Meadow", Opened: opened(), Plan: plan, Events: c.events}, shelf
}

// What life adds to the table is by hand: a number that an event does not carry is empty, a count of nothing is 0, and no run clock runs.
func TestTheTableOfABatchsLifeIsByHand(t *testing.T) {
	p, _ := lived(t)
	var out bytes.Buffer
	must(t, ExportCSV(&out, []Pour{p}))
	rows, err := csv.NewReader(&out).ReadAll()
	must(t, err)
	var got [][]string
	for _, r := range rows {
		got = append(got, append([]string{r[2], r[11], r[12]}, r[14:]...))
	}
	want := [][]string{
		{"kind", "run_s", "elapsed_min", "id", "corrects", "day", "bars", "masses_g", "crumbs_g", "count", "seconds", "price", "currency", "audience", "scent", "colour", "path", "market"},
		{"done", "120", "0", "e0", "", "", "", "", "", "", "", "", "", "", "", "", "", ""},
		{"sliced", "", "", "e1", "", "2026-12-06", "", "128.4 127", "6.5", "", "0", "", "", "", "", "", "", ""},
		{"weigh-in", "", "", "e3", "e2", "2026-12-07", "2", "119", "", "", "", "", "", "", "", "", "", ""},
		{"sold", "", "", "e4", "", "", "", "", "", "2", "", "7.50", "EUR", "'=cake people", "", "", "", ""},
		{"counted", "", "", "e5", "", "", "", "", "", "0", "", "", "", "", "", "", "", ""},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestTheJSONOfABatchsLifeIsByHand(t *testing.T) {
	p, shelf := lived(t)
	var out bytes.Buffer
	must(t, ExportJSON(&out, shelf, []Pour{p}))
	var got []struct{ Events []map[string]any }
	must(t, json.Unmarshal(out.Bytes(), &got))
	e := got[0].Events
	sliced, weighed, sold := e[1], e[2], e[3]
	if sliced["run_s"] != nil || sliced["crumbs_g"] != 6.5 || sliced["seconds"] != 0. || sliced["count"] != nil || sliced["day"] != "2026-12-06" {
		t.Errorf("%v", sliced)
	}
	if d := cmp.Diff([]any{119.}, weighed["masses_g"]); d != "" || weighed["corrects"] != "e2" || weighed["id"] != "e3" {
		t.Errorf("%v", weighed)
	}
	if sold["count"] != 2. || sold["price"] != "7.50" || sold["audience"] != "=cake people" || sold["bars"] != nil {
		t.Errorf("%v", sold)
	}
}
