package paper

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
)

// Label is a label to be told: that of a plan, or of a batch as it was poured.
type Label struct {
	Name     string // of the plan or the batch
	ID       string // of the batch; empty: it is a plan's
	Market   label.Market
	Show     pour.Show
	Sheet    pour.LabelSheet
	Printed  string // all its words as they are printed; empty: the list alone is told
	Today    day.Day
	Ticks    map[string]string // what was said with each line that was ticked, and when
	Warnings []pour.Warning    // of the plan, those that stand on its label
	Rests    []string          // what the figures rest on beside the plan
}

// askLocally stands on everything that is told of labels.
const askLocally = "Help, never legal advice, and it says of no bar and no label that it may be sold: check the current text of each document, ask locally."

// LabelText tells what a label says and what every line of it rests on, for a terminal. Names that are not sure are marked here; the list as it is printed
// carries no marks.
func LabelText(l Label) string {
	p := textPage()
	p.labelHead("Label", &l)
	s := &l.Sheet
	if s.Refused != "" {
		p.wrapped("", "It cannot be worked out: "+s.Refused+".")
		return p.text()
	}
	p.raw("")
	if l.Printed != "" {
		p.raw("AS IT IS PRINTED")
	}
	for line := range strings.SplitSeq(strings.TrimSpace(cmp.Or(l.Printed, s.Text)), "\n") {
		p.wrapped("  ", line)
	}
	p.labelLines(&l)
	p.labelAllergens(&l)
	p.labelWeight(&l)
	p.labelWords(&l)
	p.labelRules(&l)
	return p.text()
}

// labelHead says whose label it is, for which market, and that all of it is to be checked.
func (p *page) labelHead(what string, l *Label) {
	from := "planned"
	if l.ID != "" {
		from = "as poured, " + l.ID
	}
	p.wrapped("", fmt.Sprintf("%s of %s, %s", what, l.Name, from))
	p.wrapped("", "Market: "+l.Market.Name+" ("+l.Market.ID+")")
	p.wrapped("", askLocally)
	for _, text := range l.Rests {
		p.wrapped("  ", text)
	}
}

// labelLines are the ingredients in their order, with what each came with and how sure its name is.
func (p *page) labelLines(l *Label) {
	s := &l.Sheet
	how := "as what alkali made of it"
	if s.Style == label.AsAdded {
		how = "as it was added"
	}
	p.raw("")
	p.wrapped("", fmt.Sprintf("INGREDIENTS %s, of an average bar of %s as it was made, before any of it dried", how, l.Show.Figure(s.MadeG, l.Show.Dose)))
	rows := [][]string{}
	notes := []string{}
	free := false
	for i, x := range s.Lines {
		if x.Free && !free {
			free = true
			at := "under"
			if l.Market.FreeAt {
				at = "at or under"
			}
			rows = append(rows, []string{fmt.Sprintf("%s %g %%, where any order is right:", at, l.Market.FreePercent), "", ""})
		}
		mark := ""
		if x.Unverified != "" {
			mark = "? "
			notes = append(notes, fmt.Sprintf("%s: %s", x.Text, x.Unverified))
		}
		name := mark + x.Text
		switch x.Class {
		case label.Unlisted:
			name += " (in no list)"
		case label.Colourant:
			if i == 0 || s.Lines[i-1].Class != label.Colourant {
				rows = append(rows, []string{"colourants, last:", "", ""})
			}
		case label.Perfume:
			if i > 0 && s.Lines[i-1].Class == label.Colourant {
				rows = append(rows, []string{"scent, at the end:", "", ""})
			}
		}
		rows = append(rows, []string{name, fmt.Sprintf("%.3f %%", x.Percent), strings.Join(x.From, ", ")})
	}
	p.rows([]column{{}, {figure: true}, {}}, rows)
	for _, text := range []string{s.SameSoapWhy(), s.Dried} {
		if text != "" {
			p.raw("")
			p.wrapped("", text)
		}
	}
	if len(notes) > 0 {
		p.raw("")
		p.wrapped("", "? not verified, check before it is printed; the label itself carries no mark:")
		for _, n := range notes {
			p.wrapped("  ", n)
		}
	}
}

