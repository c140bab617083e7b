package layout

import (
	"image"
	"slices"
)

// frame is what a border takes from a panel's height.
const frame = 2

// leastRows is how many of its rows a panel should at least show beside others.
const leastRows = 10

// leastBelow is the height that a panel which stays leaves to the others; where it cannot, it is a page like them.
const leastBelow = 6

// stack puts a column's panels one below the other. Panels that do not fit together are pages: the page with the focus shows, else the first.
func stack(c column, focus ID) []Placed {
	if len(c.panels) == 0 {
		return nil
	}
	var stays []Panel
	if c.panels[0].Stays && len(c.panels) > 1 && c.rect.Dy()-c.panels[0].least() >= leastBelow {
		stays, c.panels = c.panels[:1:1], c.panels[1:]
	}
	all := pages(c.panels, c.rect.Dy()-tall(stays))
	page := all[0]
	for _, p := range all {
		if slices.ContainsFunc(p, func(x Panel) bool { return x.ID == focus }) {
			page = p
		}
	}
	page = append(stays, page...)
	heights := share(page, c.rect.Dy())
	out := make([]Placed, len(page))
	y := c.rect.Min.Y
	for i, p := range page {
		out[i] = Placed{p.ID, image.Rect(c.rect.Min.X, y, c.rect.Max.X, y+heights[i])}
		y += heights[i]
	}
	return out
}

// least is the height a panel needs to be shown beside others.
func (p Panel) least() int { return min(max(p.Least, 1), leastRows) + frame }

// tall is the least height in which panels stand below each other.
func tall(panels []Panel) int {
	h := 0
	for _, p := range panels {
		h += p.least()
	}
	return h
}

// pages deals panels to pages of a height in their order, each as full as it can be.
func pages(panels []Panel, h int) [][]Panel {
	var out [][]Panel
	start, used := 0, 0
	for i, p := range panels {
		need := p.least()
		if i > start && used+need > h {
			out = append(out, panels[start:i:i])
			start, used = i, 0
		}
		used += need
	}
	return append(out, panels[start:])
}

// share gives every panel its least height, then row by row what it still wants, the first first; what is left goes to the last panel.
func share(page []Panel, h int) []int {
	heights := make([]int, len(page))
	left := h
	for i, p := range page {
		heights[i] = min(p.least(), left)
		left -= heights[i]
	}
	for i, p := range page {
		more := min(max(p.Want+frame-heights[i], 0), left)
		heights[i] += more
		left -= more
	}
	heights[len(page)-1] += left
	return heights
}
