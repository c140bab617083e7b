package swirl

// spread levels batter that was poured onto one place or a few: seen in a cross-section it lands as lumps, sinks in until the top is even
// and pushes what lies there aside. Everything below keeps its area, as the columns of batter under a lump grow as much wider as they grow
// lower. A spread follows the slab that holds what was poured.
type spread struct {
	bottom, top float64 // mm, the level before the slab and after it
	width       float64 // of the mould
	rows        []row   // each lays its part of the slab in every cross-section
}

// row is a line of batter along the loaf, or spoonfuls one after the other.
type row struct {
	part  float64 // of the slab's batter; the parts of all rows sum to 1
	line  wobble  // mm across: the middle of the lump
	half  float64 // mm, the lump's half width
	swell wobble  // by what part of half it is wider here; the zero value: not at all
	flush wobble  // by what part of its own more runs here, at the cost of the other rows; the zero value: none
}

// leastOf is how thin a line of batter gets at least, of its own width or part, where it swells and thins.
const leastOf = 0.25

// lump is a rounded heap in one cross-section: high·(1-u²)² over its half width.
type lump struct {
	at, half, high float64
	area           float64 // mm²
	inv            float64 // 1/half
	scale          float64 // mm², high·half
	wall           float64 // mm², what of it lies beyond the left wall
}

const (
	fullLump  = 16. / 15 // area of a lump of height and half width 1
	mostSunk  = 0.85     // of the level: lumps sink in no deeper
	mostLumps = 8
)

// levelled is a spread in one cross-section.
type levelled struct {
	bottom, top float64
	width, area float64
	film        float64 // mm, what lies evenly over the whole width
	n           int
	lumps       [mostLumps]lump
}

// at makes the spread ready for a cross-section.
func (s *spread) at(x float64) levelled {
	l := levelled{bottom: s.bottom, top: s.top, width: s.width}
	rise := s.top - s.bottom
	l.area = rise * s.width
	s.strew(&l, x)
	deepest := mostSunk * s.top
	for range 8 {
		high := l.high()
		if high <= deepest {
			return l
		}
		wider := 0.02 + high/deepest // it runs further where it would stand too deep
		for i := range l.n {
			p := &l.lumps[i]
			p.half *= wider
			l.fill(p, p.area)
		}
	}
	high := l.high()
	part := clamp((deepest-rise)/(high-rise), 0, 1)
	for i := range l.n {
		l.fill(&l.lumps[i], l.lumps[i].area*part)
	}
	l.film = (1 - part) * rise
	return l
}

// strew adds the lumps of all rows.
func (s *spread) strew(l *levelled, x float64) {
	var parts [mostLumps]float64
	sum := 0.0
	rows := s.rows[:min(len(s.rows), mostLumps)]
	for i := range rows {
		parts[i] = rows[i].part * max(leastOf, 1+rows[i].flush.at(x))
		sum += parts[i]
	}
	for i := range rows {
		r := &rows[i]
		l.add(lump{at: clamp(r.line.at(x), 0, s.width), half: r.half * max(leastOf, 1+r.swell.at(x))}, parts[i]/sum*l.area)
	}
}

// add adds a lump of an area, measured inside the walls.
func (l *levelled) add(p lump, area float64) {
	if l.n == mostLumps || area <= 0 {
		return
	}
	l.fill(&p, area)
	l.lumps[l.n] = p
	l.n++
}

// fill gives a lump the height of an area inside the walls.
func (l *levelled) fill(p *lump, area float64) {
	p.area, p.inv = area, 1/p.half
	beyond := lumpSum(-p.at * p.inv)
	p.scale = area / (lumpSum((l.width-p.at)*p.inv) - beyond)
	p.high, p.wall = p.scale*p.inv, p.scale*beyond
}

// high is a bound of how thick the lumps lie.
func (l *levelled) high() (sum float64) {
	for i := range l.n {
		sum += l.lumps[i].high
	}
	return sum
}

// lumpSum is the integral of (1-u²)² from -1.
func lumpSum(u float64) float64 {
	u = clamp(u, -1, 1)
	q := u * u
	return 8./15 + u*(1-q*(2./3-q/5))
}

// at gives how thick what was poured lies at y, and its area from the left wall to there.
func (l *levelled) at(y float64) (thick, area float64) {
	thick, area = l.film, l.film*y
	for i := range l.n {
		p := &l.lumps[i]
		u := (y - p.at) * p.inv
		switch {
		case u >= 1:
			area += p.scale*fullLump - p.wall
		case u > -1:
			q := u * u
			thick += p.high * (1 - q) * (1 - q)
			area += p.scale*(fullLump/2+u*(1-q*(2./3-q/5))) - p.wall
		}
	}
	return thick, area
}

// undo carries a point of the even batter back to when what was poured stood on it as a heap. How high the heap stood does not matter:
// it is all one portion.
func (l *levelled) undo(y, z float64) (float64, float64) {
	thick, area := l.at(y)
	return clamp((l.top*y-area)/l.bottom, 0, l.width), z * l.bottom / (l.top - thick)
}

// redo is the way back of undo, by halving: it is for tests.
func (l *levelled) redo(y, z float64) (float64, float64) {
	low, high := 0.0, l.width
	for range 60 {
		mid := 0.5 * (low + high)
		if _, area := l.at(mid); (l.top*mid-area)/l.bottom < y {
			low = mid
		} else {
			high = mid
		}
	}
	to := 0.5 * (low + high)
	thick, _ := l.at(to)
	return to, z * (l.top - thick) / l.bottom
}

// move carries a point along (dir 1) or back (dir -1).
func (s *spread) move(x, y, z, dir float64) (float64, float64) {
	l := s.at(x)
	if dir < 0 {
		return l.undo(y, z)
	}
	return l.redo(y, z)
}
