package script

// Shaped is what is known of an icing that is piped in a shape. Bags are by jug; of jugs side by side in one bag the first is all of it.
type Shaped struct {
	Peak bool  // a peak of the base is tried before the bags are filled
	Bags []Bag // none: nothing is known of them
}

// Bag is what is piped from one bag.
type Bag struct {
	Fills int // how often it is filled; 0: there is no bag, it is spooned
	Units int // how many units are piped from it; 0: not told
}

// Bags is the script of an icing: its jugs are piped from a bag each or, side by side in one bag, striped and all at once; where it has a
// shape, the base is tried first and each bag is filled before it is piped. Shares are fractions by jug; a jug without a share has no bag.
func Bags(shares []float64, order []int, one bool, shaped Shaped) Script {
	s := Script{Brief: Brief{Shares: append([]float64(nil), shares...), Order: append([]int(nil), order...), First: Whole, Last: Whole}}
	var filled []int
	for _, j := range order {
		if shares[j] > 0 {
			filled = append(filled, j)
		}
	}
	if shaped.Peak {
		s.Acts = append(s.Acts, Act{Kind: Peak, Jug: Whole})
	}
	if one && len(filled) > 1 {
		s.pipe(Act{Kind: Pipe, Jug: Whole, Part: 1, Share: 1}, shaped.bag(0))
		return s
	}
	for _, j := range filled {
		bag := shaped.bag(j)
		if one {
			bag = shaped.bag(0)
		}
		s.pipe(Act{Kind: Pipe, Jug: j, Part: 1, Share: shares[j]}, bag)
	}
	return s
}

func (s Shaped) bag(i int) Bag {
	if i < len(s.Bags) {
		return s.Bags[i]
	}
	return Bag{}
}

// pipe adds the filling of a bag and the piping from it.
func (s *Script) pipe(a Act, bag Bag) {
	if bag.Fills > 0 {
		s.Acts = append(s.Acts, Act{Kind: Fill, Jug: a.Jug, Times: bag.Fills})
	}
	a.Times = bag.Units
	s.Acts = append(s.Acts, a)
}

// Trial is the script of a trial: its jugs are stirred and watched side by side, and poured nowhere.
func Trial(shares []float64) Script {
	return Script{
		Brief: Brief{Shares: append([]float64(nil), shares...), First: Whole, Last: Whole},
		Acts:  []Act{{Kind: Watch, Jug: Whole, Part: 1, Share: 1}},
	}
}

// Uses says whether an act moves a jug: its own acts, and those that move everything that lies in the pot, the bag or the mould.
// Making the top even counts for none, nor does what is done to the loaf.
func (s Script) Uses(a Act, jug int) bool {
	switch a.Kind {
	case Level, Peak, Embed, Strew, Firm, Mark, Cut, Aside, Weigh, Wipe:
		return false
	case Turn, PourOut, Wire, Comb, Fill, Pipe, Watch:
		return a.Jug == jug || a.Jug == Whole
	}
	return a.Jug == jug
}

// Filled is how many jugs have a share.
func (s Script) Filled() int {
	n := 0
	for _, v := range s.Brief.Shares {
		if v > 0 {
			n++
		}
	}
	return n
}
