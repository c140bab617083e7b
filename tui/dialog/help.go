package dialog

import (
	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// NewHelp lists every key of some modes from the one table; a key that cannot act now says why.
func NewHelp(modes []keys.Mode, whyNot func(keys.Binding) string, l look.Look) *Page {
	p := &Page{Title: "Every key", LeadW: 22}
	for i, mode := range modes {
		if i > 0 {
			p.Lines = append(p.Lines, Line{})
		}
		p.Lines = append(p.Lines, Line{Lead: mode.String(), Style: l.Focus})
		for _, b := range keys.Table() {
			if b.Mode != mode {
				continue
			}
			p.Lines = append(p.Lines, Line{Lead: "  " + b.Shown(), Style: l.Accent, Text: b.Help})
			if why := whyNot(b); why != "" {
				p.Lines = append(p.Lines, Line{Text: "not now: " + why, Quiet: true})
			}
		}
	}
	return p
}
