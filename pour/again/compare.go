package again

import (
	"slices"
	"strconv"
	"strings"

	"pourbench/pour"
)

// Comparison is two plans side by side: every field and every figure in which they differ.
type Comparison struct {
	Groups                   []Group
	Fields, SameFields       int  // of the plans
	Figures, SameFigures     int  // of their sheets
	FirstFaulty, OtherFaulty bool // a plan that holds what cannot be, so that no figure of it is worked out
}

// Group is what differs of one section of the papers.
type Group struct {
	Title string
	Lines []Line
}

// Line is one field or figure in both plans, each with its unit; "–": it has none.
type Line struct {
	What   string
	Path   string // of a figure of the first plan or, where that has none, of the second; empty: it is a field
	First  string
	Second string
}

// none stands for what a plan does not have, or what is not worked out of it.
const none = "–"

// Compare sets two sheets side by side. Items of lists are told apart by their names. Figures are drawn in the units of the first, to six digits: what
// differs in none of them is the same. A plan with faults has fields only.
func Compare(a, b pour.Sheet) Comparison {
	c := Comparison{FirstFaulty: len(a.Base.Jugs) == 0, OtherFaulty: len(b.Base.Jugs) == 0}
	lines := map[string][]Line{}
	changes, same := pour.Compared(a.Plan, b.Plan)
	c.Fields, c.SameFields = len(changes), same
	for _, x := range changes {
		at := sectionOfField(x)
		lines[at] = append(lines[at], Line{What: x.Where, First: x.Was, Second: x.Now})
	}
	if !c.FirstFaulty && !c.OtherFaulty {
		for _, l := range figures(a, b, &c.SameFigures) {
			at := sectionOf(l.Path)
			lines[at] = append(lines[at], l)
			c.Figures++
		}
	}
	for _, title := range sections() {
		if len(lines[title]) > 0 {
			c.Groups = append(c.Groups, Group{title, lines[title]})
		}
	}
	return c
}

// figures lists the figures in which two sheets differ, those of the first in their order, then what only the second has.
func figures(a, b pour.Sheet, same *int) []Line {
	show := a.Plan.Show
	other := map[string]pour.Reading{}
	readings := b.Readings()
	for _, r := range readings {
		other[r.Path] = r
	}
	var out []Line
	add := func(r pour.Reading, first, second string) {
		if first == second {
			*same++
			return
		}
		out = append(out, Line{What: r.Label, Path: r.Path, First: first, Second: second})
	}
	for _, r := range a.Readings() {
		there := pour.Reading{Unit: r.Unit}
		if path, ok := moved(r.Path, &a, &b); ok {
			if x, ok := other[path]; ok {
				there = x
				delete(other, path)
			}
		}
		add(r, drawn(show, r), drawn(show, there))
	}
	for _, r := range readings {
		if _, left := other[r.Path]; left {
			add(r, none, drawn(show, r))
		}
	}
	return out
}

// drawn is a figure with its unit, to six digits.
func drawn(show pour.Show, r pour.Reading) string {
	if !r.Value.Known {
		return none
	}
	v, unit := show.ToUnit(r.Value.V, r.Unit)
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return none // what was just written can be read
	}
	return strings.TrimSpace(strconv.FormatFloat(short+0, 'f', -1, 64) + " " + unit)
}

// The sections of the papers that differences are told in.
const (
	sectionPlan   = "the plan"
	sectionAhead  = "made days before"
	sectionGather = "gather"
	sectionMould  = "line the mould"
	sectionMix    = "weigh the oils and make the lye"
	sectionJugs   = "weigh and wet the colours, jug by jug"
	sectionScents = "weigh the scents"
	sectionTop    = "the top"
	sectionPour   = "the pour, in order"
	sectionMud    = "colours beside each other"
	sectionBed    = "put to bed"
	sectionCut    = "cut and cure"
)

func sections() []string {
	var out []string
	out = append(out, sectionPlan, sectionAhead, sectionGather, sectionMould)
	for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
		for _, s := range []string{sectionMix, sectionJugs, sectionScents} {
			out = append(out, string(n)+": "+s)
		}
	}
	return append(out, sectionTop, sectionPour, sectionMud, sectionBed, sectionCut)
}

// sectionOfField is the section of a field of the plan.
func sectionOfField(x pour.Change) string {
	switch x.Table {
	case string(pour.Base), string(pour.Icing):
		item := strings.TrimPrefix(x.Where, x.Table+" ")
		switch {
		case strings.HasPrefix(item, "jug "):
			return x.Table + ": " + sectionJugs
		case strings.HasPrefix(item, "scent "):
			return x.Table + ": " + sectionScents
		}
		return x.Table + ": " + sectionMix
	case "mould", "room":
		return sectionMould
	case "swirl", "run":
		return sectionPour
	case "bed":
		return sectionBed
	case "cut", "cure":
		return sectionCut
	case "top", "piping":
		return sectionTop
	}
	return sectionPlan
}

// sectionOf is the section of a figure.
func sectionOf(path string) string {
	table, rest, _ := strings.Cut(path, ".")
	list, _, _ := strings.Cut(table, "[")
	switch {
	case table == string(pour.Base) || table == string(pour.Icing):
		switch {
		case strings.HasPrefix(rest, "jugs["):
			return table + ": " + sectionJugs
		case strings.HasPrefix(rest, "scents["):
			return table + ": " + sectionScents
		}
		return table + ": " + sectionMix
	case list == "totals":
		return sectionGather
	case list == "embed_kinds":
		return sectionAhead
	case list == "run":
		return sectionPour
	case list == "neighbours" || list == "orders":
		return sectionMud
	case list == "gel":
		return sectionBed
	case slices.Contains([]string{"toppings", "embeds", "piping"}, list):
		return sectionTop
	case slices.Contains([]string{"cut", "cut_run", "bars", "cure"}, list):
		return sectionCut
	}
	return sectionMould
}
