package label

import "strings"

// CheckCAS reports whether a text is a number of the Chemical Abstracts Service: two to seven digits, two more and a last one that checks them, which is
// the sum of the others, each times its place counted from the right, without its tens (CAS's own rule for check digits, memory).
func CheckCAS(text string) bool {
	parts := strings.Split(text, "-")
	if len(parts) != 3 || len(parts[0]) < 2 || len(parts[0]) > 7 || len(parts[1]) != 2 || len(parts[2]) != 1 {
		return false
	}
	sum, digits := 0, parts[0]+parts[1]
	for i, d := range digits {
		if d < '0' || d > '9' {
			return false
		}
		sum += (len(digits) - i) * int(d-'0')
	}
	return int(parts[2][0]) == '0'+sum%10
}

// casNumbers are the numbers of a statement, which may name several.
func casNumbers(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r != '-' && (r < '0' || r > '9') })
}
