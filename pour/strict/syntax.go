package strict

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"pourbench/pour/plain"
)

// syntax turns an error of the TOML library into a fault with our own words for how to mend it.
func syntax(file, src string, e toml.ParseError) Fault {
	src = strings.TrimPrefix(src, "\ufeff")
	line := lineOf(src, e.Position.Line)
	column := min(max(1, e.Position.Col), len(line)+1)
	return Fault{
		File:    file,
		Line:    max(1, e.Position.Line),
		Column:  utf8.RuneCountInString(line[:column-1]) + 1,
		Problem: plain.Line(e.Message),
		Mend:    syntaxMend(line, e.Message),
	}
}

func lineOf(src string, n int) string {
	lines := strings.Split(src, "\n")
	if n < 1 || n > len(lines) {
		return ""
	}
	return strings.TrimSuffix(lines[n-1], "\r")
}

func syntaxMend(line, message string) string {
	has := func(parts ...string) bool {
		for _, p := range parts {
			if strings.Contains(message, p) {
				return true
			}
		}
		return false
	}
	comma := regexp.MustCompile(`=\s*([-+]?\d+),(\d+)`).FindStringSubmatch(line)
	unit := regexp.MustCompile(`=\s*([-+]?\d+(?:\.\d+)?)\s*(?:%|°[CF]?|[A-Za-z]+)\s*(?:[,#\]}]|$)`).FindStringSubmatch(line)
	word := regexp.MustCompile(`=\s*([A-Za-z][A-Za-z0-9_-]*)\s*(?:#.*)?$`).FindStringSubmatch(line)
	switch {
	case strings.ContainsAny(line, "“”„‘’«»"):
		return `use straight quotes: "…"`
	case has("already", "duplicate", "redefine"):
		return "each key and each [section] can stand once: take one out; a list has a line [[…]] for every item"
	case comma != nil:
		return fmt.Sprintf("write the number with a decimal point: %s.%s", comma[1], comma[2])
	case has("control character", "UTF-8", "UTF-16", "NULL"):
		return "save the file as plain text in UTF-8"
	case has("invalid datetime"):
		return "write a date with a time as in 2026-12-05T10:00:00"
	case has("out of range"):
		return "write a smaller number"
	case unit != nil:
		return fmt.Sprintf("write the number alone, %s: the key says its unit", unit[1])
	case word != nil:
		return fmt.Sprintf(`put words in double quotes: "%s"`, word[1])
	case has("floats must start", "invalid float", "leading zero", "expected a digit"):
		return "write numbers as 0.5, 12 or 12.5"
	case has("escape"):
		return `write a backslash in quotes twice: \\`
	case has("strings cannot contain newlines", `expected '"'`, `expected '"""'`):
		return `close the text with a double quote on the same line, or use """ for many lines`
	case has("delimiter ']'", "end table name", "table name"):
		return "close the header: [section], or [[list.item]]"
	case has("array terminator"):
		return "close the list with ] and put commas between its items"
	case has("inline table"):
		return "close it with } and put commas between its keys: { at_min = 0, s = 20 }"
	}
	return "write every line as key = value, [section] or [[list.item]]; a comment starts with #"
}
