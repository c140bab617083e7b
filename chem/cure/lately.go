package cure

import "math"

// Lost is what a bar lost between two of its weighings, by nothing but them.
type Lost struct {
	FromDay, ToDay float64
	Percent        Estimate // of what it weighed on the first of the two; below 0: it gained
}

// Days is how long that took.
func (l Lost) Days() float64 { return l.ToDay - l.FromDay }

// Lately is what a bar lost up to its last weighing, each good to sdG: over the week before it, or from that earlier weighing which lies nearest to a
// week before. Weighings are by day; false: there is none a day before the last. No law is in it.
func Lately(w []Weighing, sdG float64) (Lost, bool) {
	if len(w) < 2 {
		return Lost{}, false
	}
	last, best := w[len(w)-1], -1
	off := func(i int) float64 { return math.Abs(last.Day - w[i].Day - weekDays) }
	for i := range w {
		if last.Day-w[i].Day >= 1 && (best < 0 || off(i) < off(best)) {
			best = i
		}
	}
	if best < 0 {
		return Lost{}, false
	}
	from := w[best]
	return Lost{from.Day, last.Day, Estimate{100 * (from.G - last.G) / from.G, 100 * math.Sqrt2 * sdG / from.G}}, true
}
