package swirl

import "math"

// spread levels batter that was poured onto one place or a few: seen in a cross-section it lands as lumps, sinks in until the top is even
// and pushes what lies there aside. Everything below keeps its area, as the columns of batter under a lump grow as much wider as they grow
// lower. A spread follows the slab that holds what was poured.
type spread struct {
	bottom, top float64 // mm, the level before the slab and after it
	width       float64 // of the mould
	rows        []row   // each lays its part of the slab in every cross-section
	lift        float64 // mm, what of the slab's height the depth of what was poured is drawn out to; 0: the slab's own height, which keeps area
	pile        *pile   // it lies here thicker and there thinner along the loaf; nil: all along between bottom and top
}

// row is a line of batter along the loaf, or spoonfuls one after the other.
type row struct {
	part  float64 // of the slab's batter; the parts of all rows sum to 1
	line  wobble  // mm across: the middle of the lump
	half  float64 // mm, the lump's half width
	blunt float64 // how broad its top and steep its flanks are, 0 to 1: batter that hardly runs; below 0, to softRim, the softer they run out
	round bool    // its top is broad and its rims run out softly; then blunt does not matter
	swell wobble  // by what part of half it is wider here; the zero value: not at all
	hang  wobble  // by what part deeper it hangs here, and so much narrower; the zero value: not at all
	flush wobble  // by what part of its own more runs here, at the cost of the other rows; the zero value: none
}

// leastOf is how thin a line of batter gets at least, of its own width or part, where it swells and thins.
const leastOf = 0.25

// lump is a rounded heap in one cross-section: high·(1-u²)² over its half width, and the blunter it is the more of (1-u⁴)². A round one is
// (1-u²)³·(1+3u²/2): it ends without a kink, as one would leave teeth in what lies below.
type lump struct {
	at, half, high float64
	blunt          float64
	round          bool
	area           float64 // mm²
	inv            float64 // 1/half
	scale          float64 // mm², high·half
	wall           float64 // mm², what of it lies beyond the left wall
	full           float64 // mm², what of it lies this side of it
}

const (
	mostSunk  = 0.85 // of the level: lumps sink in no deeper
	pileSunk  = 0.7  // of it: what runs down a post no deeper (by eye, no source)
	mostLumps = 8
	softRim   = -1. / 3  // of how blunt a lump is: (1-u²)³·(1+u²/3), which ends without a kink
	roundLump = 16. / 15 // area of a round lump of height and half width 1
	runFrom   = 0.6      // of the greatest depth: lumps that go no deeper lie as they fell
	runMost   = 1000.    // times wider, a lump is level
	runSoft   = 14.      // how suddenly a lump begins to run out where it would sink in too deep (by eye, no source)
	leastSkin = 0.15     // of what would be left under a lump were nothing spread: so much is (by eye, no source)
	leastRise = 1e-6     // mm, a thinner slab spreads nothing
	footBroad = 5.       // times wider than a lump what gives way at the bottom is (by eye, no source)
)

// levelled is a spread in one cross-section.
type levelled struct {
	bottom, top float64
	width, area float64
	lift        float64 // mm
	n           int
	lumps       [mostLumps]lump
	foot        [mostLumps]lump // how what lies at the bottom gives way under each lump
	broad       float64         // what part of all gives way as foot there; 0: as the lumps do
}

// at makes the spread ready for a cross-section.
func (s *spread) at(x float64) levelled {
	if s.pile == nil {
		return s.between(x, s.bottom, s.top)
	}
	bottom, top := s.pile.between(x)
	return s.between(x, bottom, top)
}

// between is at where the slab reaches from there to there, mm up.
func (s *spread) between(x, bottom, top float64) levelled {
	l := levelled{bottom: bottom, top: top, width: s.width, lift: s.lift}
	rise := top - bottom
	if l.area = rise * s.width; rise < leastRise {
		return l
	}
	if l.lift == 0 {
		l.lift = rise
	}
	s.strew(&l, x)
	deepest := mostSunk
	if s.pile != nil {
		deepest = pileSunk
	}
	l.run(deepest * top)
	if len(s.rows) > 0 && s.rows[0].round {
		l.footed()
	}
	return l
}

