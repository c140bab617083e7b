package label

import "strings"

// Text is the list as it is printed in that market: its heading, the lines, and after what stands by mass the allergens that are to be named. An allergen
// that is an ingredient already is not said twice. Empty without any line. Marks of what is not verified never stand in it, nor words that are no name: see [Gaps].
func Text(lines []Line, found []Found, m Market) string {
	var names []string
	said := map[string]bool{}
	say := func(text string) {
		if key := strings.ToLower(text); !said[key] {
			said[key] = true
			names = append(names, text)
		}
	}
	list := func(l *Line) {
		if !l.Name.Gap {
			say(l.Text)
		}
	}
	at := 0
	for ; at < len(lines) && m.place(lines[at].Class) == 0; at++ {
		list(&lines[at])
	}
	for i := range found {
		if found[i].Named {
			say(found[i].Name)
		}
	}
	for ; at < len(lines) && lines[at].Class != Unlisted; at++ {
		list(&lines[at])
	}
	if len(names) == 0 {
		return ""
	}
	return strings.TrimSpace(m.Heading + " " + strings.Join(names, ", "))
}

// Gaps are what a list lacks, each with what it came with: "colours as on the packet of nonpareils".
func Gaps(lines []Line) []string {
	var out []string
	for i := range lines {
		l := &lines[i]
		switch {
		case !l.Name.Gap:
		case len(l.From) == 0 || l.From[0] == l.Text:
			out = append(out, "what "+l.Text+" is made of")
		default:
			out = append(out, l.Text+" of "+strings.Join(l.From, " and "))
		}
	}
	return out
}
