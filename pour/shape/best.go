package shape

import (
	"math"
	"slices"
)

// Wanted is what the best cut plan is looked for in.
type Wanted struct {
	Stretch
	Thin, Thick float64 // least and most thickness of a bar, mm
	Target      float64 // thickness that bars ought to have; 0: such that nothing is left over
	Step        float64 // cuts stand on multiples of it, mm from end A
	Clear       float64 // least between a cut's edge and a feature, mm
	Features    []Feature
	Mass        Mass // without the features: bars ought to weigh the same; nil: to be as thick as each other
}

// Planned is the best cut plan. Its goals, each before the next: most bars; every feature in a bar of its own; least spread of the bars' mass or
// thickness; features in the middle of their bars; least left over; then a first cut nearer to end A. No bar is thinner or thicker than allowed and
// no cut nearer to a feature than wanted.
type Planned struct {
	Cutting
	Tight   [][2]int // neighbours between which no cut has room: the two share a bar
	Lost    int      // groups of features that have no bar, or have to share one
	Spread  int64    // squares of the bars' deviations, in [MassGrain] or [LengthGrain]
	Off     int64    // squares of how far features are off the middle, in [LengthGrain]
	Over    float64  // what is left over beside the least trims, mm
	Crowded bool     // there is no plan in which no bar holds more than one group of features
}

// How finely two plans are told apart, which is the tolerance of a goal before the next counts: what a kitchen scale and a rule show.
const (
	MassGrain   = 0.1 // g
	LengthGrain = 0.1 // mm
)

// Best finds the best cut plan: dynamic programming over the places of the cuts, bar by bar. It tries the most bars first and then one fewer, with no
// more than one group of features in a bar; only where no number of bars can be cut so may bars hold several. ok is false where nothing can be cut.
func (w Wanted) Best() (p Planned, ok bool) {
	if !(w.Thin > 0) || w.Thick < w.Thin || !(w.Step > 0) {
		return Planned{}, false
	}
	f := w.field()
	for _, crowded := range []bool{false, true} {
		for n := w.Most(w.Thin); n > 0; n-- {
			if p, ok := f.plan(n, crowded); ok {
				p.Crowded = crowded
				p.Tight = f.tight
				return p, true
			}
		}
	}
	return Planned{Tight: f.tight}, false
}

// field is where cuts may stand, and what lies between them.
type field struct {
	Wanted
	groups []Feature // features between which no cut has room are one
	tight  [][2]int
	nodes  []node
	low    float64 // where the first bar may begin
	high   float64 // where the last bar may end
}

// node is a place where one bar ends and the next begins.
type node struct {
	ends, starts  float64
	first, last   bool // a bar may begin the plan, end it here
	held          int  // groups before it
	weighs, after float64
}

func (w Wanted) field() *field {
	f := &field{Wanted: w, high: w.Length}
	f.group()
	if w.CutA {
		f.low = w.TrimA + w.Kerf
	}
	if w.CutB {
		f.high -= w.TrimB + w.Kerf
	}
	if w.Slice > 0 && w.SliceAtB {
		f.high -= w.Slice + w.Kerf
	} else if w.Slice > 0 {
		f.low += w.Slice + w.Kerf
	}
	if !w.CutA {
		f.add(node{ends: f.low, starts: f.low, first: f.freeSlice(f.low-w.Kerf, !w.SliceAtB)})
	}
	for i := math.Ceil((f.low - w.Kerf/2) / w.Step); ; i++ {
		x := i * w.Step
		if x > f.high+w.Kerf/2+grain {
			break
		}
		n := node{ends: x - w.Kerf/2, starts: x + w.Kerf/2}
		if !f.free(n.ends, n.starts) {
			continue
		}
		n.first = w.CutA && n.starts >= f.low-grain && f.freeSlice(n.ends-w.Slice-w.Kerf, !w.SliceAtB)
		n.last = w.CutB && n.ends <= f.high+grain && f.freeSlice(n.starts+w.Slice, w.SliceAtB)
		f.add(n)
	}
	if !w.CutB {
		f.add(node{ends: f.high, starts: f.high, last: f.freeSlice(f.high, w.SliceAtB)})
	}
	return f
}

