package paper

import (
	"strings"

	"pourbench/pour"
)

// Exit codes of [Check], part of the contract with scripts.
const (
	ExitClear   = 0 // nothing above a note
	ExitCaution = 1
	ExitStop    = 3
)

// Check writes the warnings of a sheet as text of at most 80 columns, worst first, each with its mends in words, which are listed in the order of
// the sheet's warnings, and gives the exit code: [ExitClear] with nothing above
// a note, [ExitCaution] with a caution, [ExitStop] with a stop.
func Check(s pour.Sheet, mends [][]string) (text string, exit int) {
	p := textPage()
	p.wrapped("", s.Plan.Name+": "+tally(s.Warnings))
	for _, severity := range severities() {
		var group []int
		for i, w := range s.Warnings {
			if w.Severity == severity {
				group = append(group, i)
			}
		}
		if len(group) == 0 {
			continue
		}
		p.raw("")
		p.raw(strings.ToUpper(string(severity)))
		for _, i := range group {
			w := s.Warnings[i]
			p.wrapped("  ", w.Code+", "+w.Where)
			p.wrapped("      ", sentence(w.Told()))
			if w.Do != "" {
				p.wrapped("      ", "Do: "+sentence(w.Do))
			}
			if i < len(mends) {
				for _, says := range mends[i] {
					p.wrapped("      ", "Mend: "+sentence(says))
				}
			}
		}
	}
	p.raw("")
	p.wrapped("", "What no rule here looks for is not warned of. Whether a batch is safe is not judged.")
	switch s.Worst() {
	case pour.Stop:
		return p.text(), ExitStop
	case pour.Caution:
		return p.text(), ExitCaution
	default:
		return p.text(), ExitClear
	}
}

// severities lists them worst first.
func severities() [3]pour.Severity { return [3]pour.Severity{pour.Stop, pour.Caution, pour.Note} }

func ofSeverity(warnings []pour.Warning, severity pour.Severity) []pour.Warning {
	var out []pour.Warning
	for _, w := range warnings {
		if w.Severity == severity {
			out = append(out, w)
		}
	}
	return out
}

// tally counts warnings in words.
func tally(warnings []pour.Warning) string {
	var parts []string
	for _, severity := range severities() {
		if said := counted(len(ofSeverity(warnings, severity)), string(severity)); said != "" {
			parts = append(parts, said)
		}
	}
	if len(parts) == 0 {
		return "no warnings"
	}
	return strings.Join(parts, ", ")
}

// sentence gives a clause its capital and its stop. A name in the shelf's or the maker's own spelling may start it.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	if first := text[0]; first >= 'a' && first <= 'z' {
		text = strings.ToUpper(text[:1]) + text[1:]
	}
	if strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}
