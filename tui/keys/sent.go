package keys

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"pourbench/pour/strict"
)

// wrong says what is wrong with the name of a key, and how to mend it; two empty texts: a terminal sends it. What counts is what every
// terminal sends, not what some can be talked into.
func wrong(key string) (problem, mend string) {
	if sent(key) {
		return "", ""
	}
	if meant := meant(key); meant != "" {
		return "is no key that a terminal sends", fmt.Sprintf("did you mean %q?", meant)
	}
	mods, base := parts(key)
	switch {
	case key == "":
		return "is no key", `write one, as in "u", "ctrl+u", "f9" or "space"`
	case slices.Contains(named(), base) || utf8.RuneCountInString(base) == 1:
		return "is no key that a terminal sends", "terminals send " + sendable(mods, base) + "; take one of those or another key"
	case mods == nil && utf8.RuneCountInString(key) > 1 && !strings.Contains(key, "+"):
		return "is no key that a terminal sends", "write a single letter or sign, or one of " + strings.Join(named()[:14], ", ") + ", f1 to f20"
	}
	return "is no key that a terminal sends", `write it as in "u", "U", "ctrl+u", "alt+u", "shift+left" or "f9"`
}

// sendable says which keys there are with a base.
func sendable(mods []string, base string) string {
	switch {
	case slices.Contains(mods, "ctrl") && len(base) == 1:
		return `"ctrl+" with a letter from a to z but i and m, which are "tab" and "enter"`
	case base == "enter", base == "backspace", base == "esc", base == "space", base == "tab":
		return strconv.Quote(base) + " the same with Ctrl or Shift held down, but for \"shift+tab\" and \"ctrl+space\""
	}
	return "letters and signs alone, or with \"alt+\" before them"
}

// named lists the keys that have names, the function keys last.
func named() []string {
	list := []string{"up", "down", "left", "right", "home", "end", "pgup", "pgdown", "insert", "delete", "backspace", "enter", "tab", "esc", "space"}
	for n := 1; n <= 20; n++ {
		list = append(list, "f"+strconv.Itoa(n))
	}
	return list
}

// parts takes a key apart into what is held down and what is pressed.
func parts(key string) (mods []string, base string) {
	for {
		mod, rest, ok := strings.Cut(key, "+")
		if !ok || rest == "" || !slices.Contains([]string{"ctrl", "alt", "shift"}, mod) {
			return mods, key
		}
		mods, key = append(mods, mod), rest
	}
}

// sent says whether every terminal sends a key of that name, as Bubble Tea writes it.
func sent(key string) bool {
	mods, base := parts(key)
	if !slices.IsSortedFunc(mods, func(a, b string) int { return strings.Index("ctrl alt shift", a) - strings.Index("ctrl alt shift", b) }) ||
		len(slices.Compact(slices.Clone(mods))) != len(mods) {
		return false
	}
	with := strings.Join(mods, "+")
	switch {
	case utf8.RuneCountInString(base) == 1:
		return signSent(with, base)
	case !slices.Contains(named(), base):
		return false
	}
	switch base {
	case "enter", "backspace":
		return with == "" || with == "alt"
	case "esc":
		return with == ""
	case "tab":
		return with == "" || with == "shift"
	case "space":
		return with == "" || with == "ctrl" || with == "alt"
	}
	return true
}

// signSent says whether a letter or sign is sent with so much held down.
func signSent(with, sign string) bool {
	r, _ := utf8.DecodeRuneInString(sign)
	switch with {
	case "":
		return unicode.IsPrint(r) && r != ' ' && !unicode.IsMark(r)
	case "alt":
		return r > ' ' && r <= '~' && r != '[' && r != 'O' // with those begin the keys that have names
	case "ctrl", "ctrl+alt":
		return (r >= 'a' && r <= 'z' && r != 'i' && r != 'm') || strings.ContainsRune(`\]^_`, r)
	}
	return false
}

// meant is the key that was probably meant by a name that is none; empty: nothing is near.
func meant(key string) string {
	mods, base := parts(strings.NewReplacer("control", "ctrl", "strg", "ctrl", "option", "alt", "-", "+").Replace(strings.ToLower(key)))
	other := map[string]string{
		"escape": "esc", "return": "enter", "pageup": "pgup", "page+up": "pgup", "pagedown": "pgdown", "page+down": "pgdown", "pgdn": "pgdown", "del": "delete", "ins": "insert",
		"blank": "space", "spacebar": "space", " ": "space", "bksp": "backspace", "↑": "up", "↓": "down", "←": "left", "→": "right",
	}
	if to, ok := other[base]; ok {
		base = to
	}
	_, typed := parts(key)
	if slices.Equal(mods, []string{"shift"}) && utf8.RuneCountInString(typed) == 1 && unicode.IsLetter([]rune(typed)[0]) {
		return strings.ToUpper(typed)
	}
	slices.SortFunc(mods, func(a, b string) int { return strings.Index("ctrl alt shift", a) - strings.Index("ctrl alt shift", b) })
	with := strings.Join(append(slices.Compact(mods), ""), "+")
	switch with + base {
	case "ctrl+i":
		return "tab"
	case "ctrl+m":
		return "enter"
	case "ctrl+[":
		return "esc"
	}
	if sent(with + base) {
		return with + base
	}
	if near := strict.Nearest(base, named()); near != "" && sent(with+near) {
		return with + near
	}
	return ""
}

// types says whether a key is typed as text.
func types(key string) bool { return key == "space" || utf8.RuneCountInString(key) == 1 }

// edits lists the keys that edit a line of text.
func edits() []string {
	return []string{
		"left", "ctrl+b", "right", "ctrl+f", "alt+left", "ctrl+left", "alt+b", "alt+right", "ctrl+right", "alt+f", "home", "ctrl+a", "end", "ctrl+e",
		"alt+backspace", "ctrl+w", "alt+delete", "alt+d", "ctrl+k", "ctrl+u", "backspace", "ctrl+h", "delete", "ctrl+d",
	}
}
