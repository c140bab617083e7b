package pour

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/agnivade/levenshtein"
)

// Fault is one thing in a plan that cannot be. A plan with faults is not worked out: a file that holds one is refused, and so is an edit that would make one.
type Fault struct {
	Path    string // the key in the plan file, "base.jug[1].share_percent", arrays counted from 0
	Value   string // what stands there, as text; empty where something is missing
	Problem string // what is wrong, one clause
	Mend    string // how to put it right, one clause
}

// Error says where, which value, what is wrong and how to mend it.
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.Path)
	if f.Value != "" {
		fmt.Fprintf(&b, " = %s", f.Value)
	}
	fmt.Fprintf(&b, ": %s; %s", f.Problem, f.Mend)
	return b.String()
}

// number draws a value for a fault, shortest form.
func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// nearest returns the candidate within two edits of word, or "" when none is near: a slip of the finger, not another word.
func nearest(word string, candidates []string) string {
	best, bestDistance := "", 3
	for _, c := range candidates {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), strings.ToLower(c)); d < bestDistance {
			best, bestDistance = c, d
		}
	}
	if best == "" {
		for _, c := range candidates {
			if len(word) >= 3 && strings.HasPrefix(c, word) {
				return c
			}
		}
	}
	return best
}