// footed lets what lies deep give way over a broader place than the lumps are, as what presses from above is spread on its way down; as far as leaves
// what lies right under a lump a part of its thickness.
func (l *levelled) footed() {
	high := 0.0
	for i := range l.n {
		thick, _ := l.at(l.lumps[i].at)
		high = max(high, thick)
	}
	l.broad = min(1, (1-leastSkin)*(l.top-high)/high)
	for i := range l.n {
		l.foot[i] = l.lumps[i]
		l.foot[i].half *= footBroad
		l.fill(&l.foot[i], l.foot[i].area)
	}
}

// run lets the lumps run out where they would sink in deeper than deepest; gradually, so that nothing jumps along the loaf.
func (l *levelled) run(deepest float64) {
	if l.high() < runFrom*deepest {
		return
	}
	var was [mostLumps]float64
	for i := range l.n {
		was[i] = l.lumps[i].half
	}
	widen := func(by float64) {
		for i := range l.n {
			l.lumps[i].half = was[i] * by
			l.fill(&l.lumps[i], l.lumps[i].area)
		}
	}
	low, high := runFrom, runMost
	for range 22 {
		mid := math.Sqrt(low * high)
		if widen(mid); l.high() > deepest {
			low = mid
		} else {
			high = mid
		}
	}
	widen(math.Pow(1+math.Pow(high, runSoft), 1/runSoft))
}

