package dialog

import (
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Footer draws keys and what they do, as many as there is room for, the most useful first; the key that lists them all stands at the
// right and always fits.
func Footer(a screen.Area, rows []keys.Binding, l look.Look) {
	x, end := 1, a.W()-1
	for _, b := range rows {
		if b.ID == keys.Help {
			end -= footW(b) + 2
			drawFoot(a, end+2, b, l)
		}
	}
	for _, b := range rows {
		if w := footW(b); b.ID != keys.Help && x+w <= end {
			drawFoot(a, x, b, l)
			x += w + 2
		}
	}
}

func footW(b keys.Binding) int { return screen.Width(b.InFooter()) + 1 + screen.Width(b.Label) }

func drawFoot(a screen.Area, x int, b keys.Binding, l look.Look) {
	x = a.Text(x, 0, b.InFooter(), l.Accent)
	a.Text(x+1, 0, b.Label, l.Quiet)
}
