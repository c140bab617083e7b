package plain

import "strings"

// Cell is a text for a cell of a table that is handed on as CSV: one that a spreadsheet would take for a formula gets an apostrophe.
func Cell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
