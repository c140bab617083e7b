package relief

// Dot is what shows in one pixel of what stands on a loaf: the two stuffs that show most, the greater first, and how bright they are. What is left
// of 255 is what lies behind; Shade of 255 of its light is taken from that. Cut of 255 of what shows was cut through and is no skin. The zero Dot is
// nothing at all.
type Dot struct {
	Stuff  [2]uint8
	Part   [2]uint8
	Bright uint8 // 128: as bright as its colour
	Shade  uint8
	Cut    uint8
}

// Lit is how bright a colour is drawn whose dot says 128.
const Lit = 128

// Picture is dots, rows from the top.
type Picture struct {
	W, H int
	Dots []Dot
}

// Reset makes p a picture of w by h empty dots, reusing its memory.
func (p *Picture) Reset(w, h int) {
	p.W, p.H = max(0, w), max(0, h)
	n := p.W * p.H
	if cap(p.Dots) < n {
		p.Dots = make([]Dot, n)
	}
	p.Dots = p.Dots[:n]
	clear(p.Dots)
}

// Label returns the stuff that shows most in a dot, or [Bare] where what lies behind shows more.
func (p *Picture) Label(x, y int) int {
	d := &p.Dots[y*p.W+x]
	if int(d.Part[0]) < 255-int(d.Part[0])-int(d.Part[1]) || d.Part[0] == 0 {
		return Bare
	}
	return int(d.Stuff[0])
}

// Vote is one row of a picture reduced to a grid of cells: in each the stuff that shows most, or -1 where what lies behind does.
func (p *Picture) Vote(columns, rows, row int) []int {
	out := make([]int, max(0, columns))
	for col := range out {
		var votes [Bare + 1]int
		behind := 0
		for j := row * p.H / rows; j < (row+1)*p.H/rows; j++ {
			for i := col * p.W / columns; i < (col+1)*p.W/columns; i++ {
				d := &p.Dots[j*p.W+i]
				behind += 255 - int(d.Part[0]) - int(d.Part[1])
				for k, part := range d.Part {
					votes[d.Stuff[k]] += int(part)
				}
			}
		}
		out[col] = -1
		for stuff, n := range votes {
			if n > behind {
				out[col], behind = stuff, n
			}
		}
	}
	return out
}

// looks counts what is seen in one dot.
type looks struct {
	stuff  [4]uint8
	count  [4]int
	n      int
	all    int
	bright float64
	lit    int
	cut    int
	shade  float64
}

// see adds a look at a stuff.
func (l *looks) see(stuff uint8, bright float64) {
	l.all++
	l.bright += bright
	l.lit++
	for i := range l.n {
		if l.stuff[i] == stuff {
			l.count[i]++
			return
		}
	}
	if l.n < len(l.stuff) {
		l.stuff[l.n], l.count[l.n] = stuff, 1
		l.n++
	}
}

// cutThrough adds a look at a stuff where it was cut.
func (l *looks) cutThrough(stuff uint8, bright float64) {
	l.see(stuff, bright)
	l.cut++
}

// miss adds a look past everything, of which so much of the light is taken.
func (l *looks) miss(shade float64) {
	l.all++
	l.shade += shade
}

// dot keeps the two stuffs that were seen most.
func (l *looks) dot() (d Dot) {
	if l.all == 0 {
		return d
	}
	for k := range d.Stuff {
		best := -1
		for i := range l.n {
			if l.count[i] > 0 && (best < 0 || l.count[i] > l.count[best]) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		d.Stuff[k], d.Part[k] = l.stuff[best], uint8(255*l.count[best]/l.all)
		l.count[best] = 0
	}
	if l.n > 2 && l.lit == l.all { // the third and fourth leave no hole
		d.Part[0] = 255 - d.Part[1]
	}
	if l.lit > 0 {
		d.Bright = uint8(min(255, max(0, Lit*l.bright/float64(l.lit)+0.5)))
		d.Cut = uint8(255 * l.cut / l.lit)
	}
	if l.lit < l.all {
		d.Shade = uint8(255 * min(1, l.shade/float64(l.all-l.lit)))
	}
	return d
}
