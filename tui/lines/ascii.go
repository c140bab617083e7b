package lines

import "strings"

// signs is how what is no ASCII is written: the one place where the signs of screen and paper become words and letters. A sign that
// only draws becomes nothing.
func signs() *strings.Replacer {
	return strings.NewReplacer(
		" · ", "; ", "·", "-", "–", "-", "—", "-", "−", "-", "‑", "-", "…", "...", "°C", "C", "°F", "F", "°", " deg ", "π", "pi", "α", "alpha", "β", "beta", "γ", "gamma", "δ", "delta", "Α", "Alpha", "Β", "Beta", "Γ", "Gamma", "Δ", "Delta", "×", "x", "÷", "/", "±", "+-", "≤", "<=", "≥", ">=", "≈", "about ", "″", "\"", "′", "'", "½", "1/2", "¼", "1/4", "¾", "3/4",
		"µ", "u", "→", "->", "←", "<-", "↑", "up", "↓", "down", "“", `"`, "”", `"`, "„", `"`, "‘", "'", "’", "'", "«", `"`, "»", `"`,
		"‹ ", "", " ›", "", "‹", "", "›", "", " ▼", "", "▼", "", "►", "", "▸", "", "✓", "done", "●", "yes", "•", "-", "□ ", "", "□", "", "€", "EUR", "£", "pound", "¥", "yen", "₹", "rupee", "₺", "lira", "₴", "hryvnia", "₩", "won", "₪", "shekel", "₫", "dong", "₱", "peso", "₦", "naira", "฿", "baht", "■ ", "STOP: ", "■", "STOP ", "²", "2", "³", "3", "₂", "2", "\u00a0", " ",
		"ä", "ae", "ö", "oe", "ü", "ue", "Ä", "Ae", "Ö", "Oe", "Ü", "Ue", "ß", "ss", "æ", "ae", "Æ", "Ae", "œ", "oe", "Œ", "Oe", "ø", "o", "Ø", "O", "å", "a", "Å", "A",
		"à", "a", "á", "a", "â", "a", "ã", "a", "ç", "c", "è", "e", "é", "e", "ê", "e", "ë", "e", "ì", "i", "í", "i", "î", "i", "ï", "i", "ñ", "n", "ò", "o", "ó", "o", "ô", "o", "õ", "o",
		"ù", "u", "ú", "u", "û", "u", "ý", "y", "ÿ", "y", "À", "A", "Á", "A", "Â", "A", "Ã", "A", "Ç", "C", "È", "E", "É", "E", "Ê", "E", "Ë", "E", "Ñ", "N", "Ó", "O", "Ú", "U",
		"č", "c", "ć", "c", "š", "s", "ž", "z", "ł", "l", "ń", "n", "ő", "o", "ř", "r", "ś", "s", "ů", "u", "ű", "u", "ź", "z", "ż", "z", "ě", "e", "ę", "e", "ą", "a", "đ", "d", "ğ", "g", "ı", "i", "ş", "s",
	)
}

// ASCII writes a text in the printable signs of ASCII. A letter that has no likeness there becomes a question mark, a control
// character nothing.
func ASCII(text string) string {
	if printable(text) {
		return text
	}
	var b strings.Builder
	for _, r := range signs().Replace(text) {
		switch {
		case r >= ' ' && r <= '~':
			b.WriteRune(r)
		case r == '\n' || r == '\t' || r == '\u2028' || r == '\u2029':
			b.WriteByte(' ')
		case r > 0x9f && !joins(r) && !draws(r):
			b.WriteByte('?')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// joins says whether a rune belongs to the letter before it: a combining mark, a joiner, a selector.
func joins(r rune) bool {
	return r >= 0x300 && r <= 0x36f || r >= 0x200b && r <= 0x200f || r >= 0xfe00 && r <= 0xfe0f || r == 0xfeff
}

// draws says whether a rune is a piece of a box or a block, or of a picture in sixths.
func draws(r rune) bool { return r >= 0x2500 && r <= 0x259f || r >= 0x1fb00 && r <= 0x1fb3b }

func printable(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}
