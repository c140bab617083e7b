package stock

import "pourbench/pour/lot"

// Moved tells of every entry that moves something how much it takes out of its pack, below 0 where it puts in: a count what is missing by the book. The
// entries are those that count, in their order; book is what lies in each pack before the first of them, and after it what lies there by the last.
func Moved(standing []Entry, book map[string]lot.Quantity, tell func(e Entry, out lot.Quantity)) {
	for _, e := range standing {
		out := lot.Quantity(0)
		switch e.Kind {
		case Received, Made:
			out = -e.Q
		case Taken, Lost:
			out = e.Q
		case Counted:
			out = book[e.Pack] - e.Q
		default:
			continue
		}
		book[e.Pack] -= out
		tell(e, out)
	}
}
