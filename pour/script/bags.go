package script

// Bags is the script of an icing: its jugs are piped from a bag each or, side by side in one bag, striped and all at once.
// Shares are fractions by jug; a jug without a share has no bag.
func Bags(shares []float64, order []int, one bool) Script {
	s := Script{Brief: Brief{Shares: append([]float64(nil), shares...), Order: append([]int(nil), order...), First: Whole, Last: Whole}}
	var filled []int
	for _, j := range order {
		if shares[j] > 0 {
			filled = append(filled, j)
		}
	}
	if one && len(filled) > 1 {
		s.Acts = []Act{{Kind: Pipe, Jug: Whole, Part: 1, Share: 1}}
		return s
	}
	for _, j := range filled {
		s.Acts = append(s.Acts, Act{Kind: Pipe, Jug: j, Part: 1, Share: shares[j]})
	}
	return s
}

// Trial is the script of a trial: its jugs are stirred and watched side by side, and poured nowhere.
func Trial(shares []float64) Script {
	return Script{
		Brief: Brief{Shares: append([]float64(nil), shares...), First: Whole, Last: Whole},
		Acts:  []Act{{Kind: Watch, Jug: Whole, Part: 1, Share: 1}},
	}
}

// Uses says whether an act moves a jug: its own acts, and those that move everything that lies in the pot, the bag or the mould.
// Making the top even counts for none.
func (s Script) Uses(a Act, jug int) bool {
	switch a.Kind {
	case Level:
		return false
	case Turn, PourOut, Wire, Comb, Pipe, Watch:
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
