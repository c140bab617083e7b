package keys

import (
	"fmt"
	"strings"
)

// Shown returns the keys of a binding as people read them, "PgDn" for "pgdown"; digits in a row are shown by their ends.
func (b Binding) Shown() string {
	if len(b.Keys) == 0 {
		return "letters"
	}
	digits := 0
	for digits < len(b.Keys) && b.Keys[digits][0] >= '0' && b.Keys[digits][0] <= '9' {
		digits++
	}
	var out []string
	if digits > 0 {
		out = append(out, b.Keys[0]+"–"+b.Keys[digits-1])
	}
	for _, k := range b.Keys[digits:] {
		out = append(out, Shown(k))
	}
	return strings.Join(out, " ")
}

// InFooter returns the keys of a binding as a footer names them.
func (b Binding) InFooter() string {
	switch {
	case b.Brief != "":
		return b.Brief
	case len(b.Keys) == 0:
		return "a–z"
	}
	return Shown(b.Keys[0])
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
	case "enter", "tab", "space", "esc", "home", "end", "delete", "backspace":
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
	for m := Mode(0); int(m) < modes; m++ {
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
	for m := Mode(0); int(m) < modes; m++ {
		fmt.Fprintf(&b, ".SS %s\n", m)
		for _, k := range Table() {
			if k.Mode == m {
				fmt.Fprintf(&b, ".TP\n\\fB%s\\fR\n%s\n", strings.ReplaceAll(k.Shown(), `\`, `\e`), k.Help)
			}
		}
	}
	return b.String()
}
