package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/strict"
)

// Account is how a figure of a sheet comes about: what it is worked out from, by which formula, and what hangs on it.
type Account struct {
	Path   string // as `figures` names it: "base.jugs[1].total_g"
	Label  string
	Value  Figure
	Unit   Unit
	How    Term   // worked out, it gives Value
	Why    string // what the formula does not say; empty: it says all
	Low    Figure // the ends of its band; unknown: it has none
	High   Figure
	Band   string    // why there is a band
	Feeds  []string  // codes of the warnings that hang on it
	Fires  []Warning // those of them that stand on this plan now
	Absent string    // why the figure is not worked out; empty: it is
	Word   string    // what stands there where it is no number but a word of the plan
}

// accountRow is a figure that can be accounted for. Its pattern is its path with the batch as "batch" and every index empty.
type accountRow struct {
	pattern string
	label   string // "{}" stands for the name of the item the path leads to
	unit    Unit
	feeds   []string
	value   func(teller) Figure
	how     func(teller) Term
	why     string
	of      func(teller) bool                           // whether a sheet has the figure; nil: every sheet
	band    func(teller) (low, high Figure, why string) // nil: none
}

// stands says whether the sheet a teller stands at has the figure.
func (r *accountRow) stands(t teller) bool { return r.of == nil || r.of(t) }

// teller accounts for the figures of one sheet. It is at a batch, and at the items its path leads to.
type teller struct {
	sheet *Sheet
	shelf Shelf
	hand  Hand
	b     *BatchSheet
	plan  *Batch
	ix    []int
	rows  []accountRow
}

// Explain accounts for a figure by its path. A path that leads to no figure of the sheet is refused with the nearest ones that do.
func (s Sheet) Explain(path string, shelf Shelf, h Hand) (Account, error) {
	t := teller{sheet: &s, shelf: shelf, hand: h, rows: accountRows()}
	if len(s.Base.Jugs) == 0 {
		return Account{}, fmt.Errorf("explain %q: the plan holds something that cannot be, so no figure of it is worked out; see check", path)
	}
	row, at, ok := t.find(path)
	if a, planned := s.planned(path); !ok && planned {
		return a, nil
	}
	if !ok {
		known := s.Explained()
		mend := "explain without a figure lists those there are"
		if near := strict.Nearest(path, known); near != "" {
			mend = "did you mean " + near + "? " + mend
		}
		return Account{}, fmt.Errorf("explain %q: no figure of this plan has that name: %s", path, mend)
	}
	return at.account(row, path), nil
}

// planned accounts for what the maker has put into the plan herself: it comes from nowhere else.
func (s Sheet) planned(path string) (Account, bool) {
	f, ok := s.Plan.field(path)
	if !ok {
		return Account{}, false
	}
	a := Account{Path: path, Label: f.Label, Unit: f.Unit, Why: f.Means}
	if a.Label == "" {
		a.Label = f.Key
	}
	switch at := f.At.(type) {
	case *float64:
		a.Value, a.How = Know(*at), leaf(Input{Name: a.Label, V: *at, Unit: f.Unit, From: "your plan, " + path})
		a.Why += "; from " + digits(f.Low) + " to " + digits(f.High)
	case *int:
		a.Value, a.How = Know(float64(*at)), leaf(Input{Name: a.Label, V: float64(*at), From: "your plan, " + path})
	case *int64:
		a.Value, a.How = Know(float64(*at)), leaf(Input{Name: a.Label, V: float64(*at), From: "your plan, " + path})
	case *string:
		a.Word = *at
		if choices := f.Choices(); a.Word == "" && len(choices) > 0 {
			a.Word = choices[0]
		}
		if choices := f.Choices(); len(choices) > 1 {
			a.Why += "; one of " + strings.Join(choices, ", ")
		}
	case *[]float64:
		a.Word = "none"
		if all := texts(*at); len(all) > 0 {
			a.Word = strings.Join(all, " ")
		}
	default:
		return Account{}, false
	}
	return a, true
}

// texts writes numbers as the plan file has them.
func texts(all []float64) []string {
	out := make([]string, len(all))
	for i, v := range all {
		out[i] = strict.Short(v)
	}
	return out
}