// free reports whether a cut from one edge to the other keeps off every feature.
func (f *field) free(from, to float64) bool {
	return !slices.ContainsFunc(f.groups, func(g Feature) bool { return to > g.From-f.Clear+grain && from < g.To+f.Clear-grain })
}

// freeSlice is the same for the cut behind a sample slice, where there is one at that end.
func (f *field) freeSlice(from float64, there bool) bool {
	return f.Slice <= 0 || !there || f.free(from, from+f.Kerf)
}

func (f *field) add(n node) {
	for _, g := range f.groups {
		if g.Middle() < n.ends {
			n.held++
		}
	}
	if f.Mass != nil {
		n.weighs, n.after = f.Mass(n.ends), f.Mass(n.starts)
	}
	f.nodes = append(f.nodes, n)
}

// group puts features in their order and makes one of those between which no cut has room: the window from one's end to the next's beginning, less
// the clearance on both sides and the cut, is empty.
func (f *field) group() {
	order := make([]int, len(f.Features))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case f.Features[a].From < f.Features[b].From:
			return -1
		case f.Features[a].From > f.Features[b].From:
			return 1
		}
		return 0
	})
	widest := -1 // the one of the group that reaches furthest
	for _, i := range order {
		x := f.Features[i]
		if n := len(f.groups); n > 0 && x.From-f.groups[n-1].To < 2*f.Clear+f.Kerf-grain {
			f.tight = append(f.tight, [2]int{widest, i})
			g := &f.groups[n-1]
			g.Mass += x.Mass
			if x.To > g.To {
				g.To, widest = x.To, i
			}
			continue
		}
		f.groups, widest = append(f.groups, x), i
	}
}

// worth is how good a plan is so far, and the node its last bar began at.
type worth struct {
	lost        int
	spread, off int64
	start, prev int32
	set         bool
}

// before reports whether a plan is better than another as far as that can be told before its end.
func (a worth) before(b worth) bool {
	switch {
	case !b.set:
		return true
	case a.lost != b.lost:
		return a.lost < b.lost
	case a.spread != b.spread:
		return a.spread < b.spread
	case a.off != b.off:
		return a.off < b.off
	}
	return a.start < b.start
}

// plan is the best plan of a number of bars.
func (f *field) plan(bars int, crowded bool) (Planned, bool) {
	mean := f.mean(bars)
	levels := make([]level, bars+1)
	levels[0] = f.level(0, bars)
	for i := range levels[0].worth {
		n := levels[0].from + i
		levels[0].worth[i] = worth{lost: f.nodes[n].held, start: int32(n), prev: -1, set: f.nodes[n].first}
	}
	for j := 1; j <= bars; j++ {
		levels[j] = f.level(j, bars)
		f.step(&levels[j-1], &levels[j], mean, crowded)
	}
	return f.read(levels)
}

// level is every node at which a number of bars can have been cut with room for the others.
type level struct {
	from  int
	worth []worth
}

func (f *field) level(done, bars int) level {
	thin, thick := f.Thin+f.Kerf, f.Thick+f.Kerf
	low, high := f.low+float64(done)*thin, f.high+f.Kerf-float64(bars-done)*thin
	if !f.CutA {
		high = min(high, f.low+float64(done)*thick)
	}
	if !f.CutB {
		low = max(low, f.high+f.Kerf-float64(bars-done)*thick)
	}
	return f.between(low, high, done, bars)
}

// between is the level of the nodes whose next bar may begin from low to high; the ends that are kept have no cut.
func (f *field) between(low, high float64, done, bars int) level {
	if done == 0 && !f.CutA {
		return level{from: 0, worth: make([]worth, 1)}
	}
	if done == bars && !f.CutB {
		return level{from: len(f.nodes) - 1, worth: make([]worth, 1)}
	}
	from := f.search(low - grain)
	to := f.search(high + grain)
	return level{from: from, worth: make([]worth, max(0, to-from))}
}

