package strict

import (
	"strings"
	"unicode/utf8"
)

// Told is what the reference of a kind of file says of one key.
type Told struct {
	Key     string
	Takes   string // what can stand there: "0 to 50 %", "loaf, slab"
	Default string // what its absence means; "required" where it must be there, empty where nothing is to be told
	Means   string // one clause
}

// Reference draws what can stand in one table of a file: a header, a clause on it and a line for every key, in columns of
// plain text 120 letters wide; what does not fit goes on in lines of its own.
func Reference(header, means string, keys []Told) string {
	const keyW, takesW, defaultW, meansW, width = 25, 20, 8, 59, 120
	var b strings.Builder
	b.WriteString(strings.TrimSpace(header+"  "+means) + "\n")
	for _, k := range keys {
		takes, below := k.Takes, []string(nil)
		if utf8.RuneCountInString(takes) > takesW {
			takes, below = "", wrapped(k.Takes, width-keyW-4)
		}
		lead := "  " + cell(k.Key, keyW)
		first := lead + cell(takes, takesW) + cell(k.Default, defaultW)
		for i, line := range wrapped(k.Means, meansW) {
			if i > 0 {
				first = strings.Repeat(" ", width-meansW)
			}
			b.WriteString(strings.TrimRight(first+line, " ") + "\n")
		}
		for _, line := range below {
			b.WriteString(strings.Repeat(" ", len("  ")+keyW+2) + line + "\n")
		}
	}
	return b.String()
}

// cell is a text in a column of that many letters, and two spaces after it.
func cell(text string, w int) string {
	return text + strings.Repeat(" ", max(0, w-utf8.RuneCountInString(text))+2)
}

// wrapped parts a text into lines of at most w letters between its words.
func wrapped(text string, w int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > w {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return append(lines, line)
}
