package relief

import (
	"math"
	"slices"

	"pourbench/pour/script"
)

// Piped is a whole top piped full by eye: swirls out of a star tip, shoulder to shoulder, each coiled up to a tip. Of an icing of that shape
// Volume is all of it, and its one spot is the middle of the loaf. All its figures are by eye, no source.
const Piped = "piped"

const (
	pipedGap    = 2.2  // between swirls, by the mean height
	pipedLeast  = 20   // mm
	pipedMost   = 36   // mm
	pipedReach  = 0.65 // radius of a swirl, of the gap
	pipedShift  = 0.25 // of the gap, every row from where it would stand alone
	pipedWalls  = 0.4  // of that stays at the loaf's ends: a hand leaves no hole there, nor pipes a peak against the wall
	pipedBed    = 0.08 // of a swirl's height there is at the foot of the swirls about a gap
	pipedFalls  = 0.35 // how steeply it falls from there into the gap, of the height to the radius
	pipedSway   = 0.6  // mm, how far seams of a cut waver: one round of a neighbour bulges, the next gives way
	pipedVeins  = 0.13 // how far two colours of a bag run into each other there, of its width
	pipedShows  = 3    // mm of icing over them, from which on they do so in full
	pipedUnder  = 0.5
	pipedSeam   = 0.22 // how much darker a cut is where air was shut in between two swirls
	pipedMeets  = 0.35 // mm, that such a slit is wide at the most
	pipedOpens  = 0.62 // how much of such a border has grown together, 0 to 1
	pipedRagged = 0.05 // how unevenly a swirl runs out between its neighbours, of how far
	pipedPushed = 0.6  // of the height at a place, below which what stood there was pushed aside by the swirl over it
	pipedEnds   = 0.8  // mm, further out at the loaf's ends: a nozzle leans against the wall there
	pipedAir    = 1.5  // mm, that a picture keeps free over the highest tip
	bearsLess   = 0.55 // how much less icing bears on the base between two swirls than in their middles
	bearsOver   = 1.4  // so far a swirl is felt there, of its radius
	bearsRounds = 0.12 // and how much more under their rounds
	pipedRound  = 2.4  // mm, over which the edge of it all is rounded
	pipedCorner = 7    // mm, radius of its corners
)

// piped is the form of a top piped full.
type piped struct {
	long, wide    float64
	columns, rows int
	swirls        []pipedSwirl // row by row along the loaf
	scale         float64      // of all heights, to the icing's volume
	bed           float64      // of the unscaled height
	striped       bool
	own           []float64 // by portion: what stands for it across a bag
	most          float64
	even          *piped // the same without the ridges of the nozzle, as a wire leaves it
}

func newPiped(c *Icing, r Recipe) form {
	if !(r.L > 0 && r.W > 0 && c.Volume > 0) {
		return nil
	}
	mean := c.Volume / (r.L * r.W)
	want := min(max(mean*pipedGap, pipedLeast), pipedMost)
	p := &piped{
		long: r.L, wide: r.W, columns: int(max(1, math.Round(r.L/want))), rows: int(max(1, math.Round(r.W/want))), scale: 1, striped: c.Striped, bed: pipedBed,
	}
	sum := 0.0
	for _, s := range c.Shares {
		p.own = append(p.own, sum+s/2)
		sum += s
	}
	p.set(r.Seed, newTurns(c.Shares))
	if drawn := drawnVolume(p, min(r.L, r.W)/64); drawn > 0 {
		p.scale = c.Volume / drawn
	}
	p.most = p.highest() + pipedAir
	even := *p
	even.swirls = slices.Clone(p.swirls)
	for k := range even.swirls {
		even.swirls[k].star = 0
	}
	p.even = &even
	return p
}

// set sets the swirls: every other row stands in the gaps of the one before.
func (p *piped) set(seed int64, take *turns) {
	d := script.NewDice(seed, 0x91b)
	gapX, gapY := p.long/float64(p.columns), p.wide/float64(p.rows)
	reach := pipedReach * math.Hypot(gapX, gapY) / math.Sqrt2
	for j := range p.rows {
		for i := range p.columns {
			s := newSwirl(&d, reach, (i+j%2)%3)
			if j%2 == 1 { // the hand comes back, and goes round the other way
				s.way = -1
			}
			s.x = gapX * (float64(i) + 0.5 + p.shift(i, j) + d.Between(-0.08, 0.08))
			s.y = gapY * (float64(j) + 0.5 + d.Between(-0.07, 0.07))
			s.portion = take.next()
			s.within(p.long, p.wide)
			p.swirls = append(p.swirls, s)
		}
	}
}

