package strict

import (
	"fmt"
	"strings"
)

// ParseNumbers reads a line of numbers with blanks or semicolons between them, "0 25,5 51". A comma is a decimal sign where digits follow it
// and stands between numbers where a blank does; an empty line is an empty list. What could be read in two ways is refused.
func ParseNumbers(text string) ([]float64, error) {
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' || r == ';' })
	var out []float64
	for i, w := range words {
		w = strings.TrimSuffix(w, ",")
		if strings.Count(w, ",") > 1 || strings.Count(w, ".") > 1 {
			return nil, fmt.Errorf("read number %d of the list, %q: it looks like several; write blanks between them, as in 25 50.5 76", i+1, w)
		}
		v, err := ParseNumber(w)
		if err != nil {
			return nil, fmt.Errorf("number %d of the list: %w", i+1, err)
		}
		out = append(out, v)
	}
	return out, nil
}
