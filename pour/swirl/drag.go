package swirl

import "math"

// What a blade drags over a border, by eye, no source: mm.
const (
	dragLong  = 40.0 // a stroke of it
	dragWide  = 4.5  // and how wide that is
	dragThin  = 0.6  // the streaks in it
	dragPart  = 0.35 // how much those differ
	dragMost  = 0.4  // of the colour, where it was dragged most
	dragLooks = 8    // places it is looked for at least
	dragStep  = 2.5  // pixels from one to the next at most
)

// pull is how strongly the blade dragged what lies before a place over it, 0 to 1: in few broad strokes that fade at their sides, seldom the whole way
// across, with faint streaks in them. A row of thin ones would show as teeth.
func (e *edges) pull(i, j float64) float64 {
	if e.drag == 0 {
		return 0
	}
	u, v := i*e.px, j*e.px
	along, across := u*e.way.y+v*e.way.z, v*e.way.y-u*e.way.z
	stroke := float64(e.noise.at(along/dragLong+e.off.y, across/dragWide+e.off.z))
	if stroke <= 0 {
		return 0
	}
	return clamp(stroke*(1+dragPart*float64(e.noise.at(along/dragLong+e.off.z, across/dragThin+e.off.y))), 0, 1)
}

// dragged lays over the colour of a pixel what the blade brought along to it, the less the further off it comes from.
func (b *bleeding) dragged(c light, i, j int) light {
	pull := b.edges.pull(float64(i), float64(j))
	if pull == 0 {
		return c
	}
	var sum light
	whole, looks := float32(0), max(dragLooks, math.Ceil(b.edges.drag/dragStep))
	long := b.edges.drag * (0.4 + 0.6*pull)
	last, borders, others := b.near(i, j).Portion[0], 0, 0.0
	for k := 1.0; k <= looks; k++ {
		far := long * k / looks
		q := b.near(int(math.Round(float64(i)-far*b.edges.way.y)), int(math.Round(float64(j)-far*b.edges.way.z)))
		if q.Part[0] == 0 {
			continue
		}
		if q.Portion[0] != last {
			if borders > 0 {
				others += 2 * (1 - k/looks) // one that comes into reach counts ever more: it would show where it did
			}
			last, borders = q.Portion[0], borders+1
		}
		part, v := float32(pull*dragMost*2*(looks+1-k)/(looks*(looks+1))), b.ink.mix(q)
		sum.r, sum.g, sum.b, whole = sum.r+part*v.r, sum.g+part*v.g, sum.b+part*v.b, whole+part
	}
	few := float32(1 / ((1 + others) * (1 + others))) // over many thin ones it drags all into each other: that would show as hatching
	c = c.scaled(1 - few*whole)
	return light{c.r + few*sum.r, c.g + few*sum.g, c.b + few*sum.b}
}
