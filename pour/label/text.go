package label

import "strings"

// Text is the list as it is printed in that market: its heading, the lines, and after what stands by mass the allergens that are to be named. An allergen
// that is an ingredient already is not said twice. Empty without any line. Marks of what is not verified never stand in it.
func Text(lines []Line, found []Found, m Market) string {
	var names []string
	said := map[string]bool{}
	say := func(text string) {
		if key := strings.ToLower(text); !said[key] {
			said[key] = true
			names = append(names, text)
		}
	}
	at := 0
	for ; at < len(lines) && m.place(lines[at].Class) == 0; at++ {
		say(lines[at].Text)
	}
	for i := range found {
		if found[i].Named {
			say(found[i].Name)
		}
	}
	for ; at < len(lines) && lines[at].Class != Unlisted; at++ {
		say(lines[at].Text)
	}
	if len(names) == 0 {
		return ""
	}
	return strings.TrimSpace(m.Heading + " " + strings.Join(names, ", "))
}
