package shape

import "math"

// Strip is one piece of a ruler that is longer than the paper it is printed on: the part of the length between From and To, mm from the
// ruler's own beginning. What lies in the overlap of two strips is printed on both.
type Strip struct {
	From, To float64
	Crosses  []float64 // where a cross is printed to lay one strip on the next by: in the middle of each overlap, on both strips
}

// slackMM is what a length may exceed the paper by before it needs another strip: less than any printer can draw.
const slackMM = 1e-6

// Strips cuts a length into the fewest strips of at most so many mm that share an overlap with the next, all but the last equally long and
// beginning at whole mm where most and overlap are whole, so that no strip is a sliver that cannot be laid straight: n = ⌈(L − o)/(m − o)⌉.
// A length that is no number or not above 0, and an overlap that leaves nothing, have no strips. Derived.
func Strips(length, most, overlap float64) []Strip {
	const tooMany = 1000
	own := most - overlap
	if !(length > 0) || !(own > 0) || overlap < 0 || length > tooMany*own {
		return nil
	}
	if length <= most+slackMM {
		return []Strip{{From: 0, To: length}}
	}
	n := int(math.Ceil((length - overlap - slackMM) / own))
	step := min(own, math.Ceil((length-overlap)/float64(n)-slackMM))
	strips := make([]Strip, n)
	for i := range strips {
		from := float64(i) * step
		s := Strip{From: from, To: min(length, from+step+overlap)}
		if i > 0 {
			s.Crosses = append(s.Crosses, s.From+overlap/2)
		}
		if i < n-1 {
			s.Crosses = append(s.Crosses, s.To-overlap/2)
		}
		strips[i] = s
	}
	return strips
}

// Hatch is slanting lines across a rectangle, each from its lower left to its upper right at 45°, a distance apart along the rectangle's sides:
// x1, y1, x2, y2 of each. A rectangle without an inside has none. Derived.
func Hatch(x, y, wide, high, apart float64) [][4]float64 {
	if !(wide > 0) || !(high > 0) || !(apart > 0) {
		return nil
	}
	var out [][4]float64
	for c := apart; c < wide+high-slackMM; c += apart {
		// The line through all points whose distance from the left and from the top come to c.
		x1, y1 := math.Max(0, c-high), math.Min(c, high)
		x2, y2 := math.Min(c, wide), math.Max(0, c-wide)
		out = append(out, [4]float64{x + x1, y + y1, x + x2, y + y2})
	}
	return out
}

// ScaledBy is by what fraction every length on a sheet is wrong whose check bar of so many mm was measured as another length: measured/true − 1.
// Derived: 99.5 for 100 is −0.005, 1.25 mm too short at 250.
func ScaledBy(measured, truly float64) float64 { return measured/truly - 1 }
