package swirl

import (
	"math"
	"slices"

	"pourbench/pour/script"
)

// How a jug is held over the posts of a column: by eye, no source.
const (
	postLeastMM   = 58.  // from post to post along the loaf at the least
	postMostMM    = 84.  // and at most
	stretchUneven = 0.4  // by what part the stretch of one post is longer or shorter than that of another
	postAside     = 0.16 // of its stretch: a post stands so far from the middle of it
	postUneven    = 0.24 // by what part the jug is held longer or shorter at one post than at another
	ringFrom      = 0.6  // of the mould's height, at the least: what is poured higher closes to rings round the posts
	ringStep      = 0.02 // of it: so much higher, as long as too little of a jug would be poured before
	ringFar       = 0.97 // of the way from a post to the end of its stretch: so far the first ring reaches
	ringTight     = 0.26 // the power of what is poured in a ring and within it to which it is far: a third where rings are bowls of one shape, 0 where all reach as far
	firstEnd      = 1.6  // the power by which the first ring thins towards its ends, where those of the next post press against it
	lastEnd       = 1.   // and the last
	ringUneven    = 0.3  // by what part more or less a ring gets at one post than at another
	ringAside     = 0.03 // of the stretch: so far a ring lies to one side along the loaf, from pour to pour more or back
	ringRoot      = 0.3  // the power of how thick it lies to which it is wide
	ringThin      = 0.6  // so narrow a pour is that lies thin here, against itself where it lies usually
	firstThin     = 0.9  // and so narrow the first ring at its ends at least, against itself at the post: narrower, rings would end in thorns
	lastThin      = 0.55 // and the last
	ringBroad     = 1.5  // and at most
	lookMM        = 5.   // along the loaf, how finely one looks where it stands lowest
	leastEarly    = 0.34 // of what is poured early of a jug, so much is left at the posts
	lastHeld      = 0.8  // of what gives way in the middle of those, so much less gives way of the last before the rings, which are held there themselves
	firstHeld     = 0.8  // and of the first, on which all others press: they would be hairlines
	pourUneven    = 3.2  // times as much as usual, or so much less, is poured at once at most
	floorMore     = 0.8  // so much more of what is poured first: it lies as sheets over the floor
	floorTo       = 0.35 // of the mould's height: so far up, ever less
	runUneven     = 0.9  // of a pour: by so much more and less of it runs here than there
	leastRun      = 0.02 // of a pour: less than that runs nowhere
)

// holds is how thick what is poured down a column lies along the loaf. At first it runs out everywhere; later it is held to the posts, and what it runs
// to closes round each. As every jug has more at a post late, it has so much less there early: in every cross-section each has its share.
type holds struct {
	cells []reached
	pours []held
	total []float64 // mm, of every jug, but its bed
	early []float64 // mm, what of that lies everywhere
	level float64   // mm, when all are poured
	low   []float64 // mm, how high it stands at least along the loaf before the first pour and after each
}

// reached is the stretch of the loaf that one post feeds, mm along it.
type reached struct{ from, post, to float64 }

// held is one pour of a column.
type held struct {
	jug   int
	foot  float64 // mm, how high it stands before, in the mean of the loaf
	rise  float64 // mm, by how much it rises, in the mean of the loaf
	bed   bool
	rings []ring    // what closes with it round each post, and within it; none: it lies everywhere
	way   float64   // how far it lies to one side along the loaf
	at    []float64 // mm, how much of it is poured at each post
	gives float64   // what lies everywhere: how much of it gives way where others close, against the mean of its jug
	runs  wobble    // and how much of it runs here, against the others of its jug
}

// ring is a bowl of batter about a post: so deep at the post, mm, and so far it reaches, of the way to the end of the stretch, where it ends the
// softer the greater the power end; of its width at the post it keeps the part least.
type ring struct{ deep, far, end, least float64 }

// at is how deep a bowl is so far from its post.
func (r ring) at(u float64) float64 {
	if r.far == 0 {
		return 0
	}
	u /= r.far
	return r.deep * math.Pow(max(0, 1-u*u), r.end)
}

