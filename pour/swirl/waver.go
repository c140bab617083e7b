package swirl

import "math"

const waverModes = 3

// waver is how a hand wavers: every part of a way goes a little aside by itself, and otherwise so further along the loaf. By eye, no source.
type waver struct {
	amp   float64 // mm, of each of the waves
	rise  float64 // what part of that it goes up and down
	modes [waverModes]struct{ along, way, y, z float64 }
}

// waver draws a waver of up to amp mm: waves of 250 to 700 mm along the loaf, each a few of them from end to end of the way: a wire is stiff.
func (d *dice) waver(amp, most float64) waver { return d.waves(amp, most, 250, 700) }

// waves is waver in waves of a range of lengths along the loaf, mm.
func (d *dice) waves(amp, most, short, long float64) waver {
	w := waver{amp: amp / waverModes, rise: 1}
	for i := range w.modes {
		m := &w.modes[i]
		m.along = 2 * math.Pi / d.Between(short, long) * d.Sign()
		m.way = 2 * math.Pi * d.Between(0.3, most)
		m.y, m.z = d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)
	}
	return w
}

// at is how far aside a place at a part of the way goes in one cross-section.
func (w *waver) at(x, part float64) (off vec2) {
	if w.amp == 0 {
		return off
	}
	for i := range w.modes {
		m := &w.modes[i]
		a := m.along*x + m.way*part
		off.y += w.amp * math.Sin(a+m.y)
		off.z += w.rise * w.amp * math.Sin(a+m.z)
	}
	return off
}
