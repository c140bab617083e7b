package swirl

import "math"

// serving is one pour of a portion, as a share of the batter.
type serving struct {
	portion int
	share   float64
}

// servings splits the accents into pours in random order, with what is left of the base in between.
func (b *builder) servings(base int, kept float64) []serving {
	_, portions := cumulate(b.Shares)
	each := max(1, int(math.Round(float64(b.Passes)/float64(len(portions)))))
	var list []serving
	for _, p := range portions {
		share := b.Shares[p]
		if p == base {
			share -= kept
		}
		for range each {
			list = append(list, serving{p, share / float64(each)})
		}
	}
	b.d.shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	for i := 1; i < len(list); i++ { // no two pours of one colour in a row where that can be helped
		if list[i].portion != list[i-1].portion {
			continue
		}
		for k := range list {
			if list[k].portion != list[i].portion && b.fits(list, k, list[i].portion) {
				list[i], list[k] = list[k], list[i]
				break
			}
		}
	}
	return list
}

func (b *builder) fits(list []serving, k, portion int) bool {
	return (k == 0 || list[k-1].portion != portion) && (k == len(list)-1 || list[k+1].portion != portion)
}

// drop pours a bed of the base, then the accents from a height at changing places.
func (b *builder) drop() {
	base := b.base()
	kept := 0.62 * b.Shares[base]
	list := b.servings(base, kept)
	b.raise(kept, plain(base), base, false)
	side := b.d.sign()
	for i, s := range list {
		b.raise(s.share, plain(s.portion), s.portion, i == len(list)-1)
		side = -side
		y := b.Box.W * (0.5 + side*b.d.between(0.04, 0.36))
		depth := b.level * b.d.between(0.4, 0.95) * b.fall()
		b.plunge(y, depth, b.d.between(10, 15)*b.thick(0.95, 1.25), b.d.between(0.8, 1), b.d.wobble(0, 9))
		if b.d.float() < 0.5 { // the jug is often led over to the other side
			y = b.Box.W * (0.5 - side*b.d.between(0.1, 0.42))
			b.plunge(y, 0.6*depth, b.d.between(9, 13)*b.thick(0.95, 1.25), b.d.between(0.7, 1), b.d.wobble(0, 9))
		}
	}
	b.settle(b.thick(3.2, 1.4))
}

// column pours every colour in turn down the same line.
func (b *builder) column() {
	_, portions := cumulate(b.Shares)
	each := max(1, int(math.Round(float64(b.Passes)/float64(len(portions)))))
	line := b.d.wobble(0, 3)
	y := b.Box.W * b.d.between(0.44, 0.56)
	for k := range each {
		for i, p := range portions {
			b.raise(b.Shares[p]/float64(each), plain(p), p, k == each-1 && i == len(portions)-1)
			reach := 0.95 - 0.5*float64(k*len(portions)+i)/float64(each*len(portions))
			depth := b.level * reach * b.d.between(0.92, 1) * clamp(b.fall()+0.2, 0.3, 1.1)
			b.plunge(y+b.d.between(-1.5, 1.5), depth, b.Box.W*b.d.between(0.34, 0.42), b.d.between(0.42, 0.5), line)
		}
	}
	b.settle(b.thick(2.4, 1.2))
}

// pot pours all colours together out of one pot.
func (b *builder) pot() {
	s := &stream{
		layout: b.potLayout(), box: b.Box, chord: chordTable(),
		folds: 1, drift: b.d.between(-0.5, 0.5), sway: b.d.wobble(b.d.float(), 0.12),
		surge: b.d.wobble(b.d.between(0, 2*math.Pi), 0.5), stir: b.d.between(1.6, 2.4) * b.Turns * b.d.sign(),
	}
	if b.Thickness < 0.5 && b.Technique != PotSpots {
		s.folds = 2
	}
	if b.Technique == PotEnd {
		s.tilt = 0.8
		s.surge.amp = [2]float64{} // what has been poured depends on x here, so the pot's turn must not: the shares would drift
	}
	side := b.d.sign()
	for i := range b.Passes {
		b.raise(1/float64(b.Passes), s, -1, i == b.Passes-1)
		side = -side
		y := b.Box.W * (0.5 + side*b.d.between(0, 0.28))
		depth := b.d.between(14, 40) * b.fall()
		b.plunge(y, depth, b.d.between(10, 18)*b.thick(0.95, 1.3), b.d.between(0.7, 1), b.d.wobble(0, 7))
		b.ops[len(b.ops)-1].stroke.still = true
	}
	b.settle(b.thick(4, 1.5))
}

func (b *builder) potLayout() layout {
	until, portion := cumulate(b.Shares)
	switch b.Technique {
	case PotStripes:
		half := make([]float64, 0, 2*len(until))
		for _, turn := range [2]float64{0, 0.5} {
			for _, u := range until {
				half = append(half, turn+u/2)
			}
		}
		return &bands{half, append(portion, portion...)}
	case PotSpots:
		return b.nests(portion)
	}
	return &sectors{until, portion, 2}
}

// nests pours the accents one into another in five places of the pot; the largest portion stays outermost.
func (b *builder) nests(portion []int) layout {
	base := b.base()
	n := &nests{rows: []potRing{{outer: 0.2, wedges: 1}, {outer: 1, wedges: 4}}}
	for i := range n.rows {
		n.rows[i].offset = b.d.float()
	}
	var inner []int
	for _, p := range portion {
		if p != base {
			inner = append(inner, p)
		}
	}
	for k := range max(1, len(inner)) {
		var order []int
		for i := range inner {
			order = append(order, inner[(i+k)%len(inner)])
		}
		n.portion = append(n.portion, append(order, base))
		n.until = append(n.until, nil)
		sum := 0.0
		for _, p := range n.portion[k] {
			sum += b.Shares[p]
			n.until[k] = append(n.until[k], sum)
		}
	}
	return n
}