// holds draws where the posts stand and what closes round them.
func (b *builder) holds() *holds {
	h := &holds{total: make([]float64, len(b.Shares)), early: make([]float64, len(b.Shares))}
	n := max(1, int(math.Round(b.Box.L/b.d.Between(postLeastMM, postMostMM))))
	from, sum, longer := 0.0, 0.0, make([]float64, n)
	for i := range n {
		h.cells = append(h.cells, reached{to: b.d.Between(1-stretchUneven, 1+stretchUneven)})
		sum += h.cells[i].to
		longer[i] = 1 + postUneven*b.d.Between(-1, 1)
	}
	for i := range h.cells {
		long := h.cells[i].to / sum * b.Box.L
		h.cells[i] = reached{from, from + (0.5+b.d.Between(-postAside, postAside))*long, from + long}
		from += long
	}
	for i, a := range b.acts {
		if a.Kind == script.Pour {
			h.pour(b, a, i >= b.last, longer)
		}
	}
	for at := ringFrom; !h.close(at*h.level, b.Box.L); {
		at += ringStep
	}
	h.giveWay()
	h.lowest()
	return h
}

// pour adds a pour, of which so much lies at each post.
func (h *holds) pour(b *builder, a script.Act, last bool, posts []float64) {
	rise := min(a.Share*b.Box.H, b.Box.H-h.level)
	if last {
		rise = b.Box.H - h.level
	}
	p := held{jug: a.Jug, rise: rise, bed: len(a.Lines) == 0, foot: h.level}
	if h.level += rise; !p.bed {
		h.total[a.Jug] += rise
	}
	way := 0.0
	if n := len(h.pours); n > 0 {
		way = h.pours[n-1].way
	}
	p.way = 0.7*way + b.d.Between(-1, 1)
	mean := 0.0
	for i, by := range posts {
		p.at = append(p.at, by*(1+ringUneven*b.d.Between(-1, 1)))
		mean += p.at[i] * (h.cells[i].to - h.cells[i].from) / b.Box.L
	}
	for i := range p.at {
		p.at[i] *= rise / mean
	}
	much := math.Pow(pourUneven, b.d.Between(-1, 1)) * (1 + floorMore*max(0, 1-p.foot/(floorTo*b.Box.H)))
	p.runs = b.d.drift(much, runUneven*much, [2]float64{45, 90}, [2]float64{110, 240})
	h.pours = append(h.pours, p)
}

// close has all that is poured higher than so many mm up close round the posts, and tells whether enough of every jug is poured before.
func (h *holds) close(from, long float64) bool {
	const places = 100
	copy(h.early, h.total)
	within := make([]float64, len(h.cells)) // mm, what is poured at each post in a ring and within it
	for i := len(h.pours) - 1; i >= 0; i-- {
		p := &h.pours[i]
		if p.rings = nil; p.bed || p.foot < from {
			continue
		}
		h.early[p.jug] -= p.rise
		for k, v := range p.at {
			within[k] += v
		}
		p.rings = make([]ring, len(within))
		for k, v := range within {
			p.rings[k].deep = v // how far it reaches is told once all are known
		}
	}
	for i := range h.pours {
		for k := range h.pours[i].rings {
			r := &h.pours[i].rings[k]
			r.far = ringFar * math.Pow(r.deep/within[k], ringTight)
			part := r.deep / within[k]
			r.end, r.least = lastEnd+(firstEnd-lastEnd)*part, lastThin+(firstThin-lastThin)*part
			r.deep /= r.far * bowlMean(r.end)
		}
	}
	for k := range places {
		x, late := long*(float64(k)+0.5)/places, make([]float64, len(h.total))
		for i := range h.pours {
			late[h.pours[i].jug] += h.thick(i, x)
		}
		for j, v := range late {
			if v > 0 && v > h.total[j]-leastEarly*h.early[j] {
				return false
			}
		}
	}
	return true
}

// bowlMean is the mean of (1-u²) to a power from 0 to 1: the integral of NIST DLMF 5.12.2.
func bowlMean(power float64) float64 {
	return 0.5 * math.Sqrt(math.Pi) * math.Gamma(power+1) / math.Gamma(power+1.5)
}

