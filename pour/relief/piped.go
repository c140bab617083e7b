package relief

import (
	"math"

	"pourbench/pour/script"
)

// Piped is a whole top piped full by eye: swirls out of a star tip, shoulder to shoulder, each coiled up to a tip. Of an icing of that shape
// Volume is all of it, and its one spot is the middle of the loaf. All its figures are by eye, no source.
const Piped = "piped"

const (
	pipedGap    = 2.2  // between swirls, by the mean height
	pipedLeast  = 20   // mm
	pipedMost   = 36   // mm
	pipedReach  = 0.69 // radius of a swirl, of the gap
	pipedShift  = 0.25 // of the gap, every row from where it would stand alone
	pipedWalls  = 0.4  // of that stays at the loaf's ends: a hand leaves no hole there, nor pipes a peak against the wall
	pipedBed    = 0.3  // of a swirl's height there is between swirls
	pipedHole   = 1.04 // so far out on the nearest swirl the icing ends, in its radii
	pipedSway   = 1.7  // mm, how far the strands of a swirl bulge between its neighbour's
	pipedUnder  = 0.5
	pipedTier   = 6    // mm, between strands lying on each other
	pipedScale  = 0.45 // how much higher the middle of a strand's back is than its sides, of that
	pipedSeam   = 0.45 // mm, of a seam between two strands to either side
	pipedDark   = 0.34 // how much darker a seam is at the most where icing is cut
	pipedLayer  = 0.04 // how much darker a cut is a strand deep under its back
	pipedAir    = 0.8  // mm, radius of a pocket of air between strands
	pipedEnds   = 0.8  // mm, further out at the loaf's ends: a nozzle leans against the wall there
	pipedRound  = 5    // mm, over which the edge of it all is rounded
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
	p.most = highest(p)
	return p
}

// set sets the swirls: every other row stands in the gaps of the one before.
func (p *piped) set(seed int64, take *turns) {
	d := script.NewDice(seed, 0x91b)
	gapX, gapY := p.long/float64(p.columns), p.wide/float64(p.rows)
	reach := pipedReach * math.Hypot(gapX, gapY) / math.Sqrt2
	for j := range p.rows {
		for i := range p.columns {
			s := newSwirl(&d, reach)
			s.x = gapX * (float64(i) + 0.5 + p.shift(i, j) + d.Between(-0.08, 0.08))
			s.y = gapY * (float64(j) + 0.5 + d.Between(-0.07, 0.07))
			s.portion = take.next()
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
	return 0.9*math.Sin(x/7+0.6*math.Sin(x/17)+y/5.3+0.9*math.Sin(y/13)) + 0.5*math.Sin(x/3.1-y/2.6+1.1) - 0.35
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

// over is the unscaled height over a place, which swirl that is of, and how far out on it. Swirls are taken as they are piped, to and fro along the
// loaf: each presses down what stands there and lies over it with its round foot.
func (p *piped) over(x, y float64) (z float64, of *pipedSwirl, u float64) {
	i, j := int(x/p.long*float64(p.columns)), int(y/p.wide*float64(p.rows))
	from, to := max(0, i-1), min(p.columns-1, i+1)
	z = math.Inf(-1)
	least := math.Inf(1)
	for b := max(0, j-1); b <= min(p.rows-1, j+1); b++ {
		for a := from; a <= to; a++ {
			s := &p.swirls[b*p.columns+a]
			if b%2 == 1 {
				s = &p.swirls[b*p.columns+from+to-a]
			}
			r := math.Hypot(x-s.x, y-s.y) / s.radius
			if r > farthestPress && s.most(r) <= z {
				continue
			}
			out, angle := s.lies(x, y)
			least = min(least, out)
			z -= s.presses(out)
			if h := s.at(x, y, out, angle); h > z {
				z, of, u = h, s, out
			}
		}
	}
	if z < p.bed { // the last of a swirl runs out level
		z = max(0.05, p.bed-0.5*(p.bed-z))
	}
	return z * closes(least), of, min(1, u)
}

// closes is how much of its height the icing has so far out on the nearest swirl: between three that do not meet the base shows.
func closes(out float64) float64 {
	const wide = 0.07
	t := (out - pipedHole) / wide
	if t <= 0 {
		return 1
	}
	return math.Sqrt(max(0, 1-t*t))
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

// within is where across its bag the icing inside comes from, so far below the top of a place, and how bright a cut is there: strands lie on each
// other like scales, and where two swirls meet the strands of one bulge between those of the other.
func (p *piped) within(x, y, below float64) (across, tone float64) {
	x, y = x+p.long/2, y+p.wide/2
	top, _, _ := p.over(min(max(x, 0), p.long), min(max(y, 0), p.wide))
	up := p.edge(x, y)*top*p.scale - below
	sway := pipedSway * (bulge(up/pipedTier+0.1*math.Sin(x/7+y/9)) - 0.55) * smooth(below/2)
	x, y = x+sway, y+sway
	_, s, u := p.over(min(max(x, 0), p.long), min(max(y, 0), p.wide))
	_, angle := s.lies(x, y)
	u = min(1, u+pipedUnder*below/(p.scale*s.high)) // the coils below lie further out
	return p.across(s, x, y, u), s.scales(x, y, up, angle, below)
}

// bulge is 1 in the middle of every lobe and 0 in the cusp between two.
func bulge(v float64) float64 {
	v = 2*(v-math.Floor(v)) - 1
	return 1 - v*v
}

// scales is how bright a cut through a swirl is at a place: its strands in section, a fine shade under the round back of each, and a pocket of air
// where three of them do not meet.
func (s *pipedSwirl) scales(x, y, up, angle, below float64) float64 {
	sway := 0.11 * math.Sin(x/5.3+up/4.1+9*s.phase) * math.Cos(y/6.1-up/7.3)
	row := up/pipedTier + s.phase + angle + sway // a coil climbs as it goes round
	wide := s.radius / swirlCoils
	along := math.Hypot(x-s.x, y-s.y)/wide - angle/2 + 0.6*sway // and goes on where it has gone round
	k := math.Floor(row)
	arc := func(k float64) float64 { return k + pipedScale*bulge(along+k/2) }
	off := min(math.Abs(row-arc(k)), math.Abs(row-arc(k+1))) * pipedTier // mm from the nearest back
	deep := arc(k) - row
	if deep < 0 {
		deep = arc(k+1) - row
	}
	open := 0.5 + 0.5*math.Sin(x/3.7+up/2.9+7*s.phase)*math.Cos(y/4.3-up/3.3) // a seam closes in places
	open *= smooth(below / 1.5)
	seam := max(0, 1-off/pipedSeam)
	cusp := along + math.Floor(row+0.5)/2
	cusp = math.Abs(cusp-math.Round(cusp)) * wide
	air := max(0, 1-math.Hypot(cusp, 1.4*(row-math.Round(row))*pipedTier)/pipedAir)
	return 1 - pipedDark*seam*seam*open - pipedLayer*deep - 0.3*smooth(2*air)*smooth(2.4*open-1.1)
}

func (p *piped) reach() (x, y float64) { return p.long / 2, p.wide / 2 }
func (p *piped) high() float64         { return p.most }
