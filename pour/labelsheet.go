package pour

import (
	"cmp"

	"pourbench/pour/day"
	"pourbench/pour/label"
)

// LabelSheet is what the plan's label has to say in its market. It is filled in by [Sheet.Time], since its weight follows from how the bars dry.
type LabelSheet struct {
	Market    string // id; empty: no label is asked for, and nothing of it is worked out
	Style     label.Style
	Lines     []label.Line
	Allergens []label.Found
	Text      string // the list as it is printed, with its heading
	MadeG     Figure // mass of the average bar as it was made: what Lines sum to
	CuredG    Figure // what allergens are judged on
	Net       label.Net
	HeightMM  Figure // least height of the weight's figures
	Food      string // why it could be taken for food; empty: nothing says so
	Checks    []label.Check
	Report    label.Verdict
	Refused   string // why nothing of this could be worked out; empty: it was
}

// Labelling is what became of a batch, beside its plan. The zero value: nothing yet, all is as planned.
type Labelling struct {
	Went  []Went          // into its batches; nil: as planned
	Bars  []float64       // as weighed when they were packed, g; none: the forecast counts
	Ticks map[string]bool // rows of the market's list that the maker ticked
	Today day.Day         // the zero Day: not known, no row is old
}

// Labelled works out what the label of the plan says of such a batch, in the plan's market. The sheet is one that [Sheet.Time] made.
func (s *Sheet) Labelled(shelf Shelf, of Labelling) LabelSheet {
	plan := &s.Plan.Label
	l := LabelSheet{Market: plan.Market, Style: label.Style(cmp.Or(plan.List, string(label.AsSalts)))}
	m, ok := shelf.Market(plan.Market)
	if !ok {
		l.Refused = "no market " + plan.Market + " on the shelf"
		return l
	}
	charges, err := s.Contents(shelf, of.Went)
	if err != nil {
		l.Refused = err.Error()
		return l
	}
	made := 0.0
	for _, c := range charges {
		made += c.G
	}
	l.MadeG, l.CuredG = AsFigure(made), s.labelCuredG(made)
	entries, err := label.Made(l.Style, charges, m, plan.Names == NamesEnglish)
	if err != nil {
		l.Refused = err.Error()
		return l
	}
	l.Lines = label.List(entries, m)
	l.Allergens = label.Allergens(scentsIn(charges, shelf), made, l.CuredG.orUnknown(), m, shelf.Allergens)
	l.Text = label.Text(l.Lines, l.Allergens, m)
	return l
}

// labelCuredG is the cured mass of a bar that weighs so much as it was made: the usual bar's dry mass and final moisture in proportion.
func (s *Sheet) labelCuredG(made float64) Figure {
	return AsFigure(s.Bars.CuredG * made / s.MadeG().orUnknown())
}

// scentsIn are the scents of a bar, those of one kind added up.
func scentsIn(charges []label.Charge, shelf Shelf) []label.ScentIn {
	var out []label.ScentIn
	at := map[string]int{}
	for i := range charges {
		c := &charges[i]
		if c.Kind != label.Scent {
			continue
		}
		k, known := at[c.From]
		if !known {
			k = len(out)
			at[c.From] = k
			out = append(out, shelf.scentIn(c.From))
		}
		out[k].G += c.G
	}
	return out
}

// scentIn is a scent by its name, without a mass, with what its statement says is in it.
func (s *Shelf) scentIn(name string) label.ScentIn {
	x := inList(s.Scents, name, func(x *Scent) string { return x.Name })
	in := label.ScentIn{Name: name, Extract: x.Extract, Parts: make([]label.Part, 0, len(x.Allergens))}
	for _, a := range x.Allergens {
		in.Parts = append(in.Parts, label.Part{Name: a.Name, CAS: a.CAS, Percent: a.Percent})
	}
	return in
}

// label works out what the plan's label says where a market is stated.
func (s *Sheet) label(shelf Shelf) {
	if s.Plan.Label.Market != "" {
		s.Label = s.Labelled(shelf, Labelling{})
	}
}
