package swirl

import "math"

// What a blade drags over a border, by eye, no source: mm.
const (
	dragLong  = 14.0 // a streak of it
	dragThin  = 0.35 // and how thin that is
	dragHair  = 0.11 // and the scratches in it
	dragMood  = 19.0 // from where soap was soft enough to be dragged to where it was not
	dragMost  = 0.4  // of the colour, where it was dragged most
	dragLooks = 4    // places it is looked for at least
	dragStep  = 2.5  // pixels from one to the next at most
)

// pull is how strongly the blade dragged what lies before a place over it, 0 to 1: in thin streaks, and only where the soap was soft.
func (e *edges) pull(i, j float64) float64 {
	u, v := i*e.px, j*e.px
	soft := 0.35 + 0.8*float64(e.noise.at(u/dragMood+e.off.z, v/dragMood+e.off.y+7))
	if e.drag == 0 || soft <= 0 {
		return 0
	}
	along, across := u*e.way.y+v*e.way.z, v*e.way.y-u*e.way.z
	hair := fades(dragHair, e.px) * float64(e.noise.at(along/dragLong*2+e.off.z, across/dragHair+e.off.y))
	return clamp(soft*(0.3+float64(e.noise.at(along/dragLong+e.off.y, across/dragThin+e.off.z))+0.5*hair), 0, 1)
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
	last, borders := b.near(i, j).Portion[0], float32(0)
	for k := 1.0; k <= looks; k++ {
		far := long * k / looks
		q := b.near(int(math.Round(float64(i)-far*b.edges.way.y)), int(math.Round(float64(j)-far*b.edges.way.z)))
		if q.Part[0] == 0 {
			continue
		}
		if q.Portion[0] != last {
			last, borders = q.Portion[0], borders+1
		}
		part, v := float32(pull*dragMost*2*(looks+1-k)/(looks*(looks+1))), b.ink.mix(q)
		sum.r, sum.g, sum.b, whole = sum.r+part*v.r, sum.g+part*v.g, sum.b+part*v.b, whole+part
	}
	few := 1 / max(1, borders*borders) // over many thin ones it drags all into each other: that would show as hatching
	c = c.scaled(1 - few*whole)
	return light{c.r + few*sum.r, c.g + few*sum.g, c.b + few*sum.b}
}
