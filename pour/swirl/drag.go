package swirl

import "math"

// What a blade drags over a border, by eye, no source: mm.
const (
	dragLong  = 14.0 // a streak of it
	dragThin  = 0.35 // and how thin that is
	dragMood  = 19.0 // from where soap was soft enough to be dragged to where it was not
	dragMost  = 0.5  // of the colour, where it was dragged most
	dragLooks = 4
)

// pull is how strongly the blade dragged what lies before a place over it, 0 to 1: in thin streaks, and only where the soap was soft.
func (e *edges) pull(i, j float64) float64 {
	u, v := i*e.px, j*e.px
	soft := 0.4 + 0.8*float64(e.noise.at(u/dragMood+e.off.z, v/dragMood+e.off.y+7))
	if e.drag == 0 || soft <= 0 {
		return 0
	}
	along, across := u*e.way.y+v*e.way.z, v*e.way.y-u*e.way.z
	return clamp(soft*(0.3+float64(e.noise.at(along/dragLong+e.off.y, across/dragThin+e.off.z))), 0, 1)
}

// dragged lays over the colour of a pixel what the blade brought along to it, the less the further off it comes from.
func (b *bleeding) dragged(c light, i, j int) light {
	pull := b.edges.pull(float64(i), float64(j))
	if pull == 0 {
		return c
	}
	var sum light
	whole := float32(0)
	for k := 1; k <= dragLooks; k++ {
		far := float64(k) / dragLooks
		q := b.near(int(math.Round(float64(i)-far*b.edges.drag*b.edges.way.y)), int(math.Round(float64(j)-far*b.edges.drag*b.edges.way.z)))
		if q.Part[0] == 0 {
			continue
		}
		part, v := float32(pull*dragMost*2/(dragLooks+1)*(1+1/dragLooks-far)), b.ink.mix(q)
		sum.r, sum.g, sum.b, whole = sum.r+part*v.r, sum.g+part*v.g, sum.b+part*v.b, whole+part
	}
	c = c.scaled(1 - whole)
	return light{c.r + sum.r, c.g + sum.g, c.b + sum.b}
}
