package strict

import (
	"fmt"
	"strings"

	"github.com/agnivade/levenshtein"
)

// Nearest returns the candidate that was probably meant: within two slips of the finger, at most half of the word's
// letters, one that begins alike first; or the same word with its unit or its subject left out ("share" or "percent" for
// "share_percent"). Empty when none is near.
func Nearest(word string, candidates []string) string {
	const slips, longest = 2, 40
	if len(word) > longest || word == "" {
		return ""
	}
	typed := strings.ToLower(word)
	best, badness := "", 2*slips+1
	for _, c := range candidates {
		meant := strings.ToLower(c)
		d := levenshtein.ComputeDistance(typed, meant)
		bad := 2 * d
		if meant != "" && meant[0] == typed[0] {
			bad--
		}
		if bad < badness && 2*d <= len(word) {
			best, badness = c, bad
		}
	}
	if best != "" || len(word) < 3 {
		return best
	}
	for _, c := range candidates {
		if strings.HasPrefix(c, word) || strings.HasSuffix(c, "_"+word) || strings.HasSuffix(c, "-"+word) {
			return c
		}
	}
	return ""
}

// Meant says how to mend a word that is not known: which candidate was meant, and then, or else the other advice.
func Meant(word string, candidates []string, otherwise, then string) string {
	near := Nearest(word, candidates)
	switch {
	case near == "":
		return otherwise
	case then == "":
		return fmt.Sprintf("did you mean %q?", near)
	}
	return fmt.Sprintf("did you mean %q? %s", near, then)
}
