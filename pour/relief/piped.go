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
	pipedReach  = 0.68 // radius of a swirl, of the gap
	pipedCoils  = 2.3  // of a strand from the middle of a swirl to its foot
	pipedCord   = 0.2  // how much the strand stands out, of the swirl's height
	pipedGroove = 0.035
	pipedBed    = 0.3 // of a swirl's height there is between swirls
	pipedSway   = 1.1 // mm
	pipedUnder  = 0.5
	pipedSeam   = 7    // mm, between seams under each other
	pipedDark   = 0.13 // how much darker a seam is at the most where icing is cut
	pipedLayer  = 0.05 // how much the tone goes over a strand
	pipedRound  = 4    // mm, over which the edge of it all is rounded
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

// pipedSwirl is one swirl of it.
type pipedSwirl struct {
	x, y, radius, high float64
	phase, wind        float64
	portion            uint8
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
	for j := range p.rows {
		shift := 0.25
		if j%2 == 1 {
			shift = -0.25
		}
		for i := range p.columns {
			p.swirls = append(p.swirls, pipedSwirl{
				x:      gapX * (float64(i) + 0.5 + shift + d.Between(-0.07, 0.07)),
				y:      gapY * (float64(j) + 0.5 + d.Between(-0.07, 0.07)),
				radius: pipedReach * math.Hypot(gapX, gapY) / math.Sqrt2 * d.Between(0.94, 1.08),
				high:   d.Between(0.86, 1.12), phase: d.Float(), wind: d.Between(0.92, 1.1), portion: take.next(),
			})
		}
	}
}

// edge is how much of its height the icing has so far inside its outline: it is round at its edge, and that is not quite at the wall.
func (p *piped) edge(x, y float64) float64 {
	in := min(x, p.long-x, y, p.wide-y) - 0.7 - 0.5*math.Sin(x/7+0.6*math.Sin(x/17))*math.Cos(y/9)
	switch {
	case in <= 0:
		return 0
	case in >= pipedRound:
		return 1
	}
	t := 1 - in/pipedRound
	return math.Sqrt(1 - t*t)
}

func (p *piped) at(x, y float64) (z, across float64) {
	x, y = x+p.long/2, y+p.wide/2
	edge := p.edge(x, y)
	if edge == 0 {
		return 0, 0
	}
	z, s, u := p.over(x, y)
	if s == nil {
		return edge * z * p.scale, 0
	}
	return edge * z * p.scale, p.across(s, x, y, u)
}

// over is the unscaled height over a place, and which swirl that is of.
func (p *piped) over(x, y float64) (z float64, of *pipedSwirl, u float64) {
	i, j := int(x/p.long*float64(p.columns)), int(y/p.wide*float64(p.rows))
	nearest := math.Inf(1)
	for b := max(0, j-1); b <= min(p.rows-1, j+1); b++ {
		for a := max(0, i-1); a <= min(p.columns-1, i+1); a++ {
			s := &p.swirls[b*p.columns+a]
			r := math.Hypot(x-s.x, y-s.y) / s.radius
			if r < 1 {
				if most := s.high * (dome(r) + pipedCord + pipedGroove); most > z {
					if h := s.at(x, y, r); h > z {
						z, of, u = h, s, r
					}
				}
			}
			if of == nil && r < nearest {
				nearest, u = r, r
			}
		}
	}
	if z < p.bed { // the last of a swirl runs out level
		z = p.bed - 0.5*(p.bed-z)
	}
	if of == nil {
		of = p.near(x, y)
	}
	return z, of, u
}

// near is the swirl a place between them all belongs to.
func (p *piped) near(x, y float64) (best *pipedSwirl) {
	least := math.Inf(1)
	for k := range p.swirls {
		s := &p.swirls[k]
		if r := math.Hypot(x-s.x, y-s.y); r < least {
			best, least = s, r
		}
	}
	return best
}

// dome is the height of a swirl without its strand, by the part of its radius.
func dome(u float64) float64 { return 0.88*(1-u*math.Sqrt(u)) + 0.12*(1-u)*(1-u) }

// turn is where along the coils a place of a swirl lies, in strands from its middle.
func (s *pipedSwirl) turn(x, y, u float64) float64 {
	return pipedCoils*s.wind*math.Sqrt(u)*math.Sqrt(0.35+0.65*u) - math.Atan2(y-s.y, x-s.x)/(2*math.Pi) + s.phase
}

func (s *pipedSwirl) at(x, y, u float64) float64 {
	q := s.turn(x, y, u)
	q -= math.Floor(q)
	cord := 1 - (2*q-1)*(2*q-1)
	fade := min(1, 6*u) * (1 - 0.4*u)
	return s.high * (dome(u) + fade*(pipedCord*(cord-2./3)+pipedGroove*math.Cos(6*math.Pi*q)))
}

// across is where across its bag the icing of a place comes from: side by side in the strand, which twists a little, or a bag for every swirl.
func (p *piped) across(s *pipedSwirl, x, y, u float64) float64 {
	if !p.striped {
		if int(s.portion) < len(p.own) {
			return p.own[s.portion]
		}
		return 0
	}
	q := s.turn(x, y, u) + 0.16*math.Sin(x/6.1+s.phase*9)*math.Cos(y/4.7) + 0.1*math.Sin(9*u+20*s.phase)
	return q - math.Floor(q)
}

// within is where across its bag the icing inside comes from, so far below the top of a place, and how bright a cut is there: strands lie on each
// other in layers, with a seam between two of them here and there.
func (p *piped) within(x, y, below float64) (across, tone float64) {
	sway := pipedSway * math.Sin(below/3.1+x/5) // where two swirls meet they have pushed each other
	x, y = x+p.long/2+sway, y+p.wide/2+sway
	_, s, u := p.over(min(max(x, 0), p.long), min(max(y, 0), p.wide))
	if s == nil {
		return 0, 1
	}
	if r := math.Hypot(x-sway-s.x, y-sway-s.y) / s.radius; r < 1 { // the layers inside are smooth: they do not follow the grooves of the skin
		below = max(0, below-p.scale*(s.at(x-sway, y-sway, r)-s.high*dome(r)))
	}
	u = min(1, u+pipedUnder*below/(p.scale*s.high)) // the coils below lie further out
	turn := s.turn(x, y, u) + below/pipedSeam       // from the furrow between two coils inwards
	turn -= math.Floor(turn)
	open := 0.6 + 0.4*math.Sin(x/4.3+below/2.7+9*s.phase)*math.Cos(y/5.1-below/4.9) // a seam closes in places
	seam := max(0, 1-min(turn, 1-turn)/0.12)
	return p.across(s, x, y, u), 1 - pipedDark*seam*seam*open - pipedLayer*(turn-0.5)*(1-seam)
}

func (p *piped) reach() (x, y float64) { return p.long / 2, p.wide / 2 }
func (p *piped) high() float64         { return p.most }
