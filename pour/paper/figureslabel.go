package paper

import (
	"fmt"
	"io"

	"pourbench/pour"
	"pourbench/pour/label"
)

// LabelReport is what the plan's label has to say in its market. It is help, no legal advice: check the current text, ask locally.
type LabelReport struct {
	Market    string                `json:"market"`
	Style     string                `json:"style"`
	MadeG     Number                `json:"made_g"`
	CuredG    Number                `json:"cured_g"`
	Lines     []LabelLineReport     `json:"lines"`
	Allergens []LabelAllergenReport `json:"allergens"`
	AsBase    []string              `json:"as_base"` // embeds counted as the base's own soap, as the plan says they are made as it is
	Text      string                `json:"text"`
	NetG      Number                `json:"net_g"` // null: nothing says what may be declared
	Net       string                `json:"net"`
	NetMostG  Number                `json:"net_most_g"` // null: it is not known
	NetFrom   string                `json:"net_from"`
	NetWhy    string                `json:"net_why"`
	HeightMM  Number                `json:"height_mm"`
	Food      string                `json:"food"`
	Checks    []LabelCheckReport    `json:"checks"`
	Report    *LabelVerdictReport   `json:"report"` // null: the plan is held against none
	Refused   string                `json:"refused"`
}

// LabelLineReport is an ingredient in its place in the list, in percent of the bar as it was made.
type LabelLineReport struct {
	Name       string   `json:"name"`
	Class      string   `json:"class"`
	G          Number   `json:"g"`
	Percent    Number   `json:"percent"`
	AnyOrder   bool     `json:"any_order"`
	From       []string `json:"from"`
	Unverified string   `json:"unverified"`
}

// LabelAllergenReport is an allergen of the bar's scents.
type LabelAllergenReport struct {
	Name         string              `json:"name"`
	G            Number              `json:"g"`
	CutPercent   Number              `json:"cut_percent"`
	CuredPercent Number              `json:"cured_percent"` // what is judged
	Named        bool                `json:"named"`
	Unlisted     bool                `json:"unlisted"`
	Over         bool                `json:"over"`
	From         []LabelTracedReport `json:"from"`
}

// LabelTracedReport is how much of an allergen comes with one scent.
type LabelTracedReport struct {
	Scent string `json:"scent"`
	G     Number `json:"g"`
}

// LabelCheckReport is a line of the market's list.
type LabelCheckReport struct {
	ID         string `json:"id"`
	Text       string `json:"text"`
	Document   string `json:"document"`
	Clause     string `json:"clause"`
	Confidence string `json:"confidence"`
	AsOf       string `json:"as_of"`
	State      string `json:"state"`
	Why        string `json:"why"`
}

// LabelVerdictReport is whether the design stays inside an assessor's report.
type LabelVerdictReport struct {
	ID     string   `json:"id"`
	Inside bool     `json:"inside"`
	Missed []string `json:"missed"`
	Why    string   `json:"why"`
}

// labelReport is the report of a label; nil where the plan asks for none.
func labelReport(s pour.Sheet) *LabelReport { return LabelOf(s.Label) }

// WriteLabel writes a label's report as JSON.
func WriteLabel(w io.Writer, l pour.LabelSheet) error {
	if err := encode(w, LabelOf(l)); err != nil {
		return fmt.Errorf("write the label for %q: %w", l.Market, err)
	}
	return nil
}

// LabelOf is the report of a label worked out by itself, such as that of a batch; nil where none is asked for.
func LabelOf(l pour.LabelSheet) *LabelReport {
	if l.Market == "" {
		return nil
	}
	r := &LabelReport{
		Market: l.Market, Style: string(l.Style), MadeG: known(l.MadeG), CuredG: known(l.CuredG), Lines: make([]LabelLineReport, len(l.Lines)),
		Allergens: make([]LabelAllergenReport, len(l.Allergens)), AsBase: append([]string{}, l.AsBase...), Text: l.Text, Net: l.Net.Text, NetFrom: l.Net.From, NetWhy: l.Net.Why,
		HeightMM: known(l.HeightMM), Food: l.Food, Checks: make([]LabelCheckReport, len(l.Checks)), Report: verdictReport(l.Report), Refused: l.Refused,
	}
	if l.Net.G > 0 {
		r.NetG = finite(l.Net.G)
	}
	if l.Net.Most > 0 {
		r.NetMostG = finite(l.Net.Most)
	}
	for i, x := range l.Lines {
		r.Lines[i] = LabelLineReport{x.Text, string(x.Class), finite(x.G), finite(x.Percent), x.Free, append([]string{}, x.From...), x.Unverified}
	}
	for i, a := range l.Allergens {
		r.Allergens[i] = LabelAllergenReport{
			Name: a.Name, G: finite(a.G), CutPercent: finite(a.CutPercent), CuredPercent: finite(a.CuredPercent), Named: a.Named, Unlisted: a.Unlisted, Over: a.Over,
			From: make([]LabelTracedReport, len(a.From)),
		}
		for k, t := range a.From {
			r.Allergens[i].From[k] = LabelTracedReport{t.Scent, finite(t.G)}
		}
	}
	for i, c := range l.Checks {
		r.Checks[i] = LabelCheckReport{c.Row.ID, c.Row.Text, c.Row.Document, c.Row.Clause, c.Row.Confidence, c.Row.AsOf.String(), string(c.State), c.Why}
	}
	return r
}

func verdictReport(v label.Verdict) *LabelVerdictReport {
	if v.Report == "" {
		return nil
	}
	r := &LabelVerdictReport{ID: v.Report, Inside: v.Why == "" && len(v.Missed) == 0, Missed: []string{}, Why: v.Why}
	for _, m := range v.Missed {
		r.Missed = append(r.Missed, m.Tell())
	}
	return r
}
