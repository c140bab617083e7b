package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/again"
)

// Again writes what happened when a plan was poured, beside the figures of the plan, and what the logbook suggests for pouring it again, as text of
// at most 80 columns.
func Again(past again.Past, suggestions []again.Suggestion, show pour.Show) string {
	p := textPage()
	facts, same := past.Happened(show)
	p.wrapped("", "POURED AGAIN: "+past.Pour.Name)
	p.wrapped("", fmt.Sprintf("Begun %s, kept as %s. Measured and as planned: %d figures.", past.Pour.Opened.Format("2006-01-02 15:04"), past.Pour.ID, same))
	p.raw("")
	p.raw("WHAT HAPPENED")
	for _, f := range facts {
		p.wrapped("  ", f.Told())
	}
	if len(facts) == 0 {
		p.wrapped("  ", "Nothing was marked that was otherwise than planned.")
	}
	p.raw("")
	p.raw("WHAT THE LOGBOOK SUGGESTS")
	for i, s := range suggestions {
		p.wrapped(fmt.Sprintf("%2d. ", i+1), sentence(s.Says))
		p.wrapped("      why:    ", sentence(s.Why))
		p.wrapped("      brings: ", sentence(s.Brings))
	}
	if len(suggestions) == 0 {
		p.wrapped("  ", "Nothing.")
	}
	p.raw("")
	p.wrapped("", "The plan stays as it was typed until one of them is made. Whether a batch is safe is not judged.")
	return p.text()
}

// Compared writes two plans side by side, as text of at most 80 columns: every field and figure in which they differ, by the sections of the papers.
func Compared(c again.Comparison, first, second string) string {
	p := textPage()
	p.wrapped("", "COMPARED: "+first)
	p.wrapped("     with ", second)
	for _, x := range []struct {
		faulty bool
		name   string
	}{{c.FirstFaulty, first}, {c.OtherFaulty, second}} {
		if x.faulty {
			p.wrapped("", "No figure is compared: "+x.name+" holds something that cannot be; see check.")
		}
	}
	for _, g := range c.Groups {
		p.raw("")
		p.raw(plain(strings.ToUpper(g.Title)))
		for _, l := range g.Lines {
			row := comparedRow(l)
			if width(row) <= p.wide {
				p.raw(row)
				continue
			}
			p.wrapped("  ", l.What)
			p.wrapped("      ", l.First+"  ->  "+l.Second)
		}
	}
	p.raw("")
	p.wrapped("", fmt.Sprintf("%d of %d fields and %d of %d figures differ; the others are the same.", c.Fields, c.Fields+c.SameFields, c.Figures, c.Figures+c.SameFigures))
	return p.text()
}

// The columns of a comparison.
const (
	comparedW = 46
	valueW    = 15
)

func comparedRow(l again.Line) string {
	what, first := plain(l.What), plain(l.First)
	if width(what) > comparedW-3 || width(first) > valueW-2 {
		return plain("  " + l.What + "  " + l.First + "  ->  " + l.Second + "                                                                                ")
	}
	return padded("  "+what, comparedW) + padded(first, valueW) + plain(l.Second)
}
