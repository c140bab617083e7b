package dialog

import (
	"strings"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// foot is a binding in its place in a footer.
type foot struct {
	keys.Binding
	x int
}

// footing places as many keys as there is room for, the most useful first; the key that lists them all stands at the right and always fits.
func footing(w int, rows []keys.Binding) []foot {
	out := make([]foot, 0, len(rows))
	x, end := 1, w-1
	for _, b := range rows {
		if b.ID == keys.Help {
			end -= footW(b) + 2
			out = append(out, foot{b, end + 2})
		}
	}
	for _, b := range rows {
		if w := footW(b); b.ID != keys.Help && x+w <= end {
			out = append(out, foot{b, x})
			x += w + 2
		}
	}
	return out
}

// Footer draws keys and what they do.
func Footer(a screen.Area, rows []keys.Binding, l look.Look) {
	for _, b := range footing(a.W(), rows) {
		x := a.Text(b.x, 0, b.InFooter(), l.Accent)
		a.Text(x+1, 0, b.Label, l.Quiet)
	}
}

// FootAt is the action at a column of a footer of a width, and which of those that each key of it does: below 0 where it is not told.
func FootAt(w int, rows []keys.Binding, x int) (id keys.ID, nth int, ok bool) {
	for _, b := range footing(w, rows) {
		if in := x - b.x; in >= 0 && in < footW(b.Binding) {
			id, nth = inFoot(b.Binding, in)
			return id, nth, true
		}
	}
	return "", allOf, false
}

// inFoot is what stands at a column of a binding in a footer: where it names several keys each is itself, and the label is the first.
func inFoot(b keys.Binding, x int) (keys.ID, int) {
	shown := strings.Split(b.InFooter(), " ")
	at := 0
	for at < len(shown)-1 && x > screen.Width(shown[at]) {
		x -= screen.Width(shown[at]) + 1
		at++
	}
	onKey := x < screen.Width(shown[at])
	switch {
	case onKey && len(shown) == len(b.Each):
		return b.ID, at
	case onKey && at > 0 && b.Beside != "":
		return b.Beside, allOf
	}
	return b.ID, allOf
}

func footW(b keys.Binding) int { return screen.Width(b.InFooter()) + 1 + screen.Width(b.Label) }
