package keys

// Spoken is the map for plain mode, in which actions are said: what is said of an action names it by what a line says for it.
func (m *Map) Spoken() *Map { return newMap(m.raw, true) }

// Said is what a line says for an action: a key that is one sign, else its word in the footer, else what it does.
func (b Binding) Said() string {
	for _, k := range b.Keys {
		if len(k) == 1 && (k < "0" || k > "9") {
			return k
		}
	}
	switch {
	case b.ID == Close || b.ID == Restore:
		return "cancel"
	case b.ID == TakeMeant:
		return "yes"
	case b.Label != "":
		return b.Label
	}
	return string(b.ID)
}
