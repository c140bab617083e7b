package tui

import (
	"pourbench/pour"
	"pourbench/tui/keys"
)

// whyNot says why a key of the bench cannot act here and now.
func (m *model) whyNot(b keys.Binding) string {
	if b.Mode != keys.Bench || len(b.Keys) == 0 {
		return ""
	}
	if !b.Acts(m.at().Has()) {
		return "not in the panel " + m.at().Title
	}
	return m.cannot(b.ID)
}

func meaning(code string) string {
	for _, c := range pour.Codes() {
		if c.Code == code {
			return c.Meaning
		}
	}
	return ""
}
