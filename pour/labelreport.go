package pour

import (
	"cmp"
	"fmt"

	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// judged holds what a bar has against the report the plan names. What is missing is named as the shelf names it.
func (s *Sheet) judged(shelf *Shelf, has []label.Amount) label.Verdict {
	id := s.Plan.Label.Report
	if id == "" {
		return label.Verdict{}
	}
	r, ok := shelf.Label.Report(id)
	if !ok {
		var ids []string
		for _, r := range shelf.Label.Reports {
			ids = append(ids, r.ID)
		}
		return label.Verdict{Report: id, Why: "no such report is in your label file; " + strict.Meant(id, ids, "enter it, or take it out of the plan", "")}
	}
	v := label.Judge(r, has)
	for i := range v.Missed {
		if m := &v.Missed[i]; m.Is == 0 && m.Range.ID != "" {
			m.What = shelf.Named(m.Range)
		}
	}
	return v
}

// Named is what a range is of as screens name it: by the shelf, or its id where the shelf has none of it.
func (s *Shelf) Named(x label.Range) string {
	name := ""
	switch x.Kind {
	case label.RangeOil:
		name = inList(s.Oils, x.ID, func(o *Oil) string { return o.ID }).Name
	case label.RangeScent:
		name = inList(s.Scents, x.ID, func(c *Scent) string { return c.ID }).Name
	case label.RangeColourant:
		name = s.colourant(x.ID).Name
	case label.RangeExtra:
		name = inList(s.Extras, x.ID, func(e *Extra) string { return e.ID }).Name
	case label.RangeTopping:
		name = inList(s.Toppings, x.ID, func(m *ToppingMaterial) string { return m.ID }).Name
	case label.RangeWhite:
		name = "white pigments"
	case label.RangeSuperfat:
		name = "superfat of each batch"
	}
	return cmp.Or(name, x.ID)
}

// warnOutside tells what of the design leaves its report, one warning each, or why that cannot be told.
func (s *Sheet) warnOutside() {
	v := &s.Label.Report
	if v.Why != "" {
		s.warn(warning("outside-report", placeLabel, "whether the design stays inside report "+v.Report+" cannot be told: "+v.Why, "until it can, take it as outside"))
	}
	for _, m := range v.Missed {
		s.warn(warning("outside-report", placeLabel, fmt.Sprintf("%s: outside report %s", m.Tell(), v.Report),
			"bring it back into its range, or ask the assessor to look at this design"))
	}
}
