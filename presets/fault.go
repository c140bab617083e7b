package presets

import (
	"fmt"
	"strings"

	"github.com/agnivade/levenshtein"
)

// Fault is one thing wrong in a shelf file: where, what stands there, what is wrong with it and how to put it right.
type Fault struct {
	File    string
	Line    int    // from 1; 0 where the line is not known
	Column  int    // from 1; 0 where the column is not known
	Where   string // the entry and its key: `oil "olive", density_g_ml`
	Value   string // what stands there; empty where something is missing
	Problem string
	Mend    string
}

// Error says file, line and column where they are known, the entry, what is wrong and how to mend it.
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
		if f.Column > 0 {
			fmt.Fprintf(&b, ":%d", f.Column)
		}
	}
	b.WriteString(": ")
	if f.Where != "" {
		b.WriteString(f.Where)
		if f.Value != "" {
			b.WriteString(" = " + f.Value)
		}
		b.WriteString(": ")
	}
	fmt.Fprintf(&b, "%s; %s", f.Problem, f.Mend)
	return b.String()
}

// Faults is everything wrong in one shelf file, in the order of the file.
type Faults []Fault

// mostShown is how many faults are worth reading at once: one slip often makes many.
const mostShown = 12

// Error gives one fault a line, the first twelve of them.
func (f Faults) Error() string {
	var lines []string
	for i, one := range f {
		if i == mostShown {
			lines = append(lines, fmt.Sprintf("and %d more", len(f)-mostShown))
			break
		}
		lines = append(lines, one.Error())
	}
	return strings.Join(lines, "\n")
}

// nearest returns the candidate within two edits of word, less than half of it, or one that begins with it; "" when none does.
func nearest(word string, candidates []string) string {
	best, bestDistance := "", min(3, (len(word)+1)/2+1)
	for _, c := range candidates {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), strings.ToLower(c)); d < bestDistance {
			best, bestDistance = c, d
		}
	}
	if best != "" {
		return best
	}
	for _, c := range candidates {
		if len(word) >= 3 && strings.HasPrefix(c, word) {
			return c
		}
	}
	return ""
}

// suggest says which candidate was meant, if one is near, and what is possible.
func suggest(word string, candidates []string) string {
	all := strings.Join(candidates, ", ")
	if near := nearest(word, candidates); near != "" {
		return fmt.Sprintf("did you mean %q? It can be %s", near, all)
	}
	return "it can be " + all
}