// labelAllergens are the allergens of the scents against the market's threshold, with what they came with.
func (p *page) labelAllergens(l *Label) {
	s, m := &l.Sheet, &l.Market
	p.raw("")
	switch {
	case m.Allergens == label.AllergensNone || m.OverPercent <= 0:
		p.wrapped("", "ALLERGENS of the scents, on the cured bar of "+l.Show.Figure(s.CuredG, l.Show.Dose)+": this market has no list of them here")
	default:
		p.wrapped("", fmt.Sprintf("ALLERGENS of the scents, on the cured bar of %s: named above %g %%", l.Show.Figure(s.CuredG, l.Show.Dose), m.OverPercent))
	}
	if len(s.Allergens) == 0 {
		p.wrapped("  ", "none is stated by the scents' sheets as the shelf has them")
		return
	}
	rows := make([][]string, 0, len(s.Allergens))
	for _, a := range s.Allergens {
		var from []string
		for _, t := range a.From {
			from = append(from, t.Scent)
		}
		rows = append(rows, []string{a.Name, l.Show.Figure(pour.AsFigure(a.CuredPercent), func(v float64) string { return fmt.Sprintf("%.5f %%", v) }), standing(a), strings.Join(from, ", ")})
	}
	p.rows([]column{{}, {figure: true}, {}, {}}, rows)
	for _, a := range s.Allergens {
		switch {
		case len(a.Either) > 0:
			p.wrapped("  ? ", fmt.Sprintf("%s: its CAS number stands in several rows (%s): ask who sells it which it is", a.Name, strings.Join(a.Either, "; ")))
		case a.Prohibited:
			p.wrapped("  ! ", a.Name+": the list says that it may not be there at all")
		case a.Over:
			p.wrapped("  ! ", fmt.Sprintf("%s: beyond the %g %% of the cured bar that the list allows", a.Name, a.Most))
		}
	}
}

// standing says how an allergen stands.
func standing(a label.Found) string {
	switch {
	case len(a.Either) > 0:
		return "to be asked"
	case a.Unlisted:
		return "in no list"
	case a.Named:
		return "named"
	}
	return "not named"
}

// labelWeight is the weight that can be declared, what it rests on, and how high its letters have to be.
func (p *page) labelWeight(l *Label) {
	s := &l.Sheet
	n := &s.Net
	p.raw("")
	text := n.Text
	if text == "" {
		text = "-"
	}
	p.wrapped("NET WEIGHT  ", text)
	if n.Why != "" {
		p.wrapped("  ! ", n.Why)
	}
	if n.System != "" {
		from := "the forecast"
		if n.Bars > 0 {
			from = fmt.Sprintf("%d bars weighed", n.Bars)
		}
		p.wrapped("  ", fmt.Sprintf("by the %s system, of %s: %s on average, the lightest %s", n.System, from, l.Show.Figure(some(n.Average), l.Show.Dose), l.Show.Figure(some(n.Least), l.Show.Dose)))
	}
	for _, note := range n.Notes {
		p.wrapped("  ", note)
	}
	p.wrapped("  ", "its letters at least "+l.Show.Figure(s.HeightMM, leastMM)+" high")
}

// leastMM is a least height, never told lower than it is.
func leastMM(v float64) string {
	const parts, slack = 1000, 1e-6
	return strconv.FormatFloat(math.Ceil(v*parts-slack)/parts, 'f', -1, 64) + " mm"
}

// some is a mass that is not known where it is nothing.
func some(g float64) pour.Figure {
	if g <= 0 {
		return pour.Figure{}
	}
	return pour.AsFigure(g)
}

// labelWords are the warnings that stand on the label, the verdict of the report and what else the design says of it.
func (p *page) labelWords(l *Label) {
	s := &l.Sheet
	if len(l.Warnings) > 0 {
		p.raw("")
		p.raw("TO BE SEEN TO")
	}
	for _, w := range l.Warnings {
		p.wrapped("  ! ", sentence(w.Text)+" "+sentence(w.Do))
	}
	if s.Food != "" {
		p.raw("")
		p.wrapped("LOOKS LIKE FOOD  ", s.Food)
	}
	if text := s.Report.Tell(); text != "" {
		p.raw("")
		p.wrapped("REPORT  ", text)
		for _, m := range s.Report.Missed[min(1, len(s.Report.Missed)):] { // the first is in the line
			p.wrapped("  ! ", m.Tell())
		}
	}
	open := 0
	for _, c := range s.Checks {
		if c.State != label.Ticked {
			open++
		}
	}
	if len(s.Checks) > 0 {
		p.raw("")
		p.wrapped("", fmt.Sprintf("CHECK LIST  %d of %d lines are not ticked: pourbench label check tells them", open, len(s.Checks)))
	}
}

// labelRules are the documents behind it, each with the day it was looked up; one that was looked up long ago is marked.
func (p *page) labelRules(l *Label) {
	type looked struct {
		document string
		on       day.Day
	}
	seen := map[looked]bool{}
	p.raw("")
	p.raw("RULES, and when they were looked up")
	for _, c := range label.Checks(l.Market, label.Design{}, nil, l.Today) {
		r := &c.Row
		k := looked{r.Document, r.AsOf}
		if r.Document == "" || r.Document == "-" || seen[k] {
			continue
		}
		seen[k] = true
		p.wrapped("  ", fmt.Sprintf("%s: %s%s", r.Document, r.AsOf, stale(c)))
	}
}
