package shopping

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/lot"
)

// Facts is all that what to buy, the largest batch and what expires are worked out of.
type Facts struct {
	Stock   lot.Stock // what lies there; what the planned pours want is reserved in it
	Offers  map[lot.Material][]Offer
	Planned []Pour   // by the season, not poured yet
	Unread  []string // planned pours of which nobody knows what they want
}

// Wanted is a pour of a plan. What cannot be weighed is refused with the reason: what it wants nobody knows.
func Wanted(p pour.Plan, shelf pour.Shelf, file string) (Pour, error) {
	sheet := pour.Weigh(p, shelf)
	if err := unmixable(&sheet); err != nil {
		return Pour{}, fmt.Errorf("work out what %q wants: %w", p.Name, err)
	}
	return Pour{Name: p.Name, Plan: file, Needs: sheet.Wants(shelf)}, nil
}

// For is the list for some pours. One that the season has planned is that pour, on its day, and is not reserved beside; the other planned pours are,
// and with all they are on the list too.
func (f Facts) For(pours []Pour, all bool, rule Rule) List {
	others := f.Planned
	chosen := slices.Clone(pours)
	for i := range chosen {
		rest, own, is := Without(others, chosen[i].Plan)
		if is {
			others, chosen[i].On, chosen[i].For = rest, own.On, own.For
		}
	}
	if all {
		chosen, others = append(chosen, others...), nil
	}
	return Of(f.Stock, f.Offers, chosen, others, rule)
}

// Largest is the largest pour of a plan that today's stock allows beside what others have reserved.
func (f Facts) Largest(p pour.Plan, shelf pour.Shelf, file string) (Largest, error) {
	others, own, _ := Without(f.Planned, file)
	return Grow(p, shelf, Free(f.Stock, others, own.On))
}

// Expires lists what is past its date within some days; the designs are those that could use it beside the planned pours.
func (f Facts) Expires(within int, designs []Pour) []Expiring {
	return Expires(f.Stock, within, f.Planned, designs)
}

// TellUnread says which planned pours reserve nothing because nobody knows what they want.
func (f Facts) TellUnread() []string {
	var out []string
	for _, name := range f.Unread {
		out = append(out, fmt.Sprintf("the planned pour %s reserves nothing: its plan cannot be read or weighed", name))
	}
	return out
}