// shift is how far a swirl is shifted along the loaf, of the gap: less near the ends.
func (p *piped) shift(column, row int) float64 {
	way := pipedShift
	if row%2 == 1 {
		way = -pipedShift
	}
	return way * (pipedWalls + (1-pipedWalls)*min(1, float64(column)/2, float64(p.columns-1-column)/2))
}

// edge is how much of its height the icing has so far inside its outline: it is round at its edge, which touches the wall here and there.
func (p *piped) edge(x, y float64) float64 {
	in := min(x+pipedEnds, p.long-x+pipedEnds, y, p.wide-y)
	if a, b := pipedCorner-min(x, p.long-x), pipedCorner-min(y, p.wide-y); a > 0 && b > 0 {
		in = pipedCorner - math.Hypot(a, b)
	}
	if in > pipedRound+2 { // further in than any wall is felt
		return 1
	}
	switch in += touches(x, y); {
	case in <= 0:
		return 0
	case in >= pipedRound:
		return 1
	}
	t := 1 - in/pipedRound
	return math.Sqrt(1 - t*t)
}

// touches is how far the icing at a wall reaches past it, had it been free to, mm: by eye, no source.
func touches(x, y float64) float64 {
	return 0.9*math.Sin(x/7+0.6*math.Sin(x/17)+y/5.3+0.9*math.Sin(y/13)) + 0.5*math.Sin(x/3.1-y/2.6+1.1) - 0.05
}

func (p *piped) at(x, y float64) (z, across float64) {
	x, y = x+p.long/2, y+p.wide/2
	edge := p.edge(x, y)
	if edge == 0 {
		return 0, 0
	}
	z, s, u := p.over(x, y)
	return edge * z * p.scale, p.across(s, x, y, u)
}

// evened is how thick the icing is at a place where a wire has drawn its ridges flat.
func (p *piped) evened(x, y float64) float64 {
	z, _ := p.even.at(x, y)
	return z
}

// over is the unscaled height over a place, which swirl that is of, and how far out on it.
func (p *piped) over(x, y float64) (z float64, of *pipedSwirl, u float64) {
	return p.under(x, y, math.Inf(1))
}

// under is [piped.over] as it was when the icing first stood so high there, unscaled: swirls are piped one after the other, each over the rims of
// those before it, so that what lies at a height is of the first that reached it.
func (p *piped) under(x, y, up float64) (z float64, of *pipedSwirl, u float64) {
	i, j := int(x/p.long*float64(p.columns)), int(y/p.wide*float64(p.rows))
	first, last := max(0, i-2), min(p.columns-1, i+2)
	near, least := math.Inf(1), math.Inf(1)
	var h heap
	for b := max(0, j-1); b <= min(p.rows-1, j+1); b++ {
		for a := first; a <= last; a++ {
			k := b*p.columns + a
			if b%2 == 1 { // the hand comes back along every other row
				k = b*p.columns + first + last - a
			}
			s := &p.swirls[k]
			r := math.Sqrt((x-s.x)*(x-s.x)+(y-s.y)*(y-s.y)) / s.radius
			least = min(least, r)
			if z == 0 && r < near*(1+2*pipedRagged) { // where nothing is piped the nearest has run out
				if ragged := r * (1 + pipedRagged*math.Sin(x/1.9+y/2.7+9*s.phase)); ragged < near {
					near, of, u = ragged, s, r
				}
			}
			if r > s.far || z >= up {
				continue
			}
			out, angle := s.lies(x, y)
			var mine bool
			if h, mine = s.over(h, x, y, out, angle); mine {
				of, u = s, out
			}
			z = h.z
		}
	}
	ragged := 1 + pipedRagged*(math.Sin(x/1.3-y/1.9)+math.Sin(x/3.7+y/2.9))
	level := p.bed - pipedFalls*max(0, least*ragged-0.85) // the last of a swirl runs out into the gaps, in the middle of which the base is bare
	if level > 0 && (math.IsInf(up, 1) || z < up) {
		z = softer(z, level, 0.08)
	}
	return z, of, min(1, u)
}

// across is where across its bag the icing of a place comes from: side by side in the strand, which twists a little, or a bag for every swirl.
func (p *piped) across(s *pipedSwirl, x, y, u float64) float64 {
	if !p.striped {
		if int(s.portion) < len(p.own) {
			return p.own[s.portion]
		}
		return 0
	}
	_, angle := s.lies(x, y)
	q := s.turn(angle, u) + 0.16*math.Sin(x/6.1+s.phase*9)*math.Cos(y/4.7) + 0.1*math.Sin(9*u+20*s.phase)
	return q - math.Floor(q)
}

