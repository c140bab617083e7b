package vector

import (
	"fmt"
	"strings"
)

// Paper is the sheets something is printed on, lying on their long side.
type Paper struct {
	Name       string
	Wide, High float64
}

// Papers lists what can be printed on; the first is meant where none is named. The sizes are those of ISO 216 and, of Letter, 11 by 8.5 inches
// of 25.4 mm (memory).
func Papers() []Paper {
	return []Paper{{"a4", 297, 210}, {"letter", 279.4, 215.9}}
}

// PaperOf is the paper of a name.
func PaperOf(name string) (Paper, error) {
	var names []string
	for _, p := range Papers() {
		if p.Name == strings.ToLower(name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("on paper %q: write %s", name, strings.Join(names, " or "))
}
