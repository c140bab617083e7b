package swirl

import (
	"math"

	"pourbench/pour/script"
)

// layout is how colours lie in the pot, a disk of radius 1.
type layout interface {
	at(u, v float64) int
	// upto returns the layout as it is after the first n acts of the script; the pot's own batter, or what own says, lies where later
	// acts pour.
	upto(n, own int) layout
}

// piece is a portion's place in the pot, and what part of the pot's batter it is.
type piece struct {
	portion int
	share   float64
	act     int // that pours it; less than 0 for the pot's own batter
}

// pieces is what lies in the pot side by side, round by round, in the order it was poured in. The pot's own batter lies before every
// round or, with the pot between, before every colour.
func (b *builder) pieces() (rounds [][]piece) {
	own := piece{act: -1}
	for i, a := range b.acts {
		if a.Kind != script.IntoPot {
			continue
		}
		if len(rounds) == 0 || a.Round > len(rounds) {
			rounds = append(rounds, []piece{own})
		}
		list := &rounds[len(rounds)-1]
		if b.PotBetween && (*list)[len(*list)-1].portion != 0 {
			*list = append(*list, own)
		}
		*list = append(*list, piece{a.Jug, a.Share, i})
	}
	if len(rounds) == 0 {
		return [][]piece{{{0, 1, -1}}}
	}
	fillPot(rounds)
	return rounds
}

// fillPot gives the pieces of the pot's own batter their shares: every round is as large as the others, and in a round they are alike.
func fillPot(rounds [][]piece) {
	for _, list := range rounds {
		colours, own := 0.0, 0.0
		for _, p := range list {
			colours += p.share
			if p.portion == 0 {
				own++
			}
		}
		for i := range list {
			if list[i].portion == 0 {
				list[i].share = max(0, 1/float64(len(rounds))-colours) / own
			}
		}
	}
}

func (b *builder) potLayout() layout {
	rounds := b.pieces()
	if b.Technique == script.PotSpots {
		return b.nests(rounds)
	}
	var s beside
	sum := 0.0
	for _, list := range rounds {
		for _, p := range list {
			sum += p.share
			s.until, s.portion, s.act = append(s.until, sum), append(s.portion, p.portion), append(s.act, p.act)
		}
	}
	if b.Technique == script.PotStripes {
		return &bands{s}
	}
	return &sectors{s}
}

// beside is colours side by side, each in its stretch of [0, 1]; until holds cumulative shares.
type beside struct {
	until   []float64
	portion []int
	act     []int // that pours each
}

func (s *beside) pick(v float64) int { return pick(s.until, s.portion, v) }

// before is what the first n acts pour; own lies where the others will.
func (s *beside) before(n, own int) beside {
	part := *s
	part.portion = append([]int(nil), s.portion...)
	for i, act := range s.act {
		if act >= n {
			part.portion[i] = own
		}
	}
	return part
}

// sectors are slices of the pot like those of a cake.
type sectors struct{ beside }

func (s *sectors) at(u, v float64) int { return s.pick(math.Atan2(v, u)/(2*math.Pi) + 0.5) }

func (s *sectors) upto(n, own int) layout { return &sectors{s.before(n, own)} }

// bands are stripes poured side by side into the pot.
type bands struct{ beside }

func (b *bands) at(u, _ float64) int {
	u = clamp(u, -1, 1)
	return b.pick((u*math.Sqrt(1-u*u)+math.Asin(u))/math.Pi + 0.5)
}

func (b *bands) upto(n, own int) layout { return &bands{b.before(n, own)} }

// nests are colours poured one into another in several places of the pot. The pot is cut into rings of wedges; by a
// map that keeps measure a wedge is a unit square, and in its middle lie the portions as nested disks of exact area, each off the middle of
// the one it is poured into, as a hand never meets it.
type nests struct {
	rows   []potRing
	rounds [][]piece
	aside  [][]vec2   // by what part of the room it has each disk lies aside of the one it is in, as many as the pieces of a round
	spots  [][]nested // from the middle out; the wedges take turns
	own    int        // lies along the wall of the pot, and round the disks
	pot    float64    // the share of the pot's own batter
}

// nested is a portion poured into a wedge of the pot that is a unit square.
type nested struct {
	portion int
	middle  vec2
	radius  float64
}

// How spots lie in the pot: by eye, no source.
const (
	rimPart    = 0.4  // of the pot's own batter lies along its wall, where nothing is poured
	leastAside = 0.55 // of the room it has: how far a spot lies aside of what it is poured into at least
	mostAside  = 0.9  // and at most
)

// potRing is a ring of the pot cut into equal wedges.
type potRing struct {
	outer  float64 // r² of its rim
	wedges float64
	offset float64 // wedges
}

