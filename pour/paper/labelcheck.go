package paper

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/label"
)

// LabelCheckText tells a market's check list for a plan or a batch: what its design answers, what its maker ticked, what is open and what nobody here can know.
func LabelCheckText(l Label) string {
	p := textPage()
	p.labelHead("Check list", &l)
	if l.Sheet.Refused != "" {
		p.wrapped("", "The label cannot be worked out, so the design answers nothing of it: "+l.Sheet.Refused+".")
	}
	checks := l.checks()
	p.raw("")
	p.checkRows(&l, "")
	p.raw("")
	count := map[label.State]int{}
	for _, c := range checks {
		count[c.State]++
	}
	p.wrapped("", fmt.Sprintf("[x] ticked %d   [ ] open %d   [?] unknown %d", count[label.Ticked], count[label.Open], count[label.Unknown]))
	if l.ID == "" {
		p.wrapped("", "What only you can know is ticked for a batch: pourbench label check ID --tick LINE. Of a plan the design alone answers.")
	}
	return p.text()
}

// checks is the check list. Where the label cannot be worked out the design answers nothing, and what was ticked stands.
func (l *Label) checks() []label.Check {
	if len(l.Sheet.Checks) > 0 {
		return l.Sheet.Checks
	}
	ticks := make(map[string]bool, len(l.Ticks))
	for row := range l.Ticks {
		ticks[row] = true
	}
	m := l.Market
	m.Rows = slices.Clone(m.Rows)
	for i := range m.Rows {
		m.Rows[i].Finds = ""
	}
	return label.Checks(m, label.Design{}, ticks, l.Today)
}

// checkRows are the lines of a check list, behind a lead, with what each rests on.
func (p *page) checkRows(l *Label, lead string) {
	for _, c := range l.checks() {
		p.keep(func() {
			p.wrapped(lead+stateBox(c.State), c.Row.ID+": "+c.Row.Text)
			under := lead + strings.Repeat(" ", len(stateBox("")))
			why, said := c.Why, l.Ticks[c.Row.ID]
			switch {
			case said != "" && c.Row.Finds == "": // she alone answers it
				why = said
			case said != "":
				why = strings.TrimPrefix(why+"; "+said, "; ")
			}
			if why != "" {
				p.wrapped(under, why)
			}
			p.wrapped(under, ruleOf(c))
		})
	}
}

// stateBox is the box in front of a line of a check list.
func stateBox(s label.State) string {
	switch s {
	case label.Ticked:
		return "[x] "
	case label.Open:
		return "[ ] "
	}
	return "[?] "
}

// ruleOf is what a line rests on: document and clause, when it was looked up, how far it was checked.
func ruleOf(c label.Check) string {
	r := &c.Row
	parts := []string{}
	for _, text := range []string{r.Document, r.Clause} {
		if text != "" && text != "-" {
			parts = append(parts, text)
		}
	}
	rule := strings.Join(parts, ", ")
	if rule == "" {
		rule = "no document"
	}
	return fmt.Sprintf("(%s; as of %s%s, %s)", rule, r.AsOf, stale(c), r.Confidence)
}

// MarketsText lists the markets of a shelf with what their labels follow.
func MarketsText(markets []label.Market, today day.Day) string {
	p := textPage()
	p.raw("Markets on the shelf")
	p.wrapped("", askLocally)
	for _, m := range markets {
		p.raw("")
		p.wrapped("", fmt.Sprintf("%s  %s", m.ID, m.Name))
		p.follows(m, today)
	}
	p.raw("")
	p.wrapped("", "pourbench label markets ID tells the lines of one. A plan names its market in its table [label]; pourbench label --market ID looks at another.")
	return p.text()
}

// MarketText tells all lines of a market's check list.
func MarketText(m label.Market, today day.Day) string {
	p := textPage()
	p.wrapped("", m.Name+" ("+m.ID+")")
	p.wrapped("", askLocally)
	p.follows(m, today)
	p.raw("")
	for _, c := range label.Checks(m, label.Design{}, nil, today) {
		p.keep(func() {
			p.wrapped("- ", c.Row.ID+": "+c.Row.Text)
			p.wrapped("  ", ruleOf(c))
		})
	}
	return p.text()
}

// stale marks a rule that was looked up over twelve months before today.
func stale(c label.Check) string {
	if c.Stale {
		return ", over twelve months ago: look it up anew"
	}
	return ""
}

// follows is what labels of a market follow, in words.
func (p *page) follows(m label.Market, today day.Day) {
	names := "INCI names"
	if m.WholeINCI {
		names += " with their English words"
	}
	if m.English {
		names += ", or English names"
	}
	free := "under"
	if m.FreeAt {
		free = "at or under"
	}
	weight := "grams"
	if m.Pounds {
		weight = "ounces and grams"
	}
	allergens := "no allergens are named"
	switch m.Allergens {
	case label.AllergensLong:
		allergens = fmt.Sprintf("allergens of the long list above %g %% of the cured bar", m.OverPercent)
	case label.AllergensOld:
		allergens = fmt.Sprintf("the 24 old allergens above %g %% of the cured bar", m.OverPercent)
	}
	height := map[string]string{
		label.HeightByMass: "the weight", label.HeightByFace: "the area of the face it stands on", label.HeightBySide: "the longest side of the pack",
	}[m.HeightBy]
	old := 0
	for _, c := range label.Checks(m, label.Design{}, nil, today) {
		if c.Stale {
			old++
		}
	}
	lines := fmt.Sprintf("%d lines to check, looked up on %s", len(m.Rows), m.AsOf)
	if old > 0 {
		lines += fmt.Sprintf("; %d of them over twelve months ago: look them up anew", old)
	}
	for _, text := range []string{
		lines,
		fmt.Sprintf("list: %s, any order %s %g %%, scent as %s", names, free, m.FreePercent, m.ScentWord),
		allergens,
		fmt.Sprintf("weight in %s, its letters as high as %s asks", weight, height),
	} {
		p.wrapped("  ", text)
	}
}