// search is the first node whose next bar begins at a place or behind it.
func (f *field) search(at float64) int {
	i, _ := slices.BinarySearchFunc(f.nodes, at, func(n node, at float64) int {
		if n.starts < at {
			return -1
		}
		return 1
	})
	return i
}

// step cuts one more bar in every way that is allowed.
func (f *field) step(from, to *level, mean float64, crowded bool) {
	first := 0
	for i := range to.worth {
		end := &f.nodes[to.from+i]
		for first < len(from.worth) && end.ends-f.nodes[from.from+first].starts > f.Thick+grain {
			first++
		}
		best := &to.worth[i]
		for m := first; m < len(from.worth); m++ {
			begin := &f.nodes[from.from+m]
			if end.ends-begin.starts < f.Thin-grain {
				break
			}
			held := end.held - begin.held
			if !from.worth[m].set || held > 1 && !crowded {
				continue
			}
			w := from.worth[m]
			w.prev = int32(from.from + m)
			w.lost += max(0, held-1)
			d := f.deviation(begin, end, mean)
			w.spread += d * d
			if held > 0 {
				d = grains((f.groups[begin.held].From+f.groups[end.held-1].To-begin.starts-end.ends)/2, LengthGrain)
				w.off += d * d
			}
			if w.before(*best) {
				*best = w
			}
		}
	}
}

// grains is a length or a mass in whole grains.
func grains(v, grain float64) int64 { return int64(math.Round(math.Abs(v) / grain)) }

// deviation of a bar from the mean, in grains.
func (f *field) deviation(begin, end *node, mean float64) int64 {
	if f.Mass == nil {
		return grains(end.ends-begin.starts-mean, LengthGrain)
	}
	g := end.weighs - begin.after
	for _, x := range f.groups[begin.held:end.held] {
		g += x.Mass
	}
	return grains(g-mean, MassGrain)
}

// mean is the thickness or mass that bars ought to have.
func (f *field) mean(bars int) float64 {
	n := float64(bars)
	target := f.Target
	if !(target > 0) {
		target = (f.high - f.low - (n-1)*f.Kerf) / n
	}
	if f.Mass == nil {
		return target
	}
	g := 0.0
	for _, x := range f.groups {
		g += x.Mass
	}
	return target*(f.Mass(f.high)-f.Mass(f.low))/(f.high-f.low) + g/n
}

// read takes the best plan out of the levels.
func (f *field) read(levels []level) (Planned, bool) {
	last := levels[len(levels)-1]
	var best worth
	at, over := -1, 0.0
	for i, w := range last.worth {
		n := f.nodes[last.from+i]
		if !w.set || !n.last {
			continue
		}
		w.lost += len(f.groups) - n.held
		left := f.nodes[w.start].starts - f.low + f.high - n.ends
		a, b := w, best
		a.start, b.start = 0, 0
		better, worse := a.before(b), b.before(a)
		if at < 0 || better || !worse && (left < over-grain || left < over+grain && w.start < best.start) {
			best, at, over = w, last.from+i, left
		}
	}
	if at < 0 {
		return Planned{}, false
	}
	p := Planned{Lost: best.lost, Spread: best.spread, Off: best.off, Over: over}
	var thickness []float64
	from := f.nodes[at]
	for j := len(levels) - 1; j > 0; j-- {
		w := levels[j].worth[at-levels[j].from]
		at = int(w.prev)
		thickness = append(thickness, from.ends-f.nodes[at].starts)
		from = f.nodes[at]
	}
	slices.Reverse(thickness)
	s := f.Stretch
	s.TrimA += from.starts - f.low
	p.Cutting = s.Lay(thickness)
	for i, x := range p.Cuts {
		if on := Mark(x, f.Step); math.Abs(on-x) < grain {
			p.Cuts[i] = on
		}
	}
	return p, true
}
