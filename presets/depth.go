package presets

import "strings"

// What a shelf file can nest: a list of allergens in an entry needs three brackets, a key one dot. The decoder takes
// time that grows with the square of the depth, so a file is looked through before it is decoded.
const (
	mostBrackets = 16
	mostDots     = 8
)

// tooDeep returns the line on which brackets or dotted keys go deeper than any shelf file, or 0.
func tooDeep(text string) int {
	line, brackets, dots := 1, 0, 0
	for text != "" {
		skipped := skipQuiet(text)
		if skipped > 0 {
			line += strings.Count(text[:skipped], "\n")
			text = text[skipped:]
			continue
		}
		switch text[0] {
		case '[', '{':
			brackets, dots = brackets+1, 0
		case ']', '}':
			brackets, dots = max(0, brackets-1), 0
		case '=', ',':
			dots = 0
		case '\n':
			line, dots = line+1, 0
		case '.':
			dots++
		}
		if brackets > mostBrackets || dots > mostDots {
			return line
		}
		text = text[1:]
	}
	return 0
}

// skipQuiet returns the length of the string or comment that text begins with, or 0. A string that is not closed ends
// with its line, or with the text where it may span lines.
func skipQuiet(text string) int {
	for _, quote := range []string{`"""`, `'''`, `"`, `'`, "#"} {
		rest, found := strings.CutPrefix(text, quote)
		if !found {
			continue
		}
		return len(quote) + closing(rest, quote)
	}
	return 0
}

// closing returns the length of what is left of a string or comment up to its end.
func closing(rest, quote string) int {
	for i := 0; i < len(rest); i++ {
		switch {
		case len(quote) == 1 && rest[i] == '\n':
			return i
		case quote == "#":
		case strings.HasPrefix(rest[i:], quote):
			return i + len(quote)
		case rest[i] == '\\' && quote[0] == '"':
			i++
		}
	}
	return len(rest)
}
