package shape

import (
	"math"
	"slices"
)

// Feature is what no cut may touch: an embed, or those that stand side by side across the loaf.
type Feature struct {
	From, To float64 // its extent along the loaf, mm from end A
	Mass     float64 // g it makes its bar heavier than plain soap; below 0: lighter
}

// Middle of the feature.
func (f Feature) Middle() float64 { return (f.From + f.To) / 2 }

// Gang is wires that cut all at once.
type Gang struct {
	Wires []float64 // where each stands, as measured from the first, rising, mm
	Kerf  float64
	Clear float64 // what is wanted between a cut's edge and a feature
}

// Gap is what is free between a wire and the next, mm.
func (g Gang) Gap(i int) float64 { return g.Wires[i+1] - g.Wires[i] - g.Kerf }

// Pitch is the mean distance from wire to wire, mm.
func (g Gang) Pitch() float64 {
	if len(g.Wires) < 2 {
		return 0
	}
	return (g.Wires[len(g.Wires)-1] - g.Wires[0]) / float64(len(g.Wires)-1)
}

// Place is how a gang stands on a loaf: N wires inside it leave N − 1 whole bars.
type Place struct {
	At     float64   // where its first wire meets the loaf
	Bars   int       // whole bars
	Errors []float64 // feature by feature: how far its middle stands beyond the middle of the gap it is in, mm
	Worst  float64   // the largest of them, either way; 0: no features
	Missed []int     // features that a wire comes nearer to than wanted, or that stand in no whole bar
}

// On cuts a stretch with the gang's first wire at a place. What is outside the outermost wires is trimmed; a slice is cut off the trim by hand
// where it has room.
func (g Gang) On(s Stretch, at float64) Cutting {
	var c Cutting
	edge := g.Kerf / 2
	for _, w := range g.Wires {
		if x := at + w; x-edge >= -grain && x+edge <= s.Length+grain {
			if n := len(c.Cuts); n > 0 {
				c.Bars = append(c.Bars, Part{c.Cuts[n-1] + edge, x - edge})
			}
			c.Cuts = append(c.Cuts, x)
		}
	}
	if len(c.Cuts) == 0 {
		return c
	}
	c.TrimA, c.TrimB = Part{0, max(0, c.Cuts[0]-edge)}, Part{min(s.Length, c.Cuts[len(c.Cuts)-1]+edge), s.Length}
	need := s.Slice + s.Kerf
	switch {
	case s.Slice <= 0:
	case !s.SliceAtB && c.TrimA.Length() > need:
		c.Slice = Part{c.TrimA.To - s.Slice, c.TrimA.To}
		c.TrimA.To = c.Slice.From - s.Kerf
		c.Cuts = slices.Insert(c.Cuts, 0, c.TrimA.To+s.Kerf/2)
	case s.SliceAtB && c.TrimB.Length() > need:
		c.Slice = Part{c.TrimB.From, c.TrimB.From + s.Slice}
		c.TrimB.From = c.Slice.To + s.Kerf
		c.Cuts = append(c.Cuts, c.TrimB.From-s.Kerf/2)
	}
	return c
}

// Judge says what the gang does to features with its first wire at a place.
func (g Gang) Judge(s Stretch, features []Feature, at float64) Place {
	p := Place{At: at, Errors: make([]float64, len(features))}
	edge := g.Kerf / 2
	inside := func(i int) bool { x := at + g.Wires[i]; return x-edge >= -grain && x+edge <= s.Length+grain }
	for i := range max(0, len(g.Wires)-1) {
		if inside(i) && inside(i+1) {
			p.Bars++
		}
	}
	for n, f := range features {
		i := g.gap(f.Middle() - at)
		p.Errors[n] = f.Middle() - at - (g.Wires[i]+g.Wires[i+1])/2
		p.Worst = max(p.Worst, math.Abs(p.Errors[n]))
		low, high := at+g.Wires[i]+edge+g.Clear, at+g.Wires[i+1]-edge-g.Clear
		if f.From < low-grain || f.To > high+grain || !inside(i) || !inside(i+1) {
			p.Missed = append(p.Missed, n)
		}
	}
	return p
}

// gap is the gap that a place after the first wire is in, or the nearest; right under a wire it is the one whose middle is nearer.
func (g Gang) gap(x float64) int {
	last := len(g.Wires) - 2
	after, _ := slices.BinarySearch(g.Wires, x+grain)
	before, _ := slices.BinarySearch(g.Wires, x-grain)
	a, b := min(max(0, before-1), last), min(max(0, after-1), last)
	if a != b && math.Abs(x-(g.Wires[a]+g.Wires[a+1])/2) <= math.Abs(x-(g.Wires[b]+g.Wires[b+1])/2) {
		return a
	}
	return b
}

