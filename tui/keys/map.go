package keys

import (
	"slices"
	"strings"
)

// Leaves is the key that always leaves, whatever else does: a program must be left from wherever it is.
const Leaves = "ctrl+c"

// Map is the keys that are bound: the table, as it was built or with a maker's own keys in it, ready to be looked up in.
type Map struct {
	raw  []Binding // the rows as they stand in the table
	rows [modes][]Binding
	feet [modes][]Binding // those of a footer, the most useful first
	does [modes]map[string][]Binding

	spoken bool // actions are named by what a line says for them
}

// BuiltIn is the map of the table as it is.
func BuiltIn() *Map { return newMap(Table(), false) }

func newMap(rows []Binding, spoken bool) *Map {
	m := &Map{raw: rows, spoken: spoken}
	for i := range m.does {
		m.does[i] = make(map[string][]Binding)
	}
	for _, b := range rows {
		m.rows[b.Mode] = append(m.rows[b.Mode], b)
	}
	for mode, list := range m.rows {
		for i := range list {
			b := &list[i]
			b.Help = m.Fill(Mode(mode), b.Help)
			if next, ok := m.Find(Mode(mode), b.Beside); ok && len(next.Keys) > 0 {
				b.beside = Shown(next.first())
			}
			for _, k := range b.Keys {
				m.does[mode][k] = append(m.does[mode][k], *b)
			}
			if b.Foot > 0 && (len(b.Keys) > 0 || b.ID == Find) {
				m.feet[mode] = append(m.feet[mode], *b)
			}
		}
		slices.SortStableFunc(m.feet[mode], func(a, b Binding) int { return a.Foot - b.Foot })
	}
	return m
}

// Of lists the actions of a mode in the order of the table. The list is not to be changed.
func (m *Map) Of(mode Mode) []Binding { return m.rows[mode] }

// All lists every action of every mode.
func (m *Map) All() []Binding { return slices.Concat(m.rows[:]...) }

// Find returns an action of a mode.
func (m *Map) Find(mode Mode, id ID) (Binding, bool) {
	for _, b := range m.rows[mode] {
		if b.ID == id {
			return b, true
		}
	}
	return Binding{}, false
}

// Name is the key of an action as people read it, for what is said of it; an action without a key is named itself.
func (m *Map) Name(mode Mode, id ID) string {
	b, ok := m.Find(mode, id)
	switch {
	case ok && m.spoken:
		return b.Said()
	case ok && len(b.Keys) > 0:
		return Shown(b.first())
	}
	return string(id)
}

// Fill puts keys into a text of the program's own: an action in braces stands for its key, "{undo} takes it back"; one of another mode has
// that before it, "{typing commit}". What is no action stays as it is.
func (m *Map) Fill(mode Mode, text string) string {
	for at := 0; ; {
		from := strings.IndexByte(text[at:], '{')
		if from < 0 {
			return text
		}
		from += at
		to := strings.IndexByte(text[from:], '}')
		if to < 0 {
			return text
		}
		key, ok := m.named(mode, text[from+1:from+to])
		if !ok {
			at = from + 1
			continue
		}
		text = text[:from] + key + text[from+to+1:]
		at = from + len(key)
	}
}

// named is the key of an action as a text names it.
func (m *Map) named(mode Mode, text string) (string, bool) {
	if _, ok := m.Find(mode, ID(text)); ok {
		return m.Name(mode, ID(text)), true
	}
	word, id, _ := strings.Cut(text, " ")
	for other := range Mode(modes) {
		if _, ok := m.Find(other, ID(id)); ok && other.Word() == word {
			return m.Name(other, ID(id)), true
		}
	}
	return "", false
}

// Lookup returns what a key does in a mode on a panel that has so much. A key that acts elsewhere gives its binding and false.
func (m *Map) Lookup(mode Mode, has Need, key string) (Binding, bool) {
	var elsewhere Binding
	for _, b := range m.does[mode][key] {
		if b.Acts(has) {
			return b, true
		}
		elsewhere = b
	}
	return elsewhere, false
}

// Footer lists the bindings that a footer shows, the most useful first.
func (m *Map) Footer(mode Mode, has Need) []Binding {
	out := make([]Binding, 0, len(m.feet[mode]))
	for _, b := range m.feet[mode] {
		if b.Acts(has) && has&b.FootOn == b.FootOn {
			out = append(out, b)
		}
	}
	return out
}
