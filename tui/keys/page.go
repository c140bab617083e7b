package keys

import (
	"fmt"
	"strings"
)

// Shown returns the keys of a binding as people read them, "PgDn" for "pgdown"; digits in a row are shown by their ends.
func (b Binding) Shown() string {
	if len(b.Keys) == 0 {
		return b.keyless("letters", "no key")
	}
	digits := b.digits()
	var out []string
	if digits > 0 {
		out = append(out, b.Keys[0]+"–"+b.Keys[digits-1])
	}
	for _, k := range b.Keys[digits:] {
		out = append(out, Shown(k))
	}
	return strings.Join(out, " ")
}

// keyless is how a binding without keys is shown: what is searched for is typed in letters, and an action can have lost its keys.
func (b Binding) keyless(letters, none string) string {
	if b.ID == Find {
		return letters
	}
	return none
}

// digits is how many of the binding's first keys are digits in a row; a single one is no row.
func (b Binding) digits() int {
	n := 0
	for n < len(b.Keys) && len(b.Keys[n]) == 1 && b.Keys[n][0] == b.Keys[0][0]+byte(n) && b.Keys[n][0] >= '0' && b.Keys[n][0] <= '9' {
		n++
	}
	if n < 2 {
		return 0
	}
	return n
}

// InFooter returns the keys of a binding as a footer names them: the first that is pressed alone, with that of the action beside it; where every key does
// its own, all of them.
func (b Binding) InFooter() string {
	switch n := b.digits(); {
	case len(b.Keys) == 0:
		return b.keyless("a–z", "")
	case n > 0:
		return b.Keys[0] + "–" + b.Keys[n-1]
	case b.Each != nil:
		return b.Shown()
	case b.beside != "":
		return Shown(b.first()) + " " + b.beside
	}
	return Shown(b.first())
}

// Shown returns a key as people read it.
func Shown(key string) string {
	switch key {
	case "up":
		return "↑"
	case "down":
		return "↓"
	case "left":
		return "←"
	case "right":
		return "→"
	case "pgup":
		return "PgUp"
	case "pgdown":
		return "PgDn"
	case "enter", "tab", "space", "esc", "home", "end", "insert", "delete", "backspace":
		return strings.ToUpper(key[:1]) + key[1:]
	}
	if rest, ok := strings.CutPrefix(key, "shift+"); ok {
		return "Shift+" + Shown(rest)
	}
	if rest, ok := strings.CutPrefix(key, "alt+"); ok {
		return "Alt+" + Shown(rest)
	}
	if rest, ok := strings.CutPrefix(key, "ctrl+"); ok {
		if len(rest) == 1 {
			rest = strings.ToUpper(rest)
		}
		return "Ctrl+" + Shown(rest)
	}
	if len(key) > 1 && key[0] == 'f' {
		return strings.ToUpper(key)
	}
	return key
}

// Markdown returns the whole map as Markdown, one table per mode.
func (m *Map) Markdown() string {
	var b strings.Builder
	for mode := Mode(0); int(mode) < modes; mode++ {
		fmt.Fprintf(&b, "\n| %s | |\n|---|---|\n", mode)
		for _, k := range m.Of(mode) {
			fmt.Fprintf(&b, "| `%s` | %s |\n", strings.Join(strings.Split(k.Shown(), " "), "` `"), k.Help)
		}
	}
	return strings.TrimPrefix(b.String(), "\n")
}

// Man returns the whole map as the body of a man page's KEYS section, in roff.
func (m *Map) Man() string {
	var b strings.Builder
	for mode := Mode(0); int(mode) < modes; mode++ {
		fmt.Fprintf(&b, ".SS %s\n", mode)
		for _, k := range m.Of(mode) {
			fmt.Fprintf(&b, ".TP\n\\fB%s\\fR\n%s\n", strings.ReplaceAll(k.Shown(), `\`, `\e`), strings.ReplaceAll(k.Help, `\`, `\e`))
		}
	}
	return b.String()
}