// giveWay has what is poured before give way where others close, what lies lowest less and what is poured just before them hardly.
func (h *holds) giveWay() {
	last, mean := 0.0, make([]float64, len(h.total))
	for i := range h.pours {
		if p := &h.pours[i]; p.rings == nil {
			last = p.foot + p.rise
		}
	}
	for i := range h.pours {
		if p := &h.pours[i]; p.rings == nil && !p.bed {
			up := (p.foot + 0.5*p.rise) / last
			p.gives = 1 - lastHeld*up*up*up - firstHeld*(1-up)*(1-up)
			mean[p.jug] += p.gives * p.rise / h.early[p.jug]
		}
	}
	for i := range h.pours {
		if p := &h.pours[i]; mean[p.jug] > 0 {
			p.gives /= mean[p.jug]
		}
	}
}

// post is which post feeds a place along the loaf, and how far off it lies when a pour is held so far to one side, of the way to the end of its stretch.
func (h *holds) post(x, way float64) (k int, u float64) {
	for k < len(h.cells)-1 && x > h.cells[k].to {
		k++
	}
	c := &h.cells[k]
	post := c.post + ringAside*way*(c.to-c.from)
	if x < post {
		return k, (post - x) / (post - c.from)
	}
	return k, (x - post) / (c.to - post)
}

// thick is how thick a pour that closes lies at a place along the loaf, mm: what of its ring is not within the next.
func (h *holds) thick(i int, x float64) float64 {
	p := &h.pours[i]
	if p.rings == nil {
		return 0
	}
	k, u := h.post(x, p.way)
	v := p.rings[k].at(u)
	if i+1 < len(h.pours) {
		v -= h.pours[i+1].rings[k].at(u)
	}
	return max(0, v)
}

// narrow is how wide a pour lies at a place along the loaf, against how wide it lies at a post: a ring is round.
func (h *holds) narrow(i int, x float64) float64 {
	p := &h.pours[i]
	if p.rings == nil {
		return 1
	}
	k, u := h.post(x, p.way)
	u /= p.rings[k].far
	return max(p.rings[k].least, math.Sqrt(max(0, 1-u*u)))
}

// edges appends how high a column stands at a place along the loaf before the first pour and after each, mm, when so many are done: then it is level.
func (h *holds) edges(x float64, done int, dst []float64) []float64 {
	from := len(dst)
	dst = append(dst, 0)
	for i := range h.pours {
		dst = append(dst, h.pours[i].rise)
	}
	h.lie(x, dst[from+1:])
	sum, level := 0.0, 0.0
	for i := range h.pours {
		sum += dst[from+1+i]
		dst[from+1+i] = sum
		if i < done {
			level += h.pours[i].rise
		}
	}
	by := level / dst[from+done]
	for i := range h.pours {
		dst[from+1+i] *= by
	}
	return dst
}

// lie tells how thick every pour lies at a place along the loaf, mm: what closes as its ring is, and what lies everywhere shares what is left of its jug.
func (h *holds) lie(x float64, thick []float64) {
	var late, early [script.MostJugs]float64
	for i := range h.pours {
		if p := &h.pours[i]; p.rings != nil {
			thick[i] = h.thick(i, x)
			late[p.jug] += thick[i]
		}
	}
	for i := range h.pours {
		if p := &h.pours[i]; p.rings == nil && !p.bed {
			left := (h.total[p.jug] - late[p.jug]) / h.early[p.jug]
			thick[i] *= max(leastRun, p.runs.at(x)) * max(leastRun, 1+p.gives*(left-1))
			early[p.jug] += thick[i]
		}
	}
	for i := range h.pours {
		if p := &h.pours[i]; p.rings == nil && !p.bed {
			thick[i] *= (h.total[p.jug] - late[p.jug]) / early[p.jug]
		}
	}
}

// lowest finds how high it stands at least along the loaf after each pour.
func (h *holds) lowest() {
	var e []float64
	for x := 0.0; x <= h.cells[len(h.cells)-1].to; x += lookMM {
		e = h.edges(x, len(h.pours), e[:0])
		if h.low == nil {
			h.low = slices.Clone(e)
		}
		for i, v := range e {
			h.low[i] = min(h.low[i], v)
		}
	}
}
