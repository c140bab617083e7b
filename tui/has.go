package tui

import (
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// has is what a kind of panel has for keys to act on.
func has(k layout.Kind) keys.Need {
	const list = keys.Numbers | keys.Adding | keys.Removing
	switch k {
	case layout.Grid:
		return list | keys.Held | keys.Coloured | keys.Ordered | keys.Named | keys.Elsewhere
	case layout.Oils, layout.Extras, layout.Bursts:
		return list | keys.Elsewhere
	case layout.Scents:
		return list | keys.Held | keys.Elsewhere
	case layout.Vessel, layout.Bed, layout.About, layout.Lye:
		return keys.Numbers | keys.Words | keys.Elsewhere
	case layout.Technique:
		return keys.Numbers | keys.Words | keys.Picture
	case layout.Hands:
		return keys.Numbers | keys.Elsewhere
	case layout.NoIcing:
		return keys.Adding | keys.Elsewhere
	case layout.Tasks:
		return keys.Ordered | keys.Elsewhere
	case layout.Face, layout.Orders, layout.Pairs, layout.Measures:
		return keys.Picture
	default:
		return keys.Elsewhere
	}
}
