package dialog

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// Actions is what help and palette ask of the screen they are opened on.
type Actions struct {
	Keys   *keys.Map
	Own    keys.Mode                             // whose actions the screen does
	WhyNot func(b keys.Binding, nth int) string  // why an action cannot act now; empty: it can. nth is of those each key does, below 0: all
	Do     func(b keys.Binding, nth int) tea.Cmd // does an action as its key would
	About  func(b keys.Binding, nth int) string  // what one of those that each key does is about here, as a jug's name; nil: nothing more
}

// NewHelp lists every key of some modes; a key that cannot act now says why, and what the screen itself does can be done from the line.
func NewHelp(modes []keys.Mode, on Actions, l look.Look) *Page {
	p := &Page{Title: "Every key", LeadW: 22}
	for i, mode := range modes {
		if i > 0 {
			p.Lines = append(p.Lines, Line{})
		}
		p.Lines = append(p.Lines, Line{Lead: mode.String(), Style: l.Focus})
		for _, b := range on.Keys.Of(mode) {
			line := Line{Lead: "  " + b.Shown(), Style: l.Accent, Text: b.Help}
			if mode == on.Own {
				line.Do = func() tea.Cmd { return on.Do(b, allOf) }
				if why := on.WhyNot(b, allOf); why != "" {
					line.Under = "not now: " + why
				}
			}
			p.Lines = append(p.Lines, line)
		}
	}
	return p
}
