package panel

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// labelForm is what the plan says of its label, and the weight and the letters that come of it.
func labelForm() Panel {
	return Panel{ID: "this label", Title: "This label", Start: formValue, cells: keys.Numbers | keys.Words, Grid: (*Facts).labelGrid}
}

// The room of the form's labels and values.
const (
	labelFormW  = 16
	labelValueW = 18
)

func (f *Facts) labelGrid() grid.Grid {
	var rows []grid.Row
	for _, t := range f.Plan.Tables() {
		if t.Key != "label" {
			continue
		}
		for _, field := range t.Fields {
			rows = append(rows, f.labelRow(field))
			switch field.Key {
			case "market":
				rows = append(rows, f.labelFigures()...)
			case "says":
				rows = append(rows, f.claimRows()...)
			}
		}
	}
	return grid.Grid{Columns: []grid.Column{formLabel: {W: labelFormW}, formValue: {W: labelValueW, Grow: 1}}, Rows: rows}
}

// claimRows points at the words of title and text that move the bar into another class, or want proof.
func (f *Facts) claimRows() []grid.Row {
	l := f.labelled()
	if f.noFigures(l) != "" {
		return nil
	}
	var rows []grid.Row
	for _, c := range l.Claims {
		rows = append(rows, f.pointedAt(c.Tell(), c.Tell()+"; "+c.Clause+"; "+askLocally))
	}
	return rows
}

// pointedAt is a row of words that want an eye, over the whole width, with more of them in its hint.
func (f *Facts) pointedAt(text, hint string) grid.Row {
	return grid.Row{Item: -1, Sub: -1, Cells: f.awaited([]grid.Cell{formLabel: {Text: "!", Style: f.Look.Caution}, formValue: {Kind: grid.Shown, Text: text, Hint: hint, Style: f.Look.Caution}})}
}

// labelRow is the form's row for a key of the label.
func (f *Facts) labelRow(field pour.Field) grid.Row {
	path := "label." + field.Key
	switch field.Key {
	case "market":
		return formRow(field.Label, f.marketCell(path, field))
	case "report":
		return formRow(field.Label, f.reportCell(path, field))
	case "like_food":
		return f.judgedRow(path, field)
	}
	switch field.At.(type) {
	case *string:
		if field.Takes == pour.TakesWord {
			r := f.chosen(path)
			r.Cells = r.Cells[:formUnit]
			return r
		}
		return formRow(field.Label, f.textCell(path, field))
	}
	r := f.stated(path)
	c := &r.Cells[formValue]
	unit, remark := r.Cells[formUnit].Text, r.Cells[formRemark].Text
	c.Text = strings.TrimSpace(c.Text + " " + unit)
	if usual, zero := strings.CutPrefix(remark, "0: "); zero {
		if strings.ContainsAny(usual[:1], "0123456789") {
			usual = strings.TrimSpace("usual " + usual + " " + unit)
		}
		c.Text, c.Style = usual, f.Look.Quiet
	}
	r.Cells = r.Cells[:formUnit]
	return r
}

func (f *Facts) marketCell(path string, field pour.Field) grid.Cell {
	id, _, _ := pour.Text(f.Plan, path)
	c := grid.Cell{
		Kind: grid.Choice, Text: "none: no label", List: listMarkets, ID: id, Name: "market of the label", Field: path,
		Hint: field.Means + "; " + askLocally, Pick: func(id string) pour.Edit { return pour.SetText(path, id) },
	}
	m, ok := f.Shelf.Market(id)
	switch {
	case ok:
		c.Text = m.Name
	case id == "":
		c.Style = f.Look.Quiet
	}
	return c
}

func (f *Facts) reportCell(path string, field pour.Field) grid.Cell {
	id, _, _ := pour.Text(f.Plan, path)
	c := grid.Cell{
		Kind: grid.Choice, Text: id, List: listReports, ID: id, Name: "report of the label", Field: path,
		Hint: field.Means, Pick: func(id string) pour.Edit { return pour.SetText(path, id) },
	}
	_, ok := f.Shelf.Label.Report(id)
	switch {
	case id == "":
		c.Text, c.Style = "none", f.Look.Quiet
	case !ok:
		c.Text, c.Style = "? "+id, f.Look.Caution
		c.Hint = "your label file has no report of that id; " + c.Hint
	}
	return c
}

// judgedRow is a row for a word that is judged from the design where it is not stated.
func (f *Facts) judgedRow(path string, field pour.Field) grid.Row {
	own, _, _ := pour.Text(f.Plan, path)
	values, now := field.Choices(), cmp.Or(own, pour.LikeFoodJudged)
	c := turning(field.Label, "‹ "+now+" ›", values, now, func(steps float64) pour.Edit {
		next := turned(values, now, steps)
		if next == pour.LikeFoodJudged {
			next = ""
		}
		return pour.SetText(path, next)
	})
	c.Plain, c.Hint, c.Field = now, field.Means, path
	if food := f.labelled().Food; food != "" && own == "" {
		c.Hint = food + "; " + c.Hint
	}
	return formRow(field.Label, c)
}

