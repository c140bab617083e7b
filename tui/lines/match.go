package lines

import (
	"slices"
	"strings"

	"pourbench/tui/keys"
)

// Asked is what a line asks for: a row of the table of keys and what stands behind it.
type Asked struct {
	Binding keys.Binding
	Nth     int // which of its keys it was named by; below 0: none
	Rest    string
}

// Words are how a row of the table is named in a line: its keys that are one sign, what it does, and its word for the footer.
func Words(b keys.Binding) []string {
	var out []string
	for _, k := range b.Keys {
		if len(k) == 1 && (k < "0" || k > "9") {
			out = append(out, k)
		}
	}
	for _, w := range []string{string(b.ID), b.Label} {
		if w != "" && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// Match finds the row of a table whose whole name a line begins with: a key, or all words of a name, the longest first. Of several it
// takes the one that acts here.
func Match(rows []keys.Binding, acts func(keys.Binding) bool, line string) (Asked, bool) {
	var found Asked
	most, able := 0, false
	for _, b := range rows {
		for _, w := range Words(b) {
			rest, ok := after(line, w)
			if better := len(w) > most || len(w) == most && !able && acts(b); !ok || !better {
				continue
			}
			most, able = len(w), acts(b)
			found = Asked{b, b.Nth(w), rest}
		}
	}
	return found, most > 0
}

// Begun finds the one row whose name begins with the first word of a line; of several it gives the names.
func Begun(rows []keys.Binding, line string) (found Asked, others []string) {
	first, rest, _ := strings.Cut(line, " ")
	if len(first) < 2 {
		return Asked{}, nil
	}
	var ids []keys.ID
	for _, b := range rows {
		for _, w := range Words(b) {
			if len(w) > len(first) && strings.EqualFold(w[:len(first)], first) && !slices.Contains(ids, b.ID) {
				found, ids, others = Asked{b, -1, strings.TrimSpace(rest)}, append(ids, b.ID), append(others, w)
			}
		}
	}
	if len(ids) != 1 {
		return Asked{}, others
	}
	return found, nil
}

// after is what follows a word at the start of a line. A key counts as it is written, a word however it is.
func after(line, word string) (string, bool) {
	if len(line) < len(word) || line[:len(word)] != word && (len(word) == 1 || !strings.EqualFold(line[:len(word)], word)) {
		return "", false
	}
	rest := line[len(word):]
	return strings.TrimSpace(rest), rest == "" || rest[0] == ' '
}
