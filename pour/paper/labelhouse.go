package paper

import (
	"cmp"
	"strconv"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
)

// MakersText tells who stands on labels, by market, and where the logo is.
func MakersText(h label.House) string {
	var b strings.Builder
	b.WriteString("YOUR LABELS\n")
	if len(h.Makers) == 0 {
		b.WriteString("  nobody stands on them yet: pourbench label maker name \"your name\"\n")
	}
	for _, m := range h.Makers {
		b.WriteString("  " + padded(cmp.Or(m.Market, "wherever else"), 15) + m.Name + "\n")
		for _, line := range []string{cmp.Or(m.Address, "no address stated"), cmp.Or(m.Contact, "no contact stated")} {
			b.WriteString("  " + padded("", 15) + line + "\n")
		}
	}
	b.WriteString("  " + padded("logo", 15) + cmp.Or(h.Logo, "none") + "\n")
	return b.String()
}

// ReportsText tells what reports allow, by the names on the shelf.
func ReportsText(list []label.Report, shelf pour.Shelf) string {
	if len(list) == 0 {
		return "No report is entered: pourbench label report add ID --on DAY, or draft one from a plan: pourbench label report from ID PLAN\n"
	}
	var b strings.Builder
	for _, r := range list {
		b.WriteString("REPORT " + r.ID + ", of " + r.On.String())
		if r.Of != "" {
			b.WriteString(": " + r.Of)
		}
		b.WriteString("\n")
		if len(r.Ranges) == 0 {
			b.WriteString("  no range is entered yet, so nothing can be held against it\n")
		}
		for _, x := range r.Ranges {
			name := shelf.Named(x)
			if name == x.ID {
				name += " (not on the shelf)"
			}
			if x.Kind == label.RangeEmbed {
				name = x.ID
			}
			b.WriteString("  " + padded(x.Kind, 11) + padded(name, 34) + " " + shortest(x.Least) + " to " + shortest(x.Most) + " %\n")
		}
		b.WriteString("\n")
	}
	p := textPage()
	p.wrapped("", "Percent of the bar as it was made; superfat by itself. A material that is not named there is outside. These are your own entries: what holds is what the assessor wrote.")
	p.wrapped("", askLocally)
	return b.String() + p.text()
}

// shortest is a number as it was entered.
func shortest(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
