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
// map that keeps measure a wedge is a unit square, and round its middle lie the portions as nested rings of exact area; those in the middle
// of the pot are round.
type nests struct {
	rows    []potRing
	rounds  [][]piece
	portion [][]int // orders from the middle out; the wedges take turns
	until   [][]float64
	own     int     // lies along the wall of the pot
	pot     float64 // the share of the pot's own batter
}

// rimPart is what part of the pot's own batter lies along its wall, where nothing is poured: by eye, no source.
const rimPart = 0.75

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
		for _, p := range list {
			if p.portion == 0 {
				n.pot += p.share
			}
		}
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
	n.portion, n.until, n.own = nil, nil, own
	for _, list := range n.rounds {
		var order []int
		var until []float64
		sum := 0.0
		for i := len(list) - 1; i > 0; i-- {
			if p := list[i]; p.act < acts && (p.act >= 0 || len(order) > 0) {
				share := p.share
				if p.portion == 0 {
					share *= 1 - rimPart
				}
				sum += share * float64(len(n.rounds)) / (1 - rimPart*n.pot)
				order, until = append(order, p.portion), append(until, sum)
			}
		}
		if sum < 1-1e-9 {
			order, until = append(order, own), append(until, 1)
		}
		n.portion, n.until = append(n.portion, order), append(n.until, until)
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
		return pick(n.until[0], n.portion[0], q/row.outer) // rings about the middle of the pot
	}
	b := (q - inner) / (row.outer - inner)
	a := (math.Atan2(v, u)/(2*math.Pi)+0.5)*row.wedges + row.offset
	wedge := math.Floor(a)
	turn := (int(wedge)%int(row.wedges) + k) % len(n.portion)
	return pick(n.until[turn], n.portion[turn], withinSquare(math.Hypot(a-wedge-0.5, b-0.5)))
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
