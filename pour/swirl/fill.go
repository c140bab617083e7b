package swirl

import "math"

// stack is level layers: portion[i] fills up to top[i].
type stack struct {
	top     []float64 // mm, rising; the last is out of reach
	portion []int
}

func (s *stack) label(_, _, z float64) int {
	for i, t := range s.top {
		if z < t {
			return s.portion[i]
		}
	}
	return s.portion[len(s.portion)-1]
}

// plain is a slab of one portion.
func plain(portion int) *stack {
	return &stack{top: []float64{1e9}, portion: []int{portion}}
}

// stripes is bands standing side by side across the mould. Each has run out under the next at the bottom, so that a lower point reads
// further along the order, or further back: feet keeps every band's share of the slab exact however far they slant.
type stripes struct {
	until   []float64 // cumulative shares, rising to 1
	portion []int
	box     Box
	slant   float64 // how far the feet lean, of the width; negative to the left
	bow     wobble  // slow change of that along the loaf, times the slant
	act     []int   // the act that pours each
}

// upto is the stripes that the first n acts pour.
func (s *stripes) upto(n int) filling {
	part := *s
	part.portion = append([]int(nil), s.portion...)
	for i, act := range s.act {
		if act >= n {
			part.portion[i] = Empty
		}
	}
	return &part
}

func (s *stripes) label(x, y, z float64) int {
	slant, v := s.slant*s.bow.at(x), y/s.box.W
	up := 1 - z/s.box.H
	if slant < 0 {
		return pick(s.until, s.portion, 1-feet(1-v+min(-slant, 1)*up*up, min(-slant, 1)))
	}
	return pick(s.until, s.portion, feet(v+min(slant, 1)*up*up, min(slant, 1)))
}

// grain is along the bands, which stand.
func (s *stripes) grain(x, y, z float64) (along, across float64) { return z + veinDrift*x, y }

// feet is the share of the unit square in which a + k·b² lies below v, for 0 <= k <= 1.
func feet(v, k float64) float64 {
	switch {
	case k < 1e-9:
		return clamp(v, 0, 1)
	case v < k:
		return 2. / 3 * v * math.Sqrt(max(0, v)/k)
	case v <= 1:
		return v - k/3
	}
	b := math.Sqrt(min(1, (v-1)/k))
	return 1 - (1-v)*(1-b) - k*(1-b*b*b)/3
}

// rank is the share of the unit square in which a + k·b lies below v: the rank of a slanted plane, for 0 <= k <= 1.
func rank(v, k float64) float64 {
	switch {
	case k < 1e-9:
		return clamp(v, 0, 1)
	case v < k:
		return max(0, v*v/(2*k))
	case v <= 1:
		return v - k/2
	}
	r := max(0, 1+k-v)
	return 1 - r*r/(2*k)
}

// pick returns the portion in whose stretch of [0, 1] v lies.
func pick(until []float64, portion []int, v float64) int {
	for i, u := range until {
		if v < u {
			return portion[i]
		}
	}
	return portion[len(portion)-1]
}

// cumulate turns shares into the ends of their stretches of [0, 1], leaving out portions that have none.
func cumulate(shares []float64) (until []float64, portion []int) {
	sum := 0.0
	for i, v := range shares {
		if v > 0 {
			sum += v
			until, portion = append(until, sum), append(portion, i)
		}
	}
	return until, portion
}