// Best places the gang: most whole bars first, then most features clear, then the least worst error, where the largest and the smallest
// residual are opposite; ties: nearer to end A. Without features it stands in the middle. Fewer than two wires leave no bar: ok is false.
func (g Gang) Best(s Stretch, features []Feature) (best Place, ok bool) {
	if len(g.Wires) < 2 {
		return Place{}, false
	}
	rooms := g.rooms(s)
	if len(rooms) == 0 {
		return Place{}, false
	}
	if len(features) == 0 {
		return g.Judge(s, nil, rooms[len(rooms)/2].Middle()), true
	}
	for _, at := range g.candidates(rooms, features) {
		if p := g.Judge(s, features, at); !ok || better(p, best) {
			best, ok = p, true
		}
	}
	return best, ok
}

func better(a, b Place) bool {
	switch {
	case a.Bars != b.Bars:
		return a.Bars > b.Bars
	case len(a.Missed) != len(b.Missed):
		return len(a.Missed) < len(b.Missed)
	case math.Abs(a.Worst-b.Worst) > grain:
		return a.Worst < b.Worst
	default:
		return a.At < b.At-grain
	}
}

// room is where the first wire may stand for a number of whole bars from the gap named first.
type room struct {
	Part
	first, bars int
}

// rooms are the places of the first wire that leave most whole bars.
func (g Gang) rooms(s Stretch) []room {
	lowest, highest := s.TrimA+g.Kerf/2, s.Length-s.TrimB-g.Kerf/2
	if s.Slice > 0 && s.SliceAtB {
		highest -= s.Slice + s.Kerf
	} else if s.Slice > 0 {
		lowest += s.Slice + s.Kerf
	}
	for bars := len(g.Wires) - 1; bars > 0; bars-- {
		var rooms []room
		for first := range len(g.Wires) - bars {
			if r := (Part{lowest - g.Wires[first], highest - g.Wires[first+bars]}); r.Length() >= -grain {
				rooms = append(rooms, room{Part{r.From, max(r.From, r.To)}, first, bars})
			}
		}
		if rooms != nil {
			return rooms
		}
	}
	return nil
}

// candidates are the places that can be best. Where most features are clear at once, or in all of a room where none can be, they are the middle
// of the residuals for every way in which features can stand in gaps there, and the places where one comes to stand in another gap.
func (g Gang) candidates(rooms []room, features []Feature) []float64 {
	var out []float64
	for _, room := range rooms {
		regions := g.clearest(room, features)
		if regions == nil {
			regions = []Part{room.Part}
		}
		for _, r := range regions {
			steps := []float64{r.From, r.To}
			for _, f := range features {
				for _, w := range g.Wires {
					if at := f.Middle() - w; at > r.From && at < r.To {
						steps = append(steps, at)
					}
				}
			}
			slices.Sort(steps)
			for i, at := range steps {
				out = append(out, at)
				if i > 0 {
					out = append(out, min(max(g.level(features, (steps[i-1]+at)/2), steps[i-1]), at))
				}
			}
		}
	}
	return out
}

// level is where the largest and the smallest residual are opposite, every feature staying in the gap it is in with the gang at a place.
func (g Gang) level(features []Feature, at float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, f := range features {
		i := g.gap(f.Middle() - at)
		d := f.Middle() - (g.Wires[i]+g.Wires[i+1])/2
		low, high = min(low, d), max(high, d)
	}
	return (low + high) / 2
}

// clearest are the places of the first wire, in a room, at which most features are clear at once.
func (g Gang) clearest(r room, features []Feature) []Part {
	type edge struct {
		at    float64
		opens bool
	}
	var edges []edge
	for _, f := range features {
		for i := r.first; i < r.first+r.bars; i++ {
			from, to := max(r.From, f.To+g.Clear+g.Kerf/2-g.Wires[i+1]), min(r.To, f.From-g.Clear-g.Kerf/2-g.Wires[i])
			if from <= to+grain {
				edges = append(edges, edge{from, true}, edge{max(from, to), false})
			}
		}
	}
	slices.SortFunc(edges, func(a, b edge) int {
		switch {
		case a.at < b.at || (a.at == b.at && a.opens && !b.opens):
			return -1
		case a.at > b.at || (a.at == b.at && b.opens && !a.opens):
			return 1
		default:
			return 0
		}
	})
	var out []Part
	n, most := 0, 1
	for i, e := range edges {
		if !e.opens {
			n--
			continue
		}
		if n++; n > most {
			most, out = n, nil
		}
		if n == most {
			next := slices.IndexFunc(edges[i:], func(e edge) bool { return !e.opens })
			out = append(out, Part{e.at, edges[i+next].at})
		}
	}
	return out
}
