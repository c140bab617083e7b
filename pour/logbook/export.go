package logbook

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"time"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// ExportCSV writes one line for every event of every pour. A text that a spreadsheet would take for a formula gets an apostrophe.
func ExportCSV(w io.Writer, pours []Pour) error {
	out := csv.NewWriter(w)
	_ = out.Write(append([]string{ // what goes wrong comes out of Error below
		"pour", "name", "kind", "batch", "jug", "step", "stage", "what", "value", "lot", "text", "run_s", "elapsed_min", "wall",
	}, lifeColumns()...))
	for _, p := range pours {
		marks := Standing(p.Events)
		elapsedMin := elapsed(marks)
		for _, e := range marks {
			_ = out.Write(csvRow(p, elapsedMin(e), e))
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("export the logbook as CSV: %w", err)
	}
	return nil
}

// elapsed tells when an event of a pour happened, min after the base's lye met its oils; nil where that is not marked.
func elapsed(marks []Event) func(Event) *float64 {
	in, ok := LyeInAt(marks, pour.Base)
	return func(e Event) *float64 {
		if !ok || e.Kind.OfLife() {
			return nil
		}
		after := (e.Run - in).Minutes()
		return &after
	}
}

func csvRow(p Pour, elapsedMin *float64, e Event) []string {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	stage, value, elapsed := "", "", ""
	if e.Kind == Seen || e.Kind == NotYet {
		stage = e.Stage.String()
	}
	if e.Kind.measures() {
		value = number(e.Value)
	}
	if elapsedMin != nil {
		elapsed = number(*elapsedMin)
	}
	run := ""
	if s := e.runS(); s != nil {
		run = number(*s)
	}
	return append([]string{
		plain.Cell(p.ID), plain.Cell(p.Name), string(e.Kind), string(e.Batch), plain.Cell(e.Jug), plain.Cell(e.Step), stage, plain.Cell(e.What), value,
		plain.Cell(e.Lot), plain.Cell(e.Text), run, elapsed, e.Wall.Format(time.RFC3339),
	}, e.lifeCells()...)
}

// runS is when an event was on the run's clock, s; nil: it is of the batch's life, which has none.
func (e Event) runS() *float64 {
	if e.Kind.OfLife() {
		return nil
	}
	s := e.Run.Seconds()
	return &s
}

// pourJSON and eventJSON are the shape of the JSON export; null where there is nothing.
type pourJSON struct {
	ID         string       `json:"id"`
	Name       string       `json:"name"`
	Opened     time.Time    `json:"opened"`
	TrialScent *string      `json:"trial_scent"`
	LeftOut    bool         `json:"left_out"`
	Plan       *planSummary `json:"plan"`
	Events     []eventJSON  `json:"events"`
}

type planSummary struct {
	OilsG        *float64 `json:"base_oils_g"`
	BatterG      *float64 `json:"base_batter_g"`
	MixC         *float64 `json:"base_mix_c"`
	LyeStrength  float64  `json:"base_lye_concentration_percent"`
	SuperfatPerc float64  `json:"base_superfat_percent"`
}

type eventJSON struct {
	Kind       string    `json:"kind"`
	Batch      *string   `json:"batch"`
	Jug        *string   `json:"jug"`
	Step       *string   `json:"step"`
	Stage      *string   `json:"stage"`
	What       *string   `json:"what"`
	Value      *float64  `json:"value"`
	Lot        *string   `json:"lot"`
	Text       *string   `json:"text"`
	RunS       *float64  `json:"run_s"`
	ElapsedMin *float64  `json:"elapsed_min"`
	Wall       time.Time `json:"wall"`
	lifeJSON
}

// ExportJSON writes the pours as one JSON array, keys in snake_case ending in their unit.
func ExportJSON(w io.Writer, shelf pour.Shelf, pours []Pour) error {
	list := make([]pourJSON, 0, len(pours))
	for _, p := range pours {
		list = append(list, p.json(shelf))
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	if err := out.Encode(list); err != nil {
		return fmt.Errorf("export the logbook as JSON: %w", err)
	}
	return nil
}

func (p Pour) json(shelf pour.Shelf) pourJSON {
	sheet := pour.Weigh(p.Plan, shelf)
	marks := Standing(p.Events)
	elapsedMin := elapsed(marks)
	out := pourJSON{
		ID: p.ID, Name: p.Name, Opened: p.Opened, TrialScent: orNull(p.TrialScent), LeftOut: IsLeftOut(marks), Events: []eventJSON{},
	}
	if p.PlanErr == nil {
		b := sheet.Base
		out.Plan = &planSummary{known(b.Size.OilsG), known(b.Size.BatterG), known(b.Heat.MixC), b.Lye.ConcentrationPercent, b.Superfat.PlannedPercent}
	}
	for _, e := range marks {
		j := eventJSON{
			Kind: string(e.Kind), Batch: orNull(string(e.Batch)), Jug: orNull(e.Jug), Step: orNull(e.Step), What: orNull(e.What),
			Lot: orNull(e.Lot), Text: orNull(e.Text), RunS: e.runS(), Wall: e.Wall, ElapsedMin: elapsedMin(e),
			lifeJSON: e.lifeJSON(),
		}
		if e.Kind == Seen || e.Kind == NotYet {
			j.Stage = orNull(e.Stage.String())
		}
		if e.Kind.measures() {
			j.Value = &e.Value
		}
		out.Events = append(out.Events, j)
	}
	return out
}

// known is a sheet's figure, or nil where it could not be worked out.
func known(v float64) *float64 {
	if f := pour.AsFigure(v); f.Known {
		return &f.V
	}
	return nil
}

func orNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
