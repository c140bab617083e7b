package listing

import (
	"fmt"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Cursor is the chosen entry of a list and the first one in sight.
type Cursor struct{ At, Top int }

// far is farther than any list goes.
const far = 1 << 20

// Move goes about in a list of n entries of which so many are in sight.
func (c *Cursor) Move(id keys.ID, n, rows int) {
	c.At += map[keys.ID]int{keys.Up: -1, keys.Down: 1, keys.PageUp: -rows, keys.PageDown: rows, keys.First: -far, keys.Last: far}[id]
	c.Settle(n, rows)
}

// Settle brings the chosen entry into the list and into sight.
func (c *Cursor) Settle(n, rows int) {
	c.At = min(max(c.At, 0), max(n-1, 0))
	c.Top = min(max(c.Top, c.At-rows+1), c.At)
	c.Top = max(min(c.Top, n-rows), 0)
}

// DrawMore says on the border of a list's box how many of n entries stand above and below those in sight.
func (c Cursor) DrawMore(box screen.Area, n, rows int, l look.Look) {
	if below := n - c.Top - rows; below > 0 {
		box.Right(box.W()-2, box.H()-1, fmt.Sprintf(" ↓ %d more ", below), l.Accent)
	}
	if c.Top > 0 {
		box.Right(box.W()-2, 0, fmt.Sprintf(" ↑ %d more ", c.Top), l.Accent)
	}
}

// Edge is the style of a box that has the keys, or has not.
func Edge(keys bool, l look.Look) screen.Style {
	if keys {
		return l.Focus
	}
	return l.Rule
}