// textCell is a text of the plan.
func (f *Facts) textCell(path string, field pour.Field) grid.Cell {
	v, _, _ := pour.Text(f.Plan, path)
	c := words(field.Label, v, func(s string) pour.Edit { return pour.SetText(path, s) })
	c.Hint, c.Field = field.Means, path
	if v == "" {
		c.Text, c.Style = "–", f.Look.Quiet
	}
	return c
}

// labelFigures is the weight a label may declare, how high its figures stand, and how the design stands to its report.
func (f *Facts) labelFigures() []grid.Row {
	l := f.labelled()
	if f.noFigures(l) != "" {
		return nil
	}
	net := f.shown(l.Net.Text, "label.net_g", f.netSays(l))
	if l.Net.Why != "" || l.Net.Text == "" {
		net.Text, net.Style = f.Show.Number(pour.Unknown(), 0), f.Look.Caution
		net.Hint = strings.TrimPrefix(l.Net.Why+"; "+net.Hint, "; ")
	}
	high := f.shown(f.Show.Figure(l.HeightMM, func(v float64) string { return f.Show.Number(leastMM(v), 2) + " mm" }), "label.height_mm", "least height of the figures of the weight in this market, mm; "+askLocally)
	rows := []grid.Row{formRow("it declares", net), formRow("figures at least", high)}
	if l.Report.Report != "" {
		rows = append(rows, formRow("the design is", f.labelVerdict(l.Report)))
	}
	for i := range rows {
		rows[i].Cells = f.awaited(rows[i].Cells)
		rows[i].Cells[formLabel].Style = f.Look.Quiet
	}
	for _, miss := range l.Report.Missed {
		rows = append(rows, f.pointedAt(miss.Tell(), miss.Tell()+"; the range is what the assessor looked at"))
	}
	return rows
}

// leastMM is a least height as it can be measured: never told lower than it is.
func leastMM(v float64) float64 {
	const hundredths, slack = 100, 1e-6
	return math.Ceil(v*hundredths-slack) / hundredths
}

// netSays is what the weight of a label rests on.
func (f *Facts) netSays(l *pour.LabelSheet) string {
	n := &l.Net
	weigh := func(g float64) string { return f.Show.Weight(g) }
	switch {
	case n.Bars > 0:
		return fmt.Sprintf("%s of %d bars that were weighed: on average %s, the lightest %s", n.System, n.Bars, weigh(n.Average), weigh(n.Least))
	case n.Average > 0:
		return fmt.Sprintf("%s, by %s: on average %s, a light one %s; weigh the cured bars before you print", n.System, n.From, weigh(n.Average), weigh(n.Least))
	}
	return "worked out from how the bars dry; weigh the cured bars before you print"
}

// labelVerdict is how the design stands to its report; what leaves it stands below in full.
func (f *Facts) labelVerdict(v label.Verdict) grid.Cell {
	c := grid.Cell{Kind: grid.Shown, Text: "✓ " + verdictWord(v), Style: f.Look.Good, Hint: v.Tell()}
	if v.Why != "" || len(v.Missed) > 0 {
		c.Text, c.Style = "! "+verdictWord(v), f.Look.Caution
	}
	return c
}

// verdictWord is how the design stands to its report, in a word or two.
func verdictWord(v label.Verdict) string {
	switch {
	case v.Why != "":
		return "not judged"
	case len(v.Missed) > 0:
		return "outside " + v.Report
	}
	return "inside " + v.Report
}

// marketItems lists the markets of the shelf, and that there be no label.
func (f *Facts) marketItems() []dialog.Item {
	out := []dialog.Item{{ID: "", Name: "none", Aside: "no label", Detail: []string{"no label is asked for, and nothing of it is worked out"}}}
	for _, m := range f.Shelf.Markets {
		out = append(out, dialog.Item{ID: m.ID, Name: m.Name, Aside: m.Short, Detail: []string{m.Name, fmt.Sprintf("%d lines to tick; looked up as of %s", len(m.Rows), m.AsOf), askLocally}})
	}
	return out
}

// reportItems lists the assessor's reports of the maker's label file.
func (f *Facts) reportItems() []dialog.Item {
	none := dialog.Item{ID: "", Name: "none", Detail: []string{"the design is held against no report"}}
	if len(f.Shelf.Label.Reports) == 0 {
		none.Detail = append(none.Detail, "your label file has no report: pourbench label report adds one")
	}
	out := []dialog.Item{none}
	for _, r := range f.Shelf.Label.Reports {
		out = append(out, dialog.Item{ID: r.ID, Name: r.ID, Aside: r.Of, Detail: []string{r.ID, r.Of, fmt.Sprintf("%d ranges, of %s", len(r.Ranges), r.On)}})
	}
	return out
}
