package paper

import (
	"strings"
	"unicode"
)

// plain makes text that any printer prints: signs beyond ASCII that the program itself draws become ASCII, letters of names stay, and
// nothing that moves a print head or turns the writing round gets through.
func plain(text string) string {
	if printable(text) {
		return text
	}
	text = asciiSigns().Replace(strings.ToValidUTF8(text, "?"))
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
			return -1
		}
		return r
	}, text)
}

// printable says whether a text is plain ASCII already, as most are.
func printable(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

func asciiSigns() *strings.Replacer {
	return strings.NewReplacer("°C", "deg C", "°F", "deg F", "°", " deg", "–", "-", "—", "-", "−", "-", "×", "x", "±", "+/-", "≤", "<=", "≥", ">=",
		"…", "...", "½", "1/2", "¼", "1/4", "¾", "3/4", "’", "'", "‘", "'", "“", "\"", "”", "\"", "µ", "u", "→", "->", "·", ".")
}