// nests has the colours of every round one in the other in a place of its own, the last poured in the middle and the pot outermost.
func (b *builder) nests(rounds [][]piece) layout {
	n := &nests{rows: []potRing{{outer: 1, wedges: 1}}, rounds: rounds}
	for _, list := range rounds {
		var aside []vec2
		for _, p := range list {
			if p.portion == 0 {
				n.pot += p.share
			}
			sin, cos := math.Sincos(b.d.Between(0, 2*math.Pi))
			far := b.d.Between(leastAside, mostAside)
			aside = append(aside, vec2{far * cos, far * sin})
		}
		n.aside = append(n.aside, aside)
	}
	if k := float64(len(rounds)); k > 1 {
		n.rows = []potRing{{outer: 1 / k, wedges: 1}, {outer: 1, wedges: k - 1}}
	}
	for i := range n.rows {
		n.rows[i].offset = b.d.Float()
	}
	n.nest(len(b.acts), 0)
	return n
}

// nest lays the pieces that the first n acts pour one into the other, a later one inside an earlier; what is left of a place is own.
func (n *nests) nest(acts, own int) {
	n.spots, n.own = nil, own
	for r, list := range n.rounds {
		var disks []nested
		sum, half, radius := 0.0, 0.5, squareRadius
		if r == 0 { // it is round, in the middle of the pot
			half, radius = 1/math.Sqrt(math.Pi), func(share float64) float64 { return math.Sqrt(share / math.Pi) }
		}
		for i := len(list) - 1; i > 0; i-- {
			if p := list[i]; p.act < acts && (p.act >= 0 || len(disks) > 0) {
				share := p.share
				if p.portion == 0 {
					share *= 1 - rimPart
				}
				sum += share * float64(len(n.rounds)) / (1 - rimPart*n.pot)
				disks = append(disks, nested{portion: p.portion, middle: n.aside[r][i], radius: radius(sum)})
			}
		}
		place(disks, half)
		n.spots = append(n.spots, disks)
	}
}

// place lays disks from the outermost in, each as far aside of the middle of the one it is in as it is told to be of the room there; one that
// does not fit into the square lies in its middle. half is how far the square reaches.
func place(disks []nested, half float64) {
	around := nested{radius: half}
	for i := len(disks) - 1; i >= 0; i-- {
		d := &disks[i]
		room := max(0, min(around.radius, half)-d.radius)
		d.middle = vec2{around.middle.y + room*d.middle.y, around.middle.z + room*d.middle.z}
		around = *d
	}
}

func (n *nests) upto(acts, own int) layout {
	part := *n
	part.nest(acts, own)
	return &part
}

func (n *nests) at(u, v float64) int {
	q := (u*u + v*v) / (1 - rimPart*n.pot)
	if q >= 1 {
		return n.own
	}
	inner, k := 0.0, 0
	for k < len(n.rows)-1 && q >= n.rows[k].outer {
		inner = n.rows[k].outer
		k++
	}
	row := n.rows[k]
	if row.wedges == 1 && inner == 0 {
		by := math.Sqrt(row.outer * (1 - rimPart*n.pot) * math.Pi) // radius of a disk of area 1, about the middle of the pot
		return n.within(0, vec2{u / by, v / by})
	}
	b := (q - inner) / (row.outer - inner)
	a := (math.Atan2(v, u)/(2*math.Pi)+0.5)*row.wedges + row.offset
	wedge := math.Floor(a)
	return n.within((int(wedge)%int(row.wedges)+k)%len(n.spots), vec2{a - wedge - 0.5, b - 0.5})
}

// within is what lies at a place of a wedge, from its middle.
func (n *nests) within(turn int, at vec2) int {
	for i := range n.spots[turn] {
		d := &n.spots[turn][i]
		if y, z := at.y-d.middle.y, at.z-d.middle.z; y*y+z*z < d.radius*d.radius {
			return d.portion
		}
	}
	return n.own
}

// squareRadius is the radius of a disk in the middle of the unit square of which so much lies in the square.
func squareRadius(share float64) float64 {
	if share <= math.Pi/4 {
		return math.Sqrt(max(0, share) / math.Pi)
	}
	low, high := 0.5, math.Sqrt2/2
	for range 40 {
		if mid := 0.5 * (low + high); withinSquare(mid) < share {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// withinSquare is the share of the unit square that lies within r of its middle.
func withinSquare(r float64) float64 {
	switch {
	case r <= 0.5:
		return math.Pi * r * r
	case r >= math.Sqrt2/2:
		return 1
	}
	return math.Pi*r*r - 4*(r*r*math.Acos(0.5/r)-0.5*math.Sqrt(r*r-0.25))
}