// within is where across its bag the icing inside comes from, so far below the top of a place where it is so thick, and how bright a cut is there that goes
// along the loaf or across it.
func (p *piped) within(x, y, thick, below float64, side bool) (across, tone float64) {
	x, y = x+p.long/2, y+p.wide/2
	x, y = min(max(x, 0), p.long), min(max(y, 0), p.wide)
	part := p.scale * max(0.2, p.edge(x, y))
	z, up := thick/part, (thick-below)/part
	mm := p.scale * up
	sway := pipedSway * smooth(below/pipedShows) * (0.7*math.Sin(mm/1.9+x/6.3+y/5.1) + 0.2*math.Sin(mm/1.13-x/4.1+y/7.7+1.3*math.Sin(mm/2.9)))
	swayX, swayY := 0.0, sway // in the cut: out of it, what lies just behind would show in spots
	if side {
		swayX, swayY = sway, 0
	}
	swayX, swayY = min(max(x+swayX, 0), p.long), min(max(y+swayY, 0), p.wide)
	s, u := p.even.pressed(swayX, swayY, up, z) // one swirl sinks into the other's ridges and fills them
	r, angle := s.lies(swayX, swayY)
	deep := max(0, z-up) / s.high
	tone = s.cutAt(r, angle, up/s.high, p.scale*s.high)
	if wide := pipedMeets * opens(x, y, p.scale*up); wide > 0 && p.even.meets(s, swayX, swayY, up, z, wide) {
		tone -= pipedSeam
	}
	across = p.across(s, x, y, min(1, u+pipedUnder*deep))
	if p.striped { // folded into each other as the strand was laid
		across += pipedVeins * smooth(below/pipedShows) * math.Sin(0.9*r*s.radius+0.5*mm+2.1*math.Sin(mm/3.4+x/6.7-y/5.3)+1.1*math.Sin(mm/1.7+y/3.3+x/4.1))
		across -= math.Floor(across)
	}
	return across, tone
}

// pressed is which swirl a height is of at a place where the icing stands z high, unscaled, and how far out on it. The rim of one that the next was
// piped over is pushed aside where little of it stood: else it would show in a cut as a disc.
func (p *piped) pressed(x, y, up, z float64) (of *pipedSwirl, u float64) {
	stood, of, u := p.under(x, y, up)
	if stood < pipedPushed*z {
		_, of, u = p.over(x, y)
	}
	return of, u
}

// opens is how far the border between two swirls stands open at a place, of how far it ever does; 0 or less: not at all.
func opens(x, y, up float64) float64 {
	v := 0.6*math.Sin(1.7*up+x/2.3-y/3.1) + 0.4*math.Sin(3.9*up-x/1.7+y/1.3+1.1)
	return (v - pipedOpens) / (1 - pipedOpens)
}

// meets says whether another swirl than the one there begins within so many mm of a place inside.
func (p *piped) meets(s *pipedSwirl, x, y, up, z, wide float64) bool {
	x, y = min(x+wide, p.long), min(y+wide, p.wide)
	of, _ := p.pressed(x, y, up+wide/p.scale, z)
	return of != s
}

// highest looks for the highest tip, which are too thin to be found by looks all over the loaf.
func (p *piped) highest() float64 {
	const about, step = 0.4, 0.04 // of a swirl's radius
	most := 0.0
	for k := range p.swirls {
		s := &p.swirls[k]
		for dx := -about; dx <= about; dx += step {
			for dy := -about; dy <= about; dy += step {
				z, _ := p.at(s.x+dx*s.radius-p.long/2, s.y+dy*s.radius-p.wide/2)
				most = max(most, z)
			}
		}
	}
	return most
}

// load is how much icing bears on the base at a place, mm: under a swirl's middle the nozzle pressed it down, under its rounds a little more each, and
// between two swirls the base was left to rise.
func (p *piped) load(x, y float64) float64 {
	x, y = x+p.long/2, y+p.wide/2
	i, j := int(x/p.long*float64(p.columns)), int(y/p.wide*float64(p.rows))
	sum, all := 0.0, 0.0
	for b := max(0, j-1); b <= min(p.rows-1, j+1); b++ {
		for a := max(0, i-2); a <= min(p.columns-1, i+2); a++ {
			s := &p.swirls[b*p.columns+a]
			r := ((x-s.x)*(x-s.x) + (y-s.y)*(y-s.y)) / (s.radius * s.radius)
			if r > bearsOver*bearsOver {
				continue
			}
			r = math.Sqrt(r)
			nearer := squared(squared(1 - squared(r/bearsOver)))
			falls := 1 - bearsLess*smooth((r-0.3)/0.5) + bearsRounds*math.Sin(2*math.Pi*(r-0.2)/0.45)
			sum, all = sum+nearer*s.stands(0.8*min(1, r))*falls, all+nearer
		}
	}
	return p.scale * p.edge(x, y) * sum / max(all, 1e-9)
}

func (p *piped) reach() (x, y float64) { return p.long / 2, p.wide / 2 }
func (p *piped) high() float64         { return p.most }
