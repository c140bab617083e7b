package shopping

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// Tell tells a size of the plan in the maker's units.
func (z Sizing) Tell(v float64, show pour.Show) string {
	if z.Unit == "" {
		return fmt.Sprintf("%g %s", v, z.Label)
	}
	return z.Label + " of " + z.value(v, show)
}

// value tells the number of a size alone.
func (z Sizing) value(v float64, show pour.Show) string {
	_, unit := show.ToUnit(v, z.Unit)
	return strings.TrimSpace(show.Plain(v, z.Unit) + " " + unit)
}

// Tell says how large a pour the stock allows, in one sentence.
func (l Largest) Tell(show pour.Show) string {
	switch {
	case l.None:
		return "the stock allows none of any size"
	case len(l.Limits) == 0:
		return "the stock allows more than a plan can say: " + l.Sizing.Tell(l.To, show)
	case l.To == l.Sizing.Now:
		return "as it is, with " + l.Sizing.Tell(l.To, show) + ", it is the largest the stock allows"
	}
	return l.Sizing.Tell(l.To, show) + ", now " + l.Sizing.value(l.Sizing.Now, show)
}

// Does says what making it so large does: for a key.
func (l Largest) Does(show pour.Show) string { return "make it " + l.Sizing.Tell(l.To, show) }

// TellLimits says what limits it, a line for each, and then what would limit it next.
func (l Largest) TellLimits(show pour.Show) []string {
	var out []string
	for _, x := range l.Limits {
		out = append(out, "limited by "+x.Tell())
	}
	if len(l.Limits) == 0 {
		return out
	}
	next := "with more of that: "
	if l.Next.None {
		next += "none either"
	} else {
		next += l.Sizing.Tell(l.Next.To, show)
	}
	for i, x := range l.Next.Limits {
		next += map[bool]string{true: ", then limited by ", false: " and "}[i == 0] + x.Tell()
	}
	return append(out, next)
}

// TellUnkept names what limits nothing because no pack of it ever came; empty: there is nothing such.
func (l Largest) TellUnkept() string {
	if len(l.Unkept) == 0 {
		return ""
	}
	return "not in the ledger, so taken to be enough: " + strings.Join(l.Unkept, ", ")
}

// Tell says what limits a batch.
func (l Limit) Tell() string {
	if l.Rim {
		return "the mould: the base comes near its rim"
	}
	return fmt.Sprintf("%s: %s free, a step larger wants %s", l.Name, Much(l.Material, l.Free), Much(l.Material, l.Need))
}
