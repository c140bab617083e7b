package trace

import (
	"strconv"
	"strings"

	"pourbench/pour/logbook"
	"pourbench/pour/plain"
)

// Columns are the columns of the rows of a tree.
func Columns() []string {
	return []string{
		"way", "depth", "from_kind", "from", "from_batch", "to_kind", "to", "to_batch", "material", "lot", "quantity", "unit", "bars", "planned", "jugs", "day", "what", "where", "for_whom", "entries", "doubt",
	}
}

// Rows are all links on a thing's way, one row for each, as deep as each is met first, for a table that is handed on. A cell that says nothing is
// empty, never 0.
func (g Graph) Rows(t Thing, way Way) [][]string {
	var out [][]string
	depth := map[Thing]int{t: 1}
	for _, x := range append([]Thing{t}, g.Reach(t, way)...) {
		for _, l := range g.Links(x, way) {
			far := l.far(way)
			if _, met := depth[far]; !met {
				depth[far] = depth[x] + 1
			}
			out = append(out, g.row(l, way, depth[x]))
		}
	}
	return out
}

// row is a link as a row.
func (g Graph) row(l Link, way Way, depth int) []string {
	r := cells{
		"way": string(way), "depth": strconv.Itoa(depth), "from_kind": string(l.From.Kind), "from": g.number(l.From), "from_batch": l.From.Of,
		"to_kind": string(l.To.Kind), "to": g.number(l.To), "to_batch": l.To.Of, "jugs": strings.Join(l.Jugs, " "), "entries": strings.Join(l.Entries, " "), "doubt": l.Doubt,
	}
	if l.Q != 0 {
		r["quantity"], r["unit"] = l.Q.String(), "g"
	}
	if l.From.Kind == Lot {
		r["material"], r["lot"] = l.From.Material.String(), g.number(l.From)
		if s, ok := g.spelt[l.From]; ok {
			r["material"] = s.name
		}
	}
	if p, ok := g.packs[l.From.ID]; ok && l.From.Kind == Pack {
		r["material"], r["lot"], r["unit"] = p.Material.String(), p.Lot, p.Material.Kind.Unit()
	} else if p, ok := g.packs[l.To.ID]; ok && l.To.Kind == Pack {
		r["unit"] = p.Material.Kind.Unit()
	}
	switch {
	case l.Planned == 0:
	case l.Planned < l.Q:
		r["planned"] = "in part"
	default:
		r["planned"] = "planned"
	}
	if p, ok := g.places[l.To]; ok && (p.bars != 0 || l.To.Kind == Bars) {
		r["bars"] = strconv.Itoa(p.bars)
		if e := p.event; e.Kind != "" {
			r["day"], r["what"], r["for_whom"] = e.Day(), string(e.Kind), e.Life.Audience
			if e.Kind == logbook.Sold {
				r["where"] = e.What
			}
		} else if l.To.Kind == Place {
			r["what"] = l.To.ID
		}
	}
	out := make([]string, len(Columns()))
	for i, name := range Columns() {
		if out[i] = r[name]; name != "quantity" && name != "bars" { // numbers may begin with a sign
			out[i] = plain.Cell(r[name])
		}
	}
	return out
}

// cells are cells by their columns.
type cells map[string]string

// number is what a thing is called where it was written.
func (g Graph) number(t Thing) string {
	switch t.Kind {
	case Bars:
		return g.label(t)
	case Lot:
		if of := g.packsOf(t); len(of) > 0 {
			return strings.Join(strings.Fields(of[0].Lot), " ")
		}
		if s, ok := g.spelt[t]; ok {
			return s.number
		}
	}
	return t.ID
}
