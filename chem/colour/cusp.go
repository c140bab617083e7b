package colour

import "math"

const (
	hues360   = 360
	edgeSteps = 256
)

// cusps is the OKLCH lightness of the most colourful sRGB colour of each whole degree of hue. At blue,
// 264 degrees, it jumps within one degree; the mud score only looks up 45 to 140.
type cusps [hues360]float64

// newCusps walks the six edges of the RGB cube that touch neither black nor white: there the most
// colourful colours lie. Hue rises all the way round from red, but for a fraction of a degree at blue.
func newCusps() cusps {
	corners := [7]RGB{{1, 0, 0}, {1, 1, 0}, {0, 1, 0}, {0, 1, 1}, {0, 0, 1}, {1, 0, 1}, {1, 0, 0}}
	var table cusps
	before := corners[0].OKLCH()
	for edge := range 6 {
		a, b := corners[edge], corners[edge+1]
		for step := 1; step <= edgeSteps; step++ {
			t := float64(step) / edgeSteps
			here := RGB{a.R + t*(b.R-a.R), a.G + t*(b.G-a.G), a.B + t*(b.B-a.B)}.OKLCH()
			table.fill(before, here)
			before = here
		}
	}
	return table
}

// fill sets the whole degrees between two neighbours on the walk.
func (t *cusps) fill(from, to OKLCH) {
	switch turn := to.H - from.H; {
	case turn < -180: // past 360
		to.H += 360
	case turn < 0:
		from, to = to, from
	}
	for h := math.Ceil(from.H); h <= to.H; h++ {
		share := (h - from.H) / max(to.H-from.H, 1e-12)
		t[int(h)%hues360] = from.L + share*(to.L-from.L)
	}
}

// at interpolates between whole degrees.
func (t *cusps) at(hue float64) float64 {
	whole := math.Floor(hue)
	i := int(whole) % hues360
	return t[i] + (hue-whole)*(t[(i+1)%hues360]-t[i])
}
