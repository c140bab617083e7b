package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Swap is a scent of the shelf in the place of one of the plan's.
type Swap struct {
	Batch pour.BatchName
	At    int    // among the batch's scents
	ID    string // of the scent that is tried there
}

// Edit is the swap as an edit of the plan.
func (s Swap) Edit() pour.Edit { return pour.SwapScent(s.Batch, s.At, s.ID) }

// Stands is the scent of the plan that is to be swapped; false: it has none there.
func (s Swap) Stands(p pour.Plan) (id string, ok bool) {
	b := p.Batch(s.Batch)
	if b == nil || s.At >= len(b.Scents) {
		return "", false
	}
	return b.Scents[s.At].Scent, true
}

// Trial is a swap that is tried beside the plan: nothing of the plan changes until it is taken.
type Trial struct {
	Swap  Swap
	Sheet *pour.Sheet // the plan with it; nil: it is being worked out
	Fresh bool        // it belongs to the plan as it is now
	Why   string      // why it cannot be; empty: it can
}

// The columns of what another scent would change.
const (
	swapName = iota
	swapNow
	swapWith
)

// anotherScent is what another scent in the place of one would change of the label, before it is taken.
func anotherScent() Panel {
	return Panel{
		ID: "another scent", Title: "Another scent", cells: keys.Words, Grid: (*Facts).swapGrid,
		change: func(f *Facts, on On) Do {
			switch {
			case on.Cell.Kind == grid.Tick:
				return Do{Name: on.Cell.Name, Edit: on.Cell.Flip, Said: on.Cell.Said}
			case f.Plan.Label.Market == "":
				return changeMarket(f, on)
			case on.Row.Item < 0:
				return Do{Why: "go to a scent of the plan: {change} tries another in its place"}
			}
			of := f.swapAt(on.Row.Item)
			return pick(listScents, "", func(id string) Do {
				of.ID = id
				return Do{Try: &of, Said: "tried beside the plan: nothing of it changed; go to “" + takeIt + "” to make it so"}
			})
		},
	}
}

// swaps lists every scent of the plan, those of the base first.
func (f *Facts) swaps() []Swap {
	var out []Swap
	for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
		if b := f.Plan.Batch(n); b != nil {
			for i := range b.Scents {
				out = append(out, Swap{Batch: n, At: i, ID: b.Scents[i].Scent})
			}
		}
	}
	return out
}

func (f *Facts) swapAt(item int) Swap { return f.swaps()[item] }

func (f *Facts) scentName(id string) string {
	if sc, ok := f.Shelf.Scent(id); ok {
		return sc.Name
	}
	return id
}

func (f *Facts) swapGrid() grid.Grid {
	g := grid.Grid{Empty: "no scent in this plan: {go to scent} is where one is added", Columns: []grid.Column{swapName: {Head: "scent", W: 14, Grow: 2}, swapNow: {Head: "now", W: 10, Grow: 1}, swapWith: {Head: "with it", W: 10, Grow: 1}}}
	if f.Plan.Label.Market == "" {
		g.Empty = noLabel
		return g
	}
	for i, of := range f.swaps() {
		g.Rows = append(g.Rows, f.swapRow(of, i))
	}
	if len(g.Rows) == 0 || f.Trial == nil {
		return g
	}
	was, _ := f.Trial.Swap.Stands(f.Plan)
	g.Rows = append(g.Rows, heading(f.scentName(f.Trial.Swap.ID)+" in place of "+f.scentName(was)))
	switch t := f.Trial; {
	case t.Why != "":
		g.Rows = append(g.Rows, f.swapped("it cannot be", "", "", t.Why, f.Look.Caution))
	case t.Sheet == nil:
		g.Rows = append(g.Rows, f.swapped(labelAwaited, "", "", labelAwaited, f.Look.Stale))
	default:
		g.Rows = append(g.Rows, f.swapTaken(was))
		g.Rows = append(g.Rows, f.swapEffects(f.labelled(), &t.Sheet.Label)...)
		g.Rows = append(g.Rows, f.swapWarnings(t.Sheet.Warnings)...)
	}
	return g
}

func (f *Facts) swapRow(of Swap, i int) grid.Row {
	name := f.scentName(of.ID)
	c := grid.Cell{Kind: grid.Shown, Text: name, Plain: name, Hint: "{change} tries another scent in its place: list, allergens and report are shown beside before anything changes"}
	tried := grid.Cell{Text: ofBatch(of.Batch, "")}
	if of.Batch == pour.Base {
		tried.Text = "in the base"
	}
	tried.Text, tried.Style = strings.TrimSpace(tried.Text), f.Look.Quiet
	return grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{swapName: c, swapNow: tried}}
}

// takeIt is the row that makes a swap.
const takeIt = "take it"

// swapTaken is the row that makes the swap.
func (f *Facts) swapTaken(was string) grid.Row {
	of := f.Trial.Swap
	said := f.scentName(of.ID) + " in place of " + f.scentName(was)
	take := grid.Cell{
		Kind: grid.Tick, Text: takeIt, Style: f.Look.Accent, Name: said, Flip: of.Edit(), Said: "done: " + said + "; {undo} takes it back",
		Hint: "{change} puts " + said + "; {undo} takes it back",
	}
	return grid.Row{Item: -1, Sub: -1, Cells: []grid.Cell{swapName: take, swapWith: f.label(f.scentName(of.ID))}}
}

