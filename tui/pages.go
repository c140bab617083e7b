package tui

import (
	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/panel"
)

// whyNot says why a key of the bench cannot act here and now.
func (m *model) whyNot(b keys.Binding) string {
	if b.Mode != keys.Bench || len(b.Keys) == 0 {
		return ""
	}
	if !b.Acts(m.at().Has()) {
		return "not in the panel " + m.at().Title
	}
	return m.cannot(b.ID)
}

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
