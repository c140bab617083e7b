package logbook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
)

// exported is a pour with an event of every shape: before lye-in, a stage, a value, words, taken back, left out.
func exported(t *testing.T) (Pour, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	c := course{from: opened()}
	c.mark(0, Event{Kind: Weighed, What: "Olive oil", Value: 381.5, Lot: "L-77"})
	c.mark(2, Event{Kind: Done, Step: LyeIn(pour.Base)})
	c.mark(5, Event{Kind: Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Medium})
	c.mark(6, Event{Kind: Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Stiff})
	c.mark(6.5, Event{Kind: TakenBack, What: "e3"})
	c.mark(7, Event{Kind: Noted, Text: "-2 °C outside"})
	c.mark(8, Event{Kind: LeftOut, Text: "wrong lye"})
	return Pour{ID: "2026-12-05-x", Name: "Meadow", Opened: opened(), Plan: plan, Events: c.events}, shelf
}

// The minutes count from lye-in, 2 min after the run was opened; what was taken back is in no export.
func TestTheTableOfEventsIsByHand(t *testing.T) {
	p, _ := exported(t)
	var out bytes.Buffer
	must(t, ExportCSV(&out, []Pour{p}))
	rows, err := csv.NewReader(&out).ReadAll()
	must(t, err)
	want := [][]string{
		{"pour", "name", "kind", "batch", "jug", "step", "stage", "what", "value", "lot", "text", "run_s", "elapsed_min", "wall"},
		{"2026-12-05-x", "Meadow", "weighed", "", "", "", "", "Olive oil", "381.5", "L-77", "", "0", "-2", "2026-12-05T10:00:00Z"},
		{"2026-12-05-x", "Meadow", "done", "", "", "base lye in", "", "", "", "", "", "120", "0", "2026-12-05T10:02:00Z"},
		{"2026-12-05-x", "Meadow", "seen", "base", "fern", "", "medium", "", "", "", "", "300", "3", "2026-12-05T10:05:00Z"},
		{"2026-12-05-x", "Meadow", "note", "", "", "", "", "", "", "", "'-2 °C outside", "420", "5", "2026-12-05T10:07:00Z"},
		{"2026-12-05-x", "Meadow", "left out", "", "", "", "", "", "", "", "wrong lye", "480", "6", "2026-12-05T10:08:00Z"},
	}
	for i := range rows {
		rows[i] = rows[i][:len(want[0])] // what a batch's life adds has a test of its own
	}
	if d := cmp.Diff(want, rows); d != "" {
		t.Error(d)
	}
}

func TestAnExportOfAPourThatNeverBeganHasNoMinutes(t *testing.T) {
	p, shelf := exported(t)
	p.Events = p.Events[:1]
	var out bytes.Buffer
	must(t, ExportCSV(&out, []Pour{p}))
	if !strings.Contains(out.String(), ",0,,2026") {
		t.Errorf("%s", out.String())
	}
	out.Reset()
	must(t, ExportJSON(&out, shelf, []Pour{p}))
	if !strings.Contains(out.String(), `"elapsed_min": null`) {
		t.Errorf("%s", out.String())
	}
}

func TestTheJSONOfAPourIsByHand(t *testing.T) {
	p, shelf := exported(t)
	sheet := pour.Weigh(p.Plan, shelf)
	var out bytes.Buffer
	broken := Pour{ID: "b", TrialScent: "rose <3", PlanErr: errors.New("gone"), Opened: opened()}
	must(t, ExportJSON(&out, shelf, []Pour{p, broken}))
	var got []map[string]any
	must(t, json.Unmarshal(out.Bytes(), &got))
	first, second := got[0], got[1]
	plan, _ := first["plan"].(map[string]any)
	for key, want := range map[string]any{
		"base_oils_g": sheet.Base.Size.OilsG, "base_batter_g": sheet.Base.Size.BatterG, "base_mix_c": sheet.Base.Heat.MixC,
		"base_lye_concentration_percent": sheet.Base.Lye.ConcentrationPercent, "base_superfat_percent": sheet.Base.Superfat.PlannedPercent,
	} {
		if plan[key] != want {
			t.Errorf("%s is %v, want %v", key, plan[key], want)
		}
	}
	if first["left_out"] != true || first["trial_scent"] != nil || first["id"] != "2026-12-05-x" || second["plan"] != nil || second["trial_scent"] != "rose <3" {
		t.Errorf("%v\n%v", first, second)
	}
	if !strings.Contains(out.String(), "rose <3") {
		t.Error("signs are written as codes")
	}
	events, _ := first["events"].([]any)
	if len(events) != 5 || len(second["events"].([]any)) != 0 {
		t.Fatalf("%d events", len(events))
	}
	want := map[string]any{
		"kind": "seen", "batch": "base", "jug": "fern", "step": nil, "stage": "medium", "what": nil, "value": nil, "lot": nil, "text": nil,
		"run_s": 300., "elapsed_min": 3., "wall": "2026-12-05T10:05:00Z", "id": "e2",
		"corrects": nil, "day": nil, "bars": nil, "masses_g": nil, "crumbs_g": nil, "count": nil, "seconds": nil, "price": nil, "currency": nil,
		"audience": nil, "scent": nil, "colour": nil, "path": nil, "market": nil,
	}
	if d := cmp.Diff(want, events[2]); d != "" {
		t.Error(d)
	}
	if weighed, _ := events[0].(map[string]any); weighed["value"] != 381.5 || weighed["stage"] != nil || weighed["lot"] != "L-77" {
		t.Errorf("%v", weighed)
	}
}

// unwritable is a pipe that nobody reads.
type unwritable struct{}

func (unwritable) Write([]byte) (int, error) { return 0, errors.New("nobody reads") }

func TestAnExportThatCannotBeWrittenSaysSo(t *testing.T) {
	p, shelf := exported(t)
	for what, err := range map[string]error{"CSV": ExportCSV(unwritable{}, []Pour{p}), "JSON": ExportJSON(unwritable{}, shelf, []Pour{p})} {
		if err == nil || !strings.Contains(err.Error(), what) || !strings.Contains(err.Error(), "nobody reads") {
			t.Errorf("%s: %v", what, err)
		}
	}
}

// Whatever a plan and an event say comes back from the file as it was.
func TestOddTextsComeBackAsTheyWere(t *testing.T) {
	plan, shelf := meadow(t)
	book := openTestBook(t)
	for i, notes := range []string{"it's '''quoted''' thrice", "plain", `back\slash "and" quotes`, "two\nlines"} {
		plan.Notes = notes
		c := course{from: opened()}
		c.mark(0, Event{Kind: Noted, Text: notes, Jug: `a "jug"`})
		c.mark(-.5, Event{Kind: Discounted, What: "x", Value: -1.25})
		e := &c.events[1]
		e.Steady, e.Sleeps = -1500*time.Microsecond, true
		id, err := book.Create(plan, "", opened().Add(time.Duration(i)*time.Hour), c.events)
		must(t, err)
		p, err := book.Read(id, shelf)
		must(t, err)
		if p.PlanErr != nil || p.Plan.Notes != notes {
			t.Errorf("the notes %q came back as %q, %v", notes, p.Plan.Notes, p.PlanErr)
		}
		if d := cmp.Diff(c.events, p.Events, cmp.Comparer(time.Time.Equal)); d != "" {
			t.Errorf("%q:\n%s", notes, d)
		}
	}
}
