package logbook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
)

// filled writes a number of pours into a book, each with a stage or two seen in gentian.
func filled(t testing.TB, count int) (Book, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	book := openTestBook(t)
	for i := range count {
		c := course{from: opened().AddDate(0, 0, i)}
		c.mark(0, Event{Kind: Opened})
		c.mark(0, Event{Kind: Done, Step: LyeIn(pour.Base)})
		c.mark(4, Event{Kind: Seen, Batch: pour.Base, Jug: "gentian", Stage: chem.Light})
		c.mark(10, Event{Kind: Noted, Text: fmt.Sprintf("pour number %d, =1+1", i)})
		if i%5 == 0 {
			c.mark(10, Event{Kind: Troubled, Batch: pour.Base, Jug: "poppy", What: Browns})
		}
		c.mark(11, Event{Kind: Ended})
		_, err := book.Create(plan, "", c.from, c.events)
		must(t, err)
	}
	return book, shelf
}

func TestTheListKnowsEveryPourAndFindsWords(t *testing.T) {
	book, _ := filled(t, 12)
	for range 2 { // read from the files, then from the index
		list, err := book.List()
		must(t, err)
		if len(list) != 12 || !list[0].Opened.After(list[11].Opened) || list[0].Name != "Alpine Meadow" || !list[3].Ended {
			t.Fatalf("%d pours, the first %+v", len(list), list[0])
		}
		for text, want := range map[string]int{"": 12, "number 11,": 1, "BROWNS": 3, "alp-rose shea": 12, "nettle": 0, "2026-12": 12} {
			if got := len(Search(list, text)); got != want {
				t.Errorf("%q finds %d pours, want %d", text, got, want)
			}
		}
	}
}

func TestAChangedForgottenOrBrokenPourIsSeenByTheList(t *testing.T) {
	book, _ := filled(t, 3)
	list, err := book.List()
	must(t, err)
	_, _, err = book.Append(list[0].ID, 0, Event{ID: "r", Kind: Result, Text: "creamy", Wall: opened()})
	must(t, err)
	must(t, book.Forget(list[1].ID))
	must(t, os.WriteFile(book.Path("broken"), []byte("name = \"Oh\"\nkind ="), 0o600))
	again, err := book.List()
	must(t, err)
	if len(again) != 3 || len(Search(again, "creamy")) != 1 || len(Search(again, "broken")) != 1 {
		t.Errorf("the list: %+v", again)
	}
	if err := book.Forget("../x"); err == nil {
		t.Error("an id led out of the folder")
	}
}

func TestExportsHoldEveryEventAndNoFormula(t *testing.T) {
	book, shelf := filled(t, 2)
	list, err := book.List()
	must(t, err)
	var pours []Pour
	for _, e := range list {
		p, err := book.Read(e.ID, shelf)
		must(t, err)
		p.Events = append(p.Events, Event{Kind: Noted, Text: "=HYPERLINK()"})
		pours = append(pours, p)
	}
	var out bytes.Buffer
	must(t, ExportCSV(&out, pours))
	rows, err := csv.NewReader(&out).ReadAll()
	must(t, err)
	if want := 1 + len(pours[0].Events) + len(pours[1].Events); len(rows) != want {
		t.Errorf("%d lines, want %d", len(rows), want)
	}
	for _, row := range rows {
		for _, cell := range row {
			if strings.HasPrefix(cell, "=") {
				t.Errorf("the cell %q would be run", cell)
			}
		}
	}
	out.Reset()
	must(t, ExportJSON(&out, shelf, pours))
	var back []map[string]any
	must(t, json.Unmarshal(out.Bytes(), &back))
	if len(back) != 2 || back[0]["trial_scent"] != nil || len(back[0]["events"].([]any)) != len(pours[0].Events) {
		t.Errorf("the JSON: %v", back)
	}
}

func BenchmarkListAndSearchTenThousand(b *testing.B) {
	book, _ := filled(b, 1)
	src, err := os.ReadFile(book.Path("2026-12-05-alpine-meadow"))
	must(b, err)
	for i := range 10000 {
		must(b, os.WriteFile(book.Path(fmt.Sprintf("copy-%d", i)), src, 0o600))
	}
	start := time.Now()
	_, err = book.List()
	must(b, err)
	b.Logf("the first list, without an index: %v", time.Since(start))
	for b.Loop() {
		list, err := book.List()
		must(b, err)
		if got := len(Search(list, "gentian shea")); got != 10001 {
			b.Fatalf("%d found", got)
		}
	}
}

func BenchmarkAppend(b *testing.B) {
	book, _ := filled(b, 1)
	e := Event{ID: "x", Kind: Noted, Text: "on", Wall: time.Now()}
	for b.Loop() {
		_, _, err := book.Append("2026-12-05-alpine-meadow", 0, e)
		must(b, err)
	}
}
