package swirl

import (
	"math"
	"slices"

	"pourbench/pour/script"
)

// How a jug is held over the posts of a column: by eye, no source.
const (
	postLeastMM   = 62.   // from post to post along the loaf at the least
	postMostMM    = 86.   // and at most
	stretchUneven = 0.25  // by what part the stretch of one post is longer or shorter than that of another
	postAside     = 0.13  // of its stretch: a post stands so far from the middle of it
	postUneven    = 0.13  // by what part the jug is held longer or shorter at one post than at another
	ringFrom      = 0.68  // of the mould's height, at the least: what is poured higher closes to rings round the posts
	ringStep      = 0.02  // of it: so much higher, as long as too little of a jug would be poured before
	ringFar       = 0.98  // of the way from a post to the end of its stretch: so far the first rings reach
	ringNear      = 0.42  // and the last
	ringLate      = 0.86  // of the mould's height: if nothing closes lower, as of few pours each is much,
	ringWider     = 0.25  // the last reach so much further
	firstFlat     = 3.3   // the power by which the first rings thin towards their ends, where those of the next post press against them
	lastFlat      = 2.6   // and the last
	ringUneven    = 0.18  // by what part more or less a ring gets at one post than at another
	ringAside     = 0.028 // of the stretch: so far a ring lies to one side along the loaf, from pour to pour more or back
	ringRoot      = 0.3   // the power of how thick it lies to which it is wide
	lookMM        = 5.    // along the loaf, how finely one looks where it stands lowest
	leastEarly    = 0.42  // of what is poured early of a jug, so much is left at the posts
	lastHeld      = 0.8   // of what gives way in the middle of those, so much less gives way of the last before the rings, which are held there themselves
	firstHeld     = 0.45  // and of the first, on which all others press: they would be hairlines
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
	far   float64   // how far from a post it ends, of the way to the end of its stretch; 0: it lies everywhere
	flat  float64   // the power by which it thins towards its ends
	way   float64   // how far it lies to one side along the loaf
	at    []float64 // how much of it lies at each post
	mean  float64   // and in the mean of the loaf
	gives float64   // what lies everywhere: how much of it gives way where others close, against the mean of its jug
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
	for near := ringNear; near < 1; near += ringWider {
		at := ringFrom
		for !h.close(at*h.level, b.Box.L, near) {
			at += ringStep
		}
		if at < ringLate {
			break
		}
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
	for _, by := range posts {
		p.at = append(p.at, by*(1+ringUneven*b.d.Between(-1, 1)))
	}
	h.pours = append(h.pours, p)
}

// close has all that is poured higher than so many mm up close round the posts, the last as near as that, and tells whether enough of every jug is poured before.
func (h *holds) close(from, long, near float64) bool {
	const places = 100
	late := make([][places]float64, len(h.total))
	copy(h.early, h.total)
	for i := range h.pours {
		p := &h.pours[i]
		if p.far = 0; p.bed || p.foot < from {
			continue
		}
		high := (p.foot - from) / (h.level - from)
		p.far, p.flat = ringFar+(near-ringFar)*math.Pow(high, 1.6), firstFlat+(lastFlat-firstFlat)*high
		h.early[p.jug] -= p.rise
		p.mean = 1
		var thick [places]float64
		mean := 0.0
		for k := range places {
			thick[k] = h.thick(p, long*(float64(k)+0.5)/places)
			mean += thick[k] / places
		}
		p.mean = mean
		for k, v := range thick {
			late[p.jug][k] += p.rise * v / mean
		}
	}
	for j, v := range late {
		if most := slices.Max(v[:]); most > 0 && most > h.total[j]-leastEarly*h.early[j] {
			return false
		}
	}
	return true
}

// giveWay has what is poured before give way where others close, what lies lowest less and what is poured just before them hardly.
func (h *holds) giveWay() {
	last, mean := 0.0, make([]float64, len(h.total))
	for i := range h.pours {
		if p := &h.pours[i]; p.far == 0 {
			last = p.foot + p.rise
		}
	}
	for i := range h.pours {
		if p := &h.pours[i]; p.far == 0 && !p.bed {
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

// thick is how thick a pour that closes lies at a place along the loaf, against its mean.
func (h *holds) thick(p *held, x float64) float64 {
	k := 0
	for k < len(h.cells)-1 && x > h.cells[k].to {
		k++
	}
	c := &h.cells[k]
	post := c.post + ringAside*p.way*(c.to-c.from)
	room := c.to - post
	if x < post {
		room = post - c.from
	}
	v := 1 - math.Pow(math.Abs(x-post)/(p.far*room), p.flat)
	if v <= 0 {
		return 0
	}
	return p.at[k] * v * math.Sqrt(v) / p.mean
}

// edges appends how high a column stands at a place along the loaf before the first pour and after each, mm, when so many are done: then it is level.
func (h *holds) edges(x float64, done int, dst []float64) []float64 {
	var late [script.MostJugs]float64
	from := len(dst)
	dst = append(dst, 0)
	for i := range h.pours {
		p := &h.pours[i]
		v := p.rise
		if p.far > 0 {
			v *= h.thick(p, x)
			late[p.jug] += v
		}
		dst = append(dst, v)
	}
	sum, level := 0.0, 0.0
	for i := range h.pours {
		p, at := &h.pours[i], from+1+i
		if p.far == 0 && !p.bed {
			dst[at] *= 1 + p.gives*((h.total[p.jug]-late[p.jug])/h.early[p.jug]-1)
		}
		sum += dst[at]
		dst[at] = sum
		if i < done {
			level += p.rise
		}
	}
	by := level / dst[from+done]
	for i := range h.pours {
		dst[from+1+i] *= by
	}
	return dst
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
