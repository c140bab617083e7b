package paper

import (
	"cmp"
	"strings"

	"pourbench/pour/label"
)

// labelled is what the batch's label says and how its market's check list stands; nothing where no market is named.
func (r *batchRecord) labelled(l *Label) {
	s := &l.Sheet
	if s.Market == "" {
		return
	}
	r.heading("label for "+l.Market.Name, "", "")
	r.wrapped("", askLocally)
	for _, text := range l.Rests {
		r.wrapped("", text)
	}
	if s.Refused != "" {
		r.line("It cannot be worked out", s.Refused)
		return
	}
	r.keep(func() { r.wrapped("", s.Text) })
	if text := s.SameSoapWhy(); text != "" {
		r.wrapped("", text)
	}
	for _, x := range s.Lines {
		if x.Unverified != "" && x.Class != label.Unlisted {
			r.wrapped("? ", x.Text+": not verified, "+x.Unverified)
		}
	}
	var named []string
	for _, a := range s.Allergens {
		if a.Named {
			named = append(named, a.Name)
		}
	}
	r.line("Allergens named", cmp.Or(strings.Join(named, ", "), "none"))
	weight := s.Net.Text
	if weight != "" {
		weight += ", " + s.Net.From
	}
	r.line("Net weight on the label", weight)
	if s.Net.Why != "" {
		r.wrapped("! ", s.Net.Why)
	}
	if text := s.Report.Tell(); text != "" {
		r.line("Assessor", text)
	}
	r.raw("")
	r.checkRows(l, "")
}
