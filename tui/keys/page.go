package keys

import (
	"fmt"
	"strings"
)

// Shown returns the keys of a binding as people read them, "PgDn" for "pgdown".
func (b Binding) Shown() string {
	if b.ID == Digits {
		return "0–9 , ."
	}
	if len(b.Keys) == 0 {
		return "letters"
	}
	out := make([]string, len(b.Keys))
	for i, k := range b.Keys {
		out[i] = Shown(k)
	}
	return strings.Join(out, " ")
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
	case "enter", "tab", "space", "esc", "home", "end", "delete":
		return strings.ToUpper(key[:1]) + key[1:]
	}
	if rest, ok := strings.CutPrefix(key, "shift+"); ok {
		return "Shift+" + Shown(rest)
	}
	if rest, ok := strings.CutPrefix(key, "ctrl+"); ok {
		return "Ctrl+" + strings.ToUpper(rest)
	}
	if len(key) > 1 && key[0] == 'f' {
		return strings.ToUpper(key)
	}
	return key
}

// Markdown returns the whole table as Markdown, one table per mode.
func Markdown() string {
	var b strings.Builder
	for m := Mode(0); int(m) < Modes; m++ {
		fmt.Fprintf(&b, "\n| %s | |\n|---|---|\n", m)
		for _, k := range Table() {
			if k.Mode != m {
				continue
			}
			shown := strings.Split(k.Shown(), " ")
			fmt.Fprintf(&b, "| `%s` | %s |\n", strings.Join(shown, "` `"), k.Help)
		}
	}
	return strings.TrimPrefix(b.String(), "\n")
}

// Man returns the whole table as the body of a man page's KEYS section, in roff.
func Man() string {
	var b strings.Builder
	for m := Mode(0); int(m) < Modes; m++ {
		fmt.Fprintf(&b, ".SS %s\n", m)
		for _, k := range Table() {
			if k.Mode == m {
				fmt.Fprintf(&b, ".TP\n\\fB%s\\fR\n%s\n", strings.ReplaceAll(k.Shown(), `\`, `\e`), k.Help)
			}
		}
	}
	return b.String()
}
