package lines

import (
	"strings"

	"pourbench/tui/keys"
)

// Every asks for help with every action.
const Every = "all"

// Actions says the actions of a table that plain mode hears: in short those of the footer that can act now, or [Every] one, or those that
// hold a word; with why one cannot act now. unheard gives a reason for those that mean nothing here.
func (p *Paper) Actions(rows []keys.Binding, about string, unheard func(keys.ID) string, whyNot func(keys.Binding, int) string) {
	for _, b := range rows {
		if unheard(b.ID) != "" || about == "" && b.Foot == 0 {
			continue
		}
		text := strings.Join(Words(b), ", ") + ": " + b.Help
		if about != "" && about != Every && !strings.Contains(strings.ToLower(text), strings.ToLower(about)) {
			continue
		}
		if why := whyNot(b, -1); why != "" {
			if about == "" {
				continue
			}
			text += " (not now: " + why + ")"
		}
		p.Say(text)
	}
}
