package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// whyNot says why a key of the bench cannot act here and now.
func (m *model) whyNot(b keys.Binding, _ int) string {
	switch {
	case b.Mode == keys.Pouring:
		return m.fill("during a pour only; {pour} pours this plan")
	case b.Mode == keys.Batching:
		return m.fill("on the page of batches only; {batches} goes there")
	case b.Mode == keys.Stocking:
		return m.fill("on the page of stock only; {stock} goes there")
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

func meaning(code string) string {
	for _, c := range pour.Codes() {
		if c.Code == code {
			return c.Meaning
		}
	}
	return ""
}
