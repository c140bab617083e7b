package command

import (
	"fmt"
	"strings"
)

// flagFault says in plain words why a flag was not understood: what stands behind it is no number, or a number below 0 was taken for a flag.
// The library's own words name what its reader of numbers is called.
func flagFault(err error) error {
	text := err.Error()
	if said, why, ok := strings.Cut(text, ": strconv."); ok {
		wants := "a whole number"
		if strings.HasPrefix(why, "ParseFloat") {
			wants = "a number"
		}
		return fmt.Errorf("%s: it wants %s", said, wants)
	}
	if _, typed, ok := strings.Cut(text, "unknown shorthand flag: "); ok && len(typed) > 2 && typed[1] >= '0' && typed[1] <= '9' {
		_, typed, _ = strings.Cut(typed, " in ")
		return fmt.Errorf("read %s: nothing here is below 0; a word that begins with a dash stands behind --", typed)
	}
	return err
}
