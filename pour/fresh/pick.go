package fresh

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/strict"
)

// pick is the entry of a list that is wished for, or where none is the everyday one, or the first.
func pick[T any](list []T, wish, everyday, what string, of func(T) (id, name string)) (T, error) {
	if wish != "" {
		return named(list, wish, what, of)
	}
	if len(list) == 0 {
		var none T
		return none, fmt.Errorf("make a new plan: there is no %s on the shelf", what)
	}
	usual := slices.IndexFunc(list, func(x T) bool { id, _ := of(x); return id == everyday })
	return list[max(usual, 0)], nil
}

// named is the entry that typed words name: by its id, by its name, or as the only one in whose name they all stand. Where there is none
// it says what was probably meant, and where there are several which they are.
func named[T any](list []T, wish, what string, of func(T) (id, name string)) (T, error) {
	var found []T
	ids := make([]string, len(list))
	for i, x := range list {
		id, name := of(x)
		ids[i] = id
		if id == wish || strings.EqualFold(name, wish) {
			return x, nil
		}
		if holds(name, wish) {
			found = append(found, x)
		}
	}
	if len(found) == 1 {
		return found[0], nil
	}
	mend := strict.Meant(wish, ids, "pourbench shelf tells what can stand there", "")
	if len(found) > 1 {
		mend = "it could be " + listed(found, of)
	}
	var none T
	return none, fmt.Errorf("make a new plan: there is no %s %q on the shelf; %s", what, wish, mend)
}

// holds says whether every word of a wish stands in a name.
func holds(name, wish string) bool {
	words := strings.Fields(strings.ToLower(wish))
	return len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(strings.ToLower(name), w) })
}

// mostListed is how many entries a refusal names.
const mostListed = 6

func listed[T any](found []T, of func(T) (id, name string)) string {
	var ids []string
	for _, x := range found[:min(len(found), mostListed)] {
		id, _ := of(x)
		ids = append(ids, id)
	}
	if len(found) > mostListed {
		ids = append(ids, "…")
	}
	return strings.Join(ids, ", ")
}
