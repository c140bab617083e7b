package strict

import (
	"fmt"
	"strings"
)

// Quote writes a TOML basic string.
func Quote(s string) string { return `"` + escaped(s, false) + `"` }

// QuoteLines writes a TOML basic string, over many lines where the text has many.
func QuoteLines(s string) string {
	if !strings.Contains(s, "\n") {
		return Quote(s)
	}
	return "\"\"\"\n" + escaped(s, true) + `"""`
}

// escaped hides what may not stand in a basic string. With lines it leaves the ends of lines, which count there, and
// single quotes that cannot be taken for the closing three.
func escaped(s string, lines bool) string {
	var b strings.Builder
	quoteBefore := false
	for i, r := range s {
		last := i == len(s)-1
		switch {
		case r == '"' && lines && !quoteBefore && !last:
			b.WriteRune(r)
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r == '\n' && lines:
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < ' ' || r >= 0x7f && r <= 0x9f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default: // a broken byte comes out of the range loop as U+FFFD, which is good UTF-8
			b.WriteRune(r)
		}
		quoteBefore = r == '"'
	}
	return b.String()
}
