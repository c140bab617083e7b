package shopping

import (
	"cmp"
	"maps"
	"slices"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/season"
)

// Pour is a pour that wants material.
type Pour struct {
	Name  string  // of its design
	Plan  string  // the file of its plan, as whoever made this names it
	For   string  // name of the date it is for; empty: none
	On    day.Day // when it is to be poured; 0: nobody knows, and what lies there today counts
	Needs []pour.MaterialNeed
}

// Reservations are the pours that a season has planned and that are not poured yet: what they want is reserved. One whose day is over without
// a pour still reserves, from today on. Those of which no plan can be read or weighed are named apart: what they want nobody knows.
func Reservations(b season.Board) (pours []Pour, unread []string) {
	for _, r := range b.Rows {
		switch {
		case !r.Planned():
		case r.Fault != nil || len(r.Needs) == 0:
			unread = append(unread, r.Name)
		default:
			p := Pour{Name: r.Name, Plan: r.Plan, For: r.For, Needs: r.Needs}
			if r.Placed {
				p.On = max(r.Pour, b.Today)
			}
			pours = append(pours, p)
		}
	}
	return pours, unread
}

// Without is the pours without the first one of a plan, and that one: it is on the bench, or chosen. False: none of them is of that plan.
func Without(pours []Pour, plan string) (rest []Pour, own Pour, is bool) {
	rest = inOrder(pours, 0)
	at := slices.IndexFunc(rest, func(p Pour) bool { return plan != "" && p.Plan == plan })
	if at < 0 {
		return rest, Pour{}, false
	}
	own = rest[at]
	return slices.Delete(rest, at, at+1), own, true
}

// Reserve is a stock in which all that some pours want is reserved, and nothing else is. It is the one place where anything becomes reserved.
func Reserve(s lot.Stock, pours []Pour) lot.Stock {
	held := maps.Clone(s.Held)
	if held == nil {
		held = map[lot.Material]lot.Holding{}
	}
	for m, h := range held {
		h.Reserved = 0
		held[m] = h
	}
	for m, q := range totals(pours) {
		h := held[m]
		h.Reserved = q
		held[m] = h
	}
	s.Held = held
	return s
}

// totals is what pours want of each material.
func totals(pours []Pour) map[lot.Material]lot.Quantity {
	out := map[lot.Material]lot.Quantity{}
	for _, p := range pours {
		for _, n := range p.Needs {
			out[n.Material] += n.Q
		}
	}
	return out
}

// inOrder is pours in the order of their days; those without one stand as if poured today.
func inOrder(pours []Pour, today day.Day) []Pour {
	out := slices.Clone(pours)
	slices.SortStableFunc(out, func(a, b Pour) int { return cmp.Compare(cmp.Or(a.On, today), cmp.Or(b.On, today)) })
	return out
}

// larder is packs that pours in thought take from.
type larder struct {
	today day.Day
	packs map[lot.Material][]lot.Pack
}

func newLarder(s lot.Stock) larder {
	l := larder{s.Today, map[lot.Material][]lot.Pack{}}
	for m, h := range s.Held {
		l.packs[m] = slices.Clone(h.Packs)
	}
	return l
}

// pour takes what a pour wants as it would be picked on its day, first expired first out, and says of which packs and what there is too little of.
func (l larder) pour(p Pour) (parts []lot.Part, short map[lot.Material]lot.Quantity) {
	short = map[lot.Material]lot.Quantity{}
	for m, q := range totals([]Pour{p}) {
		got, lacks := lot.Pick(l.packs[m], q, cmp.Or(p.On, l.today))
		for _, part := range got {
			at := slices.IndexFunc(l.packs[m], func(x lot.Pack) bool { return x.ID == part.Pack })
			l.packs[m][at].Left -= part.Q
		}
		parts = append(parts, got...)
		if lacks > 0 {
			short[m] = lacks
		}
	}
	return parts, short
}

// Free is how much of each material a pour on a day may take: what is usable then and what no other pour has reserved. Others take first, each on
// its own day; of what is past its date by then nothing is left for anybody.
func Free(s lot.Stock, others []Pour, on day.Day) map[lot.Material]lot.Quantity {
	l := newLarder(s)
	for _, p := range inOrder(others, s.Today) {
		l.pour(p)
	}
	out := map[lot.Material]lot.Quantity{}
	for m, packs := range l.packs {
		if len(packs) > 0 {
			out[m], _ = lot.Holding{Packs: packs}.Left(cmp.Or(on, s.Today))
		}
	}
	return out
}