// strew adds the lumps of all rows.
func (s *spread) strew(l *levelled, x float64) {
	var parts [mostLumps]float64
	sum := 0.0
	rows, wide := s.rows[:min(len(s.rows), mostLumps)], 1.
	if s.pile != nil {
		wide = s.pile.of.narrow(s.pile.pour, x) * clamp(math.Pow((l.top-l.bottom)/(s.top-s.bottom), ringRoot), ringThin, ringBroad)
	}
	for i := range rows {
		parts[i] = rows[i].part * max(leastOf, 1+rows[i].flush.at(x))
		sum += parts[i]
	}
	for i := range rows {
		r := &rows[i]
		half := r.half * wide * max(leastOf, 1+r.swell.at(x)) / max(leastOf, 1+r.hang.at(x))
		l.add(lump{at: clamp(r.line.at(x), 0, s.width), half: half, blunt: r.blunt, round: r.round}, parts[i]/sum*l.area)
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
	beyond := p.sum(-p.at * p.inv)
	p.scale = area / (p.sum((l.width-p.at)*p.inv) - beyond)
	p.high, p.wall = p.scale*p.inv, p.scale*beyond
	p.full = p.scale*p.sum(1) - p.wall
}

// high is a bound of how thick the lumps lie: those that lie beside each other, each in its own place, do not add up.
func (l *levelled) high() (most float64) {
	for i := range l.n {
		p, sum := &l.lumps[i], 0.0
		for j := range l.n {
			q := &l.lumps[j]
			apart := (p.at - q.at) / (p.half + q.half)
			apart *= apart
			sum += q.high * max(0, 1-apart*apart)
		}
		most = max(most, sum)
	}
	return most
}

// sum is the integral from -1 of what a lump of height and half width 1 is high.
func (p *lump) sum(u float64) float64 {
	u = clamp(u, -1, 1)
	q := u * u
	if p.round {
		return 0.5*roundLump + u*(1-q*(1./2+q*(3./10-q*(1./2-q/6))))
	}
	return 8./15 + u*(1-q*(2./3-q/5)) + p.blunt*(8./45+u*q*(2./3-q*(3./5-q*q/9)))
}

// shape is how high a lump of height 1 is where u² is q.
func (p *lump) shape(q float64) float64 {
	r := (1 - q) * (1 - q)
	if p.round {
		return r * (1 - q) * (1 + 1.5*q)
	}
	return r * (1 + p.blunt*q*(2+q))
}

// at gives how thick what was poured lies at y, and its area from the left wall to there.
func (l *levelled) at(y float64) (thick, area float64) { return lie(l.lumps[:l.n], y) }

// lie is at of some lumps.
func lie(lumps []lump, y float64) (thick, area float64) {
	for i := range lumps {
		p := &lumps[i]
		u := (y - p.at) * p.inv
		switch {
		case u >= 1:
			area += p.full
		case u > -1:
			thick += p.high * p.shape(u*u)
			area += p.scale*p.sum(u) - p.wall
		}
	}
	return thick, area
}

// undo carries a point of the even batter back to when what was poured had not sunk in: what lay there to where it was, what was poured
// into its slab, as far along it as its part of the area from the left wall, and as high in it as its part of the depth there. Both keep area.
func (l *levelled) undo(y, z float64) (float64, float64) {
	if l.n == 0 {
		return y, z
	}
	thick, area := l.at(y)
	if foot := l.top - thick; z > foot {
		return l.width * clamp(area/l.area, 0, 1), l.bottom + l.lift*clamp((z-foot)/thick, 0, 1)
	}
	if l.broad == 0 {
		return clamp((l.top*y-area)/l.bottom, 0, l.width), z * l.bottom / (l.top - thick)
	}
	g := l.given(y, thick, area)
	up := g.up(z)
	return clamp(g.left(up)/l.bottom, 0, l.width), up * l.bottom
}

// given is how what lay level gives way at one place across: what was a part s of the level up is now s·(deep + s·(shallow-deep)) high. At the bottom
// it follows deep, right under the lumps shallow, and as both have one area, so has every layer between them.
type given struct{ deep, shallow, deepArea, shallowArea float64 }

// given takes how thick what was poured lies there, and its area from the left wall.
func (l *levelled) given(y, thick, area float64) given {
	foot, footArea := lie(l.foot[:l.n], y)
	g := given{shallow: l.top - thick, shallowArea: l.top*y - area}
	g.deep, g.deepArea = g.shallow+l.broad*(thick-foot), g.shallowArea+l.broad*(area-footArea)
	return g
}

// up is what part of the level up lay what is now z mm high.
func (g *given) up(z float64) float64 {
	return 2 * z / (g.deep + math.Sqrt(g.deep*g.deep+4*(g.shallow-g.deep)*z))
}

// left is the area between the left wall and here of the thin layer a part up, of its thickness.
func (g *given) left(up float64) float64 { return g.deepArea + 2*up*(g.shallowArea-g.deepArea) }

// redo is the way back of undo, by halving: it is for tests.
func (l *levelled) redo(y, z float64) (float64, float64) {
	if l.n == 0 {
		return y, z
	}
	poured, up := z > l.bottom, z/l.bottom
	low, high := 0.0, l.width
	for range 60 {
		mid := 0.5 * (low + high)
		thick, area := l.at(mid)
		g := l.given(mid, thick, area)
		from := g.left(up) / l.bottom
		if poured {
			from = l.width * area / l.area
		}
		if from < y {
			low = mid
		} else {
			high = mid
		}
	}
	to := 0.5 * (low + high)
	thick, area := l.at(to)
	if poured {
		return to, l.top - thick + thick*(z-l.bottom)/l.lift
	}
	g := l.given(to, thick, area)
	return to, up * (g.deep + up*(g.shallow-g.deep))
}

// move carries a point along (dir 1) or back (dir -1).
func (s *spread) move(x, y, z, dir float64) (float64, float64) {
	l := s.at(x)
	if dir < 0 {
		return l.undo(y, z)
	}
	return l.redo(y, z)
}