// swapped is a row of what the swap changes.
func (f *Facts) swapped(name, now, with, hint string, st screen.Style) grid.Row {
	if t := f.Trial; t.Sheet != nil && !(t.Fresh && f.Fresh) {
		st = f.Look.Stale
	}
	return grid.Row{Item: -1, Sub: -1, Cells: []grid.Cell{
		swapName: {Kind: grid.Shown, Text: name, Plain: name, Hint: hint, Style: st}, swapNow: {Text: now, Style: f.Look.Quiet}, swapWith: {Text: with, Style: st},
	}}
}

// swapEffects is what differs between the label as it is and with the swap.
func (f *Facts) swapEffects(now, with *pour.LabelSheet) []grid.Row {
	if with.Refused != "" {
		return []grid.Row{f.swapped("it cannot be worked out", "", "", with.Refused, f.Look.Caution)}
	}
	var rows []grid.Row
	if now.Report.Report != "" {
		rows = append(rows, f.swapVerdict(now.Report, with.Report)...)
	}
	rows = append(rows, f.swapAllergens(now, with)...)
	rows = append(rows, f.swapLines(now, with)...)
	if now.Net.Text != with.Net.Text {
		rows = append(rows, f.swapped("it declares", now.Net.Text, with.Net.Text, "the weight on the label", f.Look.Text))
	}
	return rows
}

// swapWarnings is what would stand against the plan with the swap and does not now, beside what is only noted.
func (f *Facts) swapWarnings(with []pour.Warning) []grid.Row {
	var rows []grid.Row
	for _, w := range with {
		known := slices.ContainsFunc(f.Timed.Warnings, func(o pour.Warning) bool { return o.Code == w.Code && o.Where == w.Where })
		if !known && w.Severity != pour.Note {
			rows = append(rows, f.swapped(look.Mark(w.Severity)+" "+w.Told(), "", "comes", w.Told()+" → "+w.Do, f.Look.Severity(w.Severity)))
		}
	}
	return rows
}

// swapVerdict compares how the design stands to the report, with all that leaves it then.
func (f *Facts) swapVerdict(now, with label.Verdict) []grid.Row {
	st := f.Look.Good
	if with.Why != "" || len(with.Missed) > 0 {
		st = f.Look.Caution
	}
	rows := []grid.Row{f.swapped("report", verdictWord(now), verdictWord(with), "now "+now.Tell()+"; with it "+with.Tell(), st)}
	for _, miss := range with.Missed {
		rows = append(rows, heading(miss.Tell()))
	}
	return rows
}

// swapAllergens is which allergens would be named that are not, which no longer, and of which much changes.
func (f *Facts) swapAllergens(now, with *pour.LabelSheet) []grid.Row {
	var names []string
	percent := func(l *pour.LabelSheet, name string) (label.Found, string) {
		i := slices.IndexFunc(l.Allergens, func(a label.Found) bool { return a.Name == name })
		if i < 0 {
			return label.Found{}, "–"
		}
		return l.Allergens[i], f.Show.Number(l.Allergens[i].CuredPercent, allergenPlaces)
	}
	for _, l := range []*pour.LabelSheet{with, now} {
		for i := range l.Allergens {
			if !slices.Contains(names, l.Allergens[i].Name) {
				names = append(names, l.Allergens[i].Name)
			}
		}
	}
	rows := []grid.Row{f.swapped("allergens named", namedCount(now), namedCount(with), "how many stand in the list; + ?: of a scent nothing says which it brings", f.Look.Text)}
	for _, name := range names {
		a, was := percent(now, name)
		b, becomes := percent(with, name)
		said, st := name+": "+was+" % of the cured bar now, "+becomes+" with it", f.Look.Quiet
		switch {
		case b.Prohibited || b.Over:
			stands, style := f.allergenStands(&b)
			rows = append(rows, f.swapped("! "+name, was, becomes, said+"; "+stands, style))
		case b.Named && !a.Named:
			rows = append(rows, f.swapped("+ "+name, was, becomes, said+"; it is named then", f.Look.Caution))
		case a.Named && !b.Named:
			rows = append(rows, f.swapped("− "+name, was, becomes, said+"; it is no longer named", f.Look.Good))
		case was != becomes:
			rows = append(rows, f.swapped("  "+name, was, becomes, said, st))
		}
	}
	return rows
}

// namedCount is how many allergens are named, and that there may be more where a scent has no statement.
func namedCount(l *pour.LabelSheet) string {
	n := 0
	for i := range l.Allergens {
		if l.Allergens[i].Named {
			n++
		}
	}
	if len(l.Unstated) > 0 {
		return fmt.Sprintf("%d + ?", n)
	}
	return fmt.Sprint(n)
}

// swapLines is which ingredients come into the list and which go; where none does, whether its order stays.
func (f *Facts) swapLines(now, with *pour.LabelSheet) []grid.Row {
	texts := func(l *pour.LabelSheet) []string {
		var out []string
		for i := range l.Lines {
			if l.Lines[i].Class != label.Unlisted {
				out = append(out, l.Lines[i].Text)
			}
		}
		return out
	}
	a, b := texts(now), texts(with)
	var rows []grid.Row
	for _, text := range b {
		if !slices.Contains(a, text) {
			rows = append(rows, f.swapped("+ "+text, "", "comes", text+" comes into the list", f.Look.Caution))
		}
	}
	for _, text := range a {
		if !slices.Contains(b, text) {
			rows = append(rows, f.swapped("− "+text, "", "goes", text+" is no longer in the list", f.Look.Good))
		}
	}
	switch {
	case len(rows) > 0:
	case !slices.Equal(a, b):
		rows = append(rows, f.swapped("ingredients", "", "another order", "the same ingredients in another order", f.Look.Text))
	default:
		rows = append(rows, f.swapped("ingredients", "", "the same", "the same ingredients in the same order", f.Look.Quiet))
	}
	return rows
}
