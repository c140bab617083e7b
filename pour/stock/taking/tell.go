package taking

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/lot"
)

// Tell says what was taken and what lacks, a line for each.
func (t Taking) Tell() string {
	var b strings.Builder
	for _, d := range t.Draws {
		fmt.Fprintf(&b, "%s %s of %s%s from %s%s%s\n", d.Q, d.Material.Kind.Unit(), d.Name, into(d.Want), d.Part.Pack, lotOf(d.Part.Lot), d.doubt())
	}
	b.WriteString(TellLacks(t.Lacks))
	return b.String()
}

// TellLacks says what no pack covers; what no pack ever came of in one line behind the rest.
func TellLacks(lacks []Lack) string {
	var b strings.Builder
	var unkept []string
	for _, l := range lacks {
		if l.Unkept {
			if l.Material.ID != lot.Water && !slices.Contains(unkept, l.Name) {
				unkept = append(unkept, l.Name)
			}
			continue
		}
		fmt.Fprintf(&b, "! %s %s of %s%s not taken: %s\n", l.Q, l.Material.Kind.Unit(), l.Name, into(l.Want), l.Why)
	}
	if len(unkept) > 0 {
		fmt.Fprintf(&b, "not taken, because no pack of it ever came: %s\n", strings.Join(unkept, ", "))
	}
	return b.String()
}

func lotOf(lot string) string {
	if lot == "" {
		return ""
	}
	return ", lot " + lot
}

// doubt is what is to be minded of a draw.
func (d Draw) doubt() string {
	var said []string
	if d.Planned {
		said = append(said, Planned)
	}
	if d.Past {
		said = append(said, "past its date")
	}
	if len(said) == 0 {
		return ""
	}
	return " (" + strings.Join(said, "; ") + ")"
}

// into says where something goes, if not into the whole batch of the base.
func into(w Want) string {
	switch {
	case w.Jug != "" && w.Batch != "":
		return fmt.Sprintf(" into %s jug %s", w.Batch, w.Jug)
	case w.Jug != "":
		return " into " + w.Jug
	case w.Batch != "":
		return " into the " + string(w.Batch)
	}
	return ""
}