func (t teller) account(row accountRow, path string) Account {
	a := Account{Path: path, Label: t.label(row), Value: row.value(t), Unit: row.unit, Why: row.why, Feeds: row.feeds}
	if !AsFigure(a.Value.orUnknown()).Known {
		a.Value, a.Absent = Figure{}, t.absent()
		return a
	}
	a.How = row.how(t)
	if row.band != nil {
		a.Low, a.High, a.Band = row.band(t)
	}
	for _, w := range t.sheet.Warnings {
		if slices.Contains(row.feeds, w.Code) && t.concerns(row, w) {
			a.Fires = append(a.Fires, w)
		}
	}
	return a
}

// absent says why a figure has no number.
func (t teller) absent() string {
	switch {
	case t.b == nil && t.sheet.Piping.Lacks != "":
		return t.sheet.Piping.Lacks
	case t.b != nil && t.b.Refused.Masses != "":
		return t.b.Refused.Masses
	case t.b != nil && t.b.Refused.Times != "":
		return t.b.Refused.Times
	}
	return "it cannot be worked out from this plan"
}

// concerns says whether a warning stands on the batch or the topping the figure is of, or on none at all.
func (t teller) concerns(row accountRow, w Warning) bool {
	if strings.HasPrefix(row.pattern, "toppings[]") {
		return w.Where == placeOfTopping(t.topping().Name)
	}
	if t.b == nil {
		return true
	}
	n, ok := w.Batch()
	return !ok || n == t.b.Name
}

// label names the figure, with the item it is of.
func (t teller) label(row accountRow) string {
	name := ""
	if parts := strings.Split(row.pattern, "[]"); len(parts) > 1 {
		name = t.itemName(parts)
	}
	label := strings.ReplaceAll(row.label, "{}", name)
	if t.b != nil && t.b.Name == Icing {
		label += " of the icing"
	}
	return label
}

// itemName is the name of the thing a path leads to: a jug, an oil, a colourant of a jug.
func (t teller) itemName(parts []string) string {
	i := t.ix[0]
	switch parts[0] {
	case "batch.oils":
		return t.b.Oils[i].Name
	case "batch.extras":
		return t.b.Extras[i].Name
	case "batch.scents":
		return t.b.Scents[i].Name
	case "run":
		return t.sheet.Run[i].Key
	case "cut_run":
		return t.sheet.CutRun[i].Key
	case "orders":
		return "the order " + t.sheet.Mingling.Orders[i].Kind
	case "totals":
		return t.sheet.Totals[i].Name
	case "cut.cuts_mm", "cut.marks_mm", "cut.across_mm", "cut.across_marks_mm":
		return "cut " + decimal(i+1)
	case "cut.bars":
		return "bar " + decimal(i+1)
	case "cut.trims":
		return "the trim at end " + strings.ToUpper(t.sheet.Cut.Trims()[i].End)
	case "embed_kinds":
		return t.sheet.Embeds[i].Name
	case "embeds":
		p, k, _ := t.sheet.Piece(i)
		return t.sheet.Embeds[k].Name + " at " + t.sheet.Plan.Show.LenNear(p.CentreMM)
	case "label.lines":
		return t.sheet.Label.Lines[i].Text
	case "label.allergens":
		a := &t.sheet.Label.Allergens[i]
		if len(parts) > 2 {
			return a.Name + " from " + a.From[t.ix[1]].Scent
		}
		return a.Name
	case "toppings":
		if l := t.sheet.Toppings[i]; len(parts) > 2 {
			return l.Parts[t.ix[1]].Name + " in " + l.Name
		}
		return t.sheet.Toppings[i].Name
	case "neighbours":
		p := t.sheet.Mingling.Pairs[i]
		return t.sheet.Base.Jugs[p.A].Name + " and " + t.sheet.Base.Jugs[p.B].Name
	}
	j := t.b.Jugs[i]
	switch {
	case len(parts) > 2 && parts[1] == ".colourants":
		return j.Colourants[t.ix[1]].Name + " in " + j.Name
	case len(parts) > 2 && parts[1] == ".scents":
		return j.Scents[t.ix[1]].Name + " in " + j.Name
	}
	return j.Name
}
