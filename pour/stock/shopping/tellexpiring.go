package shopping

import (
	"cmp"
	"fmt"

	"pourbench/pour/lot"
)

// Name is what the pack is called.
func (x Expiring) Name() string { return cmp.Or(x.Pack.Name, x.Pack.Material.ID) }

// Tell says what there is of a pack and until when.
func (x Expiring) Tell() string {
	text := Much(x.Pack.Material, x.Pack.Left)
	if x.Pack.Lot != "" {
		text += ", lot " + x.Pack.Lot
	}
	switch {
	case x.Days < 0:
		return fmt.Sprintf("%s: past its date since %s, blocked", text, x.Pack.Expires)
	case x.Days == 0:
		return fmt.Sprintf("%s: today is the last day, %s", text, x.Pack.Expires)
	}
	return fmt.Sprintf("%s: until %s, %s", text, x.Pack.Expires, days(x.Days))
}

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// mostUses is how many designs are named that could use a pack.
const mostUses = 5

// TellUses says which pours will use a pack, and which designs could.
func (x Expiring) TellUses() []string {
	var out []string
	much := func(q lot.Quantity) string { return Much(x.Pack.Material, q) }
	for _, u := range x.Taken {
		out = append(out, fmt.Sprintf("%s, planned for %s, takes %s", u.Name, u.On, much(u.Q)))
	}
	switch {
	case x.Days < 0:
		return append(out, "nothing may use it")
	case x.Unused <= 0:
		return append(out, "nothing is left over")
	case len(x.Taken) > 0:
		out = append(out, much(x.Unused)+" left over")
	}
	for i, u := range x.Could {
		if i == mostUses {
			return append(out, fmt.Sprintf("%d more designs could use some", len(x.Could)-mostUses))
		}
		out = append(out, fmt.Sprintf("%s could use %s (%s)", u.Name, much(min(u.Q, x.Unused)), u.Plan))
	}
	if len(x.Taken)+len(x.Could) == 0 {
		out = append(out, "no plan that is known uses it")
	}
	return out
}
