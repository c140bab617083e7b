package shopping

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/lot"
)

// Month is how far ahead what expires is looked for, days.
const Month = 30

// Expiring is a pack that will soon be past its date, or is.
type Expiring struct {
	Pack   lot.Pack
	Days   int   // from today to the last day it may be used; below 0: it is past its date
	Taken  []Use // by the season's pours that will pick it, in the order of their days
	Unused lot.Quantity
	Could  []Use // by other designs, those that want most of it first
}

// Use is what a design would take.
type Use struct {
	Name string // of the design
	Plan string // its file, or the id of its pour in the logbook
	For  string
	On   day.Day // 0: no day is planned
	Q    lot.Quantity
}

// Expires lists the packs with something in them that are past their date within some days, the first first. The planned pours pick in the order
// of their days as they will be picked; what they leave could go into any of the other designs.
func Expires(s lot.Stock, within int, planned, others []Pour) []Expiring {
	var out []Expiring
	at := map[string]int{}
	for _, h := range s.Held {
		for _, p := range h.Packs {
			if p.Left > 0 && p.Expires != 0 && int(p.Expires-s.Today) <= within {
				out = append(out, Expiring{Pack: p, Days: int(p.Expires - s.Today), Unused: p.Left})
			}
		}
	}
	slices.SortFunc(out, func(a, b Expiring) int {
		return cmp.Or(cmp.Compare(a.Pack.Expires, b.Pack.Expires), cmp.Compare(a.Pack.Name, b.Pack.Name), cmp.Compare(a.Pack.ID, b.Pack.ID))
	})
	for i, x := range out {
		at[x.Pack.ID] = i
	}
	l := newLarder(s)
	for _, p := range inOrder(planned, s.Today) {
		parts, _ := l.pour(p)
		for _, part := range parts {
			if i, ok := at[part.Pack]; ok {
				out[i].Taken = append(out[i].Taken, Use{p.Name, p.Plan, p.For, cmp.Or(p.On, s.Today), part.Q})
				out[i].Unused -= part.Q
			}
		}
	}
	for i := range out {
		out[i].Could = couldUse(out[i], others)
	}
	return out
}

// couldUse are the designs that would take something of what is left of a pack; of one past its date none.
func couldUse(x Expiring, designs []Pour) []Use {
	if x.Days < 0 || x.Unused <= 0 {
		return nil
	}
	var out []Use
	for _, p := range designs {
		if q := totals([]Pour{p})[x.Pack.Material]; q > 0 && !slices.ContainsFunc(out, func(u Use) bool { return u.Name == p.Name }) {
			out = append(out, Use{Name: p.Name, Plan: p.Plan, Q: q})
		}
	}
	slices.SortStableFunc(out, func(a, b Use) int { return cmp.Or(cmp.Compare(b.Q, a.Q), cmp.Compare(a.Name, b.Name)) })
	return out
}
