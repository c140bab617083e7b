package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/panel"
)

// whyNot says why a key of the bench cannot act here and now.
func (m *model) whyNot(b keys.Binding, _ int) string {
	switch {
	case b.Mode == keys.Pouring:
		return m.fill("during a pour only; {pour} pours this plan")
	case !b.Acts(m.at().Has()):
		return "not in the panel " + m.at().Title
	}
	return m.fill(m.cannot(b.ID))
}

// actions is what help and palette ask of the bench.
func (m *model) actions() dialog.Actions {
	return dialog.Actions{Keys: m.opt.Keys, Own: keys.Bench, WhyNot: m.whyNot, Do: func(b keys.Binding, nth int) tea.Cmd {
		return m.perform(string(b.ID), b, nth)
	}}
}

// fill puts the keys of the bench into a text.
func (m *model) fill(text string) string { return m.opt.Keys.Fill(keys.Bench, text) }

// key is the key of an action of the bench, for what is said.
func (m *model) key(id keys.ID) string { return m.opt.Keys.Name(keys.Bench, id) }

// warningsPage lists every warning with what stands behind it and what to do.
func (m *model) warningsPage() *dialog.Page {
	p := &dialog.Page{Title: panel.WarningsTitle, LeadW: 12}
	for _, w := range m.facts.Warnings {
		p.Lines = append(p.Lines,
			dialog.Line{Lead: look.Mark(w.Severity) + " " + string(w.Severity), Style: m.look.Severity(w.Severity), Text: w.Told()},
			dialog.Line{Lead: "  do", Style: m.look.Quiet, Text: w.Do},
			dialog.Line{Text: w.Where + ", " + w.Code + ": " + meaning(w.Code), Quiet: true}, dialog.Line{})
	}
	if len(p.Lines) == 0 {
		p.Lines = []dialog.Line{{Text: panel.NothingStands}}
	}
	return p
}

func meaning(code string) string {
	for _, c := range pour.Codes() {
		if c.Code == code {
			return c.Meaning
		}
	}
	return ""
}
