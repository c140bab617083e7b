package pour

import "pourbench/pour/label"

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
